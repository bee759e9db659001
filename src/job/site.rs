//! A site: surfaces, base, textures, climate, calendar.

use super::{Accept, Day, Edition, Text};
use crate::quantity::Worked;
use crate::quantity::expr::{Areal, Length, Loads, Plain, Share, Temperature};

/// A site.
#[derive(Debug)]
pub struct Site {
    /// File stem, such as `larkenfell`; the id in figures.
    pub id: String,
    /// Name to print.
    pub name: Text,
    /// Short code, such as `LF`.
    pub code: Text,
    /// True if the site's paper is metric first.
    pub metric: bool,
    /// IANA time zone.
    pub zone: Text,
    /// Role codes on this site.
    pub crew: Vec<Text>,
    /// Last day its cards are good.
    pub good_until: Day,
    /// Climate.
    pub climate: Climate,
    /// Base of the walls.
    pub base: Base,
    /// Name of the scratch mix.
    pub scratch_mix: Text,
    /// Name of the carve mix.
    pub carve_mix: Text,
    /// Batches to make cards for.
    pub batches: Vec<BatchPlan>,
    /// The scratch coat.
    pub scratch: Scratch,
    /// Textures by name.
    pub textures: Vec<Texture>,
    /// Surfaces by code.
    pub surfaces: Vec<Surface>,
    /// Dates.
    pub calendar: Calendar,
    /// Role that wrote it.
    pub written_by: Option<Text>,
    /// Role that approved it.
    pub approved_by: Option<Text>,
    /// Findings of HOLD that a role has accepted.
    pub accepts: Vec<Accept>,
    /// Where the sun stands, if stated.
    pub position: Option<super::Place>,
    /// How a carving day is worked.
    pub plan: Option<super::DayPlan>,
    /// Sheets, fasteners, paper.
    pub lath: Option<super::Lath>,
    /// Colour and sealer.
    pub finish: Option<super::Finish>,
    /// Water that is not mixed.
    pub water: Option<super::WaterPlan>,
    /// Hours that no pace gives.
    pub labor: Option<super::LaborPlan>,
    /// Stated uncertainties.
    pub tolerances: Option<super::Tolerances>,
    /// The cure and what follows it.
    pub cure: Option<super::CurePlan>,
    /// Editions, English first: name and notes.
    pub editions: Vec<Edition>,
}

/// Where it is and how warm the work is.
#[derive(Debug)]
pub struct Climate {
    /// `indoors` or `outdoors`.
    pub place: Text,
    /// Temperature band of the planned work.
    pub band: (Worked<Temperature>, Worked<Temperature>),
    /// Humidity, if known.
    pub humidity: Option<Worked<Share>>,
}

/// What the coats hang on.
#[derive(Debug)]
pub struct Base {
    /// `framed` or `solid`.
    pub kind: Text,
    /// Description.
    pub what: Text,
    /// Layers of water-resistive barrier.
    pub wrb_layers: Option<Worked<Plain>>,
    /// Weight of lath and paper.
    pub lath_and_paper: Option<Worked<Areal>>,
    /// Name of the engineer's letter on file (a record's file stem).
    pub letter: Option<Text>,
}

/// A batch size that gets its own card.
#[derive(Debug)]
pub struct BatchPlan {
    /// Name of the mix.
    pub mix: Text,
    /// Code of the mixer.
    pub mixer: Text,
    /// Loads in the batch.
    pub loads: Worked<Loads>,
    /// Place of the entry.
    pub at: crate::source::Span,
}

/// Waste of the two sorts; divided, not added.
#[derive(Debug, Clone)]
pub struct Waste {
    /// Cut off and dead.
    pub carve: Option<Worked<Share>>,
    /// Droppings, tub, tools.
    pub drop: Worked<Share>,
}

/// The scratch coat.
#[derive(Debug)]
pub struct Scratch {
    /// Thickness.
    pub thickness: Worked<Length>,
    /// Allowance for the key behind lath.
    pub key: Worked<Length>,
    /// Its waste.
    pub waste: Waste,
}

