//! Crosscut: hand-worked cases C1 and C3 of the project's rules of the trade, and the stock
//! planning of a published self-test.

use reckoner_core::calculators::crosscut::{Answer, Input, reckon};
use reckoner_core::measure::{Length, length};

fn inches(text: &str) -> Length {
    length(text).expect("a length of the source")
}

fn cut(board: &str, trim: &str, part: &str, kerf: &str, wanted: u32) -> Answer {
    let input = Input {
        board: inches(board),
        trim: inches(trim),
        part: inches(part),
        kerf: inches(kerf),
        knots: Vec::new(),
        wanted,
    };
    reckon(&input).expect("an answer")
}

/// Source: [WH] C1, 96 board, 1/2 trim each end, parts 17 1/2: floor(95.125 / 17.625) = 5,
/// leftover 6 7/8.
#[test]
fn c1_five_parts_from_a_trimmed_eight_footer() {
    let answer = cut("96", "1/2", "17 1/2", "1/8", 5);
    assert_eq!(answer.parts.len(), 5);
    assert_eq!(answer.leftover, inches("6 7/8"));
}

/// Source: [WH] C3, 7 blocks of 13 1/2 need 94 1/2 + 6 cuts 3/4 = 95 1/4: they fit a raw 96, not
/// the 95 that is left after trims.
#[test]
fn c3_the_seventh_block_fits_only_the_raw_board() {
    assert_eq!(cut("96", "0", "13 1/2", "1/8", 7).parts.len(), 7);
    let trimmed = cut("96", "1/2", "13 1/2", "1/8", 7);
    assert_eq!(trimmed.parts.len(), 6);
    let between_trims = (trimmed.for_one_more - inches("1")).unwrap();
    assert_eq!(between_trims, inches("95 1/4"));
    assert_eq!(trimmed.boards, 2);
}

/// Source: Army Engineer EN01136 lesson 5 self-test (W20): 5 ft 1 in from each of four 10 ft
/// lengths, kerf ignored, leaves 4 ft 11 in of each.
#[test]
fn w20_what_is_left_of_a_ten_footer() {
    let answer = cut("10'", "0", "5' 1\"", "0", 4);
    assert_eq!(answer.leftover, inches("4' 11\""));
    assert_eq!(answer.boards, 4);
}

/// Source: the same self-test (W21): two 10 ft lengths for the rails, four more for the parts of
/// 5 ft 1 in, and the two uprights of 3 ft 7 in come from the leavings: six lengths in all.
#[test]
fn w21_six_ten_footers_in_all() {
    let rails = cut("10'", "0", "10'", "0", 2);
    let parts = cut("10'", "0", "5' 1\"", "0", 4);
    let leavings = parts.boards;
    let uprights = cut("4' 11\"", "0", "3' 7\"", "0", 2);
    assert!(uprights.boards <= leavings);
    assert_eq!(rails.boards + parts.boards, 6);
}
