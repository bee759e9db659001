//! How far a command is: a bar on a terminal, lines elsewhere. Always on standard error.

use std::io::{self, IsTerminal, Write};
use std::sync::Mutex;
use std::time::Duration;

use indicatif::{ProgressBar, ProgressDrawTarget, ProgressStyle};

use crate::work::Narrator;

use super::paint::clean;

/// Tells on standard error.
pub struct Teller {
    bar: Mutex<Option<ProgressBar>>,
    terminal: bool,
}

impl Teller {
    /// Looks once whether standard error is a terminal.
    pub fn new() -> Teller {
        Teller { bar: Mutex::new(None), terminal: io::stderr().is_terminal() }
    }

    /// Takes the bar away, so that what follows starts on a clean line.
    pub fn clear(&self) {
        if let Ok(mut bar) = self.bar.lock()
            && let Some(bar) = bar.take()
        {
            bar.finish_and_clear();
        }
    }
}

impl Narrator for Teller {
    fn say(&self, line: &str) {
        let line = clean(line);
        match self.bar.lock() {
            Ok(bar) if bar.is_some() => bar.iter().for_each(|bar| bar.suspend(|| tell(&line))),
            _ => tell(&line),
        }
    }

    fn stage(&self, what: &str, steps: u64) {
        if !self.terminal {
            return;
        }
        self.clear();
        let bar = ProgressBar::with_draw_target(Some(steps), ProgressDrawTarget::stderr());
        if let Ok(style) = ProgressStyle::with_template("{msg:<24} {bar:24} {pos}/{len}") {
            bar.set_style(style.progress_chars("█▌ "));
        }
        bar.set_message(clean(what));
        bar.enable_steady_tick(Duration::from_millis(200));
        if let Ok(mut place) = self.bar.lock() {
            *place = Some(bar);
        }
    }

    fn step(&self) {
        if let Ok(bar) = self.bar.lock() {
            bar.iter().for_each(|bar| bar.inc(1));
        }
    }
}

/// A line on standard error. Nobody may be listening, and that is no reason to fail.
pub fn tell(line: &str) {
    let _ = writeln!(io::stderr().lock(), "{line}");
}
