//! F19: control joints: the fewest panels that keep to the limits.

use crate::quantity::expr::{Area, Length, Node, Plain, Worked};
use crate::quantity::num::Direction;

use super::limits::{CURVED_AREA, PANEL_AREA, PANEL_RATIO, PANEL_SIDE};
use super::{Answer, OutOfRange, above_zero, like, refuse, zero_or_more};

/// What a panel between control joints may be.
#[derive(Clone, Debug)]
pub struct PanelLimits {
    /// Longest side.
    pub side: Worked<Length>,
    /// Largest area.
    pub area: Worked<Area>,
    /// Longest side to shorter side.
    pub ratio: Worked<Plain>,
}

/// The published limits of a panel: side 18 ft, ratio 2.5, area 144 ft2 on walls and 100 ft2 on soffits and curved work.
///
/// The source gives the 100 ft2 alone: side and ratio of walls are kept there. Source: `published-limits`.
/// ```
/// use hodbook::trade::joints::panel_limits;
/// assert_eq!(panel_limits(true).unwrap().area.in_unit("ft2"), 100.0);
/// ```
pub fn panel_limits(curved_or_overhead: bool) -> Result<PanelLimits, OutOfRange> {
    let area = if curved_or_overhead { &CURVED_AREA } else { &PANEL_AREA };
    Ok(PanelLimits { side: PANEL_SIDE.constant("S")?, area: area.constant("A_max")?, ratio: PANEL_RATIO.constant("R")? })
}

/// A face cut into panels of one size.
#[derive(Clone, Debug)]
pub struct Panels {
    /// Panels along the length.
    pub columns: Worked<Plain>,
    /// Panels up the height.
    pub rows: Worked<Plain>,
    /// Length of a panel.
    pub length: Worked<Length>,
    /// Height of a panel.
    pub height: Worked<Length>,
    /// Area of a panel.
    pub area: Worked<Area>,
    /// Longer side to shorter side.
    pub ratio: Worked<Plain>,
    /// Upright joints: one less than the columns.
    pub upright: Worked<Plain>,
    /// Level joints: one less than the rows.
    pub level: Worked<Plain>,
    /// Length of all joints.
    pub run: Worked<Length>,
    /// All panels.
    pub count: Worked<Plain>,
    /// All joints, upright and level.
    pub joints: Worked<Plain>,
}

// A wall that needs more rows than this is a typing error.
const MOST_ROWS: i64 = 200;

/// Fewest panels: `m = up(H ÷ S, 1)` rows of height `h = H ÷ m`, and in each
/// `n = up(max(max(L ÷ S, L × h ÷ A_max), L ÷ (R × h)), 1)` columns; another row where a panel would be too narrow for its
/// height. `L` and `H` the face's length and height, `S`, `A_max` and `R` the limits' side, area and ratio.
///
/// `L`, `H` and the limits above 0, `R ≥ 1`. Takes the face as its bounding rectangle: openings and gables only make panels
/// smaller. Joints belong where the picture has a line; that is for the drawing. Source: `panel-count`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::joints::{panel_limits, panels}};
/// let read = |t| Worked::read(t).unwrap();
/// let p = panels(&read("48 ft"), &read("11 ft"), &panel_limits(false).unwrap()).unwrap();
/// assert_eq!((p.upright.value().si.to_f64(), p.length.in_unit("ft")), (3.0, 12.0));
/// ```
pub fn panels(l: &Worked<Length>, h: &Worked<Length>, limits: &PanelLimits) -> Result<Panels, OutOfRange> {
    const KEY: &str = "F19 panels";
    above_zero(KEY, "L", l)?;
    above_zero(KEY, "H", h)?;
    above_zero(KEY, "S", &limits.side)?;
    above_zero(KEY, "A_max", &limits.area)?;
    if limits.ratio.value().si.to_f64() < 1.0 {
        return Err(refuse(KEY, "R", &limits.ratio, "1 or more, such as `2.5`"));
    }
    for more in 0..MOST_ROWS {
        let found = with_rows(l, h, limits, more);
        let narrow = found.ratio.value().si.to_f64() > limits.ratio.value().si.to_f64() * (1.0 + 1e-9);
        if !narrow {
            return Ok(found);
        }
    }
    Err(refuse(KEY, "H", h, "a height that panels within these limits can fill, such as `10 ft`"))
}

