//! The job file: JSON, described by `job.schema.json`.

use core::fmt;
use std::collections::{BTreeMap, BTreeSet};

use reckoner_core::job::{
    Item, ItemId, Job, MOST_MEASURES, MOST_NAME, MOST_NOTE, MOST_OTHERS, MOST_PARTS, check_name,
};
use reckoner_core::measure::Unit;
use reckoner_core::measure::limits::MAX_TEXT;
use serde::{Deserialize, Serialize};
use serde_json::Value;

use crate::item_v1::{ItemV1, StoredItem};

/// Largest job as a text, in bytes: for the shelf, for files, and for what a link or codes unpack to.
///
/// The 200,000 pieces that a job may have take 6.6 MB when each is ticked and measured.
pub const MAX_FILE: usize = 8_000_000;

/// What the file says it is.
const FORMAT: &str = "sawdust-reckoner-job";

/// The version that is written.
const VERSION: u64 = 1;

/// A job as stored.
#[derive(Clone, Debug, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub(crate) struct JobV1 {
    /// Always `sawdust-reckoner-job`.
    format: String,
    /// Always 1.
    version: u64,
    title: String,
    /// The unit of bare numbers.
    unit: UnitV1,
    /// The next id that is free; ids are never used twice.
    next_id: u64,
    items: Vec<StoredItem>,
}

/// The unit of bare numbers.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub(crate) enum UnitV1 {
    #[serde(rename = "in")]
    Inch,
    #[serde(rename = "mm")]
    Millimetre,
}

/// The JSON Schema of the job file.
#[cfg(feature = "schema")]
#[must_use]
pub fn schema() -> Value {
    schemars::schema_for!(JobV1).to_value()
}

/// A text that is no job file, or one that cannot be opened. Nothing is changed by it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum OpenProblem {
    /// More than [`MAX_FILE`] bytes.
    TooLarge,
    /// Not JSON: line and column.
    NotJson(usize, usize),
    /// JSON, but not a job.
    NotAJob,
    /// Written by a later version of this app.
    Later(u64),
    /// More items than a job may have.
    TooMany(&'static str, usize),
}

impl fmt::Display for OpenProblem {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            OpenProblem::TooLarge => {
                write!(f, "This file is over {} MB, too large for a job.", MAX_FILE / 1_000_000)
            }
            OpenProblem::NotJson(line, column) => {
                write!(
                    f,
                    "This is not a job file. It breaks off or goes wrong at line {line}, column {column}."
                )
            }
            OpenProblem::NotAJob => f.write_str("This is not a job file of this app."),
            OpenProblem::Later(version) => write!(
                f,
                "This job was written by a later version of the app (format {version}). Update the app, then open it."
            ),
            OpenProblem::TooMany(what, most) => write!(f, "This file has more than {most} {what}."),
        }
    }
}

impl core::error::Error for OpenProblem {}

/// A piece of a file that could not be used.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct SetAside {
    /// Which item of the file, from 1.
    pub number: usize,
    /// Its name, if it has one.
    pub name: String,
    /// Why.
    pub why: String,
    /// The piece as it stands in the file, to be kept.
    pub text: String,
}

/// A job that was opened, with what was set aside.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Opened {
    /// The job.
    pub job: Job,
    /// What could not be used. Empty for a file that is whole.
    pub set_aside: Vec<SetAside>,
}

/// Writes a job as the shelf, links and codes hold it: without a space between things.
#[must_use]
pub fn write_job(job: &Job) -> String {
    // Texts, numbers and lists of them always have a JSON form.
    serde_json::to_string(&stored(job)).unwrap_or_default()
}

/// Writes a job as a file that can be read and compared: indented, as far as that can be opened.
#[must_use]
pub fn write_job_file(job: &Job) -> String {
    let indented = serde_json::to_string_pretty(&stored(job)).unwrap_or_default();
    if indented.len() > MAX_FILE { write_job(job) } else { indented }
}

/// A job that could be written and not opened again. Nothing is to be kept of it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum NotKept {
    /// Its text would be over [`MAX_FILE`] bytes.
    TooLarge,
    /// What would be set aside, by name, and why.
    Item(String, String),
}

impl fmt::Display for NotKept {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            NotKept::TooLarge => write!(
                f,
                "Not kept: a job holds up to {} MB. Shorten notes, take out what is done, or begin another job.",
                MAX_FILE / 1_000_000
            ),
            NotKept::Item(name, why) => write!(f, "Not kept: {name}: {why}. Change that first."),
        }
    }
}

impl core::error::Error for NotKept {}

/// Whether a job can be opened again once it is written, after a step changed these items.
///
/// # Errors
///
/// [`NotKept`], with what is in the way.
pub fn check_job(job: &Job, changed: &[ItemId]) -> Result<(), NotKept> {
    for id in changed {
        let Some(item) = job.item(*id) else { continue };
        check_item(&item.into()).map_err(|why| NotKept::Item(item.name().to_owned(), why))?;
    }
    if write_job(job).len() > MAX_FILE { Err(NotKept::TooLarge) } else { Ok(()) }
}

fn stored(job: &Job) -> JobV1 {
    JobV1 {
        format: FORMAT.to_owned(),
        version: VERSION,
        title: job.title.clone(),
        unit: if job.unit.is_metric() { UnitV1::Millimetre } else { UnitV1::Inch },
        next_id: job.next_id().0,
        items: job.items().map(|(id, item)| StoredItem { id: id.0, item: item.into() }).collect(),
    }
}

