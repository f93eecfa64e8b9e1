//! Curves to scale: the board, the curve, the marks, and the round thing ghosted in its place.

mod arc;
mod corner;
mod rim;
mod s_curve;

pub(super) use arc::draw as arc;
pub(super) use corner::draw as corner;
pub(super) use rim::draw as rim;
pub(super) use s_curve::draw as s_curve;

/// Tallest picture, in page units.
const TALLEST: f64 = 220.0;
