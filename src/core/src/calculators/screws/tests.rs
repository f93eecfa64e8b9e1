//! Each question about screws through its fields: figures, limits and the words of each refusal.

use super::CALCULATOR;
use super::wood::Wood;
use crate::calculators::trial::{Trial, figure, find};
use crate::measure::Tape;
use crate::measure::text::NoNames;
use crate::sheet::{Answer, Bench, Entries, Value};

const TRIAL: Trial = Trial(&CALCULATOR);

#[test]
fn a_fresh_form_finds_the_longest_screw_of_the_top() {
    TRIAL.check(
        &[],
        &[
            ("best_length", "2 1/4"),
            ("enough", "2"),
            ("thread_in_receiver", "1 3/8"),
            ("behind_tip", "1/8"),
        ],
    );
}

#[test]
fn a_screw_at_hand_is_judged() {
    TRIAL.check(&[("at_hand", "2 1/2")], &[("verdict_at_hand", "shows through by 1/8 in")]);
    TRIAL.check(
        &[("at_hand", "2 5/16")],
        &[("verdict_at_hand", "inside the margin: 1/16 in behind the tip")],
    );
    TRIAL.check(&[("at_hand", "2")], &[("verdict_at_hand", "fits")]);
}

/// By hand: head sunk 1/8 in a piece of 1, receiver 1 1/2. A screw of 2 has its tip at 2 1/8: 1 1/8 in
/// the receiver, 3/8 behind it. One of 1 has it at 1 1/8; one of 3/4 at 7/8, 1/8 before the receiver.
#[test]
fn a_screw_at_hand_says_how_deep_it_goes_in_or_why_it_is_too_short() {
    let two = TRIAL.answer(&[("at_hand", "2")]);
    assert_eq!(two.headline.id, "at_hand_into");
    TRIAL.check(
        &[("at_hand", "2")],
        &[("at_hand_into", "1 1/8"), ("at_hand_behind", "3/8"), ("best_length", "2 1/4")],
    );
    for (at_hand, verdict) in [
        ("1", "too short: only 1/8 in goes in, 3/8 in is the least"),
        ("3/4", "too short: it ends 1/8 in before the other piece"),
        ("7/8", "too short: it ends at the other piece"),
    ] {
        TRIAL.check(&[("at_hand", at_hand)], &[("verdict_at_hand", verdict)]);
    }
    assert_eq!(find(&TRIAL.answer(&[("at_hand", "3/4")]), "at_hand_into"), None);
}

/// By hand, toed at 30° from the face of a part of 1 1/2, out in the middle: 3/4 ÷ sin 30° = 1 1/2 of
/// the screw stays in the part. One of 2 1/2 has 1 in past the end, 1 × cos 30° = 0.866 deep, and
/// 1 1/2 - 0.866 = 0.634 behind its tip; of one of 1 3/4 1/4 × cos 30° = 0.217 goes in; one of 1 1/4
/// ends 1/4 before the end.
#[test]
fn an_angled_screw_at_hand_says_how_deep_it_goes_in_or_why_it_is_too_short() {
    let toed = |at_hand| TRIAL.answer(&[("question", "toe"), ("at_hand", at_hand)]);
    let near = |answer: &Answer, id: &str, inches: f64| {
        let Value::Length(length, _) = figure(answer, id).value else { panic!("{id}") };
        assert!((length.to_f64() - inches).abs() < 1e-3, "{id} {length}");
    };
    let fits = toed("2 1/2");
    near(&fits, "at_hand_into", 3_f64.sqrt() / 2.0);
    near(&fits, "at_hand_behind", 1.5 - 3_f64.sqrt() / 2.0);
    let words = |answer: &Answer| {
        let Value::Words(words) = figure(answer, "verdict_at_hand").value else { panic!() };
        words.on(crate::measure::Tape::SIXTEENTHS)
    };
    assert_eq!(words(&fits), "fits");
    assert_eq!(words(&toed("1 3/4")), "too short: only about 3/16 in goes in, 3/8 in is the least");
    assert_eq!(words(&toed("1 1/4")), "too short: it ends 1/4 in before the end of the piece");
    assert_eq!(find(&toed("1 1/4"), "at_hand_into"), None);
    assert!(words(&toed("4")).starts_with("comes out of the back"));
}

