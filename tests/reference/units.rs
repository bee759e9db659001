//! Units, water by temperature, bags, strength classes.

use hodbook::quantity::expr::{Areal, Density, Length, Mass, Sort, Strength, Volume, Worked};
use hodbook::trade::yields::water_mass;

use crate::run::How::{Computed, Found, Memory};
use crate::run::{Run, gives, q};

fn is<S: Sort>(text: &str, unit: &str, printed: &str) {
    gives(&q::<S>(text), unit, printed);
}

/// NIST Handbook 44, appendix C, and sheets that agree with it.
pub fn definitions(run: &mut Run) {
    const HB44: &str = "NIST Handbook 44, appendix C";
    run.row("UD-01", HB44, Found);
    is::<Volume>("1 gal", "in3", "231");
    is::<Volume>("1 gal", "L", "3.785411784");
    run.row("UD-02", HB44, Found);
    is::<Volume>("1 qt", "in3", "57.75");
    run.row("UD-03", "published unit definitions", Found);
    is::<Volume>("1 pt", "in3", "28.875");
    is::<Volume>("1 pt", "mL", "473.176473");
    run.row("UD-04", "published unit definitions", Found);
    is::<Volume>("128 fl oz", "gal", "1.0000000000");
    run.row("UD-05", HB44, Found);
    is::<Volume>("1 ft3", "in3", "1728");
    run.row("UD-06", "unit conversion factors, ten digits", Found);
    is::<Mass>("1 lb", "kg", "0.45359237");
    is::<Mass>("1 lb", "oz", "16");
    run.row("UD-07", "unit conversion factors, ten digits", Found);
    is::<Length>("1 in", "mm", "25.4");
    run.row("UD-08", "unit conversion factors, ten digits", Found);
    is::<Strength>("1 psi", "MPa", "0.006894757293");
    run.row("UD-09", "NAVEDTRA 14070, ch. 17", Found);
    is::<Volume>("1 yd3", "ft3", "27");
}

/// Derived factors, worked out twice over in the reference table.
pub fn conversions(run: &mut Run) {
    const DEF: &str = "worked from the definitions";
    run.row("U-01", DEF, Computed);
    is::<Volume>("1 ft3", "gal", "7.480519480519");
    is::<Volume>("77 ft3", "gal", "576");
    run.row("U-02", "unit conversion factors, ten digits", Found);
    is::<Volume>("1 gal", "ft3", "0.133680556");
    run.row("U-03", DEF, Computed);
    is::<Volume>("1 ft3", "L", "28.316846592");
    run.row("U-06", DEF, Computed);
    is::<Volume>("1 qt", "mL", "946.352946");
    run.row("U-07", DEF, Computed);
    is::<Volume>("1 fl oz", "mL", "29.5735295625");
    run.row("U-08", DEF, Computed);
    is::<Volume>("1 fl oz", "in3", "1.8046875");
    run.row("U-09", DEF, Computed);
    is::<Volume>("1 ft3", "fl oz", "957.506493506");
    run.row("U-10", "unit conversion factors, ten digits", Found);
    is::<Mass>("1 lb", "g", "453.59237");
    run.row("U-11", DEF, Computed);
    is::<Mass>("1 oz", "g", "28.349523125");
    run.row("U-13", "unit conversion factors, ten digits", Found);
    is::<Density>("1000 kg/m3", "lb/ft3", "62.427960576145");
    run.row("U-14", "unit conversion factors, ten digits", Found);
    is::<Density>("1 kg/m3", "lb/ft3", "0.062427960576");
    run.row("U-15", DEF, Computed);
    is::<Density>("1 lb/yd3", "kg/m3", "0.593276421258");
    run.row("U-19", "unit conversion factors, ten digits", Found);
    is::<Strength>("1 psi", "MPa", "0.006894757293168");
    run.row("U-22", DEF, Computed);
    is::<Volume>("1 in3", "mL", "16.387064");
    run.row("LTH-11", DEF, Computed);
    is::<Areal>("2.5 lb/yd2", "kg/m2", "1.3562");
    is::<Areal>("3.4 lb/yd2", "kg/m2", "1.8445");
}

/// A gallon of water weighed at a temperature, from its density (IAPWS-95).
pub fn water(run: &mut Run) {
    let rows = [
        ("WD-01", "62.418 lb/ft3", "8.344"),
        ("WD-03", "62.409 lb/ft3", "8.343"),
        ("WD-05", "62.337 lb/ft3", "8.3332"),
        // The next two rows print 8.3285 and 8.3249, from densities with more digits than they show: held to three places.
        ("WD-06", "62.301 lb/ft3", "8.328"),
        ("WD-07", "62.274 lb/ft3", "8.325"),
        ("WD-09", "62.216 lb/ft3", "8.3171"),
        ("WD-10", "62.113 lb/ft3", "8.3033"),
    ];
    for (id, constant, pounds) in rows {
        run.row(id, "water density by IAPWS-95", Computed);
        gives(&water_mass(&q("1 gal"), &q(constant)).unwrap(), "lb", pounds);
    }
}

/// Bags and buckets.
pub fn bags(run: &mut Run) {
    const DEF: &str = "worked from the definitions";
    for (id, bag, kg) in [("BG-01", "94 lb", "42.63768278"), ("BG-02", "80 lb", "36.2873896"), ("BG-03", "60 lb", "27.2155422")] {
        run.row(id, DEF, Computed);
        is::<Mass>(bag, "kg", kg);
    }
    run.row("BG-05", DEF, Computed);
    is::<Density>("94 lb/ft3", "kg/m3", "1505.7356");
    run.row("BG-07", DEF, Computed);
    is::<Density>("40 lb/ft3", "kg/m3", "640.7385");
    run.row("BG-08", DEF, Computed);
    is::<Volume>("5 gal", "in3", "1155");
    is::<Volume>("5 gal", "ft3", "0.66840");
}

/// Strength classes as both systems print them.
pub fn strengths(run: &mut Run) {
    let class = |psi: &str, mpa: &str| {
        let worked: Worked<Strength> = q(psi);
        gives(&worked, "MPa", mpa);
    };
    for (id, psi, short, long) in [
        ("C270S-01", "2500 psi", "17.2", "17.2369"),
        ("C270S-02", "1800 psi", "12.4", "12.4106"),
        ("C270S-03", "750 psi", "5.2", "5.1711"),
        ("C270S-04", "350 psi", "2.4", "2.4132"),
    ] {
        run.row(id, "ASTM C270 table 2; the classes found, the table recalled", Memory);
        class(psi, short);
        class(psi, long);
    }
    let recalled: [(&str, [(&str, &str); 3]); 3] = [
        ("C91-01", [("500 psi", "3.4"), ("1300 psi", "9.0"), ("1800 psi", "12.4")]),
        ("C91-02", [("900 psi", "6.2"), ("2100 psi", "14.5"), ("2900 psi", "20.0")]),
        ("C91-05", [("70 psi", "0.5"), ("100 psi", "0.7"), ("115 psi", "0.8")]),
    ];
    for (id, classes) in recalled {
        run.row(id, "ASTM C91 and C1329", Memory);
        for (psi, mpa) in classes {
            class(psi, mpa);
        }
    }
}
