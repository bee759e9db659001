//! The formulas of labour, money, lath, lifting and the log, once each, in US and metric units mixed.

use hodbook::quantity::expr::{Length, Mass, Plain, Sort, Volume, Worked};
use hodbook::trade::lifting::{Place, Task};
use hodbook::trade::lifting_tables::{Grip, System};
use hodbook::trade::weight::Part;
use hodbook::trade::{cost, error_budget, finish, floor, joints, kits, labour, lath, learning, lifting, limits, log, site_water, weight};

use crate::derivations::Seen;
use crate::run::q;

fn walls(seen: &mut Seen) {
    let part = |a: &str, w: &str| Part { area: q(a), weight: q(w) };
    let parts = [part("100 ft2", "13.1 lb/ft2"), part("1 m2", "125 kg/m2"), part("12 ft2", "18 lb/ft2")];
    seen.add(&weight::heaviest_patch(&parts, &q("32 ft2")).unwrap());
    seen.add(&weight::heaviest_patch(&parts[1..], &q("3 m2")).unwrap());
    seen.add(&weight::base_weight(&q("3.4 lb/yd2"), &q("0.4 kg/m2"), &q("2")).unwrap());
    seen.add(&weight::left_to(&q("125 kg/m2"), &q("20 lb/ft2")).unwrap());
    seen.add(&weight::as_pressure(&q("15 lb/ft2")).unwrap());
    let net = lath::sheet_net(&q("27 in"), &q("2.4 m"), &q("1/2 in"), &q("25 mm")).unwrap();
    seen.add(&lath::sheets(&q("27.9 m2"), &net, &q("5 %")).unwrap());
    seen.add(&lath::fasteners(&q("27.9 m2"), &q("16 in"), &q("175 mm"), &q("10 %"), &q("100")).unwrap());
    seen.add(&lath::paper_rolls(&q("272 ft2"), &q("2"), &q("10 %"), &q("28 m2")).unwrap());
    for (l, h, curved) in [("48 ft", "3.35 m", false), ("9.6 m", "22 ft", true), ("3 ft", "12 ft", false), ("7.7 m", "5 ft", true)] {
        let p = joints::panels(&q(l), &q(h), &joints::panel_limits(curved).unwrap()).unwrap();
        seen.add(&p.count);
        seen.add(&p.joints);
        seen.add(&p.area);
        seen.add(&p.ratio);
        seen.add(&p.run);
    }
    seen.add(&joints::face_height(&q("9 ft"), &q("1.6 m")).unwrap());
    seen.add(&joints::face_width(&q("10 ft"), &q("2 m"), Some(&q("96 in"))).unwrap());
    seen.add(&joints::face_width(&q("10 ft"), &q("2 m"), None).unwrap());
    seen.add(&limits::margin(&limits::FASTENERS, &q::<Length>("150 mm")).unwrap());
    seen.add(&limits::margin(&limits::END_LAP, &q::<Length>("40 mm")).unwrap());
    let textured = |a: &str, f: Worked<Plain>| finish::Textured { area: q(a), factor: f };
    let groove = finish::groove_factor(&q("6 in"), &q("19 mm"), &q("1 in")).unwrap();
    let real = finish::developed(&[textured("415.79 ft2", groove), textured("27.58 m2", q("1.45"))]).unwrap();
    let v = finish::sealer(&real, &q("2"), &q("3.7 m2/L"), &q("8 %")).unwrap();
    seen.add(&finish::cans(&v, &q("5 gal")).unwrap());
}

fn site(seen: &mut Seen) {
    let mixed = |n: &str, w: &str| site_water::Mixed { loads: q(n), water: q(w) };
    let mix = site_water::mix_water(&[mixed("34.5 loads", "1.875 gal"), mixed("66 loads", "5.6 L")]).unwrap();
    let mist = site_water::misting(&q("27.9 m2"), &q("0.02 gal/ft2"), &q("6")).unwrap();
    let wash = site_water::wash_out(&q("10"), &q("20 L")).unwrap();
    let people = site_water::people_water(&q("5"), &q("6"), &q("5 gal")).unwrap();
    seen.add(&site_water::site_water(&mix, &wash, &mist, &people).unwrap());

    let place = labour::task_hours(&q("217.22 ft2"), &q("1"), &q("1.3 m2/h")).unwrap();
    let tasks = [labour::tender_hours(&place, &q("4")).unwrap(), place, q("90 min")];
    let tasks = labour::total_hours(&tasks).unwrap();
    let hours = labour::labour(&tasks, &labour::crew_hours(&q("5"), &q("2"), &q("450 min")).unwrap()).unwrap();
    let costs = [
        cost::load_cost(&q("28.5 loads"), &q("42.70 USD")).unwrap(),
        cost::area_cost(&q("20.18 m2"), &q("1.12 USD/ft2")).unwrap(),
        cost::labour_cost(&hours, &q("62 USD/h")).unwrap(),
    ];
    let price = cost::marked_up(&cost::subtotal(&costs).unwrap(), &q("18 %")).unwrap();
    seen.add(&cost::per_area(&price, &q("20.18 m2")).unwrap());
}

