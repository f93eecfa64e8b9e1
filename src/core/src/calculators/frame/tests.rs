//! Each question of the frame through its fields: figures, limits and the words of each refusal.

use super::CALCULATOR;
use crate::calculators::trial::{Trial, figure, inches};
use crate::sheet::{Answer, Value};

const TRIAL: Trial = Trial(&CALCULATOR);

#[test]
fn a_fresh_frame_gives_the_rail_of_the_bench() {
    TRIAL.check(&[], &[("rail_cut", "39"), ("leg_to_leg", "39")]);
}

#[test]
fn legs_of_two_sizes_make_one_rail() {
    let pairs = [("overall", "40"), ("leg_left", "3 7/16"), ("leg_right", "3 1/2")];
    TRIAL.check(&pairs, &[("rail_cut", "33 1/16")]);
}

#[test]
fn tenons_are_added_to_the_cut_but_not_to_the_shoulders() {
    let pairs = [("joint", "tenon"), ("tenon", "1 1/4")];
    TRIAL.check(&pairs, &[("rail_cut", "41 1/2"), ("leg_to_leg", "39"), ("mortise", "1 3/8")]);
}

#[test]
fn a_tenon_so_long_that_its_mortise_comes_out_is_cut_through() {
    let answer = TRIAL.answer(&[("joint", "tenon"), ("tenon", "3 7/16")]);
    assert!(answer.figures.iter().all(|figure| figure.id != "mortise"));
    assert_eq!(
        answer.notes[0].to_string(),
        "A mortise 1/8 in deeper than the tenon comes out of the leg: cut it right through."
    );
}

#[test]
fn a_lapped_rail_runs_over_the_legs() {
    TRIAL.check(
        &[("joint", "lap"), ("lap_short", "1/2")],
        &[("rail_cut", "45"), ("leg_to_leg", "39")],
    );
    let pairs = [("joint", "lap"), ("lap_short", "1/2"), ("find", "overall"), ("rail", "45")];
    TRIAL.check(&pairs, &[("overall_length", "46")]);
}

#[test]
fn legs_follow_from_overall_and_rail() {
    TRIAL.check(&[("find", "leg")], &[("leg_each", "3 1/2")]);
    let pairs = [("find", "leg"), ("joint", "tenon"), ("rail", "41")];
    TRIAL.check(&pairs, &[("leg_each", "3 1/2")]);
}

#[test]
fn what_no_rail_can_do_is_refused() {
    let none: &[(&str, &str)] = &[];
    TRIAL.check_refusal(
        &[("overall", "7")],
        "overall",
        "The two legs take 7 in of 7 in: no rail is left.",
        "Make the overall more than 7 in.",
        none,
    );
    TRIAL.check_refusal(
        &[("find", "leg"), ("rail", "46")],
        "rail",
        "A rail of 46 in leaves nothing of 46 in for the legs.",
        "The rail must be shorter than 46 in.",
        none,
    );
    TRIAL.check_refusal(
        &[("find", "overall"), ("joint", "tenon"), ("rail", "2")],
        "rail",
        "The joints take 2 in of a rail of 2 in.",
        "The rail must be longer than 2 in.",
        none,
    );
    TRIAL.check_refusal(
        &[("find", "leg"), ("joint", "tenon"), ("rail", "1")],
        "rail",
        "The joints take 2 in of a rail of 1 in.",
        "The rail must be longer than 2 in.",
        none,
    );
    TRIAL.check_refusal(
        &[("find", "leg"), ("joint", "tenon"), ("rail", "46 1/4")],
        "rail",
        "A rail of 46 1/4 in has tenons that come out of legs 46 in overall.",
        "The rail may be 46 in at most.",
        &[("rail", "46 in")],
    );
    TRIAL.check_refusal(
        &[("find", "leg"), ("joint", "lap")],
        "joint",
        "A lapped rail runs over the legs, so it does not tell how wide they are.",
        "Find the rail instead.",
        &[("find", "rail")],
    );
    TRIAL.check_refusal(
        &[("joint", "lap"), ("lap_short", "3 1/2")],
        "lap_short",
        "Stopping 3 1/2 in short, the rail does not reach over a leg of 3 1/2 in.",
        "Let it end flush: 0.",
        &[("lap_short", "0")],
    );
    TRIAL.check_refusal(
        &[("joint", "tenon"), ("tenon", "4")],
        "tenon",
        "A tenon of 4 in sticks out of a leg of 3 1/2 in.",
        "Cut it through and flush: 3 1/2 in.",
        &[("tenon", "3 1/2 in")],
    );
}

