//! E3: the day is hot by the rules of masonry, and no plan for hot days stands ready.

use num_rational::BigRational;

use crate::finding::{Finding, Severity};
use crate::job::Protection;
use crate::sound::told::at_value;
use crate::sound::weather::sky::{Met, Shift, Sky, beyond, skies};
use crate::sound::{Check, Ground, limits};
use crate::tally::Role;

/// The check.
pub const CHECK: Check = Check {
    name: "hot-without-plan",
    ids: &["E3"],
    severities: &[Severity::Hold],
    title: "the day is hot, and no plan for hot days stands ready",
    manual: include_str!("hot_without_plan.md"),
    twins: &[("es", include_str!("hot_without_plan.es.md"))],
    run,
};

/// Air as a number, air and wind as printed, and whether it is hot without the wind.
type Hot = (BigRational, String, String, bool);

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    let all = skies(ground);
    let unplanned = all.iter().filter(|sky| !sky.plan().is_some_and(Protection::hot_plan));
    unplanned.flat_map(|sky| sky.days.iter().filter_map(|shift| one(ground, sky, shift))).collect()
}

fn one(ground: &Ground<'_>, sky: &Sky<'_>, shift: &Shift<'_>) -> Option<Finding> {
    let (hot, hot_text, source) = sky.limit(limits::HOT_AIR)?;
    let (breezy, breezy_text, _) = sky.limit(limits::HOT_IN_WIND)?;
    let (wind, wind_text, _) = sky.limit(limits::HOT_WIND)?;
    let judge = |met: &Met<'_>| -> Option<Hot> {
        let (air, degree, air_text) = sky.printed(ground, Role::Reading, met.hour.air.value())?;
        let (speed, unit, speed_text) = sky.printed(ground, Role::Wind, met.hour.wind.value())?;
        let calm = beyond(&air, degree, &hot, false);
        let windy = beyond(&air, degree, &breezy, false) && beyond(&speed, unit, &wind, false);
        (calm || windy).then_some((air, air_text, speed_text, calm))
    };
    // Below this no rounding reaches the lower of the two limits.
    let mut worst: Option<(&Met<'_>, Hot)> = None;
    for met in shift.hours.iter().filter(|m| m.air > 89.0) {
        if let Some(found) = judge(met)
            && worst.as_ref().is_none_or(|(_, w)| (found.3, &found.0) > (w.3, &w.0))
        {
            worst = Some((met, found));
        }
    }
    let (met, (_, air, speed, calm)) = worst?;
    let when = sky.when(ground, shift.date, met.hour);
    let over = if calm { format!("over {hot_text}") } else { format!("over {breezy_text} with wind over {wind_text}") };
    let finding = Finding::new(CHECK.name, Severity::Hold, format!("{air} and {speed} on {when}, {over} calls for a plan for hot days"))
        .source(source)
        .help(
            "shade wall, bags and water, stand screens or fog ready, keep the mix cool, and write `protection: {wind: screens and fog, \
             shade: yes, mix: 55 °F to 82 °F}` with your own temperatures; or begin earlier",
        )
        .value(air.clone())
        .about(shift.date.iso());
    let plan = "whole plan for hot days: shade, something against the wind, and temperatures of the mix";
    Some(sky.lacks(at_value(finding, ground, met.hour.air.node(), "in this hour"), plan))
}
