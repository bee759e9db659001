//! The command line, defined once: parsing, help pages, completions and the man page come from here.

use std::path::PathBuf;

use clap::builder::Styles;
use clap::{ArgAction, Parser, Subcommand, ValueEnum};
use jiff::civil::Date;

use super::help;

/// Works every number of a carved-cement wall from your files, and prints the cards and the book
#[derive(Debug, Parser)]
#[command(name = "hodbook", version, about, after_help = help::MAIN, subcommand_help_heading = "In the order of the job")]
#[command(disable_help_flag = true, disable_version_flag = true, disable_help_subcommand = true)]
#[command(max_term_width = 100, subcommand_value_name = "COMMAND", styles = Styles::styled(), infer_subcommands = false)]
pub struct Line {
    /// What holds for every command.
    #[command(flatten)]
    pub common: Common,
    /// The command.
    #[command(subcommand)]
    pub command: Command,
}

/// Options of every command; they may stand before or after it.
#[derive(Debug, clap::Args)]
#[command(next_help_heading = "For every command")]
pub struct Common {
    /// Job folder to read
    #[arg(long, value_name = "DIR", default_value = "content", global = true)]
    pub job: PathBuf,
    /// Folder for everything generated
    #[arg(long, value_name = "DIR", default_value = "out", global = true)]
    pub out: PathBuf,
    /// Date, as 2026-03-02 [default: the company file's or today]
    #[arg(long, value_name = "DATE", value_parser = date, global = true)]
    pub on: Option<Date>,
    /// For reading, a line each, or a JSON value a line
    #[arg(long, value_enum, value_name = "plain|short|json", default_value = "plain", hide_possible_values = true, global = true)]
    pub format: Form,
    /// Colour; auto asks the terminal and NO_COLOR
    #[arg(long, value_enum, value_name = "auto|always|never", default_value = "auto", hide_possible_values = true, global = true)]
    pub color: When,
    /// Write what the press is given to this folder too: for the benchmark
    #[arg(long, value_name = "DIR", hide = true, global = true)]
    pub dump: Option<PathBuf>,
    /// Show this page
    #[arg(short, long, action = ArgAction::HelpShort, global = true)]
    pub help: Option<bool>,
    /// Show the version
    #[arg(short = 'V', long, action = ArgAction::Version)]
    pub version: Option<bool>,
}

/// Value of `--format`.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub enum Form {
    /// for reading
    Plain,
    /// one line each
    Short,
    /// one JSON value a line
    Json,
}

/// Value of `--color`.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub enum When {
    /// on a terminal, unless NO_COLOR is set
    Auto,
    /// also into files and pipes
    Always,
    /// none
    Never,
}

/// Value of `--deny`.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub enum Deny {
    /// a HOLD nobody accepted is as bad as a STOP
    Hold,
    /// so is a WARN
    Warn,
}

/// Value of `--yard-list`.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub enum YardForm {
    /// a table
    Text,
    /// comma-separated values
    Csv,
    /// the paper
    Pdf,
}

/// The commands.
#[derive(Debug, Subcommand)]
pub enum Command {
    /// Lay out a new job folder with commented starter files
    #[command(after_help = help::SETOUT)]
    Setout {
        /// Folder to make; must be new or empty
        #[arg(value_name = "DIR")]
        dir: PathBuf,
    },
    /// Measure the walls: areas, volumes, loads, bags, weight
    #[command(after_help = help::TAKEOFF)]
    Takeoff {
        /// One site, by file name; all sites if left out
        #[arg(value_name = "SITE")]
        site: Option<String>,
        /// What to order instead, bag by bag; pdf makes the paper and enters nothing
        #[arg(long, value_enum, value_name = "text|csv|pdf", num_args = 0..=1, require_equals = true, default_missing_value = "text", hide_possible_values = true)]
        yard_list: Option<YardForm>,
    },
    /// Measure the batches: powder and water for each mixer, and the ladder
    #[command(after_help = help::GAUGE)]
    Gauge {
        /// One mix, by file name; all mixes if left out
        #[arg(value_name = "MIX")]
        mix: Option<String>,
    },
    /// Tap for hollow spots: run every check and list what was found
    #[command(after_help = help::SOUND)]
    Sound {
        /// Show the manual page of one check instead
        #[arg(long, value_name = "NAME", conflicts_with = "deny")]
        why: Option<String>,
        /// Let an open HOLD, or a WARN too, end the run as a STOP does
        #[arg(long, value_enum, value_name = "hold|warn", hide_possible_values = true)]
        deny: Option<Deny>,
        /// Leave out the checks of faces, which need every new or changed card to be set
        #[arg(long, conflicts_with = "why")]
        no_layout: bool,
    },
    /// Plan a day: batches by the clock, carve windows, late starts, on the day's weather
    #[command(after_help = help::DAYSHEET)]
    Daysheet {
        /// The site, by file name or code
        #[arg(value_name = "SITE")]
        site: String,
        /// A day of its plan, as 2026-03-02
        #[arg(value_name = "DATE", value_parser = date)]
        date: Date,
    },
    /// Follow one printed number down to the line somebody typed
    #[command(after_help = help::PLUMB, override_usage = "hodbook plumb [OPTIONS] <FIGURE>\n       hodbook plumb [OPTIONS] --all")]
    Plumb {
        /// Figure id, such as larkenfell/LF-1.net_area
        #[arg(value_name = "FIGURE", required_unless_present = "all")]
        figure: Option<String>,
        /// Every figure that was worked, printed or not
        #[arg(long, conflicts_with = "figure")]
        all: bool,
    },
    /// Make the cards and the book, and enter them in the register
    #[command(after_help = help::ISSUE)]
    Issue {
        /// Codes of papers, such as M-01, or sites; everything if left out
        #[arg(value_name = "ID")]
        ids: Vec<String>,
        /// Make them with a PROOF band and enter nothing
        #[arg(long)]
        proof: bool,
    },
    /// Print the completions of a shell
    #[command(hide = true, after_help = help::COMPLETIONS)]
    Completions {
        /// Shell
        #[arg(value_enum, value_name = "SHELL")]
        shell: clap_complete::Shell,
    },
    /// Print the man page, of one command if named
    #[command(hide = true, after_help = help::MAN)]
    Man {
        /// Command
        #[arg(value_name = "COMMAND")]
        command: Option<String>,
    },
    /// Print the JSON Schema of one kind of file, for editors
    #[command(hide = true, after_help = help::SCHEMA)]
    Schema {
        /// Kind of file, such as mix
        #[arg(value_name = "KIND")]
        kind: String,
    },
    /// Print the manual page of one kind of file
    #[command(hide = true, after_help = help::MANUAL)]
    Manual {
        /// Kind of file, such as mix
        #[arg(value_name = "KIND")]
        kind: String,
    },
}

/// Only the one order that nobody reads two ways.
fn date(text: &str) -> Result<Date, String> {
    let plain = text.len() == 10 && text.bytes().all(|b| b.is_ascii_digit() || b == b'-');
    text.parse::<Date>().ok().filter(|_| plain).ok_or_else(|| "write year-month-day, such as 2026-03-02".to_owned())
}
