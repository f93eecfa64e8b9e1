//! [`Number`]: an exact rational number without a unit.

use core::cmp::Ordering;
use core::fmt;
use core::num::NonZeroU64;
use core::ops::{Add, Div, Mul, Neg, Sub};

use num_rational::Ratio;
use num_traits::{CheckedAdd, CheckedDiv, CheckedMul, CheckedSub};

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
// Kept in 16 bytes, worked out in 128 bits: both terms are within MAX_TERM, and every copy of a
// number is code. The bottom is never zero, which leaves room for the error of a result.
#[derive(Clone, Copy, PartialEq, Eq, Hash)]
pub struct Number {
    numer: i64,
    denom: NonZeroU64,
}

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
    pub const ZERO: Number = Number { numer: 0, denom: NonZeroU64::MIN };
    /// One.
    pub const ONE: Number = Number { numer: 1, denom: NonZeroU64::MIN };

    /// A whole number.
    #[must_use]
    pub fn whole(n: i64) -> Number {
        Number { numer: n, denom: NonZeroU64::MIN }
    }

    /// A fraction that is already in lowest terms: the constants of [`super::unit`].
    pub(super) const fn constant(numer: i64, denom: u64) -> Number {
        let denom = match NonZeroU64::new(denom) {
            Some(denom) => denom,
            None => NonZeroU64::MIN,
        };
        Number { numer, denom }
    }

    /// `n / 64` in lowest terms: the constants of a rule, such as a margin of 1/8.
    pub(super) const fn sixty_fourths(n: i32) -> Number {
        let mut numer = n as i64;
        let mut denom = 64;
        while denom > 1 && numer % 2 == 0 {
            numer /= 2;
            denom /= 2;
        }
        Number::constant(numer, denom)
    }

    fn wide(self) -> Ratio<i128> {
        Ratio::new_raw(self.numer.into(), self.denom.get().into())
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
        self.numer.into()
    }

    /// Denominator in lowest terms; always above zero.
    #[must_use]
    pub fn denom(self) -> i128 {
        self.denom.get().into()
    }

    /// Whether there is no fraction.
    #[must_use]
    pub fn is_whole(self) -> bool {
        self.denom == NonZeroU64::MIN
    }

    /// Largest whole number not above this one.
    #[must_use]
    pub fn floor(self) -> i128 {
        self.wide().floor().to_integer()
    }

    /// Smallest whole number not below this one.
    #[must_use]
    pub fn ceil(self) -> i128 {
        self.wide().ceil().to_integer()
    }

    /// Without its sign.
    #[must_use]
    pub fn abs(self) -> Number {
        Number { numer: self.numer.saturating_abs(), ..self }
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
    let ratio = result.ok_or(OutOfRange)?;
    if beyond(*ratio.numer()) || beyond(*ratio.denom()) {
        return Err(OutOfRange);
    }
    let numer = i64::try_from(*ratio.numer()).map_err(|_| OutOfRange)?;
    let denom = u64::try_from(*ratio.denom()).map_err(|_| OutOfRange)?;
    Ok(Number { numer, denom: NonZeroU64::new(denom).ok_or(OutOfRange)? })
}

impl Ord for Number {
    fn cmp(&self, other: &Number) -> Ordering {
        // Both terms are within 10^18, so neither product can overflow.
        (self.numer() * other.denom()).cmp(&(other.numer() * self.denom()))
    }
}

impl PartialOrd for Number {
    fn partial_cmp(&self, other: &Number) -> Option<Ordering> {
        Some(self.cmp(other))
    }
}

impl Add for Number {
    type Output = Result<Number, OutOfRange>;
    fn add(self, other: Number) -> Self::Output {
        within(self.wide().checked_add(&other.wide()))
    }
}

impl Sub for Number {
    type Output = Result<Number, OutOfRange>;
    fn sub(self, other: Number) -> Self::Output {
        within(self.wide().checked_sub(&other.wide()))
    }
}

impl Mul for Number {
    type Output = Result<Number, OutOfRange>;
    fn mul(self, other: Number) -> Self::Output {
        within(self.wide().checked_mul(&other.wide()))
    }
}

impl Div for Number {
    type Output = Result<Number, OutOfRange>;
    fn div(self, other: Number) -> Self::Output {
        if other == Number::ZERO {
            return Err(OutOfRange);
        }
        within(self.wide().checked_div(&other.wide()))
    }
}

impl Neg for Number {
    type Output = Number;
    fn neg(self) -> Number {
        Number { numer: self.numer.saturating_neg(), ..self }
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
