//! F1, F3, F6: the small sums between the families: radii, totals, what a batch holds.

use crate::quantity::expr::{Bags, Length, Loads, Mass, Node, Plain, Share, Volume, Worked};

use super::{Answer, OutOfRange, above_zero, like, refuse, zero_or_more};

/// Radius of a round core: `r = D ÷ 2`, `D > 0`.
///
/// Source: `geometry`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::sums::radius};
/// assert_eq!(radius(&Worked::read("14 in").unwrap()).unwrap().in_unit("in"), 7.0);
/// ```
pub fn radius(d: &Worked<Length>) -> Answer<Length> {
    above_zero("F1 core radius", "D", d)?;
    Ok(Worked::new(like(d.named("D") / Node::given(2, 1), d.node()).formula("F1 core radius", "r")))
}

/// Whole thickness of the coats at the faces: `t = t_carve + t_s`, both 0 or more.
///
/// Max governs: this one sets lifts and is held to the mix's greatest thickness. Source: `geometry`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::sums::whole_thickness};
/// let t = whole_thickness(&Worked::read("1 3/4 in").unwrap(), &Worked::read("1/2 in").unwrap()).unwrap();
/// assert_eq!(t.in_unit("in"), 2.25);
/// ```
pub fn whole_thickness(carve: &Worked<Length>, scratch: &Worked<Length>) -> Answer<Length> {
    zero_or_more("F3 thickness", "t_carve", carve)?;
    zero_or_more("F3 thickness", "t_s", scratch)?;
    Ok(Worked::new((carve.named("t_carve") + scratch.named("t_s")).formula("F3 thickness", "t")))
}

/// Sum of volumes: `V = V1 + V2 + …`, at least one, each 0 or more.
///
/// Source: `geometry`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::sums::volumes};
/// let v = volumes(&[Worked::read("2 ft3").unwrap(), Worked::read("3 ft3").unwrap()]).unwrap();
/// assert_eq!(v.in_unit("ft3"), 5.0);
/// ```
pub fn volumes(parts: &[Worked<Volume>]) -> Answer<Volume> {
    let mut sum: Option<Node> = None;
    for (i, part) in parts.iter().enumerate() {
        zero_or_more("F3 total", "V", part)?;
        let next = part.named(format!("V{}", i + 1));
        sum = Some(match sum {
            Some(before) => before + next,
            None => next,
        });
    }
    let missing =
        || OutOfRange { formula: "F3 total", symbol: "V1", value: "missing".to_owned(), wants: "at least one surface".to_owned() };
    Ok(Worked::new(sum.ok_or_else(missing)?.formula("F3 total", "V")))
}

/// Sum of masses: `m = m1 + m2 + …`, at least one, each 0 or more.
///
/// What a truck, a trailer or a floor carries. Source: `geometry`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::sums::masses};
/// let m = masses(&[Worked::read("80 lb").unwrap(), Worked::read("24 lb").unwrap()]).unwrap();
/// assert_eq!(m.in_unit("lb"), 104.0);
/// assert!(masses(&[]).is_err());
/// ```
pub fn masses(parts: &[Worked<Mass>]) -> Answer<Mass> {
    let mut sum: Option<Node> = None;
    for (i, part) in parts.iter().enumerate() {
        zero_or_more("F7 total", "m", part)?;
        let next = part.named(format!("m{}", i + 1));
        sum = Some(match sum {
            Some(before) => before + next,
            None => next,
        });
    }
    let missing = || OutOfRange { formula: "F7 total", symbol: "m1", value: "missing".to_owned(), wants: "at least one mass".to_owned() };
    Ok(Worked::new(sum.ok_or_else(missing)?.formula("F7 total", "m")))
}

/// Volume of equal things: `V = n × V1`, `n` a whole number of 1 or more.
///
/// Source: `geometry`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::sums::times};
/// assert_eq!(times(&Worked::read("2 ft3").unwrap(), &Worked::read("3").unwrap()).unwrap().in_unit("ft3"), 6.0);
/// assert!(times(&Worked::read("2 ft3").unwrap(), &Worked::read("1.5").unwrap()).is_err());
/// ```
pub fn times(one: &Worked<Volume>, n: &Worked<Plain>) -> Answer<Volume> {
    above_zero("F3 times", "n", n)?;
    if !n.value().si.exact().is_some_and(num_rational::BigRational::is_integer) {
        return Err(refuse("F3 times", "n", n, "a whole number from 1, such as `2`"));
    }
    Ok(Worked::new(like(n.named("n") * one.named("V1"), one.node()).formula("F3 times", "V")))
}

