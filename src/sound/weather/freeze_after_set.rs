//! E2: it freezes within 24 h after the mud has set, and nothing warms the wall.

use crate::finding::{Finding, Severity};
use crate::sound::told::at_value;
use crate::sound::weather::sky::{Sky, skies};
use crate::sound::{Check, Ground, limits};
use crate::tally::Role;
use crate::tally::nights::Low;

/// The check.
pub const CHECK: Check = Check {
    name: "freeze-after-set",
    ids: &["E2"],
    severities: &[Severity::Stop],
    title: "it freezes within 24 h after the set, and nothing warms the wall",
    manual: include_str!("freeze_after_set.md"),
    twins: &[("es", include_str!("freeze_after_set.es.md"))],
    run,
};

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    skies(ground).iter().flat_map(|sky| one(ground, sky)).collect()
}

fn one(ground: &Ground<'_>, sky: &Sky<'_>) -> Vec<Finding> {
    let Some((limit, text, source)) = sky.limit(limits::FREEZING) else { return Vec::new() };
    let mut days: Vec<&Low> = Vec::new();
    for low in sky.lows.iter().filter(|l| l.after_set() && l.air.value().si.compare(&limit.si).is_le()) {
        match days.iter_mut().find(|d| d.date == low.date) {
            Some(old) if old.placed < low.placed => *old = low,
            Some(_) => {}
            None => days.push(low),
        }
    }
    days.iter()
        .map(|low| {
            let clock = low.at.as_ref().and_then(|c| sky.printed(ground, Role::Clock, c.value())).map(|(_, _, t)| format!(" at {t}"));
            let title = format!(
                "it freezes to {} on {}{}, within 24 h after the set of mud placed on {}; it must stay above {text}",
                low.text(sky.site.metric),
                low.date.iso(),
                clock.unwrap_or_default(),
                low.placed.iso()
            );
            let finding = Finding::new(CHECK.name, Severity::Stop, title)
                .derived("mud has set by midnight of its day, so that its 24 h end by the next midnight")
                .source(source)
                .help("heat a closed tent and write `protection: {heat: vented heater}`, or place when the next night does not freeze")
                .about(low.date.iso());
            sky.lacks(at_value(finding, ground, low.air.node(), "this low"), "heat that is vented or electric")
        })
        .collect()
}
