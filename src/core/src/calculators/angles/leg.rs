//! A leg that leans one way, its top and foot cut level.

use crate::measure::{Angle, Length, Number, OutOfRange};

/// What is known of the lean.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Lean {
    /// Degrees from upright, below 90.
    Degrees(Number),
    /// How far the foot stands out from the top.
    FootOut(Length),
}

/// What is asked.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Input {
    /// Straight up, from the floor to the underside of the top.
    pub height: Length,
    /// How much it leans.
    pub lean: Lean,
    /// Width of the leg in the direction in which it leans.
    pub width: Length,
    /// Outside to outside of the two legs at their tops.
    pub apart: Option<Length>,
}

/// The leg.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Answer {
    /// From upright; also of both end cuts, from square across the leg.
    pub lean: Angle,
    /// Along one edge, from end cut to end cut.
    pub edge: Length,
    /// Square-ended stick that the leg is cut from.
    pub blank: Length,
    /// How far the foot stands out from the top.
    pub foot_out: Length,
    /// Along an end cut: what the leg covers of the floor.
    pub end_cut: Length,
    /// Outside to outside of the two legs at the floor.
    pub spread: Option<Length>,
}

/// The leg that leans one way.
///
/// # Errors
///
/// [`OutOfRange`]: a number beyond the limits.
pub fn reckon(input: &Input) -> Result<Answer, OutOfRange> {
    let (height, width) = (input.height.to_f64(), input.width.to_f64());
    let (lean, foot_out) = match input.lean {
        Lean::Degrees(degrees) => {
            let lean = Angle::degrees(degrees.to_f64());
            (lean, Length::near(height * lean.tan())?)
        }
        Lean::FootOut(foot_out) => (Angle::atan2(foot_out.to_f64(), height), foot_out),
    };
    let edge = height / lean.cos();
    Ok(Answer {
        lean,
        edge: Length::near(edge)?,
        blank: Length::near(edge + width * lean.tan())?,
        foot_out,
        end_cut: Length::near(width / lean.cos())?,
        spread: spread(input.apart, foot_out)?,
    })
}

/// Outside to outside at the floor: both feet stand out.
pub(super) fn spread(
    apart: Option<Length>,
    foot_out: Length,
) -> Result<Option<Length>, OutOfRange> {
    match apart {
        Some(apart) => Ok(Some((apart + (foot_out * 2)?)?)),
        None => Ok(None),
    }
}
