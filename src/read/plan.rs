//! `sites/NAME.md`: the day plan, lath, finish, water, labor, tolerances, cure.

use crate::job::{CurePlan, Day, DayGoal, DayPlan, Finish, Hands, LaborPlan, Lath, Place, Safety, Text, Tolerances, WaterPlan};
use crate::quantity::expr::Duration;
use crate::quantity::units::find_expr;
use crate::quantity::{Dim, Kind, Mark, Node, Num, Quantity, Worked};

use super::field::{ANGLE, AREA, COVERAGE, Field, LENGTH, LOADS, SHARE, TIME, VOLUME, Want};
use super::group::{Group, all};

const fn count(name: &'static str, example: &'static str, meaning: &'static str) -> Field {
    Field::new(name, Want::Whole, example, meaning).from("0", "1000")
}

static BREAK: &[Field] =
    &[Field::new("from", Want::Clock, "12:00", "begin of the break"), Field::new("to", Want::Clock, "12:30", "end of the break")];

static LATE: &[Field] =
    &[Field::new("by", TIME, "30 min", "how much later the first water goes in").over("0 min", "12 h").likely("5 min", "6 h")];

static GOAL: &[Field] = &[
    Field::new("day", Want::Date, "2026-03-02", "the day"),
    Field::new("surface", Want::Text, "EX-1", "code of the surface that is placed and carved"),
    Field::new("area", AREA, "97 ft2", "wall that is placed and carved; as much as can be carved with the spare left free if left out")
        .over("0 ft2", "10000 ft2")
        .free(),
    Field::new("stop", Want::Text, "stone joint", "what the day's work ends on: a joint, a corner, an edge; never the middle of a stone")
        .free(),
];

static HANDS: &[Field] = &[
    Field::new("mix", Want::Texts, "[MUD]", "role codes of those who own the water and mix"),
    Field::new("place", Want::Texts, "[LEAD, APP1, APP2]", "role codes of those who place"),
    Field::new("carve", Want::Texts, "[LEAD, APP1, APP2]", "role codes of those who carve; those who place if left out").free(),
];

/// Keys of `plan`.
pub static DAY: &[Field] = &[
    Field::new("crew", Want::Choice(&["same", "split"]), "same", "`same`: those who place carve afterwards; `split`: other hands carve"),
    Field::new("placers", Want::Whole, "3", "people who place").from("1", "100"),
    Field::new("carvers", Want::Whole, "3", "people who carve").from("1", "100"),
    Field::new("starts", Want::Clock, "7:30", "first water in"),
    Field::new("ends", Want::Clock, "15:30", "end of the shift"),
    Field::new("clean_up", TIME, "45 min", "clean-up at its end").from("0 min", "8 h").likely("5 min", "4 h"),
    Field::new("mixing", TIME, "6 min", "from water in to the end of mixing, charging included")
        .over("0 min", "2 h")
        .likely("1 min", "30 min"),
    Field::new("moving", TIME, "2 min", "from the mixer to the wall").from("0 min", "2 h").likely("10 s", "45 min"),
    Field::new("batch", LOADS, "2 loads", "loads in a full batch").over("0 loads", "100 loads"),
    Field::new("breaks", Want::List(BREAK), "", "breaks of the crew").free(),
    Field::new("late", Want::List(LATE), "", "late starts that get a column of their own").free(),
    Field::new("spare", SHARE, "10 %", "share of what could be carved that is left free").from("0 %", "90 %"),
    Field::new("lights", Want::YesNo, "no", "whether work goes on in electric light after sunset").free(),
    Field::new("hands", Want::Group(HANDS), "", "who does what").free(),
    Field::new("days", Want::List(GOAL), "", "what is carved on which day").free(),
];

/// Keys of `position`.
pub static POSITION: &[Field] = &[
    Field::new("latitude", ANGLE, "41.2 °", "north of the equator, south with a minus").from("-90 °", "90 °"),
    Field::new("longitude", ANGLE, "-96.1 °", "east of Greenwich, west with a minus").from("-180 °", "180 °"),
];

/// Keys of `lath`.
pub static LATH: &[Field] = &[
    Field::new("width", LENGTH, "27 in", "width of a sheet").over("0 in", "200 in").likely("18 in", "60 in"),
    Field::new("length", LENGTH, "96 in", "length of a sheet").over("0 in", "400 in").likely("48 in", "150 in"),
    Field::new("side_lap", LENGTH, "1 in", "lap at the sides").from("0 in", "24 in").likely("1/2 in", "6 in"),
    Field::new("end_lap", LENGTH, "1 in", "lap at the ends").from("0 in", "24 in").likely("1/2 in", "6 in"),
    Field::new("spare", SHARE, "5 %", "sheets bought over the need").from("0 %", "100 %"),
    Field::new("framing", LENGTH, "16 in", "spacing of the framing").over("0 in", "60 in").likely("8 in", "48 in"),
    Field::new("fasteners", LENGTH, "7 in", "spacing of fasteners along the framing").over("0 in", "60 in").likely("2 in", "16 in"),
    Field::new("fastener_spare", SHARE, "10 %", "fasteners bought over the need").from("0 %", "100 %"),
    Field::new("roll", AREA, "300 ft2", "area on a roll of paper").over("0 ft2", "10000 ft2"),
    Field::new("paper_spare", SHARE, "10 %", "paper for laps and waste").from("0 %", "100 %"),
];

