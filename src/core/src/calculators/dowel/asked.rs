//! What is asked of a dowel: two parts, how far apart they stand, how it sits in them, and the bits at hand.

use crate::measure::{Length, Number, OutOfRange, Unit};

/// Two parts, and the dowel that joins them.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Input {
    /// How the dowel sits in its holes.
    pub hold: Hold,
    /// Thickness of the left part, along the dowel.
    pub left: Length,
    /// Thickness of the right part, along the dowel.
    pub right: Length,
    /// How far apart they stand.
    pub apart: Apart,
    /// The dowel, measured at its thickest.
    pub dowel: Length,
    /// The dowel, measured across that.
    pub across: Length,
    /// The bits at hand.
    pub bits: Bits,
    /// Height of the parts, on the face that is drilled.
    pub height: Length,
    /// Center of the hole from the top edge; half the height when absent.
    pub from_top: Option<Length>,
    /// Length of the parts, front to back.
    pub length: Length,
    /// Center of the hole from the front end; half the length when absent.
    pub from_front: Option<Length>,
    /// Least wood round the hole; half the hole when absent.
    pub least_wood: Option<Length>,
}

/// How the dowel sits in its holes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Hold {
    /// Through both parts, with a trim at each end.
    Through {
        /// What is left over at each end, to be trimmed flush.
        trim: Length,
    },
    /// In blind holes in both parts.
    Blind(Blind),
    /// Through the left part, and in a blind hole in the right one.
    OneEnd {
        /// What is left over at the left end.
        trim: Length,
        /// The hole in the right part.
        blind: Blind,
    },
}

/// A hole that does not go through.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Blind {
    /// Depth of the hole.
    pub depth: Length,
    /// Room left between the dowel and the bottom of the hole.
    pub room: Length,
}

/// How far apart the two parts stand.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Apart {
    /// Outside to outside of the parts.
    Overall(Length),
    /// Inside to inside of the parts.
    Clear(Length),
    /// Inside to inside of the legs that the parts stand in.
    Legs {
        /// Clear between the legs.
        clear: Length,
        /// Thickness of a leg, along the dowel.
        leg: Length,
        /// Outside of the leg to outside of the part; the part stands in the middle when absent.
        set_back: Option<Length>,
    },
}

/// The bits at hand, by the step from one to the next.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Bits {
    /// Every 1/64 in.
    SixtyFourths,
    /// Every 1/32 in.
    ThirtySeconds,
    /// Every 1/16 in.
    Sixteenths,
    /// Every millimetre.
    Millimetres,
}

impl Bits {
    /// From one bit to the next.
    #[must_use]
    pub fn step(self) -> Length {
        match self {
            Bits::SixtyFourths => Length::sixty_fourths(1),
            Bits::ThirtySeconds => Length::sixty_fourths(2),
            Bits::Sixteenths => Length::sixty_fourths(4),
            Bits::Millimetres => Length::inches(Unit::Millimetre.in_inches()),
        }
    }

    /// The smallest bit that is not smaller than `size`.
    ///
    /// # Errors
    ///
    /// [`OutOfRange`] beyond the limits.
    pub fn not_under(self, size: Length) -> Result<Length, OutOfRange> {
        self.step() * Number::ratio((size / self.step())?.ceil(), 1)?
    }

    /// The largest bit that is not larger than `size`.
    ///
    /// # Errors
    ///
    /// [`OutOfRange`] beyond the limits.
    pub fn not_over(self, size: Length) -> Result<Length, OutOfRange> {
        self.step() * Number::ratio((size / self.step())?.floor(), 1)?
    }
}
