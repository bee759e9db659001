//! M17: a card does not say how an odd number of bags is split.

use crate::finding::{Finding, Severity};
use crate::job::{BatchPlan, Site};
use crate::quantity::Num;
use crate::sound::text::Sentence;
use crate::sound::told::{once_a_place, printed, text};
use crate::sound::{Check, Ground, Role, Seen};
use crate::tally::{Subject, batch_id};

use super::telling::{self, HALF, MORTAR, figure, place};

/// The check.
pub const CHECK: Check = Check {
    name: "half-of-mortar-unsaid",
    ids: &["M17"],
    severities: &[Severity::Note],
    title: "a card does not say how an odd number of bags is split",
    manual: include_str!("half_of_mortar_unsaid.md"),
    twins: &[("es", include_str!("half_of_mortar_unsaid.es.md"))],
    run,
};

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    let cards = ground.seen.iter().filter(|seen| matches!(seen.role, Role::Card(_)));
    let found = cards.filter_map(|seen| match seen.subject {
        Subject::Batch(site, plan) => one(ground, seen, site, plan),
        _ => None,
    });
    once_a_place(found.collect())
}

fn one(ground: &Ground<'_>, seen: &Seen<'_>, site: &Site, plan: &BatchPlan) -> Option<Finding> {
    let batch = batch_id(ground.job, site, plan);
    let id = |name: &str| format!("{batch}.{name}");
    let bags = printed(ground, &id("mortar"), site.metric)?.number?;
    let half = Num::Exact(bags.clone()).div(&Num::int(2))?;
    if half.exact().is_some_and(num_rational::BigRational::is_integer) {
        return None;
    }
    let split = |s: &Sentence| telling::prints(seen, s, ".mortar_first");
    // One bag is halved in the mixer: half of it, then the rest of it.
    let one_bag = bags == num_rational::BigRational::from_integer(1.into());
    let in_words = |s: &Sentence| one_bag && s.has(HALF) && (s.has(MORTAR) || telling::prints(seen, s, ".mortar"));
    let sentences = seen.sentences();
    if sentences.iter().any(|s| split(s) || in_words(s)) {
        return None;
    }
    // The card that charges this batch is the one that names its mortar in a step.
    let (sentence, at) = sentences.iter().filter(|s| s.step.is_some()).find_map(|s| {
        let value = (0..s.pieces.len()).find(|i| figure(seen, s, *i).is_some_and(|f| f == id("mortar")));
        let halved = || telling::all(s, HALF).next().filter(|_| s.has(MORTAR));
        value.or_else(halved).map(|at| (s, at))
    })?;
    let (first, rest) = (text(ground, &id("mortar_first"), site.metric)?, text(ground, &id("mortar_rest"), site.metric)?);
    let (loads, said) = (text(ground, &id("loads"), site.metric)?, text(ground, &id("mortar"), site.metric)?);
    let mix = &plan.mix.text;
    let title =
        format!("half of the {said} of mortar in {loads} of {mix} is no whole number, and the card does not say what goes in first");
    let help = if one_bag {
        "say that half of the bag goes in first, by eye, and the rest of it after the slurry".to_owned()
    } else {
        "print `{{ batch.mortar_first }}` before the additive and `{{ batch.mortar_rest }}` after the slurry".to_owned()
    };
    let finding = Finding::new(CHECK.name, Severity::Note, title)
        .at(place(seen, sentence, at)?, "half of this")
        .derived(format!("first {first}, then {rest}"))
        .source("common practice, no source: a crew that has to halve bags in its head stands still, or guesses")
        .help(help);
    Some(finding.figure(id("mortar_first")))
}
