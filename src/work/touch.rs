//! Which papers a finding touches: those whose printed values rest on it, or that print from its file.

use std::collections::{BTreeMap, BTreeSet};

use crate::finding::{Finding, Severity};
use crate::job::Job;
use crate::quantity::expr::How;
use crate::quantity::{Mark, Node};
use crate::source::Span;
use crate::tally::{PrintedValue, Tally};

use super::compose::Face;

/// Where the text of each file begins, below its front matter.
#[derive(Debug, Default)]
pub struct Bodies {
    offsets: BTreeMap<u32, u32>,
}

impl Bodies {
    /// The bodies of every text of a job.
    pub fn of(job: &Job) -> Bodies {
        let own = job.company.iter().map(|c| &c.editions).chain(job.handbook.iter().map(|h| &h.editions));
        let all = own
            .chain(job.mixes.iter().map(|m| &m.editions))
            .chain(job.sites.iter().map(|s| &s.editions))
            .chain(job.cards.iter().map(|c| &c.editions))
            .chain(job.procedures.iter().map(|p| &p.editions))
            .chain(job.cautions.iter().map(|c| &c.editions))
            .chain(job.chapters.iter().map(|c| &c.editions));
        Bodies { offsets: all.flatten().map(|e| (e.body.file, e.body.offset)).collect() }
    }

    fn hold(&self, span: Span) -> bool {
        self.offsets.get(&span.file).is_some_and(|offset| span.start >= *offset)
    }
}

/// What a paper rests on.
#[derive(Debug, Default)]
pub struct Closure {
    /// Figures printed, and figures behind them.
    figures: BTreeSet<String>,
    /// Places of authored values behind them.
    leaves: BTreeSet<Mark>,
    /// Files whose text is printed.
    printed: BTreeSet<u32>,
    /// Documents, such as `M-02/en`.
    documents: BTreeSet<String>,
}

impl Closure {
    /// The closure of some faces.
    pub fn of(tally: &Tally, faces: &[Face<'_>], document: &str) -> Closure {
        let mut closure = Closure::default();
        closure.documents.insert(document.to_owned());
        for face in faces {
            closure.documents.insert(format!("{document}/{}", face.lang.code()));
            closure.printed.extend(&face.files);
            closure.values(tally, &face.values);
        }
        closure
    }

    /// Adds printed values.
    pub fn values(&mut self, tally: &Tally, values: &[PrintedValue]) {
        for value in values {
            if !self.figures.insert(value.figure.clone()) {
                continue;
            }
            if let Some(Ok(node)) = tally.figure(&value.figure).map(|f| f.worked.as_ref()) {
                behind(node, &mut self.figures, &mut self.leaves);
            }
        }
    }

    /// True if a finding touches the paper.
    ///
    /// A finding that names figures touches the papers that rest on one of them. Any other touches the papers that
    /// print from its file or rest on a value authored in it: what was wrong there may have been meant for them.
    pub fn touched(&self, finding: &Finding, bodies: &Bodies) -> bool {
        // What is wrong with a text is wrong where that text is printed, whatever numbers it speaks of.
        if let Some((span, _)) = &finding.at
            && bodies.hold(*span)
        {
            return self.printed.contains(&span.file);
        }
        if finding.figures.iter().any(|f| self.figures.contains(f)) || finding.figures.iter().any(|f| self.documents.contains(f)) {
            return true;
        }
        // A finding about faces as they came off the press names them: the other cards of that kind may be fine.
        if finding.figures.iter().any(|f| names_a_face(f)) {
            return false;
        }
        // Without a place, and naming only other papers, it is no business of this one.
        let Some((span, _)) = &finding.at else { return finding.figures.is_empty() };
        if self.printed.contains(&span.file) {
            return true;
        }
        let here = |leaf: &Mark| leaf.file == span.file && leaf.start < span.end && span.start < leaf.end;
        if self.leaves.iter().any(here) {
            return true;
        }
        finding.figures.is_empty() && self.leaves.iter().any(|leaf| leaf.file == span.file)
    }

    /// Places of the authored values behind the paper, in file order.
    pub fn leaves(&self) -> impl Iterator<Item = Mark> {
        self.leaves.iter().copied()
    }

    /// The worst severity among the findings that touch the paper.
    pub fn worst(&self, findings: &[Finding], places: &Places, bodies: &Bodies) -> Option<Severity> {
        self.near(findings, places).filter(|f| f.accepted.is_none() && self.touched(f, bodies)).map(|f| f.severity).min()
    }

    /// What was accepted on the paper.
    pub fn accepted<'f>(&'f self, findings: &'f [Finding], places: &Places, bodies: &'f Bodies) -> impl Iterator<Item = &'f Finding> {
        self.near(findings, places).filter(|f| f.accepted.is_some() && self.touched(f, bodies))
    }

    /// Every finding that may touch the paper, in order: all that do are among them.
    fn near<'f>(&self, findings: &'f [Finding], places: &Places) -> impl Iterator<Item = &'f Finding> + use<'f> {
        let named = self.figures.iter().chain(&self.documents).filter_map(|id| places.names.get(id));
        let files: BTreeSet<u32> = self.printed.iter().copied().chain(self.leaves.iter().map(|leaf| leaf.file)).collect();
        let there = files.iter().filter_map(|file| places.files.get(file));
        let all: BTreeSet<usize> = named.chain(there).chain([&places.loose]).flatten().copied().collect();
        all.into_iter().filter_map(|i| findings.get(i))
    }
}

