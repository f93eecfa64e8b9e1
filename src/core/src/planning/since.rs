//! What changed in a job since its plan was made.

use super::wanted::{OPTIONS, Options, Wanted, WantedProblem, as_far_as_it_goes, options};
use crate::cutting::{self, Source, Units};
use crate::job::cut_labels::{Label, Labels};
use crate::job::{BoardState, CutPlan, Item, ItemId, Job, Reckoned};
use crate::measure::Length;
use crate::say;
use crate::sheet::{Ask, Bench, Sentence, money};

/// One side of the comparison.
struct Side<'a> {
    job: &'a cutting::Job,
    labels: &'a Labels,
}

impl Side<'_> {
    fn length(&self, units: Units) -> Option<Length> {
        self.labels.length(units).ok()
    }

    fn part(&self, item: ItemId) -> Option<usize> {
        self.labels.parts.iter().position(|label| label.item == Some(item))
    }

    fn part_length(&self, at: usize) -> Option<Length> {
        self.length(self.job.parts.get(at)?.length)
    }

    fn part_size(&self, at: usize) -> Option<(Length, Length)> {
        self.labels.section(self.job, &self.job.parts.get(at)?.section)?.size
    }
}

/// What a plan that is kept may do.
pub(super) fn kept_options(
    job: &Job,
    kept: &CutPlan,
    reckoned: &Reckoned,
    bench: &Bench,
) -> Option<Options> {
    let entries = kept.as_entries(job.unit);
    options(&mut Ask::new(OPTIONS.fields, &entries, bench, reckoned))
}

/// The plan in use and what changed in the job since it was made, where it no longer fits.
#[must_use]
pub fn no_longer_fits(
    job: &Job,
    reckoned: &Reckoned,
    bench: &Bench,
) -> Option<(ItemId, Vec<Sentence>)> {
    let plan = job.find_cut_plan(false)?;
    let (kept, _) = job.cut_plan(plan)?;
    let Some(options) = kept_options(job, kept, reckoned, bench) else {
        return Some((plan, vec![say!["What the plan may do cannot be worked out any more."]]));
    };
    // What is in the way of one thing says nothing of the others.
    let changes = match as_far_as_it_goes(job, reckoned, bench, &options) {
        Ok((now, problems)) => changes(job, plan, &now, &problems),
        Err(problems) => problems.iter().map(WantedProblem::sentence).collect(),
    };
    (!changes.is_empty()).then_some((plan, changes))
}

/// What changed in the job since a plan of its parts was made, in sentences that name the part or board. `now` is what
/// would be asked of the planner today. Empty when the plan still fits.
#[must_use]
pub fn since(job: &Job, id: ItemId, now: &Wanted) -> Vec<Sentence> {
    changes(job, id, now, &[])
}

/// The same, where `now` is without what these problems are in the way of.
fn changes(job: &Job, id: ItemId, now: &Wanted, problems: &[WantedProblem]) -> Vec<Sentence> {
    let Some((kept, states)) = job.cut_plan(id) else { return Vec::new() };
    let old = Side { job: &kept.asked, labels: &kept.labels };
    let new = Side { job: &now.job, labels: &now.labels };
    let mut all = Vec::new();
    if let (Some(was), Some(is)) = (old.length(old.job.saw.kerf), new.length(new.job.saw.kerf))
        && was != is
    {
        all.push(say!["The plan was made for a kerf of ", was, "; it is ", is, " now."]);
    }
    for (at, label) in kept.labels.parts.iter().enumerate() {
        let (to_cut, spares) = still_to_cut(kept, &states, at);
        let name = label.name.clone();
        let today = label.item.and_then(|item| new.part(item));
        match today {
            None if to_cut == 0 => {}
            // All of it is cut but spares.
            None if to_cut <= spares && label.item.is_some_and(|it| job.item(it).is_some()) => {}
            None if problems.iter().any(|it| it.item() == label.item) => {}
            None if now.left_out.iter().any(|not_yet| Some(not_yet.part) == label.item) => {
                all.push(say![name, " must wait for a measurement now."]);
            }
            None => all.push(say![name, " is in the plan and not wanted any more."]),
            Some(today) => {
                let lengths = (old.part_length(at), new.part_length(today));
                let sizes = (old.part_size(at), new.part_size(today));
                if let (Some(was), Some(is)) = lengths
                    && was != is
                {
                    let words = ": the plan was made for ";
                    all.push(say![name.clone(), words, was, "; it is ", is, " now."]);
                }
                if let (Some(was), Some(is)) = sizes
                    && was != is
                    // It may lie either way.
                    && was != (is.1, is.0)
                {
                    all.push(say![
                        name.clone(),
                        ": the plan was made for ",
                        was.0,
                        " by ",
                        was.1,
                        "; it is ",
                        is.0,
                        " by ",
                        is.1,
                        " now."
                    ]);
                }
                let wanted = now.pieces.get(today).copied().unwrap_or(0);
                if to_cut < wanted || to_cut > wanted.saturating_add(spares) {
                    let words = ": the plan cuts ";
                    all.push(say![name, words, to_cut, " more; ", wanted, " are wanted now."]);
                }
            }
        }
    }
    for label in &now.labels.parts {
        if label.item.is_some_and(|item| old.part(item).is_none()) {
            all.push(say![label.name.clone(), " is not in the plan."]);
        }
    }
    let of_parts = problems
        .iter()
        .filter(|it| it.item().is_some_and(|item| matches!(job.item(item), Some(Item::Part(_)))));
    all.extend(of_parts.map(WantedProblem::sentence));
    all.extend(boards_since(kept, &states, (&old, &new), &Missing { job, problems }));
    all
}

