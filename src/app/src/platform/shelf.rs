//! The shelf: every job, in the browser's own database. Each edit is one transaction.

use std::cell::RefCell;
use std::collections::BTreeMap;

use gloo::events::EventListener;
use idb::{
    Database, DatabaseEvent, Error, Factory, ObjectStore, ObjectStoreParams, Query, TransactionMode,
};
use js_sys::{Date, Object, Reflect};
use wasm_bindgen::{JsCast, JsValue};
use web_sys::BroadcastChannel;

use super::device;
use crate::job_book::book::{Book, Edit, Stored};

const DATABASE: &str = "reckoner";
const STORE: &str = "jobs";
/// The channel on which pages tell each other which job changed.
const CHANNEL_NAME: &str = "reckoner-jobs";

/// Why something could not be kept or fetched. `Display` is the sentence for the user.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) enum ShelfProblem {
    /// The browser gives no database, or it is full.
    NoRoom(String),
    /// The browser took none of this job: it is on this page alone.
    NotTaken,
    /// The job is not there.
    Gone,
    /// It is there and cannot be opened.
    Damaged(String),
    /// Somebody else changed the same thing.
    Conflict(String),
}

impl std::fmt::Display for ShelfProblem {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        match self {
            ShelfProblem::NoRoom(why) => write!(
                f,
                "Not kept: this browser has no room for jobs, or is in private mode ({why}). The job stays usable here. \
                 Save it as a file before you close the page."
            ),
            ShelfProblem::NotTaken => f.write_str(
                "Not kept: this browser has no room for jobs, or is in private mode. The job stays usable on this \
                 page. Save it as a file before you close the page.",
            ),
            ShelfProblem::Gone => f.write_str("This job is not on this device."),
            ShelfProblem::Damaged(why) => f.write_str(why),
            ShelfProblem::Conflict(words) => f.write_str(words),
        }
    }
}

impl From<Error> for ShelfProblem {
    fn from(error: Error) -> ShelfProblem {
        ShelfProblem::NoRoom(error.to_string())
    }
}

/// A job in the list.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Card {
    pub(crate) key: String,
    pub(crate) title: String,
    /// When it was changed last, for the order of the list.
    changed: f64,
}

