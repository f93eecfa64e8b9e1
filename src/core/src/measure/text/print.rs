//! Writes a length as it stands on a tape, and says what is left over.

use super::spoken;
use super::written::Written;
use crate::measure::{Lean, Length, Number, OutOfRange, Rounding, Tape, Unit};

/// A length ready to be shown: the mark, what is left over, and the words to say it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Shown {
    /// The mark; the lower of the two when midway.
    pub mark: Written,
    /// The upper mark, when the length is midway between two.
    pub or_mark: Option<Written>,
    /// `exact`, `heavy`, `light` or `midway`.
    pub lean: &'static str,
    /// Signed, with its unit: `+1/64 in`, `-0.012 in`; `0` when exact.
    pub left_over: String,
    /// In words: `exact`, `and about 1/32 more`, `less 1/32` (what the length is beside the line shown),
    /// `midway between 18 9/16 and 18 5/8 in`. The only place where these words are made.
    pub in_words: String,
    /// For a voice: `three and three eighths inches, and one sixty-fourth more`.
    pub spoken: String,
    /// The exact length, which reads back to itself: `27/8 in`, `45 mm`.
    pub exact: String,
}

/// Shows a length on a tape.
///
/// # Errors
///
/// [`OutOfRange`] when the length is too fine for the remainder to be kept exactly.
///
/// ```
/// # use reckoner_core::measure::{length, text::show, Rounding, Tape};
/// let shown = show(length("3 25/64")?, Tape::SIXTEENTHS, Rounding::Nearest)?;
/// assert_eq!(shown.mark.to_string(), "3 3/8 in");
/// assert_eq!(shown.in_words, "and 1/64 more");
/// assert_eq!(shown.spoken, "three and three eighths inches, and one sixty-fourth more");
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn show(length: Length, tape: Tape, rounding: Rounding) -> Result<Shown, OutOfRange> {
    let reading = tape.read(length, rounding)?;
    let mark = write_mark(reading.mark, tape)?;
    let mark_spoken = spoken::written(&mark);
    let left_over = LeftOver::of(reading.left_over, tape)?;
    let (lean, or_mark, in_words, spoken) = match reading.lean {
        Lean::Exact => ("exact", None, "exact".to_owned(), mark_spoken),
        Lean::Heavy | Lean::Light => {
            let lean = if reading.lean == Lean::Heavy { "heavy" } else { "light" };
            (lean, None, left_over.in_words, format!("{mark_spoken}, {}", left_over.spoken))
        }
        Lean::Midway { below, above } => {
            let (low, high) = (write_mark(below, tape)?, write_mark(above, tape)?);
            let in_words = format!("midway between {} and {high}", low.amount());
            let spoken =
                format!("midway between {} and {}", spoken::written(&low), spoken::written(&high));
            ("midway", Some(high), in_words, spoken)
        }
    };
    Ok(Shown {
        mark,
        or_mark,
        lean,
        left_over: left_over.signed,
        in_words,
        spoken,
        exact: exact_text(length),
    })
}

/// What lies between a length and the line shown for it.
struct LeftOver {
    signed: String,
    in_words: String,
    spoken: String,
}

impl LeftOver {
    /// As a fraction on a tape that has fractions: exactly when it is a whole number of 128ths of
    /// an inch, else about so many 64ths. In thousandths of an inch or hundredths of a millimetre
    /// on the others. What would come to nothing is "a hair".
    fn of(left_over: Length, tape: Tape) -> Result<LeftOver, OutOfRange> {
        // What is to be added to the line or taken from it: "over" and "under" would leave open which of the two is meant.
        let is_less = left_over.is_negative();
        let sign = if is_less { "-" } else { "+" };
        let size = left_over.abs();
        let inches = size.in_inches();
        let is_metric = tape.unit().is_metric();
        let has_fractions = matches!(tape, Tape::Inches(_) | Tape::FeetAndInches(_));
        let (unit, places) = if is_metric { (Unit::Millimetre, 2) } else { (Unit::Inch, 3) };
        let name = unit.short();
        let amount = decimal(size.in_unit(unit)?, places);
        let is_in_128ths = 128 % inches.denom() == 0;
        let signed = match (is_metric, is_in_128ths) {
            _ if left_over.is_zero() => "0".to_owned(),
            (false, true) => format!("{sign}{} {name}", mixed(inches)),
            _ => format!("{sign}{amount} {name}"),
        };
        let said = |written: String, spoken: String, is_exact: bool| {
            let about = if is_exact { "" } else { "about " };
            let side = |part: String| match is_less {
                true => format!("less {about}{part}"),
                false => format!("and {about}{part} more"),
            };
            (side(written), side(spoken))
        };
        let fraction = |part: Number, is_exact: bool| {
            said(mixed(part), spoken::fraction(part.numer(), part.denom()), is_exact)
        };
        let (in_words, spoken) = if has_fractions && is_in_128ths {
            fraction(inches, true)
        } else if has_fractions {
            // The nearest 64th, in whole numbers: both are below 10^18, so this is well within 128 bits.
            match (inches.numer() * 128 + inches.denom()) / (inches.denom() * 2) {
                0 => said("a hair".to_owned(), "a hair".to_owned(), true),
                parts => fraction(Number::ratio(parts, 64)?, false),
            }
        } else {
            let short = trim_zeros(&amount);
            let scale = if is_metric { 100 } else { 1000 };
            let is_exact = scale % size.in_unit(unit)?.denom() == 0;
            match short {
                "0" => said("a hair".to_owned(), "a hair".to_owned(), true),
                _ => said(
                    format!("{short} {name}"),
                    format!("{short} {}", unit.spoken(true)),
                    is_exact,
                ),
            }
        };
        Ok(LeftOver { signed, in_words, spoken })
    }
}

