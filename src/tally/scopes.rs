//! The scopes of documents: what a card for a batch, for a mix or for a site can name.

use std::collections::BTreeMap;
use std::sync::Arc;

use crate::job::{BatchPlan, Job, Mix, Mixer, Site, Surface, Text};
use crate::words::Lang;

use super::scope::{Group, Names, Scope, Slot};
use super::{Tally, batch_id, mix_of};

/// What one document is made for.
#[derive(Clone, Copy, Debug)]
pub enum Subject<'a> {
    /// A batch of a site.
    Batch(&'a Site, &'a BatchPlan),
    /// A mix that a site uses.
    Mix(&'a Site, &'a Mix),
    /// A site.
    Site(&'a Site),
}

impl<'a> Subject<'a> {
    /// The site.
    pub fn site(self) -> &'a Site {
        match self {
            Subject::Batch(site, _) | Subject::Mix(site, _) | Subject::Site(site) => site,
        }
    }

    /// The id, such as `larkenfell/carve-24/2`.
    pub fn id(self, job: &Job) -> String {
        match self {
            Subject::Batch(site, plan) => batch_id(job, site, plan),
            Subject::Mix(site, mix) => format!("{}/{}", site.id, mix.id),
            Subject::Site(site) => site.id.clone(),
        }
    }

    /// A number for the mixes it speaks of and one for the loads of its batch: alike for subjects of other sites that have
    /// both in common.
    pub fn kind(self, job: &Job) -> (u64, u64) {
        let place = |name: &str| job.mixes.iter().position(|m| m.name.text == name).and_then(|at| u64::try_from(at + 2).ok()).unwrap_or(1);
        match self {
            Subject::Batch(_, plan) => (place(&plan.mix.text), plan.loads.value().si.to_f64().to_bits()),
            Subject::Mix(_, mix) => (place(&mix.name.text), 0),
            // Mixes of a site are two at most, and a site is told from a mix by the number behind.
            Subject::Site(site) => (site.mixes().fold(0, |all, name| all << 32 | place(&name.text)), u64::MAX),
        }
    }

    /// The mix, for a batch or a mix.
    pub fn mix(self, job: &'a Job) -> Option<&'a Mix> {
        match self {
            Subject::Batch(_, plan) => mix_of(job, &plan.mix.text),
            Subject::Mix(_, mix) => Some(mix),
            Subject::Site(_) => None,
        }
    }
}

fn group<'a>(entries: impl IntoIterator<Item = (&'a str, Slot)>) -> Slot {
    above(entries, Vec::new())
}

/// Names above those of figures.
fn above<'a>(entries: impl IntoIterator<Item = (&'a str, Slot)>, below: Vec<Arc<Names>>) -> Slot {
    let own = entries.into_iter().map(|(k, v)| (k.to_owned(), v)).collect();
    Slot::Map(Arc::new(Group { own, below }))
}

/// The name in a language, else the first one.
pub fn named(names: &[(String, Text)], lang: Lang) -> &str {
    names.iter().find(|(code, _)| code == lang.code()).or(names.first()).map_or("", |(_, t)| t.text.as_str())
}

fn owned<'a>(tally: &Tally, owner: &str, texts: impl IntoIterator<Item = (&'a str, Slot)>) -> Slot {
    above(texts, vec![tally.of_owner(owner)])
}

fn mix_slot(tally: &Tally, site: &Site, mix: &Mix, lang: Lang) -> Slot {
    let of_mix = tally.of_owner(&mix.id);
    let half = group(of_mix.iter().filter_map(|(k, v)| k.strip_prefix("half_").map(|n| (n, v.clone()))));
    let class = mix.mortar.class.as_ref().map_or("", |t| t.text.as_str());
    let class = if lang.code() != "en" && class.contains("Type S mortar") { lang.text("mortar.type_s") } else { class };
    let texts = [
        ("name", mix.name.text.as_str()),
        ("rev", mix.rev.text.as_str()),
        ("additive_name", named(&mix.additive.names, lang)),
        ("mortar_class", class),
        ("coat", lang.text(if mix.coat.text == "scratch" { "coat.scratch" } else { "coat.carve" })),
    ];
    let own = texts.into_iter().map(|(name, value)| (name, Slot::text(value))).chain([("half", half)]);
    // What the site adds to a mix: its place-by time, its loads and bags.
    let of_site = tally.of_owner(&format!("{}/{}", site.id, mix.id));
    above(own, vec![of_site, of_mix.clone()])
}

