//! The Site book: one per site and language, made of chapters that the handbook lists.

use serde_json::json;

use crate::finding::Finding;
use crate::job::{BookChapter, Edition, Handbook, Mix, Page, Site};
use crate::press::payload::{self, Block, Inline};
use crate::register::Entry;
use crate::sound::Role;
use crate::tally::{Subject, Voice, mix_of, scopes};
use crate::words::Lang;

use super::asked::{self, BOOK};
use super::compose::{Composer, Face, Piece, edition};
use super::load::Loaded;
use super::{attach, index, runs, trouble};

/// A book before it is set: what it says, and where that came from.
pub struct Draft<'a> {
    /// The site.
    pub site: &'a Site,
    /// File stem, such as `larkenfell-en`.
    pub name: String,
    /// Its chapters, for the press.
    pub chapters: Vec<payload::Chapter>,
    /// What stands on the cover below the site's name.
    pub cover: Vec<Block>,
    /// Title.
    pub title: String,
    /// Everything it says, as one face.
    pub face: Face<'a>,
}

/// Name of a site's book: `larkenfell-en`.
pub fn name(site: &Site, lang: Lang) -> String {
    format!("{}-{}", site.id, lang.code())
}

/// Drafts the book of a site in a language; `None` if the folder has no handbook.
pub fn draft<'a>(composer: &mut Composer<'a>, site: &'a Site, lang: Lang) -> Option<Draft<'a>> {
    let job = composer.job;
    let handbook: &'a Handbook = job.handbook.as_ref()?;
    let own = edition(&handbook.editions, lang)?;
    let mut face = Face::new(lang, &own.title.text);
    let mut maker = Maker { composer, site, voice: Voice { lang, metric: site.metric }, face: &mut face };
    let cover_blocks = maker.text(&handbook.editions, Role::Notes, Subject::Site(site));
    let mut chapters = Vec::new();
    for chapter in &handbook.chapters {
        let mut blocks: Vec<Block> = chapter.from.iter().flat_map(|from| maker.part(&from.text)).collect();
        let title = title(chapter, lang);
        // A body that opens with the chapter's own title would print it twice.
        if let Some(Block::Heading { .. }) = blocks.first()
            && attach::sentences(blocks.get(..1).unwrap_or_default()).join("") == title
        {
            blocks.remove(0);
        }
        index::anchor(&mut blocks, &chapter.id.text);
        maker.face.blocks.extend(blocks.iter().cloned());
        chapters.push(payload::Chapter {
            id: format!("ch-{}", chapter.id.text),
            thumb: chapter.thumb.text.clone(),
            title: title.to_owned(),
            distance: (read_close(&blocks) || chapter.from.iter().any(|f| f.text == "trouble")).then_some(payload::Distance::Desk),
            blocks,
        });
    }
    let name = name(site, lang);
    face.note_files();
    Some(Draft { site, name, chapters, cover: cover_blocks, title: own.title.text.clone(), face })
}

/// The chapter's title in a language.
fn title(chapter: &BookChapter, lang: Lang) -> &str {
    scopes::named(&chapter.titles, lang)
}

/// Worksheets, elevations, the pages of the checks and the list of cards are read at a desk: there the small type of a drawing is lawful.
fn read_close(blocks: &[Block]) -> bool {
    blocks.iter().any(|b| matches!(b, Block::Drawing { name, .. } if ["worksheet", "elevation", "in_force"].contains(&name.as_str())))
}

struct Maker<'m, 'a> {
    composer: &'m mut Composer<'a>,
    site: &'a Site,
    voice: Voice,
    face: &'m mut Face<'a>,
}

