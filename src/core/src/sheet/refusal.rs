//! How a calculator refuses: a [`Refusal`] beside a field, with the nearest thing that works.

use super::{Field, Sentence};
use crate::measure::text::{UNSEEN, is_seen_whole, seen};
use crate::measure::{Length, OutOfRange, Rounding, Tape};
use crate::say;

/// The code of a name in which something cannot be seen.
pub(super) const INVISIBLE: &str = "invisible";

/// The nearest thing that works, and what to type for it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct WayOut {
    /// For the user: `Use 3 1/8 in or less.`
    pub sentence: Sentence,
    /// Field ids and what is typed there to carry it out in one tap; empty when there is no single
    /// one. Lengths in it are written on the tape: see [`WayOut::texts`].
    pub set: Vec<(&'static str, Sentence)>,
}

impl WayOut {
    /// Advice without a tap.
    #[must_use]
    pub fn advice(sentence: Sentence) -> Option<WayOut> {
        Some(WayOut { sentence, set: Vec::new() })
    }

    /// Advice that one field carries out. A length is given with the rounding that keeps it on the
    /// safe side: `(least, Rounding::Up)`.
    #[must_use]
    pub fn set(sentence: Sentence, field: &Field, typed: impl Into<Sentence>) -> Option<WayOut> {
        Some(WayOut { sentence, set: vec![(field.id, typed.into())] })
    }

    /// What is typed in each field to carry it out, as this tape shows it.
    #[must_use]
    pub fn texts(&self, tape: Tape) -> Vec<(&'static str, String)> {
        self.set.iter().map(|(field, typed)| (*field, typed.typed(tape))).collect()
    }

    /// A length that a field may have at most, between the words before and after it: `Use `,
    /// `3 1/8 in` and ` or less.` Shown rounded down, so that what is read and typed works.
    #[must_use]
    pub fn at_most(
        before: &'static str,
        most: Length,
        after: &'static str,
        field: &Field,
    ) -> Option<WayOut> {
        WayOut::set(say![before, (most, Rounding::Down), after], field, (most, Rounding::Down))
    }

    /// The same of a length that a field must have at least, shown rounded up.
    #[must_use]
    pub fn at_least(
        before: &'static str,
        least: Length,
        after: &'static str,
        field: &Field,
    ) -> Option<WayOut> {
        WayOut::set(say![before, (least, Rounding::Up), after], field, (least, Rounding::Up))
    }
}

/// A problem beside a field, ready to be shown.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Refusal {
    /// Id of the field.
    pub field: &'static str,
    /// Stable name for programs; that of a text that cannot be read is `cannot-read`, of an
    /// empty field `empty`.
    pub code: &'static str,
    /// What is wrong.
    pub sentence: Sentence,
    /// Byte range of the trouble in the text of the field, when it is in the writing.
    pub at: Option<core::ops::Range<usize>>,
    /// The nearest thing that works.
    pub way_out: Option<WayOut>,
}

impl Refusal {
    /// Beside this field, with the nearest thing that works.
    #[must_use]
    pub fn at(
        field: &Field,
        code: &'static str,
        sentence: Sentence,
        way_out: Option<WayOut>,
    ) -> Refusal {
        Refusal { field: field.id, code, sentence, at: None, way_out }
    }

    /// Of a name in which something cannot be seen, with a tap that writes what can; `None` for one that is seen whole.
    #[must_use]
    pub fn unseen(field: &Field, name: &str) -> Option<Refusal> {
        let name = name.trim();
        let seen = seen(name);
        let way_out = if seen.is_empty() {
            None
        } else {
            WayOut::set(say![format!("Write {seen}.")], field, seen)
        };
        (!is_seen_whole(name)).then(|| Refusal::at(field, INVISIBLE, say![UNSEEN], way_out))
    }

    /// A question that numbers too large or too fine keep from being worked out, with what to do about it.
    #[must_use]
    pub fn too_large(field: &Field, advice: &'static str) -> Refusal {
        let sentence = say!["This is too large or too fine to work out exactly."];
        Refusal::at(field, "too-large", sentence, WayOut::advice(say![advice]))
    }

    /// Sizes that are too large or too fine to be kept exactly, whatever is asked.
    #[must_use]
    pub fn out_of_range(field: &Field) -> Refusal {
        let sentence = say!["These sizes are too large or too fine to be kept exactly."];
        Refusal::at(field, "out-of-range", sentence, None)
    }
}

/// Why a question is not answered.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Refused {
    /// All that is in the way, most important first; never empty.
    For(Vec<Refusal>),
    /// A number on the way is too large or too fine to be kept exactly.
    OutOfRange,
}

impl Refused {
    /// All of `refusals`, when there are any.
    ///
    /// # Errors
    ///
    /// [`Refused::For`] them.
    pub fn unless_none(refusals: Vec<Refusal>) -> Result<(), Refused> {
        if refusals.is_empty() { Ok(()) } else { Err(Refused::For(refusals)) }
    }

    /// The codes of what is in the way; none when a number is out of range.
    #[must_use]
    pub fn codes(&self) -> Vec<&'static str> {
        match self {
            Refused::For(refusals) => refusals.iter().map(|refusal| refusal.code).collect(),
            Refused::OutOfRange => Vec::new(),
        }
    }
}

impl From<Refusal> for Refused {
    fn from(refusal: Refusal) -> Refused {
        Refused::For(vec![refusal])
    }
}

impl From<OutOfRange> for Refused {
    fn from(_: OutOfRange) -> Refused {
        Refused::OutOfRange
    }
}
