//! The whole job: its groups one after another, and what comes out.

use std::ops::ControlFlow;
use std::rc::Rc;

use reckoner_core::cutting::{Certificate, Claim, CutProblem, Job, Plan};

use crate::budget::{Meter, Progress};
use crate::build::{Aim, models};
use crate::model::{Model, Pattern};
use crate::realise;
use crate::solve::{Proof, Solver};

/// What the planner found.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Outcome {
    /// The best plan found.
    pub plan: Plan,
    /// No plan costs less, in cents.
    pub bound_cents: i64,
    /// The plan is proved cheapest: its cost equals the bound.
    pub proved: bool,
    /// What proves the bound, one for each group of parts that shares no boards with the others.
    pub certificates: Vec<Certificate>,
    /// Steps the search took.
    pub work: u64,
    /// The listener stopped the search.
    pub stopped: bool,
}

/// Plans the job with at most `budget` steps (a step is a nanosecond to ten).
///
/// # Errors
/// A [`CutProblem`] that names the part or board that makes the job impossible.
pub fn plan_job(
    job: &Job,
    budget: u64,
    listener: &mut dyn FnMut(&Progress<'_>) -> ControlFlow<()>,
) -> Result<Outcome, CutProblem> {
    job.validate()?;
    let models = models(job, Aim::Money)?;
    let mut meter = Meter::new(budget, listener);
    let mut solvers: Vec<Solver<'_>> = models.iter().map(Solver::new).collect();
    for at in 0..solvers.len() {
        solvers[at].begin(&mut meter);
        tell(job, &solvers, &mut meter);
    }
    for at in 0..solvers.len() {
        solvers[at].relax(&mut meter);
        tell(job, &solvers, &mut meter);
    }
    let mut going = true;
    while going {
        going = false;
        for at in 0..solvers.len() {
            going |= solvers[at].improve(&mut meter);
            tell(job, &solvers, &mut meter);
        }
    }
    finish(job, &solvers, meter)
}

fn tell(job: &Job, solvers: &[Solver<'_>], meter: &mut Meter<'_>) {
    meter.raise(solvers.iter().map(|solver| solver.bound).sum());
    if solvers.iter().all(Solver::is_complete) {
        let plan = whole(job, solvers);
        if meter.is_better(&plan) {
            meter.better(plan);
        }
    }
}

fn whole(job: &Job, solvers: &[Solver<'_>]) -> Plan {
    let solved: Vec<(&Model, &[Rc<Pattern>])> =
        solvers.iter().map(|solver| (solver.model, solver.best.as_slice())).collect();
    realise::plan(job, &solved)
}

fn finish(job: &Job, solvers: &[Solver<'_>], meter: Meter<'_>) -> Result<Outcome, CutProblem> {
    let incomplete: Vec<&Solver<'_>> = solvers.iter().filter(|s| !s.is_complete()).collect();
    if !incomplete.is_empty() {
        let plan = whole(job, solvers);
        return Err(CutProblem::NotEnoughBoards {
            left_out: plan
                .left_out
                .iter()
                .map(|left| (job.parts[left.part].id.clone(), left.quantity))
                .collect(),
            proved: incomplete.iter().any(|solver| solver.bound >= solver.model.items[0].skip),
        });
    }
    let plan = whole(job, solvers);
    let bound_cents = solvers.iter().map(|solver| solver.bound.min(solver.cost)).sum();
    let certificates = solvers.iter().map(certificate).collect();
    Ok(Outcome {
        proved: bound_cents == plan.cost_cents,
        plan,
        bound_cents,
        certificates,
        work: meter.work(),
        stopped: meter.stopped(),
    })
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