fn with_rows(l: &Worked<Length>, h: &Worked<Length>, limits: &PanelLimits, more: i64) -> Panels {
    let (side, area, ratio) = (|| limits.side.named("S"), limits.area.named("A_max"), limits.ratio.named("R"));
    let least = (h.named("H") / side()).rounded(Direction::Up, 1, 1);
    let rows = if more == 0 { least } else { least + Node::given(more, 1) };
    let rows: Worked<Plain> = Worked::new(rows.formula("F19 rows", "m"));
    let height = like(h.named("H") / rows.named("m"), h.node());
    let height: Worked<Length> = Worked::new(height.formula("F19 panel height", "h"));
    let by_area = l.named("L") * height.named("h") / area;
    let by_ratio = l.named("L") / like(ratio * height.named("h"), h.node());
    let columns = (l.named("L") / side()).max(by_area).max(by_ratio).rounded(Direction::Up, 1, 1);
    let columns: Worked<Plain> = Worked::new(columns.formula("F19 panels", "n"));
    let length = like(l.named("L") / columns.named("n"), l.node());
    let length: Worked<Length> = Worked::new(length.formula("F19 panel length", "l"));
    let sides = || (length.named("l"), height.named("h"));
    let long = sides().0.max(sides().1) / sides().0.min(sides().1);
    let one_less = |n: Node| n - Node::given(1, 1);
    let upright: Worked<Plain> = Worked::new(one_less(columns.named("n")).formula("F19 upright joints", "j"));
    let level: Worked<Plain> = Worked::new(one_less(rows.named("m")).formula("F19 level joints", "k"));
    let run = like(upright.named("j") * h.named("H"), h.node()) + like(level.named("k") * l.named("L"), l.node());
    Panels {
        area: Worked::new((sides().0 * sides().1).formula("F19 panel area", "A")),
        ratio: Worked::new(long.formula("F19 panel ratio", "r")),
        run: Worked::new(run.formula("F19 joint run", "run")),
        count: Worked::new((columns.named("n") * rows.named("m")).formula("F19 panel count", "N")),
        joints: Worked::new((upright.named("j") + level.named("k")).formula("F19 joint count", "J")),
        columns,
        rows,
        length,
        height,
        upright,
        level,
    }
}

/// Height of the rectangle around a face with a head on it: `H = h + r`; `h` the height at eave or spring line, `r` the
/// rise above it.
///
/// `h ≥ 0`, `r > 0`. Source: `panel-count`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::joints::face_height};
/// let h = face_height(&Worked::read("9 ft").unwrap(), &Worked::read("5 ft 6 in").unwrap()).unwrap();
/// assert_eq!(h.in_unit("ft"), 14.5);
/// ```
pub fn face_height(h: &Worked<Length>, r: &Worked<Length>) -> Answer<Length> {
    zero_or_more("F19 face height", "h", h)?;
    above_zero("F19 face height", "r", r)?;
    Ok(Worked::new((h.named("h") + r.named("r")).formula("F19 face height", "H")))
}

/// Width of the rectangle around a trapezoid: `L = max(w, s + t) − min(s, 0)`; `w` foot, `t` head, `s` from the foot's left
/// end to under the head's; with the head in the middle `L = max(w, t)`.
///
/// `w` and `t` above 0; `s` below 0 where the head stands out to the left. Source: `panel-count`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::joints::face_width};
/// let read = |t| Worked::read(t).unwrap();
/// assert_eq!(face_width(&read("10 ft"), &read("6 ft"), Some(&read("8 ft"))).unwrap().in_unit("ft"), 14.0);
/// ```
pub fn face_width(w: &Worked<Length>, t: &Worked<Length>, s: Option<&Worked<Length>>) -> Answer<Length> {
    above_zero("F19 face width", "w", w)?;
    above_zero("F19 face width", "t", t)?;
    let width = match s {
        None => w.named("w").max(t.named("t")),
        Some(s) => {
            let level = Node::given(0, 1).dressed(&s.node().unit().map_or_else(|| "ft".to_owned(), |u| u.symbol()));
            let left = s.named("s").min(level);
            w.named("w").max(s.named("s") + t.named("t")) - left
        }
    };
    Ok(Worked::new(width.formula("F19 face width", "L")))
}

