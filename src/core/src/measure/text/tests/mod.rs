//! Every spelling of the grammar, and every refusal with its sentence and its place.

mod accepted;
mod refused;
mod shown;

use super::{Names, NoNames, Quantity, parse};
use crate::measure::{Length, Number, Unit};

/// The names of a small job: `leg` is 3 1/4 in, `rails` is 4, `top` an area, `shelf` unknown yet.
struct Job;

impl Names for Job {
    fn longest_match(&self, text: &str) -> usize {
        let names = ["leg length", "leg", "rails", "top", "shelf", "ratio", "2x4 post"];
        names
            .iter()
            .filter(|name| text.starts_with(**name))
            .map(|name| name.len())
            .max()
            .unwrap_or(0)
    }

    fn value(&self, name: &str) -> Option<Quantity> {
        let inches = |text| super::length(text).expect("a length of the job");
        Some(match name {
            "leg" => Quantity::Length(inches("3 1/4")),
            "leg length" => Quantity::Length(inches("34")),
            "2x4 post" => Quantity::Length(inches("1 1/2")),
            "rails" => Quantity::Bare(Number::whole(4)),
            "ratio" => Quantity::Plain(Number::whole(2)),
            "top" => Quantity::Area((inches("40") * inches("18")).expect("small")),
            _ => return None,
        })
    }
}

fn of_inch(text: &str) -> Length {
    let (numer, denom) = text.split_once('/').unwrap_or((text, "1"));
    Length::of_inch(numer.parse().expect("digits"), denom.parse().expect("digits"))
        .expect("a small length")
}

/// Checks a spelling against an exact number of inches, such as `27/8`.
#[track_caller]
fn reads(text: &str, unit: Unit, inches: &str) {
    let length = parse(text, &NoNames).and_then(|formula| formula.length(unit, &NoNames));
    match length {
        Ok(length) => assert_eq!(length, of_inch(inches), "{text:?}"),
        Err(problem) => panic!("{text:?} is refused: {problem}"),
    }
}