fn surface_slot(tally: &Tally, site: &Site, surface: &Surface, lang: Lang) -> Slot {
    owned(
        tally,
        &format!("{}/{}", site.id, surface.code.text),
        vec![
            ("id", Slot::name(&surface.code.text)),
            ("what", Slot::name(named(&surface.what, lang))),
            ("texture", Slot::text(&surface.texture.text)),
        ],
    )
}

fn mixer_slot(tally: &Tally, site: &Site, mix: &Mix, mixer: &Mixer, lang: Lang) -> Slot {
    let prefix = format!("{}/{}/{}", site.id, mix.id, mixer.code.text);
    owned(tally, &prefix, vec![("name", Slot::text(named(&mixer.names, lang))), ("code", Slot::text(&mixer.code.text))])
}

/// The scope of a document in a language. For many documents of the same sites use [`Scopes`].
pub fn scope(tally: &Tally, job: &Job, subject: Subject<'_>, lang: Lang) -> Arc<Scope> {
    Scopes::new(tally, job).of(subject, lang)
}

/// Scopes of documents, each group of names made once and shared.
#[derive(Debug)]
pub struct Scopes<'a> {
    tally: &'a Tally,
    job: &'a Job,
    /// By site, mix and language.
    mixes: BTreeMap<(String, String, &'static str), Slot>,
    /// By site and language.
    sites: BTreeMap<(String, &'static str), Slot>,
    /// By subject and language.
    made: BTreeMap<(String, &'static str), Arc<Scope>>,
}

impl<'a> Scopes<'a> {
    /// None made yet.
    pub fn new(tally: &'a Tally, job: &'a Job) -> Scopes<'a> {
        Scopes { tally, job, mixes: BTreeMap::new(), sites: BTreeMap::new(), made: BTreeMap::new() }
    }

    /// The scope of a document in a language.
    pub fn of(&mut self, subject: Subject<'_>, lang: Lang) -> Arc<Scope> {
        let key = (subject.id(self.job), lang.code());
        if let Some(made) = self.made.get(&key) {
            return made.clone();
        }
        let made = Arc::new(self.make(subject, &key.0, lang));
        self.made.insert(key, made.clone());
        made
    }

    fn mix(&mut self, site: &Site, mix: &Mix, lang: Lang) -> Slot {
        let key = (site.id.clone(), mix.id.clone(), lang.code());
        self.mixes.entry(key).or_insert_with(|| mix_slot(self.tally, site, mix, lang)).clone()
    }

    fn site(&mut self, site: &Site, lang: Lang) -> Slot {
        let key = (site.id.clone(), lang.code());
        if let Some(made) = self.sites.get(&key) {
            return made.clone();
        }
        let (tally, job, day) = (self.tally, self.job, &site.good_until);
        let mixes = site.mixes().filter_map(|name| mix_of(job, &name.text)).map(|mix| self.mix(site, mix, lang)).collect();
        let surfaces = site.surfaces.iter().map(|s| surface_slot(tally, site, s, lang)).collect();
        let made = owned(
            tally,
            &site.id,
            vec![
                ("name", Slot::name(&site.name.text)),
                ("code", Slot::name(&site.code.text)),
                ("good_until", Slot::name(&lang.date(day.year, day.month, day.day))),
                ("mixes", Slot::list(mixes)),
                ("surfaces", Slot::list(surfaces)),
            ],
        );
        self.sites.insert(key, made.clone());
        made
    }

    fn make(&mut self, subject: Subject<'_>, id: &str, lang: Lang) -> Scope {
        let (tally, job, site) = (self.tally, self.job, subject.site());
        let mut root = group([("site", self.site(site, lang))]);
        if let Some(company) = &job.company {
            root.put("company", group([("name", Slot::name(&company.name.text))]));
        }
        let mut near: Vec<String> = Vec::new();
        if let Subject::Batch(_, plan) = subject {
            root.put("batch", owned(tally, id, Vec::new()));
            near.push(format!("{id}."));
            let mixer = job.company.iter().flat_map(|c| &c.mixers).find(|m| m.code.text == plan.mixer.text);
            if let (Some(mix), Some(mixer)) = (subject.mix(job), mixer) {
                root.put("mixer", mixer_slot(tally, site, mix, mixer, lang));
                near.push(format!("{}/{}/{}.", site.id, mix.id, mixer.code.text));
            }
        }
        if let Some(mix) = subject.mix(job) {
            root.put("mix", self.mix(site, mix, lang));
            near.push(format!("{}/{}.", site.id, mix.id));
            near.push(format!("{}.", mix.id));
        } else {
            near.extend(job.mixes.iter().map(|m| format!("{}.", m.id)));
            near.push(format!("{}/", site.id));
            near.push(format!("{}.", site.id));
        }
        Scope { root, near, site: site.id.clone(), subject: id.to_owned() }
    }
}
