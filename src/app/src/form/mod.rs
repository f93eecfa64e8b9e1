//! [`Form`]: the texts of one calculator as typed, with undo, and which field is being edited.
//!
//! The reducer is pure. What a text comes to is worked out from the core each time and is never
//! kept here.

#[cfg(target_arch = "wasm32")]
pub(crate) mod at_hand;
#[cfg(target_arch = "wasm32")]
mod rows;
mod shown;
#[cfg(test)]
mod tests;
#[cfg(target_arch = "wasm32")]
pub(crate) mod view;

pub use shown::{Needed, named, needed, said_elsewhere, shows};

use std::collections::BTreeSet;
use std::rc::Rc;

use reckoner_core::calculators::Calculator;
use reckoner_core::measure::Unit;
use reckoner_core::measure::text::{NoNames, parse};
use reckoner_core::sheet::{Bench, Entries, Field, Kind, Start};

use crate::settings::with_fields;

/// Most steps that can be undone.
const MOST_STEPS: usize = 200;

/// A place to type in: a field, or one line of a strip.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Slot {
    /// Id of the field.
    pub field: &'static str,
    /// Which line, in a strip.
    pub line: Option<usize>,
}

impl Slot {
    /// A whole field.
    #[must_use]
    pub fn of(field: &'static str) -> Slot {
        Slot { field, line: None }
    }

    /// The place as it is kept: `field`, or `field/line`.
    #[must_use]
    pub fn written(self) -> String {
        match self.line {
            Some(line) => format!("{}/{line}", self.field),
            None => self.field.to_owned(),
        }
    }

    /// Reads what [`Slot::written`] wrote; `None` for what is no field of the calculator.
    #[must_use]
    pub fn read(calculator: &Calculator, text: &str) -> Option<Slot> {
        let (name, line) = match text.split_once('/') {
            Some((name, line)) => (name, Some(line.parse().ok()?)),
            None => (text, None),
        };
        let field = calculator.fields.iter().find(|field| field.id == name)?;
        Some(Slot { field: field.id, line })
    }
}

/// What stands ready for the first key when a place is entered.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Entrance {
    /// The whole text is selected: the first key writes over it.
    Whole,
    /// The caret stands after the text: the first key goes on with it.
    End,
}

/// Who is told the texts of a form, as they were and as they are.
type Keeper = Rc<dyn Fn(&Entries, &Entries)>;

/// What else a choice changes: the texts before it, and with it.
type Along = fn(&Entries, Entries) -> Entries;

/// The state of a calculator's page.
#[derive(Clone)]
pub struct Form {
    calculator: &'static Calculator,
    entries: Entries,
    past: Vec<Entries>,
    future: Vec<Entries>,
    editing: Option<Slot>,
    /// Whether the way through the places leads only to those that are not the person's yet.
    is_gone_through: bool,
    /// The place that the last step typed in: more typing there belongs to the same step.
    typing: Option<Slot>,
    /// Fields that were begun and left: only these may show a problem.
    left: BTreeSet<&'static str>,
    /// What is told the texts whenever they change, in the event that changes them.
    keeper: Option<Keeper>,
    along: Option<Along>,
}

impl PartialEq for Form {
    fn eq(&self, other: &Form) -> bool {
        core::ptr::eq(self.calculator, other.calculator)
            && self.entries == other.entries
            && self.past == other.past
            && self.future == other.future
            && self.editing == other.editing
            && self.is_gone_through == other.is_gone_through
            && self.typing == other.typing
            && self.left == other.left
    }
}

