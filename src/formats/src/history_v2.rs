//! The steps of a job that can be taken back, as stored beside it, and one step on its way there.

use reckoner_core::job::{Change, History, ItemId, MOST_NAME, MOST_STEPS, Step};

use crate::MAX_FILE;
use crate::item_v2::{ITEM, read_item, write_item};
use crate::json::{Fault, Faults, Field, Kind, U64, Value, Writer, check, may, must};

/// The version that is written. It reads the one before it, whose items have the same fields.
const VERSION: u64 = 2;

/// Largest history as a text, in bytes: one step can hold the whole job before and after it.
pub const MAX_HISTORY: usize = 2 * MAX_FILE;

/// Room for what stands round the steps.
const FRAME: usize = 100;

/// Most changes of one step: every item there can be, taken out and put in.
const MOST_CHANGES: usize = 10_000;

/// Longest title or label: a rename has both names in it.
const LABEL: Kind = Kind::Text(4 * MOST_NAME);

const HISTORY: &[Field] =
    &[must("version", U64, ""), must("made", STEPS, ""), must("undone", STEPS, "")];

const STEPS: Kind = Kind::List(&Kind::Record(STEP), MOST_STEPS);

const ONE_STEP: &[Field] = &[must("version", U64, ""), must("step", Kind::Record(STEP), "")];

const STEP: &[Field] = &[
    must("label", LABEL, ""),
    must("changes", Kind::List(&Kind::Record(CHANGE), MOST_CHANGES), ""),
    may("title", Kind::Row(&[LABEL, LABEL]), "Before and after."),
];

const CHANGE: &[Field] = &[must("id", U64, ""), may("before", ITEM, ""), may("after", ITEM, "")];

/// Writes the steps of a job, as many of the newest as find room in [`MAX_HISTORY`] bytes.
#[must_use]
pub fn write_history(history: &History) -> String {
    let mut room = MAX_HISTORY - FRAME;
    let text = |step: &Step| {
        let mut w = Writer::new(false);
        write(&mut w, step);
        w.out
    };
    // What was taken back last is needed first.
    let mut undone = newest(history.undone().map(text), &mut room);
    let mut made = newest(history.made().map(text), &mut room);
    made.reverse();
    undone.reverse();
    let (made, undone) = (made.join(","), undone.join(","));
    format!("{{\"version\":{VERSION},\"made\":[{made}],\"undone\":[{undone}]}}")
}

/// The newest of the texts, newest first, as far as there is room.
fn newest(texts: impl DoubleEndedIterator<Item = String>, room: &mut usize) -> Vec<String> {
    let mut taken = Vec::new();
    for text in texts.rev() {
        match room.checked_sub(text.len().saturating_add(1)) {
            Some(left) => *room = left,
            None => break,
        }
        taken.push(text);
    }
    taken
}

/// Reads the steps of a job. What cannot be read is no history: the job itself is not touched.
#[must_use]
pub fn read_history(text: &str) -> History {
    let faults = Faults::default();
    let read = || {
        if text.len() > MAX_HISTORY || check(text).is_err() {
            return None;
        }
        let mut it = Value::new(text.trim(), Kind::Record(HISTORY), "history", &faults).record();
        let version: u64 = it.int();
        let (made, undone) = (it.list(|step| read(step)), it.list(|step| read(step)));
        (1..=VERSION).contains(&version).then(|| History::from_steps(made, undone))
    };
    let history = read();
    faults.or(history).ok().flatten().unwrap_or_default()
}

/// Writes one step: an edit that is not in the job yet.
#[must_use]
pub fn write_step(step: &Step) -> String {
    let mut w = Writer::new(false);
    w.record(ONE_STEP, |out| {
        out.int(VERSION);
        out.value(Some(step), write);
    });
    w.out
}

/// Reads one step. `None` for what is none, or of a later version.
#[must_use]
pub fn read_step(text: &str) -> Option<Step> {
    if text.len() > MAX_HISTORY || check(text).is_err() {
        return None;
    }
    let faults = Faults::default();
    let mut it = Value::new(text.trim(), Kind::Record(ONE_STEP), "step", &faults).record();
    let version: u64 = it.int();
    let step = it.next().map(read);
    faults.or(step).ok().flatten().filter(|_| (1..=VERSION).contains(&version))
}

fn write(w: &mut Writer, step: &Step) {
    w.record(STEP, |out| {
        out.text(&step.label);
        out.list(&step.changes, |w, change| {
            w.record(CHANGE, |out| {
                out.int(change.id.0);
                out.value(change.before.as_ref(), |w, item| write_item(w, None, item));
                out.value(change.after.as_ref(), |w, item| write_item(w, None, item));
            });
        });
        out.value(step.title.as_ref(), |w, (before, after)| {
            w.list(&[before, after], |w, title| w.text(title));
        });
    });
}

fn read(value: Value) -> Step {
    let mut it = value.record();
    let label = it.text();
    let change = |value: Value| {
        let mut it = value.record();
        let id = ItemId(it.int());
        let mut item = || {
            let value = it.next()?;
            read_item(value.raw).map_err(|fault| value.faults.add(fault)).ok()
        };
        let change = Change { id, before: item(), after: item() };
        if change.before.is_none() && change.after.is_none() {
            // It says nothing, and takes room.
            value.faults.add(Fault::Missing("item"));
        }
        change
    };
    let changes = it.next().map(|all| all.list_of_large(change)).unwrap_or_default();
    let title = it.next().map(|title| {
        let mut row = title.row();
        (row.text(), row.text())
    });
    // Steps from before names were looked at as closely hold them as they were typed.
    Step { label, changes, title }.with_visible_names()
}
