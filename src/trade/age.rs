//! F17 and F9: how published curves and tables let strength grow with age, and fall with water. General facts of
//! concrete, for planning and for teaching: a strength from here is never printed on a card and never promised.

use crate::quantity::Quantity;
use crate::quantity::expr::{Duration, Mass, Maturity, Node, Plain, Share, Strength, Worked};
use crate::quantity::num::Num;
use crate::quantity::units::find_expr;

use super::{Answer, above_zero, refuse, zero_or_more};

/// Cement and cure of the ACI 209 curve.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Curve {
    /// Type I, moist.
    OneMoist,
    /// Type III, moist.
    ThreeMoist,
    /// Type I, steam.
    OneSteam,
    /// Type III, steam.
    ThreeSteam,
}

fn plain(n: i64, d: i64, symbol: &'static str, source: &'static str) -> Node {
    Node::constant(Quantity::plain(Num::frac(n, d)), None, symbol, source)
}

/// Share of the 28-day strength at an age, by ACI 209: `f = t ÷ (a + b × t)`, `t` in days; `a`, `b` by cement and cure.
///
/// `t > 0`. Gives 1.007 (Type I) and 0.998 (Type III) at 28 days, not 1. The constants of steam cure are recalled.
/// A planning aid, never a strength. Source: `aci-209-age`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::age::{Curve, age_factor}};
/// let f = age_factor(&Worked::read("7 days").unwrap(), Curve::OneMoist).unwrap();
/// assert_eq!(format!("{:.4}", f.value().si.to_f64()), "0.7035");
/// ```
pub fn age_factor(t: &Worked<Duration>, curve: Curve) -> Answer<Plain> {
    const READ: &str = "ACI 209R, moist cure";
    const RECALLED: &str = "ACI 209R, steam cure (recalled, not re-read)";
    above_zero("F17 age factor", "t", t)?;
    let (a, b, source) = match curve {
        Curve::OneMoist => ((4, 1), (85, 100), READ),
        Curve::ThreeMoist => ((23, 10), (92, 100), READ),
        Curve::OneSteam => ((1, 1), (95, 100), RECALLED),
        Curve::ThreeSteam => ((7, 10), (98, 100), RECALLED),
    };
    let days = t.named("t").bare("day");
    let below = plain(a.0, a.1, "a", source) + plain(b.0, b.1, "b", source) * days.clone();
    Ok(Worked::new((days / below).formula("F17 age factor", "f")))
}

/// Share of the 28-day strength at an age, by EN 1992-1-1, 3.2: `β = exp(s × (1 − sqrt(28 ÷ t)))`, `t` in days.
///
/// `s` 0.20, 0.25 or 0.38 for rapid, normal and slow cement, `0 < s ≤ 1`; `t > 0`. A planning aid, never a strength.
/// Source: `en-1992-age`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::age::age_beta};
/// let b = age_beta(&Worked::read("7 days").unwrap(), &Worked::read("0.25").unwrap()).unwrap();
/// assert_eq!(format!("{:.4}", b.value().si.to_f64()), "0.7788");
/// ```
pub fn age_beta(t: &Worked<Duration>, s: &Worked<Plain>) -> Answer<Plain> {
    above_zero("F17 age beta", "t", t)?;
    above_zero("F17 age beta", "s", s)?;
    if s.value().si.to_f64() > 1.0 {
        return Err(refuse("F17 age beta", "s", s, "0.20, 0.25 or 0.38 by the class of the cement"));
    }
    let root = (Node::given(28, 1) / t.named("t").bare("day")).sqrt();
    Ok(Worked::new((s.named("s") * (Node::given(1, 1) - root)).exp().formula("F17 age beta", "β")))
}

