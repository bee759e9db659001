//! Worked numbers F18 to F30: weight, lath, color, water on site, cost, logs, classes, lifting, paper, rounding.

use hodbook::quantity::expr::{Areal, Length, Mass, Volume, Worked};
use hodbook::quantity::{Node, Num, Quantity, show, units};
use hodbook::trade::error_budget::{Part, budget, of_air, relative};
use hodbook::trade::finish::{Textured, developed, groove_factor, sealer};
use hodbook::trade::floor::{OnDeck, floor_load, on_deck, pallet_weight, platform_capacity};
use hodbook::trade::lifting::{Place, Task, lift, multipliers};
use hodbook::trade::lifting_tables::{Grip, System};
use hodbook::trade::loads::{Step, loads};
use hodbook::trade::site_water::{Mixed, misting, mix_water, people_water, site_water, wash_out};
use hodbook::trade::weight::{Scratch, dead_load};
use hodbook::trade::{coats, cost, joints, kits, labour, lath, learning, legible, log, purchase, relief, sums, takeoff};

use crate::run::{digits, q};
use crate::worked::{Book, carve, light, scratch};
use crate::worked_day;
use crate::worked_walls::Walls;

fn weights(book: &mut Book) {
    let (d, d_s) = (carve("1.5 gal").density(), scratch().density());
    let flat = |t: &str| dead_load(&q(t), &d, None, &q("0.9 lb/ft2")).unwrap();
    book.line("F18", "rubble, formula", &flat("1.7275 in"), "lb/ft2", "18.9");
    book.line("F18", "rubble at faces, formula", &flat("2.25 in"), "lb/ft2", "24.3");
    book.line("F18", "plank, formula", &flat("1.035 in"), "lb/ft2", "11.7");
    let under = |t: &str| Scratch { thickness: q(t), key: q("1/8 in"), density: d_s.clone() };
    let coats = |t: &str, s: &str| dead_load(&q(t), &d, Some(&under(s)), &q("0.9 lb/ft2")).unwrap();
    let rubble: Worked<Areal> = coats("1.2275 in", "1/2 in");
    book.line("F18", "rubble, corrected", &rubble, "lb/ft2", "20.3");
    let up = (rubble.in_unit("lb/ft2") * 10.0).ceil() / 10.0;
    book.stands("F18", "rubble, as printed", &format!("{up:.1}"), ["20.4", "20.3"], "rubble weighs 20.33 and prints 20.4, up");
    book.line("F18", "rubble at faces, corrected", &coats("1.75 in", "1/2 in"), "lb/ft2", "25.8");
    book.ours("F18", "plank", &coats("0.66 in", "3/8 in"), "lb/ft2", ["13.1", "11.7"], "planks with key mud weigh 13.1 lb/ft²");
    let block = dead_load(&q("37.44 mm"), &light().density(), None, &q("0 kg/m2")).unwrap();
    book.line("F18", "rock on block", &block, "lb/ft2", "12.2");
    book.line("F18", "rock on block", &block, "kg/m2", "59.5");
}

fn lathing(book: &mut Book, walls: &Walls) {
    let net = lath::sheet_net(&q("27 in"), &q("96 in"), &q("1 in"), &q("1 in")).unwrap();
    book.line("F19", "sheet without laps", &net, "ft2", "17.153");
    // 272.0 as the design takes it; 271.96 buys the same.
    let exact = relative(&walls.lf, &net).unwrap();
    book.line("F19", "sheets, exactly", &exact, "", "15.85");
    let wall = &walls.lf;
    book.line("F19", "sheets", &lath::sheets(wall, &net, &q("5 %")).unwrap(), "", "17");
    let pins = |waste: &str, pack: &str| lath::fasteners(wall, &q("16 in"), &q("7 in"), &q(waste), &q(pack)).unwrap();
    book.line("F19", "fasteners", &pins("0 %", "1"), "", "350");
    book.line("F19", "fasteners and 10 %, by tens", &pins("10 %", "10"), "", "390");
    book.line("F19", "paper", &lath::paper_rolls(wall, &q("2"), &q("10 %"), &q("300 ft2")).unwrap(), "", "2");
    let cut = |l: &str| joints::panels(&q(l), &q("11 ft"), &joints::panel_limits(false).unwrap()).unwrap();
    let now = cut("48 ft");
    book.line("F19", "panels", &now.columns, "", "4");
    book.line("F19", "panel length", &now.length, "ft", "12");
    book.line("F19", "panel height", &now.height, "ft", "11");
    book.line("F19", "panel", &now.area, "ft2", "132");
    book.line("F19", "ratio", &now.ratio, "", "1.09");
    book.line("F19", "joints", &now.upright, "", "3");
    // What the change order of the demo makes of it.
    book.line("F19", "panel after the change", &cut("52 ft").length, "ft", "13");
    book.line("F19", "panel after the change", &cut("52 ft").area, "ft2", "143");
}

