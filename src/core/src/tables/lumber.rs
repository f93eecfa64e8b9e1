//! Softwood lumber: what the tag says, and what the board has to measure at least.
//!
//! Source: PS 20-20, American Softwood Lumber Standard (NIST), Table 3, nominal and
//! minimum-dressed sizes of boards, dimension and timbers. All 23 rows, read in a text copy
//! of the table; the printed millimetres agree with 25.4 mm to the inch.
//!
//! These are least sizes at the mill. A board on the rack is what the tape says it is.

use crate::measure::Length;

/// The document behind [`SIZES`].
pub const SOURCE: &str = "PS 20-20, American Softwood Lumber Standard (NIST), Table 3";

/// What a row of the table is for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Use {
    /// Thickness of boards, under a nominal 2 in.
    BoardThickness,
    /// Thickness or width of dimension lumber.
    Dimension,
    /// Width of boards and dimension lumber, section of timbers.
    Wide,
}

/// How much water was in the wood when it was dressed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Seasoning {
    /// Dressed dry.
    Dry,
    /// Dressed green: a little larger, and it will shrink.
    Green,
}

/// One nominal size and its least dressed sizes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Size {
    /// As it is said, in inches: `1 1/4`.
    pub name: &'static str,
    /// The same as a length.
    pub nominal: Length,
    /// What the row is for.
    pub usage: Use,
    /// Least size dressed dry.
    pub dry: Length,
    /// Least size dressed green.
    pub green: Length,
    /// Dry size in whole millimetres, as the standard prints it.
    pub dry_mm: u16,
}

impl Size {
    /// Least dressed size.
    #[must_use]
    pub fn dressed(&self, seasoning: Seasoning) -> Length {
        match seasoning {
            Seasoning::Dry => self.dry,
            Seasoning::Green => self.green,
        }
    }
}

/// A row from sixty-fourths of an inch.
const fn size(
    name: &'static str,
    nominal: i32,
    usage: Use,
    dry: i32,
    green: i32,
    dry_mm: u16,
) -> Size {
    Size {
        name,
        nominal: Length::sixty_fourths(nominal),
        usage,
        dry: Length::sixty_fourths(dry),
        green: Length::sixty_fourths(green),
        dry_mm,
    }
}

/// Every nominal size, small to large. The numbers are sixty-fourths of an inch: nominal, dry,
/// green; then the printed millimetres.
#[rustfmt::skip]
pub const SIZES: [Size; 23] = [
    size("3/8", 24, Use::BoardThickness, 20, 22, 8),
    size("1/2", 32, Use::BoardThickness, 28, 30, 11),
    size("5/8", 40, Use::BoardThickness, 36, 38, 14),
    size("3/4", 48, Use::BoardThickness, 40, 44, 16),
    size("1", 64, Use::BoardThickness, 48, 50, 19),
    size("1 1/4", 80, Use::BoardThickness, 64, 66, 25),
    size("1 1/2", 96, Use::BoardThickness, 80, 82, 32),
    size("2", 128, Use::Dimension, 96, 100, 38),
    size("2 1/2", 160, Use::Dimension, 128, 132, 51),
    size("3", 192, Use::Dimension, 160, 164, 64),
    size("3 1/2", 224, Use::Dimension, 192, 196, 76),
    size("4", 256, Use::Dimension, 224, 228, 89),
    size("4 1/2", 288, Use::Dimension, 256, 260, 102),
    size("5", 320, Use::Wide, 288, 296, 114),
    size("6", 384, Use::Wide, 352, 360, 140),
    size("7", 448, Use::Wide, 416, 424, 165),
    size("8", 512, Use::Wide, 464, 480, 184),
    size("9", 576, Use::Wide, 528, 544, 210),
    size("10", 640, Use::Wide, 592, 608, 235),
    size("11", 704, Use::Wide, 656, 672, 260),
    size("12", 768, Use::Wide, 720, 736, 286),
    size("14", 896, Use::Wide, 848, 864, 337),
    size("16", 1024, Use::Wide, 976, 992, 387),
];

