//! What a command is given and what it gives back. Commands never print: [`Outcome`] is data, cli draws it.

use std::path::{Path, PathBuf};

use jiff::civil::Date;

use crate::finding::{Finding, Severity};
use crate::quantity::print::Line;

/// How findings and product are written.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Default)]
pub enum Format {
    /// For reading: the author's lines with carets, tables, trees.
    #[default]
    Plain,
    /// One line each.
    Short,
    /// One JSON value a line, versioned.
    Json,
}

/// How the output looks.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Default)]
pub struct Look {
    /// Format.
    pub format: Format,
    /// True to use terminal colours on standard output. Never the only carrier of a meaning.
    pub color: bool,
}

/// What every command is given.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Options {
    /// Job folder.
    pub job: PathBuf,
    /// Folder of everything generated.
    pub out: PathBuf,
    /// Folder for what the press is given, if anybody asked for it.
    pub dump: Option<PathBuf>,
    /// Date asked for; stands before the one the company file pins.
    pub on: Option<Date>,
    /// Today by the clock of this computer: the last resort, read once.
    pub today: Date,
    /// How the output looks.
    pub look: Look,
}

/// How a run ended.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Default)]
pub enum Exit {
    /// Nothing stands against the paper.
    #[default]
    Clean,
    /// A STOP, or what `--deny` names.
    Stop,
    /// Could not run: no folder, unreadable files, a bad argument.
    CouldNot,
    /// Nothing of that name.
    Nothing,
}

impl Exit {
    /// The exit code.
    pub fn code(self) -> u8 {
        match self {
            Exit::Clean => 0,
            Exit::Stop => 1,
            Exit::CouldNot => 2,
            Exit::Nothing => 3,
        }
    }

    /// Clean, or a stop if some finding is as bad as `deny` or worse. Accepted findings hold nothing up.
    pub fn of<'a>(findings: impl IntoIterator<Item = &'a Finding>, deny: Option<Severity>) -> Exit {
        let limit = deny.unwrap_or(Severity::Stop);
        // Severities are ordered worst first.
        if findings.into_iter().any(|f| f.severity <= limit && f.accepted.is_none()) { Exit::Stop } else { Exit::Clean }
    }
}

/// Which side a column leans to.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Align {
    /// Words.
    Left,
    /// Numbers.
    Right,
}

/// A table of printed texts.
#[derive(Clone, Debug, PartialEq, Eq, Default)]
pub struct Table {
    /// Title; empty for none.
    pub title: String,
    /// Columns: head and side.
    pub columns: Vec<(String, Align)>,
    /// Rows of texts as said by the tally.
    pub rows: Vec<Vec<String>>,
    /// Rows under the rule, such as sums.
    pub totals: Vec<Vec<String>>,
    /// Lines below the table.
    pub notes: Vec<String>,
}

/// A place in an author's file, counted from 1.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Place {
    /// Path from the job folder.
    pub path: String,
    /// Line.
    pub line: usize,
    /// Column, in characters.
    pub column: usize,
}

/// A figure as printed in one unit system.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Printed {
    /// `us` or `metric`.
    pub system: &'static str,
    /// The text.
    pub text: String,
    /// `up`, `down` or `nearest`.
    pub direction: &'static str,
    /// Measure as a fraction of the unit, such as `1/10`.
    pub measure: String,
    /// Unit of print, empty for a plain number.
    pub unit: String,
}

/// The derivation of one figure.
#[derive(Clone, Debug, PartialEq)]
pub struct Tree {
    /// Figure id.
    pub figure: String,
    /// Its label in words.
    pub label: String,
    /// On whose word, in words.
    pub basis: String,
    /// Why there is no value, if there is none; then there are no lines.
    pub missing: Option<String>,
    /// Lines, the figure's own first.
    pub lines: Vec<Line>,
    /// Place of each line, by the same index; `None` for what nobody typed.
    pub places: Vec<Option<Place>>,
    /// As printed.
    pub printed: Vec<Printed>,
}

