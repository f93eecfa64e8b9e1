//! Other questions about the same job: one board length only, the next cheapest store run, what a scrap can become. Our own
//! ways of asking what the other files answer.

use std::rc::Rc;

use reckoner_core::cutting::{CutProblem, Job, NextRun, Plan, SingleBoard, Source, Units};

use crate::budget::{Meter, Progress};
use crate::build::{Aim, models};
use crate::columns::{Columns, Rest};
use crate::mix::{Mixed, Mixer};
use crate::model::Model;
use crate::planner::{Listener, plan_job};
use crate::price::Prices;
use crate::realise;
use crate::solve::Solver;

/// Plans the job once for each board that the yard sells in its section, with all other boards of that section left out.
/// Each plan may take up to `budget` steps.
pub fn compare_single_boards(
    job: &Job,
    budget: u64,
    listener: &mut Listener<'_>,
) -> Vec<SingleBoard> {
    (0..job.boards.len())
        .map(|board| {
            let mut alone = job.clone();
            let section = alone.boards[board].section.clone();
            let mut at = 0;
            alone.boards.retain(|other| {
                at += 1;
                at - 1 == board || other.section != section
            });
            let outcome = plan_job(&alone, budget, listener).map(|mut outcome| {
                // Boards are named by their place in the job asked about, not in the shorter list.
                let kept: Vec<usize> = (0..job.boards.len())
                    .filter(|&at| at == board || job.boards[at].section != section)
                    .collect();
                for cut in &mut outcome.plan.boards {
                    if let Source::Board(at) = &mut cut.source {
                        *at = kept.get(*at).copied().unwrap_or(*at);
                    }
                }
                outcome
            });
            SingleBoard { board, outcome }
        })
        .collect()
}

/// The cheapest plan that buys a different set of boards than `plan` does (not the same boards and more of them), if
/// there is one at no more than `most_cents`. It is looked for only in groups of parts whose ways to divide a board can all
/// be listed; where there is none of these, and where the steps run out before any is found, the answer is `None`. The bound
/// holds for all groups, also for those.
///
/// # Errors
/// A [`CutProblem`] when the job itself is wrong.
pub fn next_store_run(
    job: &Job,
    plan: &Plan,
    most_cents: i64,
    budget: u64,
    listener: &mut Listener<'_>,
) -> Result<Option<NextRun>, CutProblem> {
    job.validate()?;
    let models = models(job, Aim::Money)?;
    let mut told = |progress: &Progress<'_>| listener(progress);
    let mut meter = Meter::new(budget, &mut told);
    let mut solvers: Vec<Solver<'_>> = models.iter().map(Solver::new).collect();
    for solver in &mut solvers {
        solver.begin(&mut meter);
        solver.relax(&mut meter);
        // Half of the steps are kept for the other run.
        while meter.work() < budget / 2 && solver.improve(&mut meter) {}
    }
    let total: i64 = solvers.iter().map(|solver| solver.cost).sum();
    let least: i64 = solvers.iter().map(|solver| solver.bound).sum();
    let mut best: Option<(i64, Vec<Rc<crate::model::Pattern>>, usize)> = None;
    // What no plan costs less than that buys other boards for one of the groups.
    let mut bound_cents = i64::MAX;
    for (group, solver) in solvers.iter().enumerate() {
        let elsewhere = least - solver.bound;
        if !solver.model.all_listed() {
            bound_cents = bound_cents.min(elsewhere + solver.bound);
            continue;
        }
        let mut bought = vec![0_u32; solver.model.stocks.len()];
        for (number, stock) in solver.model.stocks.iter().enumerate() {
            let of_it = plan.boards.iter().filter(|c| c.source == Source::Board(stock.number));
            bought[number] = u32::try_from(of_it.count()).unwrap_or(u32::MAX);
        }
        let mut mixer = Mixer::new(solver.model, solver.shape());
        mixer.exclude(bought);
        for worth in &solver.worths {
            mixer.cut(worth);
        }
        let others = total - solver.cost;
        let most = best.as_ref().map_or(most_cents, |found| found.0 - 1) - others;
        let share = budget / 2 / solvers.len().max(1) as u64;
        let bound = match mixer.run(solver.bound, most + 1, share / 8, share, &mut meter) {
            Mixed::Found(patterns, bound) => {
                best = Some((solver.model.cost(&patterns) + others, patterns, group));
                bound
            }
            Mixed::NoneCheaper => most + 1,
            Mixed::Undecided(bound) => bound,
        };
        let bound = if solver.model.lossy { solver.bound } else { bound };
        bound_cents = bound_cents.min(elsewhere + bound);
    }
    Ok(best.map(|(_, patterns, changed)| {
        let solved: Vec<(&Model, &[Rc<crate::model::Pattern>])> = solvers
            .iter()
            .enumerate()
            .map(|(group, solver)| {
                let own = if group == changed { &patterns } else { &solver.best };
                (solver.model, own.as_slice())
            })
            .collect();
        NextRun { plan: realise::plan(job, &solved), bound_cents }
    }))
}