impl<'a> Maker<'_, 'a> {
    fn text(&mut self, editions: &'a [Edition], role: Role<'a>, subject: Subject<'a>) -> Vec<Block> {
        let Some(edition) = edition(editions, self.voice.lang) else { return Vec::new() };
        let piece = Piece { editions, edition, role, subject, reads: BOOK };
        let mut seen = Vec::new();
        let blocks = self.composer.piece(&piece, self.voice.lang, &mut self.face.values, &mut seen);
        self.face.seen.extend(seen);
        blocks
    }

    /// One entry of a chapter's list: a file of the job folder, or a word.
    fn part(&mut self, from: &str) -> Vec<Block> {
        let job = self.composer.job;
        let site = Subject::Site(self.site);
        let stem = from.trim_end_matches(".md");
        if let Some((folder, name)) = stem.split_once('/') {
            return match folder {
                "chapters" => {
                    job.chapters.iter().find(|c| c.id == name).map_or_else(Vec::new, |c| self.text(&c.editions, Role::Chapter(c), site))
                }
                "procedures" => {
                    let page = job.procedures.iter().find(|p| p.id == name);
                    page.filter(|p| self.uses(p)).map_or_else(Vec::new, |p| self.procedure(p))
                }
                "cautions" => {
                    job.cautions.iter().find(|c| c.id == name).map_or_else(Vec::new, |c| self.text(&c.editions, Role::Caution(c), site))
                }
                "mixes" => job.mixes.iter().find(|m| m.id == name).map_or_else(Vec::new, |m| self.mix(m)),
                // A handbook may name one site's file; each book prints its own site's notes there.
                "sites" if name == self.site.id => self.text(&self.site.editions, Role::Notes, site),
                _ => Vec::new(),
            };
        }
        match stem {
            "company" => job.company.as_ref().map_or_else(Vec::new, |c| self.text(&c.editions, Role::Notes, site)),
            "glossary" | "trouble" | "index" if !self.composer.sets => Vec::new(),
            "glossary" => vec![self.glossary()],
            "mixes" => {
                let mixes: Vec<&Mix> = self.site.mixes().filter_map(|n| mix_of(job, &n.text)).collect();
                mixes.into_iter().flat_map(|m| self.mix(m)).collect()
            }
            "site" => self.text(&self.site.editions, Role::Notes, site),
            "cautions" => self.asked("cautions"),
            "takeoff" => self.asked("takeoff"),
            "worksheet" => self.asked("worksheet"),
            "in force" => self.asked("in-force"),
            "trouble" => trouble::chapter(self.voice.lang),
            "index" => vec![Block::Drawing { name: "index".into(), alt: String::new(), data: json!({}) }],
            _ => Vec::new(),
        }
    }

    /// A page about a mix that this site never sees has no place in its book.
    fn uses(&self, page: &Page) -> bool {
        let job = self.composer.job;
        page.mix.as_ref().is_none_or(|name| crate::tally::mixes_of(job, self.site).iter().any(|m| m.name.text == name.text))
    }

    fn asked(&mut self, name: &str) -> Vec<Block> {
        let Some(edition) = self.composer.job.handbook.as_ref().and_then(|h| edition(&h.editions, self.voice.lang)) else {
            return Vec::new();
        };
        let piece = Piece { editions: &[], edition, role: Role::Notes, subject: Subject::Site(self.site), reads: BOOK };
        let mut seen = Vec::new();
        let at = crate::source::Span { file: edition.body.file, start: 0, end: 0 };
        let blocks = asked::fill(self.composer, &piece, self.voice, name, &[], at, &mut self.face.values, &mut seen);
        self.face.seen.extend(seen);
        blocks
    }

    fn heading(text: &str) -> Block {
        Block::heading(2, text)
    }

    fn procedure(&mut self, page: &'a Page) -> Vec<Block> {
        let subject = asked::subject_for(self.composer, self.site, page.mix.as_ref().map(|t| t.text.as_str()));
        let Some(edition) = edition(&page.editions, self.voice.lang) else { return Vec::new() };
        let mut blocks = vec![Self::heading(&format!("{} {}", page.code.text, edition.title.text))];
        let piece = Piece { editions: &page.editions, edition, role: Role::Procedure(page), subject, reads: BOOK };
        let mut seen = Vec::new();
        let at = page.code.at;
        blocks.extend(asked::fill(self.composer, &piece, self.voice, "cautions", &[], at, &mut self.face.values, &mut seen));
        self.face.seen.extend(seen);
        blocks.extend(self.text(&page.editions, Role::Procedure(page), subject));
        blocks
    }

    fn mix(&mut self, mix: &'a Mix) -> Vec<Block> {
        let lang = self.voice.lang;
        let rev = lang.text("footer.mix_rev");
        let mut blocks = vec![Self::heading(&format!("{}, {rev} {}", mix.name.text, mix.rev.text))];
        blocks.extend(self.text(&mix.editions, Role::Notes, Subject::Mix(self.site, mix)));
        blocks
    }

    fn glossary(&self) -> Block {
        let lang = self.voice.lang;
        let head = ["book.english", "book.spanish", "book.heard"].iter().map(|k| vec![Inline::text(lang.text(k))]).collect();
        let cell = |t: &str| vec![Inline::text(t)];
        let rows = self.composer.job.glossary.iter().map(|w| {
            vec![cell(&w.en.text), vec![Inline::Strong { c: cell(&w.es.text) }], cell(w.heard.as_ref().map_or("", |t| t.text.as_str()))]
        });
        let align = vec![payload::Align::Left, payload::Align::Left, payload::Align::Left];
        Block::Table { align, head, rows: rows.collect(), caption: None }
    }
}

