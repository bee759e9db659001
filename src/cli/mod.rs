//! Arguments, terminal, progress, exit codes. The only room that prints, reads the clock and the environment.
#![allow(clippy::disallowed_methods, reason = "the environment is read here and nowhere else")]

mod args;
mod bug;
mod extra;
mod help;
mod nearest;
mod paint;
mod print;
mod progress;
mod table;
mod tree;

use std::ffi::OsString;
use std::io::{self, IsTerminal, Write};
use std::process::ExitCode;

use clap::{ColorChoice, CommandFactory, FromArgMatches};

use crate::finding::Severity;
use crate::work::{Exit, Format, Jobs, Look, Options, Outcome, Yard};

use args::{Command, Deny, Form, Line, When, YardForm};
use progress::Teller;

/// Runs one command line to its exit code.
pub fn run(words: impl IntoIterator<Item = OsString>, jobs: &dyn Jobs) -> ExitCode {
    bug::install();
    respond(&words.into_iter().collect::<Vec<_>>(), jobs)
}

/// The same without touching the panic message, which belongs to the whole process.
fn respond(words: &[OsString], jobs: &dyn Jobs) -> ExitCode {
    let parsed = command(words).try_get_matches_from(words).and_then(|found| Line::from_arg_matches(&found));
    let line = match parsed {
        Ok(line) => line,
        Err(stop) => {
            // Help and version arrive here too, with code 0. A closed pipe is no reason to fail.
            let _ = stop.print();
            return ExitCode::from(u8::try_from(stop.exit_code()).unwrap_or(Exit::CouldNot.code()));
        }
    };
    let options = options(&line);
    let teller = Teller::new();
    let outcome = bug::guard(|| dispatch(&line.command, &options, jobs, &teller));
    teller.clear();
    match outcome {
        Some(outcome) => deliver(&outcome, options.look),
        None => ExitCode::from(bug::CODE),
    }
}

/// The definitions, coloured as `--color` says: help is drawn before the options are known.
fn command(words: &[OsString]) -> clap::Command {
    let mut choice = None;
    for (i, word) in words.iter().enumerate() {
        let Some(word) = word.to_str() else { continue };
        let next = || words.get(i + 1).and_then(|w| w.to_str());
        let said = if word == "--color" { next() } else { word.strip_prefix("--color=") };
        choice = said.or(choice);
    }
    Line::command().color(match choice {
        Some("always") => ColorChoice::Always,
        Some("never") => ColorChoice::Never,
        _ => ColorChoice::Auto,
    })
}

fn options(line: &Line) -> Options {
    let common = &line.common;
    let color = match common.color {
        When::Always => true,
        When::Never => false,
        When::Auto => io::stdout().is_terminal() && !set("NO_COLOR") && std::env::var_os("TERM").is_none_or(|t| t != "dumb"),
    };
    let format = match common.format {
        Form::Plain => Format::Plain,
        Form::Short => Format::Short,
        Form::Json => Format::Json,
    };
    Options {
        job: common.job.clone(),
        out: common.out.clone(),
        dump: common.dump.clone(),
        on: common.on,
        today: jiff::ZonedDateTime::now().date(),
        look: Look { format, color: color && format != Format::Json },
    }
}

fn set(name: &str) -> bool {
    std::env::var_os(name).is_some_and(|value| !value.is_empty())
}

fn dispatch(command: &Command, options: &Options, jobs: &dyn Jobs, teller: &Teller) -> Outcome {
    match command {
        Command::Setout { dir } => jobs.setout(options, dir, teller),
        Command::Takeoff { site, yard_list: None } => jobs.takeoff(options, site.as_deref(), teller),
        Command::Takeoff { site, yard_list: Some(form) } => jobs.yard_list(options, site.as_deref(), yard(*form), teller),
        Command::Gauge { mix } => jobs.gauge(options, mix.as_deref(), teller),
        Command::Sound { why: Some(name), .. } => jobs.why(options, name, teller),
        Command::Sound { why: None, deny, no_layout } => jobs.sound(options, deny.map(severity), !no_layout, teller),
        Command::Daysheet { site, date } => jobs.daysheet(options, site, *date, teller),
        Command::Plumb { figure, .. } => jobs.plumb(options, figure.as_deref(), teller),
        Command::Issue { ids, proof } => jobs.issue(options, ids, *proof, teller),
        Command::Completions { shell } => extra::completions(*shell),
        Command::Man { command } => extra::man(command.as_deref()),
        Command::Schema { kind } => jobs.schema(kind),
        Command::Manual { kind } => jobs.manual(kind),
    }
}

fn yard(form: YardForm) -> Yard {
    match form {
        YardForm::Text => Yard::Text,
        YardForm::Csv => Yard::Csv,
        YardForm::Pdf => Yard::Pdf,
    }
}

fn severity(deny: Deny) -> Severity {
    match deny {
        Deny::Hold => Severity::Hold,
        Deny::Warn => Severity::Warn,
    }
}

/// Prints an outcome: product, then findings, on standard output; what is for people on standard error.
fn deliver(outcome: &Outcome, look: Look) -> ExitCode {
    let text = print::page(outcome, look);
    let mut out = io::stdout().lock();
    let written = out.write_all(text.as_bytes()).and_then(|()| out.flush());
    drop(out);
    let code = match written {
        // `| head` has seen enough; the run itself ended as it ended.
        Err(e) if e.kind() != io::ErrorKind::BrokenPipe => {
            progress::tell(&format!("hodbook: standard output: {e}"));
            Exit::CouldNot
        }
        _ => outcome.exit,
    };
    print::aside(outcome).iter().for_each(|line| progress::tell(line));
    ExitCode::from(code.code())
}

#[cfg(test)]
mod tests;
