//! Rows that state a rule without an example: our own cases, one on each side of the rule.

use hodbook::quantity::expr::{Area, Length, Worked};
use hodbook::trade::legible::cap_height;
use hodbook::trade::net::net;
use hodbook::trade::purchase::purchase;
use hodbook::trade::relief::mixed_volume;

use crate::run::How::Found;
use crate::run::{Run, gives, q};

/// The rules.
pub fn rules(run: &mut Run) {
    run.rule("TO-01", "NAVEDTRA 14044, p. 221: thickness times net area", Found);
    let gross: Worked<Area> = q("120 ft2");
    let with_hole = net(std::slice::from_ref(&gross), &[q("20 ft2")], &[]).unwrap();
    let volume = |a: &Worked<Area>| mixed_volume(a, &q::<Length>("0.6 in"), &q("0 %"), &q("0 %")).unwrap();
    gives(&volume(&with_hole), "ft3", "5.0");
    gives(&volume(&gross), "ft3", "6.0");

    run.rule("TO-02", "NAVEDTRA 14045: net is gross less openings", Found);
    gives(&with_hole, "ft2", "100");
    gives(&net(std::slice::from_ref(&gross), &[], &[]).unwrap(), "ft2", "120");
    assert!(net(std::slice::from_ref(&gross), &[q("121 ft2")], &[]).is_err());

    run.rule("TO-25", "bricklaying textbook: up to the next whole bag", Found);
    let bags = |n: &str| purchase(&q(n), &q("1 bag"), &q("0 %"), &q("0 loads")).unwrap().bags;
    gives(&bags("4 loads"), "", "4");
    gives(&bags("4.001 loads"), "", "5");

    run.rule("VA-06", "aviation display practice: 1/200 of the distance", Found);
    gives(&cap_height(&q("28 in"), &q("200")).unwrap(), "in", "0.14");
    gives(&cap_height(&q("1 m"), &q("200")).unwrap(), "mm", "5");
}
