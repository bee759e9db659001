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
        settle(&mut face.blocks);
    }
    run
}

/// Settles every chapter of a book.
pub fn book(book: &Book) -> Book {
    let mut book = book.clone();
    for chapter in &mut book.chapters {
        settle(&mut chapter.blocks);
    }
    book
}

/// The highest heading becomes level 2 and the others keep their distance from it, so that like stays like.
fn settle(list: &mut [Block]) {
    let levels = list.iter().filter_map(|b| if let Block::Heading { level, .. } = b { Some(*level) } else { None });
    let raise = levels.min().map_or(0, |least| least.saturating_sub(2));
    blocks(list, &mut 1, raise);
}

fn blocks(list: &mut [Block], before: &mut u8, raise: u8) {
    for block in list {
        match block {
            Block::Heading { level, .. } => {
                *level = level.saturating_sub(raise).clamp(2, 6).min(*before + 1);
                *before = *level;
            }
            Block::Steps { items, .. } | Block::List { items } => {
                for item in items {
                    blocks(item, before, raise);
                }
            }
            // The first line of these is set as a big value, not as a heading.
            Block::Key { blocks: inner } | Block::Stop { blocks: inner, .. } => {
                let skip = usize::from(matches!(inner.first(), Some(Block::Heading { .. })));
                blocks(&mut inner[skip..], before, raise);
            }
            Block::Quote { blocks: inner, .. } | Block::Strip { blocks: inner } => blocks(inner, before, raise),
            Block::Cautions { items } => {
                for item in items {
                    blocks(&mut item.blocks, before, raise);
                }
            }
            _ => {}
        }
    }
}
