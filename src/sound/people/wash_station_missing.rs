//! H4: no wash water, soap and towels are planned at the mixing station.

use crate::finding::{Finding, Severity};
use crate::job::Site;
use crate::sound::{Check, Ground};

use super::eyewash_missing::stations;
use super::phrases::{Line, row, says};
use super::{said, unsaid};

/// The check.
pub const CHECK: Check = Check {
    name: "wash-station-missing",
    ids: &["H4"],
    severities: &[Severity::Stop],
    title: "the mixing station has no wash water, soap or towels",
    manual: include_str!("wash_station_missing.md"),
    twins: &[("es", include_str!("wash_station_missing.es.md"))],
    run,
};

const SOURCE: &str = "washing facilities where coatings and harmful stuff are handled: OSHA 29 CFR 1926.51(f), recalled";

/// The three things, and the words for each.
const THINGS: &[(&str, &[&str])] = &[
    ("wash water", &["wash water", "washing water", "clean water", "water", "agua"]),
    ("soap", &["soap", "jabón"]),
    ("towels", &["towel", "towels", "paper towels", "toallas", "toalla"]),
];

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    let mut found: Vec<Finding> = ground.job.sites.iter().filter_map(site).collect();
    found.extend(stations(ground).into_iter().filter_map(|(page, seen)| {
        let named = |words: &[&str]| seen.sentences().iter().any(|s| Line::of(s).meant(words).is_some());
        let lacks = list(&THINGS.iter().filter(|(_, words)| !named(words)).map(|(name, _)| *name).collect::<Vec<_>>())?;
        let title = format!("{} ({}) sets up the mixing station and names no {lacks}", page.code.text, seen.edition.lang);
        Some(
            Finding::new(CHECK.name, Severity::Stop, title)
                .at(seen.edition.title.at, format!("no {lacks} on this page"))
                .source(SOURCE)
                .help("add a step: clean wash water, soap and towels beside the eyewash"),
        )
    }));
    found
}

fn site(site: &Site) -> Option<Finding> {
    let batch = site.batches.first()?;
    let text = said(site, |s| s.wash.as_ref());
    let words = text.map(|t| row(&t.text)).unwrap_or_default();
    let lacks = list(&THINGS.iter().filter(|(_, names)| !says(&words, names)).map(|(name, _)| *name).collect::<Vec<_>>())?;
    let title = format!("{} mixes {} and plans no {lacks}", site.code.text, batch.mix.text);
    let finding = Finding::new(CHECK.name, Severity::Stop, title)
        .source(SOURCE)
        .help("set all three by the barrel and say so: `wash: tub of clean water, soap and towels beside the barrel`");
    let finding = match text {
        Some(text) => finding.at(text.at, format!("names no {lacks}")),
        None => unsaid(finding, site, "wash"),
    };
    Some(finding.related(batch.mix.at, "mixed here"))
}

/// `soap or towels`; nothing of nothing.
fn list(names: &[&str]) -> Option<String> {
    let (last, rest) = names.split_last()?;
    Some(if rest.is_empty() { (*last).to_owned() } else { format!("{} or {last}", rest.join(", ")) })
}
