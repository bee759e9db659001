//! L11: a surface that stands in or at water, and nothing says who waterproofs it and how.

use crate::finding::{Finding, Severity};
use crate::job::{Site, Surface};
use crate::sound::phrase::named;
use crate::sound::{Check, Ground};

/// The check.
pub const CHECK: Check = Check {
    name: "waterproofing-undetailed",
    ids: &["L11"],
    severities: &[Severity::Hold],
    title: "a water feature has no waterproofing detail",
    manual: include_str!("waterproofing_undetailed.md"),
    twins: &[("es", include_str!("waterproofing_undetailed.es.md"))],
    run,
};

/// Water features, in the words of a surface.
const FEATURE: &[&str] = &[
    "basin",
    "pool",
    "pond",
    "fountain",
    "waterfall",
    "cascade",
    "spa",
    "stream",
    "creek",
    "aquarium",
    "weir",
    "spillway",
    "pila",
    "alberca",
    "piscina",
    "estanque",
    "fuente",
    "cascada",
    "arroyo",
    "acuario",
    "vertedero",
];

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    let bare = ground.job.sites.iter().filter(|s| s.details.as_ref().is_none_or(|d| d.waterproofing.is_none()));
    let all = bare.flat_map(|site| site.surfaces.iter().map(move |s| (site, s)));
    all.filter_map(|(site, surface)| one(site, surface)).collect()
}

fn one(site: &Site, surface: &Surface) -> Option<Finding> {
    let stated = site.details.as_ref().and_then(|d| d.water.as_ref()).map(|w| (w.text.clone(), w.at));
    let (word, at) = surface.what.iter().find_map(|(_, text)| named(text, FEATURE)).or_else(|| {
        // The site says that water touches the work: then its first surface speaks for all of them.
        let first = site.surfaces.first().is_some_and(|s| std::ptr::eq(s, surface));
        let none = site.surfaces.iter().all(|s| s.what.iter().all(|(_, text)| named(text, FEATURE).is_none()));
        stated.filter(|_| first && none)
    })?;
    let title = format!("{} is at water (`{word}`) and no waterproofing detail is stated for {}", surface.code.text, site.code.text);
    Some(
        Finding::new(CHECK.name, Severity::Hold, title)
            .at(at, "who keeps the water in")
            .absent()
            .source("common practice, no source: carved cement is no waterproofing, water finds the lath behind it")
            .help("name the trade and its detail: `details: {waterproofing: \"pool trade, membrane under the dash coat\"}`")
            .about(surface.code.text.clone())
            .figure(format!("{}/{}.net_area", site.id, surface.code.text)),
    )
}
