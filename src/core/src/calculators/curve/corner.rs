//! A rounded corner, and a board end rounded all the way.

use super::fields::RADIUS;
use super::things::{self, Fit};
use crate::measure::{Angle, Length, Number, OutOfRange, Rounding};
use crate::say;
use crate::sheet::{Refusal, Refused, WayOut};

/// What is asked.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Input {
    /// Radius of the round.
    pub radius: Length,
    /// The angle of the wood at the corner, in degrees, above 0 and below 180.
    pub corner: Number,
    /// The edge that is rounded, if it is not plainly long enough.
    pub edge: Option<Length>,
    /// Whether both corners of that edge are rounded.
    pub both: bool,
    /// Diameters of the round things at hand.
    pub things: Vec<Length>,
}

impl Input {
    /// An end rounded all the way: a half circle over the whole width.
    ///
    /// # Errors
    ///
    /// [`OutOfRange`] beyond the limits.
    pub fn whole_end(width: Length, things: Vec<Length>) -> Result<Input, OutOfRange> {
        let corner = Number::whole(90);
        Ok(Input { radius: (width / 2)?, corner, edge: Some(width), both: true, things })
    }
}

/// The round.
#[derive(Clone, Debug, PartialEq)]
pub struct Answer {
    /// From the corner to where the round meets each edge: exact for a square corner.
    pub tangent: Length,
    /// From the corner to the centre, on the line that halves the corner.
    pub corner_to_centre: Length,
    /// Cut off the corner, on the same line.
    pub lost: Length,
    /// Along the round.
    pub arc_length: Length,
    /// Cut off at one corner, in square inches.
    pub area: f64,
    /// Straight edge left between or beyond the rounds.
    pub straight: Option<Length>,
    /// The round things that fit the edge, nearest first; each meets the edges so far from the
    /// corner.
    pub fits: Vec<Fit>,
}

/// The round at a corner.
///
/// # Errors
///
/// - `edge-too-short`: the rounds do not fit on the edge.
/// - [`Refused::OutOfRange`]: a number beyond the limits.
pub fn reckon(input: &Input) -> Result<Answer, Refused> {
    let Input { radius, corner, edge, both, .. } = *input;
    let half = Angle::degrees(corner.to_f64()).half();
    let square = corner == Number::whole(90);
    let tangent_of = |radius: Length| {
        if square { Ok(radius) } else { Length::near(radius.to_f64() / half.tan()) }
    };
    let rounds = if both { 2 } else { 1 };
    let tangent = tangent_of(radius)?;
    let straight = match edge {
        Some(edge) => Some((edge - (tangent * rounds)?)?),
        None => None,
    };
    if let (Some(edge), Some(straight)) = (edge, straight)
        && straight.is_negative()
    {
        let reach = (edge / rounds)?;
        let largest = if square { reach } else { rounded_down(reach.to_f64() * half.tan())? };
        let needed = (tangent * rounds)?;
        Err(Refusal::at(
            &RADIUS,
            "edge-too-short",
            say!["The round takes ", needed, " of the edge, which is only ", edge, " long."],
            if largest.is_positive() {
                let words = say!["Use a radius of ", (largest, Rounding::Down), " or less."];
                WayOut::set(words, &RADIUS, (largest, Rounding::Down))
            } else {
                WayOut::advice(say!["Use a longer edge."])
            },
        ))?;
    }
    let r = radius.to_f64();
    let turn = core::f64::consts::PI - 2.0 * half.in_radians();
    Ok(Answer {
        tangent,
        corner_to_centre: Length::near(r / half.sin())?,
        lost: Length::near(r * (1.0 / half.sin() - 1.0))?,
        arc_length: Length::near(r * turn)?,
        area: r * r * (1.0 / half.tan() - turn / 2.0),
        straight,
        fits: things::nearest(&input.things, radius, |thing| {
            let tangent = tangent_of(thing);
            let fits = match (edge, tangent) {
                (Some(edge), Ok(tangent)) => (tangent * rounds).is_ok_and(|taken| taken <= edge),
                _ => true,
            };
            fits.then_some(tangent)
        })?,
    })
}

/// The 64th below, a hair more, so that it surely fits when it is reckoned again.
fn rounded_down(inches: f64) -> Result<Length, OutOfRange> {
    Length::near(libm::floor((inches - 1e-3) * 64.0) / 64.0)
}
