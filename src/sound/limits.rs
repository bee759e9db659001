//! Limits that no mix states, each with its source: the only place where a check may take a number from.

use crate::job::Distance;
use crate::quantity::parse::{self, Said};
use crate::quantity::{Num, Quantity};

const PLAUSIBLE: &str = "common practice, no source: what wet mortars with and without light grains weigh and yield";

/// One limit.
#[derive(Debug)]
pub struct Limit {
    /// Key.
    pub key: &'static str,
    /// The value, in the grammar of authors.
    pub value: &'static str,
    /// What says so, and how sure we are of it.
    pub source: &'static str,
}

/// Least time of machine mixing.
pub const MIXING: &str = "least mixing time";
/// Wet density that a mortar has at least.
pub const DENSITY_LEAST: &str = "least wet density";
/// Wet density that a mortar has at most.
pub const DENSITY_MOST: &str = "most wet density";
/// Least yield of [`YIELD_OF`] dry.
pub const YIELD_LEAST: &str = "least yield";
/// Most yield of [`YIELD_OF`] dry.
pub const YIELD_MOST: &str = "most yield";
/// Dry powder that the yields speak of.
pub const YIELD_OF: &str = "dry powder of a yield";
/// How far a weighed pail may be off the density that was worked.
pub const WEIGHED: &str = "weighed density off";

/// Air and base while mud is placed, and air for two days after it.
pub const COLD: &str = "air at placing and for 48 h";
/// Air for a day after the set.
pub const FREEZING: &str = "air for 24 h after set";
/// Air that calls for hot-weather measures, whatever the wind.
pub const HOT_AIR: &str = "air, hot weather";
/// Air that calls for them in wind.
pub const HOT_IN_WIND: &str = "air, hot weather in wind";
/// That wind.
pub const HOT_WIND: &str = "wind, hot weather";
/// Mud at its hottest.
pub const MUD_HOT: &str = "mix temperature, most";
/// Mud at its coldest.
pub const MUD_COLD: &str = "mix temperature, least";
/// Evaporation that a stiff mix begins to suffer from.
pub const DRYING: &str = "evaporation, watch";
/// Evaporation that wants a screen and fog.
pub const DRYING_MOST: &str = "evaporation, most";
/// Chance of rain that a fresh face is covered for.
pub const RAIN: &str = "chance of rain";
/// Base that drinks the mix at once.
pub const BASE_HOT: &str = "base temperature, most";
/// Base that is frozen.
pub const BASE_FROZEN: &str = "base temperature, frozen";
/// Wind that carries spray away.
pub const SPRAY_WIND: &str = "wind, spraying";
/// Age of a forecast at the first water.
pub const FORECAST: &str = "age of a forecast";
/// Coldest mixing water that a site can count on.
pub const WATER_COLD: &str = "mixing water, least";
/// Hottest mixing water.
pub const WATER_HOT: &str = "mixing water, most";
const HOT_WEATHER: &str = "TMS 602, hot-weather construction (recalled; a masonry rule, the nearest there is)";
/// Weight of carved cement on a framed base that no engineer has looked at.
pub const FRAMED: &str = "weight on framing";
/// Weight of carved cement on any base that no engineer has looked at.
pub const ANYWHERE: &str = "weight on any base";
/// How far the bags of a load may be off the design ratio.
pub const RATIO: &str = "ratio off design";

