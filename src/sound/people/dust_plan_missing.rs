//! H2: bags of mortar are opened without a written plan against silica dust.

use crate::finding::{Finding, Severity};
use crate::job::Site;
use crate::sound::{Check, Ground};

use super::{said, unsaid};

/// The check.
pub const CHECK: Check = Check {
    name: "dust-plan-missing",
    ids: &["H2"],
    severities: &[Severity::Hold],
    title: "bags are opened without a written plan against silica dust",
    manual: include_str!("dust_plan_missing.md"),
    twins: &[("es", include_str!("dust_plan_missing.es.md"))],
    run,
};

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    ground.job.sites.iter().filter_map(one).collect()
}

fn one(site: &Site) -> Option<Finding> {
    let batch = site.batches.first()?;
    if said(site, |s| s.dust_plan.as_ref()).is_some() {
        return None;
    }
    let title = format!("{} opens bags of {} and names no written plan against silica dust", site.code.text, batch.mix.text);
    let finding = Finding::new(CHECK.name, Severity::Hold, title)
        .source("written exposure control plan of OSHA 29 CFR 1926.1153(g), recalled; opening bags is not among the tasks with ready-made controls of its Table 1, recalled")
        .help("write the plan (who, which respirator, fitted when, which vacuum) and name it: `dust_plan: exposure plan no. 1, in the gang box`");
    Some(unsaid(finding, site, "dust_plan").related(batch.mix.at, "its bags are opened"))
}
