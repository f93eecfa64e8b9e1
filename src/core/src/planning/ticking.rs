//! The steps of a plan that is kept in the job: kept, bought, cut, and come out different.
//!
//! The rack tells what is on hand. So a board that is bought goes on the rack, a board that is cut leaves it, and what
//! came off and can be used goes on it, each in the same step as the tick. To plan again from here is then only to plan
//! again: what is ticked off is not wanted any more, and what is on the rack costs nothing.

use super::report::{How, Purchase, of_that_length, shopping, worth_keeping};
use super::since::kept_options;
use crate::cutting::{CutBoard, Source};
use crate::job::{
    BoardState, Change, CutPlan, CutTicks, Dimensions, Item, ItemId, Job, PartSizes, Piece,
    RackBoard, Reckoned, Step, YardBoard,
};
use crate::measure::text::exact_text;
use crate::measure::{Length, Tape};
use crate::sheet::Bench;

/// How the names of the ticks of settings at the saw begin.
pub(crate) const CUTS: &str = "cut/";

/// How many boards of a kind, by its place in the cutting job, a plan has bought.
pub(crate) fn bought_of(kept: &CutPlan, states: &[BoardState], kind: usize) -> u32 {
    let alike =
        kept.plan.boards.iter().zip(states).filter(|(cut, state)| {
            cut.source == Source::Board(kind) && **state != BoardState::ToCut
        });
    u32::try_from(alike.count()).unwrap_or(u32::MAX)
}

/// What the boards cost that a plan and those before it have bought, in hundredths of money; those without a price are not in
/// it.
fn paid(kept: &CutPlan, states: &[BoardState]) -> i64 {
    let all = shopping(&kept.asked, &kept.plan, &kept.labels).unwrap_or_default();
    let cost = |it: &Purchase| {
        let (each, _) = it.price?;
        each.checked_mul(bought_of(kept, states, it.board).into())
    };
    all.iter().filter_map(cost).fold(kept.paid_cents, i64::saturating_add)
}

impl Job {
    /// The step that keeps a plan, in the place of the one that was there. What that one bought stays paid for.
    #[must_use]
    pub fn keeping_plan(&self, mut plan: CutPlan) -> Step {
        let before = self.find_cut_plan(plan.is_list).and_then(|id| Some((id, self.cut_plan(id)?)));
        plan.paid_cents = before.as_ref().map_or(0, |(_, (kept, states))| paid(kept, states));
        let plan = Box::new(plan);
        let Some((old, _)) = before else {
            return Step::new("keep the plan", vec![self.adding(0, Item::CutPlan(plan))]);
        };
        let mut changes = vec![self.replacing(old, Item::CutPlan(plan))];
        changes.extend(self.ticks_of(old).map(|(id, _)| self.removing(id)));
        // Settings that were ripped or resawn were those of the old boards.
        changes.extend(self.without_ticks_of(CUTS));
        Step::new("keep the new plan", changes)
    }

    /// The step that keeps a plan made without the section and length of one board of its job: the yard has none of it.
    #[must_use]
    pub fn taking_without(&self, plan: CutPlan, board: usize) -> Step {
        let mut gone = Draft::new(self);
        for at in of_that_length(&plan.asked, board) {
            let Some(id) = plan.labels.boards.get(at).and_then(|label| label.item) else {
                continue;
            };
            gone.edit(id, |item| match item {
                Item::YardBoard(board) => {
                    Some(Item::YardBoard(YardBoard { quantity: Some(0), ..board }))
                }
                other => Some(other),
            });
        }
        let name = plan.asked.boards.get(board).and_then(|board| {
            let section = plan.labels.section(&plan.asked, &board.section)?;
            let length = exact_text(plan.labels.length(board.length).ok()?);
            Some(format!("{} of {length}", section.name))
        });
        let mut step = self.keeping_plan(plan);
        step.label = format!("no {} at the yard", name.unwrap_or_default());
        step.changes.extend(gone.changes);
        step
    }

    /// The step that throws a plan away with its ticks. What was put on the rack stays there.
    #[must_use]
    pub fn dropping_plan(&self, id: ItemId) -> Step {
        let mut changes = vec![self.removing(id)];
        changes.extend(self.ticks_of(id).map(|(id, _)| self.removing(id)));
        changes.extend(self.without_ticks_of(CUTS));
        Step::new("throw the plan away", changes)
    }

