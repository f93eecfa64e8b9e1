//! Bins of many kinds filled together, each group of kinds by itself.
//!
//! The strips of a ripped board accept parts of their own width only, so bins of different widths have nothing to do with
//! each other, unless a part may lie in several of them. Kinds that share no item are answered apart. What a group was
//! asked before is remembered: the same few questions come again with every choice of boards. A group that failed fails
//! with fewer or shorter bins too.

use std::collections::BTreeMap;

use crate::budget::Meter;
use crate::completion::{Answer, BinType, BinWorth, complete};
use crate::knapsack::Fill;
use crate::model::Model;

/// Answers remembered of each sort, at most.
const MOST_REMEMBERED: usize = 20_000;

/// The fills of all bins, by kind and capacity.
pub(crate) type Filled = BTreeMap<(usize, i64), Vec<Fill>>;

/// What packing came to.
pub(crate) enum Packed {
    Fits(Filled),
    Fails,
    Unknown,
}

/// Kinds that share items, and what was found out about them.
struct Group {
    items: Vec<usize>,
    /// For each demand: sets of bins that are not enough.
    failed: BTreeMap<Vec<u32>, Vec<Vec<BinType>>>,
    fits: BTreeMap<(Vec<u32>, Vec<BinType>), Filled>,
    remembered: usize,
}

/// The bins of a model.
pub(crate) struct Rows<'m> {
    model: &'m Model,
    /// The group of each kind; `None` where it accepts nothing.
    home: Vec<Option<usize>>,
    groups: Vec<Group>,
}

impl<'m> Rows<'m> {
    pub(crate) fn new(model: &'m Model) -> Self {
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
        let place = |root: usize| roots.binary_search(&root).ok();
        let home = model
            .kinds
            .iter()
            .map(|kind| kind.ways.first().and_then(|way| place(group[way.item])))
            .collect();
        let groups = roots
            .iter()
            .map(|&root| Group {
                items: (0..group.len()).filter(|&item| group[item] == root).collect(),
                failed: BTreeMap::new(),
                fits: BTreeMap::new(),
                remembered: 0,
            })
            .collect();
        Self { model, home, groups }
    }

    /// Decides whether `demands` go into the bins, given as (kind, capacity) and how many.
    pub(crate) fn pack(
        &mut self,
        bins: &BTreeMap<(usize, i64), u32>,
        demands: &[u32],
        worths: &[BinWorth],
        steps: u64,
        meter: &mut Meter<'_>,
    ) -> Packed {
        let questions: Vec<(Vec<u32>, Vec<BinType>)> =
            (0..self.groups.len()).map(|number| self.question(number, bins, demands)).collect();
        let is_refuted = |(group, question): (&Group, &(Vec<u32>, Vec<BinType>))| {
            let failed = group.failed.get(&question.0);
            failed.is_some_and(|failed| failed.iter().any(|more| is_no_more(&question.1, more)))
        };
        if self.groups.iter().zip(&questions).any(is_refuted) {
            return Packed::Fails;
        }
        let mut filled = Filled::new();
        let mut unknown = false;
        for (group, question) in self.groups.iter_mut().zip(questions) {
            if group.items.iter().all(|&item| demands[item] == 0) {
                continue;
            }
            if let Some(known) = group.fits.get(&question) {
                filled.extend(known.clone());
                continue;
            }
            let (left, types) = &question;
            let mut all = vec![0; demands.len()];
            for (&item, &count) in group.items.iter().zip(left) {
                all[item] = count;
            }
            let may_remember = group.remembered < MOST_REMEMBERED;
            match complete(self.model, types, &all, worths, steps, meter) {
                Answer::Fails => {
                    if may_remember {
                        group.remembered += 1;
                        group.failed.entry(question.0).or_default().push(question.1);
                    }
                    return Packed::Fails;
                }
                // Another group may yet fail, and that settles it.
                Answer::Unknown => unknown = true,
                Answer::Fits(made) => {
                    let mut sorted = types.clone();
                    sorted.sort_by_key(|bin| (bin.cap, bin.kind));
                    let mut own = Filled::new();
                    for (number, fill) in made {
                        let bin = sorted[number];
                        own.entry((bin.kind, bin.cap)).or_default().push(fill);
                    }
                    if may_remember {
                        group.remembered += 1;
                        group.fits.insert(question, own.clone());
                    }
                    filled.extend(own);
                }
            }
        }
        if unknown { Packed::Unknown } else { Packed::Fits(filled) }
    }

    /// What is asked of one group: how many of its items, and its bins.
    fn question(
        &self,
        number: usize,
        bins: &BTreeMap<(usize, i64), u32>,
        demands: &[u32],
    ) -> (Vec<u32>, Vec<BinType>) {
        let left = self.groups[number].items.iter().map(|&item| demands[item]).collect();
        let own = bins.iter().filter(|((kind, _), _)| self.home[*kind] == Some(number));
        let types = own.map(|(&(kind, cap), &count)| BinType { kind, cap, count }).collect();
        (left, types)
    }
}

/// Whether each bin of `few` has a bin of its own in `many`, of its kind and at least as long. Both are sorted by kind,
/// then by capacity.
pub(crate) fn is_no_more(few: &[BinType], many: &[BinType]) -> bool {
    few.iter().all(|bin| {
        let as_long = |bins: &[BinType]| -> u32 {
            let of_kind =
                bins.iter().filter(|other| other.kind == bin.kind && other.cap >= bin.cap);
            of_kind.map(|other| other.count).fold(0, u32::saturating_add)
        };
        as_long(few) <= as_long(many)
    })
}
