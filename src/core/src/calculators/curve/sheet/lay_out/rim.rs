//! The radius of a round thing, and how sure it is.

use super::{REGINA, nearest};
use crate::calculators::curve::drawing;
use crate::calculators::curve::rim::{Answer as Reckoned, Input as Asked};
use crate::measure::Tape;
use crate::measure::text::exact_text;
use crate::say;
use crate::sheet::{Answer, Figure, Source, Step, Working};

pub(in super::super) fn lay_out(input: &Asked, answer: &Reckoned, tape: Tape) -> Answer {
    let (step, source) = match *input {
        Asked::Around(around) => (
            Step {
                rule: "radius = once round ÷ (2 × π)".into(),
                put_in: say![format!("{} ÷ 6.2832", exact_text(around))],
                gives: nearest(answer.radius),
            },
            Source::Arithmetic,
        ),
        Asked::Straightedge { chord, rise } => {
            let (chord, rise) = (exact_text(chord), exact_text(rise));
            let step = Step {
                rule: "radius = chord × chord ÷ (8 × rise) + rise ÷ 2".into(),
                put_in: say![format!("{chord} × {chord} ÷ (8 × {rise}) + {rise} ÷ 2")],
                gives: nearest(answer.radius),
            };
            (step, REGINA)
        }
    };
    let mut figures = vec![
        Figure::length("diameter", "Diameter", "across the middle", answer.diameter),
        Figure::length("around", "Once round", "along the rim", answer.around),
    ];
    let mut notes = vec![say![
        "This is the edge that you measured. A pencil on another edge of the rim draws another radius."
    ]];
    if let Some((least, most)) = answer.between {
        let off = "if the rise is 1/64 off";
        figures.push(Figure::length("least", "Radius, at least", off, least));
        figures.push(Figure::length("most", "Radius, at most", off, most));
        notes.push(say![
            "A rise read 1/64 in off makes the radius anything from ",
            least,
            " to ",
            most,
            ". A longer straightedge is surer."
        ]);
    }
    Answer {
        headline: Figure::length("radius", "Radius", "centre to rim", answer.radius),
        figures,
        tables: Vec::new(),
        notes,
        cautions: Vec::new(),
        drawing: Some(drawing::rim(input, answer, tape)),
        template: None,
        working: Working { steps: vec![step], sources: vec![source] },
    }
}
