//! An S-curve of two equal arcs, level at both ends, that meet in the middle.

use super::fields::OFFSET;
use super::things::{self, Fit};
use super::{Board, Mark, places, sagitta};
use crate::measure::{Angle, Length, OutOfRange, Rounding};
use crate::say;
use crate::sheet::{Refusal, Refused, WayOut};

/// What is asked.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Input {
    /// Along the board, from one end of the curve to the other.
    pub run: Length,
    /// Square to it, from one end of the curve to the other.
    pub offset: Length,
    /// From mark to mark along the run.
    pub step: Length,
    /// The board, if it matters.
    pub board: Option<Board>,
    /// Diameters of the round things at hand.
    pub things: Vec<Length>,
}

/// The curve.
#[derive(Clone, Debug, PartialEq)]
pub struct Answer {
    /// Of both arcs: exact. The centres lie square to the ends of the curve, this far off.
    pub radius: Length,
    /// Where the arcs meet: along the run, and off the line of the start. Exact.
    pub join: Mark,
    /// From the start: along the run, and off the line of the start.
    pub marks: Vec<Mark>,
    /// Along the whole curve.
    pub curve_length: Length,
    /// How steep it is where the arcs meet.
    pub steepest: Angle,
    /// Wood left at the narrowest place of the board.
    pub narrowest: Option<Length>,
    /// The round things that can draw both arcs over this run, nearest first; each gives this
    /// offset.
    pub fits: Vec<Fit>,
}

/// The S-curve over a run and an offset.
///
/// # Errors
///
/// - `too-steep`: the two arcs would run back on themselves.
/// - `too-many-marks`, `board-too-narrow`.
/// - [`Refused::OutOfRange`]: a number beyond the limits.
pub fn reckon(input: &Input) -> Result<Answer, Refused> {
    let Input { run, offset, step, .. } = *input;
    let mut refusals = Vec::new();
    if offset > run {
        refusals.push(Refusal::at(
            &OFFSET,
            "too-steep",
            say![
                "An offset of ",
                offset,
                " is more than the run of ",
                run,
                ". The two arcs would run back on themselves."
            ],
            WayOut::set(
                say!["Use an offset of ", (run, Rounding::Down), " or less."],
                &OFFSET,
                (run, Rounding::Down),
            ),
        ));
    }
    let along = places(run, step, &mut refusals)?;
    let narrowest = match input.board {
        Some(board) => Some(board.narrowest(offset, &mut refusals)?),
        None => None,
    };
    let radius = (((run * run)? + (offset * offset)?)? / (offset * 4)?)?;
    Refused::unless_none(refusals)?;

    let (r, a, b) = (radius.to_f64(), run.to_f64(), offset.to_f64());
    let marks = along
        .into_iter()
        .map(|along| {
            let x = along.to_f64();
            let height = if along == run {
                offset
            } else if x * 2.0 <= a {
                Length::near(sagitta(r, x))?
            } else {
                Length::near(b - sagitta(r, a - x))?
            };
            Ok(Mark { along, height })
        })
        .collect::<Result<_, OutOfRange>>()?;
    let steepest = Angle::radians(2.0 * Angle::atan2(b, a).in_radians());
    Ok(Answer {
        radius,
        join: Mark { along: (run / 2)?, height: (offset / 2)? },
        marks,
        curve_length: Length::near(2.0 * r * steepest.in_radians())?,
        steepest,
        narrowest,
        fits: things::nearest(&input.things, radius, |thing| {
            let r = thing.to_f64();
            // With the same run, offset = 2R - √(4R² - run²) = 2 × sagitta(R, run ÷ 2).
            (r * 2.0 >= a).then(|| Length::near(2.0 * sagitta(r, a / 2.0)))
        })?,
    })
}
