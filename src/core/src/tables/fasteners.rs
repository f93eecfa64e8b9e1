//! Screws, nails and lag screws: sizes, spacing in diameters, and what bends or pulls them.
//!
//! Sizes are in thousandths of an inch, exact. Where the documents were read and how is said
//! beside each table; all were read in text copies of them.

use crate::measure::{Length, Number, OutOfRange};

/// Sizes of wood screws, lag screws and nails.
pub const SIZES_SOURCE: &str =
    "AWC NDS 2018, Appendix L, Tables L2 (lag screws), L3 (wood screws), L4 (nails)";

/// Spacing of screws and nails in diameters: advice of a commentary, not a rule.
pub const SPACING_SOURCE: &str =
    "AWC NDS 2018 Commentary, Tables C12.1.5.7 and C12.1.6.6: advice for fasteners under 1/4 in";

/// Spacing of lag screws in diameters.
pub const LAG_SPACING_SOURCE: &str = "AWC NDS 2018, Tables 12.5.1A to E";

/// Stock lengths of wood screws.
pub const STOCK_SOURCE: &str =
    "Navy NAVEDTRA 14119, Fig. 3-51: to 1 in by 1/8, to 3 in by 1/4, to 6 in by 1/2";

/// The diameter from which a fastener is large to the design rules: 1/4 in. AWC NDS 2018, Tables 12.5.1A to E.
pub const LARGE: Length = Length::sixty_fourths(16);

/// What a fastener is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Make {
    /// A wood screw with a cut thread.
    WoodScrew,
    /// A lag screw.
    LagScrew,
    /// A common wire nail.
    Nail,
}

/// One size of a fastener.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Fastener {
    /// Stable name, also in links: `screw_8`.
    pub id: &'static str,
    /// For the user.
    pub name: &'static str,
    /// Its shank to a tenth of a millimetre: `4.2 mm`.
    pub across: &'static str,
    /// What it is.
    pub make: Make,
    /// Shank in tenths of a thousandth of an inch: 5/16 in is no whole number of thousandths.
    pub shank: u16,
    /// Root of the thread in thousandths; the shank again for a nail.
    pub root: u16,
    /// Head in thousandths; 0 where the table has none.
    pub head: u16,
    /// Length of the tip in 64ths of an inch; 0 where the table has none.
    pub tip: u8,
}

const fn screw(
    id: &'static str,
    name: &'static str,
    across: &'static str,
    sizes: [u16; 3],
) -> Fastener {
    let [shank, root, head] = sizes;
    Fastener { id, name, across, make: Make::WoodScrew, shank: shank * 10, root, head, tip: 0 }
}

const fn lag(
    id: &'static str,
    (name, across): (&'static str, &'static str),
    shank: u16,
    root: u16,
    tip: u8,
) -> Fastener {
    Fastener { id, name, across, make: Make::LagScrew, shank, root, head: 0, tip }
}

const fn nail(id: &'static str, name: &'static str, across: &'static str, shank: u16) -> Fastener {
    Fastener { id, name, across, make: Make::Nail, shank: shank * 10, root: shank, head: 0, tip: 0 }
}

