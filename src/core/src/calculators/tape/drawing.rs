//! The piece of tape around the answer, or the whole length with its running marks.

use super::{Answer, Input};
use crate::drawing::{Anchor, Board, Role, Scene, Shape, Size};
use crate::measure::{Fineness, Length, Number, OutOfRange, Tape, Unit};
use crate::say;
use crate::sheet::Bench;

pub(super) fn draw(input: &Input, answer: &Answer, bench: &Bench) -> Scene {
    if input.parts > 1 {
        return marks(input, answer, bench);
    }
    let read = answer.marks.last().copied().unwrap_or(input.length);
    // A length so fine or large that the window around it cannot be kept exactly is drawn whole.
    piece_of_tape(read, bench).unwrap_or_else(|OutOfRange| marks(input, answer, bench))
}

/// The whole length as a board, with numbered lines across it.
fn marks(input: &Input, answer: &Answer, bench: &Bench) -> Scene {
    let mut board = Board::along(bench.tape, input.length, 46.0, 1, 1);
    let (top, bottom) = (board.top(), board.bottom());
    let (left, right) = (board.x(Length::ZERO), board.x(input.length));
    board.add(Role::Wood, Shape::Rect(left, top, right - left, bottom - top));
    let places: Vec<Length> =
        answer.marks.iter().filter_map(|mark| (*mark - input.start_mark).ok()).collect();
    for place in &places {
        let x = board.x(*place);
        board.add(Role::Mark, Shape::Line(x, top, x, bottom));
    }
    let numbers: Vec<_> =
        places.iter().enumerate().map(|(i, place)| (*place, (i + 1).to_string())).collect();
    let amounts: Vec<_> = places
        .iter()
        .zip(&answer.marks)
        .map(|(place, mark)| (*place, board.amount(*mark)))
        .collect();
    board.labels(-1, &numbers);
    board.labels(0, &amounts);
    board.scene(say![
        "A board of ",
        input.length,
        ", divided into ",
        input.parts,
        " equal parts by lines numbered from the left end."
    ])
}

/// How a tape is drawn: the window's width, its smallest step, and how long each line is.
struct Ruling {
    window: Length,
    step: Length,
    /// Steps between numbers.
    per_number: i128,
    unit: Unit,
}

fn ruling(tape: Tape) -> Ruling {
    let inches = |fineness: Fineness| {
        let below = fineness.denominator();
        let window = match below {
            64 => 96,
            32 => 144,
            _ => 208,
        };
        Ruling {
            window: Length::sixty_fourths(window),
            step: Length::sixty_fourths(64 / i32::from(below.max(8))),
            per_number: i128::from(below.max(8)),
            unit: Unit::Inch,
        }
    };
    match tape {
        Tape::Inches(fineness) | Tape::FeetAndInches(fineness) => inches(fineness),
        Tape::DecimalInches(_) => inches(Fineness::Sixteenth),
        Tape::Millimetres(_) | Tape::HalfMillimetres => Ruling {
            window: Length::sixty_fourths(192),
            step: Length::inches(Unit::Millimetre.in_inches()),
            per_number: 10,
            unit: Unit::Centimetre,
        },
    }
}

/// The lines of a real tape: the coarser the fraction, the longer the line.
fn line_height(index: i128, per_number: i128) -> f64 {
    let divides = |parts: i128| (index * parts) % per_number == 0;
    match () {
        () if divides(1) => 46.0,
        () if divides(2) => 34.0,
        () if per_number == 10 => 20.0,
        () if divides(4) => 26.0,
        () if divides(8) => 19.0,
        () if divides(16) => 13.0,
        () if divides(32) => 9.0,
        () => 6.0,
    }
}

fn piece_of_tape(read: Length, bench: &Bench) -> Result<Scene, OutOfRange> {
    let Ruling { window, step, per_number, unit } = ruling(bench.tape);
    let half = (window / 2)?;
    let left = (read - half)?.max(Length::ZERO);
    let mut board = Board::fit(bench.tape, window, Length::sixty_fourths(1), 8.0, 2, 5);
    let top = board.top();
    let at = |board: &Board, place: Length| (place - left).map(|from_left| board.x(from_left));
    let (x_from, x_to) = (board.x(Length::ZERO), board.x(window));
    board.add(Role::Wood, Shape::Rect(x_from, top, x_to - x_from, 76.0));
    let first = (left / step)?.ceil();
    let last = ((left + window)? / step)?.floor();
    for index in first..=last {
        let x = at(&board, (step * Number::ratio(index, 1)?)?)?;
        let height = line_height(index, per_number);
        board.add(Role::Tick, Shape::Line(x, top, x, top + height));
        if index % per_number == 0 {
            let number = (index / per_number).to_string();
            let half_width = Size::Small.width_of(&number, Role::StrongInk) / 2.0;
            if x - half_width > x_from && x + half_width < x_to {
                board.number(Role::StrongInk, x, top + 64.0, number);
            }
        }
    }
    let x = at(&board, read)?.clamp(x_from, x_to);
    board.add(Role::CutLine, Shape::Line(x, top - 2.0, x, top + 76.0));
    board.add(
        Role::CutLine,
        Shape::Polygon(vec![(x, top), (x - 8.0, top - 16.0), (x + 8.0, top - 16.0)]),
    );
    let label = board.amount(read);
    board.text(Role::StrongInk, x, top - 20.0, Anchor::Middle, Size::Medium, label);
    let numbers = if unit == Unit::Inch { "inches" } else { "centimetres" };
    Ok(board.scene(say!["A piece of tape numbered in ", numbers, ", with an arrow at ", read, "."]))
}
