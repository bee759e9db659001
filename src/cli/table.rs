//! Tables of texts: columns as wide as their widest cell, numbers to the right, no line ever wrapped.

use unicode_width::UnicodeWidthStr;

use crate::work::{Align, Table};

use super::paint::{Paint, clean};

/// The table as lines, each with its line end.
pub fn draw(table: &Table, paint: Paint) -> String {
    let heads: Vec<String> = table.columns.iter().map(|(head, _)| clean(head)).collect();
    let cells = |rows: &[Vec<String>]| -> Vec<Vec<String>> { rows.iter().map(|r| r.iter().map(|c| clean(c)).collect()).collect() };
    let (rows, totals) = (cells(&table.rows), cells(&table.totals));
    let columns: Vec<(usize, Align)> =
        table.columns.iter().enumerate().map(|(i, (_, side))| (width(i, &heads, &rows, &totals), *side)).collect();

    let mut out = String::new();
    if !table.title.is_empty() {
        out.push_str(&paint.bold(&clean(&table.title)));
        out.push_str("\n\n");
    }
    let line = |row: &[String]| line(row, &columns);
    let named = heads.iter().any(|h| !h.is_empty());
    if named {
        out.push_str(&line(&heads));
    }
    let rule = columns.iter().map(|(w, _)| w + 2).sum::<usize>().saturating_sub(2);
    if named {
        out.push_str(&rule_line(rule, '─'));
    }
    rows.iter().for_each(|row| out.push_str(&line(row)));
    if !totals.is_empty() {
        out.push_str(&rule_line(rule, '─'));
        totals.iter().for_each(|row| out.push_str(&line(row)));
    }
    for note in &table.notes {
        out.push_str(&clean(note));
        out.push('\n');
    }
    out
}

/// One line a row: the same cells with a tab between, for cutting and sorting.
pub fn short(table: &Table) -> String {
    let row = |row: &Vec<String>| row.iter().map(|c| clean(c)).collect::<Vec<_>>().join("\t") + "\n";
    table.rows.iter().chain(&table.totals).map(row).collect()
}

/// The table as JSON; texts as they stand on paper, no-break spaces included.
pub fn json(table: &Table) -> serde_json::Value {
    serde_json::json!({
        "format": 1,
        "table": table.title,
        "columns": table.columns.iter().map(|(head, _)| head).collect::<Vec<_>>(),
        "rows": table.rows,
        "totals": table.totals,
        "notes": table.notes,
    })
}

fn width(column: usize, heads: &[String], rows: &[Vec<String>], totals: &[Vec<String>]) -> usize {
    let bodies = rows.iter().chain(totals).filter_map(|row| row.get(column));
    heads.get(column).into_iter().chain(bodies).map(|c| c.width()).max().unwrap_or(0)
}

fn rule_line(width: usize, mark: char) -> String {
    let mut line: String = std::iter::repeat_n(mark, width).collect();
    line.push('\n');
    line
}

fn line(row: &[String], columns: &[(usize, Align)]) -> String {
    let mut out = String::new();
    for (i, (width, side)) in columns.iter().enumerate() {
        let cell = row.get(i).map_or("", String::as_str);
        let pad = " ".repeat(width.saturating_sub(cell.width()));
        if i > 0 {
            out.push_str("  ");
        }
        match side {
            Align::Left => out.extend([cell, &pad]),
            Align::Right => out.extend([pad.as_str(), cell]),
        }
    }
    // Blanks at a line's end are noise in a saved file.
    let mut out = out.trim_end().to_owned();
    out.push('\n');
    out
}
