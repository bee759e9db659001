//! M2: a text halves one material and not the other.

use crate::finding::{Finding, Severity};
use crate::sound::text::Sentence;
use crate::sound::told::once_a_place;
use crate::sound::{Check, Ground, Seen};

use super::telling::{self, ADDITIVE, HALF, MORTAR, REST, place};

/// The check.
pub const CHECK: Check = Check {
    name: "half-of-one-bag",
    ids: &["M2"],
    severities: &[Severity::Stop],
    title: "a text halves one material and not the other",
    manual: include_str!("half_of_one_bag.md"),
    twins: &[("es", include_str!("half_of_one_bag.es.md"))],
    run,
};

/// How far from a half the halved thing may stand.
const NEAR: usize = 5;
/// Sentences below in which the rest of a bag may follow.
const BELOW: usize = 5;
const BAG: &[&str] = &["bag", "bags", "saco", "sacos"];

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    once_a_place(ground.texts_of_mixes().flat_map(|seen| one(ground, seen)).collect())
}

fn one(ground: &Ground<'_>, seen: &Seen<'_>) -> Vec<Finding> {
    let all = seen.sentences();
    let mut found = Vec::new();
    for (n, sentence) in all.iter().enumerate() {
        let beside = all.get(n.saturating_sub(1)..(n + 2).min(all.len())).unwrap_or(&[]);
        let below = all.get(n..(n + BELOW).min(all.len())).unwrap_or(&[]);
        for (own, other, name, whole) in [(ADDITIVE, MORTAR, "additive", "mortar"), (MORTAR, ADDITIVE, "mortar", "additive")] {
            let Some(at) = halved(sentence, own, other) else { continue };
            let both = beside.iter().any(|s| halved(s, other, own).is_some() || speaks_of_both(s));
            // Half of the mortar first is the charging order; half a bag of it is not, unless the rest follows.
            let charged = name == "mortar" && !bagwise(sentence, at);
            let rest = below.iter().any(|s| s.has(REST) && (s.has(own) || s.has(BAG)));
            if both || charged || rest {
                continue;
            }
            found.extend(finding(ground, seen, sentence, at, name, whole));
        }
    }
    found
}

/// Where a half stands whose thing is this one.
fn halved(sentence: &Sentence, own: &[&str], other: &[&str]) -> Option<usize> {
    telling::all(sentence, HALF).find(|i| {
        let ahead = (i + 1..=i + NEAR).take_while(|k| !sentence.is(*k, other)).any(|k| sentence.is(k, own));
        ahead && !telling::negated(sentence, *i)
    })
}

fn bagwise(sentence: &Sentence, at: usize) -> bool {
    (at + 1..=at + 3).any(|k| sentence.is(k, BAG))
}

fn speaks_of_both(sentence: &Sentence) -> bool {
    sentence.has(HALF) && sentence.has(&["both", "each", "ambos", "cada"])
}

fn finding(ground: &Ground<'_>, seen: &Seen<'_>, sentence: &Sentence, at: usize, name: &str, whole: &str) -> Option<Finding> {
    let mix = telling::mixes(ground.job, seen).into_iter().next()?;
    let part = |name: &str| crate::sound::told::text(ground, &format!("{}.half_{name}", mix.id), mix.metric);
    let help = match (part("mortar"), part("additive")) {
        (Some(mortar), Some(additive)) => {
            format!("halve both, on a scale: {mortar} of mortar and {additive} of additive; or put in whole bags")
        }
        _ => format!("{} allows whole loads only: put in whole bags", mix.name.text),
    };
    let title = format!("half of the {name} goes in and nothing halves the {whole}; {} is {} to 1 by mass", mix.name.text, ratio(mix));
    let finding = Finding::new(CHECK.name, Severity::Stop, title)
        .at(place(seen, sentence, at)?, "half of one bag")
        .source("the design ratio of the mix; common practice, no source: a part of one bag breaks it")
        .help(help);
    let finding = crate::sound::told::related_value(finding, ground, mix.ratio.node(), "the design");
    Some(finding.figure(format!("{}.mortar_bag", mix.id)))
}

fn ratio(mix: &crate::job::Mix) -> String {
    let hundredth = num_rational::BigRational::new(1.into(), 100.into());
    let near = mix.ratio.value().si.round(crate::quantity::num::Direction::Nearest, &hundredth);
    crate::quantity::num::exact_text(&crate::quantity::Num::Exact(near).round(crate::quantity::num::Direction::Nearest, &hundredth))
}
