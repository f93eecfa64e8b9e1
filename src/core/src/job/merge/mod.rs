//! A step made from an older state of the job: a three-way merge, field by field, of what an item
//! was to the maker of the step, what the step makes of it, and what it is now.
//!
//! Only what both sides changed to different things is a conflict. Boards that are ticked off are
//! counted: what a tick takes off the rack is taken off what is there now, and the pieces it ticks
//! are the next ones that are not done.

#[cfg(test)]
mod tests;

use std::collections::BTreeMap;

use super::conflict::Clash;
use super::{
    BoardState, Change, CloseEnough, Conflict, CutTicks, Dimension, Item, ItemId, Job, Kept, Match,
    Measure, Part, Piece, RackBoard, Round, Saw, Screw, Sketch, Step, Ticked, Written, YardBoard,
};
use crate::calculators;
use crate::order::map_of;

/// The words of what somebody said to leave as it is.
const LEFT: &str = "left as it is";

/// Who makes the step.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(super) enum Maker {
    /// A page, which may not know which ids were given out since.
    Page,
    /// The history: an item that it puts back has the id that it had.
    History,
}

impl Job {
    /// The step as it can be made of the job as it is now, though its maker saw an older state.
    ///
    /// What only one side changed stays changed. What is so already is left out, so a step that
    /// comes twice does nothing the second time. An item that is added under an id that was given
    /// out in the meantime gets a fresh one, and what the step says of it follows; items added
    /// keep their order.
    ///
    /// # Errors
    ///
    /// [`Conflict`] with the items and fields that both sides changed to different things.
    pub fn rebased(&self, step: &Step) -> Result<Step, Conflict> {
        self.merged(step, Maker::Page)
    }

    pub(super) fn merged(&self, step: &Step, maker: Maker) -> Result<Step, Conflict> {
        let step = &step.clone().with_visible_names();
        let mut made = Step::new(step.label.clone(), Vec::new());
        if self.is_as_after(step) {
            return Ok(made);
        }
        let is_tick = |change: &Change| {
            let item = change.after.as_ref().or(change.before.as_ref());
            matches!(item, Some(Item::CutTicks(_)))
        };
        // A tick alone, as in a quick list, takes nothing off the rack.
        let counts = step.changes.len() > 1 && step.changes.iter().any(is_tick);
        let ids = if maker == Maker::Page { self.new_ids(step, counts) } else { BTreeMap::new() };
        let mut conflict = Conflict::default();
        // What the items touched so far come to.
        let mut touched: BTreeMap<ItemId, Option<Item>> = BTreeMap::new();
        for change in &step.changes {
            let mut change = change.clone();
            change.renumber(&ids);
            let Change { id, mut before, after } = change;
            let now = touched.remove(&id).unwrap_or_else(|| self.item(id).cloned());
            if let (None, Some(Item::CutTicks(_)), Some(Item::CutTicks(there))) =
                (&before, &after, &now)
            {
                before = Some(Item::CutTicks(CutTicks { plan: there.plan, boards: Vec::new() }));
            }
            if let (None, Some(Item::Ticked(_)), Some(Item::Ticked(_))) = (&before, &after, &now) {
                before = Some(Item::Ticked(Ticked::default()));
            }
            let mut merge = Merge { counts, clashes: Vec::new(), is_whole: false };
            let merged = merge.item(before.as_ref(), after.as_ref(), now.clone());
            if merge.is_whole || !merge.clashes.is_empty() {
                let name = now.as_ref().or(before.as_ref()).map_or("", Item::name).to_owned();
                conflict.items.push(Clash { id, name, what: merge.clashes });
            }
            touched.insert(id, merged.clone());
            if merged != now {
                made.changes.push(Change { id, before: now, after: merged });
            }
        }
        if let Some((before, after)) = &step.title
            && before != after
            && self.title != *after
        {
            conflict.title = self.title != *before;
            made.title = Some((self.title.clone(), after.clone()));
        }
        conflict.items.extend(self.ticks_left_behind(step));
        if conflict == Conflict::default() { Ok(made) } else { Err(conflict) }
    }

