//! From job and tally to documents: every face of every card, with its printed values and what the press needs.

use std::collections::BTreeMap;
use std::sync::Arc;

use crate::finding::Finding;
use crate::job::{Card, Distance, Edition, Job, Per, Site};
use crate::press::{lower, payload};
use crate::prose::block::{Doc, Use};
use crate::prose::{Options, Shelf};
use crate::sound::{Role, Seen};
use crate::source::Span;
use crate::tally::scopes::Scopes;
use crate::tally::{PrintedValue, Subject, Tally, Voice, mix_of};
use crate::words::Lang;

use super::asked;

/// One face, or one book, in one language: what it says and where that came from.
#[derive(Debug)]
pub struct Face<'a> {
    /// Language.
    pub lang: Lang,
    /// Title of the face, for outlines and attachments.
    pub title: String,
    /// The texts it is made of, as the checks see them: the body first, then cautions.
    pub seen: Vec<Seen<'a>>,
    /// What the press sets.
    pub blocks: Vec<payload::Block>,
    /// Printed values in it, in order.
    pub values: Vec<PrintedValue>,
    /// Files whose text it prints.
    pub files: Vec<u32>,
}

impl<'a> Face<'a> {
    /// An empty face.
    pub fn new(lang: Lang, title: &str) -> Face<'a> {
        Face { lang, title: title.to_owned(), seen: Vec::new(), blocks: Vec::new(), values: Vec::new(), files: Vec::new() }
    }

    /// Hands its texts over to the checks, named by the document they are printed in.
    pub fn hand_over(&mut self, document: &str) -> Vec<Seen<'a>> {
        let mut seen = std::mem::take(&mut self.seen);
        for text in &mut seen {
            document.clone_into(&mut text.document);
        }
        seen
    }

    /// Notes the files of its texts; they stay known after the texts are handed over.
    pub fn note_files(&mut self) {
        for text in &self.seen {
            if !self.files.contains(&text.edition.body.file) {
                self.files.push(text.edition.body.file);
            }
        }
    }
}

/// A card for one subject, all faces.
#[derive(Debug)]
pub struct Document<'a> {
    /// The kind of card.
    pub card: &'a Card,
    /// What it was made for.
    pub subject: Subject<'a>,
    /// `mud larkenfell/carve-24/2`: what the register knows it by.
    pub key: String,
    /// Its faces, front first.
    pub faces: Vec<Face<'a>>,
}

/// A card that the job calls for, before anything of it is composed.
#[derive(Debug)]
pub struct Plan<'a> {
    /// The kind of card.
    pub card: &'a Card,
    /// What it is made for.
    pub subject: Subject<'a>,
    /// `mud larkenfell/carve-24/2`.
    pub key: String,
}

/// Every card of every site, in the order of the card kinds' files. Codes are given in this order.
pub fn plans(job: &Job) -> Vec<Plan<'_>> {
    let mut plans = Vec::new();
    for card in &job.cards {
        for site in &job.sites {
            for subject in subjects(job, site, card.per) {
                plans.push(Plan { card, subject, key: format!("{} {}", card.id, subject.id(job)) });
            }
        }
    }
    plans
}

/// Composes documents.
pub struct Composer<'a> {
    /// The job.
    pub job: &'a Job,
    /// Its figures.
    pub tally: &'a Tally,
    shelf: Arc<Shelf>,
    scopes: Scopes<'a>,
    /// Documents by body, scope and language: a caution stands under many procedures.
    docs: BTreeMap<((u32, u32), usize, &'static str), Doc>,
    /// True if documents will be set; else they are only read by the checks, and nothing is made for the press.
    pub sets: bool,
    /// Findings of rendering; a body that several subjects render has its findings as often.
    pub findings: Vec<Finding>,
}

/// The edition in a language, else the first one.
pub fn edition(editions: &[Edition], lang: Lang) -> Option<&Edition> {
    editions.iter().find(|e| e.lang == lang.code()).or(editions.first())
}

/// The original of a twin: the first edition, when this is not it.
fn original<'a>(editions: &'a [Edition], edition: &Edition) -> Option<&'a Edition> {
    editions.first().filter(|first| !std::ptr::eq(*first, edition))
}

