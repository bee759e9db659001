//! Evaporation: published examples and tables, and rows worked out with other libraries.

use hodbook::quantity::expr::{Drying, Temperature, Worked};
use hodbook::trade::Answer;
use hodbook::trade::dew_point::magnus_dew_point;
use hodbook::trade::drying_limits::menzel_humidity_for_rate;
use hodbook::trade::evaporation::{Air, curing_guide, evaporation, menzel_si, menzel_us, uno_si, uno_us};

use crate::run::How::{Computed, Memory};
use crate::run::{Run, gives, near, q};

/// Row, mud, air, humidity, wind; published dew point °F and rate; Menzel, Uno and dew point worked out.
type Group = (&'static str, [&'static str; 4], f64, f64, f64, f64, f64);
const GROUPS: &[Group] = &[
    ("EVL-01", ["70 °F", "70 °F", "70 %", "0 mph"], 59.0, 0.015, 0.0121, 0.0123, 59.8),
    ("EVL-02", ["70 °F", "70 °F", "70 %", "5 mph"], 59.0, 0.038, 0.0351, 0.0369, 59.8),
    ("EVL-03", ["70 °F", "70 °F", "70 %", "10 mph"], 59.0, 0.062, 0.0582, 0.0615, 59.8),
    ("EVL-04", ["70 °F", "70 °F", "70 %", "15 mph"], 59.0, 0.085, 0.0812, 0.0861, 59.8),
    ("EVL-05", ["70 °F", "70 °F", "70 %", "20 mph"], 59.0, 0.110, 0.1042, 0.1107, 59.8),
    ("EVL-07", ["70 °F", "70 °F", "90 %", "10 mph"], 67.0, 0.020, 0.0194, 0.0205, 66.9),
    ("EVL-08", ["70 °F", "70 °F", "50 %", "10 mph"], 50.0, 0.100, 0.0969, 0.1025, 50.5),
    ("EVL-11", ["50 °F", "50 °F", "70 %", "10 mph"], 41.0, 0.026, 0.0285, 0.0265, 40.6),
    ("EVL-12", ["60 °F", "60 °F", "70 %", "10 mph"], 50.0, 0.043, 0.0410, 0.0418, 50.2),
    ("EVL-13", ["80 °F", "80 °F", "70 %", "10 mph"], 70.0, 0.077, 0.0812, 0.0859, 69.3),
    ("EVL-14", ["90 °F", "90 °F", "70 %", "10 mph"], 79.0, 0.110, 0.1119, 0.1153, 78.9),
    ("EVL-15", ["100 °F", "100 °F", "70 %", "10 mph"], 88.0, 0.180, 0.1522, 0.1500, 88.5),
    ("EVL-16", ["70 °F", "80 °F", "70 %", "10 mph"], 70.0, 0.000, 0.0043, 0.0046, 69.3),
    ("EVL-17", ["70 °F", "50 °F", "70 %", "10 mph"], 41.0, 0.125, 0.1273, 0.1431, 40.6),
    ("EVL-19", ["80 °F", "40 °F", "100 %", "10 mph"], 40.0, 0.205, 0.2058, 0.2356, 40.0),
    ("EVL-22", ["70 °F", "40 °F", "50 %", "0 mph"], 23.0, 0.035, 0.0337, 0.0359, 22.8),
    ("EVL-24", ["70 °F", "40 °F", "50 %", "25 mph"], 23.0, 0.357, 0.3530, 0.3953, 22.8),
    ("EVL-26", ["60 °F", "70 °F", "50 %", "10 mph"], 50.0, 0.045, 0.0399, 0.0369, 50.5),
    ("EVL-28", ["90 °F", "90 °F", "10 %", "10 mph"], 26.0, 0.336, 0.3357, 0.3458, 26.1),
];

