//! Every formula has one source, and every function of the room names its own.

use super::*;
use std::collections::BTreeSet;

const FILES: &[&str] = &[
    include_str!("../age.rs"),
    include_str!("../arches.rs"),
    include_str!("../batch.rs"),
    include_str!("../carry.rs"),
    include_str!("../classes.rs"),
    include_str!("../coats.rs"),
    include_str!("../cost.rs"),
    include_str!("../cure.rs"),
    include_str!("../dew_point.rs"),
    include_str!("../drying_limits.rs"),
    include_str!("../error_budget.rs"),
    include_str!("../evaporation.rs"),
    include_str!("../finish.rs"),
    include_str!("../floor.rs"),
    include_str!("../joints.rs"),
    include_str!("../kits.rs"),
    include_str!("../labour.rs"),
    include_str!("../lath.rs"),
    include_str!("../learning.rs"),
    include_str!("../legible.rs"),
    include_str!("../lifting.rs"),
    include_str!("../lifting_tables.rs"),
    include_str!("../limits.rs"),
    include_str!("../loads.rs"),
    include_str!("../log.rs"),
    include_str!("../maturity.rs"),
    include_str!("../mix_targets.rs"),
    include_str!("../mix_temperature.rs"),
    include_str!("../moisture.rs"),
    include_str!("../net.rs"),
    include_str!("../open_time.rs"),
    include_str!("../parts.rs"),
    include_str!("../pigment.rs"),
    include_str!("../proportion.rs"),
    include_str!("../protect.rs"),
    include_str!("../purchase.rs"),
    include_str!("../relief.rs"),
    include_str!("../rules.rs"),
    include_str!("../site_water.rs"),
    include_str!("../sums.rs"),
    include_str!("../takeoff.rs"),
    include_str!("../vapour.rs"),
    include_str!("../water.rs"),
    include_str!("../weight.rs"),
    include_str!("../yard.rs"),
    include_str!("../yields.rs"),
];

fn own(file: &str) -> &str {
    file.split("#[cfg(test)]").next().unwrap()
}

#[test]
fn every_formula_has_one_source_and_every_source_a_formula() {
    let mut listed = BTreeSet::new();
    for source in all() {
        for formula in source.formulas {
            assert!(listed.insert(*formula), "{formula} is listed twice");
        }
    }
    let mut used = BTreeSet::new();
    for file in FILES {
        used.extend(own(file).split('"').filter(|t| {
            let digits = t.strip_prefix('F').and_then(|t| t.split_once(' ')).map_or("", |(n, _)| n);
            !digits.is_empty() && digits.bytes().all(|b| b.is_ascii_digit())
        }));
    }
    assert_eq!(used.symmetric_difference(&listed).collect::<Vec<_>>(), Vec::<&&str>::new());
}

#[test]
fn every_public_function_names_its_source() {
    for file in FILES {
        let functions = own(file).matches("\npub fn ").count();
        let named: Vec<&str> = own(file).split("Source: `").skip(1).filter_map(|t| t.split('`').next()).collect();
        assert_eq!(functions, named.len(), "{named:?}");
        for key in named {
            assert!(find(key).is_some(), "no source is called {key}");
        }
        assert_eq!(own(file).matches("/// ```\n/// use ").count(), functions, "an example for each of {}", functions);
    }
}
