//! T6: a fill outside what carved textures have, that no panel bears out.

use crate::finding::{Finding, Severity};
use crate::job::Mean;
use crate::quantity::Num;
use crate::sound::limits::{self, FILL_HIGH, FILL_LOW};
use crate::sound::told::{at_value, number, related_value};
use crate::sound::{Check, Ground};

use super::of::{self, Use};
use super::panels;

/// The check.
pub const CHECK: Check = Check {
    name: "fill-unusual",
    ids: &["T6"],
    severities: &[Severity::Warn],
    title: "a fill is outside what carved textures have",
    manual: include_str!("fill_unusual.md"),
    twins: &[("es", include_str!("fill_unusual.es.md"))],
    run,
};

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    of::uses(ground).iter().filter_map(|one| judge(ground, one)).collect()
}

fn judge(ground: &Ground<'_>, of: &Use<'_>) -> Option<Finding> {
    let fill = of.fill()?;
    let share = &fill.value().si;
    // None and all of it are other checks', and stops.
    if !share.compare(&Num::int(0)).is_gt() || !share.compare(&Num::int(1)).is_lt() {
        return None;
    }
    let (low, high) = (limits::find(FILL_LOW)?, limits::find(FILL_HIGH)?);
    let limit = if share.compare(&low.quantity()?.si).is_lt() {
        low
    } else if share.compare(&high.quantity()?.si).is_gt() {
        high
    } else {
        return None;
    };
    // Measured is measured, however unusual.
    let borne_out = |p: &&crate::job::Panel| panels::grid(of, p).and_then(|g| panels::compare(of, &g)).is_some_and(|c| !c.differs);
    if panels::of(ground, of).iter().any(borne_out) {
        return None;
    }
    let name = &of.texture.name.text;
    let way = if limit.key == FILL_LOW { "under" } else { "over" };
    let title = match &of.texture.mean {
        Mean::Fill(..) => format!("`{name}` has a fill of {}, {way} {}", number(&fill, "%"), limit.value),
        Mean::Stated(mean) => {
            let mean = of::tape(of.site, mean.node());
            format!("`{name}` is {mean} in the mean, a fill of {}, {way} {}", panels::percent(&fill)?, limit.value)
        }
    };
    let finding = Finding::new(CHECK.name, Severity::Warn, title).source(limit.source).help(format!(
        "look at least, most and fill once more, {} to {} is usual; or file the panel that measured it",
        low.value, high.value
    ));
    let finding = at_value(finding, ground, of.given(), "unusual");
    let finding = related_value(finding, ground, of.texture.most.node(), "the faces");
    let finding = match &of.texture.least {
        Some(least) => related_value(finding, ground, least.node(), "the groove bottoms"),
        None => finding,
    };
    Some(of.of(finding, &["mean", "volume", "loads"]))
}
