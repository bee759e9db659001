//! Worked numbers F6 and F8 to F13: batches, water, pigment, drying, temperatures.

use hodbook::quantity::expr::{Drying, Loads, Worked};
use hodbook::trade::batch::{batch_water, batches, capacity, charge, part_load};
use hodbook::trade::carry::{batch_start, left_to_limit, next_start};
use hodbook::trade::evaporation::{Air, evaporation};
use hodbook::trade::loads::Step;
use hodbook::trade::mix_targets::{dry_share, ice_for, moves, water_share, water_temperature};
use hodbook::trade::mix_temperature::{Batch, Dry, mix_temperature};
use hodbook::trade::open_time::{factor, open_time};
use hodbook::trade::pigment::{cement, most_pigment, pigment};
use hodbook::trade::water::{allowance_used, water_index, water_to_dry};
use hodbook::trade::{sums, yields};

use crate::run::q;
use crate::worked::{Book, Load, carve};

fn mixers(book: &mut Book) {
    let (start, limit) = (carve("1.5 gal"), carve("1.875 gal"));
    let takes = |mixer: &str, fill: &str, load: &Load| capacity(&q(mixer), &q(fill), &load.yields, None, Step::Whole).unwrap();
    book.line("F6", "pan, usable", &sums::usable_volume(&q("4.5 ft3"), &q("65 %")).unwrap(), "ft3", "2.925");
    book.line("F6", "pan, at start water", &takes("4.5 ft3", "65 %", &start).loads, "", "3");
    book.line("F6", "tub, usable", &sums::usable_volume(&q("17 gal"), &q("60 %")).unwrap(), "ft3", "1.364");
    book.line("F6", "tub, by volume", &takes("17 gal", "60 %", &start).by_volume, "", "1.46");
    book.line("F6", "tub", &takes("17 gal", "60 %", &start).loads, "", "1");
    // As corrected: a batch at its limit water.
    book.line("F6", "pan, at limit water", &takes("4.5 ft3", "65 %", &limit).loads, "", "2");
    book.line("F6", "pan filled to 0.70", &takes("4.5 ft3", "70 %", &limit).loads, "", "3");
    let split = batches(&q("34.5 loads"), &q("2 loads")).unwrap();
    book.line("F6", "full batches", &split.full, "", "17");
    book.line("F6", "the rest", &split.remainder, "", "0.5");
    book.line("F6", "water of the rest", &batch_water(&split.remainder, &q("1.5 gal")).unwrap(), "qt", "3");
    book.line("F6", "mortar of the rest", &part_load(&split.remainder, &q("80 lb")).unwrap(), "lb", "40.0");
    book.line("F6", "additive of the rest", &part_load(&split.remainder, &q("24 lb")).unwrap(), "lb", "12.0");
    let three: Worked<Loads> = q("3 loads");
    let mortar = charge(&sums::batch_bags(&three, &q("1 bag")).unwrap()).unwrap();
    book.line("F6", "3 loads, mortar first", &mortar.first, "", "2");
    book.line("F6", "3 loads, additive", &sums::batch_bags(&three, &q("1 bag")).unwrap(), "", "3");
    book.line("F6", "3 loads, mortar rest", &mortar.rest, "", "1");
    book.line("F6", "3 loads, water", &batch_water(&three, &q("1.5 gal")).unwrap(), "gal", "4.5");
}

fn carried(book: &mut Book) {
    let one = next_start(&q("1.5 gal"), &q("1 qt"), &q("1 load"), &q("1.875 gal")).unwrap();
    book.line("F8", "1.5 gal and a quart", &one, "gal", "1.75");
    book.line("F8", "1 qt 1 pt", &sums::steps(&q("6"), &q("1 cup")).unwrap(), "qt", "1.5");
    let next = next_start(&q("1.5 gal"), &q("1 qt 1 pt"), &q("2 loads"), &q("1.875 gal")).unwrap();
    book.line("F8", "next start", &next, "gal", "1.6875");
    let raised = left_to_limit(&q("1.5 gal"), &next).unwrap();
    book.line("F8", "added for each load", &raised, "cup", "3");
    let batch = batch_start(&q("3 loads"), &next, &q("1 cup")).unwrap();
    book.line("F8", "next batch of three", &batch, "gal", "5.0625");
    // 5 gal 1 cup.
    book.line("F8", "next batch of three", &batch, "cup", "81");
    book.line("F8", "next batch of three", &batch, "L", "19.16");
    book.line("F8", "next start", &next, "cup", "27");
    book.line("F8", "left to the limit", &left_to_limit(&next, &q("1.875 gal")).unwrap(), "cup", "3");
}

