//! Mix and mixer: the right powder in the right ratio, and a batch that the mixer can mix.

pub mod batch_over_mixer;
pub mod batch_over_rating;
pub mod mortar_class_wrong;
pub mod ratio_off_design;

use crate::job::{BatchPlan, Job, Mixer, Site};

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
