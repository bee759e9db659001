//! F9: water against powder, and against the mix sheet's own water.

use crate::quantity::expr::{Mass, Node, Plain, Share, Volume, Worked};

use super::{Answer, above_zero, refuse, zero_or_more};

/// Water to dry mass: `w/d = m_w ÷ m_dry`, `m_w ≥ 0`, `m_dry > 0`.
///
/// No strength follows from it. Source: `water-index`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::water::water_to_dry};
/// let r = water_to_dry(&Worked::read("12.5175 lb").unwrap(), &Worked::read("104 lb").unwrap()).unwrap();
/// assert_eq!(format!("{:.4}", r.value().si.to_f64()), "0.1204");
/// ```
pub fn water_to_dry(m_w: &Worked<Mass>, m_dry: &Worked<Mass>) -> Answer<Plain> {
    zero_or_more("F9 water to dry", "m_w", m_w)?;
    above_zero("F9 water to dry", "m_dry", m_dry)?;
    Ok(Worked::new((m_w.named("m_w") / m_dry.named("m_dry")).formula("F9 water to dry", "w/d")))
}

/// Water index: `index = 100 × w ÷ w_start`; `w` water per load now, `w_start` the mix's start water, in the same measure.
///
/// `w ≥ 0`, `w_start > 0`. 100 is the design's start. Source: `water-index`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::water::water_index};
/// let gal = |t| Worked::read(t).unwrap();
/// assert_eq!(water_index(&gal("1.875 gal"), &gal("1.5 gal")).unwrap().value().si.to_f64(), 125.0);
/// ```
pub fn water_index(w: &Worked<Volume>, w_start: &Worked<Volume>) -> Answer<Plain> {
    zero_or_more("F9 index", "w", w)?;
    above_zero("F9 index", "w_start", w_start)?;
    Ok(Worked::new((Node::given(100, 1) * (w.named("w") / w_start.named("w_start"))).formula("F9 index", "index")))
}

/// Share of the late-water allowance that is used: `used = (w − start) ÷ (limit − start)`; water per load now, at the
/// start and at the limit.
///
/// `start < limit`, `w ≥ 0`. Below the start the share is negative, over the limit above 100 %: both are shown as
/// they are. Source: `water-index`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::water::allowance_used};
/// let gal = |t| Worked::read(t).unwrap();
/// assert_eq!(allowance_used(&gal("27 cups"), &gal("1.5 gal"), &gal("1.875 gal")).unwrap().in_unit("%"), 50.0);
/// ```
pub fn allowance_used(w: &Worked<Volume>, start: &Worked<Volume>, limit: &Worked<Volume>) -> Answer<Share> {
    zero_or_more("F9 allowance used", "w", w)?;
    zero_or_more("F9 allowance used", "start", start)?;
    if limit.value().si.compare(&start.value().si).is_le() {
        let wants = format!("more than the start, {}", super::shown(start.node()));
        return Err(refuse("F9 allowance used", "limit", limit, wants));
    }
    let used = (w.named("w") - start.named("start")) / (limit.named("limit") - start.named("start"));
    Ok(Worked::new(used.written_in("%").formula("F9 allowance used", "used")))
}

#[cfg(test)]
mod tests {
    use super::super::testing::{holds, line, q};
    use super::super::yields::water_mass;
    use super::*;

    // Worked example of the design, common practice, no source.
    #[test]
    fn indices_of_the_carve_mix() {
        let mass = |w: &str| water_mass(&q(w), &q("8.345 lb/gal")).unwrap();
        holds(&water_to_dry(&mass("1.5 gal"), &q("104 lb")).unwrap(), "", "0.1204");
        // The design prints 0.1505 (10.05 digits cut): 1.875 × 8.345 ÷ 104 is 0.15045.
        holds(&water_to_dry(&mass("1.875 gal"), &q("104 lb")).unwrap(), "", "0.150");
        holds(&water_index(&q("1.875 gal"), &q("1.5 gal")).unwrap(), "", "125");
        holds(&water_index(&q("27 cups"), &q("1.5 gal")).unwrap(), "", "112.5");
        let used = allowance_used(&q("27 cups"), &q("1.5 gal"), &q("1.875 gal")).unwrap();
        holds(&used, "%", "50");
        assert_eq!(line(&used).0, "used = (w − start) ÷ (limit − start)");
        assert!(allowance_used(&q("27 cups"), &q("1.5 gal"), &q("1.5 gal")).is_err());
    }
}
