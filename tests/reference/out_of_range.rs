//! Every formula refuses what is outside its range, and says what would pass.

use std::collections::BTreeSet;
use std::path::Path;

use hodbook::quantity::expr::Frequency;
use hodbook::trade::arches::{self, Sides};
use hodbook::trade::loads::Step;
use hodbook::trade::mix_temperature::{Batch, Dry};
use hodbook::trade::takeoff::Around;
use hodbook::trade::yields::Solid;
use hodbook::trade::{
    OutOfRange, batch, carry, coats, cure, day, drying_limits, floor, joints, legible, lifting, lifting_tables, mix_targets, open_time,
    placing, proportion, purchase, relief, sums, takeoff, water, weight, window, yard, yields,
};

use crate::run::q;

/// Holds a call to its refusal: a formula's name, a symbol, the value, what would pass.
fn refused<T>(name: &str, answer: Result<T, OutOfRange>) {
    let Err(fault) = answer else { panic!("{name} did not refuse") };
    assert!(fault.formula.starts_with('F'), "{name}: {fault}");
    assert!(!fault.symbol.is_empty() && !fault.value.is_empty() && !fault.wants.is_empty(), "{name}: {fault}");
}

/// The name of a function and a call of it that it must refuse.
macro_rules! refuse {
    ($($room:ident::$name:ident($($arg:expr),* $(,)?);)*) => {
        $(refused(stringify!($name), $room::$name($($arg),*));)*
    };
}

#[test]
fn walls_and_coats() {
    refuse! {
        arches::rectangular_perimeter(&q("0 ft"), &q("2 ft"), Sides::Four);
        arches::semicircular_opening(&q("0 ft"), &q("2 ft"));
        arches::semicircular_perimeter(&q("3 ft"), &q("-1 ft"));
        arches::segmental_opening(&q("4 ft"), &q("2 ft"), &q("3 ft"));
        arches::segmental_perimeter(&q("4 ft"), &q("2 ft"), &q("0 ft"));
        takeoff::gable(&q("22 ft"), &q("0 ft"));
        takeoff::trapezoid(&q("-1 ft"), &q("4 ft"), &q("3 ft"));
        takeoff::circle(&q("0 in"));
        takeoff::column(&q("0 in"), &q("9 ft"), Around::Whole);
        takeoff::frustum(&q("3 ft"), &q("2 ft"), &q("0 ft"));
        takeoff::reveal(&q("10 ft"), &q("-1 in"));
        coats::scratch(&q("100 ft2"), &q("1/2 in"), &q("1/8 in"), &q("100 %"));
        coats::scratch_face(&q("0 in"), &q("1/2 in"));
        coats::annulus(&q("0 in"), &q("1 in"), &q("9 ft"), Around::Half);
        coats::scratch_annulus(&q("7 in"), &q("1/2 in"), &q("1/8 in"), &q("9 ft"), &q("100 %"), Around::Whole);
        coats::ratio_to_flat(&q("0 in"), &q("1 in"));
        relief::applied_thickness(&q("1 in"), &q("100 %"), &q("5 %"));
        relief::mixed_volume(&q("0 ft2"), &q("1 in"), &q("12 %"), &q("5 %"));
        weight::coat_weight(&q("-1 in"), &q("125 lb/ft3"));
        joints::face_width(&q("0 ft"), &q("6 ft"), None);
        sums::radius(&q("0 in"));
        sums::whole_thickness(&q("-1 in"), &q("1/2 in"));
        sums::volumes(&[]);
    }
}

#[test]
fn mud_and_water() {
    let solid = || Solid { name: "mor", mass: q("80 lb"), relative_density: q("0") };
    refuse! {
        yields::water_mass(&q("-1 gal"), &q("8.345 lb/gal"));
        yields::absolute_volume(&solid(), &q("62.4 lb/ft3"));
        yields::dry_load(&[]);
        yields::wet_load(&q("0 lb"), &q("12 lb"));
        yields::wet_density(&q("121 lb"), &q("0 ft3"));
        batch::batch_water(&q("-1 loads"), &q("1 gal"));
        batch::charge(&q("0 bags"));
        carry::batch_start(&q("2 loads"), &q("1 gal"), &q("0 cups"));
        carry::left_to_limit(&q("3 gal"), &q("2 gal"));
        water::water_to_dry(&q("12 lb"), &q("0 lb"));
        water::water_index(&q("1 gal"), &q("0 gal"));
        sums::usable_volume(&q("4.5 ft3"), &q("101 %"));
        sums::batch_volume(&q("2 loads"), &q("0 ft3"));
        sums::batch_bags(&q("0 loads"), &q("1 bag"));
        sums::load_mass(&q("1 bag"), &q("0 lb"));
        purchase::weight(&q("-1 bag"), &q("80 lb"));
        purchase::trips(&q("100 lb"), &q("0 lb"));
        proportion::lab_mass(&q("-1"), &q("94 lb/ft3"), &q("2.67"));
        yard::barrels(&q("0"), &q("4 ft3"), &q("3.4 ft3"), &q("45 %"));
    }
}

