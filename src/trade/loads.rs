//! F5: loads, whole and half.

use num_bigint::BigInt;

use crate::quantity::expr::{Loads, Node, Volume, Worked};
use crate::quantity::num::Direction;

use super::{OutOfRange, above_zero};

/// What a load may be cut into.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Step {
    /// Whole loads only.
    Whole,
    /// Half loads: both materials halved, on a scale.
    Half,
}

impl Step {
    pub(crate) fn parts(self) -> i64 {
        match self {
            Step::Whole => 1,
            Step::Half => 2,
        }
    }

    /// True if `n` is a whole number of steps.
    pub(crate) fn divides(self, n: &Worked<Loads>) -> bool {
        n.value().si.exact().is_some_and(|r| (r * BigInt::from(self.parts())).is_integer())
    }
}

/// A need in loads, and what it is rounded up to.
#[derive(Clone, Debug)]
pub struct Need {
    /// Unrounded.
    pub need: Worked<Loads>,
    /// Rounded up to the step.
    pub loads: Worked<Loads>,
    /// `loads − need`: a need that stands on its step has none to spare.
    pub slack: Worked<Loads>,
}

/// Loads of a volume: `N0 = V ÷ y`, `N = up(N0, 1/2)` or `up(N0, 1)`, `slack = N − N0`; `V` volume to mix, `y` yield.
///
/// `V ≥ 0`, `y > 0`. Half loads only where the mix lets both materials be halved by scale. A need within float
/// noise of a step stands on it; an exact need a hair over a step is over. Source: `whole-and-half-loads`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::loads::{Step, loads}};
/// let n = loads(&Worked::read("32.014 ft3").unwrap(), &Worked::read("0.9338 ft3").unwrap(), Step::Half).unwrap();
/// assert_eq!(n.loads.value().si.to_f64(), 34.5);
/// ```
pub fn loads(v: &Worked<Volume>, y: &Worked<Volume>, step: Step) -> Result<Need, OutOfRange> {
    super::zero_or_more("F5 need", "V", v)?;
    above_zero("F5 need", "y", y)?;
    let need: Worked<Loads> = Worked::new((v.named("V") / y.named("y")).written_in("load").formula("F5 need", "N0"));
    let up: Node = need.named("N0").rounded(Direction::Up, 1, step.parts());
    let loads: Worked<Loads> = Worked::new(up.formula("F5 loads", "N"));
    let slack = Worked::new((loads.named("N") - need.named("N0")).formula("F5 slack", "slack"));
    Ok(Need { need, loads, slack })
}

#[cfg(test)]
mod tests {
    use super::super::testing::{holds, line, q};
    use super::super::yields::tests::load;
    use super::*;

    // Worked examples of the design; where its own correction of round work changed a number, the corrected one.
    // Common practice, no source.
    #[test]
    fn needs_of_the_three_sites() {
        let (carve, ..) = load(("24 lb", "2.30"), ("80 lb", "2.66"), "1 gal 2 qt", true, "9 %");
        let (scratch, ..) = load(("15 lb", "2.30"), ("70 lb", "2.66"), "1.25 gal", true, "7 %");
        let (light, ..) = load(("10 kg", "1.35"), ("25 kg", "2.65"), "4.6 L", false, "14 %");
        let rows: [(&str, &Worked<Volume>, &str, &str); 8] = [
            // The design divides by its printed 0.9338 and shows 34.282; only the unrounded yield gives that.
            ("32.014 ft3", &carve, "34.282", "34.5"),
            ("26.579 ft3", &carve, "28.462", "28.5"),
            ("14.909938 ft3", &scratch, "19.9972", "20.0"),
            ("14.9906 ft3", &scratch, "20.11", "20.5"),
            ("77.578 ft3", &carve, "83.074", "83.5"),
            ("79.81 ft3", &carve, "85.46", "85.5"),
            ("38.81 ft3", &scratch, "52.05", "52.5"),
            ("1645.4602 L", &light, "65.9984", "66.0"),
        ];
        for (v, y, need, whole) in rows {
            let n = loads(&q(v), y, Step::Half).unwrap();
            holds(&n.need, "", need);
            holds(&n.loads, "", whole);
        }
    }

    // Worked example of the design: the water constant belongs to the mix, and a site's units may not change it.
    #[test]
    fn another_water_constant_buys_another_half_load() {
        use super::super::yields::{Solid, load_yield, solids_volume, water_mass};
        let need = |k: &str, c: &str| {
            let part = |name, mass, sg| Solid { name, mass: q(mass), relative_density: q(sg) };
            let grains = solids_volume(&[part("add", "15 lb", "2.30"), part("mor", "70 lb", "2.66")], &q(k)).unwrap();
            let y = load_yield(&grains, &water_mass(&q("1.25 gal"), &q(c)).unwrap(), &q(k), &q("7 %")).unwrap();
            loads(&q("14.909938 ft3"), &y, Step::Half).unwrap()
        };
        holds(&need("62.4 lb/ft3", "8.345 lb/gal").loads, "", "20.0");
        let metric = need("1 kg/L", "1 kg/L");
        // The design prints 20.0060, from its volume already rounded to 14.910 ft3.
        holds(&metric.need, "", "20.0059");
        holds(&metric.loads, "", "20.5");
    }

    #[test]
    fn a_knife_edge_shows_in_the_slack() {
        let n = loads(&q("19.9972 ft3"), &q("1 ft3"), Step::Half).unwrap();
        holds(&n.slack, "", "0.0028");
        let exact = loads(&q("20 ft3"), &q("1 ft3"), Step::Half).unwrap();
        assert!(exact.slack.value().si.is_zero());
        assert_eq!(exact.loads.value().si.to_f64(), 20.0);
        let whole = loads(&q("20.2 ft3"), &q("1 ft3"), Step::Whole).unwrap();
        assert_eq!(line(&whole.loads), ("N = up(N0, 1)".to_owned(), "up(20.2, 1) = 21 load".to_owned()));
        assert_eq!(line(&whole.need).1, "20.2 ÷ 1 = 20.2 load");
        assert!(loads(&q("1 ft3"), &q("0 ft3"), Step::Half).is_err());
    }
}
