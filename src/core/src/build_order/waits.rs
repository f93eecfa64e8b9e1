//! What each step waits for.

use std::collections::{BTreeMap, BTreeSet};

use super::step::{BuildStep, Needs, Stage, Wait};
use crate::attention::{Attention, Fact};
use crate::job::{Item, ItemId, Job, Reckoned};
use crate::order::{map_of, set_of, sort, sort_by_key};

/// Which parts use which sizes.
struct Uses {
    parts_of: BTreeMap<ItemId, BTreeSet<ItemId>>,
}

impl Uses {
    fn of(job: &Job, reckoned: &Reckoned) -> Uses {
        let mut parts_of: BTreeMap<ItemId, BTreeSet<ItemId>> = BTreeMap::new();
        for (id, part) in job.parts() {
            for need in reckoned.needs(id).into_iter().flatten() {
                parts_of.entry(*need).or_default().insert(id);
            }
            // A part that was made from a reckoning is in its work.
            if let Some(made) = &part.made {
                parts_of.entry(made.kept).or_default().insert(id);
            }
        }
        Uses { parts_of }
    }

    /// The parts that share a size with something.
    fn related(&self, id: ItemId, needs: &BTreeSet<ItemId>) -> BTreeSet<ItemId> {
        let own = core::iter::once(&id).chain(needs);
        crate::order::set_of(own.filter_map(|id| self.parts_of.get(id)).flatten().copied())
    }
}

/// Adds to each step what it waits for, and says of the steps that are done by their pieces that they are.
pub(super) fn waits(
    job: &Job,
    reckoned: &Reckoned,
    attention: &Attention,
    cuts: &Needs,
    steps: &mut [BuildStep],
) {
    let uses = Uses::of(job, reckoned);
    let flagged = flagged(job, attention);
    let waiting = reckoned.all_that_waits();
    for step in steps.iter_mut().filter(|step| step.stage.is_final_cut()) {
        step.is_done = step.pieces.iter().all(|it| it.is_cut);
    }
    let open = steps.iter().enumerate().filter(|(_, step)| !step.is_done);
    let open = map_of(open.map(|(place, step)| (step.key.as_str(), place)));
    // Which steps are still to cut pieces of a part, and which to put frames together.
    let mut cutting: BTreeMap<ItemId, BTreeSet<usize>> = BTreeMap::new();
    let mut stages: BTreeMap<Stage, Vec<usize>> = BTreeMap::new();
    for (place, step) in steps.iter().enumerate().filter(|(_, step)| !step.is_done) {
        stages.entry(step.stage).or_default().push(place);
        if step.stage.is_final_cut() {
            for (part, _) in step.to_cut() {
                cutting.entry(part).or_default().insert(place);
            }
        }
    }
    let mut found: Vec<BTreeSet<Wait>> = vec![BTreeSet::new(); steps.len()];
    for (step, found) in steps.iter().zip(&mut found).filter(|(step, _)| !step.is_done) {
        found.extend(step.waits_for.iter().cloned());
        let needed = cuts.get(&step.key).into_iter().flatten();
        found.extend(needed.filter_map(|key| open.get(key.as_str())).map(|at| Wait::Step(*at)));
        for part in step.to_cut().into_iter().map(|(part, _)| part) {
            let sizes = reckoned.part(part);
            found.extend(
                sizes.into_iter().flat_map(|it| &it.waits_for).map(|it| Wait::Measure(*it)),
            );
            found.extend(flagged.get(&part).map(|about| Wait::Look(*about)));
        }
        let (Some(id), true) = (step.about, step.stage >= Stage::Shape) else { continue };
        let needs = match step.stage {
            // A size is measured on what its own plan is made of.
            Stage::DryFit => crate::order::set_of(all_needed(reckoned, id).into_iter()),
            _ => reckoned.needs(id).cloned().unwrap_or_default(),
        };
        for about in needs.iter().chain([&id]) {
            found.extend(flagged.get(about).map(|about| Wait::Look(*about)));
        }
        let is_gate = step.stage == Stage::DryFit;
        if waiting.contains(&id) && !is_gate {
            let sizes = all_needed(reckoned, id).into_iter();
            let to_take = |it: &ItemId| matches!(job.item(*it), Some(Item::Measure(it)) if it.is_to_measure());
            found.extend(sizes.filter(to_take).map(Wait::Measure));
        }
        for part in uses.related(id, &needs) {
            // What is measured on the frame is not on it yet; and work that rests on no such size is done before.
            let is_before = step.stage <= Stage::DryFit && (is_gate || !waiting.contains(&id));
            if is_before && waiting.contains(&part) {
                continue;
            }
            found.extend(flagged.get(&part).map(|about| Wait::Look(*about)));
            let cuts = cutting.get(&part).into_iter().flatten();
            found.extend(cuts.map(|at| Wait::Step(*at)));
        }
        let earlier: &[Stage] = match step.stage {
            Stage::Top => &[Stage::Frames],
            Stage::Finish => &[Stage::Shape, Stage::Holes, Stage::Frames, Stage::Top],
            _ => &[],
        };
        let earlier = earlier.iter().filter_map(|stage| stages.get(stage)).flatten();
        found.extend(earlier.map(|at| Wait::Step(*at)));
    }
    for (step, found) in steps.iter_mut().zip(found) {
        step.waits_for = found.into_iter().collect();
    }
}

