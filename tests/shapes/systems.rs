//! One mix file, one wall: measured in metric or in US units, it takes the same loads, on a knife-edge too.

use std::collections::BTreeMap;

use hodbook::finding;
use hodbook::quantity::Num;
use hodbook::read;
use hodbook::source::Folder;
use hodbook::tally::Tally;

use crate::folder;

/// Grains of 0.1 and 0.4 and water of 0.2 ft3, an eighth of it air: a load is 0.8 ft3 and not a hair else.
const EVEN: &str = r#"---
hodbook: 1
kind: mix
name: EVEN
rev: A
coat: carve
units: us
additive: {bag: 12.48 lb, relative_density: 2, name: additive, name_es: aditivo}
mortar: {bag: 62.4 lb, relative_density: 2.5, class: "bagged Type S mortar, sand in it"}
bags_per_load: {additive: 1, mortar: 1}
mortar_to_additive: "5:1 by mass"
air: 12.5 %
water: {constant: 8.32 lb/gal, absolute_volume_constant: 62.4 lb/ft3, start: 1.5 gal, least: 1.25 gal, step: 1 cup, limit: 2 gal}
mixing: {least: 4 min, after_step: 1 min}
open_time: 40 min at 70 °F
thickness: 1/8 in to 3 in
lift: 1 1/2 in
half_load: by scale
cure: {wet: 3 days, then: air}
written_by: TRN
---
An even mix.
"#;

/// A length of ten-thousandths of an inch, or the same one in millimetres.
fn length(n: i64, metric: bool) -> String {
    // 25.4 mm, so seven decimals at most.
    let (n, unit, places) = if metric { (n * 254, "mm", 100_000) } else { (n, "in", 10_000) };
    format!("{}.{:0width$} {unit}", n / places, n % places, width = if metric { 5 } else { 4 })
}

fn site(metric: bool, coats: &str, texture: &str, surfaces: &str) -> Folder {
    let (units, band) = if metric { ("metric", "5 °C to 20 °C") } else { ("us", "41 °F to 68 °F") };
    let text = format!(
        "---\nhodbook: 1\nkind: site\nname: Twin Yard\ncode: TY\nunits: {units}\nzone: America/Chicago\ncrew: [LEAD]\n\
         good_until: 2026-03-31\nclimate: {{where: outdoors, band: {band}}}\n{coats}\n\
         batches:\n  - {{mix: EVEN, mixer: pan45, loads: 1 load}}\ntextures:\n  t: {texture}\nsurfaces:\n{surfaces}---\nNotes.\n"
    );
    folder(&[("twin", &text)]).with_text("mixes/even.md", EVEN)
}

const DIRECT: &str = "base: {kind: solid, what: concrete block, direct: yes}\nmixes: {carve: EVEN}";

/// The values behind all figures.
fn worked(folder: &Folder) -> BTreeMap<String, Num> {
    let (job, findings) = read::job(folder);
    let said: Vec<String> = findings.iter().map(|f| finding::short(f, &|n| folder.lines(n))).collect();
    assert_eq!(said, Vec::<String>::new());
    let tally = Tally::of(&job);
    let node = |f: &hodbook::tally::Figure| f.worked.as_ref().ok().map(|n| n.value().si.clone());
    tally.figures().filter_map(|f| Some((f.id.clone(), node(f)?))).collect()
}

/// Numbers that look like chance and are the same on every machine.
struct Dice(u64);

impl Dice {
    fn roll(&mut self, from: i64, to: i64) -> i64 {
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        from + i64::try_from(self.0 >> 33).unwrap() % (to - from + 1)
    }
}

