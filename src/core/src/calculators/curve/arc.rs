//! An arc over a chord: its radius, and the marks for a batten.

use super::fields::RISE;
use super::things::{self, Fit};
use super::{Board, Mark, places, radius_of, rise_over_half, sagitta};
use crate::measure::{Angle, Length, OutOfRange};
use crate::sheet::Refused;

/// What is asked.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Input {
    /// Straight across from end to end of the curve.
    pub chord: Length,
    /// From the middle of the chord to the curve.
    pub rise: Length,
    /// From mark to mark along the chord, starting in the middle.
    pub step: Length,
    /// The board, if it matters.
    pub board: Option<Board>,
    /// Diameters of the round things at hand.
    pub things: Vec<Length>,
}

/// The arc.
#[derive(Clone, Debug, PartialEq)]
pub struct Answer {
    /// From the centre to the curve: exact.
    pub radius: Length,
    /// From the chord to the centre, away from the curve: exact.
    pub centre: Length,
    /// From the middle out: along the chord, and up from it. The same on the other side.
    pub marks: Vec<Mark>,
    /// The angle at the centre between the ends of the arc.
    pub angle: Angle,
    /// Along the curve.
    pub arc_length: Length,
    /// Between the chord and the curve, in square inches.
    pub area: f64,
    /// Between two sticks that meet at the top of the arc and touch both ends: slid along two
    /// nails at the ends they draw the whole arc.
    pub sticks: Angle,
    /// Wood left at the narrowest place of the board.
    pub narrowest: Option<Length>,
    /// The round things that reach across the chord, nearest first; each gives this rise.
    pub fits: Vec<Fit>,
}

/// The arc over a chord.
///
/// # Errors
///
/// - `rise-over-half`: more than a half circle.
/// - `too-many-marks`, `board-too-narrow`.
/// - [`Refused::OutOfRange`]: a number beyond the limits.
pub fn reckon(input: &Input) -> Result<Answer, Refused> {
    let Input { chord, rise, step, .. } = *input;
    let mut refusals = Vec::new();
    let half = (chord / 2)?;
    if rise > half {
        refusals.push(rise_over_half(half, &RISE));
    }
    let along = places(half, step, &mut refusals)?;
    let narrowest = match input.board {
        Some(board) => Some(board.narrowest(rise, &mut refusals)?),
        None => None,
    };
    let radius = radius_of(chord, rise)?;
    Refused::unless_none(refusals)?;

    let (r, h, c) = (radius.to_f64(), rise.to_f64(), half.to_f64());
    let marks = along
        .into_iter()
        .map(|along| {
            // The two ends of the half chord are known exactly.
            let height = if along.is_zero() {
                rise
            } else if along == half {
                Length::ZERO
            } else {
                Length::near(h - sagitta(r, along.to_f64()))?
            };
            Ok(Mark { along, height })
        })
        .collect::<Result<_, OutOfRange>>()?;
    let apex = Angle::atan2(h, c).in_radians();
    let angle = Angle::radians(4.0 * apex);
    Ok(Answer {
        radius,
        centre: (radius - rise)?,
        marks,
        angle,
        arc_length: Length::near(r * angle.in_radians())?,
        area: r * r * (angle.in_radians() - angle.sin()) / 2.0,
        sticks: Angle::radians(core::f64::consts::PI - 2.0 * apex),
        narrowest,
        fits: things::nearest(&input.things, radius, |thing| {
            (thing >= half).then(|| Length::near(sagitta(thing.to_f64(), c)))
        })?,
    })
}
