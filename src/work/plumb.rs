//! `plumb`: the derivation of one number, or of every number that was worked.

use crate::quantity::num::exact_text;
use crate::quantity::{Direction, print};
use crate::tally::{Ask, Figure, Voice};
use crate::words::EN;

use super::load::Loaded;
use super::seam::{Options, Outcome, Printed, Product, Tree};

/// Runs the command.
pub fn plumb(options: &Options, figure: Option<&str>) -> Outcome {
    match try_plumb(options, figure) {
        Ok(outcome) | Err(outcome) => outcome,
    }
}

fn try_plumb(options: &Options, figure: Option<&str>) -> Result<Outcome, Outcome> {
    let mut loaded = Loaded::open(options)?;
    loaded.tally.days(&loaded.job);
    let trees = match figure {
        Some(id) => {
            let known = || loaded.tally.figures().map(|f| f.id.clone());
            let found = loaded.tally.figure(id).ok_or_else(|| Outcome::nothing("figure", id, known()))?;
            vec![tree(&loaded, found)]
        }
        None => loaded.tally.figures().filter(|f| f.worked.is_ok()).map(|f| tree(&loaded, f)).collect(),
    };
    Ok(Outcome { product: Product::Trees(trees), ..Outcome::default() })
}

fn tree(loaded: &Loaded, figure: &Figure) -> Tree {
    let (lines, missing) = match &figure.worked {
        Ok(node) => (print::derivation("", node), None),
        Err(why) => (Vec::new(), Some(why.clone())),
    };
    Tree {
        figure: figure.id.clone(),
        label: EN.text(figure.label).to_owned(),
        basis: EN.text(figure.basis.key()).to_owned(),
        missing,
        places: lines.iter().map(|l| l.mark.and_then(|m| loaded.place(m))).collect(),
        lines,
        printed: [false, true].iter().filter_map(|metric| printed(loaded, figure, *metric)).collect(),
    }
}

fn printed(loaded: &Loaded, figure: &Figure, metric: bool) -> Option<Printed> {
    let said = loaded.tally.say(&figure.id, Ask::Own, Voice { lang: EN, metric })?;
    let rule = loaded.tally.rule(figure.role, figure.worked.as_ref().ok()?.value(), metric);
    Some(Printed {
        system: if metric { "metric" } else { "us" },
        text: said.text,
        direction: match rule.direction {
            Direction::Up => "up",
            Direction::Down => "down",
            Direction::Nearest => "nearest",
        },
        measure: exact_fraction(&rule.measure()),
        unit: rule.unit.map_or_else(String::new, |u| u.symbol()),
    })
}

fn exact_fraction(measure: &num_rational::BigRational) -> String {
    if measure.is_integer() { exact_text(measure) } else { format!("{}/{}", measure.numer(), measure.denom()) }
}
