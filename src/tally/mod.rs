//! Job and formulas → figures, printed values, the data of drawings.
//!
//! [`Tally::of`] works every figure of a job. A figure that cannot be worked keeps the first cause and prints an
//! honest blank; the checks report the cause.

mod batches;
mod budget;
mod coats;
mod convex;
pub mod cure;
pub mod day;
pub mod drawings;
pub mod elevation;
pub mod figure;
pub mod filed;
mod hands;
pub mod hours;
mod joints;
mod labor;
pub mod minutes;
pub mod minutes_table;
#[cfg(test)]
mod minutes_tests;
mod mixes;
pub mod nights;
mod order;
mod outline;
pub mod panels;
mod papers;
mod powder;
pub mod printed;
pub mod role;
#[cfg(test)]
mod role_tests;
pub mod scope;
pub mod scopes;
mod shelf;
mod sites;
pub mod stated;
mod supplies;
mod surfaces;

use std::sync::{Arc, OnceLock};

use indexmap::IndexMap;

pub use convex::{overlap, reach};
pub use figure::{Basis, Figure};
pub use outline::{bounds, points};
pub use printed::{Ask, PrintedValue, Voice};
pub use role::Role;
pub use scope::{Scope, Slot};
pub use scopes::Subject;
pub use surfaces::edges;

use crate::job::{BatchPlan, Job, Mix, Site};
use crate::quantity::expr::Sort;
use crate::quantity::{Num, Worked};
use crate::source::side_by_side;
use crate::trade::{Answer, OutOfRange};

/// A worked value, or the first cause why there is none.
type Res<S> = Result<Worked<S>, String>;

impl From<OutOfRange> for String {
    fn from(fault: OutOfRange) -> String {
        fault.to_string()
    }
}

/// All figures of a run, by id, in the order they were worked.
#[derive(Debug, Default)]
pub struct Tally {
    /// By site or mix.
    parts: IndexMap<String, shelf::Part>,
    /// Where a site that is worked apart finds its mixes.
    base: Option<Arc<Tally>>,
    house: House,
    sheets: Vec<day::Sheet>,
    outlooks: OnceLock<Vec<minutes::Outlook>>,
}

/// What the company's own tools fix about print: water is written in whole ones of the smallest mark on site.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct House {
    /// Smallest volume mark, as a fraction of a gallon.
    pub us: (i64, i64),
    /// Smallest volume mark, as a fraction of a litre.
    pub metric: (i64, i64),
    /// The money of every price.
    pub money: &'static str,
}

impl Default for House {
    /// A jug marked in cups, a jug marked in 50 mL.
    fn default() -> House {
        House { us: (1, 16), metric: (1, 20), money: "USD" }
    }
}

impl Tally {
    /// Works every figure of a job but those of its planned days, which no other document prints and which are many:
    /// see [`Tally::days`].
    pub fn of(job: &Job) -> Tally {
        let mut tally = Tally { house: House::of(job), ..Tally::default() };
        for mix in &job.mixes {
            mixes::work(&mut tally, mix);
            powder::work(&mut tally, mix);
        }
        let base = Arc::new(tally);
        let worked = side_by_side(&job.sites, |site| {
            let mut own = Tally { house: base.house, base: Some(base.clone()), ..Tally::default() };
            own.site(job, site);
            own.parts
        });
        let mut tally = Arc::into_inner(base).unwrap_or_default();
        worked.into_iter().for_each(|parts| tally.take(parts));
        tally
    }

    fn site(&mut self, job: &Job, site: &Site) {
        sites::open(self, site);
        for mix in site.mixes().filter_map(|n| mix_of(job, &n.text)) {
            mixes::at_site(self, site, mix, job);
        }
        for plan in &site.batches {
            batches::work(self, job, site, plan);
        }
        for surface in &site.surfaces {
            surfaces::work(self, job, site, surface);
        }
        sites::close(self, job, site);
        supplies::work(self, job, site);
        labor::work(self, job, site);
        hands::work(self, job, site);
        budget::work(self, job, site);
        joints::work(self, site);
        panels::work(self, job, site);
        cure::work(self, job, site);
    }

    /// Works the figures of every planned day, batch by batch and late start by late start, once.
    pub fn days(&mut self, job: &Job) {
        if self.sheets.is_empty() {
            for site in &job.sites {
                day::work(self, job, site);
            }
        }
    }

    /// What the company's tools fix about print.
    pub fn house(&self) -> House {
        self.house
    }

    /// The planned days, in the order of the sites and of their plans.
    pub fn sheets(&self) -> &[day::Sheet] {
        &self.sheets
    }

