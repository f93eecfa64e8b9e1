//! The frame against hand-worked examples [WH] of the trade rules, stage 5 (joints), and against
//! an independent construction with coordinates for diagonals.

use reckoner_core::calculators::frame::{lap, rail, spacer, square, tenon};
use reckoner_core::measure::{Fineness, Length, Tape, length};

fn inches(text: &str) -> Length {
    length(text).expect("a length of the example")
}

/// Source: [WH] J1: overall 44, legs 3 1/2 -> rail 37. Legs turn out 3 7/16 -> rail 37 1/8
/// (overall kept) or overall 43 7/8 (rails already cut).
#[test]
fn j1_the_rail_follows_legs_that_came_out_thin() {
    let joint = rail::Joint::Butted;
    let rail_for = |leg: &str| {
        let find = rail::Find::Rail { overall: inches("44"), legs: [inches(leg); 2] };
        rail::reckon(&rail::Input { find, joint }).expect("an answer").cut
    };
    assert_eq!(rail_for("3 1/2"), inches("37"));
    assert_eq!(rail_for("3 7/16"), inches("37 1/8"));
    let find = rail::Find::Overall { cut: inches("37"), legs: [inches("3 7/16"); 2] };
    let answer = rail::reckon(&rail::Input { find, joint }).expect("an answer");
    assert_eq!(answer.overall, inches("43 7/8"));
}

/// Source: [WH] J3: leg 3 1/2, rail 1 1/2, set-back 3/4: spacer 3/4 outside down, 1 1/4 inside
/// down, centred 1; dressed 3 1/4 leg and 1 7/16 rail centred 29/32.
#[test]
fn j3_the_spacer_for_each_way_down() {
    let blocks = |leg: &str, rail: &str, lay| {
        let input = spacer::Input { leg: inches(leg), rail: inches(rail), lay };
        spacer::reckon(&input).expect("an answer")
    };
    let set_back = inches("3/4");
    let outside = blocks("3 1/2", "1 1/2", spacer::Lay::OutsideDown(set_back));
    assert_eq!(outside.outside_down, inches("3/4"));
    let inside = blocks("3 1/2", "1 1/2", spacer::Lay::InsideDown(set_back));
    assert_eq!(inside.inside_down, inches("1 1/4"));
    assert_eq!(blocks("3 1/2", "1 1/2", spacer::Lay::Centred).centred, inches("1"));
    assert_eq!(blocks("3 1/4", "1 7/16", spacer::Lay::Centred).centred, inches("29/32"));
}

/// Source: trade rules, stage 5: centred tenons at right angles in a square leg S with tenon
/// thickness t: longest without meeting = (S - t)/2.
#[test]
fn centred_tenons_reach_half_of_leg_less_thickness() {
    for (leg, thickness, longest) in
        [("3 1/2", "1/2", "1 1/2"), ("2 3/4", "3/4", "1"), ("5 1/2", "1 1/2", "2")]
    {
        let input = tenon::Input {
            leg: inches(leg),
            thickness: inches(thickness),
            outside_to_cheek: None,
            lengths: [inches("1/2"); 2],
        };
        let answer = tenon::reckon(&input).expect("an answer");
        assert_eq!(answer.longest_alike, inches(longest), "leg {leg}");
    }
}

/// Source: trade rules, stage 5: half-lap, same thickness: half each; the pieces are flush.
#[test]
fn a_lap_of_two_equal_pieces_is_half_each() {
    let input = lap::Input {
        front_thickness: inches("1 7/16"),
        rear_thickness: inches("1 7/16"),
        rear_cut: None,
        tape: Tape::Inches(Fineness::ThirtySecond),
    };
    let answer = lap::reckon(&input).expect("an answer");
    assert_eq!(answer.front_cut, inches("23/32"));
    assert_eq!(answer.rear_cut, inches("23/32"));
    assert_eq!(answer.step_at_back, Length::ZERO);
    assert_eq!(answer.off_the_marks, None);
}

/// Worked by hand: 1 1/2 over 1 7/16. Half of the thinner is 23/32, and the other cut 25/32; each read
/// for itself on a tape of sixteenths, 11/16 and 3/4 leave the show faces 1/16 apart. Set at 11/16,
/// the other cut is 13/16, and 11/16 of the front piece fills the 11/16 cut.
#[test]
fn a_lap_is_cut_to_marks_of_the_tape_and_its_faces_stay_flush() {
    let input = lap::Input {
        front_thickness: inches("1 1/2"),
        rear_thickness: inches("1 7/16"),
        rear_cut: None,
        tape: Tape::SIXTEENTHS,
    };
    let answer = lap::reckon(&input).expect("an answer");
    assert_eq!((answer.rear_cut, answer.front_cut), (inches("11/16"), inches("13/16")));
    assert_eq!(answer.front_left, answer.rear_cut);
    assert_eq!(answer.off_the_marks, Some(inches("23/32")));
}

/// Source: closed form, the 3-4-5 triangle and its kin, whose diagonals are whole.
#[test]
fn whole_triangles_have_whole_diagonals() {
    for (near, left, diagonal) in
        [("3", "4", "5"), ("48", "36", "60"), ("5", "12", "13"), ("20", "21", "29")]
    {
        let input =
            square::Input { near_side: inches(near), left_side: inches(left), diagonals: None };
        assert_eq!(square::reckon(&input).expect("an answer").diagonal, inches(diagonal));
    }
}

/// Source: vector construction: a parallelogram built from a known lean, its diagonals measured
/// between coordinates, must give that lean back. Diagonals are kept to 1/4096 in, so the lean
/// agrees to about a thousandth.
#[test]
fn a_frame_that_leans_by_a_known_amount_is_found_out() {
    for (near, left, lean) in
        [(46.0_f64, 24.0_f64, 0.25_f64), (46.0, 24.0, -0.5), (30.0, 60.0, 1.0), (24.0, 24.0, 0.0)]
    {
        let up = (left * left - lean * lean).sqrt();
        let near_left_to_far_right = (near + lean).hypot(up);
        let near_right_to_far_left = (lean - near).hypot(up);
        let input = square::Input {
            near_side: Length::near(near).expect("small"),
            left_side: Length::near(left).expect("small"),
            diagonals: Some([
                Length::near(near_left_to_far_right).expect("small"),
                Length::near(near_right_to_far_left).expect("small"),
            ]),
        };
        let found = square::reckon(&input).expect("an answer").lean.expect("a lean");
        assert!((found.far_side_to_right.to_f64() - lean).abs() < 1e-3, "{found:?}");
        let angle = (lean.abs() / left).asin().to_degrees();
        assert!((found.out_of_square.in_degrees() - angle).abs() < 5e-3, "{found:?}");
        assert!((found.square_diagonal.to_f64() - near.hypot(left)).abs() < 1e-3, "{found:?}");
    }
}
