//! Mix temperatures of concrete and mortar, with and without ice.

use hodbook::quantity::expr::{Share, Worked};
use hodbook::trade::mix_targets::{dry_share, ice_for, water_share, water_temperature};
use hodbook::trade::mix_temperature::{Batch, Dry, mix_temperature};

use crate::run::How::{Computed, Found, Memory};
use crate::run::{Run, gives, near, q};

/// Sand or aggregate, what clings to it, cement, water added.
type Parts = [&'static str; 4];
const CONCRETE: Parts = ["3000 lb", "60 lb", "564 lb", "240 lb"];
const MORTAR: Parts = ["240 lb", "12 lb", "94 lb", "45 lb"];

/// Row, parts, sand, cement and water temperatures, mix temperature in °F.
type Mixed = (&'static str, Parts, &'static str, &'static str, &'static str, &'static str);
const COMPUTED: &[Mixed] = &[
    ("MTC-01", CONCRETE, "32 °F", "32 °F", "140 °F", "55.91"),
    ("MTC-05", CONCRETE, "60 °F", "60 °F", "60 °F", "60.00"),
    ("MTC-06", CONCRETE, "70 °F", "70 °F", "34 °F", "62.03"),
    ("MTC-07", MORTAR, "40 °F", "40 °F", "140 °F", "74.49"),
    ("MTC-08", MORTAR, "40 °F", "40 °F", "120 °F", "67.59"),
    ("MTC-09", MORTAR, "33 °F", "40 °F", "140 °F", "71.01"),
    ("MTC-10", MORTAR, "100 °F", "110 °F", "75 °F", "92.96"),
    ("MTC-11", MORTAR, "100 °F", "110 °F", "40 °F", "80.89"),
    ("MTC-14", MORTAR, "55 °F", "60 °F", "50 °F", "54.07"),
];

fn dry(name: &'static str, mass: &str, t: &str, moisture: Option<&str>) -> Dry {
    Dry { name, mass: q(mass), temperature: q(t), moisture: moisture.map(q) }
}

fn batch([sand, clinging, cement, water]: Parts, t_sand: &str, t_cement: &str) -> Batch {
    let parts = vec![dry("sand", sand, t_sand, Some(clinging)), dry("cement", cement, t_cement, None)];
    Batch { dry: parts, water: q(water), work: None }
}

/// Published examples.
pub fn examples(run: &mut Run) {
    run.row("MTX-01", "a case study in hot-weather concreting on a web page", Found);
    run.disputed(
        "its heats add to 74142.3 and not to the 74136.3 printed, and it prints 33.5 for 335 kJ/kg; both ways the mix is 27.1 °C: held to its \
         27 °C within half a degree, and to 27.10 within 0.05",
    );
    let parts = vec![dry("cement", "360 kg", "40 °C", None), dry("aggregate", "1828.2 kg", "37 °C", None)];
    let hot = Batch { dry: parts, water: q("172.8 kg"), work: None };
    let t = mix_temperature(&hot, &q("30 °C"), Some(&q("50 kg"))).unwrap();
    near(&t, "°C", 27.0, 0.5);
    near(&t, "°C", 27.10, 0.05);
    near(&ice_for(&hot, &q("30 °C"), &t).unwrap(), "kg", 50.0, 1e-6);

    run.row("MTX-04", "PCA, Design and Control of Concrete Mixtures, table 13-2", Memory);
    let parts = vec![dry("cement", "335 kg", "66 °C", None), dry("aggregate", "1839 kg", "27 °C", None)];
    let iced = Batch { dry: parts, water: q("167 kg"), work: None };
    near(&mix_temperature(&iced, &q("27 °C"), Some(&q("44 kg"))).unwrap(), "°C", 24.1, 0.1);

    run.row("MTX-05", "PCA, Design and Control of Concrete Mixtures, table 13-1", Memory);
    let plain = Batch { water: q("123 kg"), ..iced };
    // Degrees of one ingredient for a degree of concrete: one over its share.
    let shares: [(Worked<Share>, f64); 3] =
        [(dry_share(&plain, "cement").unwrap(), 8.2), (water_share(&plain).unwrap(), 4.9), (dry_share(&plain, "aggregate").unwrap(), 1.5)];
    for (share, degrees) in shares {
        near(&share, "", 1.0 / degrees, 0.05 / degrees / degrees);
    }

    run.row("MTX-06", "ACI 306R and PCA, chart of mixing water", Memory);
    let cold = batch(CONCRETE, "36 °F", "36 °F");
    // Read off a chart, "about 60".
    near(&mix_temperature(&cold, &q("140 °F"), None).unwrap(), "°F", 60.0, 1.1);
    gives(&mix_temperature(&cold, &q("140 °F"), None).unwrap(), "°F", "59.0");
    near(&water_temperature(&cold, &q("59 °F"), &q("32 °F"), &q("140 °F")).unwrap(), "°F", 140.0, 0.5);
}

/// The same equation worked out elsewhere.
pub fn computed(run: &mut Run) {
    for (id, parts, sand, cement, water, mixed) in COMPUTED {
        run.row(id, "the equation with 0.22, worked out by another program", Computed);
        let batch = batch(*parts, sand, cement);
        let t = mix_temperature(&batch, &q(water), None).unwrap();
        gives(&t, "°F", mixed);
        // And back: the water that the target needs is the water that was used.
        near(
            &water_temperature(&batch, &t, &q("32 °F"), &q("140 °F")).unwrap(),
            "°F",
            q::<hodbook::quantity::expr::Temperature>(water).in_unit("°F"),
            1e-6,
        );
    }
}
