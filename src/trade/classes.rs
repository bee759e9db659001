//! What tables of standards hold a mortar, a cement, a plaster coat or a dry part to: strength classes, air, nominal
//! thickness, relative density. A class is a name on a bag or a sheet; no mud is promised to have it.

use crate::quantity::Quantity;
use crate::quantity::expr::{Length, Node, Plain, Share, Strength, Worked};
use crate::quantity::num::Num;
use crate::quantity::units::find_expr;

use super::parts::Type;
use super::{OutOfRange, refuse};

/// What the cement of a mortar is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Family {
    /// Portland cement and lime.
    CementLime,
    /// Mortar cement.
    MortarCement,
    /// Masonry cement.
    MasonryCement,
}

const C270: &str = "ASTM C270, table 2 (recalled, not re-read)";
const C91: &str = "ASTM C91 (recalled, not re-read)";
const C1329: &str = "ASTM C1329 (recalled, not re-read)";

fn number(n: i64, d: i64, unit: &str, symbol: &'static str, source: &'static str) -> Node {
    let unit = find_expr(unit);
    let value = unit.map_or_else(|| Quantity::plain(Num::frac(n, d)), |u| Quantity::of(&Num::frac(n, d), u));
    Node::constant(value, unit, symbol, source)
}

fn per_cent(n: i64, symbol: &'static str, source: &'static str) -> Worked<Share> {
    Worked::new(number(n, 1, "%", symbol, source))
}

/// Least 28-day strength of a mortar type prepared in the laboratory: M 2500, S 1800, N 750, O 350 psi.
///
/// A class, to compare a sheet's class with; never a promise of a wall. Source: `mortar-classes`.
/// ```
/// use hodbook::trade::{classes::class_strength, parts::Type};
/// assert_eq!(format!("{:.1}", class_strength(Type::S).in_unit("MPa")), "12.4");
/// ```
pub fn class_strength(of: Type) -> Worked<Strength> {
    let psi = match of {
        Type::M => 2500,
        Type::S => 1800,
        Type::N => 750,
        Type::O => 350,
    };
    Worked::new(number(psi, 1, "psi", "f_class", C270))
}

/// Most air of a mortar in the laboratory: cement-lime and mortar cement M, S 12 %, N, O 14 %; masonry cement 18 and 20 %; N and O
/// with reinforcement in the mortar 12, 12 and 18 %.
///
/// Recalled. Source: `mortar-classes`.
/// ```
/// use hodbook::trade::{classes::{Family, most_air}, parts::Type};
/// assert_eq!(most_air(Family::MasonryCement, Type::N, false).in_unit("%").round(), 20.0);
/// ```
pub fn most_air(family: Family, of: Type, reinforced: bool) -> Worked<Share> {
    let weak = matches!(of, Type::N | Type::O) && !reinforced;
    let air = match (family, weak) {
        (Family::MasonryCement, false) => 18,
        (Family::MasonryCement, true) => 20,
        (_, false) => 12,
        (_, true) => 14,
    };
    per_cent(air, "air_max", C270)
}

/// What a laboratory found of a mortar.
#[derive(Clone, Debug)]
pub struct Tested {
    /// 28-day strength.
    pub strength: Worked<Strength>,
    /// Water retention.
    pub retention: Worked<Share>,
    /// Air.
    pub air: Worked<Share>,
}

/// Holds a laboratory's numbers to a mortar type: [`class_strength`] and 75 % retention or more, [`most_air`] or less.
///
/// Recalled. Mud from the site is not held to it. Source: `mortar-classes`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::{classes::{Family, Tested, class_met}, parts::Type}};
/// let found = |psi| Tested { strength: Worked::read(psi).unwrap(), retention: Worked::read("80 %").unwrap(), air: Worked::read("11 %").unwrap() };
/// assert!(class_met(&found("1900 psi"), Family::CementLime, Type::S, false).is_ok());
/// assert!(class_met(&found("1700 psi"), Family::CementLime, Type::S, false).is_err());
/// ```
pub fn class_met(found: &Tested, family: Family, of: Type, reinforced: bool) -> Result<(), OutOfRange> {
    let least = class_strength(of);
    if found.strength.value().si.compare(&least.value().si).is_lt() {
        return Err(refuse(C270, "f", &found.strength, format!("at least {}", super::shown(least.node()))));
    }
    in_range(C270, "retention", &found.retention, 75, 100)?;
    let most = most_air(family, of, reinforced);
    if found.air.value().si.compare(&most.value().si).is_gt() {
        return Err(refuse(C270, "air", &found.air, format!("at most {}", super::shown(most.node()))));
    }
    Ok(())
}

