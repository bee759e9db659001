//! Names that one file uses and another defines: checked when every file has been read.

use crate::finding::{Finding, Severity};
use crate::job::Text;
use crate::quantity::expr::{How, Money, PriceOfArea, Wage};
use crate::source::{Folder, Span};

use super::doc::Doc;
use super::group::Group;
use super::{handbook, near};

/// Names of one sort, each with the place that defines it.
struct Names {
    /// What one of them is called.
    sort: &'static str,
    names: Vec<(String, Span)>,
    /// False if a file that may define more could not be read: then nothing is called unknown.
    sure: bool,
}

impl Names {
    fn new(sort: &'static str, names: Vec<(String, Span)>, sure: bool) -> Names {
        Names { sort, names, sure }
    }

    fn check(&self, text: &Text, out: &mut Vec<Finding>) {
        if !self.sure || self.names.iter().any(|(n, _)| *n == text.text) {
            return;
        }
        let known: Vec<&str> = self.names.iter().map(|(n, _)| n.as_str()).collect();
        let title = format!("no {} is called `{}`", self.sort, text.text);
        let mut finding =
            Finding::new("reference-unknown", Severity::Stop, title).at(text.at, "named here").help(near::help(&text.text, &known));
        let near = near::nearest(&text.text, known.iter().copied());
        if let Some((name, at)) = self.names.iter().find(|(n, _)| Some(n.as_str()) == near) {
            finding = finding.related(*at, format!("`{name}` is defined here"));
        }
        out.push(finding);
    }

    fn each(&self, texts: &[Text], out: &mut Vec<Finding>) {
        texts.iter().for_each(|t| self.check(t, out));
    }

    /// Two files under one name cannot be told apart.
    fn taken(&self, out: &mut Vec<Finding>) {
        for (i, (name, at)) in self.names.iter().enumerate() {
            if let Some((_, first)) = self.names.iter().take(i).find(|(n, _)| n == name) {
                let title = format!("two {}{} are called `{name}`", self.sort, if self.sort == "mix" { "es" } else { "s" });
                let finding = Finding::new("name-taken", Severity::Stop, title)
                    .at(*at, "the second")
                    .related(*first, "the first")
                    .help("give one of them another name");
                out.push(finding);
            }
        }
    }
}

/// Originals of one kind.
fn originals<'d, 'a>(docs: &'d [Doc<'a>], kind: &str) -> Vec<&'d Doc<'a>> {
    docs.iter().filter(|d| d.kind.kind == kind && d.file.language().is_none()).collect()
}

