//! L4: fasteners or framing too far apart for lath, or not stated.

use std::cmp::Ordering;

use crate::finding::{Finding, Severity};
use crate::job::Site;
use crate::quantity::Worked;
use crate::quantity::expr::Length;
use crate::sound::phrase::named;
use crate::sound::told::{at_value, length};
use crate::sound::{Check, Ground, limits};

/// The check.
pub const CHECK: Check = Check {
    name: "lath-fastening-wide",
    ids: &["L4"],
    severities: &[Severity::Hold],
    title: "lath is fastened too far apart, or nothing says how far",
    manual: include_str!("lath_fastening_wide.md"),
    twins: &[("es", include_str!("lath_fastening_wide.es.md"))],
    run,
};

/// Lath, in the words of a base.
const LATH: &[&str] = &["lath", "mesh", "malla"];

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    ground.job.sites.iter().flat_map(|site| one(ground, site)).collect()
}

fn one(ground: &Ground<'_>, site: &Site) -> Vec<Finding> {
    let Some(lath) = &site.lath else { return missing(site).into_iter().collect() };
    let both = [
        (&lath.fasteners, "fasteners", "fasteners stand", limits::FASTENERS),
        (&lath.framing, "framing", "framing stands", limits::FRAMING),
    ];
    both.into_iter().filter_map(|(at, about, who, key)| wide(ground, site, at, about, who, key)).collect()
}

/// Lath hangs on this base and nothing says how it is held.
fn missing(site: &Site) -> Option<Finding> {
    if site.surfaces.iter().all(|s| s.scratch.is_none()) {
        return None;
    }
    let (word, at) = named(&site.base.what, LATH)?;
    let (fasteners, framing) = (limits::find(limits::FASTENERS)?, limits::find(limits::FRAMING)?);
    let title = format!(
        "{} hangs {word} and states no spacing: fasteners at most {}, framing at most {}",
        site.code.text, fasteners.value, framing.value
    );
    let finding =
        Finding::new(CHECK.name, Severity::Hold, title).at(at, "held by what, how far apart").absent().source(fasteners.source).help(
            format!(
                "add `lath:` with `framing` and `fasteners`, each in framing and never between: `fasteners: {}` or less",
                fasteners.value
            ),
        );
    Some(finding.figure(format!("{}.area", site.id)))
}

fn wide(ground: &Ground<'_>, site: &Site, apart: &Worked<Length>, about: &str, who: &str, key: &str) -> Option<Finding> {
    let row = limits::find(key)?;
    if apart.value().compare(&row.quantity()?) != Some(Ordering::Greater) {
        return None;
    }
    let unit = if site.metric { "mm" } else { "in" };
    let title = format!("{who} {} apart, lath is held at {} or less", length(apart.node(), unit), row.value);
    let help = if about == "framing" {
        "put blocking between the studs, or ask the engineer for a lath and a rib that span it"
    } else {
        "fasten closer along every stud, into the framing and never into air"
    };
    let finding =
        Finding::new(CHECK.name, Severity::Hold, title).source(row.source).help(format!("{help}: `{about}: {}` or less", row.value));
    let finding = finding.about(about.to_owned()).figure(format!("{}.lath_fasteners", site.id));
    Some(at_value(finding, ground, apart.node(), "this far apart"))
}
