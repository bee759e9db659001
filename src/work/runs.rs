//! Print runs: one size, one medium, one flip. Each run is set once; single cards are cut out of it.

use std::collections::BTreeMap;

use crate::finding::{Finding, Severity};
use crate::job::{Card, Distance, Fit};
use crate::press::{self, PressError, payload};
use crate::quantity::Worked;
use crate::register::Entry;
use crate::tally::PrintedValue;
use crate::trade::legible;
use crate::words::Lang;

use super::attach;
use super::compose::Document;
use super::load::Loaded;

/// A document with its code, revision and check-word, ready for the press.
pub struct Ready<'a, 'd> {
    /// The document.
    pub document: &'d Document<'a>,
    /// Its register entry: code, revision, shape, word, digest, date.
    pub entry: Entry,
    /// Band across it, by language, if it must carry one.
    pub band: Option<&'static str>,
    /// Findings that were accepted and touch it.
    pub accepted: Vec<&'d Finding>,
}

/// Documents of one run.
pub struct Batch<'r, 'a, 'd> {
    /// `tabloid-10-mil-matte-long-edge`.
    pub name: String,
    /// Its documents.
    pub ready: Vec<&'r Ready<'a, 'd>>,
    /// What the press sets.
    pub run: payload::Run,
}

/// A printed file.
pub struct Printed {
    /// Path below the output folder.
    pub path: String,
    /// Bytes.
    pub pdf: Vec<u8>,
}

/// What came off the press.
pub struct Pressed {
    /// Files.
    pub files: Vec<Printed>,
    /// How every face fitted.
    pub fits: Vec<Fit>,
    /// Printed values that are not on their page.
    pub findings: Vec<Finding>,
}

/// A printed value that the page does not show: a template lost it.
pub fn not_printed(document: &str, value: &PrintedValue) -> Finding {
    let text = value.text.replace(crate::quantity::show::JOIN, " ");
    Finding::new("value-not-printed", Severity::Stop, format!("{document} does not show `{text}` ({})", value.figure))
        .figure(document)
        .help("the page template must print every value it is given; mend the template")
}

/// Sorts documents into runs, in the order of their first card.
pub fn batches<'r, 'a, 'd>(loaded: &Loaded, ready: &'r [Ready<'a, 'd>], proof: bool) -> Vec<Batch<'r, 'a, 'd>> {
    let mut batches: Vec<Batch<'r, 'a, 'd>> = Vec::new();
    for one in ready {
        let card = one.document.card;
        let name = run_name(one.document);
        let faces: Vec<payload::Face> = (0..one.document.faces.len()).filter_map(|i| face(loaded, one, i)).collect();
        match batches.iter_mut().find(|b| b.name == name) {
            Some(batch) => {
                batch.run.faces.extend(faces);
                batch.ready.push(one);
            }
            None => {
                let paper = paper(&card.paper);
                let date = [u16::try_from(loaded.on.year()).unwrap_or(1), one_based(loaded.on.month()), one_based(loaded.on.day())];
                let lang = one.document.faces.first().map_or("en", |f| f.lang.code());
                let mut run = payload::Run::new(paper, distance(card.reads), &name, lang, date, faces);
                run.proof = proof;
                batches.push(Batch { name, ready: vec![one], run });
            }
        }
    }
    batches
}

fn one_based(n: i8) -> u16 {
    u16::from(n.unsigned_abs())
}

/// The paper in millimetres.
pub fn paper(paper: &crate::job::Paper) -> payload::Paper {
    payload::Paper::new(&paper.name, f64::from(paper.width_um) / 1000.0, f64::from(paper.height_um) / 1000.0)
}

/// The press's word for a distance class.
pub fn distance(reads: Distance) -> payload::Distance {
    match reads {
        Distance::Wall => payload::Distance::Wall,
        Distance::Hand => payload::Distance::Hand,
        Distance::Desk => payload::Distance::Desk,
    }
}

/// A run holds one size, one medium, one flip. A card turns like a page of a book, so an upright sheet flips on its
/// long edge and a lying one on its short edge; then the corner tabs lie back to back.
fn run_name(document: &Document<'_>) -> String {
    let card = document.card;
    let flip = match (document.faces.len(), card.paper.width_um > card.paper.height_um) {
        (0 | 1, _) => "one-sided",
        // The backs of a press sheet are laid for the sheet's own long edge, however its cards lie.
        _ if card.up > 1 => "long-edge",
        (_, true) => "short-edge",
        (_, false) => "long-edge",
    };
    let medium = card.film.as_ref().map_or("plain paper", |t| t.text.as_str());
    let class = match card.reads {
        Distance::Wall => "wall",
        Distance::Hand => "hand",
        Distance::Desk => "desk",
    };
    let name = format!("{} {medium} {class} {flip}", card.paper.name);
    let plain: String = name.chars().map(|c| if c.is_ascii_alphanumeric() { c.to_ascii_lowercase() } else { '-' }).collect();
    plain.split('-').filter(|p| !p.is_empty()).collect::<Vec<_>>().join("-")
}

