//! From exact fractions of an inch to whole units and back.
//!
//! A job's lengths may have any denominators. The unit is one over their least common multiple, so every
//! length becomes a whole number and nothing is rounded.

use super::problem::{LARGEST_UNITS, Units};

/// Why lengths could not be brought to one unit.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum ScaleProblem {
    /// A denominator is zero or negative.
    BadDenominator {
        /// The place of the length in the list.
        at: usize,
    },
    /// The lengths' denominators have no small common multiple: with this one, the longest length would be
    /// more than [`LARGEST_UNITS`] units.
    TooFine {
        /// The place of the first length that made the unit too fine.
        at: usize,
    },
}

/// One over the common denominator of all lengths of a job.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct CommonUnit {
    per_inch: i128,
}

impl CommonUnit {
    /// The coarsest unit in which all the fractions `(numerator, denominator)` are whole.
    ///
    /// # Errors
    /// [`ScaleProblem`] when a denominator is not positive or the unit would be too fine.
    ///
    /// ```
    /// use reckoner_core::cutting::scale::CommonUnit;
    /// let unit = CommonUnit::of(&[(37 * 8 + 7, 8), (1, 3)])?;
    /// assert_eq!(unit.per_inch(), 24);
    /// assert_eq!(unit.units(1, 3), Some(8));
    /// # Ok::<(), reckoner_core::cutting::scale::ScaleProblem>(())
    /// ```
    pub fn of(lengths: &[(i128, i128)]) -> Result<Self, ScaleProblem> {
        let mut per_inch: i128 = 1;
        for (at, &(num, den)) in lengths.iter().enumerate() {
            if den <= 0 {
                return Err(ScaleProblem::BadDenominator { at });
            }
            let reduced = den / gcd(num, den);
            per_inch = (per_inch / gcd(per_inch, reduced))
                .checked_mul(reduced)
                .ok_or(ScaleProblem::TooFine { at })?;
        }
        let unit = Self { per_inch };
        for (at, &(num, den)) in lengths.iter().enumerate() {
            if unit.units(num, den).is_none() {
                return Err(ScaleProblem::TooFine { at });
            }
        }
        Ok(unit)
    }

    /// How many units make one inch.
    #[must_use]
    pub fn per_inch(self) -> i128 {
        self.per_inch
    }

    /// The fraction in units; `None` when it is not a whole number of them or too large.
    #[must_use]
    pub fn units(self, num: i128, den: i128) -> Option<Units> {
        let scaled = num.checked_mul(self.per_inch)?;
        if den <= 0 || scaled % den != 0 {
            return None;
        }
        let units = Units::try_from(scaled / den).ok()?;
        (units.abs() <= LARGEST_UNITS).then_some(units)
    }

    /// The units as a fraction of an inch in lowest terms.
    #[must_use]
    pub fn fraction(self, units: Units) -> (i128, i128) {
        let common = gcd(i128::from(units), self.per_inch);
        (i128::from(units) / common, self.per_inch / common)
    }
}

/// Greatest common divisor; 1 for two zeros, so that it can always be divided by.
fn gcd(a: i128, b: i128) -> i128 {
    let (mut a, mut b) = (a.unsigned_abs(), b.unsigned_abs());
    while b != 0 {
        (a, b) = (b, a % b);
    }
    i128::try_from(a).unwrap_or(1).max(1)
}

#[cfg(test)]
mod tests {
    use super::{CommonUnit, ScaleProblem};

    #[test]
    fn three_odd_denominators_become_whole() {
        let lengths = [(5, 7), (3, 11), (1, 13), (0, 16)];
        let unit = CommonUnit::of(&lengths).unwrap();
        assert_eq!(unit.per_inch(), 1001);
        for (num, den) in lengths {
            let units = unit.units(num, den).unwrap();
            let (n, d) = unit.fraction(units);
            assert_eq!(n * den, num * d);
        }
    }

    #[test]
    fn too_fine_is_a_named_problem() {
        let lengths = [(1, 1_000_003), (1, 1_000_033), (1, 2)];
        assert_eq!(CommonUnit::of(&lengths), Err(ScaleProblem::TooFine { at: 2 }));
        assert_eq!(CommonUnit::of(&[(1, 0)]), Err(ScaleProblem::BadDenominator { at: 0 }));
    }
}
