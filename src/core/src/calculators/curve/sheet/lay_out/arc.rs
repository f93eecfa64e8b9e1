//! The arc: radius, marks for a batten, and the round thing that comes near.

use super::{REGINA, degrees, marks, narrowest, off_the_board, radius_step, things, waste};
use crate::calculators::curve::arc::{Answer as Reckoned, Input as Asked};
use crate::calculators::curve::fields::{
    ACROSS_COLUMN, CENTRE, CURVE_LENGTH, FROM_THE_MIDDLE_COLUMN, ITS_RADIUS_COLUMN, RADIUS_FOUND,
    RISE_IT_GIVES_COLUMN, STICKS, UP_FROM_THE_CHORD_COLUMN,
};
use crate::calculators::curve::{drawing, template};
use crate::measure::text::exact_text;
use crate::measure::{Rounding, Tape};
use crate::say;
use crate::sheet::{Act, Answer, Caution, Note, Rounded, Source, Step, Term, Value, Working};

pub(in super::super) fn lay_out(
    input: &Asked,
    answer: &Reckoned,
    crown: bool,
    tape: Tape,
) -> Answer {
    let things = things(
        &input.things,
        &answer.fits,
        &[ACROSS_COLUMN, ITS_RADIUS_COLUMN, RISE_IT_GIVES_COLUMN],
        "from the chord, away from the curve",
        |fit| fit.radius()? - fit.gives,
        Note::new(
            "no_thing_reaches_across",
            say!["None of your round things reaches across ", input.chord, "."],
        ),
    );
    let mut steps = vec![
        radius_step(input.chord, input.rise, answer.radius),
        Step::in_words(
            "height at a mark = √(radius² - mark²) - (radius - rise)",
            say![
                format!("radius {}, marks every ", exact_text(answer.radius)),
                input.step,
                " from the middle"
            ],
            Value::Lengths(answer.marks.iter().map(|mark| mark.height).collect()),
        ),
        Step::of(
            "along the curve",
            Term::of("radius", answer.radius)
                * Term::of("radians at the center", format!("{:.8}", answer.angle.in_radians())),
            answer.arc_length,
        )
        .then(Rounded::Near),
    ];
    let mut figures = vec![CENTRE.figure("from the chord, away from the curve", answer.centre)];
    if let Some((figure, step)) = narrowest(input.board, answer.narrowest, input.rise) {
        figures.push(figure);
        steps.push(step);
    }
    figures.extend(things.figures);
    figures.push(CURVE_LENGTH.figure("end to end", answer.arc_length));
    figures
        .push(STICKS.figure("joined at the top of the arc", degrees(answer.sticks.in_degrees())));
    if !crown {
        figures.push(waste("between chord and curve", answer.area));
    }
    let mut tables = vec![marks(
        "Marks for a batten, the same on both sides",
        &[FROM_THE_MIDDLE_COLUMN, UP_FROM_THE_CHORD_COLUMN],
        &answer.marks,
    )];
    tables.extend(things.tables);
    let mut notes = vec![
        Note::new(
            "nails_and_batten",
            say!["A nail at each mark, and a thin batten bent round the nails, give the curve."],
        ),
        Note::new(
            "two_sticks_at_angle",
            say![
                "Or join two sticks of ",
                (input.chord, Rounding::Up),
                " or longer at that angle, and slide them along a nail at each end."
            ],
        ),
    ];
    let centre_on_board = if crown {
        input.board.is_some_and(|board| answer.radius <= board.width)
    } else {
        answer.centre.is_negative()
    };
    if !answer.fits.is_empty() && !centre_on_board {
        notes.push(off_the_board());
    }
    notes.extend(things.notes);
    Answer {
        goods: Vec::new(),
        headline: RADIUS_FOUND.figure("center to curve", answer.radius),
        figures,
        tables,
        notes,
        cautions: Caution::of(&[Act::Saw]),
        drawing: Some(drawing::arc(input, answer, crown, tape)),
        template: Some(template::of_arc(input, answer)),
        working: Working {
            steps,
            sources: vec![REGINA, Source::Arithmetic, Source::CommonPractice],
        },
    }
}
