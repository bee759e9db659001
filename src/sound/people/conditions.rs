//! Conditions that call for a caution, and the words of a text that bring them up.
//!
//! What is done is looked for, not what is forbidden: `do not grind dry` is read by somebody with a grinder in hand.

/// Words by condition, English and Spanish; `#` is a printed value.
pub(super) const CALLS: &[(&str, &[&str])] = &[
    (
        WET_CEMENT,
        &[
            "slurry",
            "wet cement",
            "fresh mix",
            "wet mix",
            "trowel",
            "press the mix",
            "press a thin",
            "droppings",
            "rake hard",
            "mix to",
            "lechada",
            "cemento fresco",
            "mezcla fresca",
            "llana",
            "apriete la mezcla",
            "apriete una",
            "raye fuerte",
        ],
    ),
    (
        "dust",
        &[
            "dust",
            "sweep",
            "open bags",
            "open the bags",
            "open them low",
            "open it low",
            "empty the bag",
            "empty the bags",
            "respirator",
            "polvo fino",
            "barra",
            "barrer",
            "abra los sacos",
            "ábralos",
            "ábrala",
            "vacíe el saco",
            "vacíe los sacos",
            "respirador",
        ],
    ),
    (
        "cutting",
        &[
            "grind",
            "grinds",
            "grinding",
            "grinder",
            "saw",
            "sawing",
            "saw cut",
            "saw-cut",
            "esmerile",
            "esmerilar",
            "esmeriladora",
            "esmeril",
            "lije",
            "lijar",
            "corte en seco",
            "sierra",
            "aserrar",
        ],
    ),
    (
        "old base",
        &[
            "asbestos",
            "lead paint",
            "old base",
            "old paint",
            "old plaster",
            "old stucco",
            "old wall",
            "old coat",
            "asbesto",
            "pintura con plomo",
            "base vieja",
            "pintura vieja",
            "repello viejo",
            "pared vieja",
            "capa vieja",
            "muro viejo",
        ],
    ),
    (MIXER, &["paddle", "blades", "start the mixer", "clear the mixer", "scrape the mixer", "aspa", "arranque la mezcladora"]),
    (
        "power",
        &[
            "plug in",
            "plug it in",
            "plugged in",
            "ground-fault",
            "outlet",
            "outlets",
            "cord",
            "cords",
            "extension cord",
            "generator",
            "enchufe",
            "conecte en",
            "conéctela",
            "gfci",
            "cable",
            "cables",
            "extensión eléctrica",
            "generador",
        ],
    ),
    (
        "drills",
        &[
            "drill mixers",
            "drills at once",
            "drill for each",
            "drills for each",
            "each drill",
            "cada taladro",
            "taladros a la vez",
            "un taladro por",
        ],
    ),
    (
        "lifting",
        &[
            "carry",
            "carries",
            "stack bags",
            "stack the bags",
            "pallet",
            "pallets",
            "lift the bag",
            "lift a bag",
            "lift bags",
            "hoist",
            "cargue el saco",
            "cargue los sacos",
            "apile",
            "tarima",
            "tarimas",
            "levante el saco",
            "levante los sacos",
            "polipasto",
        ],
    ),
    (
        HEIGHT,
        &[
            "scaffold",
            "scaffolds",
            "scaffolding",
            "guardrail",
            "guardrails",
            "harness",
            "stepladder",
            "step ladder",
            "climb",
            "work platform",
            "andamio",
            "andamios",
            "barandal",
            "barandales",
            "arnés",
            "escalera",
            "suba a",
        ],
    ),
    (
        OVERHEAD,
        &[
            "overhead",
            "arch head",
            "arch heads",
            "underside",
            "undersides",
            "soffit",
            "soffits",
            "ceiling",
            "ceilings",
            "cabezas de arco",
            "cabeza de arco",
            "cielo",
            "cielos",
            "plafón",
            "por arriba",
        ],
    ),
    (
        "forms",
        &[
            "free-standing",
            "freestanding",
            "armature",
            "armatures",
            "falsework",
            "shoring",
            "formwork",
            "autoportante",
            "autoportantes",
            "cimbra",
            "cimbras",
            "puntal",
            "puntales",
            "armazón suelto",
            "se sostiene solo",
        ],
    ),
    (WEIGHT, &["engineer", "engineer's", "weighs", "weight of the wall", "ingeniero", "peso de la pared", "carta del ingeniero"]),
    (FIRE, &["firebox", "fireplace", "fire pit", "flue", "hogar", "chimenea", "fogón", "fogata"]),
    (
        SOLVENT,
        &[
            "solvent",
            "solvents",
            "acetone",
            "xylene",
            "mineral spirits",
            "lacquer",
            "thinner",
            "solvente",
            "solventes",
            "acetona",
            "xileno",
            "aguarrás",
            "tíner",
            "laca",
        ],
    ),
    ("acid", &["acid", "acids", "muriatic", "ácido", "ácidos", "muriático"]),
    (
        HEAT,
        &[
            "heat index",
            "hot day",
            "hot days",
            "in the heat",
            "heat plan",
            "heat stroke",
            "heatstroke",
            "índice de calor",
            "día de calor",
            "días de calor",
            "mucho calor",
            "golpe de calor",
            "plan de calor",
        ],
    ),
];

