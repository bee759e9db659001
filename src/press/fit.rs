//! How each face fitted its paper, read from the laid-out pages themselves, not
//! from what the template meant to do.

use serde::{Deserialize, Serialize};
use typst::foundations::{Dict, Label, Selector, Value};
use typst::introspection::MetadataElem;
use typst::layout::{Abs, Frame, FrameItem, Point, Transform};
use typst::utils::PicoStr;
use typst::visualize::Paint;
use typst_layout::PagedDocument;

/// How one face came out.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct FaceFit {
    /// Id of the face, such as `M-01/en`.
    pub id: String,
    /// Index of its first page in the run.
    pub page: usize,
    /// Pages it took; more than one means that it overflowed.
    pub pages: usize,
    /// Lines over the budget, counted in lines of the distance class. The budget
    /// keeps room for a band, so it may be passed while the face is still one page.
    pub lines_over: usize,
    /// Lines still free.
    pub lines_free: usize,
    /// The smallest type placed above the footer, in points.
    pub smallest_pt: f64,
    /// The largest type, below the name, of a text that holds a digit, in points.
    pub numeral_pt: f64,
    /// Texts that run out of the printable paper.
    pub outside: Vec<String>,
    /// Texts printed over one another.
    pub overlaps: Vec<(String, String)>,
    /// All text of the face in reading order, runs parted by line feeds; empty in a fit that was kept from an earlier run.
    #[serde(skip)]
    pub text: String,
    /// The same without white space: every printed value is looked for in it.
    pub(super) bare: String,
}

impl FaceFit {
    /// True if the face is one page within its budget, with nothing cut or overprinted.
    pub fn fits(&self) -> bool {
        self.pages == 1 && self.lines_over == 0 && self.outside.is_empty() && self.overlaps.is_empty()
    }

    /// True if the words or the value stand on the face. White space does not
    /// count: where a line breaks, and how a fraction is stacked, is layout.
    pub fn shows(&self, words: &str) -> bool {
        self.bare.contains(&bare(words))
    }
}

/// A text without its white space.
pub(super) fn bare(text: &str) -> String {
    text.chars().filter(|c| !c.is_whitespace()).collect()
}

/// One run of text as it lies on a page, in points from the top left.
#[derive(Clone, Debug)]
pub(super) struct Placed {
    pub text: String,
    pub size: f64,
    pub left: f64,
    pub right: f64,
    pub top: f64,
    pub baseline: f64,
    pub ghost: bool,
}

/// Every run of text of a frame, in the order in which it is read.
pub(super) fn texts(frame: &Frame) -> Vec<Placed> {
    let mut out = Vec::new();
    walk(frame, Transform::identity(), &mut out);
    out
}

fn walk(frame: &Frame, at: Transform, out: &mut Vec<Placed>) {
    for (pos, item) in frame.items() {
        let here = at.pre_concat(Transform::translate(pos.x, pos.y));
        match item {
            FrameItem::Group(group) => walk(&group.frame, here.pre_concat(group.transform), out),
            FrameItem::Text(text) => {
                let a = Point::zero().transform(here);
                let b = Point::new(text.width(), -text.size * 0.714).transform(here);
                let (ax, ay, bx, by) = (a.x.to_pt(), a.y.to_pt(), b.x.to_pt(), b.y.to_pt());
                out.push(Placed {
                    text: text.text.to_string(),
                    size: text.size.to_pt(),
                    left: ax.min(bx),
                    right: ax.max(bx),
                    top: ay.min(by),
                    baseline: ay.max(by),
                    ghost: is_clear(&text.fill),
                });
            }
            _ => {}
        }
    }
}

fn is_clear(paint: &Paint) -> bool {
    matches!(paint, Paint::Solid(color) if color.alpha().is_some_and(|a| a == 0.0))
}

/// The layout a template reports for a face, under the label `face`.
struct Plan {
    id: String,
    page: usize,
    need: f64,
    have: f64,
    line: f64,
    body: [f64; 4],
    /// How far the corner tab reaches down; its texts may stand in the margin.
    tab: f64,
    /// Where the name ends and the content begins.
    below: f64,
}

fn number(value: Option<&Value>) -> f64 {
    match value {
        Some(Value::Float(f)) => *f,
        #[allow(clippy::cast_precision_loss)]
        Some(Value::Int(i)) => *i as f64,
        _ => 0.0,
    }
}

fn plan(doc: &PagedDocument, dict: &Dict, page: usize) -> Plan {
    let size = doc.pages().get(page).map(|p| p.frame.size());
    let mut body = [0.0, 0.0, size.map_or(0.0, |s| s.x.to_pt()), size.map_or(0.0, |s| s.y.to_pt())];
    if let Ok(Value::Array(corners)) = dict.get("body") {
        for (slot, v) in body.iter_mut().zip(corners.iter()) {
            *slot = number(Some(v));
        }
    }
    Plan {
        id: match dict.get("id") {
            Ok(Value::Str(s)) => s.to_string(),
            _ => String::new(),
        },
        page,
        need: number(dict.get("need").ok()),
        have: number(dict.get("have").ok()),
        line: number(dict.get("line").ok()).max(1.0),
        body,
        tab: number(dict.get("tab").ok()),
        below: number(dict.get("below").ok()),
    }
}

