//! The board from the front, left end on the left, with the parts numbered in cutting order.

use super::fields::{BOARD, KERF, PART, TRIM};
use super::{Answer, Input};
use crate::drawing::{Board, Role, Scene, Size};
use crate::measure::Length;
use crate::say;
use crate::sentence::counted;
use crate::sheet::Bench;

/// Draws the board. Lengths are to scale; the width of the board is not asked, and is drawn as
/// an eighth of its length.
pub(super) fn draw(input: &Input, answer: &Answer, bench: &Bench) -> Scene {
    let high = (input.board / 8).unwrap_or(Length::ZERO);
    let window = |below| Board::fit(bench.tape, input.board, high, 60.0, 3, below);
    let probe = window(1);
    let ends: Vec<(Length, String)> =
        answer.parts.iter().map(|part| (part.to, probe.amount(part.to))).collect();
    let rows = probe.rows_of(&ends);
    // Below the ends the cut and the trim have a row over their lines.
    let mut board = window(rows + 2);
    let zero = Length::ZERO;
    board.rect(Role::Mate, zero, zero, input.board, high);
    let right_trim = (input.board - answer.usable.to).unwrap_or(zero);
    board.rect(Role::Waste, zero, zero, answer.usable.from, high);
    board.rect(Role::Waste, answer.usable.to, zero, right_trim, high);
    for part in &answer.parts {
        board.rect(Role::Wood, part.from, zero, input.part, high);
        board.rect(Role::Kerf, part.to, zero, input.kerf.min(gap_after(answer, part.to)), high);
    }
    for piece in &answer.passed_over {
        board.rect(Role::Kerf, piece.to, zero, input.kerf, high);
    }
    for knot in &input.knots {
        let from = knot.from.clamp(zero, input.board);
        let width = (knot.to.clamp(zero, input.board) - from).unwrap_or(zero);
        board.rect(Role::KeepOut, from, zero, width, high);
    }
    number(&mut board, input, answer);
    if let Some(first) = answer.parts.first() {
        board.given(-1, first.from, first.to, Some(PART.id));
    }
    // The last cut that is as wide as the blade, away from the trim.
    let cuts = answer.parts.iter().map(|part| part.to);
    if let Some(cut) = cuts.rev().find(|cut| gap_after(answer, *cut) >= input.kerf)
        && let Ok(end) = cut + input.kerf
    {
        let label = format!("kerf {}", board.amount(input.kerf));
        board.labelled(rows as i8 + 1, cut, end, label, Some(KERF.id));
    }
    board.given(-3, zero, input.board, Some(BOARD.id));
    if answer.usable.from.is_positive() {
        let label = format!("trim {}", board.amount(input.trim));
        board.labelled(rows as i8 + 1, zero, answer.usable.from, label, Some(TRIM.id));
    }
    if let Some(last) = answer.parts.last()
        && answer.leftover.is_positive()
    {
        let from = (answer.usable.to - answer.leftover).unwrap_or(last.to);
        let label = format!("{} left", board.amount(answer.leftover));
        board.dimension_labelled(-1, from, answer.usable.to, label);
    }
    board.labels_in_rows(0, rows, &ends);
    board.tell("below: ends of the pieces, from the left end");
    board.scene(say![
        "Board of ",
        input.board,
        " with ",
        counted(answer.parts.len() as u64, " piece"),
        " of ",
        input.part,
        " from the left end."
    ])
}

/// Wood between the end of a part and the right trim: a kerf is never drawn past it.
fn gap_after(answer: &Answer, part_end: Length) -> Length {
    (answer.usable.to - part_end).unwrap_or(Length::ZERO).max(Length::ZERO)
}

/// Numbers in the parts, where they are wide enough to hold one.
fn number(board: &mut Board, input: &Input, answer: &Answer) {
    let wide = board.size(input.part);
    let baseline = (board.top() + board.bottom()) / 2.0 + 4.5;
    for (i, part) in (1_u32..).zip(&answer.parts) {
        let label = i.to_string();
        if wide > Size::Small.width_of(&label, Role::StrongInk) + 3.0 {
            let middle = board.x(part.from) + wide / 2.0;
            board.number(Role::StrongInk, middle, baseline, label);
        }
    }
}
