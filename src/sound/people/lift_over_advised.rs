//! H1: a lift by hand is over what the lifting equation advises, and no measure is named.

use crate::finding::{Finding, Severity};
use crate::sound::{Check, Ground, limits};

/// The check.
pub const CHECK: Check = Check {
    name: "lift-over-advised",
    ids: &["H1"],
    severities: &[Severity::Warn],
    title: "a lift is heavier than advised, and no measure is named",
    manual: include_str!("lift_over_advised.md"),
    twins: &[("es", include_str!("lift_over_advised.es.md"))],
    run,
};

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    let (Some(over), Some(far)) = (limits::find(limits::LIFT), limits::find(limits::LIFT_FAR)) else { return Vec::new() };
    super::lift_far_over_advised::over(ground, CHECK.name, Severity::Warn, over, Some(far))
}
