//! M3: the base material is not bagged Type S mortar with sand.

use crate::finding::{Finding, Severity};
use crate::job::Mix;
use crate::sound::{Check, Ground};

/// The check.
pub const CHECK: Check = Check {
    name: "mortar-class-wrong",
    ids: &["M3"],
    severities: &[Severity::Stop],
    title: "the bag under the additive is not Type S mortar with sand",
    manual: include_str!("mortar_class_wrong.md"),
    twins: &[("es", include_str!("mortar_class_wrong.es.md"))],
    run,
};

/// Wrong materials by the words on their bag, and what each is.
const WRONG: &[(&str, &str)] = &[
    ("masonry cement", "is cement without sand"),
    ("mortar cement", "is cement without sand"),
    ("type n", "is another type"),
    ("type m", "is another type"),
    ("type o", "is another type"),
    ("type k", "is another type"),
    ("concrete", "is concrete mix"),
    ("stucco", "is stucco base"),
    ("thinset", "is tile mortar"),
    ("thin set", "is tile mortar"),
    ("grout", "is grout"),
];

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    ground.job.mixes.iter().filter_map(one).collect()
}

fn one(mix: &Mix) -> Option<Finding> {
    let class = mix.mortar.class.as_ref();
    let why = match class {
        None => "states nothing".to_owned(),
        Some(text) => wrong(&text.text)?,
    };
    let said = class.map_or("the mortar's class".to_owned(), |t| format!("`{}`", t.text));
    let title = format!("{said} {why}; {} needs bagged Type S mortar with sand", mix.name.text);
    let finding = Finding::new(CHECK.name, Severity::Stop, title)
        .source("class of ASTM C1714 (dry mortar in bags, sand in it), Type S of ASTM C270; not verified against a copy")
        .help("read the bag; if it is right, write `class: \"bagged Type S mortar, sand in it\"`");
    let at = class.unwrap_or(&mix.name).at;
    Some(finding.at(at, if class.is_some() { "this bag" } else { "states no `mortar.class`" }))
}

/// What is wrong with a class, or nothing.
fn wrong(class: &str) -> Option<String> {
    let words: Vec<String> =
        class.to_lowercase().split(|c: char| !c.is_alphanumeric()).filter(|w| !w.is_empty()).map(str::to_owned).collect();
    let says = |phrase: &str| {
        let phrase: Vec<&str> = phrase.split(' ').collect();
        // `not Type N` says what it is not.
        (0..words.len()).any(|i| {
            let here = phrase.iter().enumerate().all(|(k, p)| words.get(i + k).is_some_and(|w| w == p));
            let turned = i.checked_sub(1).and_then(|k| words.get(k)).is_some_and(|w| ["not", "no", "never"].contains(&w.as_str()));
            here && !turned
        })
    };
    if let Some((_, what)) = WRONG.iter().find(|(phrase, _)| says(phrase)) {
        return Some((*what).to_owned());
    }
    let sand = ["sand", "sanded"].iter().any(|w| says(w)) && !words.windows(2).any(|w| w.join(" ") == "without sand");
    if says("cement") && !(sand && says("mortar")) {
        return Some("is cement without sand".to_owned());
    }
    match (says("type s"), says("mortar"), sand) {
        (true, true, true) => None,
        (false, _, _) => Some("does not say Type S".to_owned()),
        (_, false, _) => Some("does not say mortar".to_owned()),
        _ => Some("does not say that sand is in it".to_owned()),
    }
}

#[cfg(test)]
mod tests {
    use super::wrong;

    #[test]
    fn classes() {
        for good in [
            "bagged Type S mortar, sand in it",
            "Type S mortar (portland cement, lime and sand), bagged; not Type N",
            "sanded Type-S mortar",
        ] {
            assert_eq!(wrong(good), None, "{good}");
        }
        for (bad, why) in [
            ("Type S masonry cement", "is cement without sand"),
            ("portland cement", "is cement without sand"),
            ("Type S mortar cement, add sand", "is cement without sand"),
            ("bagged Type N mortar, sand in it", "is another type"),
            ("concrete mix", "is concrete mix"),
            ("stucco base", "is stucco base"),
            ("thin-set", "is tile mortar"),
            ("bagged mortar, sand in it", "does not say Type S"),
            ("Type S mortar", "does not say that sand is in it"),
            ("Type S mortar without sand", "does not say that sand is in it"),
        ] {
            assert_eq!(wrong(bad).as_deref(), Some(why), "{bad}");
        }
    }
}
