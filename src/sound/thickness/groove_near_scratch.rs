//! T9: grooves end nearer to scratch coat or lath than practice allows, though the mix sheet would.

use crate::finding::{Finding, Severity};
use crate::sound::limits::{self, GROOVE_COVER};
use crate::sound::told::related_value;
use crate::sound::{Check, Ground};

use super::groove_under_mix::{cover, told, under};
use super::of::{self, Use};

/// The check.
pub const CHECK: Check = Check {
    name: "groove-near-scratch",
    ids: &["T9"],
    severities: &[Severity::Hold],
    title: "grooves end too near to what is under the carve coat",
    manual: include_str!("groove_near_scratch.md"),
    twins: &[("es", include_str!("groove_near_scratch.es.md"))],
    run,
};

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    of::uses(ground).iter().filter_map(|one| judge(ground, one)).collect()
}

/// Under the mix's own least it is another check's, and a stop.
fn judge(ground: &Ground<'_>, of: &Use<'_>) -> Option<Finding> {
    let limit = limits::find(GROOVE_COVER)?;
    let least = &of::carve(ground, of.site)?.thickness.0;
    let left = cover(of)?;
    let short = left.value().si.compare(&limit.quantity()?.si).is_lt();
    if !short || left.value().si.compare(&least.value().si).is_lt() {
        return None;
    }
    let (end, wants) = (of::tape(of.site, &left), of::row(of.site, limit));
    let title = format!("grooves of `{}` end {end} over {}, {wants} is the least cover that lasts", of.texture.name.text, under(of));
    let finding = Finding::new(CHECK.name, Severity::Hold, title)
        .source(limit.source)
        .help(format!("leave {wants} or more under every groove, or let a role accept it that has seen such a groove last"));
    told(ground, of, related_value(finding, ground, least.node(), "the mix sheet would allow it"))
}