fn color(book: &mut Book) {
    book.line("F20", "grooves", &groove_factor(&q("6 in"), &q("3/4 in"), &q("1 in")).unwrap(), "", "1.231");
    let museum = |factors: [&str; 3]| {
        let parts: Vec<Textured> =
            ["415.79 ft2", "296.88 ft2", "64.77 ft2"].iter().zip(factors).map(|(a, f)| Textured { area: q(a), factor: q(f) }).collect();
        developed(&parts).unwrap()
    };
    let (real, flat) = (museum(["1.23", "1.45", "1.30"]), museum(["1", "1", "1"]));
    book.line("F20", "real surface", &real, "ft2", "1026.1");
    let buy = |a| sealer(a, &q("2"), &q("150 ft2/gal"), &q("8 %")).unwrap();
    book.line("F20", "sealer", &buy(&real), "gal", "14.8");
    book.line("F20", "sealer as flat", &buy(&flat), "gal", "11.2");
    let short = relative(&buy(&flat), &buy(&real)).unwrap();
    book.line("F20", "flat is 24 % short of it", &short, "%", "76");
}

fn water(book: &mut Book, walls: &Walls) {
    let mixes = |carve: &str, under: &str| {
        mix_water(&[("34.5 loads", carve), ("20 loads", under)].map(|(n, w)| Mixed { loads: q(n), water: q(w) })).unwrap()
    };
    book.line("F21", "mixes as planned", &mixes("1.5 gal", "1.25 gal"), "gal", "76.75");
    let limit = mixes("1.875 gal", "1.5 gal");
    book.line("F21", "mixes at limit", &limit, "gal", "94.7");
    let wash = wash_out(&q("10"), &q("5 gal")).unwrap();
    book.line("F21", "washes", &wash, "gal", "50");
    let mist = misting(&walls.lf, &q("0.02 gal/ft2"), &q("6")).unwrap();
    book.line("F21", "mist", &mist, "gal", "32.6");
    let people = people_water(&q("5"), &q("6"), &q("5 gal")).unwrap();
    book.line("F21", "people", &people, "gal", "150");
    book.line("F21", "in all", &site_water(&limit, &wash, &mist, &people).unwrap(), "gal", "327");
}

fn money(book: &mut Book) {
    let hours = labour::total_hours(&worked_day::tasks()).unwrap();
    let costs = [
        cost::load_cost(&q("28.5 loads"), &q("42.70 USD")).unwrap(),
        cost::load_cost(&q("16.0 loads"), &q("29.90 USD")).unwrap(),
        cost::area_cost(&q("217.22 ft2"), &q("1.12 USD/ft2")).unwrap(),
        cost::area_cost(&q("282.386 ft2"), &q("0.53 USD/ft2")).unwrap(),
        cost::labour_cost(&hours, &q("62 USD/h")).unwrap(),
    ];
    for (part, printed) in costs.iter().zip(["1217", "478", "243", "150", "4095"]) {
        book.line("F22", "part", part, "USD", printed);
    }
    let sum = cost::subtotal(&costs).unwrap();
    book.line("F22", "subtotal", &sum, "USD", "6183");
    let price = cost::marked_up(&sum, &q("18 %")).unwrap();
    book.line("F22", "price", &price, "USD", "7296");
    book.line("F22", "price by area", &cost::per_area(&price, &q("217.22 ft2")).unwrap(), "USD/ft2", "33.59");
    let mud = cost::subtotal(&costs[..2]).unwrap();
    book.line("F22", "material's part", &relative(&mud, &sum).unwrap(), "%", "27");
    let scratched = coats::scratch(&q("217.22 ft2"), &q("1/2 in"), &q("1/8 in"), &q("5 %")).unwrap();
    book.line("F22", "scratch loads of LF-1", &loads(&scratched, &scratch().yields, Step::Half).unwrap().loads, "", "16.0");
}