#[test]
fn a_block_at_hand_tells_the_set_back() {
    let pairs = [("question", "spacer"), ("lay", "block"), ("block", "1/2")];
    TRIAL.check(&pairs, &[("rail_set_back_outside", "1/2"), ("rail_set_back_inside", "1 1/2")]);
}

#[test]
fn a_rail_that_leaves_its_leg_is_refused() {
    TRIAL.check_refusal(
        &[("question", "spacer"), ("rail_thickness", "3 5/8")],
        "rail_thickness",
        "A rail of 3 5/8 in is thicker than the leg of 3 1/2 in.",
        "Use a rail of 3 1/2 in or less.",
        &[("rail_thickness", "3 1/2 in")],
    );
    TRIAL.check_refusal(
        &[("question", "spacer"), ("lay", "inside"), ("set_back", "2 1/8")],
        "set_back",
        "Set back 2 1/8 in, the rail stands out behind the leg.",
        "Set it back 2 in or less.",
        &[("set_back", "2 in")],
    );
    TRIAL.check_refusal(
        &[("question", "spacer"), ("lay", "block"), ("block", "3")],
        "block",
        "A block of 3 in lifts the rail out of the leg.",
        "Use a block of 2 in or less.",
        &[("block", "2 in")],
    );
}

#[test]
fn the_stretcher_stands_on_its_block_whichever_edge_is_meant() {
    let lower = [("question", "stretcher")];
    TRIAL
        .check(&lower, &[("floor_block", "6"), ("apron_block", "21 1/2"), ("upper_edge", "9 1/2")]);
    let middle = [("question", "stretcher"), ("height_to", "middle"), ("height", "7 3/4")];
    TRIAL.check(&middle, &[("floor_block", "6"), ("from_leg_top", "25")]);
    let upper = [("question", "stretcher"), ("height_to", "upper"), ("height", "9 1/2")];
    TRIAL.check(&upper, &[("floor_block", "6")]);
}

#[test]
fn a_stretcher_in_the_floor_or_in_the_apron_is_refused() {
    TRIAL.check_refusal(
        &[("question", "stretcher"), ("height_to", "upper"), ("height", "3")],
        "height",
        "At 3 in the stretcher reaches below the floor.",
        "Lowest is 3 1/2 in, on the floor.",
        &[("height", "3 1/2 in")],
    );
    // Half of 3 21/32 is 1 53/64, between the marks 1 13/16 and 1 7/8; at the lower one it would still be in the floor.
    TRIAL.check_refusal(
        &[
            ("question", "stretcher"),
            ("height_to", "middle"),
            ("stretcher_width", "3 21/32"),
            ("height", "1"),
        ],
        "height",
        "At 1 in the stretcher reaches below the floor.",
        "Lowest is 1 53/64 in, on the floor.",
        &[("height", "1 7/8 in")],
    );
    TRIAL.check_refusal(
        &[("question", "stretcher"), ("height", "28")],
        "height",
        "At 28 in the stretcher runs into the apron.",
        "Highest is 27 1/2 in, right under the apron.",
        &[("height", "27 1/2 in")],
    );
    TRIAL.check_refusal(
        &[("question", "stretcher"), ("leg_length", "6")],
        "leg_length",
        "Under the apron is only 2 1/2 in, and the stretcher is 3 1/2 in wide.",
        "Without an apron there is room.",
        &[("apron_width", "0"), ("apron_down", "0")],
    );
}

/// By hand: 24 deep less two rails of 1 1/2 and two set-backs of 3/4 is 19 1/2; 1/2 more at each end is 20 1/2. Of 39 along the
/// rail two supports of 1 1/2 leave 36, three bays of 12: edges at 12 and at 12 + 1 1/2 + 12 = 25 1/2.
#[test]
fn supports_share_the_rail_in_equal_bays() {
    TRIAL.check(
        &[("question", "support"), ("supports", "2"), ("housing", "1/2")],
        &[("between_rails", "19 1/2"), ("support_cut", "20 1/2"), ("bay", "12")],
    );
    let answer = TRIAL.answer(&[("question", "support"), ("supports", "2")]);
    let edges = Value::Lengths(vec![inches("12"), inches("25 1/2")]);
    assert_eq!(figure(&answer, "support_edges").value, edges);
}

