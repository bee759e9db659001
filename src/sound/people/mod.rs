//! People: what can hurt them, and the words and plans that keep it from happening.

mod called;
mod conditions;
mod facts;
mod phrases;

pub mod authority_order_wrong;
pub mod caution_missing;
pub mod dust_plan_missing;
pub mod eyewash_missing;
pub mod ground_fault_missing;
pub mod hand_in_turning_mixer;
pub mod heat_without_shade;
pub mod lift_far_over_advised;
pub mod lift_over_advised;
pub mod platform_overloaded;
pub mod platform_without_tag;
pub mod safety_text_not_in_crew_language;
pub mod skin_and_eye_caution_missing;
pub mod solvent_without_air;
pub mod wash_out_into_ground;
pub mod wash_out_unplanned;
pub mod wash_station_missing;

use crate::finding::Finding;
use crate::job::{Safety, Site, Text};

/// A site that says nothing of a plan it must have: the finding points at the group, or at the site's name without one.
fn unsaid(finding: Finding, site: &Site, key: &str) -> Finding {
    let at = site.safety.as_ref().map_or(site.name.at, |s| s.at);
    finding.at(at, format!("states no `safety.{key}`")).absent().about(key)
}

/// What a site says under a key of `safety`; an empty text says nothing.
fn said<'a>(site: &'a Site, key: fn(&'a Safety) -> Option<&'a Text>) -> Option<&'a Text> {
    site.safety.as_ref().and_then(key).filter(|t| !t.text.trim().is_empty())
}
