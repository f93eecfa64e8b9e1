//! The most value that can be cut from one board of each kind, exactly, in whole numbers.
//!
//! A knapsack of parts for each bin (Gilmore and Gomory, "A linear programming approach to the cutting stock problem, part II",
//! Operations Research 11, 1963), and for a board that is ripped a knapsack of strips whose values are such knapsacks (the
//! same, "Multistage cutting stock problems of two and more dimensions", Operations Research 13, 1965; from memory).

use std::collections::BTreeMap;
use std::rc::Rc;

use crate::budget::Meter;
use crate::knapsack::{Fill, Fills, Offer, fill, offers};
use crate::model::{Form, Model, Nest, Pattern};

/// Forms of one board that give a pattern in one round of pricing, at most.
const MOST_FORMS_PRICED: usize = 6;

/// The best pattern of each board for given values.
pub(crate) struct Prices<'m> {
    model: &'m Model,
    values: Vec<i64>,
    fills: Vec<Fills>,
    /// For each stock: value reached, upper bound, and where it was reached.
    best: Vec<(i64, i64, Place)>,
}

#[derive(Debug, Clone, PartialEq, Eq)]
enum Place {
    Nothing,
    Form(usize),
    /// Nest, and its pieces as (room, choice).
    Nest(usize, Vec<(usize, usize)>),
}

/// Capacities of each kind that occur anywhere, ascending.
pub(crate) fn capacities(model: &Model) -> Vec<Vec<i64>> {
    let mut all = vec![Vec::new(); model.kinds.len()];
    for stock in &model.stocks {
        let listed = stock.forms.iter().flat_map(|form| form.bins.iter());
        let nested = stock.nests.iter().flat_map(|nest| nest.choices.iter());
        for bin in listed.chain(nested.flat_map(|choice| choice.bins.iter())) {
            all[bin.kind].push(bin.cap);
        }
    }
    for list in &mut all {
        list.sort_unstable();
        list.dedup();
    }
    all
}

impl<'m> Prices<'m> {
    /// Works out the best fill of every bin when items are worth `values` and only `left` of each may be used
    /// in one bin.
    pub(crate) fn new(
        model: &'m Model,
        capacities: &[Vec<i64>],
        values: &[i64],
        left: &[u32],
        meter: &mut Meter<'_>,
    ) -> Self {
        let mut fills = Vec::with_capacity(model.kinds.len());
        for (kind, caps) in model.kinds.iter().zip(capacities) {
            let largest = caps.last().copied().unwrap_or(0);
            let offers = offers(&kind.ways, values, left, largest);
            let (found, steps) = fill(&offers, caps);
            meter.tick(steps);
            fills.push(found);
        }
        let mut prices = Self { model, values: values.to_vec(), fills, best: Vec::new() };
        for (stock, entry) in model.stocks.iter().enumerate() {
            let bins: usize = entry.forms.iter().map(|form| form.bins.len()).sum();
            let (best, steps) = prices.best_of(stock);
            meter.tick(steps + bins as u64);
            prices.best.push(best);
        }
        prices
    }

    fn form_value(&self, form: &Form) -> (i64, i64) {
        form.bins.iter().fold((0, 0), |sum, bin| {
            let (value, upper) = self.fills[bin.kind].value(bin.cap);
            (sum.0 + value, sum.1 + upper)
        })
    }

    /// Value reached, upper bound and place, and the steps that it took.
    fn best_of(&self, stock: usize) -> ((i64, i64, Place), u64) {
        let stock = &self.model.stocks[stock];
        let mut steps = 0;
        let mut best = (0, 0, Place::Nothing);
        for (at, form) in stock.forms.iter().enumerate() {
            let (value, upper) = self.form_value(form);
            best.1 = best.1.max(upper);
            if value > best.0 {
                (best.0, best.2) = (value, Place::Form(at));
            }
        }
        for (at, nest) in stock.nests.iter().enumerate() {
            let (value, upper, pieces, taken) = self.nest_value(nest);
            steps += taken;
            best.1 = best.1.max(upper);
            if value > best.0 {
                (best.0, best.2) = (value, Place::Nest(at, pieces));
            }
        }
        (best, steps)
    }

