//! D13: a brand or a person is named where a class or a role is meant.

use crate::finding::{Finding, Severity};
use crate::sound::runs;
use crate::sound::told::once_a_place;
use crate::sound::{Check, Ground};
use crate::source::Span;

/// The check.
pub const CHECK: Check = Check {
    name: "brand-named",
    ids: &["D13"],
    severities: &[Severity::Note],
    title: "a brand or a person is named where a class is meant",
    manual: include_str!("brand_named.md"),
    twins: &[("es", include_str!("brand_named.es.md"))],
    run,
};

const MARKS: &[&str] = &["®", "™", "℠"];
/// Words that say that the next one, or the one before, is a brand.
const BRAND: &[&str] = &["brand", "marca"];
/// Words before the name of a person.
const TITLES: &[&str] = &["Mr", "Mrs", "Ms", "Sr", "Sra", "Srta", "Don", "Doña"];

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    let mut found = Vec::new();
    // What a slot prints is judged where it is written.
    let typed = ground.texts().flat_map(runs::of).filter(|r| r.exact);
    for run in typed.chain(runs::of_mixes(ground.job)) {
        if let Some((mark, at)) = MARKS.iter().find_map(|m| run.find(m).map(|at| (m, at))) {
            found.push(finding(format!("`{mark}` marks a brand"), at, CLASS));
        }
        let words = run.words();
        for pair in words.windows(2) {
            let [(first, here, before), (second, there, gap)] = pair else { continue };
            let close = gap.chars().all(char::is_whitespace);
            if BRAND.contains(first) && close && capital(second) {
                found.push(finding(format!("`{second}` is named as a brand"), *there, CLASS));
            } else if *second == "brand" && close && capital(first) && *before == " " {
                // The first word of a sentence is capital in any case: only a space may stand before the name.
                found.push(finding(format!("`{first}` is named as a brand"), *here, CLASS));
            } else if TITLES.contains(first) && (close || *gap == ". ") && capital(second) {
                let at = Span { end: there.end.max(here.end), ..*here };
                found.push(finding(
                    format!("`{first} {second}` names a person"),
                    at,
                    "name the role, such as the lead: people change, the paper stays",
                ));
            }
        }
    }
    once_a_place(found)
}

const CLASS: &str = "name the class of product, such as `bagged Type S mortar`, not a brand";

fn capital(word: &str) -> bool {
    word.chars().next().is_some_and(char::is_uppercase) && word != "I"
}

fn finding(title: String, at: Span, help: &str) -> Finding {
    let finding = Finding::new(CHECK.name, Severity::Note, title).at(at, "named here");
    finding.source("common practice, no source: a brand invites its substitute, a name its claim").help(help)
}
