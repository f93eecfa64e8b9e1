//! What JavaScript hands in: the texts of the fields, and the user's bench.

use std::collections::BTreeMap;

use reckoner_core::calculators::Calculator;
use reckoner_core::measure::text::NoNames;
use reckoner_core::measure::{Fineness, Length, Tape, Unit, length};
use reckoner_core::sheet::{Ask, Bench, Entries, Field, Kind, Own, Side, Start, When};
use serde::Deserialize;
use serde::de::{DeserializeOwned, IgnoredAny};
use wasm_bindgen::JsValue;

/// A call that names something unknown, leaves out what is needed, or hands in a value of the wrong
/// kind.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct BadCall {
    /// The name that the trouble is with; empty for the call as a whole.
    pub field: String,
    /// `bad-call`, `wrong-type`, `missing` or `not-asked`.
    pub code: &'static str,
    /// What is wrong.
    pub message: String,
}

impl BadCall {
    pub(crate) fn new(field: &str, message: String) -> BadCall {
        BadCall { field: field.to_owned(), code: "bad-call", message }
    }

    fn coded(self, code: &'static str) -> BadCall {
        BadCall { code, ..self }
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
    /// `null` or `undefined`.
    Nothing(()),
    /// An object.
    Other(IgnoredAny),
}

impl Written {
    /// As it is typed in the form; `None` for what no form takes: nothing, an object, a number that
    /// is none, a list in a list.
    fn typed(&self) -> Option<String> {
        match self {
            Written::YesNo(yes) => Some((if *yes { "yes" } else { "no" }).to_owned()),
            Written::Number(number) => number.is_finite().then(|| number.to_string()),
            Written::Words(text) => Some(text.clone()),
            Written::List(_) | Written::Nothing(()) | Written::Other(_) => None,
        }
    }

    /// The text of a field of this kind.
    fn text(&self, kind: Kind) -> Option<String> {
        let between = match kind {
            Kind::Strip => "\n",
            _ => ", ",
        };
        match (kind, self) {
            (Kind::YesNo, Written::YesNo(_)) => self.typed(),
            (Kind::YesNo, Written::Words(text)) => {
                ["yes", "no"].contains(&text.as_str()).then(|| text.clone())
            }
            (_, Written::YesNo(_)) | (Kind::YesNo, _) => None,
            (Kind::Choice(_) | Kind::Words(_) | Kind::LineOf(_), Written::Number(_)) => None,
            (kind, Written::List(items)) if kind.holds_several() => items
                .iter()
                .map(Written::typed)
                .collect::<Option<Vec<String>>>()
                .map(|items| items.join(between)),
            _ => self.typed(),
        }
    }
}

/// What a field of this kind takes, for a message.
fn wanted(kind: Kind) -> &'static str {
    match kind {
        Kind::YesNo => "true or false",
        Kind::Choice(_) | Kind::Words(_) | Kind::LineOf(_) => "a text",
        kind if kind.holds_several() => "a text or a list of texts or numbers",
        _ => "a number or a text",
    }
}

/// What a call leaves to the calculator.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub(crate) struct Left {
    /// Choices and settings of the saw that the call left out, and what they are taken as.
    pub(crate) assumed: BTreeMap<&'static str, String>,
    /// Sizes that the call left out, and fields that it gave which are not asked.
    pub(crate) problems: Vec<BadCall>,
}

impl Left {
    /// Settles what the call left out. A choice or a setting of the saw has a default; what may be
    /// empty is left empty; a size is never made up.
    pub(crate) fn of(calculator: &Calculator, entries: &mut Entries, bench: &Bench) -> Left {
        let mut left = Left::default();
        let given = entries.clone();
        let unit = given.unit().unwrap_or(bench.tape.unit());
        let ask = Ask::new(calculator.fields, &given, bench, &NoNames);
        for field in calculator.fields {
            match (ask.is_asked(field), given.text(field.id).is_some()) {
                (true, false) => match settled(field) {
                    Settled::Default => {
                        left.assumed.insert(field.id, field.start_text(bench, unit));
                    }
                    Settled::Empty => entries.set(field.id, ""),
                    Settled::Needed => {
                        let message = format!("“{}” is missing: {}.", field.id, field.label);
                        left.problems.push(BadCall::new(field.id, message).coded("missing"));
                    }
                },
                (false, true) => {
                    let message = match field.when {
                        When::Chosen(choice, answers) => format!(
                            "“{}” is asked only where {choice} is {}.",
                            field.id,
                            answers.join(" or ")
                        ),
                        When::Metric(is_metric) => format!(
                            "“{}” is asked only where the tape is in {}.",
                            field.id,
                            if is_metric { "millimetres" } else { "inches" }
                        ),
                        When::Always => format!("“{}” is not asked.", field.id),
                    };
                    left.problems.push(BadCall::new(field.id, message).coded("not-asked"));
                }
                (true, true) | (false, false) => {}
            }
        }
        left
    }
}

/// What becomes of a field that a call leaves out.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Settled {
    /// It has a default: a choice, yes or no, a setting of the saw, or nothing of it.
    Default,
    /// It may be empty.
    Empty,
    /// It has to be given: its start in the form is an example.
    Needed,
}

