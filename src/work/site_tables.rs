//! Tables of the takeoff that speak of the site: lath and paper, color, water, hours, cost.

use crate::job::Site;
use crate::tally::mixes_of;
use crate::words::EN;

use super::load::Loaded;
use super::screen::list;
use super::seam::Table;

/// All of them that have a figure.
pub(super) fn of(loaded: &Loaded, site: &Site) -> Vec<Table> {
    [lath(loaded, site), finish(loaded, site), water(loaded, site), hours(loaded, site), cost(loaded, site)].into_iter().flatten().collect()
}

fn ids(site: &Site, names: &[&str]) -> Vec<String> {
    names.iter().map(|name| format!("{}.{name}", site.id)).collect()
}

/// The list of these names, with a note below it.
fn noted(loaded: &Loaded, site: &Site, title: &str, names: (&[&str], &[&str]), note: &str) -> Option<Table> {
    let title = format!("{}, {title}", site.name.text);
    let mut made = list(&loaded.tally, title, site.metric, &ids(site, names.0), &ids(site, names.1))?;
    made.notes.push(note.to_owned());
    Some(made)
}

fn lath(loaded: &Loaded, site: &Site) -> Option<Table> {
    let names = ["lath_area", "lath_sheets", "lath_fasteners", "paper_rolls"];
    noted(loaded, site, "lath, fasteners, paper", (&names, &[]), "Laps and the spare are in them. Sheets and rolls are bought whole.")
}

fn finish(loaded: &Loaded, site: &Site) -> Option<Table> {
    let names = ["developed", "finish_volume", "finish_cans"];
    let cans = site.finish.as_ref().map_or_else(String::new, |f| super::screen::plain(f.can.node()));
    let note = format!("The developed surface counts what the texture adds; a can is {cans}.");
    noted(loaded, site, "color and sealer", (&names, &[]), &note)
}

fn water(loaded: &Loaded, site: &Site) -> Option<Table> {
    let names = ["water_mix", "water_wash", "water_mist", "water_people"];
    noted(loaded, site, "water on site", (&names, &["water"]), "The mixer at its limit, so that the tank does not run dry on a hot day.")
}

fn hours(loaded: &Loaded, site: &Site) -> Option<Table> {
    let tasks = ["hours_lath", "hours_scratch", "hours_place", "hours_carve", "hours_tender", "hours_cure", "hours_color"];
    let note = "Hours to count are the larger of the tasks and the days that the crew is on site.";
    noted(loaded, site, "hours", (&tasks, &["task_hours", "crew_hours", "hours"]), note)
}

/// For the estimator alone.
fn cost(loaded: &Loaded, site: &Site) -> Option<Table> {
    let prices = loaded.job.company.as_ref().and_then(|c| c.prices.as_ref())?;
    let t = &loaded.tally;
    let mixes = mixes_of(&loaded.job, site);
    let mut rows: Vec<String> = mixes.iter().map(|mix| format!("{}/{}.cost", site.id, mix.id)).collect();
    rows.extend(ids(site, &["cost_lath", "cost_finish", "cost_labor"]));
    rows.retain(|id| t.figure(id).is_some());
    let totals = ids(site, &["cost", "price", "price_per_area"]);
    let mut made = list(t, format!("{}, cost", site.name.text), site.metric, &rows, &totals)?;
    // Two mixes would have the same label.
    for (row, mix) in made.rows.iter_mut().zip(&mixes) {
        if let Some(label) = row.first_mut() {
            *label = format!("{label} {}", mix.name.text);
        }
    }
    let day = &prices.dated;
    made.notes.push(format!("Prices of {}; for the estimator: no price goes to the crew.", EN.date(day.year, day.month, day.day)));
    Some(made)
}
