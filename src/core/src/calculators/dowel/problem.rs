//! [`Problem`]: what can be in the way of a dowel, and what would work.

use super::{Apart, Bits, Hold, Input};
use crate::measure::text::exact_text;
use crate::measure::{Length, OutOfRange};
use crate::say;
use crate::sheet::{self, Sentence, WayOut};

/// A dowel that cannot or should not be.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Problem {
    /// The two parts alone are as wide as the frames outside to outside.
    NothingBetween {
        /// Both thicknesses together.
        parts: Length,
    },
    /// A part thicker than its leg.
    PartOverLeg {
        /// Thickness of the thicker part.
        part: Length,
        /// Thickness of the leg.
        leg: Length,
    },
    /// A part set back so far that it comes out of the inside of its leg.
    SetBackTooFar {
        /// As given.
        set_back: Length,
        /// The most there is.
        most: Length,
    },
    /// A blind hole as deep as its part or deeper.
    DeeperThanPart {
        /// Depth of the hole.
        depth: Length,
        /// Thickness of the part.
        part: Length,
    },
    /// No dowel goes into the hole once the room at its bottom is left.
    NoDepthLeft {
        /// Depth of the hole.
        depth: Length,
        /// Room at its bottom.
        room: Length,
    },
    /// The dowel is bigger than the part, or leaves too little wood on both sides.
    DowelTooBig {
        /// The hole.
        bit: Length,
        /// Height of the part.
        height: Length,
        /// The biggest hole that leaves enough, on the bits at hand.
        most: Length,
    },
    /// The part is too short, front to back, for the hole and the wood round it.
    PartTooShort {
        /// The hole.
        bit: Length,
        /// Length of the part.
        length: Length,
        /// The shortest that does.
        least: Length,
    },
    /// The hole is too near an edge or an end.
    NearEdge {
        /// From top or bottom, not from front or back.
        is_height: bool,
        /// Wood left between hole and edge; below zero where the hole breaks out.
        wood: Length,
        /// Least wood wanted.
        least: Length,
        /// The nearest place for the center that leaves enough.
        clear: Length,
    },
    /// A number with more digits than can be kept exactly.
    TooFine,
}

impl From<OutOfRange> for Problem {
    fn from(_: OutOfRange) -> Problem {
        Problem::TooFine
    }
}

/// Whether the parts fit in their legs.
pub(super) fn set_back(input: &Input, problems: &mut Vec<Problem>) -> Result<(), OutOfRange> {
    let Apart::Legs { leg, set_back, .. } = input.apart else { return Ok(()) };
    let part = input.left.max(input.right);
    let most = (leg - part)?;
    if most.is_negative() {
        problems.push(Problem::PartOverLeg { part, leg });
    } else if let Some(set_back) = set_back.filter(|set_back| *set_back > most) {
        problems.push(Problem::SetBackTooFar { set_back, most });
    }
    Ok(())
}

/// Whether the blind holes stay in their parts and hold the dowel.
pub(super) fn blind(input: &Input, problems: &mut Vec<Problem>) -> Result<(), OutOfRange> {
    let (blind, part) = match input.hold {
        Hold::Through { .. } => return Ok(()),
        Hold::Blind(blind) => (blind, input.left.min(input.right)),
        Hold::OneEnd { blind, .. } => (blind, input.right),
    };
    if blind.depth >= part {
        problems.push(Problem::DeeperThanPart { depth: blind.depth, part });
    }
    if blind.room >= blind.depth {
        problems.push(Problem::NoDepthLeft { depth: blind.depth, room: blind.room });
    }
    Ok(())
}

/// Whether enough wood stays round the hole.
pub(super) fn edges(
    input: &Input,
    bit: Length,
    from_top: Length,
    from_front: Length,
    problems: &mut Vec<Problem>,
) -> Result<(), OutOfRange> {
    let least = input.least_wood.map_or_else(|| bit / 2, Ok)?;
    let near = ((bit / 2)? + least)?;
    let room = (near * 2)?;
    if room > input.height {
        let most = match input.least_wood {
            Some(least) => (input.height - (least * 2)?)?,
            None => (input.height / 2)?,
        };
        let most = input.bits.not_over(most.max(Length::ZERO))?;
        problems.push(Problem::DowelTooBig { bit, height: input.height, most });
    } else {
        problems.extend(near_edge(true, from_top, input.height, near, least)?);
    }
    if room > input.length {
        problems.push(Problem::PartTooShort { bit, length: input.length, least: room });
    } else {
        problems.extend(near_edge(false, from_front, input.length, near, least)?);
    }
    Ok(())
}

fn near_edge(
    is_height: bool,
    center: Length,
    size: Length,
    near: Length,
    least: Length,
) -> Result<Option<Problem>, OutOfRange> {
    let clear = center.clamp(near, (size - near)?);
    if clear == center {
        return Ok(None);
    }
    let half = (near - least)?;
    let wood = (center.min((size - center)?) - half)?;
    Ok(Some(Problem::NearEdge { is_height, wood, least, clear }))
}

