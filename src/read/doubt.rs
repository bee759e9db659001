//! Amounts that can be read and are odd all the same: of a size that the trade does not know for their key, or in the
//! other unit system than their file. They are handed on with the job; the checks speak of them.

use std::collections::BTreeSet;

use crate::job::{Doubt, Odd, Text};
use crate::quantity::expr::system;
use crate::quantity::parse::{self, Said};
use crate::quantity::units::UnitExpr;
use crate::quantity::{Dim, Kind, Num, Quantity};
use crate::source::Span;

use super::doc::Doc;
use super::field::Field;
use super::group::Group;

/// An amount as it was read.
#[derive(Debug)]
pub(super) struct Amount {
    pub field: &'static Field,
    /// Its key path.
    pub key: String,
    pub text: String,
    pub at: Span,
    /// Metric or not; none for what both systems measure alike.
    metric: Option<bool>,
    /// True if it lies outside of what is likely.
    unlikely: bool,
    value: Quantity,
}

impl Amount {
    pub fn of(field: &'static Field, key: &str, (text, at): (&str, Span), q: &Quantity, unit: Option<UnitExpr>) -> Amount {
        // A thermometer shows both rows of figures, and mixes are quoted at 70 °F everywhere.
        let metric = unit.filter(|_| q.dim != Dim::TEMPERATURE).and_then(system);
        Amount { field, key: key.to_owned(), text: text.trim().to_owned(), at, metric, unlikely: field.unlikely(q), value: q.clone() }
    }

    /// The key path of the entry that it stands in; empty for the keys of the file itself.
    fn entry(&self) -> &str {
        self.key.rsplit_once('.').map_or("", |(entry, _)| entry)
    }

    fn doubt(&self, odd: Odd) -> Doubt {
        let Amount { field, key, text, at, .. } = self;
        let text = Text { text: text.clone(), at: *at };
        Doubt { key: key.clone(), name: field.name, text, meaning: field.meaning, example: field.example, odd }
    }
}

/// The odd amounts of all files, in their order; an amount that several entries take over with `like` is told once.
pub(super) fn all(docs: &[Doc<'_>]) -> Vec<Doubt> {
    let mut told: BTreeSet<Span> = BTreeSet::new();
    let mut out = Vec::new();
    for doc in docs {
        out.extend(changes(doc, docs));
        let metric = units(doc, docs);
        for amount in &doc.amounts {
            let size = amount.field.likely.filter(|_| amount.unlikely).map(|(low, high)| Odd::Size(low, high));
            let system = || metric.filter(|m| foreign(amount, *m, &doc.amounts)).map(Odd::System);
            if let Some(odd) = size.or_else(system)
                && told.insert(amount.at)
            {
                out.push(amount.doubt(odd));
            }
        }
    }
    out
}

/// How many times what stands now a change may make of it before somebody asks: a wall grows, it does not grow twelvefold.
const MANY: i64 = 4;

/// Amounts of a change order, each against the one that it would take the place of.
fn changes(doc: &Doc<'_>, docs: &[Doc<'_>]) -> Vec<Doubt> {
    let Some(group) = doc.group.as_ref().filter(|_| doc.kind.kind == "change") else { return Vec::new() };
    let one = |(n, value): (usize, &Group)| {
        let (file, key, new) = (value.text("file")?, value.text("key")?, value.text("value")?);
        let target = docs.iter().find(|d| d.file.path == file.text)?;
        let now = target.amounts.iter().find(|a| a.key == key.text)?;
        let Ok(Said::Amount(quantity, unit)) = parse::read(&new.text) else { return None };
        let would = Amount::of(now.field, &now.key, (&new.text, new.at), &quantity, Some(unit));
        let (small, large) = (now.value.si.mul(&Num::frac(1, MANY)), now.value.si.mul(&Num::int(MANY)));
        // Of nothing, and of a bearing, anything is many times.
        let counts = !now.value.si.is_zero() && !now.value.si.is_negative() && now.value.kind != Kind::Angle;
        let far = counts && (quantity.si.compare(&small).is_lt() || quantity.si.compare(&large).is_gt());
        let size = now.field.likely.filter(|_| would.unlikely).map(|(low, high)| Odd::Size(low, high));
        let change = || (far && quantity.dim != Dim::TEMPERATURE).then(|| Odd::Change(Text { text: now.text.clone(), at: now.at }));
        let system = || now.metric.filter(|m| would.metric == Some(!m)).map(Odd::System);
        let doubt = would.doubt(size.or_else(change).or_else(system)?);
        Some(Doubt { key: format!("values.{}.value", n + 1), ..doubt })
    };
    group.list("values").iter().enumerate().filter_map(one).collect()
}

/// The unit system of a file, or of the site that a record speaks of; true for metric.
fn units(doc: &Doc<'_>, docs: &[Doc<'_>]) -> Option<bool> {
    let group = doc.group.as_ref()?;
    let of = match group.text("site") {
        Some(site) => docs.iter().filter_map(|d| d.group.as_ref()).find(|g| g.text("code").is_some_and(|c| c.text == site.text))?,
        None => group,
    };
    Some(of.text("units")?.text == "metric")
}

