//! The kinds of file, each with its folder and its table.

use super::field::{Field, Want};
use super::{card, caution, change, chapter, company, glossary, handbook, letter, mix, panel, procedure, site};

/// The format mark that this program reads.
pub const FORMAT: u32 = 1;

/// A kind of file.
#[derive(Debug)]
pub struct KindOf {
    /// The word after `kind:`.
    pub kind: &'static str,
    /// Its folder; empty for the job folder itself.
    pub folder: &'static str,
    /// Its file name, where there is only one.
    pub file: Option<&'static str>,
    /// What such a file is, a line.
    pub meaning: &'static str,
    /// Keys of the original.
    pub fields: &'static [Field],
    /// The key that a twin in another language translates, if it must.
    pub title: Option<&'static str>,
}

const fn kind(
    kind: &'static str,
    folder: &'static str,
    file: Option<&'static str>,
    title: Option<&'static str>,
    fields: &'static [Field],
    meaning: &'static str,
) -> KindOf {
    KindOf { kind, folder, file, meaning, fields, title }
}

/// Every kind, in the order of the manual.
pub static KINDS: &[KindOf] = &[
    kind("company", "", Some("company.md"), None, company::FIELDS, "the company: people by role, mixers, measures, reserve"),
    kind("mix", "mixes", None, None, mix::FIELDS, "one mix design: bags, water and its limits, clocks, cure"),
    kind("site", "sites", None, None, site::FIELDS, "one site: surfaces, base, textures, climate, batches, calendar"),
    kind("procedure", "procedures", None, Some("title"), procedure::FIELDS, "how one piece of work is done, step by step"),
    kind("caution", "cautions", None, Some("word"), caution::FIELDS, "a hazard text with the condition that calls for it"),
    kind("card", "cards", None, Some("name"), card::FIELDS, "what one kind of card says, for whom, how big"),
    kind("chapter", "chapters", None, Some("title"), chapter::FIELDS, "a chapter text of the book"),
    kind("handbook", "", Some("handbook.md"), Some("title"), handbook::FIELDS, "the book: its chapters in order"),
    kind("glossary", "", Some("glossary.md"), Some("title"), glossary::FIELDS, "the words to print, in each language"),
    kind("letter", "records", None, None, letter::FIELDS, "an engineer's letter on file, with the weight it allows"),
    kind("panel", "records", None, None, panel::FIELDS, "what a mock-up panel showed: its mix, its depths, who signed for it"),
    kind("change", "changes", None, Some("title"), change::FIELDS, "a change order that is not in force yet"),
    kind("appliance", "records", None, None, super::appliance::FIELDS, "the papers of a firebox: clearance, heat, who read them"),
];

/// Keys that every file has.
pub static HEAD: &[Field] = &[
    Field::new("hodbook", Want::Whole, "1", "the format mark"),
    Field::new("kind", Want::Text, "mix", "the kind of the file, the same as its folder says"),
];

/// Language of a twin.
const LANGUAGE: Field = Field::new("language", Want::Text, "es", "language code, the same as in the file name");
/// What a twin translates.
const FOLLOWS: Field =
    Field::new("follows", Want::Texts, "[3f2a, 90c1]", "digest of each block of the original that it translates, in order").free();

static TWIN: &[Field] = &[LANGUAGE, FOLLOWS];
static TWIN_NAME: &[Field] = &[LANGUAGE, Field::new("name", Want::Text, "Tarjeta de mezcla", "name in that language"), FOLLOWS];
static TWIN_TITLE: &[Field] = &[LANGUAGE, Field::new("title", Want::Text, "Seguridad", "title in that language"), FOLLOWS];
static TWIN_WORD: &[Field] = &[LANGUAGE, Field::new("word", Want::Text, "OJOS", "signal word in that language"), FOLLOWS];

impl KindOf {
    /// Keys of a twin beside those of every file: words only.
    pub fn twin(&self) -> &'static [Field] {
        match self.title {
            Some("name") => TWIN_NAME,
            Some("title") => TWIN_TITLE,
            Some("word") => TWIN_WORD,
            _ => TWIN,
        }
    }
}

/// The kind that belongs to a path, by folder and file name; where several kinds share a folder, by the word that the
/// file says of itself.
pub fn of_path(path: &str, text: &str) -> Option<&'static KindOf> {
    let (folder, name) = path.split_once('/').unwrap_or(("", path));
    if name.contains('/') {
        return None;
    }
    let stem = name.split('.').next().unwrap_or(name);
    let here = || KINDS.iter().filter(|k| k.folder == folder && k.file.is_none_or(|f| f.strip_suffix(".md") == Some(stem)));
    let says = text.lines().skip(1).take_while(|line| line.trim_end() != "---").find_map(|line| line.strip_prefix("kind:"));
    let word = says.map(|said| said.split('#').next().unwrap_or("").trim().trim_matches(['"', '\'']));
    here().find(|k| Some(k.kind) == word).or_else(|| here().next())
}

/// The kinds of a folder, to say what may stand there.
pub fn in_folder(folder: &str) -> Vec<&'static str> {
    KINDS.iter().filter(|k| k.folder == folder).map(|k| k.kind).collect()
}

/// The kind called `word`.
pub fn of_word(word: &str) -> Option<&'static KindOf> {
    KINDS.iter().find(|k| k.kind == word)
}