/// The press's payload of a book, with the list of cards in force filled in.
pub fn book(loaded: &Loaded, draft: &Draft<'_>, in_force: &[&Entry], band: Option<&'static str>, accepted: &[&Finding]) -> payload::Book {
    let lang = draft.face.lang;
    let site = draft.site;
    let mut chapters = draft.chapters.clone();
    for chapter in &mut chapters {
        fill_in_force(&mut chapter.blocks, &loaded.job, &of_site(in_force, site), lang);
        trouble::fill(&mut chapter.blocks, accepted, lang);
        chapter.blocks.retain(|b| !matches!(b, Block::Drawing { name, .. } if name == "index"));
    }
    // The index is set by the template after the last chapter that has blocks; an empty chapter would be a blank page.
    chapters.retain(|c| !c.blocks.is_empty());
    let day = |d: jiff::civil::Date| lang.date(d.year(), d.month(), d.day());
    let until = &site.good_until;
    // On every page: who opens the book anywhere must see that something was let through.
    let mut footer = vec![
        site.name.text.clone(),
        format!("{} {}", lang.text("footer.issued"), day(loaded.on)),
        format!("{} {}", lang.text("footer.good_until"), lang.date(until.year, until.month, until.day)),
    ];
    footer.extend(accepted.iter().filter_map(|f| runs::accepted(f, lang)));
    let number = |n: i8| u16::from(n.unsigned_abs());
    payload::Book {
        payload: payload::VERSION,
        kind: "book".into(),
        paper: loaded.job.handbook.as_ref().map_or_else(|| payload::Paper::new("half letter", 139.7, 215.9), |h| runs::paper(&h.paper)),
        distance: payload::Distance::Hand,
        lang: lang.code().to_owned(),
        date: [u16::try_from(loaded.on.year()).unwrap_or(1), number(loaded.on.month()), number(loaded.on.day())],
        title: draft.title.clone(),
        subtitle: site.name.text.clone(),
        cover: payload::Cover { lines: Vec::new(), blocks: draft.cover.clone(), tab: None, band: band.map(|k| lang.text(k).to_owned()) },
        labels: payload::Labels {
            contents: lang.text("book.contents").to_owned(),
            index: lang.text("book.index").to_owned(),
            page: lang.text("book.page").to_owned(),
        },
        footer,
        authority: lang.text("authority.short").to_owned(),
        index: index::terms(&chapters, &loaded.job, lang),
        chapters,
    }
}

/// The cards of one site: its crew has no use for another's.
fn of_site<'e>(entries: &[&'e Entry], site: &Site) -> Vec<&'e Entry> {
    let own = |e: &&&Entry| e.subject.split_once(' ').is_some_and(|(_, s)| s.split('/').next() == Some(site.id.as_str()));
    entries.iter().filter(own).copied().collect()
}

fn fill_in_force(blocks: &mut [Block], job: &crate::job::Job, in_force: &[&Entry], lang: Lang) {
    for block in blocks {
        if let Block::Drawing { name, alt, data } = block
            && name == "in_force"
        {
            lang.text("force.title").clone_into(alt);
            let heads = ["force.code", "force.name", "force.rev", "force.word", "force.copies"].map(|k| lang.text(k));
            let rows: Vec<_> = in_force
                .iter()
                .map(|e| {
                    let card = job.cards.iter().find(|c| c.id == e.card);
                    let title = card.and_then(|c| edition(&c.editions, lang)).map_or(e.card.as_str(), |x| x.title.text.as_str());
                    let subject = e.subject.split_once(' ').map_or("", |(_, s)| s);
                    json!({
                        "code": e.code, "name": format!("{title}, {}", subject.rsplit('/').take(2).collect::<Vec<_>>().join(" × ")),
                        "rev": e.rev, "shape": e.shape, "word": e.word,
                        "copies": e.copies.to_string(),
                    })
                })
                .collect();
            *data = json!({"heads": heads, "rows": rows, "none": lang.text("force.none")});
        }
    }
}
