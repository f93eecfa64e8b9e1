//! Guide for a hand-held circular saw: where a straight guide goes for the blade to leave a strip.
//!
//! # Rule
//!
//! The blade runs on the waste side of the line, so the kerf lies just past the strip that is
//! kept. The guide offset is the distance from the edge of the shoe to the nearest tooth; it
//! differs left and right of the blade. Guide on the waste: strip + kerf + offset from the kept
//! edge. Guide on the kept strip: strip − offset.
//!
//! # Source
//!
//! Saw manuals and common practice; worked by hand as case R5 in
//! `tests/reference/resaw_rip.rs`.

use super::fields::{GUIDE_ON, GUIDE_STRIP, NARROW, ON_STRIP, ON_WASTE, SHOE_SIDE, WIDE};
use super::nearest::at_most;
use crate::measure::{Length, OutOfRange};
use crate::say;
use crate::sheet::{Choice, Refusal, Refused, Side, WayOut};

/// Board that has to lie under the guide to clamp it on: 1 in. Common practice, no source.
pub const LEAST_BEARING: Length = Length::sixty_fourths(64);

/// Which part of the board carries the guide.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum GuideOn {
    /// The part past the kerf.
    Waste,
    /// The strip that is kept.
    Strip,
}

/// Which side of the shoe runs along the guide.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ShoeSide {
    /// The side with little shoe beyond the blade.
    Narrow,
    /// The side under the motor.
    Wide,
}

impl GuideOn {
    /// How it is chosen, and its word.
    pub(super) fn choice(self) -> Choice {
        match self {
            GuideOn::Waste => ON_WASTE,
            GuideOn::Strip => ON_STRIP,
        }
    }
}

impl ShoeSide {
    /// How it is chosen, and its word.
    pub(super) fn choice(self) -> Choice {
        match self {
            ShoeSide::Narrow => NARROW,
            ShoeSide::Wide => WIDE,
        }
    }
}

/// A board, a strip to keep, and the saw's shoe.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Input {
    /// Across the cut.
    pub board_width: Length,
    /// Kept, from the kept edge to the line.
    pub strip: Length,
    /// Width of the cut.
    pub kerf: Length,
    /// Shoe edge to nearest tooth on the narrow side.
    pub narrow: Length,
    /// Shoe edge to nearest tooth on the wide side.
    pub wide: Length,
    /// Where the guide shall be.
    pub guide_on: GuideOn,
    /// Which shoe side shall run along it.
    pub shoe_side: ShoeSide,
    /// Which edge of the board the strip is measured from, as the user faces it.
    pub kept_edge: Side,
}

/// One of the four ways to place the guide.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Placement {
    /// What carries the guide.
    pub guide_on: GuideOn,
    /// What runs along it.
    pub shoe_side: ShoeSide,
    /// Kept edge to the edge of the guide that the shoe runs along; below zero beyond the board.
    pub from_kept_edge: Length,
    /// How much board lies behind that edge to carry the guide; below zero when it hangs off.
    pub bearing: Length,
}

impl Placement {
    /// Whether the board carries the guide.
    #[must_use]
    pub fn stands(&self) -> bool {
        self.bearing >= LEAST_BEARING
    }
}

/// Where the guide goes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Answer {
    /// As asked.
    pub chosen: Placement,
    /// All four ways: waste then strip, each with the narrow side first.
    pub all: [Placement; 4],
    /// Shoe edge to nearest tooth, as used.
    pub offset: Length,
    /// What is left past the kerf; zero when the kerf takes it all.
    pub waste: Length,
}

/// The four ways in the order of [`Answer::all`].
const WAYS: [(GuideOn, ShoeSide); 4] = [
    (GuideOn::Waste, ShoeSide::Narrow),
    (GuideOn::Waste, ShoeSide::Wide),
    (GuideOn::Strip, ShoeSide::Narrow),
    (GuideOn::Strip, ShoeSide::Wide),
];