/// Volume a mixer mixes well: `U = V_mixer × fill`, `V_mixer > 0`, `0 % < fill ≤ 100 %`.
///
/// Source: `mixer-fill`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::sums::usable_volume};
/// let u = usable_volume(&Worked::read("4.5 ft3").unwrap(), &Worked::read("70 %").unwrap()).unwrap();
/// assert_eq!(format!("{:.2}", u.in_unit("ft3")), "3.15");
/// ```
pub fn usable_volume(mixer: &Worked<Volume>, fill: &Worked<Share>) -> Answer<Volume> {
    above_zero("F6 usable", "V_mixer", mixer)?;
    above_zero("F6 usable", "fill", fill)?;
    if fill.value().si.to_f64() > 1.0 {
        return Err(refuse("F6 usable", "fill", fill, "more than 0 % and at most 100 %, such as `65 %`"));
    }
    Ok(Worked::new(like(mixer.named("V_mixer") * fill.named("fill"), mixer.node()).formula("F6 usable", "U")))
}

/// Volume of a batch: `V = n × y`, `n` loads (0 or more), `y` yield of a load (above 0).
///
/// Ask it with the yield **at the limit water** when the mixer's capacity is the question. Source: `mixer-fill`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::sums::batch_volume};
/// let v = batch_volume(&Worked::read("2 loads").unwrap(), &Worked::read("0.99 ft3").unwrap()).unwrap();
/// assert_eq!(format!("{:.2}", v.in_unit("ft3")), "1.98");
/// ```
pub fn batch_volume(n: &Worked<Loads>, y: &Worked<Volume>) -> Answer<Volume> {
    zero_or_more("F6 batch volume", "n", n)?;
    above_zero("F6 batch volume", "y", y)?;
    Ok(Worked::new(like(n.named("n") * y.named("y"), y.node()).formula("F6 batch volume", "V")))
}

/// Bags of one material in a batch: `b = n × b1`, `n` loads, `b1` bags of it in a load; both above 0.
///
/// Source: `whole-and-half-loads`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::sums::batch_bags};
/// let b = batch_bags(&Worked::read("3 loads").unwrap(), &Worked::read("1 bag").unwrap()).unwrap();
/// assert_eq!(b.value().si.to_f64(), 3.0);
/// ```
pub fn batch_bags(n: &Worked<Loads>, b1: &Worked<Bags>) -> Answer<Bags> {
    above_zero("F6 bags", "n", n)?;
    above_zero("F6 bags", "b1", b1)?;
    Ok(Worked::new((n.named("n") * b1.named("b1")).written_in("bag").formula("F6 bags", "b")))
}

/// Mass of one material in a load: `m = b1 × m1`, `b1` bags in a load, `m1` mass of a bag; both above 0.
///
/// Source: `whole-and-half-loads`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::sums::load_mass};
/// assert_eq!(load_mass(&Worked::read("1 bag").unwrap(), &Worked::read("80 lb").unwrap()).unwrap().in_unit("lb"), 80.0);
/// ```
pub fn load_mass(b1: &Worked<Bags>, m1: &Worked<Mass>) -> Answer<Mass> {
    above_zero("F6 load mass", "b1", b1)?;
    above_zero("F6 load mass", "m1", m1)?;
    Ok(Worked::new(like(b1.named("b1") * m1.named("m1"), m1.node()).formula("F6 load mass", "m")))
}

/// Part of a bag in the hands: `m = part × m1`, `0 % ≤ part ≤ 100 %`, `m1` mass of a whole bag (above 0).
///
/// Source: `geometry`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::sums::part_of};
/// assert_eq!(part_of(&Worked::read("80 lb").unwrap(), &Worked::read("50 %").unwrap()).unwrap().in_unit("lb"), 40.0);
/// assert!(part_of(&Worked::read("80 lb").unwrap(), &Worked::read("150 %").unwrap()).is_err());
/// ```
pub fn part_of(m1: &Worked<Mass>, part: &Worked<Share>) -> Answer<Mass> {
    above_zero("F26 part of a bag", "m1", m1)?;
    zero_or_more("F26 part of a bag", "part", part)?;
    if part.value().si.to_f64() > 1.0 {
        return Err(refuse("F26 part of a bag", "part", part, "0 % to 100 %, such as `50 %`"));
    }
    Ok(Worked::new(like(part.named("part") * m1.named("m1"), m1.node()).formula("F26 part of a bag", "m")))
}

/// Water of some whole steps: `a = i × step`, `i` steps (0 or more), `step` water of one (above 0).
///
/// Source: `water-by-loads`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::sums::steps};
/// assert_eq!(steps(&Worked::read("3").unwrap(), &Worked::read("1 cup").unwrap()).unwrap().in_unit("cup"), 3.0);
/// ```
pub fn steps(i: &Worked<Plain>, step: &Worked<Volume>) -> Answer<Volume> {
    zero_or_more("F8 steps of water", "i", i)?;
    above_zero("F8 steps of water", "step", step)?;
    Ok(Worked::new(like(i.named("i") * step.named("step"), step.node()).formula("F8 steps of water", "a")))
}
