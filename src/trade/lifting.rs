//! F26: what one person should lift: the revised lifting equation of a national institute of occupational safety.
//!
//! Multipliers are kept unrounded; [`two_decimals`] gives them as the published forms carry them.

use crate::quantity::expr::{Angle, Duration, Frequency, Length, Mass, Node, Plain, Sort, Worked};
use crate::quantity::num::{Direction, Num};
use crate::quantity::units::find_expr;
use crate::quantity::value::Quantity;

use super::lifting_tables::{Grip, System, coupling, frequency};
use super::{Answer, OutOfRange, above_zero, like, refuse, zero_or_more};

/// Where the hands are at one end of a lift.
#[derive(Clone, Debug)]
pub struct Place {
    /// From the ankles' middle out to the hands.
    pub reach: Worked<Length>,
    /// Hands above the floor.
    pub height: Worked<Length>,
    /// How far the body is twisted.
    pub twist: Worked<Angle>,
}

/// How a lift is done.
#[derive(Clone, Debug)]
pub struct Task {
    /// Which form of the equation: they differ by 0.6 %.
    pub system: System,
    /// How far the hands go up or down.
    pub travel: Worked<Length>,
    /// Lifts a minute.
    pub rate: Worked<Frequency>,
    /// How long the lifting goes on.
    pub lasts: Worked<Duration>,
    /// How the hands hold it.
    pub grip: Grip,
}

/// The six multipliers of one end of a lift.
#[derive(Clone, Debug)]
pub struct Multipliers {
    /// Of the reach, HM.
    pub reach: Worked<Plain>,
    /// Of the height, VM.
    pub height: Worked<Plain>,
    /// Of the travel, DM.
    pub travel: Worked<Plain>,
    /// Of the twist, AM.
    pub twist: Worked<Plain>,
    /// Of the rate, FM.
    pub rate: Worked<Plain>,
    /// Of the grip, CM.
    pub grip: Worked<Plain>,
}

fn within<S: Sort>(
    formula: &'static str,
    symbol: &'static str,
    x: &Worked<S>,
    (unit, most): (&str, f64),
    what: &str,
) -> Result<(), OutOfRange> {
    zero_or_more(formula, symbol, x)?;
    if x.in_unit(unit) > most * (1.0 + 1e-12) {
        return Err(refuse(formula, symbol, x, format!("at most {most} {unit} ({what})")));
    }
    Ok(())
}

/// The multipliers of one end of a lift: `HM = 10 ÷ max(H, 10)`, `VM = 1 − 0.0075 × abs(V − 30)`,
/// `DM = 0.82 + 1.8 ÷ max(D, 10)`, `AM = 1 − 0.0032 × A`, with `H`, `V`, `D` in inches, `A` in degrees; in centimetres
/// `25 ÷ max(H, 25)`, `1 − 0.003 × abs(V − 75)`, `0.82 + 4.5 ÷ max(D, 25)`. FM and CM come from the tables.
///
/// `0 ≤ H ≤ 25 in` (63 cm), `0 ≤ V ≤ 70 in` (175 cm), `0 ≤ D ≤ 70 in` (175 cm), `0 ≤ A ≤ 135°`, a rate and time that the
/// frequency table allows at this height: beyond them the equation advises no lift at all, so it is refused. Two hands, firm
/// floor, no jerking; the bounds are recalled, not re-read. Source: `lifting-equation`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::{lifting::{Place, Task, multipliers}, lifting_tables::{Grip, System}}};
/// let read = |t| Worked::read(t).unwrap();
/// let place = Place { reach: read("15 in"), height: read("20 in"), twist: Worked::read("0°").unwrap() };
/// let task = Task {
///     system: System::Us,
///     travel: read("20 in"),
///     rate: Worked::read("1 lift/min").unwrap(),
///     lasts: Worked::read("2 h").unwrap(),
///     grip: Grip::Fair,
/// };
/// let m = multipliers(&place, &task).unwrap();
/// assert_eq!(format!("{:.3} {:.3}", m.reach.value().si.to_f64(), m.height.value().si.to_f64()), "0.667 0.925");
/// ```
pub fn multipliers(place: &Place, task: &Task) -> Result<Multipliers, OutOfRange> {
    let (unit, most_reach, most_height, least, knuckle) = match task.system {
        System::Us => ("in", 25.0, 70.0, 10, 30),
        System::Metric => ("cm", 63.0, 175.0, 25, 75),
    };
    within("F26 reach", "H", &place.reach, (unit, most_reach), "farther out the equation advises no lift")?;
    within("F26 height", "V", &place.height, (unit, most_height), "higher up the equation advises no lift")?;
    within("F26 travel", "D", &task.travel, (unit, most_height), "the whole range of heights")?;
    within("F26 twist", "A", &place.twist, ("°", 135.0), "more twist and the equation advises no lift")?;
    let (slope, pull) = match task.system {
        System::Us => (Node::given(3, 400), Node::given(9, 5)),
        System::Metric => (Node::given(3, 1000), Node::given(9, 2)),
    };
    let whole = |n: i64| Node::given(n, 1);
    let plain = |node: Node, key: &'static str, symbol| Worked::<Plain>::new(node.formula(key, symbol));
    let reach = whole(least) / place.reach.named("H").bare(unit).max(whole(least));
    let height = whole(1) - slope * (place.height.named("V").bare(unit) - whole(knuckle)).abs();
    let travel = Node::given(41, 50) + pull / task.travel.named("D").bare(unit).max(whole(least));
    let twist = whole(1) - Node::given(2, 625) * place.twist.named("A").bare("°");
    let low = place.height.in_unit(unit) < f64::from(i32::try_from(knuckle).unwrap_or_default());
    Ok(Multipliers {
        reach: plain(reach, "F26 reach", "HM"),
        height: plain(height, "F26 height", "VM"),
        travel: plain(travel, "F26 travel", "DM"),
        twist: plain(twist, "F26 twist", "AM"),
        rate: frequency(&task.rate, &task.lasts, low)?,
        grip: coupling(task.grip, low),
    })
}