/// Every fastener with a tabulated root: screws to No. 24, lag screws to 1 in, common nails to 60d.
pub const FASTENERS: [Fastener; 31] = [
    screw("screw_6", "No. 6 screw", "3.5 mm", [138, 113, 262]),
    screw("screw_7", "No. 7 screw", "3.8 mm", [151, 122, 287]),
    screw("screw_8", "No. 8 screw", "4.2 mm", [164, 131, 312]),
    screw("screw_9", "No. 9 screw", "4.5 mm", [177, 142, 337]),
    screw("screw_10", "No. 10 screw", "4.8 mm", [190, 152, 363]),
    screw("screw_12", "No. 12 screw", "5.5 mm", [216, 171, 414]),
    screw("screw_14", "No. 14 screw", "6.1 mm", [242, 196, 480]),
    screw("screw_16", "No. 16 screw", "6.8 mm", [268, 209, 515]),
    screw("screw_18", "No. 18 screw", "7.5 mm", [294, 232, 602]),
    screw("screw_20", "No. 20 screw", "8.1 mm", [320, 255, 616]),
    screw("screw_24", "No. 24 screw", "9.4 mm", [372, 298, 724]),
    lag("lag_1_4", ("1/4 in lag screw", "6.4 mm"), 2500, 173, 10),
    lag("lag_5_16", ("5/16 in lag screw", "7.9 mm"), 3125, 227, 12),
    lag("lag_3_8", ("3/8 in lag screw", "9.5 mm"), 3750, 265, 14),
    lag("lag_7_16", ("7/16 in lag screw", "11.1 mm"), 4375, 328, 18),
    lag("lag_1_2", ("1/2 in lag screw", "12.7 mm"), 5000, 371, 20),
    lag("lag_5_8", ("5/8 in lag screw", "15.9 mm"), 6250, 471, 26),
    lag("lag_3_4", ("3/4 in lag screw", "19.1 mm"), 7500, 579, 32),
    lag("lag_7_8", ("7/8 in lag screw", "22.2 mm"), 8750, 683, 38),
    lag("lag_1", ("1 in lag screw", "25.4 mm"), 10_000, 780, 44),
    nail("nail_6d", "6d common nail", "2.9 mm", 113),
    nail("nail_7d", "7d common nail", "2.9 mm", 113),
    nail("nail_8d", "8d common nail", "3.3 mm", 131),
    nail("nail_10d", "10d common nail", "3.8 mm", 148),
    nail("nail_12d", "12d common nail", "3.8 mm", 148),
    nail("nail_16d", "16d common nail", "4.1 mm", 162),
    nail("nail_20d", "20d common nail", "4.9 mm", 192),
    nail("nail_30d", "30d common nail", "5.3 mm", 207),
    nail("nail_40d", "40d common nail", "5.7 mm", 225),
    nail("nail_50d", "50d common nail", "6.2 mm", 244),
    nail("nail_60d", "60d common nail", "6.7 mm", 263),
];

/// The fastener with this id.
#[must_use]
pub fn fastener(id: &str) -> Option<Fastener> {
    FASTENERS.into_iter().find(|fastener| fastener.id == id)
}

impl Fastener {
    /// Diameter of the shank.
    ///
    /// # Errors
    ///
    /// Never for a size of the table.
    pub fn shank(&self) -> Result<Length, OutOfRange> {
        Length::of_inch(self.shank.into(), 10_000)
    }

    /// The same in inches, for formulas of physics.
    #[must_use]
    pub fn diameter(&self) -> f64 {
        f64::from(self.shank) / 10_000.0
    }

    /// The same as it stands in the working: `0.164 in`.
    #[must_use]
    pub fn shank_text(&self) -> String {
        let places = if self.shank.is_multiple_of(10) { 3 } else { 4 };
        format!("{:.places$} in", self.diameter())
    }

    /// Whether the design rules for large fasteners apply: from [`LARGE`] on, and to all lag screws.
    #[must_use]
    pub fn is_large(&self) -> bool {
        self.make == Make::LagScrew || self.shank().is_ok_and(|shank| shank >= LARGE)
    }

    /// Diameter at the root of the thread.
    ///
    /// # Errors
    ///
    /// Never for a size of the table.
    pub fn root(&self) -> Result<Length, OutOfRange> {
        Length::of_inch(self.root.into(), 1000)
    }

    /// Diameter of the head, where the table has it.
    #[must_use]
    pub fn head(&self) -> Option<Length> {
        let head = Length::of_inch(self.head.into(), 1000).ok();
        head.filter(|head| head.is_positive())
    }

    /// Length of the thread of one this long.
    ///
    /// Wood screw: two thirds of its length (NDS Table L3; Noyes, Handwork in Wood). Lag screw:
    /// half of its length and 1/2 in, 6 in at most (NDS Table L2). A nail holds over its whole
    /// length.
    ///
    /// # Errors
    ///
    /// [`OutOfRange`] for a length with too many digits.
    pub fn thread(&self, length: Length) -> Result<Length, OutOfRange> {
        match self.make {
            Make::WoodScrew => (length * 2)? / 3,
            Make::LagScrew => {
                let thread = ((length / 2)? + Length::sixty_fourths(32))?;
                Ok(thread.min(Length::sixty_fourths(6 * 64)).min(length))
            }
            Make::Nail => Ok(length),
        }
    }
}

/// Lengths in which wood screws are sold, short to long.
#[must_use]
pub fn stock_lengths() -> Vec<Length> {
    let runs = (32..64).step_by(8).chain((64..192).step_by(16)).chain((192..=384).step_by(32));
    runs.map(Length::sixty_fourths).collect()
}

