//! How edits go into the record of a job: with the ends of their notes, exactly once.

use super::book::{Book, Edit, EditProblem};
use super::notes::{self, Note, Typed};
use crate::platform::notes as written;
use crate::platform::shelf::{Change, Found};

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
        !self.has_note(found) && written::is_to_come(&self.note)
    }

    fn has_note(&self, found: &Found) -> bool {
        found.notes.iter().any(|(key, _)| *key == self.note)
    }

    /// The page that made it, in the job with this key.
    pub(super) fn page(&self, job: &str) -> &str {
        notes::read_key(job, &self.note).map_or("", |(_, page)| page)
    }
}

/// What became of an edit in the record.
pub(super) enum Became {
    /// It is in.
    In,
    /// It was to take a step back, or to make one again, that the record does not go with: that one is forgotten.
    Forgotten(EditProblem),
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
/// is what was typed again, in the form of the page that typed it. `now` is in milliseconds.
pub(super) fn fold_in(key: &str, now: u64, batch: &[Waiting], found: &Found) -> (Change, Folded) {
    let mut notes: Vec<(String, Option<String>)> = Vec::new();
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
            Ok(None) => became.push(Became::In),
            Ok(Some(problem)) => became.push(Became::Forgotten(problem)),
            Err(conflict) => {
                if let Some((place, typed)) = &waiting.from {
                    let form = notes::key(key, place, waiting.page(key));
                    // Two edits of one form may come back.
                    let put = notes.iter().rev().find(|(key, _)| *key == form);
                    let stood = found.notes.iter().find(|(key, _)| *key == form);
                    let text = put.and_then(|(_, text)| text.as_ref());
                    let since = text.or(stood.map(|(_, text)| text)).map(|text| Note::read(text));
                    let since = since.flatten().and_then(Note::in_form);
                    let back = Note::Typed(typed.clone().put_back(since.as_ref()));
                    notes.push((form, Some(back.written(now))));
                }
                became.push(Became::Refused(conflict));
            }
        }
    }
    let is_in = became.iter().any(|it| !matches!(it, Became::Refused(_)));
    (Change { stored: is_in.then(|| book.stored()), notes }, Ok((book, became)))
}

#[cfg(test)]
mod tests {
    use reckoner_core::job::demo::demo;
    use reckoner_core::job::{Job, Reckoned};
    use reckoner_core::sheet::Bench;
    use wasm_bindgen_test::{wasm_bindgen_test, wasm_bindgen_test_configure};

    use super::super::notes::{Place, fold};
    use super::*;

    wasm_bindgen_test_configure!(run_in_browser);

    /// A page that lives no more.
    const ENDED: &str = "99-1";

    /// An edit of a field of the leg, as that page left it, and the job after it.
    fn left(job: &Job, number: u32, field: &str, text: &str) -> (Waiting, Job) {
        let (id, _) = job.items().find(|(_, item)| item.name() == "leg").expect("in the demo");
        let (place, bench) = (Place::Item(id), Bench::default());
        let mut typed = Typed::filled_with(place.standing(job).expect("it stands there"));
        typed.typed.set(field, text);
        let step = fold(job, &Reckoned::of(job, &bench), &bench, place, &typed, None).step;
        let step = step.expect("it can be read");
        let mut after = job.clone();
        after.make(&step).expect("it goes onto the job");
        let note = notes::key("7", &notes::place_of_edit(1, number), ENDED);
        let from = Some((format!("item/{}", id.0), typed));
        (Waiting { edit: Edit::Make(step), note, from }, after)
    }

    /// Both were typed in one form, and each was thought to be in the job when the next was typed.
    #[wasm_bindgen_test]
    fn two_edits_that_come_too_late_go_back_to_the_form_of_the_page_that_made_them() {
        let (first, after) = left(&demo(), 1, "as_cut", "2");
        let (second, _) = left(&after, 2, "note", "from the rack");
        let (_, meanwhile) = left(&demo(), 3, "as_cut", "3");
        let (_, meanwhile) = left(&meanwhile, 4, "note", "planed once more");
        let batch = [first, second];
        let note = |it: &Waiting| {
            (it.note.clone(), Note::Edit(it.edit.clone(), it.from.clone()).written(1))
        };
        let found = Found {
            stored: Some(Book::new(meanwhile).stored()),
            is_removed: false,
            notes: batch.iter().map(note).collect(),
        };
        let (change, folded) = fold_in("7", 2, &batch, &found);
        let (_, became) = folded.unwrap_or_else(|_| panic!("there is a record"));
        assert!(became.iter().all(|it| matches!(it, Became::Refused(_))));
        let (place, _) = batch[0].from.as_ref().expect("a form");
        let form = notes::key("7", place, ENDED);
        let (_, last) = change.notes.iter().rev().find(|(key, _)| *key == form).expect("its form");
        let back = Note::read(last.as_ref().expect("a text")).and_then(Note::in_form);
        let back = back.expect("what was typed");
        assert_eq!(back.changed(), ["as_cut", "note"]);
        assert_eq!(back.typed.text("as_cut"), Some("2"));
        assert_eq!(back.typed.text("note"), Some("from the rack"));
        for waiting in &batch {
            assert!(change.notes.contains(&(waiting.note.clone(), None)));
        }
    }
}
