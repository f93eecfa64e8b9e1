//! [`use_book`]: a job on the page, kept on the shelf, followed when another page changes it.
//!
//! There is one [`OnPage`] for each job that this page has opened, and it is the truth of the
//! page: an edit is worked out against it, written down as a note at once, and folded into the
//! job's record a moment later, exactly once, in one transaction with the end of its note.

mod all;
mod fetching;

use std::cell::{Cell, RefCell};
use std::collections::{BTreeMap, BTreeSet, VecDeque};
use std::rc::Rc;

use reckoner_core::attention::NotKept;
use reckoner_core::job::{Job, Reckoned, Step};
use reckoner_core::sheet::{Bench, Entries};
use wasm_bindgen_futures::spawn_local;
use yew::prelude::*;

pub(crate) use all::{cards, jobs};

use super::book::{Book, Edit, EditProblem};
use super::notes::{self, Note, Place, Typed, fold, place_of_edit};
use super::record::{Became, Record, Waiting, fold_in, put_whole};
use crate::platform::database::Problem;
use crate::platform::notes::{self as written, Listening};
use crate::platform::shelf::{self, Change};
use crate::platform::{alive, clock, storage};
use crate::settings::with_fields;

const TAKEN_OFF: &str = "This job was taken off this device.";
const NOT_HERE: &str = "This job is not on this device.";

#[derive(Default)]
struct Inner {
    key: String,
    book: RefCell<Option<Rc<Book>>>,
    /// What the user must be told about this job.
    told: RefCell<Option<String>>,
    /// The job was never on the shelf.
    is_new: Cell<bool>,
    /// What is done when it is there.
    once_there: RefCell<Option<Box<dyn FnOnce()>>>,
    record: RefCell<Record>,
    waiting: RefCell<VecDeque<Waiting>>,
    is_sending: Cell<bool>,
    /// What is typed in each form, open or left.
    forms: RefCell<BTreeMap<String, Typed>>,
    /// The forms that are open.
    open: RefCell<BTreeSet<String>>,
    /// What pages that live no more had typed and what is no part of the job yet, the latest first: the key of its note, its
    /// place, and what is typed. Every window shows it; the one in which its form is opened takes it over.
    left_behind: RefCell<Vec<(String, String, Typed)>>,
    /// The bench by which the job was fetched last.
    bench: Cell<Option<Bench>>,
    /// The job, or what somebody else changed in it, could not be read.
    is_unread: Cell<bool>,
    /// Pages whose end is waited for.
    awaited: RefCell<BTreeSet<String>>,
    number: Cell<u32>,
    revision: Cell<u32>,
    watchers: RefCell<BTreeMap<u32, UseForceUpdateHandle>>,
    listening: RefCell<Vec<Listening>>,
}

/// A job on the page.
#[derive(Clone)]
pub(crate) struct OnPage(Rc<Inner>);

impl PartialEq for OnPage {
    fn eq(&self, other: &OnPage) -> bool {
        Rc::ptr_eq(&self.0, &other.0)
    }
}

thread_local! {
    static ALL: RefCell<BTreeMap<String, OnPage>> = const { RefCell::new(BTreeMap::new()) };
}

impl OnPage {
    /// The job with this key; it may still have to be fetched.
    pub(crate) fn of(key: &str) -> OnPage {
        let known = ALL.with_borrow(|all| all.get(key).cloned());
        known.unwrap_or_else(|| {
            let on_page = OnPage(Rc::new(Inner { key: key.to_owned(), ..Inner::default() }));
            // What was not kept is tried again when there may be room.
            let again = Rc::downgrade(&on_page.0);
            let listening = written::listen(move || {
                if let Some(inner) = again.upgrade() {
                    OnPage(inner.clone()).send();
                    OnPage(inner).changed();
                }
            });
            // And so is what could not be read.
            let again = Rc::downgrade(&on_page.0);
            let reading = written::on_again(move || {
                if let Some(inner) = again.upgrade() {
                    OnPage(inner).read_again();
                }
            });
            *on_page.0.listening.borrow_mut() = vec![listening, reading];
            ALL.with_borrow_mut(|all| all.insert(key.to_owned(), on_page.clone()));
            on_page
        })
    }

