//! How far a top stands out beyond its base, along and across.

mod sheet;

pub(super) use sheet::work;

use super::fields::{TOP_ACROSS, TOP_LENGTH};
use crate::measure::{Length, Rounding};
use crate::say;
use crate::sheet::{Refusal, Refused, WayOut};

/// What is known of the top, along and across.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Find {
    /// How far a top of this length and width stands out.
    Overhang {
        /// Length and width of the top.
        top: [Length; 2],
    },
    /// The top that stands out this far.
    Top {
        /// At each end and at each side.
        overhang: [Length; 2],
    },
}

/// What to reckon an overhang from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Input {
    /// Length and width of the base **as built**, outside to outside.
    pub base: [Length; 2],
    /// What is wanted.
    pub find: Find,
}

/// A top centred on its base.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Answer {
    /// Length and width of the top.
    pub top: [Length; 2],
    /// How far it stands out at each end and at each side.
    pub overhang: [Length; 2],
}

/// The overhang of a top centred on its base: (top - base) ÷ 2 on both axes.
///
/// # Errors
///
/// - `top-smaller-than-base`: it does not cover its base, on either axis.
/// - [`Refused::OutOfRange`]: sizes beyond exact keeping.
///
/// # Source
///
/// Arithmetic; worked by hand as case T3 in `tests/reference/top.rs`.
pub fn reckon(input: &Input) -> Result<Answer, Refused> {
    let [base_length, base_width] = input.base;
    match input.find {
        Find::Overhang { top: [length, width] } => {
            let mut refusals = Vec::new();
            for (field, top, base) in
                [(&TOP_LENGTH, length, base_length), (&TOP_ACROSS, width, base_width)]
            {
                if top < base {
                    let least = say!["It must be ", (base, Rounding::Up), " at least."];
                    refusals.push(Refusal::at(
                        field,
                        "top-smaller-than-base",
                        say!["A top of ", top, " does not cover a base of ", base, "."],
                        WayOut::set(least, field, (base, Rounding::Up)),
                    ));
                }
            }
            Refused::unless_none(refusals)?;
            let overhang = [((length - base_length)? / 2)?, ((width - base_width)? / 2)?];
            Ok(Answer { top: [length, width], overhang })
        }
        Find::Top { overhang: [end, side] } => {
            let top = [(base_length + (end * 2)?)?, (base_width + (side * 2)?)?];
            Ok(Answer { top, overhang: [end, side] })
        }
    }
}
