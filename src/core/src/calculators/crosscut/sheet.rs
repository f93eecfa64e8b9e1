//! What crosscutting asks and how its answer is laid out.

use super::fields::{
    BOARD, BOARDS, CUTS, FIELDS, FOR_ONE_MORE, FROM_COLUMN, KERF, KNOTS, LEFTOVER, PART,
    PART_COLUMN, PARTS, PASSED_OVER, RESULTS, STOP, TO_COLUMN, TRIM, WANTED,
};
use super::{Answer, Input, drawing, reckon};
use crate::calculators::{Calculator, Stage};
use crate::measure::text::exact_text;
use crate::measure::{Length, Rounding};
use crate::say;
use crate::sheet::{
    self, Act, Ask, Bench, Caution, Note, Refusal, Rounded, Source, Step, Table, Term, Value,
    Working,
};

/// Crosscut: equal parts from a board.
pub const CALCULATOR: Calculator = Calculator {
    slug: "crosscut",
    title: "Crosscut",
    question: "How many pieces come off this board, and what is left?",
    stage: Stage::Saw,
    fields: FIELDS,
    results: RESULTS,
    work,
};

fn work(ask: &mut Ask) -> Option<sheet::Answer> {
    let (board, trim, part) = (ask.length(&BOARD), ask.length(&TRIM), ask.length(&PART));
    let (wanted, kerf, knots) = (ask.count(&WANTED), ask.kerf(&KERF), ask.spans(&KNOTS));
    let input = Input {
        board: board?,
        trim: trim?,
        part: part?,
        kerf: kerf?,
        knots: knots?,
        wanted: wanted?,
    };
    match reckon(&input) {
        Ok(answer) => Some(lay_out(&input, &answer, ask.bench())),
        Err(refused) => ask.refused(refused, too_large()),
    }
}

fn too_large() -> Refusal {
    Refusal::too_large(&BOARD, "Use smaller numbers or plainer fractions.")
}

/// Loose pieces shorter than this are not crosscut on a table saw (saw manuals).
const SHORTEST_LOOSE: Length = Length::sixty_fourths(6 * 64);

fn lay_out(input: &Input, answer: &Answer, bench: &Bench) -> sheet::Answer {
    let headline = PARTS.figure("", Value::Count(answer.parts.len() as u64));
    let mut sheet = sheet::Answer::new(headline, working(input, answer));
    sheet.figures = vec![
        LEFTOVER.figure("last cut to right trim", Value::Length(answer.leftover, Rounding::Down)),
        BOARDS.figure("", answer.boards),
        STOP.figure("stop to near tooth", input.part),
    ];
    if input.knots.is_empty() {
        let board = Value::Length(answer.for_one_more, Rounding::Up);
        sheet.figures.push(FOR_ONE_MORE.figure("end to end", board));
    }
    sheet.tables = tables(answer);
    sheet.notes = notes(input, answer);
    let small = (input.part < Caution::SHORT).then_some(Act::SawSmall);
    let acts: Vec<Act> = small.into_iter().chain([Act::SawAtStop]).collect();
    sheet.cautions = Caution::of(&acts);
    sheet.drawing = Some(drawing::draw(input, answer, bench));
    sheet
}

fn tables(answer: &Answer) -> Vec<Table> {
    let cuts = (1_u64..)
        .zip(&answer.parts)
        .map(|(i, part)| vec![Value::Count(i), part.from.into(), part.to.into()])
        .collect();
    let cuts =
        CUTS.called("Marks from the left end").table(&[PART_COLUMN, FROM_COLUMN, TO_COLUMN], cuts);
    let passed_over: Vec<_> =
        answer.passed_over.iter().map(|piece| vec![piece.from.into(), piece.to.into()]).collect();
    if passed_over.is_empty() {
        return vec![cuts];
    }
    vec![cuts, PASSED_OVER.table(&[FROM_COLUMN, TO_COLUMN], passed_over)]
}

fn notes(input: &Input, answer: &Answer) -> Vec<Note> {
    let mut notes = Vec::new();
    if input.trim.is_zero() {
        notes.push(Note::new(
            "end_taken_as_square",
            say!["No trim: the left end is taken as square and free of checks."],
        ));
    } else {
        notes.push(Note::new(
            "square_left_end_first",
            say!["Square the left end first, and measure from it, not from the raw end."],
        ));
    }
    if input.part < SHORTEST_LOOSE {
        notes.push(Note::new(
            "cut_from_long_piece",
            say![
                "Under ",
                SHORTEST_LOOSE,
                ": cut these from a long piece held down, not loose on a table saw."
            ],
        ));
    }
    if answer.leftover.is_positive() && answer.leftover < input.part {
        notes.push(Note::new(
            "last_part_from_leftover",
            say!["The last piece is cut from the leftover too: hold what is short with a clamp."],
        ));
    }
    notes
}

fn working(input: &Input, answer: &Answer) -> Working {
    let usable = (answer.usable.to - answer.usable.from).unwrap_or(Length::ZERO);
    let (board, trim) = (Term::of("board", input.board), Term::of("trim", input.trim));
    let mut steps = vec![Step::of("usable", board - Term::fixed(2) * trim, usable)];
    let n_parts = answer.parts.len();
    let kerf = || Term::of("kerf", input.kerf);
    steps.push(if input.knots.is_empty() {
        let rooms = Term::of("usable", usable) + kerf();
        let pitch = Term::of("piece", input.part) + kerf();
        Step::of("pieces", rooms / pitch, Value::Count(n_parts as u64)).then(Rounded::WholeOnes)
    } else {
        let (from, to) = (exact_text(answer.usable.from), exact_text(answer.usable.to));
        Step::in_words(
            "each piece begins one kerf after the last, or where the next knot ends",
            say![format!("from {from} to {to}")],
            Value::Count(n_parts as u64),
        )
    });
    if let Some(last) = answer.parts.last() {
        let end = Term::of("end of last piece", last.to);
        let left = Term::of("right trim", answer.usable.to) - end - kerf();
        steps.push(Step::of("left over", left, answer.leftover).then(Rounded::NotBelowZero));
    }
    let boards = Term::of("wanted", input.wanted) / Term::of("pieces from one", n_parts);
    steps.push(Step::of("boards", boards, answer.boards).then(Rounded::Up));
    Working { steps, sources: vec![Source::Arithmetic, Source::CommonPractice] }
}
