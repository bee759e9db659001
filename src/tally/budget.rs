//! How far off the loads may be, and which measurement is worth making better.

use crate::job::{Job, Site, Surface, Tolerances};
use crate::quantity::expr::Length;
use crate::trade::error_budget::{self, Budget, Part};

use super::{Basis, Role, Tally, mix_of, res};

/// Names of the parts, in the dictionaries.
const PARTS: [&str; 4] = ["error.thickness", "error.waste", "error.air", "error.bag"];

/// Works the budget of every surface.
pub(super) fn work(t: &mut Tally, job: &Job, site: &Site) {
    let Some(known) = &site.tolerances else { return };
    for surface in &site.surfaces {
        let id = |name: &str| format!("{}/{}.{name}", site.id, surface.code.text);
        let budget = budget(t, job, site, surface, known);
        let total = budget.as_ref().map(|b| b.total.clone()).map_err(Clone::clone);
        t.put(id("error"), "figure.error", Role::Uncertainty, Basis::Practice, total);
        let share = budget.as_ref().map(|b| b.largest_share.clone()).map_err(Clone::clone);
        let label = budget.as_ref().ok().and_then(|b| PARTS.iter().copied().find(|p| *p == b.largest)).unwrap_or("figure.error_largest");
        t.put(id("error_largest"), label, Role::Uncertainty, Basis::Practice, share);
    }
}

fn budget(t: &Tally, job: &Job, site: &Site, surface: &Surface, known: &Tolerances) -> Result<Budget, String> {
    let mix = mix_of(job, &site.carve_mix.text).ok_or("the site names no carve mix")?;
    let mean = t.get::<Length>(&format!("{}/{}.mean", site.id, surface.code.text))?;
    let part = |name: &str, error| Part { name: name.to_owned(), error };
    let [thickness, waste, air, bag] = PARTS;
    let parts = [
        part(thickness, res(error_budget::relative(&known.thickness, &mean))?),
        part(waste, known.waste.clone()),
        part(air, res(error_budget::of_air(&known.air, &mix.air))?),
        part(bag, known.bag.clone()),
    ];
    error_budget::budget(&parts).map_err(String::from)
}
