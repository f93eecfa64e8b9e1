//! The job file: JSON, described by `job.schema.json`.

use core::fmt;
use std::collections::BTreeMap;

use reckoner_core::job::{
    Item, ItemId, Job, MOST_MEASURES, MOST_OTHERS, MOST_PARTS, MOST_PIECES_OF_JOB, check_name,
};
use reckoner_core::measure::Unit;

use crate::item_v2::{ITEM, read_item, write_item};
use crate::json::{Field, Kind, U64, Writer, check, elements, member, must, unquoted};
use crate::texts::NAME;

/// Largest job as a text, in bytes: for the shelf, for files, and for what a link or codes unpack to.
///
/// The 200,000 pieces that a job may have take 6.6 MB when each is ticked and measured.
pub const MAX_FILE: usize = 8_000_000;

/// What the file says it is.
const FORMAT: &str = "sawdust-reckoner-job";

/// The version that is written. It reads all before it.
const VERSION: u64 = 2;

/// Most items of one job, of all kinds.
const MOST_ITEMS: usize = MOST_MEASURES + MOST_PARTS + MOST_OTHERS;

/// Most items of one file that are set aside. A file with more is not this app's.
pub(crate) const MOST_SET_ASIDE: usize = 100;

/// A job as stored.
const JOB: &[Field] = &[
    must("format", Kind::Word(&[FORMAT]), "What the file is."),
    must("version", Kind::Whole(1, VERSION as i128), ""),
    must("title", NAME, ""),
    must("unit", Kind::Word(&["in", "mm"]), "The unit of bare numbers."),
    must("next_id", U64, "The next id that is free; ids are never used twice."),
    must("items", Kind::List(&ITEM, MOST_ITEMS), "Every item has an id of its own."),
];

/// The JSON Schema of the job file, as a text.
#[cfg(feature = "schema")]
#[must_use]
pub fn schema() -> String {
    crate::json::schema::of("A job", JOB)
}

/// A text that is no job file, or one that cannot be opened. Nothing is changed by it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum OpenProblem {
    /// More than [`MAX_FILE`] bytes.
    TooLarge,
    /// More bytes than a file of jobs may have.
    FileTooLarge(usize),
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
            OpenProblem::FileTooLarge(most) => {
                write!(
                    f,
                    "This file is over {} MB, too large for jobs of this app.",
                    most / 1_000_000
                )
            }
            // Where it goes wrong tells something only of what begins as a job does.
            OpenProblem::NotJson(1, 0 | 1) => {
                f.write_str("This is no job file: there is no job in it.")
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
    write(job, false)
}

/// Writes a job as a file that can be read and compared: indented, as far as that can be opened.
#[must_use]
pub fn write_job_file(job: &Job) -> String {
    let indented = write(job, true);
    if indented.len() > MAX_FILE { write_job(job) } else { indented }
}

fn write(job: &Job, is_indented: bool) -> String {
    let items: Vec<(ItemId, &Item)> = job.items().collect();
    let mut w = Writer::new(is_indented);
    w.record(JOB, |out| {
        out.text(FORMAT);
        out.int(VERSION);
        out.text(&job.title);
        out.text(if job.unit.is_metric() { "mm" } else { "in" });
        out.int(job.next_id().0);
        out.list(&items, |w, (id, item)| write_item(w, Some(*id), item));
    });
    w.out
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
        let mut w = Writer::new(false);
        write_item(&mut w, None, item);
        taken(*id, &w.out).map_err(|why| NotKept::Item(item.name().to_owned(), why))?;
    }
    if write_job(job).len() > MAX_FILE { Err(NotKept::TooLarge) } else { Ok(()) }
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
    check(text).map_err(|at| not_json(text, at))?;
    let file = text.trim();
    let text_of = |name: &str| {
        let raw = member(file, name).filter(|raw| raw.starts_with('"'));
        raw.map(unquoted).unwrap_or_default()
    };
    let number_of = |name: &str| member(file, name).and_then(|raw| raw.parse::<u64>().ok());
    if text_of("format") != FORMAT {
        return Err(OpenProblem::NotAJob);
    }
    match number_of("version") {
        Some(1..=VERSION) => {}
        Some(later) if later > VERSION => return Err(OpenProblem::Later(later)),
        _ => return Err(OpenProblem::NotAJob),
    }
    let items = member(file, "items").filter(|raw| raw.starts_with('['));
    let items = items.ok_or(OpenProblem::NotAJob)?;
    let unit = if text_of("unit") == "mm" { Unit::Millimetre } else { Unit::Inch };
    let mut reading = Reading::default();
    for (number, raw) in (1..).zip(elements(items)) {
        if number > MOST_ITEMS + MOST_SET_ASIDE {
            return Err(OpenProblem::TooMany("items", MOST_ITEMS));
        }
        reading.take(number, raw)?;
    }
    reading.leave_out_lost_members();
    let next_id = number_of("next_id").unwrap_or(1);
    let job = Job::from_items(&text_of("title"), unit, reading.items, next_id);
    Ok(Opened { job, set_aside: reading.set_aside })
}

