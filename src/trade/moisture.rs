//! F4: water that comes in with damp sand.

use crate::quantity::expr::{Density, Mass, Share, Volume, Worked};

use super::{Answer, above_zero, refuse, shown, zero_or_more};

/// Free water on damp sand or stone: `m_f = m × u`; `m` the material as it is weighed for the mix, `u` its surface moisture.
///
/// `m ≥ 0`, `0 % ≤ u ≤ 50 %`. Assumes the moisture is stated on that same mass. Source: `free-water`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::moisture::free_water};
/// assert_eq!(free_water(&Worked::read("1083 lb").unwrap(), &Worked::read("6 %").unwrap()).unwrap().in_unit("lb"), 64.98);
/// ```
pub fn free_water(m: &Worked<Mass>, u: &Worked<Share>) -> Answer<Mass> {
    zero_or_more("F4 free water", "m", m)?;
    zero_or_more("F4 free water", "u", u)?;
    if u.value().si.to_f64() > 0.5 {
        return Err(refuse("F4 free water", "u", u, "0 % to 50 %, such as `6 %`"));
    }
    Ok(Worked::new((m.named("m") * u.named("u")).formula("F4 free water", "m_f")))
}

/// Water left to add when the aggregate brings some: `W_add = W − (m_1 + m_2 + …) ÷ c`; `W` the mix's water, `m_1 …` [`free_water`] of
/// each material, `c` the mix's own water constant.
///
/// `W > 0`, `c > 0`. Refused where the sand brings more than the mix takes. Source: `free-water`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::moisture::water_to_add};
/// let free = ["35.36 lb", "64.98 lb"].map(|m| Worked::read(m).unwrap());
/// let w = water_to_add(&Worked::read("38.6 gal").unwrap(), &free, &Worked::read("8.345 lb/gal").unwrap()).unwrap();
/// assert_eq!(format!("{:.1}", w.in_unit("gal")), "26.6");
/// ```
pub fn water_to_add(w: &Worked<Volume>, free: &[Worked<Mass>], c: &Worked<Density>) -> Answer<Volume> {
    const KEY: &str = "F4 water to add";
    above_zero(KEY, "W", w)?;
    above_zero(KEY, "c", c)?;
    for m in free {
        zero_or_more(KEY, "m", m)?;
    }
    let sum = free.iter().enumerate().map(|(i, m)| m.named(format!("m_{}", i + 1))).reduce(|a, b| a + b);
    let left = match sum {
        Some(sum) => w.named("W") - super::like(sum / c.named("c"), w.node()),
        None => w.named("W"),
    };
    if left.value().si.is_negative() {
        let wants = format!("more than the damp sand brings, {} too little", shown(&left.abs()));
        return Err(refuse(KEY, "W", w, wants));
    }
    Ok(Worked::new(left.formula(KEY, "W_add")))
}

#[cfg(test)]
mod tests {
    use super::super::testing::{holds, line, q};
    use super::*;

    // US Army Engineer School, subcourse EN5466: one cubic yard.
    #[test]
    fn damp_sand_brings_twelve_gallons() {
        let free = [free_water(&q("1768 lb"), &q("2 %")).unwrap(), free_water(&q("1083 lb"), &q("6 %")).unwrap()];
        holds(&free[0], "lb", "35.36");
        holds(&free[1], "lb", "64.98");
        let w = water_to_add(&q("38.6 gal"), &free, &q("8.345 lb/gal")).unwrap();
        holds(&w, "gal", "26.6");
        assert_eq!(line(&w).0, "W_add = W − (m_1 + m_2) ÷ c");
        assert_eq!(w.node().unit().unwrap().symbol(), "gal");
        assert!(free_water(&q("1 lb"), &q("51 %")).unwrap_err().wants.contains("6 %"));
    }

    #[test]
    fn sand_may_bring_too_much() {
        let refused = water_to_add(&q("1 gal"), &[q("16.69 lb")], &q("8.345 lb/gal")).unwrap_err();
        assert_eq!(refused.wants, "more than the damp sand brings, 1 gal too little");
        holds(&water_to_add(&q("1 gal"), &[], &q("8.345 lb/gal")).unwrap(), "gal", "1");
        holds(&water_to_add(&q("2 gal"), &[q("16.69 lb")], &q("8.345 lb/gal")).unwrap(), "gal", "0.0");
    }
}
