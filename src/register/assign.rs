//! Codes, revisions, shapes and check-words for the papers of one run.

use std::collections::{BTreeMap, BTreeSet};
use std::fmt;

use jiff::civil::Date;

use super::check_words::CHECK_WORDS;
use super::entry::{Entry, Event, FORMAT, Leaf, Said, digest};
use super::in_force::in_force;
use super::read::Register;

/// Shapes on the corner tab, repeating after the sixth revision.
pub const SHAPES: [&str; 6] = ["circle", "square", "triangle", "diamond", "star", "cross"];

/// A paper about to be issued.
#[derive(Clone, Debug)]
pub struct Draft {
    /// Subject such as `mud larkenfell/carve-24/2`; two papers of a run never share one.
    pub subject: String,
    /// Kind of card, by file stem.
    pub card: String,
    /// Document code, from [`codes`].
    pub code: String,
    /// Language codes of the faces, front first.
    pub languages: Vec<String>,
    /// Copies.
    pub copies: u32,
    /// Where they hang.
    pub hung: Option<String>,
    /// Who holds them.
    pub holder: Option<String>,
    /// Last good day.
    pub good_until: Option<Date>,
    /// Printed values and sentences in order.
    pub values: Vec<Said>,
    /// Authored values behind them.
    pub leaves: Vec<Leaf>,
}

/// What a run does to a card.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Change {
    /// First issue of the subject.
    First,
    /// A new revision: the card that hangs is now wrong, past its date, or gone.
    Revised,
    /// The same revision in other copies, places or hands. Nothing on the paper moved.
    Rehung,
    /// Nothing to enter.
    Same,
}

/// A paper with its code, revision and check-word.
#[derive(Clone, Debug)]
pub struct Assigned {
    /// The entry to print from; for [`Change::Same`] the one in force, with its own date, so that the
    /// remade file is the same to the byte.
    pub entry: Entry,
    /// What the run does to it.
    pub change: Change,
}

impl Assigned {
    /// True if the register gets a line for it.
    pub fn is_new(&self) -> bool {
        self.change != Change::Same
    }
}

/// Why no codes could be given.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Stuck {
    /// Two papers of one run have this code.
    Twice(String),
    /// Every check-word is on a card in force.
    NoWordLeft,
}

impl fmt::Display for Stuck {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Stuck::Twice(code) => write!(f, "two papers of this run have the code {code}"),
            Stuck::NoWordLeft => write!(f, "all {} check-words are on cards in force", CHECK_WORDS.len()),
        }
    }
}

/// The document codes of all subjects of a job, given as (subject, letter) in order.
///
/// A subject keeps its code for ever; a new one gets the lowest number nobody ever had. Hand in every paper
/// the job asks for, also those this run will not issue: then a proof, a withheld card and a single card
/// get the numbers they would have got in a full run.
pub fn codes(register: &Register, subjects: &[(&str, &str)]) -> Vec<String> {
    let known: BTreeMap<&str, &str> = register.entries().iter().map(|e| (e.subject.as_str(), e.code.as_str())).collect();
    let mut taken: BTreeSet<String> = register.entries().iter().map(|e| e.code.clone()).collect();
    let mut given: BTreeMap<&str, String> = BTreeMap::new();
    // Codes are never given back, so the search for a free one goes on where the last one of its letter ended.
    let mut last: BTreeMap<&str, u32> = BTreeMap::new();
    for (subject, letter) in subjects {
        let code = match (known.get(subject), given.get(subject)) {
            (Some(code), _) => (*code).to_owned(),
            (None, Some(code)) => code.clone(),
            (None, None) => free_code(register, &taken, letter, last.entry(letter).or_default()),
        };
        taken.insert(code.clone());
        given.insert(subject, code);
    }
    subjects.iter().map(|(subject, _)| given.get(subject).cloned().unwrap_or_default()).collect()
}

fn free_code(register: &Register, taken: &BTreeSet<String>, letter: &str, number: &mut u32) -> String {
    let free = |code: &String| !taken.contains(code) && !register.maybe_names(code);
    loop {
        *number += 1;
        let code = format!("{letter}-{number:02}");
        if free(&code) {
            return code;
        }
    }
}

/// Gives every draft its revision, shape and check-word, in the given order. Writes nothing.
///
/// The revision moves when the digest or the good-until date differs from
/// the one in force: a paper whose printed date has passed is wrong even if its numbers are not.
pub fn assign(register: &Register, drafts: &[Draft], on: Date, version: &str) -> Result<Vec<Assigned>, Stuck> {
    let mut desk = Desk::open(register);
    let mut seen = BTreeSet::new();
    let mut run = Vec::with_capacity(drafts.len());
    for draft in drafts {
        if !seen.insert(&draft.code) {
            return Err(Stuck::Twice(draft.code.clone()));
        }
        run.push(desk.place(draft, on, version)?);
    }
    Ok(run)
}