/// Where the guide goes.
///
/// # Errors
///
/// - `nothing-beside-strip`, beside the strip: the strip is the whole board.
/// - `guide-off-board`, beside what carries it: the board does not carry the guide there; sets the
///   way that works.
///
/// ```
/// # use reckoner_core::{measure::length, sheet::Side, calculators::resaw_rip::guide::*};
/// let answer = reckon(&Input {
///     board_width: length("9 1/4")?, strip: length("2 3/4")?, kerf: length("1/8")?,
///     narrow: length("1 1/2")?, wide: length("4 7/8")?,
///     guide_on: GuideOn::Waste, shoe_side: ShoeSide::Narrow, kept_edge: Side::Left,
/// }).map_err(|_| "refused")?;
/// assert_eq!(answer.chosen.from_kept_edge, length("4 3/8")?);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn reckon(input: &Input) -> Result<Answer, Refused> {
    let Input { board_width, strip, kerf, .. } = *input;
    if strip >= board_width {
        let most = (board_width - kerf)?;
        Err(Refusal::at(
            &GUIDE_STRIP,
            "nothing-beside-strip",
            say!["A strip of ", strip, " leaves nothing to cut off a ", board_width, " board."],
            if most.is_positive() { at_most(&GUIDE_STRIP, most) } else { None },
        ))?;
    }
    let [a, b, c, d] = WAYS.map(|(guide_on, shoe_side)| place(input, guide_on, shoe_side));
    let all = [a?, b?, c?, d?];
    let is_chosen = |placement: &&Placement| {
        placement.guide_on == input.guide_on && placement.shoe_side == input.shoe_side
    };
    let chosen = all.iter().find(is_chosen).copied().ok_or(OutOfRange)?;
    if !chosen.stands() {
        return Err(guide_off_board(&chosen, &all).into());
    }
    let rest = (board_width - strip)?;
    Ok(Answer {
        chosen,
        all,
        offset: offset(input, input.shoe_side),
        waste: (rest - kerf.min(rest))?,
    })
}

/// The board does not carry the guide.
fn guide_off_board(chosen: &Placement, all: &[Placement]) -> Refusal {
    let sentence = if chosen.bearing.is_negative() {
        say!["There the guide hangs off the board by ", -chosen.bearing, "."]
    } else {
        say!["Only ", chosen.bearing, " of board is there to clamp the guide on."]
    };
    let way_out = match all.iter().find(|placement| placement.stands()) {
        Some(better) => {
            let (on, shoe) = (better.guide_on.choice().id, better.shoe_side.choice().id);
            Some(WayOut {
                sentence: say![format!(
                    "Put the guide on the {on}, the {shoe} side of the shoe along it."
                )],
                set: vec![(GUIDE_ON.id, on.into()), (SHOE_SIDE.id, shoe.into())],
            })
        }
        None => WayOut::advice(say![
            "Lay a second board of the same thickness beside it, to carry the guide."
        ]),
    };
    Refusal::at(&GUIDE_ON, "guide-off-board", sentence, way_out)
}

fn offset(input: &Input, shoe_side: ShoeSide) -> Length {
    match shoe_side {
        ShoeSide::Narrow => input.narrow,
        ShoeSide::Wide => input.wide,
    }
}

fn place(input: &Input, guide_on: GuideOn, shoe_side: ShoeSide) -> Result<Placement, OutOfRange> {
    let offset = offset(input, shoe_side);
    let (from_kept_edge, bearing) = match guide_on {
        GuideOn::Waste => {
            let guide = ((input.strip + input.kerf)? + offset)?;
            (guide, (input.board_width - guide)?)
        }
        GuideOn::Strip => {
            let guide = (input.strip - offset)?;
            (guide, guide)
        }
    };
    Ok(Placement { guide_on, shoe_side, from_kept_edge, bearing })
}
