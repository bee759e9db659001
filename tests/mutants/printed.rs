//! What a job prints, as far as it can be compared without a press.

use std::collections::BTreeSet;
use std::fmt::Write as _;
use std::path::Path;

use hodbook::job::{Job, Surface};
use hodbook::prose::block::BlockKind;
use hodbook::quantity::show::JOIN;
use hodbook::read;
use hodbook::sound::{self, Ground, Seen};
use hodbook::source::Folder;
use hodbook::tally::elevation::elevation;
use hodbook::tally::{Ask, Tally, Voice, filed, stated};
use hodbook::words::Lang;

use super::made::Mutant;
use super::scene;

/// Everything that the demo prints.
pub struct Printed {
    /// Id and text of every figure.
    pub figures: Vec<String>,
    /// Every text, and what stands round the texts.
    pub texts: Vec<String>,
    /// Figures of the planned days.
    pub days: Vec<String>,
    /// Findings that it has as it is, by name and title: they report no mutant.
    pub known: BTreeSet<(String, String)>,
}

impl Printed {
    /// Of a folder that reads without a finding.
    pub fn of(folder: &Folder) -> Printed {
        let (job, found) = read::job(folder);
        assert!(found.is_empty());
        let mut tally = Tally::of(&job);
        let figures = figures(&job, &tally);
        let (seen, broken) = scene::texts(&job, &tally);
        assert!(broken.is_empty());
        let texts = texts(&job, &tally, &seen);
        let known = sound::run(&Ground { seen: &seen, ..Ground::of(&job, &tally, scene::ON) });
        let known = known.into_iter().map(|f| (f.name.to_owned(), f.title)).collect();
        drop(seen);
        tally.days(&job);
        let days = days(&job, &tally);
        Printed { figures, texts, days, known }
    }
}

/// True if a figure's paper is metric first.
fn metric(job: &Job, id: &str) -> bool {
    let owner = id.split(['/', '.']).next().unwrap_or("");
    let mix = job.mixes.iter().find(|m| m.id == owner);
    // The last site that mixes it, as the prediction reads them.
    let uses = mix.and_then(|m| job.sites.iter().rfind(|s| s.mixes().any(|n| n.text == m.name.text)));
    job.sites.iter().find(|s| s.id == owner).or(uses).is_some_and(|s| s.metric)
}

/// Every figure as an English paper prints it.
pub fn figures(job: &Job, tally: &Tally) -> Vec<String> {
    let english = Lang::find("en").unwrap();
    let text = |id: &str| tally.say(id, Ask::Own, Voice { lang: english, metric: metric(job, id) }).map_or(String::new(), |v| v.text);
    tally.figures().map(|f| format!("{} {}", f.id, text(&f.id))).collect()
}

/// Figures again, those of the days among them.
pub fn days(job: &Job, tally: &Tally) -> Vec<String> {
    figures(job, tally)
}

