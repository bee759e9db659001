//! Q7: a combined waste that nobody has measured.

use crate::finding::{Finding, Severity};
use crate::job::{Site, Waste};
use crate::quantity::Num;
use crate::quantity::num::decimal;
use crate::sound::limits::{self, WASTE_LEAST, WASTE_MOST};
use crate::sound::told::{at_value, once_a_place, related_value};
use crate::sound::{Check, Ground};

/// The check.
pub const CHECK: Check = Check {
    name: "waste-unlikely",
    ids: &["Q7"],
    severities: &[Severity::Warn],
    title: "a waste is less or more than any carved wall has had",
    manual: include_str!("waste_unlikely.md"),
    twins: &[("es", include_str!("waste_unlikely.es.md"))],
    run,
};

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    once_a_place(ground.job.sites.iter().flat_map(|site| of_site(ground, site)).collect())
}

fn of_site(ground: &Ground<'_>, site: &Site) -> Vec<Finding> {
    let id = |code: &str, name: &str| format!("{}/{code}.{name}", site.id);
    let mut found = Vec::new();
    for texture in &site.textures {
        let on = site.surfaces.iter().filter(|s| s.texture.text == texture.name.text).map(|s| id(&s.code.text, "volume")).collect();
        found.extend(one(ground, &texture.waste, &format!("`{}`", texture.name.text), on));
    }
    // A surface without a waste of its own has the site's: same place, told once.
    for surface in &site.surfaces {
        let on = vec![id(&surface.code.text, "scratch_volume")];
        found.extend(surface.scratch.as_ref().and_then(|s| one(ground, &s.waste, "the scratch coat", on)));
    }
    found
}

/// The two wastes are shares of what is left after each other, so their remainders multiply.
fn one(ground: &Ground<'_>, waste: &Waste, what: &str, figures: Vec<String>) -> Option<Finding> {
    let (low, high) = (limits::find(WASTE_LEAST)?, limits::find(WASTE_MOST)?);
    let one = Num::int(1);
    let kept = |share: &Num| one.sub(share);
    let drop = &waste.drop.value().si;
    let carve = waste.carve.as_ref().map(|c| c.value().si.clone());
    let left = carve.as_ref().map_or(one.clone(), kept).mul(&kept(drop));
    let all = one.sub(&left);
    let (least, most) = (low.quantity()?.si, high.quantity()?.si);
    if all.compare(&least).is_ge() && all.compare(&most).is_le() {
        return None;
    }
    let percent = |n: &Num| n.mul(&Num::int(100)).exact().map(|r| decimal(r, 2));
    let (said, dropped) = (percent(&all)?, percent(drop)?);
    let bound = if all.compare(&least).is_lt() { format!("at least {}", low.value) } else { format!("at most {}", high.value) };
    let mut finding = Finding::new(CHECK.name, Severity::Warn, format!("the waste of {what} is {said} %, on a carved wall it is {bound}"));
    finding = match carve.as_ref().and_then(percent) {
        Some(carved) => finding.derived(format!("1 − (1 − {carved} ÷ 100) × (1 − {dropped} ÷ 100) = {said} %")),
        None => finding.derived(format!("droppings alone: {dropped} %")),
    };
    finding = finding
        .source(low.source)
        .help(format!("measure it on the panel: {} to {}, carving and droppings together", low.value, high.value));
    finding = match &waste.carve {
        Some(carve) => related_value(at_value(finding, ground, carve.node(), "cut off"), ground, waste.drop.node(), "and dropped"),
        None => at_value(finding, ground, waste.drop.node(), "dropped"),
    };
    Some(figures.into_iter().fold(finding, Finding::figure))
}
