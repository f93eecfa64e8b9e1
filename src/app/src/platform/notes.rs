//! What is typed, written down in the very event that typed it: one blind write each, on the
//! connection that is open, and beside it in the local storage until the database has taken it.
//!
//! What the database does not take is held here and written again: with the next note, when the
//! window comes to the front, and after a while. So is a text that the local storage has no room for.

mod beside;
mod state;

use std::collections::{BTreeMap, BTreeSet};
use std::rc::Rc;

use gloo::events::EventListener;
use gloo::utils::document;
use reckoner_core::order::set_of;
use wasm_bindgen::JsValue;
use wasm_bindgen_futures::spawn_local;

use super::database::{self, NOTES, Problem, Write};
use super::later::later;
use super::{alive, clock};
use beside::Beside;
pub(crate) use beside::{is_left, keys_beside, left_beside, pages_beside};
use state::{ASIDE, KEPT, STATE, State, TAKEN, Taken, Unsaved, kept_key, local, standing};
pub(super) use state::{is_of_job, named};

/// When the local storage was written last, in milliseconds. It is no entry of the user's.
const CLOCK: &str = "reckoner-clock";
/// When the recovery page cleared what was kept by name (`boot.js`), in milliseconds.
const CLEARED: &str = "reckoner-cleared";
/// How long after a page's last writing that is still asked, in milliseconds: a browser that is killed brings
/// back the local storage as it was, until that has reached the disk.
const ASKED_FOR: u64 = 3_600_000;
/// First wait before what was not taken is written again, in milliseconds, and the longest.
const FIRST_WAIT: u32 = 1_000;
const LONGEST_WAIT: u32 = 60_000;
/// How long a start waits for the database, in milliseconds: on a phone that is busy it opens late, and the local storage
/// may not have what was typed last.
const PATIENCE: u32 = 3_000;

/// Opens the database and puts right what the local storage lost when the browser was killed. It
/// waits a moment at most: what does not come in time is not waited for.
pub(crate) async fn begin() {
    database::on_open(come_back);
    database::on_lost(|problem| failed(NOTES, problem));
    let shown = EventListener::new(&document(), "visibilitychange", |_| {
        if !document().hidden() {
            write_again();
        }
    });
    // For as long as the page.
    shown.forget();
    let (sender, receiver) = super::later::first();
    let in_time = sender.clone();
    let patience = later(PATIENCE, move || sender.tell());
    spawn_local(async move {
        match database::open().await {
            Ok(()) => {
                drop(bring_in().await);
                put_right().await;
            }
            Err(problem) => {
                failed(NOTES, problem.clone());
                failed(ASIDE, problem);
            }
        }
        in_time.tell();
    });
    receiver.await;
    drop(patience);
}

/// Why notes are not in the database, if any is not.
pub(crate) fn problem() -> Option<Problem> {
    STATE.with_borrow(|state| state.problem.clone())
}

/// Why a text that is kept by name stands neither in the local storage nor in the database, if any does not.
pub(crate) fn not_kept() -> Option<Problem> {
    STATE.with_borrow(State::not_kept)
}

/// A listener that is called when [`problem`] or [`not_kept`] changes or a note that was asked for is in the database, until this is dropped.
pub(crate) struct Listening(u64);

impl Drop for Listening {
    fn drop(&mut self) {
        // What it called may hold something that goes with it, and asks for the state.
        drop(STATE.with_borrow_mut(|state| {
            (state.listeners.remove(&self.0), state.readers.remove(&self.0))
        }));
    }
}

/// Calls back when [`problem`] or [`not_kept`] changes, or a note that was asked for is in the database.
pub(crate) fn listen(call: impl Fn() + 'static) -> Listening {
    STATE.with_borrow_mut(|state| {
        state.number = state.number.saturating_add(1);
        state.listeners.insert(state.number, Rc::new(call));
        Listening(state.number)
    })
}

/// Calls back when the database that failed is there again: what could not be read may be asked for.
pub(crate) fn on_again(call: impl Fn() + 'static) -> Listening {
    STATE.with_borrow_mut(|state| {
        state.number = state.number.saturating_add(1);
        state.readers.insert(state.number, Rc::new(call));
        Listening(state.number)
    })
}

/// Something that a page shows of the database, and tries to read again until this is dropped.
pub(crate) struct Reading(String);

impl Reading {
    pub(crate) fn new() -> Reading {
        STATE.with_borrow_mut(|state| {
            state.number = state.number.saturating_add(1);
            Reading(format!("reading {}", state.number))
        })
    }

    /// It was read, or not.
    pub(crate) fn ended(&self, found: Result<(), Problem>) {
        match found {
            Ok(()) => worked(&self.0),
            Err(problem) => failed(&self.0, problem),
        }
    }