/// The fit of every face of a run, in the order of its pages.
pub(super) fn faces(doc: &PagedDocument) -> Vec<FaceFit> {
    let Some(label) = Label::new(PicoStr::intern("face")) else { return Vec::new() };
    let mut plans: Vec<Plan> = Vec::new();
    for element in doc.introspector().elements().query(&Selector::Label(label)) {
        let (Some(meta), Some(place)) =
            (element.to_packed::<MetadataElem>(), element.location().and_then(|l| PagedDocument::introspector(doc).elements().position(l)))
        else {
            continue;
        };
        if let Value::Dict(dict) = &meta.value {
            plans.push(plan(doc, dict, place.page.get() - 1));
        }
    }
    plans.sort_by_key(|p| p.page);
    let ends: Vec<usize> = plans.iter().skip(1).map(|p| p.page).chain([doc.pages().len()]).collect();
    plans.iter().zip(ends).map(|(p, end)| measure(doc, p, end)).collect()
}

fn measure(doc: &PagedDocument, plan: &Plan, end: usize) -> FaceFit {
    let pages = end.saturating_sub(plan.page).max(1);
    let mut fit = FaceFit {
        id: plan.id.clone(),
        page: plan.page,
        pages,
        lines_over: lines((plan.need - plan.have) / plan.line, true),
        lines_free: lines((plan.have - plan.need) / plan.line, false),
        smallest_pt: f64::INFINITY,
        numeral_pt: 0.0,
        outside: Vec::new(),
        overlaps: Vec::new(),
        text: String::new(),
        bare: String::new(),
    };
    // A second page is an overflow whatever the template reckoned.
    if pages > 1 {
        fit.lines_over = fit.lines_over.max(1);
    }
    for page in doc.pages().iter().skip(plan.page).take(pages) {
        let placed = texts(&page.frame);
        let size = page.frame.size();
        inspect(&mut fit, &placed, plan, size.x, size.y);
    }
    fit.bare = bare(&fit.text);
    fit
}

#[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)]
fn lines(n: f64, up: bool) -> usize {
    let n = if up { (n - 0.01).ceil() } else { n.floor() };
    if n > 0.0 { n as usize } else { 0 }
}

fn inspect(fit: &mut FaceFit, placed: &[Placed], plan: &Plan, width: Abs, height: Abs) {
    let body = plan.body;
    let (w, h) = (width.to_pt(), height.to_pt());
    // A quarter inch is what office printers leave blank; small cards are cut out
    // of a larger sheet and keep their 3/16 in for duplex drift.
    let safe = if w.min(h) < 288.0 { 13.0 } else { 17.9 };
    let inked: Vec<&Placed> = placed.iter().filter(|p| !p.text.trim().is_empty()).collect();
    for p in &inked {
        fit.text.push_str(&p.text);
        fit.text.push('\n');
        let in_body = p.baseline > body[1] - 1.0 && p.baseline < body[3] + 1.0 && p.left > body[0] - 1.0;
        if in_body && !p.ghost {
            fit.smallest_pt = fit.smallest_pt.min(p.size);
            if p.baseline > plan.below && p.text.chars().any(|c| c.is_ascii_digit()) {
                fit.numeral_pt = fit.numeral_pt.max(p.size);
            }
            let past_margin = p.right > body[2] + 1.0 && p.baseline > plan.tab;
            if p.right > w - safe || p.left < safe || past_margin {
                fit.outside.push(p.text.clone());
            }
        }
    }
    let above_footer = inked.into_iter().filter(|p| p.baseline < body[3] + 1.0);
    fit.overlaps.extend(overlaps(above_footer));
}

/// Pairs of texts printed over one another. Capital height is what counts: a
/// descender that reaches into the next line's leading is no fault.
pub(super) fn overlaps<'a>(placed: impl Iterator<Item = &'a Placed>) -> Vec<(String, String)> {
    let solid: Vec<&Placed> = placed.filter(|p| !p.ghost && !p.text.trim().is_empty()).collect();
    let mut out = Vec::new();
    for (n, a) in solid.iter().enumerate() {
        for b in solid.iter().skip(n + 1) {
            let across = a.right.min(b.right) - a.left.max(b.left);
            let down = a.baseline.min(b.baseline) - a.top.max(b.top);
            if across > 1.5 && down > 1.5 {
                out.push((a.text.clone(), b.text.clone()));
            }
        }
    }
    out
}
