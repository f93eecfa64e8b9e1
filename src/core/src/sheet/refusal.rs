//! How a calculator refuses: a typed [`Problem`] inside, a [`Refusal`] beside a field outside.

use super::{Ask, Field, Sentence};
use crate::measure::{OutOfRange, Tape};

/// The problems of one question: never empty, all that apply.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Problems<P>(Vec<P>);

impl<P> Problems<P> {
    /// The problems, or the answer when there are none.
    ///
    /// # Errors
    ///
    /// All of `problems`, when there are any.
    pub fn unless_none(problems: Vec<P>) -> Result<(), Problems<P>> {
        if problems.is_empty() { Ok(()) } else { Err(Problems(problems)) }
    }

    /// Each problem, most important first.
    pub fn iter(&self) -> core::slice::Iter<'_, P> {
        self.0.iter()
    }
}

impl<P> From<P> for Problems<P>
where
    P: Problem,
{
    fn from(problem: P) -> Problems<P> {
        Problems(vec![problem])
    }
}

impl<P> From<OutOfRange> for Problems<P>
where
    P: From<OutOfRange>,
{
    fn from(out_of_range: OutOfRange) -> Problems<P> {
        Problems(vec![P::from(out_of_range)])
    }
}

/// A question that cannot or should not be answered as it stands.
///
/// One enum for each calculator; the variants hold the numbers.
pub trait Problem: From<OutOfRange> {
    /// Stable name for programs, such as `strip-too-thin`.
    fn code(&self) -> &'static str;
    /// Id of the field that it stands beside.
    fn field(&self) -> &'static str;
    /// What is wrong, for the user.
    fn sentence(&self) -> Sentence;
    /// The nearest thing that works.
    fn way_out(&self) -> Option<WayOut>;
}

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
        WayOut::set_id(sentence, field.id, typed)
    }

    /// The same by the id of the field: goes when every calculator has its fields as constants.
    #[must_use]
    pub fn set_id(
        sentence: Sentence,
        field: &'static str,
        typed: impl Into<Sentence>,
    ) -> Option<WayOut> {
        Some(WayOut { sentence, set: vec![(field, typed.into())] })
    }

    /// What is typed in each field to carry it out, as this tape shows it.
    #[must_use]
    pub fn texts(&self, tape: Tape) -> Vec<(&'static str, String)> {
        self.set.iter().map(|(field, typed)| (*field, typed.typed(tape))).collect()
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

impl Ask<'_> {
    /// Keeps a refusal that was found while reading.
    pub fn keep(&mut self, refusal: Refusal) {
        self.refusals.push(refusal);
    }

    /// Keeps why `reckon` does not answer; `too_large` is what is said of a number that is out of
    /// range. Always `None`, to return it at once.
    pub fn refused<T>(&mut self, refused: Refused, too_large: Refusal) -> Option<T> {
        match refused {
            Refused::For(refusals) => self.refusals.extend(refusals),
            Refused::OutOfRange => self.refusals.push(too_large),
        }
        None
    }

    /// Puts the problems of `reckon` beside their fields. Always `None`, to return it at once.
    pub fn refuse<T, P: Problem>(&mut self, problems: &Problems<P>) -> Option<T> {
        self.refusals.extend(problems.iter().map(|problem| Refusal {
            field: problem.field(),
            code: problem.code(),
            sentence: problem.sentence(),
            at: None,
            way_out: problem.way_out(),
        }));
        None
    }
}
