//! The steps of a job that can be taken back, as stored beside it, and one step on its way there.

use reckoner_core::job::{Change, History, Item, ItemId, Step};
use serde::{Deserialize, Serialize};

use crate::item_v1::ItemV1;

const VERSION: u64 = 1;

#[derive(Serialize, Deserialize)]
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

/// Writes the steps of a job.
#[must_use]
pub fn write_history(history: &History) -> String {
    let stored = HistoryV1 {
        version: VERSION,
        made: history.made().map(stored).collect(),
        undone: history.undone().iter().map(stored).collect(),
    };
    // Texts, numbers and lists of them always have a JSON form.
    serde_json::to_string(&stored).unwrap_or_default()
}

/// Reads the steps of a job. What cannot be read is no history: the job itself is not touched.
#[must_use]
pub fn read_history(text: &str) -> History {
    let read = || -> Option<History> {
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
