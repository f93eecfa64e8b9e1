//! Lower bounds in whole numbers.
//!
//! Every bound here has the form the core's checker knows: give each item a worth `y`, let `v` of a stock be the most worth one
//! board of it can hold (or more), and find the least money whose boards hold the worth of all items. `y` may be lengths (the
//! bound L1 of Martello and Toth, "Lower bounds and reduction procedures for the bin packing problem", Discrete Applied
//! Mathematics 28, 1990), the counts of parts longer than half a board or a dual feasible function of the lengths (Fekete and
//! Schepers, "New classes of fast lower bounds for bin packing problems", Mathematical Programming 91, 2001; from memory), or
//! the rounded duals of the linear programme; because `v` is worked out exactly for whatever `y` is given, no property of the
//! function has to be trusted.

use std::collections::BTreeMap;

use crate::knapsack::gcd;
use crate::model::Model;
use crate::price::Prices;

/// The most money steps tabulated.
const MOST_MONEY: i64 = 4_000_000;

/// What boards hold that cannot cost so much: less than any that can.
const NOTHING: i64 = i64::MIN / 2;

/// Kinds whose lengths alone are tried as a worth.
const MOST_KINDS: usize = 24;

/// A worth for every item and what boards hold of it.
#[derive(Debug, Clone)]
pub(crate) struct Worth {
    /// For each item.
    pub(crate) of_item: Vec<i64>,
    /// For each stock: no board of it holds more.
    pub(crate) of_stock: Vec<i64>,
    /// For each form of each stock: no board divided so holds more.
    pub(crate) of_form: Vec<Vec<i64>>,
    /// For each kind and capacity of a bin of a listed form: no such bin holds more.
    pub(crate) of_bin: BTreeMap<(usize, i64), i64>,
    /// All items together.
    pub(crate) needed: i64,
}

impl Worth {
    /// What the boards hold of `of_item` at most, when `left` of the items are wanted.
    pub(crate) fn priced(of_item: Vec<i64>, prices: &Prices<'_>, left: &[u32]) -> Self {
        let needed = of_item
            .iter()
            .zip(left)
            .map(|(&value, &left)| value.saturating_mul(i64::from(left)))
            .fold(0, i64::saturating_add);
        Self {
            of_item,
            of_stock: prices.uppers(),
            of_form: prices.form_uppers(),
            of_bin: prices.bin_uppers(),
            needed,
        }
    }
}

/// What there is to be had for money: (cost, worth of one, how many).
fn offers(model: &Model, worth: &Worth) -> Vec<(i64, i64, i64)> {
    let total = model.items.iter().map(|item| i64::from(item.demand)).sum();
    let mut offers: Vec<(i64, i64, i64)> = model
        .stocks
        .iter()
        .zip(&worth.of_stock)
        .map(|(stock, &most)| (stock.cost, most, stock.limit.map_or(total, i64::from).min(total)))
        .collect();
    offers.retain(|offer| offer.1 > 0 && offer.2 > 0);
    // Most worth for the money first; exact cross products, free ones before all others.
    offers.sort_by(|a, b| {
        let left = i128::from(b.1) * i128::from(a.0);
        let right = i128::from(a.1) * i128::from(b.0);
        left.cmp(&right).then(a.cmp(b))
    });
    offers
}

/// The least money, boards taken in part, rounded up. `most` when even everything is not enough.
pub(crate) fn cover_in_part(model: &Model, worth: &Worth, most: i64) -> i64 {
    let mut needed = i128::from(worth.needed);
    let mut money = 0_i128;
    for (cost, value, count) in offers(model, worth) {
        let all = i128::from(value) * i128::from(count);
        if all >= needed {
            let exact = needed * i128::from(cost);
            let value = i128::from(value);
            money += (exact + value - 1) / value;
            return i64::try_from(money).unwrap_or(most).min(most);
        }
        needed -= all;
        money += i128::from(cost) * i128::from(count);
    }
    if needed <= 0 { i64::try_from(money).unwrap_or(most).min(most) } else { most }
}

/// The least money for whole boards, at most `most`: at `most` it proves that nothing is cheaper than `most`.
pub(crate) fn cover(model: &Model, worth: &Worth, most: i64) -> i64 {
    let start = cover_in_part(model, worth, most);
    if start >= most {
        return most;
    }
    let offers = offers(model, worth);
    let step = offers.iter().fold(0, |step, offer| gcd(step, offer.0));
    if step == 0 {
        return start;
    }
    let rounded = (start + step - 1) / step * step;
    let cells = (most - 1) / step + 1;
    if cells > MOST_MONEY {
        return rounded.min(most);
    }
    let free: i64 = offers
        .iter()
        .filter(|offer| offer.0 == 0)
        .map(|offer| offer.1.saturating_mul(offer.2))
        .fold(0, i64::saturating_add);
    let paid = offers.into_iter().filter(|offer| offer.0 > 0);
    least_money(paid, free, worth.needed, rounded, most, step)
}