    /// Whether it could not be read.
    pub(crate) fn has_failed(&self) -> bool {
        STATE.with_borrow(|state| state.in_trouble.contains(&self.0))
    }
}

impl Drop for Reading {
    fn drop(&mut self) {
        worked(&self.0);
    }
}

/// The database did not take something, of the notes or of a job: it is tried again later.
pub(crate) fn failed(what: &str, problem: Problem) {
    STATE.with_borrow_mut(|state| state.in_trouble.insert(what.to_owned()));
    tell(Some(problem));
    STATE.with_borrow_mut(|state| {
        // A failure in between changes nothing about when it is tried again.
        if state.again.is_none() {
            state.wait = state.wait.saturating_mul(2).clamp(FIRST_WAIT, LONGEST_WAIT);
            state.again = Some(later(state.wait, || {
                let done = STATE.with_borrow_mut(|state| state.again.take());
                write_again();
                spawn_local(async move { drop(done) });
            }));
        }
    });
}

/// The database took something again.
pub(crate) fn worked(what: &str) {
    let is_all = STATE.with_borrow_mut(|state| {
        state.in_trouble.remove(what);
        state.wait = 0;
        state.in_trouble.is_empty()
    });
    if is_all {
        tell(None);
    }
}

/// Whether a note is still to be written, or on its way. The listeners are called when it no longer is.
pub(crate) fn is_unsaved(key: &str) -> bool {
    STATE.with_borrow_mut(|state| {
        let is_unsaved = state.unsaved.contains_key(key);
        state.is_awaited |= is_unsaved;
        is_unsaved
    })
}

/// The same, or it lies beside the database and is still to be brought in.
pub(crate) fn is_to_come(key: &str) -> bool {
    is_unsaved(key) || beside::lies_beside(key)
}

/// These notes have done their work, in the database: nothing of them is to be written any more.
pub(crate) fn settled<'a>(keys: impl Iterator<Item = &'a str>) {
    let mut late = Vec::new();
    for key in keys {
        let note = STATE.with_borrow_mut(|state| state.unsaved.remove(key));
        clear(key);
        // It is still on its way, so it was begun after the writing that did its work, and comes in behind it: nobody
        // would take it away again while this page lives.
        if note.is_some_and(|note| note.is_sent) {
            late.push((key.to_owned(), None));
        }
    }
    if !late.is_empty() {
        write(late);
    }
}

fn aside(key: &str, number: u64, text: Option<&str>) {
    if let Some(local) = local().filter(|_| is_of_job(key)) {
        let text = format!("{} {number} {}", alive::page(), text.unwrap_or_default());
        drop(local.set_item(&format!("{ASIDE}{key}"), &text));
    }
}

fn clear(key: &str) {
    if let Some(local) = local().filter(|_| is_of_job(key)) {
        drop(local.remove_item(&format!("{ASIDE}{key}")));
    }
}

/// Tells the listeners what is wrong, after whatever is being done now.
fn tell(problem: Option<Problem>) {
    STATE.with_borrow_mut(|state| state.problem = problem);
    tell_if_new();
}

/// Tells the listeners if what they know has changed.
fn tell_if_new() {
    let is_new = STATE.with_borrow_mut(|state| {
        let now = (state.problem.clone(), state.not_kept().is_some());
        let is_new = state.told != now;
        state.told = now;
        is_new
    });
    if is_new {
        call_all();
    }
}

/// Calls the listeners, after whatever is being done now.
fn call_all() {
    spawn_local(async { call_each(|state| &state.listeners) });
}

fn call_each(of: impl Fn(&State) -> &BTreeMap<u64, Rc<dyn Fn()>>) {
    let calls: Vec<_> = STATE.with_borrow(|state| of(state).values().cloned().collect());
    for call in calls {
        call();
    }
}

/// The database is open, or was all the time: what it has not taken is written, and what could not be read is asked for.
fn come_back() {
    send();
    let (is_all, is_behind) =
        STATE.with_borrow(|state| (state.unsaved.is_empty(), state.in_trouble.contains(ASIDE)));
    if is_all {
        worked(NOTES);
    }
    spawn_local(async move {
        if is_behind {
            drop(bring_in().await);
        }
        call_each(|state| &state.listeners);
        call_each(|state| &state.readers);
    });
}

