//! Q6: no reserve, or one that is less than a load.

use std::cmp::Ordering;

use crate::finding::{Finding, Severity};
use crate::quantity::Num;
use crate::sound::limits::{self, Limit, RESERVE};
use crate::sound::told::{at_value, once_a_place, text};
use crate::sound::{Check, Ground};

use super::bought::{self, Bought, shown};

/// The check.
pub const CHECK: Check = Check {
    name: "reserve-too-small",
    ids: &["Q6"],
    severities: &[Severity::Warn],
    title: "there is no spare load on site",
    manual: include_str!("reserve_too_small.md"),
    twins: &[("es", include_str!("reserve_too_small.es.md"))],
    run,
};

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    let (Some(row), Some(company)) = (limits::find(RESERVE), &ground.job.company) else { return Vec::new() };
    let all = bought::all(ground);
    let least = row.quantity().map_or(Num::int(1), |q| q.si);
    // What is left over the planned loads: less than nothing is another finding.
    let left =
        |b: &Bought<'_>| b.makes().map(|makes| makes.sub(&b.loads)).filter(|l| !l.is_negative() && l.compare(&least) == Ordering::Less);
    let mut found: Vec<Finding> = Vec::new();
    for (bought, left) in all.iter().filter(|b| b.told.is_some()).filter_map(|b| Some((b, left(b)?))) {
        let finding = finding(ground, bought, &left, row);
        found.extend(bought.told.zip(finding).map(|(told, f)| at_value(f, ground, told.node(), "as the yard was told")));
    }
    let computed = all.iter().filter(|b| b.told.is_none());
    match &company.reserve {
        // One reserve for the whole job, so one finding: of the order that it leaves the least.
        Some(reserve) => {
            let worst = computed.filter_map(|b| Some((b, left(b)?))).min_by(|(_, a), (_, b)| a.compare(b));
            let told = worst.and_then(|(bought, left)| finding(ground, bought, &left, row));
            found.extend(told.map(|f| at_value(f, ground, reserve.least.node(), "the least reserve")));
        }
        None => {
            let finding = Finding::new(
                CHECK.name,
                Severity::Warn,
                format!("the company states no reserve, at least {} of each mix is spare", row.value),
            )
            .at(company.name.at, "states no `reserve`")
            .source(row.source)
            .help(format!("write `reserve: {{share: 5 %, least: {}}}`; without one no order is worked", row.value))
            .absent();
            found.push(computed.fold(finding, |f, b| f.figure(b.id(&format!("bags_{}", b.material)))));
        }
    }
    once_a_place(found)
}

fn finding(ground: &Ground<'_>, bought: &Bought<'_>, left: &Num, row: &Limit) -> Option<Finding> {
    let (mix, site) = (&bought.mix.name.text, &bought.site.name.text);
    let loads = text(ground, &bought.id("loads"), bought.site.metric)?;
    let title = format!("the order of {mix} for {site} leaves {} loads spare, at least {} is wanted", shown(left), row.value);
    let finding = Finding::new(CHECK.name, Severity::Warn, title)
        .derived(format!(
            "{} bags of {} make {} loads, {loads} are planned",
            bought.bags.as_ref()?.plain(),
            bought.material,
            shown(&bought.makes()?)
        ))
        .source(row.source)
        .help(format!("keep {} or more of each mix spare: a torn bag or a dropped tub ends the day early", row.value))
        .figure(bought.id(&format!("bags_{}", bought.material)))
        .about(format!("{}/{}", bought.site.id, bought.mix.id));
    Some(finding)
}
