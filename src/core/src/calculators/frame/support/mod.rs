//! Cross pieces between the front and the back rail, which carry a shelf or a top in its middle.

mod sheet;

pub(super) use sheet::work;

use super::Problem;
use crate::measure::{Length, Number};
use crate::sheet::Problems;

/// What to reckon the supports from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Input {
    /// Outside of the front leg to outside of the back leg.
    pub depth_overall: Length,
    /// How far each rail lies back from the outside of its leg.
    pub set_back: Length,
    /// Thickness of each rail, front to back.
    pub rail_thickness: Length,
    /// Leg to leg along the rails.
    pub between_legs: Length,
    /// How many supports.
    pub n_supports: u32,
    /// Thickness of a support, along the rails.
    pub support_thickness: Length,
    /// How far each end goes into its rail; zero for square ends.
    pub housing: Length,
}

/// Where the supports go and how long they are.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Answer {
    /// Inside of the front rail to inside of the back rail.
    pub between_rails: Length,
    /// A support as it is cut, end to end.
    pub cut: Length,
    /// Clear space on each side of every support, along the rail.
    pub bay: Length,
    /// Left edge of each support, from the left leg.
    pub left_edges: Vec<Length>,
}

/// Cross pieces between two rails, with equal bays between them and the legs.
///
/// Rail to rail = depth - 2 × (set-back + rail). Bay = (leg to leg - supports) ÷ (supports + 1).
///
/// # Errors
///
/// Rails that meet, supports that do not fit beside each other, a housing deeper than the rail.
///
/// # Source
///
/// Arithmetic.
pub fn reckon(input: &Input) -> Result<Answer, Problems<Problem>> {
    let Input { depth_overall, rail_thickness, between_legs, support_thickness, housing, .. } =
        *input;
    let n = input.n_supports.max(1);
    let mut problems = Vec::new();
    let taken = ((input.set_back + rail_thickness)? * 2)?;
    let between_rails = (depth_overall - taken)?;
    if !between_rails.is_positive() {
        problems.push(Problem::RailsMeet { depth_overall, taken });
    }
    if housing > rail_thickness {
        problems.push(Problem::HousingThroughRail { housing, rail_thickness });
    }
    let bay = ((between_legs - (support_thickness * n)?)? / (n + 1))?;
    if bay.is_negative() {
        let most = (between_legs / support_thickness)?.floor();
        problems.push(Problem::SupportsDoNotFit { n_supports: n, most });
    }
    Problems::unless_none(problems)?;
    let step = (bay + support_thickness)?;
    let left_edges =
        (0..n).map(|i| bay + (step * Number::whole(i.into()))?).collect::<Result<_, _>>()?;
    Ok(Answer { between_rails, cut: (between_rails + (housing * 2)?)?, bay, left_edges })
}
