//! Parts by volume against the tables that name a mortar or a plaster coat by its parts.
//!
//! A mix sheet that gives its own parts wins; these tables say only which name the parts deserve.

use num_rational::BigRational;

use crate::quantity::expr::{Node, Plain, Worked};
use crate::quantity::num::Num;

use super::{OutOfRange, above_zero, refuse, zero_or_more};

/// Mortar types of ASTM C270.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Type {
    /// Strongest.
    M,
    /// Next.
    S,
    /// Next.
    N,
    /// Weakest.
    O,
}

/// Parts by volume.
#[derive(Clone, Debug)]
pub struct Parts {
    /// Portland or blended cement.
    pub portland: Worked<Plain>,
    /// Masonry, mortar or plastic cement.
    pub masonry: Worked<Plain>,
    /// Type on the bag of that cement.
    pub masonry_type: Option<Type>,
    /// Hydrated lime or putty.
    pub lime: Worked<Plain>,
    /// Sand, damp and loose.
    pub sand: Worked<Plain>,
}

/// From, to, in fractions; the flag says whether the lower end itself passes.
type Range = ((i64, i64), (i64, i64), bool);

const C270: &str = "ASTM C270, table 1 (recalled, not re-read)";
const R702: &str = "IRC 2018, table R702.1(3)";

fn fraction((n, d): (i64, i64)) -> BigRational {
    BigRational::new(n.into(), d.max(1).into())
}

fn zero(x: &Worked<Plain>) -> bool {
    x.value().si.is_zero()
}

/// `x ÷ base` within a range; both were checked to be 0 or more, the base above 0.
fn share(rule: &'static str, symbol: &'static str, x: &Worked<Plain>, base: &Node, what: &str, range: Range) -> Result<(), OutOfRange> {
    let (from, to, with) = range;
    let ratio = (x.named(symbol) / base.clone()).number();
    let (low, high) = (Num::Exact(fraction(from)), Num::Exact(fraction(to)));
    let below = ratio.compare(&low).is_lt() || !with && ratio.compare(&low).is_eq();
    if below || ratio.compare(&high).is_gt() {
        let over = if with { "" } else { "over " };
        let wants = format!("{over}{} to {} times {what}", low.plain(), high.plain());
        return Err(refuse(rule, symbol, x, wants));
    }
    Ok(())
}

fn measured(rule: &'static str, parts: &Parts) -> Result<(), OutOfRange> {
    zero_or_more(rule, "portland", &parts.portland)?;
    zero_or_more(rule, "masonry", &parts.masonry)?;
    zero_or_more(rule, "lime", &parts.lime)?;
    above_zero(rule, "sand", &parts.sand)?;
    if zero(&parts.portland) && zero(&parts.masonry) {
        return Err(refuse(rule, "portland", &parts.portland, "cement: portland, masonry, or both"));
    }
    Ok(())
}

fn none(rule: &'static str, symbol: &'static str, x: &Worked<Plain>, why: &str) -> Result<(), OutOfRange> {
    if zero(x) { Ok(()) } else { Err(refuse(rule, symbol, x, format!("none {why}"))) }
}

fn binders(parts: &Parts) -> Node {
    parts.portland.named("portland") + parts.masonry.named("masonry") + parts.lime.named("lime")
}

const BINDERS: &str = "the sum of cement and lime";

/// Holds parts by volume to the proportions of a mortar type, ASTM C270 table 1: lime by the type, masonry cement by its own
/// type, sand 2 1/4 to 3 times the sum of cement and lime.
///
/// Parts 0 or more, sand above 0, some cement. Lime stands to portland: M 1/4, S over 1/4 to 1/2, N over 1/2 to 1 1/4, O over
/// 1 1/4 to 2 1/2. Masonry or mortar cement takes no lime: Type N with 1 portland is M, with 1/2 is S, alone N or O; M
/// and S bags are their own type. Recalled. Source: `c270-proportions`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::parts::{Parts, Type, mortar_within}};
/// let parts = |lime, sand| Parts {
///     portland: Worked::read("1").unwrap(),
///     masonry: Worked::read("0").unwrap(),
///     masonry_type: None,
///     lime: Worked::read(lime).unwrap(),
///     sand: Worked::read(sand).unwrap(),
/// };
/// assert!(mortar_within(&parts("1/2", "4 1/2"), Type::S).is_ok());
/// assert!(mortar_within(&parts("1/2", "5"), Type::S).unwrap_err().wants.starts_with("2.25 to 3 times"));
/// ```
pub fn mortar_within(parts: &Parts, as_type: Type) -> Result<(), OutOfRange> {
    measured(C270, parts)?;
    if zero(&parts.masonry) {
        let range = match as_type {
            Type::M => ((1, 4), (1, 4), true),
            Type::S => ((1, 4), (1, 2), false),
            Type::N => ((1, 2), (5, 4), false),
            Type::O => ((5, 4), (5, 2), false),
        };
        share(C270, "lime", &parts.lime, &parts.portland.named("portland"), "the portland cement", range)?;
    } else {
        none(C270, "lime", &parts.lime, "beside masonry or mortar cement")?;
        let portland = match (as_type, parts.masonry_type) {
            (Type::M, Some(Type::N)) => (1, 1),
            (Type::S, Some(Type::N)) => (1, 2),
            (Type::M, Some(Type::M)) | (Type::S, Some(Type::S)) | (Type::N | Type::O, Some(Type::N)) => (0, 1),
            _ => {
                let wants = format!("masonry or mortar cement whose bag gives Type {as_type:?}: its own type, or Type N");
                return Err(refuse(C270, "masonry", &parts.masonry, wants));
            }
        };
        share(C270, "portland", &parts.portland, &parts.masonry.named("masonry"), "the masonry cement", (portland, portland, true))?;
    }
    share(C270, "sand", &parts.sand, &binders(parts), BINDERS, ((9, 4), (3, 1), true))
}

