//! What becomes of what was typed.

use reckoner_core::job::demo::demo;
use reckoner_core::job::{Dimension, Item, ItemId, Job, Part, Reckoned, Step};
use reckoner_core::sheet::{Bench, Entries};

use super::*;
use crate::job_book::book::Book;

fn id_of(job: &Job, name: &str) -> ItemId {
    let mut items = job.items();
    items.find(|(_, item)| item.name() == name).map(|(id, _)| id).expect("an item of the demo")
}

fn typed(job: &Job, place: Place, texts: &[(&str, &str)]) -> Typed {
    let mut typed = Typed::filled_with(place.standing(job).expect("it stands there"));
    for (field, text) in texts {
        typed.typed.set(field, *text);
    }
    typed
}

fn fold_all(job: &Job, place: Place, typed: &Typed) -> Folded {
    let bench = Bench::default();
    fold(job, &Reckoned::of(job, &bench), &bench, place, typed, None)
}

/// The job after the step, which must go onto it.
fn after(job: &Job, folded: &Folded) -> Job {
    let mut after = job.clone();
    after.make(folded.step.as_ref().expect("a step")).expect("it goes onto the job");
    after
}

fn lefts(folded: &Folded) -> Vec<(&str, &str, &Why)> {
    folded.left.iter().map(|it| (it.field.as_str(), it.text.as_str(), &it.why)).collect()
}

#[test]
fn a_note_is_read_as_it_was_written() {
    let job = demo();
    let place = Place::Item(id_of(&job, "leg"));
    let typed = typed(&job, place, &[("as_cut", "3 3/16"), ("note", "a & b = c + ü\n%26")]);
    let step = fold_all(&job, place, &typed).step.expect("a step");
    let notes = [
        Note::Typed(typed.clone()),
        Note::Edit(Edit::Undo, None),
        Note::Edit(Edit::Redo, None),
        Note::Edit(Edit::Make(step.clone()), None),
        Note::Edit(Edit::Make(step), Some(("item/4".to_owned(), typed))),
    ];
    for note in notes {
        let text = note.written(1_764_000_000_123);
        assert_eq!(Note::read(&text), Some(note));
        assert_eq!(written_at(&text), 1_764_000_000_123);
    }
    for text in ["", "at=5", "at=5&filled=a%3D1", "at=5&step=%7B%7D", "nonsense"] {
        assert_eq!(Note::read(text), None, "{text}");
    }
}

#[test]
fn a_key_says_its_place_and_its_page() {
    let key = key("17-4", "piece/4/2", "99-1");
    assert_eq!(key, "17-4/piece/4/2#99-1");
    assert_eq!(read_key("17-4", &key), Some(("piece/4/2", "99-1")));
    assert_eq!(read_key("17", &key), None);
    // They are folded in, in the order of their keys.
    assert!(place_of_edit(999, 2) < place_of_edit(1000, 1));
    assert!(place_of_edit(1000, 2) < place_of_edit(1000, 10));
    assert!(is_edit(&place_of_edit(1, 1)));
}

#[test]
fn places_are_read_and_those_of_new_things_are_none() {
    assert_eq!(Place::read("item/4"), Some(Place::Item(ItemId(4))));
    assert_eq!(Place::read("item/4~2"), Some(Place::Item(ItemId(4))));
    assert_eq!(Place::read("piece/4/2"), Some(Place::Piece(ItemId(4), 2)));
    assert_eq!(Place::read("title"), Some(Place::Title));
    assert_eq!(Place::read("kept-title/9"), Some(Place::KeptTitle(ItemId(9))));
    for none in [
        "new/measure",
        "new/match~2",
        "boards-options",
        "different/4/1",
        "spoiled/4/1",
        "piece/4/9999999",
        "item/x",
    ] {
        assert_eq!(Place::read(none), None, "{none}");
    }
}