/// By hand: 39 ÷ 1 1/2 = 26; two rails of 1 1/2 and two set-backs of 3/4 take 4 1/2.
#[test]
fn supports_that_do_not_fit_are_refused() {
    TRIAL.check_refusal(
        &[("question", "support"), ("supports", "30")],
        "supports",
        "30 supports do not fit beside each other between the legs.",
        "At most 26 fit.",
        &[("supports", "26")],
    );
    TRIAL.check_refusal(
        &[("question", "support"), ("depth_overall", "4 1/2")],
        "depth_overall",
        "Rails and set-backs take 4 1/2 in of 4 1/2 in.",
        "The depth must be more than 4 1/2 in.",
        &[],
    );
    TRIAL.check_refusal(
        &[("question", "support"), ("housing", "1 5/8")],
        "housing",
        "Ends 1 5/8 in deep come out of a rail of 1 1/2 in.",
        "Go in 1 1/2 in or less.",
        &[("housing", "1 1/2 in")],
    );
}

/// By hand: a tenon of 1/2 in the middle of a leg of 3 1/2 has its cheeks 1 1/2 from each face. So one from the neighbouring
/// face, 1 1/2 long, touches it; where both go on, the shorter one, 1 9/16, says by how much.
#[test]
fn tenons_meet_just_beyond_the_longest() {
    let longest = [("question", "tenons"), ("tenon_a", "1 1/2"), ("tenon_b", "1 1/2")];
    TRIAL.check(&longest, &[("longest_tenons", "1 1/2"), ("tenons_clear", "0")]);
    TRIAL.check_refusal(
        &[("question", "tenons"), ("tenon_a", "1 9/16"), ("tenon_b", "1 5/8")],
        "tenon_a",
        "The two tenons meet in the leg by 1/16 in.",
        "Both alike may be 1 1/2 in long.",
        &[("tenon_a", "1 1/2 in"), ("tenon_b", "1 1/2 in")],
    );
}

/// By hand: the short one ends 1 1/2 - 1 = 1/2 before the other's cheek. That one's mortise is 1/8 deeper and leaves 1/8: 3 1/2
/// - 1/8 - 1/8 = 3 1/4.
#[test]
fn one_short_tenon_lets_the_other_be_long() {
    let pairs = [("question", "tenons"), ("tenon_a", "1"), ("tenon_b", "3 1/4")];
    TRIAL.check(&pairs, &[("tenons_clear", "1/2")]);
    TRIAL.check_refusal(
        &[("question", "tenons"), ("tenon_a", "1"), ("tenon_b", "3 5/16")],
        "tenon_b",
        "The mortise for a tenon of 3 5/16 in leaves less than 1/8 in on the outside of the leg.",
        "Use a tenon of 3 1/4 in or less.",
        &[("tenon_b", "3 1/4 in")],
    );
}

/// By hand: 3/4 from the outside and 1/2 thick, a tenon has its inner cheek 3 1/2 - 3/4 - 1/2 = 2 1/4 from the inner face; the
/// tenons of 1 end 1 1/4 before that. From 3 1/4 on, 1/2 more is 3 3/4, outside the leg.
#[test]
fn tenons_nearer_the_outside_may_be_longer() {
    let pairs = [("question", "tenons"), ("tenon_place", "measured"), ("cheek", "3/4")];
    TRIAL.check(&pairs, &[("longest_tenons", "2 1/4"), ("tenons_clear", "1 1/4")]);
    TRIAL.check_refusal(
        &[("question", "tenons"), ("tenon_place", "measured"), ("cheek", "3 1/4")],
        "tenon_thickness",
        "A tenon of 1/2 in at that place lies outside a leg of 3 1/2 in.",
        "Center the tenons in the leg.",
        &[("tenon_place", "centred")],
    );
}

/// By hand: half of 3/4 is 3/8, of 1 1/2 behind 1 1/2 - 3/8 = 1 1/8 stay, and the faces are 1 1/8 - 3/8 = 3/4 apart. With 1 1/2
/// before 1: half of 1 is 1/2, of the front piece 1 1/2 - 1/2 = 1 is cut, and its back stands 1/2 - 1 = -1/2 beyond.
#[test]
fn a_lap_takes_half_of_the_thinner_piece() {
    TRIAL.check(
        &[("question", "lap")],
        &[
            ("lap_rear", "3/8"),
            ("lap_front", "3/8"),
            ("lap_rear_left", "1 1/8"),
            ("lap_step", "3/4"),
        ],
    );
    let thick_front = [("question", "lap"), ("front_thickness", "1 1/2"), ("rear_thickness", "1")];
    TRIAL.check(&thick_front, &[("lap_rear", "1/2"), ("lap_front", "1"), ("lap_step", "-1/2")]);
}

