//! What the tables on the terminal are made of: cells, lists of figures, the site that was asked for.

use crate::job::Site;
use crate::tally::{Ask, Tally, Voice};
use crate::words::EN;

use super::load::Loaded;
use super::seam::{Align, Exit, Options, Outcome, Table};

pub(super) fn said(tally: &Tally, id: &str, ask: Ask, metric: bool) -> String {
    let voice = Voice { lang: EN, metric };
    tally.say(id, ask, voice).map_or_else(String::new, |v| v.text.replace(crate::quantity::show::JOIN, " "))
}

/// A cell of the takeoff: a measure that gives no figure is no question for a maker.
pub(super) fn measured(tally: &Tally, id: &str, metric: bool) -> String {
    let missing = tally.figure(id).is_some_and(|f| f.worked.is_err());
    if missing { "not worked".to_owned() } else { said(tally, id, Ask::Own, metric) }
}

/// The site of a name or code; all without one.
pub(super) fn chosen<'a>(loaded: &'a Loaded, site: Option<&str>) -> Result<Vec<&'a Site>, Outcome> {
    let sites: Vec<&Site> = loaded.job.sites.iter().filter(|s| site.is_none_or(|asked| s.id == asked || s.code.text == asked)).collect();
    if sites.is_empty() {
        let known = loaded.job.sites.iter().map(|s| s.id.clone());
        return Err(nothing("site", site, known));
    }
    Ok(sites)
}

/// Nothing of the name asked for; or, with no name asked for, nothing at all.
pub(super) fn nothing(kind: &'static str, asked: Option<&str>, known: impl Iterator<Item = String>) -> Outcome {
    match asked {
        Some(name) => Outcome::nothing(kind, name, known),
        None => Outcome { summary: format!("the job folder has no {kind} that could be read"), exit: Exit::Nothing, ..Outcome::default() },
    }
}

/// The findings of reading go with every product: a table that lacks a surface must say why.
pub(super) fn with_findings(loaded: &Loaded, options: &Options, mut outcome: Outcome) -> Outcome {
    if !loaded.findings.is_empty() {
        let (findings, summary) = loaded.draw(options, &loaded.findings);
        outcome.findings = findings;
        outcome.summary = summary;
        if super::load::stops(&loaded.findings) {
            outcome.exit = Exit::Stop;
        }
    }
    outcome
}

/// A table with its heads and no rows yet.
pub(super) fn table(title: String, heads: &[(&str, Align)]) -> Table {
    Table { title, columns: heads.iter().map(|(h, a)| ((*h).to_owned(), *a)).collect(), ..Table::default() }
}

/// A cell in the other unit system; empty where that says the same.
pub(super) fn other(tally: &Tally, id: &str, metric: bool) -> String {
    let second = said(tally, id, Ask::Second, metric);
    let missing = tally.figure(id).is_none_or(|f| f.worked.is_err());
    if missing || second == said(tally, id, Ask::Own, metric) { String::new() } else { second }
}

/// A figure's label, as a row's head.
pub(super) fn label(tally: &Tally, id: &str) -> String {
    tally.figure(id).map_or_else(String::new, |f| super::tables::capital(EN.text(f.label)))
}

/// Figures by their labels, in both unit systems; ids that are no figures are left out, and so is a table of none.
/// A figure that is not worked says why below.
pub(super) fn list(tally: &Tally, title: String, metric: bool, rows: &[String], totals: &[String]) -> Option<Table> {
    let mut made = table(title, &[("", Align::Left), ("Amount", Align::Right), ("other unit", Align::Right)]);
    let row = |id: &String| vec![label(tally, id), measured(tally, id, metric), other(tally, id, metric)];
    let known = |ids: &[String]| -> Vec<String> { ids.iter().filter(|id| tally.figure(id).is_some()).cloned().collect() };
    let (rows, totals) = (known(rows), known(totals));
    made.rows = rows.iter().map(row).collect();
    made.totals = totals.iter().map(row).collect();
    made.notes = why(tally, rows.iter().chain(&totals));
    // Hours and counts have no other unit to show.
    if made.rows.iter().chain(&made.totals).all(|r| r.last().is_some_and(String::is_empty)) {
        made.columns.pop();
        made.rows.iter_mut().chain(&mut made.totals).for_each(|r| r.truncate(2));
    }
    (!made.rows.is_empty() || !made.totals.is_empty()).then_some(made)
}

/// Why figures are not worked: each cause once, by the first label that has it.
pub(super) fn why<'a>(tally: &Tally, ids: impl Iterator<Item = &'a String>) -> Vec<String> {
    let mut causes: Vec<&str> = Vec::new();
    let mut notes = Vec::new();
    for id in ids {
        let Some(cause) = tally.figure(id).and_then(|f| f.worked.as_ref().err()) else { continue };
        if !causes.contains(&cause.as_str()) {
            causes.push(cause);
            notes.push(format!("{} cannot be worked: {cause}.", label(tally, id)));
        }
    }
    notes
}

/// A value that somebody typed or published, as it stands: `5 gal`, `10 %`.
pub(super) fn plain(node: &crate::quantity::Node) -> String {
    let number = node.number().plain();
    node.unit().map_or_else(|| number.clone(), |u| format!("{number} {}", u.symbol()))
}
