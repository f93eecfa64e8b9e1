//! Finish: area adds up, does not care for the order of the parts, and the cans hold it.

use proptest::prelude::*;
use reckoner_core::calculators::finish::{Coverage, Faces, Input, Prices, reckon};
use reckoner_core::measure::{Length, Number};
use reckoner_core::sheet::PartSize;

prop_compose! {
    fn part()(count in 1_u32..20, sides in prop::array::uniform3(1_i32..4000)) -> PartSize {
        let [length, width, thickness] = sides.map(Length::sixty_fourths);
        PartSize { count, length, width, thickness }
    }
}

fn faces() -> impl Strategy<Value = Faces> {
    prop_oneof![
        Just(Faces::All),
        Just(Faces::NotTheUnderside),
        Just(Faces::ShowFace),
        Just(Faces::Ends)
    ]
}

fn price() -> impl Strategy<Value = Option<Number>> {
    prop::option::of((1_i64..100).prop_map(Number::whole))
}

prop_compose! {
    fn question()(
        parts in prop::collection::vec(part(), 1..6),
        faces in faces(),
        coats in 1_u32..5,
        least in 50_i64..300,
        more in 0_i64..300,
        reserve in 0_i64..40,
        gallon in price(),
        quart in price(),
    ) -> Input {
        let coverage = Coverage { least: Number::whole(least), most: Number::whole(least + more) };
        let reserve = Number::whole(reserve);
        Input { parts, faces, coats, coverage, reserve, prices: Prices { gallon, quart } }
    }
}

proptest! {
    #[test]
    fn the_order_of_the_parts_does_not_matter_and_their_areas_add_up(input in question()) {
        let answer = reckon(&input).unwrap();
        let mut turned = input.clone();
        turned.parts.reverse();
        prop_assert_eq!(reckon(&turned).unwrap().area, answer.area);
        let mut sum = reckoner_core::measure::Area::ZERO;
        for part in &input.parts {
            let one = Input { parts: vec![*part], ..input.clone() };
            sum = (sum + reckon(&one).unwrap().area).unwrap();
        }
        prop_assert_eq!(sum, answer.area);
    }

    #[test]
    fn the_cans_hold_the_most_it_may_take_and_no_can_is_spare(input in question()) {
        let answer = reckon(&input).unwrap();
        prop_assert!(answer.gallons_least <= answer.gallons_most);
        let cans = answer.cans;
        let quarts = i128::from(cans.gallons * 4 + cans.quarts);
        let held = Number::ratio(quarts, 4).unwrap();
        prop_assert!(answer.gallons_to_buy >= answer.gallons_most && held >= answer.gallons_to_buy);
        let smallest = if cans.quarts > 0 { 1 } else { 4 };
        prop_assert!(Number::ratio(quarts - smallest, 4).unwrap() < answer.gallons_to_buy);
    }
}