impl<'a> Composer<'a> {
    /// A composer for a job.
    pub fn new(job: &'a Job, tally: &'a Tally, shelf: Arc<Shelf>, sets: bool) -> Composer<'a> {
        Composer { job, tally, shelf, scopes: Scopes::new(tally, job), docs: BTreeMap::new(), sets, findings: Vec::new() }
    }

    /// Composes one planned card.
    pub fn card(&mut self, plan: &Plan<'a>) -> Document<'a> {
        let Plan { card, subject, key } = plan;
        let (card, subject, key) = (*card, *subject, key.clone());
        let mut faces = Vec::new();
        for code in &card.faces {
            let Some(lang) = Lang::find(&code.text) else { continue };
            let Some(edition) = card.editions.iter().find(|e| e.lang == code.text) else { continue };
            let mut face = Face::new(lang, &edition.title.text);
            let piece = Piece { editions: &card.editions, edition, role: Role::Card(card), subject, reads: card.reads };
            let mut seen = Vec::new();
            face.blocks = self.piece(&piece, lang, &mut face.values, &mut seen);
            face.seen = seen;
            face.note_files();
            faces.push(face);
        }
        Document { card, subject, key, faces }
    }

    /// Renders and lowers one text; fences of ours are filled on the way, their values and texts added.
    ///
    /// A text with findings gives no blocks; the findings are kept.
    pub fn piece(
        &mut self,
        piece: &Piece<'a>,
        lang: Lang,
        values: &mut Vec<PrintedValue>,
        seen: &mut Vec<Seen<'a>>,
    ) -> Vec<payload::Block> {
        let voice = Voice { lang, metric: piece.subject.site().metric };
        let scope = self.scopes.of(piece.subject, lang);
        let body = &piece.edition.body;
        // Scopes are kept as long as the composer, so that the address of one tells it.
        let key = ((body.file, body.offset), Arc::as_ptr(&scope) as usize, lang.code());
        let doc = match self.docs.get(&key) {
            Some(doc) => doc.clone(),
            None => match self.shelf.render(body, &scope, self.tally, voice, Options::default()) {
                Ok(doc) => self.docs.entry(key).or_insert(doc).clone(),
                Err(found) => {
                    self.findings.extend(found);
                    return Vec::new();
                }
            },
        };
        let mut asks: Vec<Ask> = Vec::new();
        let mut blocks = Vec::new();
        if self.sets {
            values.extend(doc.values.iter().map(Use::printed));
            // Lowering only notes what was asked for; filling it may render further texts.
            blocks = lower::blocks(&doc, lang, &mut |name, arguments, at| {
                asks.push((name.to_owned(), arguments.to_vec(), at));
                vec![payload::Block::Code { text: format!("{}{}", asked::HOLE, asks.len() - 1) }]
            });
        } else {
            doc.asked(&mut |name, arguments, at| asks.push((name.to_owned(), arguments.to_vec(), at)));
        }
        seen.push(Seen {
            document: String::new(),
            role: piece.role,
            edition: piece.edition,
            original: original(piece.editions, piece.edition),
            subject: piece.subject,
            voice,
            scope,
            doc,
            reads: piece.reads,
        });
        let filled: Vec<Vec<payload::Block>> =
            asks.iter().map(|(name, arguments, at)| asked::fill(self, piece, voice, name, arguments, *at, values, seen)).collect();
        if self.sets {
            asked::plug(&mut blocks, &filled);
        }
        blocks
    }
}

/// A fence asked for by name: its name, its arguments, its place.
type Ask = (String, Vec<(String, String)>, Span);

/// One text to render.
pub struct Piece<'a> {
    /// All editions of the text.
    pub editions: &'a [Edition],
    /// The one to render.
    pub edition: &'a Edition,
    /// What sort of text.
    pub role: Role<'a>,
    /// What it is made for.
    pub subject: Subject<'a>,
    /// Distance class.
    pub reads: Distance,
}

/// What a kind of card is made for on a site.
pub fn subjects<'a>(job: &'a Job, site: &'a Site, per: Per) -> Vec<Subject<'a>> {
    match per {
        Per::Batch => site.batches.iter().filter(|b| mix_of(job, &b.mix.text).is_some()).map(|b| Subject::Batch(site, b)).collect(),
        Per::Mix => {
            // In the order in which the site lists its batches, so that codes follow the mixer's day.
            let mut names: Vec<&str> = Vec::new();
            let coats = [&site.carve_mix].into_iter().chain(&site.scratch_mix);
            for name in site.batches.iter().map(|b| &b.mix).chain(coats).map(|name| name.text.as_str()) {
                if !names.contains(&name) {
                    names.push(name);
                }
            }
            names.iter().filter_map(|n| mix_of(job, n)).map(|m| Subject::Mix(site, m)).collect()
        }
        Per::Site => vec![Subject::Site(site)],
    }
}
