//! [`Number`]: an exact rational number without a unit.

use core::fmt;
use core::ops::{Add, Div, Mul, Neg, Sub};

use num_rational::Ratio;
use num_traits::{CheckedAdd, CheckedDiv, CheckedMul, CheckedSub, Signed, Zero};

use super::limits::MAX_TERM;

/// An exact rational number: a count, a factor, or how many times one length goes into another.
///
/// Every operation is exact. An operation returns [`OutOfRange`] when the result in lowest
/// terms would have a numerator or denominator beyond [`MAX_TERM`], or for a division by zero;
/// nothing ever wraps or rounds.
///
/// ```
/// # use reckoner_core::measure::Number;
/// let third = Number::ratio(1, 3)?;
/// assert_eq!((third * Number::whole(3))?, Number::ONE);
/// assert!((Number::ONE / Number::ZERO).is_err());
/// # Ok::<(), reckoner_core::measure::OutOfRange>(())
/// ```
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Number(Ratio<i128>);

/// The exact result has more digits than the limits allow, or is a division by zero.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct OutOfRange;

impl fmt::Display for OutOfRange {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("the result is too large or too fine to keep exactly")
    }
}

impl core::error::Error for OutOfRange {}

impl Number {
    /// Nothing.
    pub const ZERO: Number = Number(Ratio::new_raw(0, 1));
    /// One.
    pub const ONE: Number = Number(Ratio::new_raw(1, 1));

    /// A whole number.
    #[must_use]
    pub fn whole(n: i64) -> Number {
        Number(Ratio::from_integer(i128::from(n)))
    }

    /// A fraction that is already in lowest terms: the constants of [`super::unit`].
    pub(super) const fn constant(numer: i128, denom: i128) -> Number {
        Number(Ratio::new_raw(numer, denom))
    }

    /// `n / 64` in lowest terms: the constants of a rule, such as a margin of 1/8.
    pub(super) const fn sixty_fourths(n: i32) -> Number {
        let mut numer = n as i128;
        let mut denom = 64;
        while denom > 1 && numer % 2 == 0 {
            numer /= 2;
            denom /= 2;
        }
        Number(Ratio::new_raw(numer, denom))
    }

    /// `numer / denom` in lowest terms.
    ///
    /// # Errors
    ///
    /// [`OutOfRange`] when `denom` is zero or a term is beyond the limit.
    pub fn ratio(numer: i128, denom: i128) -> Result<Number, OutOfRange> {
        if denom == 0 || beyond(numer) || beyond(denom) {
            return Err(OutOfRange);
        }
        within(Some(Ratio::new(numer, denom)))
    }

    /// Numerator in lowest terms; carries the sign.
    #[must_use]
    pub fn numer(self) -> i128 {
        *self.0.numer()
    }

    /// Denominator in lowest terms; always above zero.
    #[must_use]
    pub fn denom(self) -> i128 {
        *self.0.denom()
    }

    /// Whether there is no fraction.
    #[must_use]
    pub fn is_whole(self) -> bool {
        self.0.is_integer()
    }

    /// Largest whole number not above this one.
    #[must_use]
    pub fn floor(self) -> i128 {
        self.0.floor().to_integer()
    }

    /// Smallest whole number not below this one.
    #[must_use]
    pub fn ceil(self) -> i128 {
        self.0.ceil().to_integer()
    }

    /// Without its sign.
    #[must_use]
    pub fn abs(self) -> Number {
        Number(self.0.abs())
    }

    /// Nearest floating-point number: only for drawings and for physics that is not exact anyway.
    #[must_use]
    pub fn to_f64(self) -> f64 {
        self.numer() as f64 / self.denom() as f64
    }
}

fn beyond(term: i128) -> bool {
    !(-MAX_TERM..=MAX_TERM).contains(&term)
}

fn within(result: Option<Ratio<i128>>) -> Result<Number, OutOfRange> {
    match result {
        Some(ratio) if !beyond(*ratio.numer()) && !beyond(*ratio.denom()) => Ok(Number(ratio)),
        _ => Err(OutOfRange),
    }
}

impl Add for Number {
    type Output = Result<Number, OutOfRange>;
    fn add(self, other: Number) -> Self::Output {
        within(self.0.checked_add(&other.0))
    }
}

impl Sub for Number {
    type Output = Result<Number, OutOfRange>;
    fn sub(self, other: Number) -> Self::Output {
        within(self.0.checked_sub(&other.0))
    }
}

impl Mul for Number {
    type Output = Result<Number, OutOfRange>;
    fn mul(self, other: Number) -> Self::Output {
        within(self.0.checked_mul(&other.0))
    }
}

impl Div for Number {
    type Output = Result<Number, OutOfRange>;
    fn div(self, other: Number) -> Self::Output {
        if other.0.is_zero() {
            return Err(OutOfRange);
        }
        within(self.0.checked_div(&other.0))
    }
}

impl Neg for Number {
    type Output = Number;
    fn neg(self) -> Number {
        Number(-self.0)
    }
}

impl fmt::Debug for Number {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        fmt::Display::fmt(self, f)
    }
}

/// `27/8`, or `3` when whole: exact, for storage and interchange.
impl fmt::Display for Number {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        if self.is_whole() {
            write!(f, "{}", self.numer())
        } else {
            write!(f, "{}/{}", self.numer(), self.denom())
        }
    }
}
