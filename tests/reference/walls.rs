//! Coverage, dead load and takeoff.

use hodbook::quantity::expr::{Area, Length, Share, Volume, Worked};
use hodbook::trade::arches::{Sides, rectangular_perimeter};
use hodbook::trade::purchase::purchase;
use hodbook::trade::relief::mixed_volume;
use hodbook::trade::takeoff::rectangle;
use hodbook::trade::weight::coat_weight;

use crate::run::How::{Computed, Found};
use crate::run::{Run, gives, q};

fn bare(a: &Worked<Area>, t: &Worked<Length>) -> Worked<Volume> {
    mixed_volume(a, t, &q("0 %"), &q("0 %")).unwrap()
}

/// Net coverage by thickness, without waste or key.
pub fn coverage(run: &mut Run) {
    for (id, t, per_ft3, per_yd3, hundred_ft2, hundred_yd2) in [
        ("CV-01", "1/8 in", "96 ft2", "2592 ft2", "1.0417", "9.375"),
        ("CV-02", "1/4 in", "48 ft2", "1296 ft2", "2.0833", "18.75"),
        ("CV-03", "3/8 in", "32 ft2", "864 ft2", "3.1250", "28.125"),
        ("CV-05", "5/8 in", "19.2 ft2", "518.4 ft2", "5.2083", "46.875"),
        ("CV-06", "3/4 in", "16 ft2", "432 ft2", "6.2500", "56.25"),
        ("CV-09", "1 1/4 in", "9.6 ft2", "259.2 ft2", "10.4167", "93.75"),
        ("CV-10", "1 1/2 in", "8 ft2", "216 ft2", "12.5", "112.5"),
        ("CV-11", "2 in", "6 ft2", "162 ft2", "16.6667", "150"),
    ] {
        run.row(id, "12 ÷ t", Computed);
        let t = q(t);
        gives(&bare(&q(per_ft3), &t), "ft3", "1.000000");
        gives(&bare(&q(per_yd3), &t), "yd3", "1.000000");
        gives(&bare(&q("100 ft2"), &t), "ft3", hundred_ft2);
        gives(&bare(&q("100 yd2"), &t), "ft3", hundred_yd2);
    }
}

/// Weight of plaster by thickness and density.
pub fn dead_load(run: &mut Run) {
    run.row("DL-11", "cement association's stucco answers", Found);
    gives(&coat_weight(&q("7/8 in"), &q("142 lb/ft3")).unwrap(), "lb/ft2", "10.354");
    gives(&bare(&q("13.7 ft2"), &q("7/8 in")), "ft3", "1.00");
    for (id, t, printed) in [
        ("DL-13", "7/8 in", ["8.750", "9.479", "10.354"]),
        ("DL-14", "1 1/2 in", ["15.000", "16.250", "17.750"]),
        ("DL-15", "2 in", ["20.000", "21.667", "23.667"]),
        ("DL-16", "3 in", ["30.0", "32.5", "35.5"]),
    ] {
        run.row(id, "t × density ÷ 12", Computed);
        for (density, psf) in ["120 lb/ft3", "130 lb/ft3", "142 lb/ft3"].iter().zip(printed) {
            gives(&coat_weight(&q(t), &q(density)).unwrap(), "lb/ft2", psf);
        }
    }
}

/// Worked examples of takeoff.
pub fn takeoff(run: &mut Run) {
    run.row("TO-06", "NAVEDTRA 14043", Computed);
    gives(&rectangular_perimeter(&q("22 ft"), &q("32 ft"), Sides::Four).unwrap(), "ft", "108");

    run.row("TO-10", "estimating text, ex. 16-5, its allowances", Computed);
    let wall: Worked<Area> = q("100 yd2");
    gives(&bare(&wall, &q("1/4 in")), "ft3", "18.75");
    gives(&bare(&wall, &q("1/16 in")), "ft3", "4.6875");
    gives(&bare(&wall, &q("0.1067 in")), "ft3", "8.0");
    run.row("TO-09", "estimating text, ex. 16-5", Found);
    // Its 5.2 ft3 in a sixteenth against 4.6875 net is a loss of 41/416 of what is mixed.
    let loss: Worked<Share> = q("9 89/104 %");
    let coat = mixed_volume(&wall, &q("1/4 in"), &q("0 %"), &loss).unwrap();
    gives(&coat, "ft3", "20.8");
    gives(&Worked::<Volume>::new(coat.named("coat") + bare(&wall, &q("0.1067 in")).named("key")), "ft3", "28.8");

    run.row("MX-09", "bricklaying textbook, materials by weight", Found);
    gives(&rectangle(&q("12 m"), &q("2.6 m")).unwrap(), "m2", "31.2");
    for (bags, bought) in [("4.40 loads", "5"), ("8.84 loads", "9"), ("17.64 loads", "18")] {
        gives(&purchase(&q(bags), &q("1 bag"), &q("0 %"), &q("0 loads")).unwrap().bags, "", bought);
    }

    // Students' texts: their net volumes; their wastes are added on, ours divide.
    run.row("TO-26", "plaster class example, 12 mm on 100 ft2", Found);
    gives(&q::<Area>("100 ft2"), "m2", "9.2903");
    gives(&bare(&q("9.2903 m2"), &q("12 mm")), "m3", "0.1115");
    run.row("TO-27", "plaster class example, 5 m × 3 m", Found);
    let wall = rectangle(&q("5 m"), &q("3 m")).unwrap();
    gives(&wall, "m2", "15");
    gives(&bare(&wall, &q("12 mm")), "m3", "0.18");
}
