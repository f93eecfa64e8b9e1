//! [`Template`]: what goes onto the wood, at full size.

use crate::measure::text::show;
use crate::measure::{Length, Rounding, Tape};
use crate::sheet::Sentence;

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
    let width = length.to_f64().max(0.0);
    let mut inks = vec![
        Ink::Guide(vec![(0.0, 0.0), (width, 0.0), (width, STICK), (0.0, STICK), (0.0, 0.0)]),
        Ink::Words(0.1, STICK - 0.1, "left end".to_owned()),
    ];
    for (number, mark) in (1..).zip(marks) {
        let x = mark.to_f64();
        inks.push(Ink::Cut(vec![(x, 0.0), (x, STICK * 0.6)]));
        let size = show(*mark, tape, Rounding::Nearest)
            .map_or_else(|_| mark.to_string(), |shown| shown.mark.amount());
        // Neighbouring labels stand at different heights, so that close marks stay legible.
        let y = if number % 2 == 0 { STICK * 0.62 } else { STICK * 0.78 };
        inks.push(Ink::Words(x + 0.05, y, format!("{number}: {size}")));
    }
    Template { title, width, height: STICK, inks }
}
