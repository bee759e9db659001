//! What comes from the definitions alone: completions and the man page.

use clap::CommandFactory;
use clap_mangen::Man;

use crate::work::{Outcome, Product};

use super::args::Line;

/// Completions of a shell.
pub fn completions(shell: clap_complete::Shell) -> Outcome {
    let mut out = Vec::new();
    clap_complete::generate(shell, &mut Line::command(), "hodbook", &mut out);
    text(out)
}

/// The man page of the whole, or of one command.
pub fn man(name: Option<&str>) -> Outcome {
    let mut whole = Line::command();
    whole.build();
    let page = match name {
        None => whole,
        Some(name) => match whole.find_subcommand(name) {
            Some(command) => command.clone(),
            None => {
                let known = whole.get_subcommands().filter(|c| !c.is_hide_set()).map(|c| c.get_name().to_owned());
                return Outcome::nothing("command", name, known.collect::<Vec<_>>());
            }
        },
    };
    let mut out = Vec::new();
    match Man::new(page).render(&mut out) {
        Ok(()) => text(out),
        Err(e) => Outcome::could_not(e.to_string()),
    }
}

fn text(bytes: Vec<u8>) -> Outcome {
    Outcome { product: Product::Text(String::from_utf8_lossy(&bytes).into_owned()), ..Outcome::default() }
}
