//! How much wood: board feet, feet of length, and prices turned into each other.

use crate::measure::{Length, Number, OutOfRange, Unit};

/// What a price is for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Per {
    /// One board.
    Piece,
    /// One foot of its length.
    Foot,
    /// One board foot.
    BoardFoot,
}

/// What is asked.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Input {
    /// As the tag says. Under 1 in counts as 1 in.
    pub nominal_thickness: Length,
    /// As the tag says.
    pub nominal_width: Length,
    /// One board, end to end.
    pub length: Length,
    /// How many boards.
    pub count: u32,
    /// A price and what it is for, where known.
    pub price: Option<(Number, Per)>,
}

/// One price in every way it is quoted.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Prices {
    /// Of one board.
    pub piece: Number,
    /// Of a foot of length.
    pub foot: Number,
    /// Of a board foot.
    pub board_foot: Number,
    /// Of all boards.
    pub total: Number,
}

/// How much wood.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Answer {
    /// The thickness that is counted.
    pub thickness: Length,
    /// Feet of length of one board.
    pub feet: Number,
    /// Board feet in one board.
    pub each: Number,
    /// Board feet in all.
    pub total: Number,
    /// Feet of length in all.
    pub linear_feet: Number,
    /// Prices, where one was given.
    pub prices: Option<Prices>,
}

/// Thinnest that is counted as it is: stock under 1 in counts as 1 in (NAVEDTRA 14069).
const THINNEST_COUNTED: Length = Length::sixty_fourths(64);

/// Counts the wood: thickness × width in inches × length in feet ÷ 12, by nominal sizes.
///
/// # Errors
///
/// [`OutOfRange`]: a number beyond the limits.
///
/// # Source
///
/// PS 20-20, 2.2; NAVEDTRA 14069, Engineering Aid Basic, p. 6-7.
///
/// # Examples
///
/// ```
/// # use reckoner_core::{calculators::lumber::amount::*, measure::{length, Number}};
/// // A 2×6×8 is 8 board feet.
/// let answer = reckon(&Input {
///     nominal_thickness: length("2")?, nominal_width: length("6")?, length: length("8'")?,
///     count: 1, price: None,
/// }).map_err(|_| "refused")?;
/// assert_eq!(answer.total, Number::whole(8));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn reckon(input: &Input) -> Result<Answer, OutOfRange> {
    let feet = input.length.in_unit(Unit::Foot)?;
    let thickness = input.nominal_thickness.max(THINNEST_COUNTED);
    let width = input.nominal_width.in_unit(Unit::Foot)?;
    let each = ((thickness.in_inches() * width)? * feet)?;
    let count = Number::whole(input.count.into());
    let prices = input.price.map(|price| prices(price, each, feet, count)).transpose()?;
    let (total, linear_feet) = ((each * count)?, (feet * count)?);
    Ok(Answer { thickness, feet, each, total, linear_feet, prices })
}

fn prices(
    (price, per): (Number, Per),
    each: Number,
    feet: Number,
    count: Number,
) -> Result<Prices, OutOfRange> {
    let piece = match per {
        Per::Piece => price,
        Per::Foot => (price * feet)?,
        Per::BoardFoot => (price * each)?,
    };
    Ok(Prices {
        piece,
        foot: (piece / feet)?,
        board_foot: (piece / each)?,
        total: (piece * count)?,
    })
}
