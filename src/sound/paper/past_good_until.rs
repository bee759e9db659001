//! D6: paper of a site is printed past its last good day.

use crate::finding::{Finding, Severity};
use crate::sound::{Check, Ground};
use crate::words::EN;

/// The check.
pub const CHECK: Check = Check {
    name: "past-good-until",
    ids: &["D6"],
    severities: &[Severity::Stop],
    title: "a card is printed past the last day it is good",
    manual: include_str!("past_good_until.md"),
    twins: &[("es", include_str!("past_good_until.es.md"))],
    run,
};

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    let (year, month, day) = ground.on;
    let late = ground.job.sites.iter().filter(|s| {
        let until = &s.good_until;
        (until.year, until.month, until.day) < ground.on
    });
    let finding = |site: &crate::job::Site| {
        let until = &site.good_until;
        let (last, on) = (EN.date(until.year, until.month, until.day), EN.date(year, month, day));
        let title = format!("the paper of {} is good until {last}, this run is of {on}", site.name.text);
        let mut finding = Finding::new(CHECK.name, Severity::Stop, title)
            .at(until.at, "the last good day")
            .source("house rule: a card carries the last day it is good; season, lots and revisions move on")
            .help(format!("look at lots, revisions and season again, then set `good_until` to {on} or later and issue the cards anew"));
        // The papers of this site, and no others.
        let mut documents: Vec<&str> = ground.seen.iter().filter(|s| s.subject.site().id == site.id).map(|s| s.document.as_str()).collect();
        documents.sort_unstable();
        documents.dedup();
        for document in documents {
            finding = finding.figure(document);
        }
        finding
    };
    late.map(finding).collect()
}
