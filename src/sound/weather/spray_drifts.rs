//! E10: colour or sealer is sprayed in wind, or beside what it would land on.

use crate::finding::{Finding, Severity};
use crate::job::weather::Hour;
use crate::job::{Day, Finish, Site};
use crate::sound::told::at_value;
use crate::sound::weather::sky::{Sky, beyond, skies};
use crate::sound::{Check, Ground, limits};
use crate::tally::Role;

/// The check.
pub const CHECK: Check = Check {
    name: "spray-drifts",
    ids: &["E10"],
    severities: &[Severity::Hold],
    title: "color or sealer is sprayed in wind, or beside what it would land on",
    manual: include_str!("spray_drifts.md"),
    twins: &[("es", include_str!("spray_drifts.es.md"))],
    run,
};

fn sprayed(site: &Site) -> Option<&Finish> {
    site.finish.as_ref().filter(|f| f.by.as_ref().is_some_and(|by| by.text == "spray"))
}

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    let beside = ground.job.sites.iter().filter_map(|site| neighbours(site, sprayed(site)?));
    let all = skies(ground);
    let windy = all.iter().filter(|sky| sky.outdoors()).filter_map(|sky| Some((sky, sprayed(sky.site)?)));
    let windy = windy.flat_map(|(sky, finish)| finish.days.iter().filter_map(move |day| wind(ground, sky, day)));
    beside.chain(windy).collect()
}

fn neighbours(site: &Site, finish: &Finish) -> Option<Finding> {
    let near = finish.near.as_ref().filter(|_| !finish.masked)?;
    let title = format!("{} is sprayed beside {} and nothing is masked, all of it must be", site.code.text, near.text);
    let finding = Finding::new(CHECK.name, Severity::Hold, title)
        .at(near.at, "overspray reaches this")
        .source("common practice, no source")
        .help("mask, cover or move it and write `masked: yes`, or put it on by brush or roller")
        .about("near");
    Some(match &finish.by {
        Some(by) => finding.related(by.at, "sprayed"),
        None => finding,
    })
}

/// The windiest hour of the shift on a day of spraying, if it is over the limit.
fn wind(ground: &Ground<'_>, sky: &Sky<'_>, day: &Day) -> Option<Finding> {
    let (limit, most, source) = sky.limit(limits::SPRAY_WIND)?;
    let date = day.date();
    let lines: Vec<&Hour> = sky.weather.lines(date).collect();
    let si = |h: &Hour| h.at.value().si.to_f64();
    let shift = sky.site.plan.as_ref().map(|p| (p.starts.value().si.to_f64(), p.ends.value().si.to_f64()));
    let inside =
        |(i, h): &(usize, &&Hour)| shift.is_none_or(|(starts, ends)| si(h) < ends && lines.get(i + 1).is_none_or(|next| si(next) > starts));
    let hours = lines.iter().enumerate().filter(inside).map(|(_, h)| *h);
    let read = |h: &Hour| h.wall_wind.as_ref().unwrap_or(&h.wind).value().si.to_f64();
    let worst = hours.max_by(|a, b| read(a).total_cmp(&read(b)))?;
    let wind = worst.wall_wind.as_ref().unwrap_or(&worst.wind);
    let (number, unit, text) = sky.printed(ground, Role::Wind, wind.value())?;
    if !beyond(&number, unit, &limit, false) {
        return None;
    }
    let title = format!("wind {text} on {}, spray drifts over {most}", sky.when(ground, date, worst));
    let finding = Finding::new(CHECK.name, Severity::Hold, title)
        .source(source)
        .help("put it on by brush or roller, or spray in the still hours and say so by another day in `finish.days`")
        .about(date.iso());
    Some(at_value(finding, ground, wind.node(), "in this hour").related(day.at, "sprayed on this day"))
}
