//! `sound`: runs every check, faces set on the press included unless they are left out, and writes nothing but what it measured.

use crate::finding::Severity;
use crate::sound;

use super::desk::{Desk, Sets};
use super::load::Loaded;
use super::seam::{Exit, Narrator, Options, Outcome, Product};

/// Runs the command.
pub fn sound(options: &Options, deny: Option<Severity>, layout: bool, narrator: &dyn Narrator) -> Outcome {
    match try_sound(options, deny, layout, narrator) {
        Ok(outcome) | Err(outcome) => outcome,
    }
}

fn try_sound(options: &Options, deny: Option<Severity>, layout: bool, narrator: &dyn Narrator) -> Result<Outcome, Outcome> {
    let loaded = Loaded::open(options)?;
    let (register, found) = loaded.register()?;
    let mut desk = Desk::open(&loaded, &register, found, &[], if layout { Sets::Cards } else { Sets::Nothing })?;
    if layout {
        let fits = super::issue::measure(&loaded, &desk, &register, &options.out, narrator)?;
        desk.keep(fits);
        desk.close(&loaded);
    } else {
        // What accepts a finding about a face is not idle: its face was not looked at.
        desk.settle(&loaded);
    }
    let (findings, summary) = loaded.draw(options, &desk.findings);
    let exit = Exit::of(&desk.findings, deny);
    // The process ends here: to take half a million figures apart first would only cost time.
    std::mem::forget(desk);
    std::mem::forget(loaded);
    Ok(Outcome { product: Product::Nothing, findings, summary, exit, ..Outcome::default() })
}

/// The manual page of a check.
pub fn why(check: &str) -> Outcome {
    match sound::manual(check) {
        Some(page) => Outcome { product: Product::Text(page), ..Outcome::default() },
        None => Outcome::nothing("check", check, sound::CHECKS.iter().map(|c| c.name.to_owned())),
    }
}
