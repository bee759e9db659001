//! Examples and exit codes: the foot of every help page.

/// Exit codes that hold for every command.
macro_rules! exits {
    () => {
        "Exit codes:
  0  clean: nothing stops the paper (an open HOLD prints with its band)
  1  a STOP: the papers it touches were not printed
  2  could not run: a folder, a file or an option is not as it must be
  3  nothing found under that name
  101  a bug of ours"
    };
}

macro_rules! foot {
    ($example:literal) => {
        concat!("Example:\n", $example, "\n\n", exits!())
    };
}

pub const MAIN: &str = concat!(
    "Example, a whole job:
  hodbook setout yard-wall            then fill in the files
  hodbook --job yard-wall takeoff     what to buy
  hodbook --job yard-wall sound       what is wrong
  hodbook --job yard-wall issue       cards and book in out/

Findings and results go to standard output, the rest to standard error.
`hodbook COMMAND --help` has an example of each.

",
    exits!()
);

pub const SETOUT: &str = foot!("  hodbook setout yard-wall");
pub const TAKEOFF: &str = foot!(
    "  hodbook takeoff larkenfell
  hodbook takeoff larkenfell --yard-list
  hodbook takeoff --yard-list=csv > order.csv"
);
pub const GAUGE: &str = foot!("  hodbook gauge carve-24");
pub const SOUND: &str = foot!(
    "  hodbook sound --deny hold
  hodbook sound --no-layout
  hodbook sound --why start-water-over-limit"
);
pub const DAYSHEET: &str = foot!("  hodbook daysheet larkenfell 2026-03-02");
pub const PLUMB: &str = foot!(
    "  hodbook plumb larkenfell/LF-1.net_area
  hodbook plumb --all --format json"
);
pub const ISSUE: &str = foot!(
    "  hodbook issue --proof      to read and correct
  hodbook issue M-01 M-02    two cards only"
);
pub const COMPLETIONS: &str = foot!("  hodbook completions bash > hodbook.bash");
pub const MAN: &str = foot!(
    "  hodbook man > hodbook.1
  hodbook man issue > hodbook-issue.1"
);
pub const SCHEMA: &str = foot!("  hodbook schema mix > mix.schema.json");
pub const MANUAL: &str = foot!("  hodbook manual mix");