fn by_key(docs: &[Doc<'_>], kind: &str, key: &str, sort: &'static str) -> Names {
    let all = originals(docs, kind);
    let name = |d: &&Doc<'_>| d.group.as_ref().and_then(|g| g.text(key)).map(|t| (t.text, t.at));
    let names: Vec<(String, Span)> = all.iter().filter_map(name).collect();
    let sure = names.len() == all.len();
    Names::new(sort, names, sure)
}

fn by_stem(docs: &[Doc<'_>], kind: &str, sort: &'static str) -> Names {
    let names = originals(docs, kind).iter().map(|d| (d.file.stem().to_owned(), d.title().at)).collect();
    Names::new(sort, names, true)
}

fn of_map(docs: &[Doc<'_>], key: &str, sort: &'static str) -> Names {
    let company = originals(docs, "company").first().and_then(|d| d.group.as_ref());
    let names: Vec<(String, Span)> = company.map(|g| g.map(key).iter().map(|(n, _)| (n.text.clone(), n.at)).collect()).unwrap_or_default();
    let sure = !names.is_empty();
    Names::new(sort, names, sure)
}

/// Checks every reference and every name that must be alone.
pub(super) fn check(folder: &Folder, docs: &[Doc<'_>]) -> Vec<Finding> {
    let mut out = Vec::new();
    let mixes = by_key(docs, "mix", "name", "mix");
    let sites = by_key(docs, "site", "code", "site");
    let people = of_map(docs, "people", "role");
    let mixers = of_map(docs, "mixers", "mixer");
    let cautions = by_stem(docs, "caution", "caution");
    let letters = by_stem(docs, "letter", "letter on file");
    mixes.taken(&mut out);
    sites.taken(&mut out);
    by_key(docs, "procedure", "code", "procedure").taken(&mut out);
    by_key(docs, "card", "code", "card").taken(&mut out);
    for doc in docs.iter().filter(|d| d.file.language().is_none()) {
        let Some(g) = &doc.group else { continue };
        for key in ["written_by", "approved_by"] {
            people.each(&g.text(key).into_iter().collect::<Vec<_>>(), &mut out);
        }
        g.accepts().iter().for_each(|a| people.check(&a.by, &mut out));
        match doc.kind.kind {
            "company" => {
                money(g, &mut out);
                let priced = g.group("prices").into_iter().flat_map(|p| p.map("mixes")).map(|(name, _)| name.clone());
                mixes.each(&priced.collect::<Vec<_>>(), &mut out);
            }
            "site" => {
                people.each(&g.texts("crew"), &mut out);
                let keeper = g.group("cure").and_then(|c| c.text("keeper"));
                people.each(&keeper.into_iter().collect::<Vec<_>>(), &mut out);
                let stand_in = g.group("cure").and_then(|c| c.text("stand_in"));
                people.each(&stand_in.into_iter().collect::<Vec<_>>(), &mut out);
                let hands = g.group("plan").and_then(|p| p.group("hands"));
                for does in ["mix", "place", "carve"] {
                    people.each(&hands.map_or_else(Vec::new, |h| h.texts(does)), &mut out);
                }
                site(g, &mixes, &mixers, &letters, &mut out);
            }
            "appliance" => appliance(g, docs, &sites, &mut out),
            "card" | "procedure" => {
                cautions.each(&g.texts("cautions"), &mut out);
                g.text("mix").iter().for_each(|m| mixes.check(m, &mut out));
            }
            "change" => super::change::check(g, docs, &mut out),
            "panel" => panel(g, docs, &sites, &mixes, &mut out),
            "letter" => g.text("site").iter().for_each(|s| sites.check(s, &mut out)),
            "handbook" => g.list("chapters").iter().flat_map(|c| c.texts("from")).for_each(|f| part(folder, &f, &mut out)),
            _ => {}
        }
    }
    out
}

fn site(g: &Group, mixes: &Names, mixers: &Names, letters: &Names, out: &mut Vec<Finding>) {
    super::agree::check(g, out);
    let both = g.group("mixes").map(|m| [m.text("scratch"), m.text("carve")]);
    both.into_iter().flatten().flatten().for_each(|m| mixes.check(&m, out));
    g.list("lots").iter().filter_map(|l| l.text("mix")).for_each(|m| mixes.check(&m, out));
    for batch in g.list("batches") {
        batch.text("mix").iter().for_each(|m| mixes.check(m, out));
        batch.text("mixer").iter().for_each(|m| mixers.check(m, out));
    }
    if let Some(delivery) = g.group("delivery") {
        delivery.map("ordered").iter().for_each(|(name, _)| mixes.check(name, out));
        delivery.list("lots").iter().filter_map(|l| l.text("mix")).for_each(|m| mixes.check(&m, out));
    }
    let letter = g.group("base").and_then(|b| b.text("letter"));
    letter.iter().for_each(|l| letters.check(l, out));
    let own: Vec<(String, Span)> = g.map("textures").iter().map(|(n, _)| (n.text.clone(), n.at)).collect();
    let sure = !own.is_empty();
    let textures = Names::new("texture of this site", own, sure);
    g.map("surfaces").iter().filter_map(|(_, s)| s.text("texture")).for_each(|t| textures.check(&t, out));
    let own: Vec<(String, Span)> = g.map("surfaces").iter().map(|(n, _)| (n.text.clone(), n.at)).collect();
    let sure = !own.is_empty();
    let surfaces = Names::new("surface of this site", own, sure);
    let goals = g.group("plan").into_iter().flat_map(|p| p.list("days"));
    goals.filter_map(|d| d.text("surface")).for_each(|s| surfaces.check(&s, out));
    g.map("joints").iter().for_each(|(code, _)| surfaces.check(code, out));
    if let Some(zone) = g.text("zone")
        && jiff::tz::TimeZone::get(&zone.text).is_err()
    {
        let known: Vec<String> = jiff::tz::db().available().map(|n| n.to_string()).collect();
        let near = near::nearest(&zone.text, known.iter().map(String::as_str));
        let help = near.map_or("write a name such as `America/Chicago`".to_owned(), |n| format!("did you mean `{n}`?"));
        let title = format!("no time zone is called `{}`", zone.text);
        out.push(Finding::new("reference-unknown", Severity::Stop, title).at(zone.at, "").help(help));
    }
}

/// The site that a record names by its code.
fn site_of<'d>(g: &Group, docs: &'d [Doc<'_>]) -> Option<&'d Group> {
    let code = g.text("site")?.text;
    originals(docs, "site").into_iter().filter_map(|d| d.group.as_ref()).find(|s| s.text("code").is_some_and(|t| t.text == code))
}

/// The names of a map, as what a reference may name. Where none could be read, nobody can say that one is wrong.
fn names_of<'m>(map: impl IntoIterator<Item = &'m (Text, Group)>, sort: &'static str) -> Names {
    let names: Vec<(String, Span)> = map.into_iter().map(|(n, _)| (n.text.clone(), n.at)).collect();
    let sure = !names.is_empty();
    Names::new(sort, names, sure)
}

/// An appliance stands in an opening of a surface of its own site.
fn appliance(g: &Group, docs: &[Doc<'_>], sites: &Names, out: &mut Vec<Finding>) {
    g.text("site").iter().for_each(|s| sites.check(s, out));
    let (Some(site), Some(surface)) = (site_of(g, docs), g.text("surface")) else { return };
    names_of(site.map("surfaces"), "surface of its site").check(&surface, out);
    let openings = site.map("surfaces").iter().filter(|(n, _)| n.text == surface.text).flat_map(|(_, s)| s.map("openings"));
    let openings = names_of(openings, "opening of its surface");
    g.text("opening").iter().for_each(|o| openings.check(o, out));
}

/// A panel speaks of a texture and of surfaces of its own site.
fn panel(g: &Group, docs: &[Doc<'_>], sites: &Names, mixes: &Names, out: &mut Vec<Finding>) {
    g.text("site").iter().for_each(|s| sites.check(s, out));
    g.text("mix").iter().for_each(|m| mixes.check(m, out));
    let Some(site) = site_of(g, docs) else { return };
    g.text("texture").iter().for_each(|t| names_of(site.map("textures"), "texture of its site").check(t, out));
    names_of(site.map("surfaces"), "surface of its site").each(&g.texts("surfaces"), out);
}

/// Every price in the one currency of the company: sums of two are no sums.
fn money(g: &Group, out: &mut Vec<Finding>) {
    let Some(prices) = g.group("prices") else { return };
    let currency = g.text("currency");
    let area = ["lath_and_paper", "finish"].iter().filter_map(|key| prices.worked::<PriceOfArea>(key).map(|w| w.node().clone()));
    let labor = prices.worked::<Wage>("labor").map(|w| w.node().clone());
    let loads = prices.map("mixes").iter().filter_map(|(_, m)| m.worked::<Money>("load").map(|w| w.node().clone()));
    for node in labor.into_iter().chain(area).chain(loads) {
        let (How::Authored { text, mark: Some(mark), .. }, Some(unit)) = (node.how(), node.unit()) else { continue };
        let at = Span { file: mark.file, start: mark.start, end: mark.end };
        let symbol = unit.over.symbol;
        match &currency {
            Some(currency) if currency.text == symbol => {}
            Some(currency) => {
                let title = format!("`{text}` is in {symbol}, the company's prices are in {}", currency.text);
                let help = format!("write every price in {}, or change `currency`", currency.text);
                let finding = Finding::new("currency-mixed", Severity::Stop, title).at(at, "");
                out.push(finding.related(currency.at, "the currency").help(help));
            }
            None => {
                let title = format!("`{text}` is a price, and the company file states no currency");
                out.push(Finding::new("currency-missing", Severity::Stop, title).at(at, "").help(format!("write `currency: {symbol}`")));
                return;
            }
        }
    }
}

/// A part of a chapter: a file of the job folder, or one of the words.
fn part(folder: &Folder, from: &Text, out: &mut Vec<Finding>) {
    if handbook::PARTS.contains(&from.text.as_str()) {
        return;
    }
    let Some(path) = Folder::inside(&from.text) else {
        let title = format!("`{}` leaves the job folder", from.text);
        let help = "name a file of the job folder, such as `chapters/safety.md`";
        out.push(Finding::new("path-outside", Severity::Stop, title).at(from.at, "").help(help));
        return;
    };
    if folder.at(&path).is_some() || folder.at(&format!("{path}.md")).is_some() {
        return;
    }
    let paths = folder.files().iter().map(|f| f.path.as_str()).filter(|p| p.ends_with(".md") && !p.contains(".es."));
    let known: Vec<&str> = handbook::PARTS.iter().copied().chain(paths).collect();
    let title = format!("nothing to print is called `{}`", from.text);
    out.push(Finding::new("reference-unknown", Severity::Stop, title).at(from.at, "named here").help(near::help(&from.text, &known)));
}
