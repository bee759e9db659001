//! Worked numbers of the demo's expected answers, and F7, its orders.

use hodbook::quantity::expr::{Area, Length, Share, Volume, Worked};
use hodbook::trade::relief::{mean_thickness, mixed_volume, with_waste};
use hodbook::trade::takeoff::{Around, column, frustum, rectangle, reveal};
use hodbook::trade::{arches, coats, cone, net, purchase, sums};

use crate::run::q;
use crate::worked::{Book, carve, light, scratch};
use crate::worked_walls::{Walls, inn_mud, need, rubble};

/// What the museum takes: its mud by surface, as the design first had it and as corrected.
fn museum(book: &mut Book) {
    let wall = museum_wall(book);
    let six = |v: Worked<Volume>| sums::times(&v, &q("6")).unwrap();
    let trunks = net::times(&column(&q("18 in"), &q("10.5 ft"), Around::Whole).unwrap(), &q("6")).unwrap();
    book.line("demo", "BF-2", &trunks, "ft2", "296.88");
    let rock = frustum(&q("3 ft"), &q("2 ft"), &q("4 ft")).unwrap();
    book.line("demo", "BF-3", &rock, "ft2", "64.77");
    let plank = mean_thickness(&q("1/4 in"), &q("3/4 in"), &q("82 %")).unwrap();
    let bark = mean_thickness(&q("1/2 in"), &q("2 in"), &q("50 %")).unwrap();
    let planks = mixed_volume(&wall, &plank, &q("10 %"), &q("5 %")).unwrap();
    book.line("demo", "plank", &planks, "ft3", "26.75");
    let ring = |r: &Worked<Length>| {
        with_waste(&six(coats::annulus(r, &bark, &q("10.5 ft"), Around::Whole).unwrap()), &q("18 %"), &q("6 %")).unwrap()
    };
    let old = ring(&q("9 in"));
    book.line("demo", "bark from the core", &old, "ft3", "42.91");
    let flat = mixed_volume(&rock, &rubble(), &q("12 %"), &q("5 %")).unwrap();
    book.line("demo", "rock as flat", &flat, "ft3", "7.92");
    let on_cone = cone::cone_annulus(&q("3 ft"), &q("2 ft"), Some(&q("1/2 in")), &rubble(), &q("4 ft")).unwrap();
    let on_cone = with_waste(&on_cone, &q("12 %"), &q("5 %")).unwrap();
    const CONE: &str = "the rock base as rings on its cone takes 8.21 and 3.59 ft³";
    book.ours("demo", "rock", &on_cone, "ft3", ["8.21", "7.92"], CONE);
    let carve = carve("1.5 gal");
    let first = sums::volumes(&[planks.clone(), old, flat.clone()]).unwrap();
    book.line("demo", "BF mud", &first, "ft3", "77.578");
    need(book, "demo", "BF", &first, &carve, ["83.074", "83.5"]);
    let ringed = ring(&coats::scratch_face(&q("9 in"), &q("1/2 in")).unwrap());
    let corrected = sums::volumes(&[planks, ringed, flat]).unwrap();
    book.line("demo", "BF mud, corrected", &corrected, "ft3", "79.81");
    need(book, "demo", "BF, corrected", &corrected, &carve, ["85.46", "85.5"]);

    let coat = |a: &Worked<Area>, t: &str| coats::scratch(a, &q(t), &q("1/8 in"), &q("5 %")).unwrap();
    let first = sums::volumes(&[coat(&wall, "3/8 in"), coat(&trunks, "1/2 in"), coat(&rock, "1/2 in")]).unwrap();
    book.line("demo", "BF scratch as flat", &first, "ft3", "38.064");
    need(book, "demo", "BF scratch as flat", &first, &scratch(), ["51.051", "51.5"]);
    let trunk = coats::scratch_annulus(&q("9 in"), &q("1/2 in"), &q("1/8 in"), &q("10.5 ft"), &q("6 %"), Around::Whole).unwrap();
    let corrected = sums::volumes(&[coat(&wall, "3/8 in"), six(trunk), coat(&rock, "1/2 in")]).unwrap();
    book.line("demo", "BF scratch, corrected", &corrected, "ft3", "38.81");
    need(book, "demo", "BF scratch, corrected", &corrected, &scratch(), ["52.05", "52.5"]);
    let under = cone::scratch_cone(&q("3 ft"), &q("2 ft"), &q("1/2 in"), &q("1/8 in"), &q("4 ft"), &q("5 %")).unwrap();
    book.ours("demo", "rock, scratch", &under, "ft3", ["3.59", "3.55"], CONE);
}

fn museum_wall(book: &mut Book) -> Worked<Area> {
    let gross = [rectangle(&q("48 ft"), &q("11 ft")).unwrap()];
    let doors = net::times(&rectangle(&q("6 ft"), &q("7 ft")).unwrap(), &q("2")).unwrap();
    let arch = arches::semicircular_opening(&q("8 ft"), &q("5 ft")).unwrap();
    let legs = arches::rectangular_perimeter(&q("6 ft"), &q("7 ft"), arches::Sides::Three).unwrap();
    let backs = [
        net::times(&reveal(&legs, &q("6 in")).unwrap(), &q("2")).unwrap(),
        reveal(&arches::semicircular_perimeter(&q("8 ft"), &q("5 ft")).unwrap(), &q("9 in")).unwrap(),
    ];
    let wall = net::net(&gross, &[doors, arch], &backs).unwrap();
    book.line("demo", "BF-1", &wall, "ft2", "415.79");
    wall
}

