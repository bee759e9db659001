//! Every formula once, in US and metric units mixed: its printed arithmetic re-evaluates, and no input panics.

use std::collections::BTreeSet;

use hodbook::quantity::expr::{Loads, Node, Sort, Volume, Worked};
use hodbook::quantity::print::derivation;
use hodbook::trade::loads::{Step, loads};
use hodbook::trade::takeoff::Around;
use hodbook::trade::weight::Scratch;
use hodbook::trade::yields::Solid;
use hodbook::trade::{
    arches, batch, carry, coats, cone, edges, legible, net, open_time, opening_rule, polygon, purchase, relief, sources, sums, takeoff,
    water, weight, yields,
};

use crate::air_arithmetic;
use crate::arithmetic::follows;
use crate::cure_arithmetic;
use crate::run::q;
use crate::works_lines;

/// Keeps the nodes of one test and the formulas they print.
#[derive(Default)]
pub struct Seen(BTreeSet<String>);

impl Seen {
    /// A node's lines.
    pub fn node(&mut self, node: &Node) {
        let lines = derivation("", node);
        follows(&lines);
        self.0.extend(lines.into_iter().map(|l| l.formula).filter(|f| !f.is_empty()));
    }

    /// Prints a result's lines and holds each to its number.
    pub fn add<S: Sort>(&mut self, worked: &Worked<S>) {
        self.node(worked.node());
    }
}

fn areas(seen: &mut Seen) {
    let gross = [takeoff::rectangle(&q("22 ft"), &q("2.75 m")).unwrap(), takeoff::gable(&q("22 ft"), &q("66 in")).unwrap()];
    let fire = arches::segmental_opening(&q("60 in"), &q("2 ft 6 in"), &q("0.3 m")).unwrap();
    let door = arches::semicircular_opening(&q("3 ft 6 in"), &q("75 in")).unwrap();
    let walked = [
        arches::segmental_perimeter(&q("60 in"), &q("2 ft 6 in"), &q("0.3 m")).unwrap(),
        arches::semicircular_perimeter(&q("3 ft 6 in"), &q("75 in")).unwrap(),
        arches::rectangular_perimeter(&q("3 ft"), &q("48 in"), arches::Sides::Three).unwrap(),
    ];
    let reveals: Vec<_> = walked.iter().map(|p| takeoff::reveal(p, &q("8 in")).unwrap()).collect();
    seen.add(&net::net(&gross, &[fire, door], &reveals).unwrap());
    let rounds = [
        takeoff::trapezoid(&q("8 ft"), &q("12 ft 6 in"), &q("3 m")).unwrap(),
        takeoff::circle(&q("0.6 m")).unwrap(),
        takeoff::column(&q("14 in"), &q("9 ft"), Around::Whole).unwrap(),
        takeoff::frustum(&q("3 ft"), &q("24 in"), &q("1.2 m")).unwrap(),
    ];
    let half = takeoff::column(&q("14 in"), &q("9 ft"), Around::Half).unwrap();
    seen.add(&net::total(&rounds).unwrap());
    seen.add(&net::times(&half, &q("2")).unwrap());
    // A flat arch, where the segment is a small difference of two angles.
    seen.add(&arches::segment(&q("16 ft"), &q("1 in")).unwrap());
}

fn outlines(seen: &mut Seen) {
    let corners = [("0 ft", "0 ft"), ("10 ft", "6 in"), ("3 m", "8 ft"), ("5 ft", "9 ft 6 in"), ("0 in", "2 m")];
    let corners: Vec<polygon::Corner> = corners.iter().map(|(x, y)| (q(x), q(y))).collect();
    let face = polygon::polygon(&corners).unwrap();
    seen.add(&face);
    seen.add(&polygon::polygon_perimeter(&corners, true).unwrap());
    let heights: Vec<_> = corners.iter().map(|c| c.1.clone()).collect();
    seen.add(&polygon::extent(&heights).unwrap());
    let walked = edges::trapezoid_perimeter(&q("2 ft"), &q("3 ft"), &q("48 in"), Some(&q("20 cm"))).unwrap();
    seen.add(&edges::trapezoid_perimeter(&q("2 ft"), &q("3 ft"), &q("48 in"), None).unwrap());
    let reveal = takeoff::reveal(&edges::with_sill(&walked, &q("3 ft")).unwrap(), &q("0.2 m")).unwrap();
    seen.add(&takeoff::reveal(&edges::circumference(&q("26 in")).unwrap(), &q("0.2 m")).unwrap());
    seen.add(&edges::soffit(&q("6 ft"), &q("0.4 m")).unwrap());
    for opening in ["4 ft2", "20 ft2", "40 ft2"] {
        let off = opening_rule::deducted_is1200(&q(opening), opening_rule::Reveal::Equal).unwrap();
        let added = opening_rule::reveals_is1200(&reveal, &q(opening)).unwrap();
        seen.add(&net::net(std::slice::from_ref(&face), &[off], &[added]).unwrap());
        seen.add(&opening_rule::deducted_reed(&q(opening)).unwrap());
    }
    let rock = cone::cone_annulus(&q("3 ft"), &q("24 in"), Some(&q("12 mm")), &q("1 1/4 in"), &q("1.2 m")).unwrap();
    seen.add(&rock);
    seen.add(&cone::cone_annulus(&q("0.3 m"), &q("12 in"), None, &q("18 mm"), &q("1.2 m")).unwrap());
    seen.add(&cone::scratch_cone(&q("3 ft"), &q("24 in"), &q("1/2 in"), &q("3 mm"), &q("1.2 m"), &q("5 %")).unwrap());
}

