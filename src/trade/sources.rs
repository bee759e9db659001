//! Where each formula comes from, and how much that is worth.

mod cure;
mod works;

/// How far a formula can be leaned on.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Basis {
    /// A standard for this work says so.
    Standard,
    /// A standard for other work says so: concrete, signs, ordinary mortar.
    NeighbourStandard,
    /// The mix's own sheet decides; the formula only carries it through.
    MixSheet,
    /// What crews do; no published source was found.
    CommonPractice,
    /// Geometry or plain arithmetic.
    Geometry,
}

impl Basis {
    /// The words printed beside a figure.
    pub fn words(self) -> &'static str {
        match self {
            Basis::Standard => "standard",
            Basis::NeighbourStandard => "neighbour standard",
            Basis::MixSheet => "mix sheet",
            Basis::CommonPractice => "common practice, no source",
            Basis::Geometry => "geometry",
        }
    }
}

/// One source.
#[derive(Debug)]
pub struct Source {
    /// Key that docs and figures name.
    pub key: &'static str,
    /// What says so.
    pub citation: &'static str,
    /// How far it can be leaned on.
    pub basis: Basis,
    /// Keys of the formulas that rest on it.
    pub formulas: &'static [&'static str],
}

/// Sources of walls, mud and bags; see [`all`].
pub const SOURCES: &[Source] = &[
    Source {
        key: "geometry",
        citation: "plane and solid geometry",
        basis: Basis::Geometry,
        formulas: &[
            "F1 rectangle",
            "F1 gable",
            "F1 trapezoid",
            "F1 circle",
            "F1 semicircular opening",
            "F1 core radius",
            "F1 radius",
            "F1 angle",
            "F1 arc",
            "F1 segment",
            "F1 segmental opening",
            "F1 column",
            "F1 half column",
            "F1 slant",
            "F1 frustum",
            "F1 reveal",
            "F1 perimeter",
            "F1 perimeter with sill",
            "F1 circumference",
            "F1 leg",
            "F1 trapezoid perimeter",
            "F1 polygon",
            "F1 edge",
            "F1 polygon perimeter",
            "F1 extent",
            "F1 soffit",
            "F3 annulus",
            "F3 half annulus",
            "F3 cone annulus",
            "F3 face radius",
            "F3 ratio to flat",
            "F3 thickness",
            "F3 times",
            "F3 total",
            "F7 total",
            "F20 groove",
        ],
    },
    Source {
        key: "net-area",
        citation: "every opening deducted at its real size, every coated return added: common practice, no source for carved \
                   work; a US Navy training manual (NAVEDTRA 14045, ch. 4) deducts openings the same way for masonry",
        basis: Basis::CommonPractice,
        formulas: &["F1 net", "F1 times", "F1 total"],
    },
    Source {
        key: "is-1200-12",
        citation: "IS 1200 (Part XII):1976, plastering: openings up to 0.5 m2, over 0.5 to 3 m2, over 3 m2; read in summaries, \
                   the standard itself was not; what it means for one coated face is our reading",
        basis: Basis::NeighbourStandard,
        formulas: &["F1 IS deduction", "F1 IS reveals"],
    },
    Source {
        key: "reed-1878",
        citation: "S. B. Reed, Modern House-Plans for Everybody (1878), note to the estimates: every opening deducted, each at \
                   least 2 yd2",
        basis: Basis::NeighbourStandard,
        formulas: &["F1 Reed deduction"],
    },
    Source {
        key: "relief-fill",
        citation: "mean thickness from the fill of the relief band: common practice, no source",
        basis: Basis::CommonPractice,
        formulas: &["F2 mean", "F2 fill"],
    },
    Source {
        key: "waste-divided",
        citation: "each waste is a share of what is mixed, so it divides: arithmetic; the shares are common practice, no source",
        basis: Basis::CommonPractice,
        formulas: &["F2 applied", "F2 mixed", "F2 mixed volume"],
    },
    Source {
        key: "sample-statistics",
        citation: "mean, standard deviation and standard error of a sample",
        basis: Basis::Geometry,
        formulas: &["F2 grid mean", "F2 deviation", "F2 standard error", "F2 fill error", "F2 points"],
    },
    Source {
        key: "scratch-key",
        citation: "mud pressed through expanded lath counted as a thickness: common practice, no source; an estimating text \
                   (Estimating in Building Construction, ex. 16-5) allows 8 ft3 in 100 yd2, 0.107 in",
        basis: Basis::CommonPractice,
        formulas: &["F3 scratch", "F3 scratch annulus", "F3 half scratch annulus", "F3 scratch cone"],
    },
    Source { key: "lift-limit", citation: "the mix sheet's greatest lift", basis: Basis::MixSheet, formulas: &["F3 lifts"] },
    Source {
        key: "absolute-volume",
        citation: "absolute-volume method of concrete proportioning (ACI 211.1 sample problem; NAVEDTRA 14070, ch. 17): volume = \
                   mass ÷ (relative density × water constant)",
        basis: Basis::NeighbourStandard,
        formulas: &["F4 water mass", "F4 absolute volume", "F4 solids", "F4 yield", "F4 dry load", "F4 wet load", "F4 wet density"],
    },
    Source {
        key: "gravimetric-air",
        citation: "air from a weighed measure against the air-free density (method of ASTM C185)",
        basis: Basis::NeighbourStandard,
        formulas: &["F4 air"],
    },
    Source {
        key: "whole-and-half-loads",
        citation: "loads bought and mixed whole, or halved on a scale: common practice, no source",
        basis: Basis::CommonPractice,
        formulas: &["F5 need", "F5 loads", "F5 slack", "F6 part load", "F6 bags", "F6 load mass"],
    },
    Source {
        key: "mixer-fill",
        citation: "a mixer's usable share of its drum: common practice, no source; the mass rating is the maker's",
        basis: Basis::CommonPractice,
        formulas: &[
            "F6 by volume",
            "F6 by mass",
            "F6 usable",
            "F6 batch volume",
            "F6 capacity",
            "F6 batches",
            "F6 full batches",
            "F6 remainder",
        ],
    },
    Source {
        key: "water-by-loads",
        citation: "the mix sheet's water per load, times the loads",
        basis: Basis::MixSheet,
        formulas: &["F6 water", "F8 ladder", "F8 steps of water", "F8 batch start", "F8 left to limit"],
    },
    Source {
        key: "charging-order",
        citation: "water, half the mortar, all the additive, the rest of the mortar: common practice, no source; the mix sheet's \
                   own order wins",
        basis: Basis::CommonPractice,
        formulas: &["F6 first mortar", "F6 rest of mortar"],
    },
    Source {
        key: "reserve",
        citation: "a share of the need and never less than a stated least: common practice, no source",
        basis: Basis::CommonPractice,
        formulas: &["F7 bags", "F7 spare", "F7 weight", "F7 pallets", "F7 loose bags", "F7 trips"],
    },
    Source {
        key: "carry-over",
        citation: "the next batch starts with the water the last one ended with, under the mix sheet's limit: common practice, no source",
        basis: Basis::CommonPractice,
        formulas: &["F8 steps", "F8 next start"],
    },
    Source {
        key: "water-index",
        citation: "ratios of water to dry mass and to the mix sheet's own water: common practice, no source; no strength follows",
        basis: Basis::CommonPractice,
        formulas: &["F9 water to dry", "F9 index", "F9 allowance used"],
    },
    Source {
        key: "hyland-wexler",
        citation: "saturation pressure after Hyland and Wexler, constants as in ASHRAE Handbook Fundamentals, ch. 1 (constants \
                   recalled, not re-read; within 0.03 % of that chapter's table and 0.07 % of the CRC Handbook's)",
        basis: Basis::NeighbourStandard,
        formulas: &[
            "F11 absolute temperature",
            "F11 over water",
            "F11 over ice",
            "F11 vapour pressure",
            "F11 dew point to start with",
            "F11 frost point to start with",
            "F11 dew point",
        ],
    },
    Source {
        key: "magnus",
        citation: "Magnus's form with the constants of Alduchov and Eskridge, 0.61094 kPa (recalled, not re-read), 17.625 and 243.04 °C",
        basis: Basis::NeighbourStandard,
        formulas: &["F11 magnus", "F11 magnus dew point"],
    },
    Source {
        key: "tetens",
        citation: "Tetens's form as in FAO Irrigation and Drainage Paper 56, eq. 11",
        basis: Basis::NeighbourStandard,
        formulas: &["F11 tetens"],
    },
    Source {
        key: "uno",
        citation: "P. J. Uno, Plastic Shrinkage Cracking and Evaporation Formulas, ACI Materials Journal 95-M34, 1998: for concrete \
                   laid flat",
        basis: Basis::NeighbourStandard,
        formulas: &[
            "F11 evaporation",
            "F11 uno si",
            "F11 uno us",
            "F11 rate shown",
            "F11 drive",
            "F11 wind at the limit",
            "F11 greatest wind",
            "F11 least humidity",
        ],
    },
    Source {
        key: "menzel",
        citation: "C. A. Menzel, PCA, 1954, repeated in ACI 305R: for concrete laid flat (recalled, not re-read; the SI constants \
                   0.315 and 0.060 were read in public listings)",
        basis: Basis::NeighbourStandard,
        formulas: &["F11 menzel us", "F11 menzel si", "F11 least humidity, menzel"],
    },
    Source {
        key: "curing-guide",
        citation: "FHWA-RD-02-099, guide for curing of pavements, 2005 (recalled, not re-read)",
        basis: Basis::NeighbourStandard,
        formulas: &["F11 curing guide"],
    },
    Source {
        key: "mix-heat",
        citation: "heat balance of a batch with 0.22 for dry solids (US Army TM 5-852-4, ch. 4; ACI 306R form): for concrete",
        basis: Basis::NeighbourStandard,
        formulas: &["F12 mix temperature", "F12 water temperature", "F12 water share", "F12 dry share", "F12 moves"],
    },
    Source {
        key: "ice",
        citation: "143.5 Btu/lb to melt ice (CRD-C 307-91); fair up to about 20 % ice (Jabbar, Wasit J. Eng. Sci. 5(2), 2017)",
        basis: Basis::NeighbourStandard,
        formulas: &["F12 melting", "F12 ice"],
    },
    Source {
        key: "open-time-halving",
        citation: "open time halves every 20 °F: common practice, no source; the mix sheet's own table wins",
        basis: Basis::CommonPractice,
        formulas: &["F13 factor", "F13 open time", "F13 carve time"],
    },
    Source {
        key: "placing",
        citation: "area by thickness, time by the crew's own pace, in whole minutes to the safe side: common practice, no source",
        basis: Basis::CommonPractice,
        formulas: &[
            "F14 batch area",
            "F14 crew pace",
            "F14 placing",
            "F14 age",
            "F14 slack",
            "F14 loads in time",
            "F14 whole loads in time",
        ],
    },
    Source {
        key: "carve-window",
        citation: "carving follows placing, first in first out, while the mud is neither too soft nor closed: common practice, no source",
        basis: Basis::CommonPractice,
        formulas: &["F16 split crew", "F16 shift", "F16 same crew", "F16 planned area", "F16 need of days", "F16 days"],
    },
    Source {
        key: "batch-table",
        citation: "one mixer, the next batch mixed while the last is placed; every clock in whole minutes to the safe side: common \
                   practice, no source",
        basis: Basis::CommonPractice,
        formulas: &[
            "F16 mud of the day",
            "F16 last loads",
            "F16 last area",
            "F16 late start",
            "F16 water in",
            "F16 after break",
            "F16 mixed",
            "F16 on wall",
            "F16 placed",
            "F16 discard",
            "F16 slack",
            "F16 opens",
            "F16 closes",
            "F16 carving",
            "F16 carve start",
            "F16 carve end",
            "F16 done",
            "F16 area of the day",
        ],
    },
    Source {
        key: "sun",
        citation: "low-precision series for the sun's place after Meeus, Astronomical Algorithms, as public solar calculators use \
                   them (recalled, not re-read); turning sky and upright wall by spherical trigonometry",
        basis: Basis::Geometry,
        formulas: &[
            "F16 century",
            "F16 mean longitude",
            "F16 mean anomaly",
            "F16 eccentricity",
            "F16 centre",
            "F16 moon's node",
            "F16 apparent longitude",
            "F16 obliquity",
            "F16 declination",
            "F16 tangent",
            "F16 equation of time",
            "F16 noon",
            "F16 cosine of the half day",
            "F16 half day",
            "F16 sun rises",
            "F16 sun sets",
            "F16 sunrise",
            "F16 sunset",
            "F16 face along",
            "F16 face across",
            "F16 face level",
            "F16 face swing",
            "F16 middle of shade",
            "F16 reach of shade",
            "F16 sun on face",
        ],
    },
    Source {
        key: "dead-load",
        citation: "thickness times density, layer by layer; wet density stands for dry, on the safe side",
        basis: Basis::Geometry,
        formulas: &["F18 coat weight", "F18 dead load", "F18 base"],
    },
    Source {
        key: "letter-height",
        citation: "capital height as a share of reading distance, 1/300 for message text (sign practice of ANSI Z535.2, recalled, \
                   not re-read), used here for cards",
        basis: Basis::NeighbourStandard,
        formulas: &["F28 cap height", "F28 type size"],
    },
    Source { key: "line-budget", citation: "lines that fit a height", basis: Basis::Geometry, formulas: &["F28 lines"] },
];