/// Share of the fully matured strength, by Plowman: `A + B × log10(M ÷ 1000)`, `M` in °C·h from a datum near −11 °C; `A`, `B`
/// in per cent by the class of the concrete: 10, 68 under 17.5 MPa; 21, 61 to 35; 32, 54 to 52.5; 42, 46.5 to 70.
///
/// `M > 0`, and a result of 0 to 100 %: outside it the line was never drawn. Recalled. A planning aid, never a
/// strength. Source: `plowman`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::{age::matured_share, maturity::{Step, maturity}}};
/// let steps = [Step { time: Worked::read("360 h").unwrap(), temperature: Worked::read("5 °C").unwrap() }];
/// let m = maturity(&steps, &Worked::read("-11 °C").unwrap()).unwrap();
/// let share = matured_share(&m, &Worked::read("21").unwrap(), &Worked::read("61").unwrap()).unwrap();
/// assert_eq!(format!("{:.2}", share.in_unit("%")), "67.39");
/// ```
pub fn matured_share(m: &Worked<Maturity>, a: &Worked<Plain>, b: &Worked<Plain>) -> Answer<Share> {
    const KEY: &str = "F17 matured share";
    above_zero(KEY, "M", m)?;
    above_zero(KEY, "B", b)?;
    let log = (m.named("M").bare("°C·h") / Node::given(1000, 1)).log10();
    let share = (a.named("A") + b.named("B") * log).dressed("%");
    if !(0.0..=1.0).contains(&share.value().si.to_f64()) {
        return Err(refuse(KEY, "M", m, "a maturity that gives 0 % to 100 %: between freshly set and fully matured"));
    }
    Ok(Worked::new(share.formula(KEY, "share")))
}

/// One row of a table of water-cement ratios: 28-day strength, ratio. Falling strengths, rising ratios.
#[derive(Debug)]
pub struct RatioTable {
    /// Unit of the strengths.
    unit: &'static str,
    /// Strength, ratio in hundredths.
    rows: &'static [(i64, i64)],
    /// Who says so.
    source: &'static str,
}

/// Table of ACI 211.1, psi, without entrained air.
pub const ACI_PLAIN: RatioTable = RatioTable {
    unit: "psi",
    rows: &[(6000, 41), (5000, 48), (4000, 57), (3000, 68), (2000, 82)],
    source: "ACI 211.1-91, table 6.3.4(a), no entrained air",
};
/// Table of ACI 211.1, psi, with entrained air; it gives nothing at 6000 psi.
pub const ACI_AIR: RatioTable = RatioTable {
    unit: "psi",
    rows: &[(5000, 40), (4000, 48), (3000, 59), (2000, 74)],
    source: "ACI 211.1-91, table 6.3.4(a), entrained air",
};
/// Metric table, without entrained air. Its rows of 25 and 20 MPa are recalled, not re-read.
pub const METRIC_PLAIN: RatioTable = RatioTable {
    unit: "MPa",
    rows: &[(45, 38), (40, 42), (35, 47), (30, 54), (25, 61), (20, 69), (15, 79)],
    source: "a handbook's metric table 9-3, no entrained air",
};
/// Metric table, with entrained air; 25 and 20 MPa recalled, not re-read. Its 0.34 at 40 MPa is not in ACI 211.1, which leaves it blank.
pub const METRIC_AIR: RatioTable = RatioTable {
    unit: "MPa",
    rows: &[(45, 30), (40, 34), (35, 39), (30, 45), (25, 52), (20, 60), (15, 70)],
    source: "a handbook's metric table 9-3, entrained air",
};

impl RatioTable {
    fn node(&self, which: &'static str, number: Num) -> Node {
        let unit = if which.starts_with('f') { find_expr(self.unit) } else { None };
        let value = unit.map_or_else(|| Quantity::plain(number.clone()), |u| Quantity::of(&number, u));
        Node::constant(value, unit, which, self.source)
    }

    fn strength(&self, symbol: &'static str, row: (i64, i64)) -> Node {
        self.node(symbol, Num::int(row.0))
    }

    fn ratio(&self, symbol: &'static str, row: (i64, i64)) -> Node {
        self.node(symbol, Num::frac(row.1, 100))
    }

    /// The two rows around a value that `beyond` orders; rows stand in falling strength and rising ratio.
    fn around(&self, within: impl Fn((i64, i64), (i64, i64)) -> bool) -> Option<((i64, i64), (i64, i64))> {
        self.rows.windows(2).find_map(|pair| match pair {
            [a, b] if within(*a, *b) => Some((*a, *b)),
            _ => None,
        })
    }
}

