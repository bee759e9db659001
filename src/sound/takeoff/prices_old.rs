//! Q12: prices that were asked too long ago.

use crate::finding::{Finding, Severity};
use crate::quantity::Num;
use crate::quantity::units::find_expr;
use crate::sound::limits::{self, PRICE_AGE};
use crate::sound::{Check, Ground};

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
    let most = row.quantity()?.exact_in(find_expr("day")?)?;
    let asked = jiff::civil::Date::new(dated.year, dated.month, dated.day).ok()?;
    let (year, month, day) = ground.on;
    let today = jiff::civil::Date::new(year, month, day).ok()?;
    let age = today.since(asked).ok()?.get_days();
    if Num::int(age.into()).compare(&Num::Exact(most)).is_le() {
        return None;
    }
    let finding =
        Finding::new(CHECK.name, Severity::Note, format!("prices are {age} days old, after {} a bid drifts from its cost", row.value))
            .at(dated.at, "asked then")
            .derived(format!("{asked} to {today}: {age} days"))
            .source(row.source)
            .help("ask again and write the day and the prices of today");
    let sites = ground.job.sites.iter().map(|s| format!("{}.cost", s.id));
    Some(sites.fold(finding, Finding::figure))
}