/// A coat of cement plaster.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Coat {
    /// Scratch.
    First,
    /// Brown.
    Second,
    /// Finish.
    Finish,
}

/// Holds parts by volume to those of a plaster coat, IRC table R702.1(3): lime 3/4 to 1 1/2 of portland (finish 1 1/2 to 2), none
/// beside masonry or plastic cement; sand 2 1/2 to 4, 3 to 5 or 1 1/2 to 3 times the sum of cement and lime.
///
/// Parts 0 or more, sand above 0, one kind of cement. A footnote lets the first coat's lime go down to 0 in a case that
/// could not be read: refused here. ASTM C926 lets its sand start at 2 1/4 (recalled). Source: `plaster-proportions`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::parts::{Coat, Parts, plaster_within}};
/// let parts = |sand| Parts {
///     portland: Worked::read("1").unwrap(),
///     masonry: Worked::read("0").unwrap(),
///     masonry_type: None,
///     lime: Worked::read("1").unwrap(),
///     sand: Worked::read(sand).unwrap(),
/// };
/// assert!(plaster_within(&parts("5"), Coat::First).is_ok());
/// assert!(plaster_within(&parts("5"), Coat::Second).is_err());
/// ```
pub fn plaster_within(parts: &Parts, coat: Coat) -> Result<(), OutOfRange> {
    measured(R702, parts)?;
    let (lime, sand) = match coat {
        Coat::First => (((3, 4), (3, 2)), ((5, 2), (4, 1))),
        Coat::Second => (((3, 4), (3, 2)), ((3, 1), (5, 1))),
        Coat::Finish => (((3, 2), (2, 1)), ((3, 2), (3, 1))),
    };
    if zero(&parts.masonry) {
        share(R702, "lime", &parts.lime, &parts.portland.named("portland"), "the portland cement", (lime.0, lime.1, true))?;
    } else {
        none(R702, "portland", &parts.portland, "beside masonry or plastic cement")?;
        none(R702, "lime", &parts.lime, "beside masonry or plastic cement")?;
    }
    share(R702, "sand", &parts.sand, &binders(parts), BINDERS, (sand.0, sand.1, true))
}

#[cfg(test)]
mod tests {
    use super::super::testing::q;
    use super::*;

    fn parts(portland: &str, masonry: &str, masonry_type: Option<Type>, lime: &str, sand: &str) -> Parts {
        Parts { portland: q(portland), masonry: q(masonry), masonry_type, lime: q(lime), sand: q(sand) }
    }

    #[test]
    fn parts_keep_their_name_when_scaled() {
        let type_n = |scale: &[&str; 3]| mortar_within(&parts(scale[0], "0", None, scale[1], scale[2]), Type::N);
        assert!(type_n(&["1", "1", "6"]).is_ok());
        assert!(type_n(&["3", "3", "18"]).is_ok());
        let refused = type_n(&["2", "1", "6"]).unwrap_err();
        assert_eq!((refused.symbol, refused.wants.as_str()), ("lime", "over 0.5 to 1.25 times the portland cement"));
    }

    #[test]
    fn a_bag_s_type_decides() {
        let bag = |portland: &str, of: Type, to: Type| mortar_within(&parts(portland, "1", Some(of), "0", "3"), to).is_ok();
        assert!(bag("0", Type::S, Type::S) && !bag("0", Type::S, Type::M) && !bag("0", Type::N, Type::S));
        assert!(mortar_within(&parts("0", "1", None, "0", "3"), Type::N).is_err());
        let limed = mortar_within(&parts("0", "1", Some(Type::N), "1/4", "3"), Type::N).unwrap_err();
        assert_eq!(limed.wants, "none beside masonry or mortar cement");
        assert_eq!(mortar_within(&parts("0", "0", None, "1", "3"), Type::N).unwrap_err().symbol, "portland");
        assert_eq!(mortar_within(&parts("1", "0", None, "1", "0"), Type::N).unwrap_err().symbol, "sand");
        assert!(plaster_within(&parts("1", "1", None, "0", "6"), Coat::First).unwrap_err().wants.starts_with("none"));
    }
}
