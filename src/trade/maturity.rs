//! F17: warmth and time as one number. Planning aids: they never prove strength, are poor in winter, and know
//! nothing of a mix that dries out. Nothing here is printed as a strength.

use num_rational::BigRational;

use crate::quantity::expr::{Activation, Difference, Duration, Maturity, Node, Temperature, Worked};
use crate::quantity::num::Num;
use crate::quantity::units::find_expr;
use crate::quantity::{Dim, Kind, Quantity};

use super::{Answer, OutOfRange, above_zero, like, refuse};

/// A time at one temperature.
#[derive(Clone, Debug)]
pub struct Step {
    /// How long.
    pub time: Worked<Duration>,
    /// Mean temperature of the mud over it.
    pub temperature: Worked<Temperature>,
}

/// Kelvin of 0 °C and of boiling water: the temperatures mud can have and be mud.
const LEAST_KELVIN: f64 = 173.15;
const MOST_KELVIN: f64 = 373.15;

fn steps_stand(key: &'static str, steps: &[Step]) -> Result<(), OutOfRange> {
    if steps.is_empty() {
        let wants = "at least one time at a temperature, such as `24 h` at `20 °C`".to_owned();
        return Err(OutOfRange { formula: key, symbol: "t", value: "missing".to_owned(), wants });
    }
    for step in steps {
        above_zero(key, "t", &step.time)?;
        stands(key, "T", &step.temperature)?;
    }
    Ok(())
}

fn stands(key: &'static str, symbol: &'static str, t: &Worked<Temperature>) -> Result<(), OutOfRange> {
    let kelvin = t.value().si.to_f64();
    if (LEAST_KELVIN..=MOST_KELVIN).contains(&kelvin) {
        return Ok(());
    }
    Err(refuse(key, symbol, t, "-100 °C to 100 °C, such as `20 °C`"))
}

/// Symbols numbered only where there is more than one step.
fn numbered(symbol: &str, i: usize, of: usize) -> String {
    if of == 1 { symbol.to_owned() } else { format!("{symbol}_{}", i + 1) }
}

fn added(steps: &[Step], each: impl Fn(&Step, &str, &str) -> Node) -> Option<Node> {
    let count = steps.len();
    let terms = steps.iter().enumerate();
    terms.map(|(i, s)| each(s, &numbered("T", i, count), &numbered("t", i, count))).reduce(|a, b| a + b)
}

fn sum(key: &'static str, steps: &[Step], each: impl Fn(&Step, &str, &str) -> Node) -> Result<Node, OutOfRange> {
    steps_stand(key, steps)?;
    // At least one step stands, so there is a sum.
    Ok(added(steps, each).unwrap_or_else(|| Node::given(0, 1)))
}

/// Maturity by Nurse and Saul: `M = Σ max(T − T_0, 0) × t`, in °C·h; `T` temperature over a step, `t` its time, `T_0`
/// the datum, which must be stated: 0 °C by ASTM C1074 (recalled), −10 °C or −11 °C in older texts.
///
/// At least one step, `t > 0`, temperatures −100 to 100 °C. Below the datum a step counts nothing. A planning
/// aid, not proof of strength, and poor in winter. Source: `nurse-saul`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::maturity::{Step, maturity}};
/// let steps = [Step { time: Worked::read("28 days").unwrap(), temperature: Worked::read("20 °C").unwrap() }];
/// assert_eq!(maturity(&steps, &Worked::read("-10 °C").unwrap()).unwrap().in_unit("°C·h"), 20160.0);
/// ```
pub fn maturity(steps: &[Step], datum: &Worked<Temperature>) -> Answer<Maturity> {
    const KEY: &str = "F17 maturity";
    stands(KEY, "T_0", datum)?;
    let m = sum(KEY, steps, |s, temperature, time| {
        let warm = s.temperature.named(temperature.to_owned()).bare("°C") - datum.named("T_0").bare("°C");
        warm.max(Node::given(0, 1)) * s.time.named(time.to_owned()).bare("h")
    })?;
    Ok(Worked::new(m.dressed("°C·h").formula(KEY, "M")))
}

/// Gas constant, J/mol/K.
fn gas_constant() -> Node {
    let value = BigRational::new(8_314_462_618_i64.into(), 1_000_000_000_i64.into());
    let dim = Dim { temperature: -1, ..Dim::ENERGY };
    let value = Quantity { si: Num::Exact(value), dim, kind: Kind::Plain };
    Node::constant(value, find_expr("J/mol/K"), "R", "molar gas constant (SI, ten digits)")
}

