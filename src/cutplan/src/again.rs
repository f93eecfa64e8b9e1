//! Better plans from a good one: a few boards are taken off it, and their parts planned again.
//!
//! Large neighbourhood search (Shaw, "Using constraint programming and local search methods to solve vehicle routing problems",
//! CP 1998; cited from memory). What is taken off is a small job of its own: the linear programme refutes most of them, and of
//! the rest the choices of boards are gone through ([`crate::mix`]). Which boards are taken off is drawn from a sequence that
//! is the same every time. It proves nothing.

use std::rc::Rc;

use crate::budget::Meter;
use crate::columns::{Columns, Rest};
use crate::greedy::Patterns;
use crate::mix::{Mixed, few_boards};

/// Boards taken off at a time, at least and at most.
const FEWEST: usize = 3;
const MOST: usize = 7;

/// A sequence of draws (Steele, Lea and Flood's SplitMix64, 2014).
pub(crate) struct Draws(u64);

impl Draws {
    pub(crate) fn new() -> Self {
        Self(1)
    }

    fn below(&mut self, most: usize) -> usize {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut mixed = self.0;
        mixed = (mixed ^ (mixed >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        mixed = (mixed ^ (mixed >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        mixed ^= mixed >> 31;
        (mixed % most.max(1) as u64) as usize
    }
}

/// Takes some boards off `best`, which covers all parts, and plans their parts again: a cheaper plan, if that finds one.
pub(crate) fn plan_again(
    columns: &mut Columns<'_>,
    best: &Patterns,
    draws: &mut Draws,
    meter: &mut Meter<'_>,
) -> Option<Patterns> {
    let model = columns.model;
    let count = FEWEST + draws.below(MOST - FEWEST + 1);
    let mut order: Vec<usize> = (0..best.len()).collect();
    for at in 0..count.min(order.len()) {
        let other = at + draws.below(order.len() - at);
        order.swap(at, other);
    }
    let off = &order[..count.min(order.len())];
    let mut rest = Rest::of(model);
    let mut kept = Vec::with_capacity(best.len());
    for (_, pattern) in best.iter().enumerate().filter(|(at, _)| !off.contains(at)) {
        rest.take(pattern);
        kept.push(Rc::clone(pattern));
    }
    // Another plan as cheap leads elsewhere.
    let sideways = i64::from(draws.below(2) == 0);
    let cost: i64 = off.iter().map(|&at| model.stocks[best[at].stock].cost).sum();
    let enough = cost + sideways;
    let relaxed = columns.relax(&rest, enough, meter);
    if relaxed.bound >= enough {
        return None;
    }
    match few_boards(columns, &rest, &relaxed, enough, meter) {
        Mixed::Found(found, _) => kept.extend(found),
        Mixed::NoneCheaper | Mixed::Undecided(_) => return None,
    }
    Some(kept)
}
