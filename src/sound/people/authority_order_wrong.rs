//! The order of authority: whose word wins, and that habit and this book never win over law or data sheet.

use crate::finding::{Finding, Severity};
use crate::sound::text::Sentence;
use crate::sound::{Check, Ground, Role, Seen};
use crate::source::Span;

use super::phrases::Line;

/// The check.
pub const CHECK: Check = Check {
    name: "authority-order-wrong",
    ids: &["H3"],
    severities: &[Severity::Hold],
    title: "the book does not say whose word wins, or in the wrong order",
    manual: include_str!("authority_order_wrong.md"),
    twins: &[("es", include_str!("authority_order_wrong.es.md"))],
    run,
};

/// Who wins over whom, the highest first, and the words that name them.
const RANKS: &[(&str, &[&str])] = &[
    ("the law, the engineer and the competent person", &["law", "code official", "engineer", "ley", "ingeniero"]),
    ("data sheets and manuals", &["data sheet", "data sheets", "safety data sheet", "manuals", "hoja de seguridad", "hojas", "manuales"]),
    ("the approved panel", &["approved panel", "panel", "panel aprobado"]),
    ("this book and the cards", &["book", "cards", "handbook", "libro", "manual de la cuadrilla", "tarjetas"]),
    ("habit", &["habit", "habits", "costumbre"]),
];

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    let mut judged: Vec<(u32, &str)> = Vec::new();
    let mut ordered: Vec<&str> = Vec::new();
    let mut found = Vec::new();
    let texts = || ground.texts().filter(|s| matches!(s.role, Role::Notes | Role::Chapter(_)));
    for seen in texts() {
        let key = (seen.edition.body.file, seen.edition.lang.as_str());
        if judged.contains(&key) {
            continue;
        }
        judged.push(key);
        let Some(ranked) = list(seen) else { continue };
        ordered.push(seen.edition.lang.as_str());
        found.extend(wrong(&ranked));
    }
    let Some(company) = ground.job.company.as_ref().filter(|_| texts().next().is_some()) else { return found };
    for lang in company.languages.iter().filter(|l| !ordered.contains(&l.text.as_str())) {
        found.push(
            new(format!("the book in {} has no numbered list of whose word wins", lang.text))
                .at(lang.at, "the book is printed in this")
                .absent()
                .about(lang.text.clone()),
        );
    }
    found
}

fn new(title: String) -> Finding {
    Finding::new(CHECK.name, Severity::Hold, title).source("house rule; common practice, no source").help(
        "a numbered list, the highest first: law, engineer, competent person; data sheets and manuals; approved panel; this book; habit",
    )
}

/// The steps of a list that speaks of the law and of habit: rank and place of each that names one.
fn list(seen: &Seen<'_>) -> Option<Vec<(usize, Option<Span>)>> {
    let mut run: Vec<&Sentence> = Vec::new();
    let mut lists: Vec<Vec<&Sentence>> = Vec::new();
    for sentence in seen.sentences().iter().filter(|s| s.step.is_some()) {
        if run.last().is_some_and(|last| sentence.step < last.step) {
            lists.push(std::mem::take(&mut run));
        }
        run.push(sentence);
    }
    lists.push(run);
    let ranked = lists.into_iter().map(|list| list.into_iter().filter_map(rank).collect::<Vec<_>>());
    let last = RANKS.len() - 1;
    ranked.into_iter().find(|r| [0, last].iter().all(|rank| r.iter().any(|(k, _)| k == rank)))
}

/// What a step puts first among the ranks that it names.
fn rank(sentence: &Sentence) -> Option<(usize, Option<Span>)> {
    let line = Line::of(sentence);
    let named = RANKS.iter().enumerate().filter_map(|(k, (_, words))| line.find(words).map(|at| (at, k)));
    named.min().map(|(at, k)| (k, line.place(at)))
}

/// The first step that stands above one of a higher rank, and the ranks that no step names.
fn wrong(ranked: &[(usize, Option<Span>)]) -> Option<Finding> {
    let name = |k: usize| RANKS.get(k).map_or("", |(name, _)| *name);
    for (above, below) in ranked.iter().zip(ranked.iter().skip(1)) {
        if above.0 > below.0
            && let (Some(at), Some(higher)) = (above.1, below.1)
        {
            let title = format!("the order of authority puts {} before {}", name(above.0), name(below.0));
            return Some(new(title).at(at, "this wins over the next line").related(higher, "this is the higher one"));
        }
    }
    let lacks = (0..RANKS.len()).find(|k| ranked.iter().all(|(r, _)| r != k))?;
    let at = ranked.first().and_then(|(_, at)| *at)?;
    Some(new(format!("the order of authority does not name {}", name(lacks))).at(at, "the list begins here").value(name(lacks)))
}
