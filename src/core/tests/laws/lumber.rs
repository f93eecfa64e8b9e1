//! Lumber: prices turn back into each other, board feet add up, wetter is heavier.

use proptest::prelude::*;
use reckoner_core::calculators::lumber::amount::{Input, Per, reckon};
use reckoner_core::calculators::lumber::cover;
use reckoner_core::calculators::lumber::weight::BasicGravity;
use reckoner_core::measure::{Length, Number};

prop_compose! {
    fn question()(
        thickness in 1_i32..24,
        width in 1_i32..64,
        length in 1_i32..2000,
        count in 1_u32..500,
        cents in 1_i128..100_000,
        per in prop::sample::select(vec![Per::Piece, Per::Foot, Per::BoardFoot]),
    ) -> Input {
        Input {
            nominal_thickness: Length::sixty_fourths(16 * thickness),
            nominal_width: Length::sixty_fourths(16 * width),
            length: Length::sixty_fourths(8 * length),
            count,
            price: Some((Number::ratio(cents, 100).unwrap(), per)),
        }
    }
}

proptest! {
    #[test]
    fn a_price_put_back_in_gives_the_same_prices(input in question()) {
        let prices = reckon(&input).unwrap().prices.unwrap();
        for (price, per) in [
            (prices.piece, Per::Piece),
            (prices.foot, Per::Foot),
            (prices.board_foot, Per::BoardFoot),
        ] {
            let again = reckon(&Input { price: Some((price, per)), ..input }).unwrap();
            prop_assert_eq!(again.prices.unwrap(), prices);
        }
    }

    #[test]
    fn board_feet_double_with_the_length_and_add_up(input in question()) {
        let once = reckon(&input).unwrap();
        let twice = reckon(&Input { length: (input.length * 2).unwrap(), ..input }).unwrap();
        prop_assert_eq!(twice.total, (once.total * Number::whole(2)).unwrap());
        let sum = (once.each * Number::whole(input.count.into())).unwrap();
        prop_assert_eq!(once.total, sum);
    }

    #[test]
    fn a_wetter_board_is_heavier_and_dry_gravity_comes_back(
        gravity in 0.25..1.1_f64, moisture in 0.0..150.0_f64, more in 0.1..50.0_f64,
    ) {
        let wood = BasicGravity::over_ovendry(gravity);
        prop_assert!(wood.density(moisture + more) > wood.density(moisture));
        prop_assert!((wood.at(0.0) / gravity - 1.0).abs() < 1e-12);
        let same = BasicGravity::over_12_percent(wood.at(12.0));
        prop_assert!((same.density(moisture) / wood.density(moisture) - 1.0).abs() < 1e-12);
    }

    #[test]
    fn the_boards_laid_cover_the_width_and_one_less_does_not(
        width in 64_i32..8000, board in 64_i32..800, gap in 0_i32..32, waste in 0_i64..60,
    ) {
        let [width, board, gap] = [width, board, gap].map(Length::sixty_fourths);
        let input = cover::Input { width, board, gap, waste: Number::whole(waste) };
        let answer = cover::reckon(&input).unwrap();
        let covers = |n: u32| {
            let pitch = (board + gap).unwrap();
            ((pitch * n).unwrap() - gap).unwrap() >= width
        };
        prop_assert!(covers(answer.rows));
        prop_assert!(answer.rows == 1 || !covers(answer.rows - 1));
        prop_assert!(answer.buy >= answer.rows);
        // What is kept of those bought is enough, exactly.
        let kept = Number::ratio(i128::from(answer.buy) * i128::from(100 - waste), 100).unwrap();
        prop_assert!(kept >= answer.laid);
    }
}
