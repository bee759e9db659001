//! D3: an instruction speaks in units of the other system.

use num_rational::BigRational;

use crate::finding::{Finding, Severity};
use crate::prose::Typed;
use crate::prose::block::Use;
use crate::quantity::expr::{is_metric, usual_unit};
use crate::quantity::num::Direction;
use crate::quantity::show::{self, Look};
use crate::quantity::units::{UnitExpr, find_expr};
use crate::quantity::{Dim, Num, Quantity};
use crate::sound::told::{once_a_place, system_name, typed};
use crate::sound::{Check, Ground, Seen};
use crate::words::EN;

/// The check.
pub const CHECK: Check = Check {
    name: "units-mixed",
    ids: &["D3"],
    severities: &[Severity::Stop],
    title: "an instruction speaks in units of the other system",
    manual: include_str!("units_mixed.md"),
    twins: &[("es", include_str!("units_mixed.es.md"))],
    run,
};

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    let mut found = Vec::new();
    for seen in ground.texts() {
        let said: Vec<&Typed> = seen.typed().iter().chain(seen.fixed()).collect();
        found.extend(said.iter().filter_map(|one| hand(seen, one, &said)));
        found.extend(seen.doc.values.iter().filter_map(|one| slot(seen, one)));
    }
    once_a_place(found)
}

/// An amount by hand in the other system, with no amount of our own system beside it that says the same.
fn hand(seen: &Seen<'_>, one: &Typed, all: &[&Typed]) -> Option<Finding> {
    let metric = seen.voice.metric;
    let quantity = one.quantity.as_ref().filter(|q| system(one, q).is_some_and(|m| m != metric))?;
    let own = handy(quantity, metric)?;
    let beside = |other: &&Typed| {
        let theirs = other.quantity.as_ref().filter(|q| q.dim == quantity.dim && system(other, q) == Some(metric));
        other.around == one.around && theirs.is_some_and(|q| close(q, quantity))
    };
    if all.iter().copied().any(|other| beside(&other)) || printed_beside(seen, one, quantity) {
        return None;
    }
    let text = one.text.replace('\u{a0}', " ");
    let number = quantity.in_unit(own)?.round(Direction::Down, &BigRational::new(1.into(), 100.into()));
    let ours = typed(&show::text(&number, Some(own), Look::Decimal(2), EN, false));
    let title =
        format!("`{text}` is in {} units, the paper of {} is in {} units", system_name(!metric), seen.scope.subject, system_name(metric));
    let finding = Finding::new(CHECK.name, Severity::Stop, title).at(one.span, "another system").source(SOURCE);
    let finding = finding.derived(format!("{text} = {ours}, rounded down"));
    Some(
        finding.help(format!(
            "write it in {} units first, the other beside it in brackets; a slot with `| both` does that",
            system_name(metric)
        )),
    )
}

/// A slot that prints the other system where nothing prints the figure in our own.
fn slot(seen: &Seen<'_>, one: &Use) -> Option<Finding> {
    let metric = seen.voice.metric;
    let foreign = |u: &Use| u.value.unit.is_some_and(|unit| !neutral(unit.dim()) && u.value.metric != metric);
    if !foreign(one) || seen.doc.values.iter().any(|u| u.figure == one.figure && u.value.metric == metric) {
        return None;
    }
    let text = typed(&one.value.text);
    let title = format!(
        "`{text}` is printed in {} units alone, the paper of {} is in {} units",
        system_name(!metric),
        seen.scope.subject,
        system_name(metric)
    );
    let finding = Finding::new(CHECK.name, Severity::Stop, title).at(one.at, "another system").source(SOURCE).figure(&*one.figure);
    Some(finding.help(format!("print it in {} units before it, or use `| both`", system_name(metric))))
}

/// True if a value of the same sentence, printed by a slot, says the same in our own system.
fn printed_beside(seen: &Seen<'_>, one: &Typed, quantity: &Quantity) -> bool {
    let near = seen.sentences().iter().filter(|s| s.holds(one.span));
    let values = near.flat_map(|s| s.values().collect::<Vec<_>>()).filter_map(|i| seen.doc.values.get(i));
    values.filter(|u| u.value.metric == seen.voice.metric).any(|u| {
        let own = u.value.number.clone().zip(u.value.unit).map(|(n, unit)| Quantity::of(&Num::Exact(n), unit));
        own.is_some_and(|own| own.dim == quantity.dim && close(&own, quantity))
    })
}

/// Within a twentieth: a second unit is rounded.
fn close(a: &Quantity, b: &Quantity) -> bool {
    let (a, b) = (a.si.to_f64(), b.si.to_f64());
    (a - b).abs() <= 0.05 * b.abs()
}

/// The unit that a crew would use for it.
fn handy(quantity: &Quantity, metric: bool) -> Option<UnitExpr> {
    let short = quantity.dim == Dim::LENGTH && quantity.si.to_f64() < 1.0;
    match (short, metric) {
        (true, true) => find_expr("mm"),
        (true, false) => find_expr("in"),
        _ if quantity.dim == Dim::VOLUME && !metric => find_expr("gal"),
        _ => usual_unit(quantity.dim, metric),
    }
}

/// Metric or not, told by the unit as written; none for times, counts and the like.
fn system(said: &Typed, quantity: &Quantity) -> Option<bool> {
    if neutral(quantity.dim) {
        return None;
    }
    let text = said.text.replace('\u{a0}', " ");
    let words = text.split(|c: char| c.is_whitespace() || c.is_ascii_digit() || matches!(c, '/' | '-' | '.' | ','));
    // The unit stands last, and may be more than a word: `sq ft`.
    let words: Vec<&str> = words.filter(|w| !w.is_empty()).collect();
    let last = words.last()?;
    let symbol = text.rsplit(|c: char| c.is_ascii_digit() && c != '2' && c != '3').next().unwrap_or("").trim();
    let unit = find_expr(symbol).or_else(|| find_expr(last)).or_else(|| find_expr(&last.to_lowercase()))?;
    Some(is_metric(unit))
}

/// True for what both systems measure alike.
fn neutral(dim: Dim) -> bool {
    matches!(dim, Dim::NONE | Dim::TIME | Dim::MONEY | Dim::FREQUENCY)
}

const SOURCE: &str = "common practice, no source: the pail has one row of marks that the crew reads";
