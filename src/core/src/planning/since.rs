//! What changed in a job since its plan was made.

use super::wanted::{OPTIONS, Options, Wanted, from_job_book, options};
use crate::cutting::{self, Source, Units};
use crate::job::cut_labels::Labels;
use crate::job::{BoardState, CutPlan, ItemId, Job, Reckoned};
use crate::measure::Length;
use crate::say;
use crate::sheet::{Ask, Bench, Entries, Sentence, money};

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
    let entries = kept.entries.iter().map(|(id, text)| (id.as_str(), text.as_str()));
    let mut entries = Entries::from_pairs(entries);
    entries.set_unit(Some(job.unit));
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
    let options = kept_options(job, kept, reckoned, bench)?;
    // What is in the way of a plan is told where it stands: at its part or board.
    let now = from_job_book(job, reckoned, bench, &options).ok()?;
    let changes = since(job, plan, &now);
    (!changes.is_empty()).then_some((plan, changes))
}

/// What changed in the job since a plan of its parts was made, in sentences that name the part or board. `now` is what
/// would be asked of the planner today. Empty when the plan still fits.
#[must_use]
pub fn since(job: &Job, id: ItemId, now: &Wanted) -> Vec<Sentence> {
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
    all.extend(boards_since(kept, &states, &old, &new));
    all
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
    old: &Side<'_>,
    new: &Side<'_>,
) -> Vec<Sentence> {
    let mut all = Vec::new();
    let mut told: Vec<Source> = Vec::new();
    for (cut, state) in kept.plan.boards.iter().zip(states) {
        if *state != BoardState::ToCut || told.contains(&cut.source) {
            continue;
        }
        told.push(cut.source);
        match cut.source {
            Source::Scrap(at) => all.extend(scrap_since(at, old, new)),
            Source::Board(at) => all.extend(price_since(at, old, new)),
        }
    }
    all
}

fn scrap_since(at: usize, old: &Side<'_>, new: &Side<'_>) -> Option<Sentence> {
    let label = old.labels.scraps.get(at)?;
    let name = label.name.clone();
    let Some(today) = new.labels.scraps.iter().position(|other| other.item == label.item) else {
        return Some(say![name, " is not on the rack any more."]);
    };
    let was = old.length(old.job.scraps.get(at)?.length)?;
    let is = new.length(new.job.scraps.get(today)?.length)?;
    (was != is)
        .then(|| say![name, ": the plan was made for ", was, " of it; it is ", is, " long now."])
}

fn price_since(at: usize, old: &Side<'_>, new: &Side<'_>) -> Option<Sentence> {
    let label = old.labels.boards.get(at)?;
    let name = label.name.clone();
    let length = old.length(old.job.boards.get(at)?.length)?;
    let Some(today) = new.labels.boards.iter().position(|other| other.item == label.item) else {
        return Some(say![name, " ", length, " is not at the yard any more."]);
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
    use crate::job::{Item, Measure, Step};
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
        // A plank of the rack is then wanted by nobody either.
        let waits = "top plank must wait for a measurement now.";
        assert_eq!(told(&job), [waits, "short plank is not on the rack any more."]);
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
