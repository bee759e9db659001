//! T4: a deep carve coat is to hang on a scratch coat that is not raked rough.

use crate::finding::{Finding, Severity};
use crate::sound::limits::{self, ROUGH_FROM};
use crate::sound::told::{at_value, related_value};
use crate::sound::{Check, Ground};

use super::of::{self, Use};

/// The check.
pub const CHECK: Check = Check {
    name: "smooth-scratch",
    ids: &["T4"],
    severities: &[Severity::Hold],
    title: "a deep carve coat hangs on a scratch coat that is not raked rough",
    manual: include_str!("smooth_scratch.md"),
    twins: &[("es", include_str!("smooth_scratch.es.md"))],
    run,
};

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    of::uses(ground).iter().filter_map(|one| judge(ground, one)).collect()
}

/// Everything over the scratch coat hangs on that one bond, in however many lifts it went up.
fn judge(ground: &Ground<'_>, of: &Use<'_>) -> Option<Finding> {
    let mix = of::scratch(ground, of.site)?;
    let limit = limits::find(ROUGH_FROM)?;
    let rough = mix.rake.as_ref().is_some_and(|r| r.text == "rough");
    let coated = of.surfaces.iter().any(|s| s.scratch.is_some());
    if rough || !coated || of::less(&of.texture.most, &limit.quantity()?) {
        return None;
    }
    let (deep, from) = (of::tape(of.site, of.texture.most.node()), of::row(of.site, limit));
    let (name, scratch) = (&of.texture.name.text, &mix.name.text);
    let how = match &mix.rake {
        Some(rake) => format!("is raked {}", rake.text),
        None => "states no rake".to_owned(),
    };
    let title = format!("`{name}` stands {deep} over {scratch}, which {how}: from {from} on it wants a rough rake");
    let finding = Finding::new(CHECK.name, Severity::Hold, title)
        .source(limit.source)
        .help(format!("rake it rough and write `rake: rough` in the sheet of {scratch}, or carve less than {from}"));
    let finding = at_value(finding, ground, of.texture.most.node(), "all of this hangs on the scratch coat");
    let finding = match &mix.rake {
        Some(rake) => finding.related(rake.at, "its rake"),
        None => finding.related(mix.name.at, "states no `rake`"),
    };
    let under = of.surfaces.iter().find_map(|s| s.scratch.as_ref());
    let finding = match under {
        Some(coat) => related_value(finding, ground, coat.thickness.node(), "the scratch coat"),
        None => finding,
    };
    Some(of.of(finding, &["most", "lifts"]))
}
