//! Lower bounds that can be worked out again from the job alone.
//!
//! Give every part a *worth*, any whole number. Let `v` of a board be the most worth that its own layout rules
//! let anyone cut from one such board. A plan that cuts all parts buys boards whose `v` add up to at least
//! the worth of all parts together. So the cheapest set of boards, within their limits and with all
//! scraps thrown in, whose `v` add up to enough, costs no more than the cheapest plan.
//!
//! With worth = length this is the plain length bound. With worth = the dual values of the cutting-stock
//! linear programme, rounded to whole numbers, it is the bound of Gilmore and Gomory (Operations Research 9,
//! 1961; 11, 1963), made safe: nothing depends on how the worths were found. Pricing whole boards on top
//! rounds it up to a sum that prices can make, which may exceed the linear programme's own bound.

use super::knapsack::{Thing, gcd, most_value};
use super::plan::run;
use super::problem::{CrossSize, Job, Part, RipRules, StockView, Units};

/// The most money steps the checker tabulates.
const LARGEST_MONEY_TABLE: i64 = 1 << 24;

/// How a lower bound is known.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Claim {
    /// By worths, one per part of [`Certificate::parts`]; the checker works the bound out again.
    Worth(Vec<i64>),
    /// A search went through every cheaper choice of boards and found that none works. The checker cannot
    /// repeat it and says so; only the search itself vouches for it.
    SearchFinished,
}

/// A lower bound on what boards for some of the parts cost.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Certificate {
    /// The parts it speaks of, by their place in [`Job::parts`].
    pub parts: Vec<usize>,
    /// Nobody can cut these parts for less, in cents.
    pub bound_cents: i64,
    /// How this is known.
    pub claim: Claim,
}

/// Why a certificate was not accepted.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum CertificateFault {
    /// It names no part of the job, a part twice, or not one worth per part.
    Malformed,
    /// The worths do not prove that much.
    NotProved,
    /// Working it out again would take too large a table.
    TooLargeToCheck,
    /// It only says that a search finished.
    OnlyTheSearchKnows,
}

/// Works the bound out again.
///
/// # Errors
/// [`CertificateFault`] when it cannot be confirmed.
pub fn check_certificate(job: &Job, certificate: &Certificate) -> Result<(), CertificateFault> {
    let mut seen = vec![false; job.parts.len()];
    for &part in &certificate.parts {
        match seen.get_mut(part) {
            Some(before) if !*before => *before = true,
            _ => return Err(CertificateFault::Malformed),
        }
    }
    let Claim::Worth(values) = &certificate.claim else {
        return Err(CertificateFault::OnlyTheSearchKnows);
    };
    if values.len() != certificate.parts.len() {
        return Err(CertificateFault::Malformed);
    }
    let mut worth = vec![0_i64; job.parts.len()];
    let mut needed = 0_i64;
    for (&part, &value) in certificate.parts.iter().zip(values) {
        let quantity = job.parts.get(part).map_or(0, |p| i64::from(p.quantity));
        needed = value
            .max(0)
            .checked_mul(quantity)
            .and_then(|all| needed.checked_add(all))
            .ok_or(CertificateFault::TooLargeToCheck)?;
        if let Some(cell) = worth.get_mut(part) {
            *cell = value.max(0);
        }
    }
    let offers = offers(job, &worth).ok_or(CertificateFault::TooLargeToCheck)?;
    // Every board cut holds a part, so nobody needs more boards of a kind than there are parts.
    let pieces = certificate
        .parts
        .iter()
        .filter_map(|&part| job.parts.get(part))
        .map(|part| u64::from(part.quantity))
        .sum();
    let reach = most_worth_below(&offers, certificate.bound_cents, pieces)
        .ok_or(CertificateFault::TooLargeToCheck)?;
    if certificate.bound_cents <= 0 || reach < needed {
        Ok(())
    } else {
        Err(CertificateFault::NotProved)
    }
}

/// One board kind as the bound sees it.
#[derive(Debug, Clone, Copy)]
struct Offer {
    price: i64,
    limit: Option<u32>,
    most: i64,
}

