//! What JavaScript gets back: plain objects, with every length exact and readable.

use std::collections::BTreeMap;

use reckoner_core::measure::text::{Shown, exact_text, show};
use reckoner_core::measure::{Length, Rounding, Tape, Unit};
use reckoner_core::sheet::{
    Answer, Bench, Column, Entries, Face, Figure, Refusal, Sentence, Sheet, Value, face,
    face_in_working,
};
use serde::Serialize;

use crate::input::BadCall;

/// The answer to a call: `ok` tells which.
#[derive(Clone, Debug, Serialize)]
#[serde(untagged)]
pub enum Out {
    /// It could be answered.
    Answered(Box<AnswerOut>),
    /// It could not.
    Refused {
        /// Always `false`.
        ok: bool,
        /// What is in the way, never empty.
        problems: Vec<ProblemOut>,
    },
}

/// An answer.
#[derive(Clone, Debug, Serialize)]
pub struct AnswerOut {
    ok: bool,
    headline: FigureOut,
    results: BTreeMap<&'static str, ValueOut>,
    tables: BTreeMap<&'static str, TableOut>,
    notes: Vec<NoteOut>,
    cautions: Vec<CautionOut>,
    understood: BTreeMap<&'static str, String>,
    working: Vec<StepOut>,
    sources: Vec<String>,
    /// What was left out and has a default, and what it was taken as.
    assumed: BTreeMap<&'static str, String>,
}

#[derive(Clone, Debug, Serialize)]
struct FigureOut {
    id: &'static str,
    label: &'static str,
    from: &'static str,
    value: ValueOut,
}

#[derive(Clone, Debug, Serialize)]
struct TableOut {
    title: &'static str,
    columns: Vec<ColumnOut>,
    rows: Vec<Vec<ValueOut>>,
}

#[derive(Clone, Debug, Serialize)]
struct ColumnOut {
    id: &'static str,
    heading: &'static str,
}

#[derive(Clone, Debug, Serialize)]
struct NoteOut {
    id: &'static str,
    text: String,
}

#[derive(Clone, Debug, Serialize)]
struct CautionOut {
    id: &'static str,
    line: String,
    more: String,
}

#[derive(Clone, Debug, Serialize)]
struct StepOut {
    rule: String,
    numbers: String,
    gives: ValueOut,
}

/// A length by itself.
#[derive(Clone, Debug, Serialize)]
struct ExactOut {
    /// Exact inches: `27/8`.
    exact: String,
    /// The same as a number, as near as numbers of JavaScript come.
    inches: f64,
    millimetres: f64,
}

/// A length: exact in inches, and as it stands on the tape.
#[derive(Clone, Debug, Serialize)]
struct LengthOut {
    #[serde(flatten)]
    length: ExactOut,
    shown: String,
    lean: &'static str,
    left_over: ExactOut,
    spoken: String,
}

#[derive(Clone, Debug, Serialize)]
#[serde(tag = "kind", rename_all = "snake_case")]
enum ValueOut {
    Length(LengthOut),
    Lengths { items: Vec<LengthOut> },
    Count { value: u64 },
    Area { exact_square_inches: String, shown: String },
    Number { exact: Option<String>, value: f64, unit: &'static str, shown: String },
    Words { shown: String },
}

/// What is in the way, beside a field.
#[derive(Clone, Debug, Serialize)]
pub struct ProblemOut {
    field: String,
    code: String,
    message: String,
    /// Where in the text of the field, in UTF-16 units as JavaScript counts, when the writing is at
    /// fault.
    at: Option<(usize, usize)>,
    way_out: Option<WayOutOut>,
}

#[derive(Clone, Debug, Serialize)]
struct WayOutOut {
    message: String,
    /// What to put into which field to carry it out.
    set: BTreeMap<&'static str, String>,
}

impl ProblemOut {
    fn of(refusal: &Refusal, entries: &Entries, tape: Tape) -> ProblemOut {
        let text = entries.text(refusal.field).unwrap_or_default();
        let units =
            |bytes: usize| text.get(..bytes).map_or(bytes, |before| before.encode_utf16().count());
        let words = |sentence: &Sentence| sentence.on(tape);
        ProblemOut {
            field: refusal.field.to_owned(),
            code: refusal.code.to_owned(),
            message: words(&refusal.sentence),
            at: refusal.at.as_ref().map(|at| (units(at.start), units(at.end))),
            way_out: refusal.way_out.as_ref().map(|way_out| WayOutOut {
                message: words(&way_out.sentence),
                set: way_out.texts(tape).into_iter().collect(),
            }),
        }
    }
}

impl Out {
    /// A call that cannot be made sense of is refused as a question is.
    pub(crate) fn bad_call(bad: BadCall) -> Out {
        Out::bad_calls(vec![bad])
    }

    /// All that is the matter with a call.
    pub(crate) fn bad_calls(bad: Vec<BadCall>) -> Out {
        let problem = |BadCall { field, code, message }| ProblemOut {
            field,
            code: code.to_owned(),
            message,
            at: None,
            way_out: None,
        };
        Out::Refused { ok: false, problems: bad.into_iter().map(problem).collect() }
    }