    /// Begins a job that is on no shelf yet; it is put there at once. Where there is no room it stays on this page, and is
    /// tried again.
    pub(crate) fn begin(book: Book) -> OnPage {
        OnPage::begin_from(book, || ())
    }

    /// The same; `once_there` lets go of what the job came from, when it is on the shelf.
    pub(crate) fn begin_from(book: Book, once_there: impl FnOnce() + 'static) -> OnPage {
        let on_page = OnPage::of(&shelf::new_key());
        shelf::put_now(on_page.key(), &book.stored());
        *on_page.0.book.borrow_mut() = Some(Rc::new(book));
        on_page.0.is_new.set(true);
        *on_page.0.once_there.borrow_mut() = Some(Box::new(once_there));
        on_page.send();
        on_page
    }

    /// Its key.
    pub(crate) fn key(&self) -> &str {
        &self.0.key
    }

    /// The job as it stands now; `None` while it is fetched, or when it cannot be.
    pub(crate) fn book(&self) -> Option<Rc<Book>> {
        self.0.book.borrow().clone()
    }

    /// What the user must be told about this job, beside that it is [not kept](OnPage::not_kept).
    pub(crate) fn trouble(&self) -> Option<String> {
        let told = self.0.told.borrow().clone();
        told.or_else(|| match &*self.0.record.borrow() {
            _ if self.book().is_some() => None,
            Record::There => None,
            Record::Removed => Some(TAKEN_OFF.to_owned()),
            Record::Gone => Some(NOT_HERE.to_owned()),
            Record::Damaged(why) => Some(why.clone()),
        })
    }

    /// Whether the job is off the device and can be put back.
    pub(crate) fn is_removed(&self) -> bool {
        *self.0.record.borrow() == Record::Removed
    }

    /// Why the device does not keep the job that is open here; `None` where it does.
    pub(crate) fn not_kept(&self) -> Option<NotKept> {
        self.book()?;
        match &*self.0.record.borrow() {
            Record::There => written::problem().map(|why| NotKept::Refused(why.to_string())),
            Record::Removed => Some(NotKept::TakenOff),
            Record::Gone => Some(NotKept::Deleted),
            Record::Damaged(why) => Some(NotKept::Unreadable(why.clone())),
        }
    }

    /// The record is somewhere else now.
    fn stands(&self, record: Record) {
        *self.0.record.borrow_mut() = record;
        self.tell(None);
    }

    fn is_there(&self) -> bool {
        *self.0.record.borrow() == Record::There
    }

    fn tell(&self, words: Option<String>) {
        *self.0.told.borrow_mut() = words;
        self.changed();
    }

    /// Has every component that shows the job drawn anew.
    fn changed(&self) {
        let watchers: Vec<_> = self.0.watchers.borrow().values().cloned().collect();
        for watcher in watchers {
            watcher.force_update();
        }
    }

    fn next_number(&self) -> u32 {
        let number = self.0.number.get().saturating_add(1);
        self.0.number.set(number);
        number
    }

    fn key_of(&self, place: &str) -> String {
        notes::key(&self.0.key, place, &alive::page())
    }

    /// Does an edit: written down at once, on the page at once, in the record a moment later.
    pub(crate) fn edit(&self, edit: Edit) {
        self.edit_from(edit, None, Vec::new);
    }

    /// Makes the step that is worked out from the job as it stands now. Says whether it is made.
    pub(crate) fn make(&self, step: impl FnOnce(&Job) -> Option<Step>) -> bool {
        let step = self.book().and_then(|book| step(&book.job));
        step.is_some_and(|step| self.edit_from(Edit::Make(step), None, Vec::new))
    }

    /// Makes a step that takes over what is typed in the form of a place, which ends its note. Says whether it is made: of
    /// what is refused, now or in the record, the form keeps what is typed.
    pub(crate) fn make_and_end(
        &self,
        place: &str,
        step: impl FnOnce(&Job) -> Option<Step>,
    ) -> bool {
        let Some(step) = self.book().and_then(|book| step(&book.job)) else { return false };
        let from = self.form(place).map(|typed| (place.to_owned(), typed));
        self.edit_from(Edit::Make(step), from, || self.forget(place))
    }

