//! Files to job: front matter by the field tables, one file per kind. Every authored value keeps its place,
//! and one file's trouble never hides another's.

mod agree;
mod appliance;
mod card;
mod caution;
mod cells;
mod change;
mod chapter;
mod company;
mod corners;
mod costs;
mod details;
mod doc;
mod doubt;
mod field;
mod glossary;
mod group;
mod handbook;
mod kinds;
mod letter;
mod listed;
mod manual;
mod mix;
mod near;
mod panel;
mod paper;
mod plan;
mod procedure;
mod protection;
mod reader;
mod refs;
mod schema;
mod site;
mod starters;
mod supply;
mod surface;
mod value;
mod weather;
mod weather_rows;
mod yaml;

use std::collections::{BTreeMap, BTreeSet};

use crate::finding::{Finding, Severity};
use crate::job::{Chapter, Edition, Job, Signed, Text};
use crate::source::{File, Folder, side_by_side};

use doc::Doc;
pub use kinds::{FORMAT, KINDS, KindOf};
pub use manual::manual;
pub use schema::schema;
pub use starters::starters;

/// Reads every file of a job folder. A file that cannot be read well enough to compute from is missing from
/// the job, and the findings say why.
pub fn job(folder: &Folder) -> (Job, Vec<Finding>) {
    let mut findings: Vec<Finding> = folder.faults().iter().map(doc::of_fault).collect();
    let files: Vec<&File> = folder.files().iter().filter(|f| f.path.ends_with(".md")).collect();
    let read = side_by_side(&files, |file| match kinds::of_path(&file.path, &file.text) {
        Some(kind) => {
            let mut found = Vec::new();
            (Some(doc::read(file, kind, &mut found)), found)
        }
        None => (None, vec![not_read(&file.path, file.span(0, 0))]),
    });
    let mut docs: Vec<Doc<'_>> = Vec::new();
    for (doc, found) in read {
        docs.extend(doc);
        findings.extend(found);
    }
    if !docs.iter().any(|d| d.file.path == "company.md") {
        let finding = Finding::new("company-missing", Severity::Stop, "the job folder has no `company.md`");
        findings.push(finding.help("name another folder, or lay out a new one with `hodbook setout DIR`"));
    }
    twins(&docs, &mut findings);
    findings.extend(refs::check(folder, &docs));
    let mut job = build(&docs);
    job.doubts = doubt::all(&docs);
    job.weather = weather::read(folder, &docs, &mut findings);
    (job, tidy(findings))
}

fn not_read(path: &str, at: crate::source::Span) -> Finding {
    let folder = path.rsplit_once('/').map_or("", |(f, _)| f);
    let folders: Vec<&str> = KINDS.iter().map(|k| k.folder).filter(|f| !f.is_empty()).collect();
    let files: Vec<&str> = KINDS.iter().filter_map(|k| k.file).collect();
    let help = match (folder.is_empty(), near::nearest(folder, folders.iter().copied()), near::nearest(path, files.iter().copied())) {
        (true, _, Some(file)) => format!("did you mean `{file}`?"),
        (false, Some(near), _) => format!("did you mean the folder `{near}/`?"),
        _ => format!("files are read from {} and from the folders {}", near::listed(&files), near::listed(&folders)),
    };
    Finding::new("file-not-read", Severity::Note, format!("`{path}` is not read: no kind of file lives there")).at(at, "").help(help)
}

