//! F4: what a load gives, by absolute volume, and what it weighs wet.

use crate::quantity::expr::{Density, Mass, Node, Plain, Share, Volume, Worked};

use super::{Answer, OutOfRange, above_zero, at_most, below_one, refuse, rest, zero_or_more};

/// A dry part of a load.
#[derive(Clone, Debug)]
pub struct Solid {
    /// Short name for the symbols: `add` gives `m_add` and `SG_add`.
    pub name: &'static str,
    /// Mass in the load.
    pub mass: Worked<Mass>,
    /// Density of its grains relative to water.
    pub relative_density: Worked<Plain>,
}

/// The volume unit that a water constant is stated by: `ft3` of `lb/ft3`, `L` of `kg/L`.
fn by_volume_of(node: Node, k: &Worked<Density>) -> Node {
    match k.node().unit().and_then(|u| u.under) {
        Some(under) => node.written_in(under.symbol),
        None => node,
    }
}

/// Mass of the water: `m_w = W × c`; `W` volume of water per load, `c` the mix's own water constant, such as
/// 8.345 lb/gal or 1 kg/L.
///
/// `W ≥ 0`, `c > 0`. The constant belongs to the mix; a site's units never change it. Source: `absolute-volume`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::yields::water_mass};
/// let m = water_mass(&Worked::read("1 gal 2 qt").unwrap(), &Worked::read("8.345 lb/gal").unwrap()).unwrap();
/// assert_eq!(m.in_unit("lb"), 12.5175);
/// ```
pub fn water_mass(w: &Worked<Volume>, c: &Worked<Density>) -> Answer<Mass> {
    zero_or_more("F4 water mass", "W", w)?;
    above_zero("F4 water mass", "c", c)?;
    Ok(Worked::new((w.named("W") * c.named("c")).formula("F4 water mass", "m_w")))
}

fn own_volume(solid: &Solid, k: &Worked<Density>) -> Result<Node, OutOfRange> {
    above_zero("F4 absolute volume", "m", &solid.mass)?;
    above_zero("F4 absolute volume", "SG", &solid.relative_density)?;
    above_zero("F4 absolute volume", "K", k)?;
    let solid_density = solid.relative_density.named(format!("SG_{}", solid.name)) * k.named("K");
    let v = solid.mass.named(format!("m_{}", solid.name)) / super::like(solid_density, k.node());
    Ok(by_volume_of(v, k))
}

/// Volume of a part's grains without voids: `V = m ÷ (SG × K)`; `m` mass, `SG` relative density, `K` the mix's
/// absolute-volume constant, such as 62.4 lb/ft3 or 1 kg/L.
///
/// All above 0. Source: `absolute-volume`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::yields::{Solid, absolute_volume}};
/// let cement = Solid { name: "c", mass: Worked::read("94 lb").unwrap(), relative_density: Worked::read("3.15").unwrap() };
/// let v = absolute_volume(&cement, &Worked::read("62.4 lb/ft3").unwrap()).unwrap();
/// assert_eq!(format!("{:.4}", v.in_unit("ft3")), "0.4782");
/// ```
pub fn absolute_volume(solid: &Solid, k: &Worked<Density>) -> Answer<Volume> {
    Ok(Worked::new(own_volume(solid, k)?.formula("F4 absolute volume", "V")))
}

fn no_solids(formula: &'static str) -> OutOfRange {
    OutOfRange { formula, symbol: "m", value: "missing".to_owned(), wants: "at least one dry part".to_owned() }
}

/// Volume of all grains of a load: the sum of [`absolute_volume`] over its dry parts.
///
/// At least one part. Source: `absolute-volume`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::yields::{Solid, solids_volume}};
/// let part = |name, mass, sg| Solid { name, mass: Worked::read(mass).unwrap(), relative_density: Worked::read(sg).unwrap() };
/// let parts = [part("add", "24 lb", "2.30"), part("mor", "80 lb", "2.66")];
/// let v = solids_volume(&parts, &Worked::read("62.4 lb/ft3").unwrap()).unwrap();
/// assert_eq!(format!("{:.4}", v.in_unit("ft3")), "0.6492");
/// ```
pub fn solids_volume(solids: &[Solid], k: &Worked<Density>) -> Answer<Volume> {
    let mut sum: Option<Node> = None;
    for solid in solids {
        let v = own_volume(solid, k)?;
        sum = Some(match sum {
            Some(before) => before + v,
            None => v,
        });
    }
    sum.map(|v| Worked::new(v.formula("F4 solids", "V_s"))).ok_or_else(|| no_solids("F4 solids"))
}

