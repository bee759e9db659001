//! Mix and mixer: the right powder in the right ratio, and a batch that the mixer can mix.

pub mod admixture_off_sheet;
pub mod bag_differs_from_mix;
pub mod batch_over_mixer;
pub mod batch_over_rating;
pub mod batch_under_mixer;
mod charging;
pub mod charging_order_differs;
pub mod chloride_over_lath;
pub mod drum_for_stiff_mix;
pub mod half_by_eye;
pub mod half_load_not_allowed;
pub mod half_of_mortar_unsaid;
pub mod half_of_one_bag;
pub mod lot_damp_or_lumpy;
pub mod lot_past_shelf_life;
pub mod mixing_time_under_limit;
pub mod mixing_told_short;
pub mod mortar_class_wrong;
pub mod pigment_over_limit;
pub mod pigment_without_cement;
pub mod ratio_off_design;
pub mod strength_promised;
mod telling;
pub mod weighed_density_off;
pub mod wet_density_unlikely;
pub mod yield_not_weighed;
pub mod yield_unlikely;

use crate::job::{Bagged, BatchPlan, Job, Lot, Mix, Mixer, Site};
use crate::quantity::expr::Node;
use crate::quantity::{Num, Quantity};
use crate::tally::mix_of;

/// Every batch that a site plans, with its mixer.
fn plans(job: &Job) -> impl Iterator<Item = (&Site, &BatchPlan, &Mixer)> {
    job.sites.iter().flat_map(move |site| {
        site.batches.iter().filter_map(move |plan| {
            let mixer = job.company.iter().flat_map(|c| &c.mixers).find(|m| m.code.text == plan.mixer.text)?;
            Some((site, plan, mixer))
        })
    })
}

/// What to plan instead: the most loads the mixer takes of this mix.
fn instead(most: Option<&str>, mixer: &str) -> String {
    match most {
        Some(most) if !most.starts_with("0 ") => format!("plan at most {most} in the {mixer}: `loads: {most}`"),
        _ => format!("the {mixer} takes no load of it: name another mixer"),
    }
}

/// Name of a mixer on a screen.
fn named(mixer: &Mixer) -> &str {
    mixer.names.first().map_or(mixer.code.text.as_str(), |(_, n)| n.text.as_str())
}

/// Every lot that came to a site, with its mix.
fn lots(job: &Job) -> impl Iterator<Item = (&Site, &Mix, &Lot)> {
    job.sites.iter().flat_map(move |site| site.lots.iter().filter_map(move |lot| Some((site, mix_of(job, &lot.mix.text)?, lot))))
}

/// The material of a mix that a lot is of.
fn bagged<'a>(mix: &'a Mix, material: &str) -> &'a Bagged {
    if material == "additive" { &mix.additive } else { &mix.mortar }
}

/// Loads as a screen says them.
fn loads(node: &Node) -> String {
    let number = node.value().si.plain();
    format!("{number} {}", is_many(node.value(), "load", "loads"))
}

/// The verb of a count.
fn is(count: &Quantity) -> &'static str {
    is_many(count, "is", "are")
}

fn is_many(count: &Quantity, one: &'static str, many: &'static str) -> &'static str {
    if count.si.compare(&Num::int(1)).is_gt() { many } else { one }
}
