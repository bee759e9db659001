//! `records/NAME.md`: what a mock-up panel showed.

use crate::job::Panel;

use super::field::{ACCEPTS, Field, READING, VOLUME, Want};
use super::group::Group;

/// Keys of a panel record.
pub static FIELDS: &[Field] = &[
    Field::new("site", Want::Text, "EX", "code of the site"),
    Field::new("texture", Want::Text, "rubble", "name of the texture of that site that it shows"),
    Field::new("surfaces", Want::Texts, "[EX-1]", "surfaces of the site that it is the standard for").free(),
    Field::new("date", Want::Date, "2026-02-19", "day it was carved"),
    Field::new("stood", Want::Choice(&["upright", "overhead", "flat"]), "upright", "how it stood while it was placed and carved"),
    Field::new("mix", Want::Text, "CARVE-24", "name of its carve mix"),
    Field::new("rev", Want::Text, "C", "revision letter of that mix on the day"),
    Field::new("water", VOLUME, "1 gal 2 qt 1 pt", "water that went into a load, start and added")
        .over("0 gal", "50 gal")
        .likely("1 qt", "20 gal"),
    Field::new("temperature", READING, "68 °F", "temperature of the mix").from("33 °F", "120 °F"),
    Field::new(
        "depths",
        Want::Lengths,
        "[1/2 in, 1 1/2 in, 1 1/4 in]",
        "carve coat left over the scratch coat at each point of a blind grid",
    )
    .from("0 in", "24 in")
    .likely("0 in", "4 in"),
    Field::new("signed_by", Want::Text, "art director and owner", "who signed that this is the look, by class, without a name"),
    ACCEPTS,
];

pub(super) fn make(id: &str, g: &Group) -> Option<Panel> {
    Some(Panel {
        id: id.to_owned(),
        site: g.text("site")?,
        texture: g.text("texture")?,
        surfaces: g.texts("surfaces"),
        date: g.day("date")?,
        stood: g.text("stood")?,
        mix: g.text("mix")?,
        rev: g.text("rev")?,
        water: g.worked("water")?,
        temperature: g.worked("temperature")?,
        depths: g.each("depths")?,
        signed_by: g.text("signed_by")?,
    })
}

#[cfg(test)]
mod tests {
    use std::path::Path;

    use crate::finding::{Finding, short};
    use crate::source::Folder;

    const RECORD: &str = "records/lf-panel-rubble.md";

    fn demo() -> Folder {
        Folder::open(&Path::new(env!("CARGO_MANIFEST_DIR")).join("content")).unwrap()
    }

    fn found(from: &str, to: &str) -> Vec<String> {
        let demo = demo();
        let text = &demo.at(RECORD).unwrap().text;
        assert_eq!(text.matches(from).count(), 1, "{from}");
        let folder = demo.with_text(RECORD, &text.replace(from, to));
        let (_, findings) = crate::read::job(&folder);
        findings.iter().map(|f: &Finding| short(f, &|n| folder.lines(n))).collect()
    }

    /// Letters and panels lie in one folder; each says which it is.
    #[test]
    fn a_panel_lies_beside_a_letter() {
        let (job, findings) = crate::read::job(&demo());
        assert!(findings.is_empty(), "{findings:?}");
        assert_eq!((job.letters.len(), job.panels.len()), (1, 2));
        let panel = job.panels.iter().find(|p| p.id == "lf-panel-rubble").unwrap();
        assert_eq!((panel.site.text.as_str(), panel.texture.text.as_str(), panel.depths.len()), ("LF", "rubble", 12));
        assert_eq!(panel.depths[1].in_unit("in"), 1.5);
        assert_eq!(panel.surfaces.iter().map(|s| s.text.as_str()).collect::<Vec<_>>(), ["LF-1", "LF-2"]);
    }

    #[test]
    fn what_it_names_must_be_there() {
        for (from, to, says) in [
            ("site: LF", "site: LX", "no site is called `LX`"),
            ("texture: rubble", "texture: bark", "no texture of its site is called `bark`"),
            ("surfaces: [LF-1, LF-2]", "surfaces: [LF-1, LF-9]", "no surface of its site is called `LF-9`"),
            ("mix: CARVE-24", "mix: CARVE-42", "no mix is called `CARVE-42`"),
            ("kind: panel", "kind: pannel", "the file says it is a `pannel`, a file in `records/` is"),
            ("1 5/8 in, 1 3/4 in", "1 5/8, 1 3/4 in", "1 5/8"),
            ("1 5/8 in, 1 3/4 in", "30 in, 1 3/4 in", "over 24 in"),
        ] {
            let found = found(from, to);
            assert!(found.len() == 1 && found[0].contains(says), "{to}: {found:?}");
        }
    }
}
