//! The rail between two legs, solved for the rail, the overall length or the leg.

mod sheet;

pub(super) use sheet::work;

use super::MORTISE_EXTRA;
use super::fields::{FIND, FIND_RAIL, JOINT, LAP_SHORT, OVERALL, RAIL, TENON};
use crate::measure::{Length, OutOfRange, Rounding};
use crate::say;
use crate::sheet::{Refusal, Refused, WayOut};

/// What is known and what is wanted.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Find {
    /// The rail, from the overall length and the legs.
    Rail {
        /// Outside of leg to outside of leg.
        overall: Length,
        /// Left and right leg, each measured along the rail.
        legs: [Length; 2],
    },
    /// The overall length, from a rail that is already cut.
    Overall {
        /// End to end, joints included.
        cut: Length,
        /// Left and right leg, each measured along the rail.
        legs: [Length; 2],
    },
    /// Two equal legs, from the overall length and a rail that is already cut.
    Leg {
        /// Outside of leg to outside of leg.
        overall: Length,
        /// End to end, joints included.
        cut: Length,
    },
}

/// How the ends of the rail meet the legs.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Joint {
    /// Square ends against the legs.
    Butted,
    /// A tenon of this length on each end, shoulder to tip.
    Tenoned(Length),
    /// Lapped across each leg, and this much short of its outside; zero for flush.
    Lapped(Length),
}

/// What to reckon a rail from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Input {
    /// What is known.
    pub find: Find,
    /// The joint at both ends.
    pub joint: Joint,
}

/// The chain of sizes, whole.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Answer {
    /// Outside of leg to outside of leg.
    pub overall: Length,
    /// Left and right leg.
    pub legs: [Length; 2],
    /// Leg to leg, which is shoulder to shoulder.
    pub between: Length,
    /// The rail as it is cut, end to end.
    pub cut: Length,
    /// Depth of the mortise for a blind tenon; absent for other joints and for a tenon so long
    /// that the mortise comes out on the other side.
    pub mortise: Option<Length>,
}

/// The rail between two legs.
///
/// Leg to leg = overall - left leg - right leg. A butted rail is cut to that; a tenoned one is
/// longer by both tenons; a lapped one runs from outside to outside, less what it stays short of
/// each. The same chain is solved for the overall length or for two equal legs.
///
/// # Errors
///
/// - `legs-fill-overall`, `rail-fills-overall`, `rail-all-joint`: nothing is left of what is found.
/// - `rail-past-overall`: tenons that would come out of the legs.
/// - `tenon-through-leg`: a tenon longer than its leg.
/// - `lap-hides-legs`: legs from a lapped rail, which runs over them.
/// - `lap-misses-leg`: a lap that does not reach its leg.
/// - [`Refused::OutOfRange`]: sizes beyond exact keeping.
///
/// # Source
///
/// Arithmetic; worked by hand as case J1 in `tests/reference/frame.rs`. The mortise is 1/8 in
/// deeper than the tenon: common practice, no source.
///
/// # Examples
///
/// ```
/// # use reckoner_core::{calculators::frame::rail::{reckon, Find, Input, Joint}, measure::length};
/// let legs = [length("3 7/16")?; 2];
/// let find = Find::Rail { overall: length("44")?, legs };
/// let answer = reckon(&Input { find, joint: Joint::Tenoned(length("1")?) }).unwrap();
/// assert_eq!(answer.between, length("37 1/8")?);
/// assert_eq!(answer.cut, length("39 1/8")?);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn reckon(input: &Input) -> Result<Answer, Refused> {
    let answer = chain(input)?;
    match (input.joint, input.find) {
        (Joint::Lapped(_), Find::Leg { .. }) => Err(Refusal::at(
            &JOINT,
            "lap-hides-legs",
            say!["A lapped rail runs over the legs, so it does not tell how wide they are."],
            WayOut::set(say!["Find the rail instead."], &FIND, FIND_RAIL.id.to_owned()),
        ))?,
        // The legs follow from the rail here: it is the rail that is too long, not the tenon.
        (Joint::Tenoned(_), Find::Leg { overall, cut }) if cut > overall => Err(Refusal::at(
            &RAIL,
            "rail-past-overall",
            say!["A rail of ", cut, " has tenons that come out of legs ", overall, " overall."],
            WayOut::at_most("The rail may be ", overall, " at most.", &RAIL),
        ))?,
        _ => {}
    }
    let refusals = nothing_left(input, &answer)?.into_iter().chain(joint_too_long(input, &answer));
    Refused::unless_none(refusals.collect())?;
    Ok(answer)
}

