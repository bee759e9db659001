//! H9: nobody has said where the gray water goes.

use crate::finding::{Finding, Severity};
use crate::job::Site;
use crate::sound::{Check, Ground};

use super::{said, unsaid};

/// The check.
pub const CHECK: Check = Check {
    name: "wash-out-unplanned",
    ids: &["H9"],
    severities: &[Severity::Hold],
    title: "no place is named for the gray water",
    manual: include_str!("wash_out_unplanned.md"),
    twins: &[("es", include_str!("wash_out_unplanned.es.md"))],
    run,
};

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    ground.job.sites.iter().filter_map(one).collect()
}

fn one(site: &Site) -> Option<Finding> {
    let batch = site.batches.first()?;
    if said(site, |s| s.wash_out.as_ref()).is_some() {
        return None;
    }
    let washes = site.water.as_ref().map(|w| w.washes.node().number().plain());
    let how = washes.map_or("washes its mixer".to_owned(), |n| format!("washes its mixer {n} times"));
    let title = format!("{} {how} and names no place for the gray water", site.code.text);
    let finding = Finding::new(CHECK.name, Severity::Hold, title)
        .source(super::wash_out_into_ground::SOURCE)
        .help("name it: `wash_out: lined tub, hauled off when it has set`; ask the owner and the city where it may stand");
    Some(unsaid(finding, site, "wash_out").related(batch.mixer.at, "this is washed out"))
}
