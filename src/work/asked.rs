//! Fills the fences that authors ask for by name: cautions, drawings, tables.

use serde_json::json;

use crate::finding::{Finding, Severity};
use crate::job::Distance;
use crate::press::payload::{self, Block};
use crate::sound::{Role, Seen};
use crate::source::Span;
use crate::tally::drawings::{self, Drawing};
use crate::tally::elevation::elevation;
use crate::tally::{Ask, PrintedValue, Subject, Voice, ladder_id, mix_of};

use super::compose::{Composer, Piece, edition};
use super::{tables, worksheet};

/// Marks the place of a fence until it is filled: a character that no author's text may hold.
pub const HOLE: char = '\u{f0000}';

/// Puts filled blocks where their marks stand, at any depth.
pub fn plug(blocks: &mut Vec<Block>, filled: &[Vec<Block>]) {
    let mut out = Vec::with_capacity(blocks.len());
    for mut block in blocks.drain(..) {
        match &mut block {
            Block::Code { text } => {
                if let Some(made) = text.strip_prefix(HOLE).and_then(|n| n.parse::<usize>().ok()).and_then(|n| filled.get(n)) {
                    out.extend(made.iter().cloned());
                    continue;
                }
            }
            Block::Steps { items, .. } | Block::List { items } => items.iter_mut().for_each(|i| plug(i, filled)),
            Block::Quote { blocks, .. } | Block::Key { blocks } | Block::Stop { blocks, .. } | Block::Strip { blocks } => {
                plug(blocks, filled)
            }
            _ => {}
        }
        out.push(block);
    }
    *blocks = out;
}

/// Fills one fence. An unknown name was refused when the text was read; a drawing that this subject has not gives nothing.
#[allow(clippy::too_many_arguments)]
pub fn fill<'a>(
    composer: &mut Composer<'a>,
    piece: &Piece<'a>,
    voice: Voice,
    name: &str,
    arguments: &[(String, String)],
    at: Span,
    values: &mut Vec<PrintedValue>,
    seen: &mut Vec<Seen<'a>>,
) -> Vec<Block> {
    let argument = |key: &str| arguments.iter().find(|(k, _)| k == key).map(|(_, v)| v.as_str());
    let site = piece.subject.site();
    // Texts, and what cannot be drawn, are judged; the rest of a drawing is for the press.
    if !composer.sets && !["cautions", "ladder"].contains(&name) {
        return Vec::new();
    }
    match name {
        "cautions" => cautions(composer, piece, voice, values, seen),
        "ladder" => {
            let Some(mix) = piece.subject.mix(composer.job) else { return Vec::new() };
            let sizes: Vec<String> = crate::tally::ladder_sizes(site, mix);
            if composer.tally.figure(&ladder_id(mix, "added", 0)).is_none() {
                // A start over the limit has a finding of its own, which names this card.
                if mix.water.start.value().si.compare(&mix.water.limit.value().si).is_gt() {
                    return Vec::new();
                }
                let title = format!("the ladder of {} cannot be worked from its start, step and limit", mix.name.text);
                let help = "a start at or under the limit, and a step that reaches it within sixty rungs";
                composer.findings.push(Finding::new("ladder-unworked", Severity::Stop, title).at(at, "asked for here").help(help));
                return Vec::new();
            }
            if composer.sets { drawn(drawings::ladder(composer.tally, mix, &sizes, voice), values) } else { Vec::new() }
        }
        "batch-log" => {
            let Some(mix) = piece.subject.mix(composer.job) else { return Vec::new() };
            let rows = argument("rows").and_then(|r| r.parse().ok()).unwrap_or(12);
            vec![batch_log(composer, piece.subject, drawings::step_boxes(composer.tally, mix), rows, voice, values)]
        }
        "elevation" => site
            .surfaces
            .iter()
            .filter(|s| argument("surface").is_none_or(|code| code == s.code.text))
            .filter_map(|s| elevation(composer.tally, site, s, voice))
            .flat_map(|d| drawn(d, values))
            .collect(),
        "takeoff" => tables::takeoff(composer.tally, composer.job, site, voice, values),
        "worksheet" => worksheet::blocks(composer, site, voice, values),
        // The list of cards in force is filled when codes are known: see the book.
        "in-force" => vec![Block::Drawing { name: "in_force".into(), alt: String::new(), data: json!({}) }],
        _ => Vec::new(),
    }
}

