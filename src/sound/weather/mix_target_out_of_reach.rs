//! E12: water alone cannot bring the mix to the temperatures that the site plans.

use crate::finding::{Finding, Severity};
use crate::quantity::Worked;
use crate::quantity::expr::Temperature;
use crate::quantity::num::Direction;
use crate::sound::told::{at_value, related_value};
use crate::sound::weather::sky::{Met, Shift, Sky, skies};
use crate::sound::{Check, Ground, limits};
use crate::tally::hours::load;
use crate::tally::nights::degrees;
use crate::trade::mix_targets::water_temperature;
use crate::trade::mix_temperature::mix_temperature;

/// The check.
pub const CHECK: Check = Check {
    name: "mix-target-out-of-reach",
    ids: &["E12"],
    severities: &[Severity::Warn],
    title: "water alone cannot bring the mix to the planned temperature",
    manual: include_str!("mix_target_out_of_reach.md"),
    twins: &[("es", include_str!("mix_target_out_of_reach.es.md"))],
    run,
};

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    skies(ground).iter().flat_map(|sky| sky.days.iter().flat_map(|shift| day(ground, sky, shift))).collect()
}

/// The hottest and the coldest bags of a shift, where water cannot make up for them.
fn day(ground: &Ground<'_>, sky: &Sky<'_>, shift: &Shift<'_>) -> Vec<Finding> {
    let Some((least, most)) = sky.plan().and_then(|p| p.mix.as_ref()) else { return Vec::new() };
    let si = |t: &Worked<Temperature>| t.value().si.to_f64();
    let bags = || shift.hours.iter().filter_map(|m| Some((m, si(m.hour.bags.as_ref()?)))).filter(|(m, _)| m.hour.mix.is_none());
    // Bags no hotter than the target need no cold water, and the other way round.
    let hot =
        bags().filter(|(_, b)| *b > si(most)).max_by(|a, b| a.1.total_cmp(&b.1)).and_then(|(m, _)| one(ground, sky, shift, m, most, true));
    let cold = bags()
        .filter(|(_, b)| *b < si(least))
        .min_by(|a, b| a.1.total_cmp(&b.1))
        .and_then(|(m, _)| one(ground, sky, shift, m, least, false));
    hot.into_iter().chain(cold).collect()
}

fn one(ground: &Ground<'_>, sky: &Sky<'_>, shift: &Shift<'_>, met: &Met<'_>, target: &Worked<Temperature>, hot: bool) -> Option<Finding> {
    let row = |key: &str| -> Option<Worked<Temperature>> { Worked::read(limits::find(key)?.value).ok() };
    let (coldest, hottest) = (row(limits::WATER_COLD)?, row(limits::WATER_HOT)?);
    let bags = met.hour.bags.as_ref()?;
    let batch = load(ground.tally, sky.mix?, bags).ok()?;
    // Refused for another reason than the water, such as frozen bags: nothing is known then.
    let needed = match water_temperature(&batch, target, &coldest, &hottest) {
        Err(refused) if refused.symbol == "T_w" => refused.value,
        _ => return None,
    };
    let (water, key) = if hot { (&coldest, limits::WATER_COLD) } else { (&hottest, limits::WATER_HOT) };
    let reached = mix_temperature(&batch, water, None).ok()?;
    let metric = sky.site.metric;
    // Away from the target, so that the best is not shown as good enough.
    let to = if hot { Direction::Up } else { Direction::Down };
    let best = degrees(&reached.node().rounded(to, 1, 10), metric);
    let (_, edge, source) = sky.limit(key)?;
    let word = if hot { "most" } else { "least" };
    let title = format!(
        "bags at {} on {}: water at {edge} brings the mix to {best}, the plan's {word} is {}",
        degrees(bags.node(), metric),
        sky.when(ground, shift.date, met.hour),
        degrees(target.node(), metric)
    );
    let help = if hot {
        "shade the bags: in a stiff mix they hold about two thirds of the heat; then cool the water, or mix in a cooler hour"
    } else {
        "keep the bags in a warm room overnight, then warm the water; or mix in a warmer hour"
    };
    let finding = Finding::new(CHECK.name, Severity::Warn, title)
        .derived(format!("water of {needed} would be needed, for a load with its start water"))
        .source(format!("{source}; heat of the parts as in ACI 306R and CRD-C 307, not verified against a copy"))
        .help(help)
        .about(shift.date.iso());
    let finding = at_value(finding, ground, bags.node(), "these bags");
    Some(related_value(finding, ground, target.node(), "planned for the mix"))
}