fn offers(job: &Job, worth: &[i64]) -> Option<Vec<Offer>> {
    job.stock()
        .map(|view| {
            Some(Offer {
                price: view.price_cents,
                limit: view.limit,
                most: most_of_stock(job, worth, view)?,
            })
        })
        .collect()
}

/// The most worth for less than `bound` cents, all scraps included.
fn most_worth_below(offers: &[Offer], bound: i64, pieces: u64) -> Option<i64> {
    let mut free = 0_i64;
    let mut things = Vec::new();
    let money = bound.checked_sub(1)?;
    if money < 0 {
        return Some(0);
    }
    for offer in offers.iter().filter(|offer| offer.most > 0) {
        let count = offer.limit.map_or(pieces, u64::from).min(pieces);
        if offer.price <= 0 {
            let count = i64::try_from(count).ok()?;
            free = free.checked_add(offer.most.checked_mul(count)?)?;
        } else {
            things.push(Thing { weight: offer.price, value: offer.most, count });
        }
    }
    let step = things.iter().fold(0, |step, thing| gcd(step, thing.weight)).max(1);
    let bought = if money / step < LARGEST_MONEY_TABLE / 8 {
        most_value(&things, &[money]).and_then(|found| found.first().copied())
    } else {
        None
    };
    match bought {
        Some(bought) => free.checked_add(bought),
        None => free.checked_add(most_with_fractions(&mut things, money)?),
    }
}

/// An upper bound on the worth for that money: the dearest worth per cent first, the last board in part
/// (Dantzig, Operations Research 5, 1957; from memory), rounded up.
fn most_with_fractions(things: &mut [Thing], money: i64) -> Option<i64> {
    crate::order::sort_by(things, |a, b| {
        let left = i128::from(a.value) * i128::from(b.weight);
        let right = i128::from(b.value) * i128::from(a.weight);
        right.cmp(&left)
    });
    let mut left = money;
    let mut worth = 0_i128;
    for thing in things {
        let afford = u64::try_from(left / thing.weight).ok()?;
        if thing.count > afford {
            let exact = i128::from(thing.value) * i128::from(left);
            let weight = i128::from(thing.weight);
            worth += (exact + weight - 1) / weight;
            return i64::try_from(worth).ok();
        }
        let count = i64::try_from(thing.count).ok()?;
        worth += i128::from(thing.value) * i128::from(count);
        left -= thing.weight.checked_mul(count)?;
    }
    i64::try_from(worth).ok()
}

/// The lowest total of whole boards' prices, within the limits, that is at least `at_least` cents. `None` if no
/// choice reaches it, or the table would be too large. `prices` are (cents, limit).
#[must_use]
pub fn next_attainable_cost(prices: &[(i64, Option<u32>)], at_least: i64) -> Option<i64> {
    if at_least <= 0 {
        return Some(0);
    }
    let paid: Vec<_> = prices.iter().filter(|price| price.0 > 0).collect();
    let step = paid.iter().fold(0, |step, price| gcd(step, price.0));
    if step == 0 {
        return None;
    }
    let dearest = paid.iter().map(|price| price.0).max().unwrap_or(0);
    let cells = (at_least.checked_add(dearest)?) / step + 1;
    if cells > LARGEST_MONEY_TABLE {
        return None;
    }
    // For each sum: the fewest boards of the present price needed to make it, or none.
    let mut reached = vec![false; usize::try_from(cells).ok()?];
    *reached.first_mut()? = true;
    for &&(price, limit) in &paid {
        let jump = usize::try_from(price / step).ok()?;
        let mut count = vec![0_u32; reached.len()];
        for at in jump..reached.len() {
            let used = count.get(at - jump)? + 1;
            if !*reached.get(at)? && *reached.get(at - jump)? && limit.is_none_or(|l| used <= l) {
                *reached.get_mut(at)? = true;
                *count.get_mut(at)? = used;
            }
        }
    }
    let from = usize::try_from((at_least + step - 1) / step).ok()?;
    let found = reached.iter().skip(from).position(|&yes| yes)?;
    i64::try_from(from + found).ok()?.checked_mul(step)
}

/// A way to lay a part: (part, along, across, thickness).
struct Way<'a> {
    part: &'a Part,
    worth: i64,
    along: Units,
    across: Units,
    thick: Units,
}

