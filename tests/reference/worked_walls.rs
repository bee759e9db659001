//! Worked numbers F1 to F5: walls, relief, coats, yields, loads.

use hodbook::quantity::expr::{Area, Length, Loads, Mass, Volume, Worked};
use hodbook::trade::error_budget::relative;
use hodbook::trade::loads::{Step, loads};
use hodbook::trade::relief::{applied_thickness, depth_grid, mean_thickness, mixed_volume, with_waste};
use hodbook::trade::takeoff::{Around, column, frustum, gable, rectangle, reveal};
use hodbook::trade::yields::{Solid, absolute_volume, measure_volume, water_mass, wet_density};
use hodbook::trade::{arches, coats, net, sums};

use crate::run::q;
use crate::worked::{Book, Load, METRIC, US, carve, light, load, scratch};

/// Walls that several families rest on.
pub struct Walls {
    /// The fireplace wall.
    pub lf1: Worked<Area>,
    /// All of that site.
    pub lf: Worked<Area>,
    /// Its area without the round posts.
    pub lf_flat: Worked<Area>,
}

/// The inn's walls, with a line for each number of theirs.
fn inn(book: &mut Book) -> Walls {
    let gross = [rectangle(&q("22 ft"), &q("9 ft")).unwrap(), gable(&q("22 ft"), &q("5.5 ft")).unwrap()];
    for (part, printed) in gross.iter().zip(["198.0", "60.5"]) {
        book.line("F1", "gross, part", part, "ft2", printed);
    }
    book.line("F1", "gross", &net::total(&gross).unwrap(), "ft2", "258.5");
    let head = arches::segment(&q("5 ft"), &q("1 ft")).unwrap();
    book.inner("F1", "radius of the head", &head, "R", "3.625");
    book.inner("F1", "angle of the head", &head, "theta", "1.5220");
    book.line("F1", "segment", &head, "ft2", "3.438");
    book.line("F1", "arc", &arches::arc(&q("5 ft"), &q("1 ft")).unwrap(), "ft", "5.517");
    let openings = [
        arches::segmental_opening(&q("5 ft"), &q("2.5 ft"), &q("1 ft")).unwrap(),
        arches::semicircular_opening(&q("3.5 ft"), &q("6.25 ft")).unwrap(),
        net::times(&rectangle(&q("3 ft"), &q("4 ft")).unwrap(), &q("2")).unwrap(),
    ];
    for (opening, printed) in openings.iter().zip(["15.94", "26.69", "24.00"]) {
        book.line("F1", "opening", opening, "ft2", printed);
    }
    book.line("F1", "deducted", &net::total(&openings).unwrap(), "ft2", "66.62");
    book.line("F1", "net face", &net::net(&gross, &openings, &[]).unwrap(), "ft2", "191.88");
    let round = [
        arches::segmental_perimeter(&q("5 ft"), &q("2.5 ft"), &q("1 ft")).unwrap(),
        arches::semicircular_perimeter(&q("3.5 ft"), &q("6.25 ft")).unwrap(),
        arches::rectangular_perimeter(&q("3 ft"), &q("4 ft"), arches::Sides::Four).unwrap(),
    ];
    for (walked, printed) in round.iter().zip(["10.517", "17.998", "14"]) {
        book.line("F1", "perimeter walked", walked, "ft", printed);
    }
    let [fire, door, window] = round;
    let reveals = [
        reveal(&fire, &q("8 in")).unwrap(),
        reveal(&door, &q("6 in")).unwrap(),
        net::times(&reveal(&window, &q("4 in")).unwrap(), &q("2")).unwrap(),
    ];
    for (back, printed) in reveals.iter().zip(["7.01", "9.00", "9.33"]) {
        book.line("F1", "reveal", back, "ft2", printed);
    }
    book.line("F1", "reveals", &net::total(&reveals).unwrap(), "ft2", "25.34");
    let lf1 = net::net(&gross, &openings, &reveals).unwrap();
    book.line("F1", "LF-1", &lf1, "ft2", "217.22");
    book.line("F1", "LF-1", &lf1, "m2", "20.18");
    let end = rectangle(&q("1.5 ft"), &q("1.25 ft")).unwrap();
    let lf2 = net::total(&[rectangle(&q("12 ft"), &q("1.5 ft")).unwrap(), net::times(&end, &q("2")).unwrap()]).unwrap();
    book.line("F1", "LF-2", &lf2, "ft2", "21.75");
    let lf3 = net::times(&column(&q("14 in"), &q("9 ft"), Around::Half).unwrap(), &q("2")).unwrap();
    book.line("F1", "LF-3", &lf3, "ft2", "32.99");
    let lf = net::total(&[lf1.clone(), lf2.clone(), lf3]).unwrap();
    book.line("F1", "LF in all", &lf, "ft2", "271.96");
    let rock = frustum(&q("3 ft"), &q("2 ft"), &q("4 ft")).unwrap();
    book.inner("F1", "slant of BF-3", &rock, "slant", "4.1231");
    book.line("F1", "BF-3", &rock, "ft2", "64.77");
    let lf_flat = net::total(&[lf1.clone(), lf2]).unwrap();
    Walls { lf1, lf, lf_flat }
}