/// The multipliers as the published forms carry them: each to the nearest hundredth.
///
/// Only to follow a published example; what is acted on stays unrounded. Source: `lifting-equation`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::lifting::{Multipliers, two_decimals}};
/// let m = || Worked::read("0.8875").unwrap();
/// let rounded = two_decimals(&Multipliers { reach: m(), height: m(), travel: m(), twist: m(), rate: m(), grip: m() });
/// assert_eq!(rounded.height.value().si.to_f64(), 0.89);
/// ```
pub fn two_decimals(m: &Multipliers) -> Multipliers {
    let near =
        |x: &Worked<Plain>, symbol| Worked::new(x.named(symbol).rounded(Direction::Nearest, 1, 100).formula("F26 hundredths", symbol));
    Multipliers {
        reach: near(&m.reach, "HM"),
        height: near(&m.height, "VM"),
        travel: near(&m.travel, "DM"),
        twist: near(&m.twist, "AM"),
        rate: near(&m.rate, "FM"),
        grip: near(&m.grip, "CM"),
    }
}

/// How far the hands travel: `D = abs(V2 − V1)`; both heights 0 or more.
///
/// Source: `lifting-equation`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::lifting::travel};
/// assert_eq!(travel(&Worked::read("20 in").unwrap(), &Worked::read("40 in").unwrap()).unwrap().in_unit("in"), 20.0);
/// ```
pub fn travel(from: &Worked<Length>, to: &Worked<Length>) -> Answer<Length> {
    zero_or_more("F26 way", "V1", from)?;
    zero_or_more("F26 way", "V2", to)?;
    Ok(Worked::new((to.named("V2") - from.named("V1")).abs().formula("F26 way", "D")))
}

fn load_constant(system: System) -> Node {
    let (n, symbol) = match system {
        System::Us => (51, "lb"),
        System::Metric => (23, "kg"),
    };
    let unit = find_expr(symbol);
    let value = unit.map_or_else(|| Quantity::plain(Num::int(n)), |u| Quantity::of(&Num::int(n), u));
    Node::constant(value, unit, "LC", "revised lifting equation, 1991: 51 lb or 23 kg")
}

