//! A made-up scope with every slot of the contract, and the bodies of the demo, for this room's tests.
#![allow(clippy::disallowed_methods, reason = "a test reads what it compares")]

use std::path::{Path, PathBuf};

use crate::job::Body;
use crate::quantity::num::Num;
use crate::quantity::units::find_expr;
use crate::quantity::{Node, Quantity};
use crate::tally::{Basis, Figure, Role, Scope, Slot, Tally, Voice};
use crate::words::{EN, ES};

/// A body whose text starts at byte 100 of file 7.
pub(super) fn body(text: &str) -> Body {
    Body { file: 7, offset: 100, text: text.to_owned() }
}

pub(super) const ENGLISH: Voice = Voice { lang: EN, metric: false };
pub(super) const SPANISH: Voice = Voice { lang: ES, metric: false };

fn node(n: i64, d: i64, unit: &str) -> Node {
    match find_expr(unit) {
        Some(u) => Node::authored(Quantity::of(&Num::frac(n, d), u), Some(u), "made up", "key", None),
        None => Node::given(n, d),
    }
}

const FIGURES: &[(&str, &str, i64, i64, &str, Role)] = &[
    ("mix", "start_water", 13, 8, "gal", Role::StartWater),
    ("mix", "least_water", 11, 8, "gal", Role::LeastWater),
    ("mix", "step", 1, 16, "gal", Role::Step),
    ("mix", "limit", 2, 1, "gal", Role::Limit),
    ("mix", "mixing", 4, 1, "min", Role::MixMinutes),
    ("mix", "after_step", 1, 1, "min", Role::MixMinutes),
    ("mix", "open_time", 50, 1, "min", Role::OpenTime),
    ("mix", "additive_bag", 24, 1, "lb", Role::BagMass),
    ("mix", "mortar_bag", 80, 1, "lb", Role::BagMass),
    ("mix", "thickness_least", 3, 8, "in", Role::LeastThickness),
    ("mix", "thickness_most", 11, 4, "in", Role::MostThickness),
    ("mix", "lift", 3, 2, "in", Role::MostThickness),
    ("mix", "wet_cure", 2, 1, "day", Role::WetCure),
    ("mix", "yield", 81, 100, "ft3", Role::Yield),
    ("mix", "wet_density", 143, 1, "lb/ft3", Role::Density),
    ("mix", "dry_weight", 104, 1, "lb", Role::Weight),
    ("mix", "strength_class", 4800, 1, "psi", Role::StrengthClass),
    ("mix", "recoat", 48, 1, "h", Role::Recoat),
    ("mix", "place_by", 52, 1, "min", Role::PlaceBy),
    ("mix.half", "start_water", 13, 16, "gal", Role::StartWater),
    ("mix.half", "limit", 1, 1, "gal", Role::Limit),
    ("mix.half", "mortar", 40, 1, "lb", Role::BagMass),
    ("mix.half", "additive", 12, 1, "lb", Role::BagMass),
    ("batch", "loads", 3, 1, "load", Role::Loads),
    ("batch", "start_water", 39, 8, "gal", Role::StartWater),
    ("batch", "limit", 6, 1, "gal", Role::Limit),
    ("batch", "step", 3, 16, "gal", Role::Step),
    ("batch", "mortar", 3, 1, "bag", Role::Bags),
    ("batch", "mortar_first", 2, 1, "bag", Role::Bags),
    ("batch", "mortar_rest", 1, 1, "bag", Role::Bags),
    ("batch", "additive", 3, 1, "bag", Role::Bags),
    ("batch", "place_by", 45, 1, "min", Role::PlaceBy),
    ("batch", "volume", 243, 100, "ft3", Role::BatchVolume),
    ("batch", "wet_weight", 353, 1, "lb", Role::Weight),
    ("batch", "start_water_weight", 407, 10, "lb", Role::WaterMass),
    ("mix", "bags_mortar", 36, 1, "bag", Role::Bags),
    ("mix", "bags_additive", 36, 1, "bag", Role::Bags),
    ("mix", "pallets_mortar", 0, 1, "", Role::Count),
    ("mix", "pallets_additive", 0, 1, "", Role::Count),
    ("mix", "loose_mortar", 36, 1, "bag", Role::Bags),
    ("mix", "loose_additive", 36, 1, "bag", Role::Bags),
    ("mix", "bags_mortar_weight", 2880, 1, "lb", Role::Weight),
    ("mix", "bags_additive_weight", 864, 1, "lb", Role::Weight),
    ("mixer", "capacity", 315, 100, "ft3", Role::Capacity),
    ("mixer", "most_loads", 3, 1, "load", Role::Loads),
];

