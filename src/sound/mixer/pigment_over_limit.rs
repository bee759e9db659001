//! M11: more pigment than the cement holds.

use num_rational::BigRational;

use crate::finding::{Finding, Severity};
use crate::job::Mix;
use crate::quantity::expr::{Share, Worked};
use crate::quantity::num::Direction;
use crate::sound::told::{at_value, number, related_value};
use crate::sound::{Check, Ground};
use crate::trade::rules;

/// The check.
pub const CHECK: Check = Check {
    name: "pigment-over-limit",
    ids: &["M11"],
    severities: &[Severity::Hold],
    title: "there is more pigment than the cement holds",
    manual: include_str!("pigment_over_limit.md"),
    twins: &[("es", include_str!("pigment_over_limit.es.md"))],
    run,
};

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    ground.job.mixes.iter().filter_map(|mix| one(ground, mix)).collect()
}

/// A dose is authored in per cent and printed nowhere else, so it is held to the rule as it stands.
fn one(ground: &Ground<'_>, mix: &Mix) -> Option<Finding> {
    let dose = mix.pigment.as_ref()?;
    let black = mix.pigment_sort.as_ref().is_some_and(|s| s.text == "carbon black");
    let rule = rules::find(if black { "carbon black" } else { "oxide pigment" })?;
    let most: Worked<Share> = rule.most()?;
    if dose.value().si.compare(&most.value().si).is_le() {
        return None;
    }
    let sort = if black { "carbon black" } else { "pigment" };
    let most = number(most.node(), "%");
    let title = format!("{} of the cement in {} is {sort}, at most {most} is", number(dose.node(), "%"), mix.name.text);
    let mut finding = Finding::new(CHECK.name, Severity::Hold, title).source(rule.citation).help(format!(
        "a darker color takes another pigment, not more of this one: `pigment: {most}` or less; what the maker allows less, wins"
    ));
    if let Some(cement) = &mix.cement {
        let whole = (mix.mortar_bags.node().clone() * mix.mortar.bag.node().clone()) * cement.node().clone();
        let unit = mix.mortar.bag.node().unit()?;
        let tenth = BigRational::new(1.into(), 10.into());
        let mass = |node: &crate::quantity::Node, way| node.value().in_unit(unit).map(|n| n.round(way, &tenth));
        let (held, dosed) = (mass(&whole, Direction::Nearest)?, mass(&(whole.clone() * dose.node().clone()), Direction::Nearest)?);
        let shown = |n: &BigRational| crate::quantity::num::decimal(n, 1);
        finding = finding.derived(format!(
            "{} × {} = about {} {u} of cement in a load; {} of it is about {} {u}",
            number(mix.mortar.bag.node(), &unit.symbol()),
            number(cement.node(), "%"),
            shown(&held),
            number(dose.node(), "%"),
            shown(&dosed),
            u = unit.symbol()
        ));
    }
    finding = at_value(finding, ground, dose.node(), "of the cement");
    if let Some(cement) = &mix.cement {
        finding = related_value(finding, ground, cement.node(), "cement in the mortar");
    }
    Some(finding.figure(format!("{}.pigment", mix.id)).figure(format!("{}.mixing", mix.id)))
}