/// Weight that most healthy workers can lift: `RWL = LC × HM × VM × DM × AM × FM × CM`; `LC` 51 lb or 23 kg.
///
/// Multipliers from 0 to 1. Not a limit of what one strong person can do: a limit for doing it all day. Source: `lifting-equation`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::{lifting::{Multipliers, advised}, lifting_tables::System}};
/// let one = || Worked::read("1").unwrap();
/// let m = Multipliers { reach: Worked::read("0.5").unwrap(), height: one(), travel: one(), twist: one(), rate: one(), grip: one() };
/// assert_eq!(advised(System::Us, &m).unwrap().in_unit("lb"), 25.5);
/// ```
pub fn advised(system: System, m: &Multipliers) -> Answer<Mass> {
    let lc = load_constant(system);
    let mut product = lc.clone();
    let all = [("HM", &m.reach), ("VM", &m.height), ("DM", &m.travel), ("AM", &m.twist), ("FM", &m.rate), ("CM", &m.grip)];
    for (symbol, x) in all {
        zero_or_more("F26 advised", symbol, x)?;
        if x.value().si.to_f64() > 1.0 {
            return Err(refuse("F26 advised", symbol, x, "0 to 1, such as `0.9`"));
        }
        product = like(product * x.named(symbol), &lc);
    }
    Ok(Worked::new(product.formula("F26 advised", "RWL")))
}

/// Lifting index: `LI = load ÷ RWL`; above 1 some workers are at risk, above 3 many.
///
/// `load ≥ 0`, `RWL > 0`. Source: `lifting-equation`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::lifting::index};
/// let i = index(&Worked::read("80 lb").unwrap(), &Worked::read("23.9 lb").unwrap()).unwrap();
/// assert_eq!(format!("{:.1}", i.value().si.to_f64()), "3.3");
/// ```
pub fn index(load: &Worked<Mass>, advised: &Worked<Mass>) -> Answer<Plain> {
    zero_or_more("F26 index", "load", load)?;
    above_zero("F26 index", "RWL", advised)?;
    Ok(Worked::new((load.named("load") / advised.named("RWL")).formula("F26 index", "LI")))
}

/// A lift at both its ends.
#[derive(Clone, Debug)]
pub struct Lift {
    /// Advised weight where it is picked up.
    pub origin: Worked<Mass>,
    /// Advised weight where it is set down, if it must be set down with care.
    pub destination: Option<Worked<Mass>>,
    /// The smaller of the two.
    pub advised: Worked<Mass>,
    /// Index of the load against it.
    pub index: Worked<Plain>,
}

/// A lift by the worse of its two ends: `RWL = min(RWL_origin, RWL_destination)`, `LI = load ÷ RWL`; `destination` where the load
/// must be placed, as a bag over a mixer's lip, or none where it is let go.
///
/// Each end within the range of [`multipliers`]. The travel is the caller's: by rule the difference of the two heights.
/// Source: `lifting-equation`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::{lifting::{Place, Task, lift}, lifting_tables::{Grip, System}}};
/// let read = |t| Worked::read(t).unwrap();
/// let place = |h, v| Place { reach: read(h), height: read(v), twist: Worked::read("0°").unwrap() };
/// let task = Task {
///     system: System::Us,
///     travel: read("20 in"),
///     rate: Worked::read("1 lift/min").unwrap(),
///     lasts: Worked::read("2 h").unwrap(),
///     grip: Grip::Fair,
/// };
/// let bag = lift(&Worked::read("80 lb").unwrap(), &place("15 in", "20 in"), Some(&place("20 in", "40 in")), &task).unwrap();
/// assert_eq!(format!("{:.1} {:.1}", bag.origin.in_unit("lb"), bag.advised.in_unit("lb")), "23.9 18.9");
/// ```
pub fn lift(load: &Worked<Mass>, origin: &Place, destination: Option<&Place>, task: &Task) -> Result<Lift, OutOfRange> {
    let end = |place: &Place| advised(task.system, &multipliers(place, task)?);
    let origin = end(origin)?;
    let destination = destination.map(end).transpose()?;
    let worse = match &destination {
        Some(there) => origin.named("RWL_origin").min(there.named("RWL_destination")),
        None => origin.named("RWL_origin"),
    };
    let advised: Worked<Mass> = Worked::new(worse.formula("F26 worse end", "RWL"));
    let index = index(load, &advised)?;
    Ok(Lift { origin, destination, advised, index })
}

#[cfg(test)]
mod tests {
    use super::super::testing::{holds, line, q};
    use super::*;

    fn at(reach: &str, height: &str) -> Place {
        Place { reach: q(reach), height: q(height), twist: q("0°") }
    }

    fn bag(system: System) -> Task {
        Task { system, travel: q("20 in"), rate: q("1 lift/min"), lasts: q("2 h"), grip: Grip::Fair }
    }