/// Where a text goes wrong, as a line and the characters of it up to there.
pub(crate) fn not_json(text: &str, at: usize) -> OpenProblem {
    let before = text.get(..at).unwrap_or(text);
    let line = before.matches('\n').count().saturating_add(1);
    let column = before.rsplit('\n').next().map_or(0, |last| last.chars().count());
    let is_there = usize::from(at < text.len());
    OpenProblem::NotJson(line, column.saturating_add(is_there))
}

/// Items taken so far.
#[derive(Default)]
struct Reading {
    items: BTreeMap<ItemId, Item>,
    set_aside: Vec<SetAside>,
    measures: usize,
    parts: usize,
    others: usize,
    pieces: usize,
}

impl Reading {
    fn take(&mut self, number: usize, raw: &str) -> Result<(), OpenProblem> {
        match self.item(raw) {
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
                if let Item::Part(part) = &item {
                    self.pieces = self.pieces.saturating_add(part.pieces.len());
                }
                if self.pieces > MOST_PIECES_OF_JOB {
                    return Err(OpenProblem::TooMany("pieces ticked off", MOST_PIECES_OF_JOB));
                }
                self.items.insert(id, item);
            }
            Err(_) if self.set_aside.len() >= MOST_SET_ASIDE => {
                return Err(OpenProblem::TooMany("damaged items", MOST_SET_ASIDE));
            }
            Err(why) => self.set_aside.push(set_aside(number, raw, why)),
        }
        Ok(())
    }

    fn item(&self, raw: &str) -> Result<(ItemId, Item), String> {
        let id = member(raw, "id").ok_or("its id is missing")?;
        // The highest ids are left free, so that the next one can always be given.
        let id = id.parse().ok().filter(|id| (1..=u64::MAX / 2).contains(id));
        let id = ItemId(id.ok_or("its id is out of range")?);
        if self.items.contains_key(&id) {
            return Err("another item has the same id".to_owned());
        }
        Ok((id, taken(id, raw)?))
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

/// An item as it is taken into a job, or why it cannot be.
fn taken(id: ItemId, raw: &str) -> Result<Item, String> {
    let item = read_item(raw).map_err(|fault| fault.to_string())?.with_visible_names(id);
    if let Item::Measure(measure) = &item {
        // Two of one name are both kept: the job says which one its formulas use.
        check_name(&measure.name, core::iter::empty()).map_err(|problem| problem.to_string())?;
    }
    Ok(item)
}

/// A piece of a file, with its name where it has one.
pub(crate) fn set_aside(number: usize, raw: &str, why: String) -> SetAside {
    let name = ["name", "title", "section"].iter().find_map(|key| member(raw, key));
    let name = name.filter(|raw| raw.starts_with('"')).map(unquoted).unwrap_or_default();
    let name = name.chars().take(60).collect();
    SetAside { number, name, why, text: raw.to_owned() }
}
