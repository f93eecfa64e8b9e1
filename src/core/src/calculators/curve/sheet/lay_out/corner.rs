//! A rounded corner, and an end rounded all the way.

use super::{nearest, things, waste};
use crate::calculators::curve::corner::{Answer as Reckoned, Input as Asked};
use crate::calculators::curve::things::Fit;
use crate::calculators::curve::{drawing, template};
use crate::measure::text::exact_text;
use crate::measure::{Length, Tape};
use crate::say;
use crate::sheet::{Answer, Caution, Figure, Source, Step, Working};

const CORNER_COLUMNS: &[&str; 3] = &["Across", "Its radius", "Meets edge at"];

fn corner_steps(input: &Asked, answer: &Reckoned) -> Vec<Step> {
    let radius = exact_text(input.radius);
    let half = input.corner.to_f64() / 2.0;
    vec![
        Step {
            rule: "where the round meets the edge = radius ÷ tan(corner ÷ 2)".into(),
            put_in: say![format!("{radius} ÷ tan {half:.1}°")],
            gives: nearest(answer.tangent),
        },
        Step {
            rule: "off the corner = radius × (1 ÷ sin(corner ÷ 2) - 1)".into(),
            put_in: say![format!("{radius} × (1 ÷ sin {half:.1}° - 1)")],
            gives: nearest(answer.lost),
        },
    ]
}

pub(in super::super) fn lay_out(input: &Asked, answer: &Reckoned, tape: Tape) -> Answer {
    let things = things(
        &input.things,
        &answer.fits,
        CORNER_COLUMNS,
        "in from each edge",
        Fit::radius,
        say!["None of your round things fits on this edge."],
    );
    let mut figures = vec![
        Figure::length("centre", "Centre", "in from each edge", input.radius),
        Figure::length("lost", "Off the corner", "on the line that halves it", answer.lost),
    ];
    figures.extend(things.figures);
    if let Some(straight) = answer.straight {
        let from = if input.both { "between the two rounds" } else { "beyond the round" };
        figures.push(Figure::length("straight", "Straight edge left", from, straight));
    }
    figures.push(Figure::length(
        "corner_to_centre",
        "Corner to centre",
        "on the line that halves it",
        answer.corner_to_centre,
    ));
    figures.push(Figure::length(
        "curve_length",
        "Along the round",
        "edge to edge",
        answer.arc_length,
    ));
    figures.push(waste("at each corner", answer.area));
    let mut notes = vec![say![
        "The edge runs into the round without a kink only where the two meet: mark both places."
    ]];
    notes.extend(things.notes);
    Answer {
        headline: Figure::length("touches", "Round meets edge", "from the corner", answer.tangent),
        figures,
        tables: things.tables,
        notes,
        cautions: vec![Caution::DustAndNoise],
        drawing: Some(drawing::corner(input, answer, tape)),
        template: Some(template::of_corner(input, answer)),
        working: Working { steps: corner_steps(input, answer), sources: vec![Source::Arithmetic] },
    }
}

pub(in super::super) fn lay_out_end(
    width: Length,
    input: &Asked,
    answer: &Reckoned,
    tape: Tape,
) -> Answer {
    let things = things(
        &input.things,
        &answer.fits,
        CORNER_COLUMNS,
        "from the end and one edge",
        Fit::radius,
        say!["Each of your round things is wider than ", width, "."],
    );
    let mut figures = vec![
        Figure::length("radius", "Radius", "centre to curve", input.radius),
        Figure::length("centre", "Centre", "from the end and each edge", input.radius),
    ];
    figures.extend(things.figures);
    let mut notes = Vec::new();
    if let Some(best) = answer.fits.first()
        && best.off.is_negative()
    {
        notes.push(say![
            "The nearest one, ",
            best.diameter,
            ", is smaller: it rounds both corners and leaves a flat between them."
        ]);
    }
    notes.extend(things.notes);
    Answer {
        headline: Figure::length("diameter", "Round thing needed", "across", width),
        figures,
        tables: things.tables,
        notes,
        cautions: vec![Caution::DustAndNoise],
        drawing: Some(drawing::corner(input, answer, tape)),
        template: Some(template::of_corner(input, answer)),
        working: Working {
            steps: vec![Step {
                rule: "radius = width ÷ 2, so the diameter is the width".into(),
                put_in: say![format!("{} ÷ 2", exact_text(width))],
                gives: nearest(input.radius),
            }],
            sources: vec![Source::Arithmetic],
        },
    }
}
