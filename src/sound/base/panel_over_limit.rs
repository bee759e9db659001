//! L5: the panel that the stated control joints leave, or a face without joints, over the limits of lath and plaster.

use std::cmp::Ordering;

use num_rational::BigRational;

use crate::finding::{Finding, Severity};
use crate::job::{JointPlan, Shape, Site, Surface};
use crate::quantity::num::Direction;
use crate::quantity::show::{self, Look};
use crate::quantity::units::find_expr;
use crate::quantity::{Node, Quantity};
use crate::sound::limits::{self, Limit};
use crate::sound::told::{at_value, printed, text, typed};
use crate::sound::{Check, Ground};
use crate::tally::bounds;
use crate::words::EN;

/// The check.
pub const CHECK: Check = Check {
    name: "panel-over-limit",
    ids: &["L5"],
    severities: &[Severity::Hold],
    title: "a panel between control joints is larger than it may be",
    manual: include_str!("panel_over_limit.md"),
    twins: &[("es", include_str!("panel_over_limit.es.md"))],
    run,
};

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    // Straight on block the wall's own joints are followed; panels are a matter of lath.
    let lathed = ground.job.sites.iter().filter(|s| s.lath.is_some());
    let all = lathed.flat_map(|site| site.surfaces.iter().filter(|s| s.scratch.is_some()).map(move |s| (site, s)));
    all.flat_map(|(site, surface)| one(ground, site, surface)).collect()
}

fn one(ground: &Ground<'_>, site: &Site, surface: &Surface) -> Vec<Finding> {
    let plan = site.joints.iter().find(|j| j.surface.text == surface.code.text);
    let mut found = Vec::new();
    match &surface.shape {
        Shape::Flat(outline) => {
            if let Ok((wide, high)) = bounds(outline) {
                found.extend(flat(ground, site, surface, plan, wide.node(), high.node()));
            }
        }
        Shape::Hearth { front, .. } => found.extend(flat(ground, site, surface, plan, front.0.node(), front.1.node())),
        Shape::Box(faces) => {
            let over = faces.iter().find_map(|f| flat(ground, site, surface, plan, f.width.node(), f.height.node()));
            found.extend(over);
        }
        Shape::Column { half, diameter, height } => {
            let girth = Node::pi() * diameter.node().clone() / Node::given(if *half { 2 } else { 1 }, 1);
            found.extend(area(ground, site, surface, plan, &(girth * height.node().clone()), "round"));
        }
        Shape::Frustum { foot, head, height } => {
            let girth = Node::pi() * (foot.node().clone() + head.node().clone()) / Node::given(2, 1);
            found.extend(area(ground, site, surface, plan, &(girth * height.node().clone()), "round"));
        }
    }
    for soffit in &surface.soffits {
        let size = soffit.length.node().clone() * soffit.depth.node().clone();
        found.extend(area(ground, site, surface, plan, &size, "overhead"));
    }
    found
}

/// One more panel than joints.
fn panels(joints: Option<&Node>) -> Node {
    joints.map_or_else(|| Node::given(1, 1), |n| n.clone() + Node::given(1, 1))
}

fn over(value: &Quantity, row: &Limit) -> bool {
    row.quantity().and_then(|most| value.compare(&most)) == Some(Ordering::Greater)
}

/// A number of a panel as it is read: a little up, so that it never looks smaller than it is.
fn shown(value: &Quantity, unit: &str) -> String {
    let tenth = BigRational::new(1.into(), 10.into());
    match find_expr(unit) {
        Some(u) => value
            .in_unit(u)
            .map_or(String::new(), |n| typed(&show::text(&n.round(Direction::Up, &tenth), Some(u), Look::Decimal(1), EN, false))),
        None => typed(&show::text(&value.si.round(Direction::Up, &tenth), None, Look::Decimal(1), EN, false)),
    }
}

/// Side, area and shape of a flat panel.
fn flat(ground: &Ground<'_>, site: &Site, surface: &Surface, plan: Option<&JointPlan>, wide: &Node, high: &Node) -> Option<Finding> {
    let (columns, rows) = (panels(plan.map(|p| p.upright.node())), panels(plan.map(|p| p.level.node())));
    let (l, h) = (wide.clone() / columns, high.clone() / rows);
    let (size, long, short) = (l.clone() * h.clone(), l.clone().max(h.clone()), l.clone().min(h.clone()));
    let ratio = long.clone() / short;
    let (feet, square) = if site.metric { ("m", "m2") } else { ("ft", "ft2") };
    let dims = format!("{} × {}", shown(l.value(), feet), shown(h.value(), feet));
    let (most_area, most_side, most_ratio) =
        (limits::find(limits::PANEL_AREA)?, limits::find(limits::PANEL_SIDE)?, limits::find(limits::PANEL_RATIO)?);
    let (row, why) = if over(size.value(), most_area) {
        (most_area, format!("{dims}, {}; at most {}", shown(size.value(), square), most_area.value.replace("ft2", "ft²")))
    } else if over(long.value(), most_side) {
        (most_side, format!("{dims}; no side over {}", most_side.value))
    } else if plan.is_some() && over(ratio.value(), most_ratio) {
        // Without a plan a long low band is left alone: a hearth or a curb cracks at its corners, not along it.
        (most_ratio, format!("{dims}, {} to 1; at most {} to 1", shown(ratio.value(), "").replace(' ', ""), most_ratio.value))
    } else {
        return None;
    };
    Some(tell(ground, site, surface, plan, row, &why))
}

/// The area of round and overhead work.
fn area(ground: &Ground<'_>, site: &Site, surface: &Surface, plan: Option<&JointPlan>, size: &Node, how: &str) -> Option<Finding> {
    let (columns, rows) = (panels(plan.map(|p| p.upright.node())), panels(plan.map(|p| p.level.node())));
    let each = size.clone() / (columns * rows);
    let row = limits::find(limits::CURVED_AREA)?;
    if !over(each.value(), row) {
        return None;
    }
    let square = if site.metric { "m2" } else { "ft2" };
    let why = format!("{} of {how} work; at most {}", shown(each.value(), square), row.value.replace("ft2", "ft²"));
    Some(tell(ground, site, surface, plan, row, &why))
}

fn tell(ground: &Ground<'_>, site: &Site, surface: &Surface, plan: Option<&JointPlan>, row: &Limit, why: &str) -> Finding {
    let code = &surface.code.text;
    let id = |name: &str| format!("{}/{code}.{name}", site.id);
    let how = if plan.is_some() { "its joints leave a panel of" } else { "no joint is planned, it is one panel of" };
    let mut finding = Finding::new(CHECK.name, Severity::Hold, format!("{code}: {how} {why}")).source(row.source).about(code.clone());
    // The takeoff cuts flat faces itself.
    if let (Some(panels), Some(long), Some(high)) = (
        text(ground, &id("panels"), site.metric).filter(|_| printed(ground, &id("panels"), site.metric).is_some()),
        text(ground, &id("panel_length"), site.metric),
        text(ground, &id("panel_height"), site.metric),
    ) {
        finding = finding.derived(format!("the takeoff cuts it into {panels} panels of {long} × {high}")).figure(id("panels"));
    }
    finding = finding.help(format!(
        "put joints where the carving has a line and write `joints: {{{code}: {{upright: N, level: N, lath: cut}}}}`; the takeoff's count is the fewest"
    ));
    match plan {
        Some(plan) => at_value(finding, ground, plan.upright.node(), "joints as planned").related(surface.code.at, "this surface"),
        None => finding.at(surface.code.at, "no `joints` for it").absent(),
    }
}
