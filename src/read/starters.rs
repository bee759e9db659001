//! Starter files for a new job folder: front matter from the field tables, every key with its meaning beside
//! it; cards, cautions and procedures as the demo has them.

use std::fmt::Write;

use super::field::{Field, Need, Want};
use super::kinds::{FORMAT, of_word};

/// Values that differ from the examples of the tables, by key path.
type Values = &'static [(&'static str, &'static str)];

macro_rules! texts {
    ($($path:literal),* $(,)?) => {
        &[$(($path, include_str!(concat!("../../content/", $path)))),*]
    };
}

/// Files that serve any job as they are.
static WHOLE: &[(&str, &str)] = texts![
    "cards/batch-log.md",
    "cards/half-load.es.md",
    "cards/half-load.md",
    "cards/ladder.es.md",
    "cards/ladder.md",
    "cards/mud.es.md",
    "cards/mud.md",
    "cards/pocket.es.md",
    "cards/pocket.md",
    "cards/yard-list.md",
    "cautions/acid.es.md",
    "cautions/acid.md",
    "cautions/circuits.es.md",
    "cautions/circuits.md",
    "cautions/dust.es.md",
    "cautions/dust.md",
    "cautions/electric.es.md",
    "cautions/electric.md",
    "cautions/eyes.es.md",
    "cautions/eyes.md",
    "cautions/fire.es.md",
    "cautions/fire.md",
    "cautions/forms.es.md",
    "cautions/forms.md",
    "cautions/grinding.es.md",
    "cautions/grinding.md",
    "cautions/heat.es.md",
    "cautions/heat.md",
    "cautions/lifting.es.md",
    "cautions/lifting.md",
    "cautions/old-base.es.md",
    "cautions/old-base.md",
    "cautions/overhead.es.md",
    "cautions/overhead.md",
    "cautions/paddle.es.md",
    "cautions/paddle.md",
    "cautions/scaffold-and-falls.es.md",
    "cautions/scaffold-and-falls.md",
    "cautions/skin.es.md",
    "cautions/skin.md",
    "cautions/solvent.es.md",
    "cautions/solvent.md",
    "cautions/weight.es.md",
    "cautions/weight.md",
    "chapters/in-force.es.md",
    "chapters/in-force.md",
    "chapters/safety.es.md",
    "chapters/safety.md",
    "chapters/water.es.md",
    "chapters/water.md",
    "chapters/worksheets.es.md",
    "chapters/worksheets.md",
    "glossary.es.md",
    "glossary.md",
    "procedures/mix-carve.es.md",
    "procedures/mix-carve.md",
    "procedures/mix-scratch.es.md",
    "procedures/mix-scratch.md",
    "procedures/set-up-mixing-station.es.md",
    "procedures/set-up-mixing-station.md",
];

