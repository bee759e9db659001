//! M4: the bags that came weigh something else than the bags of the mix.

use crate::finding::{Finding, Severity};
use crate::job::{Lot, Mix, Site};
use crate::sound::told::{at_value, number, related_value};
use crate::sound::{Check, Ground};

/// The check.
pub const CHECK: Check = Check {
    name: "bag-differs-from-mix",
    ids: &["M4"],
    severities: &[Severity::Stop],
    title: "the bags that came weigh something else than the bags of the mix",
    manual: include_str!("bag_differs_from_mix.md"),
    twins: &[("es", include_str!("bag_differs_from_mix.es.md"))],
    run,
};

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    super::lots(ground.job).filter_map(|(site, mix, lot)| one(ground, site, mix, lot)).collect()
}

/// Both stand on a bag in the unit of its maker: an 80 lb bag is no 36 kg bag, so they are compared exactly.
fn one(ground: &Ground<'_>, site: &Site, mix: &Mix, lot: &Lot) -> Option<Finding> {
    let bagged = super::bagged(mix, &lot.material.text);
    if lot.bag.value().si.compare(&bagged.bag.value().si).is_eq() {
        return None;
    }
    let own = |node: &crate::quantity::Node| node.unit().map(|u| number(node, &u.symbol()));
    let (came, needs) = (own(lot.bag.node())?, own(bagged.bag.node())?);
    let material = &lot.material.text;
    let title = format!("lot {} of {material} comes in bags of {came}, {} is built on bags of {needs}", lot.number.text, mix.name.text);
    let finding = Finding::new(CHECK.name, Severity::Stop, title)
        .source("common practice, no source: a bag of another weight changes ratio, water and yield, and nothing shows it")
        .help(format!("send it back and take bags of {needs}; never make it up with a part of a bag"))
        .about(lot.number.text.clone());
    let finding = at_value(finding, ground, lot.bag.node(), "as it stands on the bag");
    let finding = related_value(finding, ground, bagged.bag.node(), "the mix is built on this");
    Some(finding.figure(format!("{}.{material}_bag", mix.id)).figure(format!("{}/{}.bags_{material}", site.id, mix.id)))
}