/// What is not in the new side of a comparison.
struct Missing<'a> {
    job: &'a Job,
    problems: &'a [WantedProblem],
}

impl Missing<'_> {
    /// What is to be said of a board that is not in it: that it is gone, or what is in its way. `None` where it is
    /// there and nobody asks for it.
    fn board(&self, label: &Label, gone: Sentence) -> Option<Sentence> {
        let is_there = match label.item.and_then(|item| self.job.item(item)) {
            Some(Item::RackBoard(board)) => board.quantity > 0,
            Some(Item::YardBoard(_)) => true,
            _ => false,
        };
        if !is_there {
            return Some(gone);
        }
        let problem = self.problems.iter().find(|it| it.item() == label.item);
        problem.map(WantedProblem::sentence)
    }
}

/// Pieces of a part on boards of the plan that are not cut yet, and how many of all its pieces are spares.
fn still_to_cut(kept: &CutPlan, states: &[BoardState], part: usize) -> (u32, u32) {
    let boards = kept.plan.boards.iter().zip(states).filter(|(_, state)| !state.is_cut());
    let mut to_cut = 0_u32;
    for (cut, state) in boards {
        let here = cut.placed().into_iter().filter(|placed| placed.part == part).count();
        let here = u32::try_from(here).unwrap_or(u32::MAX);
        to_cut = to_cut.saturating_add(here.saturating_sub(state.begun_of(part)));
    }
    let planned = kept.asked.parts.get(part).map_or(0, |part| part.quantity);
    let spares = planned.saturating_sub(kept.pieces.get(part).copied().unwrap_or(planned));
    (to_cut, spares)
}

/// Boards on hand that the plan still needs and that are gone, and prices that moved.
fn boards_since(
    kept: &CutPlan,
    states: &[BoardState],
    (old, new): (&Side<'_>, &Side<'_>),
    missing: &Missing<'_>,
) -> Vec<Sentence> {
    let mut all = Vec::new();
    let mut told: Vec<Source> = Vec::new();
    for (cut, state) in kept.plan.boards.iter().zip(states) {
        if *state != BoardState::ToCut || told.contains(&cut.source) {
            continue;
        }
        told.push(cut.source);
        match cut.source {
            Source::Scrap(at) => all.extend(scrap_since(at, old, new, missing)),
            Source::Board(at) => all.extend(price_since(at, old, new, missing)),
        }
    }
    all
}

fn scrap_since(
    at: usize,
    old: &Side<'_>,
    new: &Side<'_>,
    missing: &Missing<'_>,
) -> Option<Sentence> {
    let label = old.labels.scraps.get(at)?;
    let name = label.name.clone();
    let Some(today) = new.labels.scraps.iter().position(|other| other.item == label.item) else {
        return missing.board(label, say![name, " is not on the rack any more."]);
    };
    let was = old.length(old.job.scraps.get(at)?.length)?;
    let is = new.length(new.job.scraps.get(today)?.length)?;
    (was != is)
        .then(|| say![name, ": the plan was made for ", was, " of it; it is ", is, " long now."])
}

