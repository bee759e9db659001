//! Q4: bags ordered in fractions, or rounded down.

use std::cmp::Ordering;

use crate::finding::{Finding, Severity};
use crate::prose::Typed;
use crate::quantity::num::Direction;
use crate::quantity::{Kind, Num};
use crate::sound::told::{at_value, authored, once_a_place, text};
use crate::sound::{Check, Ground, Seen};

use super::bought::{self, Bought, shown};

/// The check.
pub const CHECK: Check = Check {
    name: "order-not-whole",
    ids: &["Q4"],
    severities: &[Severity::Stop],
    title: "an order is not in whole bags, or is short of the need",
    manual: include_str!("order_not_whole.md"),
    twins: &[("es", include_str!("order_not_whole.es.md"))],
    run,
};

/// Words of a sentence about an order.
const ORDER: &[&str] = &[
    "order",
    "ordered",
    "orders",
    "yard",
    "deliver",
    "delivered",
    "delivery",
    "buy",
    "truck",
    "pedido",
    "pida",
    "ordene",
    "compre",
    "entrega",
    "camión",
];

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    let told = bought::all(ground).into_iter().filter_map(|b| one(ground, &b));
    let mut found: Vec<Finding> = told.collect();
    found.extend(typed(ground));
    once_a_place(found)
}

/// What the yard was told.
fn one(ground: &Ground<'_>, bought: &Bought<'_>) -> Option<Finding> {
    let told = bought.told?;
    let (said, _) = authored(ground, told.node())?;
    let bags = &told.value().si;
    let (material, mix) = (bought.material, &bought.mix.name.text);
    let need = bought.loads.mul(&bought.per_load).round(Direction::Up, &num_rational::BigRational::from_integer(1.into()));
    let whole = bags.exact().is_some_and(num_rational::BigRational::is_integer);
    let short = bags.compare(&Num::Exact(need.clone())) == Ordering::Less;
    let title = match (whole, short) {
        (true, false) => return None,
        (false, _) => format!("{said} of {material} for {mix} is no order, a yard sells whole bags"),
        (true, true) => format!("{said} of {material} for {mix} are fewer than the {need} that are needed"),
    };
    let loads = text(ground, &bought.id("loads"), bought.site.metric)?;
    let finding = Finding::new(CHECK.name, Severity::Stop, title)
        .derived(format!("{loads} × {} = {need} bags, rounded up, without a reserve", bought.per_load.plain()))
        .source("common practice, no source: rounding down stops the job")
        .help(format!("order {need} bags and the reserve, or leave `delivery.ordered` out: then what is computed is ordered"))
        .figure(bought.id(&format!("bags_{material}")))
        .about(format!("{}/{}", bought.site.id, bought.mix.id));
    Some(at_value(finding, ground, told.node(), "as the yard was told"))
}

/// Fractions of bags typed into a sentence about an order; steps of mixing halve bags by eye, and that is no order.
fn typed(ground: &Ground<'_>) -> Vec<Finding> {
    let of_sites = ground.texts_of_mixes().filter(|seen| seen.subject.mix(ground.job).is_none());
    of_sites.flat_map(Seen::typed).filter_map(fraction).collect()
}

fn fraction(typed: &Typed) -> Option<Finding> {
    let bags = typed.quantity.as_ref().filter(|q| q.kind == Kind::Bags)?;
    let whole = bags.si.exact().is_some_and(num_rational::BigRational::is_integer);
    let about_order = typed.around.split(|c: char| !c.is_alphanumeric()).any(|w| ORDER.contains(&w));
    if whole || !about_order {
        return None;
    }
    let up = bags.si.round(Direction::Up, &num_rational::BigRational::from_integer(1.into()));
    let finding = Finding::new(CHECK.name, Severity::Stop, format!("`{}` is no order, a yard sells whole bags", typed.text))
        .at(typed.span, "not whole")
        .derived(format!("{} rounded up is {up}", shown(&bags.si)))
        .source("common practice, no source: rounding down stops the job")
        .help(format!("print the figure of the order, or write {up} bags and the reserve"));
    Some(finding)
}
