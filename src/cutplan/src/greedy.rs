//! Plans made quickly: fill one board after another as well as possible, or place one part after another.
//!
//! The first in the spirit of Gupta and Ho, "A new heuristic algorithm for the one-dimensional bin-packing problem", Production
//! Planning and Control 10, 1999, with a value correction as Mukhacheva and others have it; the second is first fit and best fit
//! by falling length (Johnson, Demers, Ullman, Garey and Graham, "Worst-case performance bounds for simple one-dimensional packing
//! algorithms", SIAM Journal on Computing 3, 1974; all from memory).

use std::rc::Rc;

use crate::budget::Meter;
use crate::columns::{Columns, Rest};
use crate::model::{Form, Model, Pattern};
use crate::price::Prices;

/// A finished choice of patterns; parts they do not cover are left out.
pub(crate) type Patterns = Vec<Rc<Pattern>>;

/// Board after board: each time the board whose fullest fill costs least for its worth. `boost` makes large
/// parts worth more than their size, in percent at the largest.
pub(crate) fn board_by_board(
    columns: &Columns<'_>,
    mut rest: Rest,
    boost: i64,
    meter: &mut Meter<'_>,
) -> Option<Patterns> {
    let model = columns.model;
    let largest = model.items.iter().map(|item| item.size).max().unwrap_or(1).max(1);
    let values: Vec<i64> = model
        .items
        .iter()
        .map(|item| {
            let extra = i128::from(item.size) * i128::from(item.size) * i128::from(boost)
                / i128::from(largest)
                / 100;
            (item.size + i64::try_from(extra).unwrap_or(0)).saturating_mul(item.rank.min(1 << 12))
        })
        .collect();
    let limits = rest.limits.clone();
    let mut made: Patterns = Vec::new();
    while !rest.is_done() {
        let prices = Prices::new(model, &columns.capacities, &values, &rest.left, meter);
        if !meter.going() {
            return None;
        }
        let mut best: Option<(bool, i64, i64, Pattern)> = None;
        for stock in 0..model.stocks.len() {
            if rest.limits[stock] == Some(0) || prices.value(stock) == 0 {
                continue;
            }
            let Some(pattern) = prices.pattern_within(stock, &rest.left) else {
                continue;
            };
            let mut left = rest.left.clone();
            let pattern = model.take(&pattern, &mut left);
            let last = left.iter().all(|&count| count == 0);
            let value: i64 = pattern
                .counts
                .iter()
                .map(|&(item, count)| values[item].saturating_mul(i64::from(count)))
                .fold(0, i64::saturating_add);
            let cost = model.stocks[stock].cost;
            let better = match &best {
                None => true,
                Some((old_last, old_cost, old_value, _)) if last && *old_last => {
                    (cost, old_value) < (*old_cost, &value)
                }
                Some((_, old_cost, old_value, _)) => {
                    let new = i128::from(cost) * i128::from(*old_value);
                    let old = i128::from(*old_cost) * i128::from(value);
                    (new, old_value) < (old, &value)
                }
            };
            if better && value > 0 {
                best = Some((last, cost, value, pattern));
            }
        }
        let Some((_, _, _, pattern)) = best else {
            break;
        };
        let pattern = Rc::new(pattern);
        // The same board again while it still fits saves the pricing.
        while rest.has(&pattern) && !rest.is_done() && !pattern.counts.is_empty() {
            rest.take(&pattern);
            made.push(Rc::clone(&pattern));
        }
    }
    Some(downsize(model, &limits, made))
}

/// A board being filled part by part.
struct Open {
    stock: usize,
    form: Rc<Form>,
    room: Vec<i64>,
    fill: Vec<Vec<(usize, u32)>>,
}

