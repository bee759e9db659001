//! Placeholders → what they print: values, names, fixed amounts, bags.

use std::ops::Range;

use crate::finding::{Finding, Severity};
use crate::job::Body;
use crate::quantity::parse;
use crate::quantity::show::JOIN;
use crate::source::Span;
use crate::tally::{Ask, Scope, Slot, Tally, Voice};

use super::block::{Inline, Use};
use super::markdown::{Feed, State};
use super::render::{HOLDER, ask};

/// What a placeholder stands for.
#[derive(Clone, Debug)]
pub(super) struct Out {
    at: Span,
    what: What,
}

#[derive(Clone, Debug)]
enum What {
    Figure { id: String, ask: Ask, bags: bool },
    Text(String),
    Name(String),
    Fixed { text: String, because: String },
    Problem { name: &'static str, title: String, help: String },
}

impl Out {
    /// Reads the fields of a slot's mark. `first` is the first word of the slot, `typed` says whether it holds a number.
    pub fn read(fields: &[&str], at: Span, first: &str, typed: bool) -> Out {
        let field = |i: usize| fields.get(i).copied().unwrap_or("").to_owned();
        let problem = |name, title: String, help: &str| What::Problem { name, title, help: help.to_owned() };
        let what = match (field(0).as_str(), field(1).as_str()) {
            ("figure", _) => What::Figure { id: field(1), ask: ask(&field(2)), bags: field(3) == "yes" },
            ("text", _) => What::Text(field(1)),
            ("name", _) => What::Name(field(1)),
            ("fixed", _) => What::Fixed { text: field(1), because: field(2) },
            ("number", _) if !typed => What::Text(field(1)),
            ("number", n) => {
                let help = "link it to a figure, or declare `fixed(\"15 min\", because=\"…\")`";
                problem("slot-number", format!("a slot prints the bare number {n}"), help)
            }
            (_, "clash") => {
                let title = format!("one slot asks for `{}` and for `{}`", field(2), field(3));
                problem("filters-clash", title, "keep one of them, or write two slots")
            }
            (_, "no-figure") => {
                let title = format!("`{}` chooses how a figure is printed, and `{first}` is none", field(2));
                problem("filter-without-figure", title, "take the filter away")
            }
            (_, "inside") => problem("slot-inside", "a slot prints the inside of a figure".to_owned(), "print the figure itself"),
            _ => {
                problem("slot-group", format!("`{first}` is a group or list, not one value"), "go on to a name inside it, or loop over it")
            }
        };
        Out { at, what }
    }
}

/// What a document is printed from.
pub(super) struct Print<'a> {
    pub body: &'a Body,
    pub scope: &'a Scope,
    pub tally: &'a Tally,
    pub voice: Voice,
    pub outs: &'a [Out],
}

