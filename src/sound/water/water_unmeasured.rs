//! W9: an amount of water that no listed measure can make to its mark.

use crate::finding::{Finding, Severity};
use crate::job::{Company, Measure, Mix, Site};
use crate::quantity::Node;
use crate::quantity::expr::is_metric;
use crate::quantity::show::{self, Look};
use crate::quantity::units::find_expr;
use crate::sound::told::{at_value, once_a_place, related_value, text, typed};
use crate::sound::{Check, Ground};
use crate::tally::{batch_id, mixes_of};
use crate::words::EN;

/// The check.
pub const CHECK: Check = Check {
    name: "water-unmeasured",
    ids: &["W9"],
    severities: &[Severity::Warn],
    title: "an amount of water cannot be measured with the listed measures",
    manual: include_str!("water_unmeasured.md"),
    twins: &[("es", include_str!("water_unmeasured.es.md"))],
    run,
};

/// Marks that measures are sold with, coarse first.
const MARKS_US: &[&str] = &["1 qt", "1 pt", "1 cup", "1/2 cup", "1 fl oz"];
const MARKS_METRIC: &[&str] = &["1 L", "500 mL", "100 mL", "50 mL", "10 mL"];

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    let Some(company) = &ground.job.company else { return Vec::new() };
    let found = ground.job.sites.iter().flat_map(|site| match marks(company, site).is_empty() {
        true => unmarked(site).into_iter().collect::<Vec<_>>(),
        false => mixes_of(ground.job, site).into_iter().flat_map(|mix| of_mix(ground, company, site, mix)).collect(),
    });
    once_a_place(found.collect())
}

/// Measures marked in the unit system of the site's paper.
fn marks<'a>(company: &'a Company, site: &Site) -> Vec<&'a Measure> {
    company.measures.iter().filter(|m| m.marked.node().unit().is_some_and(is_metric) == site.metric).collect()
}

/// No measure at all in the units of the paper: then every amount on it is rounded to a mark that nobody has.
fn unmarked(site: &Site) -> Option<Finding> {
    let (units, mark) =
        if site.metric { ("litres", "beaker: {holds: 5 L, marked: 50 mL}") } else { ("cups", "jug: {holds: 1 gal, marked: 1 cup}") };
    let title = format!("water of {} is printed in {units}, and no listed measure is marked in them", site.name.text);
    let finding = Finding::new(CHECK.name, Severity::Warn, title)
        .source("common practice, no source: what cannot be measured is eyeballed")
        .help(format!("list the measure that stands at the mixer under `measures`, such as `{mark}`"));
    Some(finding.at(site.name.at, "paper of this site").absent().about(site.id.as_str()))
}

/// Start and step, of a load, of each batch and of half a load: amounts that are poured. A limit is never poured to.
fn of_mix(ground: &Ground<'_>, company: &Company, site: &Site, mix: &Mix) -> Vec<Finding> {
    let batches: Vec<(String, String)> = site
        .batches
        .iter()
        .filter(|b| b.mix.text == mix.name.text)
        .map(|b| {
            (
                batch_id(ground.job, site, b),
                typed(&text(ground, &format!("{}.loads", batch_id(ground.job, site, b)), site.metric).unwrap_or_default()),
            )
        })
        .collect();
    let mut found = Vec::new();
    for (name, what, node) in [("start_water", "start water", mix.water.start.node()), ("step", "late step", mix.water.step.node())] {
        let mut ids: Vec<(String, String)> = batches.iter().map(|(id, loads)| (format!("{id}.{name}"), loads.clone())).collect();
        if mix.half_load && name == "start_water" {
            ids.push((format!("{}.half_start_water", mix.id), "half a load".to_owned()));
        }
        for (id, of) in ids {
            let Some(amount) = ground.tally.figure(&id).and_then(|f| f.worked.as_ref().ok()) else { continue };
            if let Some(finding) = one(ground, company, site, (amount, &id), format!("the {what} of {of} of {}", mix.name.text)) {
                found.push(at_value(finding, ground, node, "poured at the mixer"));
            }
        }
    }
    found
}

fn one(ground: &Ground<'_>, company: &Company, site: &Site, (amount, id): (&Node, &str), what: String) -> Option<Finding> {
    let unit = find_expr(if site.metric { "L" } else { "gal" })?;
    let exact = amount.value().exact_in(unit)?;
    let whole = |mark: &num_rational::BigRational| (&exact / mark).is_integer();
    // Either row of marks makes it: the second unit stands on the card too.
    if company.measures.iter().filter_map(|m| m.marked.value().exact_in(unit)).any(|mark| whole(&mark)) {
        return None;
    }
    let finest = marks(company, site).into_iter().min_by(|a, b| a.marked.value().si.compare(&b.marked.value().si))?;
    let say = |number: &num_rational::BigRational| {
        let look = if site.metric { Look::Decimal(3) } else { Look::Crew };
        typed(&show::text(number, Some(unit), look, EN, false))
    };
    let mark = finest.marked.value().exact_in(unit)?;
    let prints = text(ground, id, site.metric)?;
    let title = format!("{what} is {}, the smallest mark on site is {}", say(&exact), say(&mark));
    let all = if site.metric { MARKS_METRIC } else { MARKS_US };
    let passes = all.iter().find(|m| amount_of(m, unit).is_some_and(|m| whole(&m)));
    let help = match passes {
        Some(mark) => format!("list a measure marked in `{mark}` under `measures`, or choose an amount in whole marks"),
        None => format!("choose an amount in whole marks of {}", say(&mark)),
    };
    let finding = Finding::new(CHECK.name, Severity::Warn, title)
        .derived(format!(
            "{} ÷ {} = {} marks; the card prints {prints}",
            crate::sound::told::number(amount, if site.metric { "L" } else { "gal" }),
            say(&mark),
            crate::quantity::num::decimal(&(&exact / &mark), 2)
        ))
        .source("common practice, no source: what cannot be measured is eyeballed")
        .help(help)
        .figure(id);
    let finding = related_value(finding, ground, finest.marked.node(), "the smallest mark");
    let coarser = marks(company, site).into_iter().filter(|m| m.code.text != finest.code.text);
    Some(coarser.fold(finding, |finding, m| related_value(finding, ground, m.marked.node(), "no finer")))
}

fn amount_of(mark: &str, unit: crate::quantity::units::UnitExpr) -> Option<num_rational::BigRational> {
    match crate::quantity::parse::read(mark) {
        Ok(crate::quantity::parse::Said::Amount(quantity, _)) => quantity.exact_in(unit),
        _ => None,
    }
}
