//! Two tenons that come into one leg from neighbouring faces: do they meet?

mod sheet;

pub(super) use sheet::work;

use super::MORTISE_EXTRA;
use super::fields::{CENTRED_IN_LEG, LEG, TENON_A, TENON_B, TENON_PLACE, TENON_THICKNESS};
use crate::measure::{Length, Rounding};
use crate::say;
use crate::sheet::{Refusal, Refused, WayOut};

/// Least wood between the bottom of a mortise and the outside of the leg: 1/8 in.
/// Common practice, no source.
pub const LEAST_WALL: Length = Length::sixty_fourths(8);

/// What to check.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Input {
    /// The leg, square.
    pub leg: Length,
    /// Thickness of both tenons.
    pub thickness: Length,
    /// Outside face of the leg to the nearer cheek of each tenon; `None` when they are centred.
    pub outside_to_cheek: Option<Length>,
    /// Length of the two tenons, shoulder to tip.
    pub lengths: [Length; 2],
}

/// Two tenons that do not meet.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Answer {
    /// Outside face of the leg to the nearer cheek of each tenon.
    pub outside_to_cheek: Length,
    /// Longest that both may be alike and still not meet.
    pub longest_alike: Length,
    /// Longest single tenon, whose mortise leaves [`LEAST_WALL`] on the outside.
    pub longest_alone: Length,
    /// What is left between tip of the shorter one and cheek of the other.
    pub clear: Length,
}

/// Whether two tenons in a square leg meet.
///
/// A tenon that comes in by `a` reaches to `leg - a` from the far outside face. It meets the
/// other one when it reaches into that one's thickness and is reached into itself. Both alike,
/// the longest is leg - outside to cheek - thickness; centred, that is half of leg - thickness.
/// The tenons are taken to be at the same height.
///
/// # Errors
///
/// - `tenon-outside-leg`: at its place.
/// - `leg-too-thin-for-tenon`: for any blind one.
/// - `mortise-comes-out`: of the leg, on its outside.
/// - `tenons-meet`.
/// - [`Refused::OutOfRange`]: sizes beyond exact keeping.
///
/// # Source
///
/// Geometry; for centred tenons the trade's rule (S - t) / 2.
pub fn reckon(input: &Input) -> Result<Answer, Refused> {
    let Input { leg, thickness, lengths: [a, b], .. } = *input;
    let free = (leg - thickness)?;
    let outside_to_cheek = match input.outside_to_cheek {
        Some(distance) => distance,
        None => (free / 2)?,
    };
    if outside_to_cheek > free || free.is_negative() {
        Err(outside_leg(input, free))?;
    }
    let longest_alike = (free - outside_to_cheek)?;
    let longest_alone = ((leg - MORTISE_EXTRA)? - LEAST_WALL)?;
    if !longest_alone.is_positive() {
        Err(Refusal::at(
            &LEG,
            "leg-too-thin-for-tenon",
            say!["A leg of ", leg, " is too thin for any blind tenon."],
            WayOut::advice(say!["Use screws or a lap instead of tenons."]),
        ))?;
    }
    let mut refusals = Vec::new();
    for (field, tenon) in [(&TENON_A, a), (&TENON_B, b)] {
        if tenon > longest_alone {
            refusals.push(Refusal::at(
                field,
                "mortise-comes-out",
                say![
                    "The mortise for a tenon of ",
                    tenon,
                    " leaves less than ",
                    LEAST_WALL,
                    " on the outside of the leg."
                ],
                WayOut::at_most("Use a tenon of ", longest_alone, " or less.", field),
            ));
        }
    }
    let shorter = a.min(b);
    if shorter > longest_alike {
        let by = (shorter - longest_alike)?;
        refusals.push(meet(by, longest_alike.min(longest_alone)));
    }
    Refused::unless_none(refusals)?;
    Ok(Answer { outside_to_cheek, longest_alike, longest_alone, clear: (longest_alike - shorter)? })
}

/// Tenons at their place lie outside a leg that has `free` beside them.
fn outside_leg(input: &Input, free: Length) -> Refusal {
    let Input { leg, thickness, .. } = *input;
    let way_out = if free.is_negative() {
        WayOut::at_most("Tenons of ", leg, " or less lie in it.", &TENON_THICKNESS).map(
            |mut way_out| {
                way_out.set.push((TENON_PLACE.id, CENTRED_IN_LEG.id.into()));
                way_out
            },
        )
    } else {
        WayOut::set(say!["Center the tenons in the leg."], &TENON_PLACE, CENTRED_IN_LEG.id)
    };
    Refusal::at(
        &TENON_THICKNESS,
        "tenon-outside-leg",
        say!["A tenon of ", thickness, " at that place lies outside a leg of ", leg, "."],
        way_out,
    )
}

/// The tenons meet by so much; `most` is the longest that both may be alike.
fn meet(by: Length, most: Length) -> Refusal {
    let way_out = if most.is_positive() {
        let shown = (most, Rounding::Down);
        Some(WayOut {
            sentence: say!["Both alike may be ", shown, " long."],
            set: vec![(TENON_A.id, shown.into()), (TENON_B.id, shown.into())],
        })
    } else {
        WayOut::advice(say!["Move the tenons nearer the outside of the leg."])
    };
    Refusal::at(
        &TENON_A,
        "tenons-meet",
        say!["The two tenons meet in the leg by ", by, "."],
        way_out,
    )
}
