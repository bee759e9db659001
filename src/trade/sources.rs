//! Where each formula comes from, and how much that is worth.

mod air;
mod cure;
mod day;
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
            "F26 part of a bag",
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
        key: "open-time-halving",
        citation: "open time halves every 20 °F: common practice, no source; the mix sheet's own table wins",
        basis: Basis::CommonPractice,
        formulas: &["F13 factor", "F13 open time", "F13 carve time"],
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
    SOURCES.iter().chain(air::SOURCES).chain(cure::SOURCES).chain(day::SOURCES).chain(works::WORKS)
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
mod tests;
