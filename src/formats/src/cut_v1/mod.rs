//! Version 1 of a cutting job, its plan, and what the planner and the page say to each other.
//!
//! Everything is JSON text. The types of the core stay free to change; those in here are the promise. Reading trusts
//! nothing: every list has a largest size, every number a range, every place in a list is checked, and what is wrong is
//! named in a sentence. Whether a job makes sense is the core's `Job::validate` to say, and whether a plan keeps the
//! rules its `check_plan`.

mod backing;
mod job;
mod message;
mod outcome;
mod plan;
mod problem;
mod taken;

use core::fmt;

use reckoner_core::cutting::{Job, LARGEST_PRICE_CENTS, LARGEST_QUANTITY, LARGEST_UNITS, Plan};

use crate::json::{Fault, Faults, Field, Kind, Record, Value, Writer, check, must};

pub(crate) use backing::{BACKING, read_backing, write_backing};
use job::{JOB, read_job, write_job};
use plan::{PLAN, read_plan, write_plan};

pub use message::{
    Ask, Checked, News, Question, Reply, number_of_reply, read_question, read_reply,
    write_question, write_reply,
};
pub use taken::{TakenPlan, read_taken, write_taken};

/// The version that is written.
const VERSION: u32 = 1;

/// Most kinds of parts, boards, scraps or sections in one job.
pub const MOST_CUT_LINES: usize = 10_000;
/// Most pieces of a plan, counted in any of its lists.
const MOST_PIECES: usize = LARGEST_QUANTITY as usize;
/// Longest id or name, in characters.
const MOST_TEXT: usize = 500;
/// Longest text that is read, in bytes.
pub const MOST_CUT_TEXT: usize = 32_000_000;

/// Why a text is no job, plan or message. `Display` is the sentence for the user.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum CutTextProblem {
    /// More than [`MOST_CUT_TEXT`] bytes.
    TooLong,
    /// It breaks off, or is something else.
    NotReadable,
    /// Written by a later version.
    Later(u32),
    /// A list is longer than it may be.
    TooMany(&'static str),
    /// A number is out of its range.
    OutOfRange(&'static str),
    /// It names something that is not there.
    NotThere(&'static str),
    /// A name is too long.
    NameTooLong,
}

impl fmt::Display for CutTextProblem {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            CutTextProblem::TooLong => f.write_str("The plan is too long to be read."),
            CutTextProblem::NotReadable => f.write_str("The plan is damaged and cannot be read."),
            CutTextProblem::Later(version) => write!(
                f,
                "The plan was written by a later version of the app (format {version}). Update the app, then open it."
            ),
            CutTextProblem::TooMany(what) => write!(f, "The plan has too many {what}."),
            CutTextProblem::OutOfRange(what) => {
                write!(f, "The plan is damaged: its {what} is out of range.")
            }
            CutTextProblem::NotThere(what) => {
                write!(f, "The plan is damaged: it names a {what} that is not there.")
            }
            CutTextProblem::NameTooLong => {
                write!(f, "The plan is damaged: a name is longer than {MOST_TEXT} characters.")
            }
        }
    }
}

impl core::error::Error for CutTextProblem {}

impl From<Fault> for CutTextProblem {
    fn from(fault: Fault) -> CutTextProblem {
        match fault {
            Fault::Missing(_) | Fault::Wrong(_) | Fault::Kind | Fault::Said(_) => {
                CutTextProblem::NotReadable
            }
            Fault::TooLong(_) => CutTextProblem::NameTooLong,
            Fault::TooMany(what, _) => CutTextProblem::TooMany(what),
            Fault::OutOfRange(what) => CutTextProblem::OutOfRange(what),
            Fault::NotThere(what) => CutTextProblem::NotThere(what),
        }
    }
}

/// A job with its plan, as they are kept together.
pub(crate) const CUT: &[Field] = &[
    must("version", VERSIONS, ""),
    must("job", Kind::Record(JOB), "What was asked."),
    must("plan", Kind::Record(PLAN), ""),
];

/// A later one is told from a damaged one.
const VERSIONS: Kind = Kind::Whole(1, u32::MAX as i128);
/// A name.
const TEXT: Kind = Kind::Text(MOST_TEXT);
/// A length may be wrong for a job, and then the job says so; it is never so large that sums overflow.
const UNITS: Kind = Kind::Whole(-(LARGEST_UNITS as i128), LARGEST_UNITS as i128);
/// A sum of prices.
const CENTS: Kind = Kind::Whole(0, LARGEST_PRICE_CENTS as i128 * LARGEST_QUANTITY as i128);
/// A place in a list.
const PLACE: Kind = Kind::Whole(0, u32::MAX as i128);

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

/// Reads a record that begins with its version.
fn read<T>(
    text: &str,
    fields: &'static [Field],
    within: impl FnOnce(&mut Record) -> Option<T>,
) -> Result<T, CutTextProblem> {
    if text.len() > MOST_CUT_TEXT {
        return Err(CutTextProblem::TooLong);
    }
    check(text).map_err(|_| CutTextProblem::NotReadable)?;
    let faults = Faults::default();
    let mut it = Value::new(text.trim(), Kind::Record(fields), "plan", &faults).record();
    match it.maybe_int().unwrap_or(0) {
        VERSION => {}
        0 => return Err(CutTextProblem::NotReadable),
        later => return Err(CutTextProblem::Later(later)),
    }
    let found = within(&mut it);
    faults.or(found)?.ok_or(CutTextProblem::NotReadable)
}

/// A place in a list of the job.
fn place(value: Value, length: usize, what: &'static str) -> usize {
    let at = value.int();
    if at >= length {
        value.faults.add(Fault::NotThere(what));
    }
    at
}
