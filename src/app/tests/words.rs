//! Answers as text: to copy, to say, and how large they may be set.
#![cfg(not(target_arch = "wasm32"))]

use reckoner_app::words::{Room, room, to_copy, to_say};
use reckoner_core::calculators;
use reckoner_core::measure::text::NoNames;
use reckoner_core::measure::{Length, length};
use reckoner_core::say;
use reckoner_core::sheet::{Assumed, Bench, Entries, Figure, Value, face};

fn inches(text: &str) -> Length {
    length(text).expect("a length")
}

fn fence(text: &str) -> Figure {
    let value = inches(text).into();
    Figure { id: "fence", label: "Fence", from: "fence to near tooth", value }
}

fn marks() -> Figure {
    let value = Value::Lengths(vec![inches("4"), inches("10 1/64")]);
    Figure { id: "marks", label: "Mark", from: "from left end", value }
}

/// An answer to the person's own sizes.
fn ink() -> Assumed {
    Assumed::default()
}

#[test]
fn a_copy_and_a_voice_tell_of_our_examples() {
    let bench = Bench::default();
    let entries = Entries::from_pairs([("board", "96"), ("part", "17 1/2"), ("wanted", "4")]);
    let crosscut = calculators::find("crosscut").expect("crosscut");
    let assumed = crosscut.sheet(&entries, &bench, &NoNames).assumed;
    assert_eq!(
        to_copy(&fence("3 3/8"), &bench, &assumed),
        "Fence: 3 3/8 in (fence to near tooth), from 2 example sizes: trim each end, kerf"
    );
    assert_eq!(
        to_say(&marks(), &bench, 0, &assumed),
        "Mark: four inches, from left end. Rests on 2 example sizes."
    );
}

#[test]
fn a_figure_is_copied_with_its_name_and_reference() {
    let bench = Bench::default();
    assert_eq!(to_copy(&fence("3 3/8"), &bench, &ink()), "Fence: 3 3/8 in (fence to near tooth)");
    assert_eq!(
        to_copy(&fence("3 25/64"), &bench, &ink()),
        "Fence: 3 3/8 in, and 1/64 more (fence to near tooth)"
    );
    assert_eq!(
        to_copy(&fence("3 13/32"), &bench, &ink()),
        "Fence: midway between 3 3/8 and 3 7/16 in (fence to near tooth)"
    );
    assert_eq!(
        to_copy(&marks(), &bench, &ink()),
        "Mark: 4 in; 10 in, and 1/64 more (from left end)"
    );
    let strips = Figure { id: "n", label: "Strips", from: "", value: 4_u32.into() };
    assert_eq!(to_copy(&strips, &bench, &ink()), "Strips: 4");
}

#[test]
fn a_voice_says_the_words_of_one_mark() {
    let bench = Bench::default();
    assert_eq!(
        to_say(&fence("3 3/8"), &bench, 0, &ink()),
        "Fence: three and three eighths inches, fence to near tooth."
    );
    assert_eq!(
        to_say(&marks(), &bench, 1, &ink()),
        "Mark: ten inches, and one sixty-fourth more, from left end."
    );
}

#[test]
fn only_a_long_answer_is_set_smaller() {
    let bench = Bench::default();
    let of = |value: Value| room(&face(&value, &bench), 0);
    assert_eq!(of(fence("123 15/16").value), Room::Short);
    assert_eq!(of(fence("37 7/32").value), Room::Short);
    assert_eq!(of(Value::Count(12)), Room::Short);
    assert_eq!(of(Value::Exact(inches("7 1/2").in_inches(), 1, "board feet")), Room::Long);
    assert_eq!(of(Value::Words(say!["Springy: add a support in the middle."])), Room::Words);
}
