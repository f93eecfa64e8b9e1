//! [`CutPlan`]: a plan kept in the job, and [`CutTicks`]: what has been bought and cut of it.
//!
//! The rack tells what is on hand. So a board that is bought goes on the rack, a board that is cut leaves it, and what
//! came off and can be used goes on it, each in the same step as the tick. To plan again from here is then only to plan
//! again: what is ticked off is not wanted any more, and what is on the rack costs nothing.
//!
//! A quick list has no rack. What is left of it is worked out from its ticks, in [`list_rest`].

use super::{Change, Item, ItemId, Job, Piece, RackBoard, Step};
use crate::cutting::labels::Labels;
use crate::cutting::report::{How, worth_keeping};
use crate::cutting::wanted::Wanted;
use crate::cutting::{self, CutBoard, Done, DoneProblem, Ends, Plan, Scrap, Source, replan_from};
use crate::measure::text::{TextProblem, exact_text};
use crate::measure::{Length, Tape};

/// A plan with all that it was made from. It does not change when it is ticked off.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct CutPlan {
    /// What the user calls it.
    pub title: String,
    /// It comes from a quick list, not from the parts of the job.
    pub is_list: bool,
    /// Field ids and texts of the form that it was made with.
    pub entries: Vec<(String, String)>,
    /// What was asked of the planner.
    pub asked: cutting::Job,
    /// The names behind it.
    pub labels: Labels,
    /// How many pieces of each part were wanted, without spares.
    pub pieces: Vec<u32>,
    /// The plan.
    pub plan: Plan,
    /// No plan costs less.
    pub bound_cents: i64,
}

/// What has been bought and cut of a plan.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct CutTicks {
    /// The [`CutPlan`].
    pub plan: ItemId,
    /// One for each board of the plan.
    pub boards: Vec<BoardState>,
}

/// How far one board of a plan is.
#[derive(Clone, Debug, PartialEq, Eq, Default)]
pub enum BoardState {
    /// On the rack from the beginning, or still at the yard.
    #[default]
    ToCut,
    /// Bought and whole; on the rack as this item, where the plan is not a quick list's.
    Bought(Option<ItemId>),
    /// Cut as planned.
    Cut,
    /// Cut, and something came out different.
    Different {
        /// What is good all the same: part by its place in the cutting job, and how many.
        good: Vec<(usize, u32)>,
        /// Lengths left of a board of a quick list, as measured; those of the job are on the rack.
        left: Vec<String>,
    },
}

impl BoardState {
    /// Whether the board is cut up.
    #[must_use]
    pub fn is_cut(&self) -> bool {
        matches!(self, BoardState::Cut | BoardState::Different { .. })
    }
}

/// Why what is left of a quick list cannot be worked out.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum RestProblem {
    /// There is no such plan, or it is not a quick list's.
    NotThere,
    /// A length left over cannot be read.
    Text(TextProblem),
    /// More is ticked than the plan holds.
    Done(DoneProblem),
    /// The lengths have no unit in common that is coarse enough.
    TooFine,
}

impl Job {
    /// A plan with its ticks.
    #[must_use]
    pub fn cut_plan(&self, id: ItemId) -> Option<(&CutPlan, Vec<BoardState>)> {
        let Some(Item::CutPlan(plan)) = self.item(id) else { return None };
        let mut boards = self.ticks_of(id).map_or_else(Vec::new, |(_, ticks)| ticks.boards.clone());
        boards.resize(plan.plan.boards.len(), BoardState::ToCut);
        Some((plan, boards))
    }

    /// The plan of the job's own parts, or of its quick list.
    #[must_use]
    pub fn find_cut_plan(&self, is_list: bool) -> Option<ItemId> {
        let mut plans = self.items().filter_map(|(id, item)| match item {
            Item::CutPlan(plan) if plan.is_list == is_list => Some(id),
            _ => None,
        });
        plans.next()
    }

