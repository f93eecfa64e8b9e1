//! What happens to a form, action by action.

use reckoner_core::calculators::{crosscut, tape};
use reckoner_core::measure::Unit;
use reckoner_core::measure::text::NoNames;
use reckoner_core::sheet::{Bench, Entries};

use super::{Action, Entrance, Form, Needed, Slot, Way, needed, neighbour, said_elsewhere, shows};

const PARTS: Slot = Slot { field: "parts", line: None };
const START: Slot = Slot { field: "start_mark", line: None };

fn form() -> Form {
    Form::new(&tape::CALCULATOR, Form::fresh(Unit::Inch), None)
}

fn after(form: Form, actions: impl IntoIterator<Item = Action>) -> Form {
    actions.into_iter().fold(form, |form, action| form.after(action))
}

fn types(slot: Slot, text: &str) -> Action {
    Action::Type(slot, text.to_owned())
}

#[test]
fn typing_in_one_place_is_one_step_to_undo() {
    let form = after(form(), [types(PARTS, "1"), types(PARTS, "12"), types(START, "1")]);
    assert_eq!(form.entries().text("parts"), Some("12"));
    let form = form.after(Action::Undo);
    assert_eq!(form.entries().text("start_mark"), None);
    assert_eq!(form.entries().text("parts"), Some("12"));
    let form = form.after(Action::Undo);
    assert_eq!(form.entries().text("parts"), None);
    assert!(!form.can_undo());
}

#[test]
fn a_field_left_and_entered_again_begins_a_new_step() {
    let form = after(
        form(),
        [
            Action::Edit(PARTS),
            types(PARTS, "3"),
            Action::Leave,
            Action::Edit(PARTS),
            types(PARTS, "4"),
        ],
    );
    assert_eq!(form.after(Action::Undo).entries().text("parts"), Some("3"));
}

#[test]
fn what_was_undone_comes_back_until_something_else_is_typed() {
    let undone = after(form(), [types(PARTS, "3"), Action::Undo]);
    assert_eq!(undone.after(Action::Redo).entries().text("parts"), Some("3"));
    assert!(!after(undone, [types(START, "1")]).can_redo());
}

#[test]
fn nothing_to_undo_changes_nothing() {
    assert!(form().after(Action::Undo) == form());
    assert!(form().after(Action::Redo) == form());
}

#[test]
fn a_fresh_start_can_be_undone() {
    let form = after(form(), [types(PARTS, "7"), Action::StartFresh(Unit::Inch)]);
    assert_eq!(form.entries().text("parts"), None);
    assert_eq!(form.after(Action::Undo).entries().text("parts"), Some("7"));
}

#[test]
fn a_way_out_sets_several_fields_in_one_step() {
    let set = vec![("divide", "parts".to_owned()), ("parts", "5".to_owned())];
    let form = form().after(Action::Set(set));
    assert_eq!(form.entries().text("parts"), Some("5"));
    assert_eq!(form.after(Action::Undo).entries().text("divide"), None);
}

#[test]
fn the_same_choice_again_is_no_step() {
    let choose = Action::Set(vec![("divide", "half".to_owned())]);
    let form = after(form(), [choose.clone(), choose]);
    assert!(!form.after(Action::Undo).can_undo());
}

#[test]
fn entries_of_a_link_give_way_to_ones_own_with_undo() {
    let own = Entries::from_pairs([("parts", "9")]);
    let theirs = Entries::from_pairs([("parts", "2")]);
    let form = Form::new(&tape::CALCULATOR, theirs, Some(own));
    assert_eq!(form.after(Action::Undo).entries().text("parts"), Some("9"));
}

#[test]
fn writing_in_a_strip_goes_back_to_its_last_line() {
    let line = Slot { field: "strip", line: Some(1) };
    let form = after(form(), [Action::Set(vec![("line", "A".to_owned())]), types(line, "44\nA/2")]);
    assert_eq!(form.entries().text("line"), Some(""));
}

#[test]
fn many_steps_are_kept_and_the_oldest_forgotten() {
    let mut form = form();
    for count in 0..300 {
        form = after(form, [types(PARTS, &count.to_string()), Action::Leave]);
    }
    let mut undone = 0;
    while form.can_undo() {
        form = form.after(Action::Undo);
        undone += 1;
    }
    assert_eq!(undone, super::MOST_STEPS);
}

/// The form, what it shows beside `start_mark`, and whether it waits for it.
fn problem_shows(form: &Form) -> (bool, bool) {
    let sheet = form.calculator().sheet(form.entries(), &Bench::default(), &NoNames);
    let refusal = sheet.refusals.iter().find(|refusal| refusal.field == "start_mark");
    let refusal = refusal.expect("refused");
    (shows(form, refusal), needed(form, &sheet) == Needed::WaitingFor("Tape starts at"))
}

#[test]
fn half_typed_is_not_wrong_until_it_is_left() {
    let typing = after(form(), [Action::Edit(START), types(START, "1 3/")]);
    assert_eq!(problem_shows(&typing), (false, true));
    assert_eq!(problem_shows(&typing.after(Action::Leave)), (true, false));
    assert_eq!(problem_shows(&typing.after(Action::Edit(PARTS))), (true, false));
}

#[test]
fn typing_hides_the_problem_again() {
    let left = after(form(), [Action::Edit(START), types(START, "1 3/"), Action::Leave]);
    let again = after(left, [Action::Edit(START), types(START, "1 3/x")]);
    assert_eq!(problem_shows(&again), (false, true));
}

