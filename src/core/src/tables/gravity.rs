//! Specific gravity of lumber by the group that is stamped on it.
//!
//! Source: AWC NDS 2018 Table 12.3.3A, p. 87, read in a text copy. These are ovendry mass
//! over ovendry volume; those of [`species`](super::species) are over the volume at 12 %
//! moisture. The two are never mixed.

/// The document behind [`GROUPS`].
pub const SOURCE: &str = "AWC NDS 2018, Table 12.3.3A: assigned specific gravity";

/// A group of species that is sold as one.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Group {
    /// Stable name, also in links.
    pub id: &'static str,
    /// For the user.
    pub name: &'static str,
    /// Specific gravity in hundredths, ovendry mass over ovendry volume.
    pub hundredths: u8,
}

impl Group {
    /// Specific gravity, ovendry mass over ovendry volume.
    ///
    /// ```
    /// # use reckoner_core::tables::gravity;
    /// let pine = gravity::group("southern_pine").ok_or("no such group")?;
    /// assert_eq!(pine.gravity(), 0.55);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub fn gravity(&self) -> f64 {
        f64::from(self.hundredths) / 100.0
    }
}

const fn row(id: &'static str, name: &'static str, hundredths: u8) -> Group {
    Group { id, name, hundredths }
}

/// Every group.
pub const GROUPS: [Group; 17] = [
    row("southern_pine", "Southern pine", 55),
    row("mixed_southern_pine", "Mixed southern pine", 51),
    row("douglas_fir_larch", "Douglas fir-larch", 50),
    row("hem_fir", "Hem-fir", 43),
    row("spruce_pine_fir", "Spruce-pine-fir", 42),
    row("spruce_pine_fir_south", "Spruce-pine-fir (south)", 36),
    row("western_cedars", "Western cedars", 36),
    row("redwood", "Redwood", 37),
    row("eastern_white_pine", "Eastern white pine", 36),
    row("red_oak", "Red oak", 67),
    row("white_oak", "White oak", 73),
    row("mixed_maple", "Mixed maple", 55),
    row("northern_white_cedar", "Northern white cedar", 31),
    row("ponderosa_pine", "Ponderosa pine", 43),
    row("yellow_poplar", "Yellow poplar", 43),
    row("alaska_yellow_cedar", "Alaska yellow cedar", 46),
    row("western_hemlock", "Western hemlock", 47),
];

/// The group with this id.
#[must_use]
pub fn group(id: &str) -> Option<Group> {
    GROUPS.into_iter().find(|group| group.id == id)
}
