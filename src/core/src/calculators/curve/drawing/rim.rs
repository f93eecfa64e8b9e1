//! The round thing and what was measured on it.

use super::TALLEST;
use crate::calculators::curve::fields::{AROUND, SHORT_CHORD, SHORT_RISE};
use crate::calculators::curve::rim::{Answer, Input};
use crate::drawing::{Anchor, Role, Scene, Sketch};
use crate::measure::Tape;
use crate::say;

pub(in super::super) fn draw(input: &Input, answer: &Answer, tape: Tape) -> Scene {
    let radius = answer.radius.to_f64();
    let mut sketch = Sketch::new(tape, (-radius, -radius), (radius, radius), TALLEST, (1, 1));
    sketch.circle(Role::Wood, (0.0, 0.0), radius);
    sketch.cross((0.0, 0.0));
    let label = |length| sketch.board.amount(length);
    let words = format!("radius {}", label(answer.radius));
    let measured = match *input {
        Input::Around(around) => Some(format!("{} once round", label(around))),
        Input::Straightedge { .. } => None,
    };
    let across = label(answer.diameter);
    if let Input::Straightedge { chord, rise: rise_length } = *input {
        let (half, rise) = (chord.to_f64() / 2.0, rise_length.to_f64());
        let y = rise - radius;
        sketch.line(Role::CutLine, (-half, y), (half, y));
        let ends = [(-half, y), (half, y), (0.0, y), (0.0, -radius)].map(|place| sketch.at(place));
        let [left, right, foot, top] = ends;
        let label = sketch.board.amount(rise_length);
        sketch.board.between(foot, top, label, Some(SHORT_RISE.id));
        let label = sketch.board.amount(chord);
        sketch.board.between(
            (left.0, left.1 + 12.0),
            (right.0, right.1 + 12.0),
            label,
            Some(SHORT_CHORD.id),
        );
        sketch.dot((-half, y));
        sketch.dot((half, y));
    }
    let (x, y) = sketch.at((0.0, 0.0));
    sketch.board.name(Role::StrongInk, (x, y + 28.0, Anchor::Middle), words, None);
    if let Some(measured) = measured {
        let at = (x, sketch.board.row(-1), Anchor::Middle);
        sketch.board.name(Role::Ink, at, measured, Some(AROUND.id));
    }
    sketch.dimension(0, -radius, radius, across);
    sketch.board.scene(say!["A circle with a radius of ", answer.radius, "."])
}
