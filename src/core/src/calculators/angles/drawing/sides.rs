//! The box from above, the board under the saw, and the blade.

use super::angle_arc;
use crate::calculators::angles::Lay;
use crate::calculators::angles::fields::ACROSS;
use crate::calculators::angles::sides::{Answer, Input};
use crate::drawing::{Anchor, Role, Scene, Size, Sketch};
use crate::measure::{Angle, Tape};
use crate::say;

/// The picture is laid out in page units: 304 wide.
const WIDE: f64 = 304.0;
const HIGH: f64 = 196.0;

pub(in super::super) fn draw(input: &Input, answer: &Answer, tape: Tape) -> Scene {
    let mut sketch = Sketch::new(tape, (0.0, 0.0), (WIDE, HIGH), HIGH, (1, 0));
    from_above(&mut sketch, input, answer);
    gauge(&mut sketch, input, answer);
    blade(&mut sketch, input, answer);
    let words = format!("{} sides, lean {:.1}°", input.sides, input.lean.to_f64());
    let baseline = sketch.board.row(-1);
    sketch.board.text(Role::StrongInk, 170.0, baseline, Anchor::Middle, Size::Small, words);
    sketch.board.scene(say![format!(
        "{} sides leaning {:.2} degrees: gauge {:.2} degrees from square, blade {:.2} degrees from upright.",
        input.sides,
        input.lean.to_f64(),
        answer.setting.gauge.in_degrees(),
        answer.setting.tilt.in_degrees()
    )])
}

/// The wide end and the narrow end as two rings, joined at the corners.
fn from_above(sketch: &mut Sketch, input: &Input, answer: &Answer) {
    let centre = (62.0, 98.0);
    let wide = 58.0;
    // To scale when sizes are given; else as if the board were a third of the width.
    let narrow = match answer.edges {
        Some((outer, inner)) => wide * inner.to_f64() / outer.to_f64(),
        None => wide * (1.0 - 0.66 * Angle::degrees(input.lean.to_f64()).sin()),
    };
    // Upright sides would hide their own thickness.
    let narrow = narrow.min(wide * 0.9);
    let half = answer.half_turn.in_radians();
    let corner = |radius: f64, n: u32| {
        // A side, not a corner, faces the user.
        let angle = Angle::radians(half * (1.0 + 2.0 * f64::from(n)) + Angle::SQUARE.in_radians());
        (centre.0 + radius * angle.cos(), centre.1 + radius * angle.sin())
    };
    let ring = |radius: f64| (0..input.sides).map(|n| corner(radius, n)).collect::<Vec<_>>();
    sketch.polygon(Role::Wood, &ring(wide));
    sketch.polygon(Role::Mate, &ring(narrow));
    for n in 0..input.sides {
        sketch.line(Role::CutLine, corner(wide, n), corner(narrow, n));
    }
    let (x, y) = sketch.at((centre.0, HIGH - 14.0));
    sketch.board.name(Role::Ink, (x, y, Anchor::Middle), "from above".to_owned(), None);
    if let Some(size) = &input.size {
        let (from, to) = (sketch.at((4.0, HIGH - 30.0)), sketch.at((120.0, HIGH - 30.0)));
        let label = sketch.board.amount(size.across);
        sketch.board.between(from, to, label, Some(ACROSS.id));
    }
}

/// The board against the gauge, from above; the blade runs up the page.
fn gauge(sketch: &mut Sketch, input: &Input, answer: &Answer) {
    let swing = answer.setting.gauge;
    let (blade, y) = (236.0, 44.0);
    // From above a board on edge shows its thickness.
    let width = match input.lay {
        Lay::Flat => 30.0,
        Lay::OnEdge => 10.0,
    };
    // The board runs to the left of the blade, swung away from square.
    let along = (-swing.cos(), swing.sin());
    let over = (-swing.sin(), -swing.cos());
    let length = 92.0_f64.min(82.0 / swing.cos().max(0.05)).min(70.0 / swing.sin().max(0.05));
    let corner = |a: f64, w: f64| (blade + along.0 * a + over.0 * w, y + along.1 * a + over.1 * w);
    // Its end lies along the blade.
    let slant = width * swing.tan();
    sketch.polygon(
        Role::Wood,
        &[corner(0.0, 0.0), corner(length, 0.0), corner(length, width), corner(-slant, width)],
    );
    sketch.polygon(
        Role::Fence,
        &[corner(12.0, -1.0), corner(length, -1.0), corner(length, -7.0), corner(12.0, -7.0)],
    );
    sketch.line(Role::Blade, (blade, y - 42.0), (blade, y + 34.0));
    sketch.line(Role::Guide, (blade - 92.0, y), (blade + 14.0, y));
    let left = Angle::radians(core::f64::consts::PI);
    let board = Angle::radians(core::f64::consts::PI - swing.in_radians());
    angle_arc(sketch, (blade, y), 70.0, board, left);
    let (x, y) = sketch.at((blade + 8.0, y + 20.0));
    let words = format!("gauge {:.1}°", swing.in_degrees() + 0.0);
    sketch.board.name(Role::StrongInk, (x, y + 10.0, Anchor::Start), words, None);
}

/// The blade from where the user stands, tilted, over the table.
fn blade(sketch: &mut Sketch, input: &Input, answer: &Answer) {
    let tilt = answer.setting.tilt;
    let (foot, table) = (236.0, HIGH - 26.0);
    let (thick, label) = match input.lay {
        Lay::Flat => (12.0, "face down"),
        Lay::OnEdge => (44.0, "on edge"),
    };
    // The blade leans to the right; the board lies on its left.
    let reach = |height: f64| (foot + height * tilt.tan(), table - height);
    sketch.polygon(
        Role::Wood,
        &[(foot - 90.0, table), (foot, table), reach(thick), (foot - 90.0, table - thick)],
    );
    sketch.line(Role::Fence, (foot - 100.0, table), (WIDE, table));
    let blade = 58.0;
    let top = (foot + blade * tilt.sin(), table - blade * tilt.cos());
    sketch.line(Role::CutLine, (foot, table), top);
    sketch.line(Role::Guide, (foot, table), (foot, table - blade - 4.0));
    let up = Angle::radians(-Angle::SQUARE.in_radians());
    let leaning = Angle::radians(tilt.in_radians() - Angle::SQUARE.in_radians());
    angle_arc(sketch, (foot, table), 48.0, up, leaning);
    let (x, y) = sketch.at((foot + 8.0, table + 18.0));
    let words = format!("{:.1}° tilt", tilt.in_degrees() + 0.0);
    sketch.board.name(Role::StrongInk, (x, y, Anchor::Start), words, None);
    let (x, y) = sketch.at((foot - 50.0, table + 16.0));
    sketch.board.name(Role::Ink, (x, y, Anchor::Middle), label.to_owned(), None);
}
