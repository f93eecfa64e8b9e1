//! Which bits: pilot hole, clearance hole, countersink.

mod sheet;

pub(super) use sheet::work;

use super::fields::SCREW_LENGTH;
use super::{LEAST_INTO, Wood};
use crate::measure::{Fineness, Length, Number, OutOfRange, Rounding, Tape};
use crate::say;
use crate::sheet::{Refusal, Refused, WayOut};
use crate::tables::fasteners::{Fastener, Make, stock_lengths};

/// Depth of the pilot of a wood screw: to the tip in hardwood (Audel, Figure 1-19); half to two
/// thirds of the thread in the receiver (Navy), of which half is taken in softwood. Both were read
/// in text copies.
pub const DEPTH_SOURCE: &str = "Depth in softwood: Navy NAVEDTRA 14119, Fig. 3-52; in hardwood: \
     Audel Carpenters and Builders Math, Plans, and Specifications, 7th ed., Figure 1-19";

/// Depths of both holes of a lag screw: the wide one as deep as the shank, the narrow one as deep as the screw goes in,
/// so to its tip. Read in the source, which has it from a guide for fitters. NDS 2018 12.1.4.2 wants the narrow one at
/// least as deep as the thread: from memory, not a test oracle.
pub const LAG_DEPTH_SOURCE: &str =
    "Depths of a lag screw's holes: mypdh.engineer, lesson “Lag Bolts”, steps 2 and 3";

/// What to choose bits for.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Input {
    /// Screw, lag screw or nail.
    pub fastener: Fastener,
    /// The wood of the receiver.
    pub wood: Wood,
    /// Length of the fastener.
    pub length: Length,
    /// The piece under the head.
    pub top: Length,
}

/// The bits.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Answer {
    /// The diameter that the rule wants, exactly; the largest for a nail.
    pub wanted: Length,
    /// Pilot bit in a whole 64th, never above the root.
    pub pilot: Length,
    /// Whether the root sets the pilot bit, since what is wanted would come out above it.
    pub root_sets_it: bool,
    /// Hole in the piece under the head, in a whole 64th; absent for a nail.
    pub clearance: Option<Length>,
    /// Width of the countersink: the head.
    pub head: Option<Length>,
    /// Depth of the clearance hole, from the face under the head: through the top piece, and on
    /// as far as the smooth shank goes. Zero for a nail.
    pub clearance_depth: Length,
    /// Depth of the pilot hole in the receiver, from its face.
    pub depth: Length,
}

/// Bits for a screw, a lag screw or a nail.
///
/// Wood screw: 70 % of the tabulated root in softwood, 90 % in hardwood, to the nearest 64th, but
/// never above the root. Lag screw: the middle of the range by the wood's specific gravity, never
/// above the root. Nail: at most 75 % of it, 90 % in wood above 0.60. The clearance hole is the
/// next 64th at or above the shank, so that the screw slips through and clamps. It goes through the
/// top piece, and into the receiver as far as the smooth shank does. The pilot goes to the tip for a
/// lag screw, and for any fastener in hardwood; in softwood to half of the thread of a wood screw.
///
/// # Errors
///
/// `does-not-reach`, beside its length: a fastener that does not reach the receiver.
///
/// # Source
///
/// Wood screw: Wood Handbook FPL-GTR-282 p. 8-10. Lag screw: NDS 2018 12.1.4.2. Nail: NDS 2018
/// 12.1.6.2. Root and thread: NDS 2018 Tables L2 and L3. Depth of the clearance hole: NDS 2018
/// 12.1.4.2, as deep as the unthreaded length. Depth of the pilot: [`DEPTH_SOURCE`] for a wood screw,
/// [`LAG_DEPTH_SOURCE`] for a lag screw. For a nail: common practice, no source.
pub fn reckon(input: &Input) -> Result<Answer, Refused> {
    let Input { fastener, wood, length, top } = *input;
    let into = (length - top)?;
    if !into.is_positive() {
        return Err(does_not_reach(length, top).into());
    }
    let (shank, root) = (fastener.shank()?, fastener.root()?);
    let (wanted, to) = match fastener.make {
        Make::WoodScrew => (share(root, root_share(wood))?, Rounding::Nearest),
        Make::LagScrew => {
            let [least, most] = lag_range(wood);
            (((share(shank, least)? + share(shank, most)?)? / 2)?, Rounding::Nearest)
        }
        Make::Nail => (share(shank, nail_share(wood))?, Rounding::Down),
    };
    // Where it is midway, the smaller one.
    let by_rule = bit(wanted, to)?;
    let root_sets_it = by_rule > root;
    let pilot = if root_sets_it { bit(root, Rounding::Down)? } else { by_rule };
    let clearance = match fastener.make {
        Make::Nail => None,
        _ => Some(bit(shank, Rounding::Up)?),
    };
    let clearance_depth = match fastener.make {
        Make::Nail => Length::ZERO,
        _ => smooth(fastener, length)?.max(top),
    };
    let depth = if is_to_the_tip(fastener, wood) {
        into
    } else {
        let bored = clearance_depth.max(top);
        ((bored - top)? + ((length - bored)? / 2)?)?
    };
    let head = fastener.head();
    Ok(Answer { wanted, pilot, root_sets_it, clearance, head, clearance_depth, depth })
}

/// The part under the head that has no thread.
fn smooth(fastener: Fastener, length: Length) -> Result<Length, OutOfRange> {
    length - fastener.thread(length)?
}

/// Whether the pilot goes to the tip. A lag screw breaks in a shallow hole before it is home.
fn is_to_the_tip(fastener: Fastener, wood: Wood) -> bool {
    fastener.make == Make::LagScrew || wood.hardwood
}

/// Pilot of a wood screw as percent of its root.
fn root_share(wood: Wood) -> u8 {
    if wood.hardwood { 90 } else { 70 }
}

/// Largest hole for a nail as percent of it.
fn nail_share(wood: Wood) -> u8 {
    if wood.gravity > 0.6 { 90 } else { 75 }
}

/// Pilot of a lag screw as percent of its shank. Source: NDS 2018 12.1.4.2.
#[must_use]
pub fn lag_range(wood: Wood) -> [u8; 2] {
    if wood.gravity > 0.6 {
        [65, 85]
    } else if wood.gravity > 0.5 {
        [60, 75]
    } else {
        [40, 70]
    }
}

fn share(length: Length, percent: u8) -> Result<Length, OutOfRange> {
    length * Number::ratio(percent.into(), 100)?
}

fn bit(wanted: Length, rounding: Rounding) -> Result<Length, OutOfRange> {
    // Bits are sold in 64ths, whatever tape the user has.
    let bits = Tape::Inches(Fineness::SixtyFourth);
    Ok(bits.read(wanted, rounding)?.mark)
}

fn does_not_reach(length: Length, top: Length) -> Refusal {
    let holds = |length: &Length| (*length - top).is_ok_and(|into| into >= LEAST_INTO);
    let way_out = match stock_lengths().into_iter().find(holds) {
        Some(length) => {
            let longer = (length, Rounding::Up);
            WayOut::set(say!["Use ", longer, " or longer."], &SCREW_LENGTH, longer)
        }
        None => WayOut::advice(say!["Use a bolt."]),
    };
    let sentence = say!["At ", length, " it does not come out of a piece of ", top, "."];
    Refusal::at(&SCREW_LENGTH, "does-not-reach", sentence, way_out)
}
