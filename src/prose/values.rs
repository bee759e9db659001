//! What Tera sees: figures as maps, never numbers; our filters, tests and `fixed`.
//!
//! Nothing here prints. A slot gives a mark that says what to print, and the mark is read after Tera is done,
//! so one prepared body serves any number of scopes and its problems come all at once.

use std::sync::OnceLock;

use num_rational::BigRational;
use tera::{Error, Kwargs, State, Tera, TeraResult, Value};

use crate::quantity::num::Num;
use crate::quantity::parse::{self, Said};
use crate::quantity::{Dim, Kind, Quantity};
use crate::tally::{Ask, Slot, Tally};

/// Opens a mark, parts its fields, ends it. Authors cannot type them: they are taken out of every text.
pub(super) const OPEN: char = '\u{1}';
pub(super) const PART: char = '\u{2}';
pub(super) const SHUT: char = '\u{3}';
/// Stands before a proper name that is printed apart from the words.
pub(super) const NAME: char = '\u{4}';

/// Filters that choose how a figure is printed.
pub(super) const ASKS: &[(&str, Ask)] =
    &[("second", Ask::Second), ("metric", Ask::Metric), ("us", Ask::Us), ("both", Ask::Both), ("exact", Ask::Exact), ("long", Ask::Long)];

/// Everything a slot may be filtered by.
pub(super) const FILTERS: &[&str] = &[
    "second",
    "metric",
    "us",
    "both",
    "exact",
    "long",
    "bags",
    "upper",
    "lower",
    "capitalize",
    "title",
    "trim",
    "first",
    "last",
    "length",
    "reverse",
];

/// True for a filter that chooses how a figure prints, and leaves a text alone.
pub(super) fn keeps(filter: &str) -> bool {
    filter == "bags" || ASKS.iter().any(|(name, _)| *name == filter)
}

/// Tests after `is`.
pub(super) const TESTS: &[&str] = &["over", "under", "one", "odd_bags", "defined", "undefined"];

/// A Tera with our filters, tests and functions.
pub(super) fn tera() -> Tera {
    // Registering everything anew for each body takes longer than reading a short one.
    static TERA: OnceLock<Tera> = OnceLock::new();
    TERA.get_or_init(registered).clone()
}

