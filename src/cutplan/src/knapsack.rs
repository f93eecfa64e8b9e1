//! The best fill of one bin: an exact bounded knapsack.
//!
//! Two methods. A table over all capacities (Bellman, "Dynamic Programming", 1957; quantities split into powers of two) when
//! the table is small; one table serves every capacity of a kind. Depth-first branch and bound on value per weight (Gilmore and
//! Gomory, "A linear programming approach to the cutting stock problem, part II", Operations Research 11, 1963, for cutting
//! patterns; from memory) when lengths are so fine that a table would not fit in a phone. The second may run out of steps; then
//! it still answers with an upper bound, so that nothing is claimed that is not so.

use crate::model::Way;

/// Cells (bundles x capacity) up to which a table is used.
const MOST_CELLS: u64 = 24_000_000;
/// Capacities in one table, at most: 4 MB of values.
const MOST_CAPACITY: u64 = 1 << 19;
/// Branches after which the search by value per weight gives up.
const MOST_BRANCHES: u64 = 200_000;

/// How a bin was filled: ways and how many.
pub(crate) type Fill = Vec<(usize, u32)>;

/// The best fills of bins of one kind for given values.
pub(crate) enum Fills {
    /// Nothing of value fits.
    Empty,
    /// A table over capacities.
    Table(Table),
    /// Each capacity solved by itself: (capacity, value, upper bound, fill).
    Each(Vec<(i64, i64, i64, Fill)>),
}

/// Dynamic programming over capacities in steps of `unit`.
pub(crate) struct Table {
    unit: i64,
    best: Vec<i64>,
    /// (way, how many at once)
    bundles: Vec<(usize, u32)>,
    weights: Vec<usize>,
    /// One row of bits per bundle: was it taken to reach the best value at this capacity.
    taken: Vec<u64>,
    words: usize,
}

/// A way with what it is worth and how many may be used.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Offer {
    pub(crate) way: usize,
    pub(crate) weight: i64,
    pub(crate) value: i64,
    pub(crate) count: u32,
}

/// What the items of a kind's ways are worth and how many of each are left.
pub(crate) fn offers(ways: &[Way], values: &[i64], left: &[u32], largest: i64) -> Vec<Offer> {
    let mut offers = Vec::with_capacity(ways.len());
    for (way, entry) in ways.iter().enumerate() {
        let value = values[entry.item];
        let fit = u32::try_from(largest / entry.weight).unwrap_or(u32::MAX);
        let count = left[entry.item].min(fit);
        if value > 0 && count > 0 {
            offers.push(Offer { way, weight: entry.weight, value, count });
        }
    }
    offers
}

/// Fills for all the `capacities` (ascending). Also says how many steps it took.
pub(crate) fn fill(offers: &[Offer], capacities: &[i64]) -> (Fills, u64) {
    let Some(&largest) = capacities.last() else {
        return (Fills::Empty, 1);
    };
    if offers.is_empty() {
        return (Fills::Empty, 1);
    }
    let unit = offers.iter().fold(0, |unit, offer| gcd(unit, offer.weight));
    let cells = u64::try_from(largest / unit).unwrap_or(u64::MAX) + 1;
    let bundles: u64 = offers.iter().map(|offer| u64::from(32 - offer.count.leading_zeros())).sum();
    if cells <= MOST_CAPACITY && cells.saturating_mul(bundles) <= MOST_CELLS {
        let table = Table::new(offers, unit, cells);
        return (Fills::Table(table), cells * bundles);
    }
    let mut steps = 0;
    let mut each = Vec::with_capacity(capacities.len());
    for &capacity in capacities {
        let mut search = Branch::new(offers, capacity);
        search.go(0, capacity, 0);
        steps += search.branches * 8;
        let upper =
            if search.branches > MOST_BRANCHES { search.bound(0, capacity) } else { search.best };
        each.push((capacity, search.best, upper, search.fill()));
    }
    (Fills::Each(each), steps)
}

impl Fills {
    /// The value reached and an upper bound on it; they differ only when the search gave up.
    pub(crate) fn value(&self, capacity: i64) -> (i64, i64) {
        match self {
            Self::Empty => (0, 0),
            Self::Table(table) => {
                let at = usize::try_from(capacity / table.unit).unwrap_or(0);
                (table.best[at], table.best[at])
            }
            Self::Each(each) => each
                .iter()
                .find(|entry| entry.0 == capacity)
                .map_or((0, 0), |entry| (entry.1, entry.2)),
        }
    }

    /// The fill behind the value.
    pub(crate) fn fill(&self, capacity: i64) -> Fill {
        match self {
            Self::Empty => Vec::new(),
            Self::Table(table) => table.trace(capacity),
            Self::Each(each) => each
                .iter()
                .find(|entry| entry.0 == capacity)
                .map_or_else(Vec::new, |entry| entry.3.clone()),
        }
    }
}