const SURFACE: &[(&str, i64, i64, &str, Role)] = &[
    ("gross", 258, 1, "ft2", Role::Area),
    ("openings_area", 58, 1, "ft2", Role::Area),
    ("reveals", 17, 1, "ft2", Role::Area),
    ("net_area", 217, 1, "ft2", Role::Area),
    ("mean", 123, 100, "in", Role::MeanThickness),
    ("most", 7, 4, "in", Role::MostThickness),
    ("volume", 2226, 100, "ft3", Role::Volume),
    ("loads", 69, 2, "load", Role::Loads),
    ("weight_mean", 147, 10, "lb/ft2", Role::WallWeight),
    ("weight_faces", 203, 10, "lb/ft2", Role::WallWeight),
    ("lifts", 2, 1, "", Role::Count),
];

fn add(tally: &mut Tally, id: &str, worked: Node, role: Role) -> Slot {
    tally.add(Figure { id: id.to_owned(), label: "figure.volume", worked: Ok(worked), basis: Basis::Author, role });
    Slot::figure(id)
}

fn text(t: &str) -> Slot {
    Slot::text(t)
}

/// The scope and its tally.
pub(super) fn scope() -> (Scope, Tally) {
    let mut tally = Tally::default();
    let mut groups = indexmap::IndexMap::new();
    for (group, name, n, d, unit, role) in FIGURES {
        let slot = add(&mut tally, &format!("made/{group}.{name}"), node(*n, *d, unit), *role);
        groups.entry(*group).or_insert_with(Slot::map).put(name, slot);
    }
    let half = groups.swap_remove("mix.half").unwrap();
    let mix = groups.get_mut("mix").unwrap();
    for (name, t) in
        [("name", "CARVE-24"), ("rev", "C"), ("additive_name", "additive"), ("mortar_class", "bagged Type S mortar, sand in it")]
    {
        mix.put(name, text(t));
    }
    mix.put("half", half);
    let mix = mix.clone();
    groups.get_mut("mixer").unwrap().put("name", text("pan *mixer* | 4"));
    let mut site = Slot::map();
    for (name, t) in [("name", "Larkenfell Inn"), ("code", "LF"), ("good_until", "31 Mar 2026")] {
        site.put(name, text(t));
    }
    for (name, n, unit, role) in [
        ("band_low", 68, "°F", Role::Reading),
        ("band_high", 74, "°F", Role::Reading),
        ("order_weight", 5614, "lb", Role::Weight),
        ("trips", 2, "", Role::Count),
    ] {
        let slot = add(&mut tally, &format!("made.{name}"), node(n, 1, unit), role);
        site.put(name, slot);
    }
    let mut surfaces = Vec::new();
    for id in ["LF-1", "LF-2"] {
        let mut surface = Slot::map();
        surface.put("id", text(id));
        surface.put("what", text("fireplace gable"));
        for (name, n, d, unit, role) in SURFACE {
            let slot = add(&mut tally, &format!("made/{id}.{name}"), node(*n, *d, unit), *role);
            surface.put(name, slot);
        }
        surfaces.push(surface);
    }
    site.put("surfaces", Slot::list(surfaces));
    site.put("mixes", Slot::list(vec![mix.clone(), mix]));
    let mut root = Slot::map();
    for (name, slot) in groups {
        root.put(name, slot);
    }
    root.put("site", site);
    let mut company = Slot::map();
    company.put("name", text("Hobnail Heath Works"));
    root.put("company", company);
    (Scope { root, near: vec!["made/".to_owned(), "made.".to_owned()], site: String::new(), subject: "made/up/3".to_owned() }, tally)
}

/// Every Markdown body of the demo, with its path and voice.
pub(super) fn demo() -> Vec<(PathBuf, Body, Voice)> {
    let mut files = Vec::new();
    walk(&Path::new(env!("CARGO_MANIFEST_DIR")).join("content"), &mut files);
    files.sort();
    assert!(files.len() > 50);
    files
        .into_iter()
        .map(|path| {
            let file = std::fs::read_to_string(&path).unwrap();
            let offset = file.match_indices("\n---\n").next().map_or(0, |(i, _)| i + 5);
            let voice = if path.to_string_lossy().ends_with(".es.md") { SPANISH } else { ENGLISH };
            (path, Body { file: 1, offset: u32::try_from(offset).unwrap(), text: file[offset..].to_owned() }, voice)
        })
        .collect()
}

fn walk(folder: &Path, out: &mut Vec<PathBuf>) {
    for entry in std::fs::read_dir(folder).unwrap() {
        let path = entry.unwrap().path();
        if path.is_dir() {
            walk(&path, out);
        } else if path.extension().is_some_and(|e| e == "md") {
            out.push(path);
        }
    }
}
