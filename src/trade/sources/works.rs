//! Sources of labour, money, lath, finishing, lifting and the log.

use super::{Basis, Source};

/// The sources.
pub const WORKS: &[Source] = &[
    Source {
        key: "published-limits",
        citation: "limits of building codes, a Navy training manual and trade texts for plaster, veneer and concrete, each named with its row",
        basis: Basis::NeighbourStandard,
        formulas: &["F19 margin"],
    },
    Source {
        key: "weight-compared",
        citation: "a stated weight less the wall's; weight times standard gravity",
        basis: Basis::Geometry,
        formulas: &["F18 left", "F18 pressure"],
    },
    Source {
        key: "heaviest-patch",
        citation: "the heaviest 4 × 8 ft of a wall, in its most unfavourable place: common practice, no source",
        basis: Basis::CommonPractice,
        formulas: &["F18 heaviest patch"],
    },
    Source {
        key: "lath-count",
        citation: "area over what a sheet, a fastener or a roll covers, and a share for waste: arithmetic; the shares are common practice, \
                   no source (a site of trade calculators gives 5 % for lath)",
        basis: Basis::CommonPractice,
        formulas: &["F19 net sheet", "F19 sheets", "F19 fasteners", "F19 paper"],
    },
    Source {
        key: "panel-count",
        citation: "the fewest equal panels within given limits",
        basis: Basis::Geometry,
        formulas: &[
            "F19 panels",
            "F19 rows",
            "F19 panel height",
            "F19 panel length",
            "F19 panel area",
            "F19 panel ratio",
            "F19 upright joints",
            "F19 level joints",
            "F19 joint run",
            "F19 panel count",
            "F19 joint count",
            "F19 face height",
            "F19 face width",
        ],
    },
    Source {
        key: "developed-surface",
        citation: "real surface times coats over coverage, and a share for pails and rollers: common practice, no source",
        basis: Basis::CommonPractice,
        formulas: &["F20 developed", "F20 sealer", "F20 cans"],
    },
    Source {
        key: "site-water",
        citation: "mixing at the limit, wash-outs, misting and washing of people: common practice, no source",
        basis: Basis::CommonPractice,
        formulas: &["F21 mix water", "F21 wash-out", "F21 misting", "F21 people", "F21 site water"],
    },
    Source {
        key: "labour",
        citation: "area over pace, and never less than the crew's days: common practice, no source",
        basis: Basis::CommonPractice,
        formulas: &["F15 task", "F15 tender", "F15 tasks", "F15 crew", "F15 labour"],
    },
    Source {
        key: "cost",
        citation: "quantities times the author's prices, and a markup: common practice, no source",
        basis: Basis::CommonPractice,
        formulas: &["F22 loads", "F22 area", "F22 labour", "F22 subtotal", "F22 price", "F22 per area"],
    },
    Source {
        key: "lifting-equation",
        citation: "revised lifting equation of the US institute for occupational safety (1991, publication 94-110); its frequency table \
                   and bounds recalled, not re-read",
        basis: Basis::NeighbourStandard,
        formulas: &[
            "F26 reach",
            "F26 height",
            "F26 travel",
            "F26 way",
            "F26 twist",
            "F26 frequency",
            "F26 coupling",
            "F26 hundredths",
            "F26 advised",
            "F26 worse end",
            "F26 index",
        ],
    },
    Source { key: "floor-load", citation: "weight over footprint", basis: Basis::Geometry, formulas: &["F26 pallet", "F26 floor load"] },
    Source {
        key: "platform",
        citation: "the scaffold's own tag times its deck, less what stands on it; a competent person rules",
        basis: Basis::CommonPractice,
        formulas: &["F26 platform", "F26 on deck", "F26 left", "F26 allowed"],
    },
    Source {
        key: "error-sum",
        citation: "independent relative errors added in squares",
        basis: Basis::Geometry,
        formulas: &["F27 relative", "F27 air", "F27 total", "F27 share", "F27 more pins"],
    },
    Source {
        key: "log-trend",
        citation: "least squares over the numbers of the batches",
        basis: Basis::Geometry,
        formulas: &["F23 slope", "F23 off target"],
    },
    Source {
        key: "individuals-chart",
        citation: "individuals and moving-range chart of quality control (NIST handbook of statistical methods, 6.3.2.2)",
        basis: Basis::NeighbourStandard,
        formulas: &[
            "F23 moving range",
            "F23 width",
            "F23 d2",
            "F23 range width",
            "F23 mean",
            "F23 mean range",
            "F23 upper",
            "F23 lower",
            "F23 upper range",
        ],
    },
    Source {
        key: "learned-waste",
        citation: "waste of a finished wall, blended with the waste planned before by loads: common practice, no source",
        basis: Basis::CommonPractice,
        formulas: &["F24 net", "F24 planned", "F24 waste", "F24 blend"],
    },
    Source {
        key: "class-kits",
        citation: "counts by roster: common practice, no source",
        basis: Basis::CommonPractice,
        formulas: &["F25 teams", "F25 loads", "F25 gloves", "F25 handouts"],
    },
];
