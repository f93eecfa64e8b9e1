//! What lies beside the database in the local storage, until the database has it.

use std::collections::{BTreeMap, BTreeSet};

use reckoner_core::order::{map_of, set_of};
use wasm_bindgen::JsValue;
use web_sys::Storage;

use super::{
    ASIDE, NOTES, Problem, STATE, TAKEN, Writing, call_all, clear, failed, is_of_job, local,
    standing, worked,
};
use crate::platform::database::{self, Rows, Write};
use crate::platform::{alive, clock};

/// How long after a page's last writing that is still asked, in milliseconds: a browser that is killed brings
/// back the local storage as it was, until that has reached the disk.
const ASKED_FOR: u64 = 3_600_000;

/// Which writings of a page the database has taken.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Taken {
    /// When it said so, in milliseconds.
    pub(super) at: u64,
    /// All up to this,
    pub(super) up_to: u64,
    /// without these.
    pub(super) without: BTreeSet<u64>,
}

impl Taken {
    fn has(&self, number: u64) -> bool {
        number <= self.up_to && !self.without.contains(&number)
    }

    pub(super) fn written(&self) -> String {
        let without: Vec<String> = self.without.iter().map(u64::to_string).collect();
        format!("{} {} {}", self.at, self.up_to, without.join(","))
    }

    fn read(text: &str) -> Option<Taken> {
        let mut words = text.splitn(3, ' ');
        let mut number = || words.next()?.parse().ok();
        let (at, up_to) = (number()?, number()?);
        let without = set_of(words.next()?.split(',').filter_map(|number| number.parse().ok()));
        Some(Taken { at, up_to, without })
    }

    /// The key of what is said of a page.
    pub(super) fn key(page: &str) -> String {
        format!("{TAKEN}/{page}")
    }
}

/// The writing of another page that lies beside under this key, if one does.
pub(super) fn of_another_page(key: &str) -> Option<Writing> {
    let text = local().filter(|_| is_of_job(key))?.get_item(&format!("{ASIDE}{key}")).ok()??;
    let beside = Beside::read(key.to_owned(), &text)?;
    (beside.page != alive::page()).then_some((beside.page, beside.number))
}

/// That something else was written in the place of this writing, and of all that the page wrote there before it.
pub(super) fn passed_over(key: &str, (page, number): &Writing) -> Write {
    let taken = Taken { at: clock::now(), up_to: *number, without: BTreeSet::new() };
    Write::Put(NOTES, Taken::key(&in_place(page, key)), taken.written().into())
}

/// The name of a page in one place alone.
fn in_place(page: &str, key: &str) -> String {
    format!("{page}/{key}")
}

/// Which writings the database has taken, by the page that wrote them, and by the page in one place.
fn taken(rows: &Rows) -> BTreeMap<&str, Taken> {
    map_of(rows.iter().filter_map(|(key, taken)| {
        let page = key.strip_prefix(TAKEN)?.strip_prefix('/')?;
        Some((page, Taken::read(&taken.as_string()?)?))
    }))
}

/// The pages that have notes about a job beside the database.
pub(crate) fn pages_beside(job: &str) -> BTreeSet<String> {
    set_of(beside().into_iter().filter(|it| it.is_of(job)).map(|beside| beside.page))
}

/// The keys of the notes that lie beside the database, each with the page that wrote it there.
pub(crate) fn keys_beside() -> Vec<(String, String)> {
    beside().into_iter().map(|beside| (beside.key, beside.page)).collect()
}

/// Whether a page lives no more. `living` are those that do; `None` where the browser cannot tell.
pub(crate) fn is_left(page: &str, living: Option<&BTreeSet<String>>) -> bool {
    page != alive::page() && !living.is_some_and(|living| living.contains(page))
}

/// What lies beside from pages that live no more.
fn left(living: Option<&BTreeSet<String>>) -> Vec<Beside> {
    beside().into_iter().filter(|it| is_left(&it.page, living)).collect()
}

/// What pages that live no more had noted about a job, and what the database has not taken of it: the keys of the notes with
/// their texts, `None` where one is to go. Until they are brought in they are [to come](super::is_to_come).
pub(crate) async fn left_beside(job: &str) -> Result<Vec<(String, Option<String>)>, Problem> {
    let left = left(alive::living().await.as_ref());
    let rows = database::read(NOTES, TAKEN).await?;
    let taken = taken(&rows);
    let mine = left.into_iter().filter(|it| it.is_of(job) && it.is_new(&taken));
    let notes: Vec<_> = mine.map(|Beside { key, text, .. }| (key, text)).collect();
    STATE.with_borrow_mut(|state| state.shown.extend(notes.iter().map(|(key, _)| key.clone())));
    Ok(notes)
}

/// Whether a note that this page shows still lies beside; another window may have brought it in.
pub(super) fn lies_beside(key: &str) -> bool {
    let is_shown = STATE.with_borrow(|state| state.shown.contains(key));
    let lies = |local: Storage| local.get_item(&format!("{ASIDE}{key}")).ok().flatten().is_some();
    is_shown && local().is_some_and(lies)
}

/// Takes what lies beside from pages that live no more into the database, where it was not taken
/// already: a browser that is killed brings back the local storage as it was seconds before.
///
/// What is taken is asked and said in the transaction itself: two windows may do this at once, and what the one has
/// folded in since must not come back by the other. What finds no room is told, and tried again.
pub(crate) async fn bring_in() -> Result<(), Problem> {
    let living = alive::living().await;
    let left = left(living.as_ref());
    let now = clock::now();
    let brought = database::change_job(TAKEN, |_, rows| {
        let taken = taken(rows);
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
                if of_another_page(key).is_some_and(|(by, at)| (&by, &at) == (page, number)) {
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

/// A note that lies beside the database.
struct Beside {
    key: String,
    /// The page that wrote it there.
    page: String,
    number: u64,
    /// `None` where the note is to go.
    text: Option<String>,
}

impl Beside {
    fn is_of(&self, job: &str) -> bool {
        self.key.strip_prefix(job).is_some_and(|it| it.starts_with('/'))
    }

    /// Whether the database has not taken it.
    fn is_new(&self, taken: &BTreeMap<&str, Taken>) -> bool {
        let has = |of: &str| taken.get(of).is_some_and(|taken| taken.has(self.number));
        !has(&self.page) && !has(&in_place(&self.page, &self.key))
    }

    /// What lies under a key: the page, the number and the text.
    fn read(key: String, text: &str) -> Option<Beside> {
        let (page, rest) = text.split_once(' ')?;
        let (number, text) = rest.split_once(' ')?;
        let text = Some(text.to_owned()).filter(|text| !text.is_empty());
        Some(Beside { key, page: page.to_owned(), number: number.parse().ok()?, text })
    }
}

/// What lies beside the database in the local storage.
fn beside() -> Vec<Beside> {
    let all = standing(ASIDE).into_iter();
    all.filter_map(|(key, text)| Beside::read(key, &text)).collect()
}
