//! Reads the tenons' fields and lays their answer out.

use super::{Answer, Input, LEAST_WALL, reckon};
use crate::calculators::frame::MORTISE_EXTRA;
use crate::calculators::frame::fields::{
    CHEEK, LEG, LONGEST_TENONS, MEASURED, OUTSIDE_TO_CHEEK, TENON_A, TENON_B, TENON_PLACE,
    TENON_THICKNESS, TENONS_CLEAR, out_of_range,
};
use crate::drawing::{Board, Role, Scene};
use crate::measure::{Length, OutOfRange, Rounding, Tape};
use crate::say;
use crate::sheet::{self, Act, Ask, Caution, Note, Source, Step, Term, Value, Working};

pub(in crate::calculators::frame) fn work(ask: &mut Ask) -> Option<sheet::Answer> {
    let leg = ask.length(&LEG);
    let thickness = ask.length(&TENON_THICKNESS);
    let outside_to_cheek = match ask.choice(&TENON_PLACE) {
        MEASURED => ask.length(&CHEEK).map(Some),
        _ => Some(None),
    };
    let lengths = [ask.length(&TENON_A), ask.length(&TENON_B)];
    let [Some(a), Some(b)] = lengths else { return None };
    let input = Input {
        leg: leg?,
        thickness: thickness?,
        outside_to_cheek: outside_to_cheek?,
        lengths: [a, b],
    };
    match reckon(&input) {
        Ok(answer) => Some(lay_out(&input, &answer, ask.bench().tape)),
        Err(refused) => ask.refused(refused, out_of_range()),
    }
}

fn lay_out(input: &Input, answer: &Answer, tape: Tape) -> sheet::Answer {
    let longest = answer.longest_alike.min(answer.longest_alone);
    let headline = LONGEST_TENONS
        .called("Longest, both alike")
        .figure("shoulder to tip", Value::Length(longest, Rounding::Down));
    let mut laid = sheet::Answer::new(headline, working(input, answer));
    laid.figures = vec![
        TENONS_CLEAR
            .called("Wood between")
            .figure("tip to the other cheek", Value::Length(answer.clear, Rounding::Down)),
        OUTSIDE_TO_CHEEK.figure("on both faces", answer.outside_to_cheek),
    ];
    if answer.clear < MORTISE_EXTRA {
        laid.notes.push(Note::new(
            "mortises_meet",
            say![
                "The mortises, ",
                MORTISE_EXTRA,
                " deeper than the tenons, break into each other. Chop the second one gently."
            ],
        ));
    }
    laid.notes.push(Note::new(
        "measure_from_outside_faces",
        say!["Measure both mortises from the outside faces, never inward from two."],
    ));
    laid.cautions = Caution::of(&[Act::Drill, Act::Saw]);
    laid.drawing = draw(input, answer, tape).ok();
    laid
}

fn working(input: &Input, answer: &Answer) -> Working {
    let leg = || Term::of("leg", input.leg);
    let thickness = |name| Term::of(name, input.thickness);
    let mut steps = Vec::new();
    if input.outside_to_cheek.is_none() {
        let centred = (leg() - thickness("tenon thickness")) / Term::fixed(2);
        steps.push(Step::of("outside to cheek", centred, answer.outside_to_cheek));
    }
    let cheek = Term::of("outside to cheek", answer.outside_to_cheek);
    let [mortise, wall] =
        [Term::of("1/8 in of mortise", MORTISE_EXTRA), Term::of("1/8 in of wall", LEAST_WALL)];
    let [a, b] = input.lengths;
    let clear =
        Term::of("longest alike", answer.longest_alike) - Term::of("shorter tenon", a.min(b));
    steps.extend([
        Step::of("longest alike", leg() - cheek - thickness("thickness"), answer.longest_alike),
        Step::of("longest alone", leg() - mortise - wall, answer.longest_alone),
        Step::of("wood between", clear, answer.clear),
    ]);
    Working { steps, sources: vec![Source::Arithmetic, Source::CommonPractice] }
}

/// Section through the leg: outside faces left and below, tenons from the right and from above.
fn draw(input: &Input, answer: &Answer, tape: Tape) -> Result<Scene, OutOfRange> {
    let zero = Length::ZERO;
    let Input { leg, thickness, lengths: [a, b], .. } = *input;
    let stub = (leg / 2)?;
    let wide = (leg + stub)?;
    let mut board = Board::with_sides(tape, (wide, wide), 190.0, (1, 2));
    let cheek = answer.outside_to_cheek;
    // The first rail comes from the right, the second from above; y runs down from the top.
    let band = ((wide - cheek)? - thickness)?;
    board.rect(Role::EndGrain, zero, stub, leg, leg);
    board.rect(Role::Mate, leg, band, stub, thickness);
    board.rect(Role::Mate, cheek, zero, thickness, stub);
    for (tenon, is_first) in [(a, true), (b, false)] {
        let deep = (tenon + MORTISE_EXTRA)?;
        if is_first {
            board.rect(Role::Ghost, (leg - deep)?, band, deep, thickness);
            board.rect(Role::Wood, (leg - tenon)?, band, tenon, thickness);
        } else {
            board.rect(Role::Ghost, cheek, stub, thickness, deep);
            board.rect(Role::Wood, cheek, stub, thickness, tenon);
        }
    }
    // The first along its lower cheek, the second along its left one, both clear of the other.
    let y = board.y(((band + thickness)? + (thickness / 2)?)?);
    let label = format!("first {}", board.amount(a));
    let (from, to) = (board.x((leg - a)?), board.x(leg));
    board.between((from, y), (to, y), label, Some(TENON_A.id));
    let x = board.x(cheek) - board.size(thickness) / 2.0;
    let label = format!("second {}", board.amount(b));
    board.upright(x, stub, (stub + b)?, label, Some(TENON_B.id));
    let x = board.x(wide) + 12.0;
    let label = board.amount(thickness);
    board.upright(x, band, (band + thickness)?, label, Some(TENON_THICKNESS.id));
    board.given(0, zero, cheek, Some(CHEEK.id));
    board.given(1, zero, leg, Some(LEG.id));
    board.tell("outside faces: left and below");
    Ok(board.scene(say![
        "Section through a leg of ",
        leg,
        " with tenons of ",
        a,
        " and ",
        b,
        " from two neighbouring faces."
    ]))
}