fn twins(docs: &[Doc<'_>], findings: &mut Vec<Finding>) {
    let own = docs.iter().filter(|d| d.file.language().is_none());
    let originals: BTreeSet<(&str, &str)> = own.map(|d| (d.kind.kind, d.file.stem())).collect();
    for twin in docs.iter().filter(|d| d.file.language().is_some()) {
        if !originals.contains(&(twin.kind.kind, twin.file.stem())) {
            let path = if twin.kind.folder.is_empty() { String::new() } else { format!("{}/", twin.kind.folder) };
            let original = format!("{path}{}.md", twin.file.stem());
            let title = format!("the twin has no original `{original}`");
            let help = "rename it to match its original, or write the original first";
            findings.push(Finding::new("twin-without-original", Severity::Stop, title).at(twin.open, "").help(help));
        }
    }
}

/// Twins by kind and name.
type Twins<'d, 'a> = BTreeMap<(&'d str, &'d str), Vec<&'d Doc<'a>>>;

/// The original first, then its twins by language.
fn editions(original: &Doc<'_>, twins: &Twins<'_, '_>) -> Vec<Edition> {
    let first = Edition { lang: "en".to_owned(), title: original.title(), body: original.body.clone(), follows: None };
    let mut all = vec![first];
    for twin in twins.get(&(original.kind.kind, original.file.stem())).into_iter().flatten() {
        if let (Some(lang), Some(group)) = (twin.file.language(), &twin.group) {
            let title = twin.kind.title.and_then(|key| group.text(key)).unwrap_or_else(|| original.title());
            let follows = group.list_at("follows").or(Some((Vec::new(), twin.open)));
            all.push(Edition { lang: lang.to_owned(), title, body: twin.body.clone(), follows });
        }
    }
    all
}

fn build(docs: &[Doc<'_>]) -> Job {
    let mut job = Job::default();
    let mut twins = Twins::new();
    for doc in docs.iter().filter(|d| d.file.language().is_some()) {
        twins.entry((doc.kind.kind, doc.file.stem())).or_default().push(doc);
    }
    // The company comes first: its languages are the faces of cards that name none.
    for doc in docs.iter().filter(|d| d.file.language().is_none()) {
        if let ("company", Some(g)) = (doc.kind.kind, &doc.group) {
            job.company = company::make(g, editions(doc, &twins));
        }
    }
    let languages = job.company.as_ref().map(|c| c.languages.clone());
    for doc in docs.iter().filter(|d| d.file.language().is_none()) {
        let Some(g) = &doc.group else { continue };
        let id = doc.file.stem();
        let editions = editions(doc, &twins);
        job.signed.push(Signed {
            kind: doc.kind.kind,
            id: id.to_owned(),
            open: doc.open,
            written_by: g.text("written_by"),
            approved_by: g.text("approved_by"),
            accepts: g.accepts(),
        });
        match doc.kind.kind {
            "mix" => job.mixes.extend(mix::make(id, g, editions)),
            "site" => job.sites.extend(site::make(id, g, editions)),
            "procedure" => job.procedures.extend(procedure::make(id, g, editions)),
            "caution" => job.cautions.extend(caution::make(id, g, editions)),
            "card" => {
                let english = || vec![Text { text: "en".to_owned(), at: doc.open }];
                let faces = languages.clone().filter(|l| !l.is_empty()).unwrap_or_else(english);
                job.cards.extend(card::make(id, g, editions, &faces));
            }
            "chapter" => job.chapters.push(Chapter { id: id.to_owned(), editions }),
            "handbook" => job.handbook = handbook::make(g, editions),
            "glossary" => {
                job.glossary = glossary::make(g);
                job.glossary_editions = editions;
            }
            "appliance" => job.appliances.extend(appliance::make(id, g)),
            "letter" => job.letters.extend(letter::make(id, g)),
            "panel" => job.panels.extend(panel::make(id, g)),
            "change" => job.changes.extend(change::make(id, g)),
            _ => {}
        }
    }
    job
}

/// By file and place; the same finding reached twice (through `like`, or an alias) is told once.
fn tidy(mut findings: Vec<Finding>) -> Vec<Finding> {
    for finding in &mut findings {
        let label = finding.at.as_mut().map(|(_, l)| l);
        for text in [&mut finding.title, &mut finding.help].into_iter().chain(label) {
            *text = one_line(text);
        }
    }
    findings.sort_by_key(|f| f.at.as_ref().map(|(s, _)| (s.file, s.start)));
    let mut kept: Vec<Finding> = Vec::new();
    for finding in findings {
        let same = |k: &Finding| k.name == finding.name && k.at == finding.at && k.title == finding.title;
        // Equal findings have equal places, so they are neighbours.
        let place = |f: &Finding| f.at.as_ref().map(|(s, _)| *s);
        if !kept.iter().rev().take_while(|k| place(k) == place(&finding)).any(same) {
            kept.push(finding);
        }
    }
    kept
}

/// A title may quote what an author typed, and that may hold line ends or run on for pages.
fn one_line(text: &str) -> String {
    const MOST: usize = 400;
    let line: String = text.split(char::is_control).filter(|part| !part.is_empty()).collect::<Vec<_>>().join(" ");
    if line.chars().count() <= MOST {
        return line;
    }
    let skip = line.chars().count() - MOST / 2;
    format!("{} … {}", line.chars().take(MOST / 2).collect::<String>(), line.chars().skip(skip).collect::<String>())
}

#[cfg(test)]
mod generated;

#[cfg(test)]
mod screens;

#[cfg(test)]
mod fuzz;

#[cfg(test)]
mod weather_tests;

#[cfg(test)]
mod tests {
    use super::*;
    use crate::job::Outline;
    use crate::quantity::expr::How;
    use std::path::Path;

    #[test]
    fn the_demo_reads_without_a_finding() {
        let folder = Folder::open(&Path::new(env!("CARGO_MANIFEST_DIR")).join("content")).unwrap();
        let (job, findings) = job(&folder);
        let seen: Vec<String> = findings.iter().map(|f| crate::finding::short(f, &|n| folder.lines(n))).collect();
        assert_eq!(seen, Vec::<String>::new());
        assert_eq!((job.mixes.len(), job.sites.len(), job.cards.len()), (3, 3, 6));
        let site = job.sites.iter().find(|s| s.id == "larkenfell").unwrap();
        assert_eq!(site.surfaces[0].openings.len(), 4);
        assert_eq!(job.mixes[0].water.start.in_unit("gal"), 1.625);
        assert_eq!(job.cards.iter().find(|c| c.id == "mud").unwrap().faces.len(), 2);
        assert_eq!(job.cards.iter().find(|c| c.id == "mud").unwrap().editions[1].title.text, "Tarjeta de mezcla");
    }

    /// Every authored value leads back to the letters it was read from.
    #[test]
    fn values_know_their_letters() {
        let folder = Folder::open(&Path::new(env!("CARGO_MANIFEST_DIR")).join("content")).unwrap();
        let (job, _) = job(&folder);
        let mix = job.mixes.iter().find(|m| m.id == "carve-24").unwrap();
        let site = job.sites.iter().find(|s| s.id == "larkenfell").unwrap();
        let wide = &site.surfaces[0].openings[3];
        let Outline::Rectangle { width, .. } = &wide.outline else { panic!("{wide:?}") };
        let cases = [
            (mix.water.start.node(), "water.start", "1 gal 2 qt 1 pt"),
            (mix.ratio.node(), "mortar_to_additive", "10:3 by mass"),
            (mix.open_time.0.node(), "open_time", "50 min"),
            (mix.open_time.1.node(), "open_time (at)", "70 °F"),
            (mix.thickness.1.node(), "thickness (to)", "2 3/4 in"),
            (mix.additive.relative_density.node(), "additive.relative_density", "2.30"),
            (site.batches[1].loads.node(), "batches.2.loads", "2 loads"),
            (width.node(), "surfaces.LF-1.openings.W2.width", "3 ft"),
        ];
        for (node, want_key, want_text) in cases {
            let How::Authored { text, key, mark } = node.how() else { panic!("{node:?}") };
            assert_eq!((&**key, &**text), (want_key, want_text));
            let mark = mark.unwrap();
            let file = folder.file(mark.file).unwrap();
            let at = crate::source::Span { file: mark.file, start: mark.start, end: mark.end };
            assert_eq!(file.slice(at).trim_matches('"'), want_text);
        }
    }
}
