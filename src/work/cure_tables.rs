//! Tables of the takeoff that speak of what comes after carving: cure, credit day by day, the next trade.

use jiff::civil::Date;

use crate::job::{CurePlan, Site};
use crate::quantity::Worked;
use crate::quantity::expr::Temperature;
use crate::tally::cure::{self, Count};
use crate::tally::{Ask, Voice, mix_of, scopes};
use crate::trade::cure::froze;
use crate::words::EN;

use super::load::Loaded;
use super::screen::{label, measured, said, table, why};
use super::seam::{Align, Table};

/// The cure of a site with a carving day, and its days where the weather lists them.
pub(super) fn of(loaded: &Loaded, site: &Site) -> Vec<Table> {
    plan(loaded, site).into_iter().chain(days(loaded, site)).collect()
}

fn plan(loaded: &Loaded, site: &Site) -> Option<Table> {
    let t = &loaded.tally;
    let mix = mix_of(&loaded.job, &site.carve_mix.text)?;
    let id = |name: &str| format!("{}.{name}", site.id);
    t.figure(&id("last_carve"))?;
    let mut made = table(format!("{}, cure and next trade", site.name.text), &[("", Align::Left), ("", Align::Left)]);
    let mut figure = |id: &str, head: String| {
        if t.figure(id).is_some() {
            made.rows.push(vec![head, measured(t, id, site.metric)]);
        }
    };
    let own = |name: &str| format!("{}.{name}", mix.id);
    figure(&id("last_carve"), label(t, &id("last_carve")));
    figure(&own("wet_cure"), label(t, &own("wet_cure")));
    figure(&own("cure_credit"), label(t, &own("cure_credit")));
    figure(&format!("{}/cure.day", site.id), label(t, &format!("{}/cure.day", site.id)));
    figure(&id("cure_over"), label(t, &id("cure_over")));
    if let Some(plan) = &site.cure {
        figure(&id("next_trade"), format!("Next trade, {}", scopes::named(&plan.next, EN)));
    }
    made.rows.insert(2.min(made.rows.len()), vec!["Then".to_owned(), format!("in {}, by the mix sheet", mix.cure.then.text)]);
    if let Some(plan) = &site.cure {
        if let Some(day) = &plan.asks {
            made.rows.push(vec!["It asks for".to_owned(), EN.date(day.year, day.month, day.day)]);
        }
        made.rows.push(vec!["Cure keeper".to_owned(), keeper(loaded, plan)]);
    }
    let ids = [format!("{}/cure.day", site.id)];
    made.notes = why(t, ids.iter());
    if made.notes.is_empty() {
        made.notes.extend(counted(loaded, site));
    }
    if early(loaded, site) {
        made.notes.push("The day it asks for is too early: agree on another one.".to_owned());
    }
    Some(made)
}

fn keeper(loaded: &Loaded, plan: &CurePlan) -> String {
    let person = loaded.job.company.iter().flat_map(|c| &c.people).find(|p| p.code.text == plan.keeper.text);
    person.map_or_else(|| plan.keeper.text.clone(), |p| format!("{}, {}", plan.keeper.text, p.role.text))
}

/// What the date rests on.
fn counted(loaded: &Loaded, site: &Site) -> Vec<String> {
    let rests = match cure::count(&loaded.job, site) {
        Count::Sheet => "Counted by the mix sheet's wet time alone.".to_owned(),
        Count::Weather => "Counted by the warmth of each day: it lengthens a cure and never shortens the sheet's.".to_owned(),
        Count::Room => {
            let cold = said(&loaded.tally, &format!("{}.band_low", site.id), Ask::Own, site.metric);
            format!("No weather of days on file: every day is counted at {cold}, the coldest that the room is kept at, nights too.")
        }
        Count::Nothing => return Vec::new(),
    };
    let weekend = site.cure.as_ref().is_some_and(|c| !c.weekends);
    let moved = if weekend { " A weekend moves to Monday." } else { "" };
    vec![
        format!("{rests}{moved}"),
        "Common practice, no source, and no proof of strength: not before the date and all the days ticked.".to_owned(),
    ]
}

/// True if the next trade asks for a day before the one that the cure gives.
fn early(loaded: &Loaded, site: &Site) -> bool {
    let asks = site.cure.as_ref().and_then(|c| c.asks.as_ref());
    let date = asks.and_then(|d| crate::trade::calendar::day_of(d.year, d.month, d.day).ok());
    let voice = Voice { lang: EN, metric: site.metric };
    let printed = loaded.tally.say(&format!("{}.next_trade", site.id), Ask::Own, voice).and_then(|v| v.number);
    let asked = date.and_then(|d| d.node().number().exact().cloned());
    asked.zip(printed).is_some_and(|(asked, first)| asked < first)
}

fn days(loaded: &Loaded, site: &Site) -> Option<Table> {
    let (t, us) = (&loaded.tally, site.metric);
    let heads =
        [("Day", Align::Left), ("Mean", Align::Right), ("Lowest", Align::Right), ("Credit", Align::Right), ("So far, days", Align::Right)];
    let mut made = table(format!("{}, cure by the day", site.name.text), &heads);
    let mut cold = Vec::new();
    for prefix in cure::days(t, site) {
        let id = |name: &str| format!("{prefix}.{name}");
        let day = prefix.rsplit('/').next().and_then(|d| d.parse::<Date>().ok())?;
        let day = EN.date(day.year(), day.month(), day.day());
        let least = t.figure(&id("least")).and_then(|f| f.worked.as_ref().ok());
        if least.is_some_and(|node| froze(&Worked::<Temperature>::new(node.clone()))) {
            cold.push(format!("{day} ({})", said(t, &id("least"), Ask::Own, us)));
        }
        let mut row = vec![day];
        row.extend(["mean", "least", "credit", "sum"].map(|n| measured(t, &id(n), us)));
        made.rows.push(row);
    }
    if cold.is_empty() {
        made.notes.push("No lowest reading at or below freezing. A mean under 40 °F (4.4 °C) counts nothing.".to_owned());
    } else {
        made.notes.push(format!("At or below freezing by the lowest reading, and counted as nothing: {}.", cold.join(", ")));
        made.notes.push("Those nights the wall is covered and warmed, or it is not safe from frost.".to_owned());
    }
    (!made.rows.is_empty()).then_some(made)
}
