//! L3: work over a barrier outdoors whose foot stands too near earth or paving, or nothing says how near.

use std::cmp::Ordering;

use crate::finding::{Finding, Severity};
use crate::job::Site;
use crate::quantity::Worked;
use crate::quantity::expr::Length;
use crate::sound::told::{at_value, length, number};
use crate::sound::{Check, Ground, limits};

/// The check.
pub const CHECK: Check = Check {
    name: "weep-clearance-short",
    ids: &["L3"],
    severities: &[Severity::Hold],
    title: "the foot of the work stands too near the ground for water to get out",
    manual: include_str!("weep_clearance_short.md"),
    twins: &[("es", include_str!("weep_clearance_short.es.md"))],
    run,
};

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    ground.job.sites.iter().flat_map(|site| one(ground, site)).collect()
}

/// A wall whose barrier brings water down to its foot: the coats hang on lath before it.
fn drained(site: &Site) -> bool {
    let base = &site.base;
    let barrier = base.wrb_layers.as_ref().is_some_and(|n| number(n.node(), "") != "0");
    site.climate.place.text == "outdoors" && site.surfaces.iter().any(|s| s.scratch.is_some()) && (barrier || base.kind.text == "framed")
}

fn one(ground: &Ground<'_>, site: &Site) -> Vec<Finding> {
    if !drained(site) {
        return Vec::new();
    }
    let mut all: Vec<(&Worked<Length>, &str, &str)> = Vec::new();
    if let Some(details) = &site.details {
        all.extend(details.weep_earth.as_ref().map(|w| (w, "earth", limits::WEEP_EARTH)));
        all.extend(details.weep_paving.as_ref().map(|w| (w, "paving", limits::WEEP_PAVING)));
    }
    if all.is_empty() {
        let (Some(earth), Some(paving)) = (limits::find(limits::WEEP_EARTH), limits::find(limits::WEEP_PAVING)) else { return Vec::new() };
        let title = format!(
            "the barrier of {} ends at a foot that no key places, water gets out {} above earth or {} above paving",
            site.code.text, earth.value, paving.value
        );
        let at = site.details.as_ref().map_or(site.base.kind.at, |d| d.at);
        let finding = Finding::new(CHECK.name, Severity::Hold, title).at(at, "no weep height stated").absent();
        return vec![
            finding.source(earth.source).help(format!(
                "measure it and write `details: {{weep_earth: {}}}` or `weep_paving`, whichever it stands over",
                earth.value
            )),
        ];
    }
    all.into_iter().filter_map(|(stands, over, key)| short(ground, site, stands, over, key)).collect()
}

fn short(ground: &Ground<'_>, site: &Site, stands: &Worked<Length>, over: &str, key: &str) -> Option<Finding> {
    let row = limits::find(key)?;
    if stands.value().compare(&row.quantity()?) != Some(Ordering::Less) {
        return None;
    }
    let unit = if site.metric { "mm" } else { "in" };
    let title = format!("the work ends {} above {over}, water gets out at {} or more", length(stands.node(), unit), row.value);
    let finding = Finding::new(CHECK.name, Severity::Hold, title)
        .source(row.source)
        .help(format!("end the art higher on a weep screed, at {} or more, and paint what shows below it", row.value))
        .about(over.to_owned());
    Some(at_value(finding, ground, stands.node(), "weep height"))
}