#[cfg(test)]
mod tests {
    use super::super::testing::{holds, line, q};
    use super::*;

    fn cut(l: &str, h: &str, curved: bool) -> Panels {
        panels(&q(l), &q(h), &panel_limits(curved).unwrap()).unwrap()
    }

    // Worked example of the design, common practice over the published limits.
    #[test]
    fn the_long_wall_before_and_after_its_change() {
        let p = cut("48 ft", "11 ft", false);
        holds(&p.columns, "", "4");
        holds(&p.length, "ft", "12");
        holds(&p.area, "ft2", "132");
        holds(&p.ratio, "", "1.09");
        holds(&p.upright, "", "3");
        holds(&p.run, "ft", "33");
        holds(&p.count, "", "4");
        holds(&p.joints, "", "3");
        assert_eq!(line(&p.columns).0, "n = up(max(max(L ÷ S, L × h ÷ A_max), L ÷ (R × h)), 1)");
        assert_eq!(line(&p.columns).1, "up(max(max(48 ÷ 18, 48 × 11 ÷ 144), 48 ÷ (2.5 × 11)), 1) = 4 ");
        let after = cut("52 ft", "11 ft", false);
        holds(&after.length, "ft", "13");
        holds(&after.area, "ft2", "143");
        holds(&after.upright, "", "3");
    }

    #[test]
    fn both_directions_when_the_height_needs_it() {
        let tall = cut("30 ft", "20 ft", false);
        assert_eq!((tall.rows.value().si.to_f64(), tall.columns.value().si.to_f64()), (2.0, 3.0));
        holds(&tall.level, "", "1");
        // Two upright joints of 20 ft and a level one of 30 ft.
        holds(&tall.run, "ft", "70");
        holds(&tall.count, "", "6");
        holds(&tall.joints, "", "3");
        // A strip 3 ft wide and 12 ft high is 4 : 1 until it is halved.
        let strip = cut("3 ft", "12 ft", false);
        holds(&strip.rows, "", "2");
        holds(&strip.ratio, "", "2.00");
        assert_eq!(line(&strip.rows).0, "m = up(H ÷ S, 1) + 1");
        // A long frieze is cut by the ratio, not the side.
        holds(&cut("36 ft", "2 ft", false).length, "ft", "4.5");
        // Metric, curved: 9.2903 m2 and no more.
        let curved = cut("9.6 m", "3.2 m", true);
        holds(&curved.length, "m", "2.4");
    }

    #[test]
    fn a_leaning_face_is_as_wide_as_it_reaches() {
        let width = |w: &str, t: &str, s: Option<&str>| face_width(&q(w), &q(t), s.map(q).as_ref());
        for (w, t, s, reaches) in [
            ("10 ft", "6 ft", None, "10"),
            ("6 ft", "10 ft", None, "10"),
            ("10 ft", "6 ft", Some("2 ft"), "10"),
            ("10 ft", "6 ft", Some("8 ft"), "14"),
            ("10 ft", "6 ft", Some("-3 ft"), "13"),
        ] {
            holds(&width(w, t, s).unwrap(), "ft", reaches);
        }
        assert_eq!(line(&width("10 ft", "6 ft", Some("8 ft")).unwrap()).0, "L = max(w, s + t) − min(s, 0)");
        assert_eq!(width("0 ft", "6 ft", None).unwrap_err().wants, "more than 0, such as `1 ft`");
        holds(&face_height(&q("9 ft"), &q("5 ft 6 in")).unwrap(), "ft", "14.5");
        assert_eq!(face_height(&q("9 ft"), &q("0 in")).unwrap_err().symbol, "r");
    }

    #[test]
    fn limits_that_nothing_meets_are_refused() {
        let mut limits = panel_limits(false).unwrap();
        limits.ratio = q("0.5");
        assert_eq!(panels(&q("48 ft"), &q("11 ft"), &limits).unwrap_err().wants, "1 or more, such as `2.5`");
        limits.ratio = q("1");
        assert!(panels(&q("1 ft"), &q("1.0001 ft"), &limits).err().unwrap().wants.contains("within these limits"));
        assert!(panels(&q("0 ft"), &q("11 ft"), &limits).is_err());
    }
}