#[test]
fn end_grain_and_a_thick_top_are_said() {
    let end = [("into", "end"), ("receiver_thickness", "3")];
    TRIAL.check(&end, &[("enough", "2 1/2")]);
    TRIAL.check_note(&end, "End grain holds about half as well, and may split: go 1/2 in deeper.");
    TRIAL.check_note(&end, "Enough thread in the other piece: 1 1/2 in.");
    TRIAL.check_note(&[], "Enough thread in the other piece: 1 in.");
    TRIAL.check_note(
        &[("top_thickness", "2")],
        "Drive through the thinner piece into the thicker one if you can.",
    );
    TRIAL.check_note(
        &[("top_thickness", "3/4"), ("receiver_thickness", "3/4")],
        "Under 6 diameters, 0.984 in, in the other piece the design rules count nothing. It locates, \
         it does not carry.",
    );
}

#[test]
fn pieces_that_no_screw_joins_are_refused() {
    TRIAL.check_refusal(
        &[("head_sunk", "1")],
        "head_sunk",
        "Sunk 1 in, the head goes right through a piece of 1 in.",
        "Leave the head flush: 0.",
        &[("head_sunk", "0")],
    );
    TRIAL.check_refusal(
        &[("receiver_thickness", "3/8")],
        "receiver_thickness",
        "No stock screw holds in wood of 3/8 in and keeps its tip inside the margin.",
        "Drive it from the other side, through the thinner piece.",
        &[("top_thickness", "3/8 in"), ("receiver_thickness", "1 in")],
    );
    TRIAL.check_refusal(
        &[("top_thickness", "3/8"), ("receiver_thickness", "3/8")],
        "receiver_thickness",
        "No stock screw holds in wood of 3/8 in and keeps its tip inside the margin.",
        "The other piece must be 1/2 in at least.",
        &[("receiver_thickness", "1/2 in")],
    );
    TRIAL.check_refusal(
        &[("top_thickness", "7")],
        "top_thickness",
        "No stock screw is long enough for a piece of 7 in.",
        "Use a bolt, or bore a wide hole to sink the head deeper.",
        &[],
    );
}

/// By hand: 3/32 in is 2.381 mm and 11/64 in 4.366 mm; a No. 8 shank, 0.164 in, is 4.166 mm; 2 in are 50.8 mm.
#[test]
fn beside_a_metric_tape_a_bit_says_how_wide_it_is() {
    let bench = Bench { tape: Tape::Millimetres(0), ..Bench::default() };
    let ask = |question: &str| {
        let entries = Entries::from_pairs([("question", question)]);
        CALCULATOR.sheet(&entries, &bench, &NoNames).answer.expect("an answer")
    };
    let pilot = ask("pilot");
    let value = |id: &str| figure(&pilot, id).value.in_line(&bench);
    assert_eq!(value("pilot_bit"), "3/32 in · 2.4 mm");
    assert_eq!(value("clearance_bit"), "11/64 in · 4.4 mm");
    assert_eq!(value("shank"), "4.2 mm");
    let placing: Vec<String> =
        ask("placing").notes.iter().map(|note| note.on(bench.tape)).collect();
    let shop = "In the shop: about 51 mm from an end, or a pilot hole.";
    assert!(placing.iter().any(|note| note == shop), "{placing:?}");
}

