//! Version 1 of a cutting job, its plan, and what the planner and the page say to each other.
//!
//! Everything is JSON text. The types of the core stay free to change; those in here are the promise. Reading trusts
//! nothing: every list has a largest size, every number a range, every place in a list is checked, and what is wrong is
//! named in a sentence. Whether a job makes sense is the core's `Job::validate` to say, and whether a plan keeps the
//! rules its `check_plan`.

mod backing;
mod job;
mod kinds;
mod message;
mod outcome;
mod plan;
mod problem;
mod taken;
mod text;

use reckoner_core::cutting::{Job, Plan};

use crate::json::{Field, Kind, Writer, must};

pub(crate) use backing::{BACKING, read_backing, write_backing};
use job::{JOB, read_job, write_job};
use plan::{PLAN, read_plan, write_plan};
use text::{VERSION, VERSIONS, read};

pub use kinds::MOST_CUT_LINES;
pub use message::{
    Ask, Checked, News, Question, Reply, number_of_reply, read_question, read_reply,
    write_question, write_reply,
};
pub use taken::{TakenPlan, read_taken, write_taken};
pub use text::{CutTextProblem, MOST_CUT_TEXT};

/// A job with its plan, as they are kept together.
pub(crate) const CUT: &[Field] = &[
    must("version", VERSIONS, ""),
    must("job", Kind::Record(JOB), "What was asked."),
    must("plan", Kind::Record(PLAN), ""),
];

/// Writes a job with its plan.
#[must_use]
pub fn write_cut(job: &Job, plan: &Plan) -> String {
    let mut w = Writer::new(false);
    write_cut_into(&mut w, job, plan);
    w.out
}

pub(crate) fn write_cut_into(w: &mut Writer, job: &Job, plan: &Plan) {
    w.record(CUT, |out| {
        out.int(VERSION);
        out.value(Some(job), write_job);
        out.value(Some(plan), write_plan);
    });
}

/// Reads a job with its plan.
///
/// # Errors
/// [`CutTextProblem`]; nothing of it is used then.
pub fn read_cut(text: &str) -> Result<(Job, Plan), CutTextProblem> {
    read(text, CUT, |it| {
        let job = it.next().map(read_job);
        job.and_then(|job| {
            let plan = it.next().map(|plan| read_plan(plan, &job))?;
            Some((job, plan))
        })
    })
}
