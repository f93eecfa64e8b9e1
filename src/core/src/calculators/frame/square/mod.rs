//! Whether a frame is square: its diagonal, and from two measured ones how far it is out and
//! which way to push.

mod sheet;

pub(super) use sheet::work;

use super::fields::DIAGONAL_A;
use crate::measure::{Angle, Length, Number, OutOfRange};
use crate::say;
use crate::sheet::{Refusal, Refused, WayOut};

/// How far the sides may disagree with the diagonals before that is said: 1/8 in.
/// Common practice, no source.
pub const DOUBT: Length = Length::sixty_fourths(8);

/// What was measured.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Input {
    /// Near side, left to right. The far side is taken to be as long.
    pub near_side: Length,
    /// Left side, near to far. The right side is taken to be as long.
    pub left_side: Length,
    /// Both diagonals: near left to far right, and near right to far left. Measured between the
    /// same corners as the sides.
    pub diagonals: Option<[Length; 2]>,
}

/// What the diagonals say.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Answer {
    /// Both diagonals when the frame is square, from the sides.
    pub diagonal: Length,
    /// What the measured diagonals say.
    pub lean: Option<Lean>,
}

/// How a frame leans.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Lean {
    /// How far the far side has moved to the right of where it should be; negative to the left.
    pub far_side_to_right: Length,
    /// The same as an angle at the corners, always positive or zero: its sine is that over the left side.
    pub out_of_square: Angle,
    /// What both diagonals come to when the sides stay as long as they are.
    pub square_diagonal: Length,
    /// How much longer that is than the sides say; beyond [`DOUBT`] something was mismeasured or
    /// opposite sides differ.
    pub disagreement: Length,
}

/// The diagonal of a frame, and the lean that two measured diagonals tell.
///
/// Square: d² = a² + b². Measured: opposite sides are equal, so the frame is a parallelogram.
/// With the far side moved by s, d₁² - d₂² = 4 a s, so **s = (d₁² - d₂²) ÷ 4a** exactly. The sine
/// of the angle is s ÷ b. Pushed square, both diagonals come to √((d₁² + d₂²) ÷ 2).
///
/// # Errors
///
/// - `diagonals-do-not-belong`: to any frame with such sides.
/// - [`Refused::OutOfRange`]: sizes beyond exact keeping.
///
/// # Source
///
/// Geometry: the theorem of Pythagoras and the parallelogram law. Square roots are floats.
pub fn reckon(input: &Input) -> Result<Answer, Refused> {
    let (a, b) = (input.near_side, input.left_side);
    let square = ((a * a)? + (b * b)?)?;
    let diagonal = root(square.in_square_inches().to_f64())?;
    let lean = match input.diagonals {
        Some([first, second]) => {
            let squares = [(first * first)?, (second * second)?];
            let far_side_to_right = (((squares[0] - squares[1])? / a)? / 4)?;
            let mean = ((squares[0] + squares[1])? / Number::whole(2))?;
            let square_diagonal = root(mean.in_square_inches().to_f64())?;
            let disagreement = (square_diagonal - diagonal)?;
            // A twentieth: no squint at a tape explains more.
            if far_side_to_right.abs() >= b || (disagreement.abs() * 20)? > diagonal {
                Err(Refusal::at(
                    &DIAGONAL_A,
                    "diagonals-do-not-belong",
                    say!["No frame with these sides has these diagonals. Measure again."],
                    WayOut::advice(say!["Square, both would be ", diagonal, "."]),
                ))?;
            }
            let sine = (far_side_to_right.abs() / b)?;
            let out_of_square = Angle::asin(sine.to_f64());
            Some(Lean { far_side_to_right, out_of_square, square_diagonal, disagreement })
        }
        None => None,
    };
    Ok(Answer { diagonal, lean })
}

fn root(square_inches: f64) -> Result<Length, OutOfRange> {
    Length::near(libm::sqrt(square_inches))
}
