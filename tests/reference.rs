//! Published numbers against our formulas: every row calls our code with the row's inputs and holds the
//! result to the row's printed digits. Row ids are those of the project's table of reference facts; a row
//! that was written down from memory says so, and one that only states a rule is counted apart.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::print_stdout,
    clippy::print_stderr,
    clippy::disallowed_methods,
    reason = "a test"
)]

#[path = "reference/air.rs"]
mod air;
#[path = "reference/air_arithmetic.rs"]
mod air_arithmetic;
#[path = "reference/air_grid.rs"]
mod air_grid;
#[path = "reference/arithmetic.rs"]
mod arithmetic;
#[path = "reference/cure.rs"]
mod cure;
#[path = "reference/cure_arithmetic.rs"]
mod cure_arithmetic;
#[path = "reference/cure_rules.rs"]
mod cure_rules;
#[path = "reference/day.rs"]
mod day;
#[path = "reference/derivations.rs"]
mod derivations;
#[path = "reference/drying.rs"]
mod drying;
#[path = "reference/mixes.rs"]
mod mixes;
#[path = "reference/mixing.rs"]
mod mixing;
#[path = "reference/out_of_range.rs"]
mod out_of_range;
#[path = "reference/parts.rs"]
mod parts;
#[path = "reference/proportion.rs"]
mod proportion;
#[path = "reference/ratio.rs"]
mod ratio;
#[path = "reference/rules.rs"]
mod rules;
#[path = "reference/run.rs"]
mod run;
#[path = "reference/sun.rs"]
mod sun;
#[path = "reference/takeoff_rules.rs"]
mod takeoff_rules;
#[path = "reference/units.rs"]
mod units;
#[path = "reference/walls.rs"]
mod walls;
#[path = "reference/worked.rs"]
mod worked;
#[path = "reference/worked_crew.rs"]
mod worked_crew;
#[path = "reference/worked_day.rs"]
mod worked_day;
#[path = "reference/worked_demo.rs"]
mod worked_demo;
#[path = "reference/worked_walls.rs"]
mod worked_walls;
#[path = "reference/worked_water.rs"]
mod worked_water;
#[path = "reference/works.rs"]
mod works;
#[path = "reference/works_lines.rs"]
mod works_lines;

use run::Run;

type Table = (&'static str, fn(&mut Run));

const TABLES: &[Table] = &[
    ("definitions of units", units::definitions),
    ("conversions", units::conversions),
    ("water by temperature", units::water),
    ("bags and buckets", units::bags),
    ("strength classes", units::strengths),
    ("absolute volume", mixes::absolute_volume),
    ("bag yields", mixes::bag_yields),
    ("perlite mixes", mixes::perlite),
    ("older quantities", mixes::older),
    ("coverage", walls::coverage),
    ("dead load", walls::dead_load),
    ("takeoff", walls::takeoff),
    ("saturation pressure", air::tables),
    ("saturation formulas", air::formulas),
    ("dew point", air::dew_points),
    ("evaporation examples", drying::examples),
    ("evaporation by group", drying::groups),
    ("critical humidity", drying::critical_humidity),
    ("evaporation, computed", drying::computed),
    ("mix temperature", mixing::examples),
    ("mix, computed", mixing::computed),
    ("maturity examples", cure::examples),
    ("age by temperature", cure::ages),
    ("histories", cure::histories),
    ("strength with age", cure::growth),
    ("published strengths", cure::strengths),
    ("water-cement ratio", ratio::ratios),
    ("unit weights, parts", proportion::parts),
    ("moisture, air", proportion::water_and_air),
    ("mortar per yard", proportion::per_yard),
    ("mortar types", parts::mortar),
    ("plaster parts, coats", parts::plaster),
    ("classes, densities", parts::classes),
    ("moist cure", cure_rules::concrete),
    ("plaster cure", cure_rules::plaster),
    ("rules", rules::rules),
    ("lath and joints", works::lath),
    ("veneer", works::veneer),
    ("mixing and tolerances", works::mixing),
    ("lifting", works::lifting),
    ("charts of single values", works::charts),
    ("openings", takeoff_rules::rules),
];

#[test]
fn rows_are_met_and_counted() {
    let mut all = Run::default();
    let mut report = String::new();
    for (name, table) in TABLES {
        let mut run = Run::default();
        table(&mut run);
        report += &format!("{name:<22} {:>3} values {:>3} rules {:>3} from memory\n", run.values(), run.rules(), run.recalled());
        all.join(run);
    }
    println!("{report}{:<22} {:>3} values {:>3} rules {:>3} from memory", "all", all.values(), all.rules(), all.recalled());
    for (id, what) in all.disputes() {
        println!("disputed {id}: {what}");
    }
    all.no_row_twice();
    assert!(all.values() >= 250, "{} rows of values", all.values());
}
