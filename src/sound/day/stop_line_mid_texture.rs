//! S6: a day ends in the middle of the texture, or nothing says where it ends.

use crate::finding::{Finding, Severity};
use crate::job::Text;
use crate::sound::{Check, Ground};

use super::plans::{Planned, planned};

/// The check.
pub const CHECK: Check = Check {
    name: "stop-line-mid-texture",
    ids: &["S6"],
    severities: &[Severity::Warn],
    title: "a day's stop line is not on a joint, a corner or an edge",
    manual: include_str!("stop_line_mid_texture.md"),
    twins: &[("es", include_str!("stop_line_mid_texture.es.md"))],
    run,
};

/// What a day may end on. The manual page lists them.
const ENDS: &[&str] = &[
    "joint", "joints", "corner", "corners", "edge", "edges", "crack", "cracks", "seam", "seams", "batten", "battens", "foot", "head",
    "jamb", "jambs", "sill", "column", "post", "pier", "break",
];
/// Words that put the line into the texture whatever else is said.
const MIDDLE: &[&str] = &["mid", "middle", "halfway", "half", "inside", "within", "between", "across", "through", "anywhere", "wherever"];
/// Words that turn the next one round.
const NOT: &[&str] = &["no", "not", "never", "without", "off", "past", "beyond", "before"];

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    planned(ground).iter().filter_map(|day| one(ground, day)).collect()
}

/// Only a day that leaves wall for another one has a stop line.
fn one(ground: &Ground<'_>, day: &Planned<'_>) -> Option<Finding> {
    let (left, says) = day.area(ground, &day.outlook.left);
    if left <= num_rational::BigRational::from_integer(0.into()) {
        return None;
    }
    let finding = |title: String| {
        Finding::new(CHECK.name, Severity::Warn, title)
            .derived(format!("{says} of {} are left for another day", day.goal.surface.text))
            .source("a stop line shows unless a joint hides it; common practice, no source")
            .help("end the day on something the eye expects, such as `stop: stone joint`, `stop: corner`, `stop: control joint`")
            .about(day.about())
    };
    match &day.goal.stop {
        None => Some(finding(format!("{} ends nowhere: no `stop` is stated", day.name())).at(day.goal.day.at, "this day").absent()),
        Some(stop) => {
            let why = wrong(stop)?;
            Some(finding(format!("{} ends at `{}`, {why}", day.name(), stop.text)).at(stop.at, "ends here"))
        }
    }
}

fn wrong(stop: &Text) -> Option<&'static str> {
    let text = stop.text.to_lowercase();
    let words: Vec<&str> = text.split(|c: char| !c.is_alphanumeric()).filter(|w| !w.is_empty()).collect();
    if words.iter().any(|w| MIDDLE.contains(w)) {
        return Some("the middle of the texture");
    }
    let ends = words.iter().enumerate().any(|(i, w)| {
        let before = words.get(i.saturating_sub(3)..i).unwrap_or(&[]);
        ENDS.contains(w) && !before.iter().any(|b| NOT.contains(b))
    });
    (!ends).then_some("no joint, corner or edge")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn where_a_day_may_end() {
        let why = |text: &str| wrong(&Text { text: text.to_owned(), at: crate::source::Span { file: 0, start: 0, end: 0 } });
        for good in ["stone joint", "Board joint, third batten", "crack of the rock", "inner corner", "foot of a column", "control joint"] {
            assert_eq!(why(good), None, "{good}");
        }
        for (bad, says) in [
            ("mid-stone", "the middle of the texture"),
            ("middle of a board joint", "the middle of the texture"),
            ("6 ft from the door", "no joint, corner or edge"),
            ("not on a joint", "no joint, corner or edge"),
            ("where the mud runs out", "no joint, corner or edge"),
        ] {
            assert_eq!(why(bad), Some(says), "{bad}");
        }
    }
}