#[test]
fn what_can_be_read_goes_in_and_the_rest_stays_as_typed() {
    let job = demo();
    let id = id_of(&job, "leg");
    let place = Place::Item(id);
    let typed = typed(&job, place, &[("as_cut", "3 3/16"), ("formula", "×leg thickness")]);
    let folded = fold_all(&job, place, &typed);
    assert_eq!(folded.done, ["as_cut"]);
    assert_eq!(lefts(&folded), [("formula", "×leg thickness", &Why::Unreadable)]);
    let after = after(&job, &folded);
    let Some(Item::Measure(leg)) = after.item(id) else { panic!() };
    assert_eq!(leg.as_cut.as_deref(), Some("3 3/16"));
    let before = job.item(id).cloned();
    let Some(Item::Measure(before)) = before else { panic!() };
    assert_eq!(leg.written, before.written);
}

#[test]
fn a_field_that_somebody_else_changed_is_offered_and_another_one_is_merged() {
    let job = demo();
    let id = id_of(&job, "leg");
    let place = Place::Item(id);
    let mine = typed(&job, place, &[("as_cut", "2"), ("note", "mine")]);
    let theirs = typed(&job, place, &[("as_cut", "4")]);
    let now = after(&job, &fold_all(&job, place, &theirs));
    let folded = fold_all(&now, place, &mine);
    assert_eq!(lefts(&folded), [("as_cut", "2", &Why::Theirs("4".to_owned()))]);
    let after = after(&now, &folded);
    let Some(Item::Measure(leg)) = after.item(id) else { panic!() };
    assert_eq!((leg.as_cut.as_deref(), leg.note.as_str()), (Some("4"), "mine"));
}

#[test]
fn what_stands_there_already_is_no_step() {
    let job = demo();
    let place = Place::Item(id_of(&job, "leg"));
    let mine = typed(&job, place, &[("as_cut", "4")]);
    let now = after(&job, &fold_all(&job, place, &mine));
    let folded = fold_all(&now, place, &mine);
    assert_eq!((folded.step, folded.done, folded.left), (None, vec!["as_cut".to_owned()], vec![]));
}

#[test]
fn the_field_being_written_is_held_back() {
    let job = demo();
    let place = Place::Item(id_of(&job, "leg"));
    let typed = typed(&job, place, &[("as_cut", "3 3/"), ("note", "mine")]);
    let bench = Bench::default();
    let folded = fold(&job, &Reckoned::of(&job, &bench), &bench, place, &typed, Some("as_cut"));
    assert_eq!(folded.done, ["note"]);
    assert!(folded.left.is_empty());
}

#[test]
fn a_rename_reaches_the_formulas_and_a_name_that_is_taken_stays_as_typed() {
    let job = demo();
    let id = id_of(&job, "leg");
    let place = Place::Item(id);
    let renamed = after(&job, &fold_all(&job, place, &typed(&job, place, &[("name", "post")])));
    let uses_it = renamed.items().any(|(other, item)| match item {
        Item::Measure(it) => {
            other != id
                && matches!(&it.written, reckoner_core::job::Written::Formula(text) if text.contains("post"))
        }
        _ => false,
    });
    assert!(uses_it);
    let folded = fold_all(&job, place, &typed(&job, place, &[("name", "overhang")]));
    assert_eq!(lefts(&folded), [("name", "overhang", &Why::Unreadable)]);
    assert_eq!(folded.step, None);
}

#[test]
fn a_choice_that_asks_for_more_goes_in_with_it() {
    let job = demo();
    let id = id_of(&job, "leg");
    let place = Place::Item(id);
    let number = typed(&job, place, &[("kind", "number"), ("number", "5")]);
    let job = after(&job, &fold_all(&job, place, &number));
    // A length without a formula has no size.
    let folded = fold_all(&job, place, &typed(&job, place, &[("kind", "length")]));
    assert_eq!(folded.step, None);
    assert_eq!(lefts(&folded), [("kind", "length", &Why::Unreadable)]);
    let both = typed(&job, place, &[("kind", "length"), ("formula", "3")]);
    let folded = fold_all(&job, place, &both);
    assert!(folded.step.is_some() && folded.left.is_empty(), "{folded:?}");
}

