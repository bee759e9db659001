//! C4: sealer figured as if carved work were flat, by the texture as stated and by what the texts say.

use std::cmp::Ordering;

use crate::finding::{Finding, Severity};
use crate::job::{Site, Texture};
use crate::quantity::{Num, Quantity};
use crate::sound::phrase::{Ask, NOT, each_clause};
use crate::sound::told::{at_value, length, number};
use crate::sound::{Check, Ground};

/// The check.
pub const CHECK: Check = Check {
    name: "sealer-on-flat-area",
    ids: &["C4"],
    severities: &[Severity::Warn],
    title: "color and sealer are figured on the flat area",
    manual: include_str!("sealer_on_flat_area.md"),
    twins: &[("es", include_str!("sealer_on_flat_area.es.md"))],
    run,
};

const FLAT: &[&str] = &["flat", "plana", "plano", "planas", "lisa"];
const AREA: &[&str] = &["area", "surface", "feet", "meters", "área", "superficie", "pies", "metros"];
const FINISH: &[&str] = &["sealer", "color", "colour", "stain", "sellador", "pintura", "tinte", "coverage", "rendimiento"];
/// Words of the real surface beside the flat one.
const REAL: &[&str] = &["developed", "real", "more", "times", "desarrollada", "más", "veces"];

const ASK: Ask<'static> = Ask { all: &[FLAT, AREA, FINISH], unless: REAL, not: NOT };
const SOURCE: &str = "geometry: a groove has two sides; how much a texture adds is measured on its panel, common practice";

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    let sealed = ground.job.sites.iter().filter(|s| s.finish.is_some());
    let all = sealed.flat_map(|site| site.textures.iter().map(move |t| (site, t)));
    let mut found: Vec<Finding> = all.filter_map(|(site, texture)| one(ground, site, texture)).collect();
    found.extend(each_clause(ground, &ASK, |_, word, at| {
        Finding::new(CHECK.name, Severity::Warn, format!("the text figures sealer on the `{word}` area, carved work has more surface"))
            .at(at, "not what is coated")
            .source(SOURCE)
            .help("figure it on the developed surface: `{{ site.developed }}`")
    }));
    found
}

/// A texture with relief whose surface is taken as flat.
fn one(ground: &Ground<'_>, site: &Site, texture: &Texture) -> Option<Finding> {
    let name = &texture.name;
    let used = site.surfaces.iter().any(|s| s.texture.text == name.text);
    // Without a least thickness the mean was measured, and some relief lies between it and the faces.
    let relief = texture.least.as_ref().is_none_or(|least| least.value().compare(texture.most.value()) == Some(Ordering::Less));
    if !used || !relief {
        return None;
    }
    let unit = if site.metric { "mm" } else { "in" };
    let most = length(texture.most.node(), unit);
    let finding = match &texture.developed {
        None => {
            let title = format!("`{}` is up to {most} deep and states no developed surface, sealer is bought by it", name.text);
            Finding::new(CHECK.name, Severity::Warn, title).at(name.at, "no `developed`").absent()
        }
        Some(factor) if factor.value().compare(&Quantity::plain(Num::int(1))) != Some(Ordering::Greater) => {
            let title =
                format!("`{}` is up to {most} deep and its surface is taken as flat, {} to 1", name.text, number(factor.node(), ""));
            at_value(Finding::new(CHECK.name, Severity::Warn, title), ground, factor.node(), "as if nothing were carved")
        }
        Some(_) => return None,
    };
    let help = "lay a string over the relief of the panel: its length over the straight length, both ways, is `developed`";
    Some(finding.source(SOURCE).help(help).about(name.text.clone()).figure(format!("{}.finish_volume", site.id)))
}