/// Row, mud, air, and for 0.20, 0.15, 0.10, 0.05 lb/ft2/h the humidity as published and as worked out, 100 at most.
type Critical = (&'static str, &'static str, &'static str, [(f64, f64); 4]);
const CRITICAL: &[Critical] = &[
    ("EVR-02", "100 °F", "90 °F", [(80.0, 82.0), (95.0, 96.0), (100.0, 100.0), (100.0, 100.0)]),
    ("EVR-03", "95 °F", "85 °F", [(75.0, 74.0), (90.0, 90.0), (100.0, 100.0), (100.0, 100.0)]),
    ("EVR-04", "90 °F", "80 °F", [(60.0, 64.0), (85.0, 82.0), (100.0, 100.0), (100.0, 100.0)]),
    ("EVR-05", "85 °F", "75 °F", [(55.0, 52.0), (80.0, 73.0), (95.0, 95.0), (100.0, 100.0)]),
    ("EVR-06", "80 °F", "70 °F", [(35.0, 37.0), (60.0, 62.0), (85.0, 88.0), (100.0, 100.0)]),
];

/// Row, the air; Menzel US and SI, Uno US and SI, curing guide.
type Five = (&'static str, [&'static str; 4], [f64; 5]);
const COMPUTED: &[Five] = &[
    ("EVC-02", ["65 °F", "75 °F", "60 %", "5 mph"], [0.0154, 0.0762, 0.0145, 0.0689, 0.0192]),
    ("EVC-03", ["70 °F", "85 °F", "25 %", "12 mph"], [0.1324, 0.6566, 0.1412, 0.6633, 0.1376]),
    ("EVC-05", ["75 °F", "90 °F", "20 %", "15 mph"], [0.2162, 1.0727, 0.2334, 1.0949, 0.2178]),
    ("EVC-06", ["80 °F", "95 °F", "15 %", "10 mph"], [0.2054, 1.0187, 0.2202, 1.0314, 0.2023]),
    ("EVC-07", ["85 °F", "100 °F", "30 %", "5 mph"], [0.1004, 0.4976, 0.1098, 0.5140, 0.0983]),
    ("EVC-09", ["95 °F", "105 °F", "10 %", "8 mph"], [0.3171, 1.5723, 0.3220, 1.5041, 0.3032]),
    ("EVC-10", ["55 °F", "45 °F", "80 %", "3 mph"], [0.0229, 0.1132, 0.0254, 0.1191, 0.0227]),
    ("EVC-11", ["68 °F", "68 °F", "65 %", "7 mph"], [0.0483, 0.2395, 0.0507, 0.2378, 0.0492]),
];

fn air([mortar, air, humidity, wind]: [&str; 4]) -> Air {
    Air { mortar: q(mortar), air: q(air), humidity: q(humidity), wind: q(wind) }
}

fn pounds(e: Answer<Drying>, value: f64, tolerance: f64) {
    near(&e.unwrap(), "lb/ft2/h", value, tolerance);
}

/// One case in three guises.
pub fn examples(run: &mut Run) {
    let us = air(["87 °F", "80 °F", "50 %", "12 mph"]);
    run.row("EVX-01", "ACI 305R-99 figure 2.1.5, its example", Memory);
    run.disputed(
        "0.25 lb/ft2/h is read off the chart; Uno gives 0.243, Menzel 0.236, the curing guide 0.226: held to 0.25 by 0.02 or 0.03",
    );
    pounds(uno_us(&us), 0.25, 0.02);
    pounds(menzel_us(&us), 0.25, 0.02);
    pounds(curing_guide(&us), 0.25, 0.03);
    for (e, worked) in [(menzel_us(&us), "0.236"), (uno_us(&us), "0.243")] {
        gives(&e.unwrap(), "lb/ft2/h", worked);
    }
    // Worked with the guide's own 4.88 for 4.8824 kg/m2 to the lb/ft2: 0.2256, and 0.2255 by the exact factor.
    pounds(curing_guide(&us), 0.226, 0.0006);
    run.row("EVX-02", "ACI Concrete International, questions and answers; inputs recalled", Memory);
    let si = air(["31 °C", "27 °C", "50 %", "19 km/h"]);
    gives(&uno_si(&si).unwrap(), "kg/m2/h", "1.15");
    gives(&evaporation(&si).unwrap(), "kg/m2/h", "1.152");
    gives(&menzel_si(&si).unwrap(), "kg/m2/h", "1.190");
    run.row("EVX-03", "ACI Concrete International, questions and answers; inputs recalled", Memory);
    gives(&uno_us(&us).unwrap(), "lb/ft2/h", "0.24");
    gives(&uno_us(&us).unwrap(), "lb/ft2/h", "0.2435");
}

