//! Names that are not there, and the one that was meant.

use crate::work::Missing;

/// Names shown when none is near.
const SHOWN: usize = 8;

/// One line: what was asked, what may have been meant, or what there is.
pub fn line(missing: &Missing) -> String {
    let Missing { kind, asked, known } = missing;
    let start = format!("no {kind} `{asked}`");
    if let Some(near) = nearest(asked, known) {
        return format!("{start}; did you mean `{near}`?");
    }
    match known.len() {
        0 => format!("{start}; there is none"),
        n if n <= SHOWN => format!("{start}; there is {}", known.join(", ")),
        n => {
            let some: Vec<&str> = known.iter().take(SHOWN).map(String::as_str).collect();
            format!("{start}; there is {} and {} more", some.join(", "), n - SHOWN)
        }
    }
}

/// The nearest known name, whichever way its letters are cased; `None` if all are far.
fn nearest<'a>(asked: &str, known: &'a [String]) -> Option<&'a String> {
    let asked = asked.to_lowercase();
    let near = |name: &&String| strsim::normalized_damerau_levenshtein(&asked, &name.to_lowercase());
    let ranked = known.iter().map(|name| (near(&name), name)).filter(|(score, _)| *score >= 0.6);
    // Of equals the first: the order of the job folder.
    ranked
        .fold(None, |best: Option<(f64, &String)>, next| match best {
            Some(best) if best.0 >= next.0 => Some(best),
            _ => Some(next),
        })
        .map(|(_, name)| name)
}
