//! H3: a paper for people with their hands in wet cement says nothing of eyes or of skin.

use crate::finding::{Finding, Severity};
use crate::sound::{Check, Ground};

use super::called::{Paper, papers};
use super::conditions::WET_CEMENT;

/// The check.
pub const CHECK: Check = Check {
    name: "skin-and-eye-caution-missing",
    ids: &["H3"],
    severities: &[Severity::Stop],
    title: "a mixing or coating paper has no caution for eyes or for skin",
    manual: include_str!("skin_and_eye_caution_missing.md"),
    twins: &[("es", include_str!("skin_and_eye_caution_missing.es.md"))],
    run,
};

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    papers(ground).iter().filter_map(|paper| one(ground, paper)).collect()
}

fn one<'a>(ground: &'a Ground<'a>, paper: &Paper<'a>) -> Option<Finding> {
    let call = paper.calls(|c| c == WET_CEMENT).into_iter().next()?;
    // Each language is read by somebody else: the first that lacks one is told.
    let (seen, eyes, skin) = paper.texts.iter().find_map(|seen| {
        let (eyes, skin) = paper.wet(ground, seen);
        (!eyes || !skin).then_some((seen, eyes, skin))
    })?;
    let lacks = match (eyes, skin) {
        (false, false) => "eyes or skin",
        (false, true) => "eyes",
        _ => "skin",
    };
    let title = format!("{} ({}) is for hands in wet cement and carries no caution for {lacks}", paper.name, seen.edition.lang);
    let finding = Finding::new(CHECK.name, Severity::Stop, title)
        .at(call.at, format!("wet cement: {}", call.words))
        .source(
            "hazards must be on what the worker reads: OSHA 29 CFR 1910.1200 and 1926.59, recalled; burns of wet cement start without pain",
        )
        .help("list the cautions for eyes and skin under `cautions`, and print them; or say both in the text, with water");
    Some(finding.related(paper.at, "this paper"))
}
