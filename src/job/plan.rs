//! The plan of a carving day, and what follows on the wall: cure, next trade.

use super::{Day, Text};
use crate::quantity::Worked;
use crate::quantity::expr::{Angle, Area, Clock, Duration, Length, Loads, Plain, Share, Volume};

/// How a day is worked.
#[derive(Debug)]
pub struct DayPlan {
    /// True if other hands carve than place.
    pub split: bool,
    /// People who place.
    pub placers: Worked<Plain>,
    /// People who carve; the same ones where the crew is not split.
    pub carvers: Worked<Plain>,
    /// First water in.
    pub starts: Worked<Clock>,
    /// End of the shift.
    pub ends: Worked<Clock>,
    /// Clean-up at its end.
    pub clean_up: Worked<Duration>,
    /// From water in to the end of mixing.
    pub mixing: Worked<Duration>,
    /// From the mixer to the wall.
    pub moving: Worked<Duration>,
    /// Loads in a full batch.
    pub batch: Worked<Loads>,
    /// Breaks: from, to.
    pub breaks: Vec<(Worked<Clock>, Worked<Clock>)>,
    /// Columns of late starts: how much later.
    pub late: Vec<Worked<Duration>>,
    /// Share of the carve limit that is left free.
    pub spare: Worked<Share>,
    /// True if the work stands in electric light after sunset.
    pub lights: bool,
    /// Who does what, by role code, if stated.
    pub hands: Option<Hands>,
    /// Days: what is carved when.
    pub days: Vec<DayGoal>,
}

/// Who does what on a carving day, by role code.
#[derive(Debug)]
pub struct Hands {
    /// Those who own the water and mix.
    pub mix: Vec<Text>,
    /// Those who place.
    pub place: Vec<Text>,
    /// Those who carve; those who place if left out.
    pub carve: Vec<Text>,
}

/// What one day is for.
#[derive(Debug)]
pub struct DayGoal {
    /// The day.
    pub day: Day,
    /// Code of the surface.
    pub surface: Text,
    /// Wall that the author plans, if stated; else as much as can be carved with the spare left free.
    pub area: Option<Worked<Area>>,
    /// What the day's work ends on, if stated.
    pub stop: Option<Text>,
    /// What the site's clocks are ahead of universal time that evening.
    pub zone: Worked<Duration>,
}

impl DayGoal {
    /// The day as `2026-03-02`.
    pub fn iso(&self) -> String {
        self.day.iso()
    }
}

/// Where the sun stands over a site.
#[derive(Debug)]
pub struct Place {
    /// North positive.
    pub latitude: Worked<Angle>,
    /// East positive.
    pub longitude: Worked<Angle>,
}

/// Sheets, fasteners and paper.
#[derive(Debug)]
pub struct Lath {
    /// Width and length of a sheet.
    pub sheet: (Worked<Length>, Worked<Length>),
    /// Lap at the sides.
    pub side_lap: Worked<Length>,
    /// Lap at the ends.
    pub end_lap: Worked<Length>,
    /// Sheets bought over the need.
    pub spare: Worked<Share>,
    /// Spacing of the framing.
    pub framing: Worked<Length>,
    /// Spacing of fasteners along it.
    pub fasteners: Worked<Length>,
    /// Fasteners bought over the need.
    pub fastener_spare: Worked<Share>,
    /// Area on a roll of paper.
    pub roll: Worked<Area>,
    /// Paper for laps and waste.
    pub paper_spare: Worked<Share>,
}

/// Colour and sealer.
#[derive(Debug)]
pub struct Finish {
    /// Coats.
    pub coats: Worked<Plain>,
    /// Area one volume covers.
    pub coverage: Worked<crate::quantity::expr::Coverage>,
    /// Bought over the need.
    pub spare: Worked<Share>,
    /// Volume of the can it is bought in.
    pub can: Worked<Volume>,
    /// `brush`, `roller` or `spray`, if stated.
    pub by: Option<Text>,
    /// Days it is put on.
    pub days: Vec<Day>,
    /// What overspray would reach, in words.
    pub near: Option<Text>,
    /// True if that is masked, covered or moved.
    pub masked: bool,
    /// True if one of the products is a solvent; nothing if that is not said.
    pub solvent: Option<bool>,
    /// How the air is moved while it is put on.
    pub ventilation: Option<Text>,
    /// Who puts out flames and pilot lights, and how.
    pub flames_out: Option<Text>,
}

/// What keeps people whole on a site: each line is the plan itself, in the author's words.
#[derive(Debug)]
pub struct Safety {
    /// The written plan against silica dust.
    pub dust_plan: Option<Text>,
    /// The eyewash and where it stands.
    pub eyewash: Option<Text>,
    /// Wash water, soap and towels at the station.
    pub wash: Option<Text>,
    /// True if the outlets are ground-fault ones.
    pub ground_fault: bool,
    /// Where the gray water goes.
    pub wash_out: Option<Text>,
    /// Water, shade and rest on hot days.
    pub heat: Option<Text>,
    /// Place of the group.
    pub at: crate::source::Span,
}

/// Counts for the water on site.
#[derive(Debug)]
pub struct WaterPlan {
    /// Wash-outs of the mixer.
    pub washes: Worked<Plain>,
    /// Mistings in all.
    pub mistings: Worked<Plain>,
    /// People that wash.
    pub people: Worked<Plain>,
    /// Days they work.
    pub days: Worked<Plain>,
}

/// Hours that no pace gives.
#[derive(Debug)]
pub struct LaborPlan {
    /// Covering, misting and watching the cure.
    pub cure: Worked<Duration>,
    /// Passes of colour and sealer.
    pub passes: Worked<Plain>,
    /// People on site.
    pub people: Worked<Plain>,
    /// Days they are on site.
    pub days: Worked<Plain>,
    /// Paid hours of a day.
    pub shift: Worked<Duration>,
}

/// Stated uncertainties for the error budget.
#[derive(Debug)]
pub struct Tolerances {
    /// Of the mean thickness, as a length.
    pub thickness: Worked<Length>,
    /// Of the waste, as a share of the mud.
    pub waste: Worked<Share>,
    /// Of the air, in points.
    pub air: Worked<Share>,
    /// Of a bag's mass.
    pub bag: Worked<Share>,
}

/// Who looks after the cure, and who comes next.
#[derive(Debug)]
pub struct CurePlan {
    /// Role that keeps the cure, weekends too.
    pub keeper: Text,
    /// The next trade, by language code.
    pub next: Vec<(String, Text)>,
    /// Day the next trade asks for.
    pub asks: Option<Day>,
    /// True if people come at weekends.
    pub weekends: bool,
    /// Days on which the keeper is away.
    pub away: Vec<Day>,
    /// Role that keeps the cure on those days.
    pub stand_in: Option<Text>,
    /// `tent` or `touching`: how the cover lies.
    pub cover: Option<Text>,
    /// Day at whose end the author counts the cure as over, if he counts it himself.
    pub done: Option<Day>,
}
