//! M11: pigment is dosed by a cement that nobody stated.

use crate::finding::{Finding, Severity};
use crate::job::Mix;
use crate::quantity::Num;
use crate::sound::told::{at_value, number};
use crate::sound::{Check, Ground};

/// The check.
pub const CHECK: Check = Check {
    name: "pigment-without-cement",
    ids: &["M11"],
    severities: &[Severity::Hold],
    title: "pigment is dosed by a cement that nobody stated",
    manual: include_str!("pigment_without_cement.md"),
    twins: &[("es", include_str!("pigment_without_cement.es.md"))],
    run,
};

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    ground.job.mixes.iter().filter_map(|mix| one(ground, mix)).collect()
}

fn one(ground: &Ground<'_>, mix: &Mix) -> Option<Finding> {
    let dose = mix.pigment.as_ref()?;
    if mix.cement.is_some() || dose.value().si.compare(&Num::int(0)).is_le() {
        return None;
    }
    let title = format!(
        "{} is colored with {} of its cement, and the mix does not state how much cement is in the mortar",
        mix.name.text,
        number(dose.node(), "%")
    );
    let finding = Finding::new(CHECK.name, Severity::Hold, title)
        .source("ASTM C979 counts pigment by the mass of cement (recalled, not verified against a copy)")
        .help("ask the maker of the mortar for the share of cement and write it, such as `cement: 22 %`; do not guess it");
    Some(at_value(finding, ground, dose.node(), "of an unknown cement").figure(format!("{}.mixing", mix.id)))
}
