//! Whether a load at one end of a top lifts the other end.

mod sheet;

pub(super) use sheet::work;

use super::fields::BEYOND_LEGS;
use crate::measure::{Length, Number, Rounding};
use crate::say;
use crate::sheet::{Refusal, Refused, WayOut};

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
/// - `tips`: the load tips it; names the farthest place where it does not.
/// - [`Refused::OutOfRange`]: sizes beyond exact keeping.
///
/// # Source
///
/// Statics: moments about the outside of the feet.
pub fn reckon(input: &Input) -> Result<Answer, Refused> {
    let Input { weight, load, beyond_legs, leg_spacing } = *input;
    let holds = ((leg_spacing / 2)? * weight)?;
    let most_beyond = if load == Number::ZERO { None } else { Some((holds / load)?) };
    if let Some(most) = most_beyond
        && beyond_legs > most
    {
        Err(Refusal::at(
            &BEYOND_LEGS,
            "tips",
            say!["A load of ", (load, "lb"), " at the end tips the top up."],
            WayOut::set(
                say!["Let it stand ", (most, Rounding::Down), " or less beyond the legs."],
                &BEYOND_LEGS,
                (most, Rounding::Down),
            ),
        ))?;
    }
    let most_load = if beyond_legs.is_zero() { None } else { Some((holds / beyond_legs)?) };
    Ok(Answer { most_load, most_beyond })
}
