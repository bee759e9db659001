//! F16: when the sun stands on a wall.

use crate::quantity::expr::{Angle, Clock, Node, Plain, Worked};
use crate::quantity::num::Direction;

use super::sun::{Spot, Sun, cos, degrees, half_day, midday, position, sin, unit};
use super::{OutOfRange, refuse};

/// Spells shorter than this many degrees of turning sky, one minute, are left out.
const LEAST: f64 = 0.25;

/// Sunlight on a wall: from, to.
pub type Spell = (Worked<Clock>, Worked<Clock>);

/// When the sun stands on an upright wall that faces `azimuth`, degrees from north by east: from and to, in order.
/// With the sky turning by `H` after noon the wall is in shade while `R × cos(H − H_0) ≥ c`, where
/// `R = sqrt(a² + b²)`, `a = cos A × sin φ × cos δ`, `b = sin A × cos δ`, `c = cos A × sin δ × cos φ`: between
/// `H_0 ± acos(c ÷ R)`; the rest of the day is lit.
///
/// `0° ≤ azimuth ≤ 360°`; else as [`sunset`](super::sun::sunset), with the declination of noon. From is rounded down
/// and to up, so that the sun is never there without being named. A wall towards the pole may be lit twice; one that
/// is never lit has no spell. Nothing that throws shade is known. Source: `sun`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::{sun::{Spot, day_number}, sun_face::sun_on_face}};
/// let (latitude, longitude) = (Worked::read("40 °").unwrap(), Worked::read("-90 °").unwrap());
/// let spot = Spot { latitude, longitude, zone: Worked::read("-6 h").unwrap() };
/// let west = sun_on_face(&day_number(2026, 3, 11).unwrap(), &spot, &Worked::read("270 °").unwrap()).unwrap();
/// let (from, to) = west.first().unwrap();
/// assert_eq!((from.in_unit("min"), to.in_unit("min")), (729.0, 1083.0));
/// ```
pub fn sun_on_face(day: &Worked<Plain>, spot: &Spot, azimuth: &Worked<Angle>) -> Result<Vec<Spell>, OutOfRange> {
    if !(0.0..=360.0).contains(&azimuth.in_unit("°")) {
        return Err(refuse("F16 face across", "A", azimuth, "0° to 360° from north by east: a west wall has `270 °`"));
    }
    let sun = position(day, spot, &midday())?;
    let half = half_day(&sun, spot)?;
    let mut lit = vec![(Node::given(0, 1) - half.named("H_day"), half.named("H_day"))];
    match shade(&sun, spot, azimuth) {
        Shade::All => lit.clear(),
        Shade::None => {}
        Shade::Between(centre, reach) => {
            for turn in [-360, 0, 360] {
                let begin = centre.named("H_0") - reach.named("reach") + Node::given(turn, 1);
                let end = centre.named("H_0") + reach.named("reach") + Node::given(turn, 1);
                lit = lit.into_iter().flat_map(|spell| without(spell, &begin, &end)).collect();
            }
        }
    }
    Ok(lit.into_iter().filter(|(a, b)| size(b) - size(a) >= LEAST).map(|spell| clocks(&sun, spell)).collect())
}

enum Shade {
    All,
    None,
    /// Centre and reach to each side, in degrees of turning sky.
    Between(Worked<Plain>, Worked<Plain>),
}

fn size(node: &Node) -> f64 {
    node.value().si.to_f64()
}

fn shade(sun: &Sun, spot: &Spot, azimuth: &Worked<Angle>) -> Shade {
    let plain = Worked::<Plain>::new;
    let (face, phi, delta) = (|| azimuth.named("A").bare("°"), || spot.latitude.named("phi").bare("°"), || sun.declination.named("delta"));
    let a = plain((cos(face()) * sin(phi()) * cos(delta())).formula("F16 face along", "a"));
    let b = plain((sin(face()) * cos(delta())).formula("F16 face across", "b"));
    let c = plain((cos(face()) * sin(delta()) * cos(phi())).formula("F16 face level", "c"));
    let r = (a.named("a") * a.named("a") + b.named("b") * b.named("b")).sqrt();
    let r = plain(r.formula("F16 face swing", "R"));
    let (swing, level) = (size(r.node()), size(c.node()));
    // On the equator a wall to north or south is lit all day or not at all.
    if swing < 1e-9 || level.abs() >= swing {
        return if level > 0.0 { Shade::None } else { Shade::All };
    }
    let side = Node::given(if size(b.node()) < 0.0 { -1 } else { 1 }, 1);
    let centre = side * degrees(unit(a.named("a") / r.named("R")).acos());
    let reach = degrees((c.named("c") / r.named("R")).acos());
    Shade::Between(plain(centre.formula("F16 middle of shade", "H_0")), plain(reach.formula("F16 reach of shade", "reach")))
}

/// What is left of a spell when the shade from `begin` to `end` is taken out.
fn without((from, to): (Node, Node), begin: &Node, end: &Node) -> Vec<(Node, Node)> {
    let mut left = Vec::new();
    if size(begin) > size(&from) {
        left.push((from.clone(), if size(begin) < size(&to) { begin.clone() } else { to.clone() }));
    }
    if size(end) < size(&to) {
        left.push((if size(end) > size(&from) { end.clone() } else { from }, to));
    }
    left
}

