//! The names of a job: which are allowed, and how they are found in a formula.

mod decomposed;
mod seen;
#[cfg(test)]
mod tests;

use core::fmt;
use std::collections::BTreeMap;

use seen::Seen;
pub use seen::key as name_key;

use super::MOST_NAME;
use crate::measure::text::{
    NoNames, TextProblemKind, UNSEEN, is_seen_whole, parse, seen as seen_of,
};

/// A name that cannot be used.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum NameProblem {
    /// Nothing, or only spaces.
    Empty,
    /// More than [`MOST_NAME`] characters.
    TooLong,
    /// It reads as a measure or a unit: `2 in`, `mm`, `x`.
    IsAMeasure,
    /// It has something that cannot be seen: a control character, a line break, a mark of direction
    /// or of no width.
    Invisible,
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
            NameProblem::Invisible => f.write_str(UNSEEN),
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
    let name = check_title(name)?;
    if reads_as_a_measure(&name) {
        Err(NameProblem::IsAMeasure)
    } else if others.any(|other| is_same_name(other, &name)) {
        Err(NameProblem::Taken)
    } else {
        Ok(())
    }
}

/// A title that is typed, as a job holds it: [`visible_title`] gives the same.
///
/// # Errors
///
/// [`NameProblem::Empty`], [`NameProblem::TooLong`], [`NameProblem::Invisible`].
pub fn check_title(title: &str) -> Result<String, NameProblem> {
    let trimmed = title.trim();
    if trimmed.is_empty() {
        Err(NameProblem::Empty)
    } else if trimmed.chars().nth(MOST_NAME).is_some() {
        Err(NameProblem::TooLong)
    } else if is_seen_whole(trimmed) {
        Ok(seen_of(trimmed))
    } else {
        Err(NameProblem::Invisible)
    }
}

/// The title of a job as it holds it, whatever was typed or stands in a file.
#[must_use]
pub fn visible_title(title: &str) -> String {
    let title = seen_of(title);
    // What is cut short may end in a space, or in the middle of a picture.
    let title = match title.char_indices().nth(MOST_NAME) {
        Some((at, _)) => seen_of(title.get(..at).unwrap_or_default()),
        None => title,
    };
    if title.is_empty() { "Untitled".to_owned() } else { title }
}

/// Makes a name of an item what its job holds: what can be seen of it. One that has something, and nothing to be seen,
/// becomes a name to be seen.
pub(super) fn make_visible(name: &mut String, otherwise: impl FnOnce() -> String) {
    let seen = seen_of(name);
    *name = if seen.is_empty() && !name.trim().is_empty() { otherwise() } else { seen };
}

/// Whether two names look the same: form and runs of white space do not count.
#[must_use]
pub fn is_same_name(one: &str, other: &str) -> bool {
    one == other || name_key(one) == name_key(other)
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
/// A match ends at a border of a word: `leg` is not found in `legs`. Names are found however their
/// characters are put together, and whatever white space is between their words.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub(super) struct NameIndex<T> {
    by_name: BTreeMap<String, T>,
}

impl<T: Copy> NameIndex<T> {
    /// An earlier pair wins over a later one of the same name.
    pub(super) fn new<'a>(pairs: impl Iterator<Item = (&'a str, T)>) -> NameIndex<T> {
        let mut by_name = BTreeMap::new();
        for (name, value) in pairs {
            by_name.entry(name_key(name).into_owned()).or_insert(value);
        }
        NameIndex { by_name }
    }

    pub(super) fn get(&self, name: &str) -> Option<T> {
        self.by_name.get(&*name_key(name)).copied()
    }

    /// Bytes of the longest name that `text` begins with.
    pub(super) fn longest_match(&self, text: &str) -> usize {
        let seen = Seen::of(text);
        let mut most = seen.text.len();
        loop {
            let found = self.longest_within(&seen.text, most);
            match seen.bytes_of(found) {
                Some(bytes) => return bytes,
                // It was cut off inside a character: an `e` is no beginning of an `é`.
                None => most = found.saturating_sub(1),
            }
        }
    }

    /// The longest name of at most so many bytes that `text` begins with.
    ///
    /// Names that are a beginning of `text` sort before it; the search steps back through the
    /// sorted names, each time to the longest common beginning, so it looks at few of them.
    fn longest_within(&self, text: &str, most: usize) -> usize {
        let Some(mut key) = text.get(..text.floor_char_boundary(most)) else { return 0 };
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
