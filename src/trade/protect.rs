//! F17: what cold and hot weather call for: measures by temperature, from masonry and concrete rules.
//!
//! These are neighbours' rules: none was written for carved mud. Where a temperature stands on the edge of two
//! bands the colder one is taken.

use std::cmp::Ordering;

use crate::quantity::expr::{Duration, Length, Node, Speed, Temperature, Worked};
use crate::quantity::num::Num;
use crate::quantity::units::find_expr;
use crate::quantity::{Kind, Quantity};

/// Something to do, by a key that the dictionaries can name.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Measure {
    /// Heat sand or water so that mortar is 40 to 120 °F.
    HeatSandOrWater,
    /// Heat sand and water.
    HeatSandAndWater,
    /// Keep mortar above freezing until it is used.
    KeepMortarWarm,
    /// Heat the base to 40 °F or more.
    HeatBase,
    /// Wind breaks or an enclosure when wind is over 15 mph.
    BreakWind,
    /// An enclosure with heat, air above 32 °F.
    HeatedEnclosure,
    /// A weather-resistive cover.
    Cover,
    /// Insulating blankets or equal.
    Blankets,
    /// Kept above 32 °F in a heated enclosure or under heated blankets.
    KeepAboveFreezing,
    /// Mortar no hotter than 120 °F, fog spray three times a day for three days.
    HotMeasures,
    /// Shade materials and mix with cool water.
    ShadeAndCoolWater,
}

impl Measure {
    /// Key.
    pub fn key(self) -> &'static str {
        match self {
            Measure::HeatSandOrWater => "heat-sand-or-water",
            Measure::HeatSandAndWater => "heat-sand-and-water",
            Measure::KeepMortarWarm => "keep-mortar-warm",
            Measure::HeatBase => "heat-base",
            Measure::BreakWind => "break-wind",
            Measure::HeatedEnclosure => "heated-enclosure",
            Measure::Cover => "cover",
            Measure::Blankets => "blankets",
            Measure::KeepAboveFreezing => "keep-above-freezing",
            Measure::HotMeasures => "hot-measures",
            Measure::ShadeAndCoolWater => "shade-and-cool-water",
        }
    }
}

fn against(si: &Num, number: i64, unit: &str) -> Ordering {
    find_expr(unit).map_or(Ordering::Equal, |u| si.compare(&Quantity::of(&Num::int(number), u).si))
}

fn over(si: &Num, number: i64, unit: &str) -> bool {
    against(si, number, unit).is_gt()
}

fn constant(number: i64, unit: &str, symbol: &'static str, source: &'static str, kind: Kind) -> Node {
    let unit = find_expr(unit);
    let value = unit.map_or_else(|| Quantity::plain(Num::int(number)), |u| Quantity::of(&Num::int(number), u));
    Node::constant(value.as_kind(kind), unit, symbol, source)
}

/// What to do while working at an air temperature: above 40 °F nothing; 40 to 32 °F heat sand or water; 32 to
/// 25 °F heat both and keep mortar warm; 25 to 20 °F heat the base too and break wind; 20 °F and below a heated
/// enclosure too.
///
/// An edge belongs to the colder band. Any reading is answered. Source: `cold-masonry`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::protect::{Measure, cold_work}};
/// assert!(cold_work(&Worked::read("41 °F").unwrap()).is_empty());
/// assert_eq!(cold_work(&Worked::read("36 °F").unwrap()), [Measure::HeatSandOrWater]);
/// ```
pub fn cold_work(air: &Worked<Temperature>) -> Vec<Measure> {
    let si = &air.value().si;
    let mut measures = Vec::new();
    if over(si, 40, "°F") {
        return measures;
    }
    if over(si, 32, "°F") {
        measures.push(Measure::HeatSandOrWater);
        return measures;
    }
    measures.extend([Measure::HeatSandAndWater, Measure::KeepMortarWarm]);
    if !over(si, 25, "°F") {
        measures.extend([Measure::HeatBase, Measure::BreakWind]);
    }
    if !over(si, 20, "°F") {
        measures.push(Measure::HeatedEnclosure);
    }
    measures
}

/// What protects new work, and how long.
#[derive(Clone, Debug)]
pub struct Protection {
    /// What.
    pub measure: Measure,
    /// How long, counted from the end of the work.
    pub time: Worked<Duration>,
}

/// What covers a day's new work, by the day's mean (for grouted work its lowest): above 40 °F nothing; 40 to
/// 25 °F a cover; 25 to 20 °F blankets; below 20 °F kept above freezing. For 24 h, grouted 48 h.
///
/// The bands are recalled; the hours were read. Frost itself is looked for in the lowest reading, by
/// [`froze`](super::cure::froze). Source: `cold-masonry-after`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::protect::cold_protection};
/// let kept = cold_protection(&Worked::read("38 °F").unwrap(), false).unwrap();
/// assert_eq!((kept.measure.key(), kept.time.in_unit("h")), ("cover", 24.0));
/// ```
pub fn cold_protection(mean: &Worked<Temperature>, grouted: bool) -> Option<Protection> {
    let si = &mean.value().si;
    let measure = match (against(si, 20, "°F"), over(si, 25, "°F"), over(si, 40, "°F")) {
        (_, _, true) => return None,
        (_, true, _) => Measure::Cover,
        (Ordering::Less, ..) => Measure::KeepAboveFreezing,
        _ => Measure::Blankets,
    };
    let hours = if grouted { 48 } else { 24 };
    let time = Worked::new(constant(hours, "h", "t_protect", "TMS 602; CMHA TEK 03-01C", Kind::Plain));
    Some(Protection { measure, time })
}

