//! M1: bags and weights do not make the design ratio.

use std::cmp::Ordering;

use num_rational::BigRational;

use crate::finding::{Finding, Severity};
use crate::job::{BatchPlan, Mix, Site};
use crate::quantity::num::Num;
use crate::quantity::{Node, num};
use crate::sound::limits::{self, Limit};
use crate::sound::told::{at_value, printed, related_value, typed, verb};
use crate::sound::{Check, Ground};
use crate::tally::{batch_id, mix_of};

/// The check.
pub const CHECK: Check = Check {
    name: "ratio-off-design",
    ids: &["M1"],
    severities: &[Severity::Stop],
    title: "bags and weights do not make the design ratio",
    manual: include_str!("ratio_off_design.md"),
    twins: &[("es", include_str!("ratio_off_design.es.md"))],
    run,
};

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    let Some(row) = limits::find(limits::RATIO) else { return Vec::new() };
    let mut found: Vec<Finding> = ground.job.mixes.iter().filter_map(|mix| load(ground, mix, row)).collect();
    for site in &ground.job.sites {
        found.extend(site.batches.iter().filter_map(|plan| batch(ground, site, plan, row)));
    }
    found
}

/// Share by which a ratio is off its design, if that is more than the limit.
fn off(made: &Num, design: &Num, row: &Limit) -> Option<Num> {
    let off = made.div(design)?.sub(&Num::int(1));
    let size = if off.is_negative() { Num::int(0).sub(&off) } else { off };
    (size.compare(&row.quantity()?.si) == Ordering::Greater).then_some(size)
}

fn per_cent(share: &Num) -> String {
    let number = share.mul(&Num::int(100));
    let up = number.round(num::Direction::Up, &BigRational::new(1.into(), 10.into()));
    format!("{} %", num::decimal(&up, 1))
}

fn plain(ratio: &Num) -> String {
    let near = ratio.round(num::Direction::Nearest, &BigRational::new(1.into(), 1000.into()));
    num::exact_text(&near)
}

fn load(ground: &Ground<'_>, mix: &Mix, row: &Limit) -> Option<Finding> {
    let mortar = mix.mortar_bags.value().si.mul(&mix.mortar.bag.value().si);
    let additive = mix.additive_bags.value().si.mul(&mix.additive.bag.value().si);
    let made = mortar.div(&additive)?;
    let design = &mix.ratio.value().si;
    let share = off(&made, design, row)?;
    let id = |name: &str| format!("{}.{name}", mix.id);
    let mass = |name: &str| printed(ground, &id(name), mix.metric).map(|v| typed(&v.text));
    let (mortar_mass, additive_mass) = (mass("mortar_weight")?, mass("additive_weight")?);
    let title =
        format!("{} holds {} of mortar to 1 of additive by mass, the design is {} to 1", mix.name.text, plain(&made), plain(design));
    let finding = Finding::new(CHECK.name, Severity::Stop, title)
        .derived(format!("{mortar_mass} ÷ {additive_mass} = {}; {} off, at most {}", plain(&made), per_cent(&share), row.value))
        .source(row.source)
        .help(format!("{} of mortar goes with {additive_mass} of additive: set right the bags, their weights or the design", needed(mix)?));
    let bag = mix.mortar.bag.node();
    let finding = related_value(at_value(finding, ground, bag, "this bag"), ground, mix.additive.bag.node(), "with this one");
    let finding = related_value(finding, ground, mix.ratio.node(), "against this design");
    // No figures are named: everything that rests on this mix is made of these bags.
    Some(finding)
}

/// Mass of mortar that the additive of a load asks for.
fn needed(mix: &Mix) -> Option<String> {
    let mass: Node = mix.ratio.node().clone() * (mix.additive_bags.node().clone() * mix.additive.bag.node().clone());
    let unit = mix.mortar.bag.node().unit()?;
    let number = mass.value().in_unit(unit)?;
    Some(format!("{} {}", number.plain(), unit.symbol()))
}

/// A batch is judged on its printed bags: whole bags are what goes in, whatever the arithmetic behind them.
fn batch(ground: &Ground<'_>, site: &Site, plan: &BatchPlan, row: &Limit) -> Option<Finding> {
    let mix = mix_of(ground.job, &plan.mix.text)?;
    let id = batch_id(ground.job, site, plan);
    let bags = |name: &str| printed(ground, &format!("{id}.{name}"), site.metric);
    let (mortar, additive) = (bags("mortar")?, bags("additive")?);
    let mass = |count: &BigRational, bag: &Num| Num::Exact(count.clone()).mul(bag);
    let made =
        mass(mortar.number.as_ref()?, &mix.mortar.bag.value().si).div(&mass(additive.number.as_ref()?, &mix.additive.bag.value().si))?;
    let share = off(&made, &mix.ratio.value().si, row)?;
    // What is wrong with the load is wrong with every batch of it: told once, at the mix.
    if load(ground, mix, row).is_some() {
        return None;
    }
    let loads = typed(&printed(ground, &format!("{id}.loads"), site.metric)?.text);
    let (mortar, additive) = (typed(&mortar.text), typed(&additive.text));
    let title = format!(
        "{loads} {} {mortar} of mortar to {additive} of additive, {} off the design of {}",
        verb(plan.loads.value(), "prints", "print"),
        per_cent(&share),
        mix.name.text
    );
    let finding = Finding::new(CHECK.name, Severity::Stop, title)
        .derived(format!(
            "({mortar} × mortar bag) ÷ ({additive} × additive bag) = {}, the design is {}",
            plain(&made),
            plain(&mix.ratio.value().si)
        ))
        .source(row.source)
        .help("plan a number of loads that takes whole bags of both, or a half load by the scale");
    let finding = at_value(finding, ground, plan.loads.node(), "these loads");
    let finding = related_value(finding, ground, mix.ratio.node(), "against this design");
    Some(finding.figure(format!("{id}.mortar")).figure(format!("{id}.additive")))
}