fn in_range(rule: &'static str, symbol: &'static str, x: &Worked<Share>, from: i64, to: i64) -> Result<(), OutOfRange> {
    let (low, high) = (Num::frac(from, 100), Num::frac(to, 100));
    if x.value().si.compare(&low).is_lt() || x.value().si.compare(&high).is_gt() {
        return Err(refuse(rule, symbol, x, format!("{from} % to {to} %")));
    }
    Ok(())
}

/// Holds the laboratory mortar of a bagged cement to its standard: masonry cement 8 to 21 % air (Type N) or 8 to 19 %
/// and 70 % retention or more; mortar cement 8 to 17 % or 8 to 15 %.
///
/// `air` of the standard's own mortar, not of mud. Type O is no bag: refused. Portland and lime have no such limit: always kept.
/// Recalled. Source: `bagged-cement`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::{classes::{Family, cement_met}, parts::Type}};
/// let met = |air| cement_met(Family::MasonryCement, Type::S, &Worked::read(air).unwrap(), &Worked::read("70 %").unwrap());
/// assert!(met("19 %").is_ok() && met("20 %").is_err());
/// ```
pub fn cement_met(family: Family, of: Type, air: &Worked<Share>, retention: &Worked<Share>) -> Result<(), OutOfRange> {
    let (rule, most) = match (family, of) {
        (Family::CementLime, _) => return Ok(()),
        (Family::MasonryCement, Type::N) => (C91, 21),
        (Family::MasonryCement, Type::S | Type::M) => (C91, 19),
        (Family::MortarCement, Type::N) => (C1329, 17),
        (Family::MortarCement, Type::S | Type::M) => (C1329, 15),
        (_, Type::O) => return Err(refuse("bagged cement", "air", air, "a bag of Type N, S or M")),
    };
    in_range(rule, "air", air, 8, most)?;
    if family == Family::MasonryCement {
        in_range(rule, "retention", retention, 70, 100)?;
    }
    Ok(())
}

/// A base and how many coats it gets.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Base {
    /// Lath on framing, three coats.
    Lath,
    /// Lath over a solid base, three coats.
    LathOnSolid,
    /// Unit masonry or concrete, three coats.
    SolidThree,
    /// Unit masonry, two coats.
    MasonryTwo,
    /// Concrete, two coats.
    ConcreteTwo,
}

/// Nominal thickness of plaster on a vertical base: first, second (none of two coats), finish, and `total = first + second + finish`.
#[derive(Clone, Debug)]
pub struct Nominal {
    /// First coat.
    pub first: Worked<Length>,
    /// Second coat.
    pub second: Option<Worked<Length>>,
    /// Finish.
    pub finish: Worked<Length>,
    /// All of it.
    pub total: Worked<Length>,
}

/// Nominal coats of cement plaster, ASTM C926: lath 3/8 + 3/8 + 1/8 in, lath on a solid base 1/2 + 1/4 + 1/8, solid bases
/// 1/4 + 1/4 + 1/8, two coats 3/8 + 1/8 on masonry and 1/4 + 1/8 on concrete.
///
/// Nominal, recalled; two totals were read. A carved coat goes by its own sheet. Source: `plaster-thickness`.
/// ```
/// use hodbook::trade::classes::{Base, nominal};
/// assert_eq!(nominal(Base::Lath).total.in_unit("in"), 0.875);
/// ```
pub fn nominal(base: Base) -> Nominal {
    const C926: &str = "ASTM C926, thickness table (recalled, not re-read)";
    let (first, second, finish) = match base {
        Base::Lath => (3, Some(3), 1),
        Base::LathOnSolid => (4, Some(2), 1),
        Base::SolidThree => (2, Some(2), 1),
        Base::MasonryTwo => (3, None, 1),
        Base::ConcreteTwo => (2, None, 1),
    };
    let eighths = |n, symbol| Worked::<Length>::new(number(n, 8, "in", symbol, C926));
    let (first, second, finish) = (eighths(first, "first"), second.map(|n| eighths(n, "second")), eighths(finish, "finish"));
    let under = match &second {
        Some(second) => first.named("first") + second.named("second"),
        None => first.named("first"),
    };
    let total = Worked::new((under + finish.named("finish")).formula("F3 nominal", "total"));
    Nominal { first, second, finish, total }
}

