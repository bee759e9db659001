//! F11: how fast a fresh face loses its water.
//!
//! All forms descend from water measured on a lake: a free-water surface, laid flat, wind taken about 0.5 m above it
//! and averaged, not gusts. The true rate may lie 40 % either way, and on a wall the result is an index only: it says
//! which of two hours is the harder, not how much water is gone. Limits are held in the system they were stated in:
//! 0.2 lb/ft2/h is 0.976 kg/m2/h, not 1.0.

use crate::quantity::expr::{Drying, Node, Share, Speed, Temperature, Worked};

use super::vapour::{celsius, humidity, reading, saturation, vapour_pressure};
use super::{Answer, OutOfRange, zero_or_more};

/// Readings of mud and air that the forms are given, in °C. Below −18 °C one of them raises a negative number to 2.5.
const READINGS: (i64, i64) = (-18, 60);

/// The air and the mud it meets.
#[derive(Clone, Debug)]
pub struct Air {
    /// Temperature of the mud's face.
    pub mortar: Worked<Temperature>,
    /// Temperature of the air, in shade, upwind.
    pub air: Worked<Temperature>,
    /// Relative humidity of the air.
    pub humidity: Worked<Share>,
    /// Wind, averaged over some minutes.
    pub wind: Worked<Speed>,
}

pub(crate) fn temperatures(key: &'static str, mortar: &Worked<Temperature>, air: &Worked<Temperature>) -> Result<(), OutOfRange> {
    reading(key, "T_m", mortar, READINGS)?;
    reading(key, "T_a", air, READINGS)
}

fn held(key: &'static str, at: &Air) -> Result<(), OutOfRange> {
    temperatures(key, &at.mortar, &at.air)?;
    humidity(key, &at.humidity)?;
    zero_or_more(key, "V", &at.wind)
}

/// Nothing evaporates where the air is the wetter: dew is no negative loss.
fn lost(rate: Node, unit: &str) -> Node {
    rate.max(Node::given(0, 1)).dressed(unit)
}

/// `(T + 18)^2.5`, `T` in °C.
pub(crate) fn uno_base(t: &Worked<Temperature>, symbol: &'static str) -> Node {
    (t.named(symbol).bare("°C") + Node::given(18, 1)).pow(Node::given(5, 2))
}

fn uno_in_si(at: &Air, key: &'static str) -> Node {
    let drive = uno_base(&at.mortar, "T_m") - at.humidity.named("RH") * uno_base(&at.air, "T_a");
    let wind = at.wind.named("V").bare("km/h") + Node::given(4, 1);
    lost(Node::given(5, 1) * drive * wind / Node::given(1_000_000, 1), "kg/m2/h").formula(key, "E")
}

/// Evaporation, the form this trade uses: [`uno_si`], written in the system of the mud's reading (°F: lb/ft2/h).
///
/// Range as there. A free-water surface laid flat, ±40 %: an index on walls. Source: `uno`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::evaporation::{Air, evaporation}};
/// let at = Air {
///     mortar: Worked::read("88 °F").unwrap(),
///     air: Worked::read("92 °F").unwrap(),
///     humidity: Worked::read("24 %").unwrap(),
///     wind: Worked::read("11 mph").unwrap(),
/// };
/// let e = evaporation(&at).unwrap();
/// assert_eq!(format!("{:.3} {:.3}", e.in_unit("kg/m2/h"), e.in_unit("lb/ft2/h")), "1.342 0.275");
/// ```
pub fn evaporation(at: &Air) -> Answer<Drying> {
    held("F11 evaporation", at)?;
    let e = uno_in_si(at, "F11 evaporation");
    Ok(Worked::new(if celsius(&at.mortar) { e } else { e.written_in("lb/ft2/h") }))
}

/// Uno's form in SI: `E = max(5 × ((T_m + 18)^2.5 − RH × (T_a + 18)^2.5) × (V + 4) ÷ 10^6, 0)` kg/m2/h; °C, km/h.
///
/// `−18 °C ≤ T ≤ 60 °C`, `0 % ≤ RH ≤ 100 %`, `V ≥ 0`. Its rounded constants give 3 to 5 % less than [`uno_us`] at
/// site temperatures. A free-water surface laid flat, ±40 %. Source: `uno`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::evaporation::{Air, uno_si}};
/// let at = Air {
///     mortar: Worked::read("31 °C").unwrap(),
///     air: Worked::read("27 °C").unwrap(),
///     humidity: Worked::read("50 %").unwrap(),
///     wind: Worked::read("19 km/h").unwrap(),
/// };
/// assert_eq!(format!("{:.2}", uno_si(&at).unwrap().in_unit("kg/m2/h")), "1.15");
/// ```
pub fn uno_si(at: &Air) -> Answer<Drying> {
    held("F11 uno si", at)?;
    Ok(Worked::new(uno_in_si(at, "F11 uno si")))
}

