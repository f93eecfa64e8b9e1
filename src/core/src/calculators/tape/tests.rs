//! Rules and limits of the tape.

use super::CALCULATOR;
use crate::calculators::trial::{Trial, inches};
use crate::sheet::{Answer, Figure, Value};

const TRIAL: Trial = Trial(&CALCULATOR);

fn figure<'a>(answer: &'a Answer, id: &str) -> &'a Figure {
    answer.figures.iter().find(|figure| figure.id == id).expect("this figure")
}

#[track_caller]
fn check_headline(pairs: &[(&str, &str)], id: &str, expected: &str) {
    let headline = TRIAL.answer(pairs).headline;
    assert_eq!(headline.id, id);
    let Value::Length(length, _) = headline.value else { panic!("{headline:?}") };
    assert_eq!(length, inches(expected));
}

#[test]
fn the_last_written_line_is_the_answer() {
    check_headline(&[("strip", "10\n20\n\n")], "read", "20");
}

#[test]
fn a_chosen_line_is_the_answer() {
    check_headline(&[("strip", "10\n20"), ("line", "A")], "read", "10");
}

#[test]
fn a_later_line_follows_an_edit_of_an_earlier_one() {
    check_headline(&[("strip", "44\nA - 7\nB / 2")], "read", "18 1/2");
    check_headline(&[("strip", "46\nA - 7\nB / 2")], "read", "19 1/2");
}

#[test]
fn an_emptied_line_leaves_the_letters_of_the_others() {
    check_headline(&[("strip", "44\n\nA + 1")], "read", "45");
    let refusals = TRIAL.ask(&[("strip", "44\n\nB + 1")]).refusals;
    assert_eq!(refusals[0].sentence.to_string(), "“B” has no value yet. Give it one first.");
}

#[test]
fn a_line_cannot_use_itself_or_a_later_one() {
    for strip in ["A + 1", "B + 1\n3"] {
        let refusals = TRIAL.ask(&[("strip", strip), ("line", "A")]).refusals;
        assert_eq!(refusals[0].code, "cannot-read", "{strip}");
    }
}

#[test]
fn a_result_flows_on_exactly() {
    // A third of 10 has no line on any tape; three of them are 10 again.
    check_headline(&[("strip", "10 / 3\nA × 3")], "read", "10");
}

#[test]
fn a_half_is_read_on_the_tape_that_was_started_late() {
    let answer = TRIAL.answer(&[("strip", "44"), ("divide", "half"), ("start_mark", "1")]);
    assert_eq!(answer.headline.value, Value::Lengths(vec![inches("23"), inches("45")]));
    assert_eq!(
        answer.notes[0].to_string(),
        "Started at 1 in: read 45 in on the tape, and the part is 44 in."
    );
}

#[test]
fn stepping_off_a_rounded_part_shows_its_error() {
    // 9 2/3 is nearest to 9 11/16: six of them are 58 1/8, 1/8 beyond 58.
    let answer = TRIAL.answer(&[("strip", "58"), ("divide", "parts"), ("parts", "6")]);
    let Value::Length(error, _) = figure(&answer, "stepping_error").value else { panic!() };
    assert_eq!(error, inches("1/8"));
    let Value::Length(closes, _) = figure(&answer, "closes_at").value else { panic!() };
    assert_eq!(closes, inches("58"));
}

#[test]
fn a_plain_number_and_an_area_are_shown_as_what_they_are() {
    assert_eq!(TRIAL.answer(&[("strip", "44 in / 11 in")]).headline.id, "number");
    assert_eq!(TRIAL.answer(&[("strip", "12 in × 12 in")]).headline.id, "area");
}

#[test]
fn what_has_no_place_on_a_tape_is_refused() {
    for (strip, words) in [
        ("3 - 5", "This comes to -2 in. A tape starts at zero."),
        ("0", "This comes to 0 in. A tape starts at zero."),
        ("", "Nothing is written yet. Enter a measure, such as 3 3/8."),
    ] {
        assert_eq!(TRIAL.ask(&[("strip", strip)]).refusals[0].sentence.to_string(), words);
    }
    let full = "1\n".repeat(101);
    assert_eq!(TRIAL.ask(&[("strip", &full)]).refusals[0].code, "too-many");
    assert_eq!(TRIAL.ask(&[("strip", "5"), ("line", "Q")]).refusals[0].code, "no-such-line");
}

#[test]
fn letters_that_look_like_digits_or_signs_are_left_out() {
    let letters: Vec<String> = (0..25).map(crate::sheet::Strip::letter_at).collect();
    assert_eq!(letters.concat(), "ABCDEFGHJKLMNPQRSTUVWYZA2B2");
}
