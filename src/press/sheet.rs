//! Press sheets: small cards laid out on one paper for cutting.
//!
//! Finished frames are moved, never scaled. The sheet is made for duplex with the
//! flip on the long edge: a back lies where its front will be when the paper has
//! been turned.

use typst::ecow::EcoVec;
use typst::layout::{Abs, Axes, Frame, FrameItem, GroupItem, Point, Size};
use typst::model::Document;
use typst::syntax::Span;
use typst::visualize::{Color, FixedStroke, Geometry, Paint};
use typst_layout::Page;

use super::cards;
use super::payload::Run;
use super::pdf::{self, Identity};
use super::world::{PressError, Templates};

/// One card on the sheet: its faces by index in the run, and how many of it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Pair {
    /// Index of the front in the run.
    pub front: usize,
    /// Index of the back, if it has one.
    pub back: Option<usize>,
    /// How many of it.
    pub copies: usize,
}

/// The paper the cards are cut from, upright.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SheetPaper {
    /// Width.
    pub width_mm: f64,
    /// Height.
    pub height_mm: f64,
}

impl SheetPaper {
    /// US letter.
    pub const LETTER: SheetPaper = SheetPaper { width_mm: 215.9, height_mm: 279.4 };
    /// ISO A4.
    pub const A4: SheetPaper = SheetPaper { width_mm: 210.0, height_mm: 297.0 };
}

/// Between cards, so that a blade that drifts spoils no neighbour.
const GUTTER_PT: f64 = 12.0;
/// What office printers leave blank along the edge.
const MARGIN_PT: f64 = 18.0;
/// Crop marks keep this far off the card.
const CLEAR_PT: f64 = 3.0;
/// Short enough to stay as far off the neighbour across the gutter.
const MARK_PT: f64 = GUTTER_PT - 2.0 * CLEAR_PT;

/// Where cards go on a sheet.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Grid {
    pub sheet: (f64, f64),
    pub card: (f64, f64),
    pub columns: usize,
    pub rows: usize,
}

impl Grid {
    /// The orientation of the paper that holds more cards.
    pub fn best(paper: SheetPaper, card: (f64, f64)) -> Option<Grid> {
        let (w, h) = (Abs::mm(paper.width_mm).to_pt(), Abs::mm(paper.height_mm).to_pt());
        let upright = Grid::on((w, h), card);
        let lying = Grid::on((h, w), card);
        let best = if lying.len() > upright.len() { lying } else { upright };
        (best.len() > 0).then_some(best)
    }

    fn on(sheet: (f64, f64), card: (f64, f64)) -> Grid {
        Grid { sheet, card, columns: fitting(sheet.0, card.0), rows: fitting(sheet.1, card.1) }
    }

    pub fn len(&self) -> usize {
        self.columns * self.rows
    }

    /// The top left corner of a place, counted along the rows.
    fn corner(&self, place: usize) -> (f64, f64) {
        let (column, row) = (place % self.columns, place / self.columns);
        let start = |sheet: f64, card: f64, n: usize| (sheet - span(card, n)) / 2.0;
        (
            start(self.sheet.0, self.card.0, self.columns) + step(self.card.0, column),
            start(self.sheet.1, self.card.1, self.rows) + step(self.card.1, row),
        )
    }

    /// The place on the back that lies behind a place on the front when the paper
    /// is turned over its long edge: columns change sides on an upright sheet,
    /// rows on a lying one.
    pub fn behind(&self, place: usize) -> usize {
        let (column, row) = (place % self.columns, place / self.columns);
        if self.sheet.1 >= self.sheet.0 {
            row * self.columns + (self.columns - 1 - column)
        } else {
            (self.rows - 1 - row) * self.columns + column
        }
    }
}

#[allow(clippy::cast_precision_loss)]
fn step(card: f64, n: usize) -> f64 {
    (card + GUTTER_PT) * n as f64
}

fn span(card: f64, n: usize) -> f64 {
    step(card, n) - GUTTER_PT
}

fn fitting(sheet: f64, card: f64) -> usize {
    let mut n = 0;
    // A hundredth of a point forgives the millimetres of a paper's name.
    while span(card, n + 1) + 2.0 * (MARGIN_PT + CLEAR_PT) <= sheet + 0.01 {
        n += 1;
    }
    n
}

