//! Knife edges: a wall given in metric and in US units buys the same loads, and float noise neither adds nor loses
//! half a load.

use super::arches::semicircular_opening;
use super::coats::{annulus, scratch};
use super::cone::cone_annulus;
use super::loads::{Step, loads};
use super::net::net;
use super::polygon::{polygon, polygon_perimeter};
use super::relief::mixed_volume;
use super::sums::times;
use super::takeoff::{Around, circle, column, rectangle, reveal, trapezoid};
use crate::quantity::expr::{Area, Length, Node, Volume, Worked};
use crate::quantity::{Kind, Num, Quantity, units};

/// A length of whole sixteenths of an inch, in inches or, the same length, in millimetres.
fn length(sixteenths: i64, metric: bool) -> Worked<Length> {
    let (number, unit) = if metric { (Num::frac(sixteenths * 127, 80), "mm") } else { (Num::frac(sixteenths, 16), "in") };
    let unit = units::find_expr(unit).unwrap();
    Worked::new(Node::authored(Quantity::of(&number, unit), Some(unit), "", "", None))
}

fn share(percent: i64) -> Worked<crate::quantity::expr::Share> {
    let unit = units::find_expr("%").unwrap();
    let value = Quantity { kind: Kind::Share, ..Quantity::of(&Num::int(percent), unit) };
    Worked::new(Node::authored(value, Some(unit), "", "", None))
}

/// Numbers that look like chance and are the same on every machine.
struct Dice(u64);

impl Dice {
    fn roll(&mut self, from: i64, to: i64) -> i64 {
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        from + i64::try_from(self.0 >> 33).unwrap() % (to - from + 1)
    }
}

/// A wall of every exact shape in one net area.
fn wall(dice: &mut Dice, metric: bool) -> Worked<Area> {
    let mut l = |from, to| length(dice.roll(from, to), metric);
    let gross = [
        rectangle(&l(1600, 8000), &l(1000, 3000)).unwrap(),
        trapezoid(&l(0, 500), &l(500, 1000), &l(200, 900)).unwrap(),
        polygon(&[(l(0, 9), l(0, 9)), (l(900, 2000), l(0, 300)), (l(500, 900), l(900, 2000)), (l(0, 99), l(900, 2000))]).unwrap(),
    ];
    let opening = rectangle(&l(16, 700), &l(16, 900)).unwrap();
    let corners = [(l(0, 0), l(0, 0)), (l(0, 0), l(300, 300)), (l(200, 200), l(300, 300)), (l(200, 200), l(0, 0))];
    let back = reveal(&polygon_perimeter(&corners, false).unwrap(), &l(16, 200)).unwrap();
    net(&gross, &[opening], &[back]).unwrap()
}

#[test]
fn a_wall_in_either_system_buys_the_same_loads() {
    for seed in 0..200 {
        let answer = |metric: bool| {
            let mut dice = Dice(seed);
            let area = wall(&mut dice, metric);
            let carve = mixed_volume(&area, &length(dice.roll(4, 40), metric), &share(12), &share(5)).unwrap();
            let under = scratch(&area, &length(8, metric), &length(2, metric), &share(5)).unwrap();
            // The yield belongs to the mix, whatever the site is measured in.
            let y: Worked<Volume> = Worked::read("0.93 ft3").unwrap();
            [carve, under].map(|v| {
                let need = loads(&v, &y, Step::Half).unwrap();
                assert!(need.loads.value().si.exact().is_some() && need.need.value().si.exact().is_some());
                (need.need.value().si.exact().cloned(), need.loads.value().si.exact().cloned())
            })
        };
        assert_eq!(answer(false), answer(true), "wall {seed}");
    }
}

/// Exactly `halves` half loads, in either system, and a hair less and more.
#[test]
fn an_exact_need_stands_on_its_half_load() {
    for halves in 1..=120_i64 {
        for metric in [false, true] {
            // 1 in thick on 12 in by `halves` × 6 in is halves/24 ft3; y is a twelfth of a cubic foot.
            let volume = |extra: i64| {
                let face = rectangle(&length(192, metric), &length(halves * 96 + extra, metric)).unwrap();
                mixed_volume(&face, &length(16, metric), &share(0), &share(0)).unwrap()
            };
            let y: Worked<Volume> = Worked::read("144 in3").unwrap();
            let n = |extra| loads(&volume(extra), &y, Step::Half).unwrap().loads.value().si.clone();
            assert_eq!(n(0), Num::frac(halves, 2), "{halves} {metric}");
            assert_eq!(n(1), Num::frac(halves + 1, 2), "{halves} {metric}");
            assert_eq!(n(-1), Num::frac(halves, 2), "{halves} {metric}");
        }
    }
}

/// Round work is worked in floats: a need of exactly `halves` half loads must stand on them all the same.
#[test]
fn noise_of_round_work_neither_adds_nor_loses_half_a_load() {
    let count = |n: i64| Worked::new(Node::authored(Quantity::plain(Num::int(n)), None, "", "", None));
    for halves in 1..=150_i64 {
        for (metric, other) in [(false, false), (true, false), (false, true), (true, true)] {
            let one = |m: bool| annulus(&length(144, m), &length(19, m), &length(1999, m), Around::Half).unwrap();
            let whole = |m: bool| annulus(&length(144, m), &length(19, m), &length(1999, m), Around::Whole).unwrap();
            let cone =
                |m: bool| cone_annulus(&length(577, m), &length(384, m), Some(&length(8, m)), &length(21, m), &length(768, m)).unwrap();
            let disc = |m: bool| mixed_volume(&circle(&length(701, m)).unwrap(), &length(17, m), &share(0), &share(0)).unwrap();
            let head = |m: bool| {
                let arch = semicircular_opening(&length(672, m), &length(1200, m)).unwrap();
                mixed_volume(&arch, &length(17, m), &share(0), &share(0)).unwrap()
            };
            // A load is twice the piece, so that so many pieces are so many half loads.
            for (piece, load) in [
                (one(metric), whole(other)),
                (cone(metric), times(&cone(other), &count(2)).unwrap()),
                (disc(metric), times(&disc(other), &count(2)).unwrap()),
                (head(metric), times(&head(other), &count(2)).unwrap()),
            ] {
                let all = times(&piece, &count(halves)).unwrap();
                let n = loads(&all, &load, Step::Half).unwrap().loads.value().si.clone();
                assert_eq!(n, Num::frac(halves, 2), "{halves} {metric} {other}");
            }
            // A face of round work, not its volume.
            let post = column(&length(224, metric), &length(1728, metric), Around::Half).unwrap();
            let posts = super::net::times(&post, &count(halves)).unwrap();
            let v = mixed_volume(&posts, &length(16, metric), &share(0), &share(0)).unwrap();
            let load = mixed_volume(
                &column(&length(224, other), &length(1728, other), Around::Whole).unwrap(),
                &length(16, other),
                &share(0),
                &share(0),
            );
            assert_eq!(loads(&v, &load.unwrap(), Step::Half).unwrap().loads.value().si, Num::frac(halves, 2));
        }
    }
}
