//! What the author's words mean. Pure types; every authored value keeps its key and place.

mod appliance;
mod change;
mod costs;
mod details;
mod doubt;
mod fit;
mod issued;
mod mix;
mod page;
mod panel;
mod people;
mod plan;
mod protection;
mod site;
mod supply;
mod surface;
pub mod weather;

pub use appliance::Appliance;
pub use change::{Change, Changed};
pub use costs::{Lift, PerPallet, Platform, Prices, Rates, SiteWater, TextureRates, Transport};
pub use details::{Details, Gate, JointPlan};
pub use doubt::{Doubt, Odd};
pub use fit::Fit;
pub use issued::Issued;
pub use mix::{Bagged, CarveWindow, Cure, Mix, Mixing, TimesAt, Water, Weighed};
pub use page::{BookChapter, Card, Caution, Chapter, Distance, Edition, Handbook, Page, Paper, Per, Word};
pub use panel::Panel;
pub use people::{Company, Measure, Mixer, Person, Reserve, Scale};
pub use plan::{CurePlan, DayGoal, DayPlan, Finish, Hands, LaborPlan, Lath, Place, Safety, Tolerances, WaterPlan};
pub use protection::{Protection, Reading};
pub use site::{Base, BatchPlan, Calendar, Climate, Letter, Lot, OpeningRule, Site};
pub use supply::{Delivery, MixingWater, Ordered, StandingLot};
pub use surface::{Corner, Edge, Face, Mean, Opening, Outline, Scratch, Shape, Surface, Texture, Waste};
pub use weather::Weather;

use crate::source::Span;

/// A text with its place.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Text {
    /// The text.
    pub text: String,
    /// Its place.
    pub at: Span,
}

impl Text {
    /// The place of some of its bytes; the whole place where its letters are not the file's (an escape, a quotation).
    pub fn part(&self, from: usize, to: usize) -> Span {
        if self.at.spans(self.text.len()) { self.at.part(from, to) } else { self.at }
    }
}

/// A calendar date with its place, ISO order.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Day {
    /// Year.
    pub year: i16,
    /// Month, 1 to 12.
    pub month: i8,
    /// Day of the month.
    pub day: i8,
    /// Its place.
    pub at: Span,
}

impl Day {
    /// The day without its place.
    pub fn date(&self) -> weather::Date {
        weather::Date { year: self.year, month: self.month, day: self.day }
    }

    /// The day as `2026-03-02`.
    pub fn iso(&self) -> String {
        self.date().iso()
    }
}

/// A Markdown body: the text below the front matter and where it starts in its file.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Body {
    /// File number.
    pub file: u32,
    /// Byte offset of `text` in the file.
    pub offset: u32,
    /// The Markdown.
    pub text: String,
}

/// An author's acceptance of a finding: it holds while the value stands as written.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Accept {
    /// Name of the finding.
    pub finding: Text,
    /// The value that is accepted.
    pub value: Option<Text>,
    /// Role that accepts it.
    pub by: Text,
    /// The reason.
    pub because: Text,
}

/// Who wrote a file, who approved it and what was accepted in it.
#[derive(Clone, Debug)]
pub struct Signed {
    /// Kind of the file.
    pub kind: &'static str,
    /// Its stem.
    pub id: String,
    /// Its fence, to point at what is missing.
    pub open: Span,
    /// Role that wrote it.
    pub written_by: Option<Text>,
    /// Role that approved it.
    pub approved_by: Option<Text>,
    /// What a role has accepted.
    pub accepts: Vec<Accept>,
}

/// Everything read from one job folder.
#[derive(Debug, Default)]
pub struct Job {
    /// The company file, if it could be read.
    pub company: Option<Company>,
    /// Mix designs, by file name.
    pub mixes: Vec<Mix>,
    /// Sites, by file name.
    pub sites: Vec<Site>,
    /// Procedures.
    pub procedures: Vec<Page>,
    /// Cautions.
    pub cautions: Vec<Caution>,
    /// Kinds of card.
    pub cards: Vec<Card>,
    /// Chapter texts of the book.
    pub chapters: Vec<Chapter>,
    /// The book.
    pub handbook: Option<Handbook>,
    /// Words to print.
    pub glossary: Vec<Word>,
    /// The page around the words: its titles and what stands above them.
    pub glossary_editions: Vec<Edition>,
    /// Engineer's letters on file.
    pub letters: Vec<Letter>,
    /// Mock-up panels on record.
    pub panels: Vec<Panel>,
    /// Change orders, none of them in force.
    pub changes: Vec<Change>,
    /// Papers of fireboxes.
    pub appliances: Vec<Appliance>,
    /// Weather of the sites.
    pub weather: Vec<Weather>,
    /// Who answers for each file.
    pub signed: Vec<Signed>,
    /// Amounts that could be read and are odd.
    pub doubts: Vec<Doubt>,
}

/// The folder that files of a kind lie in; empty for the job folder itself.
pub fn folder_of(kind: &str) -> &'static str {
    match kind {
        "mix" => "mixes",
        "site" => "sites",
        "procedure" => "procedures",
        "caution" => "cautions",
        "card" => "cards",
        "chapter" => "chapters",
        "letter" | "panel" | "appliance" => "records",
        "change" => "changes",
        _ => "",
    }
}
