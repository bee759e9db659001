//! F10: powder colour by the cement.

use crate::quantity::expr::{Mass, Share, Worked};

use super::{Answer, OutOfRange, above_zero, refuse, shown, zero_or_more};

/// Cement in a mass of bagged mortar: `m_c = m × c`; `c` the share of cement, from the maker of the bag.
///
/// `m > 0`, `0 % < c ≤ 100 %`. There is no default: a guessed share gives a guessed colour. Source: `pigment-by-cement`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::pigment::cement};
/// assert_eq!(cement(&Worked::read("80 lb").unwrap(), &Worked::read("22 %").unwrap()).unwrap().in_unit("lb"), 17.6);
/// ```
pub fn cement(m: &Worked<Mass>, c: &Worked<Share>) -> Answer<Mass> {
    above_zero("F10 cement", "m", m)?;
    above_zero("F10 cement", "c", c)?;
    if c.value().si.to_f64() > 1.0 {
        return Err(refuse("F10 cement", "c", c, "at most 100 %, from the maker of the bag, such as `22 %`"));
    }
    Ok(Worked::new((m.named("m") * c.named("c")).formula("F10 cement", "m_c")))
}

/// Pigment: `m_p = d × m_c`; `d` the dose as a share of cement, `m_c` of [`cement`].
///
/// `m_c > 0`, `0 % ≤ d ≤ limit`; `limit` the share allowed: the rules `oxide pigment` (10 %) and `carbon black` (2 %) of
/// [`rules`](super::rules), or the maker's where it is less. Source: `pigment-by-cement`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::pigment::pigment};
/// let dose = |d| pigment(&Worked::read("17.6 lb").unwrap(), &Worked::read(d).unwrap(), &Worked::read("10 %").unwrap());
/// assert_eq!(dose("4 %").unwrap().in_unit("lb"), 0.704);
/// assert!(dose("11 %").is_err());
/// ```
pub fn pigment(m_c: &Worked<Mass>, d: &Worked<Share>, limit: &Worked<Share>) -> Answer<Mass> {
    above_zero("F10 pigment", "m_c", m_c)?;
    zero_or_more("F10 pigment", "d", d)?;
    within(d, limit)?;
    Ok(Worked::new((d.named("d") * m_c.named("m_c")).formula("F10 pigment", "m_p")))
}

fn within(d: &Worked<Share>, limit: &Worked<Share>) -> Result<(), OutOfRange> {
    if d.value().si.compare(&limit.value().si).is_gt() {
        return Err(refuse("F10 pigment", "d", d, format!("at most {} of the cement", shown(limit.node()))));
    }
    Ok(())
}

/// Most pigment that a load may have: `m_max = limit × m_c`.
///
/// `m_c > 0`, `0 % < limit ≤ 100 %`. Round down. Source: `pigment-limit`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::pigment::most_pigment};
/// let most = most_pigment(&Worked::read("17.6 lb").unwrap(), &Worked::read("10 %").unwrap()).unwrap();
/// assert_eq!(most.in_unit("lb"), 1.76);
/// ```
pub fn most_pigment(m_c: &Worked<Mass>, limit: &Worked<Share>) -> Answer<Mass> {
    above_zero("F10 most pigment", "m_c", m_c)?;
    above_zero("F10 most pigment", "limit", limit)?;
    if limit.value().si.to_f64() > 1.0 {
        return Err(refuse("F10 most pigment", "limit", limit, "at most 100 %, such as `10 %`"));
    }
    Ok(Worked::new((limit.named("limit") * m_c.named("m_c")).formula("F10 most pigment", "m_max")))
}

#[cfg(test)]
mod tests {
    use super::super::rules::find;
    use super::super::testing::{holds, line, q};
    use super::*;

    // Worked example of the design, common practice, no source.
    #[test]
    fn four_per_cent_of_the_cement_in_a_bag() {
        let m_c = cement(&q("80 lb"), &q("22 %")).unwrap();
        let oxide: Worked<Share> = find("oxide pigment").unwrap().most().unwrap();
        let p = pigment(&m_c, &q("4 %"), &oxide).unwrap();
        holds(&p, "lb", "0.704");
        holds(&p, "oz", "11.3");
        assert_eq!(line(&p), ("m_p = d × m_c".into(), "4 × 17.6 ÷ 100 = 0.704 lb".into()));
        holds(&most_pigment(&m_c, &oxide).unwrap(), "lb", "1.76");
        let black: Worked<Share> = find("carbon black").unwrap().most().unwrap();
        assert_eq!(pigment(&m_c, &q("4 %"), &black).unwrap_err().wants, "at most 2 % of the cement");
        assert!(pigment(&m_c, &q("2 %"), &black).is_ok());
        assert_eq!(cement(&q("80 lb"), &q("101 %")).unwrap_err().symbol, "c");
        assert!(most_pigment(&m_c, &q("0 %")).is_err());
    }
}
