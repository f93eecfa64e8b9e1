//! Reads base and top and lays the overhang out.

use super::{Answer, Find, Input, reckon};
use crate::calculators::top::fields::{
    BASE_LENGTH, BASE_WIDTH, END_OVERHANG, OVERHANG_END, OVERHANG_FIND, OVERHANG_SIDE,
    SIDE_OVERHANG, TOP_ACROSS, TOP_LENGTH, TOP_SIZE, TOP_SIZE_LENGTH, TOP_SIZE_WIDTH, too_large,
};
use crate::drawing::{Board, Role, Scene};
use crate::measure::{Length, OutOfRange, Tape};
use crate::say;
use crate::sheet::{self, Ask, Note, Source, Step, Term, Working};

/// How far tops commonly stand over: 1 to 3 in. Common practice, no source.
const COMMON: (Length, Length) = (Length::sixty_fourths(64), Length::sixty_fourths(192));

/// An overhang at the ends from which tipping is worth a check: 4 in. Common practice, no source.
const CHECK_TIPPING: Length = Length::sixty_fourths(4 * 64);

pub(in crate::calculators::top) fn work(ask: &mut Ask) -> Option<sheet::Answer> {
    let base = [ask.length(&BASE_LENGTH), ask.length(&BASE_WIDTH)];
    let find = match ask.choice(&OVERHANG_FIND) {
        TOP_SIZE => {
            let (end, side) = (ask.length(&OVERHANG_END), ask.length(&OVERHANG_SIDE));
            Find::Top { overhang: [end?, side?] }
        }
        _ => {
            let (length, width) = (ask.length(&TOP_LENGTH), ask.length(&TOP_ACROSS));
            Find::Overhang { top: [length?, width?] }
        }
    };
    let [Some(base_length), Some(base_width)] = base else { return None };
    let input = Input { base: [base_length, base_width], find };
    match reckon(&input) {
        Ok(answer) => Some(lay_out(&input, &answer, ask.bench().tape)),
        Err(refused) => ask.refused(refused, too_large()),
    }
}

fn lay_out(input: &Input, answer: &Answer, tape: Tape) -> sheet::Answer {
    let end = END_OVERHANG.figure("end of base to end", answer.overhang[0]);
    let side = SIDE_OVERHANG.figure("side of base to edge", answer.overhang[1]);
    let length = TOP_SIZE_LENGTH.figure("end to end", answer.top[0]);
    let width = TOP_SIZE_WIDTH.figure("edge to edge", answer.top[1]);
    let (headline, figures) = match input.find {
        Find::Overhang { .. } => (end, vec![side]),
        Find::Top { .. } => (length, vec![width]),
    };
    let mut laid = sheet::Answer::new(headline, working(input, answer));
    laid.figures = figures;
    laid.notes.push(Note::new(
        "measure_base_as_it_stands",
        say![
            "Measure the base as it stands, not on the plan. ",
            COMMON.0,
            " to ",
            COMMON.1,
            " is common."
        ],
    ));
    if answer.overhang[0] > CHECK_TIPPING {
        laid.notes.push(Note::new(
            "overhang_can_tip",
            say!["A long overhang can tip: check it under Does it tip."],
        ));
    }
    laid.drawing = draw(input, answer, tape).ok();
    laid
}

fn working(input: &Input, answer: &Answer) -> Working {
    let both = input.base.iter().zip(answer.top).zip(answer.overhang);
    let steps = both.map(|((base, top), overhang)| {
        let base = Term::of("base", *base);
        match input.find {
            Find::Overhang { .. } => {
                Step::of("overhang", (Term::of("top", top) - base) / Term::fixed(2), overhang)
            }
            Find::Top { .. } => {
                Step::of("top", base + Term::fixed(2) * Term::of("overhang", overhang), top)
            }
        }
    });
    Working { steps: steps.collect(), sources: vec![Source::Arithmetic] }
}

/// From above: the top, and its base dashed beneath.
fn draw(input: &Input, answer: &Answer, tape: Tape) -> Result<Scene, OutOfRange> {
    let zero = Length::ZERO;
    let ([length, width], [end, side]) = (answer.top, answer.overhang);
    let [base_length, base_width] = input.base;
    let mut board = Board::with_sides(tape, (length, width), 170.0, (1, 2));
    board.rect(Role::Wood, zero, zero, length, width);
    board.rect(Role::Ghost, end, side, base_length, base_width);
    board.given(-1, zero, end, Some(OVERHANG_END.id));
    board.given(0, end, (length - end)?, Some(BASE_LENGTH.id));
    board.given(1, zero, length, Some(TOP_LENGTH.id));
    let left = board.x(zero) - 14.0;
    let label = board.amount(width);
    board.upright(left, zero, width, label, Some(TOP_ACROSS.id));
    let right = board.x(length) + 14.0;
    let far = (side + base_width)?;
    let label = board.amount(base_width);
    board.upright(right, side, far, label, Some(BASE_WIDTH.id));
    let label = board.amount(side);
    board.upright(right, zero, side, label, Some(OVERHANG_SIDE.id));
    board.tell("dashed: the base");
    Ok(board.scene(say![
        "The top from above over its base, dashed: ",
        end,
        " beyond it at each end and ",
        side,
        " at each side."
    ]))
}