fn clocks(sun: &Sun, (from, to): (Node, Node)) -> Spell {
    let clock = |turn: Node, direction| {
        let clock = (sun.noon.named("noon").bare("min") + Node::given(4, 1) * turn).dressed("min");
        Worked::new(clock.rounded(direction, 1, 1).formula("F16 sun on face", "clock"))
    };
    (clock(from, Direction::Down), clock(to, Direction::Up))
}

#[cfg(test)]
mod tests {
    use super::super::sun::day_number;
    use super::super::testing::q;
    use super::*;

    /// Spells as hours and minutes at 40° north, with clocks that follow the sun.
    fn spells(date: (i8, i8), latitude: &str, azimuth: &str) -> Vec<String> {
        let spot = Spot { latitude: q(latitude), longitude: q("-90 °"), zone: q("-6 h") };
        let found = sun_on_face(&day_number(2026, date.0, date.1).unwrap(), &spot, &q(azimuth)).unwrap();
        let said = |c: &Worked<Clock>| format!("{}:{:02}", (c.in_unit("min") / 60.0).floor(), c.in_unit("min") % 60.0);
        found.iter().map(|(a, b)| format!("{}-{}", said(a), said(b))).collect()
    }

    /// The same by standing there every minute: elevation above the horizon and less than a right angle from the wall.
    fn watched(date: (i8, i8), latitude: f64, azimuth: f64) -> Vec<(f64, f64)> {
        let spot = Spot { latitude: q(&format!("{latitude} °")), longitude: q("-90 °"), zone: q("-6 h") };
        let sun = position(&day_number(2026, date.0, date.1).unwrap(), &spot, &midday()).unwrap();
        let rad = |x: f64| x * std::f64::consts::PI / 180.0;
        let (phi, delta, a) = (rad(latitude), rad(size(sun.declination.node())), rad(azimuth));
        let mut spells: Vec<(f64, f64)> = Vec::new();
        for minute in 0..1440 {
            let h = rad((f64::from(minute) - sun.noon.in_unit("min")) / 4.0);
            let up = libm::sin(phi) * libm::sin(delta) + libm::cos(phi) * libm::cos(delta) * libm::cos(h);
            let east = -libm::cos(delta) * libm::sin(h);
            let north = libm::sin(delta) * libm::cos(phi) - libm::cos(delta) * libm::cos(h) * libm::sin(phi);
            // Bearing of the sun and of the wall, and the angle between them the short way.
            let between = (libm::atan2(east, north) - a).rem_euclid(2.0 * std::f64::consts::PI);
            let across = between.min(2.0 * std::f64::consts::PI - between);
            if up > libm::sin(rad(-5.0 / 6.0)) && across < rad(90.0) {
                match spells.last_mut() {
                    Some(last) if last.1 == f64::from(minute) - 1.0 => last.1 += 1.0,
                    _ => spells.push((f64::from(minute), f64::from(minute))),
                }
            }
        }
        spells
    }

    #[test]
    fn four_walls() {
        // In winter the north wall is never lit and the south wall all day; in summer north is lit at both ends.
        assert_eq!(spells((12, 21), "40 °", "0 °"), Vec::<String>::new());
        assert_eq!(spells((12, 21), "40 °", "180 °").len(), 1);
        assert_eq!(spells((6, 21), "40 °", "0 °").len(), 2);
        // On the equator the walls change sides at the equinox.
        assert_eq!(spells((6, 21), "0 °", "0 °").len(), 1);
        assert_eq!(spells((6, 21), "0 °", "180 °").len(), 0);
    }

    #[test]
    fn the_same_as_watching_every_minute() {
        let mut spells = 0;
        for latitude in [-50.0, -33.0, 0.0, 12.0, 40.0, 60.0] {
            for azimuth in [0.0, 30.0, 90.0, 135.0, 180.0, 250.0, 270.0, 359.0] {
                for date in [(1, 10), (3, 11), (5, 5), (6, 21), (9, 1), (12, 21)] {
                    let spot = Spot { latitude: q(&format!("{latitude} °")), longitude: q("-90 °"), zone: q("-6 h") };
                    let ours = sun_on_face(&day_number(2026, date.0, date.1).unwrap(), &spot, &q(&format!("{azimuth} °"))).unwrap();
                    let theirs: Vec<_> = watched(date, latitude, azimuth).into_iter().filter(|(a, b)| b - a > 1.0).collect();
                    let ours: Vec<_> =
                        ours.iter().map(|(a, b)| (a.in_unit("min"), b.in_unit("min"))).filter(|(a, b)| b - a > 3.0).collect();
                    assert_eq!(ours.len(), theirs.len(), "{latitude} {azimuth} {date:?}: {ours:?} {theirs:?}");
                    for (us, them) in ours.iter().zip(&theirs) {
                        assert!(us.0 <= them.0 && them.0 - us.0 <= 1.0, "{latitude} {azimuth} {date:?}: {us:?} {them:?}");
                        assert!(us.1 >= them.1 && us.1 - them.1 <= 1.0, "{latitude} {azimuth} {date:?}: {us:?} {them:?}");
                        spells += 1;
                    }
                }
            }
        }
        assert!(spells > 150, "{spells}");
    }

    #[test]
    fn out_of_range() {
        let spot = Spot { latitude: q("40 °"), longitude: q("-90 °"), zone: q("-6 h") };
        let refused = sun_on_face(&day_number(2026, 3, 11).unwrap(), &spot, &q("361 °")).unwrap_err();
        assert!(refused.wants.starts_with("0° to 360°"));
    }
}
