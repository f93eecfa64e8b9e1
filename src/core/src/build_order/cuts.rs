//! The cuts: of the boards of the plan in use, and of pieces that no board is planned for.

use std::collections::BTreeMap;

use super::step::{BuildStep, Drafts, Needs, Pieces, Stage, Wait, at, cautions};
use crate::cutting::Source;
use crate::job::{BoardState, CutPlan, Dimension, Item, ItemId, Job, Part, PartSizes, Reckoned};
use crate::measure::Length;
use crate::measure::text::exact_text;
use crate::planning::report::{RowCut, What, rows_of};

/// The place of one piece in the plan.
#[derive(Clone, Debug)]
struct Placed {
    board: u32,
    /// The cuts before it is cut to length: stage and setting, in their order.
    before: Vec<(Stage, Length)>,
    /// Ripped out of a block, so that nothing is left to cut to length.
    last: Option<Length>,
    /// What must be done to the board before: buying or drying.
    first: Option<String>,
}

/// Adds all cuts to the steps, and says which steps they need.
pub(super) fn cuts(job: &Job, reckoned: &Reckoned, all: &mut Drafts) -> Needs {
    let mut needs = Needs::new();
    let plan = job.find_cut_plan(false).and_then(|id| job.cut_plan(id));
    let mut placed: BTreeMap<ItemId, Vec<Placed>> = BTreeMap::new();
    let mut done = Done::default();
    if let Some((kept, states)) = &plan {
        placed = places(job, kept, states, &mut done);
    }
    for (id, part) in job.parts() {
        let Some(sizes) = reckoned.part(id) else { continue };
        let places = placed.remove(&id).unwrap_or_default();
        let is_other = plan.as_ref().is_some_and(|(kept, _)| is_drawn_otherwise(kept, id, sizes));
        Cutting { id, part, sizes, is_other, done: &mut done, all, needs: &mut needs }.cut(places);
    }
    let ticked = job.all_ticked();
    for step in all.values_mut().filter(|step| step.key.starts_with(CUT)) {
        let (count, open) = done.of.get(&step.key).copied().unwrap_or_default();
        step.count = count;
        step.is_done = open == 0 || ticked.get(&step.key).is_some_and(|done| *done >= count);
    }
    needs
}

/// How the ticks of settings begin; those of pieces are the pieces' own.
const CUT: &str = crate::planning::ticking::CUTS;

/// How many pieces come through each setting in all, and how many of them are still to come.
#[derive(Default)]
struct Done {
    of: BTreeMap<String, (u32, u32)>,
}

impl Done {
    fn add(&mut self, key: &str, is_open: bool) {
        let (count, open) = self.of.entry(key.to_owned()).or_default();
        *count = count.saturating_add(1);
        *open = open.saturating_add(u32::from(is_open));
    }
}

fn key(stage: Stage, setting: Length) -> String {
    let word = match stage {
        Stage::Rough => "rough",
        Stage::Resaw => "resaw",
        Stage::Rip => "rip",
        Stage::ResawStrips => "layer",
        _ => return format!("stop/{}", exact_text(setting)),
    };
    format!("{CUT}{word}/{}", exact_text(setting))
}

/// Where each piece lies that is still to be cut, in the order of the boards.
fn places(
    job: &Job,
    kept: &CutPlan,
    states: &[BoardState],
    done: &mut Done,
) -> BTreeMap<ItemId, Vec<Placed>> {
    let mut all: BTreeMap<ItemId, Vec<Placed>> = BTreeMap::new();
    let boards = rows_of(&kept.asked, &kept.plan, &kept.labels).unwrap_or_default();
    for (((number, rows), cut), state) in (1_u32..).zip(boards).zip(&kept.plan.boards).zip(states) {
        let first = match (cut.source, state) {
            (Source::Board(_), BoardState::ToCut) => Some("buy".to_owned()),
            (Source::Scrap(at), _) => {
                let item = kept.labels.scraps.get(at).and_then(|label| label.item);
                let board = item.and_then(|id| Some((id, job.item(id)?)));
                board.and_then(|(id, item)| match item {
                    Item::RackBoard(board) if board.wet => Some(format!("dry/{:09}", id.0)),
                    _ => None,
                })
            }
            _ => None,
        };
        // Those cut from it one by one are taken from its left end.
        let mut begun: BTreeMap<usize, u32> = BTreeMap::new();
        for row in &rows {
            for (part, place) in placed_in(row, number, first.as_ref()) {
                let taken = begun.entry(part).or_default();
                let is_cut = state.is_cut() || *taken < state.begun_of(part);
                *taken = taken.saturating_add(1);
                for (stage, setting) in &place.before {
                    done.add(&key(*stage, *setting), !is_cut);
                }
                let item = kept.labels.parts.get(part).and_then(|label| label.item);
                if let (false, Some(id)) = (is_cut, item) {
                    all.entry(id).or_default().push(place);
                }
            }
        }
    }
    all
}

