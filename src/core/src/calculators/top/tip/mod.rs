//! Whether a load at one end of a top lifts the other end.

mod sheet;

pub(super) use sheet::work;

use super::Problem;
use crate::measure::{Length, Number};
use crate::sheet::Problems;

/// What to check.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Input {
    /// Weight of the whole piece, in pounds; taken to be in its middle.
    pub weight: Number,
    /// The load, in pounds.
    pub load: Number,
    /// How far beyond the outside of the feet the load stands.
    pub beyond_legs: Length,
    /// Outside of the feet at one end to outside of the feet at the other.
    pub leg_spacing: Length,
}

/// How near it is to tipping.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Answer {
    /// Largest load there, in pounds; `None` when it stands over the feet and cannot tip.
    pub most_load: Option<Number>,
    /// Farthest that the load may stand beyond the feet; `None` without a load.
    pub most_beyond: Option<Length>,
}

/// Whether a load beyond the legs tips the piece: it does when load × how far beyond is more than
/// weight × half the leg spacing.
///
/// # Errors
///
/// A load that tips it, with the farthest place where it does not.
///
/// # Source
///
/// Statics: moments about the outside of the feet.
pub fn reckon(input: &Input) -> Result<Answer, Problems<Problem>> {
    let Input { weight, load, beyond_legs, leg_spacing } = *input;
    let holds = ((leg_spacing / 2)? * weight)?;
    let most_beyond = if load == Number::ZERO { None } else { Some((holds / load)?) };
    if let Some(most) = most_beyond
        && beyond_legs > most
    {
        return Err(Problem::Tips { load, most }.into());
    }
    let most_load = if beyond_legs.is_zero() { None } else { Some((holds / beyond_legs)?) };
    Ok(Answer { most_load, most_beyond })
}
