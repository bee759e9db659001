//! H4: no eyewash is planned, or the page that sets up the mixing station does not say to put one there.

use crate::finding::{Finding, Severity};
use crate::job::{Page, Site};
use crate::sound::{Check, Ground, Role, Seen};

use super::phrases::{Line, row, says};
use super::{said, unsaid};

/// The check.
pub const CHECK: Check = Check {
    name: "eyewash-missing",
    ids: &["H4"],
    severities: &[Severity::Stop],
    title: "the mixing station has no eyewash",
    manual: include_str!("eyewash_missing.md"),
    twins: &[("es", include_str!("eyewash_missing.es.md"))],
    run,
};

const SOURCE: &str = "quick drenching of the eyes within the work area, for corrosive stuff: OSHA 29 CFR 1910.151(c), recalled; ANSI Z358.1 says how near, recalled";
const EYEWASH: &[&str] = &["eyewash", "eye-wash", "eye wash", "eyewashes", "lavaojos", "lava-ojos"];

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    let mut found: Vec<Finding> = ground.job.sites.iter().filter_map(site).collect();
    found.extend(stations(ground).into_iter().filter_map(|(page, seen)| {
        let named = seen.sentences().iter().any(|s| Line::of(s).meant(EYEWASH).is_some());
        let title = format!("{} ({}) sets up the mixing station and names no eyewash", page.code.text, seen.edition.lang);
        let finding = Finding::new(CHECK.name, Severity::Stop, title)
            .at(seen.edition.title.at, "no eyewash on this page")
            .source(SOURCE)
            .help("add a step: the eyewash within reach of somebody who cannot see, run once, the way to it clear");
        (!named).then_some(finding)
    }));
    found
}

fn site(site: &Site) -> Option<Finding> {
    let batch = site.batches.first()?;
    let text = said(site, |s| s.eyewash.as_ref());
    if text.is_some_and(|t| !super::phrases::says(&row(&t.text), &["no", "none", "not", "without"])) {
        return None;
    }
    let title = format!("{} mixes {} and plans no eyewash", site.code.text, batch.mix.text);
    let finding = Finding::new(CHECK.name, Severity::Stop, title)
        .source(SOURCE)
        .help("set one up and say where: `eyewash: flowing eyewash on its stand, beside the water barrel`");
    let finding = match text {
        Some(text) => finding.at(text.at, "this is none"),
        None => unsaid(finding, site, "eyewash"),
    };
    Some(finding.related(batch.mix.at, "mixed here"))
}

/// Procedures that set up the mixing station, told by their titles, once for each language.
pub(super) fn stations<'a>(ground: &'a Ground<'a>) -> Vec<(&'a Page, &'a Seen<'a>)> {
    let mut out: Vec<(&Page, &Seen<'_>)> = Vec::new();
    for seen in ground.seen {
        let Role::Procedure(page) = seen.role else { continue };
        let title = row(&seen.edition.title.text);
        let sets_up = says(&title, &["mixing station", "mix station", "estación de mezcla", "estación de mezclado"]);
        let known = out.iter().any(|(p, s)| std::ptr::eq(*p, page) && s.edition.lang == seen.edition.lang);
        if sets_up && !known {
            out.push((page, seen));
        }
    }
    out
}