#[test]
fn days_hands_and_letters() {
    let cold = || Batch {
        dry: vec![Dry { name: "bags", mass: q("0 lb"), temperature: q("42 °F"), moisture: None }],
        water: q("12 lb"),
        work: None,
    };
    let place = || lifting::Place { reach: q("30 in"), height: q("20 in"), twist: q("0 °") };
    let task = || lifting::Task {
        system: lifting_tables::System::Us,
        travel: q("20 in"),
        rate: q::<Frequency>("1 lift/min"),
        lasts: q("2 h"),
        grip: lifting_tables::Grip::Fair,
    };
    refuse! {
        open_time::factor(&q("70 °F"), &q("110 °F"));
        open_time::open_time(&q("50 min"), &q("70 °F"), &q("110 °F"));
        open_time::carve_time(&q("210 min"), &q("70 °F"), &q("110 °F"));
        placing::applied(&q("0 ft3"), &q("100 ft2"));
        placing::loads_in_time(&q("42 ft2/h"), &q("8 min"), (&q("6 min"), &q("4 min")), &q("1.5 in"), &q("0.93 ft3"), Step::Whole);
        window::split_limit(&q("42 ft2/h"), &q("36 ft2/h"), (&q("210 min"), &q("75 min")), &q("0 min"));
        window::left_after(&q("0 ft2"), &[]);
        cure::credits(&[cure::Day { mean: q("-500 °F"), least: None }]);
        cure::whole_days(&q("-1 days"));
        cure::steady_day(&q("39 °F"), &q("7 days"), &q("2 days"));
        drying_limits::grid(&[(q("80 °F"), q("80 °F"))], &[q("120 %")], &[q("5 mph")]);
        day::cut(&q("36 ft2"), &q("0 loads"), &q("1 ft3"), &q("1 in"), Step::Half);
        mix_targets::water_share(&cold());
        floor::left_on_platform(&q("-1 lb"), &q("10 lb"));
        lifting_tables::frequency(&q("16 lifts/min"), &q("1 h"), true);
        lifting::lift(&q("80 lb"), &place(), None, &task());
        legible::cap_height(&q("0 in"), &q("300"));
        legible::type_size(&q("0 in"), &q("71 %"));
    }
}

/// Functions that take no measured value have no range to leave.
const WITHOUT_RANGE: [&str; 2] = ["melting", "panel_limits"];

/// Every fallible function of the room is called somewhere with an input that it refuses.
#[test]
fn every_formula_has_a_refusal_tested() {
    let root = Path::new(env!("CARGO_MANIFEST_DIR"));
    let mut texts = Vec::new();
    for folder in ["src/trade", "tests/reference"] {
        for entry in std::fs::read_dir(root.join(folder)).unwrap() {
            let path = entry.unwrap().path();
            if path.extension().is_some_and(|e| e == "rs") {
                texts.push((folder, std::fs::read_to_string(path).unwrap()));
            }
        }
    }
    // Of the room itself only examples and tests call: a function's own refusal is not a test of it.
    let calls: Vec<String> = texts
        .iter()
        .map(|(folder, text)| match text.split_once("#[cfg(test)]") {
            _ if *folder == "tests/reference" => text.clone(),
            Some((own, tests)) => own.lines().filter(|l| l.starts_with("///")).map(|l| format!("{l}\n")).collect::<String>() + tests,
            None => text.lines().filter(|l| l.starts_with("///")).map(|l| format!("{l}\n")).collect(),
        })
        .collect();
    let says_no = |s: &&str| ["is_err()", "unwrap_err()", "refused(", "refuses(", "Err("].iter().any(|word| s.contains(word));
    let refusing: Vec<&str> = calls
        .iter()
        .flat_map(|text| text.split(";\n"))
        .filter(says_no)
        .chain(texts.iter().filter(|(f, t)| *f == "tests/reference" && t.contains("macro_rules! refuse")).flat_map(|(_, t)| t.lines()))
        .collect();
    let mut missing = BTreeSet::new();
    let mut functions = 0;
    for (_, text) in texts.iter().filter(|(folder, _)| *folder == "src/trade") {
        for item in text.split("#[cfg(test)]").next().unwrap_or("").split("\npub fn ").skip(1) {
            let head = item.split(" {\n").next().unwrap_or("");
            let name: String = item.chars().take_while(|c| c.is_alphanumeric() || *c == '_').collect();
            if !(head.contains("Answer<") || head.contains("OutOfRange")) || WITHOUT_RANGE.contains(&name.as_str()) {
                continue;
            }
            functions += 1;
            let called = [format!("{name}("), format!("{name}::<")];
            if !refusing.iter().any(|s| called.iter().any(|c| s.contains(c.as_str()))) {
                missing.insert(name);
            }
        }
    }
    assert!(functions > 150, "{functions} functions");
    assert!(missing.is_empty(), "no call is refused of: {missing:?}");
}
