//! Sources of cure, maturity, proportions and colour.

use super::{Basis, Source};

/// Those sources.
pub const SOURCES: &[Source] = &[
    Source {
        key: "mix-sheet-table",
        citation: "the mix sheet's own times at temperatures; between two rows the safer one",
        basis: Basis::MixSheet,
        formulas: &["F13 table closes", "F13 table opens"],
    },
    Source {
        key: "lowest-reading",
        citation: "the lowest of the readings; water freezes at 32 °F",
        basis: Basis::Geometry,
        formulas: &["F17 coldest"],
    },
    Source {
        key: "cure-credit",
        citation: "a share of a day by its mean temperature: common practice, no source; the idea of warmth times time, datum \
                   0 °C, is that of ASTM C1074 (recalled, not re-read); no proof of strength, poor in winter",
        basis: Basis::CommonPractice,
        formulas: &["F17 day credit", "F17 credit sum", "F17 days short", "F17 calendar day", "F17 steady day"],
    },
    Source {
        key: "sheet-cure",
        citation: "the mix sheet's wet time and air time",
        basis: Basis::MixSheet,
        formulas: &["F17 sheet cure", "F17 whole days"],
    },
    Source {
        key: "code-limits",
        citation: "codes, standards and specifications for plaster, masonry and concrete, each rule with its own citation",
        basis: Basis::NeighbourStandard,
        formulas: &[],
    },
    Source {
        key: "cold-masonry",
        citation: "TMS 602 / ACI 530.1-02 as printed in a masonry magazine, September 2004, table 2",
        basis: Basis::NeighbourStandard,
        formulas: &[],
    },
    Source {
        key: "cold-masonry-after",
        citation: "TMS 602, protection of new masonry (bands recalled, not re-read; 24 and 48 h in CMHA TEK 03-01C)",
        basis: Basis::NeighbourStandard,
        formulas: &[],
    },
    Source {
        key: "hot-masonry",
        citation: "ACI 530.1-92 and a masonry industry council, hot weather: over 100 °F, or 90 °F with wind over 8 mph",
        basis: Basis::NeighbourStandard,
        formulas: &[],
    },
    Source {
        key: "cold-concrete",
        citation: "ACI 306R, tables of placing temperatures and protection periods (recalled, first line quoted)",
        basis: Basis::NeighbourStandard,
        formulas: &[],
    },
    Source {
        key: "nurse-saul",
        citation: "Nurse and Saul: temperature above a stated datum, times time (ASTM C1074)",
        basis: Basis::NeighbourStandard,
        formulas: &["F17 maturity"],
    },
    Source {
        key: "arrhenius-age",
        citation: "equivalent age with an energy of activation (ASTM C1074; the figures of Q and E recalled, not re-read)",
        basis: Basis::NeighbourStandard,
        formulas: &["F17 activation", "F17 equivalent age"],
    },
    Source {
        key: "freiesleben-age",
        citation: "Freiesleben Hansen and Pedersen, energy of activation by temperature (recalled, not re-read)",
        basis: Basis::NeighbourStandard,
        formulas: &["F17 cold age"],
    },
    Source {
        key: "model-code-age",
        citation: "CEB-FIP Model Code 1990, EN 1992-1-1 eq. B.10 (4000 K and 273 read, 13.65 recalled)",
        basis: Basis::NeighbourStandard,
        formulas: &["F17 model code age"],
    },
    Source {
        key: "aci-209-age",
        citation: "ACI 209R, strength with time (constants of moist cure quoted in a discussion of a textbook)",
        basis: Basis::NeighbourStandard,
        formulas: &["F17 age factor"],
    },
    Source { key: "en-1992-age", citation: "EN 1992-1-1, eq. 3.2", basis: Basis::NeighbourStandard, formulas: &["F17 age beta"] },
    Source {
        key: "plowman",
        citation: "Plowman's constants (recalled, not re-read)",
        basis: Basis::NeighbourStandard,
        formulas: &["F17 matured share"],
    },
    Source {
        key: "ratio-table",
        citation: "ACI 211.1-91, table 6.3.4(a), and a handbook's metric table 9-3; straight lines between rows are ours",
        basis: Basis::NeighbourStandard,
        formulas: &["F9 strength by ratio", "F9 ratio by strength", "F9 cement for water"],
    },
    Source {
        key: "abrams",
        citation: "Abrams' law with the constants of a secondary page",
        basis: Basis::NeighbourStandard,
        formulas: &["F9 abrams"],
    },
    Source {
        key: "unit-weights",
        citation: "ASTM C270, weights of a cubic foot (recalled, not re-read); NAVEDTRA 14044, ch. 7",
        basis: Basis::NeighbourStandard,
        formulas: &[],
    },
    Source {
        key: "parts-by-volume",
        citation: "parts by volume weighed by unit weights (ASTM C270)",
        basis: Basis::NeighbourStandard,
        formulas: &["F4 part mass", "F4 part volume", "F4 part share"],
    },
    Source {
        key: "laboratory-batch",
        citation: "ASTM C270, batch of 1440 g of sand (recalled, not re-read)",
        basis: Basis::NeighbourStandard,
        formulas: &["F4 lab factor", "F4 lab mass"],
    },
    Source { key: "parts-by-mass", citation: "parts by mass", basis: Basis::Geometry, formulas: &["F4 by mass", "F4 split"] },
    Source {
        key: "loose-density",
        citation: "density of grains less their voids",
        basis: Basis::Geometry,
        formulas: &["F4 loose density"],
    },
    Source {
        key: "cube-mortar-air",
        citation: "ASTM C185, air of its cube mortar (the formula recalled, its inputs read)",
        basis: Basis::NeighbourStandard,
        formulas: &["F4 cube air"],
    },
    Source {
        key: "measure-by-water",
        citation: "ASTM C185: a measure by the water it holds at 23 °C",
        basis: Basis::NeighbourStandard,
        formulas: &["F4 measure"],
    },
    Source {
        key: "rule-38",
        citation: "a US Navy rule of thumb (NAVEDTRA 14043, 14045): 38 ft3 of materials to a cubic yard of mortar, for small jobs",
        basis: Basis::NeighbourStandard,
        formulas: &["F4 rule 38", "F4 sacks"],
    },
    Source {
        key: "barrels-per-yard",
        citation: "Gillette and Hill, Concrete Construction, 1908",
        basis: Basis::NeighbourStandard,
        formulas: &["F4 barrels"],
    },
    Source {
        key: "free-water",
        citation: "moisture correction of aggregates (US Army Engineer School, subcourse EN5466, after ACI 211.1)",
        basis: Basis::NeighbourStandard,
        formulas: &["F4 free water", "F4 water to add"],
    },
    Source {
        key: "pigment-by-cement",
        citation: "pigment dosed by the mass of cement; the share of cement is the maker's",
        basis: Basis::MixSheet,
        formulas: &["F10 cement", "F10 pigment"],
    },
    Source {
        key: "pigment-limit",
        citation: "ASTM C979 (recalled, not re-read) and BIA Technical Note 8: metal oxides 10 %, carbon black 2 % of the cement",
        basis: Basis::NeighbourStandard,
        formulas: &["F10 most pigment"],
    },
    Source {
        key: "c270-proportions",
        citation: "ASTM C270, table 1 (recalled, not re-read)",
        basis: Basis::NeighbourStandard,
        formulas: &[],
    },
    Source { key: "plaster-proportions", citation: "IRC 2018, table R702.1(3)", basis: Basis::NeighbourStandard, formulas: &[] },
    Source {
        key: "mortar-classes",
        citation: "ASTM C270, table 2 (strengths read in several pages, the rest recalled, not re-read)",
        basis: Basis::NeighbourStandard,
        formulas: &[],
    },
    Source { key: "bagged-cement", citation: "ASTM C91 and C1329 (recalled, not re-read)", basis: Basis::NeighbourStandard, formulas: &[] },
    Source {
        key: "plaster-thickness",
        citation: "ASTM C926, thickness table (recalled, not re-read; two totals read)",
        basis: Basis::NeighbourStandard,
        formulas: &["F3 nominal"],
    },
    Source {
        key: "grain-density",
        citation: "usual relative densities of dry parts, each with its own word on whether it was read",
        basis: Basis::NeighbourStandard,
        formulas: &[],
    },
    Source {
        key: "cure-dates",
        citation: "days of the civil calendar, 1970-01-01 a Thursday; a started day counts as a whole one, a weekend moves to Monday: \
                   arithmetic",
        basis: Basis::Geometry,
        formulas: &["F17 day", "F17 day count", "F17 cure over", "F17 morning after", "F17 weekday", "F17 working day"],
    },
];
