//! S1: a batch of a planned day is too old before its last mud is on the wall.

use crate::finding::{Finding, Severity};
use crate::quantity::Num;
use crate::sound::told::related_value;
use crate::sound::{Check, Ground};
use crate::tally::minutes_table::Patch;

use super::plans::{Planned, planned};

/// The check.
pub const CHECK: Check = Check {
    name: "batch-stale-before-placed",
    ids: &["S1"],
    severities: &[Severity::Stop],
    title: "a batch is older than its open time when it is placed",
    manual: include_str!("batch_stale_before_placed.md"),
    twins: &[("es", include_str!("batch_stale_before_placed.es.md"))],
    run,
};

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    planned(ground).iter().filter_map(|day| one(ground, day)).collect()
}

/// The first stale batch of the day; the others are counted.
fn one(ground: &Ground<'_>, day: &Planned<'_>) -> Option<Finding> {
    let patches = &day.outlook.patches;
    let (n, first) = patches.iter().enumerate().find(|(_, p)| p.stale())?;
    let open = first.kept.as_ref()?.open;
    let (age, crew) = (first.placed - first.water_in, &day.outlook.crew);
    let placing = age - crew.mixing - crew.moving;
    let stale = patches.iter().filter(|p| p.stale()).count();
    let title = format!(
        "batch {} of {} is {age} min old when its last mud is placed, {} stays open {open} min",
        n + 1,
        day.name(),
        day.mix.name.text
    );
    let finding = Finding::new(CHECK.name, Severity::Stop, title)
        .at(day.goal.day.at, "this day")
        .derived(format!("{} min mixing + {} min moving + {placing} min placing = {age} min from water in", crew.mixing, crew.moving))
        .derived(format!(
            "water in {}, discard {}, placed {}; {stale} of {} batches of the day",
            day.clock(ground, first.water_in),
            day.clock(ground, first.water_in + open),
            day.clock(ground, first.placed),
            patches.len()
        ))
        .source(
            "mix sheet: open time, taken to the mix's temperature by the sheet's table or by the rule of thumb, common practice, no source",
        )
        .help(help(day, first))
        .about(day.about());
    Some(related_value(finding, ground, day.plan.batch.node(), "loads in a batch"))
}

/// The largest batch that this crew still places in time.
fn help(day: &Planned<'_>, patch: &Patch) -> String {
    let crew = &day.outlook.crew;
    // The shortest open time that a batch of the day meets: what passes must pass all day.
    let open = day.outlook.patches.iter().filter_map(|p| p.kept.as_ref()).map(|k| k.open).min().unwrap_or(0);
    let each = patch.area.div(&patch.loads);
    let fits = |halves: i64| {
        let loads = Num::frac(halves, 2);
        let takes = each.as_ref().map(|a| crew.placing(&a.mul(&loads)));
        takes.is_some_and(|t| crew.mixing + crew.moving + t < open)
    };
    let step = if day.mix.half_load { 1 } else { 2 };
    let most = (1..=200).map(|k| k * step).take_while(|h| fits(*h)).last();
    match most {
        Some(1) => "plan `batch: 1/2 load`, put more hands on the wall, or shade the bags".to_owned(),
        Some(2) => "plan `batch: 1 load`, put more hands on the wall, or shade the bags".to_owned(),
        Some(halves) => {
            let loads = crate::sound::told::typed(&crate::quantity::show::mixed(&num_rational::BigRational::new(halves.into(), 2.into())));
            format!("plan `batch: {loads} loads` or less, put more hands on the wall, or shade the bags")
        }
        None => "no batch is small enough for this crew at this temperature: cool the mix, shade the bags, or start earlier".to_owned(),
    }
}
