//! Limits that codes, standards and specifications state, as data: each by its key, with who says so.
//!
//! A mix sheet's own limit wins where it is stricter. A rule is looked up by name and never guessed from context.

use std::cmp::Ordering;

use crate::quantity::Quantity;
use crate::quantity::expr::{Node, Sort, Worked};
use crate::quantity::num::Num;
use crate::quantity::units::find_expr;

use super::sources::Basis;
use super::{OutOfRange, refuse, shown};

/// One end of a rule.
#[derive(Clone, Copy, Debug)]
pub struct Bound {
    /// Number, as a fraction.
    pub number: (i64, i64),
    /// Unit; empty for a plain number.
    pub unit: &'static str,
    /// False where the bound itself does not pass.
    pub passes: bool,
}

/// A stated limit.
#[derive(Debug)]
pub struct Rule {
    /// Key.
    pub key: &'static str,
    /// What is limited.
    pub what: &'static str,
    /// Least, if there is one.
    pub least: Option<Bound>,
    /// Most, if there is one.
    pub most: Option<Bound>,
    /// Who says so.
    pub citation: &'static str,
    /// How far it can be leaned on.
    pub basis: Basis,
}

type Number = (i64, i64, &'static str);

const fn bound((n, d, unit): Number, passes: bool) -> Option<Bound> {
    Some(Bound { number: (n, d), unit, passes })
}

const fn least(key: &'static str, what: &'static str, x: Number, citation: &'static str) -> Rule {
    Rule { key, what, least: bound(x, true), most: None, citation, basis: Basis::NeighbourStandard }
}

const fn most(key: &'static str, what: &'static str, x: Number, citation: &'static str) -> Rule {
    Rule { key, what, least: None, most: bound(x, true), citation, basis: Basis::NeighbourStandard }
}

const fn above(key: &'static str, what: &'static str, x: Number, citation: &'static str) -> Rule {
    Rule { key, what, least: bound(x, false), most: None, citation, basis: Basis::NeighbourStandard }
}

const fn between(key: &'static str, what: &'static str, from: Number, to: Number, citation: &'static str) -> Rule {
    Rule { key, what, least: bound(from, true), most: bound(to, true), citation, basis: Basis::NeighbourStandard }
}

const fn habit(rule: Rule) -> Rule {
    Rule { basis: Basis::CommonPractice, ..rule }
}

const IBC: &str = "IBC 2018, table 2512.6";
const STUCCO_SPEC: &str = "a US government guide specification for stucco (UFGS-09225)";
const HANDBOOK: &str = "a building construction handbook, article on stucco";
const GUIDE: &str = "US government guide specifications for concrete (UFGS 03301, 03372)";
const ACI_308: &str = "ACI 308R-01, above 40 °F (recalled, not re-read)";
const MASONRY: &str = "TMS 602, hot weather";
const SHEET: &str = "a city's stucco specification";

/// Every rule.
pub const RULES: &[Rule] = &[
    least("ibc first moist", "moist cure of the first coat", (48, 1, "h"), IBC),
    least("ibc first interval", "wait from the first coat to the second", (48, 1, "h"), IBC),
    least("ibc second moist", "moist cure of the second coat", (48, 1, "h"), IBC),
    least("ibc second interval", "wait from the second coat to the finish", (7, 1, "day"), IBC),
    above("ibc plaster warmth", "air during application and for 48 h after", (40, 1, "°F"), "IBC 2018, 2512.4"),
    most("ibc second plane", "gap under a 5-ft straightedge, second coat", (1, 4, "in"), "IBC 2018, 2512.5"),
    least("ibc aggregate total", "exposed-aggregate plaster with its lath", (7, 8, "in"), "IBC 2018, 2513.4"),
    most("ibc bedding sand", "sand to one part of cement in a bedding coat", (3, 1, ""), "IBC 2018, 2513.3"),
    least("ibc bedding strength", "exterior bedding coat", (1000, 1, "psi"), "IBC 2018, 2513.3"),
    least("ufgs scratch thickness", "scratch coat", (3, 8, "in"), STUCCO_SPEC),
    least("ufgs scratch moist", "fog cure of the scratch coat", (72, 1, "h"), STUCCO_SPEC),
    least("ufgs brown moist", "fog cure of the brown coat", (72, 1, "h"), STUCCO_SPEC),
    least("ufgs finish moist", "fog cure of the finish coat", (48, 1, "h"), STUCCO_SPEC),
    least("handbook scratch thickness", "scratch coat", (1, 2, "in"), HANDBOOK),
    least("handbook brown thickness", "brown coat", (3, 8, "in"), HANDBOOK),
    least("handbook finish thickness", "finish coat", (3, 8, "in"), HANDBOOK),
    // It says 4 to 5 h: the longer stands.
    least("handbook second interval", "wait before the second coat", (5, 1, "h"), HANDBOOK),
    least("handbook moist", "moist cure", (48, 1, "h"), HANDBOOK),
    least("handbook dry", "drying after the moist cure", (7, 1, "day"), HANDBOOK),
    habit(least("bureau finish interval", "wait before the finish coat", (7, 1, "day"), "a plaster bureau's style note")),
    habit(least("bureau finish interval advised", "wait before the finish coat", (10, 1, "day"), "a plaster bureau's style note")),
    least("dash moist", "moist cure of a dash-bond coat", (24, 1, "h"), "New York City building code, 2510.7"),
    habit(most("sheet batch life", "time from mixing to use", (1, 1, "h"), SHEET)),
    habit(least("sheet water held back", "share of the water held back at first", (10, 1, "%"), SHEET)),
    most("c270 batch life", "time from mixing to use", (5, 2, "h"), "ASTM C270"),
    most("hot batch life", "time from mixing to use in hot weather", (2, 1, "h"), "TMS 602 (recalled, not re-read)"),
    least("ufgs type i", "moist cure, Type I cement", (7, 1, "day"), GUIDE),
    least("ufgs blended", "moist cure, Type IS or IP cement", (7, 1, "day"), GUIDE),
    least("ufgs silica fume", "moist cure with silica fume", (7, 1, "day"), GUIDE),
    least("ufgs type ii", "moist cure, Type II cement", (14, 1, "day"), GUIDE),
    least("ufgs ash to 25", "moist cure with fly ash or slag up to 25 %", (14, 1, "day"), GUIDE),
    least("ufgs ash over 25", "moist cure with fly ash or slag over 25 %", (21, 1, "day"), GUIDE),
    least("aci type i", "moist cure, Type I cement", (7, 1, "day"), ACI_308),
    least("aci type ii", "moist cure, Type II cement", (10, 1, "day"), ACI_308),
    least("aci type iii", "moist cure, Type III cement", (3, 1, "day"), ACI_308),
    most("hot mortar", "mortar in hot weather", (120, 1, "°F"), MASONRY),
    between("cold mortar", "mortar made in cold weather", (40, 1, "°F"), (120, 1, "°F"), "TMS 602, cold weather"),
    most("oxide pigment", "metal-oxide pigment to cement", (10, 1, "%"), "ASTM C979 (recalled, not re-read); BIA Technical Note 8"),
    most("carbon black", "carbon-black pigment to cement", (2, 1, "%"), "BIA Technical Note 8"),
    most("finish lime", "hydrated lime to cement in a sanded finish, by mass", (10, 1, "%"), "NAVEDTRA 14044, ch. 7"),
    most("finish putty", "lime putty to cement in a sanded finish, by volume", (24, 1, "%"), "NAVEDTRA 14044, ch. 7"),
];

/// The rule called `key`; `None` where there is none: a name is never guessed.
///
/// Source: `code-limits`.
/// ```
/// use hodbook::{quantity::expr::{Duration, Worked}, trade::rules::find};
/// let rule = find("ibc first interval").unwrap();
/// assert!(rule.kept::<Duration>(&Worked::read("2 days").unwrap()).is_ok());
/// let refused = rule.kept::<Duration>(&Worked::read("40 h").unwrap()).unwrap_err();
/// assert_eq!(refused.wants, "at least 48 h (IBC 2018, table 2512.6)");
/// ```
pub fn find(key: &str) -> Option<&'static Rule> {
    RULES.iter().find(|r| r.key == key)
}

