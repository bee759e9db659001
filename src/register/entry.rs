//! One line of the register.

use jiff::civil::Date;
use serde::{Deserialize, Deserializer, Serialize, Serializer};
use sha2::{Digest, Sha256};

use crate::tally::PrintedValue;
use crate::words::Lang;

/// Format of the lines this version writes. Lines of a newer format are reported, never guessed at.
pub const FORMAT: u32 = 1;

/// What happened to a paper.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum Event {
    /// Put in force.
    Issued,
    /// Corner cut off: this revision no longer hangs.
    Snipped,
    /// Nobody knows where it is; it may still be read by somebody.
    Lost,
    /// Withdrawn without having been hung.
    Voided,
    /// An order that left the office.
    Ordered,
}

/// A value or a sentence as printed, in the order of its place on the paper.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Said {
    /// Face such as `M-01/en`.
    pub face: String,
    /// Language code.
    pub lang: String,
    /// Figure id; for a sentence, its place such as `block 4`.
    pub figure: String,
    /// What the slot asked for, or `sentence`.
    pub ask: String,
    /// The text.
    pub text: String,
}

impl Said {
    /// A printed value.
    pub fn value(face: &str, lang: Lang, printed: &PrintedValue) -> Said {
        let ask = printed.ask.key();
        Said {
            face: face.to_owned(),
            lang: lang.code().to_owned(),
            figure: printed.figure.clone(),
            ask: ask.to_owned(),
            text: printed.text.clone(),
        }
    }

    /// Words between the values: a sentence, label, caution, band, block number, or the geometry of a drawing.
    ///
    /// Leave out the footer, the revision and the check-word: they follow from the register and would make
    /// every issue differ from the last.
    pub fn sentence(face: &str, lang: Lang, place: &str, text: &str) -> Said {
        Said {
            face: face.to_owned(),
            lang: lang.code().to_owned(),
            figure: place.to_owned(),
            ask: "sentence".to_owned(),
            text: text.to_owned(),
        }
    }
}

/// An authored value behind the printed ones.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Leaf {
    /// Key path such as `water.start`.
    pub key: String,
    /// Text as typed.
    pub text: String,
    /// File, from the job folder.
    pub file: String,
    /// Line, from 1.
    pub line: u32,
}

/// One line of the register.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Entry {
    /// Always [`FORMAT`] in memory.
    pub format: u32,
    /// What happened.
    pub kind: Event,
    /// Document code such as `M-01`.
    pub code: String,
    /// What the paper is about, such as `mud larkenfell/carve-24/2`. Never changes for a code.
    pub subject: String,
    /// Kind of card, by file stem.
    pub card: String,
    /// Revision letter of the card, not of the mix.
    pub rev: String,
    /// Shape on the corner tab.
    pub shape: String,
    /// Check-word on the corner tab, one for all faces.
    pub word: String,
    /// Language codes of the faces, front first.
    #[serde(default)]
    pub languages: Vec<String>,
    /// Copies out.
    #[serde(default)]
    pub copies: u32,
    /// Where they hang.
    #[serde(default)]
    pub hung: Option<String>,
    /// Who holds them.
    #[serde(default)]
    pub holder: Option<String>,
    /// Day the revision was put in force, or of the event.
    #[serde(with = "iso")]
    pub date: Date,
    /// Last good day, as printed.
    #[serde(default, with = "iso_or_none")]
    pub good_until: Option<Date>,
    /// Printed values and sentences in order.
    #[serde(default)]
    pub values: Vec<Said>,
    /// Authored values behind them.
    #[serde(default)]
    pub leaves: Vec<Leaf>,
    /// [`digest`] of `values`.
    pub digest: String,
    /// Digest of the revision this one replaces.
    #[serde(default)]
    pub previous: Option<String>,
    /// Version of Hodbook that wrote the line.
    pub version: String,
}

impl Entry {
    /// The entry as one line, with its line end.
    ///
    /// Text cannot break it in two: JSON escapes line ends.
    pub fn line(&self) -> Result<String, String> {
        serde_json::to_string(self).map(|json| json + "\n").map_err(|e| e.to_string())
    }
}

/// Eight hexadecimal digits over the ordered printed values and sentences.
///
/// Each part goes in with its length, so that no two different lists read the same. Eight digits tell two
/// revisions of a card apart; they are no proof against somebody who wants them to agree.
pub fn digest(said: &[Said]) -> String {
    let mut hash = Sha256::new();
    for s in said {
        for part in [&s.face, &s.lang, &s.figure, &s.ask, &s.text] {
            hash.update((part.len() as u64).to_le_bytes());
            hash.update(part.as_bytes());
        }
    }
    hash.finalize().iter().take(4).map(|byte| format!("{byte:02x}")).collect()
}

mod iso {
    use super::{Date, Deserialize, Deserializer, Serializer};

    pub fn serialize<S: Serializer>(date: &Date, to: S) -> Result<S::Ok, S::Error> {
        to.collect_str(date)
    }

    pub fn deserialize<'de, D: Deserializer<'de>>(from: D) -> Result<Date, D::Error> {
        let text = String::deserialize(from)?;
        text.parse().map_err(|_| serde::de::Error::custom(format!("`{text}` is not a date such as 2026-03-02")))
    }
}

mod iso_or_none {
    use super::{Date, Deserialize, Deserializer, Serializer};

    pub fn serialize<S: Serializer>(date: &Option<Date>, to: S) -> Result<S::Ok, S::Error> {
        match date {
            Some(date) => to.collect_str(date),
            None => to.serialize_none(),
        }
    }

    pub fn deserialize<'de, D: Deserializer<'de>>(from: D) -> Result<Option<Date>, D::Error> {
        let text = Option::<String>::deserialize(from)?;
        let date = |t: String| t.parse().map_err(|_| serde::de::Error::custom(format!("`{t}` is not a date such as 2026-03-02")));
        text.map(date).transpose()
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::words::EN;

    #[test]
    fn digest_sees_order_and_borders() {
        let a = Said::sentence("M-01/en", EN, "block 1", "water first");
        let b = Said::sentence("M-01/en", EN, "block 2", "powder second");
        let mut c = a.clone();
        c.figure = "block 1w".to_owned();
        c.text = "ater first".to_owned();
        assert_eq!(digest(std::slice::from_ref(&a)).len(), 8);
        assert_ne!(digest(&[a.clone(), b.clone()]), digest(&[b, a.clone()]));
        assert_ne!(digest(&[a]), digest(&[c]));
    }
}
