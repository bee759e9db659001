//! M12: a text tells somebody to add an admixture that the mix sheet does not allow.

use crate::finding::{Finding, Severity};
use crate::job::Mix;
use crate::sound::told::once_a_place;
use crate::sound::{Check, Ground, Seen};

use super::telling::{self, place};

/// The check.
pub const CHECK: Check = Check {
    name: "admixture-off-sheet",
    ids: &["M12"],
    severities: &[Severity::Stop],
    title: "a text adds an admixture that the mix sheet does not allow",
    manual: include_str!("admixture_off_sheet.md"),
    twins: &[("es", include_str!("admixture_off_sheet.es.md"))],
    run,
};

/// Words of each class, in both languages. The manual page lists them.
const CLASSES: &[(&str, &[&str])] = &[
    ("antifreeze", &["antifreeze", "anti-freeze", "anticongelante", "anticongelantes"]),
    ("accelerator", &["accelerator", "accelerators", "accelerant", "acelerante", "acelerantes", "acelerador"]),
    ("chloride", &["chloride", "chlorides", "cloruro", "cloruros"]),
    ("retarder", &["retarder", "retarders", "retardante", "retardantes"]),
    ("plasticizer", &["plasticizer", "superplasticizer", "plastificante", "superplastificante"]),
];

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    once_a_place(ground.texts_of_mixes().flat_map(|seen| one(ground, seen)).collect())
}

fn one(ground: &Ground<'_>, seen: &Seen<'_>) -> Vec<Finding> {
    let mixes = telling::mixes(ground.job, seen);
    let mut found = Vec::new();
    for sentence in seen.sentences() {
        for (class, words) in CLASSES {
            let Some(at) = telling::put_in(sentence, words) else { continue };
            let Some(mix) = mixes.iter().find(|m| !allows(m, words)) else { continue };
            let (Some(span), Some(word)) = (place(seen, sentence, at), sentence.word(at)) else { continue };
            found.push(finding(seen, mix, class, word).at(span, "not on the sheet"));
        }
    }
    found
}

fn allows(mix: &Mix, words: &[&str]) -> bool {
    mix.admixtures.iter().any(|a| a.text.to_lowercase().split(|c: char| !c.is_alphanumeric()).any(|w| words.contains(&w)))
}

fn finding(seen: &Seen<'_>, mix: &Mix, class: &str, word: &str) -> Finding {
    let allowed: Vec<String> = mix.admixtures.iter().map(|a| format!("`{}`", a.text)).collect();
    let allowed = if allowed.is_empty() { "allows no admixture".to_owned() } else { format!("allows only {}", allowed.join(", ")) };
    let site = seen.subject.site();
    let lath = if site.base.direct { "" } else { ", and there is steel lath behind the coat" };
    let finding = Finding::new(CHECK.name, Severity::Stop, format!("`{word}` is to go in, the sheet of {} {allowed}{lath}", mix.name.text))
        .source("ASTM C270 lets admixtures in only as specified, and limits chloride (recalled, not verified against a copy); the mix sheet decides")
        .help(format!("take it out of the text and heat or wait instead; if the maker allows it in writing, list it: `admixtures: [{class}]`"))
        .figure(format!("{}.start_water", mix.id));
    match mix.admixtures.first() {
        Some(first) => finding.related(first.at, "what the sheet allows"),
        None => finding.related(mix.name.at, "states no `admixtures`"),
    }
}