/// Dry parts whose relative density can be looked at.
const GRAINS: &[(&str, i64, i64, &str)] = &[
    ("masonry cement", 280, 300, "recalled, not re-read"),
    ("hydrated lime", 220, 240, "recalled, not re-read"),
    ("silica sand", 260, 275, "NAVEDTRA 14070; a volumetric batching article"),
    ("fly ash", 190, 280, "recalled, not re-read"),
    ("slag cement", 285, 295, "recalled, not re-read"),
    ("silica fume", 210, 240, "a supplier's data sheet"),
    ("metakaolin", 250, 260, "recalled, not re-read"),
    ("expanded shale", 120, 200, "recalled, not re-read"),
    ("polymer powder", 105, 120, "recalled, not re-read, low"),
    ("iron oxide", 450, 520, "recalled, not re-read"),
];

/// Holds a relative density to what that material usually has; a slip of the point shows here.
///
/// `material` one of masonry cement, hydrated lime, silica sand, fly ash, slag cement, silica fume, metakaolin, expanded
/// shale, polymer powder, iron oxide; another is refused. The mix sheet's measured value wins. Source: `grain-density`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::classes::grain_usual};
/// assert!(grain_usual("silica sand", &Worked::read("2.65").unwrap()).is_ok());
/// assert!(grain_usual("silica sand", &Worked::read("2.56").unwrap()).is_err());
/// ```
pub fn grain_usual(material: &str, relative_density: &Worked<Plain>) -> Result<(), OutOfRange> {
    let Some((_, low, high, source)) = GRAINS.iter().find(|g| g.0 == material) else {
        let names: Vec<&str> = GRAINS.iter().map(|g| g.0).collect();
        return Err(refuse("relative density", "SG", relative_density, format!("one of {}", names.join(", "))));
    };
    let (low, high) = (Num::frac(*low, 100), Num::frac(*high, 100));
    if relative_density.value().si.compare(&low).is_lt() || relative_density.value().si.compare(&high).is_gt() {
        let wants = format!("{} to {} for {material} ({source})", low.plain(), high.plain());
        return Err(refuse("relative density", "SG", relative_density, wants));
    }
    Ok(())
}

#[cfg(test)]
mod tests {
    use super::super::testing::{holds, line, q};
    use super::*;

    #[test]
    fn nominal_coats_add_up() {
        let lath = nominal(Base::Lath);
        holds(&lath.total, "in", "0.875");
        assert_eq!(line(&lath.total), ("total = first + second + finish".into(), "0.375 + 0.375 + 0.125 = 0.875 in".into()));
        let two = nominal(Base::ConcreteTwo);
        assert!(two.second.is_none());
        holds(&two.total, "in", "0.375");
        holds(&two.finish, "in", "0.125");
    }

    #[test]
    fn what_is_outside_says_what_would_pass() {
        let found = |psi: &str, retention: &str, air: &str| Tested { strength: q(psi), retention: q(retention), air: q(air) };
        let met = |t: &Tested| class_met(t, Family::CementLime, Type::S, false);
        assert_eq!(met(&found("1799 psi", "75 %", "12 %")).unwrap_err().wants, "at least 1800 psi");
        assert_eq!(met(&found("1800 psi", "74 %", "12 %")).unwrap_err().wants, "75 % to 100 %");
        assert_eq!(met(&found("1800 psi", "75 %", "13 %")).unwrap_err().wants, "at most 12 %");
        assert!(met(&found("12.5 MPa", "75 %", "12 %")).is_ok());
        assert_eq!(most_air(Family::CementLime, Type::N, true).in_unit("%").round(), 12.0);
        assert_eq!(most_air(Family::CementLime, Type::N, false).in_unit("%").round(), 14.0);
        assert!(cement_met(Family::MortarCement, Type::O, &q("10 %"), &q("70 %")).is_err());
        assert!(cement_met(Family::CementLime, Type::S, &q("1 %"), &q("1 %")).is_ok());
        assert!(grain_usual("granite", &q("2.65")).unwrap_err().wants.contains("fly ash"));
        assert_eq!(grain_usual("iron oxide", &q("0.45")).unwrap_err().wants, "4.5 to 5.2 for iron oxide (recalled, not re-read)");
    }
}
