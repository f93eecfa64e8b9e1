//! A top today and later: planks that shrink or swell, and the gaps between them.

mod sheet;

pub(super) use sheet::work;

use super::Change;
use super::fields::{GAP_LATER, GAP_NOW, LATER, SEASON_FIND};
use super::planks::no_planks;
use crate::calculators::wet_gaps;
use crate::measure::{Length, OutOfRange};
use crate::sheet::Refused;

/// Which gap is known.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Find {
    /// The gaps later, from the gap that is left today.
    Later {
        /// Gap today; zero when laid tight.
        gap_now: Length,
    },
    /// The gap to leave today, so that the smallest gap later is this.
    Today {
        /// Smallest gap later.
        gap_later: Length,
    },
}

/// What to reckon a season from.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Input {
    /// Width of each plank today, from the left.
    pub widths: Vec<Length>,
    /// How much they change.
    pub change: Change,
    /// Which gap is known.
    pub find: Find,
}

/// The top today and later.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Answer {
    /// Width of each plank later.
    pub widths_later: Vec<Length>,
    /// Gap today, between all planks.
    pub gap_now: Length,
    /// Gaps later, from the left; one fewer than planks.
    pub gaps_later: Vec<Length>,
    /// Width of the top today.
    pub top_now: Length,
    /// Width of the top later.
    pub top_later: Length,
}

/// A top today and later.
///
/// Each plank is held at its own middle, as by one row of screws, so its middle stays where it
/// is and each of its edges moves by half of what the plank loses. A gap opens by half of what
/// both its neighbours lose.
///
/// # Errors
///
/// - `planks-will-push`: they swell until they push on each other.
/// - `opens-wider`: the gaps open wider than wanted even when laid tight.
/// - `no-planks`.
/// - [`Refused::OutOfRange`]: sizes beyond exact keeping.
///
/// # Source
///
/// Geometry, with the shrinkage of [`Change`]; worked by hand as case N2 in
/// `tests/reference/top.rs`.
pub fn reckon(input: &Input) -> Result<Answer, Refused> {
    let (Some(&first), Some(&last)) = (input.widths.first(), input.widths.last()) else {
        return Err(no_planks().into());
    };
    let factor = input.change.factor()?;
    let widths_later =
        input.widths.iter().map(|width| *width * factor).collect::<Result<Vec<_>, _>>()?;
    let half_lost =
        |width: Length| -> Result<Length, OutOfRange> { (width - (width * factor)?)? / 2 };
    // How much each gap opens; below zero when it closes.
    let opens = input
        .widths
        .iter()
        .zip(input.widths.iter().skip(1))
        .map(|(left, right)| half_lost(*left)? + half_lost(*right)?)
        .collect::<Result<Vec<_>, _>>()?;
    let least = opens.iter().copied().min().unwrap_or(Length::ZERO);
    let gap_now = match input.find {
        Find::Later { gap_now } => gap_now,
        Find::Today { gap_later } => (gap_later - least)?,
    };
    if gap_now.is_negative() {
        let today = (&SEASON_FIND, LATER);
        Err(wet_gaps::opens_further(&GAP_LATER, "opens-wider", least, today, &GAP_NOW))?;
    }
    if (gap_now + least)?.is_negative() {
        Err(wet_gaps::closes(&GAP_NOW, "planks-will-push", -least))?;
    }
    let gaps_later = opens.iter().map(|opens| gap_now + *opens).collect::<Result<Vec<_>, _>>()?;
    let mut top_now = Length::ZERO;
    for (index, width) in input.widths.iter().enumerate() {
        let gap = if index == 0 { Length::ZERO } else { gap_now };
        top_now = ((top_now + gap)? + *width)?;
    }
    let top_later = ((top_now - half_lost(first)?)? - half_lost(last)?)?;
    Ok(Answer { widths_later, gap_now, gaps_later, top_now, top_later })
}