/// What becomes of this field when a call leaves it out.
pub(crate) fn settled(field: &Field) -> Settled {
    match (field.kind, field.start) {
        (Kind::Choice(_) | Kind::YesNo, _)
        | (_, Start::Kerf | Start::BladeReach | Start::ThinnestStrip | Start::Fence)
        // Nothing of it, as the forms start with: no size is made up by that.
        | (_, Start::Text("0") | Start::Without(_)) => Settled::Default,
        (
            Kind::OptionalLength(_)
            | Kind::OptionalMoney
            | Kind::Spans
            | Kind::Prices
            | Kind::Words(_)
            | Kind::LineOf(_),
            _,
        ) => Settled::Empty,
        _ => Settled::Needed,
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
                let Written::Words(text) = text else {
                    let message = "“unit” takes a text, in or mm.".to_owned();
                    return Err(BadCall::new(id, message).coded("wrong-type"));
                };
                entries.set_unit(Some(unit(text)?));
                continue;
            }
            let Some(field) = calculator.fields.iter().find(|field| field.id == id) else {
                return Err(BadCall::new(id, format!("There is no field “{id}” here.")));
            };
            let Some(text) = text.text(field.kind) else {
                let message = format!("“{id}” takes {}.", wanted(field.kind));
                return Err(BadCall::new(id, message).coded("wrong-type"));
            };
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

/// The user's tape and saw: `tape` (`"inches"`, `"feet"`, `"decimal"`, `"mm"`, `"mm_half"` or `"mm_tenths"`), `fineness` (bottom
/// number of its smallest fraction: 2 to 64), `kerf`, `blade_reach`, `thinnest_strip`, and `fence`
/// (`"left"` or `"right"`). What is left out is as the app starts.
#[derive(Clone, Debug, Default, Deserialize)]
pub struct BenchIn(BTreeMap<String, Written>);

/// What a bench is made of.
const BENCH: [&str; 6] = ["tape", "fineness", "kerf", "blade_reach", "thinnest_strip", "fence"];

impl BenchIn {
    /// The text of a part of the bench that was handed in.
    fn text(&self, name: &str) -> Result<Option<String>, BadCall> {
        let Some(written) = self.0.get(name) else { return Ok(None) };
        match (written, written.typed()) {
            (Written::Words(_) | Written::Number(_), Some(text)) => Ok(Some(text)),
            _ => {
                let message = format!("“{name}” takes a text or a number.");
                Err(BadCall::new(name, message).coded("wrong-type"))
            }
        }
    }

    fn length(&self, name: &str, start: Length) -> Result<Length, BadCall> {
        let Some(text) = self.text(name)? else { return Ok(start) };
        let length = length(&text).map_err(|problem| BadCall::new(name, problem.to_string()))?;
        if length.is_positive() {
            Ok(length)
        } else {
            Err(BadCall::new(name, "This must be more than zero.".to_owned()))
        }
    }

    /// The bench.
    ///
    /// # Errors
    ///
    /// A problem beside the value that cannot be read.
    pub fn bench(&self) -> Result<Bench, BadCall> {
        if let Some(name) = self.0.keys().find(|name| !BENCH.contains(&name.as_str())) {
            return Err(BadCall::new(name, format!("There is no “{name}” in a bench.")));
        }
        let start = Bench::default();
        let fineness = match self.text("fineness")? {
            None => Fineness::Sixteenth,
            Some(below) => {
                below.parse().ok().and_then(Fineness::from_denominator).ok_or_else(|| {
                    BadCall::new("fineness", "This must be 2, 4, 8, 16, 32 or 64.".to_owned())
                })?
            }
        };
        let tape = match self.text("tape")?.as_deref() {
            None | Some("inches") => Tape::Inches(fineness),
            Some("feet") => Tape::FeetAndInches(fineness),
            Some("decimal") => Tape::DecimalInches(3),
            Some("mm") => Tape::Millimetres(0),
            Some("mm_half") => Tape::HalfMillimetres,
            Some("mm_tenths") => Tape::Millimetres(1),
            Some(other) => {
                let known = "inches, feet, decimal, mm, mm_half, mm_tenths";
                return Err(none_of("tape", other, known));
            }
        };
        let fence = match self.text("fence")?.as_deref() {
            None => start.fence,
            Some("left") => Side::Left,
            Some("right") => Side::Right,
            Some(other) => return Err(none_of("fence", other, "left, right")),
        };
        let own = |name: &str| self.0.contains_key(name);
        Ok(Bench {
            tape,
            kerf: self.length("kerf", start.kerf)?,
            blade_reach: self.length("blade_reach", start.blade_reach)?,
            fence,
            thinnest_strip: self.length("thinnest_strip", start.thinnest_strip)?,
            own: Own {
                kerf: own("kerf"),
                blade_reach: own("blade_reach"),
                fence: own("fence"),
                thinnest_strip: own("thinnest_strip"),
            },
        })
    }
}

fn none_of(field: &str, text: &str, known: &str) -> BadCall {
    BadCall::new(field, format!("“{text}” is none of {known}."))
}

/// Reads a plain object; nothing counts as an empty one, and `null` does not.
pub(crate) fn from_js<T: DeserializeOwned + Default>(value: JsValue) -> Result<T, BadCall> {
    if value.is_undefined() {
        return Ok(T::default());
    }
    if value.is_null() {
        let message = "This takes an object with the fields by name, not null.".to_owned();
        return Err(BadCall::new("", message).coded("wrong-type"));
    }
    serde_wasm_bindgen::from_value(value).map_err(|error| BadCall::new("", error.to_string()))
}
