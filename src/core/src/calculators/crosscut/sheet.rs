//! What crosscutting asks and how its answer is laid out.

use super::{Answer, Input, drawing, reckon};
use crate::calculators::{Calculator, ResultKind, ResultSpec, Stage};
use crate::measure::text::exact_text;
use crate::measure::{Length, Rounding};
use crate::say;
use crate::sheet::{
    self, Ask, Bench, Caution, Field, Figure, Kind, Note, Source, Start, Step, Table, Value,
    Working,
};

/// Crosscut: equal parts from a board.
pub const CALCULATOR: Calculator = Calculator {
    slug: "crosscut",
    title: "Crosscut",
    question: "How many parts come off this board, and what is left?",
    stage: Stage::Saw,
    fields: FIELDS,
    results: RESULTS,
    work,
};

/// Our invented potting bench: slats of its lower shelf from an eight-footer.
const FIELDS: &[Field] = &[
    Field::new("board", "Board", "end to end, as measured", Kind::ABOVE_ZERO, Start::Inches("96")),
    Field::new(
        "trim",
        "Trim each end",
        "past the checks, the cut included",
        Kind::ZERO_UP,
        Start::Inches("1/2"),
    ),
    Field::new("part", "One part", "", Kind::ABOVE_ZERO, Start::Inches("17 1/2")),
    Field::new(
        "wanted",
        "Parts wanted",
        "",
        Kind::Count { least: 1, most: 9999 },
        Start::Text("10"),
    ),
    Field::new("kerf", "Kerf", "", Kind::ZERO_UP, Start::Kerf),
    Field::new(
        "knots",
        "Keep clear of",
        "knots from the left end, as 30 to 33 1/2",
        Kind::Spans,
        Start::Text(""),
    ),
];

const RESULTS: &[ResultSpec] = &[
    ResultSpec { id: "parts", label: "Parts from one board", kind: ResultKind::Count },
    ResultSpec { id: "leftover", label: "Left over", kind: ResultKind::Length },
    ResultSpec { id: "boards", label: "Boards for the job", kind: ResultKind::Count },
    ResultSpec { id: "stop", label: "Stop block", kind: ResultKind::Length },
    ResultSpec { id: "for_one_more", label: "Board for one part more", kind: ResultKind::Length },
    ResultSpec { id: "cuts", label: "Marks", kind: ResultKind::Table },
    ResultSpec { id: "passed_over", label: "Falls out at knots", kind: ResultKind::Table },
];

fn work(ask: &mut Ask) -> Option<sheet::Answer> {
    let (board, trim, part) = (
        ask.length(ask.field("board")),
        ask.length(ask.field("trim")),
        ask.length(ask.field("part")),
    );
    let (wanted, kerf, knots) = (
        ask.count(ask.field("wanted")),
        ask.length(ask.field("kerf")),
        ask.spans(ask.field("knots")),
    );
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
        Err(problems) => ask.refuse(&problems),
    }
}

/// Loose pieces shorter than this are not crosscut on a table saw (saw manuals).
const SHORTEST_LOOSE: Length = Length::sixty_fourths(6 * 64);

/// Pieces shorter than this need a push block (saw manuals).
const SHORT: Length = Length::sixty_fourths(12 * 64);

