//! Worked numbers of the design that no test beside a formula holds yet, with its own mixes: intermediate values, and what the
//! corrections put in place of them. Common practice, no source, unless a formula's own source says more.

use hodbook::quantity::expr::{Area, Length, Share, Volume, Worked};
use hodbook::quantity::{Node, Num};
use hodbook::trade::loads::{Step, loads};
use hodbook::trade::placing::batch_area;
use hodbook::trade::relief::{mean_thickness, mixed_volume, with_waste};
use hodbook::trade::sums::{batch_volume, usable_volume};
use hodbook::trade::takeoff::Around;
use hodbook::trade::yields::{Solid, absolute_volume, load_yield, solids_volume, water_mass};
use hodbook::trade::{coats, takeoff};

use crate::run::{gives, q};

fn solid(mass: &str, relative_density: &str) -> Solid {
    Solid { name: "part", mass: q(mass), relative_density: q(relative_density) }
}

/// Yield of a load with the design's own mixes, by the constants of the design.
fn load(add: (&str, &str), mor: (&str, &str), water: &str, constants: (&str, &str), air: &str) -> Worked<Volume> {
    let solids = solids_volume(&[solid(add.0, add.1), solid(mor.0, mor.1)], &q(constants.1)).unwrap();
    load_yield(&solids, &water_mass(&q(water), &q(constants.0)).unwrap(), &q(constants.1), &q(air)).unwrap()
}

const US: (&str, &str) = ("8.345 lb/gal", "62.4 lb/ft3");
const METRIC: (&str, &str) = ("1 kg/L", "1000 kg/m3");

fn carve() -> Worked<Volume> {
    load(("24 lb", "2.30"), ("80 lb", "2.66"), "1.5 gal", US, "9 %")
}

fn scratch() -> Worked<Volume> {
    load(("15 lb", "2.30"), ("70 lb", "2.66"), "1.25 gal", US, "7 %")
}

fn light() -> Worked<Volume> {
    load(("10 kg", "1.35"), ("25 kg", "2.65"), "4.6 L", METRIC, "14 %")
}

#[test]
fn parts_of_a_load() {
    gives(&absolute_volume(&solid("24 lb", "2.30"), &q("62.4 lb/ft3")).unwrap(), "ft3", "0.1672");
    gives(&absolute_volume(&solid("80 lb", "2.66"), &q("62.4 lb/ft3")).unwrap(), "ft3", "0.4820");
    // Without air a load is its solids and its water.
    gives(&load(("24 lb", "2.30"), ("80 lb", "2.66"), "1.5 gal", US, "0 %"), "ft3", "0.8498");
    gives(&carve(), "ft3", "0.9338");
    gives(&scratch(), "ft3", "0.7456");
    gives(&absolute_volume(&solid("10 kg", "1.35"), &q("1000 kg/m3")).unwrap(), "L", "7.407");
    gives(&absolute_volume(&solid("25 kg", "2.65"), &q("1000 kg/m3")).unwrap(), "L", "9.434");
    gives(&load(("10 kg", "1.35"), ("25 kg", "2.65"), "4.6 L", METRIC, "0 %"), "L", "21.441");
    gives(&light(), "L", "24.932");
}

#[test]
fn mixers_and_batches() {
    gives(&usable_volume(&q("4.5 ft3"), &q("65 %")).unwrap(), "ft3", "2.925");
    gives(&usable_volume(&q("17 gal"), &q("60 %")).unwrap(), "ft3", "1.364");
    gives(&batch_volume(&q("2 loads"), &carve()).unwrap(), "ft3", "1.8677");
    let applied: Worked<Length> = q("1.468301 in");
    gives(&batch_area(&q("2 loads"), &carve(), &applied).unwrap(), "ft2", "15.26");
    let mud: Worked<Volume> = mixed_volume(&q("108 ft2"), &applied, &q("0 %"), &q("0 %")).unwrap();
    let day = loads(&mud, &carve(), Step::Half).unwrap();
    gives(&day.need, "load", "14.15");
    gives(&day.loads, "load", "14.5");
}