    /// Does an edit, and in the same writing what it means for other notes. Says whether it is
    /// done: what is refused changes nothing, and is told.
    fn edit_from(
        &self,
        edit: Edit,
        from: Option<(String, Typed)>,
        notes: impl FnOnce() -> Vec<(String, Option<String>)>,
    ) -> bool {
        let Some(now) = self.book() else { return false };
        let mut book = (*now).clone();
        let forgotten = match book.edit(&edit) {
            Ok(forgotten) => forgotten.map(|problem| problem.to_string()),
            Err(problem) => {
                self.tell(Some(problem.to_string()));
                return false;
            }
        };
        let at = clock::now();
        let note = self.key_of(&place_of_edit(at, self.next_number()));
        let text = Note::Edit(edit.clone(), from.clone()).written(at);
        let mut notes = notes();
        notes.push((note.clone(), Some(text)));
        written::write(notes);
        let waiting = Waiting { edit, note, from };
        self.0.waiting.borrow_mut().push_back(waiting);
        *self.0.book.borrow_mut() = Some(Rc::new(book));
        self.see();
        self.tell(forgotten);
        self.send();
        true
    }

    /// Sends what is waiting. What finds no room waits for the next time.
    fn send(&self) {
        let has_work = self.0.is_new.get() || !self.0.waiting.borrow().is_empty();
        if !has_work || !self.is_there() || self.0.is_sending.replace(true) {
            return;
        }
        let on_page = self.clone();
        spawn_local(async move {
            let sent = on_page.send_all().await;
            on_page.0.is_sending.set(false);
            match sent {
                Ok(()) => written::worked(&on_page.0.key),
                Err(problem) => written::failed(&on_page.0.key, problem),
            }
        });
    }

    async fn send_all(&self) -> Result<(), Problem> {
        loop {
            let batch: Vec<Waiting> = self.0.waiting.borrow().iter().cloned().collect();
            let is_new = self.0.is_new.get();
            if batch.is_empty() && !is_new {
                return Ok(());
            }
            // A job that is not there is put there as it is on this page; into one that is, somebody else may have written.
            let whole = self.book().filter(|_| is_new);
            let sent = batch.len();
            let key = self.0.key.clone();
            let folded = shelf::change(&self.0.key, move |found| match whole {
                Some(book) if found.stored.is_none() => put_whole(&book, &batch, &found),
                _ => fold_in(&key, clock::now(), &batch, &found),
            })
            .await?;
            match folded {
                Ok((book, became)) => {
                    self.0.is_new.set(false);
                    let once_there = self.0.once_there.borrow_mut().take();
                    if let Some(once_there) = once_there {
                        once_there();
                    }
                    let is_all = became.len() == sent;
                    let done = self.settle_first(became.len());
                    self.take_over(book);
                    for (waiting, became) in done.into_iter().zip(became) {
                        match became {
                            Became::In => {}
                            Became::Forgotten(problem) => self.tell(Some(problem.to_string())),
                            Became::Refused(problem) => self.refused(waiting, &problem),
                        }
                    }
                    // The rest goes in once its notes are in the database.
                    if !is_all && self.is_first_to_come() {
                        return Ok(());
                    }
                }
                Err(record) => {
                    self.stands(record);
                    return Ok(());
                }
            }
        }
    }

    /// Whether the note of the first edit that waits is still to come into the database.
    fn is_first_to_come(&self) -> bool {
        let first = self.0.waiting.borrow().front().map(|waiting| waiting.note.clone());
        first.is_some_and(|note| written::is_to_come(&note))
    }

    /// The first so many edits are in the record, and wait no more.
    fn settle_first(&self, sent: usize) -> Vec<Waiting> {
        let done: Vec<Waiting> = {
            let mut waiting = self.0.waiting.borrow_mut();
            let done = sent.min(waiting.len());
            waiting.drain(..done).collect()
        };
        written::settled(done.iter().map(|waiting| waiting.note.as_str()));
        done
    }

    /// Takes over the record, with what is not in it yet.
    fn take_over(&self, mut book: Book) {
        for waiting in self.0.waiting.borrow().iter() {
            // What does not go onto it is refused when it is sent.
            drop(book.edit(&waiting.edit));
        }
        let is_new = self.0.book.borrow().as_ref().is_none_or(|now| **now != book);
        if is_new {
            *self.0.book.borrow_mut() = Some(Rc::new(book));
            self.see();
            self.changed();
        }
    }