fn lay_out(input: &Input, answer: &Answer, bench: &Bench) -> sheet::Answer {
    let n_parts = answer.parts.len() as u64;
    let headline = Figure {
        id: "parts",
        label: "Parts from one board",
        from: "",
        value: Value::Count(n_parts),
    };
    let mut sheet = sheet::Answer::new(headline, working(input, answer));
    sheet.figures = vec![
        Figure {
            value: Value::Length(answer.leftover, Rounding::Down),
            ..Figure::length("leftover", "Left over", "last cut to right trim", answer.leftover)
        },
        Figure::count("boards", "Boards for the job", answer.boards),
        Figure::length("stop", "Stop block", "stop to near tooth", input.part),
    ];
    if input.knots.is_empty() {
        sheet.figures.push(Figure {
            id: "for_one_more",
            label: "Board for one part more",
            from: "end to end",
            value: Value::Length(answer.for_one_more, Rounding::Up),
        });
    }
    sheet.tables = tables(answer);
    sheet.notes = notes(input, answer);
    sheet.cautions = vec![Caution::DustAndNoise];
    if input.part < SHORT {
        sheet.cautions.insert(0, Caution::SmallPiece);
    }
    sheet.drawing = Some(drawing::draw(input, answer, bench));
    sheet
}

fn tables(answer: &Answer) -> Vec<Table> {
    let nearest = |length| Value::Length(length, Rounding::Nearest);
    let cuts = Table {
        id: "cuts",
        title: "Marks from the left end",
        columns: &["Part", "From", "To"],
        rows: (1_u64..)
            .zip(&answer.parts)
            .map(|(i, part)| vec![Value::Count(i), nearest(part.from), nearest(part.to)])
            .collect(),
    };
    let mut tables = vec![cuts];
    if !answer.passed_over.is_empty() {
        tables.push(Table {
            id: "passed_over",
            title: "Falls out at knots",
            columns: &["From", "To"],
            rows: answer
                .passed_over
                .iter()
                .map(|piece| vec![nearest(piece.from), nearest(piece.to)])
                .collect(),
        });
    }
    tables
}

fn notes(input: &Input, answer: &Answer) -> Vec<Note> {
    let mut notes = Vec::new();
    if input.trim.is_zero() {
        notes.push(say!["No trim: the left end is taken as square and free of checks."]);
    } else {
        notes.push(say!["Square the left end first, and measure from it, not from the raw end."]);
    }
    if input.part < SHORTEST_LOOSE {
        notes.push(say![
            "Under ",
            SHORTEST_LOOSE,
            ": cut these from a long piece held down, not loose on a table saw."
        ]);
    }
    if answer.leftover.is_positive() && answer.leftover < input.part {
        notes.push(say![
            "The last part is cut from the leftover too: hold what is short with a clamp."
        ]);
    }
    notes
}

fn working(input: &Input, answer: &Answer) -> Working {
    let usable = (answer.usable.to - answer.usable.from).unwrap_or(Length::ZERO);
    let text = exact_text;
    let mut steps = vec![Step::length(
        "usable = board - 2 × trim",
        say![format!("{} - 2 × {}", text(input.board), text(input.trim))],
        usable,
    )];
    let n_parts = answer.parts.len();
    steps.push(if input.knots.is_empty() {
        let (usable, kerf, part) = (text(usable), text(input.kerf), text(input.part));
        Step {
            rule: "parts = (usable + kerf) ÷ (part + kerf), whole ones only".into(),
            put_in: say![format!("({usable} + {kerf}) ÷ ({part} + {kerf})")],
            gives: Value::Count(n_parts as u64),
        }
    } else {
        Step {
            rule: "each part begins one kerf after the last, or where the next knot ends".into(),
            put_in: say![format!(
                "from {} to {}",
                text(answer.usable.from),
                text(answer.usable.to)
            )],
            gives: Value::Count(n_parts as u64),
        }
    });
    if let Some(last) = answer.parts.last() {
        steps.push(Step::length(
            "left over = right trim - end of last part - kerf, not below zero",
            say![format!("{} - {} - {}", text(answer.usable.to), text(last.to), text(input.kerf))],
            answer.leftover,
        ));
    }
    steps.push(Step {
        rule: "boards = wanted ÷ parts from one, rounded up".into(),
        put_in: say![format!("{} ÷ {n_parts}", input.wanted)],
        gives: Value::Count(answer.boards.into()),
    });
    Working { steps, sources: vec![Source::Arithmetic, Source::CommonPractice] }
}
