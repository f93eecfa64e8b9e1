//! [`Sentence`]: words with lengths in them, which are written only when the tape is known.

use core::fmt;
use std::borrow::Cow;

use crate::measure::{
    Length, Number, Partner, Rounding, Tape,
    text::{decimal, exact_text, show},
};

/// One piece of a [`Sentence`].
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Piece {
    /// Words.
    Text(Cow<'static, str>),
    /// A length, to be read on the user's tape.
    Length(Length, Rounding),
    /// A load or the like with its unit, in the units of who measures with that tape.
    Amount(Number, &'static str),
}

/// Words with lengths in them: `Strips of 1 3/4 do not fit.`
///
/// Made with [`say!`](crate::say). `Display` writes every length exactly.
#[derive(Clone, Debug, PartialEq, Eq, Default)]
pub struct Sentence(pub Vec<Piece>);

/// Makes a [`Sentence`](crate::sentence::Sentence) of texts, lengths, lengths with a
/// [`Rounding`](crate::measure::Rounding), and counts.
///
/// ```
/// # use reckoner_core::{measure::{length, Tape}, say};
/// let sentence = say!["Use ", length("3 1/8")?, " or less, ", 4_u32, " times."];
/// assert_eq!(sentence.on(Tape::SIXTEENTHS), "Use 3 1/8 in or less, 4 times.");
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[macro_export]
macro_rules! say {
    ($($piece:expr),* $(,)?) => {
        $crate::sentence::Sentence(vec![$($crate::sentence::Piece::from($piece)),*])
    };
}

impl Sentence {
    /// With every length read on a tape. One that lies between marks is said to be `about` the
    /// nearest, or to be less than the first mark; a mark above or below it is a limit (`3/16 in or
    /// more`) and stands as it is; one that its mark would make nothing is written more finely.
    #[must_use]
    pub fn on(&self, tape: Tape) -> String {
        self.with_lengths(tape.unit().is_metric(), |length, rounding| {
            match show(length, tape, rounding) {
                Ok(_) if rounding != Rounding::Nearest => limit(length, tape, rounding),
                Ok(shown) if shown.lean == "exact" => shown.mark.to_string(),
                Ok(_) if !length.is_zero() && is_nothing(length, tape) => {
                    let mark = show(tape.graduation(), tape, Rounding::Nearest);
                    mark.map_or_else(
                        |_| exact_text(length),
                        |first| format!("less than {}", first.mark),
                    )
                }
                Ok(shown) => format!("about {}", shown.mark),
                Err(_) => exact_text(length),
            }
        })
    }

    /// As it is typed into a field: every length at its mark, so that what is set is what the tape
    /// shows. A length that its mark would make nothing is written more finely.
    #[must_use]
    pub fn typed(&self, tape: Tape) -> String {
        self.with_lengths(tape.unit().is_metric(), |length, rounding| limit(length, tape, rounding))
    }

    fn with_lengths(&self, is_metric: bool, write: impl Fn(Length, Rounding) -> String) -> String {
        self.0
            .iter()
            .map(|piece| match piece {
                Piece::Text(text) => text.to_string(),
                Piece::Length(length, rounding) => write(*length, *rounding),
                Piece::Amount(amount, unit) => amount_text(*amount, unit, is_metric),
            })
            .collect()
    }
}

impl fmt::Display for Sentence {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.0.iter().try_for_each(|piece| match piece {
            Piece::Text(text) => f.write_str(text),
            Piece::Length(length, _) => f.write_str(&exact_text(*length)),
            Piece::Amount(amount, unit) => f.write_str(&amount_text(*amount, unit, false)),
        })
    }
}

/// `100 lb`, or the same in the metric unit.
#[must_use]
pub fn amount_text(amount: Number, unit: &str, is_metric: bool) -> String {
    let partner = Partner::of(unit).filter(|_| is_metric);
    // What is beyond the numbers here keeps its own unit.
    let there = partner.and_then(|it| Some((it, it.in_metric(amount).ok()?)));
    match there {
        Some((it, there)) => format!("{} {}", decimal(there, it.places), it.metric),
        None => format!("{} {unit}", decimal(amount, 0)),
    }
}

/// A length at its mark, or more finely where the mark would make nothing of it: in ten-thousandths of an inch, or in hundredths
/// of a millimetre on a metric tape.
fn limit(length: Length, tape: Tape, rounding: Rounding) -> String {
    let fine = if tape.unit().is_metric() { Tape::Millimetres(2) } else { Tape::DecimalInches(4) };
    let mark = |tape: Tape| tape.read(length, rounding).map(|reading| reading.mark);
    match (mark(tape), show(length, tape, rounding), mark(fine)) {
        (Ok(mark), Ok(shown), _) if mark.is_zero() == length.is_zero() => shown.mark.to_string(),
        // Less than the first mark.
        (Ok(_), _, Ok(fine)) if !fine.is_zero() => exact_text(fine),
        // Too fine for any tape.
        _ => exact_text(length),
    }
}

/// So many things: `1 board`, `2 boards`; `one` is ` board`, for things that take an `s`.
#[must_use]
pub fn counted(n: impl Into<u64>, one: &str) -> String {
    match n.into() {
        1 => format!("1{one}"),
        n => format!("{n}{one}s"),
    }
}

/// Whether the nearest mark is the very end of the tape.
fn is_nothing(length: Length, tape: Tape) -> bool {
    tape.read(length, Rounding::Nearest).is_ok_and(|reading| reading.mark.is_zero())
}

/// A single text or length.
impl<T> From<T> for Sentence
where
    Piece: From<T>,
{
    fn from(piece: T) -> Sentence {
        Sentence(vec![Piece::from(piece)])
    }
}

impl From<&'static str> for Piece {
    fn from(text: &'static str) -> Piece {
        Piece::Text(Cow::Borrowed(text))
    }
}

impl From<String> for Piece {
    fn from(text: String) -> Piece {
        Piece::Text(Cow::Owned(text))
    }
}

impl From<(Number, &'static str)> for Piece {
    fn from((amount, unit): (Number, &'static str)) -> Piece {
        Piece::Amount(amount, unit)
    }
}

impl From<Length> for Piece {
    fn from(length: Length) -> Piece {
        Piece::Length(length, Rounding::Nearest)
    }
}

impl From<(Length, Rounding)> for Piece {
    fn from((length, rounding): (Length, Rounding)) -> Piece {
        Piece::Length(length, rounding)
    }
}

impl From<u32> for Piece {
    fn from(count: u32) -> Piece {
        Piece::Text(Cow::Owned(count.to_string()))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::measure::length;

    /// By hand: 1/100 in is no sixteenth, and 0.254 mm no millimetre.
    #[test]
    fn a_limit_below_the_first_mark_is_written_finely() {
        let least = length("1/100").expect("a length");
        let limit = say!["Use ", (least, Rounding::Down), " or less."];
        assert_eq!(limit.on(Tape::SIXTEENTHS), "Use 0.01 in or less.");
        assert_eq!(limit.on(Tape::Millimetres(0)), "Use 0.25 mm or less.");
        let nothing = say!["Use ", (Length::ZERO, Rounding::Down), " or less."];
        assert_eq!(nothing.on(Tape::SIXTEENTHS), "Use 0 in or less.");
    }
}
