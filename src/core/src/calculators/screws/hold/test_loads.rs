//! What single fasteners held in tests, by the Wood Handbook: about five times the design values.

use crate::calculators::screws::Wood;
use crate::measure::{Number, Unit};
use crate::tables::fasteners::{Fastener, Make, side_constants};

/// One pound of force in newtons. Source: NIST SP 811, Appendix B.
const NEWTONS_PER_POUND: f64 = 4.448_221_615_260_5;

/// Test loads in pounds.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TestLoads {
    /// Pulled out of side grain.
    pub pull: f64,
    /// Side load at the proportional limit; `None` where the table does not have the wood.
    pub side: Option<f64>,
}

/// Pull in a test: screw 108.25 G² D L, nail 54.12 G^2.5 D L, lag screw 125.4 G^1.5 D^0.75 L.
/// Side load at the proportional limit: screw and lag screw K D², nail K D^1.5. All in newton and
/// millimetre, with G over the volume at 12 % moisture; L is the thread in the wood, in inches.
///
/// # Source
///
/// USDA FPL Wood Handbook FPL-GTR-282 (2021), Eq. 8-1, 8-10, 8-13 to 8-15, Table 8-4.
#[must_use]
pub fn reckon(fastener: Fastener, wood: Wood, thread: f64) -> TestLoads {
    let gravity = wood.gravity_at_12_percent();
    let inch = millimetres_per_inch();
    let (diameter, thread) = (fastener.diameter() * inch, thread * inch);
    let pull = match fastener.make {
        Make::WoodScrew => 108.25 * gravity * gravity * diameter * thread,
        Make::Nail => 54.12 * libm::pow(gravity, 2.5) * diameter * thread,
        Make::LagScrew => 125.4 * libm::pow(gravity, 1.5) * libm::pow(diameter, 0.75) * thread,
    };
    let side = side_constants(wood.hardwood, gravity).map(|k| match fastener.make {
        Make::WoodScrew => k.screw * diameter * diameter,
        Make::Nail => k.nail * libm::pow(diameter, 1.5),
        Make::LagScrew => k.lag * diameter * diameter,
    });
    TestLoads { pull: pull / NEWTONS_PER_POUND, side: side.map(|load| load / NEWTONS_PER_POUND) }
}

fn millimetres_per_inch() -> f64 {
    (Number::ONE / Unit::Millimetre.in_inches()).map_or(0.0, Number::to_f64)
}
