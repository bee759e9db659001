//! Published rules for openings, one case on each side of each limit.

use hodbook::quantity::expr::{Area, Worked};
use hodbook::trade::net::net;
use hodbook::trade::opening_rule::{Reveal, deducted_is1200, deducted_reed, reveals_is1200};

use crate::run::How::Found;
use crate::run::{Run, gives, q};

/// The rules.
pub fn rules(run: &mut Run) {
    run.rule("TO-14", "a house-plan book of 1878: deduct every opening, each at least 2 yd2", Found);
    let gross: Worked<Area> = q("120 ft2");
    let left = |opening: &str| net(std::slice::from_ref(&gross), &[deducted_reed(&q(opening)).unwrap()], &[]).unwrap();
    gives(&left("0.25 ft2"), "ft2", "102");
    gives(&left("2 yd2"), "ft2", "102");
    gives(&left("20 ft2"), "ft2", "100");

    run.rule("TO-15", "IS 1200 Part 12: up to 0.5 m2 no deduction, no reveals", Found);
    for reveal in [Reveal::Narrower, Reveal::Equal, Reveal::Wider] {
        gives(&deducted_is1200(&q("0.5 m2"), reveal).unwrap(), "m2", "0.00");
    }
    gives(&deducted_is1200(&q("0.51 m2"), Reveal::Narrower).unwrap(), "m2", "0.51");
    gives(&reveals_is1200(&q("0.4 m2"), &q("0.5 m2")).unwrap(), "m2", "0.0");

    run.rule("TO-16", "IS 1200 Part 12: over 0.5 to 3 m2 by the narrower reveal, equal ones 50 %, no reveals added", Found);
    gives(&deducted_is1200(&q("3 m2"), Reveal::Narrower).unwrap(), "m2", "3.0");
    gives(&deducted_is1200(&q("3 m2"), Reveal::Equal).unwrap(), "m2", "1.5");
    gives(&deducted_is1200(&q("3 m2"), Reveal::Wider).unwrap(), "m2", "0.0");
    gives(&reveals_is1200(&q("1.2 m2"), &q("3 m2")).unwrap(), "m2", "0.0");

    run.rule("TO-17", "IS 1200 Part 12: over 3 m2 deducted, jambs, sills and soffits added", Found);
    for reveal in [Reveal::Narrower, Reveal::Equal, Reveal::Wider] {
        gives(&deducted_is1200(&q("3.1 m2"), reveal).unwrap(), "m2", "3.1");
    }
    gives(&reveals_is1200(&q("1.2 m2"), &q("3.1 m2")).unwrap(), "m2", "1.2");
}
