//! Collects the arguments; everything else is the library.

use std::process::ExitCode;

fn main() -> ExitCode {
    hodbook::cli::run(std::env::args_os(), &hodbook::work::Hod)
}