impl State<'_> {
    /// Text with its placeholders put back.
    pub(super) fn words(&mut self, text: &str, at: &Range<usize>, feed: &Feed, code: bool, out: &mut Vec<Inline>) {
        // Code starts after its backticks; text with entities is not the file's text and keeps the place of the whole.
        let source = feed.text.get(at.clone()).unwrap_or("");
        let shift = if source == text { Some(0) } else { code.then(|| source.find(text)).flatten() };
        let place = |a: usize, b: usize| match shift {
            Some(s) => feed.offsets.span(&(at.start + s + a..at.start + s + b)),
            None => feed.offsets.span(at),
        };
        let mut run = 0;
        let put = |a: usize, b: usize, out: &mut Vec<Inline>| {
            let words = text.get(a..b).unwrap_or("");
            match (words.is_empty(), code) {
                (true, _) => {}
                (false, true) => out.push(Inline::Code(words.to_owned(), Some(place(a, b)))),
                (false, false) => push_text(out, words.to_owned(), place(a, b)),
            }
        };
        for (i, c) in text.char_indices() {
            let Some(n) = holder(c) else { continue };
            put(run, i, out);
            run = i + c.len_utf8();
            if let Some(inline) = self.filled(n) {
                out.push(inline);
            }
        }
        put(run, text.len(), out);
    }

    /// Text with placeholders replaced by what they print: code, link addresses, info words.
    pub(super) fn plain(&mut self, text: &str) -> String {
        let mut out = String::new();
        for c in text.chars() {
            match holder(c).map(|n| self.filled(n)) {
                None => out.push(c),
                Some(Some(Inline::Text(t, _))) => out.push_str(&t),
                Some(Some(Inline::Name(i, _))) => {
                    self.own = true;
                    out.push_str(self.names.get(i).map_or("", |name| name));
                }
                Some(Some(Inline::Value(i) | Inline::Bags(.., i))) => {
                    out.push_str(self.values.get(i).map_or("", |u| u.value.text.as_str()));
                }
                Some(_) => {}
            }
        }
        out
    }

    fn stop(&mut self, name: &'static str, title: String, at: Span, label: &str, help: &str) -> Option<Inline> {
        self.found.push(Finding::new(name, Severity::Stop, title).at(at, label).help(help));
        None
    }

    fn filled(&mut self, n: usize) -> Option<Inline> {
        let print = self.print;
        let out = print.outs.get(n)?;
        let at = out.at;
        match &out.what {
            What::Problem { name, title, help } => self.stop(name, title.clone(), at, "this slot", help),
            What::Text(text) => Some(Inline::Text(text.clone(), Some(at))),
            What::Name(text) => {
                self.names.push(text.as_str().into());
                Some(Inline::Name(self.names.len() - 1, at))
            }
            What::Fixed { text, because } => {
                if because.trim().is_empty() {
                    let title = format!("`{text}` is fixed without a reason");
                    return self.stop("fixed-without-reason", title, at, "a typed number", "say where it comes from: because=\"…\"");
                }
                match parse::read(text) {
                    Ok(_) => Some(Inline::Text(text.trim().replace(' ', &JOIN.to_string()), Some(at))),
                    Err(fault) => self.stop("fixed-unreadable", fault.what, at, "a typed number", &fault.help),
                }
            }
            What::Figure { id, ask, bags } => {
                let Some(value) = print.tally.say(id, *ask, print.voice) else {
                    let title = format!("the figure `{id}` was not worked for {}", print.scope.subject);
                    return self.stop("slot-unfilled", title, at, "prints nothing", "give what it is worked from, or take the slot away");
                };
                let index = self.values.len();
                if *bags {
                    let counted = value.unit.is_some_and(|u| u.symbol() == "bag").then(|| value.number.clone()).flatten();
                    let Some(number) = counted else {
                        let title = format!("`bags` draws a count of bags, this prints `{}`", value.text);
                        return self.stop("bags-of-what", title, at, "drawn here", "use it on mortar or additive");
                    };
                    let whole = number.floor();
                    let half = whole < number;
                    let count = u32::try_from(whole.numer()).unwrap_or(0);
                    self.values.push(Use::new(value, at));
                    return Some(Inline::Bags(count, half, self.bag_label(id), index));
                }
                self.values.push(Use::new(value, at));
                Some(Inline::Value(index))
            }
        }
    }

    /// Mass of one bag of what a figure counts.
    fn bag_label(&self, id: &str) -> String {
        let last = id.rsplit('.').next().unwrap_or("");
        let path = match last {
            l if l.starts_with("mortar") => "mix.mortar_bag",
            l if l.starts_with("additive") => "mix.additive_bag",
            _ => return String::new(),
        };
        match self.print.scope.root.get(path) {
            Some(Slot::Figure(id)) => self.print.tally.say(id, Ask::Own, self.print.voice).map(|v| v.text).unwrap_or_default(),
            _ => String::new(),
        }
    }
}

fn holder(c: char) -> Option<usize> {
    u32::from(c).checked_sub(HOLDER).filter(|n| *n < 0x1_0000).and_then(|n| usize::try_from(n).ok())
}

/// Adds text, joined to the text before it when both are the file's own characters side by side.
pub(super) fn push_text(out: &mut Vec<Inline>, words: String, at: Span) {
    let copied = |text: &str, at: &Span| at.spans(text.len());
    if let Some(Inline::Text(last, Some(place))) = out.last_mut()
        && place.end == at.start
        && copied(last, place)
        && copied(&words, &at)
    {
        last.push_str(&words);
        place.end = at.end;
        return;
    }
    out.push(Inline::Text(words, Some(at)));
}
