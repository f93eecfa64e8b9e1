//! Rules, limits and refusals of the curve, as sentences on the screen.

use super::CALCULATOR;
use crate::measure::text::NoNames;
use crate::sheet::{Answer, Bench, Entries, Face, Figure, Sheet, face};

fn sheet(entries: &[(&str, &str)]) -> Sheet {
    CALCULATOR.sheet(&Entries::from_pairs(entries.iter().copied()), &Bench::default(), &NoNames)
}

fn answer(entries: &[(&str, &str)]) -> Answer {
    let sheet = sheet(entries);
    assert!(sheet.refusals.is_empty(), "{entries:?}: {:?}", sheet.refusals);
    sheet.answer.expect("no refusal, so an answer")
}

fn shown(figure: &Figure) -> String {
    match face(&figure.value, &Bench::default()) {
        Face::Measure(shown) => format!("{} {}", shown.mark, shown.lean),
        Face::Line { text, .. } => text,
        Face::Measures(_) => panic!("{} is a list", figure.id),
    }
}

#[track_caller]
fn check(entries: &[(&str, &str)], id: &str, expected: &str) {
    let answer = answer(entries);
    let figure = core::iter::once(&answer.headline)
        .chain(&answer.figures)
        .find(|figure| figure.id == id)
        .unwrap_or_else(|| panic!("{entries:?} has no {id}"));
    assert_eq!(shown(figure), expected, "{entries:?} {id}");
}

#[track_caller]
fn refused(entries: &[(&str, &str)], code: &str, sentence: &str, way_out: &str) {
    let sheet = sheet(entries);
    let tape = Bench::default().tape;
    let refusal =
        sheet.refusals.iter().find(|refusal| refusal.code == code).unwrap_or_else(|| {
            panic!("{entries:?} is not refused as {code}: {:?}", sheet.refusals)
        });
    assert_eq!(refusal.sentence.on(tape), sentence);
    assert_eq!(
        refusal.way_out.as_ref().map(|way| way.sentence.on(tape)).unwrap_or_default(),
        way_out
    );
}

const ARC: (&str, &str) = ("mode", "arc");
const RIM: (&str, &str) = ("mode", "rim");
const CORNER: (&str, &str) = ("mode", "corner");
const END: (&str, &str) = ("mode", "end");
const S_CURVE: (&str, &str) = ("mode", "s_curve");

#[test]
fn each_question_answers() {
    check(&[ARC, ("chord", "24"), ("rise", "4")], "radius", "20 in exact");
    check(&[ARC], "centre", "80 in exact");
    check(&[ARC, ("board", "5 1/2")], "narrowest", "3 1/2 in exact");
    check(&[RIM, ("short_chord", "6"), ("short_rise", "1")], "radius", "5 in exact");
    check(&[RIM, ("short_chord", "6"), ("short_rise", "3")], "diameter", "6 in exact");
    check(&[CORNER], "touches", "2 in exact");
    check(&[CORNER], "straight", "1 1/2 in exact");
    check(&[END, ("end_width", "7 1/4")], "centre", "3 5/8 in exact");
    check(&[S_CURVE, ("run", "8"), ("offset", "4")], "radius", "5 in exact");
    check(&[S_CURVE, ("run", "8"), ("offset", "4")], "meet_along", "4 in exact");
    check(&[S_CURVE, ("run", "8"), ("offset", "4")], "meet_across", "2 in exact");
    // Two quarter circles.
    check(&[S_CURVE, ("run", "8"), ("offset", "8")], "radius", "4 in exact");
    check(&[S_CURVE, ("run", "8"), ("offset", "8")], "steepest", "90.0°");
}

#[test]
fn marks_start_in_the_middle_and_end_at_the_end() {
    let answer = answer(&[ARC, ("chord", "20"), ("rise", "2"), ("step", "4")]);
    let rows: Vec<String> = answer.tables[0]
        .rows
        .iter()
        .map(|row| match face(&row[0], &Bench::default()) {
            Face::Measure(shown) => shown.mark.amount(),
            other => panic!("{other:?}"),
        })
        .collect();
    assert_eq!(rows, ["0", "4", "8", "10"]);
}

#[test]
fn the_nearest_round_thing_is_named_with_how_far_it_is_off() {
    let things = ("things", "4, 3 3/4, 9");
    check(&[CORNER, things], "thing", "4 in exact");
    check(&[CORNER, things], "thing_off", "just right");
    check(&[CORNER, ("radius", "1 3/4"), things], "thing", "3 3/4 in exact");
    check(&[CORNER, ("radius", "1 3/4"), things], "thing_off", "1/8 in too large");
    // 9 across would take more of a 5 1/2 edge than there is.
    check(&[CORNER, ("radius", "2 3/4"), things], "thing", "4 in exact");
    check(&[CORNER, ("radius", "2 3/4"), things], "thing_off", "3/4 in too small");
    // Over a chord of 9 the thing 9 across gives a half circle.
    check(&[ARC, ("chord", "9"), ("rise", "4"), things], "thing_centre", "0 in exact");
}

