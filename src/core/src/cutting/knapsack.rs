//! An exact bounded knapsack by dynamic programming over whole units, for checking bounds.
//!
//! Bellman's recursion with each quantity split into powers of two (Martello and Toth, "Knapsack Problems",
//! Wiley 1990, chapter 3; from memory). It returns the value only, so it keeps one row.

use super::problem::Units;

/// The largest table the checker is willing to fill, in cells. 4 Mi cells are 32 MB.
const LARGEST_TABLE: i64 = 1 << 22;

/// One kind of thing to pack.
#[derive(Debug, Clone, Copy)]
pub(super) struct Thing {
    pub(super) weight: Units,
    pub(super) value: i64,
    pub(super) count: u64,
}

/// The largest total value of things whose total weight is at most each of the `capacities`, or `None` when the
/// table would be too large or a sum leaves `i64`.
pub(super) fn most_value(things: &[Thing], capacities: &[Units]) -> Option<Vec<i64>> {
    let largest = capacities.iter().copied().max().unwrap_or(0);
    let fit: Vec<&Thing> =
        things.iter().filter(|t| t.value > 0 && t.count > 0 && t.weight <= largest).collect();
    if fit.is_empty() {
        return Some(vec![0; capacities.len()]);
    }
    let unit = fit.iter().fold(0, |unit, thing| gcd(unit, thing.weight)).max(1);
    let cells = largest.checked_div(unit)?;
    if cells >= LARGEST_TABLE {
        return None;
    }
    let mut best = vec![0_i64; usize::try_from(cells).ok()? + 1];
    for thing in fit {
        if thing.weight <= 0 {
            return None;
        }
        let most = u64::try_from(largest / thing.weight).ok()?;
        let mut left = thing.count.min(most);
        let mut bundle = 1_u64;
        while left > 0 {
            let take = bundle.min(left);
            left -= take;
            bundle *= 2;
            let times = i64::try_from(take).ok()?;
            let weight = usize::try_from(thing.weight.checked_mul(times)? / unit).ok()?;
            let value = thing.value.checked_mul(times)?;
            for at in (weight..best.len()).rev() {
                let with = best.get(at - weight)?.checked_add(value)?;
                let cell = best.get_mut(at)?;
                *cell = (*cell).max(with);
            }
        }
    }
    capacities
        .iter()
        .map(|&capacity| {
            let at = usize::try_from(capacity.max(0) / unit).ok()?;
            best.get(at).copied()
        })
        .collect()
}

/// Greatest common divisor.
pub(super) fn gcd(a: i64, b: i64) -> i64 {
    let (mut a, mut b) = (a.abs(), b.abs());
    while b != 0 {
        (a, b) = (b, a % b);
    }
    a
}

#[cfg(test)]
mod tests {
    use super::{Thing, most_value};

    #[test]
    fn agrees_with_trying_everything() {
        let things = [(3, 4, 2), (5, 7, 1), (4, 5, 3)].map(|(weight, value, count)| Thing {
            weight,
            value,
            count,
        });
        let capacities: Vec<i64> = (0..=25).collect();
        let found = most_value(&things, &capacities).unwrap();
        for (&capacity, &value) in capacities.iter().zip(&found) {
            let mut best = 0;
            for a in 0..=2 {
                for b in 0..=1 {
                    for c in 0..=3 {
                        if 3 * a + 5 * b + 4 * c <= capacity {
                            best = best.max(4 * a + 7 * b + 5 * c);
                        }
                    }
                }
            }
            assert_eq!(value, best, "capacity {capacity}");
        }
    }
}
