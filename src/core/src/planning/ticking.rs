//! The steps of a plan that is kept in the job: kept, bought, cut, and come out different.
//!
//! The rack tells what is on hand. So a board that is bought goes on the rack, a board that is cut leaves it, and what
//! came off and can be used goes on it, each in the same step as the tick. To plan again from here is then only to plan
//! again: what is ticked off is not wanted any more, and what is on the rack costs nothing.

use super::report::{How, worth_keeping};
use crate::cutting::{CutBoard, Source};
use crate::job::{
    BoardState, Change, CutPlan, CutTicks, Dimensions, Item, ItemId, Job, PartSizes, Piece,
    RackBoard, Reckoned, Step,
};
use crate::measure::text::exact_text;
use crate::measure::{Length, Tape};
use crate::sheet::Bench;

impl Job {
    /// The step that keeps a plan, in the place of the one that was there.
    #[must_use]
    pub fn keeping_plan(&self, plan: CutPlan) -> Step {
        let plan = Box::new(plan);
        let Some(old) = self.find_cut_plan(plan.is_list) else {
            return Step::new("keep the plan", vec![self.adding(0, Item::CutPlan(plan))]);
        };
        let mut changes = vec![self.replacing(old, Item::CutPlan(plan))];
        changes.extend(self.ticks_of(old).map(|(id, _)| self.removing(id)));
        Step::new("keep the new plan", changes)
    }

    /// The step that throws a plan away with its ticks. What was put on the rack stays there.
    #[must_use]
    pub fn dropping_plan(&self, id: ItemId) -> Step {
        let mut changes = vec![self.removing(id)];
        changes.extend(self.ticks_of(id).map(|(id, _)| self.removing(id)));
        Step::new("throw the plan away", changes)
    }

    /// The step after the store: every board of the shopping list is bought and goes on the rack. `None` when there is
    /// nothing left to buy.
    #[must_use]
    pub fn buying(&self, id: ItemId) -> Option<Step> {
        let (kept, mut states) = self.cut_plan(id)?;
        let mut draft = Draft::new(self);
        for at in 0..kept.asked.boards.len() {
            let alike = kept.plan.boards.iter().zip(&mut states).filter(|(cut, state)| {
                cut.source == Source::Board(at) && **state == BoardState::ToCut
            });
            let alike: Vec<_> = alike.map(|(_, state)| state).collect();
            let count = u32::try_from(alike.len()).ok()?;
            if count == 0 {
                continue;
            }
            let rack = if kept.is_list { None } else { Some(bought_board(kept, at, count)?) };
            let rack = rack.map(|rack| draft.add(Item::RackBoard(rack)));
            draft.take_from_yard(kept, at, count);
            for state in alike {
                *state = BoardState::Bought(rack);
            }
        }
        if draft.changes.is_empty() && self.cut_plan(id)?.1 == states {
            return None;
        }
        draft.tick(id, states);
        Some(Step::new("boards bought", draft.changes))
    }

    /// The step after a board is cut as planned: its parts are ticked off, it leaves the rack, and its offcuts of at
    /// least `keep_from` go on it. `None` when it is cut already, or there is no such board.
    #[must_use]
    pub fn cutting(&self, id: ItemId, board: usize, keep_from: Length) -> Option<Step> {
        let (kept, _) = self.cut_plan(id)?;
        let cut = kept.plan.boards.get(board)?;
        let how = How { tape: Tape::SIXTEENTHS, keep_from };
        let keep = worth_keeping(&kept.asked, &kept.plan, &kept.labels, board, how)?;
        // A board of the rack that is still wet leaves wet offcuts.
        let wet = match cut.source {
            Source::Board(_) => false,
            Source::Scrap(at) => {
                let item = kept.labels.scraps.get(at).and_then(|label| label.item);
                matches!(item.and_then(|id| self.item(id)), Some(Item::RackBoard(board)) if board.wet)
            }
        };
        let rack = keep.into_iter().filter_map(|keep| keep.rack);
        let rack = rack.map(|board| RackBoard { wet, ..board }).collect();
        self.after_cut(id, board, &counted(cut), rack, BoardState::Cut)
    }

    /// The step after a board came out different: a split, a knot found, a part cut wrong. The `good` pieces are ticked
    /// off, and what can still be used goes on the rack, or, from a quick list, into `left` as lengths.
    #[must_use]
    pub fn coming_out_different(
        &self,
        id: ItemId,
        board: usize,
        good: Vec<(usize, u32)>,
        pieces: Vec<RackBoard>,
        left: Vec<String>,
    ) -> Option<Step> {
        let (kept, _) = self.cut_plan(id)?;
        let planned = counted(kept.plan.boards.get(board)?);
        // No more can be good than were to be cut.
        let fits = |(part, count): &(usize, u32)| {
            planned.iter().any(|(known, most)| known == part && count <= most)
        };
        if !good.iter().all(fits) {
            return None;
        }
        let state = BoardState::Different { good: good.clone(), left };
        self.after_cut(id, board, &good, pieces, state)
    }