/// Bending yield strength in psi by shank in whole thousandths of an inch; `None` between the ranges of
/// the table. Source: AWC NDS 2018 Table I1, read in a text copy.
#[must_use]
pub fn bending_yield(shank: u16) -> Option<u32> {
    match shank {
        99..=142 => Some(100_000),
        143..=177 => Some(90_000),
        178..=236 => Some(80_000),
        237..=273 => Some(70_000),
        274..=344 => Some(60_000),
        375.. => Some(45_000),
        _ => None,
    }
}

/// Least distances in halves of the shank's diameter.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Spacing {
    /// From an edge.
    pub edge: u8,
    /// From an end that the load pulls towards.
    pub end_pulled: u8,
    /// From an end that the load pushes away from.
    pub end_pushed: u8,
    /// From screw to screw along the grain.
    pub along: u8,
    /// From screw to screw across the grain.
    pub across: u8,
    /// Between rows, screws side by side.
    pub rows: u8,
    /// Between rows, screws staggered.
    pub rows_staggered: u8,
}

const fn halves(numbers: [u8; 7]) -> Spacing {
    let [edge, end_pulled, end_pushed, along, across, rows, rows_staggered] = numbers;
    Spacing { edge, end_pulled, end_pushed, along, across, rows, rows_staggered }
}

/// Spacing of a fastener through wood or a steel plate, in a drilled hole or not.
///
/// Large ones ([`Fastener::is_large`]) take the full-value distances, which do not depend on the
/// plate; a hardwood end may be nearer.
#[must_use]
pub fn spacing(large: bool, steel_plate: bool, drilled: bool, hardwood: bool) -> Spacing {
    match (large, steel_plate, drilled) {
        (true, ..) if hardwood => halves([3, 10, 8, 8, 8, 3, 3]),
        (true, ..) => halves([3, 14, 8, 8, 8, 3, 3]),
        (_, false, false) => halves([5, 30, 20, 30, 20, 10, 5]),
        (_, false, true) => halves([5, 20, 10, 20, 10, 6, 5]),
        (_, true, false) => halves([5, 20, 10, 20, 10, 6, 5]),
        (_, true, true) => halves([5, 10, 6, 10, 5, 5, 5]),
    }
}

impl Fastener {
    /// So many halves of the shank's diameter.
    ///
    /// # Errors
    ///
    /// Never for a size of the tables.
    pub fn diameters(&self, halves: u8) -> Result<Length, OutOfRange> {
        self.shank()? * Number::ratio(halves.into(), 2)?
    }
}

/// K of the older side-load formulas, for newton and millimetre.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SideConstants {
    /// For hardwood; else softwood.
    pub hardwood: bool,
    /// Lightest and heaviest specific gravity in hundredths.
    pub gravity: [u8; 2],
    /// For nails: K D^1.5.
    pub nail: f64,
    /// For wood screws: K D².
    pub screw: f64,
    /// For lag screws: K D².
    pub lag: f64,
}

const fn k(hardwood: bool, gravity: [u8; 2], nail: f64, screw: f64, lag: f64) -> SideConstants {
    SideConstants { hardwood, gravity, nail, screw, lag }
}

/// Source: USDA FPL Wood Handbook FPL-GTR-282 (2021), Table 8-4 p. 8-6, read in a text copy.
pub const SIDE_CONSTANTS: [SideConstants; 6] = [
    k(true, [33, 47], 50.04, 23.17, 26.34),
    k(true, [48, 56], 69.50, 31.99, 29.51),
    k(true, [57, 74], 94.52, 44.13, 34.13),
    k(false, [29, 42], 50.04, 23.17, 23.30),
    k(false, [43, 47], 62.55, 29.79, 26.34),
    k(false, [48, 52], 76.45, 36.40, 29.51),
];

/// The document behind [`SIDE_CONSTANTS`] and the test loads.
pub const TEST_SOURCE: &str =
    "USDA FPL Wood Handbook FPL-GTR-282 (2021), Ch. 8: Eq. 8-1, 8-10, 8-13, 8-14, Table 8-4";

/// The constants for a wood of this specific gravity at 12 % moisture; `None` outside the table.
#[must_use]
pub fn side_constants(hardwood: bool, gravity: f64) -> Option<SideConstants> {
    let hundredths = libm::round(gravity * 100.0);
    SIDE_CONSTANTS.into_iter().find(|row| {
        let [least, most] = row.gravity;
        row.hardwood == hardwood && (f64::from(least)..=f64::from(most)).contains(&hundredths)
    })
}
