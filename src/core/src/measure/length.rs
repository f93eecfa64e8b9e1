//! [`Length`] and [`Area`]: exact, in inches and square inches.

use core::fmt;
use core::ops::{Add, Div, Mul, Neg, Sub};

use super::limits::MAX_LENGTH_INCHES;
use super::number::{Number, OutOfRange};
use super::unit::Unit;

/// Parts of an inch that an irrational length is kept in: see [`Length::near`].
const NEAR: i32 = 4096;

/// A signed exact length: a rational number of inches.
///
/// Lengths add and subtract, take a [`Number`] as a factor or divisor, and divide into a
/// [`Number`]. Length times length is an [`Area`]. Each operation gives a `Result`, because an
/// exact value can grow beyond the limits; nothing is rounded on the way.
///
/// ```
/// # use reckoner_core::measure::{length, Length, Number};
/// let legs = (length("3 1/2")? * Number::whole(2))?;
/// let rail = (length("44")? - legs)?;
/// assert_eq!(rail, length("37")?);
/// assert_eq!((length("7")? / length("3 1/2")?)?, Number::whole(2));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Length(Number);

/// An exact area: a rational number of square inches.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Area(Number);

impl Length {
    /// No length.
    pub const ZERO: Length = Length(Number::ZERO);

    /// So many inches.
    #[must_use]
    pub fn inches(inches: Number) -> Length {
        Length(inches)
    }

    /// `n` sixty-fourths of an inch: the constant of a rule, such as a margin of 1/8.
    ///
    /// ```
    /// # use reckoner_core::measure::{length, Length};
    /// assert_eq!(Length::sixty_fourths(8), length("1/8")?);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub const fn sixty_fourths(n: i32) -> Length {
        Length(Number::sixty_fourths(n))
    }

    /// `numer / denom` of an inch.
    ///
    /// # Errors
    ///
    /// [`OutOfRange`] for a zero denominator or a term beyond the limit.
    pub fn of_inch(numer: i128, denom: i128) -> Result<Length, OutOfRange> {
        Number::ratio(numer, denom).map(Length)
    }

    /// So many of a unit.
    ///
    /// # Errors
    ///
    /// [`OutOfRange`] beyond the limits.
    pub fn of(amount: Number, unit: Unit) -> Result<Length, OutOfRange> {
        (amount * unit.in_inches()).map(Length)
    }

    /// The length nearest to an irrational one, such as a diagonal, an ordinate or `H / cos A`.
    ///
    /// The result is a whole number of 4096ths of an inch and lies within 1/8192 in of `inches`.
    /// No tape is that fine: only a length so close to the middle between two marks can be given
    /// the farther one, or be called midway. A whole, a 64th or any other 4096th
    /// comes out exact. Use it last, for showing: what flows on stays a float or an exact rational.
    ///
    /// # Errors
    ///
    /// [`OutOfRange`] when `inches` is infinite, not a number, or beyond [`MAX_LENGTH_INCHES`].
    ///
    /// ```
    /// # use reckoner_core::measure::{length, text::show, Length, Rounding, Tape};
    /// let diagonal = Length::near(libm::sqrt(40.0 * 40.0 + 16.0 * 16.0))?;
    /// let shown = show(diagonal, Tape::SIXTEENTHS, Rounding::Nearest)?;
    /// assert_eq!(shown.mark.to_string(), "43 1/16 in");
    /// assert!(Length::near(f64::NAN).is_err());
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn near(inches: f64) -> Result<Length, OutOfRange> {
        if !inches.is_finite() || inches.abs() > MAX_LENGTH_INCHES as f64 {
            return Err(OutOfRange);
        }
        // At most 4.1 × 10^8, so the product and the cast are exact.
        let parts = libm::round(inches * f64::from(NEAR)) as i128;
        Length::of_inch(parts, i128::from(NEAR))
    }

    /// How many inches.
    #[must_use]
    pub fn in_inches(self) -> Number {
        self.0
    }

    /// How many of a unit.
    ///
    /// # Errors
    ///
    /// [`OutOfRange`] beyond the limits.
    pub fn in_unit(self, unit: Unit) -> Result<Number, OutOfRange> {
        self.0 / unit.in_inches()
    }

    /// Without its sign.
    #[must_use]
    pub fn abs(self) -> Length {
        Length(self.0.abs())
    }

    /// Below zero.
    #[must_use]
    pub fn is_negative(self) -> bool {
        self < Length::ZERO
    }

    /// Above zero.
    #[must_use]
    pub fn is_positive(self) -> bool {
        self > Length::ZERO
    }

    /// Exactly zero.
    #[must_use]
    pub fn is_zero(self) -> bool {
        self == Length::ZERO
    }

    /// Inches as a floating-point number: only for drawings and for physics that is not exact.
    #[must_use]
    pub fn to_f64(self) -> f64 {
        self.0.to_f64()
    }
}

