//! Curve: the radius, the marks for a batten, and the round thing that draws it.
//!
//! *"What radius does this bucket make? Which lid gives me 6 in? How do I draw 36 wide by 2 rise
//! with no giant compass? Where does the curve meet the straight so that it is smooth?"*
//!
//! One module for each question, with its own `Input`, `Answer` and `reckon`: an [`arc`] over a
//! chord, the radius of a round thing from its [`rim`], a rounded [`corner`] (and a board end
//! rounded all the way), and an [`s_curve`] of two equal arcs. Each looks through the round
//! [`things`] at hand for the one that comes nearest.
//!
//! Radii follow from chord and rise by a rational rule and stay exact. Heights, arc lengths and
//! tangent points of corners that are not square are irrational: they are worked out as floats
//! and brought back to the tape by [`Length::near`], within 1/8192 in.
//!
//! # Source
//!
//! Radius from chord and rise: University of Regina, Math Central (by Pythagoras). The rest is
//! geometry. The batten on nails and the two hinged sticks are common practice, no source.

pub mod arc;
pub mod corner;
mod drawing;
// A table: a field in two lines.
#[rustfmt::skip]
mod fields;
pub mod rim;
pub mod s_curve;
mod sheet;
mod template;
#[cfg(test)]
mod tests;
pub mod things;

pub use sheet::CALCULATOR;

use crate::measure::{Length, Number, OutOfRange};
use crate::say;
use crate::sheet::{Field, Refusal, WayOut};
use fields::{BOARD, STEP};

/// Most marks from the middle to one end, or along an S-curve.
pub const MOST_MARKS: u32 = 100;

/// A place on the curve: how far along the straight line, and how far off it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Mark {
    /// Along the straight line, from the place that the list names.
    pub along: Length,
    /// From the straight line to the curve, square to the line.
    pub height: Length,
}

/// The board that the curve is cut from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Board {
    /// Its width.
    pub width: Length,
    /// The least wood that must be left at the narrowest place.
    pub keep: Length,
}

impl Board {
    /// The wood left at the narrowest place once the curve has taken `rise` off.
    fn narrowest(self, rise: Length, refusals: &mut Vec<Refusal>) -> Result<Length, OutOfRange> {
        let left = (self.width - rise)?;
        if left < self.keep || !left.is_positive() {
            refusals.push(self.too_narrow(rise, left));
        }
        Ok(left)
    }

    /// The board has too little wood left, or none.
    fn too_narrow(self, rise: Length, left: Length) -> Refusal {
        let Board { width, keep } = self;
        let words = if left.is_positive() {
            say![
                "A board of ",
                width,
                " less ",
                rise,
                " for the curve leaves ",
                left,
                ". You want ",
                keep,
                "."
            ]
        } else {
            say!["The curve takes ", rise, " off, and the board is only ", width, " wide."]
        };
        let way_out = (rise + keep).ok().and_then(|needed| {
            if keep.is_positive() {
                WayOut::at_least("Use a board of ", needed, " or more.", &BOARD)
            } else {
                WayOut::advice(say!["Use a board of more than ", needed, "."])
            }
        });
        Refusal::at(&BOARD, "board-too-narrow", words, way_out)
    }
}

/// Places every `step` from 0 up to `end`, and `end` itself.
fn places(
    end: Length,
    step: Length,
    refusals: &mut Vec<Refusal>,
) -> Result<Vec<Length>, OutOfRange> {
    let steps = (end / step)?;
    if steps > Number::whole(MOST_MARKS.into()) {
        let least = (end / MOST_MARKS)?;
        refusals.push(Refusal::at(
            &STEP,
            "too-many-marks",
            say!["A mark every ", step, " is more than ", MOST_MARKS, " marks."],
            WayOut::at_least("Use a step of ", least, " or more.", &STEP),
        ));
        return Ok(Vec::new());
    }
    let mut places = Vec::new();
    for n in 0..u32::try_from(steps.ceil()).unwrap_or(MOST_MARKS) {
        places.push((step * n)?);
    }
    places.push(end);
    Ok(places)
}

/// Chord² ÷ (8 × rise) + rise ÷ 2, exactly.
fn radius_of(chord: Length, rise: Length) -> Result<Length, OutOfRange> {
    ((chord * chord)? / (rise * 8)?)? + (rise / 2)?
}

/// More than a half circle: the chord is no longer its widest place. `rise` is its field.
fn rise_over_half(half: Length, rise: &Field) -> Refusal {
    Refusal::at(
        rise,
        "rise-over-half",
        say!["A rise over ", half, " is more than a half circle. Measure across the widest place."],
        WayOut::at_most("Use a rise of ", half, " or less.", rise),
    )
}

/// `radius - √(radius² - along²)`: how far a circle has left its tangent. In inches; written so
/// that a large radius does not swallow a small height.
fn sagitta(radius: f64, along: f64) -> f64 {
    let under = (radius - along) * (radius + along);
    along * along / (radius + libm::sqrt(under.max(0.0)))
}