    fn nest_value(&self, nest: &Nest) -> (i64, i64, Vec<(usize, usize)>, u64) {
        let largest = nest.rooms.iter().copied().max().unwrap_or(0);
        let outer = |upper: bool| -> Vec<Offer> {
            let value = |choice: &crate::model::Choice| {
                choice.bins.iter().fold(0, |sum, bin| {
                    let found = self.fills[bin.kind].value(bin.cap);
                    sum + if upper { found.1 } else { found.0 }
                })
            };
            nest.choices
                .iter()
                .enumerate()
                .map(|(way, choice)| Offer {
                    way,
                    weight: choice.weight,
                    value: value(choice),
                    count: u32::try_from(largest / choice.weight).unwrap_or(u32::MAX),
                })
                .filter(|offer| offer.value > 0 && offer.count > 0)
                .collect()
        };
        let mut rooms = nest.rooms.clone();
        rooms.sort_unstable();
        rooms.dedup();
        let (found, steps) = fill(&outer(false), &rooms);
        let (above, more) = fill(&outer(true), &rooms);
        let mut sums = (0, 0);
        let mut pieces = Vec::new();
        for (room, &cap) in nest.rooms.iter().enumerate() {
            sums.0 += found.value(cap).0;
            sums.1 += above.value(cap).1;
            for (choice, count) in found.fill(cap) {
                pieces.extend(std::iter::repeat_n((room, choice), count as usize));
            }
        }
        (sums.0, sums.1, pieces, steps + more)
    }

    /// For each stock: no board of it can hold more value.
    pub(crate) fn uppers(&self) -> Vec<i64> {
        self.best.iter().map(|best| best.1).collect()
    }

    /// For each listed form of each stock: no board divided so can hold more value.
    pub(crate) fn form_uppers(&self) -> Vec<Vec<i64>> {
        self.model
            .stocks
            .iter()
            .map(|stock| stock.forms.iter().map(|form| self.form_value(form).1).collect())
            .collect()
    }

    /// For each kind and capacity of a bin of a listed form: no such bin can hold more value.
    pub(crate) fn bin_uppers(&self) -> BTreeMap<(usize, i64), i64> {
        let forms = self.model.stocks.iter().flat_map(|stock| stock.forms.iter());
        forms
            .flat_map(|form| form.bins.iter())
            .map(|bin| ((bin.kind, bin.cap), self.fills[bin.kind].value(bin.cap).1))
            .collect()
    }

    /// The value reached on that stock.
    pub(crate) fn value(&self, stock: usize) -> i64 {
        self.best[stock].0
    }

    /// The pattern behind the value. Each of its bins alone uses no more than was left, all together may.
    fn pattern(&self, stock: usize) -> Option<Pattern> {
        let form = match &self.best[stock].2 {
            Place::Nothing => return None,
            Place::Form(at) => Rc::clone(&self.model.stocks[stock].forms[*at]),
            Place::Nest(at, pieces) => Rc::new(self.model.stocks[stock].nests[*at].form(pieces)),
        };
        let fills: Vec<Fill> =
            form.bins.iter().map(|bin| self.fills[bin.kind].fill(bin.cap)).collect();
        Some(self.model.pattern(stock, form, fills))
    }

    /// A good pattern that uses no more than `left`: the one behind the value, with its bins filled again one after
    /// another where together they would use too much.
    pub(crate) fn pattern_within(&self, stock: usize, left: &[u32]) -> Option<Pattern> {
        self.pattern(stock).map(|pattern| self.within(pattern, left))
    }

