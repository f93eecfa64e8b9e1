//! Rules, limits and refusals of the dowel.

use super::CALCULATOR;
use crate::calculators::trial::{Trial, inches};
use crate::measure::{Rounding, Tape};
use crate::sheet::{Answer, Value};

const TRIAL: Trial = Trial(&CALCULATOR);

fn words(answer: &Answer, id: &str) -> String {
    let figure = answer.figures.iter().find(|figure| figure.id == id).expect("this figure");
    match &figure.value {
        Value::Words(words) => words.on(Tape::SIXTEENTHS),
        Value::Length(length, _) => length.to_string(),
        other => format!("{other:?}"),
    }
}

fn notes(answer: &Answer) -> Vec<String> {
    answer.notes.iter().map(|note| note.on(Tape::SIXTEENTHS)).collect()
}

/// The first refusal: its field, its sentence, and its way out with what it sets.
#[track_caller]
fn check_refusal(pairs: &[(&str, &str)], field: &str, sentence: &str, way_out: &str) {
    let refusals = TRIAL.ask(pairs).refusals;
    let refusal = refusals.first().expect("a refusal");
    let tape = Tape::SIXTEENTHS;
    assert_eq!((refusal.field, refusal.sentence.on(tape).as_str()), (field, sentence));
    let found = refusal.way_out.as_ref().map_or(String::new(), |way_out| {
        let set: Vec<String> =
            way_out.texts(tape).iter().map(|(id, text)| format!("{id}={text}")).collect();
        format!("{} [{}]", way_out.sentence.on(tape), set.join("; "))
    });
    assert_eq!(found, way_out);
}

const BLIND: (&str, &str) = ("hold", "blind");
const ONE_END: (&str, &str) = ("hold", "one_end");
const LEGS: (&str, &str) = ("measured", "legs");

/// By hand: 38 1/64 and 1/4 to trim at both ends, 32/64: 38 33/64.
#[test]
fn a_dowel_that_is_trimmed_never_comes_out_short() {
    let headline = TRIAL.answer(&[("overall", "38 1/64")]).headline;
    assert_eq!(headline.value, Value::Length(inches("38 33/64"), Rounding::Up));
}

/// By hand: two pieces of 1 1/2 leave 35 1/64; a hole of 1 at each end is filled but for 1/16: 35 1/64 + 2 - 8/64 = 36 57/64.
#[test]
fn a_dowel_blind_at_both_ends_never_comes_out_long() {
    let headline = TRIAL.answer(&[BLIND, ("overall", "38 1/64")]).headline;
    assert_eq!(headline.value, Value::Length(inches("36 57/64"), Rounding::Down));
}

#[test]
fn through_one_and_blind_in_the_other() {
    // 1 1/2 + 40 + 1 - 1/16, and 1/4 to trim.
    let answer =
        TRIAL.answer(&[ONE_END, ("measured", "clear"), ("clear", "40"), ("right_part", "2")]);
    assert_eq!(answer.headline.value, Value::Length(inches("42 11/16"), Rounding::Up));
    assert_eq!(words(&answer, "under"), "1");
}

#[test]
fn parts_of_two_thicknesses_stand_in_the_middle_of_their_legs() {
    // 40 + (3 - 1) / 2 + (3 - 2) / 2, and both parts.
    let answer = TRIAL.answer(&[
        LEGS,
        ("between_legs", "40"),
        ("leg", "3"),
        ("left_part", "1"),
        ("right_part", "2"),
    ]);
    assert_eq!(words(&answer, "overall"), "89/2");
}

/// By hand: 1.02 is 65.3 of 64, so 66, which is 1.03125: 0.01125 more than 1.02 and 0.04625 more than 0.985, which differ by
/// 0.035.
#[test]
fn an_oval_dowel_takes_the_bit_of_its_thicker_way() {
    let answer = TRIAL.answer(&[("dowel", "0.985"), ("across", "1.02")]);
    assert_eq!(words(&answer, "bit"), "1 1/32 in");
    assert_eq!(words(&answer, "clearance"), "0.011 in, across 0.046 in");
    assert_eq!(notes(&answer)[1], "The dowel is oval by 0.035 in: it is looser one way.");
}

#[test]
fn a_bit_no_bigger_than_the_dowel_is_called_tight() {
    let answer = TRIAL.answer(&[("dowel", "1")]);
    assert_eq!(words(&answer, "bit"), "1 in");
    assert!(notes(&answer)[1].contains("a tight fit"), "{:?}", notes(&answer));
}

/// By hand: the next whole millimetre from 24.1 on is 25.
#[test]
fn bits_in_whole_millimetres() {
    let answer = TRIAL.answer(&[("dowel", "24.1mm"), ("bits", "millimetres")]);
    assert_eq!(words(&answer, "bit"), "25 mm");
}

/// By hand: 17 - 5 = 12.
#[test]
fn the_holes_are_a_mirrored_pair() {
    let answer = TRIAL.answer(&[("part_length", "17"), ("from_front", "5"), ("from_top", "1 1/4")]);
    let distances: Vec<&Value> = answer.tables[0].rows.iter().map(|row| &row[2]).collect();
    let at = |text| Value::Length(inches(text), Rounding::Nearest);
    assert_eq!(distances, [&at("5"), &at("12")]);
}

/// By hand: 1 1/2 - 1 3/8 = 1/8.
#[test]
fn a_blind_hole_close_to_the_far_face_is_noted() {
    let answer = TRIAL.answer(&[BLIND, ("depth", "1 3/8")]);
    let note = "Only 1/8 in stays under the hole: a long point may come through. Set a stop.";
    assert!(notes(&answer).contains(&note.to_owned()), "{:?}", notes(&answer));
}