/// The least sum of prices, `from` at least, for which some choice of boards that costs exactly so much holds `needed` with the
/// `held` that is there anyway; `most` when there is none below it. Each offer is a price, a whole number of `step`s, what one
/// board holds, and how many there are.
pub(crate) fn least_money(
    offers: impl Iterator<Item = (i64, i64, i64)>,
    held: i64,
    needed: i64,
    from: i64,
    most: i64,
    step: i64,
) -> i64 {
    let cells = usize::try_from((most - 1) / step + 1).unwrap_or(1);
    // What the boards for each sum of prices hold at most.
    let mut reach = vec![NOTHING; cells];
    reach[0] = held;
    for (cost, value, count) in offers {
        let jump = usize::try_from(cost / step).unwrap_or(usize::MAX);
        let affordable = reach.len().checked_div(jump).unwrap_or(0);
        if count >= affordable as i64 {
            for at in jump..reach.len() {
                reach[at] = reach[at].max(reach[at - jump].saturating_add(value));
            }
            continue;
        }
        let mut left = count;
        let mut bundle = 1;
        while left > 0 {
            let take = bundle.min(left);
            left -= take;
            bundle *= 2;
            let jump = jump.saturating_mul(usize::try_from(take).unwrap_or(usize::MAX));
            for at in (jump..reach.len()).rev() {
                reach[at] = reach[at].max(reach[at - jump].saturating_add(value * take));
            }
        }
    }
    let enough = |at: &usize| *at as i64 * step >= from && reach[*at] >= needed;
    (0..cells).find(enough).map_or(most, |at| at as i64 * step)
}

/// Worths that often prove something without any linear programme: lengths, parts longer than a share of the
/// longest bin, and lengths rounded down in steps of a share (dual feasible functions).
pub(crate) fn simple_worths(model: &Model) -> Vec<Vec<i64>> {
    let mut weight = vec![0_i64; model.items.len()];
    for kind in model.kinds.iter().filter(|kind| !kind.out) {
        for way in &kind.ways {
            let old = weight[way.item];
            weight[way.item] = if old == 0 { way.weight } else { old.min(way.weight) };
        }
    }
    let longest = model
        .stocks
        .iter()
        .flat_map(|stock| stock.forms.iter())
        .flat_map(|form| form.bins.iter())
        .map(|bin| bin.cap)
        .max()
        .unwrap_or(1);
    let mut worths = vec![model.items.iter().map(|item| item.size).collect()];
    for parts in [2_i64, 3, 4, 5] {
        worths.push(
            weight
                .iter()
                .map(|&w| ((parts * w - 1) / longest).max(i64::from(parts * w > longest)))
                .collect(),
        );
    }
    // Where boards are ripped: the lengths of those parts alone that one kind of strip accepts.
    if model.kinds.len() > 1 {
        for kind in model.kinds.iter().filter(|k| !k.out && !k.ways.is_empty()).take(MOST_KINDS) {
            let mut worth = vec![0; model.items.len()];
            for way in &kind.ways {
                worth[way.item] = weight[way.item];
            }
            worths.push(worth);
        }
    }
    worths.sort();
    worths.dedup();
    worths
}

#[cfg(test)]
mod tests {
    use super::least_money;

    /// Boards for 5 that hold 5, and boards for 7 that hold 8; 16 are needed. By hand, the sums from 14 to 21 and what they hold at
    /// most: 14 = 7 + 7 holds 16, 15 = 5 + 5 + 5 only 15, 17 = 5 + 5 + 7 holds 18, 19 = 5 + 7 + 7 holds 21. 16 and 18 are no sums.
    #[test]
    fn a_bound_is_lifted_to_the_next_sum_of_prices_that_holds_enough() {
        let boards = [(5, 5, 100), (7, 8, 100)];
        let least = |from, most| least_money(boards.into_iter(), 0, 16, from, most, 1);
        assert_eq!(least(0, 100), 14);
        assert_eq!(least(14, 100), 14);
        assert_eq!(least(15, 100), 17);
        assert_eq!(least(18, 100), 19);
        // None below what is known already.
        assert_eq!(least(15, 17), 17);
        assert_eq!(least(15, 16), 16);
    }

    /// The same with one board for 7: 5 + 5 + 7 is the least that holds 16. With 8 there anyway, one board for 7 is; and prices may
    /// be counted in steps of all that divide them.
    #[test]
    fn limits_and_what_is_there_anyway_count() {
        let few = [(5, 5, 100), (7, 8, 1)];
        assert_eq!(least_money(few.into_iter(), 0, 16, 0, 100, 1), 17);
        assert_eq!(least_money(few.into_iter(), 8, 16, 0, 100, 1), 7);
        assert_eq!(least_money([(50, 5, 9), (70, 8, 1)].into_iter(), 0, 16, 0, 1000, 10), 170);
    }
}
