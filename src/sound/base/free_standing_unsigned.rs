//! Free-standing and overhead forms without an engineer for the site: nothing computed here says that they stand.

use crate::finding::{Finding, Severity};
use crate::job::{Site, Surface};
use crate::sound::phrase::named;
use crate::sound::told::number;
use crate::sound::{Check, Ground};
use crate::source::Span;

/// The check.
pub const CHECK: Check = Check {
    name: "free-standing-unsigned",
    ids: &["L7"],
    severities: &[Severity::Hold],
    title: "free-standing or overhead work waits for an engineer",
    manual: include_str!("free_standing_unsigned.md"),
    twins: &[("es", include_str!("free_standing_unsigned.es.md"))],
    run,
};

/// Forms that stand by themselves or hang out, in the words of a surface.
const FREE: &[&str] = &[
    "free-standing",
    "freestanding",
    "standalone",
    "stand-alone",
    "overhang",
    "overhanging",
    "canopy",
    "cantilever",
    "cantilevered",
    "bridge",
    "ceiling",
    "exento",
    "exenta",
    "exentos",
    "exentas",
    "voladizo",
    "dosel",
    "puente",
    "techo",
    "cielo",
];

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    let all = ground.job.sites.iter().filter(|site| !signed(ground, site)).flat_map(|site| site.surfaces.iter().map(move |s| (site, s)));
    all.filter_map(|(site, surface)| one(site, surface)).collect()
}

/// A letter on file that was written for this site.
fn signed(ground: &Ground<'_>, site: &Site) -> bool {
    let letter = site.base.letter.as_ref();
    letter.is_some_and(|n| ground.job.letters.iter().any(|l| l.id == n.text && l.site.text == site.code.text))
}

fn one(site: &Site, surface: &Surface) -> Option<Finding> {
    let word = surface.what.iter().find_map(|(_, text)| named(text, FREE));
    let under = surface.soffits.first();
    let (why, at): (String, Span) = match (word, under) {
        (Some((word, at)), _) => (format!("is called `{word}`"), at),
        (None, Some(soffit)) => {
            let unit = if site.metric { "m" } else { "in" };
            (format!("has an underside {} deep", number(soffit.depth.node(), unit)), soffit.code.at)
        }
        (None, None) => return None,
    };
    let title = format!("{} {why}, and {} has no engineer's letter", surface.code.text, site.code.text);
    Some(
        Finding::new(CHECK.name, Severity::Hold, title)
            .at(at, "stands or hangs by itself")
            .related(site.base.kind.at, "no letter for this site is named")
            .source("rule of this trade: free-standing and overhead forms wait for a licensed engineer; common practice, no source")
            .help("file the engineer's letter as a record and name it in `base.letter`; nothing here certifies that a form stands")
            .about(surface.code.text.clone())
            .figure(format!("{}/{}.weight_mean", site.id, surface.code.text)),
    )
}
