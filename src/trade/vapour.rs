//! F11: how much vapour air can hold, and how much it holds.
//!
//! The default is the Hyland–Wexler fit, in the two published sets of constants: kelvin and pascals for readings
//! in °C, °F above absolute zero and psi for readings in °F, so that no line needs a factor between units. The
//! simpler fits stand beside it for figures that were published with them.

use crate::quantity::expr::{Node, Pressure, Share, Sort, Temperature, Worked, is_metric};
use crate::quantity::num::Num;

use super::{Answer, OutOfRange, refuse};

/// A Hyland–Wexler set: `ln e = c − q ÷ T + p1 × T + p2 × T^2 … + l × ln T`.
struct Fit {
    constant: (i64, i64),
    over: (i64, i64),
    powers: &'static [(i64, i64)],
    log: (i64, i64),
}

const WATER_SI: Fit = Fit {
    constant: (13_914_993, 10_000_000),
    over: (-58_002_206, 10_000),
    powers: &[(-48_640_239, 1_000_000_000), (41_764_768, 1_000_000_000_000), (-14_452_093, 1_000_000_000_000_000)],
    log: (65_459_673, 10_000_000),
};
const WATER_US: Fit = Fit {
    constant: (-11_294_650, 1_000_000),
    over: (-10_440_397, 1_000),
    powers: &[(-27_022_355, 1_000_000_000), (12_890_360, 1_000_000_000_000), (-24_780_681, 10_000_000_000_000_000)],
    log: (65_459_673, 10_000_000),
};
const ICE_SI: Fit = Fit {
    constant: (63_925_247, 10_000_000),
    over: (-56_745_359, 10_000),
    powers: &[
        (-9_677_843, 1_000_000_000),
        (62_215_701, 100_000_000_000_000),
        (20_747_825, 10_000_000_000_000_000),
        (-1_185_503, 1_250_000_000_000_000_000),
    ],
    log: (41_635_019, 10_000_000),
};
const ICE_US: Fit = Fit {
    constant: (-48_932_428, 10_000_000),
    over: (-10_214_165, 1_000),
    powers: &[
        (-53_765_794, 10_000_000_000),
        (19_202_377, 100_000_000_000_000),
        (35_575_832, 100_000_000_000_000_000),
        // −9.0344688e-14, as near as these integers go: 1 part in 10⁸ of the sum.
        (-90_345, 1_000_000_000_000_000_000),
    ],
    log: (41_635_019, 10_000_000),
};

/// True if a reading is on the Celsius or Kelvin scale: results then come in SI.
pub(crate) fn celsius<S: Sort>(t: &Worked<S>) -> bool {
    t.node().unit().is_some_and(is_metric)
}

/// The reading's number on the author's scale.
pub(crate) fn degrees(t: &Worked<Temperature>, symbol: &'static str) -> Node {
    t.named(symbol).bare(if celsius(t) { "°C" } else { "°F" })
}

/// Refuses a reading outside whole degrees Celsius, in the author's scale.
pub(crate) fn reading(
    formula: &'static str,
    symbol: &'static str,
    t: &Worked<Temperature>,
    (least, most): (i64, i64),
) -> Result<(), OutOfRange> {
    let at = t.value().si.to_f64() - 273.15;
    if at < least as f64 - 1e-9 || at > most as f64 + 1e-9 {
        let said = |c: i64| if celsius(t) { Num::int(c) } else { Num::frac(c * 9 + 160, 5) }.plain();
        let unit = if celsius(t) { "°C" } else { "°F" };
        return Err(refuse(formula, symbol, t, format!("from {} to {} {unit}", said(least), said(most))));
    }
    Ok(())
}

/// Refuses a relative humidity that is none.
pub(crate) fn humidity(formula: &'static str, rh: &Worked<Share>) -> Result<(), OutOfRange> {
    let share = rh.value().si.to_f64();
    if (0.0..=1.0).contains(&share) {
        return Ok(());
    }
    Err(refuse(formula, "RH", rh, "from 0 to 100 %, such as `45 %`"))
}

fn term(sum: Node, (n, d): (i64, i64), of: impl FnOnce(Node) -> Node) -> Node {
    let size = of(Node::given(n.abs(), d));
    if n < 0 { sum - size } else { sum + size }
}

