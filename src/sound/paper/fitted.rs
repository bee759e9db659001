//! Faces that did not fit: shared by originals and twins.

use crate::finding::{Finding, Severity};
use crate::job::{Card, Fit};
use crate::sound::{Ground, limits};

/// The card of a fit and whether the face is a twin.
pub(in crate::sound) fn card<'g>(ground: &'g Ground<'_>, fit: &Fit) -> Option<(&'g Card, bool)> {
    let card = ground.job.cards.iter().find(|c| c.id == fit.card)?;
    let original = card.editions.first().map_or("en", |e| e.lang.as_str());
    Some((card, fit.lang != original))
}

/// The finding of a face that took more than its page; `None` if it fits.
pub(in crate::sound) fn overflow(card: &Card, fit: &Fit, name: &'static str, help: &str) -> Option<Finding> {
    if fit.pages <= 1 && fit.lines_over == 0 {
        return None;
    }
    let (least, row) = limits::least_type(card.reads)?;
    let size = least.plain();
    let cut = fit.lines_over;
    let title = if cut == 0 {
        format!("{} takes {} pages, a face is 1", fit.face, fit.pages)
    } else {
        format!("{}: {} lines; {} fit at {size} pt, cut {cut}", fit.face, fit.lines_room + cut, fit.lines_room)
    };
    let mut finding = Finding::new(name, Severity::Stop, title).source(row.source).help(help);
    if cut > 0 {
        finding = finding.derived(format!("{} + {cut} = {} lines of {size} pt", fit.lines_room, fit.lines_room + cut));
    }
    let edition = card.editions.iter().find(|e| e.lang == fit.lang).or(card.editions.first())?;
    Some(finding.at(edition.title.at, "this face").figure(&fit.face))
}
