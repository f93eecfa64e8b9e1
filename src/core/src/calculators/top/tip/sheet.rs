//! Reads weight and load and says how near it is to tipping.

use super::{Answer, Input, reckon};
use crate::drawing::{Anchor, Board, Role, Scene, Shape, Size};
use crate::measure::{Length, OutOfRange, Rounding, Tape, text::decimal};
use crate::say;
use crate::sheet::{self, Ask, Caution, Figure, Source, Step, Value, Working};

pub(in crate::calculators::top) fn work(ask: &mut Ask) -> Option<sheet::Answer> {
    let weight = ask.number(ask.field("weight"));
    let load = ask.number(ask.field("load"));
    let beyond_legs = ask.length(ask.field("beyond_legs"));
    let leg_spacing = ask.length(ask.field("leg_spacing"));
    let input = Input {
        weight: weight?,
        load: load?,
        beyond_legs: beyond_legs?,
        leg_spacing: leg_spacing?,
    };
    match reckon(&input) {
        Ok(answer) => Some(lay_out(&input, &answer, ask.bench().tape)),
        Err(problems) => ask.refuse(&problems),
    }
}

fn lay_out(input: &Input, answer: &Answer, tape: Tape) -> sheet::Answer {
    let headline = match answer.most_load {
        Some(most) => Figure {
            id: "most_load",
            label: "Tips above",
            from: "at that place",
            value: Value::Exact(most, 1, "lb"),
        },
        None => Figure {
            id: "tip_verdict",
            label: "Tips",
            from: "",
            value: Value::Words(say!["No: the load stands over the feet."]),
        },
    };
    let mut laid = sheet::Answer::new(headline, working(input, answer));
    if let Some(most) = answer.most_beyond {
        laid.figures.push(Figure {
            id: "most_beyond",
            label: "Load may stand",
            from: "beyond outside of feet",
            value: Value::Length(most, Rounding::Down),
        });
    }
    laid.notes.push(say![
        "Sitting down hard or climbing on adds much to a load. Keep well below this, or fix it down."
    ]);
    laid.cautions.push(Caution::Load);
    laid.drawing = draw(input, tape).ok();
    laid
}

fn working(input: &Input, answer: &Answer) -> Working {
    let (weight, load) = (decimal(input.weight, 1), decimal(input.load, 1));
    let mut steps = Vec::new();
    if let Some(most) = answer.most_beyond {
        steps.push(Step::length(
            "farthest = weight × half of feet apart ÷ load",
            say![weight.clone(), " lb × ", input.leg_spacing, " ÷ 2 ÷ ", load, " lb"],
            most,
        ));
    }
    steps.push(Step {
        rule: "largest load = weight × half of feet apart ÷ how far beyond".into(),
        put_in: say![weight.clone(), " lb × ", input.leg_spacing, " ÷ 2 ÷ ", input.beyond_legs],
        gives: match answer.most_load {
            Some(most) => Value::Exact(most, 1, "lb"),
            None => Value::Words(say!["any"]),
        },
    });
    Working { steps, sources: vec![Source::Arithmetic] }
}

/// From the side: the top on its legs, the load beyond them, to scale along the top.
fn draw(input: &Input, tape: Tape) -> Result<Scene, OutOfRange> {
    const HIGH: f64 = 110.0;
    const THICK: f64 = 9.0;
    let beyond = input.beyond_legs;
    let wide = (input.leg_spacing + (beyond * 2)?)?;
    let mut board = Board::along(tape, wide, HIGH, 1, 1);
    let top = board.top() + 26.0;
    let floor = board.top() + HIGH;
    let (left, right) = (board.x(Length::ZERO), board.x(wide));
    board.add(Role::Wood, Shape::Rect(left, top, right - left, THICK));
    let foot = (board.size(input.leg_spacing) / 12.0).min(12.0);
    let far_foot = (wide - beyond)?;
    for x in [board.x(beyond), board.x(far_foot) - foot] {
        board.add(Role::Wood, Shape::Rect(x, top + THICK, foot, floor - top - THICK));
    }
    board.add(Role::Dimension, Shape::Line(left, floor, right, floor));
    let arrow = right.min(board.x(wide));
    board.add(Role::CutLine, Shape::Line(arrow, board.top(), arrow, top));
    board.add(
        Role::CutLine,
        Shape::Polyline(vec![(arrow - 4.0, top - 6.0), (arrow, top), (arrow + 4.0, top - 6.0)]),
    );
    let label = format!("{} lb", decimal(input.load, 0));
    let y = board.top() + 10.0;
    board.text(Role::StrongInk, arrow - 8.0, y, Anchor::End, Size::Small, label);
    let middle = f64::midpoint(left, right);
    let label = format!("weight {} lb", decimal(input.weight, 0));
    let y = f64::midpoint(top, floor) + 8.0;
    board.text(Role::Ink, middle, y, Anchor::Middle, Size::Small, label);
    board.dimension(0, beyond, far_foot);
    board.dimension(-1, far_foot, wide);
    Ok(board.scene(say![
        "The piece from the side: feet ",
        input.leg_spacing,
        " apart, the load ",
        beyond,
        " beyond them."
    ]))
}
