//! M9: a tumbling drum is to mix a stiff mix.

use crate::finding::{Finding, Severity};
use crate::job::{BatchPlan, Mixer, Site};
use crate::sound::{Check, Ground};
use crate::tally::mix_of;

/// The check.
pub const CHECK: Check = Check {
    name: "drum-for-stiff-mix",
    ids: &["M9"],
    severities: &[Severity::Hold],
    title: "a tumbling drum is to mix a stiff mix",
    manual: include_str!("drum_for_stiff_mix.md"),
    twins: &[("es", include_str!("drum_for_stiff_mix.es.md"))],
    run,
};

/// Words of a mixer that turns its vessel.
const DRUM: &[&str] = &["drum", "tumble", "tumbling", "tumbler", "barrel", "concrete"];
/// Words of a mixer that shears: a drum that lies still around a paddle is one of these.
const SHEARS: &[&str] = &["paddle", "paddles", "blade", "blades", "pan", "planetary", "horizontal"];

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    let mut found: Vec<Finding> = Vec::new();
    for finding in super::plans(ground.job).filter_map(|(site, plan, mixer)| one(ground, site, plan, mixer)) {
        // A mixer is wrong once for a mix, however many batches and sites name it.
        if !found.iter().any(|f| f.title == finding.title) {
            found.push(finding);
        }
    }
    found
}

fn one(ground: &Ground<'_>, site: &Site, plan: &BatchPlan, mixer: &Mixer) -> Option<Finding> {
    let mix = mix_of(ground.job, &plan.mix.text)?;
    let asks = mix.mixing.mixer.as_ref();
    if !tumbles(&mixer.sort.text) || asks.is_some_and(|m| m.text == "any") {
        return None;
    }
    let name = super::named(mixer);
    let wants = if asks.is_some() { "asks for a paddle" } else { "names no mixer, and a stiff mix needs a paddle" };
    let sheared = ground.job.company.iter().flat_map(|c| &c.mixers).find(|m| !tumbles(&m.sort.text));
    let instead = sheared.map_or("hire a paddle mixer".to_owned(), |m| format!("plan the {}: `mixer: {}`", super::named(m), m.code.text));
    let mut finding = Finding::new(CHECK.name, Severity::Hold, format!("the {name} is a `{}`, {} {wants}", mixer.sort.text, mix.name.text))
        .at(mixer.sort.at, "turns its vessel")
        .related(plan.mixer.at, "planned here")
        .source("common practice, no source: a stiff mix rolls into balls in a drum and is not sheared; the mix sheet decides")
        .help(format!("{instead}; where the sheet allows a drum, write `mixing: {{mixer: any}}` in the mix"))
        .about(mix.name.text.clone());
    if let Some(asks) = asks {
        finding = finding.related(asks.at, "the sheet asks for this");
    }
    Some(finding.figure(format!("{}.loads", crate::tally::batch_id(ground.job, site, plan))))
}

/// True if the words say that the vessel turns.
fn tumbles(sort: &str) -> bool {
    let sort = sort.to_lowercase();
    let says = |list: &[&str]| sort.split(|c: char| !c.is_alphanumeric()).any(|w| list.contains(&w));
    says(DRUM) && !says(SHEARS)
}

#[cfg(test)]
mod tests {
    use super::tumbles;

    #[test]
    fn words_of_mixers() {
        for drum in ["drum", "tilting drum", "concrete mixer", "Tumble-drum"] {
            assert!(tumbles(drum), "{drum}");
        }
        for paddle in ["paddle", "hand paddle in a tub", "pan", "still drum with turning paddles", "horizontal drum"] {
            assert!(!tumbles(paddle), "{paddle}");
        }
    }
}