/// Yield of a load: `y = (V_s + m_w ÷ K) ÷ (1 − air)`; `V_s` [`solids_volume`], `m_w` mass of water, `K` the mix's
/// absolute-volume constant, `air` its air content.
///
/// `m_w ≥ 0`, `K > 0`, `0 % ≤ air < 100 %`. Assumes that nothing dissolves and that the air is the mix sheet's:
/// weigh a level pail to know it. Source: `absolute-volume`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::yields::{Solid, load_yield, solids_volume}};
/// let part = |name, mass, sg| Solid { name, mass: Worked::read(mass).unwrap(), relative_density: Worked::read(sg).unwrap() };
/// let k = Worked::read("62.4 lb/ft3").unwrap();
/// let grains = solids_volume(&[part("add", "24 lb", "2.30"), part("mor", "80 lb", "2.66")], &k).unwrap();
/// let y = load_yield(&grains, &Worked::read("12.5175 lb").unwrap(), &k, &Worked::read("9 %").unwrap()).unwrap();
/// assert_eq!(format!("{:.4}", y.in_unit("ft3")), "0.9338");
/// ```
pub fn load_yield(solids: &Worked<Volume>, m_w: &Worked<Mass>, k: &Worked<Density>, air: &Worked<Share>) -> Answer<Volume> {
    above_zero("F4 yield", "V_s", solids)?;
    zero_or_more("F4 yield", "m_w", m_w)?;
    above_zero("F4 yield", "K", k)?;
    below_one("F4 yield", "air", air)?;
    let water = by_volume_of(m_w.named("m_w") / k.named("K"), k);
    let y = by_volume_of((solids.named("V_s") + water) / rest(&air.named("air")), k);
    Ok(Worked::new(y.formula("F4 yield", "y")))
}

/// Dry mass of a load: the sum of its dry parts.
///
/// At least one part, each mass above 0. Source: `absolute-volume`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::yields::{Solid, dry_load}};
/// let part = |name, mass| Solid { name, mass: Worked::read(mass).unwrap(), relative_density: Worked::read("2.6").unwrap() };
/// assert_eq!(dry_load(&[part("add", "24 lb"), part("mor", "80 lb")]).unwrap().in_unit("lb"), 104.0);
/// ```
pub fn dry_load(solids: &[Solid]) -> Answer<Mass> {
    for solid in solids {
        above_zero("F4 dry load", "m", &solid.mass)?;
    }
    let sum = solids.iter().map(|s| s.mass.named(format!("m_{}", s.name))).reduce(|a, b| a + b);
    sum.map(|m| Worked::new(m.formula("F4 dry load", "m_dry"))).ok_or_else(|| no_solids("F4 dry load"))
}

/// Wet mass of a load: `m_wet = m_dry + m_w`, `m_dry > 0`, `m_w ≥ 0`.
///
/// Source: `absolute-volume`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::yields::wet_load};
/// assert_eq!(wet_load(&Worked::read("104 lb").unwrap(), &Worked::read("12.5 lb").unwrap()).unwrap().in_unit("lb"), 116.5);
/// ```
pub fn wet_load(m_dry: &Worked<Mass>, m_w: &Worked<Mass>) -> Answer<Mass> {
    above_zero("F4 wet load", "m_dry", m_dry)?;
    zero_or_more("F4 wet load", "m_w", m_w)?;
    Ok(Worked::new((m_dry.named("m_dry") + m_w.named("m_w")).formula("F4 wet load", "m_wet")))
}

