//! W12: ice that has not melted goes into the mixer.

use crate::finding::{Finding, Severity};
use crate::job::Site;
use crate::sound::text::Sentence;
use crate::sound::told::once_a_place;
use crate::sound::{Check, Ground, Seen};

use super::pouring::{LETS_IN, NOT, is, turned_far, words};

/// The check.
pub const CHECK: Check = Check {
    name: "ice-not-melted",
    ids: &["W12"],
    severities: &[Severity::Stop],
    title: "ice goes into the mixer before it has melted",
    manual: include_str!("ice_not_melted.md"),
    twins: &[("es", include_str!("ice_not_melted.es.md"))],
    run,
};

/// Ice.
const ICE: &[&str] = &["ice", "icy", "hielo", "hielos"];
/// What makes it water again.
const MELTED: &[&str] = &["melted", "melts", "melt", "melting", "derretido", "derretida", "derrita", "fundido", "funda", "deshecho"];
/// Verbs that put it somewhere, beside those that let water in.
const PUTS: &[&str] = &["put", "puts", "throw", "shovel", "drop", "use", "with", "ponga", "meta", "use", "con"];

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    let mut found: Vec<Finding> = ground.job.sites.iter().filter_map(planned).collect();
    found.extend(ground.texts_of_mixes().flat_map(|seen| told(ground, seen)));
    once_a_place(found)
}

fn planned(site: &Site) -> Option<Finding> {
    let ice = site.mixing_water.as_ref()?.ice.as_ref().filter(|ice| ice.text == "in the mixer")?;
    let finding =
        finding(format!("ice goes into the mixer of {}, and all of it must have melted before water is measured", site.name.text));
    Some(finding.at(ice.at, "not melted").about(site.id.as_str()))
}

/// Steps that put ice in and do not say that it has melted.
fn told(ground: &Ground<'_>, seen: &Seen<'_>) -> Vec<Finding> {
    let of = seen.subject.mix(ground.job);
    let steps = seen.sentences().iter().filter(|s| s.step.is_some());
    steps
        .filter_map(|s| Some((s, put(s)?)))
        .map(|(s, at)| {
            let step = s.step.unwrap_or(0);
            let name = of.map_or(String::new(), |m| format!(" of {}", m.name.text));
            let made = finding(format!("step {step} puts ice into the mix{name}, and all of it must have melted before water is measured"));
            let made = s.place(at).map_or(made.clone(), |span| made.at(span, "not melted"));
            of.map_or(made.clone(), |m| made.figure(format!("{}.start_water", m.id)))
        })
        .collect()
}

/// The ice that a sentence puts in, if it does.
fn put(sentence: &Sentence) -> Option<usize> {
    if sentence.has(MELTED) {
        return None;
    }
    let words = words(sentence);
    let ice = (0..words.len()).find(|i| is(&words, *i, ICE))?;
    let verb = (0..ice).rev().find(|i| is(&words, *i, LETS_IN) || is(&words, *i, PUTS))?;
    let open = !turned_far(&words, verb) && !(verb..ice).any(|i| is(&words, i, NOT));
    open.then_some(ice)
}

fn finding(title: String) -> Finding {
    Finding::new(CHECK.name, Severity::Stop, title)
        .source("ACI 305R, hot weather concreting: ice counts as mixing water and has melted when mixing ends; for a hand-sized batch: before it is measured (recalled; not verified against a copy)")
        .help("melt the ice in the barrel, measure the cold water, and write `ice: melted`")
}