/// A texture and its relief.
#[derive(Debug)]
pub struct Texture {
    /// Name such as `rubble`.
    pub name: Text,
    /// Thickness at the groove bottoms.
    pub least: Worked<Length>,
    /// Thickness at the faces.
    pub most: Worked<Length>,
    /// Share of the relief band that stays mud.
    pub fill: Worked<Share>,
    /// Its waste.
    pub waste: Waste,
    /// Real surface for each unit of flat one, for color and sealer.
    pub developed: Option<Worked<Plain>>,
}

/// A surface to cover.
#[derive(Debug)]
pub struct Surface {
    /// Code such as `LF-1`.
    pub code: Text,
    /// What it is, by language code.
    pub what: Vec<(String, Text)>,
    /// Its shape with its measures.
    pub shape: Shape,
    /// Name of its texture.
    pub texture: Text,
    /// Lifts the author plans for the carve coat, if stated.
    pub lifts: Option<Worked<Plain>>,
    /// Openings.
    pub openings: Vec<Opening>,
    /// Place of the entry.
    pub at: crate::source::Span,
}

/// Shapes and their measures.
#[derive(Debug)]
pub enum Shape {
    /// Width × height.
    Rectangle {
        /// Width.
        width: Worked<Length>,
        /// Height.
        height: Worked<Length>,
    },
    /// A rectangle with a triangle on it.
    Gable {
        /// Width.
        width: Worked<Length>,
        /// Height at the eave.
        eave: Worked<Length>,
        /// Rise of the gable above it.
        rise: Worked<Length>,
    },
    /// A front and some equal ends.
    Hearth {
        /// Front width and height.
        front: (Worked<Length>, Worked<Length>),
        /// End width and height.
        ends: (Worked<Length>, Worked<Length>),
        /// How many ends.
        ends_count: Worked<Plain>,
    },
    /// Round columns, whole or half-engaged.
    Column {
        /// True if half-engaged.
        half: bool,
        /// Diameter of the core.
        diameter: Worked<Length>,
        /// Height.
        height: Worked<Length>,
        /// How many.
        count: Worked<Plain>,
    },
}

/// Shape of an opening.
#[derive(Debug)]
pub enum OpeningShape {
    /// Width × height.
    Rectangle {
        /// Width.
        width: Worked<Length>,
        /// Height.
        height: Worked<Length>,
        /// Sides with a reveal: 3 (no sill) or 4.
        sides: Worked<Plain>,
    },
    /// Jambs and a half circle.
    Semicircular {
        /// Width.
        width: Worked<Length>,
        /// Height to the spring line.
        spring: Worked<Length>,
    },
    /// Jambs and a circular segment.
    Segmental {
        /// Width.
        width: Worked<Length>,
        /// Height to the spring line.
        spring: Worked<Length>,
        /// Rise of the segment.
        rise: Worked<Length>,
    },
}

/// An opening.
#[derive(Debug)]
pub struct Opening {
    /// Code such as `D1`.
    pub code: Text,
    /// What it is, by language code.
    pub what: Vec<(String, Text)>,
    /// Shape.
    pub shape: OpeningShape,
    /// Depth of the reveal that gets a coat, if any.
    pub depth: Option<Worked<Length>>,
    /// Distance from the wall's left edge, for the drawing.
    pub left: Option<Worked<Length>>,
    /// Height of its foot above the floor, for the drawing.
    pub sill: Option<Worked<Length>>,
}

/// Dates of the job.
#[derive(Debug, Default)]
pub struct Calendar {
    /// Panel.
    pub panel: Option<Day>,
    /// Lath.
    pub lath: Option<Day>,
    /// Scratch coat.
    pub scratch: Option<Day>,
    /// Carving days.
    pub carve: Vec<Day>,
}

/// An engineer's letter: a record with a stated weight, compared and never a flag.
#[derive(Debug)]
pub struct Letter {
    /// File stem.
    pub id: String,
    /// Site code.
    pub site: Text,
    /// Reference printed on it.
    pub reference: Text,
    /// Date.
    pub date: Day,
    /// Who signed, by class.
    pub from: Text,
    /// Weight it allows.
    pub allows: Worked<Areal>,
    /// What it speaks of.
    pub what: Text,
}