/// Keys of `finish`.
pub static FINISH: &[Field] = &[
    Field::new("coats", Want::Whole, "2", "coats of color and sealer").from("1", "20"),
    Field::new("coverage", COVERAGE, "150 ft2/gal", "developed surface that a gallon covers once").over("0 ft2/gal", "10000 ft2/gal"),
    Field::new("spare", SHARE, "8 %", "bought over the need").from("0 %", "100 %"),
    Field::new("can", VOLUME, "1 gal", "volume of the can it is sold in").over("0 gal", "500 gal").likely("1/2 gal", "60 gal"),
    Field::new("by", Want::Choice(&["brush", "roller", "spray"]), "roller", "how it is put on").free(),
    Field::new("days", Want::Dates, "[2026-03-30, 2026-03-31]", "days it is put on").free(),
    Field::new("near", Want::Text, "cars along the fence", "what overspray would reach, in words").free(),
    Field::new("masked", Want::YesNo, "yes", "whether that is masked, covered or moved; no if left out").free(),
    Field::new("solvent", Want::YesNo, "no", "whether one of the products is a solvent").free(),
    Field::new("ventilation", Want::Text, "fan in the window, both doors open", "how the air is moved while a solvent dries").free(),
    Field::new("flames_out", Want::Text, "gas pilot shut at its valve by LEAD", "who puts out flames and pilot lights").free(),
];

/// Keys of `safety`.
pub static SAFETY: &[Field] = &[
    Field::new("dust_plan", Want::Text, "exposure plan no. 1, in the gang box", "the written plan against silica dust").free(),
    Field::new("eyewash", Want::Text, "plumbed eyewash beside the barrel", "the eyewash, and where it stands").free(),
    Field::new("wash", Want::Text, "water tub, soap and towels beside the barrel", "wash water, soap and towels, and where").free(),
    Field::new("ground_fault", Want::YesNo, "yes", "whether every outlet in use is a ground-fault one; no if left out").free(),
    Field::new("wash_out", Want::Text, "lined tub, hauled off when it has set", "where the gray water goes").free(),
    Field::new("heat", Want::Text, "water cooler, shade tent, a rest every hour", "water and shade on hot days").free(),
];

/// Keys of `water`.
pub static WATER: &[Field] = &[
    count("washes", "10", "wash-outs of the mixer"),
    count("mistings", "6", "times the whole wall is misted"),
    count("people", "5", "people who wash on site"),
    count("days", "6", "days they work there"),
];

/// Keys of `labor`.
pub static LABOR: &[Field] = &[
    Field::new("cure", TIME, "6 h", "covering, misting and watching, in all").from("0 h", "1000 h").likely("20 min", "500 h"),
    count("passes", "2", "passes of color and sealer"),
    count("people", "5", "people on site"),
    count("days", "3", "days they are on site"),
    Field::new("shift", TIME, "8 h", "paid hours of a day").over("0 h", "24 h").likely("3 h", "14 h"),
];

/// Keys of `tolerances`.
pub static TOLERANCES: &[Field] = &[
    Field::new("thickness", LENGTH, "1/8 in", "how well the mean thickness is known").from("0 in", "6 in").likely("1/32 in", "3/4 in"),
    Field::new("waste", SHARE, "4 %", "how well the waste is known, of the mud").from("0 %", "100 %"),
    Field::new("air", SHARE, "2 %", "how well the air is known, in points").from("0 %", "40 %"),
    Field::new("bag", SHARE, "1.6 %", "how well a bag's mass is known").from("0 %", "100 %"),
];

/// Keys of `cure`.
pub static CURE: &[Field] = &[
    Field::new("keeper", Want::Text, "LEAD", "role that keeps the cure, weekends too"),
    Field::new("next", Want::Words, "painter", "the next trade on the wall"),
    Field::new("asks", Want::Date, "2026-03-09", "day the next trade asks for").free(),
    Field::new("weekends", Want::YesNo, "no", "whether other trades come at weekends").free(),
    Field::new("away", Want::Dates, "[2026-03-07]", "days on which the keeper is away").free(),
    Field::new("stand_in", Want::Text, "APP1", "role that keeps the cure on those days").free(),
    Field::new("cover", Want::Choice(&["tent", "touching"]), "tent", "whether the cover stands off the face or touches it").free(),
    Field::new("done", Want::Date, "2026-03-12", "day at whose end the cure is taken as over, where somebody counted it by hand").free(),
];