    /// Boards that were cut of a plan which the step takes away or replaces, its maker not knowing
    /// of them.
    fn ticks_left_behind(&self, step: &Step) -> Option<Clash> {
        let of_plan = |change: &Change| match change.before {
            Some(Item::CutPlan(_)) if change.before != change.after => self.ticks_of(change.id),
            _ => None,
        };
        let (id, _) = step.changes.iter().find_map(of_plan)?;
        let is_known = step.changes.iter().any(|change| change.id == id);
        let name = self.item(id).map_or("", Item::name).to_owned();
        (!is_known).then(|| Clash { id, name, what: Vec::new() })
    }

    /// Whether all that a step wants is so.
    fn is_as_after(&self, step: &Step) -> bool {
        let after = map_of(step.changes.iter().map(|it| (it.id, it.after.as_ref())));
        after.into_iter().all(|(id, after)| self.item(id) == after)
            && step.title.as_ref().is_none_or(|(_, after)| *after == self.title)
    }

    /// The ids of what a step adds, where they were given out since: an id is never used twice.
    fn new_ids(&self, step: &Step, counts: bool) -> BTreeMap<ItemId, ItemId> {
        let mut ids = BTreeMap::new();
        let highest = step.changes.iter().map(|change| change.id.0).max().unwrap_or(0);
        let mut next = self.next_id().0.max(highest.saturating_add(1));
        let added = || step.changes.iter().filter(|change| change.before.is_none());
        // The same size put in twice is one; two offcuts alike are two.
        let is_so = |change: &Change| self.item(change.id) == change.after.as_ref();
        let are_so = !counts && added().all(is_so);
        for change in added() {
            // A plan has one list of ticks, and so has the job, whoever began it.
            let there = match &change.after {
                Some(Item::CutTicks(ticks)) => self.ticks_of(ticks.plan).map(|(id, _)| id),
                Some(Item::Ticked(_)) => self.ticked_item().map(|(id, _)| id),
                _ => None,
            };
            if let Some(id) = there {
                ids.insert(change.id, id);
            } else if change.id < self.next_id() && !are_so {
                ids.insert(change.id, ItemId(next));
                next = next.saturating_add(1);
            }
        }
        ids
    }
}

impl Change {
    /// Puts new ids in the place of old ones, wherever the change names an item.
    fn renumber(&mut self, ids: &BTreeMap<ItemId, ItemId>) {
        let new = |id: &mut ItemId| {
            if let Some(new) = ids.get(id) {
                *id = *new;
            }
        };
        if ids.is_empty() {
            return;
        }
        new(&mut self.id);
        for item in [&mut self.before, &mut self.after].into_iter().flatten() {
            match item {
                Item::Measure(Measure { written: Written::Linked(linked), .. }) => {
                    new(&mut linked.kept);
                }
                Item::Part(Part { made: Some(made), .. }) => new(&mut made.kept),
                Item::Match(group) => group.measures.iter_mut().for_each(new),
                Item::CutTicks(ticks) => {
                    new(&mut ticks.plan);
                    for board in &mut ticks.boards {
                        if let BoardState::Bought(Some(id)) = board {
                            new(id);
                        }
                    }
                }
                Item::CutPlan(plan) => {
                    let labels = &mut plan.labels;
                    let labels = [&mut labels.parts, &mut labels.boards, &mut labels.scraps];
                    labels.into_iter().flatten().filter_map(|it| it.item.as_mut()).for_each(new);
                }
                Item::Measure(_)
                | Item::Part(_)
                | Item::Kept(_)
                | Item::RackBoard(_)
                | Item::YardBoard(_)
                | Item::Round(_)
                | Item::Saw(_)
                | Item::Screw(_)
                | Item::Sketch(_)
                | Item::CloseEnough(_)
                | Item::Ticked(_) => {}
            }
        }
    }
}

