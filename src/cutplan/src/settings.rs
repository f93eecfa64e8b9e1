//! Settings of fence and stop among plans of equal money and as many boards: which every plan needs, and plans with fewer.
//!
//! What a plan's settings are is the core's count. Here it is foreseen from the ways in which a part can be cut: a strip
//! needs its fence, a layer its own, a part its stop. A setting that every way of some part needs is in every plan. Of the
//! others every choice that is one smaller than the plan's is tried: a model in which nothing else may be set is asked for
//! a plan as cheap. Where none of them gives one, the plan has the fewest. Our own method.

use std::collections::{BTreeMap, BTreeSet};
use std::rc::Rc;

use reckoner_core::cutting::{CutKind, Job, Units};

use crate::bounds::Worth;
use crate::model::{Bin, Form, Kind, Make, Model, Pattern, Way};

/// A kind of cut and its distance.
pub(crate) type Setting = (CutKind, Units);

/// The settings that a part in that bin of that form needs.
fn needs(job: &Job, form: &Form, bin: &Bin, way: &Way) -> Vec<Setting> {
    let stop = (CutKind::Crosscut, way.weight - job.saw.kerf);
    match &form.make {
        Make::Crosscut => vec![stop],
        Make::Strips(makes, ripped) => {
            let make = &makes[bin.piece];
            let mut all = vec![stop];
            if *ripped {
                all.push((CutKind::Rip, make.width));
            }
            if make.resawn {
                all.push((CutKind::Resaw, make.layers[bin.layer]));
            }
            all
        }
        Make::Blocks(makes) => {
            let make = &makes[bin.piece];
            if make.whole {
                return vec![(CutKind::Crosscut, make.length)];
            }
            let kerf = job.saw.rip.as_ref().map_or(0, |rip| rip.kerf);
            vec![(CutKind::Block, make.length), (CutKind::Rip, way.weight - kerf)]
        }
    }
}

/// Every way to cut each item: calls `each` with the item and what it needs.
fn for_each_way(job: &Job, model: &Model, mut each: impl FnMut(usize, &[Setting])) {
    for form in model.stocks.iter().flat_map(|stock| &stock.forms) {
        for bin in &form.bins {
            for way in model.kinds[bin.kind].ways.iter().filter(|way| way.weight <= bin.cap) {
                each(way.item, &needs(job, form, bin, way));
            }
        }
    }
}

/// The settings that a plan of the model may have, and those that each of its plans has.
pub(crate) fn possible_and_forced(
    job: &Job,
    model: &Model,
) -> (BTreeSet<Setting>, BTreeSet<Setting>) {
    let mut possible = BTreeSet::new();
    let mut of_item: Vec<Option<BTreeSet<Setting>>> = vec![None; model.items.len()];
    for_each_way(job, model, |item, needs| {
        possible.extend(needs.iter().copied());
        match &mut of_item[item] {
            Some(known) => known.retain(|setting| needs.contains(setting)),
            first => *first = Some(needs.iter().copied().collect()),
        }
    });
    (possible, of_item.into_iter().flatten().flatten().collect())
}

/// A model in which only some settings may be used.
pub(crate) struct Restricted {
    pub(crate) model: Model,
    /// For each of its kinds: the kind and the ways of the whole model.
    kinds: Vec<(usize, Vec<usize>)>,
    /// For each stock: which of the whole model's forms are left.
    forms: Vec<Vec<usize>>,
}

