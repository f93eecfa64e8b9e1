//! The arc on its board.

use super::TALLEST;
use crate::calculators::curve::arc::{Answer, Input};
use crate::calculators::curve::fields::{CHORD, RISE, STEP};
use crate::calculators::curve::{Mark, sagitta};
use crate::drawing::{Anchor, Role, Scene, Size, Sketch, points};
use crate::measure::{Length, Tape};
use crate::say;

pub(in super::super) fn draw(input: &Input, answer: &Answer, crown: bool, tape: Tape) -> Scene {
    let (chord, rise) = (input.chord.to_f64(), input.rise.to_f64());
    let (half, radius) = (chord / 2.0, answer.radius.to_f64());
    let wood = if crown { 0.0 } else { rise };
    let depth = match input.board {
        Some(board) => board.width.to_f64(),
        None => rise + rise.max(chord / 8.0),
    };
    // The chord is at 0, up is negative; the board lies above it when hollow.
    let top = -(if crown { rise } else { depth });
    let bottom = top + depth;
    // The round thing lies under its arc; one much wider than the arc would shrink the board.
    let ghost = answer
        .fits
        .first()
        .map(|fit| (fit.diameter.to_f64() / 2.0, fit.gives.to_f64()))
        .filter(|(thing, _)| *thing < chord);
    let (side, high, low) = ghost.map_or((half, top, bottom), |(thing, gives)| {
        (half.max(thing), top.min(-gives), bottom.max(2.0 * thing - gives))
    });
    let window = |rows| Sketch::new(tape, (-side, high), (side, low), TALLEST, rows);
    let probe = window((1, 1));
    let numbers = |of: fn(&Mark) -> Length| -> Vec<(f64, String)> {
        let of = |mark: &Mark| (mark.along.to_f64(), probe.board.amount(of(mark)));
        answer.marks.iter().map(of).collect()
    };
    let (along, heights) = (numbers(|mark| mark.along), numbers(|mark| mark.height));
    let (of_along, of_heights) = (probe.rows_of(&along), probe.rows_of(&heights));
    // The step has a row over its line, beside the radius.
    let above = of_along + of_heights + 2;
    let mut sketch = window((above, 1));

    let curve = points(|t| {
        let x = (2.0 * t - 1.0) * half;
        (x, sagitta(radius, x) - rise)
    });
    let mut wood_edge = curve.clone();
    let mut waste = curve.clone();
    if crown {
        wood_edge.extend([(half, bottom), (-half, bottom)]);
        waste.extend([(half, top), (-half, top)]);
    } else {
        wood_edge.extend([(half, 0.0), (half, top), (-half, top), (-half, 0.0)]);
    }
    sketch.polygon(Role::Wood, &wood_edge);
    sketch.polygon(Role::Waste, &waste);
    if let Some((thing, gives)) = ghost {
        sketch.circle(Role::Ghost, (0.0, thing - gives), thing);
        sketch.cross((0.0, thing - gives));
    }
    sketch.line(Role::Guide, (-half, 0.0), (half, 0.0));
    for mark in &answer.marks {
        let (along, up) = (mark.along.to_f64(), -mark.height.to_f64());
        for x in [along, -along] {
            sketch.line(Role::Guide, (x, high), (x, up));
        }
    }
    sketch.polyline(Role::CutLine, &curve);

    let label = |length| sketch.board.amount(length);
    let (radius_label, chord_label) = (label(answer.radius), label(input.chord));
    let rise_label = label(input.rise);
    let left = answer.narrowest.map(label);
    let thing = answer.fits.first().filter(|_| ghost.is_some()).map(|fit| label(fit.diameter));
    sketch.labels_in_rows(-1, of_heights, &heights);
    sketch.labels_in_rows(-1 - of_heights as i8, of_along, &along);
    let (x, _) = sketch.at((0.0, 0.0));
    sketch.board.tell("upper numbers: from the middle; lower: up from the straight line");
    let baseline = sketch.board.row(-(above as i8));
    let headline = format!("radius {radius_label}");
    sketch.board.text(Role::StrongInk, x, baseline, Anchor::Middle, Size::Small, headline);
    if let Some(left) = left {
        let (from, to) = if crown { (0.0, bottom) } else { (top, top + depth - wood) };
        let (_, y) = sketch.at((0.0, (from + to) / 2.0));
        if (to - from) * sketch.scale() > 16.0 {
            // Beside the middle, so that no guide runs through it.
            let words = format!("{left} left");
            let x = if crown { sketch.at((-half, 0.0)).0 + 4.0 } else { x + 4.0 };
            sketch.board.name(Role::Ink, (x, y + 4.0, Anchor::Start), words, None);
        }
    }
    if let (Some(thing), Some((radius, gives))) = (thing, ghost) {
        let (_, y) = sketch.at((0.0, radius - gives));
        let words = format!("{thing} across");
        sketch.board.text(Role::Ink, x, y + 20.0, Anchor::Middle, Size::Small, words);
    }
    if answer.marks.len() > 2 {
        // To the left of the middle, where no numbers are.
        let label = format!("every {}", sketch.board.amount(input.step));
        sketch.given(1 - above as i8, -input.step.to_f64(), 0.0, label, Some(STEP.id));
    }
    sketch.given(0, -half, half, chord_label, Some(CHORD.id));
    let ((x, top), (_, bottom)) = (sketch.at((0.0, -rise)), sketch.at((0.0, 0.0)));
    sketch.board.between((x, top), (x, bottom), rise_label, Some(RISE.id));
    sketch.board.scene(say![
        "An arc ",
        input.chord,
        " wide with a rise of ",
        input.rise,
        ", radius ",
        answer.radius,
        ", with its marks from the middle."
    ])
}
