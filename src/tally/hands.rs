//! Lifts by hand, pallets on a floor, a platform by its tag.

use crate::job::{Company, Job, Lift, Mix, Platform, Site};
use crate::quantity::expr::{Angle, Bags, Length, Mass, Node, Plain};
use crate::quantity::{Kind, Num, Quantity, Worked};
use crate::trade::lifting::{self, Place, Task};
use crate::trade::lifting_tables::{Grip, System};
use crate::trade::{floor, sums, takeoff};

use super::{Basis, Res, Role, Tally, mixes_of, res};

/// Works them for a site.
pub(super) fn work(t: &mut Tally, job: &Job, site: &Site) {
    let Some(company) = &job.company else { return };
    let Some(mix) = heaviest(job, site) else { return };
    for one in &company.lifts {
        lift(t, site, mix, one);
    }
    if let Some(deck) = &company.platform {
        platform(t, job, site, deck);
    }
    pallets(t, job, site, company);
}

/// The mix with the heaviest bag of mortar.
fn heaviest<'a>(job: &'a Job, site: &Site) -> Option<&'a Mix> {
    mixes_of(job, site).into_iter().max_by(|a, b| a.mortar.bag.value().si.compare(&b.mortar.bag.value().si))
}

fn no_twist() -> Worked<Angle> {
    let value = Quantity { kind: Kind::Angle, ..Quantity::plain(Num::int(0)) };
    Worked::new(Node::constant(value, crate::quantity::units::find_expr("°"), "A", "the feet turn, the back does not"))
}

fn lift(t: &mut Tally, site: &Site, mix: &Mix, one: &Lift) {
    let id = |name: &str| format!("{}/{}.{name}", site.id, one.code.text);
    let at = |reach: &Worked<Length>, height: &Worked<Length>| Place { reach: reach.clone(), height: height.clone(), twist: no_twist() };
    let load = res(sums::part_of(&mix.mortar.bag, &one.part));
    t.put(id("load"), "figure.lift_load", Role::Weight, Basis::MixSheet, load);
    let worked = (|| {
        let task = Task {
            system: if site.metric { System::Metric } else { System::Us },
            travel: res(lifting::travel(&one.height.0, &one.height.1))?,
            rate: one.frequency.clone(),
            lasts: one.lasts.clone(),
            grip: match one.grip.text.as_str() {
                "good" => Grip::Good,
                "fair" => Grip::Fair,
                _ => Grip::Poor,
            },
        };
        let (from, to) = (at(&one.reach.0, &one.height.0), at(&one.reach.1, &one.height.1));
        lifting::lift(&t.get::<Mass>(&id("load"))?, &from, Some(&to), &task).map_err(String::from)
    })();
    let (advised, index): (Res<Mass>, Res<Plain>) = match worked {
        Ok(lift) => (Ok(lift.advised), Ok(lift.index)),
        Err(why) => (Err(why.clone()), Err(why)),
    };
    t.put(id("advised"), "figure.lift_advised", Role::HandLift, Basis::Neighbour, advised);
    t.put(id("index"), "figure.lift_index", Role::LiftIndex, Basis::Neighbour, index);
}

/// The platform: what its tag allows, what stands on it, what may still come. No tag, no figures: nothing goes up.
fn platform(t: &mut Tally, job: &Job, site: &Site, deck: &Platform) {
    let id = |name: &str| format!("{}/platform.{name}", site.id);
    let capacity = (|| {
        let rating = deck.rating.as_ref().ok_or("the scaffold has no tag with a rating: ask the competent person")?;
        let area = res(takeoff::rectangle(&deck.size.0, &deck.size.1))?;
        res(floor::platform_capacity(rating, &area))
    })();
    t.put(id("capacity"), "figure.platform_capacity", Role::Allowed, Basis::Author, capacity);
    let load = (|| {
        let wet = format!("{}.wet_weight_at_limit", super::mix_of(job, &site.carve_mix.text).map_or("", |m| m.id.as_str()));
        let people = floor::OnDeck { count: deck.people.clone(), each: deck.person.clone() };
        let mud = floor::OnDeck { count: deck.tub_loads.clone(), each: t.get::<Mass>(&wet)? };
        let once = Worked::new(Node::constant(Quantity::plain(Num::int(1)), None, "tubs", "one tub on the deck"));
        let tub = floor::OnDeck { count: once, each: deck.tub.clone() };
        let mut deck_load = vec![people, mud, tub];
        if let (Some(bags), Some(mix)) = (&deck.bags, heaviest(job, site)) {
            deck_load.extend([&mix.mortar, &mix.additive].map(|b| floor::OnDeck { count: bags.clone(), each: b.bag.clone() }));
        }
        res(floor::on_deck(&deck_load))
    })();
    t.put(id("load"), "figure.platform_load", Role::Weight, Basis::Practice, load);
    let left = (|| res(floor::left_on_platform(&t.get(&id("capacity"))?, &t.get(&id("load"))?)))();
    t.put(id("left"), "figure.platform_left", Role::Allowed, Basis::Author, left);
    let bags = (|| {
        let mix = heaviest(job, site).ok_or("the site names no mix")?;
        res(floor::allowed(&t.get(&id("left"))?, &mix.mortar.bag))
    })();
    t.put(id("bags"), "figure.platform_bags", Role::CountAllowed, Basis::Author, bags);
}

/// What a full pallet does to the floor under it.
fn pallets(t: &mut Tally, job: &Job, site: &Site, company: &Company) {
    let Some(transport) = &company.transport else { return };
    for mix in mixes_of(job, site) {
        for (name, bagged) in [("additive", &mix.additive), ("mortar", &mix.mortar)] {
            let Some(per_pallet) = &bagged.per_pallet else { continue };
            let id = |figure: &str| format!("{}/{}.{figure}_{name}", site.id, mix.id);
            let load = (|| {
                let bags: Worked<Bags> = per_pallet.clone();
                let mass = res(floor::pallet_weight(&bags, &bagged.bag, &transport.pallet_mass))?;
                res(floor::floor_load(&mass, &transport.pallet.0, &transport.pallet.1))
            })();
            t.put(id("floor_load"), "figure.floor_load", Role::FloorWeight, Basis::Practice, load);
        }
    }
}
