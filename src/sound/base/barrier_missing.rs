//! L2: wood sheathing or framing outdoors without a barrier that equals two layers.

use std::cmp::Ordering;

use crate::finding::{Finding, Severity};
use crate::job::Site;
use crate::sound::phrase::named;
use crate::sound::told::{at_value, number};
use crate::sound::{Check, Ground, limits};

/// The check.
pub const CHECK: Check = Check {
    name: "barrier-missing",
    ids: &["L2"],
    severities: &[Severity::Stop],
    title: "wood outdoors has fewer layers of barrier than it needs",
    manual: include_str!("barrier_missing.md"),
    twins: &[("es", include_str!("barrier_missing.es.md"))],
    run,
};

/// Wood that rots behind a wet coat.
const WOOD: &[&str] = &["sheathing", "plywood", "osb", "wood", "timber", "studs", "boards", "strandboard"];

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    ground.job.sites.iter().filter_map(|site| one(ground, site)).collect()
}

fn one(ground: &Ground<'_>, site: &Site) -> Option<Finding> {
    let base = &site.base;
    let wood = named(&base.what, WOOD);
    if site.climate.place.text != "outdoors" || (wood.is_none() && base.kind.text != "framed") {
        return None;
    }
    let row = limits::find(limits::BARRIER)?;
    let least = row.quantity()?;
    let help = format!(
        "hang {} layers lapped like shingles, or one product that its maker rates as equal, and write `wrb_layers: {}`",
        row.value, row.value
    );
    let finding = match &base.wrb_layers {
        None => {
            let title = format!("wood outdoors and no layer of barrier is stated, {} are needed", row.value);
            Finding::new(CHECK.name, Severity::Stop, title).at(base.kind.at, "no `wrb_layers` beside it")
        }
        Some(layers) if layers.value().compare(&least) == Some(Ordering::Less) => {
            let count = number(layers.node(), "");
            let title = format!("wood outdoors behind {count} of {} layers of barrier", row.value);
            at_value(Finding::new(CHECK.name, Severity::Stop, title), ground, layers.node(), "layers of barrier")
        }
        Some(_) => return None,
    };
    let finding = match wood {
        Some((word, at)) => finding.related(at, format!("`{word}` rots where water stays")),
        None => finding,
    };
    Some(finding.source(row.source).help(help).figure(format!("{}.paper_rolls", site.id)))
}
