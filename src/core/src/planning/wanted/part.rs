//! A part of the job book as it is wanted of the planner, or why it is not yet.

use super::problem::{Named, WantedProblem};
use crate::job::{Grain, ItemId, Part, PartSizes};
use crate::measure::Length;
use crate::measure::text::TextProblem;
use crate::sheet::Sentence;

/// A part that is left out until something is measured on the real thing.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct NotYet {
    /// The part.
    pub part: ItemId,
    /// Its name.
    pub name: String,
    /// What must be measured.
    pub waits_for: Vec<ItemId>,
    /// `shelf board waits for: frame inside.`
    pub sentence: Sentence,
}

/// A part of the job book with its sizes worked out.
#[derive(Clone, Debug)]
pub(super) struct WantedPart {
    pub(super) named: Named,
    pub(super) thickness: Length,
    pub(super) width: Length,
    pub(super) length: Length,
    pub(super) quantity: u32,
    pub(super) may_rip: bool,
    pub(super) may_resaw: bool,
    pub(super) grain_free: bool,
    pub(super) stock: String,
}

impl WantedPart {
    /// Whether it takes any board of its size.
    pub(super) fn takes_any(&self) -> bool {
        self.stock.trim().is_empty()
    }
}

/// The part with its sizes, or all that is in the way of them.
pub(super) fn read_part(
    named: Named,
    part: &Part,
    sizes: &PartSizes,
) -> Result<WantedPart, Vec<WantedProblem>> {
    let mut problems = Vec::new();
    let mut size = |which: &'static str, length: &Result<Length, _>| match length {
        Ok(length) if length.is_positive() => Some(*length),
        Ok(_) => {
            problems.push(WantedProblem::NotPositive { of: named.clone(), which });
            None
        }
        Err(problem) => {
            let problem: &TextProblem = problem;
            let why = problem.to_string();
            problems.push(WantedProblem::Size { of: named.clone(), which, why });
            None
        }
    };
    let thickness = size("thickness", &sizes.thickness);
    let width = size("width", &sizes.width);
    let length = size("length", &sizes.length);
    if let Err(problem) = &sizes.quantity {
        let (of, why) = (named.clone(), problem.to_string());
        problems.push(WantedProblem::Size { of, which: "number of pieces", why });
    }
    match (thickness, width, length, &sizes.quantity) {
        (Some(thickness), Some(width), Some(length), Ok(quantity)) if problems.is_empty() => {
            Ok(WantedPart {
                named,
                thickness,
                width,
                length,
                quantity: quantity.saturating_sub(sizes.done),
                may_rip: part.may_rip,
                may_resaw: part.may_resaw,
                grain_free: part.grain == Grain::Free,
                stock: part.stock.clone(),
            })
        }
        _ => Err(problems),
    }
}
