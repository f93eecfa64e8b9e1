//! The shelf: every job, in the browser's own database. Each change of one is one transaction.

use std::cmp::Reverse;
use std::collections::BTreeSet;

use gloo::events::EventListener;
use js_sys::{Date, Object, Reflect};
use reckoner_core::order::{map_of, set_of, sort_by_key};
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::spawn_local;
use web_sys::BroadcastChannel;

use super::database::{self, JOBS, NOTES, Problem, Rows, Write};
use super::{alive, clock, device, notes};
use crate::job_book::book::Stored;

/// The channel on which pages tell each other which job changed.
const CHANNEL_NAME: &str = "reckoner-jobs";

/// The place of the note that says that a job was taken off, and when. It names no page: it is
/// nothing that somebody typed.
const REMOVED: &str = "removed";

/// A job in a list.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Card {
    pub(crate) key: String,
    pub(crate) title: String,
    /// When it was changed last, or taken off: milliseconds since 1970.
    pub(crate) when: u64,
}

/// A job as it is stored, unless it was taken off, and the notes about it by their keys.
pub(crate) struct Found {
    pub(crate) stored: Option<Stored>,
    /// It was taken off and can be put back.
    pub(crate) is_removed: bool,
    pub(crate) notes: Vec<(String, String)>,
}

/// What is to be written: the job, where it changed, and notes to put or to take away.
pub(crate) struct Change {
    pub(crate) stored: Option<Stored>,
    pub(crate) notes: Vec<(String, Option<String>)>,
}

fn read(value: &JsValue) -> Stored {
    let text = |name: &str| {
        Reflect::get(value, &name.into()).ok().and_then(|text| text.as_string()).unwrap_or_default()
    };
    Stored { title: text("title"), job: text("job"), history: text("history") }
}

fn written(stored: &Stored) -> JsValue {
    let object = Object::new();
    let set = |name: &str, value: JsValue| drop(Reflect::set(&object, &name.into(), &value));
    set("title", stored.title.as_str().into());
    set("job", stored.job.as_str().into());
    set("history", stored.history.as_str().into());
    set("changed", Date::now().into());
    object.into()
}

/// The key of the note that says that a job was taken off.
fn mark(key: &str) -> String {
    format!("{key}/{REMOVED}")
}

/// The writing that takes a job off: its record and its notes stay as they are.
pub(crate) fn removal(key: &str) -> (String, Option<String>) {
    (mark(key), Some(clock::now().to_string()))
}

fn found(key: &str, job: &JsValue, notes: &Rows) -> Found {
    let mark = mark(key);
    let is_removed = job.is_object() && notes.iter().any(|(key, _)| *key == mark);
    let note = |(key, value): &(String, JsValue)| Some((key.clone(), value.as_string()?));
    Found {
        stored: (job.is_object() && !is_removed).then(|| read(job)),
        is_removed,
        notes: notes.iter().filter(|(key, _)| *key != mark).filter_map(note).collect(),
    }
}

/// The jobs that are there, or those that were taken off, the last one first.
async fn all(are_removed: bool) -> Result<Vec<(u64, String, Stored)>, Problem> {
    let (jobs, notes) = database::read_all().await?;
    // Whole milliseconds: to read a float takes a table of ten kilobytes.
    let off = map_of(notes.iter().filter_map(|(key, when)| {
        let when: u64 = when.as_string()?.parse().ok()?;
        Some((key.strip_suffix(REMOVED)?.strip_suffix('/')?, when))
    }));
    let mut jobs: Vec<(u64, String, Stored)> = jobs
        .into_iter()
        .filter(|(_, value)| value.is_object())
        .filter_map(|(key, value)| {
            // A float that is no moment comes to zero.
            let changed = || Some(Reflect::get(&value, &"changed".into()).ok()?.as_f64()? as u64);
            let when = match off.get(key.as_str()) {
                Some(when) => are_removed.then_some(*when)?,
                None => (!are_removed).then(|| changed().unwrap_or(0))?,
            };
            Some((when, key, read(&value)))
        })
        .collect();
    sort_by_key(&mut jobs, |(when, _, _)| Reverse(*when));
    Ok(jobs)
}

fn cards_of(jobs: Vec<(u64, String, Stored)>) -> Vec<Card> {
    let card = |(when, key, Stored { title, .. })| Card { key, title, when };
    jobs.into_iter().map(card).collect()
}

/// Every job, the one changed last first.
pub(crate) async fn cards() -> Result<Vec<Card>, Problem> {
    Ok(cards_of(all(false).await?))
}

/// The jobs that were taken off, the last one first.
pub(crate) async fn removed() -> Result<Vec<Card>, Problem> {
    Ok(cards_of(all(true).await?))
}

/// Every job as it is stored, by its key, the one changed last first.
pub(crate) async fn jobs() -> Result<Vec<(String, Stored)>, Problem> {
    let jobs = all(false).await?;
    Ok(jobs.into_iter().map(|(_, key, stored)| (key, stored)).collect())
}

