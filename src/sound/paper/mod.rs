//! The paper itself: typed numbers, and faces that must fit.

mod audit;
pub mod face_overflows;
pub(super) mod fitted;
pub mod type_below_class;
pub mod typed_number;
pub mod typed_number_differs;
pub mod typed_number_unlinked;
pub mod typed_water;