/// Writes a length that lies on a mark of the tape.
fn write_mark(mark: Length, tape: Tape) -> Result<Written, OutOfRange> {
    let is_negative = mark.is_negative();
    let size = mark.abs();
    Ok(match tape {
        Tape::Inches(_) => with_fraction(is_negative, None, size.in_inches())?,
        Tape::FeetAndInches(_) => {
            let feet = size.in_unit(Unit::Foot)?.floor();
            let rest = (size - Length::of(Number::ratio(feet, 1)?, Unit::Foot)?)?;
            with_fraction(is_negative, (feet > 0).then_some(feet), rest.in_inches())?
        }
        Tape::DecimalInches(places) => {
            Written::plain(is_negative, decimal(size.in_inches(), places.min(4)), Unit::Inch)
        }
        Tape::Millimetres(_) | Tape::HalfMillimetres => {
            let millimetres = size.in_unit(Unit::Millimetre)?;
            let places = match tape {
                Tape::Millimetres(places) => places.min(2),
                _ if millimetres.is_whole() => 0,
                _ => 1,
            };
            Written::plain(is_negative, decimal(millimetres, places), Unit::Millimetre)
        }
    })
}

fn with_fraction(
    is_negative: bool,
    feet: Option<i128>,
    inches: Number,
) -> Result<Written, OutOfRange> {
    let whole = inches.floor();
    let part = (inches - Number::ratio(whole, 1)?)?;
    let fraction = (part != Number::ZERO).then_some((part.numer(), part.denom()));
    let bare_zero = feet.is_none() && fraction.is_none();
    let whole = (whole != 0 || bare_zero).then(|| whole.to_string());
    Ok(Written { is_negative, feet, whole, fraction, unit: Unit::Inch })
}

/// `3 3/8`, `3/8`, `-3 3/8`, whatever the denominator: exact.
pub(super) fn mixed(number: Number) -> String {
    let sign = if number < Number::ZERO { "-" } else { "" };
    let (numer, denom) = (number.numer().abs(), number.denom());
    match (numer / denom, numer % denom) {
        (whole, 0) => format!("{sign}{whole}"),
        (0, rest) => format!("{sign}{rest}/{denom}"),
        (whole, rest) => format!("{sign}{whole} {rest}/{denom}"),
    }
}

/// The exact length in characters that read back to it.
///
/// Inches as a mixed number when they are 128ths; else with up to four decimals; else millimetres
/// with up to two; else a fraction, which no tape has, in the unit in which it is the simpler one.
///
/// ```
/// # use reckoner_core::measure::{length, text::exact_text};
/// assert_eq!(exact_text(length("27/8")?), "3 3/8 in");
/// assert_eq!(exact_text(length("45mm")?), "45 mm");
/// assert_eq!(exact_text(length("0.985")?), "0.985 in");
/// assert_eq!(exact_text(length("1/3")?), "1/3 in");
/// assert_eq!(exact_text(length("1000mm / 3")?), "333 1/3 mm");
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[must_use]
pub fn exact_text(length: Length) -> String {
    let inches = length.in_inches();
    if 128 % inches.denom() == 0 {
        return format!("{} in", mixed(inches));
    }
    if 10_000 % inches.denom() == 0 {
        return format!("{} in", trim_zeros(&decimal(inches, 4)));
    }
    let Ok(millimetres) = length.in_unit(Unit::Millimetre) else {
        return format!("{} in", mixed(inches));
    };
    if 100 % millimetres.denom() == 0 {
        let sign = if length.is_negative() { "-" } else { "" };
        let places = if millimetres.is_whole() { 0 } else { 2 };
        let text = decimal(millimetres.abs(), places);
        return format!("{sign}{} mm", trim_zeros(&text));
    }
    if millimetres.denom() < inches.denom() {
        return format!("{} mm", mixed(millimetres));
    }
    format!("{} in", mixed(inches))
}

/// More decimal places than this would say nothing new: a denominator has at most 18 digits.
const MOST_PLACES: u8 = 18;

/// Without the zeros after the last figure of a decimal.
pub(crate) fn trim_zeros(text: &str) -> &str {
    if text.contains('.') { text.trim_end_matches('0').trim_end_matches('.') } else { text }
}

/// A number with so many decimal places (at most 18), rounded to the nearest, halves away from
/// zero.
///
/// For values that are rounded by their nature or already on a mark; a length is read on a
/// [`Tape`] instead.
#[must_use]
pub fn decimal(number: Number, places: u8) -> String {
    let places = places.min(MOST_PLACES);
    let tens = (0..places).fold(1_i128, |n, _| n * 10);
    let (numer, denom) = (number.numer(), number.denom());
    let (whole, rest) = (numer.abs() / denom, numer.abs() % denom);
    // rest < denom < 10^18 and tens <= 10^18: all below 3 × 10^36, well within 128 bits.
    let scaled = (rest * tens * 2 + denom) / (denom * 2);
    let (whole, scaled) = if scaled >= tens { (whole + 1, scaled - tens) } else { (whole, scaled) };
    let sign = if numer < 0 && (whole != 0 || scaled != 0) { "-" } else { "" };
    match places {
        0 => format!("{sign}{whole}"),
        _ => format!("{sign}{whole}.{scaled:0width$}", width = usize::from(places)),
    }
}
