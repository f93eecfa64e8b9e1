//! The browser's database: one connection for the life of the page, and every answer looked at.

use std::cell::RefCell;
use std::fmt;
use std::rc::Rc;

use js_sys::{Object, Promise};
use wasm_bindgen::closure::Closure;
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::{JsFuture, spawn_local};
use web_sys::{
    DomException, Event, IdbDatabase, IdbFactory, IdbKeyRange, IdbObjectStore, IdbOpenDbRequest,
    IdbRequest, IdbTransaction, IdbTransactionMode,
};

use super::later::within;

const NAME: &str = "reckoner";
/// 1 had the jobs alone.
const VERSION: u32 = 2;

/// Jobs by their key.
pub(crate) const JOBS: &str = "jobs";
/// What is typed and not in its job yet, and what else is kept, by name.
pub(crate) const NOTES: &str = "notes";
const STORES: [&str; 2] = [JOBS, NOTES];

/// How long the page waits for the database to open, and for a transaction to end, in seconds. A browser may leave either
/// without an answer for ever.
const UNTIL_OPEN: u32 = 5;
const UNTIL_DONE: u32 = 10;

/// Why the database does not answer. `Display` is the cause, in words.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) enum Problem {
    /// There is none: it is forbidden, or this is a private window.
    Forbidden(String),
    /// It is full.
    Full,
    /// A window with an older version of the app keeps it shut.
    Blocked,
    /// A newer version of the app has taken it over from this page,
    Newer,
    /// or had done so before this page was loaded.
    NewerBefore,
    /// It has not answered for a while.
    Silent,
    /// Anything else, by the browser's name for it.
    Failed(String),
}

impl fmt::Display for Problem {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Problem::Forbidden(why) => {
                write!(f, "this browser has no room for jobs, or is in private mode ({why})")
            }
            Problem::Full => f.write_str("this browser has no room left"),
            Problem::Blocked => f.write_str(
                "another window has an older version of this app open. Close that window",
            ),
            Problem::Newer => f.write_str(
                "a newer version of this app was opened in another window. Load this page again",
            ),
            Problem::NewerBefore => f.write_str(
                "a newer version of this app was used on this device. Close all windows of the app, then open it again \
                 with a signal",
            ),
            Problem::Silent => f.write_str(
                "this browser does not answer. It is asked again; if that does not help, close the browser and open it again",
            ),
            Problem::Failed(why) => write!(f, "this browser did not take it ({why})"),
        }
    }
}

impl Problem {
    fn of(value: &JsValue) -> Problem {
        let Some(error) = value.dyn_ref::<DomException>() else {
            return Problem::Failed(format!("{value:?}"));
        };
        match error.name().as_str() {
            "QuotaExceededError" => Problem::Full,
            "VersionError" => Problem::Newer,
            // The browser's own sentence is long and for its makers: its name for it is enough to ask somebody by.
            "SecurityError" => Problem::Forbidden(error.name()),
            name => Problem::Failed(name.to_owned()),
        }
    }
}

/// Something called when the database opens.
type OnOpen = Box<dyn Fn()>;

/// Something called when it is shut and does not open again, with the reason.
type OnLost = Rc<dyn Fn(Problem)>;

#[derive(Default)]
struct State {
    database: Option<IdbDatabase>,
    /// It was open in this page.
    had_it: bool,
    /// The answer to the question that is under way.
    opening: Option<Promise>,
    /// A question is under way that another window keeps from its answer. Those after it would wait behind it.
    is_blocked: bool,
    on_open: Vec<OnOpen>,
    on_lost: Option<OnLost>,
}

thread_local! {
    static STATE: RefCell<State> = RefCell::default();
}

/// Has something done each time that the database opens, before anything else is asked of it.
pub(crate) fn on_open(call: impl Fn() + 'static) {
    STATE.with_borrow_mut(|state| state.on_open.push(Box::new(call)));
}

/// Has something done when the database is shut by somebody else and does not open again.
pub(crate) fn on_lost(call: impl Fn(Problem) + 'static) {
    STATE.with_borrow_mut(|state| state.on_lost = Some(Rc::new(call)));
}

fn lost(problem: Problem) {
    let call = STATE.with_borrow(|state| state.on_lost.clone());
    if let Some(call) = call {
        call(problem);
    }
}

/// Opens the database again, which somebody else has shut.
fn open_again() {
    STATE.with_borrow_mut(|state| state.database = None);
    spawn_local(async {
        if let Err(problem) = open().await {
            lost(problem);
        }
    });
}

/// The open database, if it is open now.
fn at_hand() -> Option<IdbDatabase> {
    STATE.with_borrow(|state| state.database.clone())
}

/// Whether it is open.
pub(crate) fn is_open() -> bool {
    at_hand().is_some()
}

