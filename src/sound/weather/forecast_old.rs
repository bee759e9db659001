//! E11: the day sheet of today rests on a forecast that is too old.

use crate::finding::{Finding, Severity};
use crate::job::weather::Made;
use crate::sound::weather::sky::{Shift, Sky, skies};
use crate::sound::{Check, Ground, limits};
use crate::tally::Role;

/// The check.
pub const CHECK: Check = Check {
    name: "forecast-old",
    ids: &["E11"],
    severities: &[Severity::Warn],
    title: "today's plan rests on an old forecast",
    manual: include_str!("forecast_old.md"),
    twins: &[("es", include_str!("forecast_old.es.md"))],
    run,
};

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    // A sheet of the evening before is worked again in the morning: only the day itself is judged.
    let (year, month, day) = ground.on;
    let today = |s: &&Shift<'_>| (s.date.year, s.date.month, s.date.day) == (year, month, day);
    skies(ground).iter().flat_map(|sky| sky.days.iter().filter(today).filter_map(|shift| one(ground, sky, shift))).collect()
}

fn one(ground: &Ground<'_>, sky: &Sky<'_>, shift: &Shift<'_>) -> Option<Finding> {
    let row = limits::find(limits::FORECAST)?;
    let starts = &sky.site.plan.as_ref()?.starts;
    let first = starts.in_unit("min") as i64;
    let age = |made: &Made| (shift.date.count() - made.date.count()) * 24 * 60 + first - made.minutes;
    let oldest = shift.hours.iter().filter_map(|m| m.hour.made.as_ref()).max_by_key(|made| age(made))?;
    let minutes = age(oldest);
    let limit = (row.quantity()?.si.to_f64() / 60.0).round() as i64;
    if minutes <= limit {
        return None;
    }
    let (_, _, clock) = sky.printed(ground, Role::Clock, starts.value())?;
    let title = format!(
        "the forecast of {} was {} h {:02} min old at the first water, at most {} is fresh",
        shift.date.iso(),
        minutes / 60,
        minutes % 60,
        row.value
    );
    let finding = Finding::new(CHECK.name, Severity::Warn, title)
        .at(oldest.said.at, "made then")
        .related(shift.goal.day.at, format!("worked on this day, first water {clock}"))
        .source(row.source)
        .help("look the weather up again this morning, write the new lines and times, and work the day again")
        .about(shift.date.iso());
    Some(finding)
}
