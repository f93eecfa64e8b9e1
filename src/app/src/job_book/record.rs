//! How edits go into the record of a job: with the ends of their notes, exactly once.

use super::book::{Book, Edit, EditProblem};
use super::notes::{self, Note, Typed};
use crate::platform::shelf::{Change, Found};
use crate::platform::{alive, clock};

const TAKEN_OFF: &str = "This job was taken off this device in another window. It stays usable on this page. \
     Save it as a file before you close the page.";

/// An edit that is on the page and not in the record yet.
#[derive(Clone)]
pub(super) struct Waiting {
    pub(super) edit: Edit,
    /// The key of its note.
    pub(super) note: String,
    /// The form that it was typed in: its place, and what was typed.
    pub(super) from: Option<(String, Typed)>,
    /// Another page wrote it: it may be in the record already, and its note gone.
    pub(super) is_taken_over: bool,
}

/// What became of an edit in the record.
pub(super) enum Became {
    /// It is in.
    In,
    /// Somebody else changed the same, or there is no room.
    Refused(EditProblem),
}

/// The record with what became of each edit, or why there is none.
pub(super) type Folded = Result<(Book, Vec<Became>), String>;

/// Puts a job that was never there on the shelf, with all that was done to it.
pub(super) fn put_whole(book: &Book, batch: &[Waiting]) -> (Change, Folded) {
    let notes = batch.iter().map(|waiting| (waiting.note.clone(), None)).collect();
    let became = batch.iter().map(|_| Became::In).collect();
    (Change { stored: Some(book.stored()), notes }, Ok((book.clone(), became)))
}

/// Folds edits into the record as it stands: each is in it with the end of its note, or its note
/// is what was typed again.
pub(super) fn fold_in(key: &str, batch: &[Waiting], found: &Found) -> (Change, Folded) {
    let mut notes = Vec::new();
    let gone = |words: String| (Change { stored: None, notes: Vec::new() }, Err(words));
    let Some(stored) = &found.stored else { return gone(TAKEN_OFF.to_owned()) };
    let mut book = match Book::open(stored) {
        Ok((book, _)) => book,
        Err(problem) => return gone(problem.to_string()),
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