/// How many times the advised weight a lift may be before somebody looks at it.
pub const LIFT: &str = "lift index";
/// How many times the advised weight a lift may be before nobody does it without a named measure.
pub const LIFT_FAR: &str = "lift index, far over";
/// Height of an open edge from which a fall is guarded.
pub const EDGE: &str = "open edge";
/// Heat index from which the caution for heat is carried.
pub const HEAT_INDEX: &str = "heat index";
/// Air from which water and shade are planned.
pub const HOT: &str = "hot work";
/// Layers of water-resistive barrier over wood outdoors.
pub const BARRIER: &str = "layers of barrier over wood";
/// Foot of the work above earth.
pub const WEEP_EARTH: &str = "weep above earth";
/// Foot of the work above paving.
pub const WEEP_PAVING: &str = "weep above paving";
/// Spacing of fasteners along the framing.
pub const FASTENERS: &str = "fastener spacing";
/// Spacing of the framing under lath.
pub const FRAMING: &str = "framing spacing";
/// Longest side of a panel between control joints.
pub const PANEL_SIDE: &str = "side of a panel";
/// Largest flat panel.
pub const PANEL_AREA: &str = "area of a panel";
/// Largest panel on soffits and curved work.
pub const CURVED_AREA: &str = "area of a curved or overhead panel";
/// Longer side of a panel over its shorter.
pub const PANEL_RATIO: &str = "sides of a panel";
/// Span over the most that framing may bend.
pub const DEFLECTION: &str = "bending of framing";
/// Highest pH under color and sealer.
pub const PH: &str = "pH under color and sealer";
/// The least that a coat may be anywhere.
pub const LEAST_COAT: &str = "least of any coat";
/// Carve coat from which the scratch coat must be raked rough.
pub const ROUGH_FROM: &str = "carve coat that wants a rough rake";
/// The least scratch coat over lath.
pub const ON_LATH: &str = "scratch coat on lath";
/// The least that stays under a groove.
pub const GROOVE_COVER: &str = "cover under a groove";
/// A fill below which nobody has seen a wall.
pub const FILL_LOW: &str = "least usual fill";
/// A fill above which there is hardly any relief.
pub const FILL_HIGH: &str = "most usual fill";
/// Standard errors that chance explains.
pub const BY_CHANCE: &str = "standard errors by chance";
/// Start water that is usual for [`DRY`] of dry mix.
pub const USUAL_WATER: &str = "usual start water";
/// The dry mass that [`USUAL_WATER`] is for.
pub const DRY: &str = "dry mass of the usual start water";
/// How far a start may be off what is usual before the mix says why.
pub const OFF_USUAL: &str = "start water off usual";
/// Least start water, as a share of the start.
pub const LEAST_OF_START: &str = "least start water of the start";
/// Most of one late addition, for a load.
pub const LATE_WATER: &str = "one late addition";
/// Most of one late addition, as a share of the start.
pub const LATE_SHARE: &str = "one late addition of the start";
/// Warmest mixing water.
pub const HOT_WATER: &str = "mixing water";
/// Least that an order leaves over the need, as a share of it.
pub const SPARE_SHARE: &str = "spare of an order";
/// Least that an order of mortar leaves over the need.
pub const SPARE_LOADS: &str = "spare loads of an order";
/// Least reserve.
pub const RESERVE: &str = "reserve";
/// Least waste that a carved wall has had.
pub const WASTE_LEAST: &str = "least waste";
/// Most waste that anybody plans with.
pub const WASTE_MOST: &str = "most waste";
/// How old a price may be.
pub const PRICE_AGE: &str = "age of a price";
/// Least share of what a crew could carve in a day that a plan leaves free.
pub const SPARE: &str = "spare of a day";

