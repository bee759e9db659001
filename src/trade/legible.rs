//! F28: how large letters must be, and how many lines then fit.

use crate::quantity::expr::{Length, Node, Plain, Share, Worked};
use crate::quantity::num::Direction;

use super::{Answer, above_zero, like, refuse};

/// Height of capitals: `cap = D ÷ n`; `D` reading distance, `n` 300 for message text, 150 for a signal word.
///
/// Both above 0. Good light and a clean sheet are assumed; a muddy one wants twice that. Source: `letter-height`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::legible::cap_height};
/// let cap = cap_height(&Worked::read("1 m").unwrap(), &Worked::read("300").unwrap()).unwrap();
/// assert_eq!(format!("{:.3}", cap.in_unit("in")), "0.131");
/// ```
pub fn cap_height(distance: &Worked<Length>, n: &Worked<Plain>) -> Answer<Length> {
    above_zero("F28 cap height", "D", distance)?;
    above_zero("F28 cap height", "n", n)?;
    let cap = like(distance.named("D") / n.named("n"), distance.node());
    Ok(Worked::new(cap.formula("F28 cap height", "cap")))
}

/// Type size for a capital height: `size = cap ÷ share`; `share` capitals to type size, the typeface's own.
///
/// `cap > 0`, `0 % < share ≤ 100 %`. A point is 1/72 in. Source: `letter-height`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::legible::type_size};
/// let size = type_size(&Worked::read("0.131 in").unwrap(), &Worked::read("71 %").unwrap()).unwrap();
/// assert_eq!(format!("{:.0}", 72.0 * size.in_unit("in")), "13");
/// ```
pub fn type_size(cap: &Worked<Length>, share: &Worked<Share>) -> Answer<Length> {
    above_zero("F28 type size", "cap", cap)?;
    above_zero("F28 type size", "share", share)?;
    if share.value().si.to_f64() > 1.0 {
        return Err(refuse("F28 type size", "share", share, "more than 0 % and at most 100 %, such as `71 %`"));
    }
    Ok(Worked::new(like(cap.named("cap") / share.named("share"), cap.node()).formula("F28 type size", "size")))
}

/// Lines that fit: `lines = down(H ÷ (size × leading), 1)`; `H` usable height, `size` type size, `leading` line distance as a
/// multiple of it.
///
/// `H` and `size` above 0, `leading` 1 or more. What does not fit is cut, never shrunk. Source: `line-budget`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::legible::lines};
/// let n = lines(&Worked::read("10 in").unwrap(), &Worked::read("28/72 in").unwrap(), &Worked::read("1.2").unwrap()).unwrap();
/// assert_eq!(n.value().si.to_f64(), 21.0);
/// ```
pub fn lines(height: &Worked<Length>, size: &Worked<Length>, leading: &Worked<Plain>) -> Answer<Plain> {
    above_zero("F28 lines", "H", height)?;
    above_zero("F28 lines", "size", size)?;
    if leading.value().si.to_f64() < 1.0 {
        return Err(refuse("F28 lines", "leading", leading, "1 or more, such as `1.2`"));
    }
    let line: Node = like(size.named("size") * leading.named("leading"), size.node());
    Ok(Worked::new((height.named("H") / line).rounded(Direction::Down, 1, 1).formula("F28 lines", "lines")))
}

#[cfg(test)]
mod tests {
    use super::super::testing::{holds, line, q};
    use super::*;

    // Worked example of the design; the 1/300 and 1/150 are sign practice.
    #[test]
    fn a_card_read_from_a_metre() {
        let cap = cap_height(&q("1 m"), &q("300")).unwrap();
        holds(&cap, "in", "0.131");
        assert_eq!(format!("{:.0}", 72.0 * type_size(&cap, &q("71 %")).unwrap().in_unit("in")), "13");
        let signal = cap_height(&q("1 m"), &q("150")).unwrap();
        holds(&signal, "in", "0.262");
        assert_eq!(format!("{:.0}", 72.0 * type_size(&signal, &q("71 %")).unwrap().in_unit("in")), "27");
        let letter = lines(&q("10 in"), &q("28/72 in"), &q("1.2")).unwrap();
        holds(&letter, "", "21");
        holds(&lines(&q("16 in"), &q("28/72 in"), &q("1.2")).unwrap(), "", "34");
        assert_eq!(line(&letter), ("lines = down(H ÷ (size × leading), 1)".to_owned(), "down(10 ÷ ((7/18) × 1.2), 1) = 21 ".to_owned()));
        assert!(lines(&q("16 in"), &q("28/72 in"), &q("0.8")).is_err());
    }
}