/// The jobs that have notes of pages that live no more, in the database or beside it, and were not taken off.
pub(crate) async fn left_behind() -> Result<BTreeSet<String>, Problem> {
    let living = alive::living().await;
    let keys = database::keys(NOTES).await?;
    let page = |key: &str| Some(key.rsplit_once('#')?.1.to_owned());
    let noted = keys.iter().filter(|key| notes::is_of_job(key));
    let noted = noted.filter_map(|key| Some((key.clone(), page(key)?)));
    let left = noted.chain(notes::keys_beside());
    let left = left.filter(|(_, page)| notes::is_left(page, living.as_ref()));
    let jobs = left.filter_map(|(key, _)| Some(key.split_once('/')?.0.to_owned()));
    Ok(set_of(jobs.filter(|job| !keys.contains(&mark(job)))))
}

/// A job and the notes about it.
pub(crate) async fn fetch(key: &str) -> Result<Found, Problem> {
    let (job, notes) = database::read_job(key).await?;
    Ok(found(key, &job, &notes))
}

/// Changes a job as it stands on the shelf, whoever changed it last, in one transaction.
pub(crate) async fn change<T>(
    key: &str,
    change: impl FnOnce(Found) -> (Change, T),
) -> Result<T, Problem> {
    let (is_new, made) = database::change_job(key, |job, notes| {
        let (Change { stored, notes: changed }, made) = change(found(key, job, notes));
        let note = |(key, text): (String, Option<String>)| match text {
            Some(text) => Write::Put(NOTES, key, text.into()),
            None => Write::Delete(NOTES, key),
        };
        let mut writes: Vec<Write> = changed.into_iter().map(note).collect();
        writes.extend(stored.map(|it| Write::Put(JOBS, key.to_owned(), written(&it))));
        writes.push(notes::so_far());
        (writes, (!job.is_object(), made))
    })
    .await?;
    if is_new {
        device::ask_to_keep();
    }
    tell(key);
    Ok(made)
}

/// Puts a job that is new on the shelf in this very event, where the database is open: whoever writes in it is sure that
/// there is a job to write in. What becomes of it is seen by the [`change`] that follows.
pub(crate) fn put_now(key: &str, stored: &Stored) {
    let put = Write::Put(JOBS, key.to_owned(), written(stored));
    if let Some(done) = database::write_now(vec![put]) {
        spawn_local(async move {
            if done.await.is_ok() {
                device::ask_to_keep();
            }
        });
    }
}

/// Puts a job that was taken off back, with what was typed in it. Says whether it is still there.
pub(crate) async fn put_back(key: &str) -> Result<bool, Problem> {
    change(key, |found| {
        let is_there = found.is_removed || found.stored.is_some();
        (Change { stored: None, notes: vec![(mark(key), None)] }, is_there)
    })
    .await
}

/// Deletes a job that was taken off, with the notes about it, for good. Says whether it is gone:
/// one that was put back stays.
pub(crate) async fn delete(key: &str) -> Result<bool, Problem> {
    let is_gone = database::change_job(key, |job, notes| {
        if found(key, job, notes).stored.is_some() {
            return (Vec::new(), false);
        }
        let note = |(key, _): &(String, JsValue)| Write::Delete(NOTES, key.clone());
        let mut writes: Vec<Write> = notes.iter().map(note).collect();
        writes.push(Write::Delete(JOBS, key.to_owned()));
        (writes, true)
    })
    .await?;
    tell(key);
    Ok(is_gone)
}

/// Puts jobs beside those that are there: all of them, or none.
pub(crate) async fn put_beside(jobs: &[Stored]) -> Result<(), Problem> {
    // Keys made in one moment differ by chance alone.
    let mut keys = BTreeSet::new();
    while keys.len() < jobs.len() {
        keys.insert(new_key());
    }
    let put = |(job, key): (&Stored, String)| Write::Put(JOBS, key, written(job));
    database::write(jobs.iter().zip(keys).map(put).collect()).await?;
    device::ask_to_keep();
    Ok(())
}

/// A key that no job on any device has: the time and chance.
pub(crate) fn new_key() -> String {
    let chance = js_sys::Math::random().to_string();
    let digits: String = chance.chars().skip(2).take(8).collect();
    format!("{:.0}-{digits}", Date::now())
}

thread_local! {
    /// One for the whole page: what is told on it is heard by other pages, not by this one.
    static CHANNEL: Option<BroadcastChannel> = BroadcastChannel::new(CHANNEL_NAME).ok();
}

/// Tells the other pages that a job changed, or is open on one more page.
pub(crate) fn tell(key: &str) {
    CHANNEL.with(|channel| {
        if let Some(channel) = channel {
            drop(channel.post_message(&key.into()));
        }
    });
}

/// Calls back with the key of a job when another page changed it, until the listener is dropped.
pub(crate) fn hear(call: impl Fn(String) + 'static) -> Option<EventListener> {
    CHANNEL.with(|channel| {
        Some(EventListener::new(channel.as_ref()?, "message", move |event| {
            let message =
                event.dyn_ref::<web_sys::MessageEvent>().and_then(|it| it.data().as_string());
            if let Some(key) = message {
                call(key);
            }
        }))
    })
}
