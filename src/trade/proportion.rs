//! F4: parts into masses and back: by volume with stated unit weights, and by mass.

use crate::quantity::expr::{Density, Mass, Node, Plain, Share, Volume, Worked};
use crate::quantity::num::Num;
use crate::quantity::units::find_expr;
use crate::quantity::{Kind, Quantity};

use super::{Answer, OutOfRange, above_zero, at_most, like, refuse, rest, zero_or_more};

/// What a cubic foot is reckoned to weigh in a bag or in a box.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Material {
    /// Portland cement: a bag of 94 lb is a cubic foot.
    Portland,
    /// Hydrated lime, dry.
    Lime,
    /// Lime putty.
    Putty,
    /// Sand, damp and loose: the dry sand in a cubic foot of it.
    DampSand,
    /// Sand, dry and loose, of old handbooks and Navy plaster ratios.
    DrySand,
}

/// Unit weight by which parts by volume are weighed: cement 94, lime 40, putty 80, damp loose sand 80 lb/ft3 (its dry
/// sand), dry loose sand 100.
///
/// Masonry and mortar cement have none here: the bag says it. Source: `unit-weights`.
/// ```
/// use hodbook::trade::proportion::{Material, unit_weight};
/// assert_eq!(unit_weight(Material::DampSand).in_unit("lb/ft3").round(), 80.0);
/// ```
pub fn unit_weight(material: Material) -> Worked<Density> {
    const C270: &str = "ASTM C270 (recalled, not re-read)";
    let (pounds, symbol, source) = match material {
        Material::Portland => (94, "w_cement", "NAVEDTRA 14044: a sack of 94 lb, a cubic foot by convention"),
        Material::Lime => (40, "w_lime", C270),
        Material::Putty => (80, "w_putty", C270),
        Material::DampSand => (80, "w_sand", C270),
        Material::DrySand => (100, "w_sand", "NAVEDTRA 14044; Sabin, Cement and Concrete, 1905"),
    };
    let unit = find_expr("lb/ft3");
    let value = unit.map_or_else(|| Quantity::plain(Num::int(pounds)), |u| Quantity::of(&Num::int(pounds), u));
    Worked::new(Node::constant(value.as_kind(Kind::Plain), unit, symbol, source))
}

/// Mass of a part by volume: `m = p × V_1 × w`; `p` parts, `V_1` the volume that one part is, `w` the unit weight.
///
/// `p ≥ 0`, `V_1 > 0`, `w > 0`. Assumes that it is measured as its unit weight was: loose. Source: `parts-by-volume`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::proportion::{Material, part_mass, unit_weight}};
/// let m = part_mass(&Worked::read("4.5").unwrap(), &Worked::read("1 ft3").unwrap(), &unit_weight(Material::DampSand));
/// assert_eq!(m.unwrap().in_unit("lb").round(), 360.0);
/// ```
pub fn part_mass(p: &Worked<Plain>, v_1: &Worked<Volume>, w: &Worked<Density>) -> Answer<Mass> {
    zero_or_more("F4 part mass", "p", p)?;
    above_zero("F4 part mass", "V_1", v_1)?;
    above_zero("F4 part mass", "w", w)?;
    Ok(Worked::new((p.named("p") * v_1.named("V_1") * w.named("w")).formula("F4 part mass", "m")))
}

/// Loose volume of a mass: `V = m ÷ w`; `w` the unit weight.
///
/// `m ≥ 0`, `w > 0`. Source: `parts-by-volume`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::proportion::{Material, part_volume, unit_weight}};
/// assert_eq!(part_volume(&Worked::read("200 lb").unwrap(), &unit_weight(Material::Lime)).unwrap().in_unit("ft3").round(), 5.0);
/// ```
pub fn part_volume(m: &Worked<Mass>, w: &Worked<Density>) -> Answer<Volume> {
    zero_or_more("F4 part volume", "m", m)?;
    above_zero("F4 part volume", "w", w)?;
    Ok(Worked::new((m.named("m") / w.named("w")).formula("F4 part volume", "V")))
}

fn total(formula: &'static str, parts: &[Worked<Mass>]) -> Result<Node, OutOfRange> {
    for m in parts {
        above_zero(formula, "m", m)?;
    }
    let none = || OutOfRange { formula, symbol: "m", value: "missing".to_owned(), wants: "at least one part".to_owned() };
    parts.iter().enumerate().map(|(i, m)| m.named(format!("m_{}", i + 1))).reduce(|a, b| a + b).ok_or_else(none)
}

