//! C2: a cure that somebody counted by hand, with days in it that were too cold to count, or a text that counts them.

use num_rational::BigRational;

use super::days::{least, mud, number, over, said};
use crate::finding::{Finding, Severity};
use crate::job::Site;
use crate::sound::phrase::{Ask, each_clause};
use crate::sound::told::{printed, related_value, text};
use crate::sound::{Check, Ground};
use crate::tally::{cure, mix_of};

/// The check.
pub const CHECK: Check = Check {
    name: "cold-day-counted",
    ids: &["C2"],
    severities: &[Severity::Stop],
    title: "a cold day is counted as a day of cure",
    manual: include_str!("cold_day_counted.md"),
    twins: &[("es", include_str!("cold_day_counted.es.md"))],
    run,
};

const COLD: &[&str] = &[
    "cold", "freezing", "frozen", "frosty", "chilly", "winter", "frío", "fría", "fríos", "frías", "helado", "helada", "helados", "invierno",
];
const DAY: &[&str] = &["day", "days", "night", "nights", "día", "días", "noche", "noches"];
const COUNTS: &[&str] = &["count", "counts", "counted", "counting", "cuenta", "cuentan", "cuente", "contar", "contado"];
/// What a cold day does count.
const NOTHING: &[&str] = &["zero", "half", "lowest", "reading", "less", "cero", "medio", "media", "lectura", "baja", "menos"];
const NOT: &[&str] = &["no", "not", "never", "nothing", "don't", "doesn't", "without", "nunca", "nada", "ni", "sin"];

const ASK: Ask<'static> = Ask { all: &[COUNTS, COLD, DAY], unless: NOTHING, not: NOT };
const SOURCE: &str = "common practice for cement, no source for this mix; ASTM C1074 knows the idea of time by temperature (recalled)";

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    let mut found: Vec<Finding> = ground.job.sites.iter().filter_map(|site| one(ground, site)).collect();
    found.extend(each_clause(ground, &ASK, |_, word, at| {
        Finding::new(CHECK.name, Severity::Stop, format!("the text counts a cold day (`{word}`) as cure, it counts zero"))
            .at(at, "counts it")
            .source(SOURCE)
            .help("write that a day too cold for the mix counts zero, and that the covers stay on as much longer")
    }));
    found
}

/// A day stated as the end of the cure, against the credit of the days until it.
fn one(ground: &Ground<'_>, site: &Site) -> Option<Finding> {
    let done = site.cure.as_ref()?.done.as_ref()?;
    let mix = mix_of(ground.job, &site.carve_mix.text)?;
    let need = mix.cure.credit.as_ref()?;
    let (_, last) = mud(site)?;
    let (end, start, true_end) = (number(done)?, number(last)?, over(ground, site)?);
    let counted = end.clone() - start;
    // Too few days even in warm weather is another mistake.
    if end >= true_end || counted < least(mix)? {
        return None;
    }
    let one = BigRational::from_integer(1.into());
    let days: Vec<String> =
        cure::days(ground.tally, site).into_iter().filter(|p| p.rsplit('/').next().is_some_and(|d| *d <= *done.iso())).collect();
    let short = |p: &&String| printed(ground, &format!("{p}.credit"), site.metric).and_then(|v| v.number).is_some_and(|n| n < one);
    let cold: Vec<&String> = days.iter().filter(short).collect();
    let worth = text(ground, &format!("{}.sum", days.last()?), site.metric)?;
    let sheet = text(ground, &format!("{}.cure_credit", mix.id), site.metric)?;
    let title = format!("{} are counted until {}, they are worth {worth} of {sheet}", said(&counted), done.iso());
    let mut finding = Finding::new(CHECK.name, Severity::Stop, title).at(done.at, "counted as over");
    for prefix in cold {
        let value = |name: &str| text(ground, &format!("{prefix}.{name}"), site.metric);
        if let (Some(day), Some(mean), Some(credit)) = (prefix.rsplit('/').next(), value("mean"), value("credit")) {
            finding = finding.derived(format!("{day}: mean {mean}, counts {credit}"));
        }
    }
    let until = text(ground, &format!("{}.cure_over", site.id), site.metric)?;
    let finding = related_value(finding, ground, need.node(), "days at full warmth");
    Some(
        finding
            .source(SOURCE)
            .help(format!("leave `done` out, or write the day on which the credit is full: {until}"))
            .figure(format!("{}.cure_over", site.id)),
    )
}
