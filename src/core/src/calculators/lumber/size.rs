//! What a board measures: nominal to dressed, or as the tape says.

use super::fields::{NOMINAL_THICKNESS, NOMINAL_WIDTH};
use crate::measure::Length;
use crate::measure::text::exact_text;
use crate::say;
use crate::sheet::{Field, Refusal, Refused, WayOut};
use crate::tables::lumber::{self, Seasoning, Size};

/// What is asked.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Input {
    /// As the tag says.
    pub nominal_thickness: Length,
    /// As the tag says.
    pub nominal_width: Length,
    /// Dressed dry or green.
    pub seasoning: Seasoning,
    /// As the tape says, where it was measured.
    pub measured_thickness: Option<Length>,
    /// As the tape says, where it was measured.
    pub measured_width: Option<Length>,
}

/// What it measures.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Answer {
    /// Measured, or else dressed.
    pub thickness: Length,
    /// Measured, or else dressed.
    pub width: Length,
    /// Row of the standard for the thickness, where it has one.
    pub thickness_row: Option<Size>,
    /// Row of the standard for the width, where it has one.
    pub width_row: Option<Size>,
}

/// Looks the sizes up; a measured side needs no table.
///
/// # Errors
///
/// `no-such-thickness`, `no-such-width`: a side that was not measured and is not
/// in the standard; names the nearest one that is.
///
/// # Examples
///
/// ```
/// # use reckoner_core::{calculators::lumber::size, measure::length, tables::lumber::Seasoning};
/// let answer = size::reckon(&size::Input {
///     nominal_thickness: length("2")?, nominal_width: length("10")?, seasoning: Seasoning::Green,
///     measured_thickness: None, measured_width: Some(length("9 7/16")?),
/// }).map_err(|_| "refused")?;
/// assert_eq!(answer.thickness, length("1 9/16")?);
/// assert_eq!(answer.width, length("9 7/16")?);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn reckon(input: &Input) -> Result<Answer, Refused> {
    let thickness_row = lumber::size_of(input.nominal_thickness);
    let width_row = lumber::size_of(input.nominal_width);
    let dressed = |row: Option<Size>| row.map(|row| row.dressed(input.seasoning));
    let thickness = input.measured_thickness.or_else(|| dressed(thickness_row));
    let width = input.measured_width.or_else(|| dressed(width_row));
    let mut refusals = Vec::new();
    if thickness.is_none() {
        let words = "The standard has no nominal thickness of ";
        let nominal = input.nominal_thickness;
        refusals.push(no_such(&NOMINAL_THICKNESS, "no-such-thickness", words, nominal));
    }
    if width.is_none() {
        let words = "The standard has no nominal width of ";
        refusals.push(no_such(&NOMINAL_WIDTH, "no-such-width", words, input.nominal_width));
    }
    let (Some(thickness), Some(width)) = (thickness, width) else {
        return Err(Refused::For(refusals));
    };
    Ok(Answer { thickness, width, thickness_row, width_row })
}

fn no_such(field: &Field, code: &'static str, words: &'static str, nominal: Length) -> Refusal {
    let nearest = nearest(nominal);
    let way_out = say!["The nearest is ", nearest, ". Or measure the board."];
    let way_out = WayOut::set(way_out, field, exact_text(nearest));
    Refusal::at(field, code, say![words, nominal, "."], way_out)
}

/// The nominal size of the standard nearest to this one.
fn nearest(nominal: Length) -> Length {
    let off = |size: &Size| (size.nominal - nominal).map(Length::abs).unwrap_or(nominal);
    lumber::SIZES.iter().min_by_key(|size| off(size)).map_or(nominal, |size| size.nominal)
}
