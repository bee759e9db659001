//! A job folder rendered and checked, as the commands do it but without a press.

use std::collections::BTreeSet;

use hodbook::finding::Finding;
use hodbook::job::{BatchPlan, Body, Caution, Distance, Edition, Fit, Issued, Job, Per, Site};
use hodbook::prose::{Options, Prepared, Shelf};
use hodbook::read;
use hodbook::sound::{self, CHECKS, Ground, Role, Seen};
use hodbook::source::{File, Folder};
use hodbook::tally::scopes::{self, Scopes};
use hodbook::tally::{Subject, Tally, Voice, mix_of, mixes_of};
use hodbook::words::Lang;

/// A check as it is, left out, or one that always finds something.
#[derive(Clone, Copy)]
pub enum Switch<'n> {
    /// As they are.
    AsIs,
    /// Without this one.
    Off(&'n str),
    /// This one always finds something.
    On(&'n str),
}

/// The findings of every check. Findings of reading and rendering fail the test: a case is about a check.
pub fn sound(folder: &Folder, fits: &[Fit], switch: Switch<'_>) -> Vec<Finding> {
    sound_with(folder, fits, &[], switch)
}

/// The same with cards in force.
pub fn sound_with(folder: &Folder, fits: &[Fit], issued: &[Issued], switch: Switch<'_>) -> Vec<Finding> {
    let (job, findings) = read::job(folder);
    let titles: Vec<&str> = findings.iter().map(|f| f.title.as_str()).collect();
    assert!(findings.is_empty(), "the case cannot be read: {titles:?}");
    let tally = Tally::of(&job);
    let (seen, broken) = texts(&job, &tally);
    assert!(broken.is_empty(), "a text of the case cannot be rendered: {:?}", broken.iter().map(|f| &f.title).collect::<Vec<_>>());
    let ground = Ground { seen: &seen, fits, issued, ..Ground::of(&job, &tally, ON) };
    let checks: Vec<&sound::Check> = match switch {
        Switch::AsIs => CHECKS.to_vec(),
        Switch::Off(name) | Switch::On(name) => CHECKS.iter().copied().filter(|c| c.name != name).collect(),
    };
    let mut found = sound::run_these(&checks, &ground);
    if let Switch::On(name) = switch {
        let check = sound::check(name).unwrap();
        found.push(Finding::new(check.name, check.severities[0], "always"));
    }
    settle(&job, folder, &mut found);
    // Findings about acceptances come from no run of their own.
    if let Switch::Off(name) = switch {
        found.retain(|f| f.name != name);
    }
    found
}

/// The day of every case.
pub const ON: (i16, i8, i8) = (2026, 3, 2);

/// Lets the acceptances of a folder meet the findings of all its checks.
pub fn settle(job: &Job, folder: &Folder, found: &mut Vec<Finding>) {
    let lines = |file: u32| folder.lines(file);
    let settled = sound::signed::settle(job, found, &lines);
    found.extend(sound::signed::idle(job, &settled));
    found.extend(settled.found);
}

/// What rendering says of a body on the first site that has both mixes; nothing if it renders.
pub fn torn(folder: &Folder, body: &Body) -> Vec<Finding> {
    let job = read::job(folder).0;
    let tally = Tally::of(&job);
    let site = job.sites.iter().find(|s| s.scratch_mix.is_some()).unwrap();
    let mix = mixes_of(&job, site).into_iter().find(|m| m.coat.text == "carve").unwrap();
    let lang = Lang::find("en").unwrap();
    let scope = scopes::scope(&tally, &job, Subject::Mix(site, mix), lang);
    let voice = Voice { lang, metric: site.metric };
    let doc = Prepared::new(body).and_then(|p| p.render(&scope, &tally, voice, Options::default()));
    doc.err().unwrap_or_default()
}

/// Every text of a job as it will be printed, and the findings of those that cannot be rendered.
pub fn texts<'a>(job: &'a Job, tally: &'a Tally) -> (Vec<Seen<'a>>, Vec<Finding>) {
    let mut stage = Stage {
        job,
        tally,
        seen: Vec::new(),
        told: BTreeSet::new(),
        scopes: Scopes::new(tally, job),
        shelf: Shelf::new(),
        broken: Vec::new(),
    };
    stage.cards();
    for site in &job.sites {
        stage.book(site, "en");
        stage.book(site, "es");
    }
    (stage.seen, stage.broken)
}

