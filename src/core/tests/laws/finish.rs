//! Finish: area adds up, does not care for the order of the parts, and the cans hold it.

use proptest::prelude::*;
use reckoner_core::calculators::finish::{Coverage, Faces, Input, SoldBy, reckon};
use reckoner_core::measure::{Length, Number, Partner};
use reckoner_core::sheet::PartSize;

prop_compose! {
    fn part()(count in 1_u32..20, sides in prop::array::uniform3(1_i32..4000)) -> PartSize {
        let [length, width, thickness] = sides.map(Length::sixty_fourths);
        PartSize { name: String::new(), count, length, width, thickness }
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
        sold in prop_oneof![Just(SoldBy::Gallon), Just(SoldBy::Litre)],
        prices in prop::collection::vec(price(), 4),
    ) -> Input {
        let coverage = Coverage { least: Number::whole(least), most: Number::whole(least + more) };
        let reserve = Number::whole(reserve);
        Input { parts, faces, coats, coverage, reserve, sold, prices }
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
            let one = Input { parts: vec![part.clone()], ..input.clone() };
            sum = (sum + reckon(&one).unwrap().area).unwrap();
        }
        prop_assert_eq!(sum, answer.area);
    }

    #[test]
    fn the_cans_hold_the_most_it_may_take_and_no_can_is_spare(input in question()) {
        let answer = reckon(&input).unwrap();
        prop_assert!(answer.gallons_least <= answer.gallons_most);
        let cans = answer.cans;
        let times = match input.sold {
            SoldBy::Gallon => Number::ONE,
            SoldBy::Litre => Partner::of("gal").unwrap().times,
        };
        let wanted = answer.gallons_to_buy;
        // Held quarters against wanted gallons, both times all that stands below a line.
        let is_enough = |held: i128| held * wanted.denom() * times.denom() >= 4 * wanted.numer() * times.numer();
        let quarters = |count: u64, size: u32| i128::from(count) * i128::from(size);
        let held: i128 = cans.all.iter().map(|((size, _), count)| quarters(*count, size.quarters)).sum();
        prop_assert!(answer.gallons_to_buy >= answer.gallons_most);
        prop_assert!(is_enough(held));
        // Without the smallest of them it would not do.
        let smallest = cans.all.iter().map(|((size, _), _)| size.quarters).min().unwrap_or(0);
        prop_assert!(!is_enough(held - i128::from(smallest)));
    }
}
