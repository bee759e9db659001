//! The field tables as a page of the manual, in Markdown.

use std::fmt::Write;

use super::field::{Field, Need, Want};
use super::kinds::{HEAD, KindOf};
use super::near;

/// The manual page of a kind.
pub fn manual(kind: &KindOf) -> String {
    let place = match (kind.file, kind.folder) {
        (Some(file), _) => format!("`{file}`"),
        (None, folder) => format!("`{folder}/NAME.md`"),
    };
    let mut out = format!("# {place}\n\nA file of kind `{}`: {}.\n\n", kind.kind, kind.meaning);
    out.push_str("The front matter stands between two lines `---`; the text below it is Markdown. ");
    out.push_str("Quantities are written with their unit, as in `1 gal 2 qt`, `3/8 in` or `50 min at 70 °F`.\n\n");
    out.push_str("An amount outside of what is `likely` is read and reported as `amount-unlikely`, and can be accepted there: ");
    out.push_str("what is likely is common practice, no source. What is reported beyond a limit cannot be.\n\n");
    table(&mut out, &HEAD.iter().chain(kind.fields).collect::<Vec<_>>());
    below(&mut out, kind.fields, "");
    let _ = write!(out, "## In another language\n\nThe twin has the language in its name, such as `.es.md`, and holds words only.\n\n");
    table(&mut out, &HEAD.iter().chain(kind.twin()).collect::<Vec<_>>());
    out.truncate(out.trim_end().len());
    out.push('\n');
    out
}

/// A table of keys.
fn table(out: &mut String, fields: &[&Field]) {
    out.push_str("| key | holds | example | meaning | since |\n|---|---|---|---|---|\n");
    for field in fields {
        let example = if field.example.is_empty() { String::new() } else { format!("`{}`", field.example) };
        let need = match field.need {
            Need::Always => String::new(),
            Need::Free => "; may be left out".to_owned(),
            Need::When(key, values) => format!("; only when `{key}` is {}", near::listed(values)),
            Need::WhenElseFree(key, values) => format!("; may be left out unless `{key}` is {}", near::listed(values)),
            Need::FreeWhen(key, values) => format!("; may be left out, only when `{key}` is {}", near::listed(values)),
        };
        let limits = field.bounds_said();
        let limits = if limits.is_empty() { limits } else { format!(", {limits}") };
        let _ = writeln!(out, "| `{}` | {}{limits} | {example} | {}{need} | {} |", field.name, holds(field), field.meaning, field.since);
    }
    out.push('\n');
}

/// Tables of the keys that have keys of their own.
fn below(out: &mut String, fields: &'static [Field], path: &str) {
    for field in fields {
        let key = if path.is_empty() { field.name.to_owned() } else { format!("{path}.{}", field.name) };
        let (inner, title, note) = match field.want {
            Want::Group(inner) => (inner, key, ""),
            Want::List(inner) => (inner, format!("{key}, each"), ""),
            Want::Map(_, inner) => (
                inner,
                format!("{key}.NAME"),
                "An entry may say `like: OTHER` and then needs only the keys in which it differs from that one.\n\n",
            ),
            _ => continue,
        };
        let _ = write!(out, "## `{title}`\n\n{}.\n\n{note}", capital(field.meaning));
        table(out, &inner.iter().collect::<Vec<_>>());
        below(out, inner, &title);
    }
}

fn capital(text: &str) -> String {
    let mut letters = text.chars();
    letters.next().map_or_else(String::new, |first| first.to_uppercase().chain(letters).collect())
}

fn holds(field: &Field) -> String {
    match field.want {
        Want::Amount(dim, kind) => match kind {
            crate::quantity::Kind::Loads => "loads".to_owned(),
            crate::quantity::Kind::Bags => "bags".to_owned(),
            crate::quantity::Kind::Angle => "an angle in degrees".to_owned(),
            crate::quantity::Kind::Share => "a share in %".to_owned(),
            _ => dim.name(),
        },
        Want::Whole => "a whole number".to_owned(),
        Want::Plain => "a plain number".to_owned(),
        Want::Ratio => "parts by mass or by volume".to_owned(),
        Want::Range(dim, _) => format!("{} to another", dim.name()),
        Want::TimeAt => "a time at a temperature".to_owned(),
        Want::Text => "text".to_owned(),
        Want::Words => "text, again as `KEY_es` in Spanish".to_owned(),
        Want::Choice(words) => format!("one of {}", words.iter().map(|w| format!("`{w}`")).collect::<Vec<_>>().join(", ")),
        Want::Clock => "a time of day, 24 hours".to_owned(),
        Want::Date => "a date".to_owned(),
        Want::Dates => "a list of dates".to_owned(),
        Want::YesNo => "`yes` or `no`".to_owned(),
        Want::Choices(words) => format!("a list of {}", words.iter().map(|w| format!("`{w}`")).collect::<Vec<_>>().join(", ")),
        Want::Texts => "a list".to_owned(),
        Want::Languages => "a list of language codes".to_owned(),
        Want::Corners => "a list of corners, each of two lengths".to_owned(),
        Want::Lengths => "a list of lengths".to_owned(),
        Want::Group(_) => "keys of its own, below".to_owned(),
        Want::Map(name, _) => format!("entries under names, such as `{name}`, below"),
        Want::List(_) => "a list, below".to_owned(),
    }
}

#[cfg(test)]
mod tests {
    use super::super::kinds::KINDS;
    use super::*;

    #[test]
    fn pages_show_units_limits_and_conditions() {
        let mix = KINDS.iter().find(|k| k.kind == "mix").map(manual).unwrap();
        let row =
            "| `limit` | a volume, more than 0 gal and at most 50 gal, likely 1 qt to 20 gal | `2 gal` | most water ever, per load | 1 |";
        assert!(mix.contains(row), "{mix}");
        let site = KINDS.iter().find(|k| k.kind == "site").map(manual).unwrap();
        assert!(site.contains("only when `shape` is `gable`"));
        assert!(site.contains("## `surfaces.NAME.openings.NAME`"));
    }
}
