//! Bins of many kinds filled together, each group of kinds by itself.
//!
//! The strips of a ripped board accept parts of their own width only, so bins of different widths have nothing to do with each
//! other, unless a part may lie in several of them. Kinds that share no item are answered apart. What a group was asked before
//! is remembered: the same few questions come again with every choice of boards. A group that failed fails with fewer or
//! shorter bins too. Our own method; each group is decided by bin completion ([`crate::completion`]).

use std::collections::BTreeMap;
use std::ops::Range;
use std::rc::Rc;

use crate::budget::Meter;
use crate::completion::{Answer, BinType, BinWorth, complete};
use crate::knapsack::Fill;
use crate::model::{Bin, Form, Model, Pattern};
use crate::price::capacities;
use crate::replace::Replacers;

/// Fills remembered of each group, at most.
const MOST_FITS: usize = 20_000;
/// Failures remembered of each group, at most.
const MOST_FAILED: usize = 2_000;

/// The fills of all bins, by kind and capacity.
pub(crate) type Filled = BTreeMap<(usize, i64), Vec<Fill>>;

/// What packing came to.
pub(crate) enum Packed {
    Fits(Filled),
    /// The parts of this group do not fit.
    Fails(usize),
    Unknown,
}

/// Kinds that share items.
struct Group {
    items: Vec<usize>,
    /// Every kind and capacity that a bin of the group can have, sorted.
    slots: Vec<(usize, i64)>,
    /// Where its slots stand in the list of all slots.
    from: usize,
}

/// What does not change while boards are chosen: which bins have to do with each other, and how many of them each board
/// can give. A *reach* says, slot by slot, how many bins of that kind are at least so long.
pub(crate) struct Shape {
    groups: Vec<Group>,
    slots: usize,
    /// For each form of each stock: its reach.
    of_form: Vec<Vec<Vec<u32>>>,
    /// For each stock: the most of all its forms, slot by slot.
    of_stock: Vec<Vec<u32>>,
    pub(crate) replacers: Replacers,
}

impl Shape {
    pub(crate) fn new(model: &Model) -> Self {
        // Each item starts as a group of its own; every kind joins the groups of its items.
        let mut group: Vec<usize> = (0..model.items.len()).collect();
        for kind in model.kinds.iter().filter(|kind| !kind.out) {
            let mut joined: Vec<usize> = kind.ways.iter().map(|way| group[way.item]).collect();
            joined.sort_unstable();
            if let Some(&first) = joined.first() {
                for of_item in &mut group {
                    if joined.binary_search(of_item).is_ok() {
                        *of_item = first;
                    }
                }
            }
        }
        let mut roots = group.clone();
        roots.sort_unstable();
        roots.dedup();
        let mut slots = vec![Vec::new(); roots.len()];
        for (number, (kind, capacities)) in model.kinds.iter().zip(capacities(model)).enumerate() {
            let way = kind.ways.first().filter(|_| !kind.out);
            if let Some(Ok(home)) = way.map(|way| roots.binary_search(&group[way.item])) {
                slots[home].extend(capacities.into_iter().map(|cap| (number, cap)));
            }
        }
        let mut groups = Vec::with_capacity(roots.len());
        let mut from = 0;
        for (&root, slots) in roots.iter().zip(slots) {
            let items = (0..group.len()).filter(|&item| group[item] == root).collect();
            let next = from + slots.len();
            groups.push(Group { items, slots, from });
            from = next;
        }
        let mut shape = Self {
            groups,
            slots: from,
            of_form: Vec::new(),
            of_stock: Vec::new(),
            replacers: Replacers::new(model),
        };
        for stock in &model.stocks {
            let reaches: Vec<Vec<u32>> =
                stock.forms.iter().map(|form| shape.reach_of(&form.bins)).collect();
            let mut most = vec![0; shape.slots];
            for reach in &reaches {
                for (most, &own) in most.iter_mut().zip(reach) {
                    *most = own.max(*most);
                }
            }
            shape.of_form.push(reaches);
            shape.of_stock.push(most);
        }
        shape
    }

    /// What these bins give, slot by slot.
    pub(crate) fn reach_of(&self, bins: &[Bin]) -> Vec<u32> {
        let mut reach = Vec::with_capacity(self.slots);
        for &(kind, cap) in self.groups.iter().flat_map(|group| group.slots.iter()) {
            let count = bins.iter().filter(|bin| bin.kind == kind && bin.cap >= cap).count();
            reach.push(u32::try_from(count).unwrap_or(u32::MAX));
        }
        reach
    }

    /// How many slots there are in all.
    pub(crate) fn slots(&self) -> usize {
        self.slots
    }

    /// Kind and capacity of a slot.
    pub(crate) fn slot(&self, number: usize) -> (usize, i64) {
        let group = self.groups.iter().rev().find(|group| group.from <= number);
        group.map_or((0, 0), |group| group.slots[number - group.from])
    }

    /// The slot of that kind and capacity.
    pub(crate) fn find(&self, kind: usize, cap: i64) -> Option<usize> {
        self.groups.iter().find_map(|group| {
            group.slots.binary_search(&(kind, cap)).ok().map(|at| group.from + at)
        })
    }

    /// The slots of a slot's kind that are no longer, itself included.
    pub(crate) fn up_to(&self, number: usize) -> Range<usize> {
        let kind = self.slot(number).0;
        let first = (0..=number).rev().take_while(|&slot| self.slot(slot).0 == kind).last();
        first.unwrap_or(number)..number + 1
    }

    /// The slots of a group.
    pub(crate) fn slots_of(&self, group: usize) -> Range<usize> {
        let group = &self.groups[group];
        group.from..group.from + group.slots.len()
    }

