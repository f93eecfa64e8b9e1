//! The curves at full size, to trace.

use super::{arc, corner, s_curve, sagitta};
use crate::measure::{Angle, Length};
use crate::paper::{Ink, Template};
use crate::say;

/// Straight pieces of a drawn curve: even a radius of 20 ft strays less than 1/1000 in from them.
const PIECES: u32 = 240;

/// Paper below or beside the curve, in inches, so that the pages can be set to an edge.
const BORDER: f64 = 0.5;

fn along(from: f64, to: f64) -> impl Iterator<Item = f64> {
    (0..=PIECES).map(move |i| from + (to - from) * f64::from(i) / f64::from(PIECES))
}

/// The arc over its chord, with the middle marked.
pub(super) fn of_arc(input: &arc::Input, answer: &arc::Answer) -> Template {
    let (chord, rise, radius) = (input.chord.to_f64(), input.rise.to_f64(), answer.radius.to_f64());
    let half = chord / 2.0;
    let curve = along(0.0, chord).map(|x| (x, sagitta(radius, x - half))).collect();
    Template {
        title: say!["Arc, chord ", input.chord, ", rise ", input.rise],
        width: chord,
        height: rise + BORDER,
        inks: vec![
            Ink::Cut(curve),
            Ink::Guide(vec![(0.0, rise), (chord, rise)]),
            Ink::Guide(vec![(half, 0.0), (half, rise + BORDER)]),
            Ink::Words(half + 0.1, rise + BORDER - 0.1, "middle".to_owned()),
        ],
    }
}

/// One rounded corner, with both edges of the wood and the places where the round meets them.
pub(super) fn of_corner(input: &corner::Input, answer: &corner::Answer) -> Template {
    let (radius, tangent) = (input.radius.to_f64(), answer.tangent.to_f64());
    let angle = Angle::degrees(input.corner.to_f64());
    let reach = tangent + BORDER;
    // A blunt corner leans out to the left of its own tip.
    let left = (-angle.cos() * reach).max(0.0);
    let place = |x: f64, y: f64| (left + x, y);
    let turn = core::f64::consts::PI - angle.in_radians();
    let round = along(0.0, turn)
        .map(|t| {
            let turned = Angle::radians(t);
            place(tangent - radius * turned.sin(), radius - radius * turned.cos())
        })
        .collect();
    let side = |along: f64| place(angle.cos() * along, angle.sin() * along);
    let ends = [place(reach, 0.0), side(reach), place(tangent, radius)];
    let farthest = |pick: fn(&(f64, f64)) -> f64| ends.iter().map(pick).fold(0.0, f64::max);
    Template {
        title: say!["Corner, radius ", input.radius],
        width: farthest(|p| p.0),
        height: farthest(|p| p.1),
        inks: vec![
            Ink::Cut(round),
            Ink::Guide(vec![place(reach, 0.0), place(0.0, 0.0), side(reach)]),
            Ink::Hole(left + tangent, radius, 1.0 / 16.0),
        ],
    }
}

/// The S-curve, with the lines it starts and ends on and the place where the arcs meet.
pub(super) fn of_s_curve(input: &s_curve::Input, answer: &s_curve::Answer) -> Template {
    let (run, offset, radius) = (input.run.to_f64(), input.offset.to_f64(), answer.radius.to_f64());
    let half = run / 2.0;
    let height = |x: f64| {
        if x <= half { sagitta(radius, x) } else { offset - sagitta(radius, run - x) }
    };
    let curve = along(0.0, run).map(|x| (x, offset - height(x))).collect();
    let level = |y: Length| y.to_f64();
    Template {
        title: say!["S-curve, run ", input.run, ", offset ", input.offset],
        width: run,
        height: offset + BORDER,
        inks: vec![
            Ink::Cut(curve),
            Ink::Guide(vec![(0.0, level(input.offset)), (run, level(input.offset))]),
            Ink::Guide(vec![(0.0, 0.0), (run, 0.0)]),
            Ink::Guide(vec![(half, 0.0), (half, offset)]),
        ],
    }
}