fn shape(name: &str) -> payload::Shape {
    match name {
        "square" => payload::Shape::Square,
        "triangle" => payload::Shape::Triangle,
        "diamond" => payload::Shape::Diamond,
        "star" => payload::Shape::Star,
        "cross" => payload::Shape::Cross,
        _ => payload::Shape::Circle,
    }
}

/// The corner tab; the second face's lies on the other side, so that one snip kills both.
pub fn tab(entry: &Entry, back: bool) -> payload::Tab {
    payload::Tab {
        letter: entry.rev.clone(),
        shape: shape(&entry.shape),
        word: entry.word.clone(),
        side: if back { payload::Side::Left } else { payload::Side::Right },
    }
}

/// `accepted by LEAD: 1 gal (start-water-low)`: what a reader must know was let through.
pub fn accepted(finding: &Finding, lang: Lang) -> Option<String> {
    let accepted = finding.accepted.as_ref()?;
    let value = accepted.value.as_ref().map_or_else(|| finding.name.to_owned(), |v| format!("{v} ({})", finding.name));
    Some(format!("{} {}: {value}", lang.text("footer.accepted"), accepted.by))
}

/// `code EN · site · mix rev · issued · good until · digest`.
pub fn footer(loaded: &Loaded, one: &Ready<'_, '_>, lang: Lang) -> Vec<String> {
    let entry = &one.entry;
    let day = |d: jiff::civil::Date| lang.date(d.year(), d.month(), d.day());
    let site = one.document.subject.site();
    let mut footer = vec![format!("{} {}", entry.code, lang.text("language.code")), site.name.text.clone()];
    if let Some(mix) = one.document.subject.mix(&loaded.job) {
        footer.push(format!("{} {} {}", mix.name.text, lang.text("footer.mix_rev"), mix.rev.text));
    }
    footer.push(format!("{} {}", lang.text("footer.issued"), day(entry.date)));
    if let Some(until) = entry.good_until {
        footer.push(format!("{} {}", lang.text("footer.good_until"), day(until)));
    }
    footer.extend(one.accepted.iter().filter_map(|f| accepted(f, lang)));
    footer.push(entry.digest.clone());
    footer
}

fn face(loaded: &Loaded, one: &Ready<'_, '_>, at: usize) -> Option<payload::Face> {
    let (document, entry) = (one.document, &one.entry);
    let face = document.faces.get(at)?;
    let lang = face.lang;
    let (title, blocks) = named(&face.blocks);
    Some(payload::Face {
        id: format!("{}/{}", entry.code, lang.code()),
        lang: lang.code().to_owned(),
        title,
        tab: document.card.tab.then(|| tab(entry, at > 0)),
        notch: document.card.notch,
        band: one.band.map(|key| lang.text(key).to_owned()),
        footer: footer(loaded, one, lang),
        authority: lang.text("authority.short").to_owned(),
        blocks,
    })
}

/// A face's name is its leading first-level heading; a small card may go without one.
fn named(blocks: &[payload::Block]) -> (String, Vec<payload::Block>) {
    match blocks.split_first() {
        Some((payload::Block::Heading { level: 1, .. }, rest)) => {
            (attach::sentences(blocks.get(..1).unwrap_or_default()).join(" "), rest.to_vec())
        }
        _ => (String::new(), blocks.to_vec()),
    }
}

