//! What every command begins with: the folder, the job, its figures, the date.

use jiff::civil::Date;

use crate::finding::{Colour, Finding, Severity};
use crate::job::{Day, Job};
use crate::quantity::Mark;
use crate::read;
use crate::register::Register;
use crate::sound::Ground;
use crate::source::{Folder, Kept, Span};
use crate::tally::Tally;

use super::seam::{Options, Outcome};

/// A job folder, read and worked.
pub struct Loaded {
    /// Its files.
    pub folder: Folder,
    /// What they mean.
    pub job: Job,
    /// Findings of reading.
    pub findings: Vec<Finding>,
    /// Every figure.
    pub tally: Tally,
    /// The date of the run.
    pub on: Date,
}

/// Path of the register in a job folder.
pub const REGISTER: &str = "records/register.jsonl";

impl Loaded {
    /// Reads and works a job folder.
    ///
    /// # Errors
    /// An outcome that says why the folder could not be read at all; a newer format is one of these.
    pub fn open(options: &Options) -> Result<Loaded, Outcome> {
        let folder = Folder::open(&options.job)
            .map_err(|e| Outcome::could_not(format!("cannot read the job folder {}: {e}", options.job.display())))?;
        if folder.files().is_empty() {
            return Err(Outcome::could_not(format!(
                "{} holds no Markdown: give the job folder with --job, or lay out a new one with `hodbook setout DIR`",
                options.job.display()
            )));
        }
        let (job, findings) = read::job(&folder);
        if let Some(newer) = findings.iter().find(|f| f.name == "newer-format") {
            let path = newer.at.as_ref().and_then(|(span, _)| folder.lines(span.file)).map_or("a file", |(path, _)| path);
            return Err(Outcome::could_not(format!("{path}: {}; {}", newer.title, newer.help)));
        }
        let tally = Tally::of(&job);
        let pinned = job.company.as_ref().and_then(|c| c.on.as_ref()).and_then(date);
        let on = options.on.or(pinned).unwrap_or(options.today);
        Ok(Loaded { folder, job, findings, tally, on })
    }

    /// The register's file.
    pub fn kept(&self) -> Kept {
        Kept::new(self.folder.root().join(REGISTER))
    }

    /// The register, and what is wrong with it.
    ///
    /// # Errors
    /// An outcome that says why the file could not be read.
    pub fn register(&self) -> Result<(Register, Vec<Finding>), Outcome> {
        let bytes = self.kept().read().map_err(|e| Outcome::could_not(format!("cannot read {REGISTER}: {e}")))?;
        let file = self.folder.at(REGISTER).map_or(u32::MAX, |f| f.id);
        Ok(Register::read(&bytes, file))
    }

    /// What checks stand on, before there is any text.
    pub fn ground(&self) -> Ground<'_> {
        Ground::of(&self.job, &self.tally, (self.on.year(), self.on.month(), self.on.day()))
    }

    /// Path, line and column of a mark, counted from 1.
    pub fn place(&self, mark: Mark) -> Option<super::seam::Place> {
        let file = self.folder.file(mark.file)?;
        let (line, column) = file.place(mark.start);
        Some(super::seam::Place { path: file.path.clone(), line, column })
    }

    /// Findings drawn in the format asked for, worst first within a file's order, with the closing count.
    pub fn draw(&self, options: &Options, findings: &[Finding]) -> (String, String) {
        draw(&self.folder, options, findings)
    }
}

/// Draws findings against a folder's files; returns the text and the closing line.
pub fn draw(folder: &Folder, options: &Options, findings: &[Finding]) -> (String, String) {
    use super::seam::Format;
    let lines = |file: u32| folder.lines(file);
    let colour = if options.look.color { Colour::On } else { Colour::Off };
    // What was accepted is on the paper and in the JSON; the closing line counts it.
    let mut ordered: Vec<&Finding> = findings.iter().filter(|f| f.accepted.is_none()).collect();
    ordered.sort_by_key(|f| f.severity);
    let text = match options.look.format {
        Format::Plain => ordered.iter().map(|f| crate::finding::plain(f, &lines, colour, WIDTH) + "\n\n").collect(),
        Format::Short => ordered.iter().map(|f| crate::finding::short(f, &lines) + "\n").collect(),
        Format::Json => format!("{}\n", crate::finding::json(findings, &lines)),
    };
    (text, crate::finding::count(findings, Severity::Note))
}

/// Columns a finding is drawn for: a terminal's common width, also when the output goes to a file.
const WIDTH: usize = 120;

/// The place of a mark.
pub fn span(mark: Mark) -> Span {
    Span { file: mark.file, start: mark.start, end: mark.end }
}

/// A day as a civil date; `None` if there is no such day.
pub fn date(day: &Day) -> Option<Date> {
    Date::new(day.year, day.month, day.day).ok()
}

/// True if something forbids printing.
pub fn stops(findings: &[Finding]) -> bool {
    findings.iter().any(|f| f.severity == Severity::Stop)
}
