//! The S-curve: radius of its arcs, where they meet, and the marks.

use super::{degrees, marks, narrowest, nearest, things};
use crate::calculators::curve::s_curve::{Answer as Reckoned, Input as Asked};
use crate::calculators::curve::things::Fit;
use crate::calculators::curve::{drawing, template};
use crate::measure::Tape;
use crate::measure::text::exact_text;
use crate::say;
use crate::sheet::{Answer, Caution, Figure, Source, Step, Value, Working};

pub(in super::super) fn lay_out(input: &Asked, answer: &Reckoned, tape: Tape) -> Answer {
    let (run, offset) = (exact_text(input.run), exact_text(input.offset));
    let things = things(
        &input.things,
        &answer.fits,
        &["Across", "Its radius", "Offset it gives"],
        "square to each end of the curve",
        Fit::radius,
        say!["None of your round things is wide enough for a run of ", input.run, "."],
    );
    let mut steps = vec![
        Step {
            rule: "radius = (run × run + offset × offset) ÷ (4 × offset)".into(),
            put_in: say![format!("({run} × {run} + {offset} × {offset}) ÷ (4 × {offset})")],
            gives: nearest(answer.radius),
        },
        Step {
            rule: "height up to the middle = radius - √(radius² - mark²); beyond it, turned over"
                .into(),
            put_in: say![format!("radius {}, marks every ", exact_text(answer.radius)), input.step],
            gives: Value::Lengths(answer.marks.iter().map(|mark| mark.height).collect()),
        },
    ];
    let from = "from the start of the curve";
    let mut figures = vec![
        Figure::length("meet_along", "Arcs meet, along", from, answer.join.along),
        Figure::length("meet_across", "Arcs meet, across", from, answer.join.height),
        Figure::length("centre", "Both centres", "square to the ends of the curve", answer.radius),
    ];
    if let Some((figure, step)) = narrowest(input.board, answer.narrowest, input.offset) {
        figures.push(figure);
        steps.push(step);
    }
    figures.extend(things.figures);
    figures.push(Figure::length(
        "curve_length",
        "Along the curve",
        "end to end",
        answer.curve_length,
    ));
    figures.push(degrees(
        "steepest",
        "Steepest place",
        "where the arcs meet, from the run",
        answer.steepest.in_degrees(),
    ));
    let mut tables = vec![marks(
        "Marks for a batten",
        &["From the start", "Off the straight line"],
        &answer.marks,
    )];
    tables.extend(things.tables);
    let mut notes = vec![say!["Make a template of one half, and turn it over for the other half."]];
    notes.extend(things.notes);
    Answer {
        headline: Figure::length("radius", "Radius of both arcs", "centre to curve", answer.radius),
        figures,
        tables,
        notes,
        cautions: vec![Caution::DustAndNoise],
        drawing: Some(drawing::s_curve(input, answer, tape)),
        template: Some(template::of_s_curve(input, answer)),
        working: Working { steps, sources: vec![Source::Arithmetic, Source::CommonPractice] },
    }
}