/// Sets one run: the run's PDF, one PDF per card, press sheets for small cards, and how each face fitted.
///
/// # Errors
/// What the typesetter says: a glyph that no face has, or a fault of ours in a template.
pub fn press(batch: &Batch<'_, '_, '_>) -> Result<Pressed, Vec<PressError>> {
    let all: Vec<(String, &super::compose::Face<'_>)> = batch.ready.iter().flat_map(|r| face_ids(r)).collect();
    let attached = attach::document(&batch.name, &batch.name, &all);
    let pressed = press::cards(&batch.run, Some(&attached))?;
    let mut files = Vec::new();
    for one in &batch.ready {
        let ids = face_ids(one);
        let at = places(batch, one);
        let title = format!("{} {}", one.entry.code, one.document.faces.first().map_or("", |f| f.title.as_str()));
        let pdf = press::single(&pressed, &at, &title, Some(&attach::document(&one.entry.code, &title, &ids)))?;
        files.push(Printed { path: format!("cards/{}.pdf", one.entry.code), pdf });
    }
    // A face that overflows is withheld by a check; until then its run is not laid out for cutting.
    let fitting = pressed.faces.iter().all(|f| f.pages == 1);
    let up = fitting && batch.ready.first().is_some_and(|r| r.document.card.up > 1);
    let run = if up {
        press::sheets(&batch.run, &pairs(batch), press::SheetPaper::LETTER, &batch.name, Some(&attached))?
    } else {
        pressed.pdf.clone()
    };
    files.push(Printed { path: format!("runs/{}.pdf", batch.name), pdf: run });
    Ok(Pressed { files, fits: fits(batch, &pressed.faces), findings: shown(batch, &pressed.faces) })
}

/// Where the faces of a card stand in its run.
pub fn places(batch: &Batch<'_, '_, '_>, one: &Ready<'_, '_>) -> Vec<usize> {
    let at = |id: &String| batch.run.faces.iter().position(|f| f.id == *id);
    face_ids(one).iter().filter_map(|(id, _)| at(id)).collect()
}

/// The cards of a run as a press sheet holds them, each so many times.
pub fn pairs(batch: &Batch<'_, '_, '_>) -> Vec<press::Pair> {
    let pair = |one: &&Ready<'_, '_>| {
        let at = places(batch, one);
        let copies = usize::try_from(one.document.card.copies).unwrap_or(1);
        at.first().map(|front| press::Pair { front: *front, back: at.get(1).copied(), copies })
    };
    batch.ready.iter().filter_map(pair).collect()
}

/// Ids of a card's faces.
pub fn face_ids<'x, 'a>(one: &'x Ready<'a, '_>) -> Vec<(String, &'x super::compose::Face<'a>)> {
    one.document.faces.iter().map(|f| (format!("{}/{}", one.entry.code, f.lang.code()), f)).collect()
}

/// Fits by the ids of their faces.
fn by_id(faces: &[press::FaceFit]) -> BTreeMap<&str, &press::FaceFit> {
    faces.iter().map(|f| (f.id.as_str(), f)).collect()
}

/// How the faces of a run fitted, as the checks see it.
pub fn fits(batch: &Batch<'_, '_, '_>, faces: &[press::FaceFit]) -> Vec<Fit> {
    let mut fits = Vec::new();
    let faces = by_id(faces);
    for one in &batch.ready {
        for face in &one.document.faces {
            let id = format!("{}/{}", one.entry.code, face.lang.code());
            let Some(got) = faces.get(id.as_str()) else { continue };
            fits.push(Fit {
                face: id,
                card: one.document.card.id.clone(),
                lang: face.lang.code().to_owned(),
                pages: got.pages,
                lines_over: got.lines_over,
                lines_room: lines_room(one.document.card),
                smallest_pt: got.smallest_pt,
                key_pt: got.numeral_pt,
            });
        }
    }
    fits
}

/// Two texts printed over one another.
pub fn overprinted(document: &str, a: &str, b: &str) -> Finding {
    Finding::new("text-overprinted", Severity::Stop, format!("{document} prints `{a}` over `{b}`"))
        .figure(document)
        .help("shorten the text there, or give it a block of its own")
}

/// A text that runs off the printable paper.
fn outside(document: &str, text: &str) -> Finding {
    Finding::new("text-outside", Severity::Stop, format!("{document} prints `{text}` outside the paper's margins"))
        .figure(document)
        .help("shorten the text, or choose a larger paper")
}

/// What the pages of a run lost, printed over something else or ran off the paper.
pub fn shown(batch: &Batch<'_, '_, '_>, faces: &[press::FaceFit]) -> Vec<Finding> {
    let mut findings = Vec::new();
    let faces = by_id(faces);
    for one in &batch.ready {
        for (id, face) in face_ids(one) {
            let Some(got) = faces.get(id.as_str()) else { continue };
            findings.extend(face.values.iter().filter(|v| !got.shows(&v.text)).map(|v| not_printed(&id, v)));
            // A face that overflows is judged by its lines; then texts over one another are only a symptom.
            if got.pages == 1 && got.lines_over == 0 {
                findings.extend(got.overlaps.iter().map(|(a, b)| overprinted(&id, a, b)));
                findings.extend(got.outside.iter().map(|text| outside(&id, text)));
            }
        }
    }
    findings
}

/// Lines of the class's least type that a sheet holds between half-inch margins (F28).
fn lines_room(card: &Card) -> usize {
    let inch = |um: u32| f64::from(um) / 25_400.0;
    let room = (|| {
        let height = Worked::read(&format!("{} in", inch(card.paper.height_um) - 1.0)).ok()?;
        let size = Worked::read(&format!("{} in", distance(card.reads).least_line() / 72.0)).ok()?;
        let lines = legible::lines(&height, &size, &Worked::read("1.2").ok()?).ok()?;
        Some(lines.value().si.to_f64())
    })();
    // A count of lines on paper: small, whole, never negative.
    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)]
    room.map_or(0, |lines| libm::floor(lines) as usize)
}