#[test]
fn without_round_things_nothing_is_said_of_them() {
    let none = answer(&[CORNER, ("things", "")]);
    assert!(none.figures.iter().all(|figure| figure.id != "thing"));
    assert_eq!(none.notes.len(), 1);
    let too_small = answer(&[ARC, ("things", "6")]);
    assert!(
        too_small
            .notes
            .iter()
            .any(|note| { note.to_string() == "None of your round things reaches across 36 in." })
    );
    let too_wide = answer(&[END, ("things", "6")]);
    assert_eq!(too_wide.notes[0].to_string(), "Each of your round things is wider than 5 1/2 in.");
}

#[test]
fn a_smaller_thing_leaves_a_flat_on_a_round_end() {
    let answer = answer(&[END, ("things", "5")]);
    assert_eq!(
        answer.notes[0].to_string(),
        "The nearest one, 5 in, is smaller: it rounds both corners and leaves a flat between them."
    );
}

#[test]
fn an_empty_board_is_not_checked() {
    let answer = answer(&[ARC, ("keep", "nonsense")]);
    assert!(answer.figures.iter().all(|figure| figure.id != "narrowest"));
}

#[test]
fn what_cannot_be_drawn_is_refused_with_a_way_out() {
    refused(
        &[ARC, ("chord", "10"), ("rise", "5 1/16")],
        "rise-over-half",
        "A rise over 5 in is more than a half circle. Measure across the widest place.",
        "Use a rise of 5 in or less.",
    );
    refused(
        &[RIM, ("short_chord", "6"), ("short_rise", "4")],
        "rise-over-half",
        "A rise over 3 in is more than a half circle. Measure across the widest place.",
        "Use a rise of 3 in or less.",
    );
    refused(
        &[S_CURVE, ("run", "4"), ("offset", "4 1/2")],
        "too-steep",
        "An offset of 4 1/2 in is more than the run of 4 in. The two arcs would run back on themselves.",
        "Use an offset of 4 in or less.",
    );
    refused(
        &[ARC, ("step", "1/8")],
        "too-many-marks",
        "A mark every 1/8 in is more than 100 marks.",
        "Use a step of 3/16 in or more.",
    );
    refused(
        &[ARC, ("board", "3 1/2")],
        "board-too-narrow",
        "A board of 3 1/2 in less 2 in for the curve leaves 1 1/2 in. You want 2 in.",
        "Use a board of 4 in or more.",
    );
    refused(
        &[ARC, ("board", "1 1/2")],
        "board-too-narrow",
        "The curve takes 2 in off, and the board is only 1 1/2 in wide.",
        "Use a board of 4 in or more.",
    );
    refused(
        &[ARC, ("board", "2"), ("keep", "0")],
        "board-too-narrow",
        "The curve takes 2 in off, and the board is only 2 in wide.",
        "Use a board of more than 2 in.",
    );
    refused(
        &[CORNER, ("radius", "3")],
        "edge-too-short",
        "The round takes 6 in of the edge, which is only 5 1/2 in long.",
        "Use a radius of 2 3/4 in or less.",
    );
    refused(
        &[CORNER, ("radius", "6"), ("corner", "60"), ("corners", "one")],
        "edge-too-short",
        "The round takes about 10 3/8 in of the edge, which is only 5 1/2 in long.",
        "Use a radius of 3 1/8 in or less.",
    );
    refused(
        &[CORNER, ("corner", "180")],
        "out-of-range",
        "This must be from 10 to 170°.",
        "Use 170°, the nearest.",
    );
    refused(
        &[ARC, ("chord", "99999"), ("rise", "1/999999999"), ("step", "1000")],
        "too-large",
        "This is too large or too fine to work out exactly.",
        "Use a length that a tape can show, and a larger rise.",
    );
}

#[test]
fn all_problems_show_at_once() {
    let sheet = sheet(&[ARC, ("chord", "3"), ("rise", "2"), ("board", "3"), ("step", "1/99")]);
    let codes: Vec<&str> = sheet.refusals.iter().map(|refusal| refusal.code).collect();
    assert_eq!(codes, ["rise-over-half", "too-many-marks", "board-too-narrow"]);
}
