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

/// Every limit.
pub const LIMITS: &[Limit] = &[
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
    Limit { key: "WALL", value: "28", source: SIGNS },
    Limit { key: "HAND", value: "14", source: SIGNS },
    Limit { key: "DESK", value: "10", source: SIGNS },
];

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
