//! Cross pieces between the front and the back rail, which carry a shelf or a top in its middle.

mod sheet;

pub(super) use sheet::work;

use super::fields::{DEPTH_OVERALL, HOUSING, SUPPORTS};
use crate::measure::{Length, Number, Rounding};
use crate::say;
use crate::sheet::{Refusal, Refused, WayOut};

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
/// - `rails-meet`: nothing is left between the rails.
/// - `housing-through-rail`: an end that goes in deeper than the rail is thick.
/// - `supports-do-not-fit`: beside each other.
/// - [`Refused::OutOfRange`]: sizes beyond exact keeping.
///
/// # Source
///
/// Arithmetic.
pub fn reckon(input: &Input) -> Result<Answer, Refused> {
    let Input { depth_overall, rail_thickness, between_legs, support_thickness, housing, .. } =
        *input;
    let n = input.n_supports.max(1);
    let mut refusals = Vec::new();
    let taken = ((input.set_back + rail_thickness)? * 2)?;
    let between_rails = (depth_overall - taken)?;
    if !between_rails.is_positive() {
        refusals.push(Refusal::at(
            &DEPTH_OVERALL,
            "rails-meet",
            say!["Rails and set-backs take ", taken, " of ", depth_overall, "."],
            WayOut::advice(say!["The depth must be more than ", (taken, Rounding::Up), "."]),
        ));
    }
    if housing > rail_thickness {
        refusals.push(Refusal::at(
            &HOUSING,
            "housing-through-rail",
            say!["Ends ", housing, " deep come out of a rail of ", rail_thickness, "."],
            WayOut::at_most("Go in ", rail_thickness, " or less.", &HOUSING),
        ));
    }
    let bay = ((between_legs - (support_thickness * n)?)? / (n + 1))?;
    if bay.is_negative() {
        let most = (between_legs / support_thickness)?.floor();
        let way_out = if most >= 1 {
            WayOut::set(say![format!("At most {most} fit.")], &SUPPORTS, most.to_string())
        } else {
            WayOut::advice(say!["Use a thinner support: not even one fits."])
        };
        refusals.push(Refusal::at(
            &SUPPORTS,
            "supports-do-not-fit",
            if n == 1 {
                say!["One support does not fit between the legs."]
            } else {
                say![n, " supports do not fit beside each other between the legs."]
            },
            way_out,
        ));
    }
    Refused::unless_none(refusals)?;
    let step = (bay + support_thickness)?;
    let left_edges =
        (0..n).map(|i| bay + (step * Number::whole(i.into()))?).collect::<Result<_, _>>()?;
    Ok(Answer { between_rails, cut: (between_rails + (housing * 2)?)?, bay, left_edges })
}
