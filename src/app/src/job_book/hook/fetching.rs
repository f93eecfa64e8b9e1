//! What a page finds on the shelf, with what pages that live no more had typed.

use std::cmp::Reverse;
use std::collections::BTreeSet;

use reckoner_core::job::Reckoned;
use reckoner_core::order::{set_of, sort, sort_by_key};
use reckoner_core::sheet::Bench;
use wasm_bindgen_futures::spawn_local;

use super::{OnPage, Record};
use crate::job_book::book::Book;
use crate::job_book::notes::{self, Note, Place, Typed, is_edit, written_at};
use crate::job_book::record::Waiting;
use crate::platform::database::Problem;
use crate::platform::later::{first, later};
use crate::platform::notes as written;
use crate::platform::shelf::{self, Found};
use crate::platform::{alive, clock};

/// How long a page that is opened waits for one that is just closing, in milliseconds.
const CLOSING: u32 = 250;
/// How long a page waits before it fills its forms with what one that has just ended left behind, in milliseconds: a
/// page that is loaded again takes its own first. One that is no older may be just that, and does not wait.
const LOADING: u32 = 5_000;
/// After how long a note is taken over where the browser cannot tell who lives, in milliseconds.
const UNTOLD: u64 = 10_000;

impl OnPage {
    /// Fetches the job, with what pages that live no more had typed in it.
    pub(crate) async fn fetch(&self, bench: &Bench) {
        self.fetch_as(true, bench).await;
    }

    /// The same; `fills` says whether the forms that are open here are filled with what was left behind.
    pub(super) async fn fetch_as(&self, fills: bool, bench: &Bench) {
        self.0.bench.set(Some(*bench));
        if self.0.is_new.get() {
            return;
        }
        let is_first = self.book().is_none();
        match self.found().await {
            Ok((found, living)) => {
                self.0.is_unread.set(false);
                if is_first {
                    self.tell(None);
                }
                if self.0.waiting.borrow().is_empty() {
                    written::worked(&self.0.key);
                }
                self.open(found, living.as_ref(), fills, bench);
                if is_first {
                    // Whoever has the job open waits for the end of this page from now on: it may end without a word.
                    shelf::tell(&self.0.key);
                }
            }
            Err(problem) => {
                self.0.is_unread.set(true);
                if self.book().is_none() {
                    self.tell(Some(format!("This job cannot be opened: {problem}.")));
                }
                written::failed(&self.0.key, problem);
            }
        }
    }

    /// Reads again what could not be read.
    pub(super) fn read_again(&self) {
        let Some(bench) = self.0.bench.get().filter(|_| self.0.is_unread.take()) else { return };
        let on_page = self.clone();
        spawn_local(async move {
            let fills = on_page.book().is_none();
            on_page.fetch_as(fills, &bench).await;
        });
    }

    /// The record and the notes about it, and the pages that live.
    async fn found(&self) -> Result<(Found, Option<BTreeSet<String>>), Problem> {
        let mut is_brought = true;
        if written::pages_beside(&self.0.key).iter().any(|page| *page != alive::page()) {
            is_brought = brought(written::bring_in().await)?;
        }
        let mut living = alive::living().await;
        let mut found = shelf::fetch(&self.0.key).await?;
        let others = self.others_in(&found, living.as_ref());
        if self.book().is_none() && !others.is_empty() {
            // A page that is being loaded again has just been closed, or is about to.
            alive::ends_of(others, CLOSING).await;
            is_brought = brought(written::bring_in().await)?;
            found = shelf::fetch(&self.0.key).await?;
            living = alive::living().await;
        }
        if !is_brought {
            // It is shown, and goes in once there is room.
            for (key, text) in written::left_beside(&self.0.key).await? {
                found.notes.retain(|(other, _)| *other != key);
                found.notes.extend(text.map(|text| (key, text)));
            }
            // Edits go in in the order of their keys.
            sort(&mut found.notes);
        }
        Ok((found, living))
    }