fn thicknesses(seen: &mut Seen) -> Worked<Volume> {
    let t = relief::mean_thickness(&q("3/8 in"), &q("45 mm"), &q("62 %")).unwrap();
    seen.add(&relief::applied_thickness(&t, &q("12 %"), &q("5 %")).unwrap());
    let depths: Vec<_> = ["1/2 in", "1 1/2 in", "3/8 in", "30 mm", "1 3/4 in"].iter().map(|d| q(d)).collect();
    let grid = relief::depth_grid(&depths, &q("3/8 in"), &q("1 3/4 in")).unwrap();
    for node in [grid.mean.node(), grid.deviation.node(), grid.error.node(), grid.fill.node(), grid.fill_error.node(), grid.points.node()] {
        seen.node(node);
    }
    let face = coats::scratch_face(&q("9 in"), &q("1/2 in")).unwrap();
    for around in [Around::Whole, Around::Half] {
        let ring = coats::annulus(&face, &t, &q("3.2 m"), around).unwrap();
        seen.add(&relief::with_waste(&ring, &q("18 %"), &q("6 %")).unwrap());
        seen.add(&coats::scratch_annulus(&q("0.3 m"), &q("1/2 in"), &q("1/8 in"), &q("2.1 m"), &q("6 %"), around).unwrap());
    }
    seen.add(&coats::ratio_to_flat(&q("0.3 m"), &t).unwrap());
    seen.add(&coats::lifts(&q("2 3/4 in"), &q("12 mm"), &q("1 1/2 in")).unwrap());
    seen.add(&coats::scratch(&q("272 ft2"), &q("1/2 in"), &q("3 mm"), &q("5 %")).unwrap());
    relief::mixed_volume(&q("20.2 m2"), &t, &q("12 %"), &q("5 %")).unwrap()
}

fn mud(seen: &mut Seen, need: &Worked<Volume>) -> Worked<Loads> {
    let solids = [
        Solid { name: "add", mass: q("10 kg"), relative_density: q("1.35") },
        Solid { name: "mor", mass: q("55 lb"), relative_density: q("2.65") },
    ];
    let k = q("1 kg/L");
    let m_w = yields::water_mass(&q("1.2 gal"), &q("1 kg/L")).unwrap();
    let y = yields::load_yield(&yields::solids_volume(&solids, &k).unwrap(), &m_w, &k, &q("14 %")).unwrap();
    seen.add(&yields::absolute_volume(&solids[1], &q("62.4 lb/ft3")).unwrap());
    let dry = yields::dry_load(&solids).unwrap();
    let wet = yields::wet_load(&dry, &m_w).unwrap();
    let density = yields::wet_density(&wet, &y).unwrap();
    seen.add(&yields::air_by_weight(&q("95 lb/ft3"), &density).unwrap());
    let scratch = Scratch { thickness: q("12 mm"), key: q("1/8 in"), density: q("128 lb/ft3") };
    seen.add(&weight::dead_load(&q("1.2 in"), &density, Some(&scratch), &q("4.4 kg/m2")).unwrap());
    seen.add(&weight::coat_weight(&q("1.2 in"), &density).unwrap());
    seen.add(&water::water_to_dry(&m_w, &dry).unwrap());
    let n = loads(need, &y, Step::Half).unwrap();
    seen.add(&n.slack);
    let mixer = batch::capacity(&q("17 gal"), &q("60 %"), &y, Some((&q("300 lb"), &wet)), Step::Half).unwrap();
    seen.add(&mixer.loads);
    let batches = batch::batches(&n.loads, &mixer.loads).unwrap();
    seen.add(&batches.count);
    seen.add(&batches.remainder);
    n.loads
}

