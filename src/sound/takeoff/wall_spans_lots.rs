//! Q11: a wall that must be of one lot gets bags of two.

use crate::finding::{Finding, Severity};
use crate::job::{Site, Surface};
use crate::quantity::Num;
use crate::quantity::num::Direction;
use crate::sound::told::{related_value, text};
use crate::sound::{Check, Ground};
use crate::tally::mix_of;

/// The check.
pub const CHECK: Check = Check {
    name: "wall-spans-lots",
    ids: &["Q11"],
    severities: &[Severity::Warn],
    title: "a wall whose color is critical would use two lots",
    manual: include_str!("wall_spans_lots.md"),
    twins: &[("es", include_str!("wall_spans_lots.es.md"))],
    run,
};

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    ground.job.sites.iter().flat_map(|site| ["mortar", "additive"].map(|material| of_site(ground, site, material))).flatten().collect()
}

/// Each such wall takes the lot that has most left; what one wall took the next does not have.
fn of_site(ground: &Ground<'_>, site: &Site, material: &str) -> Vec<Finding> {
    let Some(mix) = mix_of(ground.job, &site.carve_mix.text) else { return Vec::new() };
    let lots = site.delivery.iter().flat_map(|d| &d.lots).filter(|l| l.mix.text == mix.name.text && l.material.text == material);
    let mut left: Vec<(&crate::job::StandingLot, Num)> = lots.map(|l| (l, l.bags.value().si.clone())).collect();
    let per_load = if material == "mortar" { &mix.mortar_bags } else { &mix.additive_bags };
    let mut found = Vec::new();
    for surface in site.surfaces.iter().filter(|s| s.one_lot) {
        let Some(needs) = needs(ground, site, surface, &per_load.value().si) else { continue };
        let Some((lot, has)) = left.iter_mut().rev().max_by(|(_, a), (_, b)| a.compare(b)) else { continue };
        if has.compare(&needs).is_ge() {
            *has = has.sub(&needs);
        } else {
            found.extend(finding(ground, site, surface, material, (lot, has), &needs));
        }
    }
    found
}

/// Whole bags that a wall takes.
fn needs(ground: &Ground<'_>, site: &Site, surface: &Surface, per_load: &Num) -> Option<Num> {
    let loads = ground.tally.figure(&format!("{}/{}.loads", site.id, surface.code.text))?.worked.as_ref().ok()?;
    Some(Num::Exact(loads.value().si.mul(per_load).round(Direction::Up, &num_rational::BigRational::from_integer(1.into()))))
}

fn finding(
    ground: &Ground<'_>,
    site: &Site,
    surface: &Surface,
    material: &str,
    (lot, has): (&crate::job::StandingLot, &Num),
    needs: &Num,
) -> Option<Finding> {
    let code = &surface.code.text;
    let id = format!("{}/{code}.loads", site.id);
    let loads = text(ground, &id, site.metric)?;
    let (needs, has) = (needs.plain(), has.plain());
    let title = format!("{code} takes {needs} bags of {material} of one lot, the largest lot left has {has}");
    let finding = Finding::new(CHECK.name, Severity::Warn, title)
        .at(surface.code.at, "one lot, or its shade changes")
        .derived(format!("{loads} take {needs} bags; lot {} has {has} left", lot.lot.text))
        .source("common practice, no source: two lots are two shades")
        .help(format!("order {needs} bags of one lot for it, or end the lot at a joint that hides the change"))
        .about(format!("{}/{code}", site.id))
        .figure(id);
    Some(related_value(finding, ground, lot.bags.node(), "the largest lot left"))
}
