//! T6: a fill, or a mean, that leaves no relief between the least and the most.

use crate::finding::{Finding, Severity};
use crate::job::Mean;
use crate::quantity::Num;
use crate::sound::limits::{self, FILL_HIGH, FILL_LOW};
use crate::sound::told::{at_value, related_value};
use crate::sound::{Check, Ground};

use super::of::{self, Use};

/// The check.
pub const CHECK: Check = Check {
    name: "fill-impossible",
    ids: &["T6"],
    severities: &[Severity::Stop],
    title: "a fill or a mean leaves no relief between the least and the most",
    manual: include_str!("fill_impossible.md"),
    twins: &[("es", include_str!("fill_impossible.es.md"))],
    run,
};

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    of::uses(ground).iter().filter_map(|one| judge(ground, one)).collect()
}

/// Under 0 % and over 100 %, and a mean outside the two, are found when the file is read. A stated mean as thick as
/// the faces is told as what it is: bags for the greatest thickness.
fn judge(ground: &Ground<'_>, of: &Use<'_>) -> Option<Finding> {
    let fill = of.fill()?;
    let (low, high) = (limits::find(FILL_LOW)?, limits::find(FILL_HIGH)?);
    let (least, most) = (of::tape(of.site, of.texture.least.as_ref()?.node()), of::tape(of.site, of.texture.most.node()));
    let is = |n: Num| fill.value().si.compare(&n).is_eq();
    let name = &of.texture.name.text;
    let title = match &of.texture.mean {
        Mean::Fill(..) if is(Num::int(0)) => {
            format!("`{name}` has a fill of 0 %: between {least} and {most} nothing would stay on the wall")
        }
        Mean::Fill(..) if is(Num::int(1)) => {
            format!("`{name}` has a fill of 100 %: between {least} and {most} nothing would be carved away")
        }
        Mean::Stated(mean) if is(Num::int(0)) => {
            let mean = of::tape(of.site, mean.node());
            format!("`{name}` is {mean} in the mean and {least} at its thinnest: faces of {most} would have no mud in them")
        }
        _ => return None,
    };
    let finding = Finding::new(CHECK.name, Severity::Stop, title)
        .source("arithmetic: a carved relief keeps more than nothing and less than all of its band")
        .help(format!("measure it: pin a blind grid of depths on the panel; {} to {} is usual", low.value, high.value));
    let finding = at_value(finding, ground, of.given(), "leaves no relief");
    let finding = related_value(finding, ground, of.texture.most.node(), "the faces");
    let finding = match &of.texture.least {
        Some(least) => related_value(finding, ground, least.node(), "the groove bottoms"),
        None => finding,
    };
    Some(of.of(finding, &["mean", "volume", "loads"]))
}
