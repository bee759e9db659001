//! F11 the other way round: the table a lead reads, the wind a wall stands, the humidity it needs.

use crate::quantity::expr::{Drying, Node, Share, Speed, Temperature, Worked};
use crate::quantity::num::Direction;

use super::evaporation::{Air, evaporation, temperatures, uno_base};
use super::vapour::{celsius, humidity, saturation};
use super::{Answer, OutOfRange, above_zero, refuse, zero_or_more};

/// One row of the table: what stands on its left, and a rate for each wind.
#[derive(Clone, Debug)]
pub struct Row {
    /// Temperature of the mud's face.
    pub mortar: Worked<Temperature>,
    /// Temperature of the air.
    pub air: Worked<Temperature>,
    /// Relative humidity.
    pub humidity: Worked<Share>,
    /// Rate for each wind, rounded up as [`printed_rate`] does.
    pub rates: Vec<Worked<Drying>>,
}

/// A rate as a table shows it: up to the next 0.01 lb/ft2/h, or 0.05 kg/m2/h where it is written in SI.
///
/// `E ≥ 0`. Up, so that no cell reads calmer than it is. Source: `uno`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::drying_limits::printed_rate};
/// let shown = |t| printed_rate(&Worked::read(t).unwrap()).unwrap().node().number().plain();
/// assert_eq!((shown("0.191 lb/ft2/h"), shown("0.93 kg/m2/h")), ("0.2".to_owned(), "0.95".to_owned()));
/// ```
pub fn printed_rate(e: &Worked<Drying>) -> Answer<Drying> {
    zero_or_more("F11 rate shown", "E", e)?;
    let measure = if celsius(e) { 20 } else { 100 };
    let shown = e.named("E").written_in(if celsius(e) { "kg/m2/h" } else { "lb/ft2/h" });
    Ok(Worked::new(shown.rounded(Direction::Up, 1, measure).formula("F11 rate shown", "E_shown")))
}

/// The table a lead reads: a row for each humidity and each pair of temperatures (mud, air), a rate for each wind.
///
/// Range as [`evaporation`]; one cell out of range refuses the table. Source: `uno`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::drying_limits::grid};
/// let (t, rh) = (Worked::read("90 °F").unwrap(), Worked::read("25 %").unwrap());
/// let winds = [Worked::read("2 mph").unwrap(), Worked::read("12 mph").unwrap()];
/// let rows = grid(&[(t.clone(), t)], &[rh], &winds).unwrap();
/// let cells: Vec<String> = rows[0].rates.iter().map(|e| e.node().number().plain()).collect();
/// assert_eq!(cells, ["0.1", "0.33"]); // 0.0991 and 0.3200
/// ```
pub fn grid(
    temperatures: &[(Worked<Temperature>, Worked<Temperature>)],
    humidities: &[Worked<Share>],
    winds: &[Worked<Speed>],
) -> Result<Vec<Row>, OutOfRange> {
    let mut rows = Vec::new();
    for humidity in humidities {
        for (mortar, air) in temperatures {
            let mut rates = Vec::new();
            for wind in winds {
                let at = Air { mortar: mortar.clone(), air: air.clone(), humidity: humidity.clone(), wind: wind.clone() };
                rates.push(printed_rate(&evaporation(&at)?)?);
            }
            rows.push(Row { mortar: mortar.clone(), air: air.clone(), humidity: humidity.clone(), rates });
        }
    }
    Ok(rows)
}

/// Greatest whole wind at which the rate stays below a limit: `V = up(V_0, 1) − 1`, `V_0 = E_limit × 10^6 ÷ (5 ×
/// ((T_m + 18)^2.5 − RH × (T_a + 18)^2.5)) − 4` km/h, the wind at which [`evaporation`] reaches it.
///
/// mph where the mud is read in °F, else km/h. `E_limit > 0`. `None` if no wind reaches the limit, because the air is
/// as wet as the face. Out of range if still air reaches it. Where the verdict is taken on a rate rounded up for
/// print, give the limit less one printed step. Source: `uno`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::drying_limits::wind_for_rate};
/// let (limit, t, rh) = (Worked::read("0.2 lb/ft2/h").unwrap(), Worked::read("90 °F").unwrap(), Worked::read("25 %").unwrap());
/// assert_eq!(wind_for_rate(&limit, &t, &t, &rh).unwrap().unwrap().in_unit("mph"), 6.0);
/// ```
pub fn wind_for_rate(
    limit: &Worked<Drying>,
    mortar: &Worked<Temperature>,
    air: &Worked<Temperature>,
    rh: &Worked<Share>,
) -> Result<Option<Worked<Speed>>, OutOfRange> {
    const KEY: &str = "F11 greatest wind";
    above_zero(KEY, "E_limit", limit)?;
    temperatures(KEY, mortar, air)?;
    humidity(KEY, rh)?;
    let drive = (uno_base(mortar, "T_m") - rh.named("RH") * uno_base(air, "T_a")).formula("F11 drive", "D");
    if drive.value().si.to_f64() <= 0.0 {
        return Ok(None);
    }
    let wanted = limit.named("E_limit").bare("kg/m2/h") * Node::given(1_000_000, 1) / (Node::given(5, 1) * drive);
    let (unit, per) = if celsius(mortar) { ("km/h", (1, 1)) } else { ("mph", (201_168, 125_000)) };
    let free = wanted - Node::given(4, 1);
    let free = if per == (1, 1) { free } else { free / Node::given(per.0, per.1) };
    let free: Worked<Speed> = Worked::new(free.dressed(unit).formula("F11 wind at the limit", "V_0"));
    if free.value().si.to_f64() <= 0.0 {
        let wants = "more than 0: still air reaches the limit; cool the mud, or wait for damper air";
        return Err(refuse(KEY, "V", &free, wants));
    }
    let whole = free.named("V_0").rounded(Direction::Up, 1, 1) - Node::given(1, 1).dressed(unit);
    Ok(Some(Worked::new(whole.formula(KEY, "V"))))
}

