//! H6: people and mix stand on a platform that has no tag.

use crate::finding::{Finding, Severity};
use crate::sound::told::at_value;
use crate::sound::{Check, Ground};

/// The check.
pub const CHECK: Check = Check {
    name: "platform-without-tag",
    ids: &["H6"],
    severities: &[Severity::Hold],
    title: "a platform is planned with no tag that rates it",
    manual: include_str!("platform_without_tag.md"),
    twins: &[("es", include_str!("platform_without_tag.es.md"))],
    run,
};

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    let Some(deck) = ground.job.company.as_ref().and_then(|c| c.platform.as_ref()) else { return Vec::new() };
    let tagged = deck.tag.as_ref().is_some_and(|t| !t.text.trim().is_empty());
    let lacks = match (&deck.rating, tagged) {
        (Some(_), true) => return Vec::new(),
        (None, true) => "no `rating` off its tag",
        (Some(_), false) => "a rating and no `tag` that says it",
        (None, false) => "neither `rating` nor `tag`",
    };
    let people = deck.people.node().number().plain();
    let finding = Finding::new(CHECK.name, Severity::Hold, format!("{people} people stand on a platform with {lacks}, without a tag nobody climbs it"))
        .source("a scaffold carries what the competent person and its tag say: OSHA 29 CFR 1926.451(a)(1) and (f)(3), recalled; the tag itself is common practice")
        .help("read the tag on the scaffold and write both: `rating: 25 lb/ft2` and `tag: which tag`; no tag, nobody goes up")
        .absent();
    let finding = match &deck.rating {
        Some(rating) => at_value(finding, ground, rating.node(), "whose figure is this"),
        None => at_value(finding, ground, deck.people.node(), "these stand on it"),
    };
    vec![finding]
}