async fn database() -> Result<Database, Error> {
    let mut request = Factory::new()?.open(DATABASE, Some(1))?;
    request.on_upgrade_needed(|event| {
        if let Ok(database) = event.database() {
            drop(database.create_object_store(STORE, ObjectStoreParams::new()));
        }
    });
    request.await
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

/// Every job, the one changed last first.
pub(crate) async fn cards() -> Result<Vec<Card>, ShelfProblem> {
    let database = database().await?;
    let transaction = database.transaction(&[STORE], TransactionMode::ReadOnly)?;
    let store = transaction.object_store(STORE)?;
    let keys = store.get_all_keys(None, None)?.await?;
    let values = store.get_all(None, None)?.await?;
    let mut cards: Vec<Card> = keys
        .iter()
        .zip(&values)
        .filter_map(|(key, value)| {
            let changed = Reflect::get(value, &"changed".into()).ok()?.as_f64().unwrap_or(0.0);
            Some(Card { key: key.as_string()?, title: read(value).title, changed })
        })
        .collect();
    cards.sort_by(|a, b| b.changed.total_cmp(&a.changed));
    Ok(cards)
}

async fn stored(store: &ObjectStore, key: &str) -> Result<Option<Stored>, Error> {
    let found = store.get(Query::Key(key.into()))?.await?;
    Ok(found.map(|value| read(&value)))
}

/// A job that the browser did not take, if it is one.
pub(crate) fn on_this_page(key: &str) -> Option<Book> {
    ON_THIS_PAGE.with_borrow(|books| books.get(key).cloned())
}

/// A job and the pieces of it that could not be read.
pub(crate) async fn fetch(key: &str) -> Result<(Book, usize), ShelfProblem> {
    let database = database().await?;
    let transaction = database.transaction(&[STORE], TransactionMode::ReadOnly)?;
    let found = stored(&transaction.object_store(STORE)?, key).await?;
    open(found.as_ref())
}

fn open(found: Option<&Stored>) -> Result<(Book, usize), ShelfProblem> {
    let found = found.ok_or(ShelfProblem::Gone)?;
    let (book, set_aside) =
        Book::open(found).map_err(|problem| ShelfProblem::Damaged(problem.to_string()))?;
    Ok((book, set_aside.len()))
}

/// Puts a new job on the shelf and gives its key. What the browser does not take stays on this
/// page, where it can be used and handed on; its own page says so.
pub(crate) async fn add(book: &Book) -> String {
    let key = new_key();
    match put(&key, book).await {
        Ok(()) => {
            device::ask_to_keep();
            tell(&key);
        }
        Err(_) => {
            ON_THIS_PAGE.with_borrow_mut(|books| books.insert(key.clone(), book.clone()));
        }
    }
    key
}

/// Writes a whole job, in one transaction.
pub(crate) async fn put(key: &str, book: &Book) -> Result<(), ShelfProblem> {
    let database = database().await?;
    let transaction = database.transaction(&[STORE], TransactionMode::ReadWrite)?;
    let store = transaction.object_store(STORE)?;
    store.put(&written(&book.stored()), Some(&key.into()))?.await?;
    transaction.commit()?.await?;
    Ok(())
}

/// Does an edit to the job as it stands on the shelf, whoever changed it last, in one
/// transaction; gives the job as it stands then.
pub(crate) async fn edit(key: &str, edit: &Edit) -> Result<Book, ShelfProblem> {
    if let Some(mut book) = on_this_page(key) {
        book.edit(edit).map_err(|conflict| ShelfProblem::Conflict(conflict.to_string()))?;
        ON_THIS_PAGE.with_borrow_mut(|books| books.insert(key.to_owned(), book.clone()));
        // There may be room by now.
        put(key, &book).await?;
        ON_THIS_PAGE.with_borrow_mut(|books| books.remove(key));
        return Ok(book);
    }
    let database = database().await?;
    let transaction = database.transaction(&[STORE], TransactionMode::ReadWrite)?;
    let store = transaction.object_store(STORE)?;
    let (mut book, _) = open(stored(&store, key).await?.as_ref())?;
    book.edit(edit).map_err(|conflict| ShelfProblem::Conflict(conflict.to_string()))?;
    store.put(&written(&book.stored()), Some(&key.into()))?.await?;
    transaction.commit()?.await?;
    tell(key);
    Ok(book)
}

/// Takes a job off the shelf.
pub(crate) async fn remove(key: &str) -> Result<(), ShelfProblem> {
    ON_THIS_PAGE.with_borrow_mut(|books| books.remove(key));
    let database = database().await?;
    let transaction = database.transaction(&[STORE], TransactionMode::ReadWrite)?;
    transaction.object_store(STORE)?.delete(Query::Key(key.into()))?.await?;
    transaction.commit()?.await?;
    tell(key);
    Ok(())
}

/// A key that no job on any device has: the time and chance.
fn new_key() -> String {
    let chance = js_sys::Math::random().to_string();
    let digits: String = chance.chars().skip(2).take(8).collect();
    format!("{:.0}-{digits}", Date::now())
}

thread_local! {
    /// Jobs that the browser did not take: they are here for as long as the page.
    static ON_THIS_PAGE: RefCell<BTreeMap<String, Book>> = const { RefCell::new(BTreeMap::new()) };
    /// One for the whole page: what is told on it is heard by other pages, not by this one.
    static CHANNEL: Option<BroadcastChannel> = BroadcastChannel::new(CHANNEL_NAME).ok();
}

/// Tells the other pages that a job changed.
fn tell(key: &str) {
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
