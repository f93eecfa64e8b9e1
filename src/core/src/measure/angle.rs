//! [`Angle`]: the one place of trigonometry, through `libm`, so that every machine agrees.

use core::f64::consts::PI;

/// An angle: a floating-point number, because sines and tangents are irrational anyway.
///
/// What it is measured from is said by the field that holds it. Each function is right
/// to the last digit or two of a 64-bit float, far below what
/// [`Length::near`](super::Length::near) keeps.
///
/// ```
/// # use reckoner_core::measure::Angle;
/// let splay = Angle::degrees(10.0);
/// assert!((17.0 / splay.cos() - 17.2623).abs() < 1e-4);
/// assert!((Angle::atan(splay.tan()).in_degrees() - 10.0).abs() < 1e-12);
/// ```
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd)]
pub struct Angle(f64);

impl Angle {
    /// Square: 90 degrees.
    pub const SQUARE: Angle = Angle(PI / 2.0);

    /// So many degrees.
    #[must_use]
    pub fn degrees(degrees: f64) -> Angle {
        Angle(degrees * PI / 180.0)
    }

    /// So many radians.
    #[must_use]
    pub fn radians(radians: f64) -> Angle {
        Angle(radians)
    }

    /// The angle with this sine, from -90 to 90 degrees.
    ///
    /// A sine beyond 1 either way, which only rounding can give, counts as 1.
    #[must_use]
    pub fn asin(sine: f64) -> Angle {
        Angle(libm::asin(sine.clamp(-1.0, 1.0)))
    }

    /// The angle with this tangent, from -90 to 90 degrees.
    #[must_use]
    pub fn atan(tangent: f64) -> Angle {
        Angle(libm::atan(tangent))
    }

    /// The direction from the `x` axis towards the `y` axis, from -180 to 180 degrees; 0 when
    /// both are 0.
    #[must_use]
    pub fn atan2(y: f64, x: f64) -> Angle {
        Angle(libm::atan2(y, x))
    }

    /// In degrees.
    #[must_use]
    pub fn in_degrees(self) -> f64 {
        self.0 * 180.0 / PI
    }

    /// In radians.
    #[must_use]
    pub fn in_radians(self) -> f64 {
        self.0
    }

    /// What is missing to 90 degrees: the same setting read from the other side.
    #[must_use]
    pub fn complement(self) -> Angle {
        Angle(Angle::SQUARE.0 - self.0)
    }

    /// Half of it.
    #[must_use]
    pub fn half(self) -> Angle {
        Angle(self.0 / 2.0)
    }

    /// Its sine.
    #[must_use]
    pub fn sin(self) -> f64 {
        libm::sin(self.0)
    }

    /// Its cosine.
    #[must_use]
    pub fn cos(self) -> f64 {
        libm::cos(self.0)
    }

    /// Its tangent.
    #[must_use]
    pub fn tan(self) -> f64 {
        libm::tan(self.0)
    }
}
