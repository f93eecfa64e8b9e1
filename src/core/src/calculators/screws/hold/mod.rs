//! What one fastener holds, as information: pulled straight out, and pushed from the side.

mod sheet;
pub mod test_loads;
pub mod yield_modes;

pub(super) use sheet::work;

use super::Wood;
use super::fields::{FASTENER, NO_8, SCREW_LENGTH, WET};
use crate::measure::{Length, Rounding};
use crate::say;
use crate::sheet::{Refusal, Refused, WayOut};
use crate::tables::fasteners::{Fastener, Make, bending_yield, stock_lengths};
use yield_modes::{Member, Mode};

/// What to look up.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Input {
    /// Screw, lag screw or nail.
    pub fastener: Fastener,
    /// Its length.
    pub length: Length,
    /// The piece under the head; its thickness is a bearing of the side load.
    pub top: Length,
    /// Wood of both pieces.
    pub wood: Wood,
    /// Into end grain of the receiver.
    pub end_grain: bool,
    /// Wetter than 19 % in use.
    pub wet: bool,
}

/// Reference values of the design rules, in pounds, and test loads beside them.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Answer {
    /// How far it goes into the receiver.
    pub into_receiver: Length,
    /// Thread, or nail, that holds in the receiver.
    pub thread_in_receiver: Length,
    /// Pull per inch of thread; `None` in end grain, where screws and nails are not to be pulled.
    pub pull_per_inch: Option<f64>,
    /// Pull for the thread that is in.
    pub pull: Option<f64>,
    /// Side load and what gives way first; `None` for 1/4 in and thicker, which need the direction
    /// of the grain.
    pub side: Option<(f64, Mode)>,
    /// Pulled out in a test, in side grain.
    pub test_pull: Option<f64>,
    /// Side load at which it begins to stay bent in a test, where the older table has the wood.
    pub test_side: Option<f64>,
}

/// What is left of a load in wet wood.
const WET_SHARE: f64 = 0.7;

/// Withdrawal value in pounds per inch of thread, dry, side grain.
///
/// G is ovendry, D the shank in inches: screw 2850 G² D, nail 1380 G^2.5 D, lag screw
/// 1800 G^1.5 D^0.75.
///
/// # Source
///
/// AWC NDS 2018 Eq. 12.2-1 to 12.2-3.
#[must_use]
pub fn pull_per_inch(fastener: Fastener, gravity: f64) -> f64 {
    let diameter = fastener.diameter();
    match fastener.make {
        Make::WoodScrew => 2850.0 * gravity * gravity * diameter,
        Make::Nail => 1380.0 * libm::pow(gravity, 2.5) * diameter,
        Make::LagScrew => 1800.0 * libm::pow(gravity, 1.5) * libm::pow(diameter, 0.75),
    }
}

/// What one fastener holds.
///
/// Into the receiver must go 6 diameters at least (4 for a lag screw, its tip not counted). Side
/// load: the least of six yield modes, with no more than 10 diameters counted in the receiver, as
/// the published tables do. End grain: side load × 0.67; pull × 0.75 for a lag screw, none for
/// others. Wet in use: × 0.7 for screws.
///
/// # Errors
///
/// - `too-little-in`, beside its length: too little in the receiver.
/// - `nail-in-wet`, beside wet in use: our tables have no figure.
/// - [`Refused::OutOfRange`].
///
/// # Source
///
/// AWC NDS 2018: 12.1.4.6, 12.1.5.6, 12.1.6.4, 12.2, 12.3.1, 12.5.2.2, Table 11.3.3.
pub fn reckon(input: &Input) -> Result<Answer, Refused> {
    let Input { fastener, length, top, wood, .. } = *input;
    let shank = fastener.shank()?;
    let tip = Length::sixty_fourths(fastener.tip.into());
    let into_receiver = ((length - top)? - tip)?;
    let least = (shank * if fastener.make == Make::LagScrew { 4 } else { 6 })?;
    if into_receiver < least {
        let needed = ((top + least)? + tip)?;
        let stock = stock_lengths().into_iter().find(|stock| *stock >= needed);
        return Err(too_little_in(into_receiver, least, stock).into());
    }
    if input.wet && fastener.make == Make::Nail {
        Err(Refusal::at(
            &WET,
            "nail-in-wet",
            say!["Our tables have no value for nails in wet wood."],
            WayOut::set(say!["Use screws outdoors."], &FASTENER, NO_8.id.to_owned()),
        ))?;
    }
    let thread = (fastener.thread(length)? - tip)?.min(into_receiver);
    let wet = if input.wet { WET_SHARE } else { 1.0 };
    let grain = match (input.end_grain, fastener.make) {
        (false, _) => Some(1.0),
        (true, Make::LagScrew) => Some(0.75),
        (true, _) => None,
    };
    let per_inch = grain.map(|grain| pull_per_inch(fastener, wood.gravity) * grain * wet);
    let side = side(input, into_receiver)?
        .map(|(load, mode)| (load * wet * if input.end_grain { 0.67 } else { 1.0 }, mode));
    let tests = test_loads::reckon(fastener, wood, thread.to_f64());
    let seven = (shank * 7)?;
    Ok(Answer {
        into_receiver,
        thread_in_receiver: thread,
        pull_per_inch: per_inch,
        pull: per_inch.map(|load| load * thread.to_f64()),
        side,
        test_pull: (!input.end_grain).then_some(tests.pull),
        test_side: tests.side.filter(|_| !input.end_grain && into_receiver >= seven),
    })
}

/// The rules count nothing; `stock` is the shortest length that is in far enough.
fn too_little_in(into_receiver: Length, least: Length, stock: Option<Length>) -> Refusal {
    let least = (least, Rounding::Up);
    let sentence = if into_receiver.is_negative() {
        say!["It does not reach the other piece; ", least, " is the least."]
    } else {
        say![
            "Only ",
            into_receiver,
            " is in the other piece; under ",
            least,
            " the rules count nothing."
        ]
    };
    let way_out = match stock {
        Some(stock) => {
            let longer = (stock, Rounding::Up);
            WayOut::set(say!["Use ", longer, " or longer."], &SCREW_LENGTH, longer)
        }
        None => WayOut::advice(say!["Use a thinner piece, or a bolt."]),
    };
    Refusal::at(&SCREW_LENGTH, "too-little-in", sentence, way_out)
}

/// Side load of a fastener under 1/4 in.
fn side(input: &Input, into_receiver: Length) -> Result<Option<(f64, Mode)>, Refused> {
    let fastener = input.fastener;
    let (true, Some(bending)) = (!fastener.is_large(), bending_yield(fastener.shank / 10)) else {
        return Ok(None);
    };
    let counted = into_receiver.min((fastener.shank()? * 10)?);
    let bearing = yield_modes::bearing_strength(input.wood.gravity);
    let found = yield_modes::reckon(
        f64::from(fastener.root) / 1000.0,
        f64::from(bending),
        Member { thickness: input.top.to_f64(), bearing },
        Member { thickness: counted.to_f64(), bearing },
    );
    match found {
        Some(found) => Ok(Some(found)),
        None => Err(Refused::OutOfRange),
    }
}
