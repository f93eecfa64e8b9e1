//! What the settings come to, and that a bad kept value does no harm.

use reckoner_core::measure::{Fineness, Tape, Unit, length};
use reckoner_core::sheet::{Bench, Entries, Own, Side};

use super::{Aloud, Hand, SETTINGS, Settings, along, folded, settled};
use crate::form::{Action, Form};
use crate::link;

fn of(pairs: &[(&'static str, &'static str)]) -> Settings {
    Settings::of(&Entries::from_pairs(pairs.iter().copied()))
}

fn form_of(entries: Entries) -> Form {
    Form::new(&SETTINGS, entries, None).bringing_along(along)
}

#[test]
fn without_a_word_they_are_the_usual_bench() {
    let settings = Settings::default();
    assert_eq!(settings.bench, Bench::default());
    assert_eq!((settings.hand, settings.theme), (Hand::Right, "auto"));
    assert_eq!((settings.is_big, settings.aloud), (false, Aloud::OnTap));
}

#[test]
fn every_setting_takes_effect() {
    let settings = of(&[
        ("tape", "feet"),
        ("fineness", "32"),
        ("kerf", "3/32"),
        ("blade_reach", "2 1/4"),
        ("fence", "left"),
        ("thinnest_strip", "1/2"),
        ("hand", "left"),
        ("theme", "outdoor"),
        ("big", "yes"),
        ("aloud", "always"),
    ]);
    let inches = |text| length(text).expect("a length");
    assert_eq!(settings.bench.tape, Tape::FeetAndInches(Fineness::ThirtySecond));
    assert_eq!(settings.bench.kerf, inches("3/32"));
    assert_eq!(settings.bench.blade_reach, inches("2 1/4"));
    assert_eq!(settings.bench.fence, Side::Left);
    assert_eq!(settings.bench.thinnest_strip, inches("1/2"));
    let all = Own { kerf: true, blade_reach: true, fence: true, thinnest_strip: true };
    assert_eq!(settings.bench.own, all);
    assert_eq!((settings.hand, settings.theme), (Hand::Left, "outdoor"));
    assert_eq!((settings.is_big, settings.aloud), (true, Aloud::Always));
    for (id, tape) in [
        ("inches", Tape::SIXTEENTHS),
        ("decimal", Tape::DecimalInches(3)),
        ("mm", Tape::Millimetres(0)),
        ("mm_half", Tape::HalfMillimetres),
        ("mm_tenths", Tape::Millimetres(1)),
    ] {
        assert_eq!(of(&[("tape", id)]).bench.tape, tape);
    }
}

#[test]
fn what_cannot_be_read_counts_as_not_changed() {
    let settings = of(&[("kerf", "wide"), ("blade_reach", "-3"), ("theme", "pink"), ("tape", "")]);
    assert_eq!(settings, Settings::default());
}

#[test]
fn another_tape_leaves_every_length_as_it_was() {
    let form = form_of(settled(Entries::default()));
    let form = form.after(Action::Set(vec![("kerf", "3/32".to_owned())]));
    let form = form.after(Action::Set(vec![("tape", "mm".to_owned())]));
    assert_eq!(form.entries().unit(), Some(Unit::Millimetre));
    let settings = Settings::of(form.entries());
    assert_eq!(settings.bench.kerf, length("3/32").expect("a length"));
    // From now on a bare number is in millimetres.
    let form = form.after(Action::Set(vec![("kerf", "3".to_owned())]));
    assert_eq!(Settings::of(form.entries()).bench.kerf, length("3 mm").expect("a length"));
    // One step back is one tap.
    let undone = form.after(Action::Undo).after(Action::Undo);
    assert_eq!(undone.entries().text("kerf"), Some("3/32"));
    assert_eq!(undone.entries().unit(), Some(Unit::Inch));
}

#[test]
fn they_are_kept_and_read_back() {
    let entries = settled(Entries::from_pairs([("tape", "mm"), ("kerf", "3"), ("big", "yes")]));
    let back = link::kept(&SETTINGS, &link::typed(&entries));
    assert_eq!(back, entries);
}

