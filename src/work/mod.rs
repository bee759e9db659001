//! One file per command: reads, tallies, sounds, prints, commits. The only room that knows the whole.

mod seam;

pub use seam::{Align, Exit, Format, Jobs, Look, Missing, Narrator, Options, Outcome, Place, Printed, Product, Table, Tree};

/// The jobs as built here.
#[derive(Clone, Copy, Debug, Default)]
pub struct Hod;

impl Jobs for Hod {}