    // Worked example of the design; frequency table and bounds recalled, not re-read.
    #[test]
    fn bags_from_the_pallet() {
        for (load, printed) in [("80 lb", "3.3"), ("40 lb", "1.7"), ("24 lb", "1.0")] {
            let lifted = lift(&q(load), &at("15 in", "20 in"), None, &bag(System::Us)).unwrap();
            holds(&lifted.advised, "lb", "23.9");
            holds(&lifted.index, "", printed);
        }
        let m = multipliers(&at("15 in", "20 in"), &bag(System::Us)).unwrap();
        for (x, printed) in
            [(&m.reach, "0.667"), (&m.height, "0.925"), (&m.travel, "0.910"), (&m.twist, "1"), (&m.rate, "0.88"), (&m.grip, "0.95")]
        {
            holds(x, "", printed);
        }
        assert_eq!(line(&m.height), ("VM = 1 − 0.0075 × abs(V − 30)".to_owned(), "1 − 0.0075 × abs(20 − 30) = 0.925 ".to_owned()));
        assert_eq!(line(&m.reach).0, "HM = 10 ÷ max(H, 10)");
    }

    // Worked example of the design. It prints 17.9 and 4.5, which keeps the 0.95 of a fair grip below 30 in; the table gives
    // a fair grip 1.00 from 30 in up, and the lip is at 40.
    #[test]
    fn the_lip_of_the_mixer_is_the_worse_end() {
        let over = lift(&q("80 lb"), &at("15 in", "20 in"), Some(&at("20 in", "40 in")), &bag(System::Us)).unwrap();
        holds(&over.advised, "lb", "18.9");
        holds(&over.index, "", "4.2");
        let mut low_grip = multipliers(&at("20 in", "40 in"), &bag(System::Us)).unwrap();
        low_grip.grip = q("0.95");
        let design = advised(System::Us, &low_grip).unwrap();
        holds(&design, "lb", "17.9");
        holds(&index(&q("80 lb"), &design).unwrap(), "", "4.5");
        let easy = lift(&q("80 lb"), &at("15 in", "20 in"), Some(&at("10 in", "30 in")), &bag(System::Us)).unwrap();
        holds(&easy.advised, "lb", "23.9");
    }

    #[test]
    fn metric_differs_by_little() {
        let lifted = lift(&q("25 kg"), &at("38 cm", "51 cm"), None, &Task { travel: q("51 cm"), ..bag(System::Metric) }).unwrap();
        holds(&lifted.advised, "kg", "10.7");
        holds(&lifted.index, "", "2.3");
        // Close in, a short lift, hands at the knuckles: nothing is taken off.
        let best = multipliers(&at("20 cm", "75 cm"), &Task { travel: q("10 cm"), ..bag(System::Metric) }).unwrap();
        for x in [&best.reach, &best.height, &best.travel] {
            holds(x, "", "1.00");
        }
    }

    #[test]
    fn beyond_the_bounds_no_lift_is_advised() {
        let refused = multipliers(&at("26 in", "20 in"), &bag(System::Us)).unwrap_err();
        assert_eq!((refused.symbol, refused.wants.as_str()), ("H", "at most 25 in (farther out the equation advises no lift)"));
        assert!(multipliers(&at("25 in", "70 in"), &bag(System::Us)).is_ok());
        assert_eq!(multipliers(&at("15 in", "71 in"), &bag(System::Us)).unwrap_err().symbol, "V");
        let twisted = Place { twist: q("136°"), ..at("15 in", "20 in") };
        assert!(multipliers(&twisted, &bag(System::Us)).unwrap_err().wants.starts_with("at most 135 °"));
        assert_eq!(multipliers(&at("15 in", "20 in"), &Task { travel: q("71 in"), ..bag(System::Us) }).unwrap_err().symbol, "D");
        assert_eq!(travel(&q("-1 in"), &q("1 in")).unwrap_err().symbol, "V1");
        holds(&travel(&q("40 in"), &q("20 in")).unwrap(), "in", "20");
        let mut m = multipliers(&at("15 in", "20 in"), &bag(System::Us)).unwrap();
        m.rate = q("1.2");
        assert_eq!(advised(System::Us, &m).unwrap_err().wants, "0 to 1, such as `0.9`");
        assert!(index(&q("80 lb"), &q("0 lb")).is_err());
    }
}
