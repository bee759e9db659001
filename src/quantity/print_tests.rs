//! Printed arithmetic.

use super::*;
use crate::quantity::expr::{Area, Length, Share, Temperature, Volume, Worked};

#[test]
fn a_reading_changes_scale_by_its_offset() {
    let base: Worked<Temperature> = Worked::read("70 °F").unwrap();
    let now: Worked<Temperature> = Worked::read("25 °C").unwrap();
    let lines = derivation("d", &(base.named("T_ref") - now.named("T")));
    assert_eq!(lines.first().unwrap().numbers, "70 − (25 × 1.8 + 32)");
    assert_eq!(lines.first().unwrap().result, "-7");
    assert_eq!(derivation("T", &now.named("T").bare("K")).first().unwrap().numbers, "25 + 273.15");
    assert_eq!(derivation("T", &now.named("T").bare("°C")).first().unwrap().numbers, "25");
}

#[test]
fn factors_between_units_stand_in_the_line() {
    let a: Worked<Area> = Worked::read("217.2 ft2").unwrap();
    let t: Worked<Length> = Worked::read("1 1/4 in").unwrap();
    let w: Worked<Share> = Worked::read("5 %").unwrap();
    let v = a.named("A") * t.named("t") / (Node::given(1, 1) - w.named("w"));
    let v: Worked<Volume> = Worked::new(v.formula("F2", "V"));
    let lines = derivation("", v.node());
    let first = lines.first().unwrap();
    assert_eq!(first.symbols, "A × t ÷ (1 − w)");
    assert_eq!(first.numbers, "217.2 × 1.25 ÷ 12 ÷ (1 − 5 ÷ 100)");
    assert_eq!(first.result, "905/38");
    assert_eq!(lines.get(2).unwrap().result, "1.25");
}

#[test]
fn an_empirical_formula_takes_and_gives_plain_numbers() {
    let t: Worked<Temperature> = Worked::read("92 °F").unwrap();
    let v: Worked<crate::quantity::expr::Speed> = Worked::read("11 mph").unwrap();
    let body = Node::given(5, 1) * (t.named("T").bare("°C") + Node::given(18, 1)).pow(Node::given(5, 2)) * v.named("V").bare("km/h");
    let e: Worked<crate::quantity::expr::Drying> = Worked::new(body.dressed("kg/m2/h").formula("F11", "E"));
    let lines = derivation("", e.node());
    let first = lines.first().unwrap();
    assert_eq!(first.symbols, "5 × (T + 18)^2.5 × V");
    assert_eq!(first.numbers, "5 × ((92 × (5/9) − 160/9) + 18)^2.5 × 11 × 1.609344");
    assert_eq!((first.unit.as_str(), lines.len()), ("kg/m2/h", 3));
}

#[test]
fn a_power_holds_its_base_together() {
    let x: Worked<Share> = Worked::read("50 %").unwrap();
    let inverse = Node::given(1, 1) / x.named("x").bare("%");
    assert_eq!(derivation("p", &inverse.clone().pow(Node::given(2, 1))).first().unwrap().numbers, "(1 ÷ 50)^2");
    assert_eq!(derivation("p", &x.named("x").ln()).first().unwrap().numbers, "ln(50 ÷ 100)");
}