/// The design's first round work, measured as flat; §-corrections put rings in its place, which `tests/shapes.rs` holds.
#[test]
fn round_work_as_flat_is_what_the_corrections_replace() {
    let bark = mean_thickness(&q("0.5 in"), &q("2 in"), &q("50 %")).unwrap();
    let columns: Worked<Area> = q("296.88 ft2");
    // As flat the six columns would be 40.12 ft3; from the bare core 42.91; from the scratch face more again.
    gives(&mixed_volume(&columns, &bark, &q("18 %"), &q("6 %")).unwrap(), "ft3", "40.12");
    let ring = coats::annulus(&q("9 in"), &bark, &q("10.5 ft"), Around::Whole).unwrap();
    let six = hodbook::trade::sums::times(&ring, &q("6")).unwrap();
    gives(&with_waste(&six, &q("18 %"), &q("6 %")).unwrap(), "ft3", "42.91");
    let face = coats::scratch_face(&q("9 in"), &q("1/2 in")).unwrap();
    let six = hodbook::trade::sums::times(&coats::annulus(&face, &bark, &q("10.5 ft"), Around::Whole).unwrap(), &q("6")).unwrap();
    let corrected = with_waste(&six, &q("18 %"), &q("6 %")).unwrap();
    gives(&corrected, "ft3", "45.14");
    // 79.81 ft3 and 85.5 loads with planks from 1/4 in and the rock base as flat.
    let flat = |area: &str, t: &Worked<Length>, wastes: [Worked<Share>; 2]| mixed_volume(&q(area), t, &wastes[0], &wastes[1]).unwrap();
    let plank = mean_thickness(&q("0.25 in"), &q("0.75 in"), &q("82 %")).unwrap();
    let rock = mean_thickness(&q("0.375 in"), &q("1.75 in"), &q("62 %")).unwrap();
    let parts = [flat("415.79 ft2", &plank, [q("10 %"), q("5 %")]), corrected, flat("64.77 ft2", &rock, [q("12 %"), q("5 %")])];
    gives(&parts[0], "ft3", "26.75");
    // 7.92 in the design, which cuts 7.925 off.
    gives(&parts[2], "ft3", "7.925");
    let all = hodbook::trade::sums::volumes(&parts).unwrap();
    gives(&all, "ft3", "79.81");
    gives(&loads(&all, &carve(), Step::Half).unwrap().loads, "load", "85.5");
    // Scratch as flat: 38.064 ft3, 51.051 loads; as rings 38.81 and 52.5.
    let coat = |area: &str, t: &str, drop: &str| coats::scratch(&q(area), &q(t), &q("1/8 in"), &q(drop)).unwrap();
    let first = [coat("415.79 ft2", "3/8 in", "5 %"), coat("296.88 ft2", "1/2 in", "5 %"), coat("64.77 ft2", "1/2 in", "5 %")];
    let all = hodbook::trade::sums::volumes(&first).unwrap();
    gives(&all, "ft3", "38.064");
    gives(&loads(&all, &scratch(), Step::Half).unwrap().need, "load", "51.051");
    gives(&takeoff::frustum(&q("3 ft"), &q("2 ft"), &q("4 ft")).unwrap(), "ft2", "64.77");
}

/// A need of a hair over twenty loads, exactly stated, buys half a load more; the noise of a float does not.
#[test]
fn knife_edges_of_loads() {
    let one: Worked<Volume> = q("1 ft3");
    let need = |v: &Worked<Volume>| loads(v, &one, Step::Half).unwrap().loads.value().si.to_f64();
    assert_eq!(need(&q("20.0000001 ft3")), 20.5);
    let unit = hodbook::quantity::units::find_expr("ft3").unwrap();
    let noisy = |x: f64| -> Worked<Volume> {
        let value = hodbook::quantity::Quantity::of(&Num::real(x).unwrap(), unit);
        Worked::new(Node::authored(value, Some(unit), "", "", None))
    };
    assert_eq!(need(&noisy(20.0 + 4.0 * f64::EPSILON * 20.0)), 20.0);
    assert_eq!(need(&noisy(20.0 - 4.0 * f64::EPSILON * 20.0)), 20.0);
}