/// File, kind, values, English body, Spanish title and body.
type Made = (&'static str, &'static str, Values, &'static str, &'static str, &'static str);

const NUMBERS: &str = "Every number above is an example. Put in those of your own mix sheet before anyone mixes.\n";
const NUMBERS_ES: &str = "Cada número del original es un ejemplo. Ponga los de su hoja de mezcla antes de que alguien mezcle.\n";

const ORDER: &str = "Where papers or people disagree, the higher line wins.\n\n\
     1. The law, the engineer with a license and the competent person on site.\n\
     2. Data sheets of safety and of the mix, and the manuals of appliance, mixer and scaffold.\n\
     3. The approved panel, for looks and rates only.\n\
     4. This book and the cards.\n\
     5. Habit.\n";
const ORDER_ES: &str = "Si papeles o gente se contradicen, gana el renglón de arriba.\n\n\
     1. La ley, el ingeniero con licencia y la persona competente en la obra.\n\
     2. Las hojas de seguridad y de la mezcla, y los manuales del aparato, la mezcladora y el andamio.\n\
     3. El panel aprobado, solo para el aspecto y el ritmo.\n\
     4. Este libro y las tarjetas.\n\
     5. La costumbre.\n";

static MADE: &[Made] = &[
    (
        "company",
        "company",
        &[
            (
                "people",
                "\n  EST: {role: estimator, languages: [en]}\
                 \n  LEAD: {role: lead, languages: [en, es]}\
                 \n  MUD: {role: mixer tender, languages: [es]}\
                 \n  APP1: {role: applier and carver, languages: [es]}\
                 \n  TRN: {role: trainer, languages: [en, es]}",
            ),
            ("mixers.pan45.name_es", "mezcladora de paletas"),
            (
                "measures",
                "\n  pail: {holds: 5 gal, marked: 1 qt}\
                 \n  jug: {holds: 1 gal, marked: 1 cup}",
            ),
            ("scale", "{holds: 132 lb, marked: 0.1 lb}"),
            ("reserve", "{share: 5 %, least: 1 load}"),
        ],
        ORDER,
        "",
        ORDER_ES,
    ),
    ("mixes/carve-24", "mix", &[("additive.name_es", "aditivo"), ("written_by", "TRN"), ("approved_by", "LEAD")], NUMBERS, "", NUMBERS_ES),
    (
        "mixes/scratch-15",
        "mix",
        &[
            ("name", "SCRATCH-15"),
            ("coat", "scratch"),
            ("additive.bag", "15 lb"),
            ("additive.name_es", "aditivo"),
            ("mortar.bag", "70 lb"),
            ("mortar_to_additive", "14:3 by mass"),
            ("air", "7 %"),
            ("water.start", "1 gal 1 qt"),
            ("water.least", "1 gal 1 pt"),
            ("water.limit", "1 gal 1 qt 1 pt 1 cup"),
            ("open_time", "60 min at 70 °F"),
            ("thickness", "3/8 in to 1/2 in"),
            ("lift", "1/2 in"),
            ("rake", "rough"),
            ("recoat", "48 h"),
            ("written_by", "TRN"),
            ("approved_by", "LEAD"),
        ],
        NUMBERS,
        "",
        NUMBERS_ES,
    ),
    (
        "sites/example",
        "site",
        &[
            ("crew", "[LEAD, MUD, APP1]"),
            // A framed wall would need an engineer's letter before anything is printed.
            ("base.kind", "solid"),
            ("base.what", "concrete block, clean and sound"),
            ("mixes.scratch", "SCRATCH-15"),
            ("scratch", "\n  thickness: 1/2 in\n  key: 1/8 in\n  waste: {drop: 5 %}"),
            ("textures.rubble.least", "3/8 in"),
            ("textures.rubble.fill", "62 %"),
            ("textures.rubble.waste.carve", "12 %"),
            (
                "safety",
                "\n  dust_plan: the exposure plan of this site, and where it hangs\
                 \n  eyewash: the eyewash, and where it stands\
                 \n  wash: wash water, soap and towels, and where they stand\
                 \n  ground_fault: yes\
                 \n  wash_out: a lined tub, and who hauls it off",
            ),
            ("surfaces.EX-1.what_es", "pared de la chimenea"),
            ("details", "{scratch_state: \"damp, dark, no shine\"}"),
            ("written_by", "EST"),
            ("approved_by", "LEAD"),
        ],
        "What this site is, and what can hurt here.\n\n```elevation surface=EX-1\n```\n",
        "",
        "Qué es esta obra, y qué puede lastimar aquí.\n\n```elevation surface=EX-1\n```\n",
    ),
    (
        "handbook",
        "handbook",
        &[(
            "chapters",
            "\n  - {id: who, title: Who decides what, title_es: Quién decide qué, thumb: WHO, from: [company.md]}\
             \n  - {id: safety, title: Safety, title_es: Seguridad, thumb: SAFETY, from: [chapters/safety.md, cautions]}\
             \n  - {id: mixes, title: The mixes, title_es: Las mezclas, thumb: MIXES, from: [mixes, procedures/mix-scratch.md, procedures/mix-carve.md]}\
             \n  - {id: water, title: Water, title_es: El agua, thumb: WATER, from: [chapters/water.md]}\
             \n  - {id: site, title: This job, title_es: Esta obra, thumb: SITE, from: [sites/example.md, takeoff]}\
             \n  - {id: worksheet, title: Worksheets, title_es: Hojas de cálculo, thumb: FIGURES, from: [worksheet]}\
             \n  - {id: words, title: Words we use, title_es: Las palabras que usamos, thumb: WORDS, from: [glossary.md]}\
             \n  - {id: in-force, title: Cards in force, title_es: Tarjetas vigentes, thumb: CARDS, from: [chapters/in-force.md, in force]}",
        )],
        "For the crew of {{ site.name }}. Good until {{ site.good_until }}.\n",
        "Manual de la cuadrilla",
        "Para la cuadrilla de {{ site.name }}. Válido hasta {{ site.good_until }}.\n",
    ),
];

/// Path and text of every file of a new job folder, sorted by path. `good_until` is a date such as
/// `2026-03-31`: the last day on which the example's cards are good.
pub fn starters(good_until: &str) -> Vec<(String, String)> {
    let mut files: Vec<(String, String)> = WHOLE.iter().map(|(p, t)| ((*p).to_owned(), (*t).to_owned())).collect();
    for (path, kind, values, body, title, twin) in MADE {
        let Some(kind) = of_word(kind) else { continue };
        let mut front = format!("---\n# {}\nhodbook: {FORMAT}\nkind: {}\n", kind.meaning, kind.kind);
        write(&mut front, kind.fields, &Given { values, good_until }, "", "");
        files.push((format!("{path}.md"), format!("{front}---\n{body}")));
        let title = kind.title.map_or(String::new(), |key| format!("{key}: {title}\n"));
        let front = format!("---\nhodbook: {FORMAT}\nkind: {}\nlanguage: es\n{title}follows: []\n---\n", kind.kind);
        files.push((format!("{path}.es.md"), format!("{front}{twin}")));
    }
    files.sort();
    files
}

struct Given<'a> {
    values: Values,
    good_until: &'a str,
}

