//! The end of a board inside its nominal size, its face, and boards laid side by side.

use super::fields::{COVER_WIDTH, GAP, LENGTH, MEASURED_THICKNESS, MEASURED_WIDTH, NOMINAL_WIDTH};
use super::question::Covering;
use super::{cover, size};
use crate::drawing::{Anchor, Board, Role, Scene};
use crate::measure::Length;
use crate::say;
use crate::sentence::counted;
use crate::sheet::Bench;

/// End view: the actual board solid, the nominal size a dashed outline around it.
pub(super) fn end_view(input: &size::Input, answer: &size::Answer, bench: &Bench) -> Scene {
    let zero = Length::ZERO;
    let wide = input.nominal_width.max(answer.width);
    let high = input.nominal_thickness.max(answer.thickness);
    let mut board = Board::fit(bench.tape, wide, high, 120.0, 1, 1);
    let middle = |all: Length, one: Length| (all - one).and_then(|rest| rest / 2).unwrap_or(zero);
    let (left, top) = (middle(wide, answer.width), middle(high, answer.thickness));
    board.rect(Role::EndGrain, left, top, answer.width, answer.thickness);
    board.rect(
        Role::Ghost,
        middle(wide, input.nominal_width),
        middle(high, input.nominal_thickness),
        input.nominal_width,
        input.nominal_thickness,
    );
    let right = (left + answer.width).unwrap_or(wide);
    board.given(0, left, right, Some(MEASURED_WIDTH.id));
    let x = board.x((wide / 2).unwrap_or(zero));
    let y = (board.top() + board.bottom()) / 2.0 + 4.0;
    let thickness = format!("{} thick", board.amount(answer.thickness));
    let at = (x, y, Anchor::Middle);
    board.name(Role::StrongInk, at, thickness, Some(MEASURED_THICKNESS.id));
    let nominal = format!(
        "dashed: nominal {} × {}",
        board.amount(input.nominal_thickness),
        board.amount(input.nominal_width)
    );
    board.tell(nominal);
    board.scene(say![
        "End of the board, ",
        answer.thickness,
        " × ",
        answer.width,
        ", inside its nominal size."
    ])
}

/// Face of one board with its nominal width and its length.
pub(super) fn face_view(width: Length, length: Length, count: u32, bench: &Bench) -> Scene {
    let zero = Length::ZERO;
    let mut board = Board::fit(bench.tape, length, width, 120.0, 1, 1);
    board.rect(Role::Wood, zero, zero, length, width);
    board.given(0, zero, length, Some(LENGTH.id));
    let at =
        (board.x((length / 2).unwrap_or(zero)), f64::midpoint(board.top(), board.bottom()) + 5.0);
    let nominal = format!("{} nominal", board.amount(width));
    board.name(Role::Ink, (at.0, at.1, Anchor::Middle), nominal, Some(NOMINAL_WIDTH.id));
    board.tell(counted(count, " board"));
    board.scene(say!["Face of one board, ", length, " long; ", counted(count, " board"), "."])
}

/// Most boards that are drawn one by one.
const MOST_DRAWN: u32 = 60;

/// Boards side by side, seen from above, with what the last one hangs over.
pub(super) fn covered(
    covering: &Covering,
    size: &size::Answer,
    cover: &cover::Answer,
    bench: &Bench,
) -> Scene {
    let zero = Length::ZERO;
    let pitch = (size.width + covering.gap).unwrap_or(size.width);
    let laid = (pitch * cover.rows).and_then(|all| all - covering.gap).unwrap_or(covering.width);
    let wide = laid.max(covering.width);
    let high = (wide / 4).unwrap_or(wide);
    let mut board = Board::fit(bench.tape, wide, high, 90.0, 1, 2);
    if cover.rows <= MOST_DRAWN {
        for i in 0..cover.rows {
            let left = (pitch * i).unwrap_or(zero);
            board.rect(Role::Wood, left, zero, size.width, high);
        }
    } else {
        board.rect(Role::Wood, zero, zero, laid, high);
    }
    let over = (laid - covering.width).unwrap_or(zero);
    if over.is_positive() {
        board.rect(Role::Waste, covering.width, zero, over, high);
    }
    board.dimension(-1, zero, size.width);
    board.given(0, zero, covering.width, Some(COVER_WIDTH.id));
    if cover.rows > 1 && covering.gap.is_positive() {
        let label = format!("gap {}", board.amount(covering.gap));
        board.labelled(1, size.width, pitch, label, Some(GAP.id));
    }
    board.tell(format!("{} laid", counted(cover.rows, " board")));
    if over.is_positive() {
        board.tell("hatched: over");
    }
    board.scene(say![
        counted(cover.rows, " board"),
        " of ",
        size.width,
        " side by side over ",
        covering.width,
        "."
    ])
}
