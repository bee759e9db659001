//! T5: bags are figured on the greatest thickness.

use crate::finding::{Finding, Severity};
use crate::job::Mean;
use crate::sound::told::{at_value, once_a_place, related_value};
use crate::sound::{Check, Ground};

use super::basis::{self, BAGS, MOST, Wrong};
use super::of::{self, Use};

/// The check.
pub const CHECK: Check = Check {
    name: "bags-on-most",
    ids: &["T5"],
    severities: &[Severity::Stop],
    title: "bags are figured on the greatest thickness",
    manual: include_str!("bags_on_most.md"),
    twins: &[("es", include_str!("bags_on_most.es.md"))],
    run,
};

const SOURCE: &str = "common practice, no source: the mean buys the bags, the greatest thickness decides the lifts";

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    let keys = of::uses(ground).into_iter().filter_map(|one| stated(ground, &one)).collect::<Vec<_>>();
    let texts = basis::orders(ground, BAGS, MOST).into_iter().map(written);
    once_a_place(keys.into_iter().chain(texts).collect())
}

/// A mean as thick as the faces, in a texture that has a relief: by its least, or by its developed surface.
fn stated(ground: &Ground<'_>, of: &Use<'_>) -> Option<Finding> {
    let (texture, site) = (of.texture, of.site);
    let Mean::Stated(mean) = &texture.mean else { return None };
    let carved = texture.least.as_ref().is_some_and(|least| of::less(least, texture.most.value()));
    let one = crate::quantity::Num::int(1);
    let rough = texture.developed.as_ref().is_some_and(|d| d.value().si.compare(&one).is_gt());
    if of::less(mean, texture.most.value()) || !(carved || rough) {
        return None;
    }
    let (said, most) = (of::tape(site, mean.node()), of::tape(site, texture.most.node()));
    let title = format!("bags of `{}` are figured on {said} in the mean, its deepest place is {most}", texture.name.text);
    let finding = Finding::new(CHECK.name, Severity::Stop, title)
        .source(SOURCE)
        .help("write the mean of a blind grid of depths on the panel, or `least` and `fill`");
    let finding = at_value(finding, ground, mean.node(), "as thick as the faces");
    let finding = related_value(finding, ground, texture.most.node(), "the faces");
    let finding = match (&texture.least, &texture.developed) {
        (Some(least), _) => related_value(finding, ground, least.node(), "and here it is carved away"),
        (None, Some(developed)) => related_value(finding, ground, developed.node(), "a surface like this is no flat one"),
        (None, None) => finding,
    };
    Some(of.of(finding, &["mean", "volume", "loads"]))
}

fn written(wrong: Wrong) -> Finding {
    let title = format!("the text orders bags by the greatest thickness (`{}`); the mean buys the bags", wrong.said);
    let finding = Finding::new(CHECK.name, Severity::Stop, title)
        .at(wrong.at, "the greatest thickness")
        .source(SOURCE)
        .help("order bags by the mean; keep the greatest thickness for lifts and limits");
    match wrong.of {
        Some(of) => finding.related(of, "is ordered by it"),
        None => finding,
    }
}
