//! What the templates are given, as bytes: for whoever sets the same papers with the bare typesetter.

use super::payload::{Book, Run};
use super::settle;
use super::sheet::{Pair, copies};
use super::world::PressError;

/// The data of a run's template.
///
/// # Errors
/// What could not be written as JSON.
pub fn run_input(run: &Run) -> Result<Vec<u8>, Vec<PressError>> {
    serde_json::to_vec(&settle::run(run)).map_err(|e| vec![PressError::plain(e.to_string())])
}

/// The data of a run with one face for every copy, as press sheets are made of.
///
/// # Errors
/// A face that is not there, or what could not be written as JSON.
pub fn copies_input(run: &Run, pairs: &[Pair]) -> Result<Vec<u8>, Vec<PressError>> {
    run_input(&copies(run, pairs)?.0)
}

/// The data of a book's template.
///
/// # Errors
/// What could not be written as JSON.
pub fn book_input(book: &Book) -> Result<Vec<u8>, Vec<PressError>> {
    serde_json::to_vec(&settle::book(book)).map_err(|e| vec![PressError::plain(e.to_string())])
}