/// By hand, in 32nds: 7/16 is 14, its half 7 lies between the marks 6 and 8. The lower one is cut, 3/16, and the front piece
/// what is left: 14 - 6 = 8, which is 1/4. Half of 3/4 is a mark, so nothing is said of it.
#[test]
fn a_lap_of_which_the_half_is_on_no_mark_says_so() {
    let pairs = [("question", "lap"), ("front_thickness", "7/16"), ("rear_thickness", "1")];
    TRIAL.check(&pairs, &[("lap_rear", "3/16"), ("lap_front", "1/4")]);
    TRIAL.check_note(
        &pairs,
        "Half of the thinner piece is on no mark of this tape. Cut the rear piece 3/16 in deep, and the front piece \
         what is left: so the show faces stay flush.",
    );
    let on_a_mark = [("question", "lap"), ("front_thickness", "3/4"), ("rear_thickness", "1")];
    let notes = TRIAL.answer(&on_a_mark).notes;
    assert!(notes.iter().all(|note| note.id != "half_is_on_no_mark"), "{notes:?}");
}

#[test]
fn a_cut_already_made_decides_the_other_one() {
    let pairs = [("question", "lap"), ("rear_cut", "13/32")];
    TRIAL.check(&pairs, &[("lap_front", "11/32")]);
    assert_eq!(TRIAL.answer(&pairs).headline.id, "lap_front");
    TRIAL.check_refusal(
        &[("question", "lap"), ("rear_cut", "3/4")],
        "rear_cut",
        "A cut of 3/4 in leaves nothing of the thinner piece, 3/4 in.",
        "Leave it empty to cut half of the thinner piece.",
        &[("rear_cut", "")],
    );
}

/// By hand, in 32nds: 24 - 13 = 11. Read off the tape each for itself, 3/8 and 5/16 would leave 1/16 between the faces.
#[test]
fn the_drawing_of_a_lap_that_is_off_the_marks_says_its_depths_exactly() {
    let answer =
        TRIAL.answer(&[("question", "lap"), ("rear_thickness", "3/4"), ("rear_cut", "13/32")]);
    let words = answer.drawing.expect("a drawing").words.join(" ");
    for depth in ["cut 13/32 in from the show face", "cut 11/32 in from the back"] {
        assert!(words.contains(depth), "{words}");
    }
    let notes: Vec<String> = answer.notes.iter().map(ToString::to_string).collect();
    assert!(notes.iter().any(|note| note.contains("on no mark of this tape")), "{notes:?}");
}

#[test]
fn the_longer_diagonal_is_pushed_shorter() {
    let square = |a: &'static str, b: &'static str| {
        TRIAL.answer(&[("question", "square"), ("diagonal_a", a), ("diagonal_b", b)])
    };
    let words = |answer: &Answer| {
        let Value::Words(words) = figure(answer, "push").value else { panic!("words") };
        words.to_string()
    };
    let right = square("52", "51 3/4");
    // (52² - 51.75²) ÷ (4 × 46) = 25.9375 ÷ 184
    let Value::Length(by, _) = right.headline.value else { panic!("a length") };
    assert_eq!(by, inches("415/2944"));
    assert_eq!(right.headline.from, "to the left");
    assert_eq!(words(&right), "Push far right and near left towards each other.");
    let left = square("51 3/4", "52");
    assert_eq!(left.headline.from, "to the right");
    assert_eq!(words(&left), "Push far left and near right towards each other.");
    assert_eq!(words(&square("51 7/8", "51 7/8")), "It is square.");
}

#[test]
fn a_diagonal_is_found_without_measuring_any() {
    let pairs = [
        ("question", "square"),
        ("near_side", "48"),
        ("left_side", "36"),
        ("diagonal_a", ""),
        ("diagonal_b", ""),
    ];
    TRIAL.check(&pairs, &[("square_diagonal", "60")]);
}

#[test]
fn diagonals_that_belong_to_no_such_frame_are_refused() {
    TRIAL.check_refusal(
        &[("question", "square"), ("diagonal_a", "60"), ("diagonal_b", "60")],
        "diagonal_a",
        "No frame with these sides has these diagonals. Measure again.",
        "Square, both would be 51 3623/4096 in.",
        &[],
    );
    let one = TRIAL.ask(&[("question", "square"), ("diagonal_b", "")]).refusals;
    assert_eq!((one[0].field, one[0].code), ("diagonal_b", "one-diagonal"));
}

#[test]
fn sides_that_disagree_with_the_diagonals_are_doubted() {
    let answer =
        TRIAL.answer(&[("question", "square"), ("diagonal_a", "52 1/2"), ("diagonal_b", "52 1/4")]);
    assert!(answer.notes[0].to_string().ends_with("Opposite sides may differ: measure all four."));
}

#[test]
fn sizes_beyond_exact_keeping_are_refused() {
    let fine = "1/999999999999999";
    let sheet = TRIAL.ask(&[("leg_left", fine), ("leg_right", "1/999999999999998")]);
    assert_eq!(sheet.refusals[0].code, "out-of-range");
}
