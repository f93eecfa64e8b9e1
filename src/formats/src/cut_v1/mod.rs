//! Version 1 of a cutting job, its plan, and what the planner and the page say to each other.
//!
//! Everything is JSON text. The types of the core stay free to change; those in here are the promise. Reading trusts
//! nothing: every list has a largest size, every number a range, every place in a list is checked, and what is wrong is
//! named in a sentence. Whether a job makes sense is the core's `Job::validate` to say, and whether a plan keeps the
//! rules its `check_plan`.

mod job;
mod message;
mod outcome;
mod plan;
mod problem;

use core::fmt;

use reckoner_core::cutting::{Job, LARGEST_PRICE_CENTS, LARGEST_QUANTITY, LARGEST_UNITS, Plan};
use serde::de::DeserializeOwned;
use serde::{Deserialize, Serialize};

pub use job::CutJobV1;
pub use message::{
    Ask, Checked, News, Question, Reply, number_of_reply, read_question, read_reply,
    write_question, write_reply,
};
pub use plan::CutPlanV1;

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

/// A job with its plan, as they are kept together.
#[derive(Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub(crate) struct Kept {
    version: u32,
    job: CutJobV1,
    plan: CutPlanV1,
}

/// Writes a job with its plan.
#[must_use]
pub fn write_cut(job: &Job, plan: &Plan) -> String {
    written(&Kept { version: VERSION, job: job.into(), plan: plan.into() })
}

/// Reads a job with its plan.
///
/// # Errors
/// [`CutTextProblem`]; nothing of it is used then.
pub fn read_cut(text: &str) -> Result<(Job, Plan), CutTextProblem> {
    let kept: Kept = parsed(text)?;
    is_known(kept.version)?;
    let job = kept.job.job()?;
    let plan = kept.plan.plan(&job)?;
    Ok((job, plan))
}

fn written(value: &impl Serialize) -> String {
    // Texts, numbers and lists of them always have a JSON form.
    serde_json::to_string(value).unwrap_or_default()
}

fn parsed<T: DeserializeOwned>(text: &str) -> Result<T, CutTextProblem> {
    if text.len() > MOST_CUT_TEXT {
        return Err(CutTextProblem::TooLong);
    }
    serde_json::from_str(text).map_err(|_| CutTextProblem::NotReadable)
}

fn is_known(version: u32) -> Result<(), CutTextProblem> {
    match version {
        VERSION => Ok(()),
        0 => Err(CutTextProblem::NotReadable),
        later => Err(CutTextProblem::Later(later)),
    }
}

fn short<T>(list: &[T], most: usize, what: &'static str) -> Result<(), CutTextProblem> {
    if list.len() > most { Err(CutTextProblem::TooMany(what)) } else { Ok(()) }
}

fn text(text: String) -> Result<String, CutTextProblem> {
    if text.chars().count() > MOST_TEXT { Err(CutTextProblem::NameTooLong) } else { Ok(text) }
}

/// A length may be wrong for a job, and then the job says so; it is never so large that sums overflow.
fn units(units: i64, what: &'static str) -> Result<i64, CutTextProblem> {
    if units.unsigned_abs() > LARGEST_UNITS.unsigned_abs() {
        return Err(CutTextProblem::OutOfRange(what));
    }
    Ok(units)
}

/// A sum of prices.
fn cents(cents: i64) -> Result<i64, CutTextProblem> {
    let most = LARGEST_PRICE_CENTS.saturating_mul(i64::from(LARGEST_QUANTITY));
    if (0..=most).contains(&cents) { Ok(cents) } else { Err(CutTextProblem::OutOfRange("price")) }
}

fn place(at: usize, length: usize, what: &'static str) -> Result<usize, CutTextProblem> {
    if at < length { Ok(at) } else { Err(CutTextProblem::NotThere(what)) }
}

fn is_default<T: Default + PartialEq>(value: &T) -> bool {
    *value == T::default()
}