/// Lays cards of a run on press sheets: fronts, then their backs, sheet by sheet.
/// The run is set again with one face for every copy, so that each copy keeps its
/// own reading order.
pub fn sheets(run: &Run, pairs: &[Pair], paper: SheetPaper, title: &str, attach: Option<&[u8]>) -> Result<Vec<u8>, Vec<PressError>> {
    let card = (Abs::mm(run.paper.width_mm).to_pt(), Abs::mm(run.paper.height_mm).to_pt());
    let Some(grid) = Grid::best(paper, card) else {
        return Err(vec![PressError::plain("the card does not fit the sheet")]);
    };
    let (all, laid) = copies(run, pairs)?;
    let (room, doc) = cards::set(&Templates::embedded(), &all)?;
    if doc.pages().len() != all.faces.len() {
        return Err(vec![PressError::plain("a card overflows its face, so it cannot go on a press sheet")]);
    }
    let mut pages: EcoVec<Page> = EcoVec::new();
    for group in laid.chunks(grid.len()) {
        let mut front = blank(&grid);
        let mut back = blank(&grid);
        let two_sided = group.iter().any(|(_, b)| b.is_some());
        for (place, (f, b)) in group.iter().enumerate() {
            put(&mut front, &grid, place, doc.pages().get(*f));
            if let Some(b) = b {
                put(&mut back, &grid, grid.behind(place), doc.pages().get(*b));
            }
        }
        for frame in std::iter::once(front).chain(two_sided.then_some(back)) {
            if let Some(model) = doc.pages().first() {
                let mut page = model.clone();
                page.frame = frame;
                page.number = pages.len() as u64 + 1;
                pages.push(page);
            }
        }
    }
    let identity = Identity { title, lang: Some(&run.lang), date: run.date };
    let sheet = pdf::assemble(pages, doc.info(), &identity, attach)?;
    pdf::write(&sheet, &identity, &room)
}

/// Front and back of one copy, by index in its run.
type Laid = (usize, Option<usize>);

/// The run with one face for every copy, and which faces make which copy.
pub(super) fn copies(run: &Run, pairs: &[Pair]) -> Result<(Run, Vec<Laid>), Vec<PressError>> {
    let mut all = run.clone();
    all.faces.clear();
    let mut laid: Vec<Laid> = Vec::new();
    for pair in pairs {
        for copy in 1..=pair.copies {
            let mut add = |n: usize| {
                let face = run.faces.get(n).ok_or_else(|| vec![PressError::plain(format!("the run has no face number {n}"))])?;
                let mut face = face.clone();
                face.id = format!("{}/{copy}", face.id);
                all.faces.push(face);
                Ok::<usize, Vec<PressError>>(all.faces.len() - 1)
            };
            let front = add(pair.front)?;
            let back = pair.back.map(&mut add).transpose()?;
            laid.push((front, back));
        }
    }
    Ok((all, laid))
}

/// A sheet with crop marks at every card corner, in the margins and gutters only.
fn blank(grid: &Grid) -> Frame {
    let mut frame = Frame::hard(Size::new(Abs::pt(grid.sheet.0), Abs::pt(grid.sheet.1)));
    let stroke = FixedStroke { paint: Paint::Solid(Color::BLACK), thickness: Abs::pt(0.4), ..FixedStroke::default() };
    let mut mark = |x0: f64, y0: f64, dx: f64, dy: f64| {
        let line = Geometry::Line(Point::new(Abs::pt(dx), Abs::pt(dy))).stroked(stroke.clone());
        frame.push(Point::new(Abs::pt(x0), Abs::pt(y0)), FrameItem::Shape(line, Span::detached()));
    };
    for place in 0..grid.len() {
        let (x, y) = grid.corner(place);
        let (w, h) = grid.card;
        for (cx, out_x) in [(x, -1.0), (x + w, 1.0)] {
            for (cy, out_y) in [(y, -1.0), (y + h, 1.0)] {
                let long = |at: f64, out: f64, sheet: f64| {
                    let edge = if out < 0.0 { at - MARGIN_PT } else { sheet - MARGIN_PT - at };
                    (edge - CLEAR_PT).clamp(0.0, MARK_PT)
                };
                let (lx, ly) = (long(cx, out_x, grid.sheet.0), long(cy, out_y, grid.sheet.1));
                mark(cx + out_x * CLEAR_PT, cy, out_x * lx, 0.0);
                mark(cx, cy + out_y * CLEAR_PT, 0.0, out_y * ly);
            }
        }
    }
    frame
}

fn put(sheet: &mut Frame, grid: &Grid, place: usize, page: Option<&Page>) {
    let Some(page) = page else { return };
    let (x, y) = grid.corner(place);
    let at = Axes::new(Abs::pt(x), Abs::pt(y));
    sheet.push(Point::new(at.x, at.y), FrameItem::Group(GroupItem::new(page.frame.clone())));
}