/// Wet density: `d = m_wet ÷ y`; `m_wet` wet mass of a load, `y` its yield, both above 0.
///
/// Source: `absolute-volume`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::yields::wet_density};
/// let d = wet_density(&Worked::read("116.5 lb").unwrap(), &Worked::read("0.932 ft3").unwrap()).unwrap();
/// assert_eq!(d.in_unit("lb/ft3"), 125.0);
/// ```
pub fn wet_density(m_wet: &Worked<Mass>, y: &Worked<Volume>) -> Answer<Density> {
    above_zero("F4 wet density", "m_wet", m_wet)?;
    above_zero("F4 wet density", "y", y)?;
    Ok(Worked::new((m_wet.named("m_wet") / y.named("y")).formula("F4 wet density", "d")))
}

/// Air of a batch from a weighed level measure: `air = (d_free − d_seen) ÷ d_free`; `d_seen` the density weighed,
/// `d_free` the wet density of the same mix without air.
///
/// `0 < d_seen ≤ d_free`; a heavier pail than the mix can give is refused, because the measure or the water is
/// wrong. Source: `gravimetric-air`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::yields::air_by_weight};
/// let air = air_by_weight(&Worked::read("126 lb/ft3").unwrap(), &Worked::read("140 lb/ft3").unwrap()).unwrap();
/// assert_eq!(air.in_unit("%"), 10.0);
/// ```
pub fn air_by_weight(seen: &Worked<Density>, free: &Worked<Density>) -> Answer<Share> {
    above_zero("F4 air", "d_seen", seen)?;
    at_most("F4 air", "d_seen", seen, free, "this mix without any air")?;
    let air = (free.named("d_free") - seen.named("d_seen")) / free.named("d_free");
    Ok(Worked::new(air.written_in("%").formula("F4 air", "air")))
}

/// Air of the cube mortar of ASTM C185: `air = 100 − W × (182.7 + P) ÷ (2000 + 4 × P)` per cent; `W` mass of mortar in the
/// 400 mL measure, `P` its water as a share of the cement.
///
/// For that mortar alone: 350 g cement of relative density 3.15, 1400 g sand of 2.65. `W > 0`, `0 % < P ≤ 200 %`; a
/// measure heavier than the mortar can be is refused. The 182.7 is that of the standard, rounded: the exact
/// volumes give 182.689, and [`air_by_weight`] 0.004 % more. Source: `cube-mortar-air`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::yields::cube_air};
/// let air = cube_air(&Worked::read("820 g").unwrap(), &Worked::read("66 %").unwrap()).unwrap();
/// assert_eq!(format!("{:.3}", air.in_unit("%")), "9.923");
/// ```
pub fn cube_air(w: &Worked<Mass>, p: &Worked<Share>) -> Answer<Share> {
    const KEY: &str = "F4 cube air";
    above_zero(KEY, "W", w)?;
    above_zero(KEY, "P", p)?;
    if p.value().si.to_f64() > 2.0 {
        return Err(refuse(KEY, "P", p, "at most 200 % of the cement, such as `66 %`"));
    }
    let water = || p.named("P").bare("%");
    let filled = w.named("W").bare("g") * (Node::given(1827, 10) + water()) / (Node::given(2000, 1) + Node::given(4, 1) * water());
    let air = Node::given(100, 1) - filled;
    if air.value().si.is_negative() {
        return Err(refuse(KEY, "W", w, "a mass that the 400 mL measure can hold; weigh it again"));
    }
    Ok(Worked::new(air.dressed("%").formula(KEY, "air")))
}

/// Volume of a measure from the water it holds: `V = m ÷ ρ`; `m` mass of the water, `ρ` its density at its temperature,
/// such as 0.9976 g/mL at 23 °C.
///
/// Both above 0. Source: `measure-by-water`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::yields::measure_volume};
/// let v = measure_volume(&Worked::read("399.04 g").unwrap(), &Worked::read("0.9976 g/mL").unwrap()).unwrap();
/// assert_eq!(v.in_unit("mL"), 400.0);
/// ```
pub fn measure_volume(m: &Worked<Mass>, rho: &Worked<Density>) -> Answer<Volume> {
    above_zero("F4 measure", "m", m)?;
    above_zero("F4 measure", "ρ", rho)?;
    Ok(Worked::new(by_volume_of(m.named("m") / rho.named("ρ"), rho).formula("F4 measure", "V")))
}

#[cfg(test)]
pub(crate) mod tests {
    use super::super::testing::{holds, line, q};
    use super::*;

