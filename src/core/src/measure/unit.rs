//! The one table of unit scales. No other file holds 12, 25.4 or their kin.

use super::number::{Number, OutOfRange};

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

    /// Half a millimetre, in inches.
    pub(super) const HALF_MILLIMETRE: Number = Number::constant(5, 254);

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

/// A unit of what is no length, and what the same is called and comes to in a metric shop.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Partner {
    /// Load, stress, density, volume or area as the tables have it: `lb`, `psi`.
    pub unit: &'static str,
    /// The metric unit: `kg`, `MPa`.
    pub metric: &'static str,
    /// One of `unit` in the metric unit, exactly.
    pub times: Number,
    /// Decimal places that are shown of the metric number.
    pub places: u8,
}

/// Source of the scales: NIST SP 811, Appendix B (1 lb = 0.453 592 37 kg, 1 lbf = 4.448 221 615 260 5 N,
/// 1 US gallon = 3.785 411 784 L, all exactly).
///
/// A foot is 0.3048 m and an inch 2.54 cm, exactly too.
const PARTNERS: [Partner; 12] = [
    partner("lb", "kg", (45_359_237, 100_000_000), 1),
    partner("lb/ft", "kg/m", (45_359_237, 30_480_000), 1),
    partner("lb/in", "kg/cm", (45_359_237, 254_000_000), 1),
    partner("ft", "m", (381, 1_250), 2),
    partner("psi", "MPa", (8_896_443_230_521, 1_290_320_000_000_000), 2),
    // A thousand to a thousand: the same number.
    partner("thousand psi", "GPa", (8_896_443_230_521, 1_290_320_000_000_000), 2),
    partner("lb/cu ft", "kg/m³", (28_349_523_125, 1_769_802_912), 0),
    partner("gal", "L", (473_176_473, 125_000_000), 2),
    partner("cu ft", "L", (55_306_341, 1_953_125), 0),
    partner("sq ft", "m²", (145_161, 1_562_500), 2),
    partner("sq in", "cm²", (16_129, 2_500), 0),
    partner("sq ft/gal", "m²/L", (240, 9779), 1),
];

const fn partner(
    unit: &'static str,
    metric: &'static str,
    (numer, denom): (i64, u64),
    places: u8,
) -> Partner {
    Partner { unit, metric, times: Number::constant(numer, denom), places }
}

impl Partner {
    /// That of a unit, if it has one.
    #[must_use]
    pub fn of(unit: &str) -> Option<Partner> {
        PARTNERS.into_iter().find(|partner| partner.unit == unit)
    }

    /// So many of the unit, in the metric one.
    ///
    /// # Errors
    ///
    /// [`OutOfRange`] beyond the limits.
    pub fn in_metric(self, amount: Number) -> Result<Number, OutOfRange> {
        amount * self.times
    }

    /// So many of the metric unit, in the other.
    ///
    /// # Errors
    ///
    /// [`OutOfRange`] beyond the limits.
    pub fn from_metric(self, amount: Number) -> Result<Number, OutOfRange> {
        amount / self.times
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// NIST SP 811, Appendix B.8, to the seven figures printed there; a coverage by hand from the same:
    /// 0.092 903 04 ÷ 3.785 411 784.
    #[test]
    fn the_scales_are_the_published_ones() {
        for (unit, printed) in [
            ("lb", 0.453_592_4),
            ("lb/ft", 1.488_164),
            ("lb/in", 0.178_579_7),
            ("ft", 0.304_8),
            ("psi", 0.006_894_757),
            ("thousand psi", 0.006_894_757),
            ("lb/cu ft", 16.018_46),
            ("gal", 3.785_412),
            ("cu ft", 28.316_85),
            ("sq ft", 0.092_903_04),
            ("sq in", 6.451_6),
            ("sq ft/gal", 0.024_542_39),
        ] {
            let times = Partner::of(unit).expect(unit).times.to_f64();
            assert!((times / printed - 1.0).abs() < 5e-7, "{unit}: {times}");
        }
        assert_eq!(Partner::of("%"), None);
    }

    #[test]
    fn every_scale_is_in_lowest_terms_and_comes_back() {
        for partner in PARTNERS {
            let times = partner.times;
            assert_eq!(Number::ratio(times.numer(), times.denom()), Ok(times), "{}", partner.unit);
            let there = partner.in_metric(Number::whole(100)).expect("in range");
            assert_eq!(partner.from_metric(there), Ok(Number::whole(100)));
        }
    }
}
