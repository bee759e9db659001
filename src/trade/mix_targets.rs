//! F12 the other way round: the water or the ice that brings a batch to a temperature, and what moves it most.

use crate::quantity::expr::{Difference, Mass, Node, Share, Temperature, Worked};
use crate::quantity::num::Direction;

use super::mix_temperature::{Batch, ice_counts_as, mix_temperature, scale};
use super::vapour::{celsius, degrees, reading};
use super::{Answer, OutOfRange, above_zero, at_most, like, refuse, shown};

/// Targets, in °C: mud, not ice and not steam.
const TARGET: (i64, i64) = (1, 60);

/// What the best that can be had brings the batch to, in tenths away from the target.
fn reached(batch: &Batch, water: &Worked<Temperature>, ice: Option<&Worked<Mass>>, to: Direction) -> String {
    match mix_temperature(batch, water, ice) {
        Ok(t) => shown(&t.named("T").rounded(to, 1, 10)),
        Err(e) => e.to_string(),
    }
}

/// Temperature of the water that brings a batch to a target: `T_w = ((T − dT_work) × (Σ (c × m + w) + m_w) − Σ (c × m +
/// w) × T_part) ÷ m_w`, after [`mix_temperature`] without ice.
///
/// `m_w > 0`, `1 °C ≤ T ≤ 60 °C`. `least` and `most` are what water may be: 32 °F, which is ice water, and 140 °F are
/// usual. Outside them it is refused with the best that can be reached. Source: `mix-heat`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::{mix_targets::water_temperature, mix_temperature::{Batch, Dry}}};
/// let bags = Dry {
///     name: "bags",
///     mass: Worked::read("104 lb").unwrap(),
///     temperature: Worked::read("42 °F").unwrap(),
///     moisture: None,
/// };
/// let batch = Batch { dry: vec![bags], water: Worked::read("12.518 lb").unwrap(), work: None };
/// let t = |text| Worked::read(text).unwrap();
/// let water = water_temperature(&batch, &t("60 °F"), &t("32 °F"), &t("140 °F")).unwrap();
/// assert_eq!(format!("{:.0}", water.in_unit("°F")), "93");
/// ```
pub fn water_temperature(
    batch: &Batch,
    target: &Worked<Temperature>,
    least: &Worked<Temperature>,
    most: &Worked<Temperature>,
) -> Answer<Temperature> {
    const KEY: &str = "F12 water temperature";
    let (c, metric) = (batch.held(KEY)?, celsius(target));
    above_zero(KEY, "m_w", &batch.water)?;
    reading(KEY, "T", target, TARGET)?;
    at_most(KEY, "T_least", least, most, "the greatest the water may have")?;
    let m_w = batch.water.named("m_w");
    let needed = batch.before_work(target) * (batch.weight(&c) + m_w.clone()) - batch.heat(&c, metric);
    let needed: Worked<Temperature> = Worked::new((needed / m_w).dressed(scale(metric)).formula(KEY, "T_w"));
    let at = needed.value().si.to_f64();
    for (bound, beyond, word, to, help) in [
        (least, at < least.value().si.to_f64(), "at least", Direction::Up, "cool the dry parts, or use ice"),
        (most, at > most.value().si.to_f64(), "at most", Direction::Down, "warm the dry parts"),
    ] {
        if beyond {
            let best = reached(batch, bound, None, to);
            let wants = format!("{word} {}; water at that brings the mix to {best}: {help}", shown(bound.node()));
            return Err(refuse(KEY, "T_w", &needed, wants));
        }
    }
    Ok(needed)
}

