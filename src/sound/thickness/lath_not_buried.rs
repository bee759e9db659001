//! T8: the scratch coat will not bury the lath.

use crate::finding::{Finding, Severity};
use crate::job::{Site, Surface};
use crate::quantity::Num;
use crate::sound::limits::{self, ON_LATH};
use crate::sound::told::{at_value, once_a_place, related_value};
use crate::sound::{Check, Ground, Seen};

use super::clause::{Clause, clauses, may};
use super::of;

/// The check.
pub const CHECK: Check = Check {
    name: "lath-not-buried",
    ids: &["T8"],
    severities: &[Severity::Hold],
    title: "the scratch coat will not bury the lath",
    manual: include_str!("lath_not_buried.md"),
    twins: &[("es", include_str!("lath_not_buried.es.md"))],
    run,
};

const LATH: &[&str] = &["lath", "metal", "mesh", "wire", "malla", "metal", "alambre"];
const MAY: &[&str] = &["may", "can", "might", "puede", "pueden", "podrá"];
const SHOW: &[&str] = &["show", "shows", "be seen", "stay bare", "stick out", "verse", "asomar", "asome"];
const LEAVE: &[&str] = &["leave", "let", "leaving", "deje", "dejar", "dejando"];
const BARE: &[&str] =
    &["showing", "show", "bare", "uncovered", "exposed", "visible", "vista", "descubierta", "descubierto", "expuesta", "expuesto"];

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    let surfaces = ground.job.sites.iter().flat_map(|site| site.surfaces.iter().map(move |s| (site, s)));
    let thin = surfaces.filter_map(|(site, surface)| thin(ground, site, surface));
    let each = |seen: &Seen<'_>| -> Vec<Finding> {
        let all = seen.sentences().iter().filter(|s| may(seen, s, LATH)).flat_map(|sentence| clauses(seen, sentence));
        all.filter_map(|clause| bare(&clause)).collect()
    };
    once_a_place(thin.chain(ground.texts().filter(|s| s.may_say(&[LATH])).flat_map(each)).collect())
}

/// A coat too thin for what it is pushed through. Mud behind the lath, or sheets of it, say that there is lath.
fn thin(ground: &Ground<'_>, site: &Site, surface: &Surface) -> Option<Finding> {
    let scratch = surface.scratch.as_ref()?;
    let limit = limits::find(ON_LATH)?;
    let keyed = scratch.key.value().si.compare(&Num::int(0)).is_gt();
    if !(keyed || site.lath.is_some()) || !of::less(&scratch.thickness, &limit.quantity()?) {
        return None;
    }
    let (thick, wants) = (of::tape(site, scratch.thickness.node()), of::row(site, limit));
    let title = format!("a scratch coat of {thick} will not bury the lath, that takes {wants}");
    let finding = Finding::new(CHECK.name, Severity::Hold, title)
        .source(limit.source)
        .help(format!("plan {wants} or more over lath; bare metal rusts and keys nothing"));
    let finding = at_value(finding, ground, scratch.thickness.node(), "the scratch coat");
    let finding = related_value(finding, ground, scratch.key.node(), "and mud behind lath");
    Some(finding.about(&surface.code.text).figure(of::figure(site, surface, "scratch_volume")).figure(of::figure(site, surface, "most")))
}

/// A text that lets the lath be seen.
fn bare(clause: &Clause) -> Option<Finding> {
    let lath = clause.all(LATH).next()?;
    let left = clause.all(LEAVE).next().is_some() && clause.has(BARE);
    let may = clause.has(MAY) && clause.all(SHOW).next().is_some();
    if clause.turned() || !(left || may) {
        return None;
    }
    let title = format!("the text lets `{}` show through the scratch coat; the lath must be covered", clause.said(lath));
    Some(
        Finding::new(CHECK.name, Severity::Hold, title)
            .at(clause.place(lath)?, "may show")
            .source(limits::find(ON_LATH)?.source)
            .help("say that no metal may show"),
    )
}
