//! Rules, limits and refusals of the spacing.

use super::CALCULATOR;
use super::track::Track;
use crate::calculators::trial::{Trial, inches};
use crate::measure::{Length, Tape};
use crate::sheet::{Span, Table, Value};

const TRIAL: Trial = Trial(&CALCULATOR);

fn list(text: &str) -> Vec<Length> {
    text.split(", ").map(inches).collect()
}

#[track_caller]
fn check_marks(pairs: &[(&str, &str)], expected: &str) {
    let answer = TRIAL.answer(pairs);
    let mut figures = answer.figures.iter().chain([&answer.headline]);
    let marks = figures.find(|figure| figure.id == "marks").map(|figure| &figure.value);
    assert_eq!(marks, Some(&Value::Lengths(list(expected))));
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

const COUNT: (&str, &str) = ("mode", "count");
const STEP: (&str, &str) = ("mode", "step");
const SLATS: (&str, &str) = ("mode", "slats");
const SLATS_NEAR: (&str, &str) = ("mode", "slats_near");

#[test]
fn the_headline_of_even_marks_is_how_far_apart_they_are_and_then_how_many() {
    let answer = TRIAL.answer(&[("length", "37")]);
    assert_eq!((answer.headline.id, answer.headline.from), ("pitch", "center to center"));
    assert_eq!(answer.figures[0].id, "count");
    let each_end = crate::calculators::trial::figure(&answer, "each_end");
    assert_eq!(each_end.value, Value::Lengths(list("2, 43/5, 76/5")));
}

/// On a page each mark stands once: the list has them from the left end, the table how far they are from the right.
#[test]
fn the_page_says_each_mark_once() {
    let answer = TRIAL.answer(&[("length", "37")]);
    let shown: Vec<&str> =
        answer.figures.iter().filter(|it| !answer.is_repeated(it)).map(|it| it.id).collect();
    assert_eq!(shown, ["count", "marks", "closes_at", "step_error"]);
    let columns = answer.tables[0].columns.iter().map(|it| it.id).collect::<Vec<_>>();
    assert_eq!(columns, ["mark", "from_left", "from_right", "to_next"]);
    assert_eq!(answer.marks_column(&answer.tables[0]), Some(1));
    // Where they are set off from both ends, that list is the headline, and the table has all of them.
    let answer = TRIAL.answer(&[STEP, ("length", "40"), ("step", "7")]);
    let is_repeated = |id| answer.is_repeated(&crate::calculators::trial::figure(&answer, id));
    assert!(is_repeated("marks") && is_repeated("from_right"));
    assert_eq!(answer.marks_column(&answer.tables[0]), None);
}

#[test]
fn the_headline_of_uneven_mirrored_marks_is_to_be_set_off_from_each_end() {
    let answer = TRIAL.answer(&[STEP, ("length", "40"), ("step", "7")]);
    assert_eq!((answer.headline.id, answer.headline.from), ("each_end", "from each end"));
}

#[test]
fn the_headline_of_marks_that_do_not_mirror_is_from_the_left_end() {
    let zone = ("keep_out", "14 to 26");
    let answer = TRIAL.answer(&[COUNT, ("length", "40"), ("count", "6"), ("right_end", "3"), zone]);
    assert_eq!((answer.headline.id, answer.headline.from), ("marks", "from left end"));
}

#[test]
fn the_headline_of_slats_is_the_gap_and_of_uneven_slats_their_left_edges() {
    let even =
        TRIAL.answer(&[SLATS_NEAR, ("length", "60"), ("slat_width", "3 1/2"), ("slat_gap", "1/2")]);
    assert_eq!((even.headline.id, even.headline.from), ("gap", "slat to slat"));
    let uneven = TRIAL.answer(&[SLATS, ("length", "60"), ("slats", "3"), ("keep_out", "20 to 40")]);
    assert_eq!((uneven.headline.id, uneven.headline.from), ("marks", "left edges, from left end"));
}

#[test]
fn an_empty_right_end_is_as_the_left_and_an_empty_left_end_is_like_the_gaps() {
    check_marks(&[COUNT, ("length", "40"), ("left_end", "5"), ("count", "3")], "5, 20, 35");
    check_marks(&[COUNT, ("length", "40"), ("left_end", ""), ("count", "3")], "10, 20, 30");
    let mixed = [COUNT, ("length", "40"), ("left_end", ""), ("right_end", "4"), ("count", "3")];
    check_marks(&mixed, "12, 24, 36");
}

#[test]
fn marks_step_over_a_zone_and_stay_even_elsewhere() {
    // The zone is 12 wide: no smaller widest gap. The others share what is left evenly.
    let pairs =
        [COUNT, ("length", "40"), ("left_end", "2"), ("count", "6"), ("keep_out", "14 to 26")];
    check_marks(&pairs, "2, 8, 14, 26, 32, 38");
}

#[test]
fn zones_that_meet_leave_no_mark_between_them() {
    let pairs = [COUNT, ("length", "40"), ("left_end", "0"), ("count", "3")];
    let apart = [&pairs[..], &[("keep_out", "10 to 19 15/16, 20 1/16 to 30")]].concat();
    check_marks(&apart, "0, 20, 40");
    let meeting = [&pairs[..], &[("keep_out", "10 to 20, 20 to 30")]].concat();
    check_marks(&meeting, "0, 10, 40");
}

#[test]
fn two_marks_that_would_mirror_only_on_one_spot_do_not_mirror() {
    // On 12 the middle is free, and the only other free stretch is from 7 to 8.
    let pairs = [COUNT, ("length", "12"), ("left_end", ""), ("count", "2")];
    let zones = [&pairs[..], &[("keep_out", "0 to 6, 6.001 to 7, 8 to 12")]].concat();
    check_marks(&zones, "6, 8");
}

#[test]
fn a_slat_fits_exactly_between_two_zones() {
    let pairs = [
        SLATS,
        ("length", "30"),
        ("slat_width", "4"),
        ("slats", "3"),
        ("left_slat", "0"),
        ("keep_out", "9 to 13, 17 to 21"),
    ];
    check_marks(&pairs, "0, 13, 26");
}

#[test]
fn a_fixed_step_meets_in_the_middle_once() {
    check_marks(&[STEP, ("length", "40"), ("left_end", "2")], "2, 8, 14, 20, 26, 32, 38");
}

#[test]
fn a_fixed_step_leaves_out_the_two_that_come_too_close_in_the_middle() {
    let pairs = [STEP, ("length", "45"), ("left_end", "4")];
    check_marks(&pairs, "4, 10, 16, 22, 23, 29, 35, 41");
    let apart = [&pairs[..], &[("least_gap", "2")]].concat();
    check_marks(&apart, "4, 10, 16, 29, 35, 41");
    let notes: Vec<String> =
        TRIAL.answer(&apart).notes.iter().map(|note| note.on(Tape::SIXTEENTHS)).collect();
    assert_eq!(notes[0], "The gap in the middle is 13 in. One more at 22 1/2 in halves it.");
}

#[test]
fn one_fewer_and_one_more_are_listed() {
    let answer = TRIAL.answer(&[("length", "37")]);
    let table = answer.tables.iter().find(|table| table.id == "others").expect("others");
    let gaps: Vec<Value> = table.rows.iter().map(|row| row[0].clone()).collect();
    assert_eq!(gaps, [5, 6, 7].map(Value::Count));
    let widest = Value::Length(inches("8 1/4"), Default::default());
    assert_eq!(table.rows[0][1], widest);

    // A tap on one fewer asks for so many, and its own row is then the one that leads nowhere.
    let ways = |table: &Table| -> Vec<_> {
        table.ways.iter().map(|way| way.as_ref().map(|it| it.texts(Tape::SIXTEENTHS))).collect()
    };
    let so_many =
        |count: &str| Some(vec![("mode", "count".to_owned()), ("count", count.to_owned())]);
    assert_eq!(ways(table), [so_many("5"), None, so_many("7")]);
    let fewer = TRIAL.answer(&[("length", "37"), ("mode", "count"), ("count", "5")]);
    let table = fewer.tables.iter().find(|table| table.id == "others").expect("others");
    let here = table.ways.iter().position(Option::is_none).expect("itself");
    assert_eq!(table.rows[here], [Value::Count(5), widest]);
}

#[test]
fn ends_that_leave_nothing_between_are_refused() {
    let sentence = "The two ends leave nothing between them on 12 in.";
    let pairs = [("length", "12"), ("left_end", "8")];
    check_refusal(
        &pairs,
        "left_end",
        sentence,
        "Set both ends at 3 in or less. [left_end=3 in; right_end=3 in]",
    );
    let pairs = [("length", "12"), ("left_end", "10"), ("right_end", "2")];
    check_refusal(
        &pairs,
        "left_end",
        sentence,
        "Set the left end at 5 in or less. [left_end=5 in; right_end=2 in]",
    );
}

/// By hand: five over 40 in, 2 from each end, stand at 2, 11, 20, 29 and 38. A zone from 19 to 21 1/2
/// holds the middle one, whose nearer edge is 19.
#[test]
fn a_mark_that_a_zone_moves_is_told() {
    let pairs = [COUNT, ("length", "40"), ("count", "5"), ("left_end", "2"), ("right_end", "2")];
    let zone = [&pairs[..], &[("keep_out", "19 to 21 1/2")]].concat();
    TRIAL.check_note(
        &zone,
        "Mark 3 would stand at 20 in, in a zone to keep clear of: it is moved to 19 in.",
    );
    let zones = [&pairs[..], &[("keep_out", "19 to 21 1/2, 28 1/2 to 31")]].concat();
    TRIAL.check_note(
        &zones,
        "Mark 3 would stand at 20 in, in a zone to keep clear of: it is moved to 19 in. \
         Number 4 is moved from 29 in to 28 1/2 in.",
    );
    let free = TRIAL.answer(&[&pairs[..], &[("keep_out", "22 to 23")]].concat());
    assert!(!free.notes.iter().any(|note| note.to_string().contains("moved")));
}

#[test]
fn a_single_one_goes_into_the_middle_and_slats_without_a_gap_get_one() {
    let one = [COUNT, ("length", "40"), ("count", "1"), ("left_end", "2"), ("right_end", "2")];
    let words = "One cannot stand at both ends at once.";
    let way_out = "Put it in the middle, 20 in from each end. [left_end=; right_end=]";
    check_refusal(&one, "count", words, way_out);
    check_marks(
        &[COUNT, ("length", "40"), ("count", "1"), ("left_end", ""), ("right_end", "")],
        "20",
    );
    check_refusal(
        &[("mode", "slats_near"), ("slat_gap", "0")],
        "slat_gap",
        "Without a gap the slats lie tight, and water stays between them.",
        "Leave 1/8 in. [slat_gap=1/8 in]",
    );
}

/// By hand: ends of 2 in, a zone from the very end. Its other edge is the nearest place that leaves
/// the 2 in; on the end of the board nothing holds. Past a second zone it is the edge of that one.
#[test]
fn a_place_in_a_zone_moves_inward_never_onto_the_end() {
    let pairs = [COUNT, ("length", "40"), ("count", "5"), ("left_end", "2"), ("right_end", "2")];
    let of = |zones| [&pairs[..], &[("keep_out", zones)]].concat();
    let words = "At 2 in it stands in a zone to keep clear of.";
    let clear = "It is clear at 4 in. [left_end=4 in]";
    check_refusal(&of("0 to 4"), "left_end", words, clear);
    check_refusal(&of("1 to 4"), "left_end", words, clear);
    let clear = "It is clear at 6 1/4 in. [left_end=6 1/4 in]";
    check_refusal(&of("0 to 4, 3 to 6.2"), "left_end", words, clear);
    let clear = "It is clear at 3 1/2 in. [right_end=3 1/2 in]";
    check_refusal(&of("36 1/2 to 40"), "right_end", words, clear);
    let none = "Make the zone smaller, or leave it out. []";
    check_refusal(&of("0 to 39"), "left_end", words, none);
}

#[test]
fn an_end_in_a_zone_is_refused_with_the_nearer_edge() {
    let pairs =
        [("length", "40"), ("left_end", "2"), ("right_end", "3"), ("keep_out", "0 to 3 1/2")];
    check_refusal(
        &pairs,
        "left_end",
        "At 2 in it stands in a zone to keep clear of.",
        "It is clear at 3 1/2 in. [left_end=3 1/2 in]",
    );
    let pairs =
        [SLATS, ("length", "40"), ("left_slat", "3"), ("slats", "4"), ("keep_out", "3 1/2 to 5")];
    check_refusal(
        &pairs,
        "left_slat",
        "At 3 in it stands in a zone to keep clear of.",
        "It is clear at 5 in. [left_slat=5 in]",
    );
}

#[test]
fn a_zone_off_the_board_is_refused() {
    check_refusal(
        &[("length", "40"), ("keep_out", "10 to 12, 44 to 50")],
        "keep_out",
        "The zone 44 in to 50 in is not on a length of 40 in.",
        "Leave it out. [keep_out=10 in to 12 in]",
    );
}

#[test]
fn too_many_zones_are_refused() {
    let zones: Vec<String> = (0..13).map(|n| format!("{n} to {n}.5")).collect();
    check_refusal(
        &[("keep_out", &zones.join(", ")), ("left_end", "")],
        "keep_out",
        "There are 13 zones; up to 12 can be minded.",
        "Join zones that lie close together. []",
    );
}

#[test]
fn one_mark_for_two_ends_is_refused() {
    check_refusal(
        &[COUNT, ("count", "1")],
        "count",
        "One cannot stand at both ends at once.",
        "Put it in the middle, 21 3/4 in from each end. [left_end=; right_end=]",
    );
    check_refusal(
        &[COUNT, ("count", "1"), ("keep_out", "20 to 23")],
        "count",
        "One cannot stand at both ends at once.",
        "Use two. [count=2]",
    );
}

#[test]
fn more_than_fit_are_refused_with_how_many_do() {
    let pairs = [COUNT, ("length", "10"), ("left_end", "0"), ("count", "7"), ("least_gap", "2")];
    check_refusal(&pairs, "count", "7 do not fit with 2 in between them.", "6 fit. [count=6]");
    // Two between the zone and each end: 0, 2 and 8, 10, and none between.
    let zone = [&pairs[..], &[("keep_out", "3 to 7")]].concat();
    check_refusal(
        &zone,
        "count",
        "7 do not fit with 2 in between them beside the zones.",
        "4 fit. [count=4]",
    );
    let slats = [SLATS, ("length", "40"), ("slat_width", "3 1/2"), ("slats", "12")];
    check_refusal(&slats, "slats", "12 do not fit.", "11 fit. [slats=11]");
}

#[test]
fn a_gap_that_cannot_be_kept_is_refused_with_the_smallest_that_can() {
    let pairs = [("length", "40"), ("keep_out", "10 to 19"), ("greatest_gap", "8")];
    check_refusal(
        &pairs,
        "greatest_gap",
        "No gap of 8 in reaches over the zone 10 in to 19 in.",
        "Allow gaps up to 9 in. [greatest_gap=9 in]",
    );
    // With 7 or more between, three gaps of 12 fill 36; 8 would need five and the room for them.
    let pairs = [("length", "40"), ("greatest_gap", "8"), ("least_gap", "7 1/2")];
    check_refusal(
        &pairs,
        "greatest_gap",
        "To keep every gap at or under 8 in takes more than 200 marks, or a smaller least gap.",
        "Allow gaps up to 9 in. [greatest_gap=9 in]",
    );
    // 2, 9, 16, and from there three gaps of 7 1/3 to 38.
    let pairs = [
        ("length", "40"),
        ("keep_out", "9 to 11, 16 to 20"),
        ("greatest_gap", "7"),
        ("least_gap", "6 1/2"),
    ];
    check_refusal(
        &pairs,
        "greatest_gap",
        "No marks beside the zones keep every gap at or under 7 in.",
        "Allow gaps up to 7 3/8 in. [greatest_gap=7 3/8 in]",
    );
}

#[test]
fn a_least_gap_over_the_gap_asked_for_is_refused() {
    let sentence = "The least gap 9 in is over the gap asked for, 8 in.";
    let way_out = "Use 8 in or less. [least_gap=8 in]";
    for pairs in [
        [("mode", "greatest_gap"), ("greatest_gap", "8"), ("least_gap", "9")],
        [STEP, ("step", "8"), ("least_gap", "9")],
        [SLATS_NEAR, ("slat_gap", "8"), ("least_gap", "9")],
    ] {
        check_refusal(&pairs, "least_gap", sentence, way_out);
    }
}

#[test]
fn a_least_gap_that_nothing_keeps_is_refused() {
    let way_out = "Leave the least gap open. [least_gap=]";
    let pairs = [COUNT, ("length", "10"), ("least_gap", "7")];
    check_refusal(&pairs, "least_gap", "Nothing fits here with 7 in between.", way_out);
    let pairs = [STEP, ("length", "10"), ("step", "8"), ("least_gap", "7")];
    check_refusal(&pairs, "least_gap", "Nothing fits here with 7 in between.", way_out);
}

#[test]
fn zones_over_everything_are_refused() {
    for mode in [COUNT, ("mode", "greatest_gap")] {
        check_refusal(
            &[mode, ("length", "10"), ("left_end", ""), ("keep_out", "0 to 10")],
            "keep_out",
            "The zones leave no free place.",
            "Make the zone smaller, or leave it out. []",
        );
    }
}

#[test]
fn more_than_two_hundred_are_refused() {
    check_refusal(
        &[STEP, ("length", "100"), ("step", "1/8")],
        "step",
        "That takes more than 200.",
        "Use 1/2 in or more. [step=1/2 in]",
    );
    check_refusal(
        &[SLATS_NEAR, ("length", "100"), ("slat_width", "1/4"), ("slat_gap", "1/8")],
        "slat_gap",
        "That takes more than 200.",
        "Use 1/4 in or more. [slat_gap=1/4 in]",
    );
    check_refusal(
        &[("length", "100"), ("left_end", "0"), ("greatest_gap", "1/4")],
        "greatest_gap",
        "To keep every gap at or under 1/4 in takes more than 200 marks, or a smaller least gap.",
        "Allow gaps up to 9/16 in. [greatest_gap=9/16 in]",
    );
}

#[test]
fn a_step_into_a_zone_is_refused_with_ends_that_clear_it() {
    check_refusal(
        &[STEP, ("length", "40"), ("left_end", "4"), ("keep_out", "9 1/2 to 11")],
        "left_end",
        "The mark at 10 in falls in the zone 9 1/2 in to 11 in.",
        "Start 3 1/2 in from the left and 3 1/2 in from the right. [left_end=3 1/2 in; right_end=3 1/2 in]",
    );
}

#[test]
fn a_slat_wider_than_the_opening_is_refused() {
    check_refusal(
        &[SLATS, ("length", "3"), ("slat_width", "3 1/2")],
        "slat_width",
        "A slat 3 1/2 in wide does not go into 3 in.",
        "Up to 3 in fits. [slat_width=3 in]",
    );
}

#[test]
fn numbers_too_fine_to_keep_are_refused() {
    check_refusal(
        &[COUNT, ("length", "40 + 1/999999999"), ("left_end", "1/999999937"), ("count", "199")],
        "length",
        "These numbers have too many digits to be kept exactly.",
        "Use sizes from a tape. []",
    );
}

fn span(from: &str, to: &str) -> Span {
    Span { from: inches(from), to: inches(to) }
}

#[test]
fn the_smallest_gap_that_can_be_kept_is_found_exactly() {
    let zones = [span("1/3", "3 6/7")];
    let track = Track::new(Length::ZERO, inches("10"), &zones, Length::ZERO, true);
    let smallest = track.smallest_widest(inches("1"), 2, 200).expect("small");
    assert_eq!(smallest, Some(inches("3 6/7 - 1/3")));
}

#[test]
fn the_better_of_two_nearly_equal_ways_past_the_zones_is_found() {
    // Two places between 0 and 30; each may stand on one of two spots a hair apart in worth.
    let zones = [span("0", "9.9999"), span("9.9999", "10.0002"), span("10.0002", "30")];
    let track = Track::new(Length::ZERO, inches("30"), &zones, inches("1/10000"), false);
    let places = track.best(3).expect("small").expect("two spots");
    assert_eq!(places, list("0, 10.0002, 30"));
}