/// The row of a nominal size.
///
/// ```
/// # use reckoner_core::{measure::length, tables::lumber::{self, Seasoning}};
/// let eight = lumber::size_of(length("8")?).ok_or("no such size")?;
/// assert_eq!(eight.dressed(Seasoning::Dry), length("7 1/4")?);
/// assert_eq!(eight.dressed(Seasoning::Green), length("7 1/2")?);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[must_use]
pub fn size_of(nominal: Length) -> Option<Size> {
    SIZES.into_iter().find(|size| size.nominal == nominal)
}

/// A section as a yard sells it: nominal thickness and width.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Section {
    /// Stable name, also in links: `2x8`.
    pub id: &'static str,
    /// As it is said: `2×8`.
    pub label: &'static str,
    /// Nominal thickness.
    pub thickness: Length,
    /// Nominal width.
    pub width: Length,
}

impl Section {
    /// Least dressed thickness and width.
    ///
    /// Both sides stand in [`SIZES`] for every one of [`SECTIONS`]; `None` for a section made up
    /// of other sizes.
    ///
    /// ```
    /// # use reckoner_core::{measure::length, tables::lumber::{self, Seasoning}};
    /// let post = lumber::section("4x4").ok_or("no such section")?;
    /// assert_eq!(post.dressed(Seasoning::Dry), Some((length("3 1/2")?, length("3 1/2")?)));
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub fn dressed(&self, seasoning: Seasoning) -> Option<(Length, Length)> {
        let side = |nominal| size_of(nominal).map(|size| size.dressed(seasoning));
        Some((side(self.thickness)?, side(self.width)?))
    }
}

/// A section from its nominal thickness in quarters of an inch and its width in inches.
const fn sold(id: &'static str, label: &'static str, quarters: i32, inches: i32) -> Section {
    Section {
        id,
        label,
        thickness: Length::sixty_fourths(16 * quarters),
        width: Length::sixty_fourths(64 * inches),
    }
}

/// A board of a bench top.
pub const TWO_BY_SIX: Section = sold("2x6", "2×6", 8, 6);

/// A wide board.
pub const TWO_BY_TEN: Section = sold("2x10", "2×10", 8, 10);

/// A post.
pub const FOUR_BY_FOUR: Section = sold("4x4", "4×4", 16, 4);

/// The sections that a yard keeps for outdoor work, thin to thick. Which ones those are is common
/// practice, no source.
pub const SECTIONS: [Section; 22] = [
    sold("1x2", "1×2", 4, 2),
    sold("1x3", "1×3", 4, 3),
    sold("1x4", "1×4", 4, 4),
    sold("1x6", "1×6", 4, 6),
    sold("1x8", "1×8", 4, 8),
    sold("1x10", "1×10", 4, 10),
    sold("1x12", "1×12", 4, 12),
    sold("5/4x4", "5/4×4", 5, 4),
    sold("5/4x6", "5/4×6", 5, 6),
    sold("2x2", "2×2", 8, 2),
    sold("2x3", "2×3", 8, 3),
    sold("2x4", "2×4", 8, 4),
    TWO_BY_SIX,
    sold("2x8", "2×8", 8, 8),
    TWO_BY_TEN,
    sold("2x12", "2×12", 8, 12),
    sold("3x4", "3×4", 12, 4),
    FOUR_BY_FOUR,
    sold("4x6", "4×6", 16, 6),
    sold("4x8", "4×8", 16, 8),
    sold("6x6", "6×6", 24, 6),
    sold("8x8", "8×8", 32, 8),
];

/// Round rods as they are called, and their size across. Which ones are sold is common practice, no source.
pub const RODS: [(&str, Length); 6] = [
    ("3/8 in dowel", Length::sixty_fourths(24)),
    ("1/2 in dowel", Length::sixty_fourths(32)),
    ("5/8 in dowel", Length::sixty_fourths(40)),
    ("3/4 in dowel", Length::sixty_fourths(48)),
    ("1 in dowel", Length::sixty_fourths(64)),
    ("1 1/4 in dowel", Length::sixty_fourths(80)),
];

/// The section with this id.
#[must_use]
pub fn section(id: &str) -> Option<Section> {
    SECTIONS.into_iter().find(|section| section.id == id)
}
