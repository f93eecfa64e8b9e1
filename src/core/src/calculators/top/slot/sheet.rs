//! Reads the screws and lays the slots out.

use super::{Answer, Input, reckon};
use crate::calculators::top::Change;
use crate::calculators::top::fields::{
    FROM_FIXED_SCREW_COLUMN, HOLE, LOOSE_BY, LOOSE_SCREWS, MOVES_COLUMN, SLOT_END_TO_END_COLUMN,
    SLOT_LONG, SLOTS, too_large,
};
use crate::drawing::{Board, Role, Scene, Shape};
use crate::measure::{Length, OutOfRange, Rounding, Tape};
use crate::say;
use crate::sheet::{self, Act, Ask, Caution, Note, Source, Step, Value, Working};

pub(in crate::calculators::top) fn work(ask: &mut Ask) -> Option<sheet::Answer> {
    let from_fixed = ask.lengths(&LOOSE_SCREWS);
    let hole = ask.length(&HOLE);
    let change = Change::read(ask);
    let (from_fixed, hole) = (from_fixed?, hole?);
    if from_fixed.is_empty() {
        let sentence = say!["Write how far each loose screw is from the fixed one."];
        ask.refuse_field(&LOOSE_SCREWS, "no-screws", sentence);
        return None;
    }
    let input = Input { from_fixed, hole, change: change? };
    match reckon(&input) {
        Ok(answer) => Some(lay_out(&input, &answer, ask.bench().tape)),
        Err(refused) => ask.refused(refused.into(), too_large()),
    }
}

fn lay_out(input: &Input, answer: &Answer, tape: Tape) -> sheet::Answer {
    let up = |length| Value::Length(length, Rounding::Up);
    let loose_by = LOOSE_BY.called("Loose by").figure("across the grain", up(answer.most));
    // Of slots that come from one hole, the one that is loosest is the longest.
    let longest = answer.slots.iter().map(|slot| slot.length).max();
    let (headline, second) = match longest {
        Some(longest) => (SLOT_LONG.figure("end to end", up(longest)), Some(loose_by)),
        None => (loose_by, None),
    };
    let mut laid = sheet::Answer::new(headline, working(input, answer));
    laid.figures.extend(second);
    laid.figures.extend(input.change.figure());
    let rows = answer
        .slots
        .iter()
        .map(|slot| vec![slot.from_fixed.into(), up(slot.moves_in.abs()), up(slot.length)]);
    laid.tables.push(
        SLOTS.table(
            &[FROM_FIXED_SCREW_COLUMN, MOVES_COLUMN, SLOT_END_TO_END_COLUMN],
            rows.collect(),
        ),
    );
    let shrinks = answer.slots.first().is_some_and(|slot| slot.moves_in.is_positive());
    laid.notes.push(if answer.most.is_zero() {
        Note::new("round_holes_will_do", say!["The wood does not move: round holes will do."])
    } else if shrinks {
        Note::new(
            "lengthen_outward",
            say!["It shrinks: lengthen each hole outward, away from the fixed screw."],
        )
    } else {
        Note::new(
            "lengthen_inward",
            say!["It swells: lengthen each hole inward, towards the fixed screw."],
        )
    });
    laid.notes.push(Note::new(
        "fix_one_slot_the_others",
        say!["Fix the screw near the middle, slot the others across the grain, and use washers."],
    ));
    laid.cautions = Caution::of(&[Act::Drill]);
    laid.drawing = draw(input, answer, tape).ok();
    laid
}

fn working(input: &Input, answer: &Answer) -> Working {
    let (mut steps, mut sources) = input.change.working();
    for slot in &answer.slots {
        let moves = input.change.lost_of("distance from the fixed screw", slot.from_fixed);
        steps.push(Step::of("moves", moves, slot.moves_in));
    }
    if !sources.contains(&Source::Arithmetic) {
        sources.push(Source::Arithmetic);
    }
    Working { steps, sources }
}

/// The plank from above: the fixed screw on the left, the slots to its right, all to scale.
fn draw(input: &Input, answer: &Answer, tape: Tape) -> Result<Scene, OutOfRange> {
    const HIGH: f64 = 60.0;
    let farthest = answer.slots.iter().map(|slot| slot.from_fixed).max();
    let farthest = farthest.unwrap_or(Length::ZERO);
    let rim = (farthest / 5)?;
    let wide = ((farthest + (rim * 2)?)? + answer.most)?;
    let mut board = Board::along(tape, wide, HIGH, 1, 1);
    let (top, middle) = (board.top(), board.top() + HIGH / 2.0);
    let left = board.x(Length::ZERO);
    board.add(Role::Wood, Shape::Rect(left, top, board.size(wide), HIGH));
    let radius = (board.size(input.hole) / 2.0).min(HIGH / 2.0);
    board.add(Role::Fastener, Shape::Circle(board.x(rim), middle, radius));
    let mut amounts = vec![(rim, "fixed".to_owned())];
    for slot in &answer.slots {
        let at = board.x((rim + slot.from_fixed)?);
        let moves = board.size(slot.moves_in);
        let from = at - radius + moves.min(0.0);
        let shape = Shape::Rect(from, middle - radius, 2.0 * radius + moves.abs(), 2.0 * radius);
        board.add(Role::Hole, shape);
        board.add(Role::Fastener, Shape::Circle(at, middle, radius * 0.8));
        amounts.push(((rim + slot.from_fixed)?, board.amount(slot.from_fixed)));
    }
    crate::order::sort_by(&mut amounts, |a, b| a.0.cmp(&b.0));
    board.labels(0, &amounts);
    board.tell("across the grain, from the fixed screw");
    board.labelled(
        -1,
        (rim - (input.hole / 2)?)?,
        (rim + (input.hole / 2)?)?,
        format!("hole {}", board.amount(input.hole)),
        Some(HOLE.id),
    );
    Ok(board.scene(say![
        "A plank with a fixed screw on the left and slots to its right, the farthest loose by ",
        answer.most,
        "."
    ]))
}
