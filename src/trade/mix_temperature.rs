//! F12: how warm a batch comes out, from what goes in.

use crate::quantity::expr::{Difference, Heat, Mass, Node, Sort, Temperature, Worked};
use crate::quantity::units::find_expr;
use crate::quantity::{Num, Quantity};

use super::vapour::{celsius, degrees, reading};
use super::{Answer, OutOfRange, above_zero, refuse, zero_or_more};

/// Dry stuff on a site, in °C.
const DRY: (i64, i64) = (-40, 100);
/// Water, in °C.
const WATER: (i64, i64) = (0, 100);

/// Something dry in a batch, with the water that clings to it.
#[derive(Clone, Debug)]
pub struct Dry {
    /// Short name for the symbols: `bags` gives `m_bags` and `T_bags`.
    pub name: &'static str,
    /// Mass without the water that clings to it.
    pub mass: Worked<Mass>,
    /// Temperature, of that water too.
    pub temperature: Worked<Temperature>,
    /// Water that clings to it, such as in damp sand.
    pub moisture: Option<Worked<Mass>>,
}

/// A batch as it goes into the mixer.
#[derive(Clone, Debug)]
pub struct Batch {
    /// Dry parts.
    pub dry: Vec<Dry>,
    /// All water added, ice among it.
    pub water: Worked<Mass>,
    /// What mixing and the first wetting add, from the site's own thermometer.
    pub work: Option<Worked<Difference>>,
}

impl Batch {
    fn dry_bounds(&self, key: &'static str) -> Result<(), OutOfRange> {
        for part in &self.dry {
            above_zero(key, "m", &part.mass)?;
            reading(key, "T", &part.temperature, DRY)?;
            if let Some(moisture) = &part.moisture {
                zero_or_more(key, "w", moisture)?;
                // Frozen sand would have to be thawed first, and the sum does not pay for that.
                reading(key, "T", &part.temperature, WATER)?;
            }
        }
        zero_or_more(key, "m_w", &self.water)?;
        self.work.as_ref().map_or(Ok(()), |w| zero_or_more(key, "dT_work", w))
    }

    /// The parts, checked: `c` is one constant for all of them.
    pub(crate) fn held(&self, key: &'static str) -> Result<Node, OutOfRange> {
        self.dry_bounds(key)?;
        if self.dry.is_empty() {
            return Err(OutOfRange { formula: key, symbol: "m", value: "missing".to_owned(), wants: "at least one dry part".to_owned() });
        }
        Ok(Node::constant(
            Quantity::plain(Num::frac(11, 50)),
            None,
            "c",
            "specific heat of dry solids over water's, ACI 306R and 207.4R form",
        ))
    }

    /// Heat-carrying mass of the dry parts, as if all were water.
    pub(crate) fn weight(&self, c: &Node) -> Node {
        sum(self.dry.iter().map(|part| part.weight(c)))
    }

    /// The same, each times its temperature.
    pub(crate) fn heat(&self, c: &Node, metric: bool) -> Node {
        sum(self.dry.iter().map(|part| part.weight(c) * part.temperature.named(format!("T_{}", part.name)).bare(scale(metric))))
    }

    /// A mix temperature with the heat of work on top.
    pub(crate) fn worked_warm(&self, quotient: Node, metric: bool) -> Node {
        let mixed = quotient.dressed(scale(metric));
        match &self.work {
            Some(work) => mixed + work.named("dT_work"),
            None => mixed,
        }
    }

    /// What the parts must come to before the work warms them.
    pub(crate) fn before_work(&self, target: &Worked<Temperature>) -> Node {
        let metric = celsius(target);
        match &self.work {
            Some(work) => degrees(target, "T") - work.named("dT_work").bare(scale(metric)),
            None => degrees(target, "T"),
        }
    }
}

impl Dry {
    pub(crate) fn weight(&self, c: &Node) -> Node {
        let own = c.clone() * self.mass.named(format!("m_{}", self.name));
        match &self.moisture {
            Some(moisture) => own + moisture.named(format!("w_{}", self.name)),
            None => own,
        }
    }
}

/// Sums at least one node; the callers have checked that there is one.
fn sum(nodes: impl Iterator<Item = Node>) -> Node {
    nodes.reduce(|a, b| a + b).unwrap_or_else(|| Node::given(0, 1))
}

pub(crate) fn scale(metric: bool) -> &'static str {
    if metric { "°C" } else { "°F" }
}

fn constant<S: Sort>(n: i64, d: i64, unit: &str, symbol: &'static str, source: &'static str) -> Worked<S> {
    let found = find_expr(unit);
    let number = Num::frac(n, d);
    let value = found.map_or_else(|| Quantity::plain(number.clone()), |u| Quantity::of(&number, u)).as_kind(S::KIND);
    Worked::new(Node::constant(value, found, symbol, source))
}

