//! D11: a drawing is asked for that there is nothing to draw of.

use crate::finding::{Finding, Severity};
use crate::prose::did_you_mean;
use crate::sound::told::once_a_place;
use crate::sound::{Check, Ground, Seen};
use crate::source::Span;

/// The check.
pub const CHECK: Check = Check {
    name: "drawing-of-nothing",
    ids: &["D11"],
    severities: &[Severity::Stop],
    title: "a drawing is asked for that there is nothing to draw of",
    manual: include_str!("drawing_of_nothing.md"),
    twins: &[("es", include_str!("drawing_of_nothing.es.md"))],
    run,
};

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    let mut found = Vec::new();
    for seen in ground.seen {
        seen.doc.asked(&mut |name, arguments, at| found.extend(one(seen, name, arguments, at)));
    }
    once_a_place(found)
}

fn one(seen: &Seen<'_>, name: &str, arguments: &[(String, String)], at: Span) -> Option<Finding> {
    let argument = |key: &str| arguments.iter().find(|(k, _)| k == key).map(|(_, v)| v.as_str());
    let site = seen.subject.site();
    let (title, help) = match name {
        "elevation" | "takeoff" => {
            let code = argument("surface")?;
            let known: Vec<&str> = site.surfaces.iter().map(|s| s.code.text.as_str()).collect();
            if known.contains(&code) {
                return None;
            }
            (format!("`{name}` is asked for `{code}`, no surface of {} is called that", site.name.text), did_you_mean(code, &known))
        }
        "batch-log" => {
            let rows = argument("rows")?;
            if rows.parse::<u32>().is_ok_and(|n| n > 0) {
                return None;
            }
            (
                format!("`{name}` is asked for `{rows}` rows, a whole number from 1 is wanted"),
                "write a number, such as `rows=12`".to_owned(),
            )
        }
        _ => return None,
    };
    let finding = Finding::new(CHECK.name, Severity::Stop, title).at(at, "nothing would be drawn");
    Some(finding.source("house rule: a blank where a drawing was meant is filled with a guess").help(help))
}
