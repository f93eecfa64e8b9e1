//! What the tape asks and how its answer is laid out.

use super::{Answer, Input, drawing, reckon};
use crate::calculators::{Calculator, ResultKind, ResultSpec, Stage};
use crate::measure::text::{Quantity, exact_text, show};
use crate::measure::{Fineness, Length, Number, Rounding, Tape, Unit};
use crate::paper::{Template, story_stick};
use crate::say;
use crate::sheet::{
    self, Ask, Bench, Choice, Field, Figure, Kind, Source, Start, Step, Value, When, Working,
};

/// Tape: work out a measure, find its line, divide it.
pub const CALCULATOR: Calculator = Calculator {
    slug: "tape",
    title: "Tape",
    question: "What does this come to, and which line is that?",
    stage: Stage::Measure,
    fields: FIELDS,
    results: RESULTS,
    work,
};

const FIELDS: &[Field] = &[
    Field {
        id: "strip",
        label: "Work it out",
        hint: "use the letter of a line above to go on from it",
        kind: Kind::Strip,
        // Our invented potting bench: a shelf between two legs and two cleats.
        start: Start::Text("61 3/8 - 2 × 3 1/2 - 2 × 3/4"),
        when: When::Always,
    },
    Field {
        id: "line",
        label: "Line in use",
        hint: "empty for the last one",
        kind: Kind::LineOf("strip"),
        start: Start::Text(""),
        when: When::Always,
    },
    Field {
        id: "divide",
        label: "Divide",
        hint: "",
        kind: Kind::Choice(&[
            Choice { id: "whole", label: "Whole" },
            Choice { id: "half", label: "Half" },
            Choice { id: "third", label: "Third" },
            Choice { id: "parts", label: "Parts" },
        ]),
        start: Start::Text("whole"),
        when: When::Always,
    },
    Field {
        id: "parts",
        label: "Equal parts",
        hint: "",
        kind: Kind::Count { least: 2, most: 200 },
        start: Start::Text("4"),
        when: When::Chosen("divide", &["parts"]),
    },
    Field {
        id: "start_mark",
        label: "Tape starts at",
        hint: "1 when you hold the 1 in line at the end",
        kind: Kind::ZERO_UP,
        start: Start::Text("0"),
        when: When::Always,
    },
];

const RESULTS: &[ResultSpec] = &[
    ResultSpec { id: "read", label: "Read the tape at", kind: ResultKind::Length },
    ResultSpec { id: "marks", label: "Running marks", kind: ResultKind::Lengths },
    ResultSpec { id: "length", label: "Length", kind: ResultKind::Length },
    ResultSpec { id: "each", label: "One part", kind: ResultKind::Length },
    ResultSpec { id: "stepping_error", label: "Error when stepped off", kind: ResultKind::Length },
    ResultSpec { id: "closes_at", label: "Last mark closes at", kind: ResultKind::Length },
    ResultSpec { id: "millimetres", label: "In millimetres", kind: ResultKind::Number },
    ResultSpec { id: "inches", label: "In decimal inches", kind: ResultKind::Number },
    ResultSpec { id: "feet", label: "In feet and inches", kind: ResultKind::Words },
    ResultSpec { id: "number", label: "Number", kind: ResultKind::Number },
    ResultSpec { id: "area", label: "Area", kind: ResultKind::Area },
];

fn work(ask: &mut Ask) -> Option<sheet::Answer> {
    let strip = ask.strip(ask.field("strip"));
    let start_mark = ask.length(ask.field("start_mark"));
    let parts = match ask.choice(ask.field("divide")).id {
        "half" => Some(2),
        "third" => Some(3),
        "parts" => ask.count(ask.field("parts")),
        _ => Some(1),
    };
    let (letter, quantity) = ask.line_of(ask.field("line"), ask.field("strip"), &strip?)?;
    let length = match quantity {
        Quantity::Bare(number) => Length::of(number, ask.unit()),
        Quantity::Length(length) => Ok(length),
        Quantity::Plain(number) => return Some(plain(&letter, number)),
        Quantity::Area(area) => {
            return Some(unmeasured(&letter, "area", "Area", Value::Area(area)));
        }
    };
    let bench = ask.bench();
    let result = match length {
        Ok(length) => {
            let input = Input { length, parts: parts?, start_mark: start_mark?, tape: bench.tape };
            reckon(&input).map(|answer| lay_out(&letter, &input, &answer, bench))
        }
        Err(out_of_range) => Err(super::Problem::from(out_of_range).into()),
    };
    result.map_or_else(|problems| ask.refuse(&problems), Some)
}

fn plain(letter: &str, number: Number) -> sheet::Answer {
    let places = if number.is_whole() { 0 } else { 4 };
    unmeasured(letter, "number", "A plain number", Value::Exact(number, places, ""))
}

