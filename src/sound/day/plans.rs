//! Planned days as the checks take them up, and how they say times and areas.

use num_rational::BigRational;

use crate::finding::Finding;
use crate::job::{DayGoal, DayPlan, Mix, Site};
use crate::quantity::units::find_expr;
use crate::quantity::{Dim, Kind, Num, Quantity};
use crate::sound::Ground;
use crate::sound::told::{typed, voice};
use crate::tally::minutes::Outlook;
use crate::tally::{Role, mix_of};

/// A planned day with what was worked of it.
pub(super) struct Planned<'a> {
    pub(super) site: &'a Site,
    pub(super) plan: &'a DayPlan,
    pub(super) goal: &'a DayGoal,
    pub(super) mix: &'a Mix,
    pub(super) outlook: &'a Outlook,
}

/// Every planned day that can be worked.
pub(super) fn planned<'a>(ground: &Ground<'a>) -> Vec<Planned<'a>> {
    let (job, tally) = (ground.job, ground.tally);
    let days = tally.outlooks(job).iter().filter_map(|outlook| {
        let site = job.sites.get(outlook.site)?;
        let plan = site.plan.as_ref()?;
        let goal = plan.days.get(outlook.day)?;
        Some(Planned { site, plan, goal, mix: mix_of(job, &site.carve_mix.text)?, outlook })
    });
    days.collect()
}

impl Planned<'_> {
    /// `LF-1 on 2026-03-02`.
    pub(super) fn name(&self) -> String {
        format!("{} on {}", self.goal.surface.text, self.goal.iso())
    }

    /// What tells this day's findings from another's: `LF-2026-03-02`.
    pub(super) fn about(&self) -> String {
        format!("{}-{}", self.site.code.text, self.goal.iso())
    }

    /// A minute of the day as the sheet prints it.
    pub(super) fn clock(&self, ground: &Ground<'_>, minute: i64) -> String {
        let time = Quantity { si: Num::int(minute.saturating_mul(60)), dim: Dim::TIME, kind: Kind::Clock };
        typed(&ground.tally.text_of(Role::Clock, &time, voice(self.site.metric)))
    }

    /// An area as the sheet prints it: number, and text.
    pub(super) fn area(&self, ground: &Ground<'_>, area: &Quantity) -> (BigRational, String) {
        let (number, _, text) = ground.tally.print_of(Role::AreaAllowed, area, voice(self.site.metric));
        (number, typed(&text))
    }

    /// An area as an author types it: `97 ft2`.
    pub(super) fn area_typed(&self, ground: &Ground<'_>, area: &Quantity) -> String {
        self.area(ground, area).1.replace('²', "2")
    }

    /// The pace of all who carve.
    pub(super) fn pace(&self) -> String {
        let unit = find_expr(if self.site.metric { "m2/h" } else { "ft2/h" });
        let pace = Quantity { si: self.outlook.crew.carve.clone(), dim: Dim::PACE, kind: Kind::Plain };
        let number = unit.and_then(|u| pace.in_unit(u)).map_or_else(String::new, |n| n.plain());
        format!("{number} {}", if self.site.metric { "m²/h" } else { "ft²/h" })
    }

    /// A share of the limit that leaves some of it free.
    pub(super) fn part_of_limit(&self, free: &Num) -> Quantity {
        let limit = &self.outlook.limit;
        Quantity { si: limit.si.mul(&Num::int(1).sub(free)), ..limit.clone() }
    }

    /// Points at the area that the author states, else at the day.
    pub(super) fn at_area(&self, ground: &Ground<'_>, finding: Finding, label: &str) -> Finding {
        match &self.goal.area {
            Some(area) => crate::sound::told::at_value(finding, ground, area.node(), label),
            None => finding.at(self.goal.day.at, label),
        }
    }
}
