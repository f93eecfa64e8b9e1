//! What JavaScript hands in: the texts of the fields, and the user's bench.

use std::collections::BTreeMap;

use reckoner_core::calculators::Calculator;
use reckoner_core::measure::{Fineness, Length, Tape, Unit, length};
use reckoner_core::sheet::{Bench, Entries, Kind, Own, Side};
use serde::Deserialize;
use serde::de::DeserializeOwned;
use wasm_bindgen::JsValue;

/// A call that names something unknown, or hands in a value of the wrong kind.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct BadCall {
    /// The name that the trouble is with; empty for the call as a whole.
    pub field: String,
    /// What is wrong.
    pub message: String,
}

impl BadCall {
    pub(crate) fn new(field: &str, message: String) -> BadCall {
        BadCall { field: field.to_owned(), message }
    }
}

/// The fields of a calculator by id; `unit` is the unit of bare numbers, `"in"` or `"mm"`.
#[derive(Clone, Debug, Default, Deserialize)]
pub struct Given(BTreeMap<String, Written>);

/// A value as JavaScript writes it.
#[derive(Clone, Debug, Deserialize)]
#[serde(untagged)]
enum Written {
    YesNo(bool),
    Number(f64),
    Words(String),
    List(Vec<Written>),
}

impl Written {
    fn written(&self, between: &str) -> String {
        match self {
            Written::YesNo(yes) => (if *yes { "yes" } else { "no" }).to_owned(),
            Written::Number(number) => number.to_string(),
            Written::Words(text) => text.clone(),
            Written::List(items) => {
                items.iter().map(|item| item.written(between)).collect::<Vec<_>>().join(between)
            }
        }
    }
}

impl Given {
    /// The entries of a calculator.
    ///
    /// # Errors
    ///
    /// A problem beside an unknown field or unit: a misspelt name is never passed over.
    pub fn entries(&self, calculator: &Calculator) -> Result<Entries, BadCall> {
        let mut entries = Entries::default();
        for (id, text) in &self.0 {
            if id == "unit" {
                entries.set_unit(Some(unit(&text.written(""))?));
                continue;
            }
            let Some(field) = calculator.fields.iter().find(|field| field.id == id) else {
                return Err(BadCall::new(id, format!("There is no field “{id}” here.")));
            };
            let between = if matches!(field.kind, Kind::Strip) { "\n" } else { ", " };
            let text = text.written(between);
            if let Kind::Choice(choices) = field.kind
                && !choices.iter().any(|choice| choice.id == text)
            {
                let known: Vec<&str> = choices.iter().map(|choice| choice.id).collect();
                let message = format!("“{text}” is none of {}.", known.join(", "));
                return Err(BadCall::new(id, message));
            }
            entries.set(field.id, text);
        }
        Ok(entries)
    }
}

fn unit(text: &str) -> Result<Unit, BadCall> {
    match text {
        "in" => Ok(Unit::Inch),
        "mm" => Ok(Unit::Millimetre),
        _ => Err(BadCall::new("unit", format!("“{text}” is none of in, mm."))),
    }
}

/// The user's tape and saw. What is left out is as the app starts.
#[derive(Clone, Debug, Default, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct BenchIn {
    /// Bottom number of the smallest fraction of the tape: 2 to 64.
    fineness: Option<u8>,
    /// `"inches"`, `"feet"`, `"decimal"` or `"mm"`.
    tape: Option<String>,
    kerf: Option<String>,
    blade_reach: Option<String>,
    thinnest_strip: Option<String>,
    /// `"left"` or `"right"`.
    fence: Option<String>,
}

impl BenchIn {
    /// The bench.
    ///
    /// # Errors
    ///
    /// A problem beside the value that cannot be read.
    pub fn bench(&self) -> Result<Bench, BadCall> {
        let start = Bench::default();
        let fineness = match self.fineness {
            None => Fineness::Sixteenth,
            Some(below) => Fineness::from_denominator(below).ok_or_else(|| {
                BadCall::new("fineness", "This must be 2, 4, 8, 16, 32 or 64.".to_owned())
            })?,
        };
        let tape = match self.tape.as_deref() {
            None | Some("inches") => Tape::Inches(fineness),
            Some("feet") => Tape::FeetAndInches(fineness),
            Some("decimal") => Tape::DecimalInches(3),
            Some("mm") => Tape::Millimetres(1),
            Some(other) => return Err(none_of("tape", other, "inches, feet, decimal, mm")),
        };
        let fence = match self.fence.as_deref() {
            None => start.fence,
            Some("left") => Side::Left,
            Some("right") => Side::Right,
            Some(other) => return Err(none_of("fence", other, "left, right")),
        };
        Ok(Bench {
            tape,
            kerf: read("kerf", self.kerf.as_deref(), start.kerf)?,
            blade_reach: read("blade_reach", self.blade_reach.as_deref(), start.blade_reach)?,
            fence,
            thinnest_strip: read(
                "thinnest_strip",
                self.thinnest_strip.as_deref(),
                start.thinnest_strip,
            )?,
            own: Own {
                kerf: self.kerf.is_some(),
                blade_reach: self.blade_reach.is_some(),
                fence: self.fence.is_some(),
                thinnest_strip: self.thinnest_strip.is_some(),
            },
        })
    }
}

fn none_of(field: &str, text: &str, known: &str) -> BadCall {
    BadCall::new(field, format!("“{text}” is none of {known}."))
}

fn read(field: &str, text: Option<&str>, start: Length) -> Result<Length, BadCall> {
    let Some(text) = text else { return Ok(start) };
    let length = length(text).map_err(|problem| BadCall::new(field, problem.to_string()))?;
    if length.is_positive() {
        Ok(length)
    } else {
        Err(BadCall::new(field, "This must be more than zero.".to_owned()))
    }
}

/// Reads a plain object; nothing and `null` count as an empty one.
pub(crate) fn from_js<T: DeserializeOwned + Default>(value: JsValue) -> Result<T, BadCall> {
    if value.is_null() || value.is_undefined() {
        return Ok(T::default());
    }
    serde_wasm_bindgen::from_value(value).map_err(|error| BadCall::new("", error.to_string()))
}