fn hyland_wexler(t: &Worked<Temperature>, si: &Fit, us: &Fit, key: &'static str) -> Worked<Pressure> {
    let (fit, zero, unit) = if celsius(t) { (si, (5463, 20), "Pa") } else { (us, (45_967, 100), "psi") };
    let above = (degrees(t, "t") + Node::given(zero.0, zero.1)).formula("F11 absolute temperature", "T");
    let mut sum = term(Node::given(fit.constant.0, fit.constant.1), fit.over, |c| c / above.clone());
    for (power, c) in (1..).zip(fit.powers) {
        let t = if power == 1 { above.clone() } else { above.clone().pow(Node::given(power, 1)) };
        sum = term(sum, *c, |c| c * t);
    }
    let sum = term(sum, fit.log, |c| c * above.ln());
    Worked::new(sum.exp().dressed(unit).formula(key, "e_s"))
}

pub(crate) fn water_unheld(t: &Worked<Temperature>) -> Worked<Pressure> {
    hyland_wexler(t, &WATER_SI, &WATER_US, "F11 over water")
}

pub(crate) fn ice_unheld(t: &Worked<Temperature>) -> Worked<Pressure> {
    hyland_wexler(t, &ICE_SI, &ICE_US, "F11 over ice")
}

/// Saturation vapour pressure over water: `e_s = exp(c − q ÷ T + p1 × T + p2 × T^2 + p3 × T^3 + l × ln T)`; `T`
/// kelvin for Pa, or °F + 459.67 for psi.
///
/// `0 °C ≤ t ≤ 200 °C`; within 0.07 % of the tables at hand over 0–50 °C. Source: `hyland-wexler`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::vapour::over_water};
/// assert_eq!(format!("{:.4}", over_water(&Worked::read("25 °C").unwrap()).unwrap().in_unit("kPa")), "3.1692");
/// ```
pub fn over_water(t: &Worked<Temperature>) -> Answer<Pressure> {
    reading("F11 over water", "t", t, (0, 200))?;
    Ok(water_unheld(t))
}

/// Saturation vapour pressure over ice: as [`over_water`], with the constants of ice and one power more.
///
/// `−100 °C ≤ t ≤ 0 °C`. Source: `hyland-wexler`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::vapour::over_ice};
/// assert_eq!(format!("{:.1}", over_ice(&Worked::read("-5 °C").unwrap()).unwrap().in_unit("Pa")), "401.8");
/// ```
pub fn over_ice(t: &Worked<Temperature>) -> Answer<Pressure> {
    reading("F11 over ice", "t", t, (-100, 0))?;
    Ok(ice_unheld(t))
}

/// Saturation vapour pressure of air at `t`: [`over_ice`] up to and with 0 °C, [`over_water`] above it.
///
/// `−100 °C ≤ t ≤ 200 °C`. At 0 °C itself the two differ by 0.01 %. Source: `hyland-wexler`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::vapour::saturation};
/// let e = |t| saturation(&Worked::read(t).unwrap()).unwrap().in_unit("psi");
/// assert_eq!(format!("{:.4} {:.4}", e("23 °F"), e("77 °F")), "0.0583 0.4597");
/// ```
pub fn saturation(t: &Worked<Temperature>) -> Answer<Pressure> {
    if t.value().si.to_f64() <= 273.15 { over_ice(t) } else { over_water(t) }
}

/// Vapour pressure of air: `e_a = RH × e_s`; `RH` relative humidity, `e_s` [`saturation`] at the air's temperature.
///
/// `0 % ≤ RH ≤ 100 %`. Source: `hyland-wexler`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::vapour::vapour_pressure};
/// let e = vapour_pressure(&Worked::read("20 °C").unwrap(), &Worked::read("50 %").unwrap()).unwrap();
/// assert_eq!(format!("{:.0}", e.in_unit("Pa")), "1169");
/// ```
pub fn vapour_pressure(t: &Worked<Temperature>, rh: &Worked<Share>) -> Answer<Pressure> {
    humidity("F11 vapour pressure", rh)?;
    let e_s = saturation(t)?;
    let e_a = super::like(rh.named("RH") * e_s.named("e_s"), e_s.node());
    Ok(Worked::new(e_a.formula("F11 vapour pressure", "e_a")))
}

/// `A × exp(a × t ÷ (b + t))`, `A` in kPa and `t` in °C whatever the author's scale: that is how these were published.
fn magnus_form(t: &Worked<Temperature>, scale: (i64, i64), a: (i64, i64), b: (i64, i64), key: &'static str) -> Worked<Pressure> {
    let at = t.named("t").bare("°C");
    let power = Node::given(a.0, a.1) * at.clone() / (Node::given(b.0, b.1) + at);
    Worked::new((Node::given(scale.0, scale.1) * power.exp()).dressed("kPa").formula(key, "e_s"))
}

