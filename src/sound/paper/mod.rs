//! The paper itself: typed numbers, and faces that must fit.

mod audit;
pub mod brand_named;
pub mod code_or_word_twice;
pub mod drawing_of_nothing;
pub mod face_overflows;
pub(super) mod fitted;
pub mod fixed_rounded_unsafe;
pub mod mix_revision_not_in_force;
pub mod number_without_unit;
pub mod past_good_until;
pub mod placeholder_left;
pub mod type_below_class;
pub mod typed_number;
pub mod typed_number_ambiguous;
pub mod typed_number_differs;
pub mod typed_number_unlinked;
pub mod typed_water;
pub mod units_mixed;
pub mod vague_quantity;
pub mod write_in_without_box;
