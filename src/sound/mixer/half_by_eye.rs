//! M2: a text splits bags by eye.

use crate::finding::{Finding, Severity};
use crate::quantity::Num;
use crate::sound::text::Sentence;
use crate::sound::told::once_a_place;
use crate::sound::{Check, Ground, Seen};
use crate::tally::Subject;

use super::telling::{self, ADDITIVE, HALF, REST, place};

/// The check.
pub const CHECK: Check = Check {
    name: "half-by-eye",
    ids: &["M2"],
    severities: &[Severity::Stop],
    title: "a text splits bags by eye",
    manual: include_str!("half_by_eye.md"),
    twins: &[("es", include_str!("half_by_eye.es.md"))],
    run,
};

/// Ways to say it. The manual page lists them.
const BY_EYE: &[&str] =
    &["by eye", "by the eye", "by guess", "by feel", "eyeball", "eyeballed", "roughly", "al ojo", "a ojo", "al tanteo", "a tanteo"];
const HALF_LOADS: &[&str] = &["half load", "half loads", "half a load", "half batch", "medio juego", "medios juegos", "media tanda"];

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    once_a_place(ground.texts_of_mixes().filter(|s| s.may_say(&[BY_EYE])).flat_map(|seen| one(ground, seen)).collect())
}

fn one(ground: &Ground<'_>, seen: &Seen<'_>) -> Vec<Finding> {
    seen.sentences().iter().filter_map(|sentence| sentence_of(ground, seen, sentence)).collect()
}

fn sentence_of(ground: &Ground<'_>, seen: &Seen<'_>, sentence: &Sentence) -> Option<Finding> {
    let at = BY_EYE.iter().filter_map(|p| telling::phrase(sentence, p)).min()?;
    let halved = sentence.has(HALF) || telling::prints(seen, sentence, ".half_mortar") || telling::prints(seen, sentence, ".half_additive");
    if !halved || telling::negated(sentence, at) || all_goes_in(seen, sentence) {
        return None;
    }
    let mix = telling::mixes(ground.job, seen).into_iter().next()?;
    let part = |name: &str| crate::sound::told::text(ground, &format!("{}.half_{name}", mix.id), mix.metric);
    let help = match (part("mortar"), part("additive")) {
        (Some(mortar), Some(additive)) => {
            format!("halve both on the scale: {mortar} of mortar and {additive} of additive for half a load of {}", mix.name.text)
        }
        _ => format!("{} allows whole loads only: put in whole bags", mix.name.text),
    };
    let finding = Finding::new(CHECK.name, Severity::Stop, "bags are split by eye, a half load is weighed".to_owned())
        .at(place(seen, sentence, at)?, "not on a scale")
        .source("common practice, no source: bags split by eye are off by more than the mix can take")
        .help(help);
    Some(finding.figure(format!("{}.mortar_bag", mix.id)))
}

/// Half of a bag of mortar now and its rest later is charging, not measuring: nothing is left out of the mixer.
fn all_goes_in(seen: &Seen<'_>, sentence: &Sentence) -> bool {
    if sentence.has(ADDITIVE) || sentence.says(HALF_LOADS) {
        return false;
    }
    let whole = matches!(seen.subject, Subject::Batch(_, plan) if plan.loads.value().si.compare(&Num::int(1)).is_ge());
    whole || sentence.has(REST) || sentence.says(&["all of it goes in", "entra todo"])
}
