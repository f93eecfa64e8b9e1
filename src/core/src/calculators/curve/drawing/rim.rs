//! The round thing and what was measured on it.

use super::TALLEST;
use crate::calculators::curve::rim::{Answer, Input};
use crate::drawing::{Anchor, Role, Scene, Size, Sketch};
use crate::measure::Tape;
use crate::say;

pub(in super::super) fn draw(input: &Input, answer: &Answer, tape: Tape) -> Scene {
    let radius = answer.radius.to_f64();
    let mut sketch = Sketch::new(tape, (-radius, -radius), (radius, radius), TALLEST, (1, 1));
    sketch.circle(Role::Wood, (0.0, 0.0), radius);
    sketch.cross((0.0, 0.0));
    sketch.line(Role::Dimension, (0.0, 0.0), (radius, 0.0));
    let label = |length| sketch.board.amount(length);
    let words = format!("radius {}", label(answer.radius));
    let measured = match *input {
        Input::Around(around) => format!("{} once round", label(around)),
        Input::Straightedge { chord, rise } => {
            format!("straightedge {}, rise {}", label(chord), label(rise))
        }
    };
    let across = label(answer.diameter);
    if let Input::Straightedge { chord, rise } = *input {
        let (half, rise) = (chord.to_f64() / 2.0, rise.to_f64());
        let y = rise - radius;
        sketch.line(Role::CutLine, (-half, y), (half, y));
        sketch.line(Role::Dimension, (0.0, y), (0.0, -radius));
        sketch.dot((-half, y));
        sketch.dot((half, y));
    }
    let (x, y) = sketch.at((0.0, 0.0));
    sketch.board.text(Role::StrongInk, x, y + 22.0, Anchor::Middle, Size::Medium, words);
    let baseline = sketch.board.row(-1);
    sketch.board.text(Role::Ink, x, baseline, Anchor::Middle, Size::Small, measured);
    sketch.dimension(0, -radius, radius, across);
    sketch.board.scene(say!["A circle with a radius of ", answer.radius, "."])
}
