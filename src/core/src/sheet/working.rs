//! [`Working`]: how an answer was found, and by which source.

use super::{Sentence, Value};
use crate::measure::{Length, Rounding};

/// The working of an answer, in the order of the steps.
#[derive(Clone, Debug, PartialEq, Default)]
pub struct Working {
    /// The steps.
    pub steps: Vec<Step>,
    /// Where the rules come from.
    pub sources: Vec<Source>,
}

/// One step: the rule in words, the numbers put in, and what it gives.
#[derive(Clone, Debug, PartialEq)]
pub struct Step {
    /// `strip width = (board width - kerfs) ÷ strips`
    pub rule: &'static str,
    /// `(9 1/8 in - 3 × 1/8 in) ÷ 4`
    pub put_in: Sentence,
    /// The result, exactly.
    pub gives: Value,
}

/// Where a rule or a value comes from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Source {
    /// A published document, with edition and table or equation.
    Published(&'static str),
    /// It follows from arithmetic or geometry alone.
    Arithmetic,
    /// What the trade does; no document says so.
    CommonPractice,
    /// A published value that was not seen when it was entered: said so wherever it is shown.
    Unverified(&'static str),
}

impl Step {
    /// A step that gives a length.
    #[must_use]
    pub fn length(rule: &'static str, put_in: Sentence, gives: Length) -> Step {
        Step { rule, put_in, gives: Value::Length(gives, Rounding::Nearest) }
    }
}

impl Source {
    /// For the user.
    #[must_use]
    pub fn words(self) -> String {
        match self {
            Source::Published(document) => document.to_owned(),
            Source::Arithmetic => "Arithmetic and geometry; no table is needed.".to_owned(),
            Source::CommonPractice => "Common practice, no source.".to_owned(),
            Source::Unverified(document) => format!("{document}. From memory, unverified."),
        }
    }
}
