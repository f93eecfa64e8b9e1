//! Moisture that outdoor wood settles at, by place.
//!
//! Source: USDA FPL Wood Handbook Table 13-1 (Phoenix), FPL-RN-0268 (Burlington) and FPL
//! Technical Note F-13 (the two general rows), each read in a quotation. A porch, a south wall or
//! bare ground changes it more than the town does.

/// A place and the driest and wettest that wood under cover gets there.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Place {
    /// Stable name, also in links.
    pub id: &'static str,
    /// For the user.
    pub name: &'static str,
    /// Driest month, in tenths of a percent of moisture.
    pub driest: u16,
    /// Wettest month, in tenths of a percent of moisture.
    pub wettest: u16,
    /// The document.
    pub source: &'static str,
}

/// Where the 12 % of wood under cover is from.
pub const UNDER_COVER_SOURCE: &str =
    "USDA FPL Technical Note F-13: about 12 % outdoors under cover in the northern states";

/// Where the 4 to 6 % of wood in heated rooms is from.
pub const HEATED_SOURCE: &str =
    "USDA FPL Technical Note F-13: 4 to 6 % in the arid Southwest or in heated rooms";

/// Every place of which a figure was read.
pub const PLACES: [Place; 4] = [
    Place {
        id: "northern_cover",
        name: "Northern states, under cover",
        driest: 120,
        wettest: 120,
        source: UNDER_COVER_SOURCE,
    },
    Place {
        id: "burlington",
        name: "Burlington VT",
        driest: 117,
        wettest: 142,
        source: "USDA FPL-RN-0268 (Simpson 1998), year low and high, as quoted by an extension specialist",
    },
    Place {
        id: "phoenix",
        name: "Phoenix AZ",
        driest: 44,
        wettest: 89,
        source: "USDA FPL Wood Handbook, FPL-GTR-190 (2010), Table 13-1, as quoted in a building-climate note",
    },
    Place {
        id: "arid",
        name: "Arid Southwest, or a heated room",
        driest: 40,
        wettest: 60,
        source: HEATED_SOURCE,
    },
];

/// The place with this id.
#[must_use]
pub fn place(id: &str) -> Option<Place> {
    PLACES.into_iter().find(|place| place.id == id)
}