/// Strength that a table gives a water-cement ratio, on straight lines between its rows:
/// `f = f_a + (f_b − f_a) × (w − w_a) ÷ (w_b − w_a)`.
///
/// Within the table only. A general fact of concrete: mud with polymer is not in it, and it is never printed on a
/// card. Source: `ratio-table`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::age::{ACI_PLAIN, strength_by_ratio}};
/// assert_eq!(strength_by_ratio(&Worked::read("0.60").unwrap(), &ACI_PLAIN).unwrap().in_unit("psi").round(), 3727.0);
/// ```
pub fn strength_by_ratio(w: &Worked<Plain>, table: &RatioTable) -> Answer<Strength> {
    const KEY: &str = "F9 strength by ratio";
    let at = w.value();
    let rises = |a: (i64, i64), b: (i64, i64)| at.si.compare(&Num::frac(a.1, 100)).is_ge() && at.si.compare(&Num::frac(b.1, 100)).is_le();
    let Some((a, b)) = table.around(rises) else {
        return Err(refuse(KEY, "w", w, ends(table, |r| Num::frac(r.1, 100).plain())));
    };
    let (f_a, w_a) = (table.strength("f_a", a), table.ratio("w_a", a));
    let run = (w.named("w") - w_a.clone()) / (table.ratio("w_b", b) - w_a);
    Ok(Worked::new((f_a.clone() + (table.strength("f_b", b) - f_a) * run).written_in(table.unit).formula(KEY, "f")))
}

/// Water-cement ratio that a table gives a strength, on straight lines between its rows:
/// `w = w_a + (w_b − w_a) × (f − f_a) ÷ (f_b − f_a)`.
///
/// As [`strength_by_ratio`]. Source: `ratio-table`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::age::{METRIC_PLAIN, ratio_by_strength}};
/// assert_eq!(ratio_by_strength(&Worked::read("30 MPa").unwrap(), &METRIC_PLAIN).unwrap().value().si.to_f64(), 0.54);
/// ```
pub fn ratio_by_strength(f: &Worked<Strength>, table: &RatioTable) -> Answer<Plain> {
    const KEY: &str = "F9 ratio by strength";
    let si = |row: (i64, i64)| table.strength("f", row).value().si.clone();
    let falls = |a, b| f.value().si.compare(&si(a)).is_le() && f.value().si.compare(&si(b)).is_ge();
    let Some((a, b)) = table.around(falls) else {
        return Err(refuse(KEY, "f", f, ends(table, |r| format!("{} {}", r.0, table.unit))));
    };
    let (w_a, f_a) = (table.ratio("w_a", a), table.strength("f_a", a));
    let run = (f.named("f") - f_a.clone()) / (table.strength("f_b", b) - f_a);
    Ok(Worked::new((w_a.clone() + (table.ratio("w_b", b) - w_a) * run).formula(KEY, "w")))
}

fn ends(table: &RatioTable, shown: impl Fn((i64, i64)) -> String) -> String {
    let (first, last) = (table.rows.first().copied().unwrap_or_default(), table.rows.last().copied().unwrap_or_default());
    format!("between {} and {} ({})", shown(first), shown(last), table.source)
}

/// Strength by Abrams' law as a student's text prints it: `f = A ÷ B^w` MPa; at 28 days 96.55 and 8.2, at 7 days 63.45 and 14.
///
/// `0 < w ≤ 2`, water to cement by mass. A general fact of plain concrete, never printed on a card. Source: `abrams`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::age::abrams};
/// let w = Worked::read("0.5").unwrap();
/// assert_eq!(format!("{:.2}", abrams(&w, true).unwrap().in_unit("MPa")), "33.72");
/// assert_eq!(format!("{:.2}", abrams(&w, false).unwrap().in_unit("MPa")), "16.96");
/// ```
pub fn abrams(w: &Worked<Plain>, at_28_days: bool) -> Answer<Strength> {
    const TEXT: &str = "a secondary page on Abrams' constants";
    above_zero("F9 abrams", "w", w)?;
    if w.value().si.to_f64() > 2.0 {
        return Err(refuse("F9 abrams", "w", w, "at most 2, water to cement by mass, such as `0.5`"));
    }
    let (a, b) = if at_28_days {
        (plain(9655, 100, "A", TEXT), plain(82, 10, "B", TEXT))
    } else {
        (plain(6345, 100, "A", TEXT), plain(14, 1, "B", TEXT))
    };
    Ok(Worked::new((a / b.pow(w.named("w"))).dressed("MPa").formula("F9 abrams", "f")))
}

