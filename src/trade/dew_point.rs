//! F11: the temperature at which air begins to wet what it touches.

use crate::quantity::expr::{Node, Pressure, Share, Temperature, Worked};
use crate::quantity::units::find_expr;
use crate::quantity::{Kind, Num, Quantity};

use super::vapour::{celsius, degrees, humidity, ice_unheld, reading, saturation, vapour_pressure, water_unheld};
use super::{Answer, OutOfRange, above_zero, refuse};

/// Air that sites have, in °C.
const AIR: (i64, i64) = (-40, 60);
/// Below 1 % the fits that start the search were not meant to go.
const LEAST_HUMIDITY: f64 = 0.01;

/// A pair of Magnus's form, `A` in kPa, `b` in °C.
struct Pair {
    scale: (i64, i64),
    a: (i64, i64),
    b: (i64, i64),
    key: &'static str,
    of: &'static str,
}

const WATER: Pair =
    Pair { scale: (61_094, 100_000), a: (141, 8), b: (6076, 25), key: "F11 dew point to start with", of: "over water, 0.61094 kPa" };
const ICE: Pair =
    Pair { scale: (382, 625), a: (1123, 50), b: (13_631, 50), key: "F11 frost point to start with", of: "over ice, 0.6112 kPa, recalled" };

/// A number of °C as a reading on the author's scale. What is inside stays one line: seven digits of a number in
/// °C between would not give six of a reading near 0 °F.
fn on_scale(number: Node, metric: bool) -> Node {
    if metric { number.dressed("°C") } else { (number * Node::given(9, 5) + Node::given(32, 1)).dressed("°F") }
}

fn held(key: &'static str, t: &Worked<Temperature>, rh: &Worked<Share>) -> Result<(), OutOfRange> {
    reading(key, "t", t, AIR)?;
    humidity(key, rh)?;
    above_zero(key, "RH", rh)?;
    if rh.value().si.to_f64() < LEAST_HUMIDITY {
        return Err(refuse(key, "RH", rh, "at least 1 %"));
    }
    Ok(())
}

/// Dew point by Magnus's form alone: `T_d = b × g ÷ (a − g)` °C with `g = ln(RH) + a × t ÷ (b + t)`, `a` 17.625, `b`
/// 243.04 °C.
///
/// `−40 °C ≤ t ≤ 60 °C`, `1 % ≤ RH ≤ 100 %`. One line from two readings, within 0.1 °F of
/// [`dew_point`] above freezing. Below freezing it is the dew point of water that has not frozen, as weather
/// reports give it, and lies under the frost point. Source: `magnus`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::dew_point::magnus_dew_point};
/// let t = magnus_dew_point(&Worked::read("70 °F").unwrap(), &Worked::read("50 %").unwrap()).unwrap();
/// assert_eq!(format!("{:.2}", t.in_unit("°F")), "50.51");
/// ```
pub fn magnus_dew_point(t: &Worked<Temperature>, rh: &Worked<Share>) -> Answer<Temperature> {
    held("F11 magnus dew point", t, rh)?;
    let (a, b, at) = (Node::given(WATER.a.0, WATER.a.1), Node::given(WATER.b.0, WATER.b.1), t.named("t").bare("°C"));
    let gamma = rh.named("RH").ln() + a.clone() * at.clone() / (b.clone() + at);
    let dew = b * gamma.clone() / (a - gamma);
    Ok(Worked::new(on_scale(dew, celsius(t)).formula("F11 magnus dew point", "T_d")))
}

fn start(e_a: &Worked<Pressure>, pair: &Pair, metric: bool) -> Worked<Temperature> {
    let kilo = find_expr("kPa");
    let scale = Num::frac(pair.scale.0, pair.scale.1);
    let value = kilo.map_or_else(|| Quantity::plain(scale.clone()), |unit| Quantity::of(&scale, unit)).as_kind(Kind::Plain);
    let gamma = (e_a.named("e_a") / Node::constant(value, kilo, "A", pair.of)).ln();
    let number = Node::given(pair.b.0, pair.b.1) * gamma.clone() / (Node::given(pair.a.0, pair.a.1) - gamma);
    Worked::new(on_scale(number, metric).formula(pair.key, "T_0"))
}