    /// Every planned day in whole minutes, worked once: what the checks look at, without the figures of [`Tally::days`].
    pub fn outlooks(&self, job: &Job) -> &[minutes::Outlook] {
        self.outlooks.get_or_init(|| minutes::of(self, job))
    }

    /// A figure's value as an input of the next formula, under the figure's name.
    fn get<S: Sort>(&self, id: &str) -> Res<S> {
        let figure = self.figure(id).ok_or_else(|| format!("{id} is not worked"))?;
        let node = figure.worked.as_ref().map_err(Clone::clone)?;
        Ok(Worked::new(node.figure(id)))
    }

    /// Adds a worked figure, or its cause.
    fn put<S: Sort>(&mut self, id: String, label: &'static str, role: Role, basis: Basis, worked: Res<S>) {
        let worked = worked.map(|w| w.node().clone());
        self.add(Figure { id, label, worked, basis, role });
    }

    /// Adds an authored value as a figure of its own.
    fn own<S: Sort>(&mut self, id: String, label: &'static str, role: Role, basis: Basis, authored: &Worked<S>) {
        self.put(id, label, role, basis, Ok(authored.clone()));
    }
}

/// A formula's answer as a figure's value or cause.
fn res<S>(answer: Answer<S>) -> Res<S> {
    answer.map_err(String::from)
}

impl House {
    fn of(job: &Job) -> House {
        let least = |metric: bool, unit: &str| {
            let unit = crate::quantity::units::find_expr(unit)?;
            let marks = job.company.iter().flat_map(|c| &c.measures).map(|m| &m.marked);
            let own = marks.filter(|m| m.node().unit().is_some_and(crate::quantity::expr::is_metric) == metric);
            let least = own.filter_map(|m| m.value().exact_in(unit)).min()?;
            Some((i64::try_from(least.numer()).ok()?, i64::try_from(least.denom()).ok()?))
        };
        let usual = House::default();
        let said = job.company.as_ref().and_then(|c| c.currency.as_ref());
        let money = said.and_then(|c| crate::quantity::units::find(&c.text)).map_or(usual.money, |u| u.symbol);
        House { us: least(false, "gal").unwrap_or(usual.us), metric: least(true, "L").unwrap_or(usual.metric), money }
    }
}

/// The mix of this name.
pub fn mix_of<'a>(job: &'a Job, name: &str) -> Option<&'a Mix> {
    job.mixes.iter().find(|m| m.name.text == name)
}

/// The mixes of a site, in the order of the work.
pub fn mixes_of<'a>(job: &'a Job, site: &Site) -> Vec<&'a Mix> {
    site.mixes().filter_map(|name| mix_of(job, &name.text)).collect()
}

/// Id of a batch: `larkenfell/carve-24/2`, `…/half` for half a load, the mixer's code added where two share a size.
pub fn batch_id(job: &Job, site: &Site, plan: &BatchPlan) -> String {
    let mix = mix_of(job, &plan.mix.text).map_or(plan.mix.text.as_str(), |m| m.id.as_str());
    let base = format!("{}/{mix}/{}", site.id, size_name(&plan.loads.value().si));
    let twin = site
        .batches
        .iter()
        .any(|o| !std::ptr::eq(o, plan) && o.mix.text == plan.mix.text && o.loads.value().si == plan.loads.value().si && o.at < plan.at);
    if twin { format!("{base}-{}", plan.mixer.text) } else { base }
}

/// True for a figure of a planned day, such as `larkenfell/2026-03-02/1.water_in`, or of a day of the cure: those belong
/// to the day's own sheet and to the cure's table.
pub fn of_a_day(site: &str, id: &str) -> bool {
    let day = |rest: &str| rest.starts_with(|c: char| c.is_ascii_digit()) || rest.starts_with("cure/") || rest.starts_with("cure.");
    id.strip_prefix(site).and_then(|rest| rest.strip_prefix('/')).is_some_and(day)
}

/// Name of a batch size in ids: `half`, `1`, `2`, `5/2` as `2.5`.
pub fn size_name(loads: &Num) -> String {
    if *loads == Num::frac(1, 2) { "half".to_owned() } else { loads.plain().replace(['/', '.'], "_") }
}

/// Id of a ladder cell: column `added`, `half`, `1`, `2` …, and the rung.
pub fn ladder_id(mix: &Mix, column: &str, rung: usize) -> String {
    format!("{}.ladder.{column}.{rung}", mix.id)
}

/// Names of a ladder's columns on a site, half a load first where the mix allows it.
pub fn ladder_sizes(site: &Site, mix: &Mix) -> Vec<String> {
    mixes::sizes(site, mix).iter().map(size_name).collect()
}
