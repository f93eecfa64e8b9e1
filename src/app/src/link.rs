//! The state of a calculator as text: in the link, and kept on the device.
//!
//! `#/slug?field=text&unit=in`, written as a form is (`application/x-www-form-urlencoded`). A
//! link holds what is the sender's of all that is asked: what was typed, and what their settings
//! say, so that it means the same on another bench. Our examples are not in it, so that they are
//! examples there too. What is kept on the device holds only what was typed, so that a changed kerf
//! still flows in.

use std::fmt;

use form_urlencoded::Serializer;
use reckoner_core::calculators::Calculator;
use reckoner_core::measure::Unit;
use reckoner_core::sheet::{Bench, Entries, Field, Kind};

/// Longest query of a link, in bytes.
const MOST_QUERY: usize = 16_000;

/// Longest text of one field in a link, in characters.
pub const MOST_FIELD: usize = 4_000;

/// The name under which the unit of bare numbers stands in a link.
const UNIT: &str = "unit";

/// A link that cannot be followed. `Display` is the sentence for the user.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum LinkProblem {
    /// More text than any form holds.
    TooLong,
    /// Its characters cannot be read.
    Garbled,
    /// A field that the calculator does not ask.
    UnknownField(String),
    /// A field twice.
    Repeated(String),
    /// An answer that is none of the choices of a field.
    UnknownChoice(&'static str, String),
    /// A unit that is not `in` or `mm`.
    UnknownUnit(String),
}

impl fmt::Display for LinkProblem {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            LinkProblem::TooLong => f.write_str("The link is too long."),
            LinkProblem::Garbled => f.write_str("The link is damaged."),
            LinkProblem::UnknownField(name) => {
                write!(f, "The link names “{}”, which is not asked here.", start(name))
            }
            LinkProblem::Repeated(name) => write!(f, "The link says “{}” twice.", start(name)),
            LinkProblem::UnknownChoice(label, text) => {
                write!(f, "The link has “{}” for {label}, which is not a choice.", start(text))
            }
            LinkProblem::UnknownUnit(text) => {
                write!(f, "The link has the unit “{}”. It can be in or mm.", start(text))
            }
        }
    }
}

/// Enough of a text to know it again.
fn start(text: &str) -> String {
    text.chars().filter(|c| !c.is_control()).take(24).collect()
}

/// Every field that is asked, with its text, but for examples of ours.
#[must_use]
pub fn whole(calculator: &Calculator, entries: &Entries, bench: &Bench) -> String {
    let unit = entries.unit().unwrap_or(bench.tape.unit());
    let mut query = Serializer::new(String::new());
    for field in calculator.asked(entries, bench) {
        match entries.text(field.id) {
            Some(text) => query.append_pair(field.id, text),
            None if field.is_ours(bench) => continue,
            None => query.append_pair(field.id, &field.start_text(bench, unit)),
        };
    }
    query.append_pair(UNIT, unit.short());
    query.finish()
}

/// Only what was typed.
#[must_use]
pub fn typed(entries: &Entries) -> String {
    let mut query = Serializer::new(String::new());
    for (field, text) in entries.pairs() {
        query.append_pair(field, text);
    }
    if let Some(unit) = entries.unit() {
        query.append_pair(UNIT, unit.short());
    }
    query.finish()
}

/// Reads what [`typed`] wrote on this device, whatever form it was typed in.
#[must_use]
pub fn texts(query: &str) -> Entries {
    let mut entries = Entries::default();
    for (name, text) in form_urlencoded::parse(query.as_bytes()) {
        match text.as_ref() {
            "in" if name == UNIT => entries.set_unit(Some(Unit::Inch)),
            "mm" if name == UNIT => entries.set_unit(Some(Unit::Millimetre)),
            text => entries.set(&name, text),
        }
    }
    entries
}

/// Reads what [`typed`] wrote on this device in the form of this calculator. However long it is and whatever characters
/// stand in it, a person typed it: only what the form does not ask any more is left out.
#[must_use]
pub fn kept(calculator: &Calculator, query: &str) -> Entries {
    let all = texts(query);
    let mut kept = Entries::default();
    kept.set_unit(all.unit());
    for field in calculator.fields {
        if let Some(text) = all.text(field.id).filter(|text| fits(field, text)) {
            kept.set(field.id, text);
        }
    }
    kept
}

/// Whether a text can be the answer of a field.
fn fits(field: &Field, text: &str) -> bool {
    match field.kind {
        Kind::Choice(choices) => choices.iter().any(|choice| choice.id == text),
        Kind::YesNo => text == "yes" || text == "no",
        _ => true,
    }
}

/// Reads what [`whole`] or [`typed`] wrote, or anybody else.
///
/// # Errors
///
/// [`LinkProblem`]: the first thing that does not fit the calculator.
pub fn read(calculator: &Calculator, query: &str) -> Result<Entries, LinkProblem> {
    if query.len() > MOST_QUERY {
        return Err(LinkProblem::TooLong);
    }
    let mut entries = Entries::default();
    for (name, text) in form_urlencoded::parse(query.as_bytes()) {
        if is_garbled(&name) || is_garbled(&text) {
            return Err(LinkProblem::Garbled);
        }
        if text.chars().nth(MOST_FIELD).is_some() {
            return Err(LinkProblem::TooLong);
        }
        if name == UNIT {
            let unit = match text.as_ref() {
                "in" => Unit::Inch,
                "mm" => Unit::Millimetre,
                _ => return Err(LinkProblem::UnknownUnit(text.into_owned())),
            };
            entries.set_unit(Some(unit));
            continue;
        }
        let Some(field) = calculator.fields.iter().find(|field| field.id == name) else {
            return Err(LinkProblem::UnknownField(name.into_owned()));
        };
        if entries.text(field.id).is_some() {
            return Err(LinkProblem::Repeated(field.label.to_owned()));
        }
        if !fits(field, &text) {
            return Err(LinkProblem::UnknownChoice(field.label, text.into_owned()));
        }
        entries.set(field.id, text);
    }
    Ok(entries)
}

/// Whether bytes were lost in reading, or it holds what nobody types. Rows of a spreadsheet have tabs.
fn is_garbled(text: &str) -> bool {
    let is_typed = |c: char| !c.is_control() || matches!(c, '\n' | '\t');
    text.chars().any(|c| c == char::REPLACEMENT_CHARACTER || !is_typed(c))
}