/// What the basin takes: metric, no scratch coat.
fn basin(book: &mut Book) {
    let arch = arches::semicircular_opening(&q("2.4 m"), &q("1.5 m")).unwrap();
    let back = reveal(&arches::semicircular_perimeter(&q("2.4 m"), &q("1.5 m")).unwrap(), &q("0.45 m")).unwrap();
    let wall = net::net(&[rectangle(&q("9.6 m"), &q("3.2 m")).unwrap()], &[arch], &[back]).unwrap();
    book.line("demo", "SB-1", &wall, "m2", "27.905");
    let lip: Worked<Area> = rectangle(&q("14 m"), &q("0.4 m")).unwrap();
    book.line("demo", "SB-2", &lip, "m2", "5.600");
    book.line("demo", "SB-3", &net::times(&column(&q("0.6 m"), &q("2.1 m"), Around::Whole).unwrap(), &q("2")).unwrap(), "m2", "7.917");
    let rock = mean_thickness(&q("12 mm"), &q("65 mm"), &q("48 %")).unwrap();
    let pier = coats::annulus(&q("300 mm"), &q("18 mm"), &q("2.1 m"), Around::Whole).unwrap();
    let piers = sums::times(&pier, &q("2")).unwrap();
    let mud = |w: [Worked<Share>; 2]| {
        let flat = |a: &Worked<Area>, t: &Worked<Length>| mixed_volume(a, t, &w[0], &w[1]).unwrap();
        sums::volumes(&[flat(&wall, &rock), flat(&lip, &q("22 mm")), with_waste(&piers, &w[0], &w[1]).unwrap()]).unwrap()
    };
    book.line("demo", "SB finished", &mud([q("0 %"), q("0 %")]), "L", "1314.7");
    let mixed = mud([q("15 %"), q("6 %")]);
    book.line("demo", "SB mixed", &mixed, "L", "1645.5");
    let load = light();
    book.line("F5", "yield of LITE-10M", &load.yields, "L", "24.932");
    need(book, "F5", "SB", &mixed, &load, ["65.9984", "66.0"]);
    need(book, "demo", "SB", &mixed, &load, ["65.9984", "66.0"]);
}

fn orders(book: &mut Book) {
    let bags = |n: &str| purchase::purchase(&q(n), &q("1 bag"), &q("5 %"), &q("1 load")).unwrap().bags;
    for (loads, printed) in [("83.5 loads", "88"), ("51.5 loads", "55"), ("34.5 loads", "37"), ("20 loads", "21"), ("66 loads", "70")] {
        book.line("F7", loads, &bags(loads), "", printed);
    }
    let weigh = |carve: &str, under: &str| {
        let of = |n: &str, m: &str| purchase::weight(&bags(n), &q(m)).unwrap();
        sums::masses(&[of(carve, "104 lb"), of(under, "85 lb")]).unwrap()
    };
    const ORDERS: &str = "purchases with the corrected loads are 37 and 22 bags, 5,718 lb, and 90 and 56 bags, 14,120 lb";
    let museum = weigh("83.5 loads", "51.5 loads");
    book.line("F7", "BF", &museum, "lb", "13827");
    book.line("F7", "LF", &weigh("34.5 loads", "20 loads"), "lb", "5633");
    book.ours("F7", "BF, corrected loads", &weigh("85.5 loads", "52.5 loads"), "lb", ["14120", "13827"], ORDERS);
    book.ours("F7", "BF, corrected carve", &bags("85.5 loads"), "", ["90", "88"], ORDERS);
    book.ours("F7", "BF, corrected scratch", &bags("52.5 loads"), "", ["56", "55"], ORDERS);
    book.ours("F7", "LF, corrected loads", &weigh("34.5 loads", "20.5 loads"), "lb", ["5718", "5633"], ORDERS);
    book.ours("F7", "LF, corrected scratch", &bags("20.5 loads"), "", ["22", "21"], ORDERS);
    let stacks = purchase::pallets(&bags("83.5 loads"), &q("42 bags")).unwrap();
    book.line("F7", "full pallets", &stacks.full, "", "2");
    book.line("F7", "loose bags", &stacks.loose, "", "4");
    book.line("F7", "trips", &purchase::trips(&museum, &q("3300 lb")).unwrap(), "", "5");
    book.line("F7", "SB", &purchase::weight(&bags("66 loads"), &q("35 kg")).unwrap(), "kg", "2450");
}

/// F7 and the demo.
pub fn lines(book: &mut Book, walls: &Walls, flat_scratch: &Worked<Volume>) {
    museum(book);
    basin(book);
    orders(book);
    let mud = sums::volumes(&inn_mud(walls)).unwrap();
    book.line("demo", "LF", &walls.lf, "ft2", "271.96");
    book.line("demo", "LF mud", &mud, "ft3", "32.014");
    need(book, "demo", "LF", &mud, &carve("1.5 gal"), ["34.282", "34.5"]);
    need(book, "demo", "LF scratch, formula", flat_scratch, &scratch(), ["19.9972", "20.0"]);
}
