//! Reads the sides and diagonals and says which way to push.

use super::{Answer, DOUBT, Input, Lean, reckon};
use crate::calculators::frame::fields::{
    DIAGONAL_A, DIAGONAL_B, LEFT_SIDE, NEAR_SIDE, OUT_OF_SQUARE, PUSH, PUSH_BY, SQUARE_DIAGONAL,
    out_of_range,
};
use crate::drawing::{Anchor, Board, Role, Scene, Shape, Size};
use crate::measure::{Length, OutOfRange, Tape};
use crate::say;
use crate::sheet::{self, Ask, Note, Sentence, Source, Step, Term, Value, Working};

pub(in crate::calculators::frame) fn work(ask: &mut Ask) -> Option<sheet::Answer> {
    let near_side = ask.length(&NEAR_SIDE);
    let left_side = ask.length(&LEFT_SIDE);
    let first = ask.optional_length(&DIAGONAL_A);
    let second = ask.optional_length(&DIAGONAL_B);
    let diagonals = match (first?, second?) {
        (Some(first), Some(second)) => Some([first, second]),
        (None, None) => None,
        (Some(_), None) => {
            let sentence = say!["Measure the other diagonal too, or leave both empty."];
            ask.refuse_field(&DIAGONAL_B, "one-diagonal", sentence);
            return None;
        }
        (None, Some(_)) => {
            let sentence = say!["Measure the other diagonal too, or leave both empty."];
            ask.refuse_field(&DIAGONAL_A, "one-diagonal", sentence);
            return None;
        }
    };
    let input = Input { near_side: near_side?, left_side: left_side?, diagonals };
    match reckon(&input) {
        Ok(answer) => Some(lay_out(&input, &answer, ask.bench().tape)),
        Err(refused) => ask.refused(refused, out_of_range()),
    }
}

/// Which corners to push, in words.
fn push(lean: &Lean) -> Sentence {
    if lean.far_side_to_right.is_zero() {
        say!["It is square."]
    } else if lean.far_side_to_right.is_positive() {
        say!["Push far right and near left towards each other."]
    } else {
        say!["Push far left and near right towards each other."]
    }
}

fn lay_out(input: &Input, answer: &Answer, tape: Tape) -> sheet::Answer {
    let diagonal = |from, length| SQUARE_DIAGONAL.figure(from, length);
    let mut laid = match &answer.lean {
        None => sheet::Answer::new(
            diagonal("corner to corner, both", answer.diagonal),
            working(input, answer),
        ),
        Some(lean) => {
            let to =
                if lean.far_side_to_right.is_negative() { "to the right" } else { "to the left" };
            let by = lean.far_side_to_right.abs();
            let from = if by.is_zero() { "it is square" } else { to };
            let headline = PUSH_BY.figure(from, by);
            let mut laid = sheet::Answer::new(headline, working(input, answer));
            laid.figures = vec![
                PUSH.called("How").figure("", Value::Words(push(lean))),
                diagonal("both will read", lean.square_diagonal),
                OUT_OF_SQUARE
                    .figure("at each corner", Value::Real(lean.out_of_square.in_degrees(), 2, "°")),
            ];
            if lean.disagreement.abs() > DOUBT {
                laid.notes.push(Note::new(
                    "measure_all_four_sides",
                    say![
                        "The sides say a diagonal of ",
                        answer.diagonal,
                        " and the diagonals say ",
                        lean.square_diagonal,
                        ". Opposite sides may differ: measure all four."
                    ],
                ));
            }
            laid
        }
    };
    laid.notes.push(Note::new(
        "measure_between_corners",
        say!["Measure sides and diagonals between the same four corners."],
    ));
    laid.drawing = draw(input, answer, tape).ok();
    laid
}

fn working(input: &Input, answer: &Answer) -> Working {
    let near_side = || Term::of("near side", input.near_side);
    let left_side = || Term::of("left side", input.left_side);
    let diagonal = (near_side().squared() + left_side().squared()).root();
    let mut steps = vec![Step::of("diagonal", diagonal, answer.diagonal)];
    if let (Some([first, second]), Some(lean)) = (input.diagonals, &answer.lean) {
        let moved = Term::of("moved", lean.far_side_to_right.abs());
        let first = || Term::of("first", first).squared();
        let second = || Term::of("second", second).squared();
        steps.extend([
            Step::of(
                "far side moved right",
                (first() - second()) / (Term::fixed(4) * near_side()),
                lean.far_side_to_right,
            ),
            Step::of(
                "out of square",
                (moved / left_side()).angle_by_sine(),
                Value::Real(lean.out_of_square.in_degrees(), 2, "°"),
            ),
            Step::of(
                "both when pushed square",
                ((first() + second()) / Term::fixed(2)).root(),
                lean.square_diagonal,
            ),
        ]);
    }
    Working { steps, sources: vec![Source::Arithmetic] }
}

/// The frame from above: square and dashed, and the way it leans, drawn much too large.
fn draw(input: &Input, answer: &Answer, tape: Tape) -> Result<Scene, OutOfRange> {
    let zero = Length::ZERO;
    let (wide, high) = (input.near_side, input.left_side);
    let mut board = Board::with_sides(tape, (wide, high), 150.0, (1, 2));
    let (left, right) = (board.x(zero), board.x(wide));
    let (far, near) = (board.y(zero), board.y(high));
    board.add(Role::Ghost, Shape::Rect(left, far, right - left, near - far));
    let lean = answer.lean.as_ref().map_or(zero, |lean| lean.far_side_to_right);
    // The real lean would not be seen; its direction is.
    let shown = if lean.is_zero() { 0.0 } else { 10.0 };
    let shown = if lean.is_negative() { -shown } else { shown };
    board.add(
        Role::CutLine,
        Shape::Polyline(vec![
            (left, near),
            (right, near),
            (right + shown, far),
            (left + shown, far),
            (left, near),
        ]),
    );
    board.add(Role::Guide, Shape::Line(left, near, right + shown, far));
    board.add(Role::Guide, Shape::Line(right, near, left + shown, far));
    let words = [
        (left, board.row(0), Anchor::Start, "near left".to_owned()),
        (right, board.row(0), Anchor::End, "near right".to_owned()),
        (left, board.row(-1), Anchor::Start, "far left".to_owned()),
        (right, board.row(-1), Anchor::End, "far right".to_owned()),
    ];
    for (x, y, anchor, text) in words {
        board.text(Role::Ink, x, y, anchor, Size::Small, text);
    }
    let diagonal = answer.lean.as_ref().map_or(answer.diagonal, |lean| lean.square_diagonal);
    board.given(1, zero, wide, Some(NEAR_SIDE.id));
    let label = board.amount(high);
    board.upright(left - 16.0, zero, high, label, Some(LEFT_SIDE.id));
    if let Some([first, second]) = input.diagonals {
        // Each by the end of its diagonal at the far side.
        let (first, second) = (board.amount(first), board.amount(second));
        let (quarter, y) = ((right - left) / 4.0, far + (near - far) / 4.0 + 5.0);
        let at = (right - quarter, y, Anchor::Middle);
        board.name(Role::Ink, at, first, Some(DIAGONAL_A.id));
        let at = (left + quarter, y, Anchor::Middle);
        board.name(Role::Ink, at, second, Some(DIAGONAL_B.id));
    }
    board.tell(format!("square: both diagonals {}", board.amount(diagonal)));
    if !lean.is_zero() {
        board.tell(format!("leans {}, drawn larger", board.amount(lean.abs())));
    }
    Ok(board.scene(say![
        "The frame from above, near side below. Square, both diagonals are ",
        diagonal,
        "."
    ]))
}
