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
    /// Hardwood, by its leaves; a light hardwood is one too.
    pub hardwood: bool,
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

const fn softwood(id: &'static str, name: &'static str, hundredths: u8) -> Group {
    Group { id, name, hundredths, hardwood: false }
}

const fn hardwood(id: &'static str, name: &'static str, hundredths: u8) -> Group {
    Group { id, name, hundredths, hardwood: true }
}

/// What most treated boards are.
pub const SOUTHERN_PINE: Group = softwood("southern_pine", "Southern pine", 55);

/// Every group.
pub const GROUPS: [Group; 17] = [
    SOUTHERN_PINE,
    softwood("mixed_southern_pine", "Mixed southern pine", 51),
    softwood("douglas_fir_larch", "Douglas fir-larch", 50),
    softwood("hem_fir", "Hem-fir", 43),
    softwood("spruce_pine_fir", "Spruce-pine-fir", 42),
    softwood("spruce_pine_fir_south", "Spruce-pine-fir (south)", 36),
    softwood("western_cedars", "Western cedars", 36),
    softwood("redwood", "Redwood", 37),
    softwood("eastern_white_pine", "Eastern white pine", 36),
    hardwood("red_oak", "Red oak", 67),
    hardwood("white_oak", "White oak", 73),
    hardwood("mixed_maple", "Mixed maple", 55),
    softwood("northern_white_cedar", "Northern white cedar", 31),
    softwood("ponderosa_pine", "Ponderosa pine", 43),
    hardwood("yellow_poplar", "Yellow poplar", 43),
    softwood("alaska_yellow_cedar", "Alaska yellow cedar", 46),
    softwood("western_hemlock", "Western hemlock", 47),
];

/// The group with this id.
#[must_use]
pub fn group(id: &str) -> Option<Group> {
    GROUPS.into_iter().find(|group| group.id == id)
}
