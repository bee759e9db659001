//! Absolute volumes, bag yields, densities of published mixes, older quantity rules.

use hodbook::quantity::Node;
use hodbook::quantity::expr::{Density, Mass, Volume, Worked};
use hodbook::trade::relief::mixed_volume;
use hodbook::trade::takeoff::rectangle;
use hodbook::trade::yields::{
    Solid, absolute_volume as grains, air_by_weight, dry_load, load_yield, solids_volume, water_mass, wet_density, wet_load,
};

use crate::run::How::{Computed, Found, Memory};
use crate::run::{Run, gives, q};

fn solid(name: &'static str, mass: &str, relative_density: &str) -> Solid {
    Solid { name, mass: q(mass), relative_density: q(relative_density) }
}

/// Air-free density of the cube mortar of ASTM C185 with `water` grams.
fn air_free(water: &str) -> Worked<Density> {
    let solids = [solid("cement", "350 g", "3.15"), solid("sand", "1400 g", "2.65")];
    let k = q("1 g/mL");
    let y = load_yield(&solids_volume(&solids, &k).unwrap(), &q(water), &k, &q("0 %")).unwrap();
    wet_density(&wet_load(&dry_load(&solids).unwrap(), &q(water)).unwrap(), &y).unwrap()
}

/// Examples of the absolute-volume method.
pub fn absolute_volume(run: &mut Run) {
    let si = q("1000 kg/m3");
    run.row("AV-09", "ACI 211.1, SI sample problem", Computed);
    let (cement, coarse, fine) = (solid("c", "292 kg", "3.15"), solid("ca", "1136 kg", "2.68"), solid("fa", "772 kg", "2.64"));
    gives(&grains(&cement, &si).unwrap(), "m3", "0.0927");
    gives(&grains(&coarse, &si).unwrap(), "m3", "0.4239");
    gives(&grains(&fine, &si).unwrap(), "m3", "0.2924");
    let all = solids_volume(&[cement, coarse, fine], &si).unwrap();
    gives(&load_yield(&all, &q("181 kg"), &si, &q("1 %")).unwrap(), "m3", "1.000");

    run.row("AV-11", "ASTM C185, absolute volumes", Memory);
    let seventh = [solid("cement", "100 g", "3.15"), solid("sand", "400 g", "2.65")];
    gives(&solids_volume(&seventh, &q("1 g/mL")).unwrap(), "mL", "182.689");
    // 820 g in the 400 mL measure, water 66 % of 350 g; and so on.
    for (id, seen, water, air) in
        [("AV-12", "2.05 g/mL", "231 g", "9.927"), ("AV-13", "2.15 g/mL", "238 g", "5.109"), ("AV-14", "2.2 g/mL", "239.75 g", "2.794")]
    {
        run.row(id, "air by ASTM C185, exact absolute volumes", Computed);
        gives(&air_by_weight(&q(seen), &air_free(water)).unwrap(), "%", air);
    }

    let us = q("62.4 lb/ft3");
    run.row("AV-16", "volumetric batching article, its misprint mended", Found);
    run.disputed("prints 3.15 × 62.4 as 196.65; held to 196.56");
    let cement = grains(&solid("c", "94 lb", "3.15"), &us).unwrap();
    gives(&wet_density(&q("94 lb"), &cement).unwrap(), "lb/ft3", "196.56");
    run.row("AV-17", "worked from relative density", Computed);
    let sand = solid("s", "80 lb", "2.65");
    let volume = grains(&sand, &us).unwrap();
    gives(&volume, "ft3", "0.48379");
    gives(&air_by_weight(&q("80 lb/ft3"), &wet_density(&sand.mass, &volume).unwrap()).unwrap(), "%", "51.62");
    run.row("AV-18", "worked from relative density", Computed);
    let parts = [solid("c", "94 lb", "3.15"), solid("l", "20 lb", "2.30"), solid("s", "360 lb", "2.65")];
    for (part, printed) in parts.iter().zip(["0.4782", "0.1394", "2.1771"]) {
        gives(&grains(part, &us).unwrap(), "ft3", printed);
    }
    gives(&solids_volume(&parts, &us).unwrap(), "ft3", "2.7946");
    run.row("RL-08", "rule 38 checked by absolute volume", Computed);
    gives(&grains(&solid("c", "893 lb", "3.15"), &us).unwrap(), "ft3", "4.543");
    gives(&grains(&solid("s", "2280 lb", "2.65"), &us).unwrap(), "ft3", "13.788");
}

