//! Leaning legs and box sides against hand-worked examples and closed forms.

use reckoner_core::calculators::angles::sides::{Joint, Setting};
use reckoner_core::calculators::angles::{Lay, leg, sides};
use reckoner_core::measure::text::show;
use reckoner_core::measure::{Number, Rounding, Tape, length};

/// [WH] A1: 10 deg, 17 high, 3 1/2 wide leg: leg edge 17.26, foot out 3.00, blank 17.88 (17 7/8).
#[test]
fn a1_a_leg_that_leans_one_way() {
    let input = leg::Input {
        height: length("17").expect("a length"),
        lean: leg::Lean::Degrees(Number::whole(10)),
        width: length("3 1/2").expect("a length"),
        apart: None,
    };
    let answer = leg::reckon(&input).expect("a leg");
    for (got, expected) in [(answer.edge, 17.26), (answer.foot_out, 3.00), (answer.blank, 17.88)] {
        assert!((got.to_f64() - expected).abs() <= 0.005, "{got:?} is not {expected}");
    }
    let shown = show(answer.blank, Tape::SIXTEENTHS, Rounding::Nearest).expect("short");
    assert_eq!(shown.mark.amount(), "17 7/8");
}

fn setting(sides: u32, lean: i64, joint: Joint, lay: Lay) -> Setting {
    let input = sides::Input { sides, lean: Number::whole(lean), joint, lay, size: None };
    sides::reckon(&input).expect("a setting").setting
}

#[track_caller]
fn check(setting: Setting, gauge: f64, tilt: f64) {
    assert!((setting.gauge.in_degrees() - gauge).abs() <= 0.005, "{setting:?}");
    assert!((setting.tilt.in_degrees() - tilt).abs() <= 0.005, "{setting:?}");
}

/// [WH] A3: 4 sides, lean 10: flat gauge 9.85, tilt 44.14; on edge 44.56 / 7.05; butt 9.85 / 1.73.
#[test]
fn a3_a_tapered_planter_of_four_sides() {
    check(setting(4, 10, Joint::Mitred, Lay::Flat), 9.85, 44.14);
    check(setting(4, 10, Joint::Mitred, Lay::OnEdge), 44.56, 7.05);
    check(setting(4, 10, Joint::Butt, Lay::Flat), 9.85, 1.73);
}

/// Closed forms: upright sides flat on the saw are beveled by 180° ÷ sides and cut square across;
/// a frame that lies flat is mitred by 180° ÷ sides with the blade upright.
#[test]
fn upright_boxes_and_flat_frames() {
    for (sides, half) in [(3, 60.0), (4, 45.0), (5, 36.0), (6, 30.0), (8, 22.5), (12, 15.0)] {
        check(setting(sides, 0, Joint::Mitred, Lay::Flat), 0.0, half);
        check(setting(sides, 0, Joint::Mitred, Lay::OnEdge), half, 0.0);
        check(setting(sides, 90, Joint::Mitred, Lay::Flat), half, 0.0);
    }
    // Butted upright sides of a square box are cut square.
    check(setting(4, 0, Joint::Butt, Lay::Flat), 0.0, 0.0);
}
