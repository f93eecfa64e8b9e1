//! Round things at hand: which one draws the wanted radius best.

use crate::measure::{Length, OutOfRange};

/// A round thing that can be used, and what comes of it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Fit {
    /// Across the thing.
    pub diameter: Length,
    /// Its radius less the wanted one: positive when it is larger.
    pub off: Length,
    /// What it gives in place of what was asked: a rise, an offset, or the place where it meets
    /// the edge.
    pub gives: Length,
}

impl Fit {
    /// From its centre to its rim.
    ///
    /// # Errors
    ///
    /// [`OutOfRange`] beyond the limits.
    pub fn radius(self) -> Result<Length, OutOfRange> {
        self.diameter / 2
    }
}

/// The things that `gives` finds usable for a radius, nearest to `wanted` first. Of two equally
/// near the first in the list comes first, and a thing listed twice stands once.
///
/// # Errors
///
/// [`OutOfRange`] beyond the limits.
pub fn nearest(
    diameters: &[Length],
    wanted: Length,
    gives: impl Fn(Length) -> Option<Result<Length, OutOfRange>>,
) -> Result<Vec<Fit>, OutOfRange> {
    let mut fits: Vec<Fit> = Vec::new();
    for &diameter in diameters {
        let radius = (diameter / 2)?;
        if fits.iter().any(|fit| fit.diameter == diameter) {
            continue;
        }
        if let Some(gives) = gives(radius) {
            fits.push(Fit { diameter, off: (radius - wanted)?, gives: gives? });
        }
    }
    crate::order::sort_by(&mut fits, |a, b| a.off.abs().cmp(&b.off.abs()));
    Ok(fits)
}
