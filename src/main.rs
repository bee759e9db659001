//! Collects the arguments; everything else is the library.

use std::process::ExitCode;

/// A run makes millions of small values on all processors; the system's own allocator spends a fifth of the time on them.
#[global_allocator]
static MEMORY: mimalloc::MiMalloc = mimalloc::MiMalloc;

fn main() -> ExitCode {
    hodbook::cli::run(std::env::args_os(), &hodbook::work::Hod)
}