fn registered() -> Tera {
    let mut tera = Tera::new();
    tera.autoescape_on(Vec::<&'static str>::new());
    for (name, _) in ASKS {
        let name = *name;
        tera.register_filter(name, move |v: Value, _: Kwargs, _: &State| ask(&v, name));
    }
    tera.register_filter("bags", |v: Value, _: Kwargs, _: &State| bags(&v));
    tera.register_filter("slot", slot);
    tera.register_test("over", over);
    tera.register_test("under", under);
    tera.register_test("one", one);
    tera.register_test("odd_bags", odd_bags);
    tera.register_function("fixed", fixed);
    tera
}

/// A slot as Tera sees it; with `apart`, proper names are marked as such.
pub(super) fn value(slot: &Slot, tally: &Tally, apart: bool) -> Value {
    match slot {
        Slot::Name(text) if apart && !text.is_empty() => Value::from(format!("{NAME}{}", bare(text))),
        Slot::Text(text) | Slot::Name(text) => Value::from(bare(text)),
        Slot::List(items) => Value::from(items.iter().map(|s| value(s, tally, apart)).collect::<Vec<Value>>()),
        Slot::Map(map) => {
            let mut out = tera::Map::new();
            for (name, slot) in map.iter() {
                out.insert(name.clone().into(), value(slot, tally, apart));
            }
            Value::from(out)
        }
        Slot::Figure(id) => {
            let mut out = tera::Map::new();
            out.insert("figure".into(), Value::from(id.as_ref()));
            out.insert("show".into(), Value::from("own"));
            let exact = tally.figure(id).and_then(|f| f.worked.as_ref().ok()).map(|n| packed(n.value()));
            // The leading mark shows when an author prints or joins the inside of a figure.
            out.insert("exact".into(), Value::from(format!("{OPEN}{}", exact.unwrap_or_default())));
            Value::from(out)
        }
    }
}

fn bare(text: &str) -> String {
    text.replace([OPEN, PART, SHUT, NAME], "")
}

fn packed(q: &Quantity) -> String {
    let number = match &q.si {
        Num::Exact(r) => format!("{}/{}", r.numer(), r.denom()),
        Num::Real(x) => format!("real {x:?}"),
    };
    let d = q.dim;
    let reading = u8::from(q.kind == Kind::Reading);
    format!("{number};{};{};{};{};{};{reading}", d.length, d.mass, d.time, d.temperature, d.money)
}

fn unpacked(text: &str) -> Option<Quantity> {
    let mut parts = text.trim_start_matches(OPEN).split(';');
    let number = parts.next()?;
    let si = match number.strip_prefix("real ") {
        Some(x) => Num::real(x.parse().ok()?)?,
        None => Num::Exact(number.parse::<BigRational>().ok()?),
    };
    let mut power = || parts.next().and_then(|p| p.parse::<i8>().ok());
    let dim = Dim { length: power()?, mass: power()?, time: power()?, temperature: power()?, money: power()? };
    let kind = if power()? == 1 { Kind::Reading } else { Kind::Plain };
    Some(Quantity { si, dim, kind })
}

fn field<'v>(value: &'v Value, name: &'static str) -> Option<&'v str> {
    value.as_map().and_then(|m| m.get(&tera::value::Key::from(name))).and_then(Value::as_str)
}

fn with(value: &Value, name: &'static str, text: &str) -> Value {
    let mut map = value.as_map().cloned().unwrap_or_default();
    map.insert(name.into(), Value::from(text));
    Value::from(map)
}

/// Tera hands an undefined name on to a filter, for its own `default`. We have no `default`: it would print
/// over a misspelt name.
fn defined(value: &Value) -> TeraResult<()> {
    if value.is_undefined() { Err(Error::message("a name is not defined")) } else { Ok(()) }
}

fn ask(value: &Value, name: &'static str) -> TeraResult<Value> {
    defined(value)?;
    Ok(match field(value, "show") {
        Some("own") => with(value, "show", name),
        Some(other) if other == name => value.clone(),
        Some(other) => with(value, "problem", &format!("clash{PART}{other}{PART}{name}")),
        None => with(&Value::from(tera::Map::new()), "problem", &format!("no-figure{PART}{name}")),
    })
}

fn bags(value: &Value) -> TeraResult<Value> {
    defined(value)?;
    Ok(match field(value, "figure") {
        Some(_) => with(value, "bags", "yes"),
        None => with(&Value::from(tera::Map::new()), "problem", &format!("no-figure{PART}bags")),
    })
}

/// The last filter of every slot: a mark with what to print.
fn slot(value: &Value, kwargs: Kwargs, _: &State) -> TeraResult<String> {
    defined(value)?;
    let n: u64 = kwargs.must_get("n")?;
    let mark = |kind: &str, rest: &str| format!("{OPEN}S{n}{PART}{kind}{PART}{rest}{SHUT}");
    if let Some(problem) = field(value, "problem") {
        return Ok(mark("problem", problem));
    }
    if let Some(id) = field(value, "figure") {
        let show = field(value, "show").unwrap_or("own");
        let bags = field(value, "bags").unwrap_or("no");
        return Ok(mark("figure", &format!("{id}{PART}{show}{PART}{bags}")));
    }
    if let Some(text) = field(value, "fixed") {
        let why = field(value, "because").unwrap_or("");
        return Ok(mark("fixed", &format!("{text}{PART}{why}")));
    }
    if let Some(text) = value.as_str() {
        if let Some(name) = text.strip_prefix(NAME) {
            return Ok(mark("name", name));
        }
        return Ok(if text.contains(OPEN) { mark("problem", "inside") } else { mark("text", text) });
    }
    if let Some(number) = value.as_i64() {
        return Ok(mark("number", &number.to_string()));
    }
    Ok(mark("problem", &format!("group{PART}{}", value.name())))
}

fn fixed(kwargs: Kwargs, _: &State) -> TeraResult<Value> {
    let mut out = tera::Map::new();
    for (from, to) in [("text", "fixed"), ("because", "because")] {
        let text: Option<String> = kwargs.get(from)?;
        out.insert(to.into(), Value::from(bare(&text.unwrap_or_default())));
    }
    Ok(Value::from(out))
}

/// An error with a name of ours: read back by [`super::word::told`].
fn told(name: &str, what: impl std::fmt::Display, help: impl std::fmt::Display) -> Error {
    Error::message(format!("{OPEN}{name}{PART}{what}{PART}{help}{SHUT}"))
}

fn exact(value: &Value, test: &str) -> TeraResult<Quantity> {
    defined(value)?;
    let Some(text) = field(value, "exact") else {
        return Err(told("slot-comparison", format!("`is {test}` compares figures, and this is none"), "put a figure before `is`"));
    };
    unpacked(text).ok_or_else(|| {
        let id = field(value, "figure").unwrap_or("this figure");
        told("slot-unfilled", format!("`{id}` has no value to compare"), "give what it is worked from, or ask `is defined` first")
    })
}

fn compared(value: &Value, kwargs: &Kwargs, test: &str) -> TeraResult<std::cmp::Ordering> {
    let limit: String = kwargs.must_get("limit")?;
    let figure = exact(value, test)?;
    match parse::read(&limit) {
        Ok(Said::Amount(q, _)) => figure.compare(&q).ok_or_else(|| {
            told(
                "comparison-mixed",
                format!("the figure is {}, `{limit}` is {}", figure.dim.name(), q.dim.name()),
                format!("compare it with {}", figure.dim.name()),
            )
        }),
        Ok(_) => Err(told("comparison-unreadable", format!("`{limit}` is not one amount"), "write one amount, such as `5 gal`")),
        Err(fault) => Err(told("comparison-unreadable", fault.what, fault.help)),
    }
}

fn over(value: &Value, kwargs: Kwargs, _: &State) -> TeraResult<bool> {
    Ok(compared(value, &kwargs, "over")? == std::cmp::Ordering::Greater)
}

fn under(value: &Value, kwargs: Kwargs, _: &State) -> TeraResult<bool> {
    Ok(compared(value, &kwargs, "under")? == std::cmp::Ordering::Less)
}

fn one(value: &Value, _: Kwargs, _: &State) -> TeraResult<bool> {
    let q = exact(value, "one")?;
    counted(&q, "one")?;
    Ok(q.si.compare(&Num::int(1)) == std::cmp::Ordering::Equal)
}

fn odd_bags(value: &Value, _: Kwargs, _: &State) -> TeraResult<bool> {
    let q = exact(value, "odd_bags")?;
    counted(&q, "odd_bags")?;
    let whole = q.si.exact().filter(|r| r.is_integer()).map(|r| r.numer().clone());
    Ok(whole.is_some_and(|n| num_integer::Integer::is_odd(&n)))
}

fn counted(q: &Quantity, test: &str) -> TeraResult<()> {
    if q.dim == Dim::NONE {
        return Ok(());
    }
    Err(told("comparison-mixed", format!("the figure is {}, `is {test}` wants a count", q.dim.name()), "use it on loads or bags"))
}
