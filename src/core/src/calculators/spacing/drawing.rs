//! The board with its marks or slats, read from both ends, and the zones to keep out of.

use super::fields::{
    GREATEST_GAP, LEFT_END, LEFT_SLAT, LENGTH, RIGHT_END, RIGHT_SLAT, SLAT_GAP, SLAT_WIDTH, STEP,
};
use super::{Answer, Input, Wish};
use crate::drawing::{Board, Role, Scene, Shape, Size};
use crate::measure::{Length, Rounding, text::show};
use crate::say;
use crate::sentence::counted;
use crate::sheet::Bench;

/// Height of the board in page units.
const HIGH: f64 = 64.0;

/// Radius of a mark in page units.
const DOT: f64 = 3.5;

/// Draws the board from the front, the left end on the left.
pub(super) fn draw(input: &Input, answer: &Answer, bench: &Bench) -> Scene {
    let rows = if is_crowded(input, answer, bench) { 2 } else { 1 };
    let mut board = Board::along(bench.tape, input.length, HIGH, rows + 1, rows + 1);
    let (top, bottom) = (board.top(), board.bottom());
    let across = |board: &mut Board, role, from: Length, to: Length, y: f64, high: f64| {
        let (x1, x2) = (board.x(from), board.x(to));
        board.add(role, Shape::Rect(x1, y, (x2 - x1).max(0.0), high));
    };
    match input.wish.slat_width() {
        None => across(&mut board, Role::Wood, Length::ZERO, input.length, top, HIGH),
        Some(width) => {
            // The rail that the slats lie on.
            across(
                &mut board,
                Role::Mate,
                Length::ZERO,
                input.length,
                top + HIGH * 0.4,
                HIGH * 0.2,
            );
            for mark in &answer.marks {
                if let Ok(right) = *mark + width {
                    across(&mut board, Role::Wood, *mark, right, top, HIGH);
                }
            }
        }
    }
    for zone in &answer.keep_out {
        let (from, to) = (zone.from.max(Length::ZERO), zone.to.min(input.length));
        across(&mut board, Role::KeepOut, from, to, top, HIGH);
    }
    let middle = (top + bottom) / 2.0;
    if input.wish.slat_width().is_none() {
        for mark in &answer.marks {
            let x = board.x(*mark);
            board.add(Role::Mark, Shape::Line(x, top, x, bottom));
            board.add(Role::Fastener, Shape::Circle(x, middle, DOT));
        }
    }
    numbers(&mut board, input, answer);
    board.given(-(rows as i8) - 1, Length::ZERO, input.length, Some(LENGTH.id));
    board.tell("above: from the left end");
    board.tell("below: from the right end");
    let (mut above, mut below) = (vec![Vec::new(); rows.into()], vec![Vec::new(); rows.into()]);
    let width = input.wish.slat_width().unwrap_or(Length::ZERO);
    for (index, (mark, from_right)) in answer.marks.iter().zip(&answer.from_right).enumerate() {
        let row = index % usize::from(rows);
        if let Some(labels) = above.get_mut(row) {
            labels.push((*mark, board.amount(*mark)));
        }
        if let (Some(labels), Ok(right)) = (below.get_mut(row), *mark + width) {
            labels.push((right, board.amount(*from_right)));
        }
    }
    for (row, labels) in (0_i8..).zip(&above) {
        board.labels(-row - 1, labels);
    }
    for (row, labels) in (0_i8..).zip(&below) {
        board.labels(row, labels);
    }
    sizes(&mut board, input, answer, rows as i8);
    board.scene(say![
        if width.is_zero() { "Board with " } else { "Rail with " },
        counted(answer.marks.len() as u64, if width.is_zero() { " mark" } else { " slat" }),
        ", numbered from the left, with distances from both ends."
    ])
}

/// Whether the distances need two rows.
fn is_crowded(input: &Input, answer: &Answer, bench: &Bench) -> bool {
    let step =
        input.wish.slat_width().map_or(Ok(answer.narrowest), |width| answer.narrowest + width);
    let Ok(step) = step else { return true };
    let probe = Board::along(bench.tape, input.length, HIGH, 1, 1);
    let widest = answer.marks.iter().map(|mark| {
        show(*mark, bench.tape, Rounding::Nearest)
            .map_or(0.0, |shown| Size::Small.width_of(&shown.mark.amount(), Role::Ink))
    });
    probe.size(step) < widest.fold(0.0, f64::max) + 4.0
}

/// The number of each, where there is room for it: on its slat, or beside its line, so that the
/// line does not run through it.
fn numbers(board: &mut Board, input: &Input, answer: &Answer) {
    let mut free_from = f64::NEG_INFINITY;
    let middle = (board.top() + board.bottom()) / 2.0;
    for (index, mark) in answer.marks.iter().enumerate() {
        let label = (index + 1).to_string();
        let wide = Size::Small.width_of(&label, Role::Ink);
        let is_last = index + 1 == answer.marks.len();
        let (left, y) = match input.wish.slat_width() {
            Some(width) => (board.x(*mark) + (board.size(width) - wide) / 2.0, middle + 4.0),
            None if is_last => (board.x(*mark) - wide - 4.0, board.bottom() - 6.0),
            None => (board.x(*mark) + 4.0, board.bottom() - 6.0),
        };
        if left > free_from {
            board.number(Role::Ink, left + wide / 2.0, y, label);
            free_from = left + wide;
        }
    }
}

/// What was asked for, where it is measured: both ends, the first gap, and what it may be at most.
fn sizes(board: &mut Board, input: &Input, answer: &Answer, row: i8) {
    let (Some(first), Some(last)) = (answer.marks.first(), answer.marks.last()) else { return };
    let slat = input.wish.slat_width();
    let (left, right) = match slat {
        Some(_) => (LEFT_SLAT.id, RIGHT_SLAT.id),
        None => (LEFT_END.id, RIGHT_END.id),
    };
    let width = slat.unwrap_or(Length::ZERO);
    if first.is_positive() {
        board.given(row, Length::ZERO, *first, Some(left));
    }
    if let Ok(edge) = *last + width
        && edge < input.length
        && answer.marks.len() > 1
    {
        board.given(row, edge, input.length, Some(right));
    }
    if let (Some(_), Ok(edge)) = (slat, *last + width) {
        board.given(row, *last, edge, Some(SLAT_WIDTH.id));
    }
    let [first, second, ..] = answer.marks.as_slice() else { return };
    if let Ok(from) = *first + width {
        // Around what is kept clear a step is longer than the one that was asked for.
        let is_step = matches!(input.wish, Wish::Step(step) if *second - *first == Ok(step));
        let field = is_step.then_some(STEP.id);
        board.given(row, from, *second, field);
    }
    let Some((wish, field)) = wished(board, input) else { return };
    if let [.., before, last] = answer.marks.as_slice()
        && before != first
        && let Ok(from) = *before + width
    {
        board.labelled(row, from, *last, wish, Some(field));
    }
}

/// The gap that is wished for, in words, and its field.
fn wished(board: &Board, input: &Input) -> Option<(String, &'static str)> {
    match input.wish {
        Wish::NoGapOver(most) => Some((format!("at most {}", board.amount(most)), GREATEST_GAP.id)),
        Wish::SlatsNear { gap, .. } => Some((format!("near {}", board.amount(gap)), SLAT_GAP.id)),
        _ => None,
    }
}