/// Cement for a mix water at a water-cement ratio: `m_c = m_w ÷ w`, all by mass.
///
/// `m_w ≥ 0`, `w > 0`. Source: `ratio-table`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::age::cement_for_water};
/// let m = cement_for_water(&Worked::read("181 kg").unwrap(), &Worked::read("0.62").unwrap()).unwrap();
/// assert_eq!(m.in_unit("kg").round(), 292.0);
/// ```
pub fn cement_for_water(m_w: &Worked<Mass>, w: &Worked<Plain>) -> Answer<Mass> {
    zero_or_more("F9 cement for water", "m_w", m_w)?;
    above_zero("F9 cement for water", "w", w)?;
    Ok(Worked::new((m_w.named("m_w") / w.named("w")).formula("F9 cement for water", "m_c")))
}

#[cfg(test)]
mod tests {
    use super::super::testing::{holds, line, q};
    use super::*;

    // ACI 209R, table of ratios (recalled), and EN 1992-1-1, 3.2.
    #[test]
    fn ages() {
        let f = age_factor(&q("28 days"), Curve::OneMoist).unwrap();
        holds(&f, "", "1.0072");
        assert_eq!(line(&f), ("f = t ÷ (a + b × t)".into(), "28 ÷ (4 + 0.85 × 28) = 140/139 ".into()));
        assert_eq!(age_factor(&q("0 days"), Curve::OneSteam).unwrap_err().symbol, "t");
        holds(&age_beta(&q("672 h"), &q("0.38")).unwrap(), "", "1.0000");
        assert!(age_beta(&q("7 days"), &q("25")).unwrap_err().wants.contains("0.25"));
    }

    #[test]
    fn a_young_or_overripe_maturity_is_refused() {
        let m = |time: &str| {
            let steps = [super::super::maturity::Step { time: q(time), temperature: q("20 °C") }];
            super::super::maturity::maturity(&steps, &q("-11 °C")).unwrap()
        };
        assert!(matured_share(&m("1 h"), &q("32"), &q("54")).is_err());
        assert!(matured_share(&m("365 days"), &q("32"), &q("54")).is_err());
        holds(&matured_share(&m("7 days"), &q("32"), &q("54")).unwrap(), "%", "70.70");
    }

    #[test]
    fn tables_give_their_rows_and_nothing_beyond() {
        for table in [ACI_PLAIN, ACI_AIR, METRIC_PLAIN, METRIC_AIR] {
            for (f, w) in table.rows {
                let w: Worked<Plain> = q(&format!("{}", *w as f64 / 100.0));
                holds(&strength_by_ratio(&w, &table).unwrap(), table.unit, &f.to_string());
                assert_eq!(ratio_by_strength(&q(&format!("{f} {}", table.unit)), &table).unwrap().value().si, w.value().si);
            }
        }
        let refused = strength_by_ratio(&q("0.75"), &ACI_AIR).unwrap_err();
        assert!(refused.wants.starts_with("between 0.4 and 0.74"), "{}", refused.wants);
        assert!(ratio_by_strength(&q("6000 psi"), &ACI_AIR).unwrap_err().wants.starts_with("between 5000 psi and 2000 psi"));
        assert_eq!(line(&strength_by_ratio(&q("0.5"), &ACI_PLAIN).unwrap()).0, "f = f_a + (f_b − f_a) × (w − w_a) ÷ (w_b − w_a)");
        assert!(abrams(&q("2.1"), true).is_err());
        assert!(cement_for_water(&q("10 lb"), &q("0")).is_err());
    }
}
