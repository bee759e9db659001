//! S8: the next trade comes while the wall still cures.

use crate::finding::{Finding, Severity};
use crate::job::Site;
use crate::quantity::date;
use crate::quantity::num::Direction;
use crate::sound::told::{text, typed};
use crate::sound::{Check, Ground};
use crate::tally::mix_of;
use crate::tally::scopes::named;
use crate::trade::calendar;
use crate::words::EN;

/// The check.
pub const CHECK: Check = Check {
    name: "next-trade-too-soon",
    ids: &["S8"],
    severities: &[Severity::Stop],
    title: "the next trade comes while the wall still cures",
    manual: include_str!("next_trade_too_soon.md"),
    twins: &[("es", include_str!("next_trade_too_soon.es.md"))],
    run,
};

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    ground.job.sites.iter().filter_map(|site| one(ground, site)).collect()
}

/// The day that the trade asks for against the printed day before which it must not come.
fn one(ground: &Ground<'_>, site: &Site) -> Option<Finding> {
    let cure = site.cure.as_ref()?;
    let asks = cure.asks.as_ref()?;
    let id = |name: &str| format!("{}.{name}", site.id);
    let one = num_rational::BigRational::from_integer(1.into());
    let day = |name: &str| {
        let node = ground.tally.figure(&id(name))?.worked.as_ref().ok()?;
        let days = node.value().in_unit(crate::quantity::units::find_expr("day")?)?.round(Direction::Up, &one);
        i64::try_from(days.numer()).ok()
    };
    let (may, last) = (day("next_trade")?, day("last_carve")?);
    let wants = calendar::day_of(asks.year, asks.month, asks.day).ok()?.in_unit("day") as i64;
    if wants >= may {
        return None;
    }
    let mix = mix_of(ground.job, &site.carve_mix.text)?;
    let on_wall = (wants - last - 1).max(0);
    let needs = text(ground, &format!("{}/cure.day", site.id), site.metric)?;
    let trade = named(&cure.next, EN);
    let date = |count: i64| date::civil(count).map_or_else(String::new, |(y, m, d)| date::iso(y, m, d));
    let title = format!(
        "the {trade} asks for {}; the wall of {} then has {on_wall} of {needs} days of cure, not before {}",
        date(wants),
        site.code.text,
        date(may)
    );
    let over = text(ground, &id("cure_over"), site.metric).map_or_else(String::new, |t| typed(&t));
    let mut finding = Finding::new(CHECK.name, Severity::Stop, title)
        .at(asks.at, "asked for")
        .derived(format!("last mud {} + {needs} days = over at the end of {}", date(last), if over.is_empty() { date(may - 1) } else { over }))
        .source(match mix.cure.credit {
            Some(_) => "mix sheet: days of credit before the next trade, counted by the warmth of each day (after the idea of ASTM C1074, no proof of strength)",
            None => "mix sheet: wet time of the cure",
        })
        .help(format!("tell the {trade}: `asks: {}` or later", date(may)))
        .figure(id("next_trade"))
        .about(site.code.text.clone());
    let days = site.plan.iter().flat_map(|p| &p.days).map(|g| &g.day).chain(&site.calendar.carve);
    if let Some(carve) = days.max_by_key(|d| (d.year, d.month, d.day)) {
        finding = finding.related(carve.at, "the last mud");
    }
    let credit = mix.cure.credit.as_ref().unwrap_or(&mix.cure.wet);
    Some(crate::sound::told::related_value(finding, ground, credit.node(), "days the mix sheet asks for"))
}
