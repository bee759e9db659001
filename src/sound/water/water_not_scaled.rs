//! W6: a text made for a batch prints the water of a single load.

use std::cmp::Ordering;

use crate::finding::{Finding, Severity};
use crate::job::{BatchPlan, Mix};
use crate::quantity::Num;
use crate::sound::text::Sentence;
use crate::sound::told::{once_a_place, printed, typed};
use crate::sound::{Check, Ground, Seen};
use crate::source::Span;
use crate::tally::Subject;

/// The check.
pub const CHECK: Check = Check {
    name: "water-not-scaled",
    ids: &["W6"],
    severities: &[Severity::Stop],
    title: "a text for a batch prints the water of one load",
    manual: include_str!("water_not_scaled.md"),
    twins: &[("es", include_str!("water_not_scaled.es.md"))],
    run,
};

/// Words that say of an amount that it is for one load. The manual page lists them.
pub const PER_LOAD: &[&str] = &["per load", "each load", "every load", "a load", "one load", "por juego", "cada juego", "un juego"];

/// Waters of a mix that a batch multiplies.
const WATERS: &[&str] = &["start_water", "step", "limit"];

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    let mut found = Vec::new();
    for seen in ground.seen {
        let Subject::Batch(_, plan) = seen.subject else { continue };
        let Some(mix) = seen.subject.mix(ground.job) else { continue };
        if plan.loads.value().si.compare(&Num::int(1)) == Ordering::Equal {
            continue;
        }
        let case = Case { ground, seen, plan, mix };
        for sentence in seen.sentences().iter().filter(|s| !s.says(PER_LOAD)) {
            found.extend(case.slots(sentence));
        }
        found.extend(case.typed());
    }
    once_a_place(found)
}

struct Case<'g, 'a> {
    ground: &'g Ground<'a>,
    seen: &'g Seen<'a>,
    plan: &'g BatchPlan,
    mix: &'g Mix,
}

impl Case<'_, '_> {
    /// Slots that name a water of the mix where the batch's own is meant.
    fn slots(&self, sentence: &Sentence) -> Vec<Finding> {
        let uses = sentence.values().filter_map(|i| self.seen.doc.values.get(i));
        let found = uses.filter_map(|used| {
            let name = used.figure.strip_prefix(&format!("{}.", self.mix.id))?;
            let water = WATERS.iter().find(|w| **w == name)?;
            let help = format!("print `{{{{ batch.{water} }}}}`, or say `per load` in the same sentence");
            self.finding(water, &typed(&used.value.text), used.at, help)
        });
        found.collect()
    }

    /// Amounts typed by hand that are the water of one load.
    fn typed(&self) -> Vec<Finding> {
        let all = self.seen.sentences();
        let mut found = Vec::new();
        for number in self.seen.typed() {
            let Some(amount) = &number.quantity else { continue };
            if all.iter().any(|s| s.holds(number.span) && s.says(PER_LOAD)) {
                continue;
            }
            let alike = WATERS.iter().find(|w| {
                let figure = self.ground.tally.figure(&format!("{}.{w}", self.mix.id));
                figure.and_then(|f| f.worked.as_ref().ok()).is_some_and(|n| n.value().compare(amount) == Some(Ordering::Equal))
            });
            if let Some(water) = alike {
                let help = format!("print `{{{{ batch.{water} }}}}` in place of the typed number");
                found.extend(self.finding(water, &number.text, number.span, help));
            }
        }
        found
    }

    fn finding(&self, water: &str, said: &str, at: Span, help: String) -> Option<Finding> {
        let metric = self.seen.voice.metric;
        let batch = crate::tally::batch_id(self.ground.job, self.seen.subject.site(), self.plan);
        let (of_load, of_batch) = (format!("{}.{water}", self.mix.id), format!("{batch}.{water}"));
        let loads = typed(&printed(self.ground, &format!("{batch}.loads"), metric)?.text);
        let one = typed(&printed(self.ground, &of_load, metric)?.text);
        let need = typed(&printed(self.ground, &of_batch, metric)?.text);
        let name = water.replace('_', " ");
        let finding = Finding::new(CHECK.name, Severity::Stop, format!("the {name} of {loads} is {need}, the text says {said}"))
            .at(at, "for one load")
            .derived(format!("{loads} × {one} = {need}, rounded down to the mark of the pail"))
            .source("common practice, no source: the commonest mistake on a card")
            .help(help);
        Some(finding.figure(of_batch).figure(of_load))
    }
}