/// The most worth that can be cut from one board.
fn most_of_stock(job: &Job, worth: &[i64], view: StockView<'_>) -> Option<i64> {
    let kerf = job.saw.kerf;
    let rooms: Vec<Units> = view.segments(kerf).iter().map(|(from, to)| to - from + kerf).collect();
    let own: Vec<Thing> = job
        .parts
        .iter()
        .zip(worth)
        .filter(|(part, _)| part.section == view.section)
        .map(|(part, &value)| Thing {
            weight: part.length + kerf,
            value,
            count: u64::from(part.quantity),
        })
        .collect();
    let crosscut = sum_over(&own, &rooms)?;
    let from = job.section(view.section)?;
    let (Some(rip), Some(size)) = (&job.saw.rip, from.size) else {
        return Some(crosscut);
    };
    let mut ways = Vec::new();
    for (part, &value) in job.parts.iter().zip(worth) {
        let Some(section) = job.section(&part.section).filter(|s| s.wood == from.wood) else {
            continue;
        };
        let Some(part_size) = section.size.filter(|_| value > 0) else {
            continue;
        };
        for turned in [false, true] {
            // A square part laid turned is the same part.
            if !turned || (part.grain_free && part.length != part_size.width) {
                ways.push(Way {
                    part,
                    worth: value,
                    along: run(job, part, turned),
                    across: if turned { part.length } else { part_size.width },
                    thick: part_size.thickness,
                });
            }
        }
    }
    let long_enough = view.length >= rip.least_length;
    let unsawn = RipRules { resaw: None, ..rip.clone() };
    let whole_rules = if long_enough { rip } else { &unsawn };
    let whole = strip_worth(&ways, whole_rules, size, size.width, kerf, &rooms, false)?;
    let ripped = if long_enough { most_ripped(&ways, rip, size, kerf, &rooms)? } else { 0 };
    let blocks =
        if rip.crosscut_first { most_in_blocks(&ways, rip, size, kerf, &rooms)? } else { 0 };
    Some(crosscut.max(whole).max(ripped).max(blocks))
}

fn sum_over(things: &[Thing], rooms: &[Units]) -> Option<i64> {
    most_value(things, rooms)?.iter().try_fold(0_i64, |sum, &value| sum.checked_add(value))
}

fn distinct(values: impl Iterator<Item = Units>) -> Vec<Units> {
    let mut all: Vec<Units> = values.collect();
    all.sort_unstable();
    all.dedup();
    all
}

fn quantity<'a>(ways: impl Iterator<Item = &'a Way<'a>>) -> u64 {
    ways.map(|way| u64::from(way.part.quantity)).sum()
}

