//! [`use_book`]: a job on the page, kept on the shelf, followed when another page changes it.
//!
//! There is one [`OnPage`] for each job that this page has opened, and it is the truth of the
//! page: an edit is worked out against it, written down as a note at once, and folded into the
//! job's record a moment later, exactly once, in one transaction with the end of its note.

use std::cell::{Cell, RefCell};
use std::collections::{BTreeMap, BTreeSet, VecDeque};
use std::rc::Rc;

use reckoner_core::job::{Job, Reckoned, Step};
use reckoner_core::sheet::Bench;
use wasm_bindgen_futures::spawn_local;
use yew::prelude::*;

use super::book::{Book, Edit, EditProblem};
use super::notes::{
    self, Note, Place, Typed, fold, is_edit, place_of_edit, with_fields, written_at,
};
use crate::platform::database::Problem;
use crate::platform::later::{first, later};
use crate::platform::notes::{self as written, Listening};
use crate::platform::shelf::{self, Change, Found};
use crate::platform::{alive, clock, storage};

/// How long a page that is opened waits for one that is just closing, in milliseconds.
const CLOSING: u32 = 250;
/// After how long a note is taken over where the browser cannot tell who lives, in milliseconds.
const UNTOLD: u64 = 10_000;

const TAKEN_OFF: &str = "This job was taken off this device.";
/// Said after that, where it is still on the page.
const GOES_IN: &str =
    "It stays usable on this page, and what you change goes in when you put it back.";
const DELETED: &str = "This job was deleted in another window. It stays usable on this page. \
     Save it as a file before you close the page.";
const NOT_HERE: &str = "This job is not on this device.";

/// Where the record of a job is.
#[derive(Clone, Debug, Default, PartialEq)]
enum Record {
    /// On the shelf, or on its way there.
    #[default]
    There,
    /// Taken off; it can be put back.
    Removed,
    /// Deleted for good.
    Gone,
    /// It cannot be opened, for this reason.
    Damaged(String),
}

/// What can be done about a trouble.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Way {
    /// Nothing that the words do not say.
    None,
    /// Save the job as a file.
    AsFile,
    /// Put the job back.
    PutBack,
}

/// An edit that is on the page and not in the record yet.
#[derive(Clone)]
struct Waiting {
    edit: Edit,
    /// The key of its note.
    note: String,
    /// The form that it was typed in: its place, and what was typed.
    from: Option<(String, Typed)>,
    /// Another page wrote it: it may be in the record already, and its note gone.
    is_taken_over: bool,
}

/// What became of an edit in the record.
enum Became {
    /// It is in.
    In,
    /// Somebody else changed the same, or there is no room.
    Refused(EditProblem),
}

/// The record with what became of each edit, or where it is instead.
type Folded = Result<(Book, Vec<Became>), Record>;

