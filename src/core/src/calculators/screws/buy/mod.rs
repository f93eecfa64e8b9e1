//! How many screws to buy.

mod sheet;

pub(super) use sheet::work;

use crate::measure::{Number, OutOfRange};
use crate::sheet::Refused;

/// What to count.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Input {
    /// Planks, slats or joints.
    pub n_planks: u32,
    /// Rails that each of them crosses.
    pub n_rails: u32,
    /// Screws at each crossing.
    pub per_crossing: u32,
    /// Spare, in percent.
    pub spare: Number,
    /// Screws in a box; 1 when sold singly.
    pub box_of: u32,
}

/// The counts.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Answer {
    /// Screws in the work.
    pub needed: u64,
    /// Screws to buy, spares included, rounded up.
    pub buy: u64,
    /// Boxes, rounded up.
    pub boxes: u64,
    /// Screws left over when whole boxes are bought, with the spares.
    pub left_over: u64,
}

/// How many screws to buy: planks × rails × screws each, and the spares, rounded up.
///
/// # Errors
///
/// [`Refused::OutOfRange`]: counts beyond exact keeping.
///
/// # Source
///
/// Arithmetic; worked by hand as case F7 in `tests/reference/screws.rs`.
pub fn reckon(input: &Input) -> Result<Answer, Refused> {
    let counts = [input.n_planks, input.n_rails, input.per_crossing];
    let needed = counts
        .into_iter()
        .try_fold(1_u64, |product, count| product.checked_mul(count.into()))
        .ok_or(OutOfRange)?;
    let whole = Number::ratio(needed.into(), 1)?;
    let share = (Number::ONE + (input.spare / Number::whole(100))?)?;
    let buy = u64::try_from((whole * share)?.ceil()).map_err(|_| OutOfRange)?;
    let boxes = buy.div_ceil(u64::from(input.box_of.max(1)));
    let bought = boxes.checked_mul(input.box_of.max(1).into()).ok_or(OutOfRange)?;
    Ok(Answer { needed, buy, boxes, left_over: bought.saturating_sub(needed) })
}
