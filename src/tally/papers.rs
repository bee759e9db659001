//! The papers of a site, as the files copy them: letters, papers of fireboxes, panels, weighed pails, revisions, change
//! orders. What a paper says goes down line by line, so that the table stays narrow.

use crate::job::{Appliance, Change, Day, Job, Letter, Panel, Site, Text};
use crate::words::EN;

use super::filed::{Sheet, day, text, typed};
use super::{Ask, Tally, Voice, mixes_of, panels};

/// All of them.
pub(super) fn of(tally: &Tally, job: &Job, site: &Site) -> Sheet {
    let mine = |code: &Text| code.text == site.code.text;
    let mut rows: Vec<Vec<String>> = Vec::new();
    rows.extend(job.letters.iter().filter(|l| mine(&l.site)).flat_map(letter));
    rows.extend(job.appliances.iter().filter(|a| mine(&a.site)).flat_map(appliance));
    rows.extend(panels::of(job, site).flat_map(|p| panel(tally, site, p)));
    for mix in mixes_of(job, site) {
        if let Some(weighed) = &mix.mixing.weighed {
            let what = format!("Weighed pail of {}", mix.name.text);
            rows.extend(paper(what, Some(&weighed.date), [Some(format!("{} wet", typed(&weighed.density)))]));
        }
        if let Some(dated) = &mix.date {
            rows.extend(paper(format!("{} rev {}", mix.name.text, mix.rev.text), Some(dated), [Some("the revision in force".to_owned())]));
        }
    }
    rows.extend(job.changes.iter().filter(|c| concerns(c, site)).flat_map(change));
    Sheet {
        about: "papers on file",
        heads: &["What", "Of", "Says"],
        rows,
        note: "The papers themselves stand first: law, engineer, makers' sheets, then the panel.",
    }
}

/// A paper's rows: its name and day stand in the first.
fn paper(what: String, dated: Option<&Day>, says: impl IntoIterator<Item = Option<String>>) -> Vec<Vec<String>> {
    let mut head = vec![what, dated.map_or_else(String::new, day)];
    let mut rows: Vec<Vec<String>> = Vec::new();
    for said in says.into_iter().flatten() {
        let mut row = std::mem::replace(&mut head, vec![String::new(), String::new()]);
        row.push(said);
        rows.push(row);
    }
    rows
}

fn by(who: &Text) -> Option<String> {
    Some(format!("by {}", who.text))
}

/// True if a change order would change the site's file, or a file that all sites share.
fn concerns(change: &Change, site: &Site) -> bool {
    let own = format!("sites/{}.md", site.id);
    change.values.iter().any(|v| v.file.text == own || !v.file.text.starts_with("sites/"))
}

fn change(change: &Change) -> Vec<Vec<String>> {
    let values = change.values.iter().map(|v| Some(format!("{} {}", v.key.text, v.value.text)));
    let says = [Some("not in force".to_owned())].into_iter().chain(values).chain([by(&change.from)]);
    paper(format!("Change order, {}", change.title.text), Some(&change.date), says)
}

fn letter(letter: &Letter) -> Vec<Vec<String>> {
    let says = [Some(format!("allows {}", typed(&letter.allows))), Some(text(&letter.what)), by(&letter.from)];
    paper(format!("Engineer's letter {}", letter.reference.text), Some(&letter.date), says)
}

fn appliance(one: &Appliance) -> Vec<Vec<String>> {
    let said = |head: &str, amount: Option<String>| amount.map(|amount| format!("{head} {amount}"));
    let says = [
        one.manual.as_ref().map(text),
        said("clearance", one.clearance.as_ref().map(typed)),
        said("mix at the edge gets", one.edge.as_ref().map(typed)),
        said("mix bears", one.service.as_ref().map(typed)),
        one.checked_by.as_ref().and_then(by),
    ];
    paper(format!("Papers of {} in {}", one.opening.text, one.surface.text), one.date.as_ref(), says)
}

fn panel(tally: &Tally, site: &Site, panel: &Panel) -> Vec<Vec<String>> {
    let voice = Voice { lang: EN, metric: site.metric };
    let id = |name: &str| format!("{}/{}.{name}", site.id, panel.id);
    let say = |name: &str| {
        let value = tally.say(&id(name), Ask::Own, voice);
        value.map_or_else(String::new, |v| v.text.replace(crate::quantity::show::JOIN, " "))
    };
    let fill = tally.figure(&id("fill")).map_or_else(String::new, |_| format!(", fill {} ± {}", say("fill"), say("fill_error")));
    let says = [
        Some(format!("{} rev {}", panel.mix.text, panel.rev.text)),
        Some(format!("{} in a load, {}, {}", typed(&panel.water), typed(&panel.temperature), panel.stood.text)),
        Some(format!("{} depths, mean {}{fill}", panel.depths.len(), say("mean"))),
        by(&panel.signed_by),
    ];
    let walls: String = panel.surfaces.iter().map(|s| format!(", {}", s.text)).collect();
    paper(format!("Panel of {}{walls}", panel.texture.text), Some(&panel.date), says)
}