impl Bound {
    /// The bound as a constant that names who says so.
    fn worked<S: Sort>(&self, rule: &Rule) -> Worked<S> {
        let number = Num::frac(self.number.0, self.number.1);
        let unit = find_expr(self.unit);
        let value = unit.map_or_else(|| Quantity::plain(number.clone()), |u| Quantity::of(&number, u));
        Worked::new(Node::constant(value.as_kind(S::KIND), unit, rule.what, rule.citation))
    }
}

impl Rule {
    /// Its least, as a constant of the sort it limits. Asking for another sort is our bug.
    pub fn least<S: Sort>(&self) -> Option<Worked<S>> {
        self.least.map(|b| b.worked(self))
    }

    /// Its most, as [`Rule::least`].
    pub fn most<S: Sort>(&self) -> Option<Worked<S>> {
        self.most.map(|b| b.worked(self))
    }

    /// Holds a value to the rule. Compare the printed value, not the one behind it.
    ///
    /// # Errors
    /// What would pass, and who says so.
    pub fn kept<S: Sort>(&self, x: &Worked<S>) -> Result<(), OutOfRange> {
        for (end, wrong, words) in
            [(self.least, Ordering::Less, ("at least", "more than")), (self.most, Ordering::Greater, ("at most", "less than"))]
        {
            let Some(end) = end else { continue };
            let bound: Worked<S> = end.worked(self);
            let order = x.value().si.compare(&bound.value().si);
            if order == wrong || order.is_eq() && !end.passes {
                let word = if end.passes { words.0 } else { words.1 };
                return Err(refuse(self.key, self.what, x, format!("{word} {} ({})", shown(bound.node()), self.citation)));
            }
        }
        Ok(())
    }
}