/// The body of a file below its front matter.
pub fn body(file: &File) -> Body {
    let offset = file.text.find("\n---\n").unwrap() + 5;
    Body { file: file.id, offset: offset.try_into().unwrap(), text: file.text[offset..].to_owned() }
}

struct Stage<'a> {
    job: &'a Job,
    tally: &'a Tally,
    seen: Vec<Seen<'a>>,
    /// Texts that stand there: file, subject, language, distance. A caution stands under many procedures, alike in all.
    told: BTreeSet<(u32, String, String, String)>,
    scopes: Scopes<'a>,
    shelf: Shelf,
    broken: Vec<Finding>,
}

impl<'a> Stage<'a> {
    fn text(&mut self, editions: &'a [Edition], code: &str, role: Role<'a>, subject: Subject<'a>, reads: Distance) {
        let Some(edition) = editions.iter().find(|e| e.lang == code) else { return };
        let id = subject.id(self.job);
        if !self.told.insert((edition.body.file, id, code.to_owned(), format!("{reads:?}"))) {
            return;
        }
        let lang = Lang::find(code).unwrap();
        let voice = Voice { lang, metric: subject.site().metric };
        let scope = self.scopes.of(subject, lang);
        let doc = match self.shelf.render(&edition.body, &scope, self.tally, voice, Options::default()) {
            Ok(doc) => doc,
            Err(found) => return self.broken.extend(found),
        };
        let original = (edition.lang != editions[0].lang).then(|| &editions[0]);
        let document = format!("{}/{code}", subject.id(self.job));
        self.seen.push(Seen { document, role, edition, original, subject, voice, scope, doc, reads });
    }

    fn cautions(&mut self, names: &[hodbook::job::Text], code: &str, subject: Subject<'a>, reads: Distance) {
        let job = self.job;
        let called = |c: &&'a Caution| names.iter().any(|n| n.text == c.id);
        for caution in job.cautions.iter().filter(called) {
            self.text(&caution.editions, code, Role::Caution(caution), subject, reads);
        }
    }

    fn cards(&mut self) {
        let job = self.job;
        for card in &job.cards {
            for subject in job.sites.iter().flat_map(|s| subjects(job, s, card.per)) {
                for face in &card.faces {
                    self.text(&card.editions, &face.text, Role::Card(card), subject, card.reads);
                    self.cautions(&card.cautions, &face.text, subject, card.reads);
                }
            }
        }
    }

    fn book(&mut self, site: &'a Site, code: &str) {
        let (job, whole, reads) = (self.job, Subject::Site(site), Distance::Hand);
        let notes = job.handbook.iter().map(|h| &h.editions).chain(job.company.iter().map(|c| &c.editions)).chain([&site.editions]);
        for editions in notes {
            self.text(editions, code, Role::Notes, whole, reads);
        }
        for chapter in &job.chapters {
            self.text(&chapter.editions, code, Role::Chapter(chapter), whole, reads);
        }
        for mix in mixes_of(job, site) {
            self.text(&mix.editions, code, Role::Notes, Subject::Mix(site, mix), reads);
        }
        for page in &job.procedures {
            let mix = page.mix.as_ref().and_then(|name| mix_of(job, &name.text));
            if mix.is_some_and(|m| site.mixes().all(|n| n.text != m.name.text)) {
                continue;
            }
            let subject = mix.map_or(whole, |m| Subject::Mix(site, m));
            self.text(&page.editions, code, Role::Procedure(page), subject, reads);
            self.cautions(&page.cautions, code, subject, reads);
        }
    }
}

fn subjects<'a>(job: &'a Job, site: &'a Site, per: Per) -> Vec<Subject<'a>> {
    let batches = || site.batches.iter().map(|b: &'a BatchPlan| Subject::Batch(site, b));
    match per {
        Per::Batch => batches().collect(),
        Per::Mix => mixes_of(job, site).into_iter().map(|m| Subject::Mix(site, m)).collect(),
        Per::Site => vec![Subject::Site(site)],
    }
}
