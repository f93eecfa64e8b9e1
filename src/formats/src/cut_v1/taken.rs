//! A plan that was taken in place of the one that was found, with both, as text.

use reckoner_core::cutting::{Backing, CheckOptions, Job, Plan, check_plan};

use super::backing::{BACKING, read_backing, write_backing};
use super::job::{JOB, read_job, write_job};
use super::kinds::CENTS;
use super::plan::{PLAN, read_plan, write_plan};
use super::text::{CutTextProblem, VERSION, VERSIONS, read};
use crate::json::{Field, Kind, Writer, may, must};

/// Another way to buy, taken in place of the plan that was found.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct TakenPlan {
    /// What was asked of the planner.
    pub job: Job,
    /// What it found.
    pub found: Plan,
    /// No plan costs less, in cents.
    pub bound_cents: i64,
    /// What was proved of what it found.
    pub backing: Option<Backing>,
    /// What was taken.
    pub taken: Plan,
}

const TAKEN: &[Field] = &[
    must("version", VERSIONS, ""),
    must("job", Kind::Record(JOB), ""),
    must("found", Kind::Record(PLAN), ""),
    must("bound_cents", CENTS, ""),
    may("backing", Kind::Record(BACKING), ""),
    must("taken", Kind::Record(PLAN), ""),
];

/// Writes a plan that was taken.
#[must_use]
pub fn write_taken(it: &TakenPlan) -> String {
    let mut w = Writer::new(false);
    w.record(TAKEN, |out| {
        out.int(VERSION);
        out.value(Some(&it.job), write_job);
        out.value(Some(&it.found), write_plan);
        out.int(it.bound_cents);
        out.value(it.backing, |w, it| write_backing(w, &it));
        out.value(Some(&it.taken), write_plan);
    });
    w.out
}

/// Reads a plan that was taken, and checks both plans against their job, like any of the search.
///
/// # Errors
/// [`CutTextProblem`]; nothing of it is used then.
pub fn read_taken(text: &str) -> Result<TakenPlan, CutTextProblem> {
    let it = read(text, TAKEN, |it| {
        let job = read_job(it.next()?);
        let found = read_plan(it.next()?, &job);
        let bound_cents = it.int();
        let backing = it.next().map(|it| read_backing(it, (found.cost_cents, bound_cents)));
        let taken = read_plan(it.next()?, &job);
        Some(TakenPlan { job, found, bound_cents, backing, taken })
    })?;
    let keeps = |plan| check_plan(&it.job, plan, CheckOptions::default()).is_ok();
    let is_sound = it.job.validate().is_ok() && it.bound_cents <= it.found.cost_cents;
    if is_sound && keeps(&it.found) && keeps(&it.taken) {
        Ok(it)
    } else {
        Err(CutTextProblem::NotReadable)
    }
}