impl Table {
    fn new(offers: &[Offer], unit: i64, cells: u64) -> Self {
        let cells = usize::try_from(cells).unwrap_or(1);
        let words = cells.div_ceil(64);
        let mut table = Self {
            unit,
            best: vec![0; cells],
            bundles: Vec::new(),
            weights: Vec::new(),
            taken: Vec::new(),
            words,
        };
        for offer in offers {
            let mut left = offer.count;
            let mut bundle = 1;
            while left > 0 {
                let take = left.min(bundle);
                left -= take;
                bundle *= 2;
                let weight = usize::try_from(offer.weight / unit).unwrap_or(0) * take as usize;
                if weight < cells {
                    table.add(offer.way, take, weight, offer.value * i64::from(take));
                }
            }
        }
        table
    }

    fn add(&mut self, way: usize, count: u32, weight: usize, value: i64) {
        let row = self.taken.len();
        self.taken.resize(row + self.words, 0);
        let bits = &mut self.taken[row..];
        for at in (weight..self.best.len()).rev() {
            let with = self.best[at - weight] + value;
            if with > self.best[at] {
                self.best[at] = with;
                bits[at / 64] |= 1 << (at % 64);
            }
        }
        self.bundles.push((way, count));
        self.weights.push(weight);
    }

    fn trace(&self, capacity: i64) -> Fill {
        let mut at = usize::try_from(capacity / self.unit).unwrap_or(0);
        let mut fill: Fill = Vec::new();
        for bundle in (0..self.bundles.len()).rev() {
            if self.taken[bundle * self.words + at / 64] >> (at % 64) & 1 == 1 {
                let (way, count) = self.bundles[bundle];
                match fill.last_mut() {
                    Some(last) if last.0 == way => last.1 += count,
                    _ => fill.push((way, count)),
                }
                at -= self.weights[bundle];
            }
        }
        fill.reverse();
        fill
    }
}

struct Branch {
    offers: Vec<Offer>,
    used: Vec<u32>,
    best: i64,
    best_used: Vec<u32>,
    branches: u64,
    lightest: Vec<i64>,
}

impl Branch {
    fn new(offers: &[Offer], capacity: i64) -> Self {
        let mut offers: Vec<Offer> =
            offers.iter().copied().filter(|offer| offer.weight <= capacity).collect();
        offers.sort_by(|a, b| {
            let left = i128::from(b.value) * i128::from(a.weight);
            let right = i128::from(a.value) * i128::from(b.weight);
            left.cmp(&right)
        });
        let mut lightest = vec![i64::MAX; offers.len() + 1];
        for at in (0..offers.len()).rev() {
            lightest[at] = lightest[at + 1].min(offers[at].weight);
        }
        Self {
            used: vec![0; offers.len()],
            best_used: vec![0; offers.len()],
            offers,
            best: 0,
            branches: 0,
            lightest,
        }
    }

    /// Dantzig's bound on what offers from `from` on can add.
    fn bound(&self, from: usize, mut room: i64) -> i64 {
        let mut value = 0;
        for offer in &self.offers[from..] {
            let fit = room / offer.weight;
            if fit < i64::from(offer.count) {
                let part = i128::from(offer.value) * i128::from(room) / i128::from(offer.weight);
                return value + i64::try_from(part).unwrap_or(i64::MAX / 4);
            }
            value += offer.value * i64::from(offer.count);
            room -= offer.weight * i64::from(offer.count);
        }
        value
    }

    fn go(&mut self, from: usize, room: i64, value: i64) {
        self.branches += 1;
        if value > self.best {
            self.best = value;
            self.best_used.copy_from_slice(&self.used);
        }
        if self.branches > MOST_BRANCHES || room < self.lightest[from] {
            return;
        }
        if value + self.bound(from, room) <= self.best {
            return;
        }
        let offer = self.offers[from];
        let most = u32::try_from(room / offer.weight).unwrap_or(u32::MAX).min(offer.count);
        for count in (0..=most).rev() {
            self.used[from] = count;
            let taken = i64::from(count);
            self.go(from + 1, room - taken * offer.weight, value + taken * offer.value);
            if self.branches > MOST_BRANCHES {
                break;
            }
        }
        self.used[from] = 0;
    }

    fn fill(&self) -> Fill {
        let mut fill: Fill = self
            .offers
            .iter()
            .zip(&self.best_used)
            .filter(|(_, used)| **used > 0)
            .map(|(offer, &used)| (offer.way, used))
            .collect();
        fill.sort_unstable();
        fill
    }
}

/// Greatest common divisor.
pub(crate) fn gcd(a: i64, b: i64) -> i64 {
    let (mut a, mut b) = (a.abs(), b.abs());
    while b != 0 {
        (a, b) = (b, a % b);
    }
    a
}