impl sheet::Problem for Problem {
    fn code(&self) -> &'static str {
        match self {
            Problem::NothingBetween { .. } => "nothing-between",
            Problem::PartOverLeg { .. } => "part-over-leg",
            Problem::SetBackTooFar { .. } => "set-back-too-far",
            Problem::DeeperThanPart { .. } => "deeper-than-part",
            Problem::NoDepthLeft { .. } => "no-depth-left",
            Problem::DowelTooBig { .. } => "dowel-too-big",
            Problem::PartTooShort { .. } => "part-too-short",
            Problem::NearEdge { .. } => "near-edge",
            Problem::TooFine => "too-fine",
        }
    }

    fn field(&self) -> &'static str {
        match self {
            Problem::NothingBetween { .. } => "overall",
            Problem::PartOverLeg { .. } => "leg",
            Problem::SetBackTooFar { .. } => "set_back",
            Problem::DeeperThanPart { .. } => "depth",
            Problem::NoDepthLeft { .. } => "room",
            Problem::DowelTooBig { .. } | Problem::TooFine => "dowel",
            Problem::PartTooShort { .. } => "part_length",
            Problem::NearEdge { is_height: true, .. } => "from_top",
            Problem::NearEdge { is_height: false, .. } => "from_front",
        }
    }

    fn sentence(&self) -> Sentence {
        match self {
            Problem::NothingBetween { parts } => {
                say!["The two parts alone take up ", *parts, "."]
            }
            Problem::PartOverLeg { part, leg } => {
                say!["A part ", *part, " thick does not go into a leg of ", *leg, "."]
            }
            Problem::SetBackTooFar { set_back, .. } => {
                say!["Set back by ", *set_back, ", the part comes out of the inside of the leg."]
            }
            Problem::DeeperThanPart { depth, part } => {
                say!["A hole ", *depth, " deep goes through a part of ", *part, "."]
            }
            Problem::NoDepthLeft { depth, room } => {
                say!["With ", *room, " left free, nothing goes into a hole ", *depth, " deep."]
            }
            Problem::DowelTooBig { bit, height, .. } if bit >= height => {
                say![
                    format!("A hole of {} is no smaller than the part, ", exact_text(*bit)),
                    *height,
                    "."
                ]
            }
            Problem::DowelTooBig { bit, height, .. } => say![
                format!("A hole of {} leaves too little wood in a part of ", exact_text(*bit)),
                *height,
                "."
            ],
            Problem::PartTooShort { bit, length, .. } => say![
                format!("A hole of {} leaves too little wood in a length of ", exact_text(*bit)),
                *length,
                "."
            ],
            Problem::NearEdge { wood, .. } if !wood.is_positive() => {
                say!["The hole breaks out of the part there."]
            }
            Problem::NearEdge { wood, least, .. } => {
                say!["That leaves ", *wood, " of wood beside the hole; ", *least, " is wanted."]
            }
            Problem::TooFine => {
                say!["These numbers have too many digits to be kept exactly."]
            }
        }
    }

    fn way_out(&self) -> Option<WayOut> {
        match self {
            Problem::NothingBetween { parts } => {
                WayOut::advice(say!["Outside to outside must be more than ", *parts, "."])
            }
            Problem::PartOverLeg { part, .. } => WayOut::set_id(
                say!["The leg must be ", *part, " or more."],
                "leg",
                exact_text(*part),
            ),
            Problem::SetBackTooFar { most, .. } => WayOut::set_id(
                say!["Set it back by ", *most, " or less."],
                "set_back",
                exact_text(*most),
            ),
            Problem::DeeperThanPart { part, .. } => {
                let most = most_depth(*part)?;
                WayOut::set_id(say!["Drill ", most, " deep or less."], "depth", exact_text(most))
            }
            Problem::NoDepthLeft { depth, .. } => {
                let most = (*depth / 4).ok()?;
                WayOut::set_id(say!["Leave ", most, " or less."], "room", exact_text(most))
            }
            Problem::DowelTooBig { most, .. } if most.is_positive() => Some(WayOut {
                sentence: say![format!("Up to {} fits.", exact_text(*most))],
                set: vec![("dowel", exact_text(*most)), ("across", String::new())],
            }),
            Problem::DowelTooBig { .. } => WayOut::advice(say!["Use a higher part."]),
            Problem::PartTooShort { least, .. } => WayOut::set_id(
                say!["It takes a length of ", *least, "."],
                "part_length",
                exact_text(*least),
            ),
            Problem::NearEdge { clear, .. } => {
                WayOut::set_id(say!["Use ", *clear, "."], self.field(), exact_text(*clear))
            }
            Problem::TooFine => WayOut::advice(say!["Use sizes from a tape."]),
        }
    }
}

/// A quarter of an inch left under the hole for the point of the bit, or half of a thin part.
fn most_depth(part: Length) -> Option<Length> {
    let quarter = Length::sixty_fourths(16);
    let half = (part / 2).ok()?;
    Some((part - quarter).ok()?.max(half))
}

impl Bits {
    /// Id in the form.
    pub(super) fn of(id: &str) -> Bits {
        match id {
            "thirty_seconds" => Bits::ThirtySeconds,
            "sixteenths" => Bits::Sixteenths,
            "millimetres" => Bits::Millimetres,
            _ => Bits::SixtyFourths,
        }
    }
}
