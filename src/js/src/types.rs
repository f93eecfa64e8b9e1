//! The TypeScript types, made from the calculators' own lists of fields and results.

use reckoner_core::calculators::{self, Calculator, ResultKind, ResultSpec};
use reckoner_core::sheet::{Field, Kind, Start};

use crate::FUNCTIONS;
use crate::input::{Settled, settled};

/// What is the same for every calculator.
const COMMON: &str = "// Made from the calculators' own lists of fields and results. Do not edit.

/** A length: exact inches such as \"27/8\", and as it stands on the tape. */
export interface LengthValue { kind: \"length\"; exact: string; inches: number; millimetres: number; shown: string; lean: \"exact\" | \"heavy\" | \"light\" | \"midway\"; left_over: string; spoken: string }
export interface LengthsValue { kind: \"lengths\"; items: Omit<LengthValue, \"kind\">[] }
export interface CountValue { kind: \"count\"; value: number }
export interface AreaValue { kind: \"area\"; exact_square_inches: string; shown: string }
/** `exact` is null for a number of physics, such as an angle. */
export interface NumberValue { kind: \"number\"; exact: string | null; value: number; unit: string; shown: string }
export interface WordsValue { kind: \"words\"; shown: string }
export type Value = LengthValue | LengthsValue | CountValue | AreaValue | NumberValue | WordsValue;
export interface Table { title: string; columns: string[]; rows: Value[][] }
/** `at`: where in the text of the field, in UTF-16 units, as `String.slice` counts. `code`: `missing`, `not-asked`, `wrong-type` or `bad-call` for the call itself; else of the question. */
export interface Problem { field: string; code: string; message: string; at: [number, number] | null; way_out: { message: string; set: Record<string, string> } | null }
export interface Refused { ok: false; problems: Problem[] }
export interface Answered<Results, Tables> {
  ok: true;
  headline: { id: keyof Results; label: string; from: string; value: Value };
  results: Results; tables: Tables; notes: string[]; cautions: { line: string; more: string }[];
  understood: Record<string, string>; working: { rule: string; numbers: string; gives: Value }[]; sources: string[];
  /** Choices and settings of the saw that were left out, and what they were taken as. */
  assumed: Record<string, string>;
}
/** The tape and the saw; what is left out is as the app starts. */
export interface Bench { tape?: \"inches\" | \"feet\" | \"decimal\" | \"mm\"; fineness?: 2 | 4 | 8 | 16 | 32 | 64; kerf?: string; blade_reach?: string; thinnest_strip?: string; fence?: \"left\" | \"right\" }
/** A length or a formula: \"3 3/8\", \"45 mm\", \"59 1/2 - 2 × 3 1/4\"; a number takes `unit`. */
export type Measure = string | number;
";

/// The whole of `types.d.ts`.
#[must_use]
pub fn declarations() -> String {
    let mut out = COMMON.to_owned();
    for (function, slug) in FUNCTIONS {
        if let Some(calculator) = calculators::find(slug) {
            declare(&mut out, function, calculator);
        }
    }
    out
}

fn declare(out: &mut String, function: &str, calculator: &Calculator) {
    let name = camel(function);
    let mut line = |text: String| {
        out.push_str(&text);
        out.push('\n');
    };
    line(format!(
        "\nexport interface {name}Input {{\n  /** Unit of bare numbers. */\n  unit?: \"in\" | \"mm\";"
    ));
    for field in calculator.fields {
        line(format!("  /** {} */\n  {}?: {};", about(field), field.id, field_type(field.kind)));
    }
    line("}".to_owned());
    let (tables, results): (Vec<&ResultSpec>, Vec<&ResultSpec>) =
        calculator.results.iter().partition(|spec| spec.kind == ResultKind::Table);
    line(format!("export interface {name}Results {{"));
    for spec in results {
        line(format!("  /** {} */\n  {}?: {};", spec.label, spec.id, value_type(spec.kind)));
    }
    line(format!("}}\nexport interface {name}Tables {{"));
    for spec in tables {
        line(format!("  /** {} */\n  {}?: Table;", spec.label, spec.id));
    }
    line(format!(
        "}}\n/** {} */\nexport function {function}(input?: {name}Input, bench?: Bench): Answered<{name}Results, {name}Tables> | Refused;",
        calculator.question
    ));
}

fn about(field: &Field) -> String {
    let label = if field.hint.is_empty() {
        field.label.to_owned()
    } else {
        format!("{}: {}", field.label, field.hint)
    };
    match (settled(field), field.start) {
        (Settled::Default, Start::Text(text) | Start::Question(text) | Start::Without(text)) => {
            format!("{label}. Left out: {text}.")
        }
        (Settled::Default, _) => format!("{label}. Left out: that of the bench."),
        (Settled::Empty, _) => format!("{label}. May be left out."),
        (Settled::Needed, _) => format!("{label}. Needed where it is asked."),
    }
}

fn field_type(kind: Kind) -> String {
    match kind {
        Kind::Length(_) | Kind::OptionalLength(_) => "Measure".to_owned(),
        Kind::Lengths => "Measure | Measure[]".to_owned(),
        Kind::Spans | Kind::Sizes | Kind::Pieces | Kind::Prices => "string | string[]".to_owned(),
        Kind::Count { .. } | Kind::Number { .. } | Kind::OptionalMoney => {
            "number | string".to_owned()
        }
        Kind::YesNo => "boolean".to_owned(),
        Kind::Strip => "string | string[]".to_owned(),
        Kind::LineOf(_) | Kind::Words(_) => "string".to_owned(),
        Kind::Choice(choices) => {
            let quoted: Vec<String> =
                choices.iter().map(|choice| format!("\"{}\"", choice.id)).collect();
            quoted.join(" | ")
        }
    }
}

fn value_type(kind: ResultKind) -> &'static str {
    match kind {
        ResultKind::Length => "LengthValue",
        ResultKind::Lengths => "LengthsValue",
        ResultKind::Count => "CountValue",
        ResultKind::Area => "AreaValue",
        ResultKind::Number => "NumberValue",
        ResultKind::Words => "WordsValue",
        ResultKind::Table => "Table",
    }
}

fn camel(snake: &str) -> String {
    let mut camel = String::new();
    for word in snake.split('_') {
        let mut letters = word.chars();
        camel.extend(letters.next().map(|c| c.to_ascii_uppercase()));
        camel.push_str(letters.as_str());
    }
    camel
}