#[derive(Default)]
struct Inner {
    key: String,
    book: RefCell<Option<Rc<Book>>>,
    /// What the user must be told about this job.
    told: RefCell<Option<String>>,
    /// The job was never on the shelf.
    is_new: Cell<bool>,
    record: RefCell<Record>,
    waiting: RefCell<VecDeque<Waiting>>,
    is_sending: Cell<bool>,
    /// What is typed in each form, open or left.
    forms: RefCell<BTreeMap<String, Typed>>,
    /// The forms that are open.
    open: RefCell<BTreeSet<String>>,
    /// Pages whose end is waited for.
    awaited: RefCell<BTreeSet<String>>,
    number: Cell<u32>,
    revision: Cell<u32>,
    watchers: RefCell<BTreeMap<u32, UseForceUpdateHandle>>,
    listening: RefCell<Option<Listening>>,
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
            *on_page.0.listening.borrow_mut() = Some(listening);
            ALL.with_borrow_mut(|all| all.insert(key.to_owned(), on_page.clone()));
            on_page
        })
    }

    /// Begins a job that is on no shelf yet; it is put there a moment later. Where there is no
    /// room it stays on this page.
    pub(crate) fn begin(book: Book) -> OnPage {
        let on_page = OnPage::of(&shelf::new_key());
        *on_page.0.book.borrow_mut() = Some(Rc::new(book));
        on_page.0.is_new.set(true);
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

    /// What the user must be told about this job, and what can be done.
    pub(crate) fn trouble(&self) -> Option<(String, Way)> {
        if let Some(told) = &*self.0.told.borrow() {
            let is_removed = *self.0.record.borrow() == Record::Removed;
            return Some((told.clone(), if is_removed { Way::PutBack } else { Way::None }));
        }
        let is_open = self.book().is_some();
        match &*self.0.record.borrow() {
            Record::There => {}
            Record::Removed if is_open => {
                return Some((format!("{TAKEN_OFF} {GOES_IN}"), Way::PutBack));
            }
            Record::Removed => return Some((TAKEN_OFF.to_owned(), Way::PutBack)),
            Record::Gone if is_open => return Some((DELETED.to_owned(), Way::AsFile)),
            Record::Gone => return Some((NOT_HERE.to_owned(), Way::None)),
            Record::Damaged(why) => return Some((why.clone(), Way::AsFile)),
        }
        let problem = written::problem()?;
        let words = format!(
            "Not kept: {problem}. The job stays usable here, and what is not kept is tried again. \
             Save it as a file before you close the page."
        );
        Some((words, Way::AsFile))
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

    /// Makes the step that is worked out from the job as it stands now.
    pub(crate) fn make(&self, step: impl FnOnce(&Job) -> Option<Step>) {
        let step = self.book().and_then(|book| step(&book.job));
        if let Some(step) = step {
            self.edit(Edit::Make(step));
        }
    }

    /// Makes a step that takes over what is typed in the form of a place, which ends its note.
    pub(crate) fn make_of_form(&self, place: &str, step: impl FnOnce(&Job) -> Option<Step>) {
        let step = self.book().and_then(|book| step(&book.job));
        if let Some(step) = step {
            self.edit_from(Edit::Make(step), None, || self.forget(place));
        }
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
        if let Err(problem) = book.edit(&edit) {
            self.tell(Some(problem.to_string()));
            return false;
        }
        let at = clock::now();
        let note = self.key_of(&place_of_edit(at, self.next_number()));
        let text = Note::Edit(edit.clone(), from.clone()).written(at);
        let mut notes = notes();
        notes.push((note.clone(), Some(text)));
        written::write(notes);
        let waiting = Waiting { edit, note, from, is_taken_over: false };
        self.0.waiting.borrow_mut().push_back(waiting);
        *self.0.book.borrow_mut() = Some(Rc::new(book));
        self.tell(None);
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
            // A job that was never there is put there as it is on this page.
            let whole = self.book().filter(|_| is_new);
            let sent = batch.len();
            let key = self.0.key.clone();
            let folded = shelf::change(&self.0.key, move |found| match whole {
                Some(book) => put_whole(&book, &batch, &found),
                None => fold_in(&key, &batch, &found),
            })
            .await?;
            self.0.is_new.set(false);
            match folded {
                Ok((book, became)) => {
                    let done = self.settle_first(sent);
                    self.take_over(book);
                    for (waiting, became) in done.into_iter().zip(became) {
                        if let Became::Refused(conflict) = became {
                            self.refused(waiting, &conflict);
                        }
                    }
                }
                Err(record) => {
                    self.stands(record);
                    return Ok(());
                }
            }
        }
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
            self.changed();
        }
    }

    /// Somebody else changed the same: what was typed goes back to its form, where it is offered;
    /// what was tapped is told.
    fn refused(&self, waiting: Waiting, problem: &EditProblem) {
        let Some((place, typed)) = waiting.from else {
            return self.tell(Some(problem.to_string()));
        };
        let restored = typed.put_back(self.form(&place).as_ref());
        self.typed(&place, restored);
        self.refill();
    }

    /// What is typed in the form of a place.
    pub(crate) fn form(&self, place: &str) -> Option<Typed> {
        self.0.forms.borrow().get(place).cloned()
    }

    /// Writes down what is typed in the form of a place, in this very event. It draws nothing.
    pub(crate) fn typed(&self, place: &str, typed: Typed) {
        let notes = self.note_of(place, typed);
        if !notes.is_empty() {
            written::write(notes);
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
    /// open.
    pub(crate) fn forms(&self) -> Vec<(String, Typed, bool)> {
        let open = self.0.open.borrow();
        let forms = self.0.forms.borrow();
        forms.iter().map(|(at, typed)| (at.clone(), typed.clone(), open.contains(at))).collect()
    }

    /// How often a form was filled by something else than its fields.
    pub(crate) fn revision(&self) -> u32 {
        self.0.revision.get()
    }

    /// Fills the form of a place anew, open or left, and folds in what can be.
    pub(crate) fn settle(&self, place: &str, typed: &Typed, reckoned: &Reckoned, bench: &Bench) {
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

    /// Fetches the job, with what pages that live no more had typed in it.
    pub(crate) async fn fetch(&self, bench: &Bench) {
        if self.0.is_new.get() {
            return;
        }
        if self.book().is_none() {
            self.tell(None);
        }
        match self.found().await {
            Ok((found, living)) => {
                if self.0.waiting.borrow().is_empty() {
                    written::worked(&self.0.key);
                }
                self.open(found, living.as_ref(), bench);
            }
            Err(problem) => {
                if self.book().is_none() {
                    self.tell(Some(format!("This job cannot be opened: {problem}.")));
                } else {
                    written::failed(&self.0.key, problem);
                }
            }
        }
    }

    /// The record and the notes about it, and the pages that live.
    async fn found(&self) -> Result<(Found, Option<BTreeSet<String>>), Problem> {
        let living = alive::living().await;
        let found = shelf::fetch(&self.0.key).await?;
        let others = self.others_in(&found, living.as_ref());
        if self.book().is_some() || others.is_empty() {
            return Ok((found, living));
        }
        // A page that is being loaded again has just been closed, or is about to.
        let (done, ended) = first();
        let patience = later(CLOSING, {
            let done = done.clone();
            move || done.tell()
        });
        spawn_local(async move {
            for page in &others {
                alive::end_of(page).await;
            }
            done.tell();
        });
        ended.await;
        drop(patience);
        Ok((shelf::fetch(&self.0.key).await?, alive::living().await))
    }

    /// The other pages that live and have notes about this job.
    fn others_in(&self, found: &Found, living: Option<&BTreeSet<String>>) -> BTreeSet<String> {
        let page = |(key, _): &(String, String)| {
            notes::read_key(&self.0.key, key).map(|(_, page)| page.to_owned())
        };
        let pages = found.notes.iter().filter_map(page);
        let lives = |page: &String| living.is_some_and(|living| living.contains(page));
        pages.filter(|page| *page != alive::page() && lives(page)).collect()
    }

    /// Opens what was found on the shelf.
    fn open(&self, found: Found, living: Option<&BTreeSet<String>>, bench: &Bench) {
        let Some(stored) = &found.stored else {
            self.stands(if found.is_removed { Record::Removed } else { Record::Gone });
            if self.book().is_none() && !found.is_removed && !found.notes.is_empty() {
                self.tell(Some(
                    "This job was never kept: this browser had no room for it. It is gone with the page that it was on."
                        .to_owned(),
                ));
            }
            return;
        };
        match Book::open(stored) {
            Ok((book, set_aside)) => {
                // It was put back.
                if !self.is_there() {
                    self.stands(Record::There);
                }
                if !set_aside.is_empty() {
                    self.tell(Some(format!(
                        "{} of its items are damaged and were set aside. Everything else is here.",
                        set_aside.len()
                    )));
                }
                self.take_notes(book, &found, living, bench);
            }
            Err(problem) => self.tell(Some(problem.to_string())),
        }
        for page in self.others_in(&found, living) {
            if self.0.awaited.borrow_mut().insert(page.clone()) {
                let (on_page, bench) = (self.clone(), *bench);
                spawn_local(async move {
                    alive::end_of(&page).await;
                    on_page.0.awaited.borrow_mut().remove(&page);
                    on_page.fetch(&bench).await;
                });
            }
        }
    }

    /// Takes over the notes of pages that live no more: edits and what can be read go into the
    /// job, the rest stays as it was typed.
    fn take_notes(
        &self,
        record: Book,
        found: &Found,
        living: Option<&BTreeSet<String>>,
        bench: &Bench,
    ) {
        let now = clock::now();
        let is_left = |page: &str, text: &str| match living {
            Some(living) => !living.contains(page),
            None => page != alive::page() && now.saturating_sub(written_at(text)) > UNTOLD,
        };
        let notes = found.notes.iter().filter_map(|(key, text)| {
            let (place, page) = notes::read_key(&self.0.key, key)?;
            let note = is_left(page, text).then(|| Note::read(text))??;
            Some((key, place, note))
        });
        let (edits, forms): (Vec<_>, Vec<_>) = notes.partition(|(_, place, _)| is_edit(place));
        for (key, _, note) in edits {
            let mut waiting = self.0.waiting.borrow_mut();
            let is_known = waiting.iter().any(|waiting| waiting.note == *key);
            if let (false, Note::Edit(edit, from)) = (is_known, note) {
                waiting.push_back(Waiting { edit, note: key.clone(), from, is_taken_over: true });
            }
        }
        self.take_over(record);
        if !forms.is_empty()
            && let Some(book) = self.book()
        {
            let reckoned = Reckoned::of(&book.job, bench);
            for (key, place, note) in forms {
                if let Note::Typed(typed) = note {
                    self.take_form(key, place, typed, &reckoned, bench);
                }
            }
        }
        self.changed();
        self.send();
    }

    /// Takes over what a page that lives no more had typed in a form.
    fn take_form(&self, key: &str, place: &str, typed: Typed, reckoned: &Reckoned, bench: &Bench) {
        // Two pages may have typed in the same place.
        let bare = notes::bare(place);
        let is_taken = |place: &str| self.0.forms.borrow().contains_key(place);
        let further = (2_u32..).map(|n| format!("{bare}{}{n}", notes::FURTHER));
        let free = core::iter::once(bare.to_owned()).chain(further).find(|it| !is_taken(it));
        let place = free.unwrap_or_default();
        let mut notes = self.note_of(&place, typed.clone());
        notes.push((key.to_owned(), None));
        written::write(notes);
        self.fold(&place, &typed, reckoned, bench, None);
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
    }
    Ok(is_gone)
}

/// The jobs of this page that are not, or not wholly, in their records: by their keys, as they stand here.
pub(crate) fn ahead_of_the_shelf() -> Vec<(String, Rc<Book>)> {
    let on_pages: Vec<OnPage> = ALL.with_borrow(|all| all.values().cloned().collect());
    let is_ahead =
        |it: &OnPage| it.is_there() && (it.0.is_new.get() || !it.0.waiting.borrow().is_empty());
    let ahead = on_pages.into_iter().filter(is_ahead);
    ahead.filter_map(|it| Some((it.key().to_owned(), it.book()?))).collect()
}

/// Puts a job that was never there on the shelf, with all that was done to it.
fn put_whole(book: &Book, batch: &[Waiting], found: &Found) -> (Change, Folded) {
    if found.is_removed {
        return (Change { stored: None, notes: Vec::new() }, Err(Record::Removed));
    }
    let notes = batch.iter().map(|waiting| (waiting.note.clone(), None)).collect();
    let became = batch.iter().map(|_| Became::In).collect();
    (Change { stored: Some(book.stored()), notes }, Ok((book.clone(), became)))
}

/// Folds edits into the record as it stands: each is in it with the end of its note, or its note
/// is what was typed again.
fn fold_in(key: &str, batch: &[Waiting], found: &Found) -> (Change, Folded) {
    let mut notes = Vec::new();
    let without = |record: Record| (Change { stored: None, notes: Vec::new() }, Err(record));
    let Some(stored) = &found.stored else {
        return without(if found.is_removed { Record::Removed } else { Record::Gone });
    };
    let mut book = match Book::open(stored) {
        Ok((book, _)) => book,
        Err(problem) => return without(Record::Damaged(problem.to_string())),
    };
    let mut became = Vec::new();
    for waiting in batch {
        let is_there = found.notes.iter().any(|(key, _)| *key == waiting.note);
        notes.push((waiting.note.clone(), None));
        // Another page was quicker: it is in.
        if waiting.is_taken_over && !is_there {
            became.push(Became::In);
            continue;
        }
        match book.edit(&waiting.edit) {
            Ok(()) => became.push(Became::In),
            Err(conflict) => {
                if let Some((place, typed)) = &waiting.from {
                    let form = notes::key(key, place, &alive::page());
                    let now = found.notes.iter().find(|(key, _)| *key == form);
                    let now = now.and_then(|(_, text)| match Note::read(text) {
                        Some(Note::Typed(typed)) => Some(typed),
                        _ => None,
                    });
                    let back = Note::Typed(typed.clone().put_back(now.as_ref()));
                    notes.push((form, Some(back.written(clock::now()))));
                }
                became.push(Became::Refused(conflict));
            }
        }
    }
    let is_in = became.iter().any(|it| matches!(it, Became::In));
    (Change { stored: is_in.then(|| book.stored()), notes }, Ok((book, became)))
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
                        spawn_local(async move { on_page.fetch(&bench).await });
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
