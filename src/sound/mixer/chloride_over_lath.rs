//! M12: a mix with chloride is to go over steel lath.

use crate::finding::{Finding, Severity};
use crate::job::{Mix, Site};
use crate::sound::{Check, Ground};
use crate::tally::mixes_of;

/// The check.
pub const CHECK: Check = Check {
    name: "chloride-over-lath",
    ids: &["M12"],
    severities: &[Severity::Stop],
    title: "a mix with chloride is to go over steel lath",
    manual: include_str!("chloride_over_lath.md"),
    twins: &[("es", include_str!("chloride_over_lath.es.md"))],
    run,
};

/// Chloride, in both languages, and the words that take it out of a name.
const CHLORIDE: &[&str] = &["chloride", "chlorides", "cloruro", "cloruros"];
const FREE: &[&str] = &["non", "no", "not", "without", "free", "sin", "libre"];

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    let lathed = ground.job.sites.iter().filter(|s| !s.base.direct);
    lathed.flat_map(|site| mixes_of(ground.job, site).into_iter().filter_map(move |mix| one(site, mix))).collect()
}

fn one(site: &Site, mix: &Mix) -> Option<Finding> {
    let salt = mix.admixtures.iter().find(|a| chloride(&a.text))?;
    let title = format!("the sheet of {} allows `{}`, {} has steel lath that it eats", mix.name.text, salt.text, site.code.text);
    let finding = Finding::new(CHECK.name, Severity::Stop, title)
        .at(salt.at, "holds chloride")
        .related(site.base.what.at, "steel behind the coat")
        .source("chloride corrodes steel in mortar: ASTM C270 limits it (recalled, not verified against a copy); common practice: none over lath")
        .help("use another mix or one without it, such as `non-chloride accelerator`; only a coat straight on masonry, with `base.direct: yes`, has no lath")
        .about(site.code.text.clone());
    Some(finding.figure(format!("{}.start_water", mix.id)).figure(format!("{}/{}.place_by", site.id, mix.id)))
}

fn chloride(text: &str) -> bool {
    let text = text.to_lowercase();
    let says = |list: &[&str]| text.split(|c: char| !c.is_alphanumeric()).any(|w| list.contains(&w));
    says(CHLORIDE) && !says(FREE)
}

#[cfg(test)]
mod tests {
    use super::chloride;

    #[test]
    fn names_of_admixtures() {
        assert!(chloride("calcium chloride accelerator") && chloride("cloruro de calcio"));
        assert!(!chloride("non-chloride accelerator") && !chloride("chloride-free accelerator") && !chloride("acelerante sin cloruros"));
    }
}
