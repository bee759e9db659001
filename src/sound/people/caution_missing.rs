//! H3, and the trade's cautions by condition: a paper calls for a caution and does not carry it.

use crate::finding::{Finding, Severity};
use crate::job::Caution;
use crate::sound::{Check, Ground};

use super::called::{Paper, papers};
use super::conditions::{ALWAYS, WET_CEMENT};
use super::facts;

/// The check.
pub const CHECK: Check = Check {
    name: "caution-missing",
    ids: &["H3"],
    severities: &[Severity::Hold],
    title: "a paper calls for a caution that it does not carry",
    manual: include_str!("caution_missing.md"),
    twins: &[("es", include_str!("caution_missing.es.md"))],
    run,
};

const SOURCE: &str = "duty to warn of a known hazard where it is met: OSHA 29 CFR 1910.1200 and 1926.21(b)(2), recalled; which words call for which caution is common practice, no source";

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    let mut found: Vec<Finding> = papers(ground).iter().flat_map(|paper| of_paper(ground, paper)).collect();
    found.extend(book(ground));
    found
}

/// Cautions on file for a condition.
fn on_file<'a>(ground: &'a Ground<'a>, condition: &str) -> Vec<&'a Caution> {
    ground.job.cautions.iter().filter(|c| c.when.text == condition).collect()
}

fn names(cautions: &[&Caution]) -> String {
    cautions.iter().map(|c| c.id.as_str()).collect::<Vec<_>>().join(", ")
}

fn new(title: String) -> Finding {
    Finding::new(CHECK.name, Severity::Hold, title).source(SOURCE)
}

fn of_paper<'a>(ground: &'a Ground<'a>, paper: &Paper<'a>) -> Vec<Finding> {
    let carries = paper.carries(ground);
    let mut found = Vec::new();
    if let (Some(first), false) = (paper.listed.first(), paper.prints) {
        let listed = paper.listed.iter().map(|t| t.text.as_str()).collect::<Vec<_>>().join(", ");
        found.push(
            new(format!("{} lists {listed} and has no `cautions` fence, it prints none", paper.name))
                .at(first.at, "listed here")
                .help("add the fence ```` ```cautions ```` below its last step"),
        );
    }
    for call in paper.calls(|c| c != WET_CEMENT) {
        let wanted = on_file(ground, call.condition);
        // Nothing is wanted of every paper unless the job has such a caution.
        if call.condition == ALWAYS && wanted.is_empty() {
            continue;
        }
        let missing: Vec<&Caution> = wanted.iter().copied().filter(|c| carries.iter().all(|k| k.id != c.id)).collect();
        let title = match (wanted.is_empty(), missing.is_empty()) {
            (true, _) => format!("{} speaks of {}, no caution on file is for {}", paper.name, call.words, call.condition),
            (false, true) => continue,
            (false, false) if call.condition == ALWAYS => {
                format!("{} does not carry {}, which every paper carries", paper.name, names(&missing))
            }
            (false, false) => format!(
                "{} speaks of {} and does not carry {}, the caution for {}",
                paper.name,
                call.words,
                names(&missing),
                call.condition
            ),
        };
        let help = if wanted.is_empty() {
            format!("write a caution with `when: {}` and list it under `cautions`", call.condition)
        } else {
            format!("list it: `cautions: [{}]`", all_of(paper, &missing))
        };
        let finding = new(title).at(call.at, format!("calls for {}", call.condition)).help(help).about(call.condition);
        found.push(if call.at == paper.at { finding } else { finding.related(paper.at, "this paper") });
    }
    found
}

/// The list as it would pass.
fn all_of(paper: &Paper<'_>, missing: &[&Caution]) -> String {
    let listed = paper.listed.iter().map(|t| t.text.as_str());
    listed.chain(missing.iter().map(|c| c.id.as_str())).collect::<Vec<_>>().join(", ")
}

/// The book of each site carries a caution for everything the site's own figures call for.
fn book(ground: &Ground<'_>) -> Vec<Finding> {
    let Some(handbook) = &ground.job.handbook else { return Vec::new() };
    let from = || handbook.chapters.iter().flat_map(|c| &c.from);
    let whole = from().any(|t| t.text == "cautions");
    let alone = |c: &Caution| from().any(|t| t.text.trim_end_matches(".md") == format!("cautions/{}", c.id));
    let in_procedures = |c: &Caution| {
        let printed = |id: &str| from().any(|t| t.text.trim_end_matches(".md") == format!("procedures/{id}"));
        ground.job.procedures.iter().any(|p| printed(&p.id) && p.cautions.iter().any(|n| n.text == c.id))
    };
    let mut found = Vec::new();
    for site in &ground.job.sites {
        for fact in facts::of(ground, site) {
            let carried = on_file(ground, fact.condition).into_iter().any(|c| whole || alone(c) || in_procedures(c));
            if carried {
                continue;
            }
            let title = format!("{}: {}, its book carries no caution for {}", site.code.text, fact.why, fact.condition);
            let help = format!(
                "write a caution with `when: {}` and let the book print it: `from: [cautions]` in its chapter on safety",
                fact.condition
            );
            found.push(new(title).at(fact.at, format!("calls for {}", fact.condition)).help(help).about(fact.condition));
        }
    }
    found
}