/// Saturation vapour pressure over water by Magnus's form: `e_s = 0.61094 × exp(17.625 × t ÷ (243.04 + t))` kPa, `t` in °C.
///
/// `−40 °C ≤ t ≤ 60 °C`; up to 0.4 % from [`over_water`], and over water also below freezing. Source: `magnus`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::vapour::magnus};
/// assert_eq!(format!("{:.3}", magnus(&Worked::read("25 °C").unwrap()).unwrap().in_unit("kPa")), "3.162");
/// ```
pub fn magnus(t: &Worked<Temperature>) -> Answer<Pressure> {
    reading("F11 magnus", "t", t, (-40, 60))?;
    Ok(magnus_form(t, (61_094, 100_000), (141, 8), (6076, 25), "F11 magnus"))
}

/// Saturation vapour pressure over water by Tetens's form: `e_s = 0.6108 × exp(17.27 × t ÷ (237.3 + t))` kPa, `t` in °C.
///
/// `0 °C ≤ t ≤ 60 °C`; within 0.2 % of [`over_water`] to 50 °C. Source: `tetens`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::vapour::tetens};
/// assert_eq!(format!("{:.3}", tetens(&Worked::read("24.5 °C").unwrap()).unwrap().in_unit("kPa")), "3.075");
/// ```
pub fn tetens(t: &Worked<Temperature>) -> Answer<Pressure> {
    reading("F11 tetens", "t", t, (0, 60))?;
    Ok(magnus_form(t, (1527, 2500), (1727, 100), (2373, 10), "F11 tetens"))
}

#[cfg(test)]
mod tests {
    use super::super::testing::{holds, line, q};
    use super::*;

    // ASHRAE Handbook Fundamentals 2017, ch. 1 table 3, as quoted in public tests of a psychrometrics library.
    #[test]
    fn both_sets_of_constants_give_the_table() {
        for (c, f, pascals, pounds) in [("-5 °C", "23 °F", 401.74, 0.058_268), ("25 °C", "77 °F", 3169.7, 0.459_73)] {
            assert!((saturation(&q(c)).unwrap().in_unit("Pa") / pascals - 1.0).abs() < 3e-4);
            assert!((saturation(&q(f)).unwrap().in_unit("psi") / pounds - 1.0).abs() < 3e-4);
        }
    }

    #[test]
    fn the_two_sets_are_one_formula() {
        for tenth in (-1000..2000).step_by(37) {
            let t = f64::from(tenth) / 10.0;
            let celsius = saturation(&q(&format!("{t:.1} °C"))).unwrap().in_unit("Pa");
            let fahrenheit = saturation(&q(&format!("{:.2} °F", t * 1.8 + 32.0))).unwrap().in_unit("Pa");
            assert!((celsius / fahrenheit - 1.0).abs() < 3e-6, "{t}: {celsius} {fahrenheit}");
        }
    }

    #[test]
    fn the_line_is_the_published_form() {
        let (symbols, numbers) = line(&over_water(&q("25 °C")).unwrap());
        assert!(symbols.starts_with("e_s = exp(1.3914993 − 5800.2206 ÷ T − 0.048640239 × T + "), "{symbols}");
        assert!(symbols.ends_with("× T^3 + 6.5459673 × ln(T))"), "{symbols}");
        assert!(numbers.ends_with("ln(298.15)) = 3169.216 Pa"), "{numbers}");
        let (symbols, _) = line(&vapour_pressure(&q("25 °C"), &q("40 %")).unwrap());
        assert_eq!(symbols, "e_a = RH × e_s");
    }

    #[test]
    fn outside_the_fits_nothing_is_said() {
        assert_eq!(over_water(&q("30 °F")).unwrap_err().wants, "from 32 to 392 °F");
        assert_eq!(over_ice(&q("1 °C")).unwrap_err().wants, "from -100 to 0 °C");
        assert_eq!(magnus(&q("150 °F")).unwrap_err().wants, "from -40 to 140 °F");
        assert!(tetens(&q("-1 °C")).is_err() && saturation(&q("201 °C")).is_err());
        assert_eq!(vapour_pressure(&q("70 °F"), &q("101 %")).unwrap_err().symbol, "RH");
        holds(&vapour_pressure(&q("70 °F"), &q("0 %")).unwrap(), "psi", "0.000");
    }
}
