use super::block::{Block, BlockKind, Doc, Inline};
use super::render::{Options, Prepared, render};
use super::trial::{ENGLISH, SPANISH, body, demo, scope};
use crate::finding::Finding;

fn good(text: &str) -> Doc {
    let (scope, tally) = scope();
    render(&body(text), &scope, &tally, ENGLISH, Options::default()).unwrap_or_else(|f| panic!("{text}: {f:#?}"))
}

fn bad(text: &str) -> Vec<Finding> {
    let (scope, tally) = scope();
    render(&body(text), &scope, &tally, ENGLISH, Options::default()).expect_err(text)
}

/// The author's characters at a finding.
pub(super) fn at(text: &str, f: &Finding) -> String {
    let (span, _) = f.at.as_ref().unwrap();
    assert_eq!(span.file, 7);
    text[span.start as usize - 100..span.end as usize - 100].to_owned()
}

fn one_bad(text: &str) -> (&'static str, String, String, String) {
    let found = bad(text);
    assert_eq!(found.len(), 1, "{found:#?}");
    let f = &found[0];
    (f.name, at(text, f), f.title.clone(), f.help.clone())
}

fn flat(doc: &Doc, words: &[Inline], out: &mut String) {
    for w in words {
        match w {
            Inline::Text(t, _) | Inline::Code(t, _) => out.push_str(t),
            Inline::Strong(i) | Inline::Em(i) | Inline::Link(_, i) => flat(doc, i, out),
            Inline::Break => out.push('\n'),
            Inline::Value(i) => out.push_str(&doc.values[*i].value.text),
            Inline::Name(i, _) => out.push_str(&doc.names[*i]),
            Inline::Bags(n, half, label, _) => out.push_str(&format!("<{n}{} x {label}>", if *half { ".5" } else { "" })),
        }
    }
}

fn texts(doc: &Doc, blocks: &[Block], out: &mut Vec<String>) {
    let line = |words: &[Inline]| {
        let mut s = String::new();
        flat(doc, words, &mut s);
        s.replace('\u{a0}', " ")
    };
    for b in blocks {
        match &b.kind {
            BlockKind::Heading(n, w, _) => out.push(format!("h{n} {}", line(w))),
            BlockKind::Para(w) => out.push(line(w)),
            BlockKind::Steps(n, items) => items.iter().enumerate().for_each(|(i, item)| {
                out.push(format!("{}.", *n as usize + i));
                texts(doc, item, out);
            }),
            BlockKind::List(items) => items.iter().for_each(|item| {
                out.push("-".into());
                texts(doc, item, out);
            }),
            BlockKind::Boxes(boxes) => boxes.iter().for_each(|(n, w)| out.push(format!("[{n}] {}", line(w)))),
            BlockKind::Table(a, head, rows) => {
                out.push(format!("{a:?} {}", head.iter().map(|c| line(c)).collect::<Vec<_>>().join(" | ")));
                rows.iter().for_each(|r| out.push(r.iter().map(|c| line(c)).collect::<Vec<_>>().join(" | ")));
            }
            BlockKind::Quote(tone, b) => {
                out.push(format!("> {tone:?}"));
                texts(doc, b, out);
            }
            BlockKind::Rule => out.push("---".into()),
            BlockKind::Code(c) => out.push(format!("code {c}")),
            BlockKind::Part(name, b) => {
                out.push(format!("({name}"));
                texts(doc, b, out);
                out.push(")".into());
            }
            BlockKind::Asked(name, args) => out.push(format!("ask {name} {args:?}")),
        }
    }
}

fn lines(doc: &Doc) -> Vec<String> {
    let mut out = Vec::new();
    texts(doc, doc.blocks(), &mut out);
    out
}