fn drawn(drawing: Drawing, values: &mut Vec<PrintedValue>) -> Vec<Block> {
    values.extend(drawing.values);
    vec![Block::Drawing { name: drawing.name.to_owned(), alt: drawing.alt, data: drawing.data }]
}

fn cautions<'a>(
    composer: &mut Composer<'a>,
    piece: &Piece<'a>,
    voice: Voice,
    values: &mut Vec<PrintedValue>,
    seen: &mut Vec<Seen<'a>>,
) -> Vec<Block> {
    let job = composer.job;
    let names: Vec<&str> = match piece.role {
        Role::Card(card) => card.cautions.iter().map(|t| t.text.as_str()).collect(),
        Role::Procedure(page) => page.cautions.iter().map(|t| t.text.as_str()).collect(),
        _ => job.cautions.iter().map(|c| c.id.as_str()).collect(),
    };
    let items = names.iter().filter_map(|n| job.cautions.iter().find(|c| c.id == *n)).filter_map(|caution| {
        let edition = edition(&caution.editions, voice.lang)?;
        let text = Piece { editions: &caution.editions, edition, role: Role::Caution(caution), subject: piece.subject, reads: piece.reads };
        let blocks = composer.piece(&text, voice.lang, values, seen);
        Some(payload::Caution { word: edition.title.text.clone(), blocks })
    });
    let items: Vec<payload::Caution> = items.collect();
    if items.is_empty() { Vec::new() } else { vec![Block::Cautions { items }] }
}

/// Columns of the batch log: head in the dictionaries, width in parts, what is printed in it beforehand.
const LOG: [(&str, u32, Option<&str>); 9] = [
    ("log.batch", 8, Some("number")),
    ("log.water_in", 10, None),
    ("log.start", 19, Some("start")),
    ("log.steps", 19, Some("steps")),
    ("log.total", 12, Some("limit")),
    ("log.mixed", 9, Some("tick")),
    ("log.placed", 9, None),
    ("log.initials", 9, None),
    ("log.lots", 11, None),
];

/// The batch log's table: English over Spanish in every head, one box per small step, start and limit printed.
fn batch_log(
    composer: &Composer<'_>,
    subject: Subject<'_>,
    step_boxes: usize,
    rows: u32,
    voice: Voice,
    values: &mut Vec<PrintedValue>,
) -> Block {
    let (en, es) = (crate::words::EN, crate::words::ES);
    let id = subject.id(composer.job);
    let mut say = |name: &str| {
        let value = composer.tally.say(&format!("{id}.{name}"), Ask::Own, voice);
        let text = value.as_ref().map_or_else(String::new, |v| v.text.clone());
        values.extend(value);
        text
    };
    let printed = json!({"start": say("start_water"), "limit": say("limit")});
    let heads: Vec<_> =
        LOG.iter().map(|(key, width, fill)| json!({"en": en.text(key), "es": es.text(key), "w": width, "fill": fill})).collect();
    Block::Drawing {
        name: "batch_log".into(),
        alt: format!("{} · {}", en.text("log.alt"), es.text("log.alt")),
        data: json!({"heads": heads, "rows": rows, "step_boxes": step_boxes, "printed": printed}),
    }
}

/// Texts of the book that are read at desk or in the hand.
pub const BOOK: Distance = Distance::Hand;

/// The mix a subject speaks of, by the name a page gives, for pages of one mix.
pub fn subject_for<'a>(composer: &Composer<'a>, site: &'a crate::job::Site, mix: Option<&str>) -> Subject<'a> {
    mix.and_then(|name| mix_of(composer.job, name)).map_or(Subject::Site(site), |m| Subject::Mix(site, m))
}