fn at(reach: &str, height: &str) -> Place {
    Place { reach: q(reach), height: q(height), twist: q("30°") }
}

fn lifts(seen: &mut Seen) {
    for system in [System::Us, System::Metric] {
        let travel = lifting::travel(&q("20 in"), &q("102 cm")).unwrap();
        let task = Task { system, travel, rate: q("1 lift/min"), lasts: q("90 min"), grip: Grip::Fair };
        let over = lifting::lift(&q("36 kg"), &at("15 in", "50 cm"), Some(&at("50 cm", "40 in")), &task).unwrap();
        seen.add(&over.index);
        let m = lifting::two_decimals(&lifting::multipliers(&at("15 in", "20 in"), &task).unwrap());
        seen.add(&lifting::advised(system, &m).unwrap());
    }
    let m: Worked<Mass> = floor::pallet_weight(&q("42 bags"), &q("80 lb"), &q("18 kg")).unwrap();
    seen.add(&floor::floor_load(&m, &q("48 in"), &q("1 m")).unwrap());
    let capacity = floor::platform_capacity(&q("25 lb/ft2"), &q("4.6 m2")).unwrap();
    let on = |n: &str, each: &str| floor::OnDeck { count: q(n), each: q(each) };
    let left = floor::left_on_platform(&capacity, &floor::on_deck(&[on("3", "250 lb"), on("1", "14 kg")]).unwrap()).unwrap();
    seen.add(&floor::allowed(&left, &q("25 kg")).unwrap());
}

fn records(seen: &mut Seen) {
    let thickness = error_budget::relative::<Length>(&q("3 mm"), &q("1.228 in")).unwrap();
    let part = |name: &str, error| error_budget::Part { name: name.to_owned(), error };
    let rest = error_budget::budget(&[part("air", error_budget::of_air(&q("2 %"), &q("9 %")).unwrap()), part("bags", q("1.6 %"))]).unwrap();
    seen.add(&rest.total);
    seen.add(&rest.largest_share);
    seen.add(&error_budget::more_pins(&q("12"), &thickness, &rest.total, &q("6 %")).unwrap());

    let totals: Vec<Worked<Volume>> = ["52 cups", "3.2 gal", "13 L", "54 cups"].iter().map(|t| q(t)).collect();
    seen.add(&log::slope(&totals).unwrap());
    let d2 = log::mean_range_of_two();
    let all = log::chart(&totals, &log::width(&d2).unwrap()).unwrap();
    seen.add(&all.upper);
    seen.add(&all.lower);
    seen.add(&log::upper_range(&all.range, &log::range_width(&d2).unwrap()).unwrap());
    seen.add(&log::moving_range(&totals[0], &totals[2]));
    seen.add(&log::off_target(&totals[2], &totals[0]).unwrap());

    let net = learning::net_per_load(&q("126 ft2"), &q("31 mm"), &q("17.5 loads")).unwrap();
    let planned = learning::planned_per_load(&q("26.4 L"), &q("12 %"), &q("5 %")).unwrap();
    let waste = |v: &Worked<Volume>| learning::waste(v, &q("26.4 L")).unwrap();
    seen.add(&learning::blend(&waste(&planned), &q("20 loads"), &waste(&net), &q("17.5 loads")).unwrap());

    let teams = kits::teams(&q("14"), &q("3")).unwrap();
    seen.add(&kits::class_loads(&teams, &q("1 load"), &q("2 loads"), &q("1 load"), &q("1.5 loads")).unwrap());
    seen.add(&kits::gloves(&q("5"), &q("2"), &q("15 %")).unwrap());
    seen.add(&kits::handouts(&q("9"), &q("2")).unwrap());
}

/// Every formula of these families.
pub fn all(seen: &mut Seen) {
    walls(seen);
    site(seen);
    lifts(seen);
    records(seen);
}

const NUMBERS: [&str; 6] = ["-1", "0", "0.001", "1/2", "1", "1000"];