/// What can happen to a [`Form`].
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Action {
    /// The user types: the place, and the whole text of its field from now on.
    Type(Slot, String),
    /// A choice, or a way out: field ids and their texts, in one step.
    Set(Vec<(&'static str, String)>),
    /// The user enters a place.
    Edit(Slot),
    /// The user begins to go through the sizes that are ours.
    GoThrough,
    /// The user leaves the place being edited.
    Leave,
    /// The user has left a field that is written in without being edited: the text of a list.
    Left(&'static str),
    /// The user is done with the form: what is still blank may now be told.
    Check,
    /// One step back.
    Undo,
    /// One step forward again.
    Redo,
    /// A fresh form; bare numbers are in this unit.
    StartFresh(Unit),
    /// All texts at once, in one step.
    Replace(Entries),
    /// What another window has kept of them: no step of this one, and Undo leaves it as it is.
    Follow(Entries),
}

impl Form {
    /// A form with these entries. `own` are entries to go back to with undo, when a link brought
    /// others.
    #[must_use]
    pub fn new(calculator: &'static Calculator, entries: Entries, own: Option<Entries>) -> Form {
        let past = own.into_iter().filter(|own| *own != entries).collect();
        // What was typed before was left before. In a form of the job book what is blank, and was never touched, is
        // not wrong yet.
        let was_begun = |field: &&Field| {
            let is_blank = matches!(field.start, Start::Text("") | Start::Reading);
            !calculator.slug.is_empty() || !is_blank || entries.text(field.id).is_some()
        };
        let mut left = BTreeSet::new();
        left.extend(calculator.fields.iter().filter(was_begun).map(|field| field.id));
        Form {
            calculator,
            entries,
            past,
            future: Vec::new(),
            editing: None,
            is_gone_through: false,
            typing: None,
            left,
            keeper: None,
            along: None,
        }
    }

    /// The form with somebody who is told its texts before and after an action that changes them, before
    /// anything else happens.
    #[must_use]
    pub fn kept_by(mut self, keeper: impl Fn(&Entries, &Entries) + 'static) -> Form {
        self.keeper = Some(Rc::new(keeper));
        self
    }

    /// The form with what else a choice changes, in the same step.
    #[must_use]
    pub fn bringing_along(mut self, along: Along) -> Form {
        self.along = Some(along);
        self
    }

    /// The form after an action, told to its keeper.
    #[must_use]
    pub fn kept_after(&self, action: Action) -> Form {
        let is_own = !matches!(action, Action::Follow(_));
        let form = self.after(action);
        let is_new = is_own && form.entries != self.entries;
        if let Some(keeper) = self.keeper.as_ref().filter(|_| is_new) {
            keeper(&self.entries, &form.entries);
        }
        form
    }

    /// Entries of a fresh form.
    #[must_use]
    pub fn fresh(unit: Unit) -> Entries {
        let mut entries = Entries::default();
        entries.set_unit(Some(unit));
        entries
    }

    /// Whose form it is.
    #[must_use]
    pub fn calculator(&self) -> &'static Calculator {
        self.calculator
    }

    /// The texts as typed.
    #[must_use]
    pub fn entries(&self) -> &Entries {
        &self.entries
    }

    /// The place being edited.
    #[must_use]
    pub fn editing(&self) -> Option<Slot> {
        self.editing
    }

    /// Whether the way through the places leads only to those that are not the person's yet.
    #[must_use]
    pub fn is_gone_through(&self) -> bool {
        self.is_gone_through
    }

    /// Whether there is a step to undo.
    #[must_use]
    pub fn can_undo(&self) -> bool {
        !self.past.is_empty()
    }

    /// Whether there is a step to do again.
    #[must_use]
    pub fn can_redo(&self) -> bool {
        !self.future.is_empty()
    }

    /// Whether a field was begun and left.
    #[must_use]
    pub fn was_left(&self, field: &str) -> bool {
        self.left.contains(field)
    }

    /// The text of a field as typed, or its start.
    #[must_use]
    pub fn text(&self, field: &Field, bench: &Bench) -> String {
        match self.entries.text(field.id) {
            Some(text) => text.to_owned(),
            None => field.start_text(bench, self.unit(bench)),
        }
    }

    /// The unit of bare numbers.
    #[must_use]
    pub fn unit(&self, bench: &Bench) -> Unit {
        self.entries.unit().unwrap_or(bench.tape.unit())
    }

    /// How a place is entered. An example that nobody touched and the one size of a calculator's
    /// field are written over. What is the user's own work is gone on with: words, a formula, and
    /// all that stands in the job book.
    #[must_use]
    pub fn entrance(&self, slot: Slot) -> Entrance {
        let field = self.calculator.fields.iter().find(|field| field.id == slot.field);
        let is_words = field.is_none_or(|field| matches!(field.kind, Kind::Words(_)));
        let is_own_line = slot.line.is_some() && self.entries.text(slot.field).is_some();
        if is_own_line || is_words {
            return Entrance::End;
        }
        // The forms of the job book are no calculators, and have no address of their own.
        let is_written_over = match self.entries.text(slot.field) {
            None => true,
            Some(text) => {
                !self.calculator.slug.is_empty()
                    && parse(text, &NoNames).is_ok_and(|formula| formula.is_single())
            }
        };
        if is_written_over { Entrance::Whole } else { Entrance::End }
    }

    /// What takes an example as the person's own, as it stands.
    #[must_use]
    pub fn confirming(&self, field: &Field, bench: &Bench) -> Action {
        Action::Set(vec![(field.id, self.text(field, bench))])
    }

    /// The form after an action.
    #[must_use]
    pub fn after(&self, action: Action) -> Form {
        let mut form = self.clone();
        match action {
            Action::Type(slot, text) => {
                if form.typing != Some(slot) {
                    form.step();
                }
                form.typing = Some(slot);
                form.future.clear();
                form.left.remove(slot.field);
                form.entries.set(slot.field, text);
                if slot.line.is_some() {
                    form.use_last_line(slot.field);
                }
            }
            Action::Set(texts) => {
                let mut entries = form.entries.clone();
                for (field, text) in texts {
                    entries.set(field, text);
                }
                if let Some(along) = form.along {
                    entries = along(&form.entries, entries);
                }
                form.replace(entries);
            }
            Action::Replace(entries) => form.replace(entries),
            Action::Follow(entries) => form.follow(entries),
            Action::StartFresh(unit) => form.replace(Form::fresh(unit)),
            Action::Edit(slot) => {
                if form.editing != Some(slot) {
                    form.leave();
                    form.editing = Some(slot);
                }
            }
            Action::GoThrough => form.is_gone_through = true,
            Action::Leave => {
                form.leave();
                form.is_gone_through = false;
            }
            Action::Left(field) => drop(form.left.insert(field)),
            Action::Check => {
                form.leave();
                form.left.extend(form.calculator.fields.iter().map(|field| field.id));
            }
            Action::Undo => {
                if let Some(entries) = form.past.pop() {
                    form.future.push(core::mem::replace(&mut form.entries, entries));
                    form.typing = None;
                }
            }
            Action::Redo => {
                if let Some(entries) = form.future.pop() {
                    form.past.push(core::mem::replace(&mut form.entries, entries));
                    form.typing = None;
                }
            }
        }
        form
    }

    /// Who writes in a strip wants its last line again, not the one chosen before.
    fn use_last_line(&mut self, strip: &str) {
        let mut fields = self.calculator.fields.iter();
        let line = fields.find(|field| matches!(field.kind, Kind::LineOf(id) if id == strip));
        if let Some(field) = line.filter(|field| self.entries.text(field.id).is_some()) {
            self.entries.set(field.id, "");
        }
    }

    fn replace(&mut self, entries: Entries) {
        if self.entries != entries {
            self.step();
            self.future.clear();
            self.entries = entries;
        }
        self.typing = None;
    }

    fn follow(&mut self, entries: Entries) {
        // In the steps of before a bare number is another length.
        if entries.unit() != self.entries.unit() {
            self.past.clear();
            self.future.clear();
        }
        let ids = self.calculator.fields.iter().map(|field| field.id);
        let changed: Vec<&str> =
            ids.filter(|id| entries.text(id) != self.entries.text(id)).collect();
        for step in self.past.iter_mut().chain(&mut self.future) {
            *step = with_fields(step, &changed, &entries);
        }
        self.entries = entries;
    }

    fn step(&mut self) {
        self.past.push(self.entries.clone());
        if self.past.len() > MOST_STEPS {
            self.past.remove(0);
        }
    }

    fn leave(&mut self) {
        if let Some(slot) = self.editing.take() {
            self.left.insert(slot.field);
        }
        self.typing = None;
    }
}

/// A way through the fields.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Way {
    /// To the one after.
    Next,
    /// To the one before.
    Previous,
}

/// The place after or before another in the order asked; `None` at the end.
#[must_use]
pub fn neighbour(slots: &[Slot], from: Slot, way: Way) -> Option<Slot> {
    let mut pairs = slots.iter().zip(slots.iter().skip(1));
    match way {
        Way::Next => pairs.find(|(here, _)| **here == from).map(|(_, next)| *next),
        Way::Previous => pairs.find(|(_, here)| **here == from).map(|(previous, _)| *previous),
    }
}
