//! M15: a lot is older than its bags keep.

use crate::finding::{Finding, Severity};
use crate::job::{Day, Lot, Mix, Site};
use crate::quantity::date::{self, civil, count};
use crate::quantity::units::find_expr;
use crate::quantity::{Num, num::Direction};
use crate::sound::told::{number, related_value};
use crate::sound::{Check, Ground};

/// The check.
pub const CHECK: Check = Check {
    name: "lot-past-shelf-life",
    ids: &["M15"],
    severities: &[Severity::Hold],
    title: "a lot is older than its bags keep",
    manual: include_str!("lot_past_shelf_life.md"),
    twins: &[("es", include_str!("lot_past_shelf_life.es.md"))],
    run,
};

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    super::lots(ground.job).filter_map(|(site, mix, lot)| one(ground, site, mix, lot)).collect()
}

fn one(ground: &Ground<'_>, site: &Site, mix: &Mix, lot: &Lot) -> Option<Finding> {
    let shelf = super::bagged(mix, &lot.material.text).shelf.as_ref()?;
    let (used, planned) = used(ground, site, mix);
    let made = lot.made.date().count();
    let age = used - made;
    let most = shelf.value().in_unit(find_expr("day")?)?;
    if Num::int(age).compare(&most).is_le() {
        return None;
    }
    let keeps = most.round(Direction::Down, &num_rational::BigRational::from_integer(1.into()));
    let material = &lot.material.text;
    let title = format!(
        "lot {} of {material} is {age} days old on {}, {} keeps it at most {} days",
        lot.number.text,
        iso(used)?,
        mix.name.text,
        crate::quantity::num::decimal(&keeps, 0)
    );
    let until = made + i64::try_from(keeps.to_integer()).ok()?;
    let mut finding = Finding::new(CHECK.name, Severity::Hold, title)
        .at(lot.made.at, "made on this day")
        .derived(format!("made {}, kept {}: good until {}", iso(made)?, number(shelf.node(), "day").replace("day", "days"), iso(until)?))
        .source("the shelf life of the mix sheet; where it states none, none is asked for")
        .help("use a fresher lot, or let the maker say in writing that this one is still good and accept it under a role")
        .about(lot.number.text.clone());
    if let Some(day) = planned {
        finding = finding.related(day.at, "still mixed on this day");
    }
    finding = related_value(finding, ground, shelf.node(), "keeps this long");
    Some(finding.figure(format!("{}.{material}_bag", mix.id)).figure(format!("{}/{}.bags_{material}", site.id, mix.id)))
}

/// The last day on which the bags are mixed: as planned, if that is still to come; else the day of the run.
fn used<'a>(ground: &Ground<'_>, site: &'a Site, mix: &Mix) -> (i64, Option<&'a Day>) {
    let (year, month, day) = ground.on;
    let today = count(year, month, day);
    let scratch = site.scratch_mix.as_ref().is_some_and(|m| m.text == mix.name.text);
    let days = if scratch { site.calendar.scratch.iter().collect::<Vec<_>>() } else { site.calendar.carve.iter().collect() };
    let last = days.into_iter().map(|d| (d.date().count(), d)).max_by_key(|(d, _)| *d);
    match last {
        Some((planned, day)) if planned > today => (planned, Some(day)),
        _ => (today, None),
    }
}

fn iso(days: i64) -> Option<String> {
    civil(days).map(|(year, month, day)| date::iso(year, month, day))
}