impl Restricted {
    /// `None` when some part cannot be cut then.
    pub(crate) fn new(job: &Job, whole: &Model, allowed: &BTreeSet<Setting>) -> Option<Self> {
        let mut model = whole.clone();
        let mut kinds: Vec<(usize, Vec<usize>)> = whole
            .kinds
            .iter()
            .enumerate()
            .map(|(number, kind)| (number, (0..kind.ways.len()).collect()))
            .collect();
        let mut known: BTreeMap<(usize, Vec<usize>), usize> =
            kinds.iter().enumerate().map(|(at, kind)| (kind.clone(), at)).collect();
        let mut holds = vec![false; model.items.len()];
        let mut forms = Vec::with_capacity(model.stocks.len());
        for stock in &mut model.stocks {
            let mut seen = BTreeSet::new();
            let mut left = Vec::new();
            let mut kept = Vec::new();
            for (number, form) in stock.forms.iter().enumerate() {
                let mut bins = Vec::with_capacity(form.bins.len());
                for bin in &form.bins {
                    let ways = &whole.kinds[bin.kind].ways;
                    let may = |at: &usize| {
                        needs(job, form, bin, &ways[*at]).iter().all(|it| allowed.contains(it))
                    };
                    let own: Vec<usize> = (0..ways.len()).filter(may).collect();
                    if own.is_empty() {
                        continue;
                    }
                    for &at in own.iter().filter(|&&at| ways[at].weight <= bin.cap) {
                        holds[ways[at].item] = true;
                    }
                    let kind = *known.entry((bin.kind, own)).or_insert_with_key(|key| {
                        kinds.push(key.clone());
                        kinds.len() - 1
                    });
                    bins.push(Bin { kind, ..*bin });
                }
                let mut alike: Vec<(usize, i64)> =
                    bins.iter().map(|bin| (bin.kind, bin.cap)).collect();
                alike.sort_unstable();
                if !bins.is_empty() && seen.insert(alike) {
                    left.push(number);
                    kept.push(Rc::new(Form { bins, make: form.make.clone() }));
                }
            }
            stock.forms = kept;
            forms.push(left);
        }
        for (kind, ways) in kinds.iter().skip(whole.kinds.len()) {
            let from = &whole.kinds[*kind];
            let ways = ways.iter().map(|&at| from.ways[at]).collect();
            model.kinds.push(Kind { ways, out: from.out });
        }
        holds.iter().all(|&held| held).then_some(Self { model, kinds, forms })
    }

    /// A worth of the whole model, as one of this: no board holds more with less that may be set.
    pub(crate) fn worth(&self, worth: &Worth) -> Worth {
        let of_form = worth
            .of_form
            .iter()
            .zip(&self.forms)
            .map(|(all, left)| left.iter().map(|&form| all[form]).collect())
            .collect();
        Worth { of_form, of_bin: BTreeMap::new(), ..worth.clone() }
    }

    /// A pattern of this model, as one of the whole.
    pub(crate) fn widen(&self, whole: &Model, pattern: &Pattern) -> Rc<Pattern> {
        let bins = &pattern.form.bins;
        let fill = bins.iter().zip(&pattern.fill).map(|(bin, fill)| {
            let ways = &self.kinds[bin.kind].1;
            fill.iter().map(|&(way, count)| (ways[way], count)).collect()
        });
        let fill = fill.collect();
        let bins = bins.iter().map(|bin| Bin { kind: self.kinds[bin.kind].0, ..*bin }).collect();
        let form = Rc::new(Form { bins, make: pattern.form.make.clone() });
        Rc::new(whole.pattern(pattern.stock, form, fill))
    }
}

/// Every choice of `count` of these, in order; `None` when there are more than `most`.
pub(crate) fn choices<T: Copy + Ord>(
    of: &[T],
    count: usize,
    most: usize,
) -> Option<Vec<BTreeSet<T>>> {
    let mut found = vec![(BTreeSet::new(), 0)];
    for _ in 0..count {
        let mut longer = Vec::new();
        for (chosen, from) in &found {
            for (at, &next) in of.iter().enumerate().skip(*from) {
                let mut chosen: BTreeSet<T> = chosen.clone();
                chosen.insert(next);
                longer.push((chosen, at + 1));
            }
            if longer.len() > 4 * most {
                return None;
            }
        }
        found = longer;
    }
    (found.len() <= most).then(|| found.into_iter().map(|choice| choice.0).collect())
}