/// Nothing is left for the rail, or for the legs.
fn nothing_left(input: &Input, answer: &Answer) -> Result<Option<Refusal>, OutOfRange> {
    let [left, right] = answer.legs;
    let legs = (left + right)?;
    Ok(match input.find {
        Find::Leg { overall, cut } if !left.is_positive() => {
            let limit = (cut + legs)?;
            Some(Refusal::at(
                &RAIL,
                "rail-fills-overall",
                say!["A rail of ", cut, " leaves nothing of ", overall, " for the legs."],
                WayOut::advice(say!["The rail must be shorter than ", limit, "."]),
            ))
        }
        Find::Rail { overall, .. } if !answer.between.is_positive() => Some(Refusal::at(
            &OVERALL,
            "legs-fill-overall",
            say!["The two legs take ", legs, " of ", overall, ": no rail is left."],
            WayOut::advice(say!["Make the overall more than ", (legs, Rounding::Up), "."]),
        )),
        // The legs would have to be wider than the overall, or the rail be nothing but its tenons.
        Find::Overall { cut, .. } | Find::Leg { cut, .. } if !answer.between.is_positive() => {
            let joints = (cut - answer.between)?;
            Some(Refusal::at(
                &RAIL,
                "rail-all-joint",
                say!["The joints take ", joints, " of a rail of ", cut, "."],
                WayOut::advice(say!["The rail must be longer than ", (joints, Rounding::Up), "."]),
            ))
        }
        _ => None,
    })
}

/// The tenon comes out of the thinner leg, or the lap does not reach over it.
fn joint_too_long(input: &Input, answer: &Answer) -> Option<Refusal> {
    let leg = answer.legs[0].min(answer.legs[1]);
    match input.joint {
        Joint::Lapped(short) if short >= leg => Some(Refusal::at(
            &LAP_SHORT,
            "lap-misses-leg",
            say!["Stopping ", short, " short, the rail does not reach over a leg of ", leg, "."],
            WayOut::set(say!["Let it end flush: 0."], &LAP_SHORT, "0".to_owned()),
        )),
        Joint::Tenoned(tenon) if tenon > leg && leg.is_positive() => Some(Refusal::at(
            &TENON,
            "tenon-through-leg",
            say!["A tenon of ", tenon, " sticks out of a leg of ", leg, "."],
            WayOut::at_most("Cut it through and flush: ", leg, ".", &TENON),
        )),
        _ => None,
    }
}

/// The chain as arithmetic gives it, possible or not.
fn chain(input: &Input) -> Result<Answer, OutOfRange> {
    // What the joints add to leg to leg, or for a lap take off the overall.
    let added = match input.joint {
        Joint::Butted => Length::ZERO,
        Joint::Tenoned(tenon) => (tenon * 2)?,
        Joint::Lapped(short) => (short * 2)?,
    };
    let is_lapped = matches!(input.joint, Joint::Lapped(_));
    let (overall, legs, cut) = match input.find {
        Find::Rail { overall, legs } if is_lapped => (overall, legs, (overall - added)?),
        Find::Rail { overall, legs: [left, right] } => {
            let between = ((overall - left)? - right)?;
            (overall, [left, right], (between + added)?)
        }
        Find::Overall { cut, legs } if is_lapped => ((cut + added)?, legs, cut),
        Find::Overall { cut, legs: [left, right] } => {
            let between = (cut - added)?;
            (((between + left)? + right)?, [left, right], cut)
        }
        Find::Leg { overall, cut } => {
            let leg = ((overall - (cut - added)?)? / 2)?;
            (overall, [leg, leg], cut)
        }
    };
    let between = ((overall - legs[0])? - legs[1])?;
    let mortise = match input.joint {
        Joint::Tenoned(tenon) => {
            let depth = (tenon + MORTISE_EXTRA)?;
            (depth < legs[0].min(legs[1])).then_some(depth)
        }
        _ => None,
    };
    Ok(Answer { overall, legs, between, cut, mortise })
}