/// Uno's form in US units: `E = max((T_m^2.5 − RH × T_a^2.5) × (1 + 0.4 × V) ÷ 10^6, 0)` lb/ft2/h; °F, mph.
///
/// `0 °F ≤ T ≤ 140 °F`, else as [`uno_si`]. A free-water surface laid flat, ±40 %. Source: `uno`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::evaporation::{Air, uno_us}};
/// let at = Air {
///     mortar: Worked::read("87 °F").unwrap(),
///     air: Worked::read("80 °F").unwrap(),
///     humidity: Worked::read("50 %").unwrap(),
///     wind: Worked::read("12 mph").unwrap(),
/// };
/// assert_eq!(format!("{:.2}", uno_us(&at).unwrap().in_unit("lb/ft2/h")), "0.24");
/// ```
pub fn uno_us(at: &Air) -> Answer<Drying> {
    held("F11 uno us", at)?;
    for (symbol, t) in [("T_m", &at.mortar), ("T_a", &at.air)] {
        // Its own zero is 0 °F, a little above −18 °C.
        if t.in_unit("°F") < 0.0 {
            return Err(super::refuse("F11 uno us", symbol, t, "at least 0 °F"));
        }
    }
    let base = |t: &Worked<Temperature>, symbol| t.named(symbol).bare("°F").pow(Node::given(5, 2));
    let drive = base(&at.mortar, "T_m") - at.humidity.named("RH") * base(&at.air, "T_a");
    let wind = Node::given(1, 1) + Node::given(2, 5) * at.wind.named("V").bare("mph");
    Ok(Worked::new(lost(drive * wind / Node::given(1_000_000, 1), "lb/ft2/h").formula("F11 uno us", "E")))
}

fn menzel(at: &Air, key: &'static str, (first, windy): ((i64, i64), (i64, i64)), units: [&str; 3]) -> Answer<Drying> {
    held(key, at)?;
    let [pressure, speed, rate] = units;
    let e_0 = saturation(&at.mortar)?.named("e_0");
    let e_a = vapour_pressure(&at.air, &at.humidity)?.named("e_a");
    let wind = Node::given(253, 1000) + Node::given(windy.0, windy.1) * at.wind.named("V").bare(speed);
    let e = Node::given(first.0, first.1) * (e_0.bare(pressure) - e_a.bare(pressure)) * wind;
    Ok(Worked::new(lost(e, rate).formula(key, "E")))
}

/// Menzel's form in US units: `E = max(0.44 × (e_0 − e_a) × (0.253 + 0.096 × V), 0)` lb/ft2/h; psi, mph; `e_0` the
/// [saturation] pressure at the mud, `e_a` the [vapour pressure](vapour_pressure) of the air.
///
/// Range as [`uno_si`]. A free-water surface laid flat, ±40 %. Source: `menzel`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::evaporation::{Air, menzel_us}};
/// let at = Air {
///     mortar: Worked::read("70 °F").unwrap(),
///     air: Worked::read("70 °F").unwrap(),
///     humidity: Worked::read("50 %").unwrap(),
///     wind: Worked::read("10 mph").unwrap(),
/// };
/// assert_eq!(format!("{:.4}", menzel_us(&at).unwrap().in_unit("lb/ft2/h")), "0.0969");
/// ```
pub fn menzel_us(at: &Air) -> Answer<Drying> {
    menzel(at, "F11 menzel us", ((11, 25), (12, 125)), ["psi", "mph", "lb/ft2/h"])
}

/// Menzel's form in SI: `E = max(0.315 × (e_0 − e_a) × (0.253 + 0.06 × V), 0)` kg/m2/h; kPa, km/h.
///
/// Range as [`uno_si`]. Its rounded constants give 1.1 to 1.7 % more than [`menzel_us`]. Source: `menzel`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::evaporation::{Air, menzel_si}};
/// let at = Air {
///     mortar: Worked::read("31 °C").unwrap(),
///     air: Worked::read("27 °C").unwrap(),
///     humidity: Worked::read("50 %").unwrap(),
///     wind: Worked::read("19 km/h").unwrap(),
/// };
/// assert_eq!(format!("{:.2}", menzel_si(&at).unwrap().in_unit("kg/m2/h")), "1.19");
/// ```
pub fn menzel_si(at: &Air) -> Answer<Drying> {
    menzel(at, "F11 menzel si", ((63, 200), (3, 50)), ["kPa", "km/h", "kg/m2/h"])
}

/// Pressure in psi as an exponential of °F, the 0.0443 × e^(0.0302 T) of a highway guide.
fn exponential(t: &Worked<Temperature>, symbol: &'static str) -> Node {
    (Node::given(151, 5000) * (Node::given(9, 5) * t.named(symbol).bare("°C") + Node::given(32, 1))).exp()
}