/// An answer that is no length: it has no line on a tape.
fn unmeasured(letter: &str, id: &'static str, label: &'static str, value: Value) -> sheet::Answer {
    let step = Step {
        rule: "what the line comes to".into(),
        put_in: say![format!("line {letter}")],
        gives: value.clone(),
    };
    sheet::Answer {
        headline: Figure { id, label, from: "", value },
        figures: Vec::new(),
        tables: Vec::new(),
        notes: Vec::new(),
        cautions: Vec::new(),
        drawing: None,
        template: None,
        working: Working { steps: vec![step], sources: vec![Source::Arithmetic] },
    }
}

fn lay_out(letter: &str, input: &Input, answer: &Answer, bench: &Bench) -> sheet::Answer {
    let divided = input.parts > 1;
    let offset = !input.start_mark.is_zero();
    let from = if offset { "on the tape, started late" } else { "from the end of the tape" };
    let read = answer.marks.last().copied().unwrap_or(input.length);
    let headline = if divided {
        Figure { id: "marks", label: "Mark", from, value: Value::Lengths(answer.marks.clone()) }
    } else {
        Figure::length("read", "Read the tape at", from, read)
    };
    let mut figures = Vec::new();
    if divided {
        figures.push(Figure::length("each", "One part", "mark to mark", answer.each));
        figures.push(Figure::length(
            "closes_at",
            "Last mark closes at",
            "from the start",
            answer.closes_at,
        ));
        figures.push(Figure {
            id: "stepping_error",
            label: "Off the end when stepped",
            from: "by one rounded part",
            value: Value::Length(answer.stepping_error, Rounding::Nearest),
        });
    }
    if divided || offset {
        figures.push(Figure::length("length", "Length", "", input.length));
    }
    figures.extend(other_units(input.length));
    let mut notes = Vec::new();
    if offset {
        notes.push(say![
            "Started at ",
            input.start_mark,
            ": read ",
            read,
            " on the tape, and the part is ",
            input.length,
            "."
        ]);
    }
    if !answer.stepping_error.is_zero() {
        notes.push(say![
            "Mark each line from the same end. Do not step off one part again and again."
        ]);
    }
    sheet::Answer {
        headline,
        figures,
        tables: Vec::new(),
        notes,
        cautions: Vec::new(),
        drawing: Some(drawing::draw(input, answer, bench)),
        template: divided.then(|| stick(input, answer, bench)),
        working: working(letter, input, answer),
    }
}

/// The marks on a strip of paper, from the end of the work: a tape that starts late does not
/// move them.
fn stick(input: &Input, answer: &Answer, bench: &Bench) -> Template {
    let marks: Vec<Length> =
        answer.marks.iter().filter_map(|mark| (*mark - input.start_mark).ok()).collect();
    let title = say!["Story stick, ", input.length, " in ", input.parts, " parts"];
    story_stick(title, input.length, &marks, bench.tape)
}

/// The same length on the tapes of other people.
fn other_units(length: Length) -> Vec<Figure> {
    let mut figures = Vec::new();
    let exact = |id, label, number, places, unit| Figure {
        id,
        label,
        from: "",
        value: Value::Exact(number, places, unit),
    };
    if let Ok(number) = length.in_unit(Unit::Millimetre) {
        figures.push(exact("millimetres", "In millimetres", number, 1, "mm"));
    }
    figures.push(exact("inches", "In decimal inches", length.in_inches(), 3, "in"));
    if let Ok(shown) = show(length, Tape::FeetAndInches(Fineness::Sixteenth), Rounding::Nearest) {
        let value = Value::Words(say![shown.mark.to_string()]);
        figures.push(Figure { id: "feet", label: "In feet and inches", from: "", value });
    }
    figures
}

fn working(letter: &str, input: &Input, answer: &Answer) -> Working {
    let mut steps = vec![Step {
        rule: "length = what the line comes to".into(),
        put_in: say![format!("line {letter}")],
        gives: Value::Length(input.length, Rounding::Nearest),
    }];
    if input.parts > 1 {
        steps.push(Step {
            rule: "one part = length ÷ parts".into(),
            put_in: say![format!("{} ÷ {}", exact_text(input.length), input.parts)],
            gives: Value::Length(answer.each, Rounding::Nearest),
        });
        steps.push(Step {
            rule: "mark i = i × length ÷ parts, never by adding rounded parts".into(),
            put_in: say![format!("i from 1 to {}", input.parts)],
            gives: Value::Lengths(answer.marks.clone()),
        });
        steps.push(Step {
            rule: "error when stepped = parts × (one part at the nearest line) - length".into(),
            put_in: say![format!(
                "{} × {} - {}",
                input.parts,
                exact_text(answer.each_on_tape),
                exact_text(input.length)
            )],
            gives: Value::Length(answer.stepping_error, Rounding::Nearest),
        });
    }
    if !input.start_mark.is_zero() {
        steps.push(Step {
            rule: "line to read = length + line at the start".into(),
            put_in: say![format!(
                "{} + {}",
                exact_text(input.length),
                exact_text(input.start_mark)
            )],
            gives: answer
                .marks
                .last()
                .map_or(Value::Count(0), |mark| Value::Length(*mark, Rounding::Nearest)),
        });
    }
    Working { steps, sources: vec![Source::Arithmetic, Source::CommonPractice] }
}