    /// What a form gives, slot by slot.
    pub(crate) fn of_form(&self, stock: usize, form: usize) -> &[u32] {
        &self.of_form[stock][form]
    }

    /// The most that one board of the stock can give, slot by slot.
    pub(crate) fn of_stock(&self, stock: usize) -> &[u32] {
        &self.of_stock[stock]
    }

    /// Puts what that form gives in the place of the most that a board of the stock can give.
    pub(crate) fn choose(&self, stock: usize, form: usize, reach: &mut [u32]) {
        let own = self.of_stock[stock].iter().zip(&self.of_form[stock][form]);
        for (reach, (most, own)) in reach.iter_mut().zip(own) {
            *reach = *reach - most + own;
        }
    }
}

/// What is asked of a group.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord)]
struct Question {
    /// How many of each item of the group.
    left: Vec<u32>,
    reach: Vec<u32>,
}

/// What was found out about a group.
#[derive(Default)]
struct Known {
    /// Questions that failed, those that refuted most lately first.
    failed: Vec<Question>,
    fits: BTreeMap<Question, Filled>,
}

/// Answers questions about the bins of a model.
pub(crate) struct Rows<'m> {
    model: &'m Model,
    pub(crate) shape: Rc<Shape>,
    known: Vec<Known>,
}

impl<'m> Rows<'m> {
    pub(crate) fn new(model: &'m Model, shape: Rc<Shape>) -> Self {
        let known = shape.groups.iter().map(|_| Known::default()).collect();
        Self { model, shape, known }
    }

    /// Whether a question with no fewer and no shorter bins, and no more parts, failed before.
    pub(crate) fn is_refuted(
        &mut self,
        reach: &[u32],
        demands: &[u32],
        meter: &mut Meter<'_>,
    ) -> bool {
        for (group, known) in self.shape.groups.iter().zip(&mut self.known) {
            let reach = &reach[group.from..group.from + group.slots.len()];
            let found = known.failed.iter().position(|failed| {
                reach.iter().zip(&failed.reach).all(|(few, many)| few <= many)
                    && group
                        .items
                        .iter()
                        .zip(&failed.left)
                        .all(|(&item, &left)| left <= demands[item])
            });
            meter.tick(4 * (1 + found.unwrap_or(known.failed.len())) as u64);
            if let Some(at) = found {
                known.failed.swap(at, at / 2);
                return true;
            }
        }
        false
    }

    /// Decides whether `demands` go into the bins of that reach.
    pub(crate) fn pack(
        &mut self,
        reach: &[u32],
        demands: &[u32],
        worths: &[BinWorth],
        steps: u64,
        meter: &mut Meter<'_>,
    ) -> Packed {
        let mut filled = Filled::new();
        let mut unknown = false;
        for (number, (group, known)) in self.shape.groups.iter().zip(&mut self.known).enumerate() {
            let question = Question {
                left: group.items.iter().map(|&item| demands[item]).collect(),
                reach: reach[group.from..group.from + group.slots.len()].to_vec(),
            };
            if question.left.iter().all(|&left| left == 0) {
                continue;
            }
            if let Some(fits) = known.fits.get(&question) {
                filled.extend(fits.clone());
                continue;
            }
            let types = group.bins(&question.reach);
            let mut left = vec![0; demands.len()];
            for &item in &group.items {
                left[item] = demands[item];
            }
            match complete(self.model, &types, &left, worths, steps, meter) {
                Answer::Fails => {
                    if known.failed.len() < MOST_FAILED {
                        known.failed.push(question);
                    }
                    return Packed::Fails(number);
                }
                // Another group may yet fail, and that settles it.
                Answer::Unknown => unknown = true,
                Answer::Fits(made) => {
                    let mut sorted = types;
                    sorted.sort_by_key(|bin| (bin.cap, bin.kind));
                    let mut own = Filled::new();
                    for (at, fill) in made {
                        let bin = sorted[at];
                        own.entry((bin.kind, bin.cap)).or_default().push(fill);
                    }
                    if known.fits.len() < MOST_FITS {
                        known.fits.insert(question, own.clone());
                    }
                    filled.extend(own);
                }
            }
        }
        if unknown { Packed::Unknown } else { Packed::Fits(filled) }
    }
}

/// Boards in their forms, each with its share of the fills.
pub(crate) fn deal(
    model: &Model,
    chosen: &[(usize, Rc<Form>, u32)],
    mut fills: Filled,
) -> Vec<Rc<Pattern>> {
    let mut patterns = Vec::new();
    for (stock, form, count) in chosen {
        for _ in 0..*count {
            if model.stocks[*stock].out.is_some() {
                let fill = vec![vec![(0, 1)]];
                patterns.push(Rc::new(model.pattern(*stock, Rc::clone(form), fill)));
                continue;
            }
            let fill = form.bins.iter().map(|bin| {
                fills.get_mut(&(bin.kind, bin.cap)).and_then(Vec::pop).unwrap_or_default()
            });
            let fill = fill.collect();
            let pattern = model.pattern(*stock, Rc::clone(form), fill);
            if !pattern.counts.is_empty() {
                patterns.push(Rc::new(pattern));
            }
        }
    }
    patterns
}

impl Group {
    /// The bins behind a reach.
    fn bins(&self, reach: &[u32]) -> Vec<BinType> {
        let mut types = Vec::new();
        for (at, &(kind, cap)) in self.slots.iter().enumerate() {
            let longer =
                self.slots.get(at + 1).filter(|next| next.0 == kind).map(|_| reach[at + 1]);
            let count = reach[at] - longer.unwrap_or(0);
            if count > 0 {
                types.push(BinType { kind, cap, count });
            }
        }
        types
    }
}