/// Opens a job file of any version up to this one.
///
/// # Errors
///
/// [`OpenProblem`] for a text that is no job file. A damaged item does not refuse the file: it is
/// set aside and everything else opens.
pub fn open_job(text: &str) -> Result<Opened, OpenProblem> {
    if text.len() > MAX_FILE {
        return Err(OpenProblem::TooLarge);
    }
    let value: Value = serde_json::from_str(text)
        .map_err(|error| OpenProblem::NotJson(error.line(), error.column()))?;
    let Value::Object(mut file) = value else { return Err(OpenProblem::NotAJob) };
    if file.get("format").and_then(Value::as_str) != Some(FORMAT) {
        return Err(OpenProblem::NotAJob);
    }
    match file.get("version").and_then(Value::as_u64) {
        Some(VERSION) => {}
        Some(later) if later > VERSION => return Err(OpenProblem::Later(later)),
        _ => return Err(OpenProblem::NotAJob),
    }
    let Some(Value::Array(items)) = file.remove("items") else { return Err(OpenProblem::NotAJob) };
    let title = file.get("title").and_then(Value::as_str).unwrap_or("").trim();
    let title = if title.is_empty() { "Untitled" } else { title };
    let unit = match file.get("unit").and_then(Value::as_str) {
        Some("mm") => Unit::Millimetre,
        _ => Unit::Inch,
    };
    let next_id = file.get("next_id").and_then(Value::as_u64).unwrap_or(1);
    let mut reading = Reading::default();
    for (index, value) in items.into_iter().enumerate() {
        reading.take(index + 1, value)?;
    }
    reading.leave_out_lost_members();
    let title = title.chars().take(MOST_NAME).collect();
    let job = Job::from_items(title, unit, reading.items, next_id);
    Ok(Opened { job, set_aside: reading.set_aside })
}

/// Items taken so far.
#[derive(Default)]
struct Reading {
    items: BTreeMap<ItemId, Item>,
    names: BTreeSet<String>,
    set_aside: Vec<SetAside>,
    measures: usize,
    parts: usize,
    others: usize,
}

impl Reading {
    fn take(&mut self, number: usize, value: Value) -> Result<(), OpenProblem> {
        let text = value.to_string();
        let name = ["name", "title", "section"].iter().find_map(|key| value.get(key)?.as_str());
        let name: String = name.unwrap_or("").chars().take(60).collect();
        match self.item(value) {
            Ok((id, item)) => {
                let (count, what, most) = match &item {
                    Item::Measure(_) => (&mut self.measures, "measures", MOST_MEASURES),
                    Item::Part(_) => (&mut self.parts, "parts", MOST_PARTS),
                    _ => (&mut self.others, "other items", MOST_OTHERS),
                };
                *count += 1;
                if *count > most {
                    return Err(OpenProblem::TooMany(what, most));
                }
                if let Item::Measure(measure) = &item {
                    self.names.insert(measure.name.trim().to_owned());
                }
                self.items.insert(id, item);
            }
            Err(why) => self.set_aside.push(SetAside { number, name, why, text }),
        }
        Ok(())
    }

    fn item(&self, value: Value) -> Result<(ItemId, Item), String> {
        let stored: StoredItem =
            serde_json::from_value(value).map_err(|error| error.to_string())?;
        let id = ItemId(stored.id);
        // The highest ids are left free, so that the next one can always be given.
        if stored.id == 0 || stored.id > u64::MAX / 2 {
            return Err("its id is out of range".to_owned());
        }
        if self.items.contains_key(&id) {
            return Err("another item has the same id".to_owned());
        }
        let item = stored.item.item()?;
        check_item(&ItemV1::from(&item))?;
        if let Item::Measure(measure) = &item {
            let taken = self.names.get(measure.name.trim()).map(String::as_str);
            check_name(&measure.name, taken.into_iter()).map_err(|problem| problem.to_string())?;
        }
        Ok((id, item))
    }

    /// A group or link may name an item that was set aside: groups lose that member; a link says
    /// so at its measure.
    fn leave_out_lost_members(&mut self) {
        let known: Vec<ItemId> = self.items.keys().copied().collect();
        for item in self.items.values_mut() {
            if let Item::Match(group) = item {
                group.measures.retain(|id| known.binary_search(id).is_ok());
            }
        }
    }
}

/// What an item must keep to, beside its form, to be taken into a job.
fn check_item(item: &ItemV1) -> Result<(), String> {
    check_texts(&stored_texts(item))
}

/// Every text of an item with its limit.
fn stored_texts(item: &ItemV1) -> Vec<(String, usize)> {
    let value = serde_json::to_value(item).unwrap_or_default();
    let mut texts = Vec::new();
    collect_texts(&value, "", &mut texts);
    texts
}

fn collect_texts(value: &Value, key: &str, texts: &mut Vec<(String, usize)>) {
    match value {
        Value::String(text) => {
            let most = match key {
                "note" => MOST_NOTE,
                "name" | "title" => MOST_NAME,
                // A strip in a kept reckoning has many lines.
                "entries" => 20 * MAX_TEXT,
                _ => MAX_TEXT,
            };
            texts.push((text.clone(), most));
        }
        Value::Array(items) => items.iter().for_each(|item| collect_texts(item, key, texts)),
        Value::Object(map) => map.iter().for_each(|(key, item)| collect_texts(item, key, texts)),
        Value::Null | Value::Bool(_) | Value::Number(_) => {}
    }
}

fn check_texts(texts: &[(String, usize)]) -> Result<(), String> {
    for (text, most) in texts {
        if text.chars().count() > *most {
            return Err(format!("a text in it is longer than {most} characters"));
        }
    }
    Ok(())
}