/// Every limit.
pub const LIMITS: &[Limit] = &[
    Limit { key: COLD, value: "40 °F", source: "IBC 2512.4: above 40 °F while plaster is applied and for 48 h after; read in a reprint" },
    Limit { key: FREEZING, value: "32 °F", source: "IBC 2512.4: kept from freezing for at least 24 h after set; read in a reprint" },
    Limit { key: HOT_AIR, value: "100 °F", source: HOT_WEATHER },
    Limit { key: HOT_IN_WIND, value: "90 °F", source: HOT_WEATHER },
    Limit { key: HOT_WIND, value: "8 mph", source: HOT_WEATHER },
    Limit { key: MUD_HOT, value: "120 °F", source: "TMS 602, mortar in hot and cold weather (recalled; a masonry rule)" },
    Limit { key: MUD_COLD, value: "40 °F", source: "TMS 602, mortar in cold weather (recalled; a masonry rule)" },
    Limit { key: DRYING, value: "0.10 lb/ft2/h", source: "common practice for stiff mixes that do not bleed, no source" },
    Limit {
        key: DRYING_MOST,
        value: "0.20 lb/ft2/h",
        source: "ACI 305R, precautions against plastic shrinkage (second-hand; a slab rule, an index on walls)",
    },
    Limit { key: RAIN, value: "30 %", source: "common practice, no source" },
    Limit { key: BASE_HOT, value: "100 °F", source: "common practice, no source" },
    Limit {
        key: BASE_FROZEN,
        value: "32 °F",
        source: "no plaster on frozen bases: IBC 2512.4 in spirit, the number is the freezing point of water",
    },
    Limit { key: SPRAY_WIND, value: "8 mph", source: "common practice, no source; the data sheet of what is sprayed wins" },
    Limit { key: FORECAST, value: "12 h", source: "house rule, no source: batch sizes and windows come from the forecast" },
    Limit { key: WATER_COLD, value: "34 °F", source: "common practice, no source: colder water is ice" },
    Limit { key: WATER_HOT, value: "140 °F", source: "ACI 306R, mixing water in cold weather (recalled)" },
    Limit {
        key: MIXING,
        value: "3 min",
        source: "machine mixing of 3 to 5 min after everything is in, ASTM C270 and the usual bag directions (recalled, not verified against a copy)",
    },
    Limit { key: DENSITY_LEAST, value: "85 lb/ft3", source: PLAUSIBLE },
    Limit { key: DENSITY_MOST, value: "140 lb/ft3", source: PLAUSIBLE },
    Limit { key: YIELD_LEAST, value: "0.75 ft3", source: PLAUSIBLE },
    Limit { key: YIELD_MOST, value: "1.15 ft3", source: PLAUSIBLE },
    Limit { key: YIELD_OF, value: "100 lb", source: PLAUSIBLE },
    Limit { key: WEIGHED, value: "5 %", source: "common practice, no source: the doubt that a count of batches leaves anyway" },
    Limit {
        key: FRAMED,
        value: "15 lb/ft2",
        source: "adhered veneer, prescriptive limit of TMS 402 up to the 2016 edition (recalled; the building codes of the 1970s say the same)",
    },
    Limit {
        key: ANYWHERE,
        value: "30 lb/ft2",
        source: "adhered veneer on modified mortars, newer editions of TMS 402 (not verified against a copy; the engineer's edition decides)",
    },
    Limit { key: RATIO, value: "2 %", source: "common practice, no source" },
    Limit {
        key: LIFT,
        value: "1",
        source: "lifting index of the NIOSH lifting equation, revised 1991 (recalled): over 1 some of the healthy workers strain themselves",
    },
    Limit {
        key: LIFT_FAR,
        value: "3",
        source: "lifting index of the NIOSH lifting equation, revised 1991 (recalled): over 3 nearly everybody strains themselves",
    },
    Limit { key: EDGE, value: "6 ft", source: "OSHA 29 CFR 1926.501(b)(1), open edges (recalled); a state plan may be stricter" },
    Limit {
        key: HEAT_INDEX,
        value: "80 °F",
        source: "first trigger of the heat rule that OSHA proposed in 2024 (recalled); a local rule may set it lower",
    },
    Limit {
        key: HOT,
        value: "90 °F",
        source: "common practice, no source; the second trigger of the heat rule that OSHA proposed in 2024 is a heat index of the same number (recalled)",
    },
    Limit { key: BARRIER, value: "2", source: "IBC 2510.6, water-resistive barrier over wood sheathing (recalled)" },
    Limit { key: WEEP_EARTH, value: "4 in", source: WEEP },
    Limit { key: WEEP_PAVING, value: "2 in", source: WEEP },
    Limit { key: FASTENERS, value: "7 in", source: FASTENED },
    Limit { key: FRAMING, value: "24 in", source: FASTENED },
    Limit { key: PANEL_SIDE, value: "18 ft", source: C1063 },
    Limit { key: PANEL_AREA, value: "144 ft2", source: C1063 },
    Limit { key: CURVED_AREA, value: "100 ft2", source: C1063 },
    Limit { key: PANEL_RATIO, value: "2.5", source: C1063 },
    Limit {
        key: DEFLECTION,
        value: "360",
        source: "L/360, annex of ASTM C926 for plaster on framing (recalled, not verified against a copy)",
    },
    Limit {
        key: PH,
        value: "10",
        source: "common practice for coatings on fresh cement, no source; the sheet of the color or sealer decides",
    },
    Limit { key: LEAST_COAT, value: "1/4 in", source: "common practice, no source: a thinner edge dries out before it cures" },
    Limit { key: ROUGH_FROM, value: "1 in", source: "common practice, no source: a bond without teeth does not carry a deep coat" },
    Limit {
        key: ON_LATH,
        value: "3/8 in",
        source: "scratch coat over metal base in the guide specification UFGS 09 24 23 (second-hand, not verified against a copy)",
    },
    Limit { key: GROOVE_COVER, value: "1/4 in", source: "common practice, no source: less cracks along the groove and lets water in" },
    Limit { key: FILL_LOW, value: "30 %", source: FILLS },
    Limit { key: FILL_HIGH, value: "95 %", source: FILLS },
    Limit { key: BY_CHANCE, value: "2", source: "textbook statistics: two standard errors hold about 19 of 20 repeats" },
    Limit { key: RATIO, value: "2 %", source: PRACTICE },
    Limit { key: USUAL_WATER, value: "1.5 gal", source: PRACTICE },
    Limit { key: DRY, value: "100 lb", source: PRACTICE },
    Limit { key: OFF_USUAL, value: "15 %", source: PRACTICE },
    Limit { key: LEAST_OF_START, value: "60 %", source: PRACTICE },
    Limit { key: LATE_WATER, value: "1 cup", source: PRACTICE },
    Limit { key: LATE_SHARE, value: "5 %", source: PRACTICE },
    Limit {
        key: HOT_WATER,
        value: "140 °F",
        source: "ACI 306R, cold weather concreting: mixing water (recalled; not verified against a copy)",
    },
    Limit { key: SPARE_SHARE, value: "2 %", source: PRACTICE },
    Limit { key: SPARE_LOADS, value: "1/2 load", source: PRACTICE },
    Limit { key: RESERVE, value: "1 load", source: PRACTICE },
    Limit { key: WASTE_LEAST, value: "3 %", source: PRACTICE },
    Limit { key: WASTE_MOST, value: "35 %", source: PRACTICE },
    Limit { key: PRICE_AGE, value: "60 days", source: PRACTICE },
    Limit { key: SPARE, value: "10 %", source: "common practice, no source" },
    Limit { key: "WALL", value: "28", source: SIGNS },
    Limit { key: "HAND", value: "14", source: SIGNS },
    Limit { key: "DESK", value: "10", source: SIGNS },
];

