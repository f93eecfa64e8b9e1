//! [`Face`]: a value as the user sees and hears it.

use super::{Bench, Value};
use crate::measure::text::{Shown, decimal, exact_text, show};
use crate::measure::{Number, Partner, Rounding, Tape};

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

impl Value {
    /// A number in the units of a shop with this tape: pounds are kilograms beside a tape in
    /// millimetres. What has no such partner, and every length, stays as it is.
    #[must_use]
    pub fn in_units_of(&self, tape: Tape) -> Value {
        let partner = |unit: &str| Partner::of(unit).filter(|_| tape.unit().is_metric());
        match self {
            Value::Exact(number, _, unit) => match partner(unit) {
                Some(it) => it.in_metric(*number).map_or_else(
                    |_| Value::Real(number.to_f64() * it.times.to_f64(), it.places, it.metric),
                    |number| Value::Exact(number, it.places, it.metric),
                ),
                None => self.clone(),
            },
            Value::Real(number, _, unit) => match partner(unit) {
                Some(it) => Value::Real(number * it.times.to_f64(), it.places, it.metric),
                None => self.clone(),
            },
            _ => self.clone(),
        }
    }

    /// In one line, in the units of the user's bench: `250 lb`, `113.4 kg`.
    #[must_use]
    pub fn in_line(&self, bench: &Bench) -> String {
        match face(self, bench) {
            Face::Line { text, .. } => text,
            Face::Measure(shown) => shown.mark.to_string(),
            Face::Measures(all) => {
                all.iter().map(|shown| shown.mark.to_string()).collect::<Vec<_>>().join(", ")
            }
        }
    }
}

/// An area below this is shown in square centimetres beside a metric tape: 1/10 m².
fn is_small(square_metres: Number) -> bool {
    square_metres < Number::ratio(1, 10).unwrap_or(Number::ONE)
}

/// How a value looks on the user's bench, in the units of the shop.
#[must_use]
pub fn face(value: &Value, bench: &Bench) -> Face {
    if let Value::Area(area) = value
        && bench.tape.unit().is_metric()
    {
        let metres = area
            .in_square_feet()
            .ok()
            .and_then(|feet| Partner::of("sq ft").and_then(|partner| partner.in_metric(feet).ok()));
        let shown = match metres {
            Some(metres) if is_small(metres) => {
                Value::Exact(area.in_square_inches(), 0, "sq in").in_units_of(bench.tape)
            }
            Some(metres) => Value::Exact(metres, 2, "m²"),
            None => value.clone(),
        };
        return face_in_working(&shown, bench);
    }
    face_in_working(&value.in_units_of(bench.tape), bench)
}

/// How a value looks in a working, in the units of its formula.
#[must_use]
pub fn face_in_working(value: &Value, bench: &Bench) -> Face {
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
