//! The shelf: every job, in the browser's own database. Each change of one is one transaction.

use gloo::events::EventListener;
use js_sys::{Date, Object, Reflect};
use wasm_bindgen::{JsCast, JsValue};
use web_sys::BroadcastChannel;

use super::database::{self, JOBS, NOTES, Problem, Rows, Write};
use super::device;
use crate::job_book::book::Stored;

/// The channel on which pages tell each other which job changed.
const CHANNEL_NAME: &str = "reckoner-jobs";

/// A job in the list.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Card {
    pub(crate) key: String,
    pub(crate) title: String,
    /// When it was changed last, for the order of the list.
    changed: f64,
}

/// A job as it is stored, and the notes about it by their keys.
pub(crate) struct Found {
    pub(crate) stored: Option<Stored>,
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

fn found(job: &JsValue, notes: &Rows) -> Found {
    let note = |(key, value): &(String, JsValue)| Some((key.clone(), value.as_string()?));
    Found {
        stored: job.is_object().then(|| read(job)),
        notes: notes.iter().filter_map(note).collect(),
    }
}

/// Every job, the one changed last first.
pub(crate) async fn cards() -> Result<Vec<Card>, Problem> {
    let card = |(key, value): (String, JsValue)| {
        let changed = Reflect::get(&value, &"changed".into()).ok()?.as_f64().unwrap_or(0.0);
        Some(Card { key, title: read(&value).title, changed })
    };
    let mut cards: Vec<Card> =
        database::read(JOBS, None).await?.into_iter().filter_map(card).collect();
    cards.sort_by(|a, b| b.changed.total_cmp(&a.changed));
    Ok(cards)
}

/// A job and the notes about it.
pub(crate) async fn fetch(key: &str) -> Result<Found, Problem> {
    let (job, notes) = database::read_job(key).await?;
    Ok(found(&job, &notes))
}

/// Changes a job as it stands on the shelf, whoever changed it last, in one transaction.
pub(crate) async fn change<T>(
    key: &str,
    change: impl FnOnce(Found) -> (Change, T),
) -> Result<T, Problem> {
    let (is_new, made) = database::change_job(key, |job, notes| {
        let (Change { stored, notes: changed }, made) = change(found(job, notes));
        let note = |(key, text): (String, Option<String>)| match text {
            Some(text) => Write::Put(NOTES, key, text.into()),
            None => Write::Delete(NOTES, key),
        };
        let mut writes: Vec<Write> = changed.into_iter().map(note).collect();
        writes.extend(stored.map(|it| Write::Put(JOBS, key.to_owned(), written(&it))));
        (writes, (!job.is_object(), made))
    })
    .await?;
    if is_new {
        device::ask_to_keep();
    }
    tell(key);
    Ok(made)
}

/// Takes a job off the shelf, with the notes about it.
pub(crate) async fn remove(key: &str) -> Result<(), Problem> {
    database::change_job(key, |_, notes| {
        let note = |(key, _): &(String, JsValue)| Write::Delete(NOTES, key.clone());
        let mut writes: Vec<Write> = notes.iter().map(note).collect();
        writes.push(Write::Delete(JOBS, key.to_owned()));
        (writes, ())
    })
    .await?;
    tell(key);
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

/// Tells the other pages that a job changed.
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