/// Its cautions are judged by what they say: eyes and skin, both.
pub(super) const WET_CEMENT: &str = "wet cement";
/// A mixer that turns.
pub(super) const MIXER: &str = "mixer";
/// Work off the floor.
pub(super) const HEIGHT: &str = "height";
/// Work above heads.
pub(super) const OVERHEAD: &str = "overhead";
/// Weight that a frame carries.
pub(super) const WEIGHT: &str = "weight";
/// Fireboxes.
pub(super) const FIRE: &str = "fire";
/// Solvents.
pub(super) const SOLVENT: &str = "solvent";
/// Hot days.
pub(super) const HEAT: &str = "heat";
/// Every paper with steps.
pub(super) const ALWAYS: &str = "always";

#[cfg(test)]
mod tests {
    use super::*;
    use crate::sound::people::phrases::Line;
    use crate::sound::text::{Piece, Sentence};

    /// Conditions that a sentence calls for.
    fn called(text: &str) -> Vec<&'static str> {
        let mut pieces = Vec::new();
        for word in text.to_lowercase().split_whitespace() {
            let bare = word.trim_end_matches([',', '.', ':']);
            pieces.push(Piece::Word(bare.to_owned(), None));
            if bare.len() < word.len() {
                pieces.push(Piece::Mark);
            }
        }
        let sentence = Sentence { step: None, pieces };
        let line = Line::of(&sentence);
        CALLS.iter().filter(|(_, phrases)| line.has(phrases)).map(|(name, _)| *name).collect()
    }

    /// A sentence in both languages that calls for a condition and for no other, and one nearby that does not.
    const CASES: &[(&str, &str, &str, &str)] = &[
        ("wet cement", "Mix to slurry.", "Bata hasta lechada.", "Mix the color cards."),
        ("dust", "Never sweep the bay.", "Nunca barra el patio.", "Wash the bay."),
        ("cutting", "Grind the edge wet.", "Esmerile la orilla con agua.", "Ground the frame."),
        ("old base", "Chip off the old plaster.", "Quite el repello viejo.", "Chip off the new crumb."),
        ("mixer", "Clear the paddle.", "Limpie el aspa.", "The tender mixes."),
        ("power", "Plug in beside the door.", "Conecte en la puerta.", "Plug the hole."),
        ("drills", "One breaker for each drill.", "Un interruptor para cada taladro.", "Nothing is drilled."),
        ("lifting", "Set the pallet down.", "Baje la tarima.", "Build it in two lifts."),
        ("height", "Walk the scaffold.", "Recorra el andamio.", "Move the pin on the water ladder."),
        ("overhead", "Go thin on arch heads.", "Vaya delgado en cabezas de arco.", "Walk over to the head."),
        ("forms", "Brace the armature.", "Apuntale la cimbra.", "Form a stone."),
        ("weight", "Read the letter of the engineer.", "Lea la carta del ingeniero.", "Wait for the letter."),
        ("fire", "Mask the firebox.", "Tape el hogar.", "Mask the box."),
        ("solvent", "Roll the solvent on.", "Ponga el solvente.", "Roll the primer on."),
        ("acid", "Rinse the acid off.", "Enjuague el ácido.", "Rinse it off."),
        ("heat", "On hot days start early.", "En días de calor empiece temprano.", "Keep it from dry heat."),
    ];

    #[test]
    fn each_condition_is_called_by_its_words_and_no_other() {
        for (name, english, spanish, near) in CASES {
            assert_eq!(called(english), [*name], "{english}");
            assert_eq!(called(spanish), [*name], "{spanish}");
            assert_eq!(called(near), Vec::<&str>::new(), "{near}");
        }
        let tested: Vec<&str> = CASES.iter().map(|(name, ..)| *name).collect();
        let all: Vec<&str> = CALLS.iter().map(|(name, _)| *name).collect();
        assert_eq!(tested, all, "every condition has its sentences");
    }

    /// A caution may only name a condition that something can call for, and every such condition can be named.
    #[test]
    fn the_reader_knows_the_same_conditions() {
        let reader = include_str!("../../read/caution.rs");
        let table = reader.split("CONDITIONS: &[&str] = &[").nth(1).and_then(|t| t.split("];").next()).unwrap();
        let words: Vec<&str> = table.split('"').skip(1).step_by(2).collect();
        let mut own: Vec<&str> = CALLS.iter().map(|(name, _)| *name).collect();
        own.push(ALWAYS);
        assert_eq!(words, own);
    }
}
