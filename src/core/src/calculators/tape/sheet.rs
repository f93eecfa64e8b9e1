//! What the tape asks and how its answer is laid out.

use super::{Answer, Input, drawing, reckon};
use crate::calculators::tape::fields::{
    AREA, CLOSES_AT, DIVIDE, EACH, EQUAL_PARTS, FEET, FIELDS, HALF, INCHES, LENGTH, LINE, MARKS,
    MILLIMETRES, NUMBER, PARTS, READ, RESULTS, START_MARK, STEPPING_ERROR, STRIP, THIRD,
};
use crate::calculators::{Calculator, Stage};
use crate::measure::text::{Quantity, show};
use crate::measure::{Fineness, Length, Number, Rounding, Tape, Unit};
use crate::paper::{Template, story_stick};
use crate::say;
use crate::sheet::{self, Ask, Bench, Figure, Note, Refusal, Source, Step, Term, Value, Working};

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

fn work(ask: &mut Ask) -> Option<sheet::Answer> {
    let strip = ask.strip(&STRIP);
    let start_mark = ask.length(&START_MARK);
    let parts = match ask.choice(&DIVIDE) {
        HALF => Some(2),
        THIRD => Some(3),
        EQUAL_PARTS => ask.count(&PARTS),
        _ => Some(1),
    };
    let (letter, quantity) = ask.line_of(&LINE, &STRIP, &strip?)?;
    let length = match quantity {
        Quantity::Bare(number) => Length::of(number, ask.unit()),
        Quantity::Length(length) => Ok(length),
        Quantity::Plain(number) => return Some(plain(&letter, number)),
        Quantity::Area(area) => {
            return Some(unmeasured(&letter, AREA.figure("", Value::Area(area))));
        }
    };
    let bench = ask.bench();
    let result = match length {
        Ok(length) => {
            let input = Input { length, parts: parts?, start_mark: start_mark?, tape: bench.tape };
            reckon(&input).map(|answer| lay_out(&letter, &input, &answer, bench))
        }
        Err(out_of_range) => Err(out_of_range.into()),
    };
    result.map_or_else(|refused| ask.refused(refused, too_large()), Some)
}

fn too_large() -> Refusal {
    Refusal::too_large(&STRIP, "Work it out in smaller steps.")
}

fn plain(letter: &str, number: Number) -> sheet::Answer {
    let places = if number.is_whole() { 0 } else { 4 };
    let value = Value::Exact(number, places, "");
    unmeasured(letter, NUMBER.called("A plain number").figure("", value))
}

/// An answer that is no length: it has no line on a tape.
fn unmeasured(letter: &str, headline: Figure) -> sheet::Answer {
    let line = say![format!("line {letter}")];
    let step = Step::in_words("what the line comes to", line, headline.value.clone());
    sheet::Answer {
        goods: Vec::new(),
        headline,
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
        MARKS.called("Mark").figure(from, Value::Lengths(answer.marks.clone()))
    } else {
        READ.figure(from, read)
    };
    let mut figures = Vec::new();
    if divided {
        figures.push(EACH.figure("mark to mark", answer.each));
        figures.push(CLOSES_AT.figure("from the start", answer.closes_at));
        figures.push(STEPPING_ERROR.figure(
            "off at the end, by one rounded part",
            Value::Length(answer.stepping_error, Rounding::Nearest),
        ));
    }
    if divided || offset {
        figures.push(LENGTH.figure("", input.length));
    }
    figures.extend(other_units(input.length));
    let mut notes = Vec::new();
    if offset {
        notes.push(Note::new(
            "started_late",
            say![
                "Started at ",
                input.start_mark,
                ": read ",
                read,
                " on the tape, and the part is ",
                input.length,
                "."
            ],
        ));
    }
    if !answer.stepping_error.is_zero() {
        notes.push(Note::new(
            "mark_from_same_end",
            say!["Mark each line from the same end. Do not step off one part again and again."],
        ));
    }
    sheet::Answer {
        goods: Vec::new(),
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
    if let Ok(number) = length.in_unit(Unit::Millimetre) {
        figures.push(MILLIMETRES.figure("", Value::Exact(number, 1, "mm")));
    }
    figures.push(INCHES.figure("", Value::Exact(length.in_inches(), 3, "in")));
    if let Ok(shown) = show(length, Tape::FeetAndInches(Fineness::Sixteenth), Rounding::Nearest) {
        figures.push(FEET.figure("", Value::Words(say![shown.mark.to_string()])));
    }
    figures
}

fn working(letter: &str, input: &Input, answer: &Answer) -> Working {
    let line = say![format!("line {letter}")];
    let mut steps = vec![Step::in_words("length = what the line comes to", line, input.length)];
    let length = || Term::of("length", input.length);
    let parts = || Term::of("parts", input.parts);
    if input.parts > 1 {
        steps.push(Step::of("one part", length() / parts(), answer.each));
        steps.push(Step::in_words(
            "mark i = i × length ÷ parts, never by adding rounded parts",
            say![format!("i from 1 to {}", input.parts)],
            Value::Lengths(answer.marks.clone()),
        ));
        let stepped = parts() * Term::of("one part at the nearest line", answer.each_on_tape);
        let error = answer.stepping_error;
        steps.push(Step::of("off when stepped", stepped - length(), error));
    }
    if let Some(read) = answer.marks.last().filter(|_| !input.start_mark.is_zero()) {
        let start = Term::of("line at the start", input.start_mark);
        steps.push(Step::of("line to read", length() + start, *read));
    }
    Working { steps, sources: vec![Source::Arithmetic, Source::CommonPractice] }
}
