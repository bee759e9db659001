//! C3: color or sealer planned before its days are over, or on a surface with more lime than coatings take.

use std::cmp::Ordering;

use super::days::{mud, number, over, said, whole};
use crate::finding::{Finding, Severity};
use crate::job::{Gate, Site};
use crate::sound::told::{at_value, number as plain, related_value, text};
use crate::sound::{Check, Ground, limits};

/// The check.
pub const CHECK: Check = Check {
    name: "finish-before-gate",
    ids: &["C3"],
    severities: &[Severity::Hold],
    title: "color or sealer comes before the wall is ready",
    manual: include_str!("finish_before_gate.md"),
    twins: &[("es", include_str!("finish_before_gate.es.md"))],
    run,
};

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    let gates = ground.job.sites.iter().filter_map(|site| Some((site, site.gate.as_ref()?)));
    gates.flat_map(|(site, gate)| early(ground, site, gate).into_iter().chain(caustic(ground, site, gate))).collect()
}

/// The planned day against the gate's own days and against the end of the cure.
fn early(ground: &Ground<'_>, site: &Site, gate: &Gate) -> Option<Finding> {
    let starts = gate.starts.as_ref()?;
    let (_, last) = mud(site)?;
    let (day, mud) = (number(starts)?, number(last)?);
    let gone = day.clone() - mud;
    let id = format!("{}.cure_over", site.id);
    let after = gate.after.as_ref().filter(|a| whole(a).is_some_and(|days| gone < days));
    let inside = over(ground, site).is_some_and(|end| day <= end);
    let finding = match (after, inside) {
        (Some(after), _) => {
            let title = format!("color starts {} after the last mud, its gate is {}", said(&gone), said(&whole(after)?));
            let finding =
                Finding::new(CHECK.name, Severity::Hold, title).derived(format!("{} to {} = {}", last.iso(), starts.iso(), said(&gone)));
            related_value(finding, ground, after.node(), "least time since the last mud")
        }
        (None, true) => {
            let title = format!("color starts on {}, the cure is over at the end of {}", starts.iso(), text(ground, &id, site.metric)?);
            Finding::new(CHECK.name, Severity::Hold, title).related(last.at, "last mud on the wall")
        }
        (None, false) => return None,
    };
    Some(
        finding
            .at(starts.at, "planned start")
            .source("sheet of the color or sealer, as stated; days are the least, pH and moisture are still measured")
            .help("start later, and only when days, pH and moisture are all there")
            .figure(id)
            .figure(format!("{}.finish_volume", site.id)),
    )
}

/// The pH that the gate lets pass.
fn caustic(ground: &Ground<'_>, site: &Site, gate: &Gate) -> Option<Finding> {
    let ph = gate.ph.as_ref()?;
    let row = limits::find(limits::PH)?;
    if ph.value().compare(&row.quantity()?) != Some(Ordering::Greater) {
        return None;
    }
    let title = format!("the gate lets pH {} pass, most coatings take at most {}", plain(ph.node(), ""), row.value);
    let finding = Finding::new(CHECK.name, Severity::Hold, title)
        .source(row.source)
        .help(format!("wait and measure again; write `ph: {}` or less, or what the sheet of the color allows", row.value))
        .about("ph".to_owned())
        .figure(format!("{}.finish_volume", site.id));
    Some(at_value(finding, ground, ph.node(), "highest pH that passes"))
}