/// Every copied text of a document is what stands at its place in the file.
fn places_hold(text: &str, doc: &Doc) {
    fn words(text: &str, ws: &[Inline]) {
        for w in ws {
            match w {
                Inline::Text(t, Some(s)) | Inline::Code(t, Some(s)) => {
                    let there = &text[s.start as usize - 100..s.end as usize - 100];
                    if !there.starts_with("{{") && there.len() == t.len() && t != " " {
                        assert_eq!(there, t);
                    }
                }
                Inline::Strong(i) | Inline::Em(i) | Inline::Link(_, i) => words(text, i),
                _ => {}
            }
        }
    }
    fn blocks(text: &str, bs: &[Block]) {
        for b in bs {
            match &b.kind {
                BlockKind::Heading(_, w, _) | BlockKind::Para(w) => words(text, w),
                BlockKind::Steps(_, items) | BlockKind::List(items) => items.iter().for_each(|i| blocks(text, i)),
                BlockKind::Boxes(b) => b.iter().for_each(|(_, w)| words(text, w)),
                BlockKind::Table(_, h, r) => h.iter().chain(r.iter().flatten()).for_each(|w| words(text, w)),
                BlockKind::Quote(_, b) | BlockKind::Part(_, b) => blocks(text, b),
                _ => {}
            }
        }
    }
    blocks(text, doc.blocks());
    for u in doc.values.iter() {
        let there = &text[u.at.start as usize - 100..u.at.end as usize - 100];
        assert!(there.starts_with("{{") && there.ends_with("}}"), "{there}");
    }
}

#[test]
fn values_are_put_back_and_never_read_as_markdown() {
    let text = "# {{ mix.name }}\n\n**{{ batch.loads }}** in the {{ mixer.name }}, {{ batch.start_water | second }}\n";
    let doc = good(text);
    assert_eq!(lines(&doc), ["h1 CARVE-24", "3 loads in the pan *mixer* | 4, 18.45 L"]);
    assert_eq!(doc.values.len(), 2);
    places_hold(text, &doc);
}