/// One item in the merging.
struct Merge {
    /// Numbers of boards are counted on from what is there.
    counts: bool,
    /// What both sides changed to different things.
    clashes: Vec<String>,
    /// All of it is in question.
    is_whole: bool,
}

impl Merge {
    fn clash(&mut self, what: &str) {
        self.clashes.push(what.to_owned());
    }

    /// What an item comes to; what it is now, where there is a clash.
    fn item(
        &mut self,
        before: Option<&Item>,
        after: Option<&Item>,
        now: Option<Item>,
    ) -> Option<Item> {
        if now.as_ref() == before {
            return after.cloned();
        }
        let is_agreed = now.as_ref() == after && !self.counts;
        if before == after || is_agreed {
            return now;
        }
        let mut now = match (before, after, now) {
            (Some(before), Some(after), Some(mut now)) => {
                self.fields(before, after, &mut now);
                Some(now)
            }
            (Some(Item::RackBoard(before)), None, Some(Item::RackBoard(mut now)))
                if self.counts
                    && RackBoard { quantity: before.quantity, ..now.clone() } == *before =>
            {
                self.count("how many", before.quantity, 0, &mut now.quantity);
                Some(Item::RackBoard(now))
            }
            (Some(_), _, None) => {
                self.clash("taken out");
                None
            }
            (_, None, now) | (None, _, now) => {
                self.is_whole = true;
                now
            }
        };
        // The last one of a board on the rack.
        if self.counts && matches!(&now, Some(Item::RackBoard(board)) if board.quantity == 0) {
            now = None;
        }
        now
    }

    fn fields(&mut self, before: &Item, after: &Item, now: &mut Item) {
        match (before, after, now) {
            (Item::Measure(b), Item::Measure(a), Item::Measure(n)) => self.measure(b, a, n),
            (Item::Part(b), Item::Part(a), Item::Part(n)) => self.part(b, a, n),
            (Item::Kept(b), Item::Kept(a), Item::Kept(n)) => self.kept(b, a, n),
            (Item::Match(b), Item::Match(a), Item::Match(n)) => self.group(b, a, n),
            (Item::RackBoard(b), Item::RackBoard(a), Item::RackBoard(n)) => {
                self.rack_board(b, a, n);
            }
            (Item::YardBoard(b), Item::YardBoard(a), Item::YardBoard(n)) => {
                self.yard_board(b, a, n);
            }
            (Item::Round(b), Item::Round(a), Item::Round(n)) => {
                let Round { name, diameter } = n;
                self.field("name", &b.name, &a.name, name);
                self.field("diameter", &b.diameter, &a.diameter, diameter);
            }
            (Item::Saw(b), Item::Saw(a), Item::Saw(n)) => {
                let Saw { name, kerf, reach, fence } = n;
                self.field("name", &b.name, &a.name, name);
                self.field("kerf", &b.kerf, &a.kerf, kerf);
                self.field("reach", &b.reach, &a.reach, reach);
                self.field("fence", &b.fence, &a.fence, fence);
            }
            (Item::Screw(b), Item::Screw(a), Item::Screw(n)) => {
                let Screw { gauge, length, quantity } = n;
                self.field("gauge", &b.gauge, &a.gauge, gauge);
                self.field("length", &b.length, &a.length, length);
                self.field("how many", &b.quantity, &a.quantity, quantity);
            }
            (Item::Sketch(b), Item::Sketch(a), Item::Sketch(n)) => self.sketch(b, a, n),
            (Item::CutTicks(b), Item::CutTicks(a), Item::CutTicks(n)) => self.ticks(b, a, n),
            (Item::CloseEnough(b), Item::CloseEnough(a), Item::CloseEnough(n)) => {
                let CloseEnough { size } = n;
                self.field("close enough", &b.size, &a.size, size);
            }
            (Item::Ticked(b), Item::Ticked(a), Item::Ticked(n)) => self.ticked(b, a, n),
            // A plan is made as a whole.
            _ => self.is_whole = true,
        }
    }

