//! What JavaScript gets back: plain objects, with every length exact and readable.

use std::collections::BTreeMap;

use reckoner_core::measure::text::{Shown, exact_text, show};
use reckoner_core::measure::{Length, Rounding};
use reckoner_core::sheet::{Answer, Bench, Face, Figure, Refusal, Sentence, Sheet, Value, face};
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
    notes: Vec<String>,
    cautions: Vec<CautionOut>,
    understood: BTreeMap<&'static str, String>,
    /// Ids of the fields that were not handed in and stand for an example of ours.
    assumed: Vec<&'static str>,
    working: Vec<StepOut>,
    sources: Vec<String>,
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
    columns: Vec<&'static str>,
    rows: Vec<Vec<ValueOut>>,
}

#[derive(Clone, Debug, Serialize)]
struct CautionOut {
    line: &'static str,
    more: &'static str,
}

#[derive(Clone, Debug, Serialize)]
struct StepOut {
    rule: String,
    numbers: String,
    gives: ValueOut,
}

/// A length: exact in inches, and as it stands on the tape.
#[derive(Clone, Debug, Serialize)]
struct LengthOut {
    /// Exact inches: `27/8`.
    exact: String,
    shown: String,
    lean: &'static str,
    left_over: String,
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
    /// Where in the text of the field, in bytes, when the writing is at fault.
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
    fn of(refusal: &Refusal, words: &dyn Fn(&Sentence) -> String) -> ProblemOut {
        ProblemOut {
            field: refusal.field.to_owned(),
            code: refusal.code.to_owned(),
            message: words(&refusal.sentence),
            at: refusal.at.as_ref().map(|at| (at.start, at.end)),
            way_out: refusal.way_out.as_ref().map(|way_out| WayOutOut {
                message: words(&way_out.sentence),
                set: way_out.set.iter().cloned().collect(),
            }),
        }
    }
}

impl Out {
    /// A call that cannot be made sense of is refused as a question is.
    pub(crate) fn bad_call(bad: BadCall) -> Out {
        let BadCall { field, message } = bad;
        let code = "bad-call".to_owned();
        let problem = ProblemOut { field, code, message, at: None, way_out: None };
        Out::Refused { ok: false, problems: vec![problem] }
    }

    pub(crate) fn of(sheet: &Sheet, bench: &Bench) -> Out {
        let words = |sentence: &Sentence| sentence.on(bench.tape);
        match &sheet.answer {
            Some(answer) => Out::Answered(Box::new(AnswerOut::of(answer, sheet, bench))),
            None => Out::Refused {
                ok: false,
                problems: sheet.refusals.iter().map(|r| ProblemOut::of(r, &words)).collect(),
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
                    (
                        table.id,
                        TableOut { title: table.title, columns: table.columns.to_vec(), rows },
                    )
                })
                .collect(),
            notes: answer.notes.iter().map(words).collect(),
            cautions: answer
                .cautions
                .iter()
                .map(|caution| CautionOut { line: caution.line(), more: caution.more() })
                .collect(),
            understood: sheet
                .echoes
                .iter()
                .map(|echo| (echo.field, words(&echo.sentence)))
                .collect(),
            assumed: sheet.assumed.fields().map(|field| field.id).collect(),
            working: answer
                .working
                .steps
                .iter()
                .map(|step| StepOut {
                    rule: step.rule.to_string(),
                    numbers: words(&step.put_in),
                    gives: ValueOut::of(&step.gives, bench),
                })
                .collect(),
            sources: answer.working.sources.iter().map(|source| source.words()).collect(),
        }
    }
}

impl FigureOut {
    fn of(figure: &Figure, bench: &Bench) -> FigureOut {
        let value = ValueOut::of(&figure.value, bench);
        FigureOut { id: figure.id, label: figure.label, from: figure.from, value }
    }
}

impl LengthOut {
    fn of(length: Length, rounding: Rounding, bench: &Bench) -> LengthOut {
        let exact = length.to_string();
        match show(length, bench.tape, rounding) {
            Ok(Shown { mark, lean, left_over, spoken, .. }) => {
                LengthOut { exact, shown: mark.to_string(), lean, left_over, spoken }
            }
            // Too fine for the tape: the exact text stands for the reading.
            Err(_) => {
                let shown = exact_text(length);
                LengthOut {
                    exact,
                    spoken: shown.clone(),
                    shown,
                    lean: "exact",
                    left_over: "0".to_owned(),
                }
            }
        }
    }
}

impl ValueOut {
    fn of(value: &Value, bench: &Bench) -> ValueOut {
        let shown = match face(value, bench) {
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