/// Mean thickness of rubble.
pub fn rubble() -> Worked<Length> {
    mean_thickness(&q("3/8 in"), &q("1 3/4 in"), &q("62 %")).unwrap()
}

fn relief(book: &mut Book) {
    book.line("F2", "mean of rubble", &rubble(), "in", "1.2275");
    book.line("F2", "mean of rubble", &rubble(), "mm", "31.2");
    book.line("F2", "applied", &applied_thickness(&rubble(), &q("12 %"), &q("5 %")).unwrap(), "in", "1.4683");
    // Divided by 0.836, not added on: 19.6 % and not 17.
    let unit: Worked<Volume> = with_waste(&q("0.836 ft3"), &q("12 %"), &q("5 %")).unwrap();
    book.line("F2", "what the waste divides by", &unit, "ft3", "1.000");
    book.line("F2", "waste on a cubic foot", &with_waste(&q("1 ft3"), &q("12 %"), &q("5 %")).unwrap(), "ft3", "1.196");
    let depths = ["1/2", "1 1/2", "1 1/4", "3/8", "1 5/8", "1 3/4", "1 1/4", "3/4", "1 1/2", "1 1/8", "1 3/8", "1 1/2"]
        .map(|d| q(&format!("{d} in")));
    let grid = depth_grid(&depths, &q("3/8 in"), &q("1 3/4 in")).unwrap();
    book.line("F2", "grid, mean", &grid.mean, "in", "1.2083");
    book.line("F2", "grid, deviation", &grid.deviation, "in", "0.444");
    book.line("F2", "grid, standard error", &grid.error, "in", "0.128");
    book.line("F2", "grid, fill", &grid.fill, "", "0.606");
    book.line("F2", "grid, error of the fill", &grid.fill_error, "", "0.09");
    book.line("F2", "what 12 points pin", &relative(&grid.error, &grid.mean).unwrap(), "%", "11");
    book.line("F2", "points for 5 %", &grid.points, "", "54");
}

/// The carve mud of each surface of the inn.
pub fn inn_mud(walls: &Walls) -> [Worked<Volume>; 3] {
    let (cut, drop) = (q("12 %"), q("5 %"));
    let log = mean_thickness(&q("3/8 in"), &q("1 in"), &q("60 %")).unwrap();
    let face = coats::scratch_face(&q("7 in"), &q("1/2 in")).unwrap();
    let post = coats::annulus(&face, &log, &q("9 ft"), Around::Half).unwrap();
    let flat = |a: &Worked<Area>| mixed_volume(a, &rubble(), &cut, &drop).unwrap();
    [flat(&walls.lf1), flat(&q("21.75 ft2")), with_waste(&sums::times(&post, &q("2")).unwrap(), &cut, &drop).unwrap()]
}

fn round_coats(book: &mut Book, walls: &Walls) -> Worked<Volume> {
    let flat = coats::scratch(&walls.lf, &q("1/2 in"), &q("1/8 in"), &q("5 %")).unwrap();
    book.line("F3", "LF scratch as flat", &flat, "ft3", "14.910");
    book.line("F3", "lifts of a face", &coats::lifts(&q("2 3/4 in"), &q("1/2 in"), &q("1 1/2 in")).unwrap(), "", "2");
    book.line("F3", "lifts of the grotto", &coats::lifts(&q("65 mm"), &q("0 mm"), &q("38 mm")).unwrap(), "", "2");
    let trunk = column(&q("18 in"), &q("10.5 ft"), Around::Whole).unwrap();
    book.line("F3", "trunk as flat", &mixed_volume(&trunk, &q("1.25 in"), &q("0 %"), &q("0 %")).unwrap(), "ft3", "5.154");
    book.line("F3", "trunk", &coats::annulus(&q("9 in"), &q("1.25 in"), &q("10.5 ft"), Around::Whole).unwrap(), "ft3", "5.512");
    book.line("F3", "ratio to flat", &coats::ratio_to_flat(&q("9 in"), &q("1.25 in")).unwrap(), "", "1.0694");
    let posts = coats::scratch_annulus(&q("7 in"), &q("1/2 in"), &q("1/8 in"), &q("9 ft"), &q("5 %"), Around::Half).unwrap();
    let round = sums::volumes(&[
        coats::scratch(&walls.lf_flat, &q("1/2 in"), &q("1/8 in"), &q("5 %")).unwrap(),
        sums::times(&posts, &q("2")).unwrap(),
    ])
    .unwrap();
    book.line("F3", "LF scratch, corrected", &round, "ft3", "14.991");
    let need = loads(&round, &scratch().yields, Step::Half).unwrap();
    book.line("F3", "LF scratch, corrected need", &need.need, "", "20.11");
    book.line("F3", "LF scratch, corrected loads", &need.loads, "", "20.5");
    flat
}

