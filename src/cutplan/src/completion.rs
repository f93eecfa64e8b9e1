//! Bin completion: can these items all go into these bins? Exact, or "unknown" when steps run out.
//!
//! Always the largest item left is placed: for each bin size, every largest fill that holds it is tried (Korf, "A new algorithm
//! for optimal bin packing", AAAI 2002, and "An improved algorithm for optimal bin packing", IJCAI 2003; Schreiber and Korf,
//! "Improved bin completion for optimal bin packing and number partitioning", IJCAI 2013; methods from memory). A fill is
//! skipped when swapping one or two of its items for one larger item that is still left would fit: such a fill is dominated
//! (Martello and Toth, "Knapsack Problems", 1990, chapter 8). The rooms' waste together cannot exceed the slack, so each fill
//! has a waste budget: the slack less the least waste that subset sums allow in all other bins. States that failed are
//! remembered whole, never by hash alone. Nothing is cut short silently.

use std::collections::BTreeMap;
use std::collections::BTreeSet;

use crate::budget::Meter;
use crate::model::{Bin, Model, Way};

/// Bit sets longer than this many words are not worth their time.
const MOST_WORDS: usize = 1_024;
/// Remembered failures, at most.
const MOST_REMEMBERED: usize = 120_000;
/// More fills of one bin than this are not listed; the answer is then unknown.
const MOST_FILLS: usize = 20_000;

/// The answer.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) enum Answer {
    /// They fit: for each bin filled its type and its fill, as (way, count).
    Fits(Vec<(usize, Vec<(usize, u32)>)>),
    /// They cannot fit.
    Fails,
    /// Not decided in the steps given.
    Unknown,
}

/// Bins all alike.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub(crate) struct BinType {
    pub(crate) kind: usize,
    pub(crate) cap: i64,
    pub(crate) count: u32,
}

impl BinType {
    /// These bins, sorted.
    pub(crate) fn all_of(bins: &[Bin]) -> Vec<Self> {
        let mut count = BTreeMap::new();
        for bin in bins {
            *count.entry((bin.kind, bin.cap)).or_insert(0) += 1;
        }
        count.into_iter().map(|((kind, cap), count)| Self { kind, cap, count }).collect()
    }
}

/// A worth of the items and the most of it that bins of each (kind, capacity) hold. Just as the rooms' waste cannot exceed
/// the slack, the worth that fills fall short of it cannot exceed what all bins could hold less what is needed. With
/// the duals of the linear programme this leaves very few fills.
#[derive(Debug, Clone)]
pub(crate) struct BinWorth {
    pub(crate) of_item: Vec<i64>,
    pub(crate) of_bin: BTreeMap<(usize, i64), i64>,
}

/// A worth as the search uses it.
struct Budget<'a> {
    of_item: &'a [i64],
    of_type: Vec<i64>,
    slack: i64,
}

struct Search<'a, 'c, 'm> {
    model: &'a Model,
    types: Vec<BinType>,
    left: Vec<u32>,
    /// Least weight of each item in any kind here.
    weight: Vec<i64>,
    /// Items, heaviest first.
    order: Vec<usize>,
    one_kind: bool,
    slack: i64,
    budgets: Vec<Budget<'a>>,
    made: Vec<(usize, Vec<(usize, u32)>)>,
    failed: BTreeSet<Box<[u8]>>,
    steps: u64,
    most_steps: u64,
    meter: &'c mut Meter<'m>,
}

/// Subset sums of a kind's ways from each way on.
pub(crate) struct Reach {
    unit: i64,
    words: usize,
    /// Row j: sums of ways j and later.
    rows: Vec<u64>,
}

impl Reach {
    /// `None` where the table would be too large.
    pub(crate) fn new(model: &Model, kind: usize, cap: i64, left: &[u32]) -> Option<Self> {
        let ways = &model.kinds[kind].ways;
        let unit = ways
            .iter()
            .filter(|way| left[way.item] > 0)
            .fold(0, |unit, way| crate::knapsack::gcd(unit, way.weight))
            .max(1);
        let words = usize::try_from(cap / unit).ok()? / 64 + 1;
        if words > MOST_WORDS {
            return None;
        }
        let mut rows = vec![0_u64; words * (ways.len() + 1)];
        rows[words * ways.len()] = 1;
        for at in (0..ways.len()).rev() {
            let (head, tail) = rows.split_at_mut(words * (at + 1));
            let row = &mut head[words * at..];
            row.copy_from_slice(&tail[..words]);
            let fit = u32::try_from(cap / ways[at].weight).unwrap_or(u32::MAX);
            let mut count = left[ways[at].item].min(fit);
            let mut bundle = 1;
            while count > 0 {
                let take = bundle.min(count);
                count -= take;
                bundle *= 2;
                let shift = usize::try_from(ways[at].weight / unit).ok()? * take as usize;
                or_shifted(row, shift);
            }
        }
        Some(Self { unit, words, rows })
    }

