//! The bar of a board: to scale along it, one row for each strip or layer.
//!
//! Across, a row is as high as its writing needs: a strip to scale would be too thin to read. A part has its name in it
//! where that fits, else its letter, else nothing; the key below the bar lists every letter.

use super::rows::{RowCut, What};
use super::seen::Seen;
use crate::drawing::{Board, Role, Scene, Shape, Size};
use crate::measure::{Length, Tape};
use crate::say;

/// Height of a bar, of a bar of blocks, of a line of writing above it, and the space below, in page units.
const BAR: f64 = 30.0;
const BLOCKS: f64 = 62.0;
const LINE: f64 = 17.0;
const SPACE: f64 = 7.0;

/// A cut is drawn at least this wide, so that it can be seen.
const THINNEST: f64 = 1.4;

/// Draws the bar of a board, where `window` of board fills the width.
pub(super) fn bar(
    seen: &Seen<'_>,
    rows: &[RowCut],
    tape: Tape,
    window: Option<Length>,
) -> Option<Scene> {
    let length = seen.length(seen.view.length)?;
    let titled = rows.iter().any(|row| !row.title.0.is_empty());
    let heights: Vec<f64> = rows.iter().map(height).collect();
    let line = if titled { LINE } else { 0.0 };
    let high: f64 = heights.iter().map(|height| height + line + SPACE).sum();
    let mut board = Board::along(tape, window.unwrap_or(length), high, 1, 1);
    board.dimension(-1, Length::ZERO, length);
    let mut top = board.top();
    for (row, height) in rows.iter().zip(&heights) {
        if titled {
            let x = board.x(Length::ZERO);
            let words = row.title.on(tape);
            board.row_of(x, top + 12.0, words);
            top += LINE;
        }
        draw_row(&mut board, row, top, *height, seen);
        top += height + SPACE;
    }
    if let [only] = rows {
        let ends: Vec<(Length, String)> = only
            .stretches
            .iter()
            .filter(|stretch| matches!(stretch.what, What::Part { .. } | What::Block { .. }))
            .map(|stretch| (stretch.to, board.amount(stretch.to)))
            .collect();
        board.labels(0, &ends);
    }
    let pieces = u32::try_from(seen.cut.placed().len()).unwrap_or(u32::MAX);
    let many = if pieces == 1 { " piece from the left end." } else { " pieces from the left end." };
    let name = format!("Board {}, {}, ", seen.number, seen.label.name);
    Some(board.scene(say![name, length, ": ", pieces, many]))
}

fn height(row: &RowCut) -> f64 {
    let is_block = |what: &What| matches!(what, What::Block { .. });
    if row.stretches.iter().any(|stretch| is_block(&stretch.what)) { BLOCKS } else { BAR }
}

fn draw_row(board: &mut Board, row: &RowCut, top: f64, height: f64, seen: &Seen<'_>) {
    for stretch in &row.stretches {
        let left = board.x(stretch.from);
        let wide = board.x(stretch.to) - left;
        let role = match &stretch.what {
            What::Part { .. } | What::Block { .. } => Role::Wood,
            What::Kerf => continue,
            What::Trim => Role::Waste,
            What::Knot => Role::KeepOut,
            What::Leftover => Role::Mate,
        };
        board.add(role, Shape::Rect(left, top, wide, height));
        match &stretch.what {
            What::Part { part, name } => {
                write(board, *part, name, (left, top, wide, height));
            }
            What::Block { parts, .. } => draw_block(board, seen, parts, (left, top, wide, height)),
            _ => {}
        }
    }
    // On top of the wood, because a cut is drawn wider than it is where it would not be seen.
    for stretch in row.stretches.iter().filter(|stretch| stretch.what == What::Kerf) {
        let left = board.x(stretch.from);
        let wide = (board.x(stretch.to) - left).max(THINNEST);
        board.add(Role::Kerf, Shape::Rect(left, top, wide, height));
    }
}

/// The parts of a block, across it to scale.
fn draw_block(
    board: &mut Board,
    seen: &Seen<'_>,
    parts: &[(usize, String, Length)],
    (left, top, wide, height): (f64, f64, f64, f64),
) {
    let size = seen.section.size.map_or(Length::ZERO, |size| size.1);
    let scale = height / size.to_f64().max(1e-9);
    let kerf = seen.job.saw.rip.as_ref().and_then(|rip| seen.length(rip.kerf));
    let kerf = kerf.map_or(0.0, Length::to_f64) * scale;
    let near = seen.job.saw.rip.as_ref().and_then(|rip| seen.length(rip.near_edge));
    let near = near.map_or(0.0, Length::to_f64) * scale;
    if near > 0.0 {
        board.add(Role::Waste, Shape::Rect(left, top, wide, near));
    }
    let mut y = top + near;
    for (part, name, across) in parts {
        let high = (across.to_f64() * scale).min(top + height - y);
        write(board, *part, name, (left, y, wide, high));
        let line = kerf.max(THINNEST).min((top + height - y - high).max(0.0));
        board.add(Role::Kerf, Shape::Rect(left, y + high, wide, line));
        y += high + kerf;
    }
    if y < top + height {
        board.add(Role::Mate, Shape::Rect(left, y, wide, top + height - y));
    }
}

/// The name of a part in its place, or its letter, or nothing.
fn write(
    board: &mut Board,
    part: usize,
    name: &str,
    (left, top, wide, height): (f64, f64, f64, f64),
) {
    if height < Size::Small.height() + 1.0 {
        return;
    }
    let fits = |words: &str| Size::Small.width_of(words, Role::StrongInk) + 6.0 < wide;
    let short = letter(part);
    let words = match fits(name) {
        true => name.to_owned(),
        false if fits(&short) => short,
        false => return,
    };
    let (x, y) = (left + wide / 2.0, top + height / 2.0 + 4.5);
    board.number(Role::StrongInk, x, y, words);
}

/// A to Z, then AA and so on.
pub(super) fn letter(part: usize) -> String {
    let last = char::from(b'A' + u8::try_from(part % 26).unwrap_or(0));
    match part / 26 {
        0 => last.to_string(),
        more => format!("{}{last}", letter(more - 1)),
    }
}