#[test]
fn the_form_says_what_is_wrong_with_a_kerf() {
    let entries = Entries::from_pairs([("kerf", "wide")]);
    let names = reckoner_core::measure::text::NoNames;
    let sheet = SETTINGS.sheet(&entries, &Bench::default(), &names);
    assert_eq!(sheet.refusals.len(), 1);
    assert_eq!(sheet.refusals[0].field, "kerf");
}

#[test]
fn all_that_answers_take_from_here_is_an_example_until_it_is_set() {
    let ours = |pairs: &[(&'static str, &'static str)]| -> Vec<&str> {
        let names = reckoner_core::measure::text::NoNames;
        let sheet = SETTINGS.sheet(&kept(pairs), &Bench::default(), &names);
        sheet.assumed.fields().map(|field| field.id).collect()
    };
    assert_eq!(ours(&[]), ["kerf", "blade_reach", "fence", "thinnest_strip"]);
    assert_eq!(ours(&[("fence", "right"), ("kerf", "1/8")]), ["blade_reach", "thinnest_strip"]);
}

/// Entries of a window that measures in inches, unless said otherwise.
fn kept(pairs: &[(&'static str, &'static str)]) -> Entries {
    settled(Entries::from_pairs(pairs.iter().copied()))
}

#[test]
fn what_another_window_set_stays() {
    let before = kept(&[("kerf", "1/8"), ("big", "yes")]);
    let after = kept(&[("kerf", "1/8"), ("theme", "dark")]);
    assert_eq!(folded(&before, &before, &after), after);
    let theirs = kept(&[("kerf", "3/32"), ("big", "yes"), ("hand", "left")]);
    let all = kept(&[("kerf", "3/32"), ("hand", "left"), ("theme", "dark")]);
    assert_eq!(folded(&theirs, &before, &after), all);
}

/// A kerf of 1/8 in is 3.175 mm, whichever window has the tape in millimetres.
#[test]
fn a_size_stays_the_same_length_in_a_window_with_another_tape() {
    let inches = |text| length(text).expect("a length");
    let before = kept(&[]);
    let typed = kept(&[("kerf", "1/8")]);
    let metric = kept(&[("tape", "mm"), ("blade_reach", "60 mm")]);
    let all = folded(&metric, &before, &typed);
    assert_eq!(all.unit(), Some(Unit::Millimetre));
    let bench = Settings::of(&all).bench;
    assert_eq!((bench.tape, bench.kerf), (Tape::Millimetres(0), inches("1/8")));
    assert_eq!(bench.blade_reach, inches("60 mm"));
    // The other way round: the tape is changed here, and no size.
    let form = form_of(typed.clone());
    let chosen = form.after(Action::Set(vec![("tape", "mm".to_owned())]));
    let theirs = kept(&[("kerf", "3/32"), ("blade_reach", "2")]);
    let bench = Settings::of(&folded(&theirs, &typed, chosen.entries())).bench;
    assert_eq!((bench.tape, bench.kerf), (Tape::Millimetres(0), inches("3/32")));
    assert_eq!(bench.blade_reach, inches("2"));
}

#[test]
fn undo_leaves_what_another_window_set() {
    let told = std::rc::Rc::new(std::cell::Cell::new(0));
    let form = form_of(kept(&[])).kept_by({
        let told = told.clone();
        move |_, _| told.set(told.get() + 1)
    });
    let set = |id, text: &str| Action::Set(vec![(id, text.to_owned())]);
    let form = form.kept_after(set("theme", "dark"));
    let form = form.kept_after(Action::Follow(kept(&[("theme", "dark"), ("kerf", "3/32")])));
    assert_eq!(told.get(), 1, "what another window has kept is kept");
    let form = form.kept_after(Action::Undo);
    assert_eq!(form.entries(), &kept(&[("kerf", "3/32")]));
    assert!(!form.can_undo());
    let form = form.kept_after(Action::Redo);
    assert_eq!(form.entries(), &kept(&[("theme", "dark"), ("kerf", "3/32")]));
}
