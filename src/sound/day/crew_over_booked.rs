//! S5: a plan needs people who are not there, or one person in two places.

use std::collections::BTreeMap;

use num_rational::BigRational;

use crate::finding::{Finding, Severity};
use crate::job::{DayPlan, Hands, Site, Text};
use crate::quantity::Worked;
use crate::quantity::expr::Plain;
use crate::quantity::num::Direction;
use crate::sound::told::at_value;
use crate::sound::{Check, Ground};

/// The check.
pub const CHECK: Check = Check {
    name: "crew-over-booked",
    ids: &["S5"],
    severities: &[Severity::Hold],
    title: "a plan needs people who are not there, or one in two places",
    manual: include_str!("crew_over_booked.md"),
    twins: &[("es", include_str!("crew_over_booked.es.md"))],
    run,
};

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    let mut found = Vec::new();
    for site in &ground.job.sites {
        let Some(plan) = &site.plan else { continue };
        found.extend(too_few(ground, site, plan));
        if let Some(hands) = &plan.hands {
            found.extend(named(ground, site, plan, hands));
        }
    }
    found.extend(two_sites(ground));
    found
}

fn count(people: &Worked<Plain>) -> usize {
    let one = BigRational::from_integer(1.into());
    usize::try_from(people.value().si.round(Direction::Up, &one).numer()).unwrap_or(0)
}

fn people(n: usize) -> String {
    if n == 1 { "1 person".to_owned() } else { format!("{n} people") }
}

fn finding(site: &Site, title: String, about: &str) -> Finding {
    Finding::new(CHECK.name, Severity::Hold, title)
        .source("the site's own crew and plan; that the mixer tender does nothing else is common practice, no source")
        .about(format!("{}-{about}", site.code.text))
}

/// Those who place and carve, and one who mixes and does nothing else.
fn too_few(ground: &Ground<'_>, site: &Site, plan: &DayPlan) -> Option<Finding> {
    let (place, carve) = (count(&plan.placers), count(&plan.carvers));
    let (hands, how) = if plan.split {
        (place + carve, format!("{place} place + {carve} carve + 1 mixes"))
    } else {
        (place.max(carve), format!("{} place, then carve, + 1 mixes", place.max(carve)))
    };
    let (needs, crew) = (hands + 1, site.crew.len());
    if needs <= crew {
        return None;
    }
    let title = format!("the plan of {} needs {}, its crew has {crew}", site.code.text, people(needs));
    let finding = finding(site, title, "people")
        .derived(format!("{how} = {needs}"))
        .value(needs.to_string())
        .help(format!("plan with {} fewer, or name more people in `crew`", people(needs - crew)));
    let worse = if plan.split || place >= carve { &plan.placers } else { &plan.carvers };
    let finding = at_value(finding, ground, worse.node(), "planned");
    Some(site.crew.first().map_or(finding.clone(), |first| finding.related(first.at, "the crew begins here")))
}

fn named(ground: &Ground<'_>, site: &Site, plan: &DayPlan, hands: &Hands) -> Vec<Finding> {
    let mut found = Vec::new();
    let carvers: &[Text] = if same(&hands.place, &hands.carve) { &[] } else { &hands.carve };
    for who in hands.mix.iter().chain(&hands.place).chain(carvers) {
        if !site.crew.iter().any(|c| c.text == who.text) {
            let title = format!("{} works in the plan of {} and is not in its crew", who.text, site.code.text);
            let finding = finding(site, title, &who.text)
                .at(who.at, "planned here")
                .help(format!("name {} in `crew`, or plan with somebody who is", who.text));
            found.push(site.crew.first().map_or(finding.clone(), |c| finding.related(c.at, "the crew begins here")));
        }
    }
    // Placing and carving follow one another where the crew is the same; nothing else does.
    let carve = if plan.split { &hands.carve } else { carvers };
    let at_once: [(&[Text], &str); 3] = [(&hands.mix, "mixes"), (&hands.place, "places"), (carve, "carves")];
    let mut busy: BTreeMap<&str, (&str, &Text)> = BTreeMap::new();
    for (list, does) in at_once {
        for who in list {
            let before = busy.insert(&who.text, (does, who));
            let Some((other, at)) = before else { continue };
            let in_turn = !plan.split && other == "places" && does == "carves";
            if !in_turn {
                let first = if other == does { format!("{does} twice") } else { format!("{other} and {does} at the same time") };
                let finding = finding(site, format!("{} {first} in the plan of {}", who.text, site.code.text), &who.text)
                    .at(who.at, "here")
                    .related(at.at, "and here")
                    .help("give one of the two to somebody else; whoever mixes does nothing else");
                found.push(finding);
            }
        }
    }
    for (list, wants, does) in [(&hands.place, &plan.placers, "place"), (&hands.carve, &plan.carvers, "carve")] {
        let wanted = count(wants);
        if list.len() != wanted {
            let title = format!("{} {does} in the plan of {}, {} named", people(wanted), site.code.text, named_count(list.len()));
            let finding = finding(site, title, does).value(wanted.to_string()).help(format!(
                "name {} under `hands.{does}`, or plan with {}",
                people(wanted),
                people(list.len())
            ));
            let finding = at_value(finding, ground, wants.node(), "planned");
            found.push(list.first().map_or(finding.clone(), |first| finding.related(first.at, "named here")));
        }
    }
    found
}

fn named_count(n: usize) -> String {
    if n == 1 { "1 is".to_owned() } else { format!("{n} are") }
}

fn same(a: &[Text], b: &[Text]) -> bool {
    a.len() == b.len() && a.iter().zip(b).all(|(a, b)| a.text == b.text)
}

/// One person on the same day on two sites, told once for each later site: named hands only, for a crew list may hold
/// those who come on other days.
fn two_sites(ground: &Ground<'_>) -> Vec<Finding> {
    let mut busy: BTreeMap<(i16, i8, i8, &str), (&Site, &Text)> = BTreeMap::new();
    let mut found = Vec::new();
    for site in &ground.job.sites {
        let Some((plan, hands)) = site.plan.as_ref().and_then(|p| Some((p, p.hands.as_ref()?))) else { continue };
        let mut told = false;
        for goal in &plan.days {
            for who in hands.mix.iter().chain(&hands.place).chain(&hands.carve) {
                let day = (goal.day.year, goal.day.month, goal.day.day, who.text.as_str());
                let (other, at) = *busy.entry(day).or_insert((site, who));
                if std::ptr::eq(other, site) || told {
                    continue;
                }
                told = true;
                let title = format!("{} works on {} at {} and at {}", who.text, goal.iso(), other.code.text, site.code.text);
                let finding = finding(site, title, &who.text)
                    .at(who.at, "planned here")
                    .related(at.at, "and here")
                    .related(goal.day.at, "the same day")
                    .help("move one of the days, or name another person with a code of their own");
                found.push(finding);
            }
        }
    }
    found
}
