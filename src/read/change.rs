//! `changes/NAME.md`: a change order, not yet in force.

use crate::finding::{Finding, Severity};
use crate::job::{Change, Changed, Text};
use crate::quantity::parse::{self, Said};

use super::doc::Doc;
use super::field::{ACCEPTS, Field, Want};
use super::group::{Group, Item, all};
use super::near;

static VALUE: &[Field] = &[
    Field::new("file", Want::Text, "sites/example.md", "file of the job folder"),
    Field::new("key", Want::Text, "surfaces.EX-1.width", "key in its front matter, with dots"),
    Field::new("value", Want::Text, "24 ft", "the value as it would stand there"),
];

/// Keys of a change order.
pub static FIELDS: &[Field] = &[
    Field::new("title", Want::Words, "north wall grows", "what it is about"),
    Field::new("date", Want::Date, "2026-03-10", "day it was ordered"),
    Field::new("from", Want::Text, "general contractor", "who ordered it, by role"),
    Field::new("values", Want::List(VALUE), "", "what would change"),
    ACCEPTS,
];

pub(super) fn make(id: &str, g: &Group) -> Option<Change> {
    let values = g.list("values").iter().map(|v| Some(Changed { file: v.text("file")?, key: v.text("key")?, value: v.text("value")? }));
    Some(Change {
        id: id.to_owned(),
        title: g.words("title").and_then(|w| w.into_iter().next()).map(|(_, t)| t)?,
        date: g.day("date")?,
        from: g.text("from")?,
        values: all(values)?,
    })
}

/// Every change must find its key, and its value must fit there: a change order that cannot be applied says so today.
pub(super) fn check(g: &Group, docs: &[Doc<'_>], out: &mut Vec<Finding>) {
    for value in g.list("values") {
        let (Some(file), Some(key), Some(new)) = (value.text("file"), value.text("key"), value.text("value")) else { continue };
        let Some(doc) = docs.iter().find(|d| d.file.path == file.text) else {
            let known: Vec<&str> = docs.iter().map(|d| d.file.path.as_str()).collect();
            let title = format!("no file is called `{}`", file.text);
            out.push(
                Finding::new("reference-unknown", Severity::Stop, title).at(file.at, "named here").help(near::help(&file.text, &known)),
            );
            continue;
        };
        // A file that could not be read has been reported; nothing can be said of its keys.
        let Some(group) = &doc.group else { continue };
        match leads(group, &key.text) {
            Ok(item) => fits(item, &new, out),
            Err(known) => {
                let title = format!("`{}` has no key `{}`", file.text, key.text);
                let known: Vec<&str> = known.iter().map(String::as_str).collect();
                out.push(Finding::new("reference-unknown", Severity::Stop, title).at(key.at, "").help(near::help(&key.text, &known)));
            }
        }
    }
}

/// The item at a key path, or the keys that would have led on.
fn leads<'g>(group: &'g Group, path: &str) -> Result<&'g Item, Vec<String>> {
    let (name, rest) = path.split_once('.').unwrap_or((path, ""));
    let below = |prefix: &str, keys: Vec<String>| keys.into_iter().map(|k| format!("{prefix}.{k}")).collect::<Vec<_>>();
    let names = |group: &Group| group.items.iter().map(|(n, _)| (*n).to_owned()).collect::<Vec<_>>();
    let item = group.items.iter().find(|(n, _)| *n == name).map(|(_, item)| item).ok_or_else(|| names(group))?;
    match item {
        _ if rest.is_empty() => Ok(item),
        Item::Group(inner) => leads(inner, rest).map_err(|keys| below(name, keys)),
        Item::Map(entries) => {
            let (entry, rest) = rest.split_once('.').unwrap_or((rest, ""));
            let all = || below(name, entries.iter().map(|(n, _)| n.text.clone()).collect());
            let (_, inner) = entries.iter().find(|(n, _)| n.text == entry).ok_or_else(all)?;
            let prefix = format!("{name}.{entry}");
            if rest.is_empty() { Err(below(&prefix, names(inner))) } else { leads(inner, rest).map_err(|keys| below(&prefix, keys)) }
        }
        _ => Err(names(group)),
    }
}

/// An amount must stay an amount of its dimension.
fn fits(item: &Item, new: &Text, out: &mut Vec<Finding>) {
    let Item::One(now) = item else { return };
    let Some(unit) = now.unit() else { return };
    let fault = match parse::read(&new.text) {
        Ok(Said::Amount(q, _)) if q.dim == now.value().dim => return,
        Ok(_) => format!("`{}` cannot stand where {} stands now", new.text, now.value().dim.name()),
        Err(fault) => fault.what,
    };
    let help = format!("write it with a unit, like `{} {}`", now.number().plain(), unit.symbol());
    out.push(Finding::new("unit-wrong", Severity::Stop, fault).at(new.at, "").help(help));
}