/// What a command makes for its standard output.
#[derive(Clone, Debug, PartialEq, Default)]
pub enum Product {
    /// Nothing.
    #[default]
    Nothing,
    /// Text as it stands.
    Text(String),
    /// Paths written, in order.
    Files(Vec<PathBuf>),
    /// Tables.
    Tables(Vec<Table>),
    /// Derivations.
    Trees(Vec<Tree>),
}

/// A name that was asked for and is not there.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Missing {
    /// What kind of thing: `site`, `mix`, `figure`, `card`.
    pub kind: &'static str,
    /// As typed.
    pub asked: String,
    /// What there is.
    pub known: Vec<String>,
}

/// What a command gives back.
#[derive(Clone, Debug, PartialEq, Default)]
pub struct Outcome {
    /// Product.
    pub product: Product,
    /// Findings, already drawn in the format asked for.
    pub findings: String,
    /// The last line, for people: counts, or why the command could not run.
    pub summary: String,
    /// Names that are not there.
    pub missing: Vec<Missing>,
    /// How it ended.
    pub exit: Exit,
}

impl Outcome {
    /// Could not run, and why: one line, lower case, no full stop.
    pub fn could_not(why: impl Into<String>) -> Outcome {
        Outcome { summary: why.into(), exit: Exit::CouldNot, ..Outcome::default() }
    }

    /// Nothing of that name; cli looks for a name that is near.
    pub fn nothing(kind: &'static str, asked: &str, known: impl IntoIterator<Item = String>) -> Outcome {
        let missing = Missing { kind, asked: asked.to_owned(), known: known.into_iter().collect() };
        Outcome { missing: vec![missing], exit: Exit::Nothing, ..Outcome::default() }
    }
}

/// Told how far a command is. On a terminal this is a bar; elsewhere only what is said is kept.
pub trait Narrator: Sync {
    /// A line worth keeping.
    fn say(&self, line: &str);
    /// A stage begins, with this many steps.
    fn stage(&self, what: &str, steps: u64);
    /// A step of the stage is done.
    fn step(&self);
}

/// The commands. A build that leaves one out says so instead of pretending.
pub trait Jobs {
    /// Lays out a new job folder.
    fn setout(&self, _: &Options, _dir: &Path, _: &dyn Narrator) -> Outcome {
        left_out("setout")
    }
    /// Areas, volumes, loads, bags, weights of one site or all.
    fn takeoff(&self, _: &Options, _site: Option<&str>, _: &dyn Narrator) -> Outcome {
        left_out("takeoff")
    }
    /// What to order for one site or all.
    fn yard_list(&self, _: &Options, _site: Option<&str>, _yard: super::Yard, _: &dyn Narrator) -> Outcome {
        left_out("takeoff --yard-list")
    }
    /// Powder and water per batch, of one mix or all.
    fn gauge(&self, _: &Options, _mix: Option<&str>, _: &dyn Narrator) -> Outcome {
        left_out("gauge")
    }
    /// The batch table of a planned day.
    fn daysheet(&self, _: &Options, _site: &str, _date: Date, _: &dyn Narrator) -> Outcome {
        left_out("daysheet")
    }
    /// Runs every check; those of faces only if `layout`.
    fn sound(&self, _: &Options, _deny: Option<Severity>, _layout: bool, _: &dyn Narrator) -> Outcome {
        left_out("sound")
    }
    /// The manual page of one check.
    fn why(&self, _: &Options, _check: &str, _: &dyn Narrator) -> Outcome {
        left_out("sound --why")
    }
    /// The derivation of one figure; of every printed one for `None`.
    fn plumb(&self, _: &Options, _figure: Option<&str>, _: &dyn Narrator) -> Outcome {
        left_out("plumb")
    }
    /// Makes cards and book and enters them in the register; with `proof` only makes them.
    fn issue(&self, _: &Options, _ids: &[String], _proof: bool, _: &dyn Narrator) -> Outcome {
        left_out("issue")
    }
    /// The JSON Schema of one kind of file.
    fn schema(&self, _kind: &str) -> Outcome {
        left_out("schema")
    }
    /// The manual page of one kind of file.
    fn manual(&self, _kind: &str) -> Outcome {
        left_out("manual")
    }
}

fn left_out(command: &str) -> Outcome {
    Outcome::could_not(format!("this build leaves out `{command}`"))
}
