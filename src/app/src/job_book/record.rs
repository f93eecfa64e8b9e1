//! How edits go into the record of a job: with the ends of their notes, exactly once.

use super::book::{Book, Edit, EditProblem};
use super::notes::{self, Note, Typed};
use crate::platform::notes as written;
use crate::platform::shelf::{Change, Found};
use crate::platform::{alive, clock};

/// Where the record of a job is.
#[derive(Clone, Debug, Default, PartialEq)]
pub(super) enum Record {
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

/// An edit that is on the page and not in the record yet.
#[derive(Clone)]
pub(super) struct Waiting {
    pub(super) edit: Edit,
    /// The key of its note.
    pub(super) note: String,
    /// The form that it was typed in: its place, and what was typed.
    pub(super) from: Option<(String, Typed)>,
}

impl Waiting {
    /// Whether its note is still to come into the database. An edit goes in with the end of its note: were it to go in
    /// before, the note would come after it, and the edit would be done again.
    fn is_before_its_note(&self, found: &Found) -> bool {
        !self.has_note(found) && written::is_unsaved(&self.note)
    }

    fn has_note(&self, found: &Found) -> bool {
        found.notes.iter().any(|(key, _)| *key == self.note)
    }
}

/// What became of an edit in the record.
pub(super) enum Became {
    /// It is in.
    In,
    /// Somebody else changed the same, or there is no room.
    Refused(EditProblem),
}

/// The record with what became of each edit, up to the first that has to wait for its note; or where it is instead.
pub(super) type Folded = Result<(Book, Vec<Became>), Record>;

/// Puts a job that was never there on the shelf, with all that was done to it.
pub(super) fn put_whole(book: &Book, batch: &[Waiting], found: &Found) -> (Change, Folded) {
    if found.is_removed {
        return (Change { stored: None, notes: Vec::new() }, Err(Record::Removed));
    }
    if batch.iter().any(|waiting| waiting.is_before_its_note(found)) {
        return (Change { stored: None, notes: Vec::new() }, Err(Record::There));
    }
    let notes = batch.iter().map(|waiting| (waiting.note.clone(), None)).collect();
    let became = batch.iter().map(|_| Became::In).collect();
    (Change { stored: Some(book.stored()), notes }, Ok((book.clone(), became)))
}

/// Folds edits into the record as it stands: each is in it with the end of its note, or its note
/// is what was typed again.
pub(super) fn fold_in(key: &str, batch: &[Waiting], found: &Found) -> (Change, Folded) {
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
        if waiting.is_before_its_note(found) {
            break;
        }
        notes.push((waiting.note.clone(), None));
        // Another page was quicker: it is in.
        if !waiting.has_note(found) {
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
