//! One board today and later.

use super::movement::{Moistures, Spread, Wood, spread};
use crate::measure::Length;
use crate::sheet::Refused;
use crate::tables::shrinkage::Across;

/// What is asked.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Input {
    /// As measured today.
    pub thickness: Length,
    /// As measured today.
    pub width: Length,
    /// The wood.
    pub wood: Wood,
    /// Moisture today and later.
    pub moistures: Moistures,
}

/// What it will measure.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Answer {
    /// Likely thickness; `None` where only the figure for the width is known.
    pub thickness: Option<Length>,
    /// Likely width.
    pub width: Length,
    /// Widths of the board that moves least and of the one that moves most, where known.
    pub width_ends: Option<(Length, Length)>,
    /// How the width was found.
    pub width_spread: Spread,
    /// How the thickness was found.
    pub thickness_spread: Option<Spread>,
}

/// Dries or wets the board.
///
/// # Errors
///
/// Those of [`spread`] for the width.
///
/// # Examples
///
/// ```
/// # use reckoner_core::calculators::moisture::{board, movement::{Moistures, Wood}};
/// # use reckoner_core::measure::{length, text::decimal, Number};
/// // A wet 2×6 of 5 5/8 in dries to 15 %: it loses 0.158 in.
/// let answer = board::reckon(&board::Input {
///     thickness: length("1 9/16")?, width: length("5 5/8")?, wood: Wood::OrdinarySoftwood,
///     moistures: Moistures::now_and_later(Number::whole(40), Number::whole(15)),
/// }).map_err(|_| "refused")?;
/// let lost = (length("5 5/8")? - answer.width)?;
/// assert_eq!(decimal(lost.in_inches(), 3), "0.158");
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn reckon(input: &Input) -> Result<Answer, Refused> {
    let width_spread = spread(input.wood, Across::Width, input.moistures)?;
    // What is known of the width stands without the thickness.
    let thickness_spread = spread(input.wood, Across::Thickness, input.moistures).ok();
    let thickness = thickness_spread.map(|spread| spread.later(input.thickness)).transpose()?;
    Ok(Answer {
        thickness,
        width: width_spread.later(input.width)?,
        width_ends: width_spread.ends_later(input.width)?,
        width_spread,
        thickness_spread,
    })
}