/// Share of a part by mass: `share = m ÷ (m_1 + m_2 + …)`; `m` the part, `m_1 …` all the parts, it among them.
///
/// At least one part, all above 0, `m` no more than their sum. Source: `parts-by-volume`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::proportion::part_share};
/// let parts = ["94 lb", "20 lb", "360 lb"].map(|m| Worked::read(m).unwrap());
/// assert_eq!(format!("{:.2}", part_share(&parts[0], &parts).unwrap().in_unit("%")), "19.83");
/// ```
pub fn part_share(m: &Worked<Mass>, parts: &[Worked<Mass>]) -> Answer<Share> {
    above_zero("F4 part share", "m", m)?;
    let sum = total("F4 part share", parts)?;
    at_most("F4 part share", "m", m, &Worked::new(sum.clone()), "all parts together")?;
    Ok(Worked::new((m.named("m") / sum).written_in("%").formula("F4 part share", "share")))
}

/// Factor of a laboratory batch: `k = m_s ÷ (w_s × p_s)`; `m_s` its sand in grams (1440 in ASTM C270), `w_s` the sand's unit
/// weight in lb/ft3, `p_s` the parts of sand.
///
/// All above 0. Grams to a pound per cubic foot and part. Source: `laboratory-batch`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::proportion::{Material, lab_factor, unit_weight}};
/// let k = lab_factor(&Worked::read("1440 g").unwrap(), &unit_weight(Material::DampSand), &Worked::read("4.5").unwrap()).unwrap();
/// assert_eq!(k.value().si.to_f64(), 4.0);
/// ```
pub fn lab_factor(sand: &Worked<Mass>, w: &Worked<Density>, p: &Worked<Plain>) -> Answer<Plain> {
    above_zero("F4 lab factor", "m_s", sand)?;
    above_zero("F4 lab factor", "w_s", w)?;
    above_zero("F4 lab factor", "p_s", p)?;
    let k = sand.named("m_s").bare("g") / (w.named("w_s").bare("lb/ft3") * p.named("p_s"));
    Ok(Worked::new(k.formula("F4 lab factor", "k")))
}

/// Mass of a part in a laboratory batch: `m = p × w × k`, in grams; `p` parts, `w` unit weight in lb/ft3, `k` of [`lab_factor`].
///
/// `p ≥ 0`, the others above 0. Source: `laboratory-batch`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::proportion::{Material, lab_mass, unit_weight}};
/// let m = lab_mass(&Worked::read("1").unwrap(), &unit_weight(Material::Portland), &Worked::read("4").unwrap()).unwrap();
/// assert_eq!(m.in_unit("g").round(), 376.0);
/// ```
pub fn lab_mass(p: &Worked<Plain>, w: &Worked<Density>, k: &Worked<Plain>) -> Answer<Mass> {
    zero_or_more("F4 lab mass", "p", p)?;
    above_zero("F4 lab mass", "w", w)?;
    above_zero("F4 lab mass", "k", k)?;
    Ok(Worked::new((p.named("p") * w.named("w").bare("lb/ft3") * k.named("k")).dressed("g").formula("F4 lab mass", "m")))
}

/// Mass of a part by mass beside one that is known: `m = m_1 × p ÷ p_1`; `m_1` mass of `p_1` parts, `p` parts.
///
/// `m_1 > 0`, `p_1 > 0`, `p ≥ 0`. Source: `parts-by-mass`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::proportion::by_mass};
/// let m = by_mass(&Worked::read("500 g").unwrap(), &Worked::read("1").unwrap(), &Worked::read("2.75").unwrap()).unwrap();
/// assert_eq!(m.in_unit("g"), 1375.0);
/// ```
pub fn by_mass(m_1: &Worked<Mass>, p_1: &Worked<Plain>, p: &Worked<Plain>) -> Answer<Mass> {
    above_zero("F4 by mass", "m_1", m_1)?;
    above_zero("F4 by mass", "p_1", p_1)?;
    zero_or_more("F4 by mass", "p", p)?;
    Ok(Worked::new(like(m_1.named("m_1") * p.named("p") / p_1.named("p_1"), m_1.node()).formula("F4 by mass", "m")))
}