/// True for an amount of the other system. A whole entry in that system is a choice: a beaker that is marked in
/// millilitres, color that is sold by the litre.
fn foreign(amount: &Amount, metric: bool, all: &[Amount]) -> bool {
    if amount.metric != Some(!metric) {
        return false;
    }
    let entry = amount.entry();
    let within = |a: &&Amount| a.entry().strip_prefix(entry).is_some_and(|rest| rest.is_empty() || rest.starts_with('.'));
    let mut beside = all.iter().filter(within).filter(|a| a.at != amount.at).filter_map(|a| a.metric).peekable();
    let chosen = !entry.is_empty() && beside.peek().is_some() && beside.all(|m| m != metric);
    !chosen
}

#[cfg(test)]
mod tests {
    use std::path::Path;

    use super::super::KINDS;
    use super::super::field::{Limits, Want};
    use super::*;
    use crate::source::Folder;

    /// Keys in doubt when a text of the demo is another.
    fn doubts(path: &str, from: &str, to: &str) -> Vec<(String, Odd)> {
        let demo = Folder::open(&Path::new(env!("CARGO_MANIFEST_DIR")).join("content")).unwrap();
        let text = &demo.at(path).unwrap().text;
        assert_eq!(text.matches(from).count(), 1, "{path}: {from}");
        let (job, found) = crate::read::job(&demo.with_text(path, &text.replace(from, to)));
        assert!(found.is_empty(), "{found:?}");
        job.doubts.into_iter().map(|d| (d.key, d.odd)).collect()
    }

    #[test]
    fn a_size_is_asked_about_once() {
        let size = |key: &str, low, high| vec![(key.to_owned(), Odd::Size(low, high))];
        let company = "company.md";
        assert_eq!(doubts(company, "holds: 1 gal, marked", "holds: 1 gal, marked"), []);
        assert_eq!(doubts(company, "tub: 30 lb", "tub: 30 oz"), size("platform.tub", "2 lb", "200 lb"));
        assert_eq!(doubts("records/bf-panel-plank.md", "[3/4 in, 5/8 in", "[3/4 ft, 5/8 in"), size("depths.1", "0 in", "4 in"));
        // Nothing at all says that there is none, and both ends count as likely.
        assert_eq!(doubts("sites/larkenfell.md", "key: 1/8 in", "key: 0 in"), []);
        assert_eq!(doubts("sites/larkenfell.md", "key: 1/8 in", "key: 1/2 in"), []);
        // W2 is like W1: the letters stand there once.
        let window = ("depth: 4 in, overhead: 3/4 in, left: 2 ft", "depth: 4 in, overhead: 3/4 ft, left: 2 ft");
        let key = "surfaces.LF-1.openings.W1.overhead";
        assert_eq!(doubts("sites/larkenfell.md", window.0, window.1), size(key, "1/16 in", "3 in"));
    }

    #[test]
    fn the_other_system_is_a_choice_of_a_whole_entry() {
        let metric = |key: &str| vec![(key.to_owned(), Odd::System(false))];
        assert_eq!(doubts("company.md", "pail: {holds: 5 gal, marked: 1 qt}", "pail: {holds: 20 L, marked: 1 L}"), []);
        let trailer = (
            "payload: 3300 lb, pallet: {width: 48 in, depth: 40 in, weight: 40 lb}",
            "payload: 1500 kg, pallet: {width: 1.2 m, depth: 1 m, weight: 18 kg}",
        );
        assert_eq!(doubts("company.md", trailer.0, trailer.1), []);
        assert_eq!(doubts("company.md", "pail: {holds: 5 gal", "pail: {holds: 20 L"), metric("measures.pail.holds"));
        assert_eq!(doubts("mixes/carve-24.md", "lift: 1 1/2 in", "lift: 38 mm"), metric("lift"));
        assert_eq!(doubts("records/lf-firebox.md", "clearance: 9 in", "clearance: 230 mm"), metric("clearance"));
        assert_eq!(doubts("mixes/lite-10m.md", "lift: 38 mm", "lift: 1 1/2 in"), [("lift".to_owned(), Odd::System(true))]);
    }

    /// What is likely lies within the limits, and the examples of the tables are likely.
    #[test]
    fn tables_agree_with_themselves() {
        fn walk(fields: &'static [Field], count: &mut usize) {
            for field in fields {
                match field.want {
                    Want::Group(inner) | Want::Map(_, inner) | Want::List(inner) => walk(inner, count),
                    _ => {}
                }
                let Some((low, high)) = field.likely else { continue };
                *count += 1;
                let value = |text: &'static str| field.amount(text).unwrap_or_else(|| panic!("{}: {text}", field.name));
                assert!(value(low).compare(&value(high)).is_lt(), "{}", field.name);
                let (least, most) = match field.limits {
                    Limits::Any => panic!("{} has no limits", field.name),
                    Limits::Over(low, high) | Limits::From(low, high) => (value(low), value(high)),
                };
                assert!(value(low).compare(&least).is_ge() && value(high).compare(&most).is_le(), "{}", field.name);
                if let Ok(Said::Amount(q, _)) = parse::read(field.example) {
                    assert!(!field.unlikely(&q), "{} {}", field.name, field.example);
                }
            }
        }
        let mut count = 0;
        KINDS.iter().for_each(|kind| walk(kind.fields, &mut count));
        assert!(count > 60, "{count}");
    }
}
