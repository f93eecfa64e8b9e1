//! What is still to do of a plan that is kept, as a plan of what would be asked of the planner today.

use super::wanted::{Wanted, units};
use crate::cutting::{
    Block, CheckOptions, CutBoard, Layer, Layout, Placed, Plan, Source, Strip, Units, check_plan,
};
use crate::job::{BoardState, CutPlan};

/// The boards of a plan that are not cut yet, as a plan of the job of today: what is bought is on hand, and what is cut is
/// wanted no more. `None` where the job has changed so that this is no plan of it.
#[must_use]
pub fn plan_of_today(kept: &CutPlan, states: &[BoardState], now: &Wanted) -> Option<Plan> {
    let today = Today { kept, now };
    let mut plan = Plan::default();
    for (cut, state) in kept.plan.boards.iter().zip(states) {
        if !state.is_cut() {
            let layout = today.layout(&cut.layout)?;
            plan.boards.push(CutBoard { source: today.source(cut.source, state)?, layout });
        }
    }
    plan.cost_cents = plan.price(&now.job)?;
    check_plan(&now.job, &plan, CheckOptions::default()).ok()?;
    Some(plan)
}

struct Today<'a> {
    kept: &'a CutPlan,
    now: &'a Wanted,
}

impl Today<'_> {
    /// The unit changes with the lengths that are still wanted.
    fn units(&self, of_plan: Units) -> Option<Units> {
        units(self.now.labels.unit, self.kept.labels.length(of_plan).ok()?).ok()
    }

    fn source(&self, source: Source, state: &BoardState) -> Option<Source> {
        let scrap = |id: &str| self.now.job.scraps.iter().position(|scrap| scrap.id == id);
        match (state, source) {
            (BoardState::Bought(Some(rack)), _) => {
                scrap(&format!("rack {}", rack.0)).map(Source::Scrap)
            }
            (BoardState::Bought(None), Source::Board(at)) => {
                let board = self.kept.asked.boards.get(at)?;
                scrap(&format!("{} (bought)", board.id)).map(Source::Scrap)
            }
            (_, Source::Board(at)) => {
                let id = &self.kept.asked.boards.get(at)?.id;
                let at = self.now.job.boards.iter().position(|board| board.id == *id);
                at.map(Source::Board)
            }
            (_, Source::Scrap(at)) => scrap(&self.kept.asked.scraps.get(at)?.id).map(Source::Scrap),
        }
    }

    fn placed(&self, parts: &[Placed]) -> Option<Vec<Placed>> {
        let one = |placed: &Placed| {
            let id = &self.kept.asked.parts.get(placed.part)?.id;
            let part = self.now.job.parts.iter().position(|part| part.id == *id)?;
            Some(Placed { part, at: self.units(placed.at)?, turned: placed.turned })
        };
        parts.iter().map(one).collect()
    }

    fn layout(&self, layout: &Layout) -> Option<Layout> {
        let layer = |layer: &Layer| {
            Some(Layer {
                at: self.units(layer.at)?,
                thickness: self.units(layer.thickness)?,
                parts: self.placed(&layer.parts)?,
            })
        };
        let strip = |strip: &Strip| {
            Some(Strip {
                at: self.units(strip.at)?,
                width: self.units(strip.width)?,
                layers: strip.layers.iter().map(layer).collect::<Option<_>>()?,
            })
        };
        let block = |block: &Block| {
            Some(Block {
                at: self.units(block.at)?,
                length: self.units(block.length)?,
                parts: self.placed(&block.parts)?,
            })
        };
        Some(match layout {
            Layout::Crosscut(parts) => Layout::Crosscut(self.placed(parts)?),
            Layout::RipFirst(strips) => {
                Layout::RipFirst(strips.iter().map(strip).collect::<Option<_>>()?)
            }
            Layout::CrosscutFirst(blocks) => {
                Layout::CrosscutFirst(blocks.iter().map(block).collect::<Option<_>>()?)
            }
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::job::{History, Item, Job, Reckoned, Step};
    use crate::planning::demo::demo_in_work;
    use crate::planning::report::{of_that_length, without};
    use crate::planning::wanted::{OPTIONS, from_job_book, options, start_entries};
    use crate::sheet::{Ask, Bench};

    fn wanted(job: &Job) -> Wanted {
        let (bench, entries) = (Bench::default(), start_entries(job));
        let reckoned = Reckoned::of(job, &bench);
        let mut ask = Ask::new(OPTIONS.fields, &entries, &bench, &reckoned);
        let options = options(&mut ask).expect("options");
        from_job_book(job, &reckoned, &bench, &options).expect("the demo can be planned")
    }

    fn today(job: &Job) -> Option<Plan> {
        let id = job.find_cut_plan(false).expect("a plan");
        let (kept, states) = job.cut_plan(id).expect("a plan");
        plan_of_today(kept, &states, &wanted(job))
    }

    /// The demo with its plan kept, and nothing bought.
    fn planned() -> (Job, History) {
        let (mut job, mut history) = demo_in_work();
        for _ in 0..5 {
            assert!(history.undo(&mut job).expect("an undo"));
        }
        (job, history)
    }

    /// By hand, of the plan of the demo: 79.20 in all, of which the two posts of 8 ft at 11.80 are bought, and one of them
    /// is cut: 55.60 are to come, for ten boards.
    #[test]
    fn what_is_bought_costs_nothing_and_what_is_cut_is_gone() {
        let (mut job, _) = planned();
        assert_eq!(today(&job).map(|plan| (plan.cost_cents, plan.boards.len())), Some((7_920, 11)));
        let id = job.find_cut_plan(false).expect("a plan");
        job.make(&job.buying(id, Some(0)).expect("posts to buy")).expect("no conflict");
        let keep_from = crate::measure::length("12").expect("a length");
        job.make(&job.cutting(id, 0, keep_from).expect("a post to cut")).expect("no conflict");
        let plan = today(&job).expect("still a plan");
        assert_eq!((plan.cost_cents, plan.boards.len()), (5_560, 10));
        assert!(matches!(plan.boards[0].source, Source::Scrap(_)));
    }

    #[test]
    fn a_job_that_changed_has_no_such_plan() {
        let (mut job, _) = planned();
        let (id, leg) = job.parts().into_iter().find(|(_, it)| it.name == "leg").expect("a leg");
        let longer = crate::job::Part { length: "34".to_owned(), ..leg.clone() };
        let change = job.replacing(id, Item::Part(longer));
        job.make(&Step::new("longer", vec![change])).expect("no conflict");
        assert_eq!(today(&job), None);
    }

    /// Taken, the length is not to be had, in every line of the yard that sells it, and the plan is in use; one undo
    /// brings both back. What is asked then is what the plan was made for.
    #[test]
    fn a_plan_without_a_length_is_taken_in_one_step() {
        let (mut job, mut history) = planned();
        let before = job.clone();
        let now = wanted(&job);
        let id = job.find_cut_plan(false).expect("a plan");
        let (kept, _) = job.cut_plan(id).expect("a plan");
        let asked = without(&now.job, 0);
        let plan = CutPlan { asked: asked.clone(), labels: now.labels.clone(), ..kept.clone() };
        let step = job.taking_without(plan, 0);
        assert_eq!(step.label, "no 4x4 of 96 in at the yard");
        history.make(&mut job, step).expect("no conflict");
        assert_eq!(wanted(&job).job, asked);
        let gone = of_that_length(&now.job, 0);
        for (at, label) in now.labels.boards.iter().enumerate() {
            let item = label.item.and_then(|id| job.item(id));
            let Some(Item::YardBoard(board)) = item else { panic!("a board of the yard") };
            let is_none = board.quantity == Some(0);
            assert_eq!(is_none, gone.contains(&at), "{board:?}");
        }
        assert!(history.undo(&mut job).expect("an undo"));
        assert!(job.items().eq(before.items()));
    }
}
