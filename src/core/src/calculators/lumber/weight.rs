//! What a board weighs at a moisture content.
//!
//! Weight follows from measured gravities, so it is a floating-point number: inches, pounds,
//! percent.

use super::fields::MOISTURE;
use crate::measure::Unit;
use crate::say;
use crate::sheet::{Refusal, Refused, WayOut};

/// Pounds of water in a cubic foot: 1000 kg/m³ (Wood Handbook Equation 4-14).
pub(super) const WATER: f64 = 62.4;

/// Moisture in percent above which wood no longer swells, where no other figure is known.
pub(super) const FIBERS_FULL: f64 = 30.0;

/// Volume shrinks by this times basic gravity, green to ovendry (Wood Handbook Equation 4-12).
pub(super) const VOLUME_SHRINKAGE: f64 = 0.265;

/// Specific gravity of a wood: ovendry mass over some volume. Tables use different volumes, which
/// are never mixed; all come down to the green volume here.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BasicGravity(f64);

impl BasicGravity {
    /// From ovendry mass over green volume.
    #[must_use]
    pub fn over_green(gravity: f64) -> BasicGravity {
        BasicGravity(gravity)
    }

    /// From ovendry mass over ovendry volume, as in the NDS.
    #[must_use]
    pub fn over_ovendry(gravity: f64) -> BasicGravity {
        BasicGravity(gravity / (1.0 + VOLUME_SHRINKAGE * gravity))
    }

    /// From ovendry mass over the volume at 12 % moisture, as in Wood Handbook Table 5-3.
    #[must_use]
    pub fn over_12_percent(gravity: f64) -> BasicGravity {
        BasicGravity(gravity / (1.0 + VOLUME_SHRINKAGE * (1.0 - 12.0 / FIBERS_FULL) * gravity))
    }

    /// Ovendry mass over green volume.
    #[must_use]
    pub fn basic(self) -> f64 {
        self.0
    }

    /// Ovendry mass over the volume at a moisture (Wood Handbook Equation 4-13).
    #[must_use]
    pub fn at(self, moisture: f64) -> f64 {
        let swollen = (moisture / FIBERS_FULL).min(1.0);
        self.0 / (1.0 - VOLUME_SHRINKAGE * self.0 * (1.0 - swollen))
    }

    /// Pounds to the cubic foot at a moisture, water included (Wood Handbook Equation 4-14).
    #[must_use]
    pub fn density(self, moisture: f64) -> f64 {
        WATER * self.at(moisture) * (1.0 + moisture / 100.0)
    }

    /// Most water the wood can hold, in percent of its dry mass (Wood Handbook Equation 4-3).
    #[must_use]
    pub fn most_moisture(self) -> f64 {
        100.0 * (1.54 - self.0) / (1.54 * self.0)
    }
}

/// What is asked.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Input {
    /// Actual thickness, inches.
    pub thickness: f64,
    /// Actual width, inches.
    pub width: f64,
    /// Length, inches.
    pub length: f64,
    /// How many boards.
    pub count: u32,
    /// The wood.
    pub gravity: BasicGravity,
    /// Moisture in percent.
    pub moisture: f64,
}

/// What it weighs.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Answer {
    /// Pounds to the cubic foot.
    pub density: f64,
    /// Pounds, one board.
    pub each: f64,
    /// Pounds, all boards.
    pub total: f64,
    /// Pounds, one board of the same size at 12 %.
    pub dry_twin: f64,
}

/// Weighs the board.
///
/// # Errors
///
/// - `too-wet`: more water than the wood can hold.
/// - [`Refused::OutOfRange`]: not a finite weight.
pub fn reckon(input: &Input) -> Result<Answer, Refused> {
    let most = input.gravity.most_moisture();
    if input.moisture > most {
        let most = libm::floor(most) as u32;
        return Err(Refusal::at(
            &MOISTURE,
            "too-wet",
            say![format!("This wood cannot hold more than {most} % of water.")],
            WayOut::set(say![format!("Use {most} % or less.")], &MOISTURE, most.to_string()),
        )
        .into());
    }
    let foot = Unit::Foot.in_inches().to_f64();
    let cubic_feet = input.thickness / foot * (input.width / foot) * (input.length / foot);
    let density = input.gravity.density(input.moisture);
    let each = cubic_feet * density;
    let total = each * f64::from(input.count);
    let dry_twin = cubic_feet * input.gravity.density(12.0);
    if ![each, total, dry_twin].into_iter().all(f64::is_finite) {
        return Err(Refused::OutOfRange);
    }
    Ok(Answer { density, each, total, dry_twin })
}