fn price_since(
    at: usize,
    old: &Side<'_>,
    new: &Side<'_>,
    missing: &Missing<'_>,
) -> Option<Sentence> {
    let label = old.labels.boards.get(at)?;
    let name = label.name.clone();
    let length = old.length(old.job.boards.get(at)?.length)?;
    let Some(today) = new.labels.boards.iter().position(|other| other.item == label.item) else {
        return missing.board(label, say![name, " ", length, " is not at the yard any more."]);
    };
    let was = old.job.boards.get(at)?.price_cents;
    let board = new.job.boards.get(today)?;
    let is = new.length(board.length)?;
    if is != length {
        return Some(say![name, ": the plan was made for ", length, "; it is ", is, " now."]);
    }
    let (before, after) = (money(was), money(board.price_cents));
    (was != board.price_cents)
        .then(|| say![name, " ", length, ": it was ", before, "; it is ", after, " now."])
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::job::{Measure, Part, RackBoard, Step};
    use crate::planning::demo::demo_in_work;

    fn told(job: &Job) -> Vec<String> {
        let bench = Bench::default();
        let changes = no_longer_fits(job, &Reckoned::of(job, &bench), &bench);
        changes.into_iter().flat_map(|(_, told)| told).map(|it| it.to_string()).collect()
    }

    fn waiting(job: &mut Job, name: &str) {
        let found = job.measures().into_iter().find(|(_, measure)| measure.name == name);
        let (id, measure) = found.map(|(id, it)| (id, it.clone())).expect("a size of the demo");
        let change = job.replacing(id, Item::Measure(Measure { wait: true, ..measure }));
        job.make(&Step::new("wait", vec![change])).expect("no conflict");
    }

    /// By hand: all four legs are cut, the five planks are not.
    #[test]
    fn what_must_wait_is_told_unless_it_is_cut() {
        let (mut job, _) = demo_in_work();
        assert_eq!(told(&job), Vec::<String>::new());
        waiting(&mut job, "leg length");
        assert_eq!(told(&job), Vec::<String>::new());
        waiting(&mut job, "top length");
        // A plank of the rack is then wanted by nobody, and still there.
        assert_eq!(told(&job), ["top plank must wait for a measurement now."]);
    }

    fn changed(job: &mut Job, id: ItemId, item: Item) {
        let change = job.replacing(id, item);
        job.make(&Step::new("change", vec![change])).expect("no conflict");
    }

    fn part_of(job: &Job, name: &str) -> (ItemId, Part) {
        let found = job.parts().into_iter().find(|(_, part)| part.name == name);
        found.map(|(id, part)| (id, part.clone())).expect("a part of the demo")
    }

    /// Something is in the way of one part, and all the others are compared as before.
    #[test]
    fn what_is_in_the_way_of_one_part_hides_nothing_of_the_others() {
        let (mut job, _) = demo_in_work();
        let (id, plank) = part_of(&job, "top plank");
        let was = plank.length.clone();
        changed(&mut job, id, Item::Part(Part { length: "40".to_owned(), ..plank }));
        let alone = told(&job);
        let [moved] = alone.as_slice() else { panic!("{alone:?} of {was}") };
        assert!(moved.starts_with("top plank: the plan was made for "), "{moved}");
        assert!(moved.ends_with("; it is 40 in now."), "{moved}");

        // A section that nobody sells: it is not in the plan, and that is all.
        let unsold =
            Part { stock: "9x9".to_owned(), ..Part::new("post", "1", ["8 1/2", "8 1/2", "9"]) };
        let adding = job.adding(0, Item::Part(unsold.clone()));
        let post = adding.id;
        job.make(&Step::new("add", vec![adding])).expect("fresh");
        assert_eq!(told(&job), [moved.as_str(), "post is not in the plan."]);

        // A size that cannot be worked out.
        changed(&mut job, post, Item::Part(Part { length: "gone".to_owned(), ..unsold }));
        let both = told(&job);
        assert_eq!((both.len(), &both[0]), (2, moved), "{both:?}");
        assert!(both[1].starts_with("post: the length cannot be worked out."), "{both:?}");
    }

    /// A board that cannot be read is said to be so, not to be gone.
    #[test]
    fn a_board_of_the_plan_that_cannot_be_read_is_told() {
        let (mut job, _) = demo_in_work();
        let boards = job.items().filter_map(|(id, item)| match item {
            Item::RackBoard(board) if board.name == "short plank" => Some((id, board.clone())),
            _ => None,
        });
        let (id, board) = boards.last().expect("a board of the demo");
        let length = "gone + 1".to_owned();
        changed(&mut job, id, Item::RackBoard(RackBoard { length, ..board.clone() }));
        let unread = told(&job);
        assert_eq!(unread.len(), 1, "{unread:?}");
        assert!(
            unread[0].starts_with("short plank: the length cannot be worked out."),
            "{unread:?}"
        );
        changed(&mut job, id, Item::RackBoard(RackBoard { quantity: 0, ..board }));
        assert_eq!(told(&job), ["short plank is not on the rack any more."]);
    }

    /// Whose last pieces are cut and are not wanted as planned is told, when nothing else is to cut either.
    #[test]
    fn a_plan_of_what_nobody_wants_is_told_when_nothing_else_is_to_cut() {
        let (mut job, _) = demo_in_work();
        for (id, _) in
            job.parts().into_iter().map(|(id, part)| (id, part.name.clone())).collect::<Vec<_>>()
        {
            let change = job.removing(id);
            job.make(&Step::new("take out", vec![change])).expect("no conflict");
        }
        assert!(
            told(&job).iter().any(|it| it == "top plank is in the plan and not wanted any more.")
        );
    }

    /// What is taken out of the job is another thing than what waits; legs that are cut need no plan.
    #[test]
    fn what_is_not_wanted_any_more_is_told_unless_it_is_cut() {
        let (mut job, _) = demo_in_work();
        for name in ["leg", "end bracket"] {
            let part = job.parts().into_iter().find(|(_, part)| part.name == name);
            let change = job.removing(part.expect("a part of the demo").0);
            job.make(&Step::new("take out", vec![change])).expect("no conflict");
        }
        assert_eq!(told(&job), ["end bracket is in the plan and not wanted any more."]);
    }
}
