//! Did you mean.

/// The candidate that differs least from `word`, if it is near enough to be a slip of the hand.
pub fn nearest<'a>(word: &str, candidates: impl IntoIterator<Item = &'a str>) -> Option<&'a str> {
    if word.len() > 60 {
        return None;
    }
    let lower = word.to_lowercase();
    let allowed = (lower.chars().count() / 3).max(1);
    candidates
        .into_iter()
        .map(|c| (strsim::osa_distance(&lower, &c.to_lowercase()), c))
        .filter(|(distance, c)| *distance <= allowed && *distance < c.chars().count())
        .min_by_key(|(distance, _)| *distance)
        .map(|(_, c)| c)
}

/// `did you mean …?`, or the list of what there is.
pub fn help(word: &str, candidates: &[&str]) -> String {
    match nearest(word, candidates.iter().copied()) {
        Some(near) => format!("did you mean `{near}`?"),
        None if candidates.is_empty() => "there is none to name yet".to_owned(),
        None => format!("write one of {}", listed(candidates)),
    }
}

/// `a`, `b`, `c`; at most twelve.
pub fn listed(words: &[&str]) -> String {
    let mut shown: Vec<String> = words.iter().take(12).map(|w| format!("`{w}`")).collect();
    if words.len() > 12 {
        shown.push("…".to_owned());
    }
    shown.join(", ")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn slips_are_seen_and_strangers_are_not() {
        assert_eq!(nearest("limt", ["least", "limit", "step"]), Some("limit"));
        assert_eq!(nearest("strat", ["start", "step"]), Some("start"));
        assert_eq!(nearest("colour", ["least", "limit"]), None);
        assert_eq!(nearest("x", ["y"]), None);
    }
}
