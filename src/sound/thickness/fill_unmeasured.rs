//! T7: the bags of a texture rest on a fill that nobody has measured.

use crate::finding::{Finding, Severity};
use crate::job::Mean;
use crate::sound::told::{at_value, number};
use crate::sound::{Check, Ground};

use super::of::{self, Use};
use super::panels;

/// The check.
pub const CHECK: Check = Check {
    name: "fill-unmeasured",
    ids: &["T7"],
    severities: &[Severity::Warn],
    title: "the bags rest on a fill that no panel has measured",
    manual: include_str!("fill_unmeasured.md"),
    twins: &[("es", include_str!("fill_unmeasured.es.md"))],
    run,
};

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    of::uses(ground).iter().filter_map(|one| judge(ground, one)).collect()
}

fn judge(ground: &Ground<'_>, of: &Use<'_>) -> Option<Finding> {
    if panels::of(ground, of).iter().any(|panel| panels::grid(of, panel).is_some()) {
        return None;
    }
    let name = &of.texture.name.text;
    let title = match &of.texture.mean {
        Mean::Fill(_, fill) => format!("`{name}` is figured on a fill of {} that no panel has measured", number(fill.node(), "%")),
        Mean::Stated(mean) => format!("`{name}` is figured on {} in the mean that no panel has measured", of::tape(of.site, mean.node())),
    };
    let finding = Finding::new(CHECK.name, Severity::Warn, title)
        .source("common practice, no source: a fill from a book may be off by 0.08, and bags by about one in seven")
        .help(format!(
            "carve a panel of it, pin a blind grid of depths, and file it in `records/` as `kind: panel`, `site: {}`, `texture: {name}`",
            of.site.code.text
        ));
    let mut finding = at_value(finding, ground, of.given(), "from a book");
    // A record that does not count says why it does not.
    for panel in crate::tally::panels::of(ground.job, of.site).filter(|p| p.texture.text == *name) {
        finding = if panel.stood.text == "flat" {
            finding.related(panel.stood.at, "this one lay flat: nothing hung while it set")
        } else if panel.mix.text != of.site.carve_mix.text {
            finding.related(panel.mix.at, "this one is of another mix")
        } else {
            finding.related(panel.texture.at, "the grid of this one gives no fill")
        };
    }
    Some(of.of(finding, &["mean", "volume", "loads"]))
}