/// Yields of pre-blended bags: 16 % water by dry mass, 62.37 lb/ft3. Worked, not published.
pub fn bag_yields(run: &mut Run) {
    // Masses of cement, lime and sand to one 94-lb bag of cement.
    const S: [i64; 3] = [94, 20, 360];
    const N: [i64; 3] = [94, 40, 480];
    // The row does not state its sand: 1 : 1/4 : 3 closes it, 1 : 1/4 : 3 3/4 (row MX-06) would give 0.5049 ft3.
    const M: [i64; 3] = [94, 10, 240];
    for (id, mix, bag, air, y, d, water, gal) in [
        ("BY-02", S, "80 lb", "8 %", "0.7360", "126.09", "12.80", "1.535"),
        ("BY-03", S, "80 lb", "12 %", "0.7695", "120.60", "12.80", "1.535"),
        ("BY-04", S, "60 lb", "8 %", "0.5520", "126.09", "9.60", "1.151"),
        ("BY-05", N, "80 lb", "0 %", "0.6823", "136.01", "12.80", "1.535"),
        ("BY-06", N, "80 lb", "8 %", "0.7416", "125.13", "12.80", "1.535"),
        ("BY-09", M, "60 lb", "0 %", "0.5028", "138.42", "9.60", "1.151"),
    ] {
        run.row(id, "worked from relative densities", Computed);
        let k: Worked<Density> = q("62.37 lb/ft3");
        let whole: Worked<Mass> = q(bag);
        let sum = mix.iter().sum();
        let part = |i: usize| Worked::<Mass>::new(whole.named("bag") * Node::given(mix[i], sum));
        let solids = [("c", "3.15"), ("l", "2.30"), ("s", "2.65")].iter().enumerate();
        let solids: Vec<Solid> = solids.map(|(i, (name, sg))| Solid { name, mass: part(i), relative_density: q(sg) }).collect();
        let m_w = Worked::<Mass>::new(whole.named("bag") * Node::given(16, 100));
        gives(&m_w, "lb", water);
        gives(&grains(&Solid { name: "w", mass: m_w.clone(), relative_density: q("1") }, &k).unwrap(), "gal", gal);
        let volume = load_yield(&solids_volume(&solids, &k).unwrap(), &m_w, &k, &q(air)).unwrap();
        gives(&volume, "ft3", y);
        gives(&wet_density(&wet_load(&dry_load(&solids).unwrap(), &m_w).unwrap(), &volume).unwrap(), "lb/ft3", d);
    }
}

/// Wet densities of published perlite mixes; sand at 100 lb/ft3, perlite at 8.
pub fn perlite(run: &mut Run) {
    struct Mix(&'static str, &'static [&'static str], &'static str, &'static str, &'static str);
    let guide = "perlite concrete mix designs per cubic yard";
    let institute = "product guide, perlite concrete";
    // The cubic-yard sheet closes with 8.345 lb/gal, the guide with the handbook's 8.33.
    let mixes = [
        (guide, "8.345 lb/gal", Mix("PM-05", &["634.5 lb", "216 lb"], "61 gal", "27 ft3", "50.4")),
        (guide, "8.345 lb/gal", Mix("PM-06", &["507.6 lb", "216 lb"], "59.5 gal", "27 ft3", "45.2")),
        (guide, "8.345 lb/gal", Mix("PM-08", &["317.72 lb", "216 lb"], "54 gal", "27 ft3", "36.5")),
        (institute, "8.33 lb/gal", Mix("PM-09", &["94 lb", "64 lb"], "16 gal", "8 ft3", "36.4")),
        (institute, "8.33 lb/gal", Mix("PM-10", &["94 lb", "48 lb"], "13 gal", "6 ft3", "41.7")),
        (institute, "8.33 lb/gal", Mix("PM-11", &["94 lb", "40 lb"], "11 gal", "5 ft3", "45.1")),
        (institute, "8.33 lb/gal", Mix("PM-12", &["94 lb", "32 lb"], "10 gal", "4 ft3", "52.3")),
        (institute, "8.33 lb/gal", Mix("PM-13", &["94 lb", "8.8 lb", "210 lb"], "7.8 gal", "3.5 ft3", "108")),
    ];
    for (source, constant, Mix(id, masses, water, volume, density)) in mixes {
        run.row(id, source, Computed);
        let solids: Vec<Solid> = masses.iter().map(|m| solid("part", m, "1")).collect();
        let m_w = water_mass(&q(water), &q(constant)).unwrap();
        let wet = wet_load(&dry_load(&solids).unwrap(), &m_w).unwrap();
        gives(&wet_density(&wet, &q(volume)).unwrap(), "lb/ft3", density);
    }
}

/// Dry loads by parts, toppings and washes.
pub fn older(run: &mut Run) {
    for (id, source, masses, dry, how) in [
        ("MX-03", "unit weights of ASTM C270", ["94 lb", "20 lb", "360 lb"], "474", Computed),
        ("MX-06", "unit weights of ASTM C270", ["94 lb", "10 lb", "300 lb"], "404", Computed),
        ("MX-07", "lime bulletin on cement-lime mortar", ["94 lb", "80 lb", "720 lb"], "894", Found),
    ] {
        run.row(id, source, how);
        let solids: Vec<Solid> = masses.iter().map(|m| solid("part", m, "2.6")).collect();
        gives(&dry_load(&solids).unwrap(), "lb", dry);
    }
    let none = || q("0 %");
    run.row("RL-11", "a carpentry text of 1916, appendix of estimating", Found);
    let floor = rectangle(&q("24 ft"), &q("40 ft")).unwrap();
    let topping: Worked<Volume> = mixed_volume(&floor, &q("1 in"), &none(), &none()).unwrap();
    gives(&topping, "ft3", "80");
    run.row("RL-14", "concrete for the home and the farm, example", Computed);
    gives(&mixed_volume(&q("15 yd2"), &q("0.0889 in"), &none(), &none()).unwrap(), "ft3", "1.00");
    gives(&mixed_volume(&q("400 yd2"), &q("0.0889 in"), &none(), &none()).unwrap(), "ft3", "26.67");
}
