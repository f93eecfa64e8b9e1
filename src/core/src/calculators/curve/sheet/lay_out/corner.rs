//! A rounded corner, and an end rounded all the way.

use super::{things, waste};
use crate::calculators::curve::corner::{Answer as Reckoned, Input as Asked};
use crate::calculators::curve::fields::{
    ACROSS_COLUMN, CENTRE, CORNER_TO_CENTRE, CURVE_LENGTH, DIAMETER, ITS_RADIUS_COLUMN, LOST,
    MEETS_EDGE_AT_COLUMN, RADIUS_FOUND, STRAIGHT, TOUCHES,
};
use crate::calculators::curve::things::Fit;
use crate::calculators::curve::{drawing, template};
use crate::measure::{Length, Tape};
use crate::say;
use crate::sheet::{Act, Amount, Answer, Caution, Column, Note, Source, Step, Term, Working};

const CORNER_COLUMNS: &[Column; 3] = &[ACROSS_COLUMN, ITS_RADIUS_COLUMN, MEETS_EDGE_AT_COLUMN];

fn corner_steps(input: &Asked, answer: &Reckoned) -> Vec<Step> {
    let radius = || Term::of("radius", input.radius);
    let half = || Term::of("corner", Amount::angle(input.corner.to_f64())) / Term::fixed(2);
    vec![
        Step::of("where the round meets the edge", radius() / half().tan(), answer.tangent),
        Step::of(
            "off the corner",
            radius() * (Term::fixed(1) / half().sin() - Term::fixed(1)),
            answer.lost,
        ),
    ]
}

pub(in super::super) fn lay_out(input: &Asked, answer: &Reckoned, tape: Tape) -> Answer {
    let things = things(
        &input.things,
        &answer.fits,
        CORNER_COLUMNS,
        "in from each edge",
        Fit::radius,
        Note::new("no_thing_fits_edge", say!["None of your round things fits on this edge."]),
    );
    let mut figures = vec![
        CENTRE.figure("in from each edge", input.radius),
        LOST.figure("on the line that halves it", answer.lost),
    ];
    figures.extend(things.figures);
    if let Some(straight) = answer.straight {
        let from = if input.both { "between the two rounds" } else { "beyond the round" };
        figures.push(STRAIGHT.figure(from, straight));
    }
    figures.push(CORNER_TO_CENTRE.figure("on the line that halves it", answer.corner_to_centre));
    figures.push(CURVE_LENGTH.called("Along the round").figure("edge to edge", answer.arc_length));
    figures.push(waste("at each corner", answer.area));
    let mut notes = vec![Note::new(
        "mark_where_round_meets",
        say![
            "The edge runs into the round without a kink only where the two meet: mark both places."
        ],
    )];
    notes.extend(things.notes);
    Answer {
        goods: Vec::new(),
        headline: TOUCHES.called("Round meets edge").figure("from the corner", answer.tangent),
        figures,
        tables: things.tables,
        notes,
        cautions: Caution::of(&[Act::Saw]),
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
        Note::new("things_are_wider", say!["Each of your round things is wider than ", width, "."]),
    );
    let mut figures = vec![
        RADIUS_FOUND.figure("center to curve", input.radius),
        CENTRE.figure("from the end and each edge", input.radius),
    ];
    figures.extend(things.figures);
    let mut notes = Vec::new();
    if let Some(best) = answer.fits.first()
        && best.off.is_negative()
    {
        notes.push(Note::new(
            "nearest_thing_is_smaller",
            say![
                "The nearest one, ",
                best.diameter,
                ", is smaller: it rounds both corners and leaves a flat between them."
            ],
        ));
    }
    notes.extend(things.notes);
    Answer {
        goods: Vec::new(),
        headline: DIAMETER.called("Round thing needed").figure("across", width),
        figures,
        tables: things.tables,
        notes,
        cautions: Caution::of(&[Act::Saw]),
        drawing: Some(drawing::corner(input, answer, tape)),
        template: Some(template::of_corner(input, answer)),
        working: Working {
            steps: vec![Step::of(
                "radius",
                Term::of("width", width) / Term::fixed(2),
                input.radius,
            )],
            sources: vec![Source::Arithmetic],
        },
    }
}