/// Takes what lies beside from pages that live no more into the database, where it was not taken
/// already: a browser that is killed brings back the local storage as it was seconds before.
///
/// What is taken is asked and said in the transaction itself: two windows may do this at once, and what the one has
/// folded in since must not come back by the other. What finds no room is told, and tried again.
pub(crate) async fn bring_in() -> Result<(), Problem> {
    let living = alive::living().await;
    let left = beside::left(living.as_ref());
    let now = clock::now();
    let brought = database::change_job(TAKEN, |_, rows| {
        let taken = beside::taken(rows);
        let mut writes = Vec::new();
        for Beside { key, page, text, .. } in left.iter().filter(|it| it.is_new(&taken)) {
            writes.push(match text {
                Some(text) => Write::Put(NOTES, key.clone(), JsValue::from_str(text)),
                None => Write::Delete(NOTES, key.clone()),
            });
            let all = Taken { at: now, up_to: u64::MAX, without: BTreeSet::new() };
            writes.push(Write::Put(NOTES, Taken::key(page), all.written().into()));
        }
        let is_over = |taken: &Taken| now.saturating_sub(taken.at) > ASKED_FOR;
        let over =
            taken.iter().filter(|(page, taken)| is_left(page, living.as_ref()) && is_over(taken));
        writes.extend(over.map(|(page, _)| Write::Delete(NOTES, Taken::key(page))));
        (writes, ())
    })
    .await;
    match &brought {
        Ok(()) => {
            let mut was_shown = false;
            for Beside { key, page, number, .. } in &left {
                // This page may have written there since.
                if beside::of_another_page(key).is_some_and(|(by, at)| (&by, &at) == (page, number))
                {
                    clear(key);
                }
                was_shown |= STATE.with_borrow_mut(|state| state.shown.remove(key));
            }
            worked(ASIDE);
            if was_shown {
                call_all();
            }
        }
        Err(problem) => failed(ASIDE, problem.clone()),
    }
    brought
}

/// Writes notes, or takes them away, all of them in one transaction, in this very event.
pub(crate) fn write(notes: Vec<(String, Option<String>)>) {
    STATE.with_borrow_mut(|state| {
        for (key, text) in notes {
            state.number = state.number.saturating_add(1);
            let number = state.number;
            let mut over = state.unsaved.remove(&key).map(|it| it.over).unwrap_or_default();
            over.extend(beside::of_another_page(&key));
            aside(&key, number, text.as_deref());
            state.unsaved.insert(key, Unsaved { text, number, is_sent: false, over });
        }
    });
    send();
}

/// Writes what the database has not taken yet; without anything of that kind it asks whether the
/// database is there again.
fn write_again() {
    let is_well = STATE.with_borrow(|state| state.problem.is_none());
    if is_well {
        return;
    }
    let held = STATE.with_borrow(|state| state.held.clone());
    for (name, text) in held {
        lay_down(&name, &text);
    }
    tell_if_new();
    spawn_local(async {
        let was_open = database::is_open();
        match database::open().await {
            Ok(()) if was_open => come_back(),
            // Opened, it was asked to come back.
            Ok(()) => {}
            Err(problem) => failed(NOTES, problem),
        }
    });
}

/// What stands beside another writing to the database, so that no note that ends with it comes back.
pub(crate) fn so_far() -> Write {
    STATE.with_borrow(|state| state.taken(set_of(state.unsaved.values().map(|note| note.number))))
}

/// Sends what is not on its way.
fn send() {
    let (writes, sent) = STATE.with_borrow_mut(|state| {
        let mut writes = Vec::new();
        let mut sent = Vec::new();
        let on_its_way = state.unsaved.values().filter(|note| note.is_sent);
        let taken = state.taken(set_of(on_its_way.map(|note| note.number)));
        for (key, note) in state.unsaved.iter_mut().filter(|(_, note)| !note.is_sent) {
            note.is_sent = true;
            sent.push((key.clone(), note.number));
            // A browser that is killed brings the local storage back as it was before.
            writes.extend(note.over.iter().map(|writing| beside::passed_over(key, writing)));
            writes.push(match &note.text {
                Some(text) => Write::Put(NOTES, key.clone(), JsValue::from_str(text)),
                None => Write::Delete(NOTES, key.clone()),
            });
        }
        // What is kept by name does not lie beside, so nothing asks whether the database has taken it.
        if sent.iter().any(|(key, _)| is_of_job(key)) {
            writes.push(taken);
        }
        (writes, sent)
    });
    if sent.is_empty() {
        return;
    }
    match database::write_now(writes) {
        Some(written) => spawn_local(async move {
            match written.await {
                Ok(()) => {
                    taken(&sent);
                    // What was given up before goes at once: nothing else may ask for it.
                    if has_held_back() {
                        send()
                    } else {
                        worked(NOTES)
                    }
                    if STATE.with_borrow_mut(|state| core::mem::take(&mut state.is_awaited)) {
                        call_all();
                    }
                }
                Err(problem) => {
                    held_back(&sent);
                    failed(NOTES, problem);
                }
            }
        }),
        None => {
            held_back(&sent);
            // Opened, it is sent.
            spawn_local(async {
                if let Err(problem) = database::open().await {
                    failed(NOTES, problem);
                }
            });
        }
    }
}

