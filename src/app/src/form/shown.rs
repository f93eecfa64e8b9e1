//! When a problem is shown beside its field, and what stands in the place of an answer.

use reckoner_core::measure::Tape;
use reckoner_core::sheet::{Refusal, Sheet};

use super::Form;

/// Whether a refusal is shown beside its field: half-typed is not wrong, nor is what was not begun.
#[must_use]
pub fn shows(form: &Form, refusal: &Refusal) -> bool {
    let is_being_typed = form.editing().is_some_and(|slot| slot.field == refusal.field);
    !is_being_typed && form.was_left(refusal.field)
}

/// What is shown beside other fields than the one that is typed in, in words for a voice.
#[must_use]
pub fn said_elsewhere(form: &Form, sheet: &Sheet, tape: Tape) -> String {
    if form.editing().is_none() {
        return String::new();
    }
    let shown = sheet.refusals.iter().filter(|refusal| shows(form, refusal));
    shown.map(|refusal| named(form, refusal, tape)).collect::<Vec<_>>().join(" ")
}

/// A refusal in words, after the name of its field.
#[must_use]
pub fn named(form: &Form, refusal: &Refusal, tape: Tape) -> String {
    let said = refusal.sentence.on(tape);
    let mut fields = form.calculator().fields.iter();
    match fields.find(|field| field.id == refusal.field) {
        Some(field) => format!("{}: {said}", field.label),
        None => said,
    }
}

/// What stands in the place of an answer that there is not.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Needed<'a> {
    /// The field with this label is being written.
    WaitingFor(&'static str),
    /// The first refusal.
    Refused(&'a Refusal),
    /// No refusal and no answer: a fault of ours.
    Nothing,
}

/// What stands in the place of an answer that there is not.
#[must_use]
pub fn needed<'a>(form: &Form, sheet: &'a Sheet) -> Needed<'a> {
    let Some(refusal) = sheet.refusals.first() else { return Needed::Nothing };
    let is_half_typed =
        refusal.at.is_some() && form.editing().is_some_and(|slot| slot.field == refusal.field);
    let label = || {
        let mut fields = form.calculator().fields.iter();
        fields.find(|field| field.id == refusal.field).map_or("a measure", |field| field.label)
    };
    if is_half_typed { Needed::WaitingFor(label()) } else { Needed::Refused(refusal) }
}
