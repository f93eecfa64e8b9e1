//! The S-curve on its board.

use super::TALLEST;
use crate::calculators::curve::fields::{OFFSET, RUN};
use crate::calculators::curve::s_curve::{Answer, Input};
use crate::calculators::curve::sagitta;
use crate::drawing::{Anchor, Role, Scene, Size, Sketch, points};
use crate::measure::Tape;
use crate::say;

pub(in super::super) fn draw(input: &Input, answer: &Answer, tape: Tape) -> Scene {
    let (run, offset) = (input.run.to_f64(), input.offset.to_f64());
    let radius = answer.radius.to_f64();
    let depth = match input.board {
        Some(board) => board.width.to_f64(),
        None => offset + offset.max(run / 6.0),
    };
    // The line of the start is at 0, up is negative.
    let bottom = depth - offset;
    let mut sketch = Sketch::new(tape, (0.0, -offset), (run, bottom), TALLEST, (3, 2));
    let curve = points(|t| {
        let x = t * run;
        let up = if t <= 0.5 { sagitta(radius, x) } else { offset - sagitta(radius, run - x) };
        (x, -up)
    });
    let mut wood = curve.clone();
    wood.extend([(run, bottom), (0.0, bottom)]);
    let mut waste = curve.clone();
    waste.push((0.0, -offset));
    sketch.polygon(Role::Wood, &wood);
    sketch.polygon(Role::Waste, &waste);
    for mark in &answer.marks {
        let x = mark.along.to_f64();
        sketch.line(Role::Guide, (x, -offset), (x, -mark.height.to_f64()));
    }
    sketch.line(Role::Guide, (0.0, 0.0), (run, 0.0));
    if let Some(fit) = answer.fits.first() {
        // Only the part of the thing that draws the first arc: the whole would hide the board.
        let (thing, gives) = (fit.diameter.to_f64() / 2.0, fit.gives.to_f64());
        if gives <= offset.max(depth) {
            let ghost = points(|t| (t * run / 2.0, -sagitta(thing, t * run / 2.0)));
            sketch.polyline(Role::Ghost, &ghost);
        }
    }
    sketch.polyline(Role::CutLine, &curve);
    sketch.dot((run / 2.0, -offset / 2.0));

    let label = |length| sketch.board.amount(length);
    let along: Vec<_> =
        answer.marks.iter().map(|mark| (mark.along.to_f64(), label(mark.along))).collect();
    let heights: Vec<_> =
        answer.marks.iter().map(|mark| (mark.along.to_f64(), label(mark.height))).collect();
    let words = format!("radius {} both arcs", label(answer.radius));
    let (join_label, run_label) = (label(answer.join.along), label(input.run));
    let left = answer.narrowest.map(label);
    sketch.labels(-2, &along);
    sketch.labels(-1, &heights);
    let (x, _) = sketch.at((run / 2.0, 0.0));
    let baseline = sketch.board.row(-3);
    sketch.board.text(Role::StrongInk, x, baseline, Anchor::Middle, Size::Small, words);
    if let Some(left) = left
        && bottom * sketch.scale() > 16.0
    {
        let (x, y) = sketch.at((0.0, bottom / 2.0));
        let words = format!("{left} left");
        sketch.board.name(Role::Ink, (x + 4.0, y + 4.0, Anchor::Start), words, None);
    }
    sketch.dimension(0, 0.0, run / 2.0, join_label);
    sketch.given(1, 0.0, run, run_label, Some(RUN.id));
    let label = sketch.board.amount(input.offset);
    let ((x, top), (_, bottom)) = (sketch.at((run, -offset)), sketch.at((run, 0.0)));
    sketch.board.between((x - 14.0, top), (x - 14.0, bottom), label, Some(OFFSET.id));
    sketch.board.scene(say![
        "An S-curve over a run of ",
        input.run,
        " and an offset of ",
        input.offset,
        ", both arcs with a radius of ",
        answer.radius,
        "."
    ])
}
