//! The parts of a check's manual page that a crew reads: what it is about, why, and what to do.

use crate::words::{EN, Lang};

use super::Check;

/// What a check says to people, in one language.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Page {
    /// The condition.
    pub title: String,
    /// Why it matters.
    pub why: String,
    /// What to do about it, on the wall or at the mixer.
    pub todo: String,
}

/// The parts of a check's page; English where the language has no twin. `None` if a part is missing.
pub fn page(check: &Check, lang: Lang) -> Option<Page> {
    let twin = check.twins.iter().find(|(code, _)| *code == lang.code()).map(|(_, text)| *text);
    let (text, title, lang) = match twin {
        Some(text) => (text, text.lines().next()?.strip_prefix("# ")?.trim(), lang),
        None => (check.manual, check.title, EN),
    };
    Some(Page { title: title.to_owned(), why: part(text, lang.text("manual.why"))?, todo: part(text, lang.text("manual.todo"))? })
}

/// The paragraph behind a bold lead.
fn part(text: &str, lead: &str) -> Option<String> {
    let rest = text.split_once(&format!("**{lead}**"))?.1;
    let end = rest.find("\n\n").unwrap_or(rest.len());
    // The manual is Markdown; a crew's page is plain words.
    let plain = rest.get(..end)?.replace(['*', '`'], "");
    let words: Vec<&str> = plain.split_whitespace().collect();
    (!words.is_empty()).then(|| words.join(" "))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_part_ends_with_its_paragraph() {
        let text = "**Why.** It runs\noff the wall.\n\n**What to do.** Stop.\n";
        assert_eq!(part(text, "Why.").as_deref(), Some("It runs off the wall."));
        assert_eq!(part(text, "What to do.").as_deref(), Some("Stop."));
        assert_eq!(part(text, "How."), None);
    }

    /// A crew that reads a language gets every page of the list in it.
    #[test]
    fn every_check_speaks_to_the_crew_in_every_language() {
        for check in crate::sound::CHECKS {
            for lang in Lang::all() {
                let page = page(check, lang).unwrap_or_else(|| panic!("{} has no page in {}", check.name, lang.code()));
                let own = lang == EN || check.twins.iter().any(|(code, _)| *code == lang.code());
                assert!(own, "{} has no twin in {}", check.name, lang.code());
                // The book sets these as plain words.
                for text in [&page.title, &page.why, &page.todo] {
                    assert!(!text.contains(['[', '#', '<']), "{}: {text}", check.name);
                }
            }
        }
    }
}
