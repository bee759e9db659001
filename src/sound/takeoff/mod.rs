//! Takeoff and order: measures that give no area, what is bought, how it comes and where it stands.

mod bought;
pub mod opening_misplaced;
pub mod order_knife_edge;
pub mod order_not_whole;
pub mod order_over_payload;
pub mod own_haul_over_payload;
pub mod pallet_floor_unknown;
pub mod pallet_over_floor;
mod pallets;
pub mod prices_old;
pub mod reserve_too_small;
pub mod reveal_unstated;
pub mod surface_unworked;
pub mod wall_spans_lots;
pub mod waste_unlikely;
