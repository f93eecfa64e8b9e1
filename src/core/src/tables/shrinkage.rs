//! Shrinkage of ordinary softwood lumber, as it is sold: for boards whose species or ring
//! direction is not known.
//!
//! Width: S = 6.031 - 0.215 M. Thickness: S = 5.062 - 0.181 M. S is percent of the green size, M
//! percent of moisture. Stated for 8 to 19 %, with green at about 28 %; not for redwood and
//! cedars, which shrink less. The species' own coefficients are in [`species`](super::species).

use crate::measure::{Number, OutOfRange};

/// The formula of one moisture content.
pub const SOURCE: &str = "Green, FPL-RP-489: width 6.031 - 0.215 M, thickness 5.062 - 0.181 M";

/// The rule that goes from one moisture content to another.
pub const CHANGE_SOURCE: &str = "USDA FPL Wood Handbook, Ch. 7, as used in Missouri S&T CE 5260 problem 4.34: \
     d2 = d1 (1 - S2) / (1 - S1)";

/// Driest moisture content of the formula, in percent.
pub const DRIEST: i64 = 8;

/// Wettest moisture content of the formula below green, in percent.
pub const WETTEST: i64 = 19;

/// Which size of a board shrinks.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Across {
    /// Its width.
    Width,
    /// Its thickness.
    Thickness,
}

/// How wet a board is, within the limits of the formula.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Moisture(Number);

impl Moisture {
    /// Wet, as sold green or freshly treated: about 28 % and above. Nothing has shrunk yet.
    #[must_use]
    pub fn green() -> Moisture {
        Moisture(Number::whole(28))
    }

    /// So many percent, from [`DRIEST`] to [`WETTEST`]; `None` outside.
    #[must_use]
    pub fn percent(percent: Number) -> Option<Moisture> {
        let limits = Number::whole(DRIEST)..=Number::whole(WETTEST);
        limits.contains(&percent).then_some(Moisture(percent))
    }

    /// In percent; 28 for green.
    #[must_use]
    pub fn in_percent(self) -> Number {
        self.0
    }
}

/// How much of its green size a board has lost at a moisture content, in percent.
///
/// # Errors
///
/// [`OutOfRange`] for a percentage with too many digits.
///
/// ```
/// # use reckoner_core::{measure::Number, tables::shrinkage::{lost, Across, Moisture}};
/// let dry = Moisture::percent(Number::whole(12)).ok_or("outside")?;
/// assert_eq!(lost(Across::Width, dry)?, Number::ratio(3451, 1000)?);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn lost(across: Across, moisture: Moisture) -> Result<Number, OutOfRange> {
    if moisture == Moisture::green() {
        return Ok(Number::ZERO);
    }
    let [all, per_point] = formula(across)?;
    all - (per_point * moisture.0)?
}

/// The two numbers of the formula, in percent of the green size: all that would be lost at no
/// moisture, and how much less with each point of it.
///
/// # Errors
///
/// None for these numbers.
pub fn formula(across: Across) -> Result<[Number; 2], OutOfRange> {
    let (all, per_point) = match across {
        Across::Width => (6031, 215),
        Across::Thickness => (5062, 181),
    };
    Ok([Number::ratio(all, 1000)?, Number::ratio(per_point, 1000)?])
}

/// What a size measured at one moisture content is multiplied by at another.
///
/// # Errors
///
/// [`OutOfRange`] for percentages with too many digits.
pub fn factor(across: Across, from: Moisture, to: Moisture) -> Result<Number, OutOfRange> {
    let whole = Number::whole(100);
    (whole - lost(across, to)?)? / (whole - lost(across, from)?)?
}