/// The open database; opens it where it is not.
async fn connection() -> Result<IdbDatabase, Problem> {
    if let Some(database) = at_hand() {
        return Ok(database);
    }
    open().await?;
    at_hand().ok_or_else(|| Problem::Failed("closed".to_owned()))
}

/// Opens the database, unless it is open or being opened.
pub(crate) async fn open() -> Result<(), Problem> {
    if at_hand().is_some() {
        return Ok(());
    }
    let (under_way, is_blocked) =
        STATE.with_borrow(|state| (state.opening.clone(), state.is_blocked));
    if is_blocked {
        return Err(Problem::Blocked);
    }
    let opening = match under_way {
        Some(opening) => opening,
        None => {
            let opening = ask()?;
            STATE.with_borrow_mut(|state| state.opening = Some(opening.clone()));
            opening
        }
    };
    let answer = within(UNTIL_OPEN, JsFuture::from(opening.clone())).await;
    STATE.with_borrow_mut(|state| state.opening.take_if(|it| Object::is(it, &opening)));
    // Should it answer later, it is open after all.
    let Some(answer) = answer else { return Err(Problem::Silent) };
    let had_it = STATE.with_borrow(|state| state.had_it);
    answer.map(drop).map_err(|why| match (why.as_string().as_deref(), Problem::of(&why)) {
        (Some("blocked"), _) => Problem::Blocked,
        (_, Problem::Newer) if !had_it => Problem::NewerBefore,
        (_, other) => other,
    })
}

/// Asks the browser for the database.
fn ask() -> Result<Promise, Problem> {
    let forbidden = |why: JsValue| match Problem::of(&why) {
        Problem::Failed(why) => Problem::Forbidden(why),
        other => other,
    };
    let factory: Option<IdbFactory> = gloo::utils::window().indexed_db().map_err(forbidden)?;
    let factory = factory.ok_or_else(|| Problem::Forbidden("no database".to_owned()))?;
    let request = factory.open_with_u32(NAME, VERSION).map_err(forbidden)?;
    let upgrade = {
        let request = request.clone();
        Closure::once_into_js(move |_: JsValue| make_stores(&request))
    };
    request.set_onupgradeneeded(Some(upgrade.unchecked_ref()));
    Ok(Promise::new(&mut |resolve, reject| {
        let blocked = {
            let reject = reject.clone();
            // The page goes on without; should the other window close, it opens after all.
            Closure::once_into_js(move |_: JsValue| {
                STATE.with_borrow_mut(|state| state.is_blocked = true);
                drop(reject.call1(&JsValue::NULL, &"blocked".into()));
            })
        };
        request.set_onblocked(Some(blocked.unchecked_ref()));
        let opened = {
            let request = request.clone();
            Closure::once_into_js(move |_: JsValue| {
                STATE.with_borrow_mut(|state| state.is_blocked = false);
                if let Some(database) = result(&request) {
                    take(database);
                }
                drop(resolve.call0(&JsValue::NULL));
            })
        };
        request.set_onsuccess(Some(opened.unchecked_ref()));
        let failed = {
            let request = request.clone();
            Closure::once_into_js(move |_: JsValue| {
                STATE.with_borrow_mut(|state| state.is_blocked = false);
                let why = request.error().ok().flatten();
                drop(reject.call1(&JsValue::NULL, &why.map_or(JsValue::NULL, JsValue::from)));
            })
        };
        request.set_onerror(Some(failed.unchecked_ref()));
    }))
}

fn result(request: &IdbOpenDbRequest) -> Option<IdbDatabase> {
    request.result().ok()?.dyn_into().ok()
}

/// Makes the stores that are not there: all of a fresh database, one of an old one.
fn make_stores(request: &IdbOpenDbRequest) {
    let Some(database) = result(request) else { return };
    for store in STORES {
        if !database.object_store_names().contains(store) {
            // Without it every reading of it fails, and the page says so.
            drop(database.create_object_store(store));
        }
    }
}

/// Keeps the connection, and lets it go when a newer version or the browser wants it.
fn take(database: IdbDatabase) {
    // Asked twice, as the first answer was late, it is there twice.
    if at_hand().is_some() {
        return database.close();
    }
    let newer = {
        let database = database.clone();
        Closure::once_into_js(move |_: Event| {
            database.close();
            // What the other window does may come to nothing. If it does not, the browser says so.
            open_again();
        })
    };
    database.set_onversionchange(Some(newer.unchecked_ref()));
    let closed = Closure::once_into_js(move |_: Event| open_again());
    database.set_onclose(Some(closed.unchecked_ref()));
    STATE.with_borrow_mut(|state| {
        state.database = Some(database);
        state.had_it = true;
    });
    let calls = STATE.with_borrow_mut(|state| core::mem::take(&mut state.on_open));
    for call in &calls {
        call();
    }
    STATE.with_borrow_mut(|state| state.on_open.extend(calls));
}

