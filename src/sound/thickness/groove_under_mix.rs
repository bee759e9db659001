//! T9: grooves are cut so deep that what is left under them is less than the mix sheet's least.

use crate::finding::{Finding, Severity};
use crate::quantity::Node;
use crate::quantity::units::find_expr;
use crate::sound::told::{at_value, related_value};
use crate::sound::{Check, Ground};

use super::of::{self, Use};

/// The check.
pub const CHECK: Check = Check {
    name: "groove-under-mix",
    ids: &["T9"],
    severities: &[Severity::Stop],
    title: "grooves leave less mud under them than the mix sheet allows",
    manual: include_str!("groove_under_mix.md"),
    twins: &[("es", include_str!("groove_under_mix.es.md"))],
    run,
};

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    of::uses(ground).iter().filter_map(|one| judge(ground, one)).collect()
}

/// What stays under the deepest joint.
pub(super) fn cover(of: &Use<'_>) -> Option<Node> {
    let groove = of.texture.groove.as_ref()?;
    Some(of.texture.most.node().clone() - groove.node().clone())
}

/// What the grooves end over.
pub(super) fn under(of: &Use<'_>) -> &'static str {
    if of.surfaces.iter().any(|s| s.scratch.is_some()) { "the scratch coat" } else { "the base" }
}

/// The arithmetic and the places of a finding about grooves.
pub(super) fn told(ground: &Ground<'_>, of: &Use<'_>, finding: Finding) -> Option<Finding> {
    let groove = of.texture.groove.as_ref()?;
    let (most, deep) = (of::tape(of.site, of.texture.most.node()), of::tape(of.site, groove.node()));
    let left = of::tape(of.site, &cover(of)?);
    let finding = finding.derived(format!("{most} of carve coat at the faces − {deep} of groove = {left}"));
    let finding = at_value(finding, ground, groove.node(), "cut so deep");
    let finding = related_value(finding, ground, of.texture.most.node(), "below these faces");
    Some(of.of(finding, &["least", "most"]))
}

fn judge(ground: &Ground<'_>, of: &Use<'_>) -> Option<Finding> {
    let mix = of::carve(ground, of.site)?;
    let least = &mix.thickness.0;
    let left = cover(of)?;
    if !left.value().si.compare(&least.value().si).is_lt() {
        return None;
    }
    let (wants, name) = (of::tape(of.site, least.node()), &mix.name.text);
    let unit = find_expr(if of.site.metric { "mm" } else { "in" })?;
    let nothing = left.value().exact_in(unit).is_some_and(|n| n <= num_rational::BigRational::from_integer(0.into()));
    let texture = &of.texture.name.text;
    let title = if nothing {
        format!("grooves of `{texture}` reach {}, {name} wants {wants} or more under them", under(of))
    } else {
        format!("grooves of `{texture}` end {} over {}, {name} wants {wants} or more", of::tape(of.site, &left), under(of))
    };
    let deepest = of::tape(of.site, &(of.texture.most.node().clone() - least.node().clone()));
    let finding = Finding::new(CHECK.name, Severity::Stop, title)
        .source(format!("mix sheet of {name}: least thickness; a crack line starts where the groove is"))
        .help(format!("cut them {deepest} deep at most, or build the faces further out"));
    told(ground, of, related_value(finding, ground, least.node(), "the least of the mix sheet"))
}
