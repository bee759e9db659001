//! What many checks say in the same way: printed texts as a screen shows them, places of authored values.

use std::collections::BTreeMap;

use num_rational::BigRational;

use crate::finding::Finding;
use crate::quantity::expr::How;
use crate::quantity::num::Direction;
use crate::quantity::show::{self, JOIN, Look};
use crate::quantity::units::{UnitExpr, find_expr};
use crate::quantity::{Node, Quantity};
use crate::source::Span;
use crate::tally::{Ask, PrintedValue, Voice};
use crate::words::EN;

use super::Ground;

/// Screens are in English, whatever the paper speaks.
pub(super) fn voice(metric: bool) -> Voice {
    Voice { lang: EN, metric }
}

/// A printed text with ordinary spaces, as an author would type it.
pub(super) fn typed(text: &str) -> String {
    text.replace(JOIN, " ")
}

/// The printed value of a figure; `None` when the figure is missing or could not be worked.
pub(super) fn printed(ground: &Ground<'_>, id: &str, metric: bool) -> Option<PrintedValue> {
    ground.tally.say(id, Ask::Own, voice(metric)).filter(|value| value.number.is_some())
}

/// The printed text of a figure, or nothing.
pub(super) fn text(ground: &Ground<'_>, id: &str, metric: bool) -> Option<String> {
    printed(ground, id, metric).map(|value| typed(&value.text))
}

/// Text and place of the first authored value that a node rests on.
pub(super) fn authored(ground: &Ground<'_>, node: &Node) -> Option<(String, Span)> {
    node.leaves().iter().find_map(|leaf| match leaf.how() {
        How::Authored { text, mark, .. } => mark.map(|m| (text.to_string(), (ground.span_of)(m))),
        _ => None,
    })
}

/// Puts a finding at an authored value; a value that came from no file leaves it without a place.
pub(super) fn at_value(finding: Finding, ground: &Ground<'_>, node: &Node, label: impl Into<String>) -> Finding {
    match authored(ground, node) {
        Some((_, span)) => finding.at(span, label),
        None => finding,
    }
}

/// Relates a finding to an authored value, if it came from a file.
pub(super) fn related_value(finding: Finding, ground: &Ground<'_>, node: &Node, label: &str) -> Finding {
    match authored(ground, node) {
        Some((_, span)) => finding.related(span, label),
        None => finding,
    }
}

/// A limit written in a unit, rounded down to a measure: a limit never grows on its way to the screen.
pub(super) fn limit(value: &Quantity, unit: UnitExpr, measure: (i64, i64)) -> Option<(BigRational, String)> {
    let measure = BigRational::new(measure.0.into(), measure.1.max(1).into());
    let number = value.in_unit(unit)?.round(Direction::Down, &measure);
    let text = typed(&show::text(&number, Some(unit), Look::Mixed, EN, false));
    let decimal = if number.is_integer() { text } else { typed(&show::text(&number, Some(unit), Look::Decimal(1), EN, false)) };
    Some((number, decimal))
}

/// A node's number in a unit, as the derivations print it: `33/16 gal` is `2.0625 gal`.
pub(super) fn number(node: &Node, unit: &str) -> String {
    match find_expr(unit).and_then(|u| node.value().in_unit(u)) {
        Some(number) => format!("{} {}", number.plain(), unit.replace("ft3", "ft³")),
        None => node.number().plain(),
    }
}

/// A thickness as a tape shows it: sixteenths where it stands on one, else a decimal.
pub(super) fn length(node: &Node, unit: &str) -> String {
    let exact = find_expr(unit).and_then(|u| node.value().exact_in(u));
    match exact.filter(|n| unit == "in" && *n.denom() <= 16.into()) {
        Some(number) => format!("{} in", typed(&show::mixed(&number))),
        None => number(node, unit),
    }
}

/// A unit system in words.
pub(super) fn system_name(metric: bool) -> &'static str {
    if metric { "metric" } else { "US" }
}

/// The verb of a count: `1 load weighs`, `2 loads weigh`.
pub(super) fn verb(count: &Quantity, one: &'static str, many: &'static str) -> &'static str {
    if count.si.compare(&crate::quantity::Num::int(1)) == std::cmp::Ordering::Greater { many } else { one }
}

/// Keeps the first finding of each place: a text is rendered for many subjects, its mistake is one.
pub(super) fn once_a_place(found: Vec<Finding>) -> Vec<Finding> {
    let mut kept: Vec<Finding> = Vec::new();
    let mut places: BTreeMap<(&'static str, Span), usize> = BTreeMap::new();
    for finding in found {
        let place = finding.at.as_ref().map(|(span, _)| (finding.name, *span));
        let same = place.and_then(|p| places.get(&p)).and_then(|i| kept.get_mut(*i));
        match same {
            // The other subjects' arithmetic is worth a line: the same slot is wrong by another amount there.
            Some(first) => {
                for line in finding.derived {
                    if !first.derived.contains(&line) {
                        first.derived.push(line);
                    }
                }
                for id in finding.figures {
                    if !first.figures.contains(&id) {
                        first.figures.push(id);
                    }
                }
            }
            None => {
                places.extend(place.map(|p| (p, kept.len())));
                kept.push(finding);
            }
        }
    }
    kept
}