    pub(super) fn ticks_of(&self, plan: ItemId) -> Option<(ItemId, &CutTicks)> {
        self.items().find_map(|(id, item)| match item {
            Item::CutTicks(ticks) if ticks.plan == plan => Some((id, ticks)),
            _ => None,
        })
    }

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
            for &(part, count) in good {
                draft.tick_off(kept.labels.parts.get(part)?.item?, count);
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
fn counted(cut: &CutBoard) -> Vec<(usize, u32)> {
    let mut counts: Vec<(usize, u32)> = Vec::new();
    for placed in cut.placed() {
        match counts.iter_mut().find(|(part, _)| *part == placed.part) {
            Some((_, count)) => *count = count.saturating_add(1),
            None => counts.push((placed.part, 1)),
        }
    }
    counts
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

    /// So many more pieces of a part are done: those not touched yet, in their order.
    fn tick_off(&mut self, id: ItemId, count: u32) {
        self.edit(id, |item| match item {
            Item::Part(mut part) => {
                for _ in 0..count {
                    match part.pieces.iter_mut().find(|piece| !piece.done) {
                        Some(piece) => piece.done = true,
                        None => part.pieces.push(Piece { done: true, as_cut: None }),
                    }
                }
                Some(Item::Part(part))
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

/// What is left of a quick list: cut parts are not wanted any more, bought boards and offcuts of at least `keep_from` cost
/// nothing.
///
/// # Errors
///
/// [`RestProblem`] for a plan that is not a quick list's, and for lengths left over that cannot be read.
pub fn list_rest(job: &Job, id: ItemId, keep_from: Length) -> Result<Wanted, RestProblem> {
    let (kept, states) = job.cut_plan(id).ok_or(RestProblem::NotThere)?;
    if !kept.is_list {
        return Err(RestProblem::NotThere);
    }
    let lengths = measured(job, &states)?;
    let (asked, unit) =
        cutting::refined(&kept.asked, kept.labels.unit, &lengths).ok_or(RestProblem::TooFine)?;
    let labels = Labels { unit, ..kept.labels.clone() };
    let scaled = |length: Length| {
        let inches = length.in_inches();
        unit.units(inches.numer(), inches.denom()).ok_or(RestProblem::TooFine)
    };
    let mut done = Done::default();
    let mut names: Vec<String> = Vec::new();
    let mut lengths = lengths.iter();
    let section = asked.sections.first().map_or(String::new(), |section| section.id.clone());
    for (number, (cut, state)) in kept.plan.boards.iter().zip(&states).enumerate() {
        let mut left: Vec<Length> = Vec::new();
        match state {
            BoardState::ToCut => continue,
            BoardState::Bought(_) => {
                if let Source::Board(at) = cut.source {
                    done.bought.push((at, 1));
                }
                continue;
            }
            BoardState::Cut => {
                done.parts.extend(counted(cut));
                let how = How { tape: Tape::SIXTEENTHS, keep_from };
                let keep = worth_keeping(&kept.asked, &kept.plan, &kept.labels, number, how);
                for keep in keep.into_iter().flatten() {
                    left.extend(core::iter::repeat_n(
                        keep.length,
                        usize::try_from(keep.count).unwrap_or(0),
                    ));
                }
            }
            BoardState::Different { good, left: texts } => {
                done.parts.extend(good.iter().copied());
                left.extend(lengths.by_ref().take(texts.len()));
            }
        }
        done.used.push((cut.source, 1));
        for length in left {
            let id = format!("left {}", done.new_scraps.len().saturating_add(1));
            names.push(format!("left of board {}", number.saturating_add(1)));
            done.new_scraps.push(Scrap {
                id,
                section: section.clone(),
                length: scaled(length)?,
                quantity: 1,
                trims: Ends::default(),
                knots: Vec::new(),
            });
        }
    }
    rest(&asked, labels, &done, &names)
}

fn rest(
    asked: &cutting::Job,
    mut labels: Labels,
    done: &Done,
    names: &[String],
) -> Result<Wanted, RestProblem> {
    // Boards of one kind that are bought become one scrap each; an id must not come twice.
    let mut bought: Vec<(usize, u32)> = Vec::new();
    for &(at, count) in &done.bought {
        match bought.iter_mut().find(|(known, _)| *known == at) {
            Some((_, all)) => *all = all.saturating_add(count),
            None => bought.push((at, count)),
        }
    }
    let label = |name: String| cutting::labels::Label { item: None, name };
    for (at, _) in &bought {
        let name = labels.boards.get(*at).map_or("", |label| &label.name);
        let name = format!("{name}, bought");
        labels.scraps.push(label(name));
    }
    labels.scraps.extend(names.iter().map(|name| label(name.clone())));
    let done = Done { bought, ..done.clone() };
    let job = replan_from(asked, &done).map_err(RestProblem::Done)?;
    let pieces = job.parts.iter().map(|part| part.quantity).collect();
    Ok(Wanted {
        job,
        labels,
        pieces,
        left_out: Vec::new(),
        notes: Vec::new(),
        cautions: vec![crate::sheet::Caution::DustAndNoise],
    })
}

/// The lengths left over of boards that came out different, in the order of the boards.
fn measured(job: &Job, states: &[BoardState]) -> Result<Vec<Length>, RestProblem> {
    let mut lengths = Vec::new();
    for state in states {
        let BoardState::Different { left, .. } = state else { continue };
        for text in left {
            let formula = crate::measure::text::parse(text, &crate::measure::text::NoNames);
            let length = formula.and_then(|f| f.length(job.unit, &crate::measure::text::NoNames));
            lengths.push(length.map_err(RestProblem::Text)?);
        }
    }
    Ok(lengths)
}