#[test]
fn pieces_titles_and_reckonings_go_in() {
    let job = demo();
    let (id, part) = job.parts()[0];
    let place = Place::Piece(id, 1);
    let with = after(&job, &fold_all(&job, place, &typed(&job, place, &[("as_cut", "33")])));
    let Some(Item::Part(Part { pieces, .. })) = with.item(id) else { panic!() };
    assert_eq!(pieces[1].tape(Dimension::Length), Some("33"));
    assert!(pieces[1].is_cut() && part.piece(1).tape(Dimension::Length).is_none());

    let titled = fold_all(&job, Place::Title, &typed(&job, Place::Title, &[(TITLE, " bench ")]));
    assert_eq!(after(&job, &titled).title, "bench");
    let empty = fold_all(&job, Place::Title, &typed(&job, Place::Title, &[(TITLE, " ")]));
    assert_eq!(lefts(&empty), [(TITLE, " ", &Why::Unreadable)]);

    let (id, kept) = job.kept()[0];
    let place = Place::KeptTitle(id);
    let renamed = after(&job, &fold_all(&job, place, &typed(&job, place, &[(TITLE, "new")])));
    assert_eq!(renamed.item(id).map(Item::name), Some("new"));
    // A reckoning keeps its texts whatever they come to.
    let (field, _) = kept.entries[0].clone();
    let place = Place::Item(id);
    let folded = fold_all(&job, place, &typed(&job, place, &[(&field, "×")]));
    assert!(folded.step.is_some() && folded.left.is_empty());
}

/// Typed, put down as a note, made in the record, read from there, and taken back.
#[test]
fn a_title_as_thumbs_and_phones_write_it_is_taken_back() {
    let first = demo();
    let (kept, reckoning) = first.kept()[0];
    let was = reckoning.title.clone();
    let heart = "Bench \u{2764}\u{fe0f}";
    for (place, typed_title, title) in [
        (Place::Title, "Potting  bench", "Potting bench"),
        (Place::Title, "Potting\u{a0}bench ", "Potting bench"),
        (Place::Title, heart, heart),
        (Place::KeptTitle(kept), heart, heart),
        (Place::KeptTitle(kept), "the  rail", "the rail"),
    ] {
        let step = fold_all(&first, place, &typed(&first, place, &[(TITLE, typed_title)])).step;
        let note = Note::Edit(Edit::Make(step.expect("a step")), None).written(1);
        let Some(Note::Edit(edit, _)) = Note::read(&note) else { panic!("an edit") };
        let mut book = Book::new(first.clone());
        assert_eq!(book.edit(&edit), Ok(None));
        let (mut book, _) = Book::open(&book.stored()).expect("it opens");
        assert_eq!(place.standing(&book.job).expect("it is there").text(TITLE), Some(title));
        assert_eq!(book.edit(&Edit::Undo), Ok(None), "{typed_title:?}");
        assert_eq!((&book.job.title, &book.job.kept()[0].1.title), (&first.title, &was));
    }
}

