//! No body is too broken: torn at every third character, every mark taken out, pieces thrown together.
#![allow(clippy::disallowed_methods, reason = "a test reads what it compares")]

use super::render::{Options, render};
use super::render_tests::at;
use super::trial::{ENGLISH, body, demo, scope};

#[test]
fn no_body_is_too_broken() {
    let (scope, tally) = scope();
    let mut tried = 0;
    for (path, whole, voice) in demo() {
        let name = path.to_string_lossy().to_string();
        if !["mud.md", "pocket.es.md", "water.md", "half-load.es.md", "larkenfell.md"].iter().any(|n| name.ends_with(n)) {
            continue;
        }
        let mut broken: Vec<String> = Vec::new();
        for (n, (i, c)) in whole.text.char_indices().enumerate() {
            if n % 3 == 0 {
                broken.push(whole.text[..i].to_owned());
            }
            if matches!(c, '{' | '}' | '%' | '|' | '`' | '"' | '(' | ')' | '[' | '*' | '\n') {
                broken.push(format!("{}{}", &whole.text[..i], &whole.text[i + 1..]));
            }
        }
        for text in broken {
            tried += 1;
            let torn = crate::job::Body { text, ..whole.clone() };
            let (digests, slots) = (super::block_digests(&torn), super::slots(&torn));
            assert!(
                digests
                    .iter()
                    .map(|d| d.1)
                    .chain(slots.iter().map(|s| s.2))
                    .all(|s| s.end as usize <= torn.offset as usize + torn.text.len())
            );
            match render(&torn, &scope, &tally, voice, Options::default()) {
                Ok(doc) => {
                    let _ = (super::typed_numbers(&doc, &torn, voice.lang), super::steps(&doc));
                }
                Err(found) => found.iter().for_each(|f| {
                    let (span, _) = f.at.as_ref().unwrap();
                    let at = span.start as usize - torn.offset as usize..span.end as usize - torn.offset as usize;
                    assert!(torn.text.get(at).is_some(), "{}: {f:?}", torn.text);
                }),
            }
        }
    }
    for odd in [
        "{{",
        "}}",
        "{%",
        "{#",
        "{{{{}}}}",
        "{%-",
        "{{-}}",
        "{{--}}",
        "{%%}",
        "`\u{e9}{{\"\\",
        "> ".repeat(3000).as_str(),
        "*a ".repeat(3000).as_str(),
    ] {
        let _ = render(&body(odd), &scope, &tally, ENGLISH, Options::default());
        tried += 1;
    }
    let nested = format!("{{{{ {}mix.limit{} }}}}", "(".repeat(500), ")".repeat(500));
    assert!(render(&body(&nested), &scope, &tally, ENGLISH, Options::default()).is_err());
    assert!(tried > 1000);
}

#[test]
fn soup_of_pieces_never_breaks() {
    const PIECES: &[&str] = &[
        "{{ mix.limit }}",
        "{{ mix.nope }}",
        "{{",
        "}}",
        "{%",
        "%}",
        "{% for s in site.surfaces %}",
        "{% endfor %}",
        "{% if batch.loads is one %}",
        "{% else %}",
        "{% endif %}",
        "{{ s.id }}",
        "{{- batch.mortar | bags -}}",
        "{# é #}",
        "{% raw %}",
        "{% endraw %}",
        "\n",
        "\n\n",
        "\r\n",
        "    ",
        "- [ ] ",
        "1. ",
        "- ",
        "> ",
        "```key\n",
        "```\n",
        "```ladder\n",
        "| a | b |\n|---|---|\n",
        "| ",
        "**",
        "*",
        "`",
        "[",
        "](x)",
        "![",
        "<b>",
        "<!--",
        "-->",
        "&amp;",
        "\\",
        "2 gal",
        "½",
        "1,5",
        "half",
        "é",
        "ñ",
        "\u{a0}",
        "\"",
        "(",
        ")",
        "\t",
        "# ",
        "---\n",
        "~",
        "{#x}",
        "\0",
        "\u{1}L0\u{3}",
        "'",
    ];
    let (scope, tally) = scope();
    let mut seed = 7_u64;
    let mut next = || {
        seed = seed.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        usize::try_from(seed >> 33).unwrap()
    };
    let mut good = 0;
    let rounds = std::env::var("SOUP").ok().and_then(|n| n.parse().ok()).unwrap_or(3000);
    for _ in 0..rounds {
        let text: String = (0..2 + next() % 14).map(|_| PIECES[next() % PIECES.len()]).collect();
        let whole = body(&text);
        let _ = (super::block_digests(&whole), super::slots(&whole));
        match render(&whole, &scope, &tally, ENGLISH, Options::default()) {
            Ok(doc) => {
                good += 1;
                let _ = (super::typed_numbers(&doc, &whole, ENGLISH.lang), super::steps(&doc));
            }
            Err(found) => {
                for f in &found {
                    at(&text, f);
                    assert!(!f.title.contains('\u{1}'), "{text}: {}", f.title);
                }
                assert!(!found.is_empty());
            }
        }
    }
    assert!(good > 100);
}