    /// The step after the store: every board of the shopping list is bought and goes on the rack, or those of one kind
    /// `only`, by its place in the cutting job. `None` when there is nothing left to buy.
    #[must_use]
    pub fn buying(&self, id: ItemId, only: Option<usize>) -> Option<Step> {
        let (kept, mut states) = self.cut_plan(id)?;
        let mut draft = Draft::new(self);
        for at in (0..kept.asked.boards.len()).filter(|at| only.is_none_or(|only| only == *at)) {
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
            draft.change_yard(kept, at, |there| there.saturating_sub(count));
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

    /// The step that takes the tick back: boards of one kind are not bought, as far as they are still whole. They leave
    /// the rack. `None` when there are none.
    #[must_use]
    pub fn not_bought(&self, id: ItemId, kind: usize) -> Option<Step> {
        let (kept, mut states) = self.cut_plan(id)?;
        let mut draft = Draft::new(self);
        let mut count = 0_u32;
        for (cut, state) in kept.plan.boards.iter().zip(&mut states) {
            if let (Source::Board(at), BoardState::Bought(rack)) = (cut.source, &*state)
                && at == kind
            {
                if let Some(rack) = rack {
                    draft.use_up(*rack);
                }
                *state = BoardState::ToCut;
                count = count.saturating_add(1);
            }
        }
        if count == 0 {
            return None;
        }
        draft.change_yard(kept, kind, |there| there.saturating_add(count));
        draft.tick(id, states);
        Some(Step::new("boards not bought", draft.changes))
    }

    /// The step after a board is cut as planned: its parts are ticked off, it leaves the rack, and its offcuts of at
    /// least `keep_from` go on it. `None` when it is cut already, or there is no such board.
    #[must_use]
    pub fn cutting(&self, id: ItemId, board: usize, keep_from: Length) -> Option<Step> {
        let (kept, _) = self.cut_plan(id)?;
        let cut = kept.plan.boards.get(board)?;
        let rack = self.offcuts(kept, board, keep_from)?;
        self.after_cut(id, board, &counted(cut), rack, BoardState::Cut)
    }

    /// What comes off a board of a plan and goes on the rack.
    fn offcuts(&self, kept: &CutPlan, board: usize, keep_from: Length) -> Option<Vec<RackBoard>> {
        let how = How { tape: Tape::SIXTEENTHS, keep_from };
        let keep = worth_keeping(&kept.asked, &kept.plan, &kept.labels, board, how)?;
        // A board of the rack that is still wet leaves wet offcuts.
        let wet = match kept.plan.boards.get(board)?.source {
            Source::Board(_) => false,
            Source::Scrap(at) => {
                let item = kept.labels.scraps.get(at).and_then(|label| label.item);
                matches!(item.and_then(|id| self.item(id)), Some(Item::RackBoard(board)) if board.wet)
            }
        };
        let rack = keep.into_iter().filter_map(|keep| keep.rack);
        Some(rack.map(|board| RackBoard { wet, ..board }).collect())
    }

    /// The step by which single pieces are ticked off, at the sizes wanted of them now: by whom it may be, they are
    /// taken from the boards of the plan in use that give them. The first piece of a board takes it off the rack, and
    /// with the last it is cut up and leaves its offcuts. `None` when all of them are cut.
    #[must_use]
    pub fn cutting_pieces(
        &self,
        reckoned: &Reckoned,
        bench: &Bench,
        pieces: &[(ItemId, usize)],
    ) -> Option<Step> {
        let mut draft = Draft::new(self);
        let plan = self.find_cut_plan(false).and_then(|id| Some((id, self.cut_plan(id)?)));
        let mut boards = plan.as_ref().map_or_else(Vec::new, |(_, (_, states))| states.clone());
        let mut names = Vec::new();
        for (id, index) in pieces {
            let Some(Item::Part(part)) = self.item(*id) else { continue };
            if part.piece(*index).is_cut() {
                continue;
            }
            let wanted = reckoned.part(*id).map(PartSizes::all_wanted).unwrap_or_default();
            draft.edit(*id, |item| match item {
                Item::Part(part) => {
                    let ticked = part.piece(*index).ticked(wanted);
                    Some(Item::Part(part.with_piece(*index, ticked)))
                }
                other => Some(other),
            });
            names.push(format!("{} {}", part.name, index.saturating_add(1)));
            if let Some((_, (kept, _))) = &plan {
                book(&mut draft, kept, &mut boards, *id);
            }
        }
        if let Some((id, (kept, before))) = &plan
            && boards != *before
        {
            let keep_from = kept_options(self, kept, reckoned, bench).map(|it| it.keep_from);
            for (board, state) in boards.iter_mut().enumerate() {
                let Some(cut) = kept.plan.boards.get(board) else { continue };
                let is_last =
                    counted(cut).iter().all(|(part, most)| state.begun_of(*part) >= *most);
                if matches!(state, BoardState::Begun(_)) && is_last {
                    *state = BoardState::Cut;
                    let left = keep_from.and_then(|from| self.offcuts(kept, board, from));
                    for left in left.into_iter().flatten() {
                        draft.add(Item::RackBoard(left));
                    }
                }
            }
            draft.tick(*id, boards);
        }
        let label = match names.len() {
            0 => return None,
            1 => format!("cut {}", names.concat()),
            count => format!("cut {count} pieces"),
        };
        Some(Step::new(label, draft.changes))
    }

    /// The step that takes the tick of one piece back: it was a slip. Where its board is begun, the board gives one
    /// more again.
    #[must_use]
    pub fn not_cutting(&self, id: ItemId, index: usize) -> Option<Step> {
        let Some(Item::Part(part)) = self.item(id) else { return None };
        let mut draft = Draft::new(self);
        draft.edit(id, |item| match item {
            Item::Part(part) => {
                let back = part.piece(index).put_back();
                Some(Item::Part(part.with_piece(index, back)))
            }
            other => Some(other),
        });
        let plan = self.find_cut_plan(false).and_then(|id| Some((id, self.cut_plan(id)?)));
        if let Some((plan, (kept, mut states))) = plan {
            let place = kept.labels.parts.iter().position(|label| label.item == Some(id));
            let begun = states.iter_mut().rev().find_map(|state| match state {
                BoardState::Begun(cut) => {
                    cut.iter_mut().find(|(part, count)| Some(*part) == place && *count > 0)
                }
                _ => None,
            });
            if let Some((_, count)) = begun {
                *count = count.saturating_sub(1);
                draft.tick(plan, states);
            }
        }
        let label = format!("put {} {} back", part.name, index.saturating_add(1));
        Some(Step::new(label, draft.changes))
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
                // Those cut from it one by one are ticked off already.
                let count = count.saturating_sub(before.begun_of(part));
                let item = kept.labels.parts.get(part)?.item?;
                draft.tick_off(item, count, &Piece::cut(drawn(kept, part, reckoned.part(item))));
            }
            match (before, cut.source) {
                // It left the rack when it was begun.
                (BoardState::Begun(_), _) => {}
                (BoardState::Bought(Some(rack)), _) => draft.use_up(rack),
                (_, Source::Board(at)) => {
                    draft.change_yard(kept, at, |there| there.saturating_sub(1));
                }
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

/// Takes one piece of a part from the board of a plan that gives it: one that is begun, else the first that is whole.
fn book(draft: &mut Draft, kept: &CutPlan, boards: &mut [BoardState], id: ItemId) {
    let Some(part) = kept.labels.parts.iter().position(|label| label.item == Some(id)) else {
        return;
    };
    let gives = |at: usize, state: &BoardState| {
        let most = kept.plan.boards.get(at).map(counted).into_iter().flatten();
        let most = most.filter(|(known, _)| *known == part).map(|(_, count)| count).sum::<u32>();
        !state.is_cut() && state.begun_of(part) < most
    };
    let all = || boards.iter().enumerate().filter(|(at, state)| gives(*at, state));
    let begun = all().find(|(_, state)| matches!(state, BoardState::Begun(_)));
    let Some((at, _)) = begun.or_else(|| all().next()) else { return };
    let (Some(state), Some(cut)) = (boards.get_mut(at), kept.plan.boards.get(at)) else { return };
    match (&*state, cut.source) {
        (BoardState::Begun(_), _) => {}
        (BoardState::Bought(Some(rack)), _) => draft.use_up(*rack),
        (_, Source::Board(at)) => draft.change_yard(kept, at, |there| there.saturating_sub(1)),
        (_, Source::Scrap(at)) => {
            if let Some(rack) = kept.labels.scraps.get(at).and_then(|label| label.item) {
                draft.use_up(rack);
            }
        }
    }
    let mut cut = match core::mem::take(state) {
        BoardState::Begun(cut) => cut,
        _ => Vec::new(),
    };
    match cut.iter_mut().find(|(known, _)| *known == part) {
        Some((_, count)) => *count = count.saturating_add(1),
        None => cut.push((part, 1)),
    }
    *state = BoardState::Begun(cut);
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

    /// Fewer or more of a board at the yard, where the yard has only so many.
    fn change_yard(&mut self, kept: &CutPlan, at: usize, change: impl Fn(u32) -> u32) {
        let Some(id) = kept.labels.boards.get(at).and_then(|label| label.item) else { return };
        if !matches!(self.job.item(id), Some(Item::YardBoard(board)) if board.quantity.is_some()) {
            return;
        }
        self.edit(id, |item| match item {
            Item::YardBoard(mut board) => {
                board.quantity = board.quantity.map(&change);
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