/// The steps so that each stands after all that it waits for, and in the order of the stages where that leaves a choice.
pub(super) fn in_a_row(steps: Vec<BuildStep>) -> Vec<BuildStep> {
    let gates = steps.iter().enumerate();
    let gates = gates.filter(|(_, step)| step.stage == Stage::DryFit && !step.is_done);
    let gates = map_of(gates.filter_map(|(place, step)| Some((step.about?, place))));
    // What each step waits for that is not in the row yet, and which steps wait for it.
    let mut before: Vec<BTreeSet<usize>> = vec![BTreeSet::new(); steps.len()];
    let mut after: Vec<Vec<usize>> = vec![Vec::new(); steps.len()];
    for (place, (step, before)) in steps.iter().zip(&mut before).enumerate() {
        for wait in &step.waits_for {
            let first = match wait {
                Wait::Step(at) => Some(*at),
                Wait::Measure(id) => gates.get(id).copied(),
                Wait::Plan(_) | Wait::Look(_) | Wait::Refused(_) => None,
            };
            let Some(first) = first.filter(|at| *at != place) else { continue };
            if let Some(after) = after.get_mut(first)
                && before.insert(first)
            {
                after.push(place);
            }
        }
    }
    let is_free = |place: &usize| before.get(*place).is_some_and(BTreeSet::is_empty);
    let mut free = set_of((0..steps.len()).filter(is_free));
    let mut left = set_of(0..steps.len());
    let mut row = Vec::with_capacity(steps.len());
    // In a circle nothing is free: then what comes first by its stage.
    while let Some(place) = free.pop_first().or_else(|| left.first().copied()) {
        if !left.remove(&place) {
            continue;
        }
        row.push(place);
        for later in after.get(place).into_iter().flatten() {
            let Some(before) = before.get_mut(*later) else { continue };
            before.remove(&place);
            if before.is_empty() {
                free.insert(*later);
            }
        }
    }
    let mut places = vec![0; steps.len()];
    for (new, old) in row.iter().enumerate() {
        if let Some(place) = places.get_mut(*old) {
            *place = new;
        }
    }
    let mut all: Vec<(usize, BuildStep)> = places.iter().copied().zip(steps).collect();
    sort_by_key(&mut all, |(place, _)| *place);
    let moved = |(_, mut step): (usize, BuildStep)| {
        for wait in &mut step.waits_for {
            if let Wait::Step(at) = wait {
                *at = places.get(*at).copied().unwrap_or(*at);
            }
        }
        sort(&mut step.waits_for);
        step
    };
    all.into_iter().map(moved).collect()
}

/// Everything that an item needs, directly or through others.
fn all_needed(reckoned: &Reckoned, id: ItemId) -> BTreeSet<ItemId> {
    let mut all = BTreeSet::new();
    let mut next = vec![id];
    while let Some(id) = next.pop() {
        for need in reckoned.needs(id).into_iter().flatten() {
            if all.insert(*need) {
                next.push(*need);
            }
        }
    }
    all
}

/// What wants looking at: parts and sizes, each with the item to look at.
fn flagged(job: &Job, attention: &Attention) -> BTreeMap<ItemId, ItemId> {
    let mut all = BTreeMap::new();
    for fact in &attention.facts {
        let Some(about) = fact.item() else { continue };
        match fact {
            Fact::Off { .. }
            | Fact::NotRecorded { .. }
            | Fact::SizeOff { .. }
            | Fact::SizeNotRecorded { .. }
            | Fact::Unread { .. } => drop(all.insert(about, about)),
            Fact::Apart(_) => {
                if let Some(Item::Match(group)) = job.item(about) {
                    all.extend(group.measures.iter().map(|id| (*id, about)));
                }
            }
            Fact::Behind { behind, .. } => {
                all.extend(behind.gone.iter().chain(&behind.elsewhere).map(|id| (*id, about)));
            }
            // The step of the reckoning itself says so; of what is not wanted none is in a step.
            Fact::Plan { .. }
            | Fact::NotWanted { .. }
            | Fact::ToMeasure { .. }
            | Fact::Refused { .. }
            | Fact::NotKept(_) => {}
        }
    }
    all
}