/// The pieces of one row of a board, by their place in the cutting job.
fn placed_in(row: &RowCut, board: u32, first: Option<&String>) -> Vec<(usize, Placed)> {
    let mut before = Vec::new();
    if let Some(width) = row.width {
        before.push((Stage::Rip, width));
    }
    if let Some(thickness) = row.thickness {
        let stage = if row.width.is_some() { Stage::ResawStrips } else { Stage::Resaw };
        before.push((stage, thickness));
    }
    let place = |before: Vec<(Stage, Length)>, last: Option<Length>| Placed {
        board,
        before,
        last,
        first: first.cloned(),
    };
    let mut all = Vec::new();
    for stretch in &row.stretches {
        match &stretch.what {
            What::Part { part, .. } => all.push((*part, place(before.clone(), None))),
            What::Block { parts, .. } => {
                let Ok(long) = stretch.to - stretch.from else { continue };
                for (part, _, across) in parts {
                    all.push((*part, place(vec![(Stage::Rough, long)], Some(*across))));
                }
            }
            What::Kerf | What::Trim | What::Knot | What::Leftover => {}
        }
    }
    all
}

/// Whether the plan draws a part at another size than is wanted of it now.
fn is_drawn_otherwise(kept: &CutPlan, id: ItemId, sizes: &PartSizes) -> bool {
    let Some(at) = kept.labels.parts.iter().position(|label| label.item == Some(id)) else {
        return false;
    };
    let Some(part) = kept.asked.parts.get(at) else { return false };
    let section = kept.labels.section(&kept.asked, &part.section).and_then(|it| it.size);
    let sides = |(a, b): (Length, Length)| (a.min(b), a.max(b));
    let now = sizes.wanted(Dimension::Thickness).zip(sizes.wanted(Dimension::Width));
    kept.labels.length(part.length).ok() != sizes.wanted(Dimension::Length)
        || (section.is_some() && section.map(sides) != now.map(sides))
}

/// The cuts of one part.
struct Cutting<'a> {
    id: ItemId,
    part: &'a Part,
    sizes: &'a PartSizes,
    is_other: bool,
    done: &'a mut Done,
    all: &'a mut Drafts,
    needs: &'a mut Needs,
}

impl Cutting<'_> {
    fn cut(&mut self, places: Vec<Placed>) {
        let Ok(count) = self.sizes.quantity else { return };
        let mut places = places.into_iter();
        for index in 0..count as usize {
            if self.part.piece(index).is_cut() {
                let (stage, setting, key) = self.last_cut(None);
                let step = at(self.all, stage, setting, key);
                push(step, self.id, index, None, true);
            } else {
                let place = if self.sizes.waits_for.is_empty() { places.next() } else { None };
                self.cut_one(index, place);
            }
        }
    }

    /// Stage, setting and name of the cut after which a piece is cut.
    fn last_cut(&self, place: Option<&Placed>) -> (Stage, Option<Length>, String) {
        if !self.sizes.waits_for.is_empty() {
            // Nobody knows yet at what: not even the planned size is shown.
            return (Stage::CrosscutMeasured, None, format!("measured/{}", self.id.0));
        }
        match (place.and_then(|place| place.last), self.sizes.wanted(Dimension::Length)) {
            (Some(across), _) => {
                (Stage::RipBlocks, Some(across), format!("block/{}", exact_text(across)))
            }
            (None, Some(length)) => (Stage::Crosscut, Some(length), key(Stage::Crosscut, length)),
            (None, None) => (Stage::Crosscut, None, format!("unread/{}", self.id.0)),
        }
    }

    fn cut_one(&mut self, index: usize, place: Option<Placed>) {
        let (stage, setting, last) = self.last_cut(place.as_ref());
        let board = place.as_ref().map(|place| place.board);
        let before = match &place {
            Some(place) => place.before.clone(),
            None => self.by_its_own_sizes(),
        };
        let first = place.as_ref().and_then(|place| place.first.clone());
        let mut earlier: Option<String> = first;
        let cuts =
            before.into_iter().map(|(stage, setting)| (stage, Some(setting), key(stage, setting)));
        for (stage, setting, name) in cuts.chain([(stage, setting, last)]) {
            let step = at(self.all, stage, setting, name.clone());
            push(step, self.id, index, board, false);
            step.cautions.extend(cautions(stage, setting, self.sizes));
            crate::order::sort(&mut step.cautions);
            step.cautions.dedup();
            if self.is_other && place.is_some() && !step.waits_for.contains(&Wait::Plan(self.id)) {
                step.waits_for.push(Wait::Plan(self.id));
            }
            if place.is_none() && name.starts_with(CUT) {
                self.done.add(&name, true);
            }
            if let Some(earlier) = earlier {
                self.needs.entry(name.clone()).or_default().insert(earlier);
            }
            earlier = Some(name);
        }
    }

    /// The cuts along a piece that no board is planned for, as far as it may be ripped and resawn.
    fn by_its_own_sizes(&self) -> Vec<(Stage, Length)> {
        let mut all = Vec::new();
        if !self.sizes.waits_for.is_empty() {
            return all;
        }
        if let (true, Some(width)) = (self.part.may_rip, self.sizes.wanted(Dimension::Width)) {
            all.push((Stage::Rip, width));
        }
        if let (true, Some(thick)) = (self.part.may_resaw, self.sizes.wanted(Dimension::Thickness))
        {
            all.push((Stage::ResawStrips, thick));
        }
        all
    }
}

/// A piece more in a step.
fn push(step: &mut BuildStep, part: ItemId, index: usize, board: Option<u32>, is_cut: bool) {
    match step.pieces.last_mut() {
        Some(last) if (last.part, last.board, last.is_cut) == (part, board, is_cut) => {
            last.pieces.push(index);
        }
        _ => step.pieces.push(Pieces { part, pieces: vec![index], board, is_cut }),
    }
}
