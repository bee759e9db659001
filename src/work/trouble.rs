//! The trouble chapter of the book: the checks' own pages, in the crew's language, and what was accepted on this site.

use serde_json::json;

use crate::finding::{Finding, Severity};
use crate::press::payload::{Align, Block, Inline};
use crate::sound::ids::FAMILIES;
use crate::sound::{CHECKS, page};
use crate::words::Lang;

/// Anchors of the checks' headings begin with this; the index leaves them out, a hundred conditions help nobody there.
pub const CHECK: &str = "check-";

/// Name of the place where the accepted findings go: they are known when every check has run.
const PLACE: &str = "accepted";

/// The chapter: what was accepted, then the families a crew can do something about, each check with why and what to do.
/// Checks of the paper itself and of logs and classes are for who writes them.
pub fn chapter(lang: Lang) -> Vec<Block> {
    let mut blocks = vec![Block::para(vec![Inline::text(lang.text("trouble.intro"))])];
    blocks.push(Block::Drawing { name: PLACE.into(), alt: String::new(), data: json!({}) });
    for (letter, _, _) in FAMILIES.iter().filter(|(letter, _, _)| lang.has(&format!("trouble.{letter}"))) {
        let own = CHECKS.iter().filter(|c| c.ids.first().is_some_and(|id| id.starts_with(*letter)));
        let told: Vec<Block> = own
            .filter_map(|check| Some((check.name, check.severities.first()?, page(check, lang)?)))
            .flat_map(|(n, s, p)| entry(n, *s, &p, lang))
            .collect();
        if !told.is_empty() {
            blocks.push(Block::heading(2, lang.text(&format!("trouble.{letter}"))));
            blocks.extend(told);
        }
    }
    blocks
}

fn entry(name: &str, severity: Severity, page: &page::Page, lang: Lang) -> Vec<Block> {
    let strong = |text: String| Inline::Strong { c: vec![Inline::text(&text)] };
    let word = match severity {
        Severity::Stop => lang.text("severity.stop"),
        Severity::Hold => lang.text("severity.hold"),
        Severity::Warn => lang.text("severity.warn"),
        Severity::Note => lang.text("severity.note"),
    };
    vec![
        Block::Heading { level: 3, text: vec![Inline::text(&format!("{word}: {}", page.title))], id: format!("{CHECK}{name}") },
        Block::para(vec![
            Inline::text(&format!("{} ", page.why)),
            strong(lang.text("manual.todo").to_owned()),
            Inline::text(&format!(" {}", page.todo)),
        ]),
    ]
}

/// Puts the accepted findings where the chapter left room for them; nothing where nothing was accepted.
pub fn fill(blocks: &mut Vec<Block>, accepted: &[&Finding], lang: Lang) {
    let Some(at) = blocks.iter().position(|b| matches!(b, Block::Drawing { name, .. } if name == PLACE)) else { return };
    let cell = |text: &str| vec![Inline::text(text)];
    let rows: Vec<_> = accepted
        .iter()
        .filter_map(|f| f.accepted.as_ref().map(|a| (f, a)))
        .map(|(f, a)| vec![cell(f.name), cell(a.value.as_deref().unwrap_or("")), cell(&a.by), cell(&a.because)])
        .collect();
    let mut made = Vec::new();
    if !rows.is_empty() {
        // The other headings got their anchors when the chapter was made.
        let text = vec![Inline::text(lang.text("trouble.accepted"))];
        made.push(Block::Heading { level: 2, text, id: "accepted".to_owned() });
        let head = ["trouble.what", "trouble.value", "trouble.by", "trouble.because"].map(|k| cell(lang.text(k))).to_vec();
        made.push(Block::Table { align: vec![Align::Left; 4], head, rows, caption: None });
    }
    blocks.splice(at..=at, made);
}