    /// The largest sum of ways from `from` on that is at most `room`.
    pub(crate) fn most(&self, from: usize, room: i64) -> i64 {
        let at = usize::try_from(room / self.unit).unwrap_or(0);
        let row = &self.rows[self.words * from..self.words * (from + 1)];
        let mut word = (at / 64).min(self.words - 1);
        let mut bits = row[word];
        if at / 64 == word && at % 64 < 63 {
            bits &= (1 << (at % 64 + 1)) - 1;
        }
        loop {
            if bits != 0 {
                let top = 63 - bits.leading_zeros() as usize;
                return (word * 64 + top) as i64 * self.unit;
            }
            if word == 0 {
                return 0;
            }
            word -= 1;
            bits = row[word];
        }
    }
}

fn or_shifted(row: &mut [u64], shift: usize) {
    let (words, bits) = (shift / 64, shift % 64);
    for at in (words..row.len()).rev() {
        let mut moved = row[at - words] << bits;
        if bits > 0 && at > words {
            moved |= row[at - words - 1] >> (64 - bits);
        }
        row[at] |= moved;
    }
}

/// Decides whether `left` of the items go into the bins.
pub(crate) fn complete(
    model: &Model,
    types: &[BinType],
    left: &[u32],
    worths: &[BinWorth],
    most_steps: u64,
    meter: &mut Meter<'_>,
) -> Answer {
    let mut weight = vec![i64::MAX; left.len()];
    let mut holds = vec![false; left.len()];
    let mut types: Vec<BinType> = types.iter().copied().filter(|bin| bin.count > 0).collect();
    types.sort_by_key(|bin| (bin.cap, bin.kind));
    for bin in &types {
        for way in &model.kinds[bin.kind].ways {
            weight[way.item] = weight[way.item].min(way.weight);
            holds[way.item] |= way.weight <= bin.cap;
        }
    }
    if (0..left.len()).any(|item| left[item] > 0 && !holds[item]) {
        return Answer::Fails;
    }
    let mut order: Vec<usize> = (0..left.len()).filter(|&item| left[item] > 0).collect();
    order.sort_by_key(|&item| (std::cmp::Reverse(weight[item]), item));
    let room: i64 = types.iter().map(|bin| bin.cap * i64::from(bin.count)).sum();
    let load: i64 = order.iter().map(|&i| weight[i] * i64::from(left[i])).sum();
    let mut budgets = Vec::new();
    for worth in worths {
        let of_type: Option<Vec<i64>> =
            types.iter().map(|bin| worth.of_bin.get(&(bin.kind, bin.cap)).copied()).collect();
        let Some(of_type) = of_type else {
            continue;
        };
        let held = types.iter().zip(&of_type).map(|(bin, most)| most * i64::from(bin.count));
        let needed = order.iter().map(|&item| worth.of_item[item] * i64::from(left[item]));
        let slack = held.fold(0, i64::saturating_add) - needed.fold(0, i64::saturating_add);
        if slack < 0 {
            return Answer::Fails;
        }
        budgets.push(Budget { of_item: &worth.of_item, of_type, slack });
    }
    let first = types.first().map(|bin| bin.kind);
    let mut search = Search {
        model,
        one_kind: types.iter().all(|bin| Some(bin.kind) == first),
        types,
        left: left.to_vec(),
        weight,
        order,
        slack: room - load,
        budgets,
        made: Vec::new(),
        failed: BTreeSet::new(),
        steps: 0,
        most_steps,
        meter,
    };
    match search.go() {
        Some(true) => Answer::Fits(search.made),
        Some(false) => Answer::Fails,
        None => Answer::Unknown,
    }
}