#[test]
fn what_is_wrong_from_the_start_shows_at_once() {
    let entries = Entries::from_pairs([("start_mark", "nonsense")]);
    let form = Form::new(&tape::CALCULATOR, entries, None);
    assert!(problem_shows(&form).0);
}

#[test]
fn the_way_through_the_places_ends_at_both_ends() {
    let line = |line| Slot { field: "strip", line: Some(line) };
    let slots = [line(0), line(1), PARTS];
    assert_eq!(neighbour(&slots, line(0), Way::Next), Some(line(1)));
    assert_eq!(neighbour(&slots, PARTS, Way::Next), None);
    assert_eq!(neighbour(&slots, PARTS, Way::Previous), Some(line(1)));
    assert_eq!(neighbour(&slots, line(0), Way::Previous), None);
    assert_eq!(neighbour(&slots, START, Way::Next), None);
}

#[test]
fn an_example_and_a_size_are_written_over_and_a_formula_is_gone_on_with() {
    assert_eq!(form().entrance(START), Entrance::Whole);
    for (text, expected) in [
        ("37 7/8", Entrance::Whole),
        ("3 ft 2 in", Entrance::Whole),
        ("37 + 7/8", Entrance::End),
        ("2 × 3", Entrance::End),
        ("leg", Entrance::End),
        ("3 x y", Entrance::End),
        ("", Entrance::End),
    ] {
        assert_eq!(form().after(types(START, text)).entrance(START), expected, "{text}");
    }
    // Our own sum in the strip is an example too; a line of the person's is gone on with.
    let line = Slot { field: "strip", line: Some(0) };
    assert_eq!(form().entrance(line), Entrance::Whole);
    assert_eq!(form().after(types(line, "3")).entrance(line), Entrance::End);
}

#[test]
fn nothing_that_stands_in_the_job_book_is_written_over() {
    let form =
        Form::new(crate::job_book::forms::Form::Measure.asks(), Form::fresh(Unit::Inch), None);
    assert_eq!(form.entrance(Slot::of("name")), Entrance::End);
    for field in ["name", "formula", "as_cut", "note"] {
        let slot = Slot::of(field);
        assert_eq!(form.after(types(slot, "3")).entrance(slot), Entrance::End, "{field}");
    }
}

/// What an answer rests on that is ours, with the usual bench.
fn assumed(form: &Form) -> Vec<&'static str> {
    let sheet = form.calculator().sheet(form.entries(), &Bench::default(), &NoNames);
    sheet.assumed.fields().map(|field| field.id).collect()
}

#[test]
fn typing_the_very_figure_of_an_example_makes_it_ones_own_and_so_does_confirming_it() {
    let bench = Bench::default();
    let fresh = Form::new(&crosscut::CALCULATOR, Form::fresh(Unit::Inch), None);
    let all = ["board", "trim", "part", "wanted", "kerf"];
    assert_eq!(assumed(&fresh), all);
    let board = fresh.calculator().fields.iter().find(|field| field.id == "board").expect("board");
    let example = fresh.text(board, &bench);
    for form in [
        fresh.after(types(Slot::of("board"), &example)),
        fresh.after(fresh.confirming(board, &bench)),
    ] {
        assert_eq!(assumed(&form), all[1..]);
        assert_eq!(form.text(board, &bench), example);
        // Undo brings a size back with its state.
        assert_eq!(assumed(&form.after(Action::Undo)), all);
        assert_eq!(assumed(&form.after(Action::StartFresh(Unit::Inch))), all);
    }
    // Going to a place and on from it is no word of anybody's.
    let gone = after(fresh, [Action::Edit(Slot::of("board")), Action::Leave]);
    assert_eq!(assumed(&gone), all);
}

/// A part's length starts blank: it is told as wrong once it was begun and left, or once the form is to be put in.
#[test]
fn what_was_never_touched_is_not_told_as_wrong() {
    const LENGTH: Slot = Slot { field: "length", line: None };
    let part = crate::job_book::forms::Form::Part.asks();
    let shown = |form: &Form| {
        let sheet = part.sheet(form.entries(), &Bench::default(), &NoNames);
        let refusal = sheet.refusals.iter().find(|it| it.field == "length").expect("it is blank");
        shows(form, refusal)
    };
    let fresh = Form::new(part, Form::fresh(Unit::Inch), None);
    assert!(!shown(&fresh));
    assert!(!shown(&after(fresh.clone(), [Action::Edit(LENGTH)])));
    assert!(shown(&after(fresh.clone(), [Action::Edit(LENGTH), Action::Leave])));
    assert!(shown(&fresh.after(Action::Check)));
    // A size of the job that stands there blank is still to write.
    let blank = Form::new(part, Entries::from_pairs([("length", "")]), None);
    assert!(shown(&blank));
}

/// The first size is left with half of a fraction in it, and then another is typed.
#[test]
fn of_other_fields_a_voice_hears_what_is_shown_there() {
    let said = |form: &Form| {
        let sheet = form.calculator().sheet(form.entries(), &Bench::default(), &NoNames);
        said_elsewhere(form, &sheet, Bench::default().tape)
    };
    let typing = after(form(), [Action::Edit(START), types(START, "1 3/")]);
    assert_eq!(said(&typing), "", "its own field says it when it is left");
    let on = typing.after(Action::Edit(PARTS));
    assert!(said(&on).starts_with("Tape starts at: "), "{}", said(&on));
    assert_eq!(said(&on.after(Action::Leave)), "", "nothing is typed: the field itself speaks");
}
