//! H9: the gray water goes into a drain, onto soil or into a pond.

use crate::finding::{Finding, Severity};
use crate::sound::told::once_a_place;
use crate::sound::{Check, Ground, Seen};

use super::phrases::{Line, row, says};
use super::said;

/// The check.
pub const CHECK: Check = Check {
    name: "wash-out-into-ground",
    ids: &["H9"],
    severities: &[Severity::Hold],
    title: "gray water goes into a drain, onto soil or into a pond",
    manual: include_str!("wash_out_into_ground.md"),
    twins: &[("es", include_str!("wash_out_into_ground.es.md"))],
    run,
};

/// Why gray water is kept.
pub(super) const SOURCE: &str = "wash water of cement is as caustic as cement: the storm water rules under the Clean Water Act, 40 CFR 122.26, and the city's own, recalled; the local rule decides";

/// Words that send something somewhere.
const SENDS: &[&str] = &[
    "wash",
    "washes",
    "washed",
    "rinse",
    "rinses",
    "dump",
    "dumps",
    "pour",
    "pours",
    "empty",
    "tip",
    "hose",
    "throw",
    "flush",
    "goes",
    "go",
    "runs",
    "run",
    "drains",
    "discard",
    "lave",
    "enjuague",
    "tire",
    "tírela",
    "tírelo",
    "vacíe",
    "vacíela",
    "vierta",
    "eche",
    "échela",
    "va",
    "corre",
    "descargue",
    "deseche",
];
/// What comes off a mixer.
const GRAY: &[&str] = &[
    "wash water",
    "wash-out",
    "washout",
    "wash out",
    "gray water",
    "grey water",
    "rinse water",
    "slurry",
    "mixer",
    "tub",
    "tubs",
    "tools",
    "bucket",
    "buckets",
    "pail",
    "pails",
    "leftover",
    "leftovers",
    "brushes",
    "agua de lavado",
    "agua gris",
    "agua sucia",
    "agua de enjuague",
    "lechada",
    "mezcladora",
    "tina",
    "herramienta",
    "herramientas",
    "cubeta",
    "cubetas",
    "sobrante",
    "sobra",
];
const INTO: &[&str] = &["into", "in", "to", "down", "onto", "on", "over", "by", "al", "a", "en", "por", "sobre", "hacia"];
/// `a` goes somewhere in Spanish, before one of these; in English it does not.
const SPANISH: &[&str] = &["la", "los", "las", "un", "una"];
const SMALL: &[&str] =
    &["the", "a", "an", "any", "bare", "nearest", "la", "el", "los", "las", "un", "una", "storm", "floor", "street", "open"];
/// Where it must not go.
const PLACES: &[&str] = &[
    "drain",
    "drains",
    "gutter",
    "gutters",
    "sewer",
    "soil",
    "ground",
    "dirt",
    "grass",
    "lawn",
    "pond",
    "pool",
    "basin",
    "creek",
    "river",
    "stream",
    "ditch",
    "street",
    "garden",
    "flowerbed",
    "field",
    "gravel",
    "desagüe",
    "drenaje",
    "alcantarilla",
    "coladera",
    "cuneta",
    "tierra",
    "suelo",
    "pasto",
    "césped",
    "estanque",
    "alberca",
    "pila",
    "arroyo",
    "río",
    "zanja",
    "calle",
    "jardín",
    "campo",
    "grava",
];
/// Words of a key that keep it off the ground it stands on.
const LINED: &[&str] = &["lined", "liner", "plastic", "tub", "drum", "barrel", "box", "sheet", "forrada", "plástico", "tina", "tambo"];

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    let mut found = once_a_place(ground.texts().filter(|s| s.may_say(&[SENDS, GRAY, PLACES])).flat_map(of_text).collect());
    found.extend(ground.job.sites.iter().filter_map(|site| {
        let key = said(site, |s| s.wash_out.as_ref())?;
        let words = row(&key.text);
        let place = PLACES.iter().find(|p| says(&words, &[p]))?;
        let turned = says(&words, &["not", "never", "no", "nunca", "sin", "off"]) || says(&words, LINED);
        (!turned).then(|| new(&site.code.text, place).at(key.at, "not here").about("wash_out"))
    }));
    found
}

fn new(who: &str, place: &str) -> Finding {
    Finding::new(CHECK.name, Severity::Hold, format!("{who} sends gray water to the {place}, it belongs in a lined tub"))
        .source(SOURCE)
        .help("wash out into a lined tub or onto a sheet with a rim, let it set, haul it off")
}

fn of_text(seen: &Seen<'_>) -> Vec<Finding> {
    let mut found = Vec::new();
    for sentence in seen.sentences() {
        let line = Line::of(sentence);
        let Some(verb) = line.find(SENDS) else { continue };
        if !line.has(GRAY) {
            continue;
        }
        let mut from = 0;
        while let Some(at) = line.find_from(from, PLACES) {
            from = at + 1;
            // `into the storm drain`, `a la tierra`: the run of small words before it says that it goes in.
            let small = |k: &usize| SMALL.contains(&line.word(*k)) || INTO.contains(&line.word(*k));
            let into = (verb + 1..at)
                .rev()
                .take_while(small)
                .any(|k| INTO.contains(&line.word(k)) && (line.word(k) != "a" || SPANISH.contains(&line.word(k + 1))));
            let (true, false, Some(span)) = (into, line.turned(at), line.place(at)) else { continue };
            let who = sentence.step.map_or("a sentence".to_owned(), |n| format!("step {n}"));
            found.push(new(&who, line.word(at)).at(span, "not here"));
            break;
        }
    }
    found
}
