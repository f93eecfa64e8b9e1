//! The rounded corner, or both, with the round thing in place.

use super::TALLEST;
use crate::calculators::curve::corner::{Answer, Input};
use crate::calculators::curve::fields::{EDGE, RADIUS};
use crate::drawing::{Anchor, Role, Scene, Size, Sketch, points};
use crate::measure::{Angle, Tape};
use crate::say;

/// A corner at the right end of the upper edge, whose other side goes down.
struct Corner {
    x: f64,
    half: Angle,
    /// -1 for its mirror image at the left end.
    flip: f64,
}

impl Corner {
    /// A place so far along the edge from the corner.
    fn on_edge(&self, along: f64) -> (f64, f64) {
        (self.x - self.flip * along, 0.0)
    }

    /// A place so far down the other side.
    fn on_side(&self, along: f64) -> (f64, f64) {
        let corner = self.half.in_radians() * 2.0;
        let angle = Angle::radians(corner);
        (self.x - self.flip * along * angle.cos(), along * angle.sin())
    }

    /// The centre of a round of this radius.
    fn centre(&self, radius: f64) -> (f64, f64) {
        (self.x - self.flip * radius / self.half.tan(), radius)
    }

    /// The round from the edge to the side.
    fn round(&self, radius: f64) -> Vec<(f64, f64)> {
        let (x, y) = self.centre(radius);
        let turn = core::f64::consts::PI - 2.0 * self.half.in_radians();
        points(|t| {
            let angle = Angle::radians(turn * t);
            (x + self.flip * radius * angle.sin(), y - radius * angle.cos())
        })
    }
}

pub(in super::super) fn draw(input: &Input, answer: &Answer, tape: Tape) -> Scene {
    let (radius, tangent) = (input.radius.to_f64(), answer.tangent.to_f64());
    let half = Angle::degrees(input.corner.to_f64()).half();
    let whole = Angle::degrees(input.corner.to_f64());
    let edge = input.edge.map_or(tangent.max(radius) * 2.4, |edge| edge.to_f64()).max(tangent);
    let ghost = answer
        .fits
        .first()
        .map(|fit| (fit.diameter.to_f64() / 2.0, fit.gives.to_f64()))
        .filter(|(thing, _)| *thing < 1.6 * radius);
    // The sides go far enough down to show the round, but not so far that they meet.
    let down = (tangent * 1.4).max(radius * 2.2).max(ghost.map_or(0.0, |(thing, _)| thing * 2.1));
    let sides = if input.both { 2.0 } else { 1.0 };
    let meet = if whole.cos() > 0.0 { edge / (sides * whole.cos()) } else { f64::INFINITY };
    let side = (down / whole.sin()).min(meet * 0.98).max(tangent);
    let right = Corner { x: edge, half, flip: 1.0 };
    let left = Corner { x: 0.0, half, flip: -1.0 };
    let spread = (-whole.cos() * side).max(0.0);
    let depth = side * whole.sin();
    let from = ghost
        .map_or(0.0, |(thing, _)| (right.centre(thing).0 - thing).min(0.0))
        .min(if input.both { -spread } else { 0.0 });
    let low = depth.max(ghost.map_or(0.0, |(thing, _)| thing * 2.0));
    let mut sketch = Sketch::new(tape, (from, 0.0), (edge + spread, low), TALLEST, (2, 1));

    let mut wood = right.round(radius);
    wood.push(right.on_side(side));
    if input.both {
        wood.push(left.on_side(side));
        wood.extend(left.round(radius).into_iter().rev());
    } else {
        wood.extend([(0.0, depth), (0.0, 0.0)]);
    }
    sketch.polygon(Role::Wood, &wood);
    for corner in [&right].into_iter().chain(input.both.then_some(&left)) {
        let mut waste = corner.round(radius);
        waste.push(corner.on_edge(0.0));
        sketch.polygon(Role::Waste, &waste);
        sketch.polyline(Role::CutLine, &corner.round(radius));
        sketch.dot(corner.on_edge(tangent));
        sketch.dot(corner.on_side(tangent));
    }
    if let Some((thing, _)) = ghost {
        sketch.circle(Role::Ghost, right.centre(thing), thing);
    }
    let centre = right.centre(radius);
    sketch.cross(centre);

    let label = |length| sketch.board.amount(length);
    let radius_label = format!("radius {}", label(input.radius));
    let (touches, lost) = (label(answer.tangent), format!("{} off the corner", label(answer.lost)));
    let edge_label = input.edge.map(label);
    sketch.dimension(-1, edge - tangent, edge, touches);
    let (x, y) = sketch.at(centre);
    let at = (x, y + 20.0, Anchor::Middle);
    sketch.board.name(Role::StrongInk, at, radius_label, Some(RADIUS.id));
    let (x, _) = sketch.at((edge, 0.0));
    let baseline = sketch.board.row(-2);
    sketch.board.text(Role::Ink, x, baseline, Anchor::End, Size::Small, lost);
    if let Some(label) = edge_label {
        sketch.given(0, 0.0, edge, label, Some(EDGE.id));
    }
    sketch.board.scene(say![
        "A corner rounded with a radius of ",
        input.radius,
        "; the round meets the edges ",
        answer.tangent,
        " from the corner."
    ])
}
