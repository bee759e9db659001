//! Surfaces, their openings, returns and soffits, and what they are covered with.

use super::Text;
use crate::quantity::Worked;
use crate::quantity::expr::{Angle, Length, Plain, Share};

/// Waste of the two sorts; divided, not added.
#[derive(Debug, Clone)]
pub struct Waste {
    /// Cut off and dead.
    pub carve: Option<Worked<Share>>,
    /// Droppings, tub, tools.
    pub drop: Worked<Share>,
}

/// The scratch coat.
#[derive(Debug, Clone)]
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
    /// Thickness at the groove bottoms; a texture that states its mean may leave it out.
    pub least: Option<Worked<Length>>,
    /// Thickness at the faces.
    pub most: Worked<Length>,
    /// How deep the deepest joints are cut below the faces, if stated.
    pub groove: Option<Worked<Length>>,
    /// Where the mean thickness comes from.
    pub mean: Mean,
    /// Its waste.
    pub waste: Waste,
    /// Real surface for each unit of flat one, for color and sealer.
    pub developed: Option<Worked<Plain>>,
}

/// Where the mean thickness of a texture comes from.
#[derive(Debug)]
pub enum Mean {
    /// From the least and the most, by the share of the relief band that stays mud.
    Fill(Worked<Length>, Worked<Share>),
    /// Stated, as measured on a panel.
    Stated(Worked<Length>),
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
    /// How many equal ones stand; one if not stated. Openings, returns and soffits are those of one.
    pub count: Option<Worked<Plain>>,
    /// Name of its texture.
    pub texture: Text,
    /// The scratch coat under it: the site's, with what this surface says of its own; none where the carve coat
    /// goes straight on the base.
    pub scratch: Option<Scratch>,
    /// Lifts the author plans for the carve coat, if stated.
    pub lifts: Option<Worked<Plain>>,
    /// True if its color lets no second lot of bags on it.
    pub one_lot: bool,
    /// Openings.
    pub openings: Vec<Opening>,
    /// Ends that turn a corner.
    pub returns: Vec<Edge>,
    /// Undersides.
    pub soffits: Vec<Edge>,
    /// Bearing that it looks to, from north by east; round work looks everywhere.
    pub toward: Option<Worked<Angle>>,
    /// Place of the entry.
    pub at: crate::source::Span,
}

/// A corner of an outline: to the right, and up.
pub type Corner = (Worked<Length>, Worked<Length>);

/// A flat outline, of a wall field or of an opening.
#[derive(Debug)]
pub enum Outline {
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
    /// Foot and head level, of two widths.
    Trapezoid {
        /// Width at the foot.
        width: Worked<Length>,
        /// Width at the head.
        top: Worked<Length>,
        /// Height.
        height: Worked<Length>,
        /// From the foot's left end to under the head's; the head stands in the middle if not stated.
        shift: Option<Worked<Length>>,
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
    /// A circle.
    Circle {
        /// Diameter.
        diameter: Worked<Length>,
    },
    /// Any outline, by its corners in order.
    Polygon {
        /// Corners.
        corners: Vec<Corner>,
    },
}

/// A face of a box.
#[derive(Debug)]
pub struct Face {
    /// Code such as `front`.
    pub code: Text,
    /// Width.
    pub width: Worked<Length>,
    /// Height.
    pub height: Worked<Length>,
    /// How many equal ones; one if not stated.
    pub count: Option<Worked<Plain>>,
}

/// Shapes and their measures.
#[derive(Debug)]
pub enum Shape {
    /// A flat face.
    Flat(Outline),
    /// A front and some equal ends.
    Hearth {
        /// Front width and height.
        front: (Worked<Length>, Worked<Length>),
        /// End width and height.
        ends: (Worked<Length>, Worked<Length>),
        /// How many ends.
        ends_count: Worked<Plain>,
    },
    /// A plinth or chimney: faces of their own.
    Box(Vec<Face>),
    /// Round columns, whole or half-engaged.
    Column {
        /// True if half-engaged.
        half: bool,
        /// Diameter of the core.
        diameter: Worked<Length>,
        /// Height.
        height: Worked<Length>,
    },
    /// A tapered round, its curved face only.
    Frustum {
        /// Diameter of the core at the foot.
        foot: Worked<Length>,
        /// Diameter of the core at the head.
        head: Worked<Length>,
        /// Height.
        height: Worked<Length>,
    },
}

/// An opening.
#[derive(Debug)]
pub struct Opening {
    /// Code such as `D1`.
    pub code: Text,
    /// What it is, by language code.
    pub what: Vec<(String, Text)>,
    /// Whether fire burns in it, if said.
    pub fire: Option<bool>,
    /// Shape.
    pub outline: Outline,
    /// Depth of the reveal that gets a coat, if any.
    pub depth: Option<Worked<Length>>,
    /// Carve coat planned on the underside of its head, if stated.
    pub overhead: Option<Worked<Length>>,
    /// True if the sill gets a coat too. A circle has none: all of it is walked.
    pub sill_coated: bool,
    /// How many equal ones; one if not stated.
    pub count: Option<Worked<Plain>>,
    /// This face's reveal against the other's: `narrower`, `equal`, `wider`.
    pub reveal: Option<Text>,
    /// Who does the reveal, where it is not ours.
    pub reveal_by: Option<Text>,
    /// Distance from the wall's left edge, for the drawing.
    pub left: Option<Worked<Length>>,
    /// Height of its foot above the floor, for the drawing.
    pub sill: Option<Worked<Length>>,
}

/// A narrow face beside a wall: an end that turns a corner, or an underside.
#[derive(Debug)]
pub struct Edge {
    /// Code such as `R1`.
    pub code: Text,
    /// What it is, by language code.
    pub what: Vec<(String, Text)>,
    /// Length along the wall's edge.
    pub length: Worked<Length>,
    /// Depth.
    pub depth: Worked<Length>,
    /// Carve coat planned on it, if it is an underside and one is stated.
    pub overhead: Option<Worked<Length>>,
    /// How many equal ones; one if not stated.
    pub count: Option<Worked<Plain>>,
}

impl Shape {
    /// True for columns and tapered rounds: their coats are rings.
    pub fn is_round(&self) -> bool {
        matches!(self, Shape::Column { .. } | Shape::Frustum { .. })
    }
}