fn logs(book: &mut Book) {
    let cups = |n: i32| -> Worked<Volume> { q(&format!("{n} cups")) };
    let log = [(48, 4), (52, 2), (54, 0), (54, 2), (56, 0), (56, 2), (58, 1), (59, 0), (59, 2)];
    let totals =
        |more: i32| -> Vec<Worked<Volume>> { log.iter().map(|(s, a)| sums::volumes(&[cups(s + more), cups(*a)]).unwrap()).collect() };
    for (total, printed) in totals(0).iter().zip(["52", "54", "54", "56", "56", "58", "59", "59", "61"]) {
        book.line("F23", "total", total, "cup", printed);
    }
    let chart = log::chart(&totals(0), &log::book_width()).unwrap();
    book.line("F23", "slope", &log::slope(&totals(0)).unwrap(), "cup", "1.05");
    book.line("F23", "mean", &chart.mean, "cup", "56.56");
    book.line("F23", "moving range", &chart.range, "cup", "1.125");
    book.line("F23", "upper line", &chart.upper, "cup", "59.5");
    // As corrected, four cups up.
    for (total, printed) in totals(4).iter().zip(["56", "58", "58", "60", "60", "62", "63", "63", "65"]) {
        book.line("F23", "total, corrected", total, "cup", printed);
    }
    const UP: &str = "the log four cups up has mean 60.56 and upper line 63.55";
    let up = log::chart(&totals(4), &log::book_width()).unwrap();
    book.ours("F23", "mean, corrected", &up.mean, "cup", ["60.56", "56.56"], UP);
    book.ours("F23", "upper line, corrected", &up.upper, "cup", ["63.55", "59.5"], UP);

    let y = carve("1.5 gal").yields;
    let net = learning::net_per_load(&q("126 ft2"), &q("1.2275 in"), &q("17.5 loads")).unwrap();
    book.line("F24", "net of a load", &net, "ft3", "0.7365");
    let planned = learning::planned_per_load(&y, &q("12 %"), &q("5 %")).unwrap();
    book.line("F24", "as planned", &planned, "ft3", "0.7807");
    let (now, before) = (learning::waste(&net, &y).unwrap(), learning::waste(&planned, &y).unwrap());
    book.line("F24", "waste", &now, "%", "21.1");
    book.line("F24", "waste as planned", &before, "%", "16.4");
    book.line("F24", "waste to plan with", &learning::blend(&before, &q("20 loads"), &now, &q("17.5 loads")).unwrap(), "%", "18.6");
}

