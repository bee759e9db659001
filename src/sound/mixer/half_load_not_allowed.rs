//! M2: a batch splits bags that may not be split.

use crate::finding::{Finding, Severity};
use crate::job::{BatchPlan, Mix, Site};
use crate::quantity::Num;
use crate::sound::told::{at_value, authored};
use crate::sound::{Check, Ground};
use crate::tally::{batch_id, mix_of};

/// The check.
pub const CHECK: Check = Check {
    name: "half-load-not-allowed",
    ids: &["M2"],
    severities: &[Severity::Stop],
    title: "a batch splits bags that may not be split",
    manual: include_str!("half_load_not_allowed.md"),
    twins: &[("es", include_str!("half_load_not_allowed.es.md"))],
    run,
};

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    let plans = ground.job.sites.iter().flat_map(|site| site.batches.iter().map(move |plan| (site, plan)));
    plans.filter_map(|(site, plan)| one(ground, site, plan)).collect()
}

fn one(ground: &Ground<'_>, site: &Site, plan: &BatchPlan) -> Option<Finding> {
    let mix = mix_of(ground.job, &plan.mix.text)?;
    let loads = &plan.loads.value().si;
    if whole(loads) {
        return None;
    }
    let (why, help) = refused(ground, mix, loads)?;
    let id = format!("{}.loads", batch_id(ground.job, site, plan));
    // Printed, an odd part would round up to a half: the author's own words are shown.
    let (said, _) = authored(ground, plan.loads.node())?;
    let finding = Finding::new(CHECK.name, Severity::Stop, format!("a batch of {said} of {} splits bags, {why}", mix.name.text))
        .source("the mix sheet's rule for half loads; common practice, no source: a bag split without a scale is another mix")
        .help(help)
        .about(site.code.text.clone());
    Some(at_value(finding, ground, plan.loads.node(), "this batch").figure(id))
}

/// Why, and what would pass.
fn refused(ground: &Ground<'_>, mix: &Mix, loads: &Num) -> Option<(String, String)> {
    if !mix.half_load {
        return Some((format!("{} allows whole loads only", mix.name.text), "plan whole loads".to_owned()));
    }
    if !whole(&loads.mul(&Num::int(2))) {
        return Some(("only half loads are weighed out".to_owned(), "plan whole loads, or whole and a half: `loads: 1/2 load`".to_owned()));
    }
    let company = ground.job.company.as_ref()?;
    if company.scale.is_some() {
        return None;
    }
    let help = "put a scale on site and write it in the company file, `scale: {holds: 132 lb, marked: 0.1 lb}`; or plan whole loads";
    Some(("and the company has no scale".to_owned(), help.to_owned()))
}

fn whole(number: &Num) -> bool {
    number.exact().is_some_and(num_rational::BigRational::is_integer)
}