impl Search<'_, '_, '_> {
    fn count(&mut self, steps: u64) -> bool {
        self.steps += steps;
        self.meter.tick(steps) && self.steps < self.most_steps
    }

    /// `Some(true)`: fits; `Some(false)`: cannot; `None`: unknown.
    fn go(&mut self) -> Option<bool> {
        let Some(&item) = self.order.iter().find(|&&item| self.left[item] > 0) else {
            return Some(true);
        };
        if self.slack < 0 {
            return Some(false);
        }
        let state = self.state();
        if self.failed.contains(&state) {
            return Some(false);
        }
        if !self.count(200) {
            return None;
        }
        let mut reaches: BTreeMap<usize, Option<Reach>> = BTreeMap::new();
        for bin in self.types.iter().filter(|bin| bin.count > 0) {
            let cap = self.types.iter().filter(|b| b.kind == bin.kind).map(|b| b.cap).max();
            reaches
                .entry(bin.kind)
                .or_insert_with(|| Reach::new(self.model, bin.kind, cap.unwrap_or(0), &self.left));
        }
        let work: u64 = reaches.values().flatten().map(|reach| reach.rows.len() as u64).sum();
        if !self.count(work * 2) {
            return None;
        }
        // Kinds may overlap in items, so the least waste counts only where one kind is all there is.
        let least: Vec<i64> = self
            .types
            .iter()
            .map(|bin| match reaches.get(&bin.kind) {
                Some(Some(reach)) if self.one_kind => bin.cap - reach.most(0, bin.cap),
                _ => 0,
            })
            .collect();
        let wasted: i64 =
            self.types.iter().zip(&least).map(|(bin, waste)| waste * i64::from(bin.count)).sum();
        let mut unknown = false;
        for (number, &least) in least.iter().enumerate() {
            let bin = self.types[number];
            if bin.count == 0 {
                continue;
            }
            let spare = self.slack - (wasted - least);
            if spare < least {
                continue;
            }
            let ways = &self.model.kinds[bin.kind].ways;
            let Some(forced) =
                ways.iter().position(|way| way.item == item && way.weight <= bin.cap)
            else {
                continue;
            };
            let ratios =
                self.budgets.iter().map(|budget| best_ratios(ways, budget.of_item)).collect();
            let mut lister = Lister {
                search: self,
                kind: bin.kind,
                short: self.budgets.iter().map(|budget| budget.of_type[number]).collect(),
                ratios,
                reach: reaches.get(&bin.kind).and_then(Option::as_ref),
                spare,
                forced,
                taken: Vec::new(),
                fills: Vec::new(),
                steps: 0,
            };
            let mut fine = lister.list(0, bin.cap);
            let mut fills = std::mem::take(&mut lister.fills);
            let steps = lister.steps;
            fine &= self.count(steps * 12);
            if !fine {
                return None;
            }
            fills.sort_by(|a, b| a.0.cmp(&b.0).then_with(|| a.1.cmp(&b.1)));
            for (_, fill) in fills {
                match self.try_fill(number, fill) {
                    Some(true) => return Some(true),
                    Some(false) => {}
                    None => {
                        unknown = true;
                        break;
                    }
                }
            }
            if unknown {
                return None;
            }
        }
        if self.failed.len() < MOST_REMEMBERED {
            self.failed.insert(state);
        }
        Some(false)
    }

    fn try_fill(&mut self, number: usize, fill: Vec<(usize, u32)>) -> Option<bool> {
        let bin = self.types[number];
        let mut load = 0;
        for &(way, count) in &fill {
            let item = self.model.kinds[bin.kind].ways[way].item;
            self.left[item] -= count;
            load += self.weight[item] * i64::from(count);
        }
        let waste = bin.cap - load;
        let lost: Vec<i64> = self
            .budgets
            .iter()
            .map(|budget| {
                let ways = &self.model.kinds[bin.kind].ways;
                let of_fill =
                    fill.iter().map(|&(w, n)| budget.of_item[ways[w].item] * i64::from(n));
                budget.of_type[number] - of_fill.sum::<i64>()
            })
            .collect();
        for (budget, lost) in self.budgets.iter_mut().zip(&lost) {
            budget.slack -= lost;
        }
        self.types[number].count -= 1;
        self.slack -= waste;
        self.made.push((number, fill));
        let answer = self.go();
        if answer == Some(true) {
            return answer;
        }
        if let Some((_, fill)) = self.made.pop() {
            for (way, count) in fill {
                self.left[self.model.kinds[bin.kind].ways[way].item] += count;
            }
        }
        self.types[number].count += 1;
        self.slack += waste;
        for (budget, lost) in self.budgets.iter_mut().zip(&lost) {
            budget.slack += lost;
        }
        answer
    }

    fn state(&self) -> Box<[u8]> {
        let mut bytes = Vec::with_capacity(self.order.len() + self.types.len());
        let mut push = |value: u32| {
            let mut value = value;
            while value >= 0x80 {
                bytes.push((value & 0x7f) as u8 | 0x80);
                value >>= 7;
            }
            bytes.push(value as u8);
        };
        for &item in &self.order {
            push(self.left[item]);
        }
        for bin in &self.types {
            push(bin.count);
        }
        bytes.into_boxed_slice()
    }
}

