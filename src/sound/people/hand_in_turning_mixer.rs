//! H7: a step puts a hand or a tool into a mixer that turns.

use crate::finding::{Finding, Severity};
use crate::sound::told::once_a_place;
use crate::sound::{Check, Ground, Seen};

use super::phrases::Line;

/// The check.
pub const CHECK: Check = Check {
    name: "hand-in-turning-mixer",
    ids: &["H7"],
    severities: &[Severity::Stop],
    title: "a step puts a hand or a tool into a turning mixer",
    manual: include_str!("hand_in_turning_mixer.md"),
    twins: &[("es", include_str!("hand_in_turning_mixer.es.md"))],
    run,
};

/// What is done to a mixer by hand.
const REACHES: &[&str] = &[
    "scrape",
    "scrapes",
    "scraping",
    "reach",
    "reaches",
    "reaching",
    "poke",
    "wipe",
    "clear",
    "clean",
    "push",
    "press",
    "knock",
    "loosen",
    "free",
    "pull",
    "pick",
    "feel",
    "stick",
    "put your hand",
    "put a hand",
    "put your trowel",
    "put a trowel",
    "put the trowel",
    "raspe",
    "ráspela",
    "raspar",
    "meta",
    "meter",
    "limpie",
    "límpiela",
    "destape",
    "destapar",
    "empuje",
    "empújela",
    "apriete",
    "despegue",
    "despéguela",
    "afloje",
    "saque",
    "toque",
    "ponga la mano",
];
/// Where.
const INSIDE: &[&str] = &[
    "tub",
    "pan",
    "mixer",
    "paddle",
    "blades",
    "blade",
    "drum",
    "bowl",
    "corners of the tub",
    "tina",
    "mezcladora",
    "aspa",
    "aspas",
    "olla",
    "tambor",
    "batidora",
];
/// With what, where the sentence says that it turns and not where.
const WITH: &[&str] = &[
    "hand", "hands", "finger", "fingers", "trowel", "stick", "scraper", "mano", "manos", "dedo", "dedos", "cuchara", "llana", "palo",
    "raspador",
];
/// It turns.
const TURNS: &[&str] = &[
    "while it turns",
    "while it is turning",
    "while it runs",
    "while it is running",
    "while it mixes",
    "while mixing",
    "as it turns",
    "paddle turns",
    "paddle runs",
    "paddle running",
    "paddle is running",
    "paddle turning",
    "paddle is turning",
    "mixer running",
    "mixer is running",
    "mixer runs",
    "mixer turns",
    "mixer turning",
    "turning paddle",
    "running paddle",
    "running mixer",
    "turning mixer",
    "mientras gira",
    "mientras bate",
    "mientras da vueltas",
    "aspa girando",
    "aspa gira",
    "aspa en marcha",
    "aspa que gira",
    "mezcladora en marcha",
    "mezcladora andando",
    "mezcladora prendida",
    "sin apagar",
    "sin desconectar",
    "sin parar",
];
/// It is set going.
const STARTS: &[&str] = &[
    "start the paddle",
    "start the mixer",
    "start the drill",
    "start mixing",
    "turn on the mixer",
    "switch on the mixer",
    "run the paddle",
    "run the mixer",
    "arranque el aspa",
    "arranque la mezcladora",
    "prenda la mezcladora",
    "encienda la mezcladora",
    "arranque el taladro",
];
/// It is still.
const STILL: &[&str] = &[
    "unplug",
    "unplugged",
    "switch off",
    "switched off",
    "turn off",
    "turned off",
    "stop the paddle",
    "stop the mixer",
    "stop the drill",
    "paddle stopped",
    "mixer stopped",
    "paddle stops",
    "paddle is still",
    "mixer is still",
    "until it is still",
    "has stopped",
    "desconecte",
    "desconéctela",
    "desconectada",
    "apague",
    "apáguela",
    "apagada",
    "pare el aspa",
    "pare la mezcladora",
    "detenga",
    "aspa parada",
    "mezcladora parada",
    "hasta que pare",
];
/// Words that keep hands out.
const AWAY: &[&str] = &["away", "out of", "clear of", "hands off", "lejos", "fuera", "aparte"];

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    once_a_place(ground.texts().filter(|s| s.may_say(&[REACHES]) && (s.may_say(&[TURNS]) || s.may_say(&[STARTS]))).flat_map(one).collect())
}

fn one(seen: &Seen<'_>) -> Vec<Finding> {
    let mut running = None;
    let mut found = Vec::new();
    let mut last = 0;
    for sentence in seen.sentences() {
        let line = Line::of(sentence);
        let step = sentence.step.unwrap_or(0);
        // Another list of steps is another piece of work.
        if step < last {
            running = None;
        }
        last = step;
        let still = line.has(STILL) && !line.has(&["sin apagar", "sin desconectar", "sin parar"]);
        let turns = line.has(TURNS);
        if still && !turns {
            running = None;
            continue;
        }
        let inside = line.has(INSIDE);
        let reaches = line.meant(REACHES).filter(|_| !line.has(AWAY));
        if let Some(at) = reaches
            && ((turns && !still && (inside || line.has(WITH))) || (inside && running.is_some() && step > 0))
            && let Some(span) = line.place(at)
        {
            let who = if step > 0 { format!("step {step}") } else { "a sentence".to_owned() };
            let how = if turns { "turns" } else { "was started and not stopped" };
            let mut finding = Finding::new(CHECK.name, Severity::Stop, format!("{who} reaches into a mixer that {how}"))
                .at(span, "reaches in here")
                .source("common practice: a paddle takes the hand before the eye sees it; guarding of moving parts is OSHA 29 CFR 1926.300(b), recalled")
                .help("unplug it first, grate down until it is still: `Unplug the mixer before you scrape it.`");
            if let (Some(start), false) = (running, turns) {
                finding = finding.related(start, "started here");
            }
            found.push(finding);
        }
        if let Some(at) = line.meant(STARTS) {
            running = line.place(at);
        }
    }
    found
}
