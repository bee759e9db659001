//! L8: framing whose bending is not stated, or over the limit of plaster.

use std::cmp::Ordering;

use crate::finding::{Finding, Severity};
use crate::job::Site;
use crate::sound::told::{at_value, number};
use crate::sound::{Check, Ground, limits};

/// The check.
pub const CHECK: Check = Check {
    name: "framing-bends-too-far",
    ids: &["L8"],
    severities: &[Severity::Hold],
    title: "the framing bends too far, or nothing says how far",
    manual: include_str!("framing_bends_too_far.md"),
    twins: &[("es", include_str!("framing_bends_too_far.es.md"))],
    run,
};

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    ground.job.sites.iter().filter(|s| s.base.kind.text == "framed").filter_map(|site| one(ground, site)).collect()
}

/// `L/360` is written 360: the larger the number, the stiffer the frame.
fn one(ground: &Ground<'_>, site: &Site) -> Option<Finding> {
    let row = limits::find(limits::DEFLECTION)?;
    let finding = match site.details.as_ref().and_then(|d| d.deflection.as_ref()) {
        None => {
            let title = format!("{} is framed and nothing says how far the framing bends, at most L/{}", site.code.text, row.value);
            Finding::new(CHECK.name, Severity::Hold, title).at(site.base.kind.at, "no `details.deflection`").absent()
        }
        Some(bends) if bends.value().compare(&row.quantity()?) == Some(Ordering::Less) => {
            let title = format!("the framing of {} bends L/{}, at most L/{}", site.code.text, number(bends.node(), ""), row.value);
            let finding = Finding::new(CHECK.name, Severity::Hold, title).derived(format!(
                "on a span of 96 in: 96 ÷ {} against 96 ÷ {}",
                number(bends.node(), ""),
                row.value
            ));
            at_value(finding, ground, bends.node(), "span over the most it bends").related(site.base.kind.at, "framed")
        }
        Some(_) => return None,
    };
    let help = format!(
        "ask the engineer of the framing; where the drawings say L/{} or stiffer, write `details: {{deflection: {}}}`",
        row.value, row.value
    );
    Some(finding.source(row.source).help(help).figure(format!("{}.weight_allowed", site.id)))
}
