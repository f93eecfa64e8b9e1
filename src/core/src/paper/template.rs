//! [`Template`]: what goes onto the wood, at full size.

use crate::measure::text::show;
use crate::measure::{Length, Rounding, Tape};
use crate::sentence::Sentence;

/// A full-size drawing in inches, x to the right and y down from its top left corner.
#[derive(Clone, Debug, PartialEq)]
pub struct Template {
    /// What it is, for the head of every page.
    pub title: Sentence,
    /// In inches.
    pub width: f64,
    /// In inches.
    pub height: f64,
    /// Back to front.
    pub inks: Vec<Ink>,
}

/// One thing drawn on a template.
#[derive(Clone, Debug, PartialEq)]
pub enum Ink {
    /// An open line to cut along or to mark.
    Cut(Vec<(f64, f64)>),
    /// An edge of the part, or a line to set the template by: thin and dashed.
    Guide(Vec<(f64, f64)>),
    /// A hole: centre and diameter, with a cross to prick through.
    Hole(f64, f64, f64),
    /// Words beginning at a place.
    Words(f64, f64, String),
}

/// Height of a story stick on paper, in inches.
const STICK: f64 = 1.5;

/// A strip to lay along a part, with a numbered line at each mark and its size beside it.
///
/// `marks` are from the left end of a part `length` long.
#[must_use]
pub fn story_stick(title: Sentence, length: Length, marks: &[Length], tape: Tape) -> Template {
    let mut stick = bare_stick(title, length);
    for (number, mark) in (1_usize..).zip(marks) {
        let x = mark.to_f64();
        stick.inks.push(Ink::Cut(vec![(x, 0.0), (x, STICK * 0.6)]));
        stick.inks.push(label(number, x, *mark, tape));
    }
    stick
}

/// A strip to lay along an opening, with both edges of each slat and the size of the left one.
///
/// `lefts` are the left edges, from the left end of an opening `length` long.
#[must_use]
pub fn slat_stick(
    title: Sentence,
    length: Length,
    lefts: &[Length],
    width: Length,
    tape: Tape,
) -> Template {
    let mut stick = bare_stick(title, length);
    for (number, left) in (1_usize..).zip(lefts) {
        let (from, to) = (left.to_f64(), left.to_f64() + width.to_f64());
        stick.inks.push(Ink::Cut(vec![(from, 0.0), (from, STICK * 0.6)]));
        stick.inks.push(Ink::Cut(vec![(to, 0.0), (to, STICK * 0.6)]));
        stick.inks.push(Ink::Guide(vec![(from, STICK * 0.3), (to, STICK * 0.3)]));
        stick.inks.push(label(number, from, *left, tape));
    }
    stick
}

/// The outline of a stick, and which end is which.
fn bare_stick(title: Sentence, length: Length) -> Template {
    let width = length.to_f64().max(0.0);
    let inks = vec![
        Ink::Guide(vec![(0.0, 0.0), (width, 0.0), (width, STICK), (0.0, STICK), (0.0, 0.0)]),
        Ink::Words(0.1, STICK - 0.1, "left end".to_owned()),
    ];
    Template { title, width, height: STICK, inks }
}

/// The number and size of a mark. Neighbours stand at different heights, so that close marks stay
/// legible.
fn label(number: usize, x: f64, mark: Length, tape: Tape) -> Ink {
    let size = show(mark, tape, Rounding::Nearest)
        .map_or_else(|_| mark.to_string(), |shown| shown.mark.amount());
    let y = if number.is_multiple_of(2) { STICK * 0.62 } else { STICK * 0.78 };
    Ink::Words(x + 0.05, y, format!("{number}: {size}"))
}
