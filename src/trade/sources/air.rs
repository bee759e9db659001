//! Sources of evaporation, vapour pressure and mix temperature.

use super::{Basis, Source};

pub(super) const SOURCES: &[Source] = &[
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
];