/// Something to write.
pub(crate) enum Write {
    /// Puts a value under a key.
    Put(&'static str, String, JsValue),
    /// Takes away what is under a key.
    Delete(&'static str, String),
}

impl Write {
    fn store(&self) -> &'static str {
        match self {
            Write::Put(store, ..) | Write::Delete(store, _) => store,
        }
    }
}

fn transaction(
    database: &IdbDatabase,
    stores: &[&str],
    mode: IdbTransactionMode,
) -> Result<IdbTransaction, Problem> {
    let names: js_sys::Array = stores.iter().map(|name| JsValue::from_str(name)).collect();
    database.transaction_with_str_sequence_and_mode(&names, mode).map_err(|why| Problem::of(&why))
}

fn store(transaction: &IdbTransaction, name: &str) -> Result<IdbObjectStore, Problem> {
    transaction.object_store(name).map_err(|why| Problem::of(&why))
}

fn do_all(transaction: &IdbTransaction, writes: Vec<Write>) -> Result<(), Problem> {
    for write in writes {
        let asked = match write {
            Write::Put(name, key, value) => {
                store(transaction, name)?.put_with_key(&value, &key.into())
            }
            Write::Delete(name, key) => store(transaction, name)?.delete(&key.into()),
        };
        asked.map_err(|why| Problem::of(&why))?;
    }
    Ok(())
}

/// The end of a transaction: all of it is kept, or nothing.
struct Ending(JsFuture, IdbTransaction);

impl Ending {
    fn of(transaction: &IdbTransaction) -> Ending {
        let ended = Promise::new(&mut |resolve, reject| {
            transaction.set_oncomplete(Some(&resolve));
            transaction.set_onabort(Some(&reject));
        });
        Ending(JsFuture::from(ended), transaction.clone())
    }

    async fn wait(self) -> Result<(), Problem> {
        let Ending(ended, transaction) = self;
        match within(UNTIL_DONE, ended).await {
            Some(Ok(_)) => Ok(()),
            None => Err(give_up(&transaction)),
            Some(Err(_)) => Err(match transaction.error() {
                Some(error) => Problem::of(&error),
                None => Problem::Failed("aborted".to_owned()),
            }),
        }
    }
}

/// Gives up a transaction that does not end, and its connection: another one may do better. It may have been done all the
/// same: whoever tries again does nothing twice.
fn give_up(transaction: &IdbTransaction) -> Problem {
    drop(transaction.abort());
    let database = transaction.db();
    database.close();
    STATE.with_borrow_mut(|state| state.database.take_if(|it| *it == database));
    Problem::Silent
}

/// Ends a transaction now, without waiting for its requests: what is written survives a page that
/// goes away at once.
#[allow(deprecated, reason = "the bindings call it so; the standard has it")]
fn commit(transaction: &IdbTransaction) {
    // A browser without it commits by itself.
    drop(transaction.commit());
}

/// Writes at once, in one transaction, on the connection that is open. Nothing is read before
/// and nothing waited for, so that it survives a page that goes away in this very event.
///
/// `None` where the database is not open. The future tells what became of it.
pub(crate) fn write_now(
    writes: Vec<Write>,
) -> Option<impl Future<Output = Result<(), Problem>> + 'static> {
    let database = at_hand()?;
    let stores: Vec<&str> = writes.iter().map(Write::store).collect();
    let begun =
        transaction(&database, &stores, IdbTransactionMode::Readwrite).and_then(|transaction| {
            let ending = Ending::of(&transaction);
            match do_all(&transaction, writes) {
                Ok(()) => {
                    commit(&transaction);
                    Ok(ending)
                }
                Err(problem) => {
                    drop(transaction.abort());
                    Err(problem)
                }
            }
        });
    if begun.is_err() {
        look_again(&database);
    }
    Some(async move { begun?.wait().await })
}

/// A connection on which no transaction can be begun any more is closed without having said so.
fn look_again(database: &IdbDatabase) {
    if transaction(database, &[NOTES], IdbTransactionMode::Readonly).is_err() {
        open_again();
    }
}

/// What a request finds. It is listened to from now on, not only once it is waited for.
fn answer(request: IdbRequest) -> impl Future<Output = Result<JsValue, Problem>> {
    let answered = JsFuture::from(Promise::new(&mut |resolve, reject| {
        request.set_onsuccess(Some(&resolve));
        request.set_onerror(Some(&reject));
    }));
    async move {
        match within(UNTIL_DONE, answered).await {
            None => Err(match request.transaction() {
                Some(transaction) => give_up(&transaction),
                None => Problem::Silent,
            }),
            Some(Ok(_)) => request.result().map_err(|why| Problem::of(&why)),
            Some(Err(_)) => Err(match request.error() {
                Ok(Some(error)) => Problem::of(&error),
                _ => Problem::Failed("no answer".to_owned()),
            }),
        }
    }
}

