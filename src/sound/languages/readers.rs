//! Who on the crews reads which text, and in which language it is missing for them.

use crate::finding::{Finding, Severity};
use crate::job::{Card, Edition, Job, Person, Site, Text, folder_of};

/// A text that a member of a crew cannot read.
pub(super) struct Lack<'a> {
    sort: &'static str,
    id: &'a str,
    original: &'a Edition,
    /// True for what a crew acts on at once: cards, cautions, and the chapter on safety.
    pub grave: bool,
    lang: &'a Text,
    readers: Vec<&'a Person>,
    /// True if the twin is written and the card has no face for it.
    faceless: bool,
}

/// Every text with a reader who reads none of its languages, once a language.
pub(super) fn lacks(job: &Job) -> Vec<Lack<'_>> {
    let whole: Vec<&Person> = crew(job, job.sites.iter().collect());
    let mut out = Vec::new();
    for card in &job.cards {
        let faces: Vec<&str> = card.faces.iter().chain(&card.stacked).map(|t| t.text.as_str()).collect();
        let stacked = |code: &str| card.stacked.iter().any(|s| s.text == code);
        let written = |code: &str| stacked(code) || card.editions.iter().any(|e| e.lang == code);
        let read: Vec<&str> = faces.iter().copied().filter(|code| written(code)).collect();
        for mut lack in one("card", &card.id, true, &card.editions, &read, &readers(card, &whole)) {
            lack.faceless = card.editions.iter().any(|e| e.lang == lack.lang.text);
            out.push(lack);
        }
    }
    type Read<'r> = (&'static str, &'r str, bool, &'r [Edition], Vec<&'r Person>);
    let mut texts: Vec<Read<'_>> = Vec::new();
    texts.extend(job.cautions.iter().map(|c| ("caution", c.id.as_str(), true, c.editions.as_slice(), whole.clone())));
    let safety = |id: &str| id.contains("safety");
    texts.extend(job.chapters.iter().map(|c| ("chapter", c.id.as_str(), safety(&c.id), c.editions.as_slice(), whole.clone())));
    texts.extend(job.procedures.iter().map(|page| {
        let people = page.mix.as_ref().map_or_else(|| whole.clone(), |mix| crew(job, mixed(job, &mix.text)));
        ("procedure", page.id.as_str(), false, page.editions.as_slice(), people)
    }));
    texts.extend(job.mixes.iter().map(|m| ("mix", m.id.as_str(), false, m.editions.as_slice(), crew(job, mixed(job, &m.name.text)))));
    texts.extend(job.sites.iter().map(|s| ("site", s.id.as_str(), false, s.editions.as_slice(), crew(job, vec![s]))));
    texts.extend(job.company.iter().map(|c| ("company", "company", false, c.editions.as_slice(), whole.clone())));
    texts.extend(job.handbook.iter().map(|h| ("handbook", "handbook", false, h.editions.as_slice(), whole.clone())));
    for (sort, id, grave, editions, people) in &texts {
        out.extend(one(sort, id, *grave, editions, &languages(editions), people));
    }
    out
}

fn languages(editions: &[Edition]) -> Vec<&str> {
    editions.iter().map(|e| e.lang.as_str()).collect()
}

/// Sites that use a mix.
fn mixed<'a>(job: &'a Job, name: &str) -> Vec<&'a Site> {
    job.sites.iter().filter(|s| s.mixes().any(|m| m.text == name)).collect()
}

/// People on the crews of some sites, each once, in the order of the company file.
fn crew<'a>(job: &'a Job, sites: Vec<&'a Site>) -> Vec<&'a Person> {
    let people = job.company.iter().flat_map(|c| &c.people);
    people.filter(|p| sites.iter().any(|s| s.crew.iter().any(|c| c.text == p.code.text))).collect()
}

/// Who reads a card: the roles that its `for` names, or everyone where it names the crew.
fn readers<'a>(card: &Card, crew: &[&'a Person]) -> Vec<&'a Person> {
    let all = card.reader.text.split_whitespace().any(|w| w == "crew");
    crew.iter().copied().filter(|p| all || card.reader.text.contains(&p.role.text)).collect()
}

fn one<'a>(sort: &'static str, id: &'a str, grave: bool, editions: &'a [Edition], read: &[&str], people: &[&'a Person]) -> Vec<Lack<'a>> {
    let Some(original) = editions.first() else { return Vec::new() };
    let mut out: Vec<Lack<'a>> = Vec::new();
    for person in people {
        let Some(lang) = person.languages.first() else { continue };
        if person.languages.iter().any(|l| read.contains(&l.text.as_str())) {
            continue;
        }
        match out.iter_mut().find(|l| l.lang.text == lang.text) {
            Some(lack) => lack.readers.push(person),
            None => out.push(Lack { sort, id, original, grave, lang, readers: vec![person], faceless: false }),
        }
    }
    out
}

/// The finding of a text that somebody cannot read.
pub(super) fn finding(lack: &Lack<'_>, name: &'static str, severity: Severity) -> Finding {
    let codes: Vec<&str> = lack.readers.iter().map(|p| p.code.text.as_str()).collect();
    let (lang, many) = (&lack.lang.text, codes.len() > 1);
    let verb = if many { "read" } else { "reads" };
    let title = format!("the {} `{}` has no `{lang}`; {} {verb} nothing else", lack.sort, lack.original.title.text, codes.join(", "));
    let folder = folder_of(lack.sort);
    let path = if folder.is_empty() { format!("{}.{lang}.md", lack.id) } else { format!("{folder}/{}.{lang}.md", lack.id) };
    let help = match (lack.sort, lack.faceless) {
        ("card", true) => format!("add `{lang}` to its `faces`"),
        ("card", false) => format!("write `{path}`; or, where both languages stand on one face, say `stacked: [{lang}]`"),
        _ => format!("write `{path}`"),
    };
    let mut finding = Finding::new(name, severity, title)
        .at(lack.original.title.at, "not in every language of its readers")
        .source("OSHA 29 CFR 1926.21(b)(2) as its 2010 training memo reads it: in a language the worker understands (recalled)")
        .help(help)
        .about(lang)
        .absent();
    if let Some(first) = lack.readers.first().and_then(|p| p.languages.first()) {
        finding = finding.related(first.at, "reads this");
    }
    finding
}
