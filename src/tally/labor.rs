//! Hours and money of a site. Money is figured for the estimator and never printed on a crew's card.

use crate::job::{Job, LaborPlan, Prices, Rates, Site};
use crate::quantity::expr::{Area, Duration, Loads, Money, Node, Plain};
use crate::quantity::{Num, Quantity, Worked};
use crate::trade::{cost, labour};

use super::{Basis, Res, Role, Tally, res};

/// Works them, as far as rates, prices and the site's plan go.
pub(super) fn work(t: &mut Tally, job: &Job, site: &Site) {
    let Some(company) = &job.company else { return };
    if let (Some(rates), Some(plan)) = (&company.rates, &site.labor) {
        hours(t, site, rates, plan);
        if let Some(prices) = &company.prices {
            money(t, job, site, prices);
        }
    }
}

fn id(site: &Site, name: &str) -> String {
    format!("{}.{name}", site.id)
}

fn once() -> Worked<Plain> {
    Worked::new(Node::constant(Quantity::plain(Num::int(1)), None, "times", "once over the wall"))
}

fn hours(t: &mut Tally, site: &Site, rates: &Rates, plan: &LaborPlan) {
    let put = |t: &mut Tally, name: &str, label, hours: Res<Duration>| t.put(id(site, name), label, Role::Hours, Basis::Practice, hours);
    for surface in &site.surfaces {
        let own = rates.textures.iter().find(|r| r.texture.text == surface.texture.text);
        let area = format!("{}/{}.net_area", site.id, surface.code.text);
        for (name, label) in [("hours_place", "figure.hours_place"), ("hours_carve", "figure.hours_carve")] {
            let hours = (|| {
                let paces = own.ok_or_else(|| format!("the company file has no rates for {}", surface.texture.text))?;
                let pace = if name == "hours_place" { &paces.place } else { &paces.carve };
                res(labour::task_hours(&t.get::<Area>(&area)?, &once(), pace))
            })();
            t.put(format!("{}/{}.{name}", site.id, surface.code.text), label, Role::Hours, Basis::Practice, hours);
        }
    }
    let coated: Vec<String> = coated(t, site);
    if let (Some(lath), Some(_), false) = (&rates.lath, &site.lath, coated.is_empty()) {
        let hours = (|| res(labour::task_hours(&lathed(t, &coated)?, &once(), lath)))();
        put(t, "hours_lath", "figure.hours_lath", hours);
    }
    if let (Some(scratch), false) = (&rates.scratch, coated.is_empty()) {
        let hours = (|| res(labour::task_hours(&lathed(t, &coated)?, &once(), scratch)))();
        put(t, "hours_scratch", "figure.hours_scratch", hours);
    }
    for (name, label) in [("hours_place", "figure.hours_place"), ("hours_carve", "figure.hours_carve")] {
        let each: Result<Vec<Worked<Duration>>, String> =
            site.surfaces.iter().map(|s| t.get(&format!("{}/{}.{name}", site.id, s.code.text))).collect();
        let sum = each.and_then(|h| res(labour::total_hours(&h)));
        put(t, name, label, sum);
    }
    if let Some(n) = &rates.placers_per_tender {
        let hours = (|| res(labour::tender_hours(&t.get(&id(site, "hours_place"))?, n)))();
        put(t, "hours_tender", "figure.hours_tender", hours);
    }
    put(t, "hours_cure", "figure.hours_cure", Ok(plan.cure.clone()));
    if let (Some(color), true) = (&rates.color, t.figure(&id(site, "developed")).is_some()) {
        let hours = (|| res(labour::task_hours(&t.get::<Area>(&id(site, "developed"))?, &plan.passes, color)))();
        put(t, "hours_color", "figure.hours_color", hours);
    }
    let tasks = ["hours_lath", "hours_scratch", "hours_place", "hours_carve", "hours_tender", "hours_cure", "hours_color"];
    let known: Vec<String> = tasks.iter().map(|n| id(site, n)).filter(|id| t.figure(id).is_some()).collect();
    let all: Result<Vec<Worked<Duration>>, String> = known.iter().map(|id| t.get(id)).collect();
    let sum = all.and_then(|h| res(labour::total_hours(&h)));
    put(t, "task_hours", "figure.task_hours", sum);
    put(t, "crew_hours", "figure.crew_hours", res(labour::crew_hours(&plan.people, &plan.days, &plan.shift)));
    let paid = (|| res(labour::labour(&t.get(&id(site, "task_hours"))?, &t.get(&id(site, "crew_hours"))?)))();
    put(t, "hours", "figure.hours", paid);
}

