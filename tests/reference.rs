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

#[path = "reference/arithmetic.rs"]
mod arithmetic;
#[path = "reference/day.rs"]
mod day;
#[path = "reference/derivations.rs"]
mod derivations;
#[path = "reference/mixes.rs"]
mod mixes;
#[path = "reference/rules.rs"]
mod rules;
#[path = "reference/run.rs"]
mod run;
#[path = "reference/sun.rs"]
mod sun;
#[path = "reference/units.rs"]
mod units;
#[path = "reference/walls.rs"]
mod walls;

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
    ("rules", rules::rules),
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
    all.no_row_twice();
    assert!(all.values() >= 50, "{} rows of values", all.values());
}