/// Least whole per cent of humidity at which the rate stays below a limit, from the humidity that reaches it.
fn least_humidity(reaching: Node, key: &'static str) -> Answer<Share> {
    let percent = reaching * Node::given(100, 1);
    let whole = percent.rounded(Direction::Down, 1, 1) + Node::given(1, 1);
    let least: Worked<Share> = Worked::new(whole.max(Node::given(0, 1)).dressed("%").formula(key, "RH"));
    if least.value().si.to_f64() > 1.0 {
        return Err(refuse(key, "RH", &least, "at most 100 %: no humidity keeps below the limit; break the wind, or cool the mud"));
    }
    Ok(least)
}

/// Least whole humidity at which the rate stays below a limit: `RH = max(down(100 × ((T_m + 18)^2.5 − E_limit × 10^6 ÷
/// (5 × (V + 4))) ÷ (T_a + 18)^2.5, 1) + 1, 0)` %, from [`evaporation`].
///
/// 0 % if any humidity does; out of range if none does. `E_limit > 0`, `V ≥ 0`, `T_a` above −18 °C. Source: `uno`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::drying_limits::humidity_for_rate};
/// let (limit, v) = (Worked::read("0.2 lb/ft2/h").unwrap(), Worked::read("10 mph").unwrap());
/// let (mortar, air) = (Worked::read("90 °F").unwrap(), Worked::read("80 °F").unwrap());
/// assert_eq!(humidity_for_rate(&limit, &mortar, &air, &v).unwrap().in_unit("%"), 62.0);
/// ```
pub fn humidity_for_rate(
    limit: &Worked<Drying>,
    mortar: &Worked<Temperature>,
    air: &Worked<Temperature>,
    wind: &Worked<Speed>,
) -> Answer<Share> {
    const KEY: &str = "F11 least humidity";
    above_zero(KEY, "E_limit", limit)?;
    temperatures(KEY, mortar, air)?;
    zero_or_more(KEY, "V", wind)?;
    let full = uno_base(air, "T_a");
    if full.value().si.to_f64() <= 0.0 {
        return Err(refuse(KEY, "T_a", air, "above -18 °C"));
    }
    let windy = Node::given(5, 1) * (wind.named("V").bare("km/h") + Node::given(4, 1));
    let allowed = limit.named("E_limit").bare("kg/m2/h") * Node::given(1_000_000, 1) / windy;
    least_humidity((uno_base(mortar, "T_m") - allowed) / full, KEY)
}

/// As [`humidity_for_rate`], by Menzel's form: `RH = max(down(100 × (e_0 − E_limit ÷ (0.44 × (0.253 + 0.096 × V))) ÷
/// e_s, 1) + 1, 0)` %; psi, mph; `e_0` and `e_s` saturation at the mud and in the air.
///
/// The published table of critical humidities goes by this form. Source: `menzel`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::drying_limits::menzel_humidity_for_rate};
/// let (limit, v) = (Worked::read("0.2 lb/ft2/h").unwrap(), Worked::read("10 mph").unwrap());
/// let (mortar, air) = (Worked::read("90 °F").unwrap(), Worked::read("80 °F").unwrap());
/// assert_eq!(menzel_humidity_for_rate(&limit, &mortar, &air, &v).unwrap().in_unit("%"), 64.0);
/// ```
pub fn menzel_humidity_for_rate(
    limit: &Worked<Drying>,
    mortar: &Worked<Temperature>,
    air: &Worked<Temperature>,
    wind: &Worked<Speed>,
) -> Answer<Share> {
    const KEY: &str = "F11 least humidity, menzel";
    above_zero(KEY, "E_limit", limit)?;
    temperatures(KEY, mortar, air)?;
    zero_or_more(KEY, "V", wind)?;
    let windy = Node::given(253, 1000) + Node::given(12, 125) * wind.named("V").bare("mph");
    let allowed = limit.named("E_limit").bare("lb/ft2/h") / (Node::given(11, 25) * windy);
    let pressure = |t, symbol: &'static str| Ok(saturation(t)?.named(symbol).bare("psi"));
    least_humidity((pressure(mortar, "e_0")? - allowed) / pressure(air, "e_s")?, KEY)
}

