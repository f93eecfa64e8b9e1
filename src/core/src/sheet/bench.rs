//! [`Bench`]: the user's own tape, saw and limits, which calculators start from.

use crate::measure::{Length, Tape};

/// The widest cut that one pass of a saw makes. The widest stack of blades for grooves cuts 13/16 in to 29/32 in: common
/// practice, no source.
pub const WIDEST_KERF: Length = Length::sixty_fourths(64);

/// Left or right, as seen from where the user stands at the saw.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Default)]
pub enum Side {
    /// On the left.
    Left,
    /// On the right: the usual side of a table saw's fence.
    #[default]
    Right,
}

impl Side {
    /// The other side.
    #[must_use]
    pub fn other(self) -> Side {
        match self {
            Side::Left => Side::Right,
            Side::Right => Side::Left,
        }
    }
}

/// The user's tape, saw and limits. Every value can be changed in the settings.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Bench {
    /// How the tape is marked and lengths are shown.
    pub tape: Tape,
    /// Width of the saw cut.
    pub kerf: Length,
    /// Deepest cut of the saw at 90 degrees.
    pub blade_reach: Length,
    /// On which side of the blade the fence stands.
    pub fence: Side,
    /// Thinnest strip the user cuts between blade and fence.
    pub thinnest_strip: Length,
    /// Which of these are the user's own.
    pub own: Own,
}

/// Which sizes of a [`Bench`] the user has set. The others are examples of ours.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Default)]
pub struct Own {
    /// The kerf.
    pub kerf: bool,
    /// The reach of the blade.
    pub blade_reach: bool,
    /// The side of the fence.
    pub fence: bool,
    /// The thinnest strip.
    pub thinnest_strip: bool,
}

impl Default for Bench {
    /// A 1/8 in kerf, 3 1/8 in reach (10 in table saw), fence on the right, no strip under
    /// 1/4 in, a tape in sixteenths: common practice, no source.
    fn default() -> Bench {
        Bench {
            tape: Tape::SIXTEENTHS,
            kerf: Length::sixty_fourths(8),
            blade_reach: Length::sixty_fourths(200),
            fence: Side::Right,
            thinnest_strip: Length::sixty_fourths(16),
            own: Own::default(),
        }
    }
}
