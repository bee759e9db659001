//! E4: the mix comes out hotter or colder than mortar may be.

use crate::finding::{Finding, Severity};
use crate::sound::told::at_value;
use crate::sound::weather::sky::{Met, Shift, Sky, beyond, skies};
use crate::sound::{Check, Ground, limits};
use crate::tally::Role;
use crate::tally::nights::degrees;

/// The check.
pub const CHECK: Check = Check {
    name: "mix-temperature-out-of-range",
    ids: &["E4"],
    severities: &[Severity::Stop],
    title: "the mix comes out too hot or too cold",
    manual: include_str!("mix_temperature_out_of_range.md"),
    twins: &[("es", include_str!("mix_temperature_out_of_range.es.md"))],
    run,
};

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    skies(ground).iter().flat_map(|sky| sky.days.iter().flat_map(|shift| day(ground, sky, shift))).collect()
}

/// The hottest and the coldest hour of a shift, where they are out of range.
fn day(ground: &Ground<'_>, sky: &Sky<'_>, shift: &Shift<'_>) -> Vec<Finding> {
    // Where nothing was measured the mud is only as warm as the air: other checks speak of the air.
    let known = |m: &&Met<'_>| m.hour.mix.is_some() || m.hour.bags.is_some() && m.hour.water.is_some();
    let hottest = shift.hours.iter().filter(known).filter(|m| m.mud > 118.0).max_by(|a, b| a.mud.total_cmp(&b.mud));
    let coldest = shift.hours.iter().filter(known).filter(|m| m.mud < 42.0).min_by(|a, b| a.mud.total_cmp(&b.mud));
    let hot = hottest.and_then(|m| one(ground, sky, shift, m, true));
    hot.into_iter().chain(coldest.and_then(|m| one(ground, sky, shift, m, false))).collect()
}

fn one(ground: &Ground<'_>, sky: &Sky<'_>, shift: &Shift<'_>, met: &Met<'_>, hot: bool) -> Option<Finding> {
    let (limit, text, source) = sky.limit(if hot { limits::MUD_HOT } else { limits::MUD_COLD })?;
    let mud = sky.mud(ground, met.hour)?;
    let (number, unit, printed) = sky.printed(ground, Role::MixTemperature, mud.value())?;
    // What is printed is rounded up; for the cold the reading itself counts, rounded down.
    let (is, said) = if hot {
        (beyond(&number, unit, &limit, false), printed)
    } else {
        (mud.value().si.compare(&limit.si).is_lt(), degrees(mud.node(), sky.site.metric))
    };
    if !is {
        return None;
    }
    let when = sky.when(ground, shift.date, met.hour);
    let (word, help) = if hot {
        ("at most", "shade the bags, which hold most of the heat, then cool the water; or mix in a cooler hour")
    } else {
        ("at least", "keep the bags in a warm room overnight, warm the water; or mix in a warmer hour")
    };
    let how = match (&met.hour.mix, &met.hour.bags, &met.hour.water) {
        (Some(_), ..) => "measured in the mixer".to_owned(),
        (None, Some(bags), Some(water)) => {
            let metric = sky.site.metric;
            format!("bags at {} and water at {}, the start water of a load", degrees(bags.node(), metric), degrees(water.node(), metric))
        }
        _ => return None,
    };
    let name = sky.mix.map_or("the mix", |m| m.name.text.as_str());
    let finding = Finding::new(CHECK.name, Severity::Stop, format!("{name} comes out at {said} on {when}, {word} {text} is allowed"))
        .derived(how)
        .source(source)
        .help(help)
        .about(shift.date.iso());
    let node = met.hour.mix.as_ref().or(met.hour.bags.as_ref())?;
    Some(at_value(finding, ground, node.node(), "from this"))
}
