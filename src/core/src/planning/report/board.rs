//! One board to cut: its rows, its cuts in order, its bar, and what the letters in it stand for.

use super::bars::{bar, letter};
use super::orders::{Order, orders};
use super::rows::{RowCut, rows};
use super::seen::{How, Seen};
use crate::cutting::Source;
use crate::drawing::Scene;
use crate::job::ItemId;
use crate::measure::Length;

/// One board to cut.
#[derive(Clone, Debug, PartialEq)]
pub struct BoardCut {
    /// From 1, in the order of the plan.
    pub number: u32,
    /// What it is called: a section of the yard, or the name of a board on hand.
    pub name: String,
    /// By its place in the cutting job.
    pub source: Source,
    /// The board of the rack or the yard, where it is one of the job book.
    pub item: Option<ItemId>,
    /// Its whole length.
    pub length: Length,
    /// What comes out of it: name and how many.
    pub parts: Vec<(String, u32)>,
    /// The board, or each of its strips and layers, from its left end to its right.
    pub rows: Vec<RowCut>,
    /// The cuts in order, from the left end.
    pub orders: Vec<Order>,
    /// The bar, to scale along the board.
    pub scene: Scene,
    /// What the letters in the bar stand for.
    pub key: Vec<KeyLine>,
}

/// What a letter in a bar stands for.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct KeyLine {
    /// `A`; the same part has the same letter on every board.
    pub letter: String,
    /// The part.
    pub name: String,
    /// Its length.
    pub length: Length,
    /// Its width, where it is ripped from a wider board.
    pub width: Option<Length>,
    /// How many on this board.
    pub count: u32,
}

/// `window`: how much of board the width of the drawing stands for, where it is not this board's length.
pub(super) fn board_cut(seen: &Seen<'_>, how: How, window: Option<Length>) -> Option<BoardCut> {
    let rows = rows(seen)?;
    let key = key(seen)?;
    let scene = bar(seen, &rows, how.tape, window)?;
    Some(BoardCut {
        number: seen.number,
        name: seen.label.name.clone(),
        source: seen.cut.source,
        item: seen.label.item,
        length: seen.length(seen.view.length)?,
        parts: key.iter().map(|line| (line.name.clone(), line.count)).collect(),
        orders: orders(seen)?,
        rows,
        scene,
        key,
    })
}

fn key(seen: &Seen<'_>) -> Option<Vec<KeyLine>> {
    let mut counts: Vec<(usize, u32)> = Vec::new();
    for placed in seen.cut.placed() {
        match counts.iter_mut().find(|(part, _)| *part == placed.part) {
            Some((_, count)) => *count = count.saturating_add(1),
            None => counts.push((placed.part, 1)),
        }
    }
    crate::order::sort(&mut counts);
    let wide = |section: &str| Some(seen.job.section(section)?.size?.width);
    let line = |(part, count): (usize, u32)| {
        let own = wide(&seen.job.parts.get(part)?.section);
        let width = match own.filter(|own| Some(*own) != wide(seen.view.section)) {
            Some(width) => Some(seen.length(width)?),
            None => None,
        };
        Some(KeyLine {
            width,
            letter: letter(part),
            name: seen.part_name(part)?.to_owned(),
            length: seen.length(seen.job.parts.get(part)?.length)?,
            count,
        })
    };
    counts.into_iter().map(line).collect()
}
