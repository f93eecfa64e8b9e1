//! Reads weight and load and says how near it is to tipping.

use super::{Answer, Input, reckon};
use crate::calculators::top::fields::{
    BEYOND_LEGS, LEG_SPACING, LOAD, MOST_BEYOND, MOST_LOAD, TIP_VERDICT, WEIGHT, too_large,
};
use crate::drawing::{Anchor, Board, Role, Scene, Shape, Size};
use crate::measure::{Length, OutOfRange, Rounding, Tape};
use crate::say;
use crate::sheet::{
    self, Act, Amount, Ask, Caution, Note, Source, Step, Term, Value, Working, amount_text,
};

pub(in crate::calculators::top) fn work(ask: &mut Ask) -> Option<sheet::Answer> {
    let weight = ask.number(&WEIGHT);
    let load = ask.number(&LOAD);
    let beyond_legs = ask.length(&BEYOND_LEGS);
    let leg_spacing = ask.length(&LEG_SPACING);
    let input = Input {
        weight: weight?,
        load: load?,
        beyond_legs: beyond_legs?,
        leg_spacing: leg_spacing?,
    };
    match reckon(&input) {
        Ok(answer) => Some(lay_out(&input, &answer, ask.bench().tape)),
        Err(refused) => ask.refused(refused, too_large()),
    }
}

fn lay_out(input: &Input, answer: &Answer, tape: Tape) -> sheet::Answer {
    let headline = match answer.most_load {
        Some(most) => {
            MOST_LOAD.called("Tips above").figure("at that place", Value::Exact(most, 1, "lb"))
        }
        None => TIP_VERDICT.figure("", Value::Words(say!["No: the load stands over the feet."])),
    };
    let mut laid = sheet::Answer::new(headline, working(input, answer));
    if let Some(most) = answer.most_beyond {
        laid.figures.push(
            MOST_BEYOND
                .called("Load may stand")
                .figure("beyond outside of feet", Value::Length(most, Rounding::Down)),
        );
    }
    laid.notes.push(Note::new("keep_well_below", say![
        "Sitting down hard or climbing on adds much to a load. Keep well below this, or fix it down."
    ]));
    laid.cautions = Caution::of(&[Act::Load]);
    laid.drawing = draw(input, tape).ok();
    laid
}

fn working(input: &Input, answer: &Answer) -> Working {
    let pounds = |number| Amount::with_unit(number, "lb");
    // The weight holds it down with half of what lies between the feet.
    let holds = || {
        let apart = Term::of("feet apart", input.leg_spacing);
        Term::of("weight", pounds(input.weight)) * apart / Term::fixed(2)
    };
    let mut steps = Vec::new();
    if let Some(most) = answer.most_beyond {
        let load = Term::of("load", pounds(input.load));
        steps.push(Step::of("farthest", holds() / load, most));
    }
    steps.push(match answer.most_load {
        Some(most) => {
            let beyond = Term::of("how far beyond", input.beyond_legs);
            Step::of("largest load", holds() / beyond, Value::Exact(most, 1, "lb"))
        }
        None => Step::in_words(
            "a load over the feet lifts nothing",
            say![input.beyond_legs, " beyond the feet"],
            Value::Words(say!["any"]),
        ),
    });
    Working { steps, sources: vec![Source::Arithmetic] }
}

/// From the side: the top on its legs, the load beyond them, to scale along the top.
fn draw(input: &Input, tape: Tape) -> Result<Scene, OutOfRange> {
    const HIGH: f64 = 110.0;
    const THICK: f64 = 9.0;
    let beyond = input.beyond_legs;
    let wide = (input.leg_spacing + (beyond * 2)?)?;
    let is_metric = tape.unit().is_metric();
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
    board.add(Role::Tick, Shape::Line(left, floor, right, floor));
    let arrow = right.min(board.x(wide));
    board.add(Role::CutLine, Shape::Line(arrow, board.top(), arrow, top));
    board.add(
        Role::CutLine,
        Shape::Polyline(vec![(arrow - 4.0, top - 6.0), (arrow, top), (arrow + 4.0, top - 6.0)]),
    );
    let label = amount_text(input.load, "lb", is_metric);
    let y = board.top() + 10.0;
    board.name(Role::StrongInk, (arrow - 8.0, y, Anchor::End), label, None);
    let middle = f64::midpoint(left, right);
    let label = format!("weight {}", amount_text(input.weight, "lb", is_metric));
    let y = f64::midpoint(top, floor) + 8.0;
    board.text(Role::Ink, middle, y, Anchor::Middle, Size::Small, label);
    board.given(0, beyond, far_foot, Some(LEG_SPACING.id));
    board.given(-1, far_foot, wide, Some(BEYOND_LEGS.id));
    Ok(board.scene(say![
        "The piece from the side: feet ",
        input.leg_spacing,
        " apart, the load ",
        beyond,
        " beyond them."
    ]))
}
