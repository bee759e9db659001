//! Puts heading levels in order before a document is set.
//!
//! A reader by ear moves from heading to heading, and a level that is skipped
//! reads as a missing part; the typesetter refuses such a document. The title of
//! a face or a chapter is level 1, so what an author wrote starts at 2.

use super::payload::{Block, Book, Run};

/// Settles every face of a run.
pub fn run(run: &Run) -> Run {
    let mut run = run.clone();
    for face in &mut run.faces {
        blocks(&mut face.blocks, &mut 1);
    }
    run
}

/// Settles every chapter of a book.
pub fn book(book: &Book) -> Book {
    let mut book = book.clone();
    for chapter in &mut book.chapters {
        blocks(&mut chapter.blocks, &mut 1);
    }
    book
}

fn blocks(list: &mut [Block], before: &mut u8) {
    for block in list {
        match block {
            Block::Heading { level, .. } => {
                *level = (*level).clamp(2, 6).min(*before + 1);
                *before = *level;
            }
            Block::Steps { items, .. } | Block::List { items } => {
                for item in items {
                    blocks(item, before);
                }
            }
            // The first line of these is set as a big value, not as a heading.
            Block::Key { blocks: inner } | Block::Stop { blocks: inner, .. } => {
                let skip = usize::from(matches!(inner.first(), Some(Block::Heading { .. })));
                blocks(&mut inner[skip..], before);
            }
            Block::Quote { blocks: inner, .. } | Block::Strip { blocks: inner } => blocks(inner, before),
            Block::Cautions { items } => {
                for item in items {
                    blocks(&mut item.blocks, before);
                }
            }
            _ => {}
        }
    }
}
