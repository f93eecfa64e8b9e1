//! The leg seen square to its lean, with a plumb line.

use super::angle_arc;
use crate::calculators::angles::fields::{ANGLE, FOOT_OUT, HEIGHT, WIDTH};
use crate::calculators::angles::leg::{Answer, Input};
use crate::drawing::{Anchor, Role, Scene, Sketch};
use crate::measure::{Angle, Tape};
use crate::say;

pub(in super::super) fn draw(input: &Input, answer: &Answer, tape: Tape) -> Scene {
    let (height, out) = (input.height.to_f64(), answer.foot_out.to_f64());
    let cut = answer.end_cut.to_f64();
    // The outer corner of the top is at 0; the foot stands out to the right. The room on the
    // left is for the height.
    let room = height * 0.2;
    let mut sketch =
        Sketch::new(tape, (-cut - room, 0.0), (out.max(0.3 * height), height), 220.0, (1, 2));
    let right = out.max(0.3 * height);
    sketch.polygon(Role::Wood, &[(-cut, 0.0), (0.0, 0.0), (out, height), (out - cut, height)]);
    sketch.line(Role::Ghost, (-cut - room, 0.0), (right, 0.0));
    sketch.line(Role::Ghost, (-cut - room, height), (right, height));
    sketch.line(Role::Guide, (0.0, 0.0), (0.0, height));
    sketch.line(Role::CutLine, (-cut, 0.0), (0.0, 0.0));
    sketch.line(Role::CutLine, (out - cut, height), (out, height));
    let plumb = Angle::SQUARE;
    let leg = Angle::radians(plumb.in_radians() - answer.lean.in_radians());
    angle_arc(&mut sketch, (0.0, 0.0), height * 0.55, leg, plumb);
    let left = -cut - room * 0.5;

    let label = |length| sketch.board.amount(length);
    let height_label = label(input.height);
    let (out_label, cut_label) = (label(answer.foot_out), label(answer.end_cut));
    let blank =
        format!("blank {}, both ends {:.1}°", label(answer.blank), answer.lean.in_degrees());
    let (from, to) = (sketch.at((left, 0.0)), sketch.at((left, height)));
    sketch.board.between(from, to, height_label, Some(HEIGHT.id));
    let (x, y) = sketch.at((out * 0.6, height * 0.6));
    let lean = format!("{:.1}°", answer.lean.in_degrees());
    sketch.board.name(Role::StrongInk, (x + 16.0, y, Anchor::Start), lean, Some(ANGLE.id));
    let baseline = sketch.board.row(-1);
    sketch.board.row_of(8.0, baseline, blank);
    sketch.given(0, 0.0, out, format!("{out_label} out"), Some(FOOT_OUT.id));
    sketch.dimension(1, out - cut, out, cut_label);
    // Square across the leg, at two fifths of its way down.
    let (sin, cos) = (answer.lean.sin(), answer.lean.cos());
    let place = (out * 0.3 - cut, height * 0.3);
    let from = sketch.at(place);
    let wide = input.width.to_f64() * sketch.scale();
    let label = sketch.board.amount(input.width);
    let to = (from.0 + wide * cos, from.1 - wide * sin);
    sketch.board.between(from, to, label, Some(WIDTH.id));
    sketch.board.scene(say![
        "A leg ",
        input.height,
        format!(" high that leans {:.2} degrees; its foot stands ", answer.lean.in_degrees()),
        answer.foot_out,
        " out."
    ])
}