/// What a zone's clocks are ahead of universal time on the evening of a day; nothing where there is no such zone.
fn ahead(zone: &Text, day: &Day) -> Option<Worked<Duration>> {
    let zone_db = jiff::tz::TimeZone::get(&zone.text).ok()?;
    let evening = jiff::civil::Date::new(day.year, day.month, day.day).ok()?.at(18, 0, 0, 0);
    let offset = zone_db.to_ambiguous_timestamp(evening).offset();
    let seconds = match offset {
        jiff::tz::AmbiguousOffset::Unambiguous { offset } => offset.seconds(),
        jiff::tz::AmbiguousOffset::Gap { before, .. } | jiff::tz::AmbiguousOffset::Fold { before, .. } => before.seconds(),
    };
    let value = Quantity { si: Num::int(seconds.into()), dim: Dim::TIME, kind: Kind::Plain };
    let mark = Mark { file: zone.at.file, start: zone.at.start, end: zone.at.end };
    Some(Worked::new(Node::authored(value, find_expr("min"), &zone.text, "zone", Some(mark))))
}

fn goal(g: &Group, zone: &Text) -> Option<DayGoal> {
    let day = g.day("day")?;
    Some(DayGoal { surface: g.text("surface")?, area: g.worked("area"), stop: g.text("stop"), zone: ahead(zone, &day)?, day })
}

fn hands(g: &Group) -> Hands {
    let (place, carve) = (g.texts("place"), g.texts("carve"));
    Hands { mix: g.texts("mix"), carve: if carve.is_empty() { place.clone() } else { carve }, place }
}

pub(super) fn day(g: &Group, zone: &Text) -> Option<DayPlan> {
    Some(DayPlan {
        split: g.says("crew", "split"),
        placers: g.worked("placers")?,
        carvers: g.worked("carvers")?,
        starts: g.worked("starts")?,
        ends: g.worked("ends")?,
        clean_up: g.worked("clean_up")?,
        mixing: g.worked("mixing")?,
        moving: g.worked("moving")?,
        batch: g.worked("batch")?,
        breaks: all(g.list("breaks").iter().map(|b| Some((b.worked("from")?, b.worked("to")?))))?,
        late: all(g.list("late").iter().map(|l| l.worked("by")))?,
        spare: g.worked("spare")?,
        lights: g.yes("lights"),
        hands: g.group("hands").map(hands),
        days: all(g.list("days").iter().map(|d| goal(d, zone)))?,
    })
}

pub(super) fn place(g: &Group) -> Option<Place> {
    Some(Place { latitude: g.worked("latitude")?, longitude: g.worked("longitude")? })
}

pub(super) fn lath(g: &Group) -> Option<Lath> {
    Some(Lath {
        sheet: (g.worked("width")?, g.worked("length")?),
        side_lap: g.worked("side_lap")?,
        end_lap: g.worked("end_lap")?,
        spare: g.worked("spare")?,
        framing: g.worked("framing")?,
        fasteners: g.worked("fasteners")?,
        fastener_spare: g.worked("fastener_spare")?,
        roll: g.worked("roll")?,
        paper_spare: g.worked("paper_spare")?,
    })
}

pub(super) fn safety(g: &Group) -> Safety {
    Safety {
        dust_plan: g.text("dust_plan"),
        eyewash: g.text("eyewash"),
        wash: g.text("wash"),
        ground_fault: g.yes("ground_fault"),
        wash_out: g.text("wash_out"),
        heat: g.text("heat"),
        at: g.at,
    }
}

pub(super) fn finish(g: &Group) -> Option<Finish> {
    Some(Finish {
        coats: g.worked("coats")?,
        coverage: g.worked("coverage")?,
        spare: g.worked("spare")?,
        can: g.worked("can")?,
        by: g.text("by"),
        days: g.days("days"),
        near: g.text("near"),
        masked: g.yes("masked"),
        solvent: g.said("solvent"),
        ventilation: g.text("ventilation"),
        flames_out: g.text("flames_out"),
    })
}

pub(super) fn water(g: &Group) -> Option<WaterPlan> {
    Some(WaterPlan { washes: g.worked("washes")?, mistings: g.worked("mistings")?, people: g.worked("people")?, days: g.worked("days")? })
}

pub(super) fn labor(g: &Group) -> Option<LaborPlan> {
    Some(LaborPlan {
        cure: g.worked("cure")?,
        passes: g.worked("passes")?,
        people: g.worked("people")?,
        days: g.worked("days")?,
        shift: g.worked("shift")?,
    })
}

pub(super) fn tolerances(g: &Group) -> Option<Tolerances> {
    Some(Tolerances { thickness: g.worked("thickness")?, waste: g.worked("waste")?, air: g.worked("air")?, bag: g.worked("bag")? })
}

pub(super) fn cure(g: &Group) -> Option<CurePlan> {
    Some(CurePlan {
        keeper: g.text("keeper")?,
        next: g.words("next")?,
        asks: g.day("asks"),
        weekends: g.yes("weekends"),
        away: g.days("away"),
        stand_in: g.text("stand_in"),
        cover: g.text("cover"),
        done: g.day("done"),
    })
}