    fn after_cut(
        &self,
        id: ItemId,
        board: usize,
        good: &[(usize, u32)],
        pieces: Vec<RackBoard>,
        state: BoardState,
    ) -> Option<Step> {
        let (kept, mut states) = self.cut_plan(id)?;
        let cut = kept.plan.boards.get(board)?;
        let before = core::mem::replace(states.get_mut(board)?, state);
        if before.is_cut() {
            return None;
        }
        let mut draft = Draft::new(self);
        if !kept.is_list {
            let reckoned = Reckoned::of(self, &Bench::default());
            for &(part, count) in good {
                let item = kept.labels.parts.get(part)?.item?;
                draft.tick_off(item, count, &Piece::cut(drawn(kept, part, reckoned.part(item))));
            }
            match (before, cut.source) {
                (BoardState::Bought(Some(rack)), _) => draft.use_up(rack),
                (_, Source::Board(at)) => draft.take_from_yard(kept, at, 1),
                (_, Source::Scrap(at)) => draft.use_up(kept.labels.scraps.get(at)?.item?),
            }
            for piece in pieces {
                draft.add(Item::RackBoard(piece));
            }
        }
        draft.tick(id, states);
        Some(Step::new(format!("board {} cut", board.saturating_add(1)), draft.changes))
    }

    /// The step that puts an offcut on the rack.
    #[must_use]
    pub fn keeping_offcut(&self, rack: RackBoard) -> Step {
        Step::new("keep an offcut", vec![self.adding(0, Item::RackBoard(rack))])
    }
}

/// How many of each part a board of the plan gives.
pub(super) fn counted(cut: &CutBoard) -> Vec<(usize, u32)> {
    let mut counts: Vec<(usize, u32)> = Vec::new();
    for placed in cut.placed() {
        match counts.iter_mut().find(|(part, _)| *part == placed.part) {
            Some((_, count)) => *count = count.saturating_add(1),
            None => counts.push((placed.part, 1)),
        }
    }
    counts
}

/// The sizes at which the plan draws a part: a piece cut by the drawing has these, whatever the job
/// wants by then. A part that lies turned by a quarter in its board is turned back.
fn drawn(kept: &CutPlan, part: usize, now: Option<&PartSizes>) -> Dimensions<Option<Length>> {
    let asked = kept.asked.parts.get(part);
    let section = asked.and_then(|part| kept.labels.section(&kept.asked, &part.section));
    let (thickness, width) = section.and_then(|section| section.size).unzip();
    let length = asked.and_then(|part| kept.labels.length(part.length).ok());
    let is_upright = now.is_some_and(|now| match (&now.thickness, &now.width) {
        (Ok(thickness), Ok(width)) => thickness > width,
        _ => false,
    });
    if is_upright == (thickness > width) {
        Dimensions { thickness, width, length }
    } else {
        Dimensions { thickness: width, width: thickness, length }
    }
}

/// Boards of the yard as they stand on the rack.
fn bought_board(kept: &CutPlan, at: usize, quantity: u32) -> Option<RackBoard> {
    let board = kept.asked.boards.get(at)?;
    let section = kept.labels.section(&kept.asked, &board.section)?;
    let (thickness, width) = section.size?;
    Some(RackBoard {
        name: format!("{}, bought", section.name),
        section: section.name.clone(),
        thickness: exact_text(thickness),
        width: exact_text(width),
        length: exact_text(kept.labels.length(board.length).ok()?),
        quantity,
        wet: false,
        sawn_ends: false,
        knots: String::new(),
    })
}

/// The changes of a step in the making. An item is changed once, however often it is touched.
struct Draft<'a> {
    job: &'a Job,
    changes: Vec<Change>,
    added: u64,
}

impl<'a> Draft<'a> {
    fn new(job: &'a Job) -> Draft<'a> {
        Draft { job, changes: Vec::new(), added: 0 }
    }

    fn add(&mut self, item: Item) -> ItemId {
        let change = self.job.adding(self.added, item);
        self.added = self.added.saturating_add(1);
        let id = change.id;
        self.changes.push(change);
        id
    }

    fn edit(&mut self, id: ItemId, edit: impl FnOnce(Item) -> Option<Item>) {
        if let Some(change) = self.changes.iter_mut().find(|change| change.id == id) {
            change.after = change.after.take().and_then(edit);
        } else if let Some(item) = self.job.item(id) {
            let after = edit(item.clone());
            self.changes.push(Change { id, before: Some(item.clone()), after });
        }
    }

    /// One less of a board on the rack. A board that is not there any more was taken off by hand.
    fn use_up(&mut self, id: ItemId) {
        self.edit(id, |item| match item {
            Item::RackBoard(board) if board.quantity <= 1 => None,
            Item::RackBoard(board) => {
                Some(Item::RackBoard(RackBoard { quantity: board.quantity - 1, ..board }))
            }
            other => Some(other),
        });
    }

    /// Fewer of a board at the yard, where the yard has only so many.
    fn take_from_yard(&mut self, kept: &CutPlan, at: usize, count: u32) {
        let Some(id) = kept.labels.boards.get(at).and_then(|label| label.item) else { return };
        if !matches!(self.job.item(id), Some(Item::YardBoard(board)) if board.quantity.is_some()) {
            return;
        }
        self.edit(id, |item| match item {
            Item::YardBoard(mut board) => {
                board.quantity = board.quantity.map(|there| there.saturating_sub(count));
                Some(Item::YardBoard(board))
            }
            other => Some(other),
        });
    }

    /// So many more pieces of a part are cut like this: those not cut yet, in their order.
    fn tick_off(&mut self, id: ItemId, count: u32, piece: &Piece) {
        self.edit(id, |item| match item {
            Item::Part(part) => {
                let ticked = (0..count).fold(part, |part, _| part.with_next_cut(piece.clone()));
                Some(Item::Part(ticked))
            }
            other => Some(other),
        });
    }

    fn tick(&mut self, plan: ItemId, boards: Vec<BoardState>) {
        let ticks = Item::CutTicks(CutTicks { plan, boards });
        match self.job.ticks_of(plan) {
            Some((id, _)) => self.edit(id, |_| Some(ticks)),
            None => drop(self.add(ticks)),
        }
    }
}