#[cfg(test)]
mod tests {
    use super::super::testing::q;
    use super::*;
    use crate::quantity::expr::{Duration, Share, Temperature};
    use std::collections::BTreeSet;

    #[test]
    fn keys_are_one_each_and_every_rule_has_an_end_and_a_word() {
        let keys: BTreeSet<_> = RULES.iter().map(|r| r.key).collect();
        assert_eq!(keys.len(), RULES.len());
        for rule in RULES {
            assert!(rule.least.is_some() || rule.most.is_some(), "{}", rule.key);
            assert!(!rule.what.is_empty() && !rule.citation.is_empty(), "{}", rule.key);
            for end in [rule.least, rule.most].into_iter().flatten() {
                assert!(end.unit.is_empty() || find_expr(end.unit).is_some(), "{}", rule.key);
            }
        }
    }

    #[test]
    fn the_bound_itself_passes_unless_it_says_above() {
        let warmth = find("ibc plaster warmth").unwrap();
        let refused = warmth.kept::<Temperature>(&q("40 °F")).unwrap_err();
        assert_eq!((refused.wants.as_str(), refused.value.as_str()), ("more than 40 °F (IBC 2018, 2512.4)", "40 °F"));
        assert!(warmth.kept::<Temperature>(&q("4.5 °C")).is_ok());
        assert!(find("oxide pigment").unwrap().kept::<Share>(&q("10 %")).is_ok());
        assert!(find("oxide pigment").unwrap().kept::<Share>(&q("10.1 %")).is_err());
        let mortar = find("cold mortar").unwrap();
        for (t, passes) in [("39.9 °F", false), ("40 °F", true), ("120 °F", true), ("49 °C", false)] {
            assert_eq!(mortar.kept::<Temperature>(&q(t)).is_ok(), passes, "{t}");
        }
        assert!(find("ibc third interval").is_none());
        assert_eq!(find("ufgs type ii").unwrap().least::<Duration>().unwrap().in_unit("day"), 14.0);
        assert!(find("ufgs type ii").unwrap().most::<Duration>().is_none());
    }
}