#[test]
fn a_piece_that_is_said_not_to_be_cut_while_it_is_measured_is_not() {
    let job = demo();
    let (id, _) = job.parts()[0];
    let place = Place::Piece(id, 1);
    let cut = after(&job, &fold_all(&job, place, &typed(&job, place, &[("done", "yes")])));
    let typed = typed(&cut, place, &[("as_cut", "5"), ("done", "no")]);
    let bench = Bench::default();
    let reckoned = Reckoned::of(&cut, &bench);
    let while_measuring = fold(&cut, &reckoned, &bench, place, &typed, Some("as_cut"));
    assert_eq!(while_measuring, Folded::default());
    let part = after(&cut, &fold_all(&cut, place, &typed));
    let Some(Item::Part(Part { pieces, .. })) = part.item(id) else { panic!("a part") };
    assert_eq!((pieces[1].tape(Dimension::Length), pieces[1].is_cut()), (Some("5"), false));
    // The width of what is not cut, with "yes" and at once "no", which is what stood there before.
    let texts = [("width", "3"), ("done", "no"), ("said", "no")];
    let typed = self::typed(&job, place, &texts);
    let reckoned = Reckoned::of(&job, &bench);
    let while_measuring = fold(&job, &reckoned, &bench, place, &typed, Some("width"));
    assert_eq!(while_measuring, Folded::default());
    let folded = fold_all(&job, place, &typed);
    assert_eq!(folded.done, ["said", "width"]);
    let part = after(&job, &folded);
    let Some(Item::Part(Part { pieces, .. })) = part.item(id) else { panic!("a part") };
    assert_eq!((pieces[1].tape(Dimension::Width), pieces[1].is_cut()), (Some("3"), false));
    // Of a part that is gone, only what was typed is told.
    let mut without = job.clone();
    without.make(&Step::new("", vec![job.removing(id)])).expect("taken out");
    assert_eq!(lefts(&fold_all(&without, place, &typed)), [("width", "3", &Why::Gone)]);
}

#[test]
fn what_somebody_else_wrote_stays_theirs_once_it_is_what_was_there_before() {
    let job = demo();
    let place = Place::Item(id_of(&job, "leg"));
    let mine = typed(&job, place, &[("as_cut", "2"), ("note", "by me")]);
    let theirs = typed(&job, place, &[("as_cut", "4")]);
    let between = after(&job, &fold_all(&job, place, &theirs));
    let seen = mine.clone().in_sight_of(&place.standing(&between).expect("it stands there"));
    assert_eq!(lefts(&fold_all(&between, place, &seen)), lefts(&fold_all(&between, place, &mine)));
    // It was taken back: what is typed in other fields goes in, and it is told what stands there.
    let folded = fold_all(&job, place, &seen);
    assert_eq!(
        (&folded.done[..], lefts(&folded)),
        (&["note".to_owned()][..], vec![("as_cut", "2", &Why::Theirs(String::new()))])
    );
    // So too by a page that reads its note.
    let Some(Note::Typed(read)) = Note::read(&Note::Typed(seen.clone()).written(7)) else {
        panic!("a note")
    };
    assert_eq!(read, seen);
    // Nobody has written in what was typed meanwhile.
    assert_eq!(mine.clone().in_sight_of(&place.standing(&job).expect("it stands there")), mine);
}

#[test]
fn what_was_typed_in_something_that_is_gone_is_not_dropped() {
    let job = demo();
    let id = id_of(&job, "leg");
    let place = Place::Item(id);
    let typed = typed(&job, place, &[("as_cut", "2")]);
    let mut without = job.clone();
    without.make(&Step::new("", vec![job.removing(id)])).expect("taken out");
    let folded = fold_all(&without, place, &typed);
    assert_eq!(folded.step, None);
    assert_eq!(lefts(&folded), [("as_cut", "2", &Why::Gone)]);
}

#[test]
fn what_is_put_back_does_not_overwrite_what_was_typed_since() {
    let texts = |a: &str, b: &str| Entries::from_pairs([("a", a), ("b", b)]);
    // `a` was thought to be in the job; it is not. Since then `a` was typed in again, and `b` too.
    let sent = Typed { filled: texts("1", "1"), typed: texts("2", "1") };
    let now = Typed { filled: texts("2", "1"), typed: texts("3", "5") };
    let back = sent.clone().put_back(Some(&now));
    assert_eq!(back, Typed { filled: texts("1", "1"), typed: texts("3", "5") });
    let untouched = Typed::filled_with(texts("2", "1"));
    assert_eq!(sent.clone().put_back(Some(&untouched)), sent);
    assert_eq!(sent.clone().put_back(None), sent);
}