/// How far a mass of water would cool by melting as much ice: `dT_melt = L ÷ c_w`, 143.5 Btu/lb over 1 Btu/lb/°F, 143.5 °F.
///
/// No input, so nothing is out of range. The short forms fold in that melted ice enters at 32 °F: 143.5 − 32 = 111.5,
/// printed 112, in °F; 79.7, printed 80 or 79.6, in °C. 143.5 alone in their place, in °F, is a known mistake. Source: `ice`.
/// ```
/// use hodbook::trade::mix_temperature::melting;
/// assert_eq!(melting().unwrap().in_unit("°F"), 143.5);
/// assert_eq!(format!("{:.2}", melting().unwrap().in_unit("°C")), "79.72");
/// ```
pub fn melting() -> Answer<Difference> {
    let heat: Worked<Heat> = constant(287, 2, "Btu/lb", "L", "CRD-C 307-91: heat of fusion of ice");
    let unit = find_expr("Btu/lb/°F");
    let one = unit.map_or_else(|| Quantity::plain(Num::int(1)), |u| Quantity::of(&Num::int(1), u));
    let water = Node::constant(one, unit, "c_w", "specific heat of water, 1 Btu/lb/°F");
    Ok(Worked::new((heat.node().clone() / water).written_in("°F").formula("F12 melting", "dT_melt")))
}

/// Temperature that a pound of ice counts with: it enters as water at its melting point, less what melting takes.
pub(crate) fn ice_counts_as(metric: bool) -> Result<Node, OutOfRange> {
    let melts = if metric { 0 } else { 32 };
    let at: Worked<Temperature> = constant(melts, 1, scale(metric), "T_ice", "melting point of ice");
    Ok(at.node().bare(scale(metric)) - melting()?.named("dT_melt").bare(scale(metric)))
}

/// Temperature of a batch: `T = (Σ (c × m + w) × T_part + (m_w − m_i) × T_w + m_i × (T_ice − dT_melt)) ÷ (Σ (c × m + w)
/// + m_w) + dT_work`.
///
/// `m` each dry part, `w` water clinging to it, `m_w` all water added, `m_i` ice among it, `T_ice − dT_melt` 32 − 143.5 °F
/// ([`melting`]); `c` 0.22; °F or °C after the water's reading. `m > 0`, `0 ≤ m_i ≤ m_w`, water 0 to 100 °C. Out of range
/// if the batch came out below freezing, because then ice is left. Assumes that all ice melts and that drum and air
/// give nothing; with ice it is fair up to about a fifth of the water and too hopeful beyond. Source: `mix-heat`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::mix_temperature::{Batch, Dry, mix_temperature}};
/// let bags = Dry {
///     name: "bags",
///     mass: Worked::read("104 lb").unwrap(),
///     temperature: Worked::read("104 °F").unwrap(),
///     moisture: None,
/// };
/// let batch = Batch { dry: vec![bags], water: Worked::read("12.518 lb").unwrap(), work: None };
/// let t = mix_temperature(&batch, &Worked::read("84 °F").unwrap(), None).unwrap();
/// assert_eq!(format!("{:.1}", t.in_unit("°F")), "96.9");
/// ```
pub fn mix_temperature(batch: &Batch, water: &Worked<Temperature>, ice: Option<&Worked<Mass>>) -> Answer<Temperature> {
    const KEY: &str = "F12 mix temperature";
    let (c, metric) = (batch.held(KEY)?, celsius(water));
    reading(KEY, "T_w", water, WATER)?;
    let (m_w, t_w) = (batch.water.named("m_w"), degrees(water, "T_w"));
    let wet = match ice {
        None => m_w.clone() * t_w,
        Some(ice) => {
            zero_or_more(KEY, "m_i", ice)?;
            super::at_most(KEY, "m_i", ice, &batch.water, "all the water added, ice among it")?;
            (m_w.clone() - ice.named("m_i")) * t_w + ice.named("m_i") * ice_counts_as(metric)?
        }
    };
    let mixed = (batch.heat(&c, metric) + wet) / (batch.weight(&c) + m_w);
    let mixed: Worked<Temperature> = Worked::new(batch.worked_warm(mixed, metric).formula(KEY, "T"));
    if mixed.in_unit("°C") < -1e-9 {
        let wants = format!("{}: below that water stays ice", if metric { "at least 0 °C" } else { "at least 32 °F" });
        return Err(refuse(KEY, "T", &mixed, wants));
    }
    Ok(mixed)
}

#[cfg(test)]
pub(crate) mod tests {
    use super::super::testing::{holds, line, q};
    use super::*;

    /// A load of the carve mix: 104 lb dry, 1.5 gal at 8.345 lb/gal.
    pub fn load(bags: &str) -> Batch {
        let dry = vec![Dry { name: "bags", mass: q("104 lb"), temperature: q(bags), moisture: None }];
        Batch { dry, water: q("12.5175 lb"), work: None }
    }

    pub fn mixed(bags: &str, water: &str) -> Worked<Temperature> {
        mix_temperature(&load(bags), &q(water), None).unwrap()
    }