/// Every text with its values; what is printed round the texts: codes, papers, hands, titles, the book's chapters, words.
pub fn texts(job: &Job, tally: &Tally, seen: &[Seen<'_>]) -> Vec<String> {
    let mut out: Vec<String> = Vec::new();
    for text in seen {
        let mut line = format!("{} {}", text.document, text.edition.title.text);
        for sentence in text.sentences() {
            let _ = write!(line, "\n{}", sentence.words());
        }
        for used in text.doc.values.iter() {
            let _ = write!(line, "\n{} {}", used.figure, used.value.text);
        }
        for name in text.doc.names.iter() {
            let _ = write!(line, "\n{name}");
        }
        // Elevations that a text asks for, as they are drawn; the other drawings hold figures only.
        for block in text.doc.blocks() {
            let BlockKind::Asked(name, arguments) = &block.kind else { continue };
            let asked = |s: &&Surface| arguments.iter().all(|(key, code)| key != "surface" || *code == s.code.text);
            let site = text.subject.site();
            for surface in site.surfaces.iter().filter(|_| name == "elevation").filter(asked) {
                let _ = write!(line, "\n{:?}", elevation(tally, site, surface, text.voice));
            }
        }
        out.push(line);
    }
    for c in &job.cards {
        let words = |texts: &[hodbook::job::Text]| texts.iter().map(|t| t.text.clone()).collect::<Vec<_>>();
        let said = |text: &Option<hodbook::job::Text>| text.as_ref().map(|t| t.text.clone());
        let titles: Vec<&str> = c.editions.iter().map(|e| e.title.text.as_str()).collect();
        out.push(format!(
            "{} {} {:?} {:?} {} {} {:?} {} {} {:?} {:?} {:?} {titles:?}",
            c.id,
            c.code.text,
            c.reads,
            c.paper,
            c.tab,
            c.notch,
            said(&c.film),
            c.copies,
            c.up,
            said(&c.hung),
            words(&c.faces),
            words(&c.cautions),
        ));
    }
    for p in &job.procedures {
        out.push(format!("{} {}", p.id, p.code.text));
    }
    for s in &job.sites {
        let day = |d: &hodbook::job::Day| (d.year, d.month, d.day);
        let names: Vec<_> = s.surfaces.iter().map(|x| (x.code.text.as_str(), x.texture.text.as_str())).collect();
        out.push(format!("{} {} {} {:?} {names:?}", s.id, s.name.text, s.code.text, day(&s.good_until)));
        out.push(format!("{:?}", filed::of(tally, job, s)));
    }
    for m in &job.mixes {
        out.push(format!("{} {} {} {:?}", m.id, m.name.text, m.rev.text, stated::mix(m)));
    }
    if let Some(book) = &job.handbook {
        let titles: Vec<&str> = book.editions.iter().map(|e| e.title.text.as_str()).collect();
        out.push(format!("{titles:?} {:?}", book.paper));
        for c in &book.chapters {
            let titles: Vec<_> = c.titles.iter().map(|(l, t)| (l.as_str(), t.text.as_str())).collect();
            let from: Vec<&str> = c.from.iter().map(|t| t.text.as_str()).collect();
            out.push(format!("{} {titles:?} {} {from:?}", c.id.text, c.thumb.text));
        }
    }
    for w in &job.glossary {
        let said = |t: &Option<hodbook::job::Text>| t.as_ref().map_or(String::new(), |t| t.text.clone());
        out.push(format!("{} {} {} {}", w.en.text, w.es.text, said(&w.heard), said(&w.note)));
    }
    out.push(format!("{:?}", stated::house(job)));
    if let Some(c) = &job.company {
        let languages: Vec<&str> = c.languages.iter().map(|t| t.text.as_str()).collect();
        let day = |d: &hodbook::job::Day| d.iso();
        // Cards carry the day of the run, the cost the day of its prices.
        let (on, prices) = (c.on.as_ref().map(day), c.prices.as_ref().map(|p| day(&p.dated)));
        out.push(format!("{} {languages:?} {on:?} {prices:?}", c.name.text));
    }
    out
}

/// Lays down a hundred mutants that move values of mixes and batches, with what the tool says, for a check from outside.
pub fn lay_down(demo: &Folder, moved: &[&Mutant]) {
    let ours: Vec<&&Mutant> = moved.iter().filter(|m| m.path.starts_with("mixes/") || m.path.starts_with("sites/")).collect();
    let wanted = 100;
    let mut lines = String::new();
    let mut kept = 0;
    let before = said(demo);
    // Evenly over the files, then whatever is left until a hundred tell.
    let step = (ours.len() / wanted).max(1);
    let order = (0..step).flat_map(|offset| (offset..ours.len()).step_by(step));
    for mutant in order.filter_map(|i| ours.get(i)) {
        if kept == wanted {
            break;
        }
        let folder = demo.with_text(&mutant.path, &mutant.text);
        let now = said(&folder);
        if now == before || now.is_empty() {
            continue;
        }
        kept += 1;
        let values: Vec<_> = now.iter().map(|(id, ask, lang, text)| [id.as_str(), ask, lang, text.as_str()]).collect();
        let line = serde_json::json!({"path": mutant.path, "text": mutant.text, "what": mutant.what, "values": values});
        let _ = writeln!(lines, "{line}");
    }
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("target/outside");
    std::fs::create_dir_all(&folder).unwrap();
    std::fs::write(folder.join("mutants.jsonl"), lines).unwrap();
    println!("{kept} mutants laid down for the prediction");
}

/// What cards at the mixer say: figure, ask, language, text. Empty if the folder has findings of reading.
fn said(folder: &Folder) -> Vec<(String, &'static str, &'static str, String)> {
    let (job, found) = read::job(folder);
    if !found.is_empty() {
        return Vec::new();
    }
    let tally = Tally::of(&job);
    let mixed = |id: &str| job.mixes.iter().any(|m| id.starts_with(&format!("{}.", m.id)) || id.contains(&format!("/{}", m.id)));
    let mut out = Vec::new();
    for figure in tally.figures().filter(|f| mixed(&f.id) || f.id.ends_with(".band_low") || f.id.ends_with(".band_high")) {
        for (ask, key) in [(Ask::Own, "own"), (Ask::Second, "second"), (Ask::Long, "long")] {
            for lang in [Lang::find("en").unwrap(), Lang::find("es").unwrap()] {
                let voice = Voice { lang, metric: metric(&job, &figure.id) };
                let text = tally.say(&figure.id, ask, voice).filter(|v| v.number.is_some()).map(|v| v.text.replace(JOIN, " "));
                out.extend(text.map(|text| (figure.id.clone(), key, lang.code(), text)));
            }
        }
    }
    out
}
