//! Dictionaries: labels, unit names, dates, in every language a crew reads.
//!
//! A language is one JSON file of key → text beside this module and one row of [`LANGUAGES`].

use std::collections::BTreeMap;
use std::sync::OnceLock;

/// A language, by its row in [`LANGUAGES`].
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub struct Lang(u8);

/// English.
pub const EN: Lang = Lang(0);
/// Spanish as used on US sites.
pub const ES: Lang = Lang(1);

/// Code and dictionary of each language.
pub const LANGUAGES: &[(&str, &str)] = &[("en", include_str!("en.json")), ("es", include_str!("es.json"))];

fn dictionaries() -> &'static [BTreeMap<String, String>] {
    static TABLES: OnceLock<Vec<BTreeMap<String, String>>> = OnceLock::new();
    TABLES.get_or_init(|| LANGUAGES.iter().map(|(_, json)| serde_json::from_str(json).unwrap_or_default()).collect())
}

impl Lang {
    /// The language with this code.
    pub fn find(code: &str) -> Option<Lang> {
        LANGUAGES.iter().position(|(c, _)| *c == code).and_then(|i| u8::try_from(i).ok()).map(Lang)
    }

    /// Its code, such as `en`.
    pub fn code(self) -> &'static str {
        LANGUAGES.get(usize::from(self.0)).map_or("en", |(c, _)| c)
    }

    /// All languages.
    pub fn all() -> impl Iterator<Item = Lang> {
        (0..LANGUAGES.len()).filter_map(|i| u8::try_from(i).ok()).map(Lang)
    }

    /// The text of a key; English where this language lacks it, the key itself where English does too.
    pub fn text(self, key: &str) -> &'static str {
        let tables = dictionaries();
        let own = tables.get(usize::from(self.0)).and_then(|t| t.get(key));
        let found = own.or_else(|| tables.first().and_then(|t| t.get(key)));
        debug_assert!(found.is_some(), "no words for {key}");
        found.map_or("", |s| s.as_str())
    }

    /// True if some dictionary has the key.
    pub fn has(self, key: &str) -> bool {
        dictionaries().get(usize::from(self.0)).is_some_and(|t| t.contains_key(key))
    }

    /// The number a word says, one to twelve.
    pub fn number(self, word: &str) -> Option<i64> {
        static NUMBERS: OnceLock<Vec<BTreeMap<&'static str, i64>>> = OnceLock::new();
        let of = |lang: Lang| (1..=12).map(|n| (lang.text(&format!("number.{n}")), n)).collect();
        NUMBERS.get_or_init(|| Lang::all().map(of).collect()).get(usize::from(self.0))?.get(word).copied()
    }

    /// A date such as `2 Mar 2026`: the month in letters, so that no one swaps day and month.
    pub fn date(self, year: i16, month: i8, day: i8) -> String {
        format!("{day} {} {year}", self.text(&format!("month.{month}")))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_language_has_the_same_keys() {
        let tables = dictionaries();
        let english: Vec<&String> = tables[0].keys().collect();
        assert!(english.len() > 40);
        for (table, (code, _)) in tables.iter().zip(LANGUAGES) {
            assert_eq!(table.keys().collect::<Vec<_>>(), english, "{code}");
        }
    }
}