fn each<S: Sort>(unit: &str) -> Vec<Worked<S>> {
    NUMBERS.iter().map(|n| q(format!("{n} {unit}").trim())).collect()
}

#[test]
fn no_input_panics() {
    let (ft, inches, ft2, shares) = (each("ft"), each("in"), each("ft2"), each("%"));
    let (lb, gal, n) = (each::<Mass>("lb"), each::<Volume>("gal"), each("loads"));
    let counts = each::<Plain>("");
    let (hours, areal, money) = (each("h"), each("lb/ft2"), each("USD"));
    let (rates, twists) = (each("lift/min"), each("°"));
    let mut answers = 0;
    let mut count = |ok: bool| answers += usize::from(ok);
    for a in 0..NUMBERS.len() {
        for b in 0..NUMBERS.len() {
            let part = |i: usize, j: usize| Part { area: ft2[i].clone(), weight: areal[j].clone() };
            count(weight::heaviest_patch(&[part(a, b), part(b, a)], &ft2[a]).is_ok());
            count(weight::left_to(&areal[a], &areal[b]).is_ok());
            count(weight::as_pressure(&areal[a]).is_ok());
            count(limits::margin(&limits::LATH_MASS, &areal[a]).is_ok());
            count(finish::developed(&[finish::Textured { area: ft2[a].clone(), factor: counts[b].clone() }]).is_ok());
            count(finish::cans(&gal[a], &gal[b]).is_ok());
            count(labour::task_hours(&ft2[a], &counts[b], &q("14 ft2/h")).is_ok());
            count(labour::tender_hours(&hours[a], &counts[b]).is_ok());
            count(labour::labour(&hours[a], &hours[b]).is_ok());
            count(cost::load_cost(&n[a], &money[b]).is_ok());
            count(cost::subtotal(&[money[a].clone(), money[b].clone()]).is_ok());
            count(cost::per_area(&money[a], &ft2[b]).is_ok());
            count(lifting::index(&lb[a], &lb[b]).is_ok());
            count(floor::allowed(&lb[a], &lb[b]).is_ok());
            count(floor::platform_capacity(&areal[a], &ft2[b]).is_ok());
            count(error_budget::relative(&lb[a], &lb[b]).is_ok());
            count(error_budget::of_air(&shares[a], &shares[b]).is_ok());
            let part = |i: usize| error_budget::Part { name: "x".to_owned(), error: shares[i].clone() };
            count(error_budget::budget(&[part(a), part(b)]).is_ok());
            count(log::slope(&[gal[a].clone(), gal[b].clone()]).is_ok());
            count(log::chart(&[gal[a].clone(), gal[b].clone()], &counts[b]).is_ok());
            count(log::range_width(&counts[a]).is_ok());
            count(learning::waste(&gal[a], &gal[b]).is_ok());
            count(learning::blend(&shares[a], &n[b], &shares[b], &n[a]).is_ok());
            count(kits::teams(&counts[a], &counts[b]).is_ok());
            for c in 0..NUMBERS.len() {
                count(lath::sheet_net(&ft[a], &ft[b], &inches[c], &inches[a]).is_ok());
                count(lath::fasteners(&ft2[a], &inches[b], &inches[c], &shares[a], &counts[b]).is_ok());
                count(lath::paper_rolls(&ft2[a], &counts[b], &shares[c], &ft2[b]).is_ok());
                let limits = joints::PanelLimits { side: ft[b].clone(), area: ft2[c].clone(), ratio: counts[4].clone() };
                count(joints::panels(&ft[a], &inches[c], &limits).is_ok());
                count(finish::groove_factor(&ft[a], &inches[b], &inches[c]).is_ok());
                count(site_water::misting(&ft2[a], &inches[b], &counts[c]).is_ok());
                count(floor::floor_load(&lb[a], &ft[b], &inches[c]).is_ok());
                count(error_budget::more_pins(&counts[a], &shares[b], &shares[c], &shares[4]).is_ok());
                count(learning::net_per_load(&ft2[a], &inches[b], &n[c]).is_ok());
                let place = Place { reach: inches[a].clone(), height: inches[b].clone(), twist: twists[c].clone() };
                let task = Task {
                    system: System::Us,
                    travel: inches[c].clone(),
                    rate: rates[b].clone(),
                    lasts: hours[a].clone(),
                    grip: Grip::Poor,
                };
                count(lifting::lift(&lb[c], &place, Some(&place), &task).is_ok());
            }
        }
    }
    assert!(answers > 500, "{answers} answers");
}
