//! Q5: an order that leaves next to nothing over the computed need.

use crate::finding::{Finding, Severity};
use crate::job::Site;
use crate::quantity::expr::Share;
use crate::quantity::{Num, Worked};
use crate::sound::limits::{self, SPARE_LOADS, SPARE_SHARE};
use crate::sound::told::{at_value, text};
use crate::sound::{Check, Ground};

use super::bought::{self, Bought, rounded, shown};

/// The check.
pub const CHECK: Check = Check {
    name: "order-knife-edge",
    ids: &["Q5"],
    severities: &[Severity::Warn],
    title: "an order leaves next to nothing over the need",
    manual: include_str!("order_knife_edge.md"),
    twins: &[("es", include_str!("order_knife_edge.es.md"))],
    run,
};

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    let mut found: Vec<Finding> = Vec::new();
    let mut told: Vec<(String, String)> = Vec::new();
    for bought in bought::all(ground) {
        let key = (bought.site.id.clone(), bought.mix.id.clone());
        // Both bags of a mix stand on one edge: once is enough.
        if told.contains(&key) {
            continue;
        }
        if let Some(finding) = bags(ground, &bought) {
            told.push(key);
            found.push(finding);
        }
    }
    found.extend(ground.job.sites.iter().flat_map(|site| others(ground, site)));
    found
}

/// Bags against the loads before they were rounded up.
fn bags(ground: &Ground<'_>, bought: &Bought<'_>) -> Option<Finding> {
    let (share, half) = (limits::find(SPARE_SHARE)?, limits::find(SPARE_LOADS)?);
    let makes = bought.makes()?;
    let over = makes.sub(&bought.need);
    let least = bought.need.mul(&share.quantity()?.si);
    let few = half.quantity()?.si;
    // Fewer than the need is another finding.
    if over.is_negative() || (over.compare(&least).is_ge() && over.compare(&few).is_ge()) {
        return None;
    }
    let bags = bought.bags.as_ref()?;
    let (mix, site) = (&bought.mix.name.text, &bought.site.name.text);
    let wants = if over.compare(&few).is_lt() { half.value.to_owned() } else { format!("{} of the need", share.value) };
    let title = format!(
        "{} bags make {} loads of {mix} for {site} against a need of {}, at least {wants} is left over",
        bags.plain(),
        makes.plain(),
        shown(&bought.need)
    );
    let loads = text(ground, &bought.id("loads"), bought.site.metric)?;
    let finding = Finding::new(CHECK.name, Severity::Warn, title)
        .derived(format!("need {} loads, planned as {loads}", shown(&bought.need)))
        .derived(format!("{} − {} = {} loads to spare", makes.plain(), shown(&bought.need), shown(&over)))
        .source(share.source)
        .help("buy a load more: one dropped bag stops the job")
        .figure(bought.id(&format!("bags_{}", bought.material)))
        .about(format!("{}/{}", bought.site.id, bought.mix.id));
    let reserve = ground.job.company.as_ref().and_then(|c| c.reserve.as_ref());
    Some(match (bought.told, reserve) {
        (Some(told), _) => at_value(finding, ground, told.node(), "as the yard was told"),
        (None, Some(reserve)) => at_value(finding, ground, reserve.share.node(), "the reserve"),
        (None, None) => finding.at(bought.site.name.at, "ordered for this site"),
    })
}

/// Sheets, fasteners, paper and cans: what their allowance and the rounding leave over the need.
fn others(ground: &Ground<'_>, site: &Site) -> Vec<Finding> {
    let mut spares: Vec<(&str, &str, &Worked<Share>)> = Vec::new();
    if let Some(lath) = &site.lath {
        spares.push(("lath_sheets", "sheets of lath", &lath.spare));
        spares.push(("lath_fasteners", "fasteners", &lath.fastener_spare));
        spares.push(("paper_rolls", "rolls of paper", &lath.paper_spare));
    }
    if let Some(finish) = &site.finish {
        spares.push(("finish_cans", "cans of color and sealer", &finish.spare));
    }
    spares.into_iter().filter_map(|(figure, what, spare)| other(ground, site, figure, what, spare)).collect()
}

fn other(ground: &Ground<'_>, site: &Site, figure: &str, what: &str, spare: &Worked<Share>) -> Option<Finding> {
    let row = limits::find(SPARE_SHARE)?;
    let id = format!("{}.{figure}", site.id);
    let node = ground.tally.figure(&id)?.worked.as_ref().ok()?;
    let (bought, before) = rounded(node)?;
    // The allowance is in what was rounded; the need is without it.
    let need = before.div(&Num::int(1).add(&spare.value().si))?;
    if need.is_zero() {
        return None;
    }
    let over = bought.sub(&need).div(&need)?;
    let least = row.quantity()?.si;
    if over.compare(&least).is_ge() {
        return None;
    }
    let said = text(ground, &id, site.metric)?;
    let percent = shown(&over.mul(&Num::int(100)));
    let title = format!("{said} {what} for {} leave {percent} % over the need, at least {} is wanted", site.name.text, row.value);
    let finding = Finding::new(CHECK.name, Severity::Warn, title)
        .derived(format!("bought {}, needed {}, before anything is spoiled", shown(&bought), shown(&need)))
        .source(row.source)
        .help(format!("buy one more, or allow {} or more", row.value))
        .figure(id)
        .about(format!("{}.{figure}", site.id));
    Some(at_value(finding, ground, spare.node(), "the allowance"))
}
