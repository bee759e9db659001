//! H10: a text on safety is not in a language that somebody of the crew reads.

use crate::finding::{Finding, Severity};
use crate::job::{Company, Edition, Job, Person, Site, Text};
use crate::sound::{Check, Ground};
use crate::source::Span;

/// The check.
pub const CHECK: Check = Check {
    name: "safety-text-not-in-crew-language",
    ids: &["H10"],
    severities: &[Severity::Stop],
    title: "a text on safety is not in a language that the crew reads",
    manual: include_str!("safety_text_not_in_crew_language.md"),
    twins: &[("es", include_str!("safety_text_not_in_crew_language.es.md"))],
    run,
};

/// A text that everybody it is for must be able to read.
struct Told<'a> {
    name: String,
    /// Languages it is printed in.
    langs: Vec<&'a str>,
    at: Span,
    /// Readers, by role; everybody without one.
    reader: Option<&'a Text>,
}

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    let Some(company) = &ground.job.company else { return Vec::new() };
    texts(ground.job, company).iter().flat_map(|told| one(ground.job, company, told)).collect()
}

/// The book itself, its chapter on safety, cautions, and cards that carry any.
fn texts<'a>(job: &'a Job, company: &'a Company) -> Vec<Told<'a>> {
    let langs = |editions: &'a [Edition]| editions.iter().map(|e| e.lang.as_str()).collect();
    let at = |editions: &[Edition]| editions.first().map(|e| e.title.at);
    let mut out = Vec::new();
    if let (Some(first), Some(_)) = (company.languages.first(), &job.handbook) {
        let langs = company.languages.iter().map(|t| t.text.as_str()).collect();
        out.push(Told { name: "the book".to_owned(), langs, at: first.at, reader: None });
    }
    let chapters = job.chapters.iter().filter(|c| c.id.contains("safety"));
    out.extend(chapters.filter_map(|c| {
        Some(Told { name: "the chapter on safety".to_owned(), langs: langs(&c.editions), at: at(&c.editions)?, reader: None })
    }));
    out.extend(job.cautions.iter().filter_map(|c| {
        let word = &c.editions.first()?.title.text;
        Some(Told { name: format!("the caution {word}"), langs: langs(&c.editions), at: at(&c.editions)?, reader: None })
    }));
    let carrying = job.cards.iter().filter(|c| !c.cautions.is_empty());
    out.extend(carrying.filter_map(|c| {
        let name = format!("the {}", c.editions.first()?.title.text);
        let faces = c.faces.iter().map(|t| t.text.as_str()).collect();
        let at = c.faces.first().map_or(at(&c.editions)?, |t| t.at);
        Some(Told { name, langs: faces, at, reader: Some(&c.reader) })
    }));
    out
}

/// One finding for a text and the people of all sites who cannot read it.
fn one(job: &Job, company: &Company, told: &Told<'_>) -> Option<Finding> {
    let on_site = |p: &&Person| job.sites.iter().any(|s: &Site| s.crew.iter().any(|c| c.text == p.code.text));
    let addressed = |p: &&Person| told.reader.is_none_or(|r| reads(&r.text, &p.role.text));
    let cannot = |p: &&Person| !p.languages.is_empty() && p.languages.iter().all(|l| !told.langs.contains(&l.text.as_str()));
    let people: Vec<&Person> = company.people.iter().filter(on_site).filter(addressed).filter(cannot).collect();
    let first = people.first()?;
    let codes: Vec<&str> = people.iter().map(|p| p.code.text.as_str()).collect();
    let mut wanted: Vec<&str> = people.iter().filter_map(|p| p.languages.first()).map(|l| l.text.as_str()).collect();
    wanted.sort_unstable();
    wanted.dedup();
    let verb = if people.len() == 1 { "reads" } else { "read" };
    let title = format!("{} is in {}, {} {verb} only {}", told.name, told.langs.join(", "), codes.join(", "), wanted.join(", "));
    let mut finding = Finding::new(CHECK.name, Severity::Stop, title)
        .at(told.at, format!("only in {}", told.langs.join(", ")))
        .source("training and warnings in a language and words that the worker understands: OSHA's policy statement on training standards of 2010, recalled")
        .help(format!("give it an edition in {}, read by somebody who speaks it", wanted.join(" and ")));
    for person in people.iter().filter(|p| !p.languages.is_empty()) {
        if let Some(lang) = person.languages.first() {
            finding = finding.related(lang.at, format!("{} reads this", person.code.text));
        }
    }
    Some(finding.about(first.code.text.clone()))
}

/// True if a card for these readers is for this role: `crew` is everybody.
fn reads(reader: &str, role: &str) -> bool {
    let (reader, role) = (super::phrases::row(reader), super::phrases::row(role));
    reader.contains(" crew ") || reader.contains(role.as_str())
}
