//! The whole job: its groups one after another, and what comes out. Our own.

use std::ops::ControlFlow;
use std::rc::Rc;

use reckoner_core::cutting::{
    Certificate, Claim, CutProblem, Job, Outcome, Plan, RackOutcome, Ties,
};

use crate::budget::{Meter, Progress};
use crate::build::{Aim, models};
use crate::model::{Model, Pattern};
use crate::realise;
use crate::solve::{Proof, Solver};
use crate::ties::break_ties;

/// What to call with news; it answers whether to go on.
pub type Listener<'c> = dyn FnMut(&Progress<'_>) -> ControlFlow<()> + 'c;

/// Plans the job with at most `budget` steps (a step is a nanosecond to ten).
///
/// # Errors
/// A [`CutProblem`] that names the part or board that makes the job impossible.
pub fn plan_job(
    job: &Job,
    budget: u64,
    listener: &mut Listener<'_>,
) -> Result<Outcome, CutProblem> {
    job.validate()?;
    let models = models(job, Aim::Money)?;
    let mut told = |progress: &Progress<'_>| listener(progress);
    let mut meter = Meter::new(budget, &mut told);
    let (mut solvers, ties) = search(job, &models, &mut meter);
    let plan = whole(job, &solvers);
    let short: Vec<&Solver<'_>> = solvers.iter().filter(|s| !s.is_complete()).collect();
    if !short.is_empty() {
        let name = |part: usize| job.parts.get(part).map_or("", |part| part.id.as_str()).to_owned();
        return Err(CutProblem::NotEnoughBoards {
            left_out: plan.left_out.iter().map(|left| (name(left.part), left.quantity)).collect(),
            proved: short.iter().any(|solver| solver.is_impossible()),
        });
    }
    let bound_cents = solvers.iter().map(|solver| solver.bound.min(solver.cost)).sum();
    let certificates = solvers.iter_mut().map(|solver| certificate(solver)).collect();
    Ok(Outcome {
        proved: bound_cents == plan.cost_cents,
        plan,
        bound_cents,
        ties,
        certificates,
        work: meter.work(),
        stopped: meter.stopped(),
    })
}

/// Cuts as many parts as possible from scraps and from boards of limited number, by priority: no part of a worse
/// priority is cut in place of one of a better. Boards without a limit are taken as the yard's and not used.
///
/// # Errors
/// A [`CutProblem`] when the job itself is wrong.
pub fn plan_rack(
    job: &Job,
    budget: u64,
    listener: &mut Listener<'_>,
) -> Result<RackOutcome, CutProblem> {
    job.validate()?;
    let models = models(job, Aim::Rack)?;
    let mut told = |progress: &Progress<'_>| listener(progress);
    let mut meter = Meter::new(budget, &mut told);
    let (solvers, _) = search(job, &models, &mut meter);
    Ok(RackOutcome {
        plan: whole(job, &solvers),
        proved: solvers.iter().all(Solver::is_proved),
        work: meter.work(),
        stopped: meter.stopped(),
    })
}

/// Everything in its order: quick plans for all groups, then the linear programmes, then the exact methods in turn, then
/// the ties. What a method found is told before the next begins.
fn search<'m>(job: &Job, models: &'m [Model], meter: &mut Meter<'_>) -> (Vec<Solver<'m>>, Ties) {
    let mut solvers: Vec<Solver<'m>> = models.iter().map(Solver::new).collect();
    for at in 0..solvers.len() {
        solvers[at].begin(meter);
        tell(job, &solvers, meter);
    }
    for at in 0..solvers.len() {
        solvers[at].relax(meter);
        tell(job, &solvers, meter);
    }
    let mut going = true;
    while going {
        going = false;
        for at in 0..solvers.len() {
            going |= solvers[at].improve(meter);
            tell(job, &solvers, meter);
        }
    }
    let ties = break_ties(job, &mut solvers, meter);
    tell(job, &solvers, meter);
    (solvers, ties)
}

fn tell(job: &Job, solvers: &[Solver<'_>], meter: &mut Meter<'_>) {
    meter.raise(solvers.iter().map(|solver| solver.bound.min(solver.cost)).sum());
    if solvers.iter().all(Solver::is_complete) {
        let score = solvers.iter().map(|solver| (solver.cost, solver.best.len()));
        let score = score.fold((0, 0), |sum, next| (sum.0 + next.0, sum.1 + next.1));
        if meter.is_better(score) {
            meter.better(whole(job, solvers), score);
        } else if solvers.iter().all(Solver::is_proved) {
            // The proof is news too.
            meter.report();
        }
    }
}

fn whole(job: &Job, solvers: &[Solver<'_>]) -> Plan {
    let solved: Vec<(&Model, &[Rc<Pattern>])> =
        solvers.iter().map(|solver| (solver.model, solver.best.as_slice())).collect();
    realise::plan(job, &solved)
}

fn certificate(solver: &Solver<'_>) -> Certificate {
    let mut parts = Vec::new();
    let mut worths = Vec::new();
    for (number, item) in solver.model.items.iter().enumerate() {
        for &(part, _) in &item.parts {
            parts.push(part);
            if let Proof::Worth(values) = &solver.proof {
                worths.push(values[number]);
            }
        }
    }
    Certificate {
        parts,
        bound_cents: solver.bound.min(solver.cost),
        claim: match &solver.proof {
            Proof::Worth(_) => Claim::Worth(worths),
            Proof::Search => Claim::SearchFinished,
        },
    }
}
