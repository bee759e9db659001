use super::compare::{PHRASES, Verdict, verdict};
use super::numbers::{Typed, typed_numbers};
use super::render::{Options, render};
use super::trial::{ENGLISH, SPANISH, body, demo, scope};
use crate::tally::Voice;

fn audit(text: &str, voice: Voice) -> Vec<Typed> {
    let (scope, tally) = scope();
    let doc = render(&body(text), &scope, &tally, voice, Options::default()).unwrap_or_else(|f| panic!("{text}: {f:#?}"));
    let found = typed_numbers(&doc, &body(text), voice.lang);
    for t in &found {
        let there = &text[t.span.start as usize - 100..t.span.end as usize - 100];
        assert_eq!(there.replace(['*', '\n'], "").replace("  ", " "), t.text, "{text}");
    }
    found
}

fn hits(text: &str) -> Vec<String> {
    audit(text, ENGLISH).into_iter().map(|t| t.text).collect()
}

fn hits_es(text: &str) -> Vec<String> {
    audit(text, SPANISH).into_iter().map(|t| t.text).collect()
}

fn judged(text: &str, voice: Voice) -> Vec<Verdict> {
    let (scope, tally) = scope();
    let plain = |v: Verdict| match v {
        Verdict::DiffersFrom(id, text) => Verdict::DiffersFrom(id, text.replace('\u{a0}', " ")),
        other => other,
    };
    audit(text, voice).iter().map(|t| plain(verdict(t, &scope, &tally, voice, PHRASES))).collect()
}

#[test]
fn the_demo_is_clean() {
    let (scope, tally) = scope();
    let mut found = Vec::new();
    for (path, body, voice) in demo() {
        let doc = render(&body, &scope, &tally, voice, Options::default()).unwrap();
        found.extend(
            typed_numbers(&doc, &body, voice.lang).into_iter().map(|t| format!("{}: `{}` in `{}`", path.display(), t.text, t.around)),
        );
    }
    assert!(found.is_empty(), "{found:#?}");
}

#[test]
fn typed_amounts_are_caught() {
    assert_eq!(hits("Add 2 quarts of water."), ["2 quarts"]);
    assert_eq!(hits("- é add **1 gal 2 qt** and 1 1/2 in, 1½ cups\n"), ["1 gal 2 qt", "1 1/2 in", "1½ cups"]);
    assert_eq!(
        hits("# Wait three hours\n\n| a | two bags |\n|---|---|\n| 5-gal pail | `3 days` |\n"),
        ["three hours", "two bags", "5-gal", "3 days"]
    );
    assert_eq!(
        hits("half a gallon, two and a half gallons, half a bag, a dozen bags"),
        ["half a gallon", "two and a half gallons", "half a bag", "dozen bags"]
    );
    assert_eq!(hits("2 to 3 gal; 2 more quarts; 60%; 70 °F; 5\" thick; 10 sq ft"), ["2", "3 gal", "2", "60%", "70 °F", "5\"", "10 sq ft"]);
    assert_eq!(hits("one more step, in 2 lifts"), ["2 lifts"]);
    assert_eq!(hits("- [ ] 4 gal today\n\n```\nadd 3 cups {{ mix.limit }}\n```\n"), ["4 gal", "3 cups"]);
    assert_eq!(
        hits_es("Mezcle 3 minutos. Eche 1,5 gal. Espere dos días y media hora."),
        ["3 minutos", "1,5 gal", "dos días", "media hora"]
    );
    assert_eq!(hits_es("tres sacos, 2 juegos y medio galón"), ["tres sacos", "2 juegos", "medio galón"]);
    assert_eq!(hits("{{ \"48 hours\" }}{% if mix.name == \"2 gal\" %}{% endif %}"), ["48 hours", "2 gal"]);
}

#[test]
fn names_and_numbers_of_things_are_not_amounts() {
    for text in [
        "Go back to rung 0. Add a step.",
        "See step 3 of P04, surface LF-1, CARVE-24 bags, ASTM C270 mortar bags, page 4 and box 2.",
        "OSHA 29 CFR 1926.451(g)(1) lifts, on 2 Mar 2026 or 2026-03-02 by 7:30, days later",
        "Half load; half the mortar, half of the bag, half this bag.",
        "No one lifts a bag. Each one holds a bag. One of them lifts.",
        "1. a\n2. b\n\n{{ batch.loads }} bags, {{ fixed(\"15 min\", because=\"x\") }} or more",
        "{% if batch.limit is over(\"5 gal\") %}x{% endif %}",
        "Work in two places.",
        "On the 2nd day of May 2026 the bags come",
    ] {
        assert_eq!(hits(text), Vec::<String>::new(), "{text}");
    }
    for text in ["Medio juego en báscula; medio saco.", "Un saco y una carga.", "Mantenga el cuarto cerrado, once"] {
        assert_eq!(hits_es(text), Vec::<String>::new(), "{text}");
    }
}

#[test]
fn verdicts() {
    let differs = |id: &str, text: &str| Verdict::DiffersFrom(format!("made/{id}"), text.to_owned());
    let equals = |id: &str| Verdict::Equals(format!("made/{id}"));
    assert_eq!(judged("Start water is 5 gal.", ENGLISH), [differs("batch.start_water", "4 gal 3 qt 1 pt")]);
    assert_eq!(judged("Start water is 4 7/8 gal.", ENGLISH), [equals("batch.start_water")]);
    assert_eq!(judged("Never over 7 gal.", ENGLISH), [differs("batch.limit", "6 gal")]);
    assert_eq!(judged("The limit is 2 gal per load.", ENGLISH), [equals("mix.limit")]);
    assert_eq!(judged("Mix 3 minutes.", ENGLISH), [differs("mix.mixing", "4 min")]);
    assert_eq!(judged("Bata 4 minutos.", SPANISH), [equals("mix.mixing")]);
    assert_eq!(judged("El límite es 7.55 L por juego.", SPANISH), [equals("mix.limit")]);
    assert_eq!(judged("Add 2 quarts of water.", ENGLISH), [differs("batch.step", "1 pt 1 cup")]);
    assert_eq!(judged("Have 3 quarts of water to drink.", ENGLISH), [Verdict::Water]);
    assert_eq!(judged("Wait 3 hours. The panel is 48 in wide.", ENGLISH), [Verdict::Other, Verdict::Other]);
    assert_eq!(judged("It weighs 80 lb.", ENGLISH), [equals("mix.mortar_bag")]);
    assert_eq!(judged("Half load: start water 2 gal.", ENGLISH), [differs("mix.half.start_water", "3 qt 1 cup")]);
    assert_eq!(
        judged("| What | Per load |\n|---|---|\n| Start water | 3 gal |\n", ENGLISH),
        [differs("mix.start_water", "1 gal 2 qt 1 pt")]
    );
    assert_eq!(judged("Put three loads in.", ENGLISH), [equals("batch.loads")]);
    assert_eq!(judged("The limit, in all, is 5 gal.", ENGLISH), [differs("batch.limit", "6 gal")]);
    assert_eq!(judged("Coat 3/8 in thick.", ENGLISH), [equals("mix.thickness_least")]);
    assert_eq!(judged("Coat 4 in thick.", ENGLISH), [differs("mix.thickness_most", "2 3/4 in")]);
    assert_eq!(judged("Set pins 2 ft apart at most. Wait 20 minutes, then mix.", ENGLISH), [Verdict::Other, Verdict::Other]);
    assert_eq!(judged("Agregue 2 tazas de agua.", SPANISH), [differs("batch.step", "1 pt 1 taza")]);
}