/// Keys and values.
pub(crate) type Rows = Vec<(String, JsValue)>;

/// What a store holds under keys that begin with a text and a slash, or all of it.
async fn rows(store: &IdbObjectStore, within: Option<&str>) -> Result<Rows, Problem> {
    let failed = |why: JsValue| Problem::of(&why);
    let range: JsValue = match within {
        // `0` is the character after the slash.
        Some(start) => IdbKeyRange::bound(&format!("{start}/").into(), &format!("{start}0").into())
            .map_err(failed)?
            .into(),
        None => JsValue::UNDEFINED,
    };
    let keys = answer(store.get_all_keys_with_key(&range).map_err(failed)?);
    let values = answer(store.get_all_with_key(&range).map_err(failed)?);
    let (keys, values) = (js_sys::Array::from(&keys.await?), js_sys::Array::from(&values.await?));
    let row = |(key, value): (JsValue, JsValue)| Some((key.as_string()?, value));
    Ok(keys.iter().zip(values.iter()).filter_map(row).collect())
}

/// Begins a transaction on the connection; opens it where it is not open.
async fn begin(stores: &[&str], mode: IdbTransactionMode) -> Result<IdbTransaction, Problem> {
    let database = connection().await?;
    let begun = transaction(&database, stores, mode);
    if begun.is_err() {
        look_again(&database);
    }
    begun
}

/// Reads what a store holds under keys that begin with a text and a slash.
pub(crate) async fn read(name: &str, within: &str) -> Result<Rows, Problem> {
    let transaction = begin(&[name], IdbTransactionMode::Readonly).await?;
    rows(&store(&transaction, name)?, Some(within)).await
}

/// All the keys of a store.
pub(crate) async fn keys(name: &str) -> Result<Vec<String>, Problem> {
    let transaction = begin(&[name], IdbTransactionMode::Readonly).await?;
    let asked = store(&transaction, name)?.get_all_keys();
    let keys = answer(asked.map_err(|why| Problem::of(&why))?).await?;
    Ok(js_sys::Array::from(&keys).iter().filter_map(|key| key.as_string()).collect())
}

/// Reads every job and every note, of one moment.
pub(crate) async fn read_all() -> Result<(Rows, Rows), Problem> {
    let transaction = begin(&STORES, IdbTransactionMode::Readonly).await?;
    let jobs = rows(&store(&transaction, JOBS)?, None).await?;
    Ok((jobs, rows(&store(&transaction, NOTES)?, None).await?))
}

/// A job as it is stored, or `undefined`, and the notes about it.
async fn job_in(transaction: &IdbTransaction, key: &str) -> Result<(JsValue, Rows), Problem> {
    let asked = store(transaction, JOBS)?.get(&key.into());
    let found = answer(asked.map_err(|why| Problem::of(&why))?);
    let notes = rows(&store(transaction, NOTES)?, Some(key)).await?;
    Ok((found.await?, notes))
}

/// A job as it is stored, or `undefined`, and the notes about it, of one moment.
pub(crate) async fn read_job(key: &str) -> Result<(JsValue, Rows), Problem> {
    job_in(&begin(&STORES, IdbTransactionMode::Readonly).await?, key).await
}

/// Reads a job and the notes about it and writes what `change` makes of them, in one transaction.
pub(crate) async fn change_job<T>(
    key: &str,
    change: impl FnOnce(&JsValue, &Rows) -> (Vec<Write>, T),
) -> Result<T, Problem> {
    let transaction = begin(&STORES, IdbTransactionMode::Readwrite).await?;
    let ending = Ending::of(&transaction);
    let (found, notes) = job_in(&transaction, key).await?;
    let (writes, made) = change(&found, &notes);
    finish(&transaction, ending, writes).await?;
    Ok(made)
}

/// Does the last writes of a transaction and ends it.
async fn finish(
    transaction: &IdbTransaction,
    ending: Ending,
    writes: Vec<Write>,
) -> Result<(), Problem> {
    if let Err(problem) = do_all(transaction, writes) {
        drop(transaction.abort());
        return Err(problem);
    }
    commit(transaction);
    ending.wait().await
}

/// Writes into any store, all of it in one transaction.
pub(crate) async fn write(writes: Vec<Write>) -> Result<(), Problem> {
    let transaction = begin(&STORES, IdbTransactionMode::Readwrite).await?;
    let ending = Ending::of(&transaction);
    finish(&transaction, ending, writes).await
}
