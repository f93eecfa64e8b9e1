//! What lies beside the database in the local storage, until the database has it.

use std::collections::{BTreeMap, BTreeSet};

use reckoner_core::order::{map_of, set_of};
use web_sys::Storage;

use super::state::{ASIDE, STATE, TAKEN, Taken, Writing, is_of_job, local, standing};
use crate::platform::database::{self, NOTES, Problem, Rows, Write};
use crate::platform::{alive, clock};

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
pub(super) fn taken(rows: &Rows) -> BTreeMap<&str, Taken> {
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
pub(super) fn left(living: Option<&BTreeSet<String>>) -> Vec<Beside> {
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

/// A note that lies beside the database.
pub(super) struct Beside {
    pub(super) key: String,
    /// The page that wrote it there.
    pub(super) page: String,
    pub(super) number: u64,
    /// `None` where the note is to go.
    pub(super) text: Option<String>,
}

impl Beside {
    fn is_of(&self, job: &str) -> bool {
        self.key.strip_prefix(job).is_some_and(|it| it.starts_with('/'))
    }

    /// Whether the database has not taken it.
    pub(super) fn is_new(&self, taken: &BTreeMap<&str, Taken>) -> bool {
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
