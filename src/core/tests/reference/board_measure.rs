//! Lumber quantities: board feet against published examples, C5 of the project's rules of the
//! trade, boards for a width, and the weight formulas of the Wood Handbook.

use reckoner_core::calculators::lumber::amount::{Answer, Input, Per, reckon};
use reckoner_core::calculators::lumber::weight::BasicGravity;
use reckoner_core::calculators::lumber::{cover, weight};
use reckoner_core::measure::{Length, Number, length};

fn inches(text: &str) -> Length {
    length(text).expect("a length of the source")
}

fn count(
    boards: u32,
    thickness: &str,
    width: &str,
    long: &str,
    price: Option<(Number, Per)>,
) -> Answer {
    reckon(&Input {
        nominal_thickness: inches(thickness),
        nominal_width: inches(width),
        length: inches(long),
        count: boards,
        price,
    })
    .expect("an answer")
}

#[track_caller]
fn check(boards: u32, sides: [&str; 3], numer: i128, denom: i128) {
    let answer = count(boards, sides[0], sides[1], sides[2], None);
    assert_eq!(answer.total, Number::ratio(numer, denom).expect("board feet"));
}

/// Source: W. Noyes, Handwork in Wood (1910), Wood Measurements and Steel square (W01 to W05).
#[test]
fn w01_to_w05_board_feet_of_handwork_in_wood() {
    check(1, ["1", "6", "15'"], 15, 2);
    check(1, ["1", "6", "12'"], 6, 1);
    // 12' 10" on the square: 12 10/12.
    check(1, ["1", "11", "14'"], 154, 12);
    check(1, ["1", "9", "5'"], 15, 4);
    // 13' + 11' 11" on the square: 24 11/12.
    check(1, ["1", "13", "23'"], 299, 12);
}

/// Source: Army Engineer EN5155, Carpentry I (1995), p. 1-28 and the page of board-foot examples
/// (W06 to W08). W07 and W08 are worked here from the inputs that were read; the 2 in of W08 was
/// not, so it is the rule in inches (÷ 144) that is checked.
#[test]
fn w06_to_w08_board_feet_of_the_army_course() {
    check(4, ["1", "8", "14'"], 112, 3);
    check(1, ["2", "10", "6'"], 10, 1);
    check(1, ["2", "10", "18"], 2 * 10 * 18, 144);
}

/// Source: NAVEDTRA 14069, Engineering Aid Basic, p. 6-7 (W09, worked here from its inputs), and a
/// school arithmetic (W10).
#[test]
fn w09_w10_board_feet_of_two_by_fours() {
    check(1, ["2", "4", "14'"], 28, 3);
    check(1, ["2", "4", "18'"], 12, 1);
}

/// Source: lumber cargo question of a nautical school (W11, W12).
#[test]
fn w11_w12_board_feet_of_a_cargo() {
    check(30_000, ["2", "10", "16'"], 800_000, 1);
    check(30_000, ["3", "12", "16'"], 1_440_000, 1);
}

/// Source: estimating notes (W13) and a college article on lumber measure (W14 to W18).
#[test]
fn w13_to_w18_board_feet_of_lumber_lists() {
    check(5, ["2", "6", "14'"], 70, 1);
    check(1, ["2", "3", "10'"], 5, 1);
    check(1, ["1 1/2", "2", "10'"], 5, 2);
    // Printed as 3.33.
    check(1, ["2", "2", "10'"], 10, 3);
    check(3, ["2", "2", "14'"], 14, 1);
    check(4, ["1 1/2", "2", "10'"], 10, 1);
}

/// Source: [WH] C5, 2×6×8: 8 board feet; at 7.20 a piece 0.90 per foot and 0.90 per board foot.
#[test]
fn c5_price_of_a_two_by_six() {
    let price = Number::ratio(720, 100).unwrap();
    let answer = count(1, "2", "6", "8'", Some((price, Per::Piece)));
    assert_eq!(answer.total, Number::whole(8));
    let prices = answer.prices.expect("prices");
    let ninety_cents = Number::ratio(90, 100).unwrap();
    assert_eq!((prices.foot, prices.board_foot), (ninety_cents, ninety_cents));
}

/// Source: Army Engineer EN01136, lesson 5 self-test (W19): 8 ft 10 in wide, boards 5 1/2 in, 15 %
/// waste: 106 ÷ 5.5 ÷ 0.85, rounded up: 23 boards.
#[test]
fn w19_boards_for_a_platform() {
    let answer = cover::reckon(&cover::Input {
        width: inches("8' 10\""),
        board: inches("5 1/2"),
        gap: Length::ZERO,
        waste: Number::whole(15),
    });
    assert_eq!(answer.expect("an answer").buy, 23);
}

#[track_caller]
fn check_near(found: f64, expected: f64, within: f64) {
    assert!((found - expected).abs() <= within, "{found} is not {expected} ± {within}");
}

/// Source: USDA FPL Wood Handbook FPL-GTR-282 (2021) Equation 4-3 p. 4-3 (W60, W61): about 267 % at
/// basic gravity 0.30, about 44 % at 0.90. Tolerances as in the project's list.
#[test]
fn w60_w61_most_moisture() {
    check_near(BasicGravity::over_green(0.30).most_moisture(), 267.0, 2.0);
    check_near(BasicGravity::over_green(0.90).most_moisture(), 44.0, 3.0);
}

/// Source: the same, Equations 4-12 to 4-14. Density at a moisture is 62.4 × G × (1 + M/100) with G
/// over the volume at that moisture, so that it is known from a table of that volume without the
/// shrinkage: ovendry from NDS Table 12.3.3A, 12 % from Table 5-3.
#[test]
fn density_agrees_with_the_volume_its_gravity_is_over() {
    for gravity in [0.31, 0.42, 0.55, 0.73] {
        check_near(BasicGravity::over_ovendry(gravity).density(0.0), 62.4 * gravity, 1e-9);
        let at_12 = BasicGravity::over_12_percent(gravity).density(12.0);
        check_near(at_12, 62.4 * gravity * 1.12, 1e-9);
        let green = BasicGravity::over_green(gravity);
        check_near(green.density(30.0), 62.4 * gravity * 1.30, 1e-9);
        check_near(green.at(80.0), gravity, 1e-12);
    }
}

/// Source: the same equations by hand. Southern pine, ovendry G 0.55: Gb = 0.55 ÷ (1 + 0.265 ×
/// 0.55) = 0.48003; at 19 %: G = 0.48003 ÷ (1 - 0.265 × 0.48003 × 11/30) = 0.50351; density 62.4 ×
/// 0.50351 × 1.19 = 37.389 lb/cu ft; a dry 2×6×8 is 1.5 × 5.5 × 96 ÷ 1728 = 0.45833 cu ft.
#[test]
fn a_southern_pine_two_by_six_at_19_percent() {
    let input = weight::Input {
        thickness: 1.5,
        width: 5.5,
        length: 96.0,
        count: 6,
        gravity: BasicGravity::over_ovendry(0.55),
        moisture: 19.0,
    };
    let answer = weight::reckon(&input).expect("an answer");
    check_near(answer.density, 37.389, 0.002);
    check_near(answer.each, 17.137, 0.002);
    check_near(answer.total, 6.0 * answer.each, 1e-9);
}
