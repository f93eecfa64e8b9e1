//! Half-lap of two thicknesses: how deep to cut each piece so that the show faces are flush.

mod sheet;

pub(super) use sheet::work;

use super::fields::REAR_CUT;
use crate::measure::{Length, Rounding, Tape};
use crate::say;
use crate::sheet::{Refusal, Refused, WayOut};

/// What to reckon a lap from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Input {
    /// The piece that is cut from its back, as measured.
    pub front_thickness: Length,
    /// The piece that is cut from its show face, as measured.
    pub rear_thickness: Length,
    /// Depth already cut into the rear piece from its show face, if it is.
    pub rear_cut: Option<Length>,
    /// The tape that the depth is set by.
    pub tape: Tape,
}

/// The depths of a lap.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Answer {
    /// Into the front piece, from its back.
    pub front_cut: Length,
    /// Into the rear piece, from its show face.
    pub rear_cut: Length,
    /// What stays of the front piece, which is as thick as the cut in the rear one.
    pub front_left: Length,
    /// What stays of the rear piece.
    pub rear_left: Length,
    /// Half of the thinner piece, when that is on no mark of the tape and `rear_cut` is the mark.
    pub off_the_marks: Option<Length>,
    /// How far the rear piece stands out behind the front one; negative when it is short of it.
    pub step_at_back: Length,
}

/// Depths of a half-lap, show faces flush.
///
/// The rear piece is cut to half of the **thinner** piece from its show face; what stays of the
/// front piece fills that cut. Where that half is on no mark of the tape, the nearest mark is
/// taken, the lower one of two as near: rounded each for itself, the two depths would leave the show
/// faces a step apart, while from a depth that can be set the other follows exactly. When the rear
/// piece is already cut, the front one follows from the measured cut: the depth need not be exactly
/// half.
///
/// # Errors
///
/// - `lap-leaves-nothing`: of the thinner piece.
/// - [`Refused::OutOfRange`]: sizes beyond exact keeping.
///
/// # Source
///
/// Arithmetic; that half of the thinner piece is taken is common practice, no source.
pub fn reckon(input: &Input) -> Result<Answer, Refused> {
    let Input { front_thickness, rear_thickness, .. } = *input;
    let thinner = front_thickness.min(rear_thickness);
    let half = (thinner / 2)?;
    let mark = input.tape.read(half, Rounding::Nearest)?.mark;
    let (rear_cut, off_the_marks) = match input.rear_cut {
        Some(cut) => (cut, None),
        // So thin that its half is nearer to no cut at all.
        None if mark.is_zero() || mark >= thinner => (half, None),
        None => (mark, (mark != half).then_some(half)),
    };
    if rear_cut >= thinner {
        let way_out = say!["Leave it empty to cut half of the thinner piece."];
        Err(Refusal::at(
            &REAR_CUT,
            "lap-leaves-nothing",
            say!["A cut of ", rear_cut, " leaves nothing of the thinner piece, ", thinner, "."],
            WayOut::set(way_out, &REAR_CUT, String::new()),
        ))?;
    }
    Ok(Answer {
        front_cut: (front_thickness - rear_cut)?,
        rear_cut,
        front_left: rear_cut,
        rear_left: (rear_thickness - rear_cut)?,
        off_the_marks,
        step_at_back: (rear_thickness - front_thickness)?,
    })
}
