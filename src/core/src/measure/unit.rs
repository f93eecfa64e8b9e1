//! The one table of unit scales. No other file holds 12, 25.4 or their kin.

use super::number::Number;

/// A unit of length that a person writes.
///
/// Source of the scales: 1 in = 25.4 mm exactly, 1 ft = 12 in (NIST SP 811, Appendix B;
/// NIST Handbook 44, Appendix C).
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Unit {
    /// Inch.
    Inch,
    /// Foot: 12 inches.
    Foot,
    /// Millimetre: 5/127 inch.
    Millimetre,
    /// Centimetre: 50/127 inch.
    Centimetre,
    /// Metre: 5000/127 inch.
    Metre,
}

impl Unit {
    /// Every unit.
    pub const ALL: [Unit; 5] =
        [Unit::Inch, Unit::Foot, Unit::Millimetre, Unit::Centimetre, Unit::Metre];

    /// One of this unit, in inches, exactly.
    #[must_use]
    pub const fn in_inches(self) -> Number {
        match self {
            Unit::Inch => Number::ONE,
            Unit::Foot => Number::constant(12, 1),
            Unit::Millimetre => Number::constant(5, 127),
            Unit::Centimetre => Number::constant(50, 127),
            Unit::Metre => Number::constant(5000, 127),
        }
    }

    /// The smallest step of an inch with so many decimal places (at most 4).
    pub(super) const fn decimal_inch(places: u8) -> Number {
        match places {
            0 => Number::ONE,
            1 => Number::constant(1, 10),
            2 => Number::constant(1, 100),
            3 => Number::constant(1, 1000),
            _ => Number::constant(1, 10_000),
        }
    }

    /// The smallest step of a millimetre with so many decimal places (at most 2), in inches.
    pub(super) const fn decimal_millimetre(places: u8) -> Number {
        match places {
            0 => Unit::Millimetre.in_inches(),
            1 => Number::constant(1, 254),
            _ => Number::constant(1, 2540),
        }
    }

    /// The usual short name: `in`, `ft`, `mm`, `cm`, `m`.
    #[must_use]
    pub fn short(self) -> &'static str {
        match self {
            Unit::Inch => "in",
            Unit::Foot => "ft",
            Unit::Millimetre => "mm",
            Unit::Centimetre => "cm",
            Unit::Metre => "m",
        }
    }

    /// Name for reading aloud, for one or for several.
    #[must_use]
    pub fn spoken(self, plural: bool) -> &'static str {
        match (self, plural) {
            (Unit::Inch, false) => "inch",
            (Unit::Inch, true) => "inches",
            (Unit::Foot, false) => "foot",
            (Unit::Foot, true) => "feet",
            (Unit::Millimetre, false) => "millimetre",
            (Unit::Millimetre, true) => "millimetres",
            (Unit::Centimetre, false) => "centimetre",
            (Unit::Centimetre, true) => "centimetres",
            (Unit::Metre, false) => "metre",
            (Unit::Metre, true) => "metres",
        }
    }

    /// Whether it belongs to the metric system.
    #[must_use]
    pub fn is_metric(self) -> bool {
        matches!(self, Unit::Millimetre | Unit::Centimetre | Unit::Metre)
    }
}
