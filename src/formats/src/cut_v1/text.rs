//! A text that begins with its version: reading it, and why it cannot be read.

use core::fmt;

use super::kinds::MOST_TEXT;
use crate::json::{Fault, Faults, Field, Kind, Record, Value, check};

/// The version that is written.
pub(super) const VERSION: u32 = 1;
/// A later one is told from a damaged one.
pub(super) const VERSIONS: Kind = Kind::Whole(1, u32::MAX as i128);
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

/// Reads a record that begins with its version.
pub(super) fn read<T>(
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
