//! Angles to scale: the leg against a plumb line, the lean from above, the sides and the saw.

mod leg;
mod sides;
mod two_ways;

pub(super) use leg::draw as leg;
pub(super) use sides::draw as sides;
pub(super) use two_ways::draw as two_ways;

use crate::drawing::{Role, Sketch, points};
use crate::measure::Angle;

/// A thin arc around `centre`, between two directions given from the `x` axis, `y` down.
fn angle_arc(sketch: &mut Sketch, centre: (f64, f64), radius: f64, from: Angle, to: Angle) {
    let (from, to) = (from.in_radians(), to.in_radians());
    let arc = points(|t| {
        let angle = Angle::radians(from + (to - from) * t);
        (centre.0 + radius * angle.cos(), centre.1 + radius * angle.sin())
    });
    sketch.polyline(Role::Tick, &arc);
}
