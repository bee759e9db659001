//! The scopes of documents: what a card for a batch, for a mix or for a site can name.

use indexmap::IndexMap;

use crate::job::{BatchPlan, Job, Mix, Mixer, Site, Surface, Text};
use crate::words::Lang;

use super::scope::{Scope, Slot};
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
    Slot::Map(entries.into_iter().map(|(k, v)| (k.to_owned(), v)).collect::<IndexMap<_, _>>())
}

fn text(s: &str) -> Slot {
    Slot::Text(s.to_owned())
}

/// The name in a language, else the first one.
pub fn named(names: &[(String, Text)], lang: Lang) -> &str {
    names.iter().find(|(code, _)| code == lang.code()).or(names.first()).map_or("", |(_, t)| t.text.as_str())
}

/// Figures of an owner whose id is `prefix.name`, by name.
fn figures(tally: &Tally, prefix: &str) -> IndexMap<String, Slot> {
    let dotted = format!("{prefix}.");
    tally
        .figures()
        .filter_map(|f| f.id.strip_prefix(&dotted).map(|name| (name, &f.id)))
        .filter(|(name, _)| !name.contains(['.', '/']))
        .map(|(name, id)| (name.to_owned(), Slot::Figure(id.clone())))
        .collect()
}

fn owned(tally: &Tally, prefix: &str, texts: Vec<(&str, Slot)>) -> Slot {
    let mut map = figures(tally, prefix);
    map.extend(texts.into_iter().map(|(k, v)| (k.to_owned(), v)));
    Slot::Map(map)
}

fn mix_slot(tally: &Tally, site: &Site, mix: &Mix, lang: Lang) -> Slot {
    let mut map = figures(tally, &mix.id);
    // What the site adds to a mix: its place-by time, its loads and bags.
    map.extend(figures(tally, &format!("{}/{}", site.id, mix.id)));
    let half: IndexMap<String, Slot> =
        figures(tally, &mix.id).into_iter().filter_map(|(k, v)| k.strip_prefix("half_").map(|n| (n.to_owned(), v))).collect();
    map.insert("half".to_owned(), Slot::Map(half));
    let class = mix.mortar.class.as_ref().map_or("", |t| t.text.as_str());
    let class = if lang.code() != "en" && class.contains("Type S mortar") { lang.text("mortar.type_s") } else { class };
    for (name, value) in [
        ("name", mix.name.text.as_str()),
        ("rev", mix.rev.text.as_str()),
        ("additive_name", named(&mix.additive.names, lang)),
        ("mortar_class", class),
        ("coat", lang.text(if mix.coat.text == "scratch" { "coat.scratch" } else { "coat.carve" })),
    ] {
        map.insert(name.to_owned(), text(value));
    }
    Slot::Map(map)
}

fn surface_slot(tally: &Tally, site: &Site, surface: &Surface, lang: Lang) -> Slot {
    owned(
        tally,
        &format!("{}/{}", site.id, surface.code.text),
        vec![("id", text(&surface.code.text)), ("what", text(named(&surface.what, lang))), ("texture", text(&surface.texture.text))],
    )
}

fn site_slot(tally: &Tally, job: &Job, site: &Site, lang: Lang) -> Slot {
    let day = &site.good_until;
    let mixes: Vec<Slot> = site.mixes().filter_map(|name| mix_of(job, &name.text)).map(|mix| mix_slot(tally, site, mix, lang)).collect();
    let surfaces = site.surfaces.iter().map(|s| surface_slot(tally, site, s, lang)).collect();
    owned(
        tally,
        &site.id,
        vec![
            ("name", text(&site.name.text)),
            ("code", text(&site.code.text)),
            ("good_until", Slot::Text(lang.date(day.year, day.month, day.day))),
            ("mixes", Slot::List(mixes)),
            ("surfaces", Slot::List(surfaces)),
        ],
    )
}

fn mixer_slot(tally: &Tally, site: &Site, mix: &Mix, mixer: &Mixer, lang: Lang) -> Slot {
    let prefix = format!("{}/{}/{}", site.id, mix.id, mixer.code.text);
    owned(tally, &prefix, vec![("name", text(named(&mixer.names, lang))), ("code", text(&mixer.code.text))])
}

/// The scope of a document in a language.
pub fn scope(tally: &Tally, job: &Job, subject: Subject<'_>, lang: Lang) -> Scope {
    let site = subject.site();
    let mut root = group([("site", site_slot(tally, job, site, lang))]);
    if let Some(company) = &job.company {
        root.put("company", group([("name", text(&company.name.text))]));
    }
    let id = subject.id(job);
    let mut near: Vec<String> = Vec::new();
    if let Subject::Batch(_, plan) = subject {
        root.put("batch", owned(tally, &id, Vec::new()));
        near.push(format!("{id}."));
        let mixer = job.company.iter().flat_map(|c| &c.mixers).find(|m| m.code.text == plan.mixer.text);
        if let (Some(mix), Some(mixer)) = (subject.mix(job), mixer) {
            root.put("mixer", mixer_slot(tally, site, mix, mixer, lang));
            near.push(format!("{}/{}/{}.", site.id, mix.id, mixer.code.text));
        }
    }
    if let Some(mix) = subject.mix(job) {
        root.put("mix", mix_slot(tally, site, mix, lang));
        near.push(format!("{}/{}.", site.id, mix.id));
        near.push(format!("{}.", mix.id));
    } else {
        near.extend(job.mixes.iter().map(|m| format!("{}.", m.id)));
        near.push(format!("{}/", site.id));
        near.push(format!("{}.", site.id));
    }
    // Clocks of planned days belong to the day's own sheet: elsewhere any typed half hour would meet one of them.
    let known: Vec<&str> = tally.figures().map(|f| f.id.as_str()).filter(|id| !super::of_a_day(site, id)).collect();
    let figures = near.iter().flat_map(|p| known.iter().filter(|id| id.starts_with(p.as_str())).map(|id| (*id).to_owned())).collect();
    Scope { root, figures, subject: id }
}
