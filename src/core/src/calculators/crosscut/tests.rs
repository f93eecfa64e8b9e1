//! Rules, limits and refusals of crosscutting.

use super::CALCULATOR;
use crate::calculators::trial::{Trial, inches};
use crate::measure::Tape;
use crate::sheet::{Caution, Refusal, Value};

const TRIAL: Trial = Trial(&CALCULATOR);

fn refusal(pairs: &[(&str, &str)]) -> Refusal {
    TRIAL.ask(pairs).refusals.into_iter().next().expect("a refusal")
}

#[track_caller]
fn check(pairs: &[(&str, &str)], parts: u64, leftover: &str) {
    let answer = TRIAL.answer(pairs);
    assert_eq!(answer.headline.value, Value::Count(parts));
    let Value::Length(left, _) = answer.figures[0].value else { panic!() };
    assert_eq!(left, inches(leftover));
}

#[test]
fn the_last_part_needs_no_kerf_when_it_ends_the_board() {
    // 3 × 10 + 2 × 1/8 = 30 1/4.
    check(&[("board", "30 1/4"), ("trim", "0"), ("part", "10")], 3, "0");
    check(&[("board", "30 15/64"), ("trim", "0"), ("part", "10")], 2, "9 63/64");
}

#[test]
fn a_scrap_thinner_than_the_kerf_is_sawdust() {
    check(&[("board", "30 5/16"), ("trim", "0"), ("part", "10")], 3, "0");
    check(&[("board", "30 1/2"), ("trim", "0"), ("part", "10")], 3, "1/8");
}

#[test]
fn parts_are_laid_around_a_knot() {
    // Clear stretches 0 to 11 and 13 to 40: one part, then two.
    let answer =
        TRIAL.answer(&[("board", "40"), ("trim", "0"), ("part", "10"), ("knots", "11 to 13")]);
    assert_eq!(answer.headline.value, Value::Count(3));
    let starts: Vec<&Value> = answer.tables[0].rows.iter().map(|row| &row[1]).collect();
    let at = |text| Value::Length(inches(text), Default::default());
    assert_eq!(starts, [&at("0"), &at("13"), &at("23 1/8")]);
    assert_eq!(answer.tables[1].rows, [vec![at("10 1/8"), at("12 7/8")]]);
}

#[test]
fn a_knot_beyond_the_board_or_in_the_trim_changes_nothing() {
    check(&[("knots", "96 to 120, 0 to 1/4")], 5, "6 7/8");
}

#[test]
fn boards_for_the_job_are_rounded_up() {
    let boards = |wanted| TRIAL.answer(&[("wanted", wanted)]).figures[1].value.clone();
    assert_eq!(boards("10"), Value::Count(2));
    assert_eq!(boards("11"), Value::Count(3));
}

#[test]
fn short_parts_bring_the_caution_and_the_note() {
    let short = TRIAL.answer(&[("part", "5")]);
    assert_eq!(short.cautions[0], Caution::SmallPiece);
    assert!(short.notes.iter().any(|note| note.to_string().contains("not loose")));
    assert!(!TRIAL.answer(&[("part", "12")]).cautions.contains(&Caution::SmallPiece));
}

#[test]
fn a_part_longer_than_the_board_names_the_board_it_needs() {
    let refusal = refusal(&[("part", "96")]);
    assert_eq!((refusal.field, refusal.code), ("part", "part-too-long"));
    assert_eq!(
        refusal.sentence.to_string(),
        "A piece of 96 in does not fit: 95 in is left between the trims."
    );
    let way_out = refusal.way_out.expect("a way out");
    assert_eq!(way_out.texts(Tape::SIXTEENTHS), [("board", "97 in".to_owned())]);
}

#[test]
fn trims_that_take_the_board_are_refused() {
    let refusal = refusal(&[("board", "10"), ("trim", "5")]);
    assert_eq!((refusal.field, refusal.code), ("board", "trims-take-the-board"));
    assert_eq!(refusal.sentence.to_string(), "The trims take the whole board of 10 in.");
}

#[test]
fn knots_everywhere_name_the_longest_clear_stretch() {
    let refusal = refusal(&[("knots", "10 to 12, 25 to 90")]);
    assert_eq!((refusal.field, refusal.code), ("knots", "no-clear-place"));
    assert_eq!(
        refusal.sentence.to_string(),
        "No place is clear of knots for 17 1/2 in. The longest is 13 in."
    );
    let way_out = refusal.way_out.expect("a way out");
    assert_eq!(way_out.texts(Tape::SIXTEENTHS), [("part", "13 in".to_owned())]);
}

#[test]
fn too_many_parts_to_list_are_refused() {
    let refusal = refusal(&[("part", "1/8"), ("kerf", "0")]);
    assert_eq!(refusal.code, "too-many-parts");
    assert_eq!(refusal.sentence.to_string(), "That is more than 200 pieces from one board.");
}
