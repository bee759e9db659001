//! Findings meet the acceptances that the authors wrote.

use std::collections::BTreeMap;

use crate::finding::{Accepted, Finding, Lines, Severity};
use crate::job::{Accept, Job, Signed};
use crate::sound::check;
use crate::source::Span;

use super::{acceptance_by_author, acceptance_idle, acceptance_lapsed, acceptance_of_stop, acceptance_unknown};

/// What became of the acceptances: findings about them, and the places of those that met a finding.
#[derive(Debug, Default)]
pub struct Settled {
    /// Findings about acceptances that do not hold.
    pub found: Vec<Finding>,
    /// Places of the acceptances that met a finding of their name.
    met: Vec<Span>,
}

/// Marks every finding that is accepted, and says which acceptances do not hold. Run again over more findings it
/// marks those too.
///
/// An acceptance covers findings that point into its file, its twins, or a table of its site. A STOP is never
/// accepted: neither a water limit nor a weight over the engineer's figure is anything else.
pub fn settle(job: &Job, findings: &mut [Finding], lines: &Lines<'_>) -> Settled {
    let mut settled = Settled::default();
    if job.signed.iter().all(|s| s.accepts.is_empty()) {
        return settled;
    }
    let homes = homes(findings, lines);
    for signed in &job.signed {
        for accept in &signed.accepts {
            let (name, about) = parts(accept);
            if check(name).is_none() {
                settled.found.push(acceptance_unknown::finding(accept, name));
                settled.met.push(accept.finding.at);
                continue;
            }
            let here = |f: &Finding| f.name == name && about.is_none_or(|a| f.about.as_deref() == Some(a)) && covers(signed, f, &homes);
            for finding in findings.iter_mut().filter(|f| here(f)) {
                settled.met.push(accept.finding.at);
                one(signed, accept, finding, lines, &mut settled.found);
            }
        }
    }
    settled
}

fn one(signed: &Signed, accept: &Accept, finding: &mut Finding, lines: &Lines<'_>, found: &mut Vec<Finding>) {
    if finding.severity == Severity::Stop {
        found.push(acceptance_of_stop::finding(accept, finding));
        return;
    }
    // The author of a file is not the second pair of eyes that a HOLD asks for.
    let author = signed.written_by.as_ref().filter(|w| w.text == accept.by.text && finding.severity == Severity::Hold);
    if let Some(author) = author {
        found.push(acceptance_by_author::finding(accept, author));
        return;
    }
    let now = value(finding, lines);
    let said = accept.value.as_ref().map(|v| v.text.trim().to_owned());
    if now != said {
        found.push(acceptance_lapsed::finding(accept, finding, now.as_deref()));
        return;
    }
    finding.accepted = Some(Accepted { by: accept.by.text.clone(), because: accept.because.text.clone(), value: said });
}

/// Acceptances that met no finding: only a run of every check can say so.
pub fn idle(job: &Job, settled: &Settled) -> Vec<Finding> {
    let all = job.signed.iter().flat_map(|s| s.accepts.iter());
    all.filter(|a| !settled.met.contains(&a.finding.at)).map(acceptance_idle::finding).collect()
}

/// `lift-too-thick/LF-1`: the name of a check, and the one thing it is about.
fn parts(accept: &Accept) -> (&str, Option<&str>) {
    match accept.finding.text.split_once('/') {
        Some((name, about)) => (name, Some(about)),
        None => (accept.finding.text.as_str(), None),
    }
}

/// The value that a finding is about, as an acceptance must write it; none where something is missing.
pub(super) fn value(finding: &Finding, lines: &Lines<'_>) -> Option<String> {
    let shown = match &finding.value {
        Some(value) => value.clone(),
        None => {
            let (span, _) = finding.at.as_ref()?;
            let (_, text) = lines(span.file)?;
            text.get(span.start as usize..span.end as usize)?.to_owned()
        }
    };
    let shown = shown.trim().trim_matches('"').replace('\u{a0}', " ");
    (!shown.is_empty()).then_some(shown)
}

/// Paths of the files that findings point into.
fn homes(findings: &[Finding], lines: &Lines<'_>) -> BTreeMap<u32, String> {
    let files = findings.iter().filter_map(|f| f.at.as_ref()).map(|(span, _)| span.file);
    files.filter_map(|file| lines(file).map(|(path, _)| (file, path.to_owned()))).collect()
}

fn covers(signed: &Signed, finding: &Finding, homes: &BTreeMap<u32, String>) -> bool {
    let Some((span, _)) = &finding.at else { return false };
    if span.file == signed.open.file {
        return true;
    }
    let Some(path) = homes.get(&span.file) else { return false };
    let (folder, name) = path.rsplit_once('/').unwrap_or(("", path));
    let stem = name.split('.').next().unwrap_or(name);
    let table = folder == "weather" && signed.kind == "site";
    stem == signed.id && (table || crate::job::folder_of(signed.kind) == folder)
}