/// Ice that cools a batch to a target, in place of as much water: `m_i = max((Σ (c × m + w) × T_part + m_w × T_w − (T −
/// dT_work) × (Σ (c × m + w) + m_w)) ÷ (T_w − T_ice + dT_melt), 0)`, after [`mix_temperature`].
///
/// `T_w` of the water that is left, 0 to 100 °C; `1 °C ≤ T ≤ 60 °C`. More ice than water is refused with what all of
/// it as ice would reach. All of it must be melted before the batch leaves the mixer; fair up to about a fifth of
/// the water, too hopeful beyond. Source: `ice`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::{mix_targets::ice_for, mix_temperature::{Batch, Dry}}};
/// let bags = Dry {
///     name: "bags",
///     mass: Worked::read("104 lb").unwrap(),
///     temperature: Worked::read("104 °F").unwrap(),
///     moisture: None,
/// };
/// let batch = Batch { dry: vec![bags], water: Worked::read("12.518 lb").unwrap(), work: None };
/// let ice = ice_for(&batch, &Worked::read("70 °F").unwrap(), &Worked::read("80 °F").unwrap()).unwrap();
/// assert_eq!(format!("{:.2}", ice.in_unit("lb")), "2.34");
/// ```
pub fn ice_for(batch: &Batch, water: &Worked<Temperature>, target: &Worked<Temperature>) -> Answer<Mass> {
    const KEY: &str = "F12 ice";
    let (c, metric) = (batch.held(KEY)?, celsius(target));
    above_zero(KEY, "m_w", &batch.water)?;
    reading(KEY, "T", target, TARGET)?;
    reading(KEY, "T_w", water, (0, 100))?;
    let m_w = batch.water.named("m_w");
    let t_w = if metric == celsius(water) { degrees(water, "T_w") } else { water.named("T_w").bare(scale(metric)) };
    let surplus = batch.heat(&c, metric) + m_w.clone() * t_w.clone() - batch.before_work(target) * (batch.weight(&c) + m_w);
    let ice = like(surplus / (t_w - ice_counts_as(metric)?), batch.water.node());
    let none = Node::given(0, 1).dressed(&batch.water.node().unit().map_or_else(|| "lb".to_owned(), |u| u.symbol()));
    let ice: Worked<Mass> = Worked::new(ice.max(none).formula(KEY, "m_i"));
    if ice.value().si.to_f64() > batch.water.value().si.to_f64() {
        let best = reached(batch, water, Some(&batch.water), Direction::Up);
        let wants = format!("at most {}, all the water; as ice it brings the mix to {best}: cool the dry parts", shown(batch.water.node()));
        return Err(refuse(KEY, "m_i", &ice, wants));
    }
    Ok(ice)
}

/// Share of a batch's heat that its added water carries: `s_w = m_w ÷ (Σ (c × m + w) + m_w)`.
///
/// `m_w ≥ 0`. In a stiff mix it is a third: shade the bags first. Source: `mix-heat`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::{mix_targets::water_share, mix_temperature::{Batch, Dry}}};
/// let bags = Dry {
///     name: "bags",
///     mass: Worked::read("104 lb").unwrap(),
///     temperature: Worked::read("104 °F").unwrap(),
///     moisture: None,
/// };
/// let batch = Batch { dry: vec![bags], water: Worked::read("12.518 lb").unwrap(), work: None };
/// assert_eq!(format!("{:.1}", water_share(&batch).unwrap().in_unit("%")), "35.4");
/// ```
pub fn water_share(batch: &Batch) -> Answer<Share> {
    let c = batch.held("F12 water share")?;
    let m_w = batch.water.named("m_w");
    let share = m_w.clone() / (batch.weight(&c) + m_w);
    Ok(Worked::new(share.written_in("%").formula("F12 water share", "s_w")))
}

/// Share of a batch's heat that one dry part carries, with the water that clings to it: `s = (c × m + w) ÷ (Σ (c × m + w) + m_w)`.
///
/// `name` that of a part. Source: `mix-heat`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::{mix_targets::dry_share, mix_temperature::{Batch, Dry}}};
/// let bags = Dry {
///     name: "bags",
///     mass: Worked::read("104 lb").unwrap(),
///     temperature: Worked::read("104 °F").unwrap(),
///     moisture: None,
/// };
/// let batch = Batch { dry: vec![bags], water: Worked::read("12.518 lb").unwrap(), work: None };
/// assert_eq!(format!("{:.1}", dry_share(&batch, "bags").unwrap().in_unit("%")), "64.6");
/// assert!(dry_share(&batch, "sand").is_err());
/// ```
pub fn dry_share(batch: &Batch, name: &str) -> Answer<Share> {
    const KEY: &str = "F12 dry share";
    let c = batch.held(KEY)?;
    let Some(part) = batch.dry.iter().find(|part| part.name == name) else {
        let names: Vec<&str> = batch.dry.iter().map(|part| part.name).collect();
        return Err(OutOfRange { formula: KEY, symbol: "name", value: name.to_owned(), wants: format!("one of: {}", names.join(", ")) });
    };
    let share = part.weight(&c) / (batch.weight(&c) + batch.water.named("m_w"));
    Ok(Worked::new(share.written_in("%").formula(KEY, "s")))
}

/// How far a batch moves when one ingredient moves: `dT = s × dT_part`; `s` its [share](water_share) of the heat.
///
/// `0 % ≤ s ≤ 100 %`. Source: `mix-heat`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::mix_targets::moves};
/// let dt = moves(&Worked::read("35.4 %").unwrap(), &Worked::read("10 °F").unwrap()).unwrap();
/// assert_eq!(dt.in_unit("°F"), 3.54);
/// ```
pub fn moves(share: &Worked<Share>, by: &Worked<Difference>) -> Answer<Difference> {
    let s = share.value().si.to_f64();
    if !(0.0..=1.0).contains(&s) {
        return Err(refuse("F12 moves", "s", share, "from 0 to 100 %"));
    }
    Ok(Worked::new(like(share.named("s") * by.named("dT_part"), by.node()).formula("F12 moves", "dT")))
}