/// Part after part, largest first, each into the open bin where it leaves least (best fit) or the first that has room
/// (first fit); new boards are of the stock `favourite` where that can hold the part.
pub(crate) fn part_by_part(
    model: &Model,
    rest: &Rest,
    favourite: usize,
    best_fit: bool,
) -> Patterns {
    let mut order: Vec<usize> = (0..model.items.len()).collect();
    order.sort_by_key(|&item| {
        let item_ref = &model.items[item];
        (std::cmp::Reverse((item_ref.rank, item_ref.size)), item)
    });
    let mut limits = rest.limits.clone();
    let mut open: Vec<Open> = Vec::new();
    // Boards that may still have room for something.
    let mut active: Vec<usize> = Vec::new();
    let way_of: Vec<Vec<Option<usize>>> = model
        .kinds
        .iter()
        .map(|kind| {
            let mut table = vec![None; model.items.len()];
            for (number, way) in kind.ways.iter().enumerate() {
                table[way.item] = Some(number);
            }
            table
        })
        .collect();
    for item in order {
        let mut left = rest.left[item];
        while left > 0 {
            let mut found: Option<(i64, usize, usize, usize)> = None;
            'boards: for &board in &active {
                let cut = &open[board];
                for (at, (bin, &room)) in cut.form.bins.iter().zip(&cut.room).enumerate() {
                    let Some(number) = way_of[bin.kind][item] else {
                        continue;
                    };
                    let spare = room - model.kinds[bin.kind].ways[number].weight;
                    if spare >= 0 && found.is_none_or(|old| spare < old.0) {
                        found = Some((spare, board, at, number));
                        if !best_fit {
                            break 'boards;
                        }
                    }
                }
            }
            if let Some((spare, board, at, way)) = found {
                let cut = &mut open[board];
                cut.room[at] = spare;
                match cut.fill[at].iter_mut().find(|entry| entry.0 == way) {
                    Some(entry) => entry.1 += 1,
                    None => cut.fill[at].push((way, 1)),
                }
                let full = cut.form.bins.iter().zip(&cut.room).all(|(bin, &room)| {
                    let lightest = model.kinds[bin.kind].ways.last();
                    lightest.is_none_or(|way| way.weight > room)
                });
                if full {
                    active.retain(|&other| other != board);
                }
                left -= 1;
                continue;
            }
            let Some((stock, form)) = choose_board(model, &limits, item, favourite) else {
                break;
            };
            if let Some(limit) = &mut limits[stock] {
                *limit -= 1;
            }
            active.push(open.len());
            open.push(Open {
                stock,
                room: form.bins.iter().map(|bin| bin.cap).collect(),
                fill: vec![Vec::new(); form.bins.len()],
                form,
            });
        }
    }
    let made = open
        .into_iter()
        .map(|board| Rc::new(model.pattern(board.stock, board.form, board.fill)))
        .collect();
    downsize(model, &rest.limits, made)
}

/// Paid, not the favourite, cost: the least comes first.
type Rank = (bool, bool, i64);

/// A board that can hold the part: a free one, the favourite, else the cheapest.
fn choose_board(
    model: &Model,
    limits: &[Option<u32>],
    item: usize,
    favourite: usize,
) -> Option<(usize, Rc<Form>)> {
    let mut found: Option<(Rank, usize, Rc<Form>)> = None;
    for (number, stock) in model.stocks.iter().enumerate() {
        if limits[number] == Some(0) {
            continue;
        }
        let form = stock
            .forms
            .iter()
            .filter_map(|form| {
                let bins = form.bins.iter().filter(|bin| {
                    let ways = &model.kinds[bin.kind].ways;
                    ways.iter().any(|way| way.item == item && way.weight <= bin.cap)
                });
                let count = bins.count();
                (count > 0).then_some((count, form))
            })
            .max_by_key(|entry| entry.0);
        if let Some((_, form)) = form {
            let key = (stock.cost > 0, number != favourite, stock.cost);
            if found.as_ref().is_none_or(|old| key < old.0) {
                found = Some((key, number, Rc::clone(form)));
            }
        }
    }
    found.map(|entry| (entry.1, entry.2))
}

/// Replaces every board by the cheapest that holds the same parts, within the `limits` that stood before any of them
/// was taken.
pub(crate) fn downsize(model: &Model, limits: &[Option<u32>], mut made: Patterns) -> Patterns {
    made.retain(|pattern| !pattern.counts.is_empty());
    let mut used = vec![0_u32; model.stocks.len()];
    for pattern in &made {
        used[pattern.stock] += 1;
    }
    let mut cheap: Vec<usize> = (0..model.stocks.len()).collect();
    cheap.sort_by_key(|&stock| (model.stocks[stock].cost, stock));
    for slot in &mut made {
        for &stock in &cheap {
            if model.stocks[stock].cost >= model.stocks[slot.stock].cost {
                break;
            }
            if limits[stock].is_some_and(|limit| used[stock] >= limit) {
                continue;
            }
            if let Some(pattern) = fit_into(model, stock, &slot.counts) {
                used[slot.stock] -= 1;
                used[stock] += 1;
                *slot = Rc::new(pattern);
                break;
            }
        }
    }
    made
}

