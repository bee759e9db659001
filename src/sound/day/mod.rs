//! The day plan and its crew: what can be placed, carved and left behind in a day; what comes before and after it.

pub mod batch_stale_before_placed;
pub mod break_while_patch_closes;
pub mod carving_after_dark;
mod clauses;
pub mod clock_starts_wrong;
pub mod crew_over_booked;
pub mod dates_out_of_order;
pub mod day_over_carve_limit;
pub mod day_without_slack;
pub mod last_batch_too_late;
pub mod mixing_slower_than_placing;
pub mod next_coat_too_soon;
pub mod next_trade_too_soon;
mod plans;
mod soon;
pub mod stop_line_mid_texture;