    /// The other pages that live and have notes about this job, in the database or beside it.
    fn others_in(&self, found: &Found, living: Option<&BTreeSet<String>>) -> BTreeSet<String> {
        let page = |(key, _): &(String, String)| {
            notes::read_key(&self.0.key, key).map(|(_, page)| page.to_owned())
        };
        let pages = found.notes.iter().filter_map(page).chain(written::pages_beside(&self.0.key));
        let lives = |page: &String| living.is_some_and(|living| living.contains(page));
        set_of(pages.filter(|page| *page != alive::page() && lives(page)))
    }

    /// Opens what was found on the shelf.
    fn open(&self, found: Found, living: Option<&BTreeSet<String>>, fills: bool, bench: &Bench) {
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
                self.take_notes(book, &found, living, fills, bench);
            }
            Err(problem) => self.tell(Some(problem.to_string())),
        }
        // Also of those that have typed nothing so far.
        for page in living.into_iter().flatten().filter(|page| **page != alive::page()) {
            if self.0.awaited.borrow_mut().insert(page.clone()) {
                let (on_page, page) = (self.clone(), page.clone());
                spawn_local(async move {
                    alive::end_of(&page).await;
                    on_page.0.awaited.borrow_mut().remove(&page);
                    on_page.ended();
                });
            }
        }
    }

    /// A page has ended: its edits go into the job, and in a while what else it had typed into the forms that are open here.
    pub(super) fn ended(&self) {
        let Some(bench) = self.0.bench.get() else { return };
        let on_page = self.clone();
        spawn_local(async move {
            on_page.fetch_as(false, &bench).await;
            if !on_page.0.left_behind.borrow().is_empty() {
                if alive::age() > u64::from(LOADING) {
                    let (waited, told) = first();
                    let waiting = later(LOADING, move || waited.tell());
                    told.await;
                    drop(waiting);
                }
                on_page.fetch_as(true, &bench).await;
            }
        });
    }

    /// Takes over the notes of pages that live no more: edits and what can be read go into the
    /// job, the rest stays as it was typed.
    fn take_notes(
        &self,
        record: Book,
        found: &Found,
        living: Option<&BTreeSet<String>>,
        fills: bool,
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
            Some((key, place, note, written_at(text)))
        });
        let (edits, mut forms): (Vec<_>, Vec<_>) = notes.partition(|(_, place, ..)| is_edit(place));
        // Where two pages had typed in the same form, the later stands in it, and the other beside it by name; what stood beside
        // it before still does.
        sort_by_key(&mut forms, |(_, place, _, at)| (place.contains(notes::FURTHER), Reverse(*at)));
        for (key, _, note, _) in edits {
            let mut waiting = self.0.waiting.borrow_mut();
            let is_known = waiting.iter().any(|waiting| waiting.note == *key);
            if let (false, Note::Edit(edit, from)) = (is_known, note) {
                waiting.push_back(Waiting { edit, note: key.clone(), from });
            }
        }
        self.take_over(record);
        let mut left_behind = Vec::new();
        let mut is_filled = false;
        if let Some(book) = self.book() {
            let reckoned = Reckoned::of(&book.job, bench);
            for (key, place, note, _) in forms {
                // It was taken over before, and its end is not in the database yet.
                if written::is_unsaved(key) {
                    continue;
                }
                let Some(typed) = note.in_form() else { continue };
                let goes_in = Place::read(place).is_some_and(|at| {
                    notes::fold(&book.job, &reckoned, bench, at, &typed, None).left.is_empty()
                });
                if goes_in || (fills && self.is_at_hand(place)) {
                    let own = self.form(home(place));
                    let (at, typed) = self.take_form(key, place, typed);
                    // A form that is being written in goes into the job when its field is left.
                    if own.is_none() || !self.0.open.borrow().contains(&at) {
                        self.fold(&at, &typed, &reckoned, bench, None);
                    }
                    is_filled = true;
                } else {
                    left_behind.push((key.clone(), place.to_owned(), typed));
                }
            }
        }
        let was_left = self.0.left_behind.replace(left_behind);
        if is_filled || was_left != *self.0.left_behind.borrow() {
            // A form that is open here shows what was typed in it elsewhere, and a page what was begun there.
            self.refill();
        }
        self.changed();
        self.send();
    }

    /// Whether the form of a place is open on this page, or something is typed in it here.
    fn is_at_hand(&self, place: &str) -> bool {
        let home = home(place);
        self.0.open.borrow().contains(home) || self.form(home).is_some()
    }

    /// Takes over what a page that lives no more had typed in a form. Gives its place from now on, and what is typed there.
    fn take_form(&self, key: &str, place: &str, typed: Typed) -> (String, Typed) {
        let (place, mut typed) = self.beside_own(place, typed);
        if let Some(now) = self.standing(&place) {
            typed = typed.in_sight_of(&now);
        }
        let mut notes = self.note_of(&place, typed.clone());
        notes.push((key.to_owned(), None));
        written::write(notes);
        (place, typed)
    }

    /// Where what was typed elsewhere goes: into the form that shows it, beside what is typed there in other fields, or,
    /// where somebody typed in the same field, under a number of its own.
    fn beside_own(&self, place: &str, typed: Typed) -> (String, Typed) {
        let home = home(place);
        let Some(own) = self.form(home) else { return (home.to_owned(), typed) };
        let is_apart = !own.changed().iter().any(|field| typed.changed().contains(field));
        if is_apart && Place::read(home).is_some() {
            return (home.to_owned(), typed.put_back(Some(&own)));
        }
        let bare = notes::bare(place);
        let mut further = (2_u32..).map(|n| format!("{bare}{}{n}", notes::FURTHER));
        (further.find(|it| self.form(it).is_none()).unwrap_or_default(), typed)
    }

    /// What stands beside the form of a place goes into the job, but for a field that is typed in the form itself: no other
    /// field of the page would show it.
    fn put_in_beside(&self, place: &str, taken: &[(String, Typed)]) {
        let (Some(book), Some(bench)) = (self.book(), self.0.bench.get()) else { return };
        let own = self.form(place);
        for (at, typed) in taken.iter().filter(|(at, _)| at != place) {
            let Some(beside) = Place::read(at) else { continue };
            let reckoned = Reckoned::of(&book.job, &bench);
            let done = notes::fold(&book.job, &reckoned, &bench, beside, typed, None).done;
            let is_typed_here = own.as_ref().is_some_and(|own| {
                own.changed().iter().any(|field| done.iter().any(|it| it == field))
            });
            if !is_typed_here {
                self.fold(at, typed, &reckoned, &bench, None);
            }
        }
    }

    /// Takes over what was left behind in the form of a place, which is opened.
    pub(crate) fn take_left(&self, place: &str) {
        let is_here = |(_, at, _): &mut (String, String, Typed)| home(at) == place;
        let mine: Vec<_> = self.0.left_behind.borrow_mut().extract_if(.., is_here).collect();
        let taken = mine.iter().map(|(key, at, typed)| self.take_form(key, at, typed.clone()));
        let taken: Vec<_> = taken.collect();
        if !mine.is_empty() {
            self.put_in_beside(place, &taken);
            // Of what several pages left in this form, the page may have shown one before they got places of their own.
            self.changed();
            shelf::tell(&self.0.key);
        }
    }
}

/// Whether what lay beside the database was brought in. Where that does not answer, nothing else is asked of it.
fn brought(brought: Result<(), Problem>) -> Result<bool, Problem> {
    match brought {
        Err(Problem::Silent) => Err(Problem::Silent),
        brought => Ok(brought.is_ok()),
    }
}

/// The place whose form shows what is noted for a place.
fn home(place: &str) -> &str {
    // What is new has a form for each that was begun.
    if Place::read(place).is_some() { notes::bare(place) } else { place }
}