fn class(book: &mut Book) {
    let teams = kits::teams(&q("14"), &q("2")).unwrap();
    book.line("F25", "teams", &teams, "", "7");
    let panel = takeoff::rectangle(&q("2 ft"), &q("3.5 ft")).unwrap();
    book.line("F25", "panel", &panel, "ft2", "7");
    let mud = relief::mixed_volume(&panel, &q("1.2275 in"), &q("12 %"), &q("5 %")).unwrap();
    book.line("F25", "panel's mud", &mud, "ft3", "0.8565");
    let each = loads(&mud, &carve("1.5 gal").yields, Step::Half).unwrap();
    book.line("F25", "panel's need", &each.need, "", "0.917");
    book.line("F25", "panel's loads", &each.loads, "", "1.0");
    let all = kits::class_loads(&teams, &each.loads, &q("2 loads"), &q("1 load"), &q("1.5 loads")).unwrap();
    book.line("F25", "class", &all, "", "11.5");
    book.line("F25", "bags", &purchase::purchase(&all, &q("1 bag"), &q("0 %"), &q("0 loads")).unwrap().bags, "", "12");
    let nine = coats::scratch(&q("63 ft2"), &q("1/2 in"), &q("1/8 in"), &q("5 %")).unwrap();
    let made = loads(&nine, &scratch().yields, Step::Half).unwrap();
    book.line("F25", "scratch panels", &made.need, "", "4.63");
    book.line("F25", "scratch panels", &made.loads, "", "5.0");
    // By hand: pairs × 2 days × 1.15, up.
    for (n, printed) in [("1", "3"), ("5", "12"), ("6", "14"), ("2", "5")] {
        book.line("F25", "gloves", &kits::gloves(&q(n), &q("2"), &q("15 %")).unwrap(), "", printed);
    }
    for (n, printed) in [("9", "11"), ("5", "7")] {
        book.line("F25", "handouts", &kits::handouts(&q(n), &q("2")).unwrap(), "", printed);
    }
}

fn lifting(book: &mut Book) {
    let at = |h: &str, v: &str| Place { reach: q(h), height: q(v), twist: q("0°") };
    let task = Task { system: System::Us, travel: q("20 in"), rate: q("1 lift/min"), lasts: q("2 h"), grip: Grip::Fair };
    let m = multipliers(&at("15 in", "20 in"), &task).unwrap();
    for (x, printed) in
        [&m.reach, &m.height, &m.travel, &m.twist, &m.rate, &m.grip].into_iter().zip(["0.667", "0.925", "0.910", "1", "0.88", "0.95"])
    {
        book.line("F26", "multiplier", x, "", printed);
    }
    for (bag, printed) in [("80 lb", "3.3"), ("40 lb", "1.7"), ("24 lb", "1.0")] {
        let lifted = lift(&q(bag), &at("15 in", "20 in"), None, &task).unwrap();
        book.line("F26", "advised", &lifted.advised, "lb", "23.9");
        book.line("F26", bag, &lifted.index, "", printed);
    }
    const LIP: &str = "a bag over the mixer's lip has 18.9 lb advised and index 4.2";
    let lip = lift(&q("80 lb"), &at("15 in", "20 in"), Some(&at("20 in", "40 in")), &task).unwrap();
    book.ours("F26", "over the lip", &lip.advised, "lb", ["18.9", "17.9"], LIP);
    book.ours("F26", "over the lip", &lip.index, "", ["4.2", "4.5"], LIP);
    for (bags, mass, printed) in [("42 bags", Some("3400"), "255"), ("49 bags", None, "297")] {
        let m = pallet_weight(&q(bags), &q("80 lb"), &q("40 lb")).unwrap();
        if let Some(mass) = mass {
            book.line("F26", "pallet", &m, "lb", mass);
        }
        book.line("F26", "floor under a pallet", &floor_load(&m, &q("48 in"), &q("40 in")).unwrap(), "lb/ft2", printed);
    }
    let deck = |wet: &Worked<Mass>, bags: &str| {
        let thing = |n: &str, each: Worked<Mass>| OnDeck { count: q(n), each };
        on_deck(&[thing("3", q("250 lb")), thing("2", wet.clone()), thing("1", q("30 lb")), thing(bags, carve("1.5 gal").dry)]).unwrap()
    };
    book.line(
        "F26",
        "platform",
        &platform_capacity(&q("25 lb/ft2"), &takeoff::rectangle(&q("5 ft"), &q("10 ft")).unwrap()).unwrap(),
        "lb",
        "1250",
    );
    let (start, limit) = (carve("1.5 gal").wet, carve("1.875 gal").wet);
    const DECK: &str = "a platform is loaded at limit water, 1,019 and 1,331 lb";
    for (bags, formula, ours) in [("0", "1013", "1019"), ("3", "1325", "1331")] {
        book.line("F26", "on the platform, start water", &deck(&start, bags), "lb", formula);
        book.ours("F26", "on the platform, limit water", &deck(&limit, bags), "lb", [ours, formula], DECK);
    }
}

