//! The names of a job: which are allowed, and how they are found in a formula.

use core::fmt;
use std::collections::BTreeMap;

use super::MOST_NAME;
use crate::measure::text::{NoNames, TextProblemKind, parse};

/// A name that cannot be used.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum NameProblem {
    /// Nothing, or only spaces.
    Empty,
    /// More than [`MOST_NAME`] characters.
    TooLong,
    /// It reads as a measure or a unit: `2 in`, `mm`, `x`.
    IsAMeasure,
    /// It has a control character or a line break.
    ControlCharacter,
    /// Another measure has it.
    Taken,
}

impl fmt::Display for NameProblem {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            NameProblem::Empty => f.write_str("Give it a name, such as front rail."),
            NameProblem::TooLong => write!(f, "A name may have up to {MOST_NAME} characters."),
            NameProblem::IsAMeasure => {
                f.write_str("This reads as a measure or a sign. Choose a name with a word in it.")
            }
            NameProblem::ControlCharacter => {
                f.write_str("A name is one line of ordinary characters.")
            }
            NameProblem::Taken => {
                f.write_str("Another measure has this name. Choose a different one.")
            }
        }
    }
}

impl core::error::Error for NameProblem {}

/// Whether a name can be used beside the `others`.
///
/// # Errors
///
/// [`NameProblem`], with the reason.
pub fn check_name<'a>(
    name: &str,
    mut others: impl Iterator<Item = &'a str>,
) -> Result<(), NameProblem> {
    let trimmed = name.trim();
    if trimmed.is_empty() {
        Err(NameProblem::Empty)
    } else if trimmed.chars().count() > MOST_NAME {
        Err(NameProblem::TooLong)
    } else if trimmed.chars().any(char::is_control) {
        Err(NameProblem::ControlCharacter)
    } else if reads_as_a_measure(trimmed) {
        Err(NameProblem::IsAMeasure)
    } else if others.any(|other| other == trimmed) {
        Err(NameProblem::Taken)
    } else {
        Ok(())
    }
}

/// A name must hold something that the grammar does not know, or it would hide a number.
fn reads_as_a_measure(name: &str) -> bool {
    let after_one = format!("1 {name}");
    let alone = parse(name, &NoNames);
    match alone {
        Ok(_) => true,
        Err(problem) if matches!(problem.kind, TextProblemKind::UnknownWord(_)) => false,
        // A sign or a unit alone; a name that only begins like a measure is one all the same.
        Err(problem) => {
            let symbols_only = !name.chars().any(char::is_alphanumeric) && name.is_ascii();
            symbols_only
                || parse(&after_one, &NoNames).is_ok()
                || (problem.at.start == 0 && name.eq_ignore_ascii_case("x"))
        }
    }
}

/// Finds names in a formula by longest match.
///
/// A match ends at a border of a word: `leg` is not found in `legs`.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub(super) struct NameIndex<T> {
    by_name: BTreeMap<String, T>,
}

impl<T: Copy> NameIndex<T> {
    /// An earlier pair wins over a later one of the same name.
    pub(super) fn new(pairs: impl Iterator<Item = (String, T)>) -> NameIndex<T> {
        let mut by_name = BTreeMap::new();
        for (name, value) in pairs {
            by_name.entry(name).or_insert(value);
        }
        NameIndex { by_name }
    }

    pub(super) fn get(&self, name: &str) -> Option<T> {
        self.by_name.get(name).copied()
    }

    /// Bytes of the longest name that `text` begins with.
    ///
    /// Names that are a beginning of `text` sort before it; the search steps back through the
    /// sorted names, each time to the longest common beginning, so it looks at few of them.
    pub(super) fn longest_match(&self, text: &str) -> usize {
        let mut key = text;
        loop {
            let before = self
                .by_name
                .range::<str, _>((core::ops::Bound::Unbounded, core::ops::Bound::Included(key)));
            let Some((candidate, _)) = before.into_iter().next_back() else { return 0 };
            if text.starts_with(candidate.as_str()) && ends_a_word(candidate, text) {
                return candidate.len();
            }
            let common = common_beginning(candidate, text);
            let shorter = if common == candidate.len() {
                // It was cut off inside a word: look for something shorter.
                candidate.char_indices().next_back().map_or(0, |(at, _)| at)
            } else {
                common
            };
            if shorter == 0 {
                return 0;
            }
            key = text.get(..shorter).unwrap_or("");
        }
    }
}

fn common_beginning(a: &str, b: &str) -> usize {
    a.char_indices()
        .zip(b.chars())
        .find(|((_, x), y)| x != y)
        .map_or(a.len().min(b.len()), |((at, _), _)| at)
}

fn ends_a_word(name: &str, text: &str) -> bool {
    let next = text.get(name.len()..).and_then(|rest| rest.chars().next());
    let last = name.chars().next_back();
    !(last.is_some_and(char::is_alphanumeric) && next.is_some_and(char::is_alphanumeric))
}
