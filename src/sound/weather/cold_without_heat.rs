//! E1: air or base is not above 40 °F while mud is placed or within 48 h, and nothing warms the wall.

use crate::finding::{Finding, Severity};
use crate::job::Protection;
use crate::quantity::Quantity;
use crate::sound::told::at_value;
use crate::sound::weather::sky::{Sky, skies};
use crate::sound::{Check, Ground, limits};
use crate::tally::nights::{Low, degrees};

/// The check.
pub const CHECK: Check = Check {
    name: "cold-without-heat",
    ids: &["E1"],
    severities: &[Severity::Stop],
    title: "it is too cold at placing or within 48 h, and nothing warms the wall",
    manual: include_str!("cold_without_heat.md"),
    twins: &[("es", include_str!("cold_without_heat.es.md"))],
    run,
};

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    let all = skies(ground);
    let lows = all.iter().flat_map(|sky| nights(ground, sky));
    lows.chain(bases(ground)).collect()
}

/// One finding for each cold day, whichever days of placing it follows.
fn nights(ground: &Ground<'_>, sky: &Sky<'_>) -> Vec<Finding> {
    let Some((limit, most, source)) = sky.limit(limits::COLD) else { return Vec::new() };
    let cold = |low: &&Low| low.air.value().si.compare(&limit.si).is_le();
    let mut days: Vec<&Low> = Vec::new();
    for low in sky.lows.iter().filter(cold) {
        match days.iter_mut().find(|d| d.date == low.date) {
            // The last mud before the low is the freshest.
            Some(old) if old.placed < low.placed => *old = low,
            Some(_) => {}
            None => days.push(low),
        }
    }
    days.iter().map(|low| one(ground, sky, low, (&most, source))).collect()
}

fn one(ground: &Ground<'_>, sky: &Sky<'_>, low: &Low, (most, source): (&str, &'static str)) -> Finding {
    let (text, placed) = (low.text(sky.site.metric), low.placed.iso());
    let when = match &low.at {
        Some(clock) => {
            let clock = sky.printed(ground, crate::tally::Role::Clock, clock.value()).map_or_else(String::new, |(_, _, t)| t);
            format!("{} at {clock}", low.date.iso())
        }
        None => low.date.iso(),
    };
    let window =
        if low.date == low.placed { "while mud is placed".to_owned() } else { format!("inside the 48 h after placing on {placed}") };
    let mut finding =
        Finding::new(CHECK.name, Severity::Stop, format!("low of {text} on {when}, {window}; wall and air must be above {most}"))
            .source(source)
            .help(format!("heat a closed tent and write `protection: {{heat: vented heater}}`, or place when the lows stay above {most}"))
            .about(low.date.iso());
    let others: Vec<String> = sky.lows.iter().filter(|l| l.date == low.date).map(|l| l.placed.iso()).collect();
    if others.len() > 1 {
        finding = finding.derived(format!("mud of {} is inside its 48 h then", others.join(", ")));
    }
    finding = at_value(finding, ground, low.air.node(), "this low");
    sky.lacks(finding, "heat that is vented or electric")
}

/// A base that was read as cold, but not as frozen: that is another finding.
fn bases(ground: &Ground<'_>) -> Vec<Finding> {
    let Some(row) = limits::find(limits::COLD) else { return Vec::new() };
    let (Some(limit), Some(frozen)) = (row.quantity(), limits::find(limits::BASE_FROZEN).and_then(limits::Limit::quantity)) else {
        return Vec::new();
    };
    let between = |q: &Quantity| q.si.compare(&limit.si).is_le() && q.si.compare(&frozen.si).is_gt();
    let mut found = Vec::new();
    for site in ground.job.sites.iter().filter(|s| !s.protection.as_ref().is_some_and(Protection::warms)) {
        for reading in &site.base.readings {
            let Some(read) = reading.temperature.as_ref().filter(|t| between(t.value())) else { continue };
            let most = if site.metric { "4.4 °C" } else { row.value };
            let what = reading.surface.as_ref().map_or("the base", |s| s.text.as_str());
            let date = reading.day.date().iso();
            let title = format!("{what} is at {} on {date}; wall and air must be above {most}", degrees(read.node(), site.metric));
            let finding = Finding::new(CHECK.name, Severity::Stop, title)
                .source(row.source)
                .help(format!("warm the base above {most} and read it again, or write `protection: {{heat: vented heater}}`"))
                .about(date);
            found.push(at_value(finding, ground, read.node(), "read on the base"));
        }
    }
    found
}
