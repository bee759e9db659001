//! W5: the start water for the dry mass is far from what is usual, and the mix does not say why.

use crate::finding::{Finding, Severity};
use crate::job::Mix;
use crate::quantity::num::decimal;
use crate::quantity::units::find_expr;
use crate::quantity::{Node, Num};
use crate::sound::limits::{self, DRY, OFF_USUAL, USUAL_WATER};
use crate::sound::told::{at_value, number};
use crate::sound::{Check, Ground};

/// The check.
pub const CHECK: Check = Check {
    name: "start-water-off-usual",
    ids: &["W5"],
    severities: &[Severity::Warn],
    title: "the start water is far from what is usual for the dry mass",
    manual: include_str!("start_water_off_usual.md"),
    twins: &[("es", include_str!("start_water_off_usual.es.md"))],
    run,
};

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    ground.job.mixes.iter().filter_map(|mix| one(ground, mix)).collect()
}

fn one(ground: &Ground<'_>, mix: &Mix) -> Option<Finding> {
    if mix.water.why.is_some() {
        return None;
    }
    let start = mix.water.start.node();
    let dry = ground.tally.figure(&format!("{}.dry_weight", mix.id))?.worked.as_ref().ok()?;
    let (usual, for_dry, off) = (limits::find(USUAL_WATER)?, limits::find(DRY)?, limits::find(OFF_USUAL)?);
    // Water for one unit of dry mass, of the mix and as is usual.
    let own = start.value().si.div(&dry.value().si)?;
    let typical = usual.quantity()?.si.div(&for_dry.quantity()?.si)?;
    let ratio = own.div(&typical)?;
    let far = off.quantity()?.si;
    let (least, most) = (Num::int(1).sub(&far), Num::int(1).add(&far));
    if ratio.compare(&least).is_ge() && ratio.compare(&most).is_le() {
        return None;
    }
    // Said for a hundred of the sheet's own unit of mass.
    let (water, mass, words) = if mix.metric { ("L", "kg", "100 kg") } else { ("gal", "lb", "100 lb") };
    let per = |value: &Num| {
        let factor = find_expr(mass).map(|u| u.factor())?.clone() / find_expr(water)?.factor();
        let number = value.mul(&Num::int(100)).mul(&Num::Exact(factor));
        Some(decimal(number.exact()?, 3))
    };
    let (has, wants) = (per(&own)?, per(&typical)?);
    let title = format!(
        "{} starts with {has} {water} of water for {words} of dry mix, usual is {wants} {water}, {} either way",
        mix.name.text, off.value
    );
    let (low, high) = (per(&typical.mul(&least))?, per(&typical.mul(&most))?);
    let finding = Finding::new(CHECK.name, Severity::Warn, title)
        .derived(format!("{} ÷ {} × {words} = {has} {water}", number(start, water), number(dry, mass)))
        .derived(format!("usual, {} either way: {low} to {high} {water}", off.value))
        .source(usual.source)
        .help(format!("{}; if the sheet says so, say why in `water.why`", slip(dry)));
    Some(at_value(finding, ground, start, "for this dry mass").figure(format!("{}.start_water", mix.id)))
}

/// What to look at first: the slips that this finds.
fn slip(dry: &Node) -> String {
    format!("look at the unit and the mass of both bags, {} of dry mix in all", number(dry, dry.unit().map_or("lb", |u| u.over.symbol)))
}
