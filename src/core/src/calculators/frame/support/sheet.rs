//! Reads the supports' fields and lays their answer out.

use super::{Answer, Input, reckon};
use crate::drawing::{Board, Role, Scene};
use crate::measure::{Length, OutOfRange, Tape};
use crate::say;
use crate::sheet::{self, Ask, Figure, Source, Step, Value, Working};

pub(in crate::calculators::frame) fn work(ask: &mut Ask) -> Option<sheet::Answer> {
    let depth_overall = ask.length(ask.field("depth_overall"));
    let set_back = ask.length(ask.field("rail_set_back"));
    let rail_thickness = ask.length(ask.field("rail_thickness"));
    let between_legs = ask.length(ask.field("between_legs"));
    let n_supports = ask.count(ask.field("supports"));
    let support_thickness = ask.length(ask.field("support_thickness"));
    let housing = ask.length(ask.field("housing"));
    let input = Input {
        depth_overall: depth_overall?,
        set_back: set_back?,
        rail_thickness: rail_thickness?,
        between_legs: between_legs?,
        n_supports: n_supports?,
        support_thickness: support_thickness?,
        housing: housing?,
    };
    match reckon(&input) {
        Ok(answer) => Some(lay_out(&input, &answer, ask.bench().tape)),
        Err(problems) => ask.refuse(&problems),
    }
}

fn lay_out(input: &Input, answer: &Answer, tape: Tape) -> sheet::Answer {
    let headline = Figure::length("support_cut", "Cut each support", "end to end", answer.cut);
    let mut laid = sheet::Answer::new(headline, working(input, answer));
    laid.figures = vec![
        Figure {
            id: "support_edges",
            label: "Left edges",
            from: "from the left leg",
            value: Value::Lengths(answer.left_edges.clone()),
        },
        Figure::length("bay", "Clear bay", "between supports and legs", answer.bay),
        Figure::length("between_rails", "Rail to rail", "inside to inside", answer.between_rails),
    ];
    laid.notes.push(say!["Measure rail to rail on the built frame before you cut."]);
    laid.drawing = draw(input, answer, tape).ok();
    laid
}

fn working(input: &Input, answer: &Answer) -> Working {
    let steps = vec![
        Step::length(
            "rail to rail = depth - 2 × (set-back + rail)",
            say![input.depth_overall, " - 2 × (", input.set_back, " + ", input.rail_thickness, ")"],
            answer.between_rails,
        ),
        Step::length(
            "support = rail to rail + 2 × end that goes in",
            say![answer.between_rails, " + 2 × ", input.housing],
            answer.cut,
        ),
        Step::length(
            "bay = (leg to leg - supports × thickness) ÷ (supports + 1)",
            say![
                "(",
                input.between_legs,
                " - ",
                input.n_supports,
                " × ",
                input.support_thickness,
                ") ÷ ",
                input.n_supports.saturating_add(1)
            ],
            answer.bay,
        ),
    ];
    Working { steps, sources: vec![Source::Arithmetic] }
}

/// From above: the two rails between the legs' inner faces, and the supports.
fn draw(input: &Input, answer: &Answer, tape: Tape) -> Result<Scene, OutOfRange> {
    let zero = Length::ZERO;
    let rail = input.rail_thickness;
    let high = (answer.between_rails + (rail * 2)?)?;
    let mut board = Board::fit(tape, input.between_legs, high, 170.0, 1, 2);
    board.rect(Role::Wood, zero, zero, input.between_legs, rail);
    board.rect(Role::Wood, zero, (rail + answer.between_rails)?, input.between_legs, rail);
    let top = (rail - input.housing)?;
    let mut marks = Vec::new();
    for (number, edge) in (1_u32..).zip(&answer.left_edges) {
        board.rect(Role::Mate, *edge, top, input.support_thickness, answer.cut);
        board.line(Role::CutLine, (*edge, zero), (*edge, rail));
        marks.push((*edge, number));
    }
    let numbers: Vec<_> = marks.iter().map(|(at, n)| (*at, n.to_string())).collect();
    let amounts: Vec<_> = marks.iter().map(|(at, _)| (*at, board.amount(*at))).collect();
    board.labels(-1, &numbers);
    board.labels(0, &amounts);
    board.dimension(1, zero, input.between_legs);
    Ok(board.scene(say![
        "From above: two rails ",
        answer.between_rails,
        " apart with ",
        input.n_supports,
        " supports between them, left edges numbered from the left leg."
    ]))
}
