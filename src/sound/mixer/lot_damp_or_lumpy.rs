//! M15: a lot is damp or lumpy.

use crate::finding::{Finding, Severity};
use crate::job::{Lot, Mix, Site};
use crate::sound::{Check, Ground};

/// The check.
pub const CHECK: Check = Check {
    name: "lot-damp-or-lumpy",
    ids: &["M15"],
    severities: &[Severity::Stop],
    title: "a lot is damp or lumpy",
    manual: include_str!("lot_damp_or_lumpy.md"),
    twins: &[("es", include_str!("lot_damp_or_lumpy.es.md"))],
    run,
};

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    super::lots(ground.job).filter_map(|(site, mix, lot)| one(site, mix, lot)).collect()
}

fn one(site: &Site, mix: &Mix, lot: &Lot) -> Option<Finding> {
    let state = lot.state.text.as_str();
    if state == "dry" {
        return None;
    }
    let material = &lot.material.text;
    let title = format!("lot {} of {material} for {} is {state}, only a dry bag goes in", lot.number.text, mix.name.text);
    let finding = Finding::new(CHECK.name, Severity::Stop, title)
        .at(lot.state.at, "written down by who looked")
        .source("common practice, no source, and every bag says it: cement that has met water has spent its strength")
        .help("send the lot back, take it off this list and write down the one that replaces it; nobody sieves it or breaks the lumps")
        .about(lot.number.text.clone());
    Some(finding.figure(format!("{}.{material}_bag", mix.id)).figure(format!("{}/{}.bags_{material}", site.id, mix.id)))
}
