//! Reads the tenons' fields and lays their answer out.

use super::{Answer, Input, reckon};
use crate::calculators::frame::MORTISE_EXTRA;
use crate::drawing::{Anchor, Board, Role, Scene, Size};
use crate::measure::{Length, OutOfRange, Rounding, Tape};
use crate::say;
use crate::sheet::{self, Ask, Caution, Figure, Source, Step, Value, Working};

pub(in crate::calculators::frame) fn work(ask: &mut Ask) -> Option<sheet::Answer> {
    let leg = ask.length(ask.field("leg"));
    let thickness = ask.length(ask.field("tenon_thickness"));
    let outside_to_cheek = match ask.choice(ask.field("tenon_place")).id {
        "measured" => ask.length(ask.field("cheek")).map(Some),
        _ => Some(None),
    };
    let lengths = [ask.length(ask.field("tenon_a")), ask.length(ask.field("tenon_b"))];
    let [Some(a), Some(b)] = lengths else { return None };
    let input = Input {
        leg: leg?,
        thickness: thickness?,
        outside_to_cheek: outside_to_cheek?,
        lengths: [a, b],
    };
    match reckon(&input) {
        Ok(answer) => Some(lay_out(&input, &answer, ask.bench().tape)),
        Err(problems) => ask.refuse(&problems),
    }
}

fn lay_out(input: &Input, answer: &Answer, tape: Tape) -> sheet::Answer {
    let longest = answer.longest_alike.min(answer.longest_alone);
    let headline = Figure {
        id: "longest_tenons",
        label: "Longest, both alike",
        from: "shoulder to tip",
        value: Value::Length(longest, Rounding::Down),
    };
    let mut laid = sheet::Answer::new(headline, working(input, answer));
    laid.figures = vec![
        Figure {
            id: "tenons_clear",
            label: "Wood between",
            from: "tip to the other cheek",
            value: Value::Length(answer.clear, Rounding::Down),
        },
        Figure::length(
            "outside_to_cheek",
            "Outside to cheek",
            "on both faces",
            answer.outside_to_cheek,
        ),
    ];
    if answer.clear < MORTISE_EXTRA {
        laid.notes.push(say![
            "The mortises, ",
            MORTISE_EXTRA,
            " deeper than the tenons, break into each other. Chop the second one gently."
        ]);
    }
    laid.notes.push(say!["Measure both mortises from the outside faces, never inward from two."]);
    laid.cautions = vec![Caution::Drilling];
    laid.drawing = draw(input, answer, tape).ok();
    laid
}

fn working(input: &Input, answer: &Answer) -> Working {
    let mut steps = Vec::new();
    if input.outside_to_cheek.is_none() {
        steps.push(Step::length(
            "outside to cheek = (leg - tenon thickness) ÷ 2",
            say!["(", input.leg, " - ", input.thickness, ") ÷ 2"],
            answer.outside_to_cheek,
        ));
    }
    steps.push(Step::length(
        "longest alike = leg - outside to cheek - thickness",
        say![input.leg, " - ", answer.outside_to_cheek, " - ", input.thickness],
        answer.longest_alike,
    ));
    steps.push(Step::length(
        "longest alone = leg - 1/8 in of mortise - 1/8 in of wall",
        say![input.leg, " - 1/8 in - 1/8 in"],
        answer.longest_alone,
    ));
    let [a, b] = input.lengths;
    steps.push(Step::length(
        "wood between = longest alike - shorter tenon",
        say![answer.longest_alike, " - ", a.min(b)],
        answer.clear,
    ));
    Working { steps, sources: vec![Source::Arithmetic, Source::CommonPractice] }
}

/// Section through the leg: outside faces left and below, tenons from the right and from above.
fn draw(input: &Input, answer: &Answer, tape: Tape) -> Result<Scene, OutOfRange> {
    let zero = Length::ZERO;
    let Input { leg, thickness, lengths: [a, b], .. } = *input;
    let stub = (leg / 2)?;
    let wide = (leg + stub)?;
    let mut board = Board::fit(tape, wide, wide, 190.0, 1, 2);
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
    let x = board.x(wide) + 6.0;
    let y = board.y(band) + board.size(thickness) / 2.0 + 4.0;
    let label = format!("first {}", board.amount(a));
    board.text(Role::Ink, x, y, Anchor::Start, Size::Small, label);
    let x = board.x(cheek) + board.size(thickness) / 2.0;
    let label = format!("second {}", board.amount(b));
    let y = board.row(-1);
    board.text(Role::Ink, x, y, Anchor::Middle, Size::Small, label);
    board.dimension(0, zero, cheek);
    board.dimension(1, zero, leg);
    let (x, y) = (board.x(zero) - 6.0, board.y(wide) - 4.0);
    board.text(Role::Ink, x, y, Anchor::End, Size::Small, "outside");
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