    pub(crate) fn of(
        sheet: &Sheet,
        entries: &Entries,
        assumed: BTreeMap<&'static str, String>,
        bench: &Bench,
    ) -> Out {
        match &sheet.answer {
            Some(answer) => Out::Answered(Box::new(AnswerOut {
                assumed,
                ..AnswerOut::of(answer, sheet, bench)
            })),
            None => Out::Refused {
                ok: false,
                problems: sheet
                    .refusals
                    .iter()
                    .map(|r| ProblemOut::of(r, entries, bench.tape))
                    .collect(),
            },
        }
    }
}

impl AnswerOut {
    fn of(answer: &Answer, sheet: &Sheet, bench: &Bench) -> AnswerOut {
        let words = |sentence: &Sentence| sentence.on(bench.tape);
        let figures = core::iter::once(&answer.headline).chain(&answer.figures);
        AnswerOut {
            ok: true,
            headline: FigureOut::of(&answer.headline, bench),
            results: figures.map(|f| (f.id, ValueOut::of(&f.value, bench))).collect(),
            tables: answer
                .tables
                .iter()
                .map(|table| {
                    let row =
                        |row: &Vec<Value>| row.iter().map(|v| ValueOut::of(v, bench)).collect();
                    let rows = table.rows.iter().map(row).collect();
                    let columns = table.columns.iter().map(ColumnOut::of).collect();
                    (table.id, TableOut { title: table.title, columns, rows })
                })
                .collect(),
            notes: answer
                .notes
                .iter()
                .map(|note| NoteOut { id: note.id, text: words(&note.words) })
                .collect(),
            cautions: answer
                .cautions
                .iter()
                .map(|caution| CautionOut {
                    id: caution.id(),
                    line: words(&caution.line()),
                    more: words(&caution.more()),
                })
                .collect(),
            understood: sheet
                .echoes
                .iter()
                .map(|echo| (echo.field, words(&echo.sentence)))
                .collect(),
            working: answer
                .working
                .steps
                .iter()
                .map(|step| StepOut {
                    rule: step.rule.to_string(),
                    numbers: words(&step.put_in),
                    gives: ValueOut::of_face(
                        &step.gives,
                        face_in_working(&step.gives, bench),
                        bench,
                    ),
                })
                .collect(),
            sources: answer.working.sources.iter().map(|source| source.words()).collect(),
            assumed: BTreeMap::new(),
        }
    }
}

impl FigureOut {
    fn of(figure: &Figure, bench: &Bench) -> FigureOut {
        let value = ValueOut::of(&figure.value, bench);
        FigureOut { id: figure.id, label: figure.label, from: figure.from, value }
    }
}

impl ColumnOut {
    fn of(column: &Column) -> ColumnOut {
        ColumnOut { id: column.id, heading: column.heading }
    }
}

impl From<Length> for ExactOut {
    fn from(length: Length) -> ExactOut {
        let inches = length.to_f64();
        ExactOut {
            exact: length.to_string(),
            inches,
            millimetres: inches / Unit::Millimetre.in_inches().to_f64(),
        }
    }
}

impl LengthOut {
    fn of(length: Length, rounding: Rounding, bench: &Bench) -> LengthOut {
        let read = bench.tape.read(length, rounding).and_then(|reading| {
            Ok((show(length, bench.tape, rounding)?, (length - reading.mark)?))
        });
        match read {
            Ok((Shown { mark, lean, spoken, .. }, left_over)) => LengthOut {
                length: length.into(),
                shown: mark.to_string(),
                lean,
                left_over: left_over.into(),
                spoken,
            },
            // Too fine for the tape: the exact text stands for the reading.
            Err(_) => {
                let shown = exact_text(length);
                LengthOut {
                    length: length.into(),
                    spoken: shown.clone(),
                    shown,
                    lean: "exact",
                    left_over: Length::ZERO.into(),
                }
            }
        }
    }
}

impl ValueOut {
    /// In the units of the bench.
    fn of(value: &Value, bench: &Bench) -> ValueOut {
        ValueOut::of_face(&value.in_units_of(bench.tape), face(value, bench), bench)
    }

    fn of_face(value: &Value, face: Face, bench: &Bench) -> ValueOut {
        let shown = match face {
            Face::Line { text, .. } => text,
            Face::Measure(_) | Face::Measures(_) => String::new(),
        };
        match value {
            Value::Length(length, rounding) => {
                ValueOut::Length(LengthOut::of(*length, *rounding, bench))
            }
            Value::Lengths(lengths) => ValueOut::Lengths {
                items: lengths
                    .iter()
                    .map(|l| LengthOut::of(*l, Rounding::Nearest, bench))
                    .collect(),
            },
            Value::Count(count) => ValueOut::Count { value: *count },
            Value::Area(area) => {
                ValueOut::Area { exact_square_inches: area.in_square_inches().to_string(), shown }
            }
            Value::Exact(number, _, unit) => ValueOut::Number {
                exact: Some(number.to_string()),
                value: number.to_f64(),
                unit,
                shown,
            },
            Value::Real(number, _, unit) => {
                ValueOut::Number { exact: None, value: *number, unit, shown }
            }
            Value::Words(_) => ValueOut::Words { shown },
        }
    }
}
