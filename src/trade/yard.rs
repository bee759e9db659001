//! F4: old rules for a cubic yard of mortar. Good for a guess and for old papers; the absolute volume decides.

use crate::quantity::expr::{Bags, Density, Mass, Node, Plain, Share, Volume, Worked};

use super::{Answer, above_zero, at_most, below_one, refuse, zero_or_more};

/// Loose volume of a material by rule 38: `V = V_m × (38 ÷ 27) × p ÷ P`; `V_m` mortar wanted, `p` parts of the material by
/// volume, `P` the sum of the parts.
///
/// `V_m > 0`, `0 ≤ p ≤ P`, `P > 0`. About 38 ft3 of loose material make a cubic yard of mortar. Small jobs only.
/// Source: `rule-38`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::yard::rule_38};
/// let v = rule_38(&Worked::read("1 yd3").unwrap(), &Worked::read("1").unwrap(), &Worked::read("4").unwrap()).unwrap();
/// assert_eq!(v.in_unit("ft3"), 9.5);
/// ```
pub fn rule_38(v_m: &Worked<Volume>, p: &Worked<Plain>, sum: &Worked<Plain>) -> Answer<Volume> {
    above_zero("F4 rule 38", "V_m", v_m)?;
    zero_or_more("F4 rule 38", "p", p)?;
    above_zero("F4 rule 38", "P", sum)?;
    at_most("F4 rule 38", "p", p, sum, "the sum of the parts")?;
    let v = v_m.named("V_m") * Node::given(38, 27) * p.named("p") / sum.named("P");
    Ok(Worked::new(v.formula("F4 rule 38", "V")))
}

/// Sacks of a loose volume: `n = V × w ÷ m`; `w` unit weight, `m` a bag's mass.
///
/// `V ≥ 0`, `w > 0`, `m > 0`. Not rounded: what is bought is. Source: `rule-38`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::{proportion::{Material, unit_weight}, yard::sacks}};
/// let n = sacks(&Worked::read("9.5 ft3").unwrap(), &unit_weight(Material::Portland), &Worked::read("94 lb").unwrap()).unwrap();
/// assert_eq!(n.value().si.to_f64(), 9.5);
/// ```
pub fn sacks(v: &Worked<Volume>, w: &Worked<Density>, bag: &Worked<Mass>) -> Answer<Bags> {
    zero_or_more("F4 sacks", "V", v)?;
    above_zero("F4 sacks", "w", w)?;
    above_zero("F4 sacks", "m", bag)?;
    Ok(Worked::new((v.named("V") * w.named("w") / bag.named("m")).formula("F4 sacks", "n")))
}

/// Barrels of cement to a cubic yard of mortar, by Gillette and Hill:
/// `N = 27 ÷ (1.1 × n × s + max(p − 0.9 × v × n × s, 0))`; `n` parts of sand to one of cement by volume, `s` a barrel in ft3,
/// `p` the paste of a barrel in ft3, `v` the voids of the sand.
///
/// `n > 0`, `s > 0`, `p > 0`, `0 % ≤ v < 100 %`. Where the paste does not fill the voids the second term is nothing:
/// the lean form `27 ÷ (1.1 × n × s)`. A text of 1908. Source: `barrels-per-yard`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::yard::barrels};
/// let n = barrels(&Worked::read("1").unwrap(), &Worked::read("3.5 ft3").unwrap(), &Worked::read("3.4 ft3").unwrap(), &Worked::read("45 %").unwrap());
/// assert_eq!(format!("{:.2}", n.unwrap().value().si.to_f64()), "4.63");
/// ```
pub fn barrels(n: &Worked<Plain>, s: &Worked<Volume>, p: &Worked<Volume>, v: &Worked<Share>) -> Answer<Plain> {
    const KEY: &str = "F4 barrels";
    above_zero(KEY, "n", n)?;
    above_zero(KEY, "s", s)?;
    above_zero(KEY, "p", p)?;
    below_one(KEY, "v", v)?;
    if n.value().si.to_f64() > 20.0 {
        return Err(refuse(KEY, "n", n, "at most 20 parts of sand, such as `3`"));
    }
    let sand = || n.named("n") * s.named("s").bare("ft3");
    let spare = p.named("p").bare("ft3") - Node::given(9, 10) * v.named("v") * sand();
    let bulk = Node::given(11, 10) * sand() + spare.max(Node::given(0, 1));
    Ok(Worked::new((Node::given(27, 1) / bulk).formula(KEY, "N")))
}

#[cfg(test)]
mod tests {
    use super::super::proportion::{Material, unit_weight};
    use super::super::testing::{holds, line, q};
    use super::*;

    // NAVEDTRA 14043 and 14045: rule 38 for 1 to 3.
    #[test]
    fn one_to_three() {
        let (cement, sand) = (rule_38(&q("1 yd3"), &q("1"), &q("4")).unwrap(), rule_38(&q("1 yd3"), &q("3"), &q("4")).unwrap());
        holds(&cement, "ft3", "9.5");
        holds(&sand, "ft3", "28.5");
        assert_eq!(line(&cement).0, "V = V_m × (38/27) × p ÷ P");
        holds(&sacks(&cement, &unit_weight(Material::Portland), &q("94 lb")).unwrap(), "", "9.5");
        assert!(rule_38(&q("1 yd3"), &q("5"), &q("4")).unwrap_err().wants.contains("at most 4"));
        assert!(sacks(&cement, &unit_weight(Material::Portland), &q("0 lb")).is_err());
    }

    #[test]
    fn lean_mortar_has_no_paste_to_spare() {
        let bbl = |n: &str| barrels(&q(n), &q("3.5 ft3"), &q("3.4 ft3"), &q("45 %"));
        holds(&bbl("3").unwrap(), "", "2.34");
        holds(&bbl("2").unwrap(), "", "3.27");
        assert_eq!(line(&bbl("2").unwrap()).0, "N = 27 ÷ (1.1 × n × s + max(p − 0.9 × v × n × s, 0))");
        assert_eq!(bbl("0").unwrap_err().symbol, "n");
        assert!(bbl("21").is_err());
    }
}
