//! How long a dowel through two frames, with which bit, and where do the holes go?
//!
//! - Through both: the dowel is as long as the frames measure outside to outside, and is cut
//!   longer by a trim at each end, to be sawn and sanded flush.
//! - Blind in both: what is clear between the frames, and at each end the depth of the hole less
//!   the room left at its bottom.
//! - Through the left frame and blind in the right one: half of each.
//!
//! The frames are measured outside to outside, or clear between them, or they are worked out from
//! what is clear between the legs: a part that stands back from the outside of its leg by
//! `set_back` leaves `leg - part - set_back` between its own inside and that of the leg.
//!
//! The bit is the smallest of its kind that is not smaller than the dowel at its thickest: dowels
//! are often oval. Round the hole stays at least half its width of wood, unless told otherwise.
//!
//! # Source
//!
//! Arithmetic, worked by hand as case J4 in `tests/reference/dowel.rs`. The trim (1/16 to 1/4) and
//! the wood round the hole are common practice. The room at the bottom of blind holes: an older
//! mechanics text, How-To: Dowelling, cuts dowels 1/8 shorter than the two holes together.

mod asked;
mod checks;
mod drawing;
// A table: a field in two lines.
#[rustfmt::skip]
pub(crate) mod fields;
mod sheet;
mod template;
#[cfg(test)]
mod tests;
mod working;

use crate::measure::{Length, OutOfRange};
use crate::say;
use crate::sheet::{Refusal, Refused, WayOut};
use fields::OVERALL;

pub use asked::{Apart, Bits, Blind, Hold, Input};
pub use sheet::CALCULATOR;

/// The dowel and its holes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Answer {
    /// Cut the dowel to this: the finished length and the trims.
    pub rough: Length,
    /// End to end when done.
    pub finished: Length,
    /// What is seen of it between the parts: inside to inside.
    pub clear: Length,
    /// Outside to outside of the parts.
    pub overall: Length,
    /// The bit.
    pub bit: Length,
    /// Bit less dowel at its thickest.
    pub clearance: Length,
    /// Bit less dowel across that.
    pub clearance_across: Length,
    /// Least wood between the hole and an edge or end.
    pub wood: Length,
    /// Wood left under the shallower of the blind holes.
    pub under: Option<Length>,
    /// Center of the hole from the top edge.
    pub from_top: Length,
    /// Center of the hole from the front end.
    pub from_front: Length,
    /// Center of the hole from the back end.
    pub from_back: Length,
}

/// Works out the dowel, the bit and the holes.
///
/// # Errors
///
/// [`Refused`] with every reason that applies:
/// - `nothing-between`, `part-over-leg`, `set-back-too-far`: the parts and the legs.
/// - `deeper-than-part`, `no-depth-left`: a blind hole.
/// - `dowel-too-big`, `part-too-short`, `near-edge`: too little wood round the hole.
/// - [`Refused::OutOfRange`]: a number with more digits than can be kept exactly.
///
/// # Examples
///
/// ```
/// # use reckoner_core::{measure::length, calculators::dowel::{reckon, Apart, Bits, Hold, Input}};
/// let answer = reckon(&Input {
///     hold: Hold::Through { trim: length("1/4")? },
///     left: length("1 1/2")?,
///     right: length("1 1/2")?,
///     apart: Apart::Overall(length("38")?),
///     dowel: length("1.02")?,
///     across: length("1.02")?,
///     bits: Bits::SixtyFourths,
///     height: length("3 1/4")?,
///     from_top: None,
///     length: length("17")?,
///     from_front: None,
///     least_wood: None,
/// });
/// let answer = answer.map_err(|refused| format!("{refused:?}"))?;
/// assert_eq!(answer.rough, length("38 1/2")?);
/// assert_eq!(answer.bit, length("1 1/32")?);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn reckon(input: &Input) -> Result<Answer, Refused> {
    let mut refusals = Vec::new();
    checks::set_back(input, &mut refusals)?;
    checks::blind(input, &mut refusals)?;
    let clear = clear(input)?;
    if !clear.is_positive() {
        let parts = (input.left + input.right)?;
        refusals.push(Refusal::at(
            &OVERALL,
            "nothing-between",
            say!["The two pieces alone take up ", parts, "."],
            WayOut::advice(say!["Outside to outside must be more than ", parts, "."]),
        ));
    }
    let bit = input.bits.not_under(input.dowel.max(input.across))?;
    let from_top = input.from_top.map_or_else(|| input.height / 2, Ok)?;
    let from_front = input.from_front.map_or_else(|| input.length / 2, Ok)?;
    checks::edges(input, bit, from_top, from_front, &mut refusals)?;
    Refused::unless_none(refusals)?;

    let overall = ((clear + input.left)? + input.right)?;
    let (finished, trims) = match input.hold {
        Hold::Through { trim } => (overall, (trim * 2)?),
        Hold::Blind(blind) => ((clear + (held(blind)? * 2)?)?, Length::ZERO),
        Hold::OneEnd { trim, blind } => (((clear + input.left)? + held(blind)?)?, trim),
    };
    let from_back = (input.length - from_front)?;
    let edge = from_top.min((input.height - from_top)?).min(from_front).min(from_back);
    let under = match input.hold {
        Hold::Through { .. } => None,
        Hold::Blind(blind) => Some((input.left.min(input.right) - blind.depth)?),
        Hold::OneEnd { blind, .. } => Some((input.right - blind.depth)?),
    };
    Ok(Answer {
        rough: (finished + trims)?,
        finished,
        clear,
        overall,
        bit,
        clearance: (bit - input.dowel.max(input.across))?,
        clearance_across: (bit - input.dowel.min(input.across))?,
        wood: (edge - (bit / 2)?)?,
        under,
        from_top,
        from_front,
        from_back,
    })
}

/// How far the dowel goes into a blind hole.
fn held(blind: Blind) -> Result<Length, OutOfRange> {
    blind.depth - blind.room
}

/// Inside to inside of the parts.
fn clear(input: &Input) -> Result<Length, OutOfRange> {
    match input.apart {
        Apart::Clear(clear) => Ok(clear),
        Apart::Overall(overall) => (overall - input.left)? - input.right,
        Apart::Legs { clear, leg, set_back } => {
            let mut between = clear;
            for part in [input.left, input.right] {
                let play = (leg - part)?;
                let outside = set_back.map_or_else(|| play / 2, Ok)?;
                between = (between + (play - outside)?)?;
            }
            Ok(between)
        }
    }
}
