//! D5: type smaller than the distance class allows.

use std::cmp::Ordering;

use crate::finding::{Finding, Severity};
use crate::job::Distance;
use crate::quantity::Num;
use crate::sound::{Check, Ground, limits};

use super::fitted;

/// The check.
pub const CHECK: Check = Check {
    name: "type-below-class",
    ids: &["D5"],
    severities: &[Severity::Stop],
    title: "type is smaller than its distance class allows",
    manual: include_str!("type_below_class.md"),
    twins: &[("es", include_str!("type_below_class.es.md"))],
    run,
};

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    let mut found = Vec::new();
    for fit in ground.fits {
        let Some((card, _)) = fitted::card(ground, fit) else { continue };
        let Some((least, row)) = limits::least_type(card.reads) else { continue };
        // A layout's sizes are floats: a hundredth of a point is no smaller type.
        let Some(size) = Num::real(fit.smallest_pt + 0.01) else { continue };
        if fit.smallest_pt <= 0.0 || size.compare(&least) != Ordering::Less {
            continue;
        }
        let class = match card.reads {
            Distance::Wall => "WALL",
            Distance::Hand => "HAND",
            Distance::Desk => "DESK",
        };
        let title = format!("{} has type of {:.1} pt, {class} wants {} pt or more", fit.face, fit.smallest_pt, least.plain());
        let finding = Finding::new(CHECK.name, Severity::Stop, title)
            .source(row.source)
            .figure(&fit.face)
            .help("set it larger in the page template, or give the card another distance class with the reader it has");
        let edition = card.editions.iter().find(|e| e.lang == fit.lang).or(card.editions.first());
        found.push(match edition {
            Some(edition) => finding.at(edition.title.at, "this face"),
            None => finding,
        });
    }
    found
}