fn sums_between(seen: &mut Seen) {
    seen.add(&sums::radius(&q("14 in")).unwrap());
    seen.add(&sums::whole_thickness(&q("1 3/4 in"), &q("12 mm")).unwrap());
    let two = sums::times(&q("155 L"), &q("2")).unwrap();
    seen.add(&sums::volumes(&[q("26.5 ft3"), two]).unwrap());
    seen.add(&sums::usable_volume(&q("17 gal"), &q("60 %")).unwrap());
    seen.add(&sums::batch_volume(&q("2.5 loads"), &q("24.93 L")).unwrap());
    seen.add(&sums::batch_bags(&q("3 loads"), &q("2 bags")).unwrap());
    seen.add(&sums::load_mass(&q("2 bags"), &q("25 kg")).unwrap());
    seen.add(&sums::steps(&q("3"), &q("1 cup")).unwrap());
    seen.add(&sums::masses(&[q("80 lb"), q("11 kg")]).unwrap());
    seen.add(&sums::part_of(&q("25 kg"), &q("50 %")).unwrap());
}

fn water_and_bags(seen: &mut Seen, n: &Worked<Loads>) {
    seen.add(&batch::batch_water(&q("2.5 loads"), &q("4.6 L")).unwrap());
    seen.add(&batch::part_load(&q("1/2 load"), &q("55 lb")).unwrap());
    let charge = batch::charge(&q("3 bags")).unwrap();
    seen.add(&charge.rest);
    let bought = purchase::purchase(n, &q("2 bags"), &q("5 %"), &q("1 load")).unwrap();
    seen.add(&bought.spare);
    let weight = purchase::weight(&bought.bags, &q("25 kg")).unwrap();
    seen.add(&purchase::trips(&weight, &q("3300 lb")).unwrap());
    seen.add(&purchase::pallets(&bought.bags, &q("42 bags")).unwrap().loose);
    seen.add(&carry::steps_added(&q("1 qt 1 pt"), &q("1 cup"), &q("2 loads")).unwrap());
    let next = carry::next_start(&q("1 gal 2 qt"), &q("1.5 L"), &q("2 loads"), &q("1.875 gal")).unwrap();
    seen.add(&carry::batch_start(&q("3 loads"), &next, &q("50 mL")).unwrap());
    seen.add(&carry::left_to_limit(&next, &q("7 L")).unwrap());
    for rung in carry::ladder(&q("1 gal 2 qt"), &q("0.2 L"), &q("7 L"), &q("1/2 load"), &q("1/2 cup")).unwrap() {
        seen.add(&rung.batch);
    }
    seen.add(&water::water_index(&q("27 cups"), &q("5.7 L")).unwrap());
    seen.add(&water::allowance_used(&q("27 cups"), &q("5.7 L"), &q("1.875 gal")).unwrap());
}

#[test]
fn every_formula_prints_arithmetic_that_holds() {
    let mut seen = Seen::default();
    areas(&mut seen);
    outlines(&mut seen);
    let need = thicknesses(&mut seen);
    seen.add(&need);
    let n = mud(&mut seen, &need);
    water_and_bags(&mut seen, &n);
    sums_between(&mut seen);
    air_arithmetic::all(&mut seen);
    seen.add(&open_time::open_time(&q("50 min"), &q("70 °F"), &q("31 °C")).unwrap());
    seen.add(&open_time::carve_time(&q("3 h 30 min"), &q("21 °C"), &q("80 °F")).unwrap());
    cure_arithmetic::all(&mut seen);
    let cap = legible::cap_height(&q("1 m"), &q("300")).unwrap();
    let size = legible::type_size(&cap, &q("71 %")).unwrap();
    seen.add(&legible::lines(&q("10 in"), &size, &q("1.2")).unwrap());
    for node in crate::day::nodes().into_iter().chain(crate::sun::nodes()) {
        seen.node(&node);
    }

    works_lines::all(&mut seen);

    let known: BTreeSet<String> = sources::all().flat_map(|s| s.formulas).map(|f| (*f).to_owned()).collect();
    let missed: Vec<_> = known.difference(&seen.0).collect();
    assert!(missed.is_empty(), "never printed here: {missed:?}");
}