/// Every source.
pub fn all() -> impl Iterator<Item = &'static Source> {
    SOURCES.iter().chain(works::WORKS).chain(cure::SOURCES)
}

/// The source called `key`.
pub fn find(key: &str) -> Option<&'static Source> {
    all().find(|s| s.key == key)
}

/// The source that a formula, such as `F1 gable`, rests on.
pub fn of(formula: &str) -> Option<&'static Source> {
    all().find(|s| s.formulas.contains(&formula))
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::collections::BTreeSet;

    const FILES: &[&str] = &[
        include_str!("arches.rs"),
        include_str!("batch.rs"),
        include_str!("carry.rs"),
        include_str!("clocks.rs"),
        include_str!("coats.rs"),
        include_str!("dew_point.rs"),
        include_str!("drying_limits.rs"),
        include_str!("evaporation.rs"),
        include_str!("cost.rs"),
        include_str!("error_budget.rs"),
        include_str!("finish.rs"),
        include_str!("floor.rs"),
        include_str!("joints.rs"),
        include_str!("kits.rs"),
        include_str!("labour.rs"),
        include_str!("lath.rs"),
        include_str!("learning.rs"),
        include_str!("day.rs"),
        include_str!("cone.rs"),
        include_str!("edges.rs"),
        include_str!("legible.rs"),
        include_str!("lifting.rs"),
        include_str!("lifting_tables.rs"),
        include_str!("limits.rs"),
        include_str!("loads.rs"),
        include_str!("mix_targets.rs"),
        include_str!("mix_temperature.rs"),
        include_str!("log.rs"),
        include_str!("net.rs"),
        include_str!("open_time.rs"),
        include_str!("placing.rs"),
        include_str!("opening_rule.rs"),
        include_str!("polygon.rs"),
        include_str!("purchase.rs"),
        include_str!("relief.rs"),
        include_str!("site_water.rs"),
        include_str!("sums.rs"),
        include_str!("sun.rs"),
        include_str!("sun_face.rs"),
        include_str!("table.rs"),
        include_str!("takeoff.rs"),
        include_str!("vapour.rs"),
        include_str!("water.rs"),
        include_str!("weight.rs"),
        include_str!("window.rs"),
        include_str!("yields.rs"),
    ];

    fn own(file: &str) -> &str {
        file.split("#[cfg(test)]").next().unwrap()
    }

    #[test]
    fn every_formula_has_one_source_and_every_source_a_formula() {
        let mut listed = BTreeSet::new();
        for source in all() {
            for formula in source.formulas {
                assert!(listed.insert(*formula), "{formula} is listed twice");
            }
        }
        let mut used = BTreeSet::new();
        for file in FILES {
            used.extend(own(file).split('"').filter(|t| {
                let digits = t.strip_prefix('F').and_then(|t| t.split_once(' ')).map_or("", |(n, _)| n);
                !digits.is_empty() && digits.bytes().all(|b| b.is_ascii_digit())
            }));
        }
        assert_eq!(used.symmetric_difference(&listed).collect::<Vec<_>>(), Vec::<&&str>::new());
    }

    #[test]
    fn every_public_function_names_its_source() {
        for file in FILES {
            let functions = own(file).matches("\npub fn ").count();
            let named: Vec<&str> = own(file).split("Source: `").skip(1).filter_map(|t| t.split('`').next()).collect();
            assert_eq!(functions, named.len(), "{named:?}");
            for key in named {
                assert!(find(key).is_some(), "no source is called {key}");
            }
            assert_eq!(own(file).matches("/// ```\n/// use ").count(), functions, "an example for each of {}", functions);
        }
    }
}
mod tests;