/// What one board or scrap can become: the fullest use of it, and the most parts from it (one plan when both agree). The
/// plans leave all other parts out.
///
/// # Errors
/// A [`CutProblem`] when the job itself is wrong.
pub fn what_it_can_become(job: &Job, source: Source) -> Result<Vec<Plan>, CutProblem> {
    job.validate()?;
    let number = match source {
        Source::Board(at) => at,
        Source::Scrap(at) => job.boards.len() + at,
    };
    let mut own = job.clone();
    for board in &mut own.boards {
        board.limit = Some(1);
    }
    let models = models(&own, Aim::Rack)?;
    let mut ignore = |_: &Progress<'_>| std::ops::ControlFlow::Continue(());
    let mut meter = Meter::new(u64::MAX, &mut ignore);
    let mut plans: Vec<Plan> = Vec::new();
    for most_parts in [false, true] {
        let mut chosen: Vec<(&Model, Vec<Rc<crate::model::Pattern>>)> = Vec::new();
        for model in &models {
            let at = model.stocks.iter().position(|s| s.out.is_none() && s.number == number);
            let mut own = Vec::new();
            if let Some(at) = at {
                let columns = Columns::new(model);
                let rest = Rest::of(model);
                let values: Vec<i64> = model
                    .items
                    .iter()
                    .map(|item| item.size + if most_parts { 1 << 41 } else { 0 })
                    .collect();
                let caps = &columns.capacities;
                let prices = Prices::new(model, caps, &values, &rest.left, &mut meter);
                if let Some(pattern) = prices.pattern_within(at, &rest.left) {
                    own.push(Rc::new(pattern));
                }
            }
            chosen.push((model, own));
        }
        let solved: Vec<_> = chosen.iter().map(|(model, own)| (*model, own.as_slice())).collect();
        let plan = realise::plan(job, &solved);
        if !plan.boards.is_empty() && !plans.contains(&plan) {
            plans.push(plan);
        }
    }
    Ok(plans)
}

/// How many boards of cover width `each` it takes to cover `total` when `waste_percent` of the wood bought becomes waste:
/// total / each / (1 - waste), rounded up. `None` when that cannot be: nothing to cover with, or all of it waste.
///
/// Source of the rule: US Army Engineer School, subcourse EN01136, lesson 5, self-test (worked example W19).
#[must_use]
pub fn boards_to_cover(total: Units, each: Units, waste_percent: u32) -> Option<i64> {
    if total < 0 || each <= 0 || waste_percent >= 100 {
        return None;
    }
    let used = i128::from(each) * i128::from(100 - waste_percent);
    let wanted = i128::from(total) * 100;
    i64::try_from((wanted + used - 1) / used).ok()
}
