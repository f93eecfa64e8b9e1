//! Lengths and numbers without names: the short ways to read them, and a number written so that it reads back to itself.

use super::formula::NoNames;
use super::parse::parse;
use super::print::{decimal, trim_zeros};
use super::problem::TextProblem;
use crate::measure::{Length, Number, Unit};

/// Reads a length in inches, without names: the short way for constants, tests and examples.
///
/// # Errors
///
/// [`TextProblem`] with the place in the text and what was expected.
///
/// ```
/// # use reckoner_core::measure::length;
/// assert_eq!(length("61 3/8 - 2 × 3 1/2 - 2 × 3/4")?, length("52 7/8")?);
/// assert_eq!(length("25.4 mm")?, length("1")?);
/// let problem = length("3 3/8 x 2in x 4in").unwrap_err();
/// assert!(problem.to_string().contains("area"));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn length(text: &str) -> Result<Length, TextProblem> {
    parse(text, &NoNames)?.length(Unit::Inch, &NoNames)
}

/// Reads a plain number, such as a count or a percentage, without names.
///
/// # Errors
///
/// [`TextProblem`] with the place in the text and what was expected.
pub fn number(text: &str) -> Result<Number, TextProblem> {
    parse(text, &NoNames)?.number(Unit::Inch, &NoNames)
}

/// A number exactly: a whole one or a decimal where that takes no more than so many places, else
/// a fraction.
///
/// ```
/// # use reckoner_core::measure::{text::exact_number, Number};
/// assert_eq!(exact_number(Number::ratio(97_194, 100_000)?, 5), "0.97194");
/// assert_eq!(exact_number(Number::ratio(2, 3)?, 5), "2/3");
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[must_use]
pub fn exact_number(number: Number, most_places: u8) -> String {
    let text = decimal(number, most_places);
    let text = trim_zeros(&text);
    let read = self::number(text);
    if read.is_ok_and(|read| read == number) { text.to_owned() } else { number.to_string() }
}