    /// What one side alone changed is taken; what both did alike, too.
    fn field<T: Clone + PartialEq>(&mut self, what: &str, before: &T, after: &T, now: &mut T) {
        if !take(before, after, now) {
            self.clash(what);
        }
    }

    /// A number of boards: where a tick takes some, it takes them off what is there.
    fn count(&mut self, what: &str, before: u32, after: u32, now: &mut u32) {
        if !self.counts {
            return self.field(what, &before, &after, now);
        }
        let counted =
            i64::from(*now).saturating_add(i64::from(after)).saturating_sub(before.into());
        match u32::try_from(counted) {
            Ok(counted) => *now = counted,
            Err(_) => self.clash(what),
        }
    }

    fn measure(&mut self, b: &Measure, a: &Measure, now: &mut Measure) {
        let Measure { rank, name, kind, written, as_cut, is_cut, wait, note, left, is_ours, usual } =
            now;
        self.field("place in the list", &b.rank, &a.rank, rank);
        self.field("name", &b.name, &a.name, name);
        self.field("a length or a number", &b.kind, &a.kind, kind);
        self.field("planned", &b.written, &a.written, written);
        self.field("the tape says", &b.as_cut, &a.as_cut, as_cut);
        self.field("cut already", &b.is_cut, &a.is_cut, is_cut);
        self.field("measure it first", &b.wait, &a.wait, wait);
        self.field("note", &b.note, &a.note, note);
        self.field(LEFT, &b.left, &a.left, left);
        self.field("our example", &b.is_ours, &a.is_ours, is_ours);
        self.field("published as", &b.usual, &a.usual, usual);
    }

    fn part(&mut self, b: &Part, a: &Part, now: &mut Part) {
        let Part {
            rank,
            name,
            quantity,
            thickness,
            width,
            length,
            stock,
            grain,
            show_face,
            hand,
            may_rip,
            may_resaw,
            note,
            pieces,
            made,
        } = now;
        self.field("place in the list", &b.rank, &a.rank, rank);
        self.field("name", &b.name, &a.name, name);
        self.field("how many", &b.quantity, &a.quantity, quantity);
        self.field("thickness", &b.thickness, &a.thickness, thickness);
        self.field("width", &b.width, &a.width, width);
        self.field("length", &b.length, &a.length, length);
        self.field("cut from", &b.stock, &a.stock, stock);
        self.field("grain", &b.grain, &a.grain, grain);
        self.field("show face", &b.show_face, &a.show_face, show_face);
        self.field("left and right", &b.hand, &a.hand, hand);
        self.field("may be ripped", &b.may_rip, &a.may_rip, may_rip);
        self.field("may be resawn", &b.may_resaw, &a.may_resaw, may_resaw);
        self.field("note", &b.note, &a.note, note);
        self.pieces(&b.pieces, &a.pieces, pieces);
        self.field("made from a kept calculator", &b.made, &a.made, made);
    }