    /// The job has changed: what is typed in the forms is so in sight of it.
    fn see(&self) {
        let forms = self.0.forms.borrow().clone();
        for (place, typed) in forms {
            let Some(now) = self.standing(&place) else { continue };
            let seen = typed.clone().in_sight_of(&now);
            if seen != typed {
                self.typed(&place, seen);
            }
        }
    }

    /// Somebody else changed the same: what was typed goes back to its form, where it is offered;
    /// what was tapped is told.
    fn refused(&self, waiting: Waiting, problem: &EditProblem) {
        let is_own = waiting.page(self.key()) == alive::page();
        let Some((place, typed)) = waiting.from else {
            return self.tell(Some(problem.to_string()));
        };
        if !is_own {
            // It is what a page that lives no more left in its form, again.
            return self.ended();
        }
        let restored = typed.put_back(self.form(&place).as_ref());
        self.typed(&place, restored);
        // What is put in by hand alone is not offered: why it is not in is told.
        if Place::read(&place).is_none() {
            self.tell(Some(problem.to_string()));
        }
        self.refill();
    }

    /// What stands in the job for the form of a place; `None` where there is no such thing.
    pub(crate) fn standing(&self, place: &str) -> Option<Entries> {
        Place::read(place)?.standing(&self.book()?.job)
    }

    /// What is typed in the form of a place.
    pub(crate) fn form(&self, place: &str) -> Option<Typed> {
        self.0.forms.borrow().get(place).cloned()
    }

    /// Writes down what is typed in the form of a place, in this very event. It draws nothing.
    pub(crate) fn typed(&self, place: &str, typed: Typed) {
        let is_first = self.form(place).is_none();
        let notes = self.note_of(place, typed);
        if !notes.is_empty() {
            written::write(notes);
            // Other pages wait for the end of this one from now on: then the note is theirs.
            if is_first {
                shelf::tell(&self.0.key);
            }
        }
    }

    /// The writing of what is typed in a form.
    fn note_of(&self, place: &str, typed: Typed) -> Vec<(String, Option<String>)> {
        if typed.is_clean() {
            return self.forget(place);
        }
        let text = Note::Typed(typed.clone()).written(clock::now());
        self.0.forms.borrow_mut().insert(place.to_owned(), typed);
        vec![(self.key_of(place), Some(text))]
    }

    /// The writing that ends the note of a form.
    fn forget(&self, place: &str) -> Vec<(String, Option<String>)> {
        let had = self.0.forms.borrow_mut().remove(place);
        had.map(|_| vec![(self.key_of(place), None)]).unwrap_or_default()
    }

    /// A form is opened, or left.
    pub(crate) fn opened(&self, place: &str, is_open: bool) {
        if is_open {
            self.0.open.borrow_mut().insert(place.to_owned());
        } else {
            self.0.open.borrow_mut().remove(place);
            self.changed();
        }
    }

    /// The forms with something typed in them that is not in the job, by place, and whether each is
    /// open: those of this page, and those that another has left behind.
    pub(crate) fn forms(&self) -> Vec<(String, Typed, bool)> {
        let open = self.0.open.borrow();
        let mut forms = self.0.forms.borrow().clone();
        for (_, place, typed) in self.0.left_behind.borrow().iter() {
            forms.entry(place.clone()).or_insert_with(|| typed.clone());
        }
        forms.into_iter().map(|(at, typed)| (at.clone(), typed, open.contains(&at))).collect()
    }

    /// How often a form was filled by something else than its fields.
    pub(crate) fn revision(&self) -> u32 {
        self.0.revision.get()
    }

    /// Fills the form of a place anew, open or left, and folds in what can be.
    pub(crate) fn settle(&self, place: &str, typed: &Typed, reckoned: &Reckoned, bench: &Bench) {
        if self.form(place).is_none() {
            self.take_left(place);
        }
        self.typed(place, typed.clone());
        self.fold(place, typed, reckoned, bench, None);
        self.refill();
    }

    fn refill(&self) {
        self.0.revision.set(self.0.revision.get().saturating_add(1));
        self.changed();
    }