/// By hand: 1/4 to trim at both ends makes 48 1/8 of 47 5/8, and 48 of 47 1/2.
#[test]
fn a_dowel_longer_than_any_listed_rod_is_noted() {
    assert!(
        notes(&TRIAL.answer(&[("overall", "47 5/8")])).iter().any(|note| note.contains("48 in"))
    );
    assert!(
        !notes(&TRIAL.answer(&[("overall", "47 1/2")])).iter().any(|note| note.contains("48 in"))
    );
}

#[test]
fn frames_no_wider_than_their_parts_are_refused() {
    check_refusal(
        &[("overall", "3")],
        "overall",
        "The two pieces alone take up 3 in.",
        "Outside to outside must be more than 3 in. []",
    );
}

#[test]
fn a_part_that_does_not_stay_in_its_leg_is_refused() {
    check_refusal(
        &[LEGS, ("leg", "1 1/4")],
        "leg",
        "A piece 1 1/2 in thick does not go into a leg of 1 1/4 in.",
        "The leg must be 1 1/2 in or more. [leg=1 1/2 in]",
    );
    check_refusal(
        &[LEGS, ("leg", "3 1/4"), ("set_back", "2")],
        "set_back",
        "Set back by 2 in, the piece comes out of the inside of the leg.",
        "Set it back by 1 3/4 in or less. [set_back=1 3/4 in]",
    );
}

#[test]
fn a_blind_hole_through_its_part_is_refused() {
    check_refusal(
        &[BLIND, ("depth", "1 1/2")],
        "depth",
        "A hole 1 1/2 in deep goes through a piece of 1 1/2 in.",
        "Drill 1 1/4 in deep or less. [depth=1 1/4 in]",
    );
    check_refusal(
        &[ONE_END, ("depth", "1/2"), ("right_part", "3/8")],
        "depth",
        "A hole 1/2 in deep goes through a piece of 3/8 in.",
        "Drill 3/16 in deep or less. [depth=3/16 in]",
    );
}

#[test]
fn a_blind_hole_that_is_all_room_is_refused() {
    check_refusal(
        &[BLIND, ("depth", "1/2"), ("room", "1/2")],
        "room",
        "With 1/2 in left free, nothing goes into a hole 1/2 in deep.",
        "Leave 1/8 in or less. [room=1/8 in]",
    );
}

#[test]
fn a_dowel_too_big_for_the_part_is_refused() {
    check_refusal(
        &[("part_height", "1"), ("dowel", "1.02")],
        "dowel",
        "A hole of 1 1/32 in is no smaller than the piece, 1 in.",
        "Up to 1/2 in fits. [dowel=1/2 in; across=]",
    );
    check_refusal(
        &[("part_height", "1 3/4"), ("dowel", "1")],
        "dowel",
        "A hole of 1 in leaves too little wood in a piece of 1 3/4 in.",
        "Up to 7/8 in fits. [dowel=7/8 in; across=]",
    );
    TRIAL.answer(&[("part_height", "1 3/4"), ("dowel", "1"), ("least_wood", "3/8")]);
    check_refusal(
        &[("part_height", "1"), ("dowel", "1"), ("least_wood", "1/2")],
        "dowel",
        "A hole of 1 in is no smaller than the piece, 1 in.",
        "Use a higher piece. []",
    );
}

#[test]
fn a_hole_too_near_an_edge_is_refused() {
    check_refusal(
        &[("from_top", "3/4"), ("dowel", "1")],
        "from_top",
        "That leaves 1/4 in of wood beside the hole; 1/2 in is wanted.",
        "Use 1 in. [from_top=1 in]",
    );
    check_refusal(
        &[("from_top", "2 7/8"), ("part_height", "3 1/4"), ("dowel", "1")],
        "from_top",
        "The hole breaks out of the piece there.",
        "Use 2 1/4 in. [from_top=2 1/4 in]",
    );
    check_refusal(
        &[("from_front", "16 1/2"), ("part_length", "17"), ("dowel", "1")],
        "from_front",
        "The hole breaks out of the piece there.",
        "Use 16 in. [from_front=16 in]",
    );
}

#[test]
fn a_part_too_short_for_the_hole_is_refused() {
    check_refusal(
        &[("part_length", "1 1/2"), ("from_front", ""), ("dowel", "1")],
        "part_length",
        "A hole of 1 in leaves too little wood in a length of 1 1/2 in.",
        "It takes a length of 2 in. [part_length=2 in]",
    );
}

/// A hole of 1 5/8 in keeps 13/16 on either side of it in a part of 3 1/4 only in the middle, which is no mark in millimetres.
#[test]
fn where_only_the_middle_will_do_it_is_no_mark() {
    check_refusal(
        &[("from_top", "1"), ("part_height", "3 1/4"), ("dowel", "1 5/8")],
        "from_top",
        "That leaves 3/16 in of wood beside the hole; 13/16 in is wanted.",
        "Only the middle will do: leave this empty. [from_top=]",
    );
}

#[test]
fn every_reason_is_given_at_once() {
    let refusals =
        TRIAL.ask(&[BLIND, ("depth", "2"), ("from_top", "1/8"), ("overall", "2")]).refusals;
    let codes: Vec<&str> = refusals.iter().map(|refusal| refusal.code).collect();
    assert_eq!(codes, ["deeper-than-part", "nothing-between", "near-edge"]);
}