/// Findings by what they name and where they stand, by their number: a thousand sites have as many findings as papers, and
/// each paper has to do with a few of them.
#[derive(Debug, Default)]
pub struct Places {
    names: BTreeMap<String, Vec<usize>>,
    files: BTreeMap<u32, Vec<usize>>,
    loose: Vec<usize>,
}

impl Places {
    /// Notes one more.
    pub fn add(&mut self, number: usize, finding: &Finding) {
        for name in &finding.figures {
            self.names.entry(name.clone()).or_default().push(number);
        }
        match &finding.at {
            Some((span, _)) => self.files.entry(span.file).or_default().push(number),
            None => self.loose.push(number),
        }
    }
}

/// True for `M-02/en` and the like.
fn names_a_face(id: &str) -> bool {
    id.rsplit_once('/').is_some_and(|(_, lang)| crate::words::Lang::find(lang).is_some())
}

fn behind(node: &Node, figures: &mut BTreeSet<String>, leaves: &mut BTreeSet<Mark>) {
    match node.how() {
        How::Authored { mark, .. } => leaves.extend(mark),
        How::Op(_, args) => args.iter().for_each(|a| behind(a, figures, leaves)),
        How::Figure { id, of } => {
            // Known already: everything behind it has been walked.
            if figures.insert(id.to_string()) || leaves.is_empty() {
                behind(of, figures, leaves);
            }
        }
        How::Named { of, .. } | How::Rounded { of, .. } | How::Bare { of, .. } | How::Dressed { of } => behind(of, figures, leaves),
        How::Formula { body, .. } => behind(body, figures, leaves),
        How::Constant { .. } | How::Given => {}
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Whatever touches a paper is among what is looked at for it.
    #[test]
    fn nothing_that_touches_is_passed_over() {
        let mark = |file, start| Mark { file, start, end: start + 5 };
        let paper = Closure {
            figures: BTreeSet::from(["a/x".to_owned(), "m.start".to_owned()]),
            leaves: BTreeSet::from([mark(1, 10), mark(2, 40)]),
            printed: BTreeSet::from([3]),
            documents: BTreeSet::from(["M-01".to_owned(), "M-01/en".to_owned()]),
        };
        let bodies = Bodies { offsets: BTreeMap::from([(1, 100), (3, 100), (4, 100)]) };
        let mut all = Vec::new();
        for figures in [&[][..], &["a/x"], &["b/x"], &["M-01/en"], &["M-02/en"], &["M-01"], &["b/x", "m.start"]] {
            let places = (1..=5).flat_map(|file| [0, 12, 42, 120].map(|start| Some(Span { file, start, end: start + 3 })));
            for at in places.chain([None]) {
                let mut finding = Finding::new("made-up", Severity::Stop, format!("{figures:?} {at:?}"));
                finding.at = at.map(|span| (span, String::new()));
                finding.figures = figures.iter().map(|f| (*f).to_owned()).collect();
                all.push(finding);
            }
        }
        let mut places = Places::default();
        all.iter().enumerate().for_each(|(i, finding)| places.add(i, finding));
        let seen: Vec<&str> = paper.near(&all, &places).map(|f| f.title.as_str()).collect();
        let touching: Vec<&Finding> = all.iter().filter(|f| paper.touched(f, &bodies)).collect();
        assert!(touching.len() > 40 && touching.len() < all.len(), "{} of {}", touching.len(), all.len());
        assert_eq!(touching.iter().filter(|f| !seen.contains(&f.title.as_str())).count(), 0);
        assert!(seen.len() < all.len());
    }
}