/// A wall with an opening, a round post and any outline, each with a scratch coat.
fn chance(seed: u64, metric: bool) -> Folder {
    let mut dice = Dice(seed);
    let mut l = |from: i64, to: i64| length(dice.roll(from, to) * 625, metric);
    let coat = format!(
        "base: {{kind: solid, what: block, wrb_layers: 2, lath_and_paper: 0.9 lb/ft2}}\nmixes: {{scratch: SCRATCH-15, carve: EVEN}}\n\
         scratch: {{thickness: {}, key: {}, waste: {{drop: 5 %}}}}",
        l(6, 8),
        l(1, 2)
    );
    let texture = format!("{{least: {}, most: {}, fill: 62 %, waste: {{carve: 12 %, drop: 5 %}}}}", l(6, 12), l(16, 30));
    let surfaces = format!(
        "  W:\n    what: wall\n    shape: rectangle\n    width: {}\n    height: {}\n    texture: t\n    openings:\n      \
         O1: {{what: hole, shape: rectangle, width: {}, height: {}, sides: 4, depth: {}}}\n  \
         P: {{what: post, shape: column, diameter: {}, height: {}, count: 3, texture: t}}\n  \
         C: {{what: outline, shape: polygon, corners: [[{z}, {z}], [{}, {z}], [{}, {}], [{z}, {}]], texture: t}}\n",
        l(1600, 8000),
        l(1000, 3000),
        l(16, 700),
        l(16, 900),
        l(16, 200),
        l(100, 400),
        l(900, 2000),
        l(900, 2000),
        l(300, 900),
        l(900, 2000),
        l(900, 2000),
        z = length(0, metric)
    );
    site(metric, &coat, &texture, &surfaces)
}

#[test]
fn a_wall_measured_in_either_system_is_the_same_job() {
    for seed in 0..24 {
        let (us, metric) = (worked(&chance(seed, false)), worked(&chance(seed, true)));
        assert!(us.len() > 60, "only {} figures", us.len());
        assert_eq!(us.keys().collect::<Vec<_>>(), metric.keys().collect::<Vec<_>>());
        // The lifting equation is published in two forms, which differ by 0.6 %.
        let lifted = |id: &str| id.ends_with(".advised") || id.ends_with(".index");
        for (id, value) in us.iter().filter(|(id, _)| !lifted(id)) {
            match (value.exact(), metric[id].exact()) {
                (Some(a), Some(b)) => assert_eq!(a, b, "seed {seed}: {id}"),
                // Round work is worked in floats.
                (None, None) => assert!((value.to_f64() - metric[id].to_f64()).abs() <= 1e-12 * value.to_f64().abs(), "seed {seed}: {id}"),
                _ => panic!("seed {seed}: {id} is exact in one system only"),
            }
        }
        for bought in ["twin/even.loads", "twin/scratch-15.loads", "twin/even.bags_mortar", "twin/W.loads", "twin/W.volume"] {
            assert!(us[bought].exact().is_some(), "{bought}");
        }
    }
}

/// A wall 4 ft high, 1 in thick, a fifth of it cut off, and 11.52 in long for every half load.
#[test]
fn an_exact_need_stands_on_its_half_load_and_a_hair_more_does_not() {
    let texture =
        |metric| format!("{{mean: {}, most: {}, waste: {{carve: 20 %, drop: 0 %}}}}", length(10_000, metric), length(20_000, metric));
    for metric in [false, true] {
        for halves in [1, 2, 3, 7, 20, 41, 66, 99, 132] {
            let loads = |hair: i64| {
                let (w, h) = (length(halves * 115_200 + hair, metric), length(480_000, metric));
                let wall = format!("  W: {{what: wall, shape: rectangle, width: {w}, height: {h}, texture: t}}\n");
                let figures = worked(&site(metric, DIRECT, &texture(metric), &wall));
                (figures["twin/even.loads"].clone(), figures["twin/even.bags_mortar"].clone())
            };
            assert_eq!(loads(0).0, Num::frac(halves, 2), "{halves} {metric}");
            assert_eq!(loads(-1), loads(0), "{halves} {metric}");
            assert_eq!(loads(1).0, Num::frac(halves + 1, 2), "{halves} {metric}");
        }
    }
}
