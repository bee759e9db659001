//! H11: people work in heat, and nobody has planned water and shade.

use num_rational::BigRational;

use crate::finding::{Finding, Severity};
use crate::job::{Site, weather::Date};
use crate::quantity::units::find_expr;
use crate::sound::limits::{self, Limit};
use crate::sound::told::{authored, text};
use crate::sound::{Check, Ground};
use crate::source::Span;

use super::phrases::{row, says};
use super::{said, unsaid};

/// The check.
pub const CHECK: Check = Check {
    name: "heat-without-shade",
    ids: &["H11"],
    severities: &[Severity::Warn],
    title: "work in heat without a line for water and shade",
    manual: include_str!("heat_without_shade.md"),
    twins: &[("es", include_str!("heat_without_shade.es.md"))],
    run,
};

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    let Some(row) = limits::find(limits::HOT) else { return Vec::new() };
    ground.job.sites.iter().filter_map(|site| one(ground, site, row)).collect()
}

fn one(ground: &Ground<'_>, site: &Site, limit: &Limit) -> Option<Finding> {
    let plan = said(site, |s| s.heat.as_ref());
    let words = plan.map(|t| row(&t.text)).unwrap_or_default();
    let (water, shade) = (says(&words, &["water", "agua"]), says(&words, &["shade", "shaded", "sombra"]));
    if water && shade {
        return None;
    }
    let lacks = match (water, shade) {
        (true, false) => "shade",
        (false, true) => "water",
        _ => "water and shade",
    };
    let degrees = find_expr("°F")?;
    let most = limit.quantity()?.exact_in(degrees)?;
    let (heat, at) = band(ground, site, &most).or_else(|| hour(ground, site, &most))?;
    let title = format!("{} works up to {heat}, over {} it plans {lacks}", site.code.text, limit.value);
    let finding = Finding::new(CHECK.name, Severity::Warn, title)
        .source(limit.source)
        .help("plan both, and a pair for every new hand: `heat: water cooler, shade tent, a rest in it every hour`");
    let finding = match plan {
        Some(text) => finding.at(text.at, format!("names no {lacks}")),
        None => unsaid(finding, site, "heat"),
    };
    Some(match at {
        Some(at) => finding.related(at, "this warm"),
        None => finding,
    })
}

/// The upper end of the planned band, where it is over.
fn band(ground: &Ground<'_>, site: &Site, most: &BigRational) -> Option<(String, Option<Span>)> {
    let high = &site.climate.band.1;
    if high.value().exact_in(find_expr("°F")?)? <= *most {
        return None;
    }
    Some((text(ground, &format!("{}.band_high", site.id), site.metric)?, authored(ground, high.node()).map(|(_, span)| span)))
}

/// The hottest hour of a planned day between its start and its end, where it is over.
fn hour(ground: &Ground<'_>, site: &Site, most: &BigRational) -> Option<(String, Option<Span>)> {
    let plan = site.plan.as_ref()?;
    let weather = ground.job.weather.iter().find(|w| w.site == site.id)?;
    let (degrees, minutes) = (find_expr("°F")?, find_expr("min")?);
    let day = |g: &crate::job::DayGoal| Date { year: g.day.year, month: g.day.month, day: g.day.day };
    let days: Vec<Date> = plan.days.iter().map(day).collect();
    let planned = |d: &Date| days.iter().any(|p| (p.month, p.day) == (d.month, d.day) && (weather.typical || p.year == d.year));
    let (from, to) = (plan.starts.value().exact_in(minutes)?, plan.ends.value().exact_in(minutes)?);
    let mut hottest: Option<(BigRational, &crate::job::weather::Hour)> = None;
    for (_, hour) in weather.hours.iter().filter(|(d, _)| planned(d)) {
        let at = hour.at.value().exact_in(minutes)?;
        let Some(air) = hour.air.value().exact_in(degrees).filter(|_| at >= from && at <= to) else { continue };
        if air > *most && hottest.as_ref().is_none_or(|(h, _)| air > *h) {
            hottest = Some((air, hour));
        }
    }
    let (_, hour) = hottest?;
    let said = authored(ground, hour.air.node());
    let unit = hour.air.node().unit().map_or_else(|| "°F".to_owned(), |u| u.symbol());
    let text = format!("{} {unit}", hour.air.node().number().plain());
    Some((text, said.map(|(_, span)| span)))
}