/// By hand, after the rules of `reference/screws.rs`: No. 8 in softwood 0.7 × 0.131 = 0.0917, which is 5.9 of 64, so 6; its
/// shank 0.164 is 10.5 of 64, so 11. No. 10 in hardwood 0.9 × 0.152 = 0.1368, 8.8 of 64, so 9; its shank 0.190 is 12.2, so 13.
/// Of 2 1/2 in, 1 is in the piece on top and 1 1/2 beyond it: half of that in softwood, all in hardwood. A nail of 0.131: at
/// most 0.75 × 0.131 = 0.0983, 6.3 of 64, so 6. One of 1 in ends at a piece of 1; 3/8 more is the least, and of those sold in
/// quarters 1 1/2 is the first.
#[test]
fn bits_come_in_64ths_whatever_the_tape() {
    let pine = [("question", "pilot")];
    TRIAL.check(
        &pine,
        &[("pilot_bit", "3/32 in"), ("clearance_bit", "11/64 in"), ("pilot_depth", "3/4")],
    );
    let oak = [("question", "pilot"), ("wood", "white_oak"), ("fastener", "screw_10")];
    TRIAL.check(
        &oak,
        &[("pilot_bit", "9/64 in"), ("clearance_bit", "13/64 in"), ("pilot_depth", "1 1/2")],
    );
    // By hand: thread 4/2 + 1/2 = 2 1/2 (NDS Table L2), so 1 1/2 is smooth; 4 - 1 goes in.
    let lag = [("question", "pilot"), ("fastener", "lag_3_8"), ("screw_length", "4")];
    TRIAL.check(&lag, &[("clearance_depth", "1 1/2"), ("pilot_depth", "3")]);
    let nail = [("question", "pilot"), ("fastener", "nail_8d")];
    TRIAL.check(&nail, &[("pilot_bit", "3/32 in")]);
    assert_eq!(find(&TRIAL.answer(&nail), "clearance_bit"), None);
    TRIAL.check_refusal(
        &[("question", "pilot"), ("screw_length", "1")],
        "screw_length",
        "At 1 in it does not come out of a piece of 1 in.",
        "Use 1 1/2 in or longer.",
        &[("screw_length", "1 1/2 in")],
    );
}

/// By hand, with the multiples of NDS 2018 C12.1.5.7, C12.1.6.6 and 12.5.1 that `reference/screws.rs` holds. No. 8 is 0.164 in,
/// drilled 10, 5 and 2.5 of them: 1.64, 0.82, 0.41. Rows are 3 apart, 0.492: 3 1/2 - 2 × 0.41 = 2.68 has 5 such steps
/// (2.46), so 6 rows. No. 10 is 0.190 in, not drilled 15 and 2.5: 2.85, 0.475. A lag of 3/8 in softwood 7 and 1.5: 21/8 and 9/16.
/// Two edges of No. 8 are 0.82 in; the next mark of the tape, in 16ths, is 14, so 7/8.
#[test]
fn distances_are_diameters_of_the_shank() {
    let drilled = [("question", "placing")];
    TRIAL.check(
        &drilled,
        &[
            ("end_distance", "1.64"),
            ("end_pushed", "0.82"),
            ("edge_distance", "0.41"),
            ("rows_that_fit", "6"),
        ],
    );
    let bare = [("question", "placing"), ("drilled", "no"), ("fastener", "screw_10")];
    TRIAL.check(&bare, &[("end_distance", "2.85"), ("edge_distance", "0.475")]);
    let lag = [("question", "placing"), ("fastener", "lag_3_8")];
    TRIAL.check(&lag, &[("end_distance", "2 5/8"), ("edge_distance", "9/16")]);
    TRIAL.check_refusal(
        &[("question", "placing"), ("board_width", "3/4")],
        "board_width",
        "A board of 3/4 in is narrower than two edge distances, 0.82 in.",
        "Use a board of 0.82 in, or a thinner screw.",
        &[("board_width", "7/8 in")],
    );
}