/// Temperature of activation: `Q = E ÷ R`; `E` energy of activation in J/mol or kJ/mol, `R` the gas constant.
///
/// `E > 0`. Sources give 33.5 to 45 kJ/mol and disagree: state it. Source: `arrhenius-age`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::maturity::activation};
/// assert_eq!(activation(&Worked::read("41.5 kJ/mol").unwrap()).unwrap().in_unit("K").round(), 4991.0);
/// ```
pub fn activation(e: &Worked<Activation>) -> Answer<Difference> {
    above_zero("F17 activation", "E", e)?;
    Ok(Worked::new((e.named("E") / gas_constant()).written_in("K").formula("F17 activation", "Q")))
}

/// Equivalent age at a reference temperature: `t_e = Σ t × exp(Q × (1 ÷ T_s − 1 ÷ T))`, temperatures in kelvin; `Q` from
/// [`activation`] or stated (5000 K by ASTM C1074, recalled), `T_s` the reference, 20 or 23 °C, stated.
///
/// At least one step, `t > 0`, `Q > 0`, temperatures −100 to 100 °C. Keeps a small gain below freezing, where mud
/// has none: drop those hours. A planning aid, not proof of strength, and poor in winter. Source: `arrhenius-age`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::maturity::{Step, equivalent_age}};
/// let steps = [Step { time: Worked::read("72 h").unwrap(), temperature: Worked::read("23 °C").unwrap() }];
/// let age = equivalent_age(&steps, &Worked::read("5000 K").unwrap(), &Worked::read("20 °C").unwrap()).unwrap();
/// assert_eq!(format!("{:.1}", age.in_unit("h")), "85.6");
/// ```
pub fn equivalent_age(steps: &[Step], q: &Worked<Difference>, reference: &Worked<Temperature>) -> Answer<Duration> {
    const KEY: &str = "F17 equivalent age";
    above_zero(KEY, "Q", q)?;
    if q.value().si.to_f64() > 20_000.0 {
        return Err(refuse(KEY, "Q", q, "at most 20000 K, such as `5000 K`"));
    }
    stands(KEY, "T_s", reference)?;
    let age = sum(KEY, steps, |s, temperature, time| {
        let one = || Node::given(1, 1);
        let inverse = one() / reference.named("T_s").bare("K") - one() / s.temperature.named(temperature.to_owned()).bare("K");
        like(s.time.named(time.to_owned()) * (q.named("Q").bare("K") * inverse).exp(), s.time.node())
    })?;
    Ok(Worked::new(age.formula(KEY, "t_e")))
}

fn number(n: i64, d: i64, symbol: &'static str, source: &'static str) -> Node {
    Node::constant(Quantity::plain(Num::frac(n, d)), None, symbol, source)
}

const FREIESLEBEN: &str = "Freiesleben Hansen and Pedersen (recalled, not re-read)";

/// Equivalent age at 20 °C by Freiesleben Hansen and Pedersen: [`equivalent_age`] with an energy of activation that
/// grows in the cold, `E = 33.5 + 1.47 × max(20 − T, 0)` kJ/mol, `T` in °C.
///
/// At least one step, `t > 0`, temperatures −100 to 100 °C. Recalled. A planning aid, not proof of strength, and
/// poor in winter. Source: `freiesleben-age`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::maturity::{Step, cold_age}};
/// let steps = [Step { time: Worked::read("168 h").unwrap(), temperature: Worked::read("5 °C").unwrap() }];
/// assert_eq!(format!("{:.1}", cold_age(&steps).unwrap().in_unit("h")), "49.2");
/// ```
pub fn cold_age(steps: &[Step]) -> Answer<Duration> {
    const KEY: &str = "F17 cold age";
    let age = sum(KEY, steps, |s, temperature, time| {
        let cold = Node::given(20, 1) - s.temperature.named(temperature.to_owned()).bare("°C");
        let e = number(67, 2, "E_20", FREIESLEBEN) + number(147, 100, "E_K", FREIESLEBEN) * cold.max(Node::given(0, 1));
        let q = Node::given(1000, 1) * e / gas_constant().bare("J/mol/K");
        let one = || Node::given(1, 1);
        let inverse = one() / Node::given(29315, 100) - one() / s.temperature.named(temperature.to_owned()).bare("K");
        like(s.time.named(time.to_owned()) * (q * inverse).exp(), s.time.node())
    })?;
    Ok(Worked::new(age.formula(KEY, "t_e")))
}

