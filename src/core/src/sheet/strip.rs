//! [`Strip`]: a running strip of formulas and answers, where later lines use earlier ones.

use crate::measure::Unit;
use crate::measure::text::{Formula, Names, Quantity, TextProblem, parse};

/// Most lines of a strip.
const MOST_LINES: usize = 100;

/// Letters of the lines, without those that read as a digit or as a times sign.
const LETTERS: &[u8] = b"ABCDEFGHJKLMNPQRSTUVWYZ";

/// A running strip of formulas: each line has a letter, and later lines may use it.
///
/// The text has one formula a line. A line keeps its letter when lines around it are emptied, so
/// an edit to an earlier line moves every later one that used it. A line can use only the lines
/// above it, so there are no circles.
///
/// ```
/// # use reckoner_core::{measure::{length, text::{NoNames, Quantity}, Unit}, sheet::Strip};
/// let strip = Strip::read("44 - 2 × 3 1/2\nA / 2", Unit::Inch, &NoNames);
/// assert_eq!(strip.lines()[1].letter, "B");
/// assert_eq!(strip.length_of("B"), Some(length("18 1/2")?));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Strip {
    lines: Vec<Line>,
    unit: Unit,
}

/// A line of a strip.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Line {
    /// Its letter: `A`, `B`, …, then `A2`, `B2`.
    pub letter: String,
    /// As typed.
    pub text: String,
    /// What it comes to.
    pub outcome: Outcome,
}

/// What a line comes to.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Outcome {
    /// Nothing is written.
    Blank,
    /// An answer, and how the formula was understood.
    Answer(Formula, Quantity),
    /// It cannot be read or worked out.
    Problem(TextProblem),
}

impl Strip {
    /// Reads the lines in order. Lines beyond the hundredth are left out; see
    /// [`is_too_long`](Strip::is_too_long).
    #[must_use]
    pub fn read(text: &str, unit: Unit, names: &dyn Names) -> Strip {
        let mut strip = Strip { lines: Vec::new(), unit };
        for (index, text) in text.lines().take(MOST_LINES).enumerate() {
            let outcome = if text.trim().is_empty() {
                Outcome::Blank
            } else {
                let above = LinesAbove { strip: &strip, names };
                let answer = parse(text, &above)
                    .and_then(|formula| formula.quantity(unit, &above).map(|q| (formula, q)));
                match answer {
                    Ok((formula, quantity)) => Outcome::Answer(formula, quantity),
                    Err(problem) => Outcome::Problem(problem),
                }
            };
            strip.lines.push(Line {
                letter: Strip::letter_at(index),
                text: text.to_owned(),
                outcome,
            });
        }
        strip
    }

    /// Whether a text has more lines than a strip holds.
    #[must_use]
    pub fn is_too_long(text: &str) -> bool {
        text.lines().nth(MOST_LINES).is_some()
    }

    /// The lines, first to last.
    #[must_use]
    pub fn lines(&self) -> &[Line] {
        &self.lines
    }

    /// The line with this letter, or the last one written when `letter` is empty.
    #[must_use]
    pub fn line(&self, letter: &str) -> Option<&Line> {
        let is_written = |line: &&Line| line.outcome != Outcome::Blank;
        match letter.trim() {
            "" => self.lines.iter().rfind(is_written),
            letter => self.lines.iter().filter(is_written).find(|line| line.letter == letter),
        }
    }

    /// The length that a line comes to, if it is one.
    #[must_use]
    pub fn length_of(&self, letter: &str) -> Option<crate::measure::Length> {
        match &self.line(letter)?.outcome {
            Outcome::Answer(formula, Quantity::Bare(_) | Quantity::Length(_)) => {
                let above = LinesAbove { strip: self, names: &crate::measure::text::NoNames };
                formula.length(self.unit, &above).ok()
            }
            _ => None,
        }
    }

    /// The letter that the line at this place has, or would have.
    #[must_use]
    pub fn letter_at(index: usize) -> String {
        let round = index / LETTERS.len();
        let letter = LETTERS.get(index % LETTERS.len()).map_or('A', |byte| char::from(*byte));
        if round == 0 { letter.to_string() } else { format!("{letter}{}", round + 1) }
    }
}

/// The letters of the lines read so far, then the names of the caller.
struct LinesAbove<'a> {
    strip: &'a Strip,
    names: &'a dyn Names,
}

impl Names for LinesAbove<'_> {
    fn longest_match(&self, text: &str) -> usize {
        let own = self
            .strip
            .lines
            .iter()
            .map(|line| line.letter.as_str())
            .filter(|letter| {
                let after = text.strip_prefix(letter).map(|rest| rest.chars().next());
                after.is_some_and(|next| !next.is_some_and(char::is_alphanumeric))
            })
            .map(str::len)
            .max();
        own.unwrap_or(0).max(self.names.longest_match(text))
    }

    fn value(&self, name: &str) -> Option<Quantity> {
        let line = self.strip.lines.iter().find(|line| line.letter == name);
        match line.map(|line| &line.outcome) {
            Some(Outcome::Answer(_, quantity)) => Some(*quantity),
            Some(_) => None,
            None => self.names.value(name),
        }
    }
}