/// By hand: the screw leaves the middle of 1 1/2, 3/4 from the face, so it starts 3/4 ÷ tan 15° from the end. Of one of 2 1/2 in,
/// 1 1/2 is under the head and 1 goes on: cos 15° = 0.966 deep, of 3/4 that are wanted, and 0.534 stays behind it. One of
/// 2 1/4 goes 3/4 × 0.966 = 0.724 deep, which is not enough.
#[test]
fn a_pocket_screw_into_a_rail_wants_2_and_a_half_inches() {
    let pairs = [("question", "pocket")];
    TRIAL.check(&pairs, &[("best_length", "2 1/2"), ("exit_from_face", "3/4")]);
    let Value::Length(start, _) = figure(&TRIAL.answer(&pairs), "start").value else {
        panic!("start")
    };
    assert!((start.to_f64() - 0.75 / 15_f64.to_radians().tan()).abs() < 1e-3, "{start}");
}

#[test]
fn one_line_has_two_angles_by_the_face_it_is_measured_from() {
    let face = TRIAL.answer(&[("question", "toe"), ("toe_angle", "30")]);
    let receiver =
        TRIAL.answer(&[("question", "toe"), ("toe_angle", "60"), ("angle_from", "receiver")]);
    assert_eq!(face.headline, receiver.headline);
    let degrees = |answer: &Answer, id| {
        let Value::Real(degrees, ..) = figure(answer, id).value else { panic!("{id}") };
        degrees
    };
    for answer in [face, receiver] {
        assert!((degrees(&answer, "from_face") - 30.0).abs() < 1e-9);
        assert!((degrees(&answer, "from_receiver") - 60.0).abs() < 1e-9);
    }
}

#[test]
fn an_angled_screw_that_breaks_out_is_refused() {
    TRIAL.check_refusal(
        &[("question", "toe"), ("exit", "1 1/2")],
        "exit",
        "An exit 1 1/2 in down is outside a piece of 1 1/2 in.",
        "Leave it empty for the middle of the thickness.",
        &[("exit", "")],
    );
    let out =
        TRIAL.ask(&[("question", "toe"), ("angled_find", "exit"), ("start_back", "3")]).refusals;
    assert_eq!((out[0].field, out[0].code), ("start_back", "exit-outside"));
    let seat = TRIAL.ask(&[("question", "pocket"), ("seat_wood", "3")]).refusals;
    assert_eq!((seat[0].field, seat[0].code), ("seat_wood", "seat-outside"));
    TRIAL.check_refusal(
        &[("question", "pocket"), ("receiver_thickness", "7/16")],
        "receiver_thickness",
        "No stock screw holds in wood of 7/16 in and keeps its tip inside the margin.",
        "Leave more wood under the head, or make the other piece thicker.",
        &[],
    );
    TRIAL.check_refusal(
        &[("question", "toe"), ("toe_angle", "60"), ("exit", "1 1/4")],
        "receiver_thickness",
        "The screw comes out of the side of the other piece before it holds.",
        "Leave the end nearer the drilled face, or drill less steeply.",
        &[],
    );
}

/// By hand: middles 3 in apart and 3/8 thick leave 3 - 3/8 = 2 5/8; 3/8 apart, they touch. So 30 + 3/8 beside one at 30.
#[test]
fn two_that_meet_are_set_apart_in_height() {
    TRIAL.check(&[("question", "corner")], &[("between", "2 5/8"), ("always_clear", "3/8")]);
    TRIAL.check_refusal(
        &[("question", "corner"), ("b_height", "30 1/4")],
        "b_height",
        "The two meet in the leg.",
        "Set them 3/8 in apart in height.",
        &[("b_height", "30 3/8 in")],
    );
    // Short ones do not reach each other, whatever their heights.
    let short =
        [("question", "corner"), ("b_height", "30"), ("a_deep", "1 1/4"), ("b_deep", "1 1/4")];
    TRIAL.check_note(
        &short,
        "Measure both heights from the same end of the leg, and both places from outside faces.",
    );
    TRIAL.check_refusal(
        &[("question", "corner"), ("a_deep", "3 1/2")],
        "a_deep",
        "Going in 3 1/2 in comes out of a leg of 3 1/2 in.",
        "Half way in is 1 3/4 in.",
        &[("a_deep", "1 3/4 in")],
    );
    TRIAL.check_refusal(
        &[("question", "corner"), ("b_outside", "1/8")],
        "b_outside",
        "At that place it stands outside a leg of 3 1/2 in.",
        "The middle is 1 3/4 in.",
        &[("b_outside", "1 3/4 in")],
    );
}