/// What hot weather calls for: over 100 °F, or over 90 °F with wind over 8 mph, the hot measures; over 115 °F, or
/// over 105 °F with that wind, shade and cool water too (recalled, not re-read).
///
/// The bounds themselves do not call yet. Any reading is answered. Source: `hot-masonry`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::protect::hot_work};
/// let hot = |t, v| hot_work(&Worked::read(t).unwrap(), &Worked::read(v).unwrap()).len();
/// assert_eq!((hot("95 °F", "8 mph"), hot("95 °F", "9 mph"), hot("101 °F", "0 mph")), (0, 1, 1));
/// ```
pub fn hot_work(air: &Worked<Temperature>, wind: &Worked<Speed>) -> Vec<Measure> {
    let windy = over(&wind.value().si, 8, "mph");
    let calls = |calm: i64, breezy: i64| over(&air.value().si, calm, "°F") || windy && over(&air.value().si, breezy, "°F");
    let mut measures = Vec::new();
    if calls(100, 90) {
        measures.push(Measure::HotMeasures);
    }
    if calls(115, 105) {
        measures.push(Measure::ShadeAndCoolWater);
    }
    measures
}

/// How new concrete will be used while it is protected.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Service {
    /// Carries nothing and does not freeze later.
    Sheltered,
    /// Carries nothing and freezes later.
    Exposed,
    /// Carries part of its load and freezes later.
    PartLoad,
}

/// Days of protection in cold weather, by ACI 306R: 2, 3 or 6; `quick` (Type III cement, accelerator or more
/// cement) 1, 2 or 4.
///
/// Concrete's rule, recalled and not re-read; a carved coat dries faster than a slab. Source: `cold-concrete`.
/// ```
/// use hodbook::trade::protect::{Service, protection_days};
/// assert_eq!(protection_days(Service::Exposed, false).in_unit("day"), 3.0);
/// ```
pub fn protection_days(service: Service, quick: bool) -> Worked<Duration> {
    let days = match (service, quick) {
        (Service::Sheltered, true) => 1,
        (Service::Sheltered, false) | (Service::Exposed, true) => 2,
        (Service::Exposed, false) => 3,
        (Service::PartLoad, true) => 4,
        (Service::PartLoad, false) => 6,
    };
    Worked::new(constant(days, "day", "t_protect", "ACI 306R, protection periods (recalled, not re-read)", Kind::Plain))
}

/// Least temperature of concrete as placed and kept, by ACI 306R: 55 °F under 12 in, 50 °F to 36 in, 45 °F to 72 in,
/// 40 °F beyond.
///
/// `t` the least dimension; an edge belongs to the warmer band. Carved work is always the first line.
/// Source: `cold-concrete`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::protect::least_placed};
/// assert_eq!(least_placed(&Worked::read("2 in").unwrap()).in_unit("°F").round(), 55.0);
/// ```
pub fn least_placed(t: &Worked<Length>) -> Worked<Temperature> {
    let thicker = |inches: i64| over(&t.value().si, inches, "in");
    let degrees = match (thicker(12), thicker(36), thicker(72)) {
        (false, ..) => 55,
        (_, false, _) => 50,
        (.., false) => 45,
        _ => 40,
    };
    Worked::new(constant(degrees, "°F", "T_placed", "ACI 306R, first line of its table", Kind::Reading))
}

#[cfg(test)]
mod tests {
    use super::super::testing::q;
    use super::*;

    #[test]
    fn colder_air_calls_for_more() {
        for (air, measures) in
            [("40.1 °F", 0), ("40 °F", 1), ("32.1 °F", 1), ("0 °C", 2), ("25.1 °F", 2), ("25 °F", 4), ("20.1 °F", 4), ("20 °F", 5)]
        {
            assert_eq!(cold_work(&q(air)).len(), measures, "{air}");
        }
    }

    #[test]
    fn new_work_is_covered_by_the_day_s_mean() {
        let kept = |t: &str, grouted| cold_protection(&q(t), grouted).map(|p| (p.measure.key(), p.time.in_unit("h")));
        assert_eq!(kept("41 °F", false), None);
        assert_eq!(kept("40 °F", false), Some(("cover", 24.0)));
        assert_eq!(kept("26 °F", true), Some(("cover", 48.0)));
        assert_eq!(kept("25 °F", false), Some(("blankets", 24.0)));
        assert_eq!(kept("20 °F", false), Some(("blankets", 24.0)));
        assert_eq!(kept("19.9 °F", true), Some(("keep-above-freezing", 48.0)));
    }

    #[test]
    fn heat_and_wind_call_together() {
        let hot = |t: &str, v: &str| hot_work(&q(t), &q(v)).len();
        for (t, v, measures) in [
            ("90 °F", "20 mph", 0),
            ("90.1 °F", "8.1 mph", 1),
            ("100 °F", "8 mph", 0),
            ("100.1 °F", "0 mph", 1),
            ("105.1 °F", "9 mph", 2),
            ("115 °F", "8 mph", 1),
            ("115.1 °F", "0 mph", 2),
        ] {
            assert_eq!(hot(t, v), measures, "{t} {v}");
        }
    }

    #[test]
    fn thick_concrete_keeps_itself_warm() {
        let placed = |t: &str| format!("{:.0}", least_placed(&q(t)).in_unit("°F"));
        assert_eq!([placed("12 in"), placed("13 in"), placed("37 in"), placed("73 in")], ["55", "50", "45", "40"]);
        let days = |service, quick| protection_days(service, quick).in_unit("day");
        assert_eq!([days(Service::Sheltered, false), days(Service::Sheltered, true)], [2.0, 1.0]);
        assert_eq!([days(Service::Exposed, false), days(Service::Exposed, true)], [3.0, 2.0]);
        assert_eq!([days(Service::PartLoad, false), days(Service::PartLoad, true)], [6.0, 4.0]);
    }
}