#[test]
fn loops_in_tables_keep_their_places() {
    let text = "á\n\n| A | B |\n|---|--:|\n{% for s in site.surfaces %}| {{ s.id }} ñ | {{ s.net_area }} |\n{% endfor %}\n\nafter\n";
    let doc = good(text);
    assert_eq!(lines(&doc), ["á", r#"["left", "right"] A | B"#, "LF-1 ñ | 217.0 ft²", "LF-2 ñ | 217.0 ft²", "after"]);
    places_hold(text, &doc);
    let alone = "| A |\n|---|\n{% for s in site.surfaces %}\n| {{ s.id }} |\n{% endfor %}\nafter\n";
    let crlf = alone.replace('\n', "\r\n");
    assert_eq!(lines(&good(alone)), lines(&good(&crlf)));
    assert_eq!(lines(&good(alone)).len(), 4);
    places_hold(&crlf, &good(&crlf));
}

#[test]
fn conditions_comments_and_raw() {
    let text = "{# not *shown #}\n{% if batch.loads is one %}one{% elif batch.start_water is over(\"4 gal\") %}**over** {{ batch.loads }}{% else %}no{% endif %} {{- mix.name }}\n\n{% raw %}{{ as it is }}{% endraw %}";
    let doc = good(text);
    assert_eq!(lines(&doc), ["over 3 loadsCARVE-24", "{{ as it is }}"]);
    places_hold(text, &doc);
    assert_eq!(lines(&good("{% if batch.start_water is under(\"4 7/8 gal\") %}a{% else %}b{% endif %}")).len(), 1);
    assert_eq!(lines(&good("{% if batch.loads is odd_bags %}odd{% endif %}")), ["odd"]);
    assert_eq!(lines(&good("{% if nowhere is defined %}a{% else %}b{% endif %}")), ["b"]);
    assert_eq!(lines(&good("{% for s in site.surfaces %}{{ loop.index }} {% endfor %}")), ["1 2"]);
}

#[test]
fn fences_hold_markdown_even_inside_a_step() {
    let text = "1. **Water** é\n\n   ```key\n   {{ batch.start_water }}\n\n   never over **{{ batch.limit }}**\n\n   - [ ] today's `start`\n   - [ ] initials\n   ```\n\n2. Go\n\n```stop\n{{ batch.limit }}\n\n- [ ] more\n```\n\n```batch-log rows=12\n```\n\n```elevation surface={{ site.code }}-1\n```\n\n```\nplain {{ mix.limit }}\n```\n";
    for text in [text.to_owned(), text.replace('\n', "\r\n")] {
        let doc = good(&text);
        let got = lines(&doc);
        assert_eq!(
            got[..14],
            [
                "1.",
                "Water é",
                "(key",
                "4 gal 3 qt 1 pt",
                "never over 6 gal",
                "[1] today's start",
                "[2] initials",
                ")",
                "2.",
                "Go",
                "(stop",
                "6 gal",
                "[3] more",
                ")"
            ]
        );
        assert_eq!(got[14..16], [r#"ask batch-log [("rows", "12")]"#, r#"ask elevation [("surface", "LF-1")]"#]);
        assert!(got[16].replace('\u{a0}', " ").starts_with("code plain 2 gal"));
        places_hold(&text, &doc);
        assert_eq!(doc.values.len(), 4);
    }
}

#[test]
fn filters_and_bags() {
    let t = "{{ batch.mortar | bags }} {{ mix.mixing | long }} {{ mix.limit | both }} {{ mix.limit | metric }} {{ mix.limit | exact }} {{ mix.recoat }}";
    assert_eq!(lines(&good(t)), ["<3 x 80 lb> 4 minutes 2 gal (7.55 L) 7.55 L 2 gal 48 h"]);
    assert_eq!(lines(&good("{% set w = mix.limit %}{{ w | us }} {{ fixed(\"15 min\", because=\"sheet\") }}")), ["2 gal 15 min"]);
    assert_eq!(lines(&good("{{ mix.name | lower }}")), ["carve-24"]);
    let (scope, tally) = scope();
    let prepared = Prepared::new(&body("{{ mix.mixing | long }}\n\n- [ ] a")).unwrap();
    let es = prepared.render(&scope, &tally, SPANISH, Options { boxes_before: 4 }).unwrap();
    assert_eq!(lines(&es), ["4 minutos", "[5] a"]);
    assert!(prepared.render(&scope, &tally, ENGLISH, Options::default()).is_ok());
}

#[test]
fn mistakes_are_told_at_the_authors_characters() {
    let cases: &[(&str, &str, &str, &str)] = &[
        ("é {{ mix.start_watr | second }}", "slot-unknown", "mix.start_watr", "did you mean `start_water`?"),
        ("{{ mixs.limit }}", "slot-unknown", "mixs.limit", "did you mean `mix`?"),
        ("{% for s in site.surfaces %}{{ s.nett_area }}{% endfor %}", "slot-unknown", "s.nett_area", "did you mean `net_area`?"),
        ("{% for s in site.surface %}{{ s.id }}{% endfor %}", "slot-unknown", "site.surface", "did you mean `surfaces`?"),
        ("a {{ mix.limit | secnd }}", "filter-unknown", "secnd", "did you mean `second`?"),
        ("{% if batch.loads is won %}x{% endif %}", "test-unknown", "won", ""),
        ("{{ mix.limit * 2 }}", "slot-arithmetic", "*", ""),
        ("{% if batch.loads > 1 %}x{% endif %}", "slot-comparison", ">", ""),
        ("{% if batch.loads == 1 %}x{% endif %}", "slot-comparison", "==", ""),
        ("{% if batch.loads == mix.name %}x{% endif %}", "slot-comparison", "batch.loads", ""),
        ("{% if batch.limit is over(\"5 in\") %}x{% endif %}", "comparison-mixed", "", "compare it with a volume"),
        ("{% if batch.limit is over(\"5\") %}x{% endif %}", "comparison-unreadable", "\"5\"", ""),
        ("{{ fixed(\"15 min\") }}", "fixed-without-reason", "{{ fixed(\"15 min\") }}", ""),
        ("{{ fixed(\"15 mn\", because=\"x\") }}", "fixed-unreadable", "", ""),
        ("{{ mix }}", "slot-group", "{{ mix }}", ""),
        ("{{ site.surfaces }}", "slot-group", "", ""),
        ("{{ 5 }} gal", "slot-number", "{{ 5 }}", ""),
        ("{{ mix.limit | second | us }}", "filters-clash", "", ""),
        ("{{ mix.name | metric }}", "filter-without-figure", "", ""),
        ("{{ mix.limit | bags }}", "bags-of-what", "", ""),
        ("{{ mix.limit.exact }}", "slot-inside", "", ""),
        ("{{ mix.limit ~ \" all\" }}", "slot-joined", "mix.limit", ""),
        ("{{ mix.limit ", "tag-torn", "{{ mix.limit ", ""),
        ("{{ mix.limit | }}", "slot-syntax", "", ""),
        ("{{ mix.nope | default(value=\"x\") }}", "filter-unknown", "default", ""),
        ("{{ }}", "slot-empty", "{{ }}", ""),
        ("{% if mix.limit %}x", "slot-syntax", "", ""),
        ("{% include \"x\" %}", "tag-unknown", "include", ""),
        ("{{ range(end=4) }}", "function-unknown", "range", ""),
        ("```laddr\n```\n", "fence-unknown", "laddr", "did you mean `ladder`?"),
        ("```batch-log row=12\n```\n", "fence-argument", "row=12", ""),
        ("```cautions\nhello\n```\n", "fence-filled", "", ""),
        ("a <b>x", "markdown-unprinted", "<b>", ""),
        ("![x](y.png)", "markdown-unprinted", "", ""),
        ("x \u{f0000}", "character-unprintable", "\u{f0000}", ""),
    ];
    for (text, name, place, help) in cases {
        let (n, a, title, h) = one_bad(text);
        assert_eq!(n, *name, "{text}: {title}");
        assert!(!a.is_empty(), "{text}");
        assert!(place.is_empty() || a == *place, "{text}: at `{a}`");
        assert!(help.is_empty() || h == *help, "{text}: help `{h}`");
        assert!(!title.ends_with('.') && !title.to_lowercase().contains("invalid"), "{title}");
    }
}

#[test]
fn all_mistakes_come_at_once() {
    let text = "{{ mix.a }} {{ mix.b }} {{ mix.limit | bags }}\n\n```laddr\n```\n";
    let names: Vec<&str> = bad(text).iter().map(|f| f.name).collect();
    assert_eq!(names, ["slot-unknown", "slot-unknown", "bags-of-what", "fence-unknown"]);
    assert_eq!(bad("{{ a | x }} {{ b | }} {{ | }} {{ 1 + 2 }}").len(), 4);
    assert_eq!(bad("{% for s in site.surfaces %}{{ s.what | bags }}{% endfor %}").len(), 1);
}

#[test]
fn the_demo_renders() {
    let (scope, tally) = scope();
    for (path, body, voice) in demo() {
        let doc = render(&body, &scope, &tally, voice, Options::default()).unwrap_or_else(|f| panic!("{}: {f:#?}", path.display()));
        let crlf = crate::job::Body { text: body.text.replace('\n', "\r\n"), ..body };
        let twin = render(&crlf, &scope, &tally, voice, Options::default()).unwrap();
        assert_eq!(lines(&doc), lines(&twin), "{}", path.display());
    }
}

#[test]
fn other_markdown_keeps_its_shape() {
    let text = "## Heat {#heat}\n\n> [!WARNING]\n> Hot {{ mix.name }}\n\n> plain\n\n---\n\n- a\n  - b *c* [d](x#{{ site.code }})\n- [ ] e\n- f\n\n1. [ ] g\n\n&amp; `{{ mix.step }} x`\n\n<!-- mine {{ mix.step }} -->\n";
    let doc = good(text);
    let want = [
        "h2 Heat",
        "> Some(\"caution\")",
        "Hot CARVE-24",
        "> None",
        "plain",
        "---",
        "-",
        "a",
        "-",
        "b c d",
        "[1] e",
        "-",
        "f",
        "1.",
        "[2] g",
    ];
    assert_eq!(lines(&doc)[..15], want);
    assert!(matches!(&doc.blocks()[0].kind, BlockKind::Heading(2, _, Some(id)) if id == "heat"));
    assert_eq!(lines(&doc).last().map(String::as_str), Some("& 1 cup x"));
    // What a comment of the author's holds is not printed, so it is no value of the page.
    assert_eq!(doc.values.len(), 1);
    places_hold(text, &doc);
}

#[test]
fn a_missing_figure_is_told_once() {
    let (mut scope, tally) = scope();
    scope.root.put("gone", crate::tally::Slot::figure("made/gone"));
    let text = "é {{ gone }}{% for s in site.surfaces %}{{ s.gone }}{% endfor %}";
    let found = render(&body(text), &scope, &tally, ENGLISH, Options::default()).expect_err("gone");
    assert_eq!(
        found.iter().map(|f| (f.name, at(text, f))).collect::<Vec<_>>(),
        [("slot-unknown", "s.gone".to_owned()), ("slot-unfilled", "{{ gone }}".to_owned())]
    );
    let test = "{% if gone is over(\"5 gal\") %}x{% endif %}";
    let found = render(&body(test), &scope, &tally, ENGLISH, Options::default()).expect_err("gone");
    assert_eq!(found.iter().map(|f| f.name).collect::<Vec<_>>(), ["slot-unfilled"]);
}