/// The most worth of one strip of that width.
fn strip_worth(
    ways: &[Way<'_>],
    rip: &RipRules,
    size: CrossSize,
    width: Units,
    kerf: Units,
    rooms: &[Units],
    ripped: bool,
) -> Option<i64> {
    let layer = |thick: Units, resawn: bool| {
        let things: Vec<Thing> = ways
            .iter()
            .filter(|way| way.across == width && way.thick == thick)
            .filter(|way| (!ripped || way.part.may_rip) && (!resawn || way.part.may_resaw))
            .map(|way| Thing {
                weight: way.along + kerf,
                value: way.worth,
                count: u64::from(way.part.quantity),
            })
            .collect();
        let count = things.iter().map(|thing| thing.count).sum::<u64>();
        sum_over(&things, rooms).map(|worth| (worth, count))
    };
    let (plain, _) = layer(size.thickness, false)?;
    let Some(resaw) = &rip.resaw else {
        return Some(plain);
    };
    if resaw.greatest_width.is_some_and(|most| width > most) {
        return Some(plain);
    }
    let mut layers = Vec::new();
    for thick in distinct(ways.iter().map(|way| way.thick)) {
        if thick >= resaw.least_thickness {
            // A layer without a part is worth nothing, so no more layers than parts count.
            let (value, count) = layer(thick, true)?;
            layers.push(Thing { weight: thick + resaw.kerf, value, count });
        }
    }
    let room = size.thickness - resaw.near_face - resaw.far_face + resaw.kerf;
    Some(plain.max(sum_over(&layers, &[room])?))
}

fn most_ripped(
    ways: &[Way<'_>],
    rip: &RipRules,
    size: CrossSize,
    kerf: Units,
    rooms: &[Units],
) -> Option<i64> {
    let mut strips = Vec::new();
    for width in distinct(ways.iter().map(|way| way.across)) {
        if width >= rip.least_width && width <= size.width {
            strips.push(Thing {
                weight: width + rip.kerf,
                value: strip_worth(ways, rip, size, width, kerf, rooms, true)?,
                count: quantity(ways.iter().filter(|w| w.across == width && w.part.may_rip)),
            });
        }
    }
    let room = size.width - rip.near_edge - rip.far_edge + rip.kerf;
    sum_over(&strips, &[room])
}

fn most_in_blocks(
    ways: &[Way<'_>],
    rip: &RipRules,
    size: CrossSize,
    kerf: Units,
    rooms: &[Units],
) -> Option<i64> {
    let across_room = size.width - rip.near_edge - rip.far_edge + rip.kerf;
    let mut blocks = Vec::new();
    for length in distinct(ways.iter().map(|way| way.along)) {
        let alike = || ways.iter().filter(|way| way.along == length && way.thick == size.thickness);
        let things: Vec<Thing> = alike()
            .filter(|_| length >= rip.least_length)
            .filter(|way| way.part.may_rip && way.across >= rip.least_width)
            .map(|way| Thing {
                weight: way.across + rip.kerf,
                value: way.worth,
                count: u64::from(way.part.quantity),
            })
            .collect();
        blocks.push(Thing {
            weight: length + kerf,
            value: sum_over(&things, &[across_room])?,
            count: things.iter().map(|thing| thing.count).sum(),
        });
        let whole = || alike().filter(|way| way.across == size.width);
        blocks.push(Thing {
            weight: length + kerf,
            value: whole().map(|way| way.worth).max().unwrap_or(0),
            count: quantity(whole()),
        });
    }
    // Each room by itself may use every part anew; together they cannot.
    let relaxed = sum_over(&blocks, rooms)?;
    Some(Together::most(&blocks, rooms).map_or(relaxed, |exact| exact.min(relaxed)))
}

/// The most choices that are gone through for blocks in several clear stretches.
const MOST_VISITS: u32 = 400_000;

/// The most blocks and choices in a row, so that going through them never runs out of stack.
const DEEPEST: i64 = 400;

/// Blocks in several clear stretches that share the parts, by going through every choice.
struct Together<'a> {
    blocks: &'a [Thing],
    left: Vec<u64>,
    visits: u32,
}

impl Together<'_> {
    /// `None` when there are too many choices.
    fn most(blocks: &[Thing], rooms: &[Units]) -> Option<i64> {
        let blocks: Vec<Thing> =
            blocks.iter().filter(|block| block.value > 0 && block.count > 0).copied().collect();
        let lightest = blocks.iter().map(|block| block.weight).min()?.max(1);
        let fit = rooms.iter().fold(0_i64, |sum, room| sum.saturating_add(room / lightest));
        let turns = i64::try_from(blocks.len().checked_mul(rooms.len())?).ok()?;
        if fit.saturating_add(turns) > DEEPEST {
            return None;
        }
        let left = blocks.iter().map(|block| block.count).collect();
        let mut together = Together { blocks: &blocks, left, visits: 0 };
        together.go(rooms, *rooms.first()?, 0)
    }

    /// The most worth from block number `at` on in the first of `rooms`, with so much room left, and in all others.
    fn go(&mut self, rooms: &[Units], room: Units, at: usize) -> Option<i64> {
        self.visits += 1;
        if self.visits > MOST_VISITS {
            return None;
        }
        let Some(block) = self.blocks.get(at).copied() else {
            let others = rooms.get(1..)?;
            return others.first().map_or(Some(0), |next| self.go(others, *next, 0));
        };
        let without = self.go(rooms, room, at + 1)?;
        let left = *self.left.get(at)?;
        if block.weight > room || left == 0 {
            return Some(without);
        }
        *self.left.get_mut(at)? = left - 1;
        let with = self.go(rooms, room - block.weight, at)?;
        *self.left.get_mut(at)? = left;
        Some(without.max(with.checked_add(block.value)?))
    }
}
