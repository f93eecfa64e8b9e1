//! Chance with a seed: the same walk for the same seed, on every machine.

/// A small generator (SplitMix64, Steele, Lea and Flood 2014).
pub(super) struct Chance(u64);

impl Chance {
    pub(super) fn of(seed: u64) -> Chance {
        Chance(seed.wrapping_mul(0x9e37_79b9_7f4a_7c15) ^ 0x5851_f42d_4c95_7f2d)
    }

    fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        z ^ (z >> 31)
    }

    /// From 0 to one less than `most`.
    pub(super) fn below(&mut self, most: usize) -> usize {
        usize::try_from(self.next() % u64::try_from(most.max(1)).unwrap_or(1)).unwrap_or(0)
    }

    /// So many times out of a hundred.
    pub(super) fn percent(&mut self, times: usize) -> bool {
        self.below(100) < times
    }

    /// One of these.
    pub(super) fn one<'a, T>(&mut self, of: &'a [T]) -> Option<&'a T> {
        of.get(self.below(of.len()))
    }

    /// The place of one of these weights.
    pub(super) fn weighted(&mut self, weights: &[usize]) -> usize {
        let mut at = self.below(weights.iter().sum());
        for (place, weight) in weights.iter().enumerate() {
            match at.checked_sub(*weight) {
                None => return place,
                Some(rest) => at = rest,
            }
        }
        0
    }
}
