//! The base: what the coats hang on.

pub mod barrier_missing;
pub mod firebox_uncleared;
pub mod framing_bends_too_far;
pub mod free_standing_unsigned;
pub mod lath_fastening_wide;
pub mod lath_through_joint;
pub mod metal_touches_mix;
pub mod mix_on_bad_base;
pub mod panel_over_limit;
pub mod scratch_state_unset;
pub mod water_contact_unsafe;
pub mod waterproofing_undetailed;
pub mod weep_clearance_short;
pub mod weight_over_allowance;
