//! The S-curve: radius of its arcs, where they meet, and the marks.

use super::{degrees, marks, narrowest, things};
use crate::calculators::curve::fields::{
    ACROSS_COLUMN, CENTRE, CURVE_LENGTH, FROM_THE_START_COLUMN, ITS_RADIUS_COLUMN, MEET_ACROSS,
    MEET_ALONG, OFF_THE_STRAIGHT_LINE_COLUMN, OFFSET_IT_GIVES_COLUMN, RADIUS_FOUND, STEEPEST,
};
use crate::calculators::curve::s_curve::{Answer as Reckoned, Input as Asked};
use crate::calculators::curve::things::Fit;
use crate::calculators::curve::{drawing, template};
use crate::measure::Tape;
use crate::measure::text::exact_text;
use crate::say;
use crate::sheet::{Act, Answer, Caution, Note, Source, Step, Term, Value, Working};

pub(in super::super) fn lay_out(input: &Asked, answer: &Reckoned, tape: Tape) -> Answer {
    let run = || Term::of("run", input.run);
    let offset = || Term::of("offset", input.offset);
    let things = things(
        &input.things,
        &answer.fits,
        &[ACROSS_COLUMN, ITS_RADIUS_COLUMN, OFFSET_IT_GIVES_COLUMN],
        "square to each end of the curve",
        Fit::radius,
        Note::new(
            "no_thing_fits_run",
            say!["None of your round things is wide enough for a run of ", input.run, "."],
        ),
    );
    let mut steps = vec![
        Step::of(
            "radius",
            (run() * run() + offset() * offset()) / (Term::fixed(4) * offset()),
            answer.radius,
        ),
        Step::in_words(
            "height up to the middle = radius - √(radius² - mark²); beyond it, turned over",
            say![format!("radius {}, marks every ", exact_text(answer.radius)), input.step],
            Value::Lengths(answer.marks.iter().map(|mark| mark.height).collect()),
        ),
    ];
    let from = "from the start of the curve";
    let mut figures = vec![
        MEET_ALONG.figure(from, answer.join.along),
        MEET_ACROSS.figure(from, answer.join.height),
        CENTRE.called("Both centers").figure("square to the ends of the curve", answer.radius),
    ];
    if let Some((figure, step)) = narrowest(input.board, answer.narrowest, input.offset) {
        figures.push(figure);
        steps.push(step);
    }
    figures.extend(things.figures);
    figures.push(CURVE_LENGTH.figure("end to end", answer.curve_length));
    figures.push(
        STEEPEST.figure("where the arcs meet, from the run", degrees(answer.steepest.in_degrees())),
    );
    let mut tables = vec![marks(
        "Marks for a batten",
        &[FROM_THE_START_COLUMN, OFF_THE_STRAIGHT_LINE_COLUMN],
        &answer.marks,
    )];
    tables.extend(things.tables);
    let mut notes = vec![Note::new(
        "turn_template_over",
        say!["Make a template of one half, and turn it over for the other half."],
    )];
    notes.extend(things.notes);
    Answer {
        goods: Vec::new(),
        headline: RADIUS_FOUND
            .called("Radius of both arcs")
            .figure("center to curve", answer.radius),
        figures,
        tables,
        notes,
        cautions: Caution::of(&[Act::Saw]),
        drawing: Some(drawing::s_curve(input, answer, tape)),
        template: Some(template::of_s_curve(input, answer)),
        working: Working { steps, sources: vec![Source::Arithmetic, Source::CommonPractice] },
    }
}
