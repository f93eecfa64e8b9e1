//! Every job of a shelf in one file: each stands in it as its own job file would say it.

use core::fmt;
use std::borrow::Cow;

use crate::job_file::{MOST_SET_ASIDE, OpenProblem, Opened, SetAside, not_json, set_aside};
use crate::json::{Writer, check, elements, member, unquoted};
use crate::{MAX_FILE, open_job};

/// Largest file of jobs, in bytes: five of the largest, or hundreds as they are.
pub const MAX_JOBS_FILE: usize = 5 * MAX_FILE;

/// Most jobs of one file.
pub const MOST_JOBS: usize = 1_000;

const FORMAT: &str = "sawdust-reckoner-jobs";
const VERSION: u64 = 1;

/// What a file of jobs holds, to be looked at before any of it is taken.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct OpenedJobs {
    /// The jobs, in the order of the file, each with what was set aside of it.
    pub jobs: Vec<Opened>,
    /// Those that cannot be opened at all, and why.
    pub set_aside: Vec<SetAside>,
}

/// Jobs that are too many or too large for one file.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct TooManyJobs;

impl fmt::Display for TooManyJobs {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(
            f,
            "One file holds up to {MOST_JOBS} jobs and {} MB. Save the largest ones by themselves, from their own pages.",
            MAX_JOBS_FILE / 1_000_000
        )
    }
}

impl core::error::Error for TooManyJobs {}

/// Writes jobs into one file, from the texts in which the shelf holds them. One that is damaged
/// goes in as it is, so that it is not lost with the device.
///
/// # Errors
///
/// [`TooManyJobs`], where the file could not be read again.
pub fn write_jobs<'a>(texts: impl Iterator<Item = &'a str>) -> Result<String, TooManyJobs> {
    let mut out = format!("{{\"format\":\"{FORMAT}\",\"version\":{VERSION},\"jobs\":[");
    for (number, text) in texts.enumerate() {
        out.push_str(if number == 0 { "\n" } else { ",\n" });
        if check(text).is_ok() {
            out.push_str(text.trim());
        } else {
            let mut w = Writer::new(false);
            w.text(text);
            out.push_str(&w.out);
        }
        if number >= MOST_JOBS || out.len() > MAX_JOBS_FILE - END.len() {
            return Err(TooManyJobs);
        }
    }
    out.push_str(END);
    Ok(out)
}

const END: &str = "\n]}\n";

/// Whether a text says that it is a file of jobs, and not of one.
#[must_use]
pub fn is_of_jobs(text: &str) -> bool {
    text.trim_start().starts_with('{')
        && text.len() <= MAX_JOBS_FILE
        && check(text).is_ok()
        && says(text.trim(), "format").is_some_and(|format| format == FORMAT)
}

fn says(file: &str, name: &str) -> Option<String> {
    let raw = member(file, name).filter(|raw| raw.starts_with('"'))?;
    Some(unquoted(raw).into_owned())
}

/// Opens a file of jobs. A job that cannot be opened is set aside alone.
///
/// # Errors
///
/// [`OpenProblem`] for a text that is no such file, or has more in it than it may have.
pub fn open_jobs(text: &str) -> Result<OpenedJobs, OpenProblem> {
    if text.len() > MAX_JOBS_FILE {
        return Err(OpenProblem::FileTooLarge(MAX_JOBS_FILE));
    }
    check(text).map_err(|at| not_json(text, at))?;
    let file = text.trim();
    if says(file, "format").is_none_or(|format| format != FORMAT) {
        return Err(OpenProblem::NotAJob);
    }
    match member(file, "version").and_then(|raw| raw.parse().ok()) {
        Some(VERSION) => {}
        Some(later) if later > VERSION => return Err(OpenProblem::Later(later)),
        _ => return Err(OpenProblem::NotAJob),
    }
    let jobs =
        member(file, "jobs").filter(|raw| raw.starts_with('[')).ok_or(OpenProblem::NotAJob)?;
    if elements(jobs).take(MOST_JOBS + 1).count() > MOST_JOBS {
        return Err(OpenProblem::TooMany("jobs", MOST_JOBS));
    }
    let mut opened = OpenedJobs { jobs: Vec::new(), set_aside: Vec::new() };
    for (number, raw) in (1..).zip(elements(jobs)) {
        // What was no JSON on the shelf stands in the file as a text.
        let raw = if raw.starts_with('"') { unquoted(raw) } else { Cow::Borrowed(raw) };
        match open_job(&raw) {
            Ok(job) => opened.jobs.push(job),
            Err(_) if opened.set_aside.len() >= MOST_SET_ASIDE => {
                return Err(OpenProblem::TooMany("damaged jobs", MOST_SET_ASIDE));
            }
            Err(why) => opened.set_aside.push(set_aside(number, &raw, why.to_string())),
        }
    }
    Ok(opened)
}
