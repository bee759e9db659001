//! One file per command: reads, tallies, sounds, prints, commits. The only room that knows the whole.

mod asked;
mod attach;
mod book;
mod compose;
mod cure_tables;
mod daysheet;
mod desk;
mod dump;
mod filed_tables;
mod gauge;
mod gauge_tables;
mod glyphs;
mod hands_tables;
mod index;
mod issue;
mod load;
mod measured;
mod plumb;
mod runs;
mod screen;
mod seam;
mod setout;
mod site_tables;
mod sound;
mod tables;
mod takeoff;
mod touch;
mod trouble;
mod wall_tables;
mod worksheet;
mod yard;

use std::path::Path;

use crate::finding::Severity;

pub use yard::Yard;

pub use seam::{Align, Exit, Format, Jobs, Look, Missing, Narrator, Options, Outcome, Place, Printed, Product, Table, Tree};

/// The jobs as built here.
#[derive(Clone, Copy, Debug, Default)]
pub struct Hod;

impl Jobs for Hod {
    fn setout(&self, options: &Options, dir: &Path, _: &dyn Narrator) -> Outcome {
        setout::setout(options, dir)
    }

    fn takeoff(&self, options: &Options, site: Option<&str>, _: &dyn Narrator) -> Outcome {
        takeoff::takeoff(options, site)
    }

    fn yard_list(&self, options: &Options, site: Option<&str>, yard: Yard, narrator: &dyn Narrator) -> Outcome {
        yard::yard_list(options, site, yard, narrator)
    }

    fn gauge(&self, options: &Options, mix: Option<&str>, _: &dyn Narrator) -> Outcome {
        gauge::gauge(options, mix)
    }

    fn daysheet(&self, options: &Options, site: &str, date: jiff::civil::Date, _: &dyn Narrator) -> Outcome {
        daysheet::daysheet(options, site, date)
    }

    fn sound(&self, options: &Options, deny: Option<Severity>, layout: bool, narrator: &dyn Narrator) -> Outcome {
        sound::sound(options, deny, layout, narrator)
    }

    fn why(&self, _: &Options, check: &str, _: &dyn Narrator) -> Outcome {
        sound::why(check)
    }

    fn plumb(&self, options: &Options, figure: Option<&str>, _: &dyn Narrator) -> Outcome {
        plumb::plumb(options, figure)
    }

    fn issue(&self, options: &Options, ids: &[String], proof: bool, narrator: &dyn Narrator) -> Outcome {
        issue::issue(options, ids, proof, narrator)
    }

    fn schema(&self, kind: &str) -> Outcome {
        setout::schema(kind)
    }

    fn manual(&self, kind: &str) -> Outcome {
        setout::manual(kind)
    }
}