impl Given<'_> {
    fn find(&self, path: &str) -> Option<&str> {
        let set = self.values.iter().find(|(k, _)| *k == path).map(|(_, v)| *v);
        set.or((path == "good_until").then_some(self.good_until))
    }
}

fn below(path: &str, key: &str) -> String {
    if path.is_empty() { key.to_owned() } else { format!("{path}.{key}") }
}

/// A line with its comment in a column of its own.
fn line(out: &mut String, text: &str, meaning: &str) {
    let _ = writeln!(out, "{text:<42} # {meaning}");
}

/// Writes keys with their meaning; a key that may be left out stands as a comment.
fn write(out: &mut String, fields: &[Field], values: &Given<'_>, path: &str, indent: &str) {
    let given = |field: &Field| values.find(&below(path, field.name));
    let value_of = |key: &str| fields.iter().find(|f| f.name == key).map_or("", |f| given(f).unwrap_or(f.example));
    for field in fields {
        let said = given(field);
        let wanted = match field.need {
            Need::Always => true,
            Need::Free => said.is_some(),
            Need::FreeWhen(key, of) => of.contains(&value_of(key)) && said.is_some(),
            Need::When(key, of) => of.contains(&value_of(key)),
            Need::WhenElseFree(key, of) => of.contains(&value_of(key)) || said.is_some(),
        };
        let offered = match field.need {
            Need::Free | Need::WhenElseFree(..) => true,
            Need::FreeWhen(key, of) => of.contains(&value_of(key)),
            Need::Always | Need::When(..) => false,
        };
        let choices = match field.want {
            Want::Choice(words) if words.len() < 8 => format!(" ({})", words.join(", ")),
            _ => String::new(),
        };
        let meaning = format!("{}{choices}", field.meaning);
        if !wanted {
            if offered {
                line(out, &format!("{indent}# {}", super::reader::example(field)), &meaning);
            }
            continue;
        }
        let deeper = format!("{indent}  ");
        let key = format!("{indent}{}:", field.name);
        let path_here = below(path, field.name);
        match (field.want, said) {
            (Want::Group(inner), None) => {
                line(out, &key, &meaning);
                write(out, inner, values, &path_here, &deeper);
            }
            (Want::Map(name, inner), None) => {
                line(out, &key, &meaning);
                let _ = writeln!(out, "{deeper}{name}:");
                write(out, inner, values, &below(&path_here, name), &format!("{deeper}  "));
            }
            (Want::List(inner), None) => {
                line(out, &key, &meaning);
                let mut item = String::new();
                write(&mut item, inner, values, &path_here, &format!("{deeper}  "));
                // The first key stands behind the dash.
                let _ = write!(out, "{deeper}- {}", item.trim_start());
            }
            (_, Some(list)) if list.starts_with('\n') => {
                line(out, &key, &meaning);
                let _ = writeln!(out, "{}", list.trim_start_matches('\n'));
            }
            (want, value) => {
                let value = value.unwrap_or(field.example);
                // A colon inside a value is plain YAML here, but editors colour it as a key.
                let quoted = if matches!(want, Want::Ratio) { format!("\"{value}\"") } else { value.to_owned() };
                line(out, &format!("{key} {quoted}"), &meaning);
                let es = values.find(&below(path, &format!("{}_es", field.name)));
                if let (Want::Words, Some(es)) = (want, es) {
                    line(out, &format!("{indent}{}_es: {es}", field.name), "the same in Spanish");
                }
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::source::Folder;

    #[test]
    fn a_new_folder_reads_back_without_a_finding() {
        let folder = Folder::of(starters("2026-03-31"));
        let (job, findings) = super::super::job(&folder);
        let seen: Vec<String> = findings.iter().map(|f| crate::finding::short(f, &|n| folder.lines(n))).collect();
        assert_eq!(seen, Vec::<String>::new());
        assert_eq!((job.sites.len(), job.mixes.len(), job.cards.len()), (1, 2, 6));
    }
}