impl Add for Length {
    type Output = Result<Length, OutOfRange>;
    fn add(self, other: Length) -> Self::Output {
        (self.0 + other.0).map(Length)
    }
}

impl Sub for Length {
    type Output = Result<Length, OutOfRange>;
    fn sub(self, other: Length) -> Self::Output {
        (self.0 - other.0).map(Length)
    }
}

impl Neg for Length {
    type Output = Length;
    fn neg(self) -> Length {
        Length(-self.0)
    }
}

impl Mul<Number> for Length {
    type Output = Result<Length, OutOfRange>;
    fn mul(self, factor: Number) -> Self::Output {
        (self.0 * factor).map(Length)
    }
}

/// So many of the same length.
impl Mul<u32> for Length {
    type Output = Result<Length, OutOfRange>;
    fn mul(self, count: u32) -> Self::Output {
        self * Number::whole(count.into())
    }
}

/// One of so many equal parts.
impl Div<u32> for Length {
    type Output = Result<Length, OutOfRange>;
    fn div(self, parts: u32) -> Self::Output {
        self / Number::whole(parts.into())
    }
}

impl Div<Number> for Length {
    type Output = Result<Length, OutOfRange>;
    fn div(self, divisor: Number) -> Self::Output {
        (self.0 / divisor).map(Length)
    }
}

impl Div for Length {
    type Output = Result<Number, OutOfRange>;
    fn div(self, other: Length) -> Self::Output {
        self.0 / other.0
    }
}

impl Mul for Length {
    type Output = Result<Area, OutOfRange>;
    fn mul(self, other: Length) -> Self::Output {
        (self.0 * other.0).map(Area)
    }
}

/// Exact inches, such as `27/8`: for storage and interchange.
impl fmt::Display for Length {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        fmt::Display::fmt(&self.0, f)
    }
}

impl fmt::Debug for Length {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{} in", self.0)
    }
}

impl Area {
    /// No area.
    pub const ZERO: Area = Area(Number::ZERO);

    /// So many square inches.
    #[must_use]
    pub fn square_inches(amount: Number) -> Area {
        Area(amount)
    }

    /// How many square inches.
    #[must_use]
    pub fn in_square_inches(self) -> Number {
        self.0
    }

    /// How many square feet.
    ///
    /// # Errors
    ///
    /// [`OutOfRange`] beyond the limits.
    pub fn in_square_feet(self) -> Result<Number, OutOfRange> {
        ((self.0 / Unit::Foot.in_inches())?) / Unit::Foot.in_inches()
    }
}

impl Add for Area {
    type Output = Result<Area, OutOfRange>;
    fn add(self, other: Area) -> Self::Output {
        (self.0 + other.0).map(Area)
    }
}

impl Sub for Area {
    type Output = Result<Area, OutOfRange>;
    fn sub(self, other: Area) -> Self::Output {
        (self.0 - other.0).map(Area)
    }
}

impl Mul<Number> for Area {
    type Output = Result<Area, OutOfRange>;
    fn mul(self, factor: Number) -> Self::Output {
        (self.0 * factor).map(Area)
    }
}

impl Div<Number> for Area {
    type Output = Result<Area, OutOfRange>;
    fn div(self, divisor: Number) -> Self::Output {
        (self.0 / divisor).map(Area)
    }
}

impl Div<Length> for Area {
    type Output = Result<Length, OutOfRange>;
    fn div(self, side: Length) -> Self::Output {
        (self.0 / side.in_inches()).map(Length)
    }
}

impl fmt::Debug for Area {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{} sq in", self.0)
    }
}