const MODEL_CODE: &str = "EN 1992-1-1, B.10 (13.65 recalled)";

/// Equivalent age at about 20 °C by EN 1992-1-1, B.10: `t_T = Σ t × exp(13.65 − 4000 ÷ (273 + T))`, `T` in °C.
///
/// At least one step, `t > 0`, `0 °C ≤ T ≤ 80 °C`. Its own constants give 0.998 of an hour, not 1, for an hour at
/// 20 °C. A planning aid, not proof of strength, and poor in winter. Source: `model-code-age`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::maturity::{Step, model_code_age}};
/// let hour = |t| Step { time: Worked::read("1 h").unwrap(), temperature: Worked::read(t).unwrap() };
/// assert_eq!(format!("{:.3}", model_code_age(&[hour("20 °C")]).unwrap().in_unit("h")), "0.998");
/// assert!(model_code_age(&[hour("-1 °C")]).is_err());
/// ```
pub fn model_code_age(steps: &[Step]) -> Answer<Duration> {
    const KEY: &str = "F17 model code age";
    for step in steps {
        let celsius = step.temperature.value().si.to_f64() - 273.15;
        if !(0.0..=80.0).contains(&celsius) {
            return Err(refuse(KEY, "T", &step.temperature, "0 °C to 80 °C, where it is stated, such as `20 °C`"));
        }
    }
    let age = sum(KEY, steps, |s, temperature, time| {
        let q =
            number(4000, 1, "Q", MODEL_CODE) / (number(273, 1, "T_K", MODEL_CODE) + s.temperature.named(temperature.to_owned()).bare("°C"));
        like(s.time.named(time.to_owned()) * (number(1365, 100, "a", MODEL_CODE) - q).exp(), s.time.node())
    })?;
    Ok(Worked::new(age.formula(KEY, "t_T")))
}

#[cfg(test)]
mod tests {
    use super::super::testing::{holds, line, q};
    use super::*;

    fn steps(parts: &[(&str, &str)]) -> Vec<Step> {
        parts.iter().map(|(time, t)| Step { time: q(time), temperature: q(t) }).collect()
    }

    // Rows of the reference table: worked there from the same published forms.
    #[test]
    fn three_days_that_cool() {
        let cooling = steps(&[("24 h", "25 °C"), ("1 day", "15 °C"), ("24 h", "50 °F")]);
        let m = maturity(&cooling, &q("-10 °C")).unwrap();
        holds(&m, "°C·h", "1920");
        assert_eq!(line(&m).0, "M = max(T_1 − T_0, 0) × t_1 + max(T_2 − T_0, 0) × t_2 + max(T_3 − T_0, 0) × t_3");
        assert_eq!(m.node().unit().unwrap().symbol(), "°C·h");
        assert!(m.value().si.exact().is_some());
        holds(&equivalent_age(&cooling, &q("5000 K"), &q("20 °C")).unwrap(), "h", "62.9");
        holds(&cold_age(&cooling).unwrap(), "h", "60.1");
        holds(&model_code_age(&cooling).unwrap(), "h", "63.8");
    }

    #[test]
    fn nothing_is_gained_below_the_datum() {
        holds(&maturity(&steps(&[("10 h", "-5 °C"), ("2 h", "10 °C")]), &q("0 °C")).unwrap(), "°C·h", "20");
        let age = equivalent_age(&steps(&[("1 h", "20 °C")]), &activation(&q("41.5 kJ/mol")).unwrap(), &q("68 °F")).unwrap();
        holds(&age, "h", "1.000");
        assert_eq!(line(&activation(&q("41.5 kJ/mol")).unwrap()).0, "Q = E ÷ R");
    }

    #[test]
    fn out_of_range_says_what_would_pass() {
        assert!(maturity(&[], &q("0 °C")).unwrap_err().wants.contains("at least one"));
        assert_eq!(maturity(&steps(&[("0 h", "20 °C")]), &q("0 °C")).unwrap_err().symbol, "t");
        assert_eq!(model_code_age(&steps(&[("1 h", "81 °C")])).unwrap_err().wants, "0 °C to 80 °C, where it is stated, such as `20 °C`");
        assert!(equivalent_age(&steps(&[("1 h", "20 °C")]), &q("0 K"), &q("20 °C")).is_err());
        assert!(equivalent_age(&steps(&[("1 h", "200 °C")]), &q("5000 K"), &q("20 °C")).is_err());
        assert!(cold_age(&steps(&[("1 h", "-200 °C")])).is_err());
        assert!(activation(&q("0 kJ/mol")).is_err());
    }
}