fn indices(book: &mut Book) {
    let to_dry = |w: &str| water_to_dry(&yields::water_mass(&q(w), &q("8.345 lb/gal")).unwrap(), &carve(w).dry).unwrap();
    book.line("F9", "water to dry at start", &to_dry("1.5 gal"), "", "0.1204");
    book.ours(
        "F9",
        "water to dry at limit",
        &to_dry("1.875 gal"),
        "",
        ["0.150", "0.1505"],
        "limit water to dry is 0.15045 and prints 0.150",
    );
    book.line("F9", "water to dry at limit, exactly", &to_dry("1.875 gal"), "", "0.15045");
    book.line("F9", "index at limit", &water_index(&q("1.875 gal"), &q("1.5 gal")).unwrap(), "", "125");
    book.line("F9", "index at 27 cups", &water_index(&q("27 cups"), &q("1.5 gal")).unwrap(), "", "112.5");
    book.line("F9", "allowance used", &allowance_used(&q("27 cups"), &q("1.5 gal"), &q("1.875 gal")).unwrap(), "%", "50");
    let cement = cement(&q("80 lb"), &q("22 %")).unwrap();
    let dose = pigment(&cement, &q("4 %"), &q("10 %")).unwrap();
    book.line("F10", "pigment of a load", &dose, "lb", "0.704");
    book.line("F10", "pigment of a load", &dose, "oz", "11.3");
    book.line("F10", "most pigment", &most_pigment(&cement, &q("10 %")).unwrap(), "lb", "1.76");
}

fn drying(book: &mut Book) {
    let rate = |mortar: &str, air: &str, humidity: &str, wind: &str| {
        evaporation(&Air { mortar: q(mortar), air: q(air), humidity: q(humidity), wind: q(wind) }).unwrap()
    };
    book.line::<Drying>("F11", "1 kg/m2/h", &q("1 kg/m2/h"), "lb/ft2/h", "0.2048");
    let hot = rate("88 °F", "92 °F", "24 %", "11 mph");
    book.line("F11", "hot afternoon", &hot, "kg/m2/h", "1.342");
    book.line("F11", "hot afternoon", &hot, "lb/ft2/h", "0.275");
    book.line("F11", "behind a screen, mix cooled", &rate("80 °F", "92 °F", "24 %", "2 mph"), "lb/ft2/h", "0.065");
    book.line("F11", "indoors", &rate("72 °F", "72 °F", "45 %", "3 mph"), "lb/ft2/h", "0.051");
}

fn temperatures(book: &mut Book) {
    let batch = |bags: &str| {
        let water = yields::water_mass(&q("1.5 gal"), &q("8.345 lb/gal")).unwrap();
        Batch { dry: vec![Dry { name: "bags", mass: q("104 lb"), temperature: q(bags), moisture: None }], water, work: None }
    };
    let hot = batch("104 °F");
    let (wet, dry) = (water_share(&hot).unwrap(), dry_share(&hot, "bags").unwrap());
    book.line("F12", "water of a load", &hot.water, "lb", "12.52");
    book.line("F12", "water's part of the heat", &wet, "%", "35.4");
    book.line("F12", "10 °F of water", &moves(&wet, &q("10 °F")).unwrap(), "°F", "3.5");
    book.line("F12", "10 °F of bags", &moves(&dry, &q("10 °F")).unwrap(), "°F", "6.5");
    book.line("F12", "bags 104, water 84", &mix_temperature(&hot, &q("84 °F"), None).unwrap(), "°F", "96.9");
    let needs = |b: &Batch, t: &str| water_temperature(b, &q(t), &q("32 °F"), &q("140 °F")).unwrap();
    book.line("F12", "water for 82", &needs(&hot, "82 °F"), "°F", "41.8");
    book.line("F12", "bags 86, water 60", &mix_temperature(&batch("86 °F"), &q("60 °F"), None).unwrap(), "°F", "76.8");
    book.line("F12", "ice for 80", &ice_for(&hot, &q("70 °F"), &q("80 °F")).unwrap(), "lb", "2.34");
    book.line("F12", "water for 60, bags 42", &needs(&batch("42 °F"), "60 °F"), "°F", "93");
    let open = |t: &str| open_time(&q("50 min"), &q("70 °F"), &q(t)).unwrap();
    book.line("F13", "open time at 85", &open("85 °F"), "min", "29.7");
    book.line("F13", "open time at 92", &open("92 °F"), "min", "23.3");
    // 100 min without the clamp, of which half as much again as the stated 50 is left.
    book.line("F13", "open time at 50", &open("50 °F"), "min", "75");
    book.line("F13", "clamp", &factor(&q("70 °F"), &q("50 °F")).unwrap(), "", "1.5");
    // As corrected: below 0.35 of it no time is printed.
    book.line("F13", "hottest hundred", &factor(&q("70 °F"), &q("100 °F")).unwrap(), "", "0.354");
    let beyond = open_time(&q("50 min"), &q("70 °F"), &q("101 °F")).unwrap_err();
    book.text("F13", "beyond", &beyond.wants.contains("ask the maker").to_string(), "true");
}

/// F6, F8 to F13.
pub fn lines(book: &mut Book) {
    mixers(book);
    carried(book);
    indices(book);
    drying(book);
    temperatures(book);
}
