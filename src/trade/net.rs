//! F1: faces together, and what is left of them after the openings.

use num_rational::BigRational;

use crate::quantity::expr::{Area, Node, Plain, Worked};

use super::{Answer, OutOfRange, at_most, refuse, zero_or_more};

fn area(node: Node, key: &'static str) -> Answer<Area> {
    Ok(Worked::new(node.formula(key, "A")))
}

fn summed(parts: &[Worked<Area>], letter: &str) -> Option<Node> {
    let named = parts.iter().enumerate().map(|(i, a)| a.named(format!("{letter}{}", i + 1)));
    named.reduce(|sum, a| sum + a)
}

/// Several faces together: `A = A1 + A2 + …`; at least one.
///
/// Source: `net-area`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::net::total};
/// let faces = [Worked::read("18 ft2").unwrap(), Worked::read("3.75 ft2").unwrap()];
/// assert_eq!(total(&faces).unwrap().in_unit("ft2"), 21.75);
/// ```
pub fn total(faces: &[Worked<Area>]) -> Answer<Area> {
    match summed(faces, "A") {
        Some(sum) => area(sum, "F1 total"),
        None => Err(no_face("F1 total", "A1")),
    }
}

fn no_face(formula: &'static str, symbol: &'static str) -> OutOfRange {
    OutOfRange { formula, symbol, value: "missing".to_owned(), wants: "at least one face".to_owned() }
}

/// Net face with returns: `A = gross − openings + reveals`, each a list; `G1 …`, `O1 …`, `R1 …` in the print.
///
/// Every opening is deducted at its real size, however small: thick mud makes its return dearer than its
/// face. Openings larger than the gross face are refused. Source: `net-area`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::net::net};
/// let list = |t| [Worked::read(t).unwrap()];
/// assert_eq!(net(&list("528 ft2"), &list("84 ft2"), &list("20 ft2")).unwrap().in_unit("ft2"), 464.0);
/// assert!(net(&list("528 ft2"), &list("560 ft2"), &[]).is_err());
/// ```
pub fn net(gross: &[Worked<Area>], openings: &[Worked<Area>], reveals: &[Worked<Area>]) -> Answer<Area> {
    for (symbol, parts) in [("G", gross), ("O", openings), ("R", reveals)] {
        for part in parts {
            zero_or_more("F1 net", symbol, part)?;
        }
    }
    let Some(mut sum) = summed(gross, "G") else {
        return Err(no_face("F1 net", "G1"));
    };
    if let Some(out) = summed(openings, "O") {
        let (all, cut) = (Worked::<Area>::new(sum.clone()), Worked::<Area>::new(out.clone()));
        at_most("F1 net", "O", &cut, &all, "the gross face")?;
        sum = sum - out;
    }
    if let Some(returns) = summed(reveals, "R") {
        sum = sum + returns;
    }
    area(sum, "F1 net")
}

/// Times a count of equal things: `A = n × A1`, `n` a whole number of 1 or more.
///
/// Source: `net-area`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::net::times};
/// assert_eq!(times(&Worked::read("12 ft2").unwrap(), &Worked::read("2").unwrap()).unwrap().in_unit("ft2"), 24.0);
/// ```
pub fn times(one: &Worked<Area>, n: &Worked<Plain>) -> Answer<Area> {
    let whole = n.value().si.exact().is_some_and(BigRational::is_integer);
    if !whole || n.value().si.is_negative() || n.value().si.is_zero() {
        return Err(refuse("F1 times", "n", n, "a whole number from 1, such as `2`"));
    }
    area(n.named("n") * one.named("A1"), "F1 times")
}

#[cfg(test)]
mod tests {
    use super::super::testing::q;
    use super::*;

    #[test]
    fn what_is_out_of_range_says_what_would_pass() {
        let refused = net(&[q("528 ft2")], &[q("560 ft2")], &[]).unwrap_err();
        assert_eq!(refused.to_string(), "F1 net: O is 560 ft2, wants at most 528 ft2 (the gross face)");
        assert!(times(&q("12 ft2"), &q("1.5")).is_err());
        assert!(total(&[]).is_err());
        assert!(net(&[], &[], &[]).is_err());
    }
}
