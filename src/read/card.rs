//! `cards/NAME.md`.

use crate::job::{Card, Distance, Edition, Per, Text};

use super::field::{ACCEPTS, APPROVED_BY, Field, WRITTEN_BY, Want};
use super::group::Group;
use super::paper;

/// What a page can be made for.
pub const PER: &[&str] = &["batch", "mix", "site"];

/// Keys of a card.
pub static FIELDS: &[Field] = &[
    Field::new("name", Want::Text, "Mud card", "name of the card"),
    Field::new("code", Want::Text, "M", "letter of the document code; the register gives the numbers"),
    Field::new("for", Want::Text, "mixer tender", "who reads it, by role"),
    Field::new("reads", Want::Choice(&["WALL", "HAND", "DESK"]), "WALL", "how far away it is read"),
    Field::new("paper", Want::Choice(paper::NAMES), "tabloid", "its paper"),
    Field::new("per", Want::Choice(PER), "batch", "what one of them is made for"),
    Field::new("tab", Want::YesNo, "yes", "corner tab"),
    Field::new("notch", Want::YesNo, "yes", "notch for the hole"),
    Field::new("film", Want::Text, "10 mil matte", "lamination").free(),
    Field::new("copies", Want::Whole, "2", "copies hung").from("1", "500"),
    Field::new("hung", Want::Text, "by the water barrel", "where it hangs").free(),
    Field::new("sheet", Want::Choice(&["1-up", "4-up"]), "4-up", "cards on one press sheet").free(),
    Field::new("faces", Want::Languages, "[en, es]", "languages of its faces, front first; left out, the company's").free(),
    Field::new("stacked", Want::Languages, "[es]", "languages that its one face holds besides its own, word under word").free(),
    Field::new("cautions", Want::Texts, "[eyes, skin]", "cautions that must stand on it, by file name"),
    WRITTEN_BY,
    APPROVED_BY,
    ACCEPTS,
];

pub(super) fn per(g: &Group) -> Option<Per> {
    Some(match g.text("per")?.text.as_str() {
        "batch" => Per::Batch,
        "mix" => Per::Mix,
        _ => Per::Site,
    })
}

pub(super) fn make(id: &str, g: &Group, editions: Vec<Edition>, languages: &[Text]) -> Option<Card> {
    let faces = g.texts("faces");
    Some(Card {
        id: id.to_owned(),
        code: g.text("code")?,
        reader: g.text("for")?,
        reads: match g.text("reads")?.text.as_str() {
            "WALL" => Distance::Wall,
            "HAND" => Distance::Hand,
            _ => Distance::Desk,
        },
        paper: paper::find(&g.text("paper")?.text)?,
        per: per(g)?,
        tab: g.yes("tab"),
        notch: g.yes("notch"),
        film: g.text("film"),
        copies: g.count("copies")?,
        hung: g.text("hung"),
        up: if g.says("sheet", "4-up") { 4 } else { 1 },
        faces: if faces.is_empty() { languages.to_vec() } else { faces },
        stacked: g.texts("stacked"),
        cautions: g.texts("cautions"),
        editions,
    })
}
