//! [`TextProblem`]: what is wrong with a written measure, and where.

use core::fmt;
use core::ops::Range;

use crate::measure::Unit;
use crate::measure::limits::{MAX_DEPTH, MAX_DIGITS, MAX_LENGTH_INCHES, MAX_TEXT};

/// A measure or formula that cannot be read, with the place in its text.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct TextProblem {
    /// Byte range in the text. Empty at the end of the text when something is missing there.
    pub at: Range<usize>,
    /// What is wrong.
    pub kind: TextProblemKind,
}

impl TextProblem {
    pub(super) fn new(at: Range<usize>, kind: TextProblemKind) -> TextProblem {
        TextProblem { at, kind }
    }

    /// The text before the place, the place, and the text after it, to show it marked.
    #[must_use]
    pub fn split<'a>(&self, text: &'a str) -> (&'a str, &'a str, &'a str) {
        let piece = |range: Range<usize>| text.get(range).unwrap_or("");
        (piece(0..self.at.start), piece(self.at.clone()), piece(self.at.end..text.len()))
    }
}

/// What is wrong with a written measure. `Display` is the sentence for the user.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum TextProblemKind {
    /// Nothing is written.
    Empty,
    /// More than [`MAX_TEXT`] characters.
    TooLong,
    /// Brackets and signs nest beyond [`MAX_DEPTH`].
    TooDeep,
    /// A number with more than [`MAX_DIGITS`] digits.
    TooManyDigits,
    /// Beyond [`MAX_LENGTH_INCHES`], or too fine to keep exactly.
    TooLarge,
    /// A character that means nothing here.
    UnknownCharacter(char),
    /// A word that is neither a unit nor a name.
    UnknownWord(String),
    /// A number, name or bracket was expected.
    ExpectedAmount,
    /// Two amounts stand side by side with no sign between them.
    ExpectedOperator,
    /// `(` without its `)`.
    UnclosedBracket,
    /// `)` without its `(`.
    UnopenedBracket,
    /// `5/0`.
    ZeroUnderFraction,
    /// A division by something that comes to zero.
    DivisionByZero,
    /// `3 9/8`: the fraction of a mixed number is one or more.
    FractionNotBelowOne,
    /// `6-3-3/8` or `3 -3/8`: a mixed number or a subtraction; `2' -4"`: a sum or a subtraction.
    AmbiguousHyphen,
    /// `4" 2'` or `2 ft 45 mm`: two units that do not go together without a sign.
    UnitMuddle,
    /// `2' 14"`: what follows a unit comes to one of it or more.
    PartNotBelowUnit(Unit),
    /// `2x4`: the name of a board, and not how large it is.
    BoardName(String),
    /// `3,5`.
    DecimalComma,
    /// `1,000`, `1 000` or `1'000`.
    GroupedDigits,
    /// `3 3/ 8`: a space inside a fraction.
    SpacedFraction,
    /// A digit or sign that is not from a plain keyboard, such as a wide or raised one.
    NotPlain(char),
    /// A character that cannot be seen, left by copying.
    Invisible,
    /// The answer is an area and a length was wanted.
    IsArea,
    /// The answer is a plain number (a length ÷ a length) and a length was wanted.
    IsPlainNumber,
    /// The answer is a length and a plain number was wanted.
    IsLength,
    /// The answer is not an area, and an area was wanted.
    IsNotArea,
    /// Area × length, or a number ÷ an area.
    BeyondArea,
    /// A length and a plain number, or a length and an area, cannot be added.
    AddsUnlike,
    /// A whole number from 1 up to this was wanted.
    NotACount(u32),
    /// The name stands in the formula but its value is not known.
    NameWithoutValue(String),
}

impl fmt::Display for TextProblemKind {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Empty => f.write_str("Nothing is written yet. Enter a measure, such as 3 3/8."),
            Self::TooLong => write!(f, "This is longer than {MAX_TEXT} characters. Work it out in two steps."),
            Self::TooDeep => write!(f, "Brackets go more than {MAX_DEPTH} deep. Work it out in two steps."),
            Self::TooManyDigits => write!(f, "This number has more than {MAX_DIGITS} digits. Write a shorter one."),
            Self::TooLarge => write!(
                f,
                "This is too large or too fine to keep exactly. A length may be up to {MAX_LENGTH_INCHES} in."
            ),
            Self::UnknownCharacter(c) => write!(f, "“{c}” means nothing here. Use numbers, fractions, units and + - × ÷ ( )."),
            Self::UnknownWord(word) => write!(f, "“{word}” is not a unit or a known name. Units are in, ft, mm, cm and m."),
            Self::ExpectedAmount => f.write_str("A number is missing here, such as 3 3/8."),
            Self::ExpectedOperator => f.write_str("A sign is missing here: + - × or ÷."),
            Self::UnclosedBracket => f.write_str("This bracket is never closed. Add a )."),
            Self::UnopenedBracket => f.write_str("This ) has no ( before it. Take it out, or add the (."),
            Self::ZeroUnderFraction => f.write_str("A fraction cannot have 0 below the line."),
            Self::DivisionByZero => f.write_str("This divides by zero. Divide by something else."),
            Self::FractionNotBelowOne => {
                f.write_str("The fraction after a whole number must be less than one, as in 3 3/8.")
            }
            Self::AmbiguousHyphen => f.write_str(
                "This can be read two ways. Put spaces around a minus (6 - 3 3/8), and write mixed numbers with a space.",
            ),
            Self::UnitMuddle => f.write_str(
                "Two units are mixed up here. Write feet before inches (2 ft 4 in), or put a sign between the two.",
            ),
            Self::PartNotBelowUnit(unit) => {
                let example = if unit.is_metric() { "1 m 20 cm" } else { "2 ft 4 in" };
                let (many, one) = (unit.spoken(true), unit.spoken(false));
                write!(f, "The part after {many} must be less than one {one}, as in {example}.")
            }
            Self::BoardName(name) => write!(
                f,
                "“{name}” is the name of a board. Write the size you measured, or put spaces around × to multiply."
            ),
            Self::DecimalComma => f.write_str("Use a point for decimals, as in 3.375."),
            Self::GroupedDigits => {
                f.write_str("Write a number in one piece, as in 1000. For decimals use a point, as in 3.375.")
            }
            Self::SpacedFraction => f.write_str("Write a fraction without a space inside, as in 3 3/8."),
            Self::NotPlain(c) => write!(f, "“{c}” is not a plain digit or sign. Use 0 to 9 and / as on a keyboard."),
            Self::Invisible => f.write_str("A character that cannot be seen stands here. Delete it and type this part again."),
            Self::IsArea => f.write_str("A length times a length is an area. A length is wanted here."),
            Self::IsPlainNumber => {
                f.write_str("A length divided by a length is a plain number. A length is wanted here.")
            }
            Self::IsLength => f.write_str("A plain number is wanted here. Take out the unit."),
            Self::IsNotArea => f.write_str("An area is wanted here: a length times a length."),
            Self::BeyondArea => f.write_str("This is neither a length nor an area. Check the × and ÷."),
            Self::AddsUnlike => f.write_str("These two cannot be added: one is a length and the other is not."),
            Self::NotACount(most) => write!(f, "This must be a whole number from 1 to {most}."),
            Self::NameWithoutValue(name) => write!(f, "“{name}” has no value yet. Give it one first."),
        }
    }
}

impl fmt::Display for TextProblem {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        fmt::Display::fmt(&self.kind, f)
    }
}

impl core::error::Error for TextProblem {}
