//! What stands in the files of mixes and of the company and no figure shows as it was written: the mix sheet's own
//! amounts, measures, mixers, trailer, lifts. Tables for the screen, as [`filed`](super::filed) has them of a site.

use crate::job::{Company, Job, Lift, Mix, Mixer, Person, TimesAt, Transport};
use crate::quantity::Worked;
use crate::quantity::expr::Length;
use crate::words::EN;

use super::filed::{Sheet, text, typed};

/// What a mix sheet states.
pub fn mix(mix: &Mix) -> Sheet {
    let mut rows: Vec<Vec<String>> = Vec::new();
    let mut row = |head: &str, said: Option<String>| rows.extend(said.map(|said| vec![head.to_owned(), said]));
    row("Thickness in all", Some(format!("{} to {}", typed(&mix.thickness.0), typed(&mix.thickness.1))));
    row("Thickness of a lift, at most", Some(typed(&mix.lift)));
    row("Thickness overhead, at most", mix.overhead.as_ref().map(typed));
    row("Open time", Some(format!("{} at {}", typed(&mix.open_time.0), typed(&mix.open_time.1))));
    let window = mix.carve_window.as_ref();
    row("Carve window", window.map(|w| format!("{} to {} at {}", typed(&w.opens), typed(&w.closes), typed(&w.at))));
    for one in &mix.times {
        row(&format!("At {}", typed(&one.at)), Some(times(one)));
    }
    row("Additive bags keep", mix.additive.shelf.as_ref().map(typed));
    row("Mortar bags keep", mix.mortar.shelf.as_ref().map(typed));
    row("Cement in the mortar", mix.cement.as_ref().map(typed));
    row("Cure", Some(format!("{} wet, then {}", typed(&mix.cure.wet), mix.cure.then.text)));
    row("Days before the next trade", mix.cure.credit.as_ref().map(typed));
    row("Rake", mix.rake.as_ref().map(text));
    row("Wait before the next coat", mix.recoat.as_ref().map(typed));
    Sheet { about: "as its sheet states", heads: &["", ""], rows, note: "As somebody copied it: the sheet itself stands first." }
}

fn times(one: &TimesAt) -> String {
    let carved = one.opens.as_ref().zip(one.closes.as_ref());
    let carved = carved.map_or_else(String::new, |(opens, closes)| format!(", carved from {} to {}", typed(opens), typed(closes)));
    format!("open {}{carved}", typed(&one.open))
}

/// What the company works with: measures, mixers, its trailer, its lifts, as written in its file.
pub fn house(job: &Job) -> Vec<Sheet> {
    let Some(company) = &job.company else { return Vec::new() };
    [people(company), measures(company), mixers(company), trailer(company), lifts(company)]
        .into_iter()
        .filter(|sheet| !sheet.rows.is_empty())
        .collect()
}

fn people(company: &Company) -> Sheet {
    let row = |p: &Person| {
        let reads: Vec<&str> = p.languages.iter().map(|l| l.text.as_str()).collect();
        vec![text(&p.code), text(&p.role), reads.join(", ")]
    };
    Sheet {
        about: "people by role",
        heads: &["", "Role", "Reads"],
        rows: company.people.iter().map(row).collect(),
        note: "Who it is stands on the sign-in sheet: files name roles only.",
    }
}

fn measures(company: &Company) -> Sheet {
    let mut rows: Vec<Vec<String>> = company.measures.iter().map(|m| vec![text(&m.code), typed(&m.holds), typed(&m.marked)]).collect();
    rows.extend(company.scale.iter().map(|s| vec!["scale".to_owned(), typed(&s.holds), typed(&s.marked)]));
    Sheet {
        about: "measures",
        heads: &["", "Holds", "Marked at every"],
        rows,
        note: "Water is written in amounts that stand on one of these marks.",
    }
}

fn mixers(company: &Company) -> Sheet {
    let row = |m: &Mixer| {
        let drive = m.drive.as_ref().map_or_else(|| "mains, as nothing is said".to_owned(), text);
        vec![text(&m.code), text(&m.sort), typed(&m.holds), typed(&m.fill), typed(&m.rating), typed(&m.least), drive]
    };
    Sheet {
        about: "mixers",
        heads: &["", "Sort", "Holds", "Mixes well in", "Turns at most", "Least batch", "Drive"],
        rows: company.mixers.iter().map(row).collect(),
        note: "The plate on the mixer stands first.",
    }
}

fn trailer(company: &Company) -> Sheet {
    let row = |t: &Transport| {
        let pallet = format!("{} by {}", typed(&t.pallet.0), typed(&t.pallet.1));
        vec![typed(&t.payload), pallet, typed(&t.pallet_mass)]
    };
    Sheet {
        about: "trailer and pallet",
        heads: &["Trailer carries", "Pallet", "weighs"],
        rows: company.transport.iter().map(row).collect(),
        note: "The plate on the trailer stands first.",
    }
}

fn lifts(company: &Company) -> Sheet {
    let from_to = |(a, b): &(Worked<Length>, Worked<Length>)| format!("{} to {}", typed(a), typed(b));
    let row = |l: &Lift| {
        let what = super::scopes::named(&l.what, EN).to_owned();
        vec![what, from_to(&l.reach), from_to(&l.height), typed(&l.frequency), typed(&l.lasts), text(&l.grip), typed(&l.part)]
    };
    Sheet {
        about: "lifts by hand",
        heads: &["", "Reach", "Height", "How often", "Lasts", "Grip", "of a bag"],
        rows: company.lifts.iter().map(row).collect(),
        note: "Measured from the ankles and from the floor to the hands. What they come to stands in the takeoff of each site.",
    }
}

#[cfg(test)]
mod tests {
    use std::path::Path;

    use super::*;
    use crate::source::Folder;

    #[test]
    fn every_row_has_a_cell_under_each_head() {
        let folder = Folder::open(&Path::new(env!("CARGO_MANIFEST_DIR")).join("content")).unwrap();
        let (job, _) = crate::read::job(&folder);
        let sheets: Vec<Sheet> = house(&job).into_iter().chain(job.mixes.iter().map(mix)).collect();
        assert_eq!(sheets.len(), 8);
        for sheet in &sheets {
            assert!(sheet.rows.iter().all(|row| row.len() == sheet.heads.len()), "{sheet:?}");
        }
    }

    #[test]
    fn the_sheet_of_the_light_mix() {
        let folder = Folder::open(&Path::new(env!("CARGO_MANIFEST_DIR")).join("content")).unwrap();
        let (job, _) = crate::read::job(&folder);
        let light = mix(job.mixes.iter().find(|m| m.id == "lite-10m").unwrap());
        let has = |head: &str, said: &str| light.rows.iter().any(|row| row[0] == head && row[1] == said);
        assert!(has("At 5 °C", "open 70 min, carved from 120 min to 280 min"), "{light:?}");
        assert!(has("Mortar bags keep", "180 days") && has("Carve window", "60 min to 180 min at 70 °F"), "{light:?}");
    }
}