const WEEP: &str = "IBC 2512.1.2, weep screeds (recalled)";
const FASTENED: &str = "IRC R703.7.1 as a city reprints it, neighbor rule of flat plaster (not verified against the code itself)";
const C1063: &str = "ASTM C1063 as a maker of joints prints its rules, neighbor rule of flat plaster (not verified against a copy)";
const FILLS: &str = "common practice, no source: carved textures that were measured lie between";
const PRACTICE: &str = "common practice, no source";
const SIGNS: &str = "letter height of 1/300 of the reading distance, sign practice of ANSI Z535.2 (recalled), doubled for a muddy sheet";

/// The row of a key.
pub fn find(key: &str) -> Option<&'static Limit> {
    LIMITS.iter().find(|l| l.key == key)
}

impl Limit {
    /// The value as a quantity; plain numbers, such as points of type, have no unit.
    pub fn quantity(&self) -> Option<Quantity> {
        match parse::read(self.value) {
            Ok(Said::Amount(quantity, _)) => Some(quantity),
            _ => parse::plain(self.value).ok().map(Quantity::plain),
        }
    }
}

/// The least type that operative text of a distance class may have, in points.
pub fn least_type(reads: Distance) -> Option<(Num, &'static Limit)> {
    let row = find(match reads {
        Distance::Wall => "WALL",
        Distance::Hand => "HAND",
        Distance::Desk => "DESK",
    })?;
    Some((row.quantity()?.si, row))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_limit_reads_and_names_a_source() {
        for row in LIMITS {
            assert!(row.quantity().is_some(), "{}", row.key);
            assert!(row.source.len() > 10);
        }
        assert_eq!(find(RATIO).unwrap().quantity().unwrap().si, Num::frac(1, 50));
        assert_eq!(least_type(Distance::Wall).unwrap().0, Num::int(28));
    }
}