#[cfg(test)]
mod tests {
    use super::super::mix_temperature::Dry;
    use super::super::mix_temperature::tests::load;
    use super::super::testing::{holds, line, q};
    use super::*;

    fn water(bags: &str, target: &str) -> Answer<Temperature> {
        water_temperature(&load(bags), &q(target), &q("32 °F"), &q("140 °F"))
    }

    // Worked examples of the design, common practice, no source.
    #[test]
    fn water_for_a_target() {
        let cold = water("104 °F", "82 °F").unwrap();
        holds(&cold, "°F", "41.8");
        let (symbols, numbers) = line(&cold);
        assert_eq!(symbols, "T_w = (T × (c × m_bags + m_w) − c × m_bags × T_bags) ÷ m_w");
        assert_eq!(numbers, "(82 × (0.22 × 104 + 12.5175) − 0.22 × 104 × 104) ÷ 12.5175 = 41.7875 °F");
        holds(&water("42 °F", "60 °F").unwrap(), "°F", "93");
        let warmed = Batch { work: Some(q("2 °F")), ..load("104 °F") };
        let t = water_temperature(&warmed, &q("84 °F"), &q("32 °F"), &q("140 °F")).unwrap();
        assert!((t.in_unit("°F") - cold.in_unit("°F")).abs() < 1e-9);
        let back = mix_temperature(&warmed, &t, None).unwrap();
        assert!((back.in_unit("°F") - 84.0).abs() < 1e-9);
    }

    // Worked example of the design, common practice, no source.
    #[test]
    fn ice_for_a_target() {
        let batch = load("104 °F");
        let ice = ice_for(&batch, &q("70 °F"), &q("80 °F")).unwrap();
        holds(&ice, "lb", "2.34");
        assert_eq!(line(&ice).0, "m_i = max((c × m_bags × T_bags + m_w × T_w − T × (c × m_bags + m_w)) ÷ (T_w − (T_ice − dT_melt)), 0)");
        let back = mix_temperature(&batch, &q("70 °F"), Some(&ice)).unwrap();
        assert!((back.in_unit("°F") - 80.0).abs() < 1e-9);
        holds(&ice_for(&batch, &q("70 °F"), &q("100 °F")).unwrap(), "lb", "0.00");
        let mixed = ice_for(&batch, &q("70 °F"), &q("25 °C")).unwrap();
        holds(&mix_temperature(&batch, &q("70 °F"), Some(&mixed)).unwrap(), "°C", "25.0000");
    }

    // Worked example of the design, common practice, no source.
    #[test]
    fn shade_the_bags_first() {
        let batch = load("104 °F");
        let (wet, dry) = (water_share(&batch).unwrap(), dry_share(&batch, "bags").unwrap());
        holds(&wet, "%", "35.4");
        holds(&moves(&wet, &q("10 °F")).unwrap(), "°F", "3.5");
        holds(&moves(&dry, &q("10 °F")).unwrap(), "°F", "6.5");
        assert_eq!(moves(&q("101 %"), &q("10 °F")).unwrap_err().symbol, "s");
        let mut damp = batch;
        damp.dry.push(Dry { name: "sand", mass: q("10 lb"), temperature: q("50 °F"), moisture: Some(q("1 lb")) });
        let all = water_share(&damp).unwrap().in_unit("%")
            + dry_share(&damp, "bags").unwrap().in_unit("%")
            + dry_share(&damp, "sand").unwrap().in_unit("%");
        assert!((all - 100.0).abs() < 1e-9);
    }

    #[test]
    fn out_of_reach_says_the_best_there_is() {
        let cold = water("104 °F", "70 °F").unwrap_err();
        assert_eq!(cold.wants, "at least 32 °F; water at that brings the mix to 78.6 °F: cool the dry parts, or use ice");
        let hot = water("20 °F", "70 °F").unwrap_err();
        assert_eq!(hot.wants, "at most 140 °F; water at that brings the mix to 62.4 °F: warm the dry parts");
        let icy = ice_for(&load("200 °F"), &q("70 °F"), &q("60 °F")).unwrap_err();
        assert!(icy.wants.starts_with("at most 12.5175 lb, all the water; as ice it brings the mix to "), "{icy}");
        assert_eq!(water("104 °F", "150 °F").unwrap_err().wants, "from 33.8 to 140 °F");
        let crossed = water_temperature(&load("104 °F"), &q("80 °F"), &q("141 °F"), &q("140 °F")).unwrap_err();
        assert_eq!(crossed.symbol, "T_least");
        assert!(ice_for(&load("104 °F"), &q("30 °F"), &q("80 °F")).is_err());
    }
}
