//! E7: rain is likely on mud of the last 24 h, and no cover is planned.

use crate::finding::{Finding, Severity};
use crate::job::weather::Date;
use crate::quantity::Worked;
use crate::quantity::expr::{Node, Share};
use crate::sound::told::at_value;
use crate::sound::weather::sky::{Sky, skies};
use crate::sound::{Check, Ground, limits};

/// The check.
pub const CHECK: Check = Check {
    name: "rain-without-cover",
    ids: &["E7"],
    severities: &[Severity::Hold],
    title: "rain is likely on a fresh face, and no cover is planned",
    manual: include_str!("rain_without_cover.md"),
    twins: &[("es", include_str!("rain_without_cover.es.md"))],
    run,
};

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    let all = skies(ground);
    let bare = all.iter().filter(|sky| sky.outdoors() && sky.plan().is_none_or(|p| p.cover.is_none()));
    bare.flat_map(|sky| sky.placing.iter().filter_map(|day| one(ground, sky, *day))).collect()
}

fn one(ground: &Ground<'_>, sky: &Sky<'_>, placed: Date) -> Option<Finding> {
    let (limit, text, source) = sky.limit(limits::RAIN)?;
    let likely = |rain: &Worked<Share>| rain.value().si.compare(&limit.si).is_ge();
    let plan = sky.site.plan.as_ref();
    let starts = plan.map_or(0.0, |p| p.starts.in_unit("min"));
    // Without a shift the day counts to its last minute.
    let ends = plan.map_or(1440.0, |p| p.ends.in_unit("min"));
    let next = crate::quantity::date::civil(placed.count() + 1).map(|(year, month, day)| Date { year, month, day })?;
    let hours = [(placed, 0.0), (next, 1440.0)].into_iter().flat_map(|(day, after)| {
        let lines = sky.weather.lines(day);
        lines.filter_map(move |h| Some((after + h.at.value().si.to_f64() / 60.0, day, h, h.rain.as_ref()?)))
    });
    let hour = hours.filter(|(at, ..)| *at >= starts && *at <= ends + 1440.0).find(|(.., rain)| likely(rain));
    let (when, rain): (String, &Node) = match hour {
        Some((_, day, h, rain)) => (sky.when(ground, day, h), rain.node()),
        None => {
            let days = sky.weather.days.iter().filter(|d| d.date == placed || d.date == next);
            let daily = days.filter_map(|d| Some((d, d.rain.as_ref()?))).find(|(_, rain)| likely(rain))?;
            (daily.0.date.iso(), daily.1.node())
        }
    };
    let title = format!(
        "rain {} % on {when}, within 24 h of mud placed on {}; from {text} on a fresh face is covered",
        rain.number().plain(),
        placed.iso()
    );
    let finding = Finding::new(CHECK.name, Severity::Hold, title)
        .source(source)
        .help("stand covers ready that do not touch the face and name them in `protection.cover`, or place on a dry day")
        .about(placed.iso());
    Some(sky.lacks(at_value(finding, ground, rain, "this chance of rain"), "cover"))
}