/// The parts on one board of that stock, if first fit finds room for all.
pub(crate) fn fit_into(model: &Model, stock: usize, counts: &[(usize, u32)]) -> Option<Pattern> {
    for form in &model.stocks[stock].forms {
        let mut left: Vec<(usize, u32)> = counts.to_vec();
        let mut fill = Vec::with_capacity(form.bins.len());
        for bin in &form.bins {
            let mut room = bin.cap;
            let mut ways = Vec::new();
            for (number, way) in model.kinds[bin.kind].ways.iter().enumerate() {
                let Some(entry) = left.iter_mut().find(|entry| entry.0 == way.item) else {
                    continue;
                };
                let fit = u32::try_from(room / way.weight).unwrap_or(u32::MAX);
                let take = entry.1.min(fit);
                if take > 0 {
                    entry.1 -= take;
                    room -= way.weight * i64::from(take);
                    ways.push((number, take));
                }
            }
            fill.push(ways);
        }
        if left.iter().all(|entry| entry.1 == 0) {
            return Some(model.pattern(stock, Rc::clone(form), fill));
        }
    }
    None
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::model::{Bin, Item, Kind, Make, Stock, Way};

    /// Two items, of 10 and of 12 with their kerfs, and boards that hold 10 for 5, 20 for 9 and 15 for 7.
    fn yard() -> Model {
        let item = |size| Item { demand: 9, skip: 100, rank: 0, size, parts: vec![] };
        let way = |item, weight| Way { item, weight, turned: false };
        let stock = |number, cap, cost| {
            let bin = Bin { kind: 0, cap, piece: 0, layer: 0, segment: 0 };
            let form = Rc::new(Form { bins: vec![bin], make: Make::Crosscut });
            Stock { number, cost, limit: None, forms: vec![form], nests: vec![], out: None }
        };
        Model {
            items: vec![item(10), item(12)],
            kinds: vec![Kind { ways: vec![way(1, 12), way(0, 10)], out: false }],
            stocks: vec![stock(0, 10, 5), stock(1, 20, 9), stock(2, 15, 7)],
            lossy: false,
        }
    }

    /// The boards of a plan with these, each with items and how many, made cheaper.
    fn made(limits: &[Option<u32>], boards: &[(usize, &[(usize, u32)])]) -> Vec<usize> {
        let model = yard();
        let on = |&(stock, counts): &(usize, &[(usize, u32)])| {
            Rc::new(fit_into(&model, stock, counts).expect("there is room"))
        };
        let made = downsize(&model, limits, boards.iter().map(on).collect());
        made.iter().map(|pattern| pattern.stock).collect()
    }

    /// By hand: what holds the same for less, never for more.
    #[test]
    fn a_board_gives_way_to_the_cheapest_that_holds_its_parts() {
        let any = [None, None, None];
        assert_eq!(made(&any, &[(1, &[(0, 1)])]), [0]);
        assert_eq!(made(&any, &[(1, &[(1, 1)])]), [2], "the cheapest is too short");
        assert_eq!(made(&any, &[(2, &[(1, 1)])]), [2], "the one that would do is dearer");
        assert_eq!(made(&any, &[(1, &[(0, 2)])]), [1], "two have no room elsewhere");
        assert_eq!(made(&any, &[(0, &[(0, 1)])]), [0]);
    }

    #[test]
    fn a_board_gives_way_to_none_that_there_is_not() {
        assert_eq!(made(&[Some(0), None, None], &[(1, &[(0, 1)])]), [2]);
        assert_eq!(made(&[Some(1), None, None], &[(1, &[(0, 1)]), (1, &[(0, 1)])]), [0, 2]);
        assert_eq!(
            made(&[Some(1), Some(2), Some(1)], &[(1, &[(0, 1)]), (2, &[(0, 1)]), (1, &[(0, 1)])]),
            [0, 2, 1],
            "one board of each cheaper kind"
        );
    }
}
