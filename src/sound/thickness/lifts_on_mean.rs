//! T5: a text counts lifts by the mean thickness.

use crate::finding::{Finding, Severity};
use crate::sound::told::once_a_place;
use crate::sound::{Check, Ground};

use super::basis::{self, LIFTS, MEAN};

/// The check.
pub const CHECK: Check = Check {
    name: "lifts-on-mean",
    ids: &["T5"],
    severities: &[Severity::Stop],
    title: "a text counts lifts by the mean thickness",
    manual: include_str!("lifts_on_mean.md"),
    twins: &[("es", include_str!("lifts_on_mean.es.md"))],
    run,
};

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    let all = basis::orders(ground, LIFTS, MEAN).into_iter().map(|wrong| {
        let title = format!("the text counts lifts by the mean thickness (`{}`); the deepest place decides the lifts", wrong.said);
        let finding = Finding::new(CHECK.name, Severity::Stop, title)
            .at(wrong.at, "the mean")
            .source("common practice, no source: the mean buys the bags, the greatest thickness decides the lifts")
            .help("count lifts by the greatest thickness over the scratch coat, as the tool does in `lifts`");
        match wrong.of {
            Some(of) => finding.related(of, "is counted by it"),
            None => finding,
        }
    });
    once_a_place(all.collect())
}
