//! Dowels against worked examples.

use reckoner_core::calculators::dowel::{Answer, Apart, Bits, Blind, Hold, Input, reckon};
use reckoner_core::measure::{Length, length};

fn inches(text: &str) -> Length {
    length(text).expect("a length in a test")
}

fn dowel(hold: Hold, apart: Apart, size: &str, bits: Bits) -> Answer {
    let input = Input {
        hold,
        left: inches("1 1/2"),
        right: inches("1 1/2"),
        apart,
        dowel: inches(size),
        across: inches(size),
        bits,
        height: inches("3 1/4"),
        from_top: None,
        length: inches("17"),
        from_front: None,
        least_wood: None,
    };
    reckon(&input).unwrap_or_else(|problems| panic!("{problems:?}"))
}

fn through(apart: Apart) -> Answer {
    dowel(Hold::Through { trim: inches("1/4") }, apart, "1", Bits::SixtyFourths)
}

/// Source: [WH] J4, stage 5. Frames 38 outside to outside, 1 1/2 thick, 1/4 at each end: dowel
/// 38 1/2, visible 35; frames measured 38 3/16: 38 11/16.
#[test]
fn a_dowel_through_frames_of_38_is_cut_half_an_inch_over() {
    let planned = through(Apart::Overall(inches("38")));
    assert_eq!(planned.rough, inches("38 1/2"));
    assert_eq!(planned.clear, inches("35"));
    assert_eq!(through(Apart::Overall(inches("38 3/16"))).rough, inches("38 11/16"));
}

/// Source: [WH] J4, stage 5. A dowel of 1.02 takes a 1 1/32 bit (0.011 clearance), one of 0.985
/// a 1 in bit (0.015).
#[test]
fn the_bit_is_the_next_one_over_the_dowel_as_measured() {
    let apart = Apart::Overall(inches("38"));
    let hold = Hold::Through { trim: inches("1/4") };
    for bits in [Bits::SixtyFourths, Bits::ThirtySeconds] {
        for (size, bit, clearance) in [("1.02", "1 1/32", 0.011), ("0.985", "1", 0.015)] {
            let answer = dowel(hold, apart, size, bits);
            assert_eq!(answer.bit, inches(bit), "{bits:?}");
            assert!((answer.clearance.to_f64() - clearance).abs() < 0.0005, "{answer:?}");
        }
    }
}

/// Common practice, no source: through two stretchers of 1 1/2 centered in legs of 3 1/4 with 40
/// between the legs, 44 3/4 outside to outside, cut just over 45 and trimmed.
#[test]
fn a_dowel_through_stretchers_centered_in_their_legs() {
    let legs = |set_back| Apart::Legs { clear: inches("40"), leg: inches("3 1/4"), set_back };
    let answer = through(legs(None));
    // Each stretcher stands (3 1/4 - 1 1/2) / 2 = 7/8 back from the inside of its leg:
    // 40 + 2 × 7/8 + 2 × 1 1/2.
    assert_eq!(answer.overall, inches("44 3/4"));
    assert_eq!(answer.finished, inches("44 3/4"));
    assert_eq!(answer.clear, inches("41 3/4"));
    assert_eq!(answer.rough, inches("45 1/4"));
    assert_eq!(through(legs(Some(inches("7/8")))), answer);
}

/// Source: [WH] J3, stage 5. Leg 3 1/2, rail 1 1/2, set-back 3/4 from the outside leaves 1 1/4 on
/// the inside.
#[test]
fn a_set_back_leaves_the_rest_of_the_leg_on_the_inside() {
    let (clear, leg, set_back) = (inches("40"), inches("3 1/2"), Some(inches("3/4")));
    let answer = through(Apart::Legs { clear, leg, set_back });
    assert_eq!(answer.clear, inches("40 + 2 × 1 1/4"));
}

/// Source: an older mechanics text, How-To: Dowelling (chestofbooks copy, title not shown): cut
/// dowels 1/8 shorter than the two hole depths together.
#[test]
fn a_dowel_in_two_blind_holes_is_an_eighth_shorter_than_they_reach() {
    let blind = Blind { depth: inches("1"), room: inches("1/16") };
    let answer = dowel(Hold::Blind(blind), Apart::Clear(inches("35")), "1", Bits::SixtyFourths);
    assert_eq!(answer.rough, inches("35 + 1 + 1 - 1/8"));
    assert_eq!(answer.finished, answer.rough);
}