/// One thing varied at a time.
pub fn groups(run: &mut Run) {
    for (id, inputs, dew, published, by_menzel, by_uno, dew_worked) in GROUPS {
        run.row(id, "W. Lerch, Plastic Shrinkage, ACI Journal, 1957", Memory);
        let usual = f64::max(0.1 * published, 0.005);
        let tolerance = match *id {
            "EVL-15" => {
                run.disputed("printed 0.180 lb/ft2/h; Menzel gives 0.152, Uno 0.150: held to the print within 17 %");
                0.17 * published
            }
            "EVL-26" => {
                run.disputed("printed 0.045 lb/ft2/h; Menzel gives 0.0399: held to the print within 12 %");
                0.12 * published
            }
            _ => usual,
        };
        assert!(tolerance == usual || (by_menzel - published).abs() > usual, "{id} is not in dispute");
        let at = air(*inputs);
        pounds(menzel_us(&at), *published, tolerance);
        pounds(menzel_us(&at), *by_menzel, 1e-4);
        pounds(uno_us(&at), *by_uno, 1e-4);
        // Printed in whole degrees, up to one off.
        let point = magnus_dew_point(&at.air, &at.humidity).unwrap();
        near(&point, "°F", *dew, 1.0);
        near(&point, "°F", *dew_worked, 0.06);
    }
}

/// Humidity at or below which the rate is reached, mud 10 °F over the air, wind 10 mph.
pub fn critical_humidity(run: &mut Run) {
    for (id, mortar, air, cells) in CRITICAL {
        run.row(id, "ACI 305R-91 and -99, table of critical humidity", Memory);
        let (mortar, air): (Worked<Temperature>, Worked<Temperature>) = (q(mortar), q(air));
        for (limit, (published, worked)) in ["0.20 lb/ft2/h", "0.15 lb/ft2/h", "0.10 lb/ft2/h", "0.05 lb/ft2/h"].iter().zip(cells) {
            // The table stops at 100 %, where we say that no humidity is enough.
            match menzel_humidity_for_rate(&q(limit), &mortar, &air, &q("10 mph")) {
                Ok(least) => {
                    near(&least, "%", *published, 7.0);
                    near(&least, "%", *worked, 1.0);
                }
                Err(none) => assert!(*published == 100.0 && *worked == 100.0 && none.symbol == "RH", "{id} {limit}: {none}"),
            }
        }
    }
}

/// Every form, from the same air in both systems.
pub fn computed(run: &mut Run) {
    for (id, inputs, values) in COMPUTED {
        run.row(id, "worked with a library's saturation pressure", Computed);
        let at = air(*inputs);
        let forms = [menzel_us(&at), menzel_si(&at), uno_us(&at), uno_si(&at), curing_guide(&at)];
        let units = ["lb/ft2/h", "kg/m2/h", "lb/ft2/h", "kg/m2/h", "lb/ft2/h"];
        for ((form, unit), value) in forms.into_iter().zip(units).zip(values) {
            // Half a per cent, and half of the last digit printed.
            near(&form.unwrap(), unit, *value, value * 0.005 + 5e-5);
        }
        near(&evaporation(&at).unwrap(), "kg/m2/h", values[3], values[3] * 0.005);
    }
}
