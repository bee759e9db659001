//! S7: the carve coat comes before the scratch coat's wait is over, by the calendar or by a text.

use num_rational::BigRational;

use crate::finding::{Finding, Severity};
use crate::job::{Day, Site};
use crate::quantity::Num;
use crate::quantity::num::Direction;
use crate::quantity::units::find_expr;
use crate::sound::told::{once_a_place, related_value, text};
use crate::sound::{Check, Ground};
use crate::tally::minutes::minutes;
use crate::tally::mix_of;
use crate::trade::calendar;

/// The check.
pub const CHECK: Check = Check {
    name: "next-coat-too-soon",
    ids: &["S7"],
    severities: &[Severity::Stop],
    title: "the carve coat comes before the scratch coat's wait is over",
    manual: include_str!("next_coat_too_soon.md"),
    twins: &[("es", include_str!("next_coat_too_soon.es.md"))],
    run,
};

/// What both findings say of their source.
pub(super) const SOURCE: &str =
    "mix sheet: least wait before the next coat; IBC Table 2512.6 asks 48 h for portland cement plaster (recalled)";

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    let mut found: Vec<Finding> = ground.job.sites.iter().filter_map(|site| by_calendar(ground, site)).collect();
    found.extend(once_a_place(super::soon::found(ground)));
    found
}

fn first_carve(site: &Site) -> Option<&Day> {
    let planned = site.plan.iter().flat_map(|p| &p.days).map(|g| &g.day);
    planned.chain(&site.calendar.carve).min_by_key(|d| (d.year, d.month, d.day))
}

/// Hours from the end of the scratch day's shift to the first water of the first carving day; whole days where no
/// plan says when a day begins and ends.
fn by_calendar(ground: &Ground<'_>, site: &Site) -> Option<Finding> {
    let (scratch, carve) = (site.calendar.scratch.as_ref()?, first_carve(site)?);
    let mix = mix_of(ground.job, &site.scratch_mix.as_ref()?.text)?;
    let recoat = mix.recoat.as_ref()?;
    let number = |day: &Day| Some(calendar::day_of(day.year, day.month, day.day).ok()?.in_unit("day") as i64);
    let days = number(carve)? - number(scratch)?;
    let clocks = site.plan.as_ref().map(|p| (minutes(&p.ends.value().si, Direction::Down), minutes(&p.starts.value().si, Direction::Down)));
    let (ends, starts) = clocks.unwrap_or((0, 0));
    let wait = Num::frac(days * 24 * 60 + starts - ends, 60);
    let least = recoat.value().in_unit(find_expr("h")?)?;
    if !wait.compare(&least).is_lt() {
        return None;
    }
    let id = format!("{}.recoat", mix.id);
    let asks = text(ground, &id, site.metric)?;
    let hours = wait.round(Direction::Down, &BigRational::from_integer(1.into()));
    let title = if hours < BigRational::from_integer(0.into()) {
        format!("{} carves before its scratch coat is on, {} asks for {asks} between them", site.code.text, mix.name.text)
    } else {
        format!("{} carves {} h after its scratch coat, {} asks for {asks}", site.code.text, hours.numer(), mix.name.text)
    };
    let how = match clocks {
        Some(_) => format!("{days} days of 24 h, from the end of one shift to the first water of the other = {} h", wait.plain()),
        None => format!("{days} days of 24 h = {} h", wait.plain()),
    };
    let finding = Finding::new(CHECK.name, Severity::Stop, title)
        .at(carve.at, "carved on this day")
        .related(scratch.at, "scratch coat on this day")
        .derived(how)
        .source(SOURCE)
        .help(format!("carve when {asks} have passed since the last scratch mud, or put the scratch coat on earlier"))
        .figure(id)
        .about(site.code.text.clone());
    Some(related_value(finding, ground, recoat.node(), "wait before the next coat"))
}
