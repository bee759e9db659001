//! Did you mean: the known names nearest to a typed one.

/// The nearest name, if it is near enough to be a slip of the keys.
pub(super) fn nearest<'a>(typed: &str, known: impl IntoIterator<Item = &'a str>) -> Option<&'a str> {
    ranked(typed, known).into_iter().find(|(score, _)| *score > 0.78).map(|(_, name)| name)
}

fn ranked<'a>(typed: &str, known: impl IntoIterator<Item = &'a str>) -> Vec<(f64, &'a str)> {
    let typed = typed.to_lowercase();
    let mut all: Vec<(f64, &str)> = known.into_iter().map(|name| (strsim::jaro_winkler(&typed, &name.to_lowercase()), name)).collect();
    all.sort_by(|a, b| b.0.total_cmp(&a.0));
    all
}

/// A help line: the nearest name, or the first few known ones.
pub fn help(typed: &str, known: &[&str]) -> String {
    if let Some(name) = nearest(typed, known.iter().copied()) {
        return format!("did you mean `{name}`?");
    }
    if known.is_empty() {
        return "nothing has a name here".to_owned();
    }
    let some: Vec<String> = ranked(typed, known.iter().copied()).iter().take(8).map(|(_, n)| format!("`{n}`")).collect();
    let more = if known.len() > some.len() { " …" } else { "" };
    format!("known here: {}{more}", some.join(", "))
}