/// Whether there is something to be sent that is not on its way.
fn has_held_back() -> bool {
    STATE.with_borrow(|state| state.unsaved.values().any(|note| !note.is_sent))
}

fn taken(sent: &[(String, u64)]) {
    for (key, number) in sent {
        let is_last = |note: &Unsaved| note.number == *number;
        let is_taken = STATE.with_borrow_mut(|state| {
            let is_taken = state.unsaved.get(key).is_some_and(is_last);
            is_taken && state.unsaved.remove(key).is_some()
        });
        if is_taken {
            clear(key);
            if let Some(name) = name_of(key) {
                take_back_the_one_before(name);
            }
        }
    }
    tell_if_new();
}

/// They are still to be sent.
fn held_back(sent: &[(String, u64)]) {
    STATE.with_borrow_mut(|state| {
        for (key, number) in sent {
            if let Some(note) = state.unsaved.get_mut(key).filter(|note| note.number == *number) {
                note.is_sent = false;
            }
        }
    });
}

/// What the database keeps of a text under a name: with the time, and under its key.
fn kept_note(name: &str, text: &str) -> (String, Option<String>) {
    (kept_key(name), Some(format!("{} {text}", clock::now())))
}

/// The name that a key of the database stands for.
fn name_of(key: &str) -> Option<&str> {
    key.strip_prefix(KEPT)?.strip_prefix('/')
}

fn is_held(name: &str) -> bool {
    STATE.with_borrow(|state| state.held.contains_key(name))
}

/// The local storage did not take a text that the database has: the one before it would be what the next start reads.
fn take_back_the_one_before(name: &str) {
    if let Some(local) = local().filter(|_| is_held(name)) {
        drop(local.remove_item(&named(name)));
    }
}

/// Writes a text into the local storage, or holds it here.
fn lay_down(name: &str, text: &str) {
    let is_down = local().is_some_and(|local| {
        let is_down = local.set_item(&named(name), text).is_ok();
        if is_down {
            drop(local.set_item(CLOCK, &clock::now().to_string()));
        }
        is_down
    });
    STATE.with_borrow_mut(|state| {
        if is_down {
            state.held.remove(name);
        } else {
            state.held.insert(name.to_owned(), text.to_owned());
        }
    });
}

/// What is kept under a name, or is to be.
pub(crate) fn kept(name: &str) -> Option<String> {
    let held = STATE.with_borrow(|state| state.held.get(name).cloned());
    held.or_else(|| local()?.get_item(&named(name)).ok().flatten())
}

/// Keeps a text under a name in the local storage, which every start reads, and in the database,
/// which a browser that is killed does not lose.
pub(crate) fn keep(name: &str, text: &str) {
    lay_down(name, text);
    write(vec![kept_note(name, text)]);
    tell_if_new();
}

/// Keeps nothing under a name any more.
pub(crate) fn let_go(name: &str) {
    if let Some(local) = local() {
        drop(local.remove_item(&named(name)));
    }
    STATE.with_borrow_mut(|state| state.held.remove(name));
    write(vec![(kept_key(name), None)]);
    tell_if_new();
}

/// Puts into the local storage what it lost: what was kept later than its last write that is there, and what it had no
/// room for. What was cleared stays away. And into the database what it has not: a page that found no room in it may be
/// gone, and a browser that is killed soon loses the local storage's text.
async fn put_right() {
    let Ok(rows) = database::read(NOTES, KEPT).await else { return };
    let at = |name: &str| -> u64 {
        let at = local().and_then(|local| local.get_item(name).ok().flatten()?.parse().ok());
        at.unwrap_or(0)
    };
    let (clock, cleared) = (at(CLOCK), at(CLEARED));
    let mut taken = BTreeMap::new();
    for (key, value) in rows {
        let note = value.as_string();
        let note = note.as_deref().and_then(|note| note.split_once(' '));
        let Some((when, text)) = note else { continue };
        let Some(name) = name_of(&key).filter(|name| !is_held(name)) else { continue };
        let when = when.parse().unwrap_or(0);
        if when > cleared && (when > clock || kept(name).is_none()) {
            lay_down(name, text);
            take_back_the_one_before(name);
        }
        taken.insert(name.to_owned(), text.to_owned());
    }
    let is_new = |name: &str, text: &str| {
        taken.get(name).is_none_or(|taken| taken != text) && !is_unsaved(&kept_key(name))
    };
    let laid_down = standing(&named("")).into_iter();
    let of_notes = |name: &str| named(name).starts_with(ASIDE);
    let new = laid_down.filter(|(name, text)| !of_notes(name) && is_new(name, text));
    write(new.map(|(name, text)| kept_note(&name, &text)).collect());
}
