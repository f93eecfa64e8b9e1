//! Measures in words, for a voice and for a screen reader.

use super::written::Written;
use crate::measure::Unit;

const BELOW_TWENTY: [&str; 20] = [
    "zero",
    "one",
    "two",
    "three",
    "four",
    "five",
    "six",
    "seven",
    "eight",
    "nine",
    "ten",
    "eleven",
    "twelve",
    "thirteen",
    "fourteen",
    "fifteen",
    "sixteen",
    "seventeen",
    "eighteen",
    "nineteen",
];
const TENS: [&str; 10] =
    ["", "", "twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety"];

/// A whole number in words, up to 999,999; beyond that in digits.
///
/// ```
/// # use reckoner_core::measure::text::number_in_words;
/// assert_eq!(number_in_words(52), "fifty-two");
/// assert_eq!(number_in_words(1_204), "one thousand two hundred four");
/// ```
#[must_use]
pub fn number_in_words(n: i128) -> String {
    let Ok(n) = u32::try_from(n) else { return n.to_string() };
    match n {
        0..20 => BELOW_TWENTY.get(n as usize).copied().unwrap_or_default().to_owned(),
        20..100 => {
            let tens = TENS.get(n as usize / 10).copied().unwrap_or_default();
            if n.is_multiple_of(10) {
                tens.to_owned()
            } else {
                format!("{tens}-{}", number_in_words((n % 10).into()))
            }
        }
        100..1000 => above(n, 100, "hundred"),
        1000..1_000_000 => above(n, 1000, "thousand"),
        _ => n.to_string(),
    }
}

fn above(n: u32, size: u32, name: &str) -> String {
    let head = number_in_words((n / size).into());
    if n.is_multiple_of(size) {
        format!("{head} {name}")
    } else {
        format!("{head} {name} {}", number_in_words((n % size).into()))
    }
}

/// `three eighths`; `seven over fifteen` where the bottom number has no shop name.
pub(super) fn fraction(numer: i128, denom: i128) -> String {
    let name = match denom {
        2 => {
            if numer == 1 {
                "half"
            } else {
                "halves"
            }
        }
        4 => "quarter",
        8 => "eighth",
        16 => "sixteenth",
        32 => "thirty-second",
        64 => "sixty-fourth",
        128 => "hundred-and-twenty-eighth",
        _ => return format!("{} over {}", number_in_words(numer), number_in_words(denom)),
    };
    let plural = if numer == 1 || denom == 2 { "" } else { "s" };
    format!("{} {name}{plural}", number_in_words(numer))
}

/// `minus two feet four and one half inches`.
pub(super) fn written(written: &Written) -> String {
    let mut words = Vec::new();
    if written.is_negative {
        words.push("minus".to_owned());
    }
    if let Some(feet) = written.feet {
        words.push(number_in_words(feet));
        words.push(Unit::Foot.spoken(feet != 1).to_owned());
    }
    let whole = written
        .whole
        .as_deref()
        .map(|whole| whole.parse().map_or(whole.to_owned(), number_in_words));
    let fraction = written.fraction.map(|(numer, denom)| fraction(numer, denom));
    let alone = written.whole.as_deref() == Some("1") && fraction.is_none();
    let plural = written.whole.is_some() && !alone;
    let amount = match (whole, fraction) {
        (Some(whole), Some(fraction)) => Some(format!("{whole} and {fraction}")),
        (whole, fraction) => whole.or(fraction),
    };
    if let Some(amount) = amount {
        words.push(amount);
        words.push(written.unit.spoken(plural).to_owned());
    }
    words.join(" ")
}