/// By hand: 2 1/2 high and 3 apart leave 1/2. At one height: the first, 1 1/2 deep in a leg of 3 1/2, ends 2 from the outside,
/// and the second, 1/2 thick around 1 3/4, has its cheek at 1 3/4 + 1/4 = 2. They touch; 2 deep, they meet.
#[test]
fn tenons_are_apart_when_their_boxes_are() {
    let tenon = [("question", "corner"), ("section", "tenon"), ("size", "1/2")];
    TRIAL.check(&tenon, &[("between", "1/2"), ("always_clear", "2 1/2")]);
    let level = [&tenon[..], &[("b_height", "30"), ("a_deep", "1 1/2")]].concat();
    TRIAL.check(&level, &[("between", "0")]);
    let deeper = [&tenon[..], &[("b_height", "30")]].concat();
    assert_eq!(TRIAL.ask(&deeper).refusals[0].code, "they-meet");
}

/// By hand: 6 × 0.164 = 0.984 must be past a piece of 1, 1.984 in all; of screws sold in quarters 2 in is the first.
#[test]
fn what_holds_nothing_by_the_rules_is_refused() {
    TRIAL.check_refusal(
        &[("question", "hold"), ("screw_length", "1 3/4")],
        "screw_length",
        "Only 3/4 in is in the other piece; under 0.984 in the rules count nothing.",
        "Use 2 in or longer.",
        &[("screw_length", "2 in")],
    );
    TRIAL.check_refusal(
        &[("question", "hold"), ("screw_length", "3/4")],
        "screw_length",
        "It does not reach the other piece; 0.984 in is the least.",
        "Use 2 in or longer.",
        &[("screw_length", "2 in")],
    );
    TRIAL.check_refusal(
        &[("question", "hold"), ("fastener", "nail_8d")],
        "wet",
        "Our tables have no value for nails in wet wood.",
        "Use screws outdoors.",
        &[("fastener", "screw_8")],
    );
}

#[test]
fn end_grain_has_no_pull_but_for_lag_screws() {
    let screw = TRIAL.answer(&[("question", "hold"), ("into", "end")]);
    assert_eq!((screw.headline.id, find(&screw, "pull")), ("side_load", None));
    let lag = TRIAL.answer(&[
        ("question", "hold"),
        ("into", "end"),
        ("fastener", "lag_3_8"),
        ("screw_length", "4"),
    ]);
    assert_eq!(lag.headline.id, "pull");
    TRIAL.check_note(
        &[("question", "hold"), ("fastener", "lag_3_8"), ("screw_length", "4")],
        "From 1/4 in on, the side load depends on the grain; it is not given here.",
    );
}

/// By hand: 5 × 3 × 2 = 30, and 10 % more is 33: two boxes of 25, of which 50 - 30 = 20 are over.
#[test]
fn boxes_are_whole() {
    let pairs = [("question", "buy"), ("box_of", "25")];
    TRIAL
        .check(&pairs, &[("to_buy", "33"), ("needed", "30"), ("boxes", "2"), ("spare_left", "20")]);
}

/// NDS 2018 12.1.4.2: the thread hole of a lag screw is 65 to 85 % of its shank in wood of over 0.6, 60 to 75 % over 0.5,
/// and 40 to 70 % up to that.
#[test]
fn a_lag_takes_the_hole_of_its_range_of_gravity() {
    for (gravity, range) in [(0.50, [40, 70]), (0.55, [60, 75]), (0.60, [60, 75]), (0.65, [65, 85])]
    {
        for hardwood in [false, true] {
            assert_eq!(super::pilot::lag_range(Wood { gravity, hardwood }), range, "{gravity}");
        }
    }
}
