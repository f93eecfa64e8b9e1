//! Sizes that are finer than a tape, as they are shown.

use crate::measure::Unit;
use crate::sheet::{Bench, Face, Value, face};

/// A sag: finer than any tape, so as a decimal in the unit of the tape.
pub(super) fn fine(inches: f64, bench: &Bench) -> Value {
    match bench.tape.unit() {
        Unit::Inch | Unit::Foot => Value::Real(inches, 3, "in"),
        _ => Value::Real(inches / Unit::Millimetre.in_inches().to_f64(), 1, "mm"),
    }
}

/// The same for a drawing.
pub(super) fn fine_text(inches: f64, bench: &Bench) -> String {
    match face(&fine(inches, bench), bench) {
        Face::Line { text, .. } => text,
        Face::Measure(shown) => shown.exact,
        Face::Measures(_) => String::new(),
    }
}
