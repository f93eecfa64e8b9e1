//! [`Working`]: how an answer was found, and by which source.

use std::borrow::Cow;

use super::{Sentence, Term, Value};
use crate::measure::Length;
use crate::measure::text::exact_text;
use crate::say;

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
    pub rule: Cow<'static, str>,
    /// `(9 1/8 in - 3 × 1/8 in) ÷ 4`
    pub put_in: Sentence,
    /// The result, exactly.
    pub gives: Value,
}

/// How the result of a formula is rounded or limited.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Rounded {
    /// To the whole number at or above it.
    Up,
    /// To the whole number at or below it.
    Down,
    /// The same, of things that are cut or laid.
    WholeOnes,
    /// To the 4096th of an inch that comes nearest, as every length that is not a fraction.
    Near,
    /// To the whole 64th of an inch at or above it, as bits are sold.
    Up64th,
    /// To the whole 64th of an inch at or below it.
    Down64th,
    /// To the 64th of an inch that comes nearest, the smaller one when midway.
    Nearest64th,
    /// Nothing in place of less than nothing.
    NotBelowZero,
    /// Without its sign: an angle that is set the one way or the other.
    EitherWay,
}

impl Rounded {
    /// After the rule.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Rounded::Up => "rounded up",
            Rounded::Down => "rounded down",
            Rounded::WholeOnes => "whole ones only",
            Rounded::Near => "to 1/4096 in",
            Rounded::Up64th => "up to a whole 64th",
            Rounded::Down64th => "down to a whole 64th",
            Rounded::Nearest64th => "to the nearest 64th",
            Rounded::NotBelowZero => "not below zero",
            Rounded::EitherWay => "whichever way it leans",
        }
    }
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
    /// A step in words: what the reader of lengths cannot work out again.
    #[must_use]
    pub fn in_words(rule: &'static str, put_in: Sentence, gives: impl Into<Value>) -> Step {
        Step { rule: rule.into(), put_in, gives: gives.into() }
    }

    /// A step whose rule and numbers are printed from one formula: `strip = usable ÷ strips` and
    /// `9 in ÷ 4` from [`Term`]s.
    #[must_use]
    pub fn of(name: &'static str, formula: Term, gives: impl Into<Value>) -> Step {
        let (words, numbers) = formula.into_texts();
        Step {
            rule: format!("{name} = {words}").into(),
            put_in: say![numbers],
            gives: gives.into(),
        }
    }

    /// The same step, with the rounding that the rule names: `rounded up`.
    #[must_use]
    pub fn then(mut self, rounding: Rounded) -> Step {
        self.rule = format!("{}, {}", self.rule, rounding.words()).into();
        self
    }

    /// The same step, with a limit: `at most the reach`, and how much that is.
    #[must_use]
    pub fn at_most(mut self, limit: &'static str, amount: Length) -> Step {
        self.rule = format!("{}, at most {limit}", self.rule).into();
        self.put_in.0.push(format!(", at most {}", exact_text(amount)).into());
        self
    }

    /// The same step, with a remark after the rule and one after its numbers: `M not over 30` and
    /// `White ash`. An empty one is left out.
    #[must_use]
    pub fn remarked(mut self, rule: &'static str, numbers: &'static str) -> Step {
        if !rule.is_empty() {
            self.rule = format!("{}, {rule}", self.rule).into();
        }
        if !numbers.is_empty() {
            self.put_in.0.push(format!(", {numbers}").into());
        }
        self
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
