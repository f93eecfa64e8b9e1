//! The steps of a job that can be taken back, as stored beside it, and one step on its way there.

use reckoner_core::job::{Change, History, Item, ItemId, Step};
use serde::{Deserialize, Serialize};

use crate::MAX_FILE;
use crate::item_v1::ItemV1;

const VERSION: u64 = 1;

/// Room for what stands round the steps.
const FRAME: usize = 100;

#[derive(Deserialize)]
struct HistoryV1 {
    version: u64,
    made: Vec<StepV1>,
    undone: Vec<StepV1>,
}

#[derive(Serialize, Deserialize)]
struct OneStepV1 {
    version: u64,
    step: StepV1,
}

#[derive(Serialize, Deserialize)]
struct StepV1 {
    label: String,
    changes: Vec<ChangeV1>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    title: Option<(String, String)>,
}

#[derive(Serialize, Deserialize)]
struct ChangeV1 {
    id: u64,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    before: Option<ItemV1>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    after: Option<ItemV1>,
}

/// Largest history as a text, in bytes: one step can hold the whole job before and after it.
pub const MAX_HISTORY: usize = 2 * MAX_FILE;

/// Writes the steps of a job, as many of the newest as find room in [`MAX_HISTORY`] bytes.
#[must_use]
pub fn write_history(history: &History) -> String {
    let mut room = MAX_HISTORY - FRAME;
    // Texts, numbers and lists of them always have a JSON form.
    let text = |step: &Step| serde_json::to_string(&stored(step)).unwrap_or_default();
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
    let read = || -> Option<History> {
        if text.len() > MAX_HISTORY {
            return None;
        }
        let stored: HistoryV1 = serde_json::from_str(text).ok()?;
        if stored.version != VERSION {
            return None;
        }
        let steps = |steps: Vec<StepV1>| steps.into_iter().map(step).collect::<Option<Vec<_>>>();
        Some(History::from_steps(steps(stored.made)?, steps(stored.undone)?))
    };
    read().unwrap_or_default()
}

/// Writes one step: an edit that is not in the job yet.
#[must_use]
pub fn write_step(step: &Step) -> String {
    serde_json::to_string(&OneStepV1 { version: VERSION, step: stored(step) }).unwrap_or_default()
}

/// Reads one step. `None` for what is none, or of another version.
#[must_use]
pub fn read_step(text: &str) -> Option<Step> {
    let stored: OneStepV1 = serde_json::from_str(text).ok()?;
    if stored.version == VERSION { step(stored.step) } else { None }
}

fn stored(step: &Step) -> StepV1 {
    let item = |item: &Option<Item>| item.as_ref().map(ItemV1::from);
    StepV1 {
        label: step.label.clone(),
        changes: step
            .changes
            .iter()
            .map(|c| ChangeV1 { id: c.id.0, before: item(&c.before), after: item(&c.after) })
            .collect(),
        title: step.title.clone(),
    }
}

fn step(stored: StepV1) -> Option<Step> {
    let item = |item: Option<ItemV1>| item.map(ItemV1::item).transpose().ok();
    let mut changes = Vec::new();
    for change in stored.changes {
        let (before, after) = (item(change.before)?, item(change.after)?);
        changes.push(Change { id: ItemId(change.id), before, after });
    }
    Some(Step { label: stored.label, changes, title: stored.title })
}
