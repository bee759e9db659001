//! S7: of two days that follow one another, the first stands after the second: a slip in one of them.

use crate::finding::{Finding, Severity};
use crate::job::{Day, Job, Site};
use crate::quantity::date::iso;
use crate::sound::{Check, Ground};

/// The check.
pub const CHECK: Check = Check {
    name: "dates-out-of-order",
    ids: &["S7"],
    severities: &[Severity::Warn],
    title: "two days stand in the wrong order",
    manual: include_str!("dates_out_of_order.md"),
    twins: &[("es", include_str!("dates_out_of_order.es.md"))],
    run,
};

/// Two things of which the first cannot be later than the second.
struct Pair<'a> {
    first: (String, &'a Day),
    then: (String, &'a Day),
}

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    let mut found: Vec<Finding> = ground.job.sites.iter().flat_map(|site| pairs(ground, site)).filter_map(|p| judge(&p)).collect();
    found.extend(past(ground.job).into_iter().filter_map(|(what, day)| ahead(ground.on, &what, day)));
    found
}

/// Days of one site that follow one another. The wait between the coats has a check of its own.
fn pairs<'a>(ground: &Ground<'a>, site: &'a Site) -> Vec<Pair<'a>> {
    let mut out = Vec::new();
    let calendar = &site.calendar;
    let key = |d: &&Day| (d.year, d.month, d.day);
    let of = |what: &str| format!("{what} of {}", site.code.text);
    if let (Some(lath), Some(scratch)) = (&calendar.lath, &calendar.scratch) {
        out.push(Pair { first: (of("the lath"), lath), then: (of("the scratch coat"), scratch) });
    }
    if let (Some(panel), Some(carve)) = (&calendar.panel, calendar.carve.iter().min_by_key(key)) {
        out.push(Pair { first: (of("the panel"), panel), then: (of("the first carving day"), carve) });
    }
    // Cards that are past their day already have a finding of their own.
    if let Some(carve) = calendar.carve.iter().max_by_key(key).filter(|_| key(&&site.good_until) >= ground.on) {
        out.push(Pair { first: (of("the last carving day"), carve), then: (of("the last day of the cards"), &site.good_until) });
    }
    for panel in crate::tally::panels::of(ground.job, site) {
        let mix = crate::tally::mix_of(ground.job, &panel.mix.text).filter(|m| m.rev.text == panel.rev.text);
        if let Some((mix, dated)) = mix.and_then(|m| Some((m, m.date.as_ref()?))) {
            let first = (format!("rev {} of {}", mix.rev.text, mix.name.text), dated);
            out.push(Pair { first, then: (format!("the panel of {} in it", panel.texture.text), &panel.date) });
        }
    }
    out
}

/// What has happened, and so cannot be of a day to come.
fn past(job: &Job) -> Vec<(String, &Day)> {
    let mut out: Vec<(String, &Day)> = Vec::new();
    out.extend(job.letters.iter().map(|l| (format!("the letter {}", l.reference.text), &l.date)));
    out.extend(job.panels.iter().map(|p| (format!("the panel of {} at {}", p.texture.text, p.site.text), &p.date)));
    for record in &job.appliances {
        out.extend(record.date.iter().map(|d| (format!("the look at the papers of {}/{}", record.surface.text, record.opening.text), d)));
    }
    for mix in &job.mixes {
        out.extend(mix.date.iter().map(|d| (format!("rev {} of {}", mix.rev.text, mix.name.text), d)));
        out.extend(mix.mixing.weighed.iter().map(|w| (format!("the weighed pail of {}", mix.name.text), &w.date)));
    }
    for site in &job.sites {
        out.extend(site.lots.iter().map(|l| (format!("lot {} of {}", l.number.text, l.material.text), &l.made)));
    }
    out.extend(job.company.iter().filter_map(|c| c.prices.as_ref()).map(|p| ("the price list".to_owned(), &p.dated)));
    out
}

fn judge(pair: &Pair<'_>) -> Option<Finding> {
    let ((first, a), (then, b)) = (&pair.first, &pair.then);
    if a.date() <= b.date() {
        return None;
    }
    let finding = Finding::new(CHECK.name, Severity::Warn, format!("{first} is of {}, {then} of {}", a.iso(), b.iso()))
        .at(b.at, "this comes after the other")
        .related(a.at, "this comes first")
        .about(b.iso());
    Some(said(finding, "write both as they were or will be; one of them has a slip"))
}

fn ahead(on: (i16, i8, i8), what: &str, day: &Day) -> Option<Finding> {
    if (day.year, day.month, day.day) <= on {
        return None;
    }
    let today = iso(on.0, on.1, on.2);
    let finding = Finding::new(CHECK.name, Severity::Warn, format!("{what} is of {}, the day of this run is {today}", day.iso()))
        .at(day.at, "a day to come")
        .about(day.iso());
    Some(said(finding, "write the day on which it was; where the run is of a past day, name the day of today with `--on`"))
}

fn said(finding: Finding, help: &str) -> Finding {
    finding.source("arithmetic of the calendar; the order is that of the work, common practice, no source").help(help)
}