/// Dew point, or frost point below freezing: `T_d = T_0 + ln(e_a ÷ e_0) × (b + T_0)^2 ÷ (a × b)`; `T_0` by Magnus's
/// form from the air's vapour pressure `e_a`, `e_0` [saturation] at `T_0`.
///
/// `−40 °C ≤ t ≤ 60 °C`, `1 % ≤ RH ≤ 100 %`. The saturation formula has no inverse that can be written down, and a
/// root found by trial leaves no arithmetic to follow; one step from Magnus's value, with Magnus's own slope, is
/// written down and lands within 0.002 °F of the root. Source: `hyland-wexler`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::dew_point::dew_point};
/// let at = |t, rh| dew_point(&Worked::read(t).unwrap(), &Worked::read(rh).unwrap()).unwrap().in_unit("°F");
/// assert_eq!(format!("{:.2} {:.2}", at("70 °F", "50 %"), at("50 °F", "20 %")), "50.53 12.86");
/// ```
pub fn dew_point(t: &Worked<Temperature>, rh: &Worked<Share>) -> Answer<Temperature> {
    held("F11 dew point", t, rh)?;
    let e_a = vapour_pressure(t, rh)?;
    let freezing = saturation(&Worked::new(on_scale(Node::given(0, 1), celsius(t))))?;
    let frost = e_a.value().si.to_f64() < freezing.value().si.to_f64();
    let pair = if frost { &ICE } else { &WATER };
    let first = start(&e_a, pair, celsius(t));
    let e_0 = if frost { ice_unheld(&first) } else { water_unheld(&first) };
    let (a, b, at) = (Node::given(pair.a.0, pair.a.1), Node::given(pair.b.0, pair.b.1), degrees(&first, "T_0"));
    let step = (e_a.named("e_a") / e_0.named("e_0")).ln() * (b.clone() + first.named("T_0").bare("°C")).pow(Node::given(2, 1)) / (a * b);
    let step = if celsius(t) { step } else { step * Node::given(9, 5) };
    Ok(Worked::new((at + step).dressed(if celsius(t) { "°C" } else { "°F" }).formula("F11 dew point", "T_d")))
}

#[cfg(test)]
mod tests {
    use super::super::testing::{holds, line, q};
    use super::*;

    /// What the air holds saturates it at the dew point: the step lands on the root.
    #[test]
    fn the_dew_point_saturates() {
        for t in (-40..=60).step_by(5) {
            for rh in [1, 5, 20, 50, 80, 99, 100] {
                let (t, rh) = (q(&format!("{t} °C")), q(&format!("{rh} %")));
                let (dew, holds) = (dew_point(&t, &rh).unwrap(), vapour_pressure(&t, &rh).unwrap().in_unit("Pa"));
                let full = saturation(&dew).unwrap().in_unit("Pa");
                // 0.002 °F is from 0.005 % of the pressure at 60 °C up; across 0 °C the two fits part by 0.01 %.
                let slack = if dew.in_unit("°C").abs() < 0.01 { 1.2e-4 } else { 5e-5 };
                assert!((full / holds - 1.0).abs() < slack, "{} at {}: {full} {holds}", rh.in_unit("%"), t.in_unit("°C"));
            }
        }
    }

    #[test]
    fn both_scales_agree_and_show_their_arithmetic() {
        let (f, c) = (dew_point(&q("68 °F"), &q("40 %")).unwrap(), dew_point(&q("20 °C"), &q("40 %")).unwrap());
        assert!((f.in_unit("°C") - c.in_unit("°C")).abs() < 1e-4);
        assert_eq!((f.node().unit().unwrap().symbol(), c.node().unit().unwrap().symbol()), ("°F".to_owned(), "°C".to_owned()));
        assert_eq!(line(&c).0, "T_d = T_0 + ln(e_a ÷ e_0) × (243.04 + T_0)^2 ÷ (17.625 × 243.04)");
        let (symbols, _) = line(&magnus_dew_point(&q("70 °F"), &q("50 %")).unwrap());
        assert_eq!(
            symbols,
            "T_d = 243.04 × (ln(RH) + 17.625 × t ÷ (243.04 + t)) ÷ (17.625 − (ln(RH) + 17.625 × t ÷ (243.04 + t))) × 1.8 + 32"
        );
        holds(&dew_point(&q("70 °F"), &q("100 %")).unwrap(), "°F", "70.00");
    }

    #[test]
    fn dry_air_and_wild_readings_are_refused() {
        assert_eq!(dew_point(&q("70 °F"), &q("0 %")).unwrap_err().symbol, "RH");
        assert_eq!(magnus_dew_point(&q("70 °F"), &q("0.5 %")).unwrap_err().wants, "at least 1 %");
        assert_eq!(dew_point(&q("150 °F"), &q("50 %")).unwrap_err().wants, "from -40 to 140 °F");
    }
}
