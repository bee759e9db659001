//! E6: the sun stands on a face while mud is placed and carved, and no shade is planned.

use crate::finding::{Finding, Severity};
use crate::job::{DayGoal, DayPlan, Place, Site, Surface};
use crate::quantity::Worked;
use crate::quantity::expr::Clock;
use crate::sound::told::{at_value, typed, voice};
use crate::sound::{Check, Ground};
use crate::tally::Role;
use crate::trade::sun::{Spot, day_number};
use crate::trade::sun_face::sun_on_face;

/// The check.
pub const CHECK: Check = Check {
    name: "face-in-sun",
    ids: &["E6"],
    severities: &[Severity::Warn],
    title: "the sun stands on a face while it is worked, and no shade is planned",
    manual: include_str!("face_in_sun.md"),
    twins: &[("es", include_str!("face_in_sun.es.md"))],
    run,
};

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    let open = |site: &&Site| site.climate.place.text == "outdoors" && !site.protection.as_ref().is_some_and(|p| p.shade);
    let sites = ground.job.sites.iter().filter(open);
    let surfaces = sites.flat_map(|site| site.surfaces.iter().map(move |surface| (site, surface)));
    surfaces.filter_map(|(site, surface)| one(ground, site, surface)).collect()
}

fn one(ground: &Ground<'_>, site: &Site, surface: &Surface) -> Option<Finding> {
    let (toward, place, plan) = (surface.toward.as_ref()?, site.position.as_ref()?, site.plan.as_ref()?);
    let mut goals = plan.days.iter().filter(|g| g.surface.text == surface.code.text);
    // From day to day the sun moves by minutes: the first and the last day tell.
    let first = goals.next()?;
    let last = goals.next_back();
    let (goal, (from, to)) = [Some(first), last].into_iter().flatten().find_map(|goal| {
        let spells = lit(surface, place, goal)?;
        spells.into_iter().find(|spell| meets(spell, plan)).map(|spell| (goal, spell))
    })?;
    let clock = |c: &Worked<Clock>| typed(&ground.tally.text_of(Role::Clock, c.value(), voice(site.metric)));
    let title = format!(
        "{} is in the sun from {} to {} on {}, work goes from {} to {} with no shade planned",
        surface.code.text,
        clock(&from),
        clock(&to),
        goal.day.date().iso(),
        clock(&plan.starts),
        clock(&plan.ends)
    );
    let finding = Finding::new(CHECK.name, Severity::Warn, title)
        .derived("sun on a level horizon: hills, trees and walls may keep it off, and are not known here")
        .source("common practice, no source: in the sun the carve window is about half as long; the times are worked from the position")
        .help("write `protection: {shade: yes}` when shade cloth stands, or work this face in the other half of the day")
        .about(surface.code.text.clone());
    let finding = at_value(finding, ground, toward.node(), "it looks this way");
    Some(finding.related(goal.day.at, "worked on this day"))
}

fn lit(surface: &Surface, place: &Place, goal: &DayGoal) -> Option<Vec<(Worked<Clock>, Worked<Clock>)>> {
    let spot = Spot { latitude: place.latitude.clone(), longitude: place.longitude.clone(), zone: goal.zone.clone() };
    let day = day_number(goal.day.year, goal.day.month, goal.day.day).ok()?;
    sun_on_face(&day, &spot, surface.toward.as_ref()?).ok()
}

/// True if the sun is there while the crew works.
fn meets((from, to): &(Worked<Clock>, Worked<Clock>), plan: &DayPlan) -> bool {
    let si = |c: &Worked<Clock>| c.value().si.to_f64();
    si(from) < si(&plan.ends) && si(to) > si(&plan.starts)
}
