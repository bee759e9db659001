//! Q12: prices that were asked too long ago.

use std::cmp::Ordering;

use crate::finding::{Finding, Severity};
use crate::quantity::date::iso;
use crate::quantity::units::find_expr;
use crate::quantity::{Dim, Kind, Quantity};
use crate::sound::limits::{self, PRICE_AGE};
use crate::sound::{Check, Ground};
use crate::trade::calendar::day_of;

/// The check.
pub const CHECK: Check = Check {
    name: "prices-old",
    ids: &["Q12"],
    severities: &[Severity::Note],
    title: "prices are old",
    manual: include_str!("prices_old.md"),
    twins: &[("es", include_str!("prices_old.es.md"))],
    run,
};

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    one(ground).into_iter().collect()
}

fn one(ground: &Ground<'_>) -> Option<Finding> {
    let dated = &ground.job.company.as_ref()?.prices.as_ref()?.dated;
    let row = limits::find(PRICE_AGE)?;
    let (year, month, day) = ground.on;
    let (asked, today) = (day_of(dated.year, dated.month, dated.day).ok()?, day_of(year, month, day).ok()?);
    let past = Quantity { si: today.value().si.sub(&asked.value().si), dim: Dim::TIME, kind: Kind::Plain };
    if past.compare(&row.quantity()?) != Some(Ordering::Greater) {
        return None;
    }
    let age = past.in_unit(find_expr("day")?)?.plain();
    let finding =
        Finding::new(CHECK.name, Severity::Note, format!("prices are {age} days old, after {} a bid drifts from its cost", row.value))
            .at(dated.at, "asked then")
            .derived(format!("{} to {}: {age} days", dated.iso(), iso(year, month, day)))
            .source(row.source)
            .help("ask again and write the day and the prices of today");
    let sites = ground.job.sites.iter().map(|s| format!("{}.cost", s.id));
    Some(sites.fold(finding, Finding::figure))
}
