//! [`Tape`]: how the user's tape is marked, and [`Reading`]: where a length falls on it.
//!
//! Printing never rounds. This is the only place where a length meets a graduation.

use super::length::Length;
use super::number::{Number, OutOfRange};
use super::unit::Unit;

/// How finely an inch is marked: the bottom number of the smallest fraction.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Fineness {
    /// Every 1/2 in.
    Half,
    /// Every 1/4 in.
    Quarter,
    /// Every 1/8 in.
    Eighth,
    /// Every 1/16 in.
    Sixteenth,
    /// Every 1/32 in.
    ThirtySecond,
    /// Every 1/64 in.
    SixtyFourth,
}

impl Fineness {
    /// Every fineness, coarse to fine.
    pub const ALL: [Fineness; 6] = [
        Fineness::Half,
        Fineness::Quarter,
        Fineness::Eighth,
        Fineness::Sixteenth,
        Fineness::ThirtySecond,
        Fineness::SixtyFourth,
    ];

    /// The bottom number: 2, 4, 8, 16, 32 or 64.
    #[must_use]
    pub fn denominator(self) -> u8 {
        match self {
            Fineness::Half => 2,
            Fineness::Quarter => 4,
            Fineness::Eighth => 8,
            Fineness::Sixteenth => 16,
            Fineness::ThirtySecond => 32,
            Fineness::SixtyFourth => 64,
        }
    }

    /// The fineness with this bottom number.
    #[must_use]
    pub fn from_denominator(denominator: u8) -> Option<Fineness> {
        Fineness::ALL.into_iter().find(|fineness| fineness.denominator() == denominator)
    }
}

/// How a length is shown.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Tape {
    /// Inches and a fraction: `52 7/8`.
    Inches(Fineness),
    /// Feet, inches and a fraction: `4' 4 7/8"`.
    FeetAndInches(Fineness),
    /// Inches with so many decimal places, at most 4: `52.875`.
    DecimalInches(u8),
    /// Millimetres with so many decimal places, at most 2: `1343`.
    Millimetres(u8),
    /// Millimetres and their halves: `1343.5`.
    HalfMillimetres,
}

impl Tape {
    /// The common tape: inches in sixteenths.
    pub const SIXTEENTHS: Tape = Tape::Inches(Fineness::Sixteenth);

    /// Distance between two neighbouring marks.
    #[must_use]
    pub fn graduation(self) -> Length {
        match self {
            Tape::Inches(fineness) | Tape::FeetAndInches(fineness) => {
                Length::sixty_fourths(64 / i32::from(fineness.denominator()))
            }
            Tape::DecimalInches(places) => Length::inches(Unit::decimal_inch(places)),
            Tape::Millimetres(places) => Length::inches(Unit::decimal_millimetre(places)),
            Tape::HalfMillimetres => Length::inches(Unit::HALF_MILLIMETRE),
        }
    }

    /// The unit that a bare number takes when this tape is in use.
    #[must_use]
    pub fn unit(self) -> Unit {
        match self {
            Tape::Inches(_) | Tape::FeetAndInches(_) | Tape::DecimalInches(_) => Unit::Inch,
            Tape::Millimetres(_) | Tape::HalfMillimetres => Unit::Millimetre,
        }
    }

    /// Where a length falls on this tape.
    ///
    /// # Errors
    ///
    /// [`OutOfRange`] when the length has so many digits that the remainder cannot be kept.
    ///
    /// ```
    /// # use reckoner_core::measure::{length, Lean, Rounding, Tape};
    /// // Half of 37 3/16 lies midway between two sixteenths; neither is picked.
    /// let half = length("37 3/16 / 2")?;
    /// let reading = Tape::SIXTEENTHS.read(half, Rounding::Nearest)?;
    /// assert_eq!(reading.lean, Lean::Midway { below: length("18 9/16")?, above: length("18 5/8")? });
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn read(self, length: Length, rounding: Rounding) -> Result<Reading, OutOfRange> {
        let step = self.graduation();
        let marks = (length / step)?;
        let below = mark(marks.floor(), step)?;
        let above = mark(marks.ceil(), step)?;
        let (under, over) = ((length - below)?, (above - length)?);
        let nearest = match rounding {
            Rounding::Up => above,
            Rounding::Down => below,
            Rounding::Nearest if under <= over => below,
            Rounding::Nearest => above,
        };
        let left_over = (length - nearest)?;
        let lean = if left_over.is_zero() {
            Lean::Exact
        } else if rounding == Rounding::Nearest && under == over {
            Lean::Midway { below, above }
        } else if left_over.is_positive() {
            Lean::Heavy
        } else {
            Lean::Light
        };
        Ok(Reading { mark: nearest, left_over, lean, rounding })
    }
}

fn mark(count: i128, step: Length) -> Result<Length, OutOfRange> {
    step * Number::ratio(count, 1)?
}

/// Which mark to give when a length falls between two.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Default)]
pub enum Rounding {
    /// The nearer one; midway between two is said, not decided.
    #[default]
    Nearest,
    /// The next mark up: where a part must not be short.
    Up,
    /// The next mark down: where a part must not be long.
    Down,
}

/// On which side of the mark the exact length lies.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Lean {
    /// On the mark.
    Exact,
    /// A little over the mark.
    Heavy,
    /// A little under the mark.
    Light,
    /// Midway between two marks.
    Midway {
        /// The mark below.
        below: Length,
        /// The mark above.
        above: Length,
    },
}

/// The mark of a tape for an exact length, and what is left over.
///
/// `mark + left_over` is the exact length. Read to the nearest mark, `left_over` is at most half
/// a graduation, and for a length midway between two marks `mark` is the one below.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Reading {
    /// The mark.
    pub mark: Length,
    /// Exact and signed: positive when the true length lies beyond the mark.
    pub left_over: Length,
    /// The same as a word.
    pub lean: Lean,
    /// How the mark was chosen.
    pub rounding: Rounding,
}