    /// Piece by piece. One that is not listed is not touched yet.
    fn pieces(&mut self, before: &[Piece], after: &[Piece], now: &mut Vec<Piece>) {
        let mut to_move = Vec::new();
        let untouched = Piece::default();
        let length = changed_length(before.len(), after.len(), now.len());
        now.resize(now.len().max(after.len()).max(before.len()), Piece::default());
        for (at, now) in now.iter_mut().enumerate() {
            let (b, a) =
                (before.get(at).unwrap_or(&untouched), after.get(at).unwrap_or(&untouched));
            let number = at.saturating_add(1);
            if self.counts && !b.is_cut() && a.is_cut() && now.is_cut() {
                to_move.push(Piece { tape: None, ..a.clone() }.looked_at_again());
            } else {
                // Cut, and at which sizes, is one thing.
                let mut tick = (now.state, now.recorded.clone());
                let is_taken =
                    take(&(b.state, b.recorded.clone()), &(a.state, a.recorded.clone()), &mut tick);
                if !is_taken {
                    self.clash(&format!("piece {number}, cut already"));
                }
                (now.state, now.recorded) = tick;
            }
            for of in Dimension::ALL {
                let text = |piece: &Piece| piece.tape(of).map(str::to_owned);
                let mut tape = text(now);
                if !take(&text(b), &text(a), &mut tape) {
                    let which = match of {
                        Dimension::Length => String::new(),
                        of => format!("{} ", of.word()),
                    };
                    self.clash(&format!("piece {number}, {which}the tape says"));
                }
                *now = core::mem::take(now).measured(of, tape);
            }
            let mut left = now.left_so();
            if !take(&b.left_so(), &a.left_so(), &mut left) {
                self.clash(&format!("piece {number}, {LEFT}"));
            }
            (now.left, now.shims) = left;
        }
        shorten(now, length);
        for piece in to_move {
            match now.iter_mut().find(|piece| !piece.is_cut()) {
                Some(place) => *place = piece,
                None => now.push(piece),
            }
        }
    }

    /// Entry by entry.
    fn kept(&mut self, b: &Kept, a: &Kept, now: &mut Kept) {
        let Kept { rank, title, slug, entries, left } = now;
        self.field("place in the list", &b.rank, &a.rank, rank);
        self.field("name", &b.title, &a.title, title);
        self.field("calculator", &b.slug, &a.slug, slug);
        self.field(LEFT, &b.left, &a.left, left);
        let text = |entries: &[(String, String)], id: &str| {
            entries.iter().find(|(known, _)| known == id).map(|(_, text)| text.clone())
        };
        let mut ids: Vec<&String> = Vec::new();
        for (id, _) in b.entries.iter().chain(&a.entries) {
            if !ids.contains(&id) {
                ids.push(id);
            }
        }
        for id in ids {
            let mut merged = text(entries, id);
            if !take(&text(&b.entries, id), &text(&a.entries, id), &mut merged) {
                let fields = calculators::find(slug).map_or(&[][..], |it| it.fields);
                let field = fields.iter().find(|field| field.id == *id);
                self.clash(&field.map_or(id.clone(), |field| field.label.to_lowercase()));
            }
            let place = entries.iter().position(|(known, _)| known == id);
            match (place, merged) {
                (Some(at), Some(merged)) => {
                    if let Some((_, text)) = entries.get_mut(at) {
                        *text = merged;
                    }
                }
                (Some(at), None) => drop(entries.remove(at)),
                (None, Some(merged)) => entries.push((id.clone(), merged)),
                (None, None) => {}
            }
        }
    }

    /// The members are a set: what one side took out is out, what one side put in is in.
    fn group(&mut self, b: &Match, a: &Match, now: &mut Match) {
        let Match { name, measures, drift, left } = now;
        self.field("name", &b.name, &a.name, name);
        self.field("may drift", &b.drift, &a.drift, drift);
        self.field(LEFT, &b.left, &a.left, left);
        if !take(&b.measures, &a.measures, measures) {
            measures.retain(|id| a.measures.contains(id) || !b.measures.contains(id));
            let put_in = a.measures.iter().filter(|id| !b.measures.contains(id));
            for id in put_in {
                if !measures.contains(id) {
                    measures.push(*id);
                }
            }
        }
    }

    fn rack_board(&mut self, b: &RackBoard, a: &RackBoard, now: &mut RackBoard) {
        let RackBoard { name, section, thickness, width, length, quantity, wet, sawn_ends, knots } =
            now;
        self.field("name", &b.name, &a.name, name);
        self.field("section", &b.section, &a.section, section);
        self.field("thickness", &b.thickness, &a.thickness, thickness);
        self.field("width", &b.width, &a.width, width);
        self.field("length", &b.length, &a.length, length);
        self.count("how many", b.quantity, a.quantity, quantity);
        self.field("still wet", &b.wet, &a.wet, wet);
        self.field("ends are sawn", &b.sawn_ends, &a.sawn_ends, sawn_ends);
        self.field("keep clear of", &b.knots, &a.knots, knots);
    }