/// Areas of the surfaces that get a scratch coat.
fn coated(t: &Tally, site: &Site) -> Vec<String> {
    let scratched = |code: &str| t.figure(&format!("{}/{code}.scratch_volume", site.id)).is_some();
    let codes = site.surfaces.iter().map(|s| s.code.text.as_str()).filter(|code| scratched(code));
    codes.map(|code| format!("{}/{code}.net_area", site.id)).collect()
}

/// Their sum.
pub(super) fn lathed(t: &Tally, areas: &[String]) -> Res<Area> {
    let each: Result<Vec<Worked<Area>>, String> = areas.iter().map(|id| t.get(id)).collect();
    each.and_then(|a| res(crate::trade::net::total(&a)))
}

/// The ids of the areas that get lath and a scratch coat.
pub(super) fn under_scratch(t: &Tally, site: &Site) -> Vec<String> {
    coated(t, site)
}

fn money(t: &mut Tally, job: &Job, site: &Site, prices: &Prices) {
    let put = |t: &mut Tally, name: String, label, cost: Res<Money>| t.put(name, label, Role::Money, Basis::Author, cost);
    let mut parts: Vec<String> = Vec::new();
    for mix in super::mixes_of(job, site) {
        let name = format!("{}/{}.cost", site.id, mix.id);
        let cost = (|| {
            let priced = prices.mixes.iter().find(|(n, _)| n.text == mix.name.text);
            let (_, price) = priced.ok_or_else(|| format!("the company file has no price for {}", mix.name.text))?;
            res(cost::load_cost(&t.get::<Loads>(&format!("{}/{}.loads", site.id, mix.id))?, price))
        })();
        put(t, name.clone(), "figure.cost_mix", cost);
        parts.push(name);
    }
    if let (Some(price), true) = (&prices.lath_and_paper, site.lath.is_some()) {
        let areas = coated(t, site);
        let cost = (|| res(cost::area_cost(&lathed(t, &areas)?, price)))();
        put(t, id(site, "cost_lath"), "figure.cost_lath", cost);
        parts.push(id(site, "cost_lath"));
    }
    if let (Some(price), true) = (&prices.finish, t.figure(&id(site, "developed")).is_some()) {
        let cost = (|| res(cost::area_cost(&t.get::<Area>(&id(site, "developed"))?, price)))();
        put(t, id(site, "cost_finish"), "figure.cost_finish", cost);
        parts.push(id(site, "cost_finish"));
    }
    let labor = (|| res(cost::labour_cost(&t.get(&id(site, "hours"))?, &prices.labor)))();
    put(t, id(site, "cost_labor"), "figure.cost_labor", labor);
    parts.push(id(site, "cost_labor"));
    let all: Result<Vec<Worked<Money>>, String> = parts.iter().map(|id| t.get(id)).collect();
    let sum = all.and_then(|c| res(cost::subtotal(&c)));
    put(t, id(site, "cost"), "figure.cost", sum);
    let price = (|| res(cost::marked_up(&t.get(&id(site, "cost"))?, &prices.markup)))();
    put(t, id(site, "price"), "figure.price", price);
    let per_area = (|| res(cost::per_area(&t.get(&id(site, "price"))?, &t.get(&id(site, "area"))?)))();
    t.put(id(site, "price_per_area"), "figure.price_per_area", Role::PriceOfArea, Basis::Author, per_area);
}
