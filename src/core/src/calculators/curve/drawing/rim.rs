//! The round thing and what was measured on it.

use super::Sheet;
use crate::calculators::curve::rim::{Answer, Input};
use crate::drawing::{Anchor, Role, Scene, Size};
use crate::measure::Tape;
use crate::say;

pub(in super::super) fn draw(input: &Input, answer: &Answer, tape: Tape) -> Scene {
    let radius = answer.radius.to_f64();
    let mut sheet = Sheet::new(tape, (-radius, -radius), (radius, radius), (1, 1));
    sheet.circle(Role::Wood, (0.0, 0.0), radius);
    sheet.cross((0.0, 0.0));
    sheet.line(Role::Dimension, (0.0, 0.0), (radius, 0.0));
    let label = |length| sheet.board.amount(length);
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
        sheet.line(Role::CutLine, (-half, y), (half, y));
        sheet.line(Role::Dimension, (0.0, y), (0.0, -radius));
        sheet.dot((-half, y));
        sheet.dot((half, y));
    }
    let (x, y) = sheet.at((0.0, 0.0));
    sheet.board.text(Role::StrongInk, x, y + 22.0, Anchor::Middle, Size::Medium, words);
    let baseline = sheet.board.row(-1);
    sheet.board.text(Role::Ink, x, baseline, Anchor::Middle, Size::Small, measured);
    sheet.dimension(0, -radius, radius, across);
    sheet.board.scene(say!["A circle with a radius of ", answer.radius, "."])
}
