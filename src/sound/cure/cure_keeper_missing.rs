//! C8: mud on the wall and nobody named who looks after it, or a day on which the one who is named is away.

use super::days::{least, mud, number, over};
use crate::finding::{Finding, Severity};
use crate::job::{CurePlan, Day, Site};
use crate::sound::told::text;
use crate::sound::{Check, Ground};
use crate::tally::mix_of;

/// The check.
pub const CHECK: Check = Check {
    name: "cure-keeper-missing",
    ids: &["C8"],
    severities: &[Severity::Hold],
    title: "a day of the cure has no keeper",
    manual: include_str!("cure_keeper_missing.md"),
    twins: &[("es", include_str!("cure_keeper_missing.es.md"))],
    run,
};

const SOURCE: &str = "common practice, no source: walls dry out on Sundays";

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    ground.job.sites.iter().flat_map(|site| one(ground, site)).collect()
}

fn one(ground: &Ground<'_>, site: &Site) -> Vec<Finding> {
    let Some((first, last)) = mud(site) else { return Vec::new() };
    match &site.cure {
        None => {
            let title = format!(
                "mud goes on {} from {} and nobody is named who keeps its cure, nights and weekends too",
                site.code.text,
                first.iso()
            );
            let finding = Finding::new(CHECK.name, Severity::Hold, title).at(first.at, "first mud on the wall").absent().source(SOURCE);
            vec![
                finding
                    .help("name one role with a telephone: `cure: {keeper: LEAD, next: painter}`")
                    .figure(format!("{}.last_carve", site.id)),
            ]
        }
        Some(plan) => {
            plan.away.iter().filter(|_| plan.stand_in.is_none()).filter_map(|day| away(ground, site, plan, (first, last), day)).collect()
        }
    }
}

/// A day that lies between the first mud and the end of the cure.
fn away(ground: &Ground<'_>, site: &Site, plan: &CurePlan, (first, last): (&Day, &Day), day: &Day) -> Option<Finding> {
    let (begin, here) = (number(first)?, number(day)?);
    let id = format!("{}.cure_over", site.id);
    // Without a date of the takeoff the sheet's least days hold.
    let sheet = || Some(number(last)? + least(mix_of(ground.job, &site.carve_mix.text)?)?);
    let end = over(ground, site).or_else(sheet)?;
    if here < begin || here > end {
        return None;
    }
    let until = text(ground, &id, site.metric).unwrap_or_else(|| "its end".to_owned());
    let title =
        format!("nobody is listed for {}: {} is away, and the cure of {} lasts to {until}", day.iso(), plan.keeper.text, site.code.text);
    Some(
        Finding::new(CHECK.name, Severity::Hold, title)
            .at(day.at, "the keeper is away")
            .related(plan.keeper.at, "keeps the cure")
            .related(first.at, "first mud on the wall")
            .source(SOURCE)
            .help("name who comes instead: `stand_in: APP1`")
            .about(day.iso())
            .figure(id),
    )
}