    /// Such patterns of several forms of the stock, of those that promise more than `at_least`, best promise first.
    pub(crate) fn patterns_within(
        &self,
        stock: usize,
        left: &[u32],
        at_least: i64,
    ) -> Vec<Pattern> {
        let mut promising: Vec<(i64, usize)> = Vec::new();
        for (at, form) in self.model.stocks[stock].forms.iter().enumerate() {
            let value = self.form_value(form).0;
            if value > at_least {
                promising.push((value, at));
            }
        }
        promising.sort_by_key(|&(value, at)| (std::cmp::Reverse(value), at));
        let mut found: Vec<Pattern> = Vec::new();
        if let Place::Nest(..) = self.best[stock].2 {
            found.extend(self.pattern_within(stock, left));
        }
        for (_, at) in promising.into_iter().take(MOST_FORMS_PRICED) {
            let form = Rc::clone(&self.model.stocks[stock].forms[at]);
            let fills = form.bins.iter().map(|bin| self.fills[bin.kind].fill(bin.cap)).collect();
            found.push(self.within(self.model.pattern(stock, form, fills), left));
        }
        found
    }

    /// What the pattern's parts are worth together.
    pub(crate) fn worth_of(&self, pattern: &Pattern) -> i64 {
        let worths = pattern.counts.iter().map(|&(item, n)| self.values[item] * i64::from(n));
        worths.sum()
    }

    fn within(&self, pattern: Pattern, left: &[u32]) -> Pattern {
        if pattern.counts.iter().all(|&(item, count)| count <= left[item]) {
            return pattern;
        }
        let mut left = left.to_vec();
        let mut fills = Vec::with_capacity(pattern.form.bins.len());
        for bin in &pattern.form.bins {
            let ways = &self.model.kinds[bin.kind].ways;
            let (found, _) = fill(&offers(ways, &self.values, &left, bin.cap), &[bin.cap]);
            let best = found.fill(bin.cap);
            for &(way, count) in &best {
                left[ways[way].item] -= count;
            }
            fills.push(best);
        }
        self.model.pattern(pattern.stock, pattern.form, fills)
    }
}

#[cfg(test)]
mod tests {
    use std::ops::ControlFlow;

    use super::*;
    use crate::budget::Progress;
    use crate::model::{Bin, Choice, Item, Kind, PieceMake, Stock, StripMake, Way};

    /// A board that is ripped into strips: one 12 wide that holds two of the first item, one 8 wide that holds one of the
    /// second; worth 6 and 5 each. By hand: on 20 a strip of each, 2 x 6 + 5 = 17; on 8 beside it one more, 22; on 11 a
    /// narrow one alone, 5; on 7 none; on 24 two wide ones, each as if it were alone, 24.
    #[test]
    fn a_ripped_board_is_worth_the_strips_that_fit_and_all_they_hold() {
        let value = |rooms: &[i64]| {
            let item = Item { demand: 2, skip: 100, rank: 0, size: 10, parts: vec![] };
            let kind =
                |item| Kind { ways: vec![Way { item, weight: 10, turned: false }], out: false };
            let strip = |kind, width, cap| Choice {
                weight: width,
                bins: vec![Bin { kind, cap, piece: 0, layer: 0, segment: 0 }],
                piece: PieceMake::Strip(StripMake { width, layers: vec![24], resawn: false }),
                most: 2,
            };
            let nest =
                Nest { rooms: rooms.to_vec(), choices: vec![strip(0, 12, 20), strip(1, 8, 10)] };
            let stock = Stock {
                number: 0,
                cost: 9,
                limit: None,
                forms: vec![],
                nests: vec![nest],
                out: None,
            };
            let model = Model {
                items: vec![item.clone(), item],
                kinds: vec![kind(0), kind(1)],
                stocks: vec![stock],
                lossy: false,
            };
            let mut on = |_: &Progress<'_>| ControlFlow::Continue(());
            let mut meter = Meter::new(1_000_000, &mut on);
            let prices = Prices::new(&model, &capacities(&model), &[6, 5], &[2, 2], &mut meter);
            let counts = prices.pattern(0).map_or_else(Vec::new, |pattern| pattern.counts);
            (prices.value(0), prices.uppers()[0], counts)
        };
        assert_eq!(value(&[20]), (17, 17, vec![(0, 2), (1, 1)]));
        assert_eq!(value(&[20, 8]), (22, 22, vec![(0, 2), (1, 2)]));
        assert_eq!(value(&[11]), (5, 5, vec![(1, 1)]));
        assert_eq!(value(&[7]), (0, 0, vec![]));
        assert_eq!(value(&[24]).0, 24);
    }
}