fn errors_and_type(book: &mut Book) {
    let thickness = relative::<Length>(&q("1/8 in"), &q("1.228 in")).unwrap();
    book.line("F27", "thickness", &thickness, "%", "10.2");
    let air = of_air(&q("2 %"), &q("9 %")).unwrap();
    book.line("F27", "air", &air, "%", "2.2");
    let part = |name: &str, error| Part { name: name.to_owned(), error };
    let all = budget(&[part("thickness", thickness), part("waste", q("4 %")), part("air", air), part("bags", q("1.6 %"))]).unwrap();
    book.line("F27", "in all", &all.total, "%", "11.3");
    book.line("F27", "largest part", &all.largest_share, "%", "82");
    book.text("F27", "largest part", &all.largest, "thickness");
    for (n, cap, points) in [("300", "0.131", "13"), ("150", "0.262", "27")] {
        let height = legible::cap_height(&q("1 m"), &q(n)).unwrap();
        book.line("F28", "capitals", &height, "in", cap);
        let size = legible::type_size(&height, &q("71 %")).unwrap();
        book.text("F28", "type", &format!("{:.0}", 72.0 * size.in_unit("in")), points);
    }
    for (usable, printed) in [("10 in", "21"), ("16 in", "34")] {
        book.line("F28", "lines", &legible::lines(&q(usable), &q("28/72 in"), &q("1.2")).unwrap(), "", printed);
    }
}

/// Directions of rounding where a formula rounds; where paper does, the roles have a test of their own.
fn rounding(book: &mut Book) {
    let start = hodbook::trade::carry::batch_start(&q("1 load"), &q("1.6 gal"), &q("1 cup")).unwrap();
    book.line("F29", "start down", &start, "cup", "25");
    book.line("F29", "bags up", &purchase::purchase(&q("20 loads"), &q("1 bag"), &q("0.1 %"), &q("0 loads")).unwrap().bags, "", "21");
    book.line("F29", "trips up", &purchase::trips(&q("3301 lb"), &q("3300 lb")).unwrap(), "", "2");
    book.line("F29", "lifts up", &coats::lifts(&q("2.01 in"), &q("1/2 in"), &q("1.5 in")).unwrap(), "", "2");
    book.line("F29", "loads up", &loads(&q("1.01 ft3"), &q("1 ft3"), Step::Half).unwrap().loads, "", "1.5");
    let open = hodbook::trade::placing::slack(&q("49.9 min"), &q("32 min")).unwrap();
    book.line("F29", "discard down", &open, "min", "17");
    // Water in sixteenths of a gallon stays exact; a hair over twenty loads buys half a load more, and noise does not.
    let five = hodbook::trade::carry::batch_start(&q("3 loads"), &q("1.6875 gal"), &q("1 cup")).unwrap();
    let cups = five.value().in_unit(units::find_expr("gal").unwrap()).unwrap();
    let text = show::text(cups.exact().unwrap(), units::find_expr("gal"), show::Look::Crew, hodbook::words::EN, false);
    book.text("F30", "5.0625 gal", &text.replace('\u{a0}', " "), "5 gal 1 cup");
    book.line("F30", "a hair over twenty", &loads(&q("20.0000001 ft3"), &q("1 ft3"), Step::Half).unwrap().loads, "", "20.5");
    for noise in [-4.0, 4.0] {
        let value = Quantity::of(&Num::real(20.0 + noise * f64::EPSILON * 20.0).unwrap(), units::find_expr("ft3").unwrap());
        let v: Worked<Volume> = Worked::new(Node::authored(value, units::find_expr("ft3"), "", "", None));
        let n = loads(&v, &q("1 ft3"), Step::Half).unwrap().loads;
        book.text("F30", "twenty and noise", &digits(&n, "", "20.0"), "20.0");
    }
}

/// F18 to F30.
pub fn lines(book: &mut Book, walls: &Walls) {
    weights(book);
    lathing(book, walls);
    color(book);
    water(book, walls);
    money(book);
    logs(book);
    class(book);
    lifting(book);
    errors_and_type(book);
    rounding(book);
}
