//! The radius of a round thing, from its rim.

use super::fields::SHORT_RISE;
use super::{radius_of, rise_over_half};
use crate::measure::{Length, OutOfRange};
use crate::sheet::Refused;

/// How far off the rise under a straightedge may be read: 1/64 in.
pub const READING_ERROR: Length = Length::sixty_fourths(1);

/// What was measured.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Input {
    /// Once round the rim with a tape or a string.
    Around(Length),
    /// A short straightedge across the rim.
    Straightedge {
        /// Its length between the two places where it touches.
        chord: Length,
        /// From its middle to the rim.
        rise: Length,
    },
}

/// The circle.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Answer {
    /// From the centre to the rim: exact from a straightedge.
    pub radius: Length,
    /// Across the middle.
    pub diameter: Length,
    /// Once round the rim.
    pub around: Length,
    /// Smallest and largest radius if the rise was read 1/64 in off; only from a straightedge
    /// whose rise is more than that.
    pub between: Option<(Length, Length)>,
}

/// The radius of a round thing.
///
/// # Errors
///
/// - `rise-over-half`: more than a half circle.
/// - [`Refused::OutOfRange`]: a number beyond the limits.
pub fn reckon(input: &Input) -> Result<Answer, Refused> {
    let two_pi = 2.0 * core::f64::consts::PI;
    match *input {
        Input::Around(around) => {
            let radius = around.to_f64() / two_pi;
            Ok(Answer {
                radius: Length::near(radius)?,
                diameter: Length::near(2.0 * radius)?,
                around,
                between: None,
            })
        }
        Input::Straightedge { chord, rise } => {
            let half = (chord / 2)?;
            if rise > half {
                return Err(rise_over_half(half, &SHORT_RISE).into());
            }
            let radius = radius_of(chord, rise)?;
            Ok(Answer {
                radius,
                diameter: (radius * 2)?,
                around: Length::near(radius.to_f64() * two_pi)?,
                between: between(chord, rise, half)?,
            })
        }
    }
}

fn between(
    chord: Length,
    rise: Length,
    half: Length,
) -> Result<Option<(Length, Length)>, OutOfRange> {
    if rise <= READING_ERROR {
        return Ok(None);
    }
    let deepest = (rise + READING_ERROR)?.min(half);
    Ok(Some((radius_of(chord, deepest)?, radius_of(chord, (rise - READING_ERROR)?)?)))
}
