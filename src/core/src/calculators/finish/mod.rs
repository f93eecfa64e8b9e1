//! Finish: how much area the parts have, and how much oil, stain or paint to buy.
//!
//! *"How much stain? Did I forget the undersides? One quart or a gallon?"*
//!
//! A part has two faces, two edges and two ends: 2 (L W + L T + W T). The first coat takes area ÷
//! coverage; each later coat takes about three quarters of the first. Coverage differs so much
//! between surfaces and between sources that both ends are always given; the cans to buy hold what
//! the low end takes and a reserve.
//!
//! # Source
//!
//! Areas: arithmetic. Coverage, the three quarters and the reserve: common practice, no source; trade texts
//! give 75 to 650 sq ft to the gallon in all. The label of the can comes first. Where one measures in
//! millimetres, finish is bought in cans of 0.75, 1, 2.5 and 5 L: common practice too, no source.

mod cans;
mod drawing;
// A table: a field in two lines.
#[rustfmt::skip]
mod fields;
mod sheet;
#[cfg(test)]
mod tests;

pub use cans::{Cans, Priced, Size, SoldBy, Why};
pub use sheet::CALCULATOR;

use crate::measure::{Area, Number, OutOfRange};
use crate::sheet::PartSize;

/// Which faces are coated.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Faces {
    /// All six.
    All,
    /// All but one wide face.
    NotTheUnderside,
    /// One wide face only.
    ShowFace,
    /// Both ends only: the seal of feet and cut ends.
    Ends,
}

impl Faces {
    /// How many wide faces, edges and ends are coated.
    #[must_use]
    pub fn coated(self) -> (u32, u32, u32) {
        match self {
            Faces::All => (2, 2, 2),
            Faces::NotTheUnderside => (1, 2, 2),
            Faces::ShowFace => (1, 0, 0),
            Faces::Ends => (0, 0, 2),
        }
    }
}

/// Square feet that one gallon covers in the first coat.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Coverage {
    /// Where it drinks most.
    pub least: Number,
    /// Where it drinks least; not below `least`.
    pub most: Number,
}

/// What is asked.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Input {
    /// The parts.
    pub parts: Vec<PartSize>,
    /// Which of their faces.
    pub faces: Faces,
    /// How many coats, at least one.
    pub coats: u32,
    /// What a gallon covers; above zero.
    pub coverage: Coverage,
    /// Percent more than it takes, not below zero.
    pub reserve: Number,
    /// What finish is sold by.
    pub sold: SoldBy,
    /// Prices of the cans, where known, in the order of their [sizes](SoldBy::sizes).
    pub prices: Vec<Option<Number>>,
}

/// How much to buy.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Answer {
    /// Area of each kind of part, in the order asked.
    pub part_areas: Vec<Area>,
    /// All of them.
    pub area: Area,
    /// Gallons for all coats with the low end of the coverage.
    pub gallons_most: Number,
    /// Gallons for all coats with the high end of the coverage.
    pub gallons_least: Number,
    /// Gallons for the first coat, low end.
    pub first_coat: Number,
    /// `gallons_most` and the reserve.
    pub gallons_to_buy: Number,
    /// Cans that hold them.
    pub cans: Cans,
}

/// Adds up the areas and finds the cans.
///
/// # Errors
///
/// [`OutOfRange`]: a number beyond the limits.
///
/// # Examples
///
/// ```
/// # use reckoner_core::{calculators::finish::*, measure::{length, Number}, sheet::PartSize};
/// let plank = PartSize {
///     name: String::new(), count: 6, length: length("50")?, width: length("5 1/2")?, thickness: length("1 1/2")?,
/// };
/// let answer = reckon(&Input {
///     parts: vec![plank], faces: Faces::All, coats: 1,
///     coverage: Coverage { least: Number::whole(150), most: Number::whole(200) },
///     reserve: Number::whole(10), sold: SoldBy::Gallon, prices: vec![],
/// }).map_err(|_| "refused")?;
/// assert_eq!(answer.area.in_square_inches(), Number::whole(4299));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn reckon(input: &Input) -> Result<Answer, OutOfRange> {
    let part_areas = input
        .parts
        .iter()
        .map(|part| area_of(part, input.faces))
        .collect::<Result<Vec<Area>, _>>()?;
    let area = part_areas.iter().try_fold(Area::ZERO, |sum, area| sum + *area)?;
    let feet = area.in_square_feet()?;
    let times = coat_factor(input.coats)?;
    let first_coat = (feet / input.coverage.least)?;
    let gallons_most = (first_coat * times)?;
    let gallons_least = ((feet / input.coverage.most)? * times)?;
    let more = (input.reserve / Number::whole(100))?;
    let gallons_to_buy = (gallons_most * (Number::ONE + more)?)?;
    let cans = Cans::that_hold(gallons_to_buy, input.sold, &input.prices)?;
    Ok(Answer { part_areas, area, gallons_most, gallons_least, first_coat, gallons_to_buy, cans })
}

/// Coated area of all parts of one size.
fn area_of(part: &PartSize, faces: Faces) -> Result<Area, OutOfRange> {
    let (wide, edges, ends) = faces.coated();
    let times = |area: Area, n: u32| area * Number::whole(n.into());
    let wide = times((part.length * part.width)?, wide)?;
    let edges = times((part.length * part.thickness)?, edges)?;
    let ends = times((part.width * part.thickness)?, ends)?;
    times(((wide + edges)? + ends)?, part.count)
}

/// All coats in first coats: 1 + 3/4 for each one more.
fn coat_factor(coats: u32) -> Result<Number, OutOfRange> {
    let more = Number::whole(i64::from(coats.max(1)) - 1);
    Number::ONE + (more * Number::ratio(3, 4)?)?
}
