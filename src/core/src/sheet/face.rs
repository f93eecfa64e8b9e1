//! [`Face`]: a value as the user sees and hears it.

use super::{Bench, Value};
use crate::measure::Rounding;
use crate::measure::text::{Shown, decimal, exact_text, show};

/// A value as the user sees and hears it.
#[derive(Clone, Debug, PartialEq)]
pub enum Face {
    /// A length on the tape.
    Measure(Box<Shown>),
    /// Lengths on the tape, in order.
    Measures(Vec<Shown>),
    /// Anything else in one line, and the same for a voice.
    Line {
        /// `4`, `7.5 board feet`.
        text: String,
        /// For a voice.
        spoken: String,
    },
}

/// How a value looks on the user's bench.
#[must_use]
pub fn face(value: &Value, bench: &Bench) -> Face {
    let line = |text: String| Face::Line { spoken: text.clone(), text };
    let with_unit = |number: String, unit: &str| match unit {
        "" | "°" | "%" => format!("{number}{unit}"),
        _ => format!("{number} {unit}"),
    };
    match value {
        Value::Length(length, rounding) => match show(*length, bench.tape, *rounding) {
            Ok(shown) => Face::Measure(Box::new(shown)),
            Err(_) => line(exact_text(*length)),
        },
        Value::Lengths(lengths) => {
            let shown = lengths.iter().map(|l| show(*l, bench.tape, Rounding::Nearest)).collect();
            match shown {
                Ok(shown) => Face::Measures(shown),
                Err(_) => {
                    line(lengths.iter().map(|l| exact_text(*l)).collect::<Vec<_>>().join(", "))
                }
            }
        }
        Value::Count(count) => line(count.to_string()),
        Value::Area(area) => match area.in_square_feet() {
            Ok(feet) => line(format!("{} sq ft", decimal(feet, 1))),
            Err(_) => line(format!("{} sq in", area.in_square_inches())),
        },
        Value::Exact(number, places, unit) => line(with_unit(decimal(*number, *places), unit)),
        Value::Real(number, places, unit) => {
            line(with_unit(format!("{number:.*}", usize::from(*places)), unit))
        }
        Value::Words(sentence) => line(sentence.on(bench.tape)),
    }
}
