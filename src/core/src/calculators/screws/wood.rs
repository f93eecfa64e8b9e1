//! [`Wood`]: the lumber that a screw goes into.

use super::fields::WOOD;
use crate::sheet::Ask;
use crate::tables::gravity::{self, Group};

/// Lumber by its group, and whether that is a hardwood.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Wood {
    /// Specific gravity, ovendry mass over ovendry volume.
    pub gravity: f64,
    /// Hardwood, by its leaves; a light hardwood is one too.
    pub hardwood: bool,
}

impl Wood {
    /// The wood of a group.
    ///
    /// ```
    /// # use reckoner_core::{calculators::screws::Wood, tables::gravity};
    /// let oak = gravity::group("red_oak").map(Wood::of).ok_or("no such group")?;
    /// assert!(oak.hardwood);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub fn of(group: Group) -> Wood {
        Wood { gravity: group.gravity(), hardwood: group.hardwood }
    }

    /// Reads it from the wood field.
    pub(super) fn read(ask: &Ask) -> Option<Wood> {
        gravity::group(ask.choice(&WOOD).id).map(Wood::of)
    }

    /// Specific gravity over the volume at 12 % moisture, which the Wood Handbook's formulas use.
    ///
    /// From the ovendry figure by its Eq. 4-11 to 4-13: the basic figure is
    /// G0 / (1 + 0.265 G0), and that at 12 % is Gb / (1 - 0.265 Gb (1 - 12/30)).
    #[must_use]
    pub fn gravity_at_12_percent(self) -> f64 {
        let basic = self.gravity / (1.0 + 0.265 * self.gravity);
        basic / (1.0 - 0.265 * basic * (1.0 - 12.0 / 30.0))
    }
}