/// For each way: the most worth for the weight among it and the ways after it, as (worth, weight).
fn best_ratios(ways: &[Way], of_item: &[i64]) -> Vec<(i64, i64)> {
    let mut ratios = vec![(0, 1); ways.len() + 1];
    for at in (0..ways.len()).rev() {
        let (worth, weight) = ratios[at + 1];
        let own = (of_item[ways[at].item], ways[at].weight);
        let better = i128::from(own.0) * i128::from(weight) > i128::from(worth) * i128::from(own.1);
        ratios[at] = if better { own } else { (worth, weight) };
    }
    ratios
}

struct Lister<'s, 'a, 'c, 'm> {
    search: &'s Search<'a, 'c, 'm>,
    kind: usize,
    /// For each worth: how much the bin's most is above the fill so far.
    short: Vec<i64>,
    ratios: Vec<Vec<(i64, i64)>>,
    reach: Option<&'s Reach>,
    spare: i64,
    forced: usize,
    taken: Vec<(usize, u32)>,
    fills: Vec<(i64, Vec<(usize, u32)>)>,
    steps: u64,
}

impl Lister<'_, '_, '_, '_> {
    /// Lists fills from way `from` on; `false` when there are too many.
    fn list(&mut self, from: usize, room: i64) -> bool {
        self.steps += 1;
        if self.fills.len() > MOST_FILLS || self.steps > 40 * MOST_FILLS as u64 {
            return false;
        }
        if let Some(reach) = self.reach
            && room - reach.most(from, room) > self.spare
        {
            return true;
        }
        for ((budget, short), ratios) in
            self.search.budgets.iter().zip(&self.short).zip(&self.ratios)
        {
            let (worth, weight) = ratios[from];
            let more = i128::from(worth) * i128::from(room) / i128::from(weight);
            if i128::from(*short) - more > i128::from(budget.slack) {
                return true;
            }
        }
        let ways = &self.search.model.kinds[self.kind].ways;
        if from == ways.len() {
            if room <= self.spare && self.is_largest(room) {
                self.fills.push((room, self.taken.clone()));
            }
            return true;
        }
        let way = ways[from];
        let fit = u32::try_from(room / way.weight).unwrap_or(u32::MAX);
        let most = self.search.left[way.item].min(fit);
        let least = u32::from(from == self.forced);
        if from == self.forced && most == 0 {
            return true;
        }
        for count in (least..=most).rev() {
            if count > 0 {
                self.taken.push((from, count));
            }
            self.add_worth(way.item, i64::from(count));
            let fine = self.list(from + 1, room - way.weight * i64::from(count));
            if count > 0 {
                self.taken.pop();
            }
            self.add_worth(way.item, -i64::from(count));
            if !fine {
                return false;
            }
        }
        true
    }

    fn add_worth(&mut self, item: usize, count: i64) {
        for (budget, short) in self.search.budgets.iter().zip(&mut self.short) {
            *short -= budget.of_item[item] * count;
        }
    }

    fn taken(&self, way: usize) -> u32 {
        self.taken.iter().find(|entry| entry.0 == way).map_or(0, |entry| entry.1)
    }

    /// No item left over fits the room, and no swap of one or two items for a larger one fits.
    fn is_largest(&self, room: i64) -> bool {
        let ways = &self.search.model.kinds[self.kind].ways;
        for (number, way) in ways.iter().enumerate() {
            let left =
                self.search.left[way.item] - self.taken(number).min(self.search.left[way.item]);
            if left == 0 {
                continue;
            }
            if way.weight <= room {
                return false;
            }
            if !self.search.one_kind {
                continue;
            }
            for (place, &(a, count)) in self.taken.iter().enumerate() {
                // The largest item is placed here for good.
                let movable = count - u32::from(a == self.forced);
                if movable == 0 {
                    continue;
                }
                let one = ways[a].weight;
                if one < way.weight && way.weight <= one + room {
                    return false;
                }
                for &(b, other) in &self.taken[place..] {
                    let enough =
                        if a == b { movable >= 2 } else { other > u32::from(b == self.forced) };
                    let two = one + ways[b].weight;
                    if enough && two <= way.weight && way.weight <= two + room {
                        return false;
                    }
                }
            }
        }
        true
    }
}
