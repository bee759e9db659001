//! What panels on record say of a texture.

use crate::job::{Mean, Panel};
use crate::quantity::expr::Share;
use crate::quantity::num::Direction;
use crate::quantity::units::find_expr;
use crate::quantity::{Node, Num, Quantity, Worked};
use crate::sound::Ground;
use crate::sound::limits::{self, BY_CHANCE};
use crate::tally;
use crate::trade::relief::Grid;

use num_rational::BigRational;

use super::of::Use;

/// Panels of the site, in its texture and its carve mix, as they stood on the wall. A panel that was carved lying on
/// a table measures another thing: nothing hung while it set.
pub(super) fn of<'a>(ground: &Ground<'a>, one: &Use<'_>) -> Vec<&'a Panel> {
    let good = |p: &&Panel| p.mix.text == one.site.carve_mix.text && p.stood.text != "flat";
    tally::panels::of(ground.job, one.site).filter(|p| p.texture.text == one.texture.name.text).filter(good).collect()
}

/// What its grid says.
pub(super) fn grid(one: &Use<'_>, panel: &Panel) -> Option<Grid> {
    tally::panels::grid(panel, one.texture).ok()
}

/// A stated figure beside a measured one, as both are printed.
pub(super) struct Compared {
    /// As stated.
    pub stated: String,
    /// As measured.
    pub measured: String,
    /// Its standard error, rounded up.
    pub error: String,
    /// True if chance does not explain the difference.
    pub differs: bool,
}

/// Compares the fill, or the stated mean where the texture has no fill.
pub(super) fn compare(one: &Use<'_>, grid: &Grid) -> Option<Compared> {
    match (one.fill(), &one.texture.mean) {
        (Some(fill), _) => {
            let measured: &Worked<Share> = &grid.fill;
            judge(fill.value(), measured.value(), grid.fill_error.value(), "%", (1, 10))
        }
        (None, Mean::Stated(mean)) if one.site.metric => judge(mean.value(), grid.mean.value(), grid.error.value(), "mm", (1, 10)),
        (None, Mean::Stated(mean)) => judge(mean.value(), grid.mean.value(), grid.error.value(), "in", (1, 100)),
        (None, Mean::Fill(..)) => None,
    }
}

fn judge(stated: &Quantity, measured: &Quantity, error: &Quantity, unit: &str, step: (i64, i64)) -> Option<Compared> {
    let step = BigRational::new(step.0.into(), step.1.into());
    let show = find_expr(unit)?;
    let number = |q: &Quantity, way: Direction| q.in_unit(show).map(|n| n.round(way, &step));
    let (a, b, e) = (number(stated, Direction::Nearest)?, number(measured, Direction::Nearest)?, number(error, Direction::Up)?);
    let times = limits::find(BY_CHANCE)?.quantity()?.si.exact()?.clone();
    let apart = if a < b { &b - &a } else { &a - &b };
    let text = |n: &BigRational| format!("{} {unit}", Num::Exact(n.clone()).plain());
    Some(Compared { stated: text(&a), measured: text(&b), error: text(&e), differs: apart > times * &e })
}

/// A share to a tenth of a per cent.
pub(super) fn percent(share: &Node) -> Option<String> {
    let tenth = BigRational::new(1.into(), 10.into());
    let number = share.value().in_unit(find_expr("%")?)?.round(Direction::Nearest, &tenth);
    Some(format!("{} %", Num::Exact(number).plain()))
}