    /// Folds what is typed in a form into the job; `held` is the field still being written. Gives
    /// what the form was filled with from now on.
    pub(crate) fn fold(
        &self,
        place: &str,
        typed: &Typed,
        reckoned: &Reckoned,
        bench: &Bench,
        held: Option<&str>,
    ) -> Typed {
        let (Some(book), Some(at)) = (self.book(), Place::read(place)) else {
            return typed.clone();
        };
        let folded = fold(&book.job, reckoned, bench, at, typed, held);
        if folded.done.is_empty() {
            return typed.clone();
        }
        let done: Vec<&str> = folded.done.iter().map(String::as_str).collect();
        let rest = Typed {
            filled: with_fields(&typed.filled, &done, &typed.typed),
            typed: typed.typed.clone(),
        };
        let Some(step) = folded.step else {
            self.typed(place, rest.clone());
            return rest;
        };
        let from = Typed {
            filled: typed.filled.clone(),
            typed: with_fields(&typed.filled, &done, &typed.typed),
        };
        let from = Some((place.to_owned(), from));
        let is_done = self.edit_from(Edit::Make(step), from, || self.note_of(place, rest.clone()));
        if is_done { rest } else { typed.clone() }
    }

    /// Takes the job off this device; it can be put back, with what is typed in it. One that was
    /// never there is put there first, in the same transaction.
    pub(crate) async fn remove(&self) -> Result<(), Problem> {
        let Some(book) = self.book() else { return Ok(()) };
        let batch: Vec<Waiting> = self.0.waiting.borrow().iter().cloned().collect();
        let sent = batch.len();
        let removal = shelf::removal(&self.0.key);
        let is_whole = shelf::change(&self.0.key, move |found| {
            let is_absent = found.stored.is_none() && !found.is_removed;
            let mut notes = vec![removal];
            if is_absent {
                notes.extend(batch.into_iter().map(|waiting| (waiting.note, None)));
            }
            (Change { stored: is_absent.then(|| book.stored()), notes }, is_absent)
        })
        .await?;
        if is_whole {
            self.settle_first(sent);
        }
        self.0.is_new.set(false);
        written::worked(&self.0.key);
        storage::remove(storage::NEWEST);
        self.stands(Record::Removed);
        Ok(())
    }

    /// Puts the job back, with what was done to it here since.
    pub(crate) async fn put_back(&self, bench: &Bench) {
        match put_back(&self.0.key).await {
            Ok(_) => self.fetch(bench).await,
            Err(problem) => self.tell(Some(format!("{TAKEN_OFF} It is still off: {problem}."))),
        }
    }
}

/// Puts a removed job back. Says whether it is still there.
pub(crate) async fn put_back(key: &str) -> Result<bool, Problem> {
    let is_back = shelf::put_back(key).await?;
    let on_page = ALL.with_borrow(|all| all.get(key).cloned());
    if let Some(on_page) = on_page {
        on_page.stands(if is_back { Record::There } else { Record::Gone });
        on_page.send();
    }
    Ok(is_back)
}

/// Deletes a removed job for good. Says whether it is gone: one that was put back stays.
pub(crate) async fn delete(key: &str) -> Result<bool, Problem> {
    let is_gone = shelf::delete(key).await?;
    if is_gone {
        ALL.with_borrow_mut(|all| all.remove(key));
        storage::remove(&storage::saved(key));
        storage::remove(&storage::stands(key));
    }
    Ok(is_gone)
}

/// The job with this key, drawn anew when it changes.
#[hook]
pub(crate) fn use_book(key: &str, bench: Bench) -> OnPage {
    let update = use_force_update();
    let on_page = (*use_memo(key.to_owned(), |key| OnPage::of(key))).clone();
    {
        let on_page = on_page.clone();
        use_effect_with((key.to_owned(), bench), move |(key, bench)| {
            let (key, bench) = (key.clone(), *bench);
            let watcher = on_page.next_number();
            on_page.0.watchers.borrow_mut().insert(watcher, update.clone());
            let fetching = on_page.clone();
            spawn_local(async move { fetching.fetch(&bench).await });
            let hearing = shelf::hear({
                let on_page = on_page.clone();
                move |changed| {
                    if changed == key {
                        let on_page = on_page.clone();
                        spawn_local(async move { on_page.fetch_as(false, &bench).await });
                    }
                }
            });
            move || {
                drop(hearing);
                on_page.0.watchers.borrow_mut().remove(&watcher);
            }
        });
    }
    on_page
}