fn yields(book: &mut Book) {
    let part = |mass: &str, sg: &str, k: &str| {
        let solid = Solid { name: "part", mass: q(mass), relative_density: q(sg) };
        absolute_volume(&solid, &q(k)).unwrap()
    };
    let (add, mor) = (part("24 lb", "2.30", US.1), part("80 lb", "2.66", US.1));
    book.line("F4", "density of additive grains", &wet_density(&q("24 lb"), &add).unwrap(), "lb/ft3", "143.52");
    book.line("F4", "density of mortar grains", &wet_density(&q("80 lb"), &mor).unwrap(), "lb/ft3", "165.98");
    book.line("F4", "additive", &add, "ft3", "0.1672");
    book.line("F4", "mortar", &mor, "ft3", "0.4820");
    let m_w: Worked<Mass> = water_mass(&q("1.5 gal"), &q(US.0)).unwrap();
    book.line("F4", "water", &m_w, "lb", "12.518");
    book.line("F4", "water", &measure_volume(&m_w, &q(US.1)).unwrap(), "ft3", "0.2006");
    book.line("F4", "without air", &load(("24 lb", "2.30"), ("80 lb", "2.66"), "1.5 gal", US, "0 %").yields, "ft3", "0.8498");
    let four = [("CARVE-24", carve("1.5 gal")), ("SCRATCH-15", scratch()), ("LITE-10M", light())];
    for ((name, load), rows) in four.iter().zip([
        &[("ft3", "0.9338", false), ("L", "26.4", false), ("lb/ft3", "124.8", true)][..],
        &[("ft3", "0.7456", false), ("lb/ft3", "128.0", true)],
        &[("L", "24.93", false), ("ft3", "0.8805", false), ("kg/m3", "1588", true), ("lb/ft3", "99.2", true)],
    ]) {
        for (unit, printed, density) in rows {
            match density {
                true => book.line("F4", name, &load.density(), unit, printed),
                false => book.line("F4", name, &load.yields, unit, printed),
            }
        }
    }
    let (add, mor) = (part("10 kg", "1.35", METRIC.1), part("25 kg", "2.65", METRIC.1));
    book.line("F4", "LITE-10M additive", &add, "L", "7.407");
    book.line("F4", "LITE-10M mortar", &mor, "L", "9.434");
    let water = measure_volume(&water_mass(&q("4.6 L"), &q(METRIC.0)).unwrap(), &q(METRIC.1)).unwrap();
    book.line("F4", "LITE-10M water", &water, "L", "4.600");
    book.line("F4", "LITE-10M without air", &load(("10 kg", "1.35"), ("25 kg", "2.65"), "4.6 L", METRIC, "0 %").yields, "L", "21.441");
    book.line("F4", "20 and 80", &load(("20 lb", "2.30"), ("80 lb", "2.66"), "1.5 gal", US, "9 %").yields, "ft3", "0.9032");
}

/// Need and loads of a volume; hands on the slack.
pub fn need(book: &mut Book, family: &'static str, what: &str, v: &Worked<Volume>, load: &Load, printed: [&str; 2]) -> Worked<Loads> {
    let need = loads(v, &load.yields, Step::Half).unwrap();
    book.line(family, what, &need.need, "", printed[0]);
    book.line(family, what, &need.loads, "", printed[1]);
    need.slack
}

fn needs(book: &mut Book, walls: &Walls, flat_scratch: &Worked<Volume>) {
    let (mud, scratch) = (inn_mud(walls), scratch());
    for (part, printed) in mud.iter().zip(["26.579", "2.661", "2.774"]) {
        book.line("F5", "LF mud", part, "ft3", printed);
    }
    let all = sums::volumes(&mud).unwrap();
    book.line("F5", "LF mud", &all, "ft3", "32.014");
    let carve = carve("1.5 gal");
    need(book, "F5", "LF", &all, &carve, ["34.282", "34.5"]);
    need(book, "F5", "LF-1 alone", &mud[0], &carve, ["28.462", "28.5"]);
    let slack = need(book, "F5", "LF scratch as flat", flat_scratch, &scratch, ["19.9972", "20.0"]);
    book.line("F5", "LF scratch, spare", &relative(&slack, &q("20 loads")).unwrap(), "%", "0.01");
    need(book, "F5", "BF", &q("77.578 ft3"), &carve, ["83.074", "83.5"]);
    need(book, "F5", "BF scratch", &q("38.064 ft3"), &scratch, ["51.051", "51.5"]);
    // The mix states its constants; a site's units never change them.
    let other = load(("15 lb", "2.30"), ("70 lb", "2.66"), "1.25 gal", METRIC, "7 %");
    let moved = loads(flat_scratch, &other.yields, Step::Half).unwrap();
    book.ours("F5", "LF scratch by 1 kg/L", &moved.need, "", ["20.0059", "20.0060"], "a need of the 1 kg/L scratch is 20.0059");
    book.line("F5", "LF scratch by 1 kg/L", &moved.loads, "", "20.5");
}

/// F1 to F5; hands on the inn's walls and its scratch as flat.
pub fn lines(book: &mut Book) -> (Walls, Worked<Volume>) {
    let walls = inn(book);
    relief(book);
    let flat = round_coats(book, &walls);
    yields(book);
    needs(book, &walls, &flat);
    (walls, flat)
}
