//! When we are wrong: one polite line, once, and exit code 101.

use std::panic::{self, AssertUnwindSafe};
use std::sync::atomic::{AtomicBool, Ordering};

use super::progress::tell;

/// Exit code of a bug of ours.
pub const CODE: u8 = 101;

static TOLD: AtomicBool = AtomicBool::new(false);

/// Replaces the panic message for the rest of the process.
///
/// Several threads may panic on one bug: only the first is told. `RUST_BACKTRACE` brings the usual
/// message back, for whoever mends it.
pub fn install() {
    let usual = panic::take_hook();
    panic::set_hook(Box::new(move |about| {
        if std::env::var_os("RUST_BACKTRACE").is_some_and(|v| v != "0") {
            usual(about);
        }
        if TOLD.swap(true, Ordering::Relaxed) {
            return;
        }
        let place = about.location().map_or_else(|| "no place".to_owned(), |at| format!("{}:{}", at.file(), at.line()));
        tell(&line(&place, about.payload_as_str().unwrap_or("no message")));
    }));
}

fn line(place: &str, message: &str) -> String {
    let message = super::paint::clean(message);
    format!(
        "hodbook {}: sorry, a bug of ours at {place} ({message}); please send this line, the command and the job folder to whoever keeps Hodbook",
        env!("CARGO_PKG_VERSION")
    )
}

/// Runs something; `None` if it panicked.
pub fn guard<T>(work: impl FnOnce() -> T) -> Option<T> {
    panic::catch_unwind(AssertUnwindSafe(work)).ok()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn one_polite_line() {
        let line = line("src/trade/wall.rs:12", "no\nwall");
        let version = env!("CARGO_PKG_VERSION");
        assert_eq!(
            line,
            format!(
                "hodbook {version}: sorry, a bug of ours at src/trade/wall.rs:12 (no wall); \
                 please send this line, the command and the job folder to whoever keeps Hodbook"
            )
        );
        assert_eq!(guard(|| 3), Some(3));
    }
}
