//! M13: an amount is of a size that the trade does not know for its key.

use std::cmp::Ordering;

use crate::finding::{Finding, Severity};
use crate::job::{Doubt, Odd};
use crate::sound::{Check, Ground};

use super::{amount, in_short};

/// The check.
pub const CHECK: Check = Check {
    name: "amount-unlikely",
    ids: &["M13"],
    severities: &[Severity::Warn],
    title: "an amount is of a size that the trade does not know for its key",
    manual: include_str!("amount_unlikely.md"),
    twins: &[("es", include_str!("amount_unlikely.es.md"))],
    run,
};

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    ground.job.doubts.iter().filter_map(one).collect()
}

fn one(doubt: &Doubt) -> Option<Finding> {
    let said = &doubt.text.text;
    let (title, line, now) = match &doubt.odd {
        Odd::Size(low, high) => (format!("`{}` is {said}, likely is {low} to {high}", doubt.name), against(said, low, high), None),
        Odd::Change(now) => {
            let title = format!("the change makes `{}` {said}, now it is {}", doubt.name, now.text);
            (title, against(said, &now.text, &now.text), Some(now))
        }
        Odd::System(_) => return None,
    };
    let finding = Finding::new(CHECK.name, Severity::Warn, title)
        .at(doubt.text.at, doubt.meaning)
        .source("common practice, no source: the column `likely` of the field tables, and a change of four times and more")
        .help(format!("look at the unit: it is written like `{}`; if it is meant, accept it with the reason", doubt.example))
        .about(doubt.key.as_str());
    let finding = line.into_iter().fold(finding, Finding::derived);
    Some(now.into_iter().fold(finding, |finding, now| finding.related(now.at, "what stands there now")))
}

/// The amount and the end that it is beyond, in one unit; nothing where they are in one already.
fn against(text: &str, low: &str, high: &str) -> Option<String> {
    let (said, own) = amount(text)?;
    let (low, (high, unit)) = (amount(low)?.0, amount(high)?);
    if own == unit || low.si.is_zero() {
        return None;
    }
    let end = if said.compare(&low)? == Ordering::Less { low } else { high };
    Some(format!("{text} = {}, against {}", in_short(&said, unit)?, in_short(&end, unit)?))
}