/// A highway guide's form: `E = max(4.88 × (0.1113 + 0.04224 × V ÷ 0.447) × 0.0443 × (exp(0.0302 × (1.8 × T_m + 32)) −
/// RH × exp(0.0302 × (1.8 × T_a + 32))), 0)` kg/m2/h; °C, m/s.
///
/// It is [`menzel_us`] with an exponential for the saturation pressure, up to a quarter off where little
/// evaporates. Range as [`uno_si`]. Source: `curing-guide`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::evaporation::{Air, curing_guide}};
/// let at = Air {
///     mortar: Worked::read("68 °F").unwrap(),
///     air: Worked::read("68 °F").unwrap(),
///     humidity: Worked::read("65 %").unwrap(),
///     wind: Worked::read("7 mph").unwrap(),
/// };
/// assert_eq!(format!("{:.3}", curing_guide(&at).unwrap().in_unit("lb/ft2/h")), "0.049");
/// ```
pub fn curing_guide(at: &Air) -> Answer<Drying> {
    held("F11 curing guide", at)?;
    let wind = Node::given(1113, 10_000) + Node::given(264, 6250) * at.wind.named("V").bare("m/s") / Node::given(447, 1000);
    let drive = exponential(&at.mortar, "T_m") - at.humidity.named("RH") * exponential(&at.air, "T_a");
    let e = Node::given(122, 25) * wind * Node::given(443, 10_000) * drive;
    Ok(Worked::new(lost(e, "kg/m2/h").formula("F11 curing guide", "E")))
}

#[cfg(test)]
pub(crate) mod tests {
    use super::super::testing::{holds, line, q};
    use super::*;

    pub fn air(mortar: &str, air: &str, humidity: &str, wind: &str) -> Air {
        Air { mortar: q(mortar), air: q(air), humidity: q(humidity), wind: q(wind) }
    }

    // Worked examples of the design; the form is published, the hours are ours.
    #[test]
    fn a_hot_afternoon_a_screen_and_a_room() {
        let hot = evaporation(&air("88 °F", "92 °F", "24 %", "11 mph")).unwrap();
        holds(&hot, "kg/m2/h", "1.342");
        holds(&hot, "lb/ft2/h", "0.275");
        holds(&evaporation(&air("80 °F", "92 °F", "24 %", "2 mph")).unwrap(), "lb/ft2/h", "0.065");
        holds(&evaporation(&air("72 °F", "72 °F", "45 %", "3 mph")).unwrap(), "lb/ft2/h", "0.051");
        assert_eq!(hot.node().unit().unwrap().symbol(), "lb/ft2/h");
        let (symbols, numbers) = line(&hot);
        assert_eq!(symbols, "E = max(5 × ((T_m + 18)^2.5 − RH × (T_a + 18)^2.5) × (V + 4) ÷ 1000000, 0)");
        assert!(numbers.starts_with("max(5 × (((88 × (5/9) − 160/9) + 18)^2.5 − 24 × "), "{numbers}");
        assert!(numbers.ends_with(", 0) × 0.2048161 = 0.2749566 lb/ft2/h"), "{numbers}");
    }

    #[test]
    fn wet_warm_air_over_cool_mud_takes_nothing() {
        let dew = air("50 °F", "80 °F", "90 %", "5 mph");
        for e in [evaporation, uno_si, uno_us, menzel_us, menzel_si, curing_guide] {
            assert_eq!(e(&dew).unwrap().value().si.to_f64(), 0.0);
        }
    }

    #[test]
    fn limits_of_the_two_systems_are_not_equal() {
        let (us, si) = (q::<Drying>("0.2 lb/ft2/h"), q::<Drying>("1 kg/m2/h"));
        holds(&us, "kg/m2/h", "0.976");
        holds(&si, "lb/ft2/h", "0.2048");
    }

    #[test]
    fn no_weather_is_refused() {
        assert_eq!(evaporation(&air("880 °F", "92 °F", "24 %", "11 mph")).unwrap_err().wants, "from -0.4 to 140 °F");
        assert_eq!(uno_si(&air("20 °C", "-19 °C", "24 %", "5 km/h")).unwrap_err().symbol, "T_a");
        assert_eq!(uno_us(&air("20 °C", "-17.9 °C", "24 %", "5 km/h")).unwrap_err().wants, "at least 0 °F");
        assert_eq!(menzel_us(&air("70 °F", "70 °F", "124 %", "5 mph")).unwrap_err().wants, "from 0 to 100 %, such as `45 %`");
        assert_eq!(menzel_si(&air("70 °F", "70 °F", "24 %", "-5 mph")).unwrap_err().symbol, "V");
        assert!(curing_guide(&air("70 °F", "141 °F", "24 %", "5 mph")).is_err());
    }
}
