//! [`Value`]: one result, exactly.

use super::Sentence;
use crate::measure::{Area, Length, Number, Rounding};

/// A result.
#[derive(Clone, Debug, PartialEq)]
pub enum Value {
    /// A length, and which mark to give when it falls between two.
    Length(Length, Rounding),
    /// Several lengths in order, such as running marks.
    Lengths(Vec<Length>),
    /// How many.
    Count(u64),
    /// An area.
    Area(Area),
    /// An exact number with a unit, shown with so many decimal places: board feet, money.
    Exact(Number, u8, &'static str),
    /// A number of physics with a unit, shown with so many decimal places: degrees, psi, pounds.
    /// Never infinite or not-a-number.
    Real(f64, u8, &'static str),
    /// Words: a verdict, a choice.
    Words(Sentence),
}

/// Shown at its nearest mark.
impl From<Length> for Value {
    fn from(length: Length) -> Value {
        Value::Length(length, Rounding::Nearest)
    }
}

impl From<u32> for Value {
    fn from(count: u32) -> Value {
        Value::Count(count.into())
    }
}
