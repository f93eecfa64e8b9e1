//! The radius of a round thing, and how sure it is.

use super::{REGINA, radius_step};
use crate::calculators::curve::drawing;
use crate::calculators::curve::fields::{DIAMETER, LEAST, MOST, ONCE_ROUND, RADIUS_FOUND};
use crate::calculators::curve::rim::{Answer as Reckoned, Input as Asked, READING_ERROR};
use crate::measure::Tape;
use crate::say;
use crate::sheet::{Answer, Note, Rounded, Source, Step, Term, Working};

pub(in super::super) fn lay_out(input: &Asked, answer: &Reckoned, tape: Tape) -> Answer {
    let (step, source) = match *input {
        Asked::Around(around) => {
            let two_pi = Term::fixed(2) * Term::of("π", format!("{:.8}", core::f64::consts::PI));
            let radius = Term::of("once round", around) / two_pi;
            (Step::of("radius", radius, answer.radius).then(Rounded::Near), Source::Arithmetic)
        }
        Asked::Straightedge { chord, rise } => (radius_step(chord, rise, answer.radius), REGINA),
    };
    let mut figures = vec![
        DIAMETER.figure("across the middle", answer.diameter),
        ONCE_ROUND.figure("along the rim", answer.around),
    ];
    let mut notes = vec![Note::new(
        "edge_that_was_measured",
        say![
            "This is the edge that you measured. A pencil on another edge of the rim draws another radius."
        ],
    )];
    if let Some((least, most)) = answer.between {
        let off = "if the rise is read a hair off";
        figures.push(LEAST.figure(off, least));
        figures.push(MOST.figure(off, most));
        notes.push(Note::new(
            "rise_read_off",
            say![
                "A rise read ",
                READING_ERROR,
                " off makes the radius anything from ",
                least,
                " to ",
                most,
                ". A longer straightedge is surer."
            ],
        ));
    }
    Answer {
        goods: Vec::new(),
        headline: RADIUS_FOUND.figure("center to rim", answer.radius),
        figures,
        tables: Vec::new(),
        notes,
        cautions: Vec::new(),
        drawing: Some(drawing::rim(input, answer, tape)),
        template: None,
        working: Working { steps: vec![step], sources: vec![source] },
    }
}