/// Values that break formulas which do not look first.
const NUMBERS: [&str; 6] = ["-1", "0", "0.001", "1/2", "1", "1000"];

fn each<S: Sort>(unit: &str) -> Vec<Worked<S>> {
    NUMBERS.iter().map(|n| q(format!("{n} {unit}").trim())).collect()
}

#[test]
fn no_input_panics() {
    let (ft, inches, shares, n) = (each("ft"), each("mm"), each("%"), each("loads"));
    let (gal, litres, lb, sg) = (each("gal"), each("L"), each("lb"), each(""));
    let (d, reading, bags) = (each("lb/ft3"), each("°F"), each("bags"));
    let mut answers = 0;
    let mut count = |ok: bool| answers += usize::from(ok);
    for a in 0..NUMBERS.len() {
        for b in 0..NUMBERS.len() {
            count(arches::segmental_opening(&ft[a], &ft[b], &inches[a]).is_ok());
            count(arches::arc(&ft[a], &inches[b]).is_ok());
            count(arches::semicircular_perimeter(&ft[a], &ft[b]).is_ok());
            count(takeoff::trapezoid(&ft[a], &inches[b], &ft[b]).is_ok());
            count(relief::depth_grid(&[inches[a].clone(), inches[b].clone()], &inches[a], &inches[b]).is_ok());
            count(coats::ratio_to_flat(&ft[a], &inches[b]).is_ok());
            count(loads(&gal[a], &litres[b], Step::Half).is_ok());
            count(batch::batches(&n[a], &n[b]).is_ok());
            count(batch::part_load(&n[a], &lb[b]).is_ok());
            count(batch::charge(&bags[a]).is_ok());
            count(purchase::purchase(&n[a], &bags[b], &shares[b], &n[b]).is_ok());
            count(purchase::pallets(&bags[a], &bags[b]).is_ok());
            count(purchase::trips(&lb[a], &lb[b]).is_ok());
            count(water::water_to_dry(&lb[a], &lb[b]).is_ok());
            count(water::water_index(&gal[a], &litres[b]).is_ok());
            count(yields::wet_density(&lb[a], &gal[b]).is_ok());
            count(yields::air_by_weight(&d[a], &d[b]).is_ok());
            count(open_time::factor(&reading[a], &reading[b]).is_ok());
            count(weight::coat_weight(&inches[a], &d[b]).is_ok());
            count(legible::cap_height(&ft[a], &sg[b]).is_ok());
            for c in 0..NUMBERS.len() {
                count(takeoff::frustum(&ft[a], &ft[b], &inches[c]).is_ok());
                count(edges::trapezoid_perimeter(&ft[a], &inches[b], &ft[c], Some(&inches[a])).is_ok());
                count(cone::cone_annulus(&ft[a], &inches[b], Some(&inches[c]), &inches[a], &ft[c]).is_ok());
                let corners = [(&ft[a], &inches[b]), (&ft[b], &inches[c]), (&inches[c], &ft[a]), (&ft[c], &ft[a])];
                let corners = corners.map(|(x, y)| (x.clone(), y.clone()));
                count(polygon::polygon(&corners).is_ok());
                count(polygon::polygon_perimeter(&corners, false).is_ok());
                count(relief::mean_thickness(&inches[a], &inches[b], &shares[c]).is_ok());
                count(relief::with_waste(&gal[a], &shares[b], &shares[c]).is_ok());
                count(coats::lifts(&inches[a], &inches[b], &inches[c]).is_ok());
                count(coats::annulus(&ft[a], &inches[b], &ft[c], Around::Half).is_ok());
                count(yields::load_yield(&gal[a], &lb[b], &d[c], &shares[b]).is_ok());
                count(batch::capacity(&gal[a], &shares[b], &gal[c], Some((&lb[a], &lb[b])), Step::Whole).is_ok());
                count(carry::steps_added(&gal[a], &litres[b], &n[c]).is_ok());
                count(carry::next_start(&gal[a], &litres[b], &n[c], &gal[5]).is_ok());
                count(carry::batch_start(&n[a], &gal[b], &litres[c]).is_ok());
                count(carry::ladder(&gal[a], &litres[b], &gal[c], &n[b], &litres[a]).is_ok());
                count(water::allowance_used(&gal[a], &litres[b], &gal[c]).is_ok());
                count(legible::lines(&ft[a], &inches[b], &sg[c]).is_ok());
            }
        }
    }
    assert!(answers > 500, "{answers} answers");
}