#[cfg(test)]
mod tests {
    use super::super::evaporation::tests::air;
    use super::super::testing::{line, q};
    use super::*;

    fn rate(mortar: &str, a: &str, rh: f64, wind: f64) -> f64 {
        evaporation(&air(mortar, a, &format!("{rh} %"), &format!("{wind} mph"))).unwrap().in_unit("lb/ft2/h")
    }

    // The design's grid: the form is published, the rows are ours. It prints the nearest hundredth; we print up.
    #[test]
    fn the_grid_of_the_weather_card() {
        let wanted = [
            (25, [[0.05, 0.09, 0.12, 0.17], [0.07, 0.12, 0.17, 0.24], [0.10, 0.17, 0.23, 0.32], [0.13, 0.21, 0.30, 0.42]]),
            (50, [[0.04, 0.06, 0.08, 0.11], [0.05, 0.08, 0.12, 0.16], [0.07, 0.11, 0.15, 0.21], [0.09, 0.14, 0.20, 0.28]]),
        ];
        let temperatures: Vec<_> = ["70 °F", "80 °F", "90 °F", "100 °F"].iter().map(|t| (q(t), q(t))).collect();
        let winds = [2.0, 5.0, 8.0, 12.0];
        let rows = grid(&temperatures, &[q("25 %"), q("50 %")], &winds.map(|v| q(&format!("{v} mph")))).unwrap();
        assert_eq!(rows.len(), 8);
        for (row, cells) in rows.iter().zip(wanted.iter().flat_map(|(_, t)| t)) {
            for ((shown, printed), wind) in row.rates.iter().zip(cells).zip(winds) {
                let t = format!("{} °F", row.mortar.node().number().plain());
                let e = rate(&t, &t, row.humidity.in_unit("%"), wind);
                // 0.215 was printed 0.21.
                assert!((e - printed).abs() < 0.00501, "{t} {wind}: {e} {printed}");
                let shown = shown.in_unit("lb/ft2/h");
                assert!(shown >= e && shown < e + 0.01 && (shown * 100.0 - (shown * 100.0).round()).abs() < 1e-9);
            }
        }
    }

    #[test]
    fn one_more_mile_of_wind_reaches_the_limit() {
        let limit = q("0.2 lb/ft2/h");
        for (mortar, a, rh) in [("90 °F", "90 °F", 25.0), ("78 °F", "92 °F", 24.0), ("100 °F", "85 °F", 50.0)] {
            let wind = wind_for_rate(&limit, &q(mortar), &q(a), &q(&format!("{rh} %"))).unwrap().unwrap();
            let v = wind.in_unit("mph").round();
            assert!((wind.in_unit("mph") - v).abs() < 1e-9);
            assert!(rate(mortar, a, rh, v) < 0.2 && rate(mortar, a, rh, v + 1.0) >= 0.2, "{mortar} {a} {v}");
        }
        let metric = wind_for_rate(&q("1 kg/m2/h"), &q("32 °C"), &q("32 °C"), &q("25 %")).unwrap().unwrap();
        assert_eq!(metric.node().unit().unwrap().symbol(), "km/h");
        assert_eq!(line(&metric).0, "V = up(V_0, 1) − 1");
        let dew = wind_for_rate(&limit, &q("60 °F"), &q("80 °F"), &q("95 %")).unwrap();
        assert!(dew.is_none());
        let hopeless = wind_for_rate(&limit, &q("140 °F"), &q("110 °F"), &q("5 %")).unwrap_err();
        assert!(hopeless.wants.starts_with("more than 0: still air"), "{hopeless}");
        assert_eq!(wind_for_rate(&q("0 lb/ft2/h"), &q("70 °F"), &q("70 °F"), &q("5 %")).unwrap_err().symbol, "E_limit");
    }

    #[test]
    fn one_per_cent_less_humidity_reaches_the_limit() {
        let limit = q("0.15 lb/ft2/h");
        let least = humidity_for_rate(&limit, &q("90 °F"), &q("88 °F"), &q("9 mph")).unwrap().in_unit("%");
        assert!(rate("90 °F", "88 °F", least, 9.0) < 0.15 && rate("90 °F", "88 °F", least - 1.0, 9.0) >= 0.15, "{least}");
        let calm = humidity_for_rate(&limit, &q("50 °F"), &q("50 °F"), &q("0 mph")).unwrap();
        assert_eq!(calm.in_unit("%"), 0.0);
        let gale = humidity_for_rate(&limit, &q("100 °F"), &q("60 °F"), &q("20 mph")).unwrap_err();
        assert!(gale.wants.contains("break the wind"));
        assert!(menzel_humidity_for_rate(&limit, &q("100 °F"), &q("60 °F"), &q("20 mph")).is_err());
        assert!(humidity_for_rate(&limit, &q("70 °F"), &q("70 °F"), &q("-1 mph")).is_err());
        assert!(printed_rate(&q("-0.1 lb/ft2/h")).is_err());
    }
}
