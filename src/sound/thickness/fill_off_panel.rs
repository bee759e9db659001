//! T7: the bags rest on another fill than the panel on record measured.

use crate::finding::{Finding, Severity};
use crate::sound::limits::{self, BY_CHANCE};
use crate::sound::told::{at_value, related_value};
use crate::sound::{Check, Ground};

use super::of::{self, Use};
use super::panels;

/// The check.
pub const CHECK: Check = Check {
    name: "fill-off-panel",
    ids: &["T7"],
    severities: &[Severity::Warn],
    title: "the bags rest on another fill than the panel measured",
    manual: include_str!("fill_off_panel.md"),
    twins: &[("es", include_str!("fill_off_panel.es.md"))],
    run,
};

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    of::uses(ground).iter().filter_map(|one| judge(ground, one)).collect()
}

/// The newest panel speaks; chance is left out of it.
fn judge(ground: &Ground<'_>, of: &Use<'_>) -> Option<Finding> {
    let day = |p: &&crate::job::Panel| (p.date.year, p.date.month, p.date.day);
    let panel = panels::of(ground, of).into_iter().max_by_key(day)?;
    let grid = panels::grid(of, panel)?;
    let compared = panels::compare(of, &grid)?;
    if !compared.differs {
        return None;
    }
    let limit = limits::find(BY_CHANCE)?;
    let (name, what) = (&of.texture.name.text, if of.fill().is_some() { "a fill of " } else { "a mean of " });
    let title = format!("`{name}` is figured on {what}{}, its panel measured {} ± {}", compared.stated, compared.measured, compared.error);
    let points = panel.depths.len();
    let mean = of::tape_to(of.site, grid.mean.node());
    let spread = of::tape_to(of.site, grid.deviation.node());
    let finding = Finding::new(CHECK.name, Severity::Warn, title)
        .derived(format!("{points} depths: mean {mean}, standard deviation {spread}, over √{points} the standard error"))
        .derived(format!("more than {} standard errors apart", limit.value))
        .source(format!("panel record `{}`; {}", panel.id, limit.source))
        .help(format!("write what was measured, about {}, or carve and measure another panel", compared.measured));
    let finding = at_value(finding, ground, of.given(), "figured on this");
    let finding = match panel.depths.first() {
        Some(first) => related_value(finding, ground, first.node(), "the grid begins here"),
        None => finding,
    };
    Some(of.of(finding, &["mean", "volume", "loads"]))
}
