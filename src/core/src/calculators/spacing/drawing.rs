//! The board with its marks or slats, read from both ends, and the zones to keep out of.

use super::fields::{
    GREATEST_GAP, LEFT_END, LEFT_SLAT, LENGTH, RIGHT_END, RIGHT_SLAT, SLAT_GAP, SLAT_WIDTH, STEP,
};
use super::{Answer, Input, Wish};
use crate::drawing::{Board, Role, Scene, Shape, Size};
use crate::measure::Length;
use crate::say;
use crate::sentence::counted;
use crate::sheet::Bench;

/// Height of the board in page units, less where the numbers need several rows.
const HIGH: f64 = 64.0;
const LOW: f64 = 46.0;

/// Radius of a mark in page units.
const DOT: f64 = 3.5;

/// Draws the board from the front, the left end on the left.
pub(super) fn draw(input: &Input, answer: &Answer, bench: &Bench) -> Scene {
    let probe = Board::along(bench.tape, input.length, HIGH, 1, 1);
    let (above, below) = (from_left(&probe, answer), from_right(&probe, input, answer));
    let rows = probe.rows_of(&above).max(probe.rows_of(&below));
    let high = if rows > 1 { LOW } else { HIGH };
    // Below the numbers the sizes have a row over their lines.
    let mut board = Board::along(bench.tape, input.length, high, rows + 1, rows + 2);
    let (top, bottom) = (board.top(), board.bottom());
    let across = |board: &mut Board, role, from: Length, to: Length, y: f64, high: f64| {
        let (x1, x2) = (board.x(from), board.x(to));
        board.add(role, Shape::Rect(x1, y, (x2 - x1).max(0.0), high));
    };
    match input.wish.slat_width() {
        None => across(&mut board, Role::Wood, Length::ZERO, input.length, top, high),
        Some(width) => {
            // The rail that the slats lie on.
            across(
                &mut board,
                Role::Mate,
                Length::ZERO,
                input.length,
                top + high * 0.4,
                high * 0.2,
            );
            for mark in &answer.marks {
                if let Ok(right) = *mark + width {
                    across(&mut board, Role::Wood, *mark, right, top, high);
                }
            }
        }
    }
    for zone in &answer.keep_out {
        let (from, to) = (zone.from.max(Length::ZERO), zone.to.min(input.length));
        across(&mut board, Role::KeepOut, from, to, top, high);
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
    board.labels_in_rows(-1, rows, &above);
    board.labels_in_rows(0, rows, &below);
    let width = input.wish.slat_width().unwrap_or(Length::ZERO);
    sizes(&mut board, input, answer, rows as i8 + 1);
    board.scene(say![
        if width.is_zero() { "Board with " } else { "Rail with " },
        counted(answer.marks.len() as u64, if width.is_zero() { " mark" } else { " slat" }),
        ", numbered from the left, with distances from both ends."
    ])
}

/// Each mark, or the left side of each slat, from the left end.
fn from_left(board: &Board, answer: &Answer) -> Vec<(Length, String)> {
    answer.marks.iter().map(|mark| (*mark, board.amount(*mark))).collect()
}

/// Each mark, or the right side of each slat, from the right end; that of the last is the size of that end.
fn from_right(board: &Board, input: &Input, answer: &Answer) -> Vec<(Length, String)> {
    let width = input.wish.slat_width().unwrap_or(Length::ZERO);
    let all = answer.marks.iter().zip(&answer.from_right);
    let is_measured = all.len() > 1 && answer.from_right.last().is_some_and(|it| it.is_positive());
    let shown = all.len() - usize::from(is_measured);
    let placed = all
        .take(shown)
        .filter_map(|(mark, from_right)| Some(((*mark + width).ok()?, board.amount(*from_right))));
    placed.collect()
}

/// The number of each, on its slat or beside its line, so that no line runs through it; where one has no room none is
/// shown, since the numbers only count along.
fn numbers(board: &mut Board, input: &Input, answer: &Answer) {
    let y = board.bottom() - 6.0;
    let mut placed = Vec::new();
    let mut free_from = f64::NEG_INFINITY;
    for (index, mark) in answer.marks.iter().enumerate() {
        let label = (index + 1).to_string();
        let wide = Size::Small.width_of(&label, Role::Ink);
        let is_last = index + 1 == answer.marks.len();
        let x = board.x(*mark);
        let (left, room) = match input.wish.slat_width() {
            Some(width) => (x + (board.size(width) - wide) / 2.0, board.size(width)),
            None if is_last => (x - wide - 4.0, x - free_from),
            None => (x + 4.0, f64::INFINITY),
        };
        if room < wide + 6.0 || left < free_from {
            return;
        }
        free_from = left + wide + 6.0;
        placed.push((left + wide / 2.0, label));
    }
    for (x, label) in placed {
        board.number(Role::Ink, x, y, label);
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
    // In the middle, where no end is near.
    let middle = answer.marks.len() / 2;
    if let Some([before, next]) = answer.marks.get(middle..).and_then(|it| it.first_chunk())
        && before != first
        && let Ok(from) = *before + width
    {
        board.labelled(row, from, *next, wish, Some(field));
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