/// The revision letter after `last`: A … Z, AA, AB …
pub fn next_revision(last: Option<&str>) -> String {
    let Some(last) = last else { return "A".to_owned() };
    let mut letters: Vec<char> = last.chars().collect();
    for letter in letters.iter_mut().rev() {
        match letter {
            'A'..='Y' => {
                *letter = char::from_u32(u32::from(*letter) + 1).unwrap_or('Z');
                return letters.into_iter().collect();
            }
            _ => *letter = 'A',
        }
    }
    letters.insert(0, 'A');
    letters.into_iter().collect()
}

/// The shape of a revision: A circle, B square … G circle again.
pub fn shape(rev: &str) -> &'static str {
    let ordinal = rev.bytes().fold(0usize, |n, b| n.wrapping_mul(26).wrapping_add(usize::from(b.saturating_sub(b'A')) + 1));
    SHAPES.get(ordinal.wrapping_sub(1) % SHAPES.len()).copied().unwrap_or("circle")
}

/// What is taken, as the run goes on.
struct Desk<'a> {
    register: &'a Register,
    in_force: BTreeMap<&'a str, &'a Entry>,
    revisions: BTreeMap<&'a str, &'a str>,
    hanging: BTreeSet<&'a str>,
    last_use: BTreeMap<&'a str, usize>,
    given: BTreeSet<&'static str>,
}

impl<'a> Desk<'a> {
    fn open(register: &'a Register) -> Desk<'a> {
        let mut desk = Desk {
            register,
            in_force: in_force(register.entries()).into_iter().map(|e| (e.code.as_str(), e)).collect(),
            revisions: BTreeMap::new(),
            hanging: BTreeSet::new(),
            last_use: BTreeMap::new(),
            given: BTreeSet::new(),
        };
        for (i, entry) in register.entries().iter().enumerate() {
            desk.last_use.insert(&entry.word, i);
            match entry.kind {
                Event::Issued => {
                    desk.revisions.insert(&entry.code, &entry.rev);
                    desk.hanging.insert(&entry.word);
                }
                Event::Snipped | Event::Voided => {
                    desk.hanging.remove(entry.word.as_str());
                }
                Event::Lost | Event::Ordered => {}
            }
        }
        desk
    }

    fn place(&mut self, draft: &Draft, on: Date, version: &str) -> Result<Assigned, Stuck> {
        let digest = digest(&draft.values);
        let current = self.in_force.get(draft.code.as_str()).copied();
        if let Some(current) = current.filter(|e| e.digest == digest && e.good_until == draft.good_until) {
            let held = |e: &Entry| (e.languages.clone(), e.copies, e.hung.clone(), e.holder.clone());
            let mut entry = current.clone();
            (entry.languages, entry.copies) = (draft.languages.clone(), draft.copies);
            (entry.hung, entry.holder) = (draft.hung.clone(), draft.holder.clone());
            let change = if held(&entry) == held(current) { Change::Same } else { Change::Rehung };
            if change == Change::Rehung {
                entry.leaves = draft.leaves.clone();
                entry.version = version.to_owned();
            }
            return Ok(Assigned { entry, change });
        }
        let rev = next_revision(self.revisions.get(draft.code.as_str()).copied());
        let change = if rev == "A" { Change::First } else { Change::Revised };
        let entry = Entry {
            format: FORMAT,
            kind: Event::Issued,
            subject: draft.subject.clone(),
            card: draft.card.clone(),
            shape: shape(&rev).to_owned(),
            word: self.free_word()?.to_owned(),
            languages: draft.languages.clone(),
            copies: draft.copies,
            hung: draft.hung.clone(),
            holder: draft.holder.clone(),
            date: on,
            good_until: draft.good_until,
            leaves: draft.leaves.clone(),
            previous: current.map(|e| e.digest.clone()),
            version: version.to_owned(),
            code: draft.code.clone(),
            rev,
            values: draft.values.clone(),
            digest,
        };
        Ok(Assigned { entry, change })
    }

    /// A word never used; when all were, the one that has rested longest, among cut cards before replaced ones.
    ///
    /// A replaced card that nobody reported as cut keeps its word as long as others are left, or a stale
    /// card could answer the morning call with a word of today's list. A word in force is never given.
    fn free_word(&mut self) -> Result<&'static str, Stuck> {
        let in_force: BTreeSet<&str> = self.in_force.values().map(|e| e.word.as_str()).collect();
        let open = |w: &&&'static str| !self.given.contains(**w) && !in_force.contains(**w) && !self.register.maybe_names(w);
        let rank = |w: &&&'static str| (self.hanging.contains(**w), self.last_use.get(**w).map_or(0, |i| i + 1));
        let word = CHECK_WORDS.iter().filter(open).min_by_key(rank).copied().ok_or(Stuck::NoWordLeft)?;
        self.given.insert(word);
        Ok(word)
    }
}