    // Worked example of the design, common practice, no source.
    #[test]
    fn bags_and_water() {
        let hot = mixed("104 °F", "84 °F");
        holds(&hot, "°F", "96.9");
        let (symbols, numbers) = line(&hot);
        assert_eq!(symbols, "T = (c × m_bags × T_bags + m_w × T_w) ÷ (c × m_bags + m_w)");
        assert_eq!(numbers, "(0.22 × 104 × 104 + 12.5175 × 84) ÷ (0.22 × 104 + 12.5175) = 96.92747 °F");
        assert!(hot.value().si.exact().is_some());
        holds(&mixed("86 °F", "60 °F"), "°F", "76.8");
        // The short 12.518 lb gives the same digits.
        let short = Batch { water: q("12.518 lb"), ..load("104 °F") };
        holds(&mix_temperature(&short, &q("84 °F"), None).unwrap(), "°F", "96.9");
    }

    // The hours of a hot day, worked example of the design, common practice, no source.
    #[test]
    fn the_hours_of_a_hot_day() {
        use super::super::evaporation::{Air, evaporation};
        for (air, humidity, wind, bags, water, mix, rate) in [
            ("74 °F", "55 %", "3 mph", "78 °F", "74 °F", "76.6", "0.054"),
            ("84 °F", "38 %", "6 mph", "92 °F", "78 °F", "87.0", "0.150"),
            ("90 °F", "28 %", "9 mph", "101 °F", "80 °F", "93.6", "0.278"),
            ("94 °F", "22 %", "12 mph", "106 °F", "82 °F", "97.5", "0.416"),
            ("91 °F", "26 %", "8 mph", "104 °F", "82 °F", "96.2", "0.282"),
        ] {
            let mortar = mixed(bags, water);
            holds(&mortar, "°F", mix);
            let at = Air { mortar, air: q(air), humidity: q(humidity), wind: q(wind) };
            holds(&evaporation(&at).unwrap(), "lb/ft2/h", rate);
        }
    }

    #[test]
    fn ice_enters_at_its_melting_point() {
        let batch = load("104 °F");
        let iced = mix_temperature(&batch, &q("70 °F"), Some(&q("2.34 lb"))).unwrap();
        holds(&iced, "°F", "80.0");
        // The short forms 112 in °F and 80 in °C, against ours: less than half a degree apart in the term.
        assert!((melting().unwrap().in_unit("°F") - 32.0 - 112.0).abs() <= 0.5);
        assert!((melting().unwrap().in_unit("°C") - 80.0).abs() <= 0.5);
        let metric = mix_temperature(&load("40 °C"), &q("69.98 °F"), Some(&q("2.34 lb"))).unwrap();
        let celsius = mix_temperature(&load("104 °F"), &q("21.1 °C"), Some(&q("2.34 lb"))).unwrap();
        assert!((metric.in_unit("°C") - celsius.in_unit("°C")).abs() < 1e-9, "40 °C is 104 °F, 21.1 °C is 69.98 °F");
        assert_eq!(celsius.node().unit().unwrap().symbol(), "°C");
    }

    #[test]
    fn work_warms_and_damp_sand_counts_as_water() {
        let warm = Batch { work: Some(q("3 °F")), ..load("104 °F") };
        let t = mix_temperature(&warm, &q("84 °F"), None).unwrap();
        holds(&t, "°F", "99.9");
        assert_eq!(line(&t).0, "T = (c × m_bags × T_bags + m_w × T_w) ÷ (c × m_bags + m_w) + dT_work");
        let mut damp = load("104 °F");
        damp.dry.push(Dry { name: "sand", mass: q("10 lb"), temperature: q("50 °F"), moisture: Some(q("1 lb")) });
        let t = mix_temperature(&damp, &q("84 °F"), None).unwrap();
        assert!(line(&t).0.contains("(c × m_sand + w_sand) × T_sand"), "{}", line(&t).0);
        // (2379.52 + 3.2 × 50 + 12.5175 × 84) ÷ (22.88 + 3.2 + 12.5175)
        holds(&t, "°F", "93.04");
    }

    #[test]
    fn what_cannot_be_mixed_is_refused() {
        let batch = load("104 °F");
        assert_eq!(mix_temperature(&batch, &q("31 °F"), None).unwrap_err().wants, "from 32 to 212 °F");
        let much = mix_temperature(&batch, &q("70 °F"), Some(&q("13 lb"))).unwrap_err();
        assert_eq!(much.wants, "at most 12.5175 lb (all the water added, ice among it)");
        let frozen = mix_temperature(&load("33 °F"), &q("33 °F"), Some(&q("6 lb"))).unwrap_err();
        assert_eq!((frozen.symbol, frozen.wants.as_str()), ("T", "at least 32 °F: below that water stays ice"));
        let mut sand = load("104 °F");
        sand.dry.push(Dry { name: "sand", mass: q("10 lb"), temperature: q("20 °F"), moisture: Some(q("1 lb")) });
        assert_eq!(mix_temperature(&sand, &q("70 °F"), None).unwrap_err().wants, "from 32 to 212 °F");
        assert!(mix_temperature(&Batch { dry: vec![], ..load("70 °F") }, &q("70 °F"), None).is_err());
        assert!(mix_temperature(&Batch { work: Some(q("-3 °F")), ..load("70 °F") }, &q("70 °F"), None).is_err());
    }
}