    /// A two-part mix of the worked examples, at a given water.
    pub fn load(add: (&str, &str), mor: (&str, &str), water: &str, us: bool, air: &str) -> (Worked<Volume>, Worked<Mass>, Worked<Mass>) {
        let solids = [
            Solid { name: "add", mass: q(add.0), relative_density: q(add.1) },
            Solid { name: "mor", mass: q(mor.0), relative_density: q(mor.1) },
        ];
        let k = if us { q("62.4 lb/ft3") } else { q("1 kg/L") };
        let m_w = water_mass(&q(water), &if us { q("8.345 lb/gal") } else { q("1 kg/L") }).unwrap();
        let y = load_yield(&solids_volume(&solids, &k).unwrap(), &m_w, &k, &q(air)).unwrap();
        let dry = dry_load(&solids).unwrap();
        let wet = wet_load(&dry, &m_w).unwrap();
        (y, wet, dry)
    }

    // Worked example of the design, common practice, no source.
    #[test]
    fn carve_mix_at_start_water() {
        let (y, wet, _) = load(("24 lb", "2.30"), ("80 lb", "2.66"), "1 gal 2 qt", true, "9 %");
        holds(&y, "ft3", "0.9338");
        holds(&y, "L", "26.4");
        let d = wet_density(&wet, &y).unwrap();
        holds(&d, "lb/ft3", "124.8");
        let (symbols, numbers) = line(&y);
        assert_eq!(symbols, "y = (V_s + m_w ÷ K) ÷ (1 − air)");
        assert_eq!(numbers, "(0.6491982 + 12.5175 ÷ 62.4) ÷ (1 − 9 ÷ 100) = 0.9338453 ft3");
        let add = Solid { name: "add", mass: q("24 lb"), relative_density: q("2.30") };
        let v = absolute_volume(&add, &q("62.4 lb/ft3")).unwrap();
        holds(&v, "ft3", "0.1672");
        assert_eq!(line(&v).1, "24 ÷ (2.3 × 62.4) = 50/299 ft3");
        // Water and powder are exact, so the yield is.
        assert!(y.value().si.exact().is_some());
    }

    // Worked examples of the design, common practice, no source.
    #[test]
    fn the_other_mixes() {
        let (y, wet, _) = load(("15 lb", "2.30"), ("70 lb", "2.66"), "1.25 gal", true, "7 %");
        holds(&y, "ft3", "0.7456");
        holds(&wet_density(&wet, &y).unwrap(), "lb/ft3", "128.0");
        let (y, wet, _) = load(("10 kg", "1.35"), ("25 kg", "2.65"), "4.6 L", false, "14 %");
        holds(&y, "L", "24.93");
        holds(&y, "ft3", "0.8805");
        assert_eq!(y.node().unit().unwrap().symbol(), "L");
        let d = wet_density(&wet, &y).unwrap();
        holds(&d, "kg/m3", "1588");
        // The design prints 99.2 from the rounded 1588.
        holds(&d, "lb/ft3", "99.2");
        let (y, _, _) = load(("20 lb", "2.30"), ("80 lb", "2.66"), "1.5 gal", true, "9 %");
        holds(&y, "ft3", "0.9032");
    }

    #[test]
    fn a_pail_too_heavy_is_refused() {
        let refused = air_by_weight(&q("150 lb/ft3"), &q("140 lb/ft3")).unwrap_err();
        assert_eq!(refused.wants, "at most 140 lb/ft3 (this mix without any air)");
        assert!(solids_volume(&[], &q("1 kg/L")).is_err());
        let k = q("62.4 lb/ft3");
        assert_eq!(load_yield(&q("1 ft3"), &q("10 lb"), &k, &q("100 %")).unwrap_err().symbol, "air");
    }
    #[test]
    fn a_measure_that_cannot_be_so_heavy_is_refused() {
        assert_eq!(cube_air(&q("920 g"), &q("66 %")).unwrap_err().symbol, "W");
        assert!(cube_air(&q("820 g"), &q("201 %")).unwrap_err().wants.contains("66 %"));
        assert!(cube_air(&q("820 g"), &q("0 %")).is_err());
        assert!(measure_volume(&q("0 g"), &q("1 g/mL")).is_err());
    }
}