/// A part of a total by mass: `m = M × p ÷ (p_1 + p_2 + …)`; `M` the whole, `p` the part, `p_1 …` all the parts, it among them.
///
/// `M > 0`, parts 0 or more and not all 0, `p` no more than their sum. Source: `parts-by-mass`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::proportion::split};
/// let parts = ["1", "2", "4"].map(|p| Worked::read(p).unwrap());
/// assert_eq!(split(&Worked::read("770 kg").unwrap(), &parts[1], &parts).unwrap().in_unit("kg"), 220.0);
/// ```
pub fn split(whole: &Worked<Mass>, p: &Worked<Plain>, parts: &[Worked<Plain>]) -> Answer<Mass> {
    const KEY: &str = "F4 split";
    above_zero(KEY, "M", whole)?;
    for part in parts.iter().chain([p]) {
        zero_or_more(KEY, "p", part)?;
    }
    let sum = parts.iter().enumerate().map(|(i, p)| p.named(format!("p_{}", i + 1))).reduce(|a, b| a + b);
    let Some(sum) = sum.filter(|s| !s.value().si.is_zero()) else {
        return Err(refuse(KEY, "p", p, "at least one part above 0, such as `1`"));
    };
    at_most(KEY, "p", p, &Worked::new(sum.clone()), "all parts together")?;
    Ok(Worked::new(like(whole.named("M") * p.named("p") / sum, whole.node()).formula(KEY, "m")))
}

/// Loose density of sand from its grains and voids: `w = SG × K × (1 − v)`; `SG` relative density, `K` the
/// absolute-volume constant, `v` voids.
///
/// `SG > 0`, `K > 0`, `0 % ≤ v < 100 %`. Source: `loose-density`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::proportion::loose_density};
/// let w = loose_density(&Worked::read("2.65").unwrap(), &Worked::read("62.4 lb/ft3").unwrap(), &Worked::read("45 %").unwrap());
/// assert_eq!(format!("{:.0}", w.unwrap().in_unit("lb/ft3")), "91");
/// ```
pub fn loose_density(sg: &Worked<Plain>, k: &Worked<Density>, v: &Worked<Share>) -> Answer<Density> {
    above_zero("F4 loose density", "SG", sg)?;
    above_zero("F4 loose density", "K", k)?;
    super::below_one("F4 loose density", "v", v)?;
    Ok(Worked::new(like(sg.named("SG") * k.named("K") * rest(&v.named("v")), k.node()).formula("F4 loose density", "w")))
}

#[cfg(test)]
mod tests {
    use super::super::testing::{holds, line, q};
    use super::*;

    // The laboratory example of ASTM C270 (recalled): 1 cement, 1 1/4 lime, 6 3/4 sand.
    #[test]
    fn a_laboratory_batch() {
        let sand = unit_weight(Material::DampSand);
        let k = lab_factor(&q("1440 g"), &sand, &q("6 3/4")).unwrap();
        holds(&k, "", "2.67");
        assert_eq!(line(&k), ("k = m_s ÷ (w_s × p_s)".into(), "1440 ÷ (80 × 6.75) = 8/3 ".into()));
        holds(&lab_mass(&q("1"), &unit_weight(Material::Portland), &k).unwrap(), "g", "250.67");
        holds(&lab_mass(&q("1 1/4"), &unit_weight(Material::Lime), &k).unwrap(), "g", "133.33");
        let all = lab_mass(&q("6 3/4"), &sand, &k).unwrap();
        holds(&all, "g", "1440");
        assert!(all.value().si.exact().is_some());
        assert!(lab_factor(&q("1440 g"), &sand, &q("0")).unwrap_err().wants.starts_with("more than 0"));
    }

    #[test]
    fn shares_and_splits_come_back_to_the_whole() {
        let parts: [Worked<Mass>; 3] = [q("94 lb"), q("20 lb"), q("360 lb")];
        let sum: f64 = parts.iter().map(|m| part_share(m, &parts).unwrap().in_unit("%")).sum();
        assert!((sum - 100.0).abs() < 1e-9);
        let by = [q("1"), q("2"), q("4")];
        holds(&split(&q("771.75 kg"), &by[0], &by).unwrap(), "kg", "110.25");
        assert!(split(&q("1 kg"), &q("8"), &by).unwrap_err().wants.starts_with("at most 7"));
        assert!(split(&q("1 kg"), &q("0"), &[q("0")]).is_err());
        assert!(split(&q("1 kg"), &q("0"), &[]).is_err());
        assert!(part_share(&q("1 lb"), &[]).is_err());
        assert!(part_share(&q("1 lb"), &[q("0.5 lb")]).is_err());
        assert_eq!(by_mass(&q("1 lb"), &q("0"), &q("1")).unwrap_err().symbol, "p_1");
        assert!(part_mass(&q("-1"), &q("1 ft3"), &unit_weight(Material::Putty)).is_err());
        assert!(part_volume(&q("1 lb"), &q("0 lb/ft3")).is_err());
        assert!(loose_density(&q("2.65"), &q("1 kg/L"), &q("100 %")).is_err());
        assert_eq!(unit_weight(Material::DrySand).node().leaves().len(), 1);
    }
}
