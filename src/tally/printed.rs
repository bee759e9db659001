//! Printed values: what the paper says. Only [`Tally::say`] makes one.

use num_rational::BigRational;
use num_traits::Zero;

use crate::quantity::num::Num;
use crate::quantity::show::{self, Look};
use crate::quantity::units::{UnitExpr, find_expr};
use crate::words::Lang;

use super::Tally;
use super::role::{Role, Rule};

/// What a slot asks for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Default)]
pub enum Ask {
    /// The document's own unit system.
    #[default]
    Own,
    /// The other unit system.
    Second,
    /// US units.
    Us,
    /// Metric units.
    Metric,
    /// Own, then the other in parentheses.
    Both,
    /// The unrounded exact value.
    Exact,
    /// Own, with the unit's name written out.
    Long,
}

impl Ask {
    /// Its name in attachments and in the register.
    pub fn key(self) -> &'static str {
        match self {
            Ask::Own => "own",
            Ask::Second => "second",
            Ask::Us => "us",
            Ask::Metric => "metric",
            Ask::Both => "both",
            Ask::Exact => "exact",
            Ask::Long => "long",
        }
    }
}

/// How a document speaks: its language and unit system.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Voice {
    /// Language.
    pub lang: Lang,
    /// Metric first.
    pub metric: bool,
}

/// A value as printed in one document.
#[derive(Clone, Debug, PartialEq)]
pub struct PrintedValue {
    /// Figure id.
    pub figure: String,
    /// What was asked.
    pub ask: Ask,
    /// True if printed in metric units.
    pub metric: bool,
    /// The printed number, exact, in `unit`; `None` for a missing value.
    pub number: Option<BigRational>,
    /// Unit of print.
    pub unit: Option<UnitExpr>,
    /// Text in the document's language, numbers and units joined by no-break spaces.
    pub text: String,
}

impl Tally {
    /// How a value is rounded and written in a unit system.
    pub fn rule(&self, role: Role, value: &crate::quantity::Quantity, metric: bool) -> Rule {
        fine(role, role.rule(metric, self.house()), value)
    }

    /// Text of a value that is no figure, by a role: cells of a table for reading, limits that somebody publishes.
    pub fn text_of(&self, role: Role, value: &crate::quantity::Quantity, voice: Voice) -> String {
        self.print_of(role, value, voice).2
    }

    /// A value that is no figure as a paper prints it by a role: number, unit, text.
    pub fn print_of(&self, role: Role, value: &crate::quantity::Quantity, voice: Voice) -> (BigRational, Option<UnitExpr>, String) {
        let rule = self.rule(role, value, voice.metric);
        let (number, unit) = round(value, rule);
        let text = show::text(&number, unit, rule.look, voice.lang, false);
        (number, unit, text)
    }

    /// The printed value of a figure in a document's voice; `None` if there is no such figure.
    ///
    /// Rounds from the unrounded value by the figure's role, in whichever unit system is asked for.
    pub fn say(&self, id: &str, ask: Ask, voice: Voice) -> Option<PrintedValue> {
        let figure = self.figure(id)?;
        let metric = match ask {
            Ask::Us => false,
            Ask::Metric => true,
            Ask::Second => !voice.metric,
            _ => voice.metric,
        };
        let Ok(node) = &figure.worked else {
            let text = voice.lang.text("value.missing").to_owned();
            return Some(PrintedValue { figure: id.to_owned(), ask, metric, number: None, unit: None, text });
        };
        let rule = self.rule(figure.role, node.value(), metric);
        let (number, unit) = round(node.value(), rule);
        let spelled = ask == Ask::Long;
        let text = match ask {
            Ask::Exact => exact(node.value(), rule),
            Ask::Both => {
                let other = self.rule(figure.role, node.value(), !metric);
                let (n, u) = round(node.value(), other);
                let first = show::text(&number, unit, rule.look, voice.lang, false);
                let second = show::text(&n, u, other.look, voice.lang, false);
                if first == second { first } else { format!("{first} ({second})") }
            }
            _ => show::text(&number, unit, rule.look, voice.lang, spelled),
        };
        Some(PrintedValue { figure: id.to_owned(), ask, metric, number: Some(number), unit, text })
    }
}

/// Water under the smallest mark would round down to nothing, which reads as "no water": it is said in fluid ounces.
fn fine(role: Role, rule: Rule, value: &crate::quantity::Quantity) -> Rule {
    let nothing = |rule: Rule| round(value, rule).0.is_zero();
    if role.is_water() && rule.look == Look::Crew && !value.si.is_zero() && nothing(rule) {
        return Rule { unit: find_expr("fl oz"), measure: (1, 1), look: Look::Mixed, ..rule };
    }
    rule
}

fn round(value: &crate::quantity::Quantity, rule: Rule) -> (BigRational, Option<UnitExpr>) {
    let number = match rule.unit {
        Some(unit) => value.in_unit(unit).unwrap_or_else(|| value.si.clone()),
        None => value.si.clone(),
    };
    (number.round(rule.direction, &rule.measure()), rule.unit)
}

fn exact(value: &crate::quantity::Quantity, rule: Rule) -> String {
    let number: Num = rule.unit.and_then(|u| value.in_unit(u)).unwrap_or_else(|| value.si.clone());
    match rule.unit {
        Some(u) => format!("{}{}{}", number.plain(), show::JOIN, u.symbol()),
        None => number.plain(),
    }
}