    fn yard_board(&mut self, b: &YardBoard, a: &YardBoard, now: &mut YardBoard) {
        let YardBoard { section, thickness, width, length, price, quantity, is_ours } = now;
        self.field("section", &b.section, &a.section, section);
        self.field("thickness", &b.thickness, &a.thickness, thickness);
        self.field("width", &b.width, &a.width, width);
        self.field("length", &b.length, &a.length, length);
        self.field("price", &b.price, &a.price, price);
        self.field("our example", &b.is_ours, &a.is_ours, is_ours);
        match (b.quantity, a.quantity, quantity) {
            (Some(b), Some(a), Some(now)) => self.count("how many", b, a, now),
            (_, _, now) => self.field("how many", &b.quantity, &a.quantity, now),
        }
    }

    fn sketch(&mut self, b: &Sketch, a: &Sketch, now: &mut Sketch) {
        let Sketch { length, depth, height, leg, rail, shelf, top, overhang } = now;
        self.field("front", &b.length, &a.length, length);
        self.field("depth", &b.depth, &a.depth, depth);
        self.field("leg height", &b.height, &a.height, height);
        self.field("leg", &b.leg, &a.leg, leg);
        self.field("rail height", &b.rail, &a.rail, rail);
        self.field("shelf", &b.shelf, &a.shelf, shelf);
        self.field("top", &b.top, &a.top, top);
        self.field("overhang", &b.overhang, &a.overhang, overhang);
    }

    /// Board by board. A board that both sides cut is in question even when they agree, where the
    /// cutting also counts: it is cut once.
    fn ticks(&mut self, b: &CutTicks, a: &CutTicks, now: &mut CutTicks) {
        let CutTicks { plan, boards } = now;
        self.field("plan", &b.plan, &a.plan, plan);
        let untouched = BoardState::default();
        let length = changed_length(b.boards.len(), a.boards.len(), boards.len());
        let longest = boards.len().max(a.boards.len()).max(b.boards.len());
        boards.resize(longest, BoardState::default());
        for (at, now) in boards.iter_mut().enumerate() {
            let b = b.boards.get(at).unwrap_or(&untouched);
            let a = a.boards.get(at).unwrap_or(&untouched);
            let is_cut_twice = self.counts && b != a && now != b;
            if is_cut_twice || !take(b, a, now) {
                self.clash(&format!("board {}", at.saturating_add(1)));
            }
        }
        shorten(boards, length);
    }
}

impl Merge {
    /// Tick by tick.
    fn ticked(&mut self, b: &Ticked, a: &Ticked, now: &mut Ticked) {
        let added = a.done.keys().filter(|what| !b.done.contains_key(*what));
        for what in b.done.keys().chain(added) {
            let mut count = now.done.get(what).copied();
            if !take(&b.done.get(what).copied(), &a.done.get(what).copied(), &mut count) {
                self.clash(&format!("ticked off: {what}"));
            }
            match count {
                Some(count) => now.done.insert(what.clone(), count),
                None => now.done.remove(what),
            };
        }
    }
}

/// Takes what one side alone changed, or both alike. `false` when they changed it differently.
fn take<T: Clone + PartialEq>(before: &T, after: &T, now: &mut T) -> bool {
    if now == before {
        now.clone_from(after);
        return true;
    }
    before == after || now == after
}

/// How long a list is that both sides may have made longer or shorter.
fn changed_length(before: usize, after: usize, now: usize) -> usize {
    if now == before {
        after
    } else if after == before {
        now
    } else {
        after.max(now)
    }
}

/// Cuts a list to a length, as far as there is nothing in what goes.
fn shorten<T: Default + PartialEq>(list: &mut Vec<T>, length: usize) {
    while list.len() > length && list.last() == Some(&T::default()) {
        list.pop();
    }
}
