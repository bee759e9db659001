//! C3: color or sealer planned without days, pH and moisture that must come first.

use crate::finding::{Finding, Severity};
use crate::job::Site;
use crate::sound::told::at_value;
use crate::sound::{Check, Ground};

/// The check.
pub const CHECK: Check = Check {
    name: "finish-gate-missing",
    ids: &["C3"],
    severities: &[Severity::Hold],
    title: "color and sealer are planned, and nothing says when the wall is ready",
    manual: include_str!("finish_gate_missing.md"),
    twins: &[("es", include_str!("finish_gate_missing.es.md"))],
    run,
};

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    ground.job.sites.iter().filter_map(|site| one(ground, site)).collect()
}

/// All three are wanted: days alone say nothing of the surface, a dry surface nothing of its lime.
fn one(ground: &Ground<'_>, site: &Site) -> Option<Finding> {
    let finish = site.finish.as_ref()?;
    let gate = site.gate.as_ref();
    let lacks = [
        ("days", "after: 14 days", gate.is_none_or(|g| g.after.is_none())),
        ("pH", "ph: 9.5", gate.is_none_or(|g| g.ph.is_none())),
        ("moisture", "moisture: no dark patch under taped film overnight", gate.is_none_or(|g| g.moisture.is_none())),
    ];
    let missing: Vec<&str> = lacks.iter().filter(|(_, _, lacks)| *lacks).map(|(what, _, _)| *what).collect();
    if missing.is_empty() {
        return None;
    }
    let add: Vec<&str> = lacks.iter().filter(|(_, _, lacks)| *lacks).map(|(_, key, _)| *key).collect();
    let title =
        format!("color and sealer are planned for {}, of days, pH and moisture the gate lacks {}", site.code.text, missing.join(", "));
    let finding = Finding::new(CHECK.name, Severity::Hold, title)
        .absent()
        .source("common practice, no source: fresh cement is wet and caustic, it burns color and turns sealer white; their sheets decide")
        .help(format!("add to `color_gate`, by the sheet of the color or sealer, such as `{}`", add.join(", ")))
        .figure(format!("{}.finish_volume", site.id));
    Some(match gate {
        Some(gate) => finding.at(gate.at, "the gate as stated"),
        None => at_value(finding, ground, finish.coats.node(), "planned here, without `color_gate`"),
    })
}
