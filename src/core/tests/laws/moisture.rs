//! Moisture: there and back gives the board again, gaps solved backwards give themselves, and a
//! gap is never below zero without a refusal.

use proptest::prelude::*;
use reckoner_core::calculators::moisture::air::{Input, Temperature, reckon};
use reckoner_core::calculators::moisture::movement::{Moistures, Rule, Wood, spread};
use reckoner_core::calculators::moisture::{gap, swing};
use reckoner_core::measure::{Length, Number};
use reckoner_core::tables::shrinkage::Across;
use reckoner_core::tables::species::{Grain, SPECIES};

use crate::judged::answered;

fn wood() -> impl Strategy<Value = Wood> {
    let grain = prop::sample::select(vec![None, Some(Grain::FlatSawn), Some(Grain::QuarterSawn)]);
    prop_oneof![
        1 => Just(Wood::OrdinarySoftwood),
        3 => (prop::sample::select(&SPECIES[..]), grain).prop_map(|(species, grain)| {
            let all: &'static [_] = &SPECIES;
            let found = all.iter().find(|s| s.id == species.id).expect("one of the table");
            Wood::Species(found, grain)
        }),
    ]
}

/// Half percents.
fn moisture() -> impl Strategy<Value = Number> {
    (0_i128..70).prop_map(|halves| Number::ratio(halves, 2).unwrap())
}

fn across() -> impl Strategy<Value = Across> {
    prop_oneof![Just(Across::Width), Just(Across::Thickness)]
}

proptest! {
    #[test]
    fn there_and_back_gives_the_board_again(
        wood in wood(), across in across(), from in moisture(), to in moisture(),
    ) {
        let there = answered(spread(wood, across, Moistures::now_and_later(from, to)))?;
        let back = answered(spread(wood, across, Moistures::now_and_later(to, from)))?;
        let round = (there.likely.factor * back.likely.factor).unwrap();
        if matches!(there.likely.rule, Rule::EachPoint(_)) {
            // The coefficients hold for the size they start from: (1 + c)(1 - c) = 1 - c².
            let change = (there.likely.factor - Number::ONE).unwrap();
            prop_assert_eq!(round, (Number::ONE - (change * change).unwrap()).unwrap());
        } else {
            prop_assert_eq!(round, Number::ONE);
        }
    }

    #[test]
    fn drying_shrinks_and_the_ends_lie_either_side(
        wood in wood(), across in across(), from in moisture(), to in moisture(),
    ) {
        let spread = answered(spread(wood, across, Moistures::now_and_later(from, to)))?;
        let factor = spread.likely.factor;
        let full = Number::whole(30);
        if from.min(full) == to.min(full) {
            prop_assert_eq!(factor, Number::ONE);
        } else if to < from {
            prop_assert!(factor <= Number::ONE);
        } else {
            prop_assert!(factor >= Number::ONE);
        }
        if let (Some((least, most)), Across::Width) = (spread.ends, across) {
            let moved = |factor: Number| (factor - Number::ONE).unwrap().abs();
            prop_assert!(moved(least) <= moved(most));
            prop_assert!(moved(least) <= moved(factor) && moved(factor) <= moved(most));
        }
    }

    #[test]
    fn a_gap_solved_backwards_gives_itself_and_is_never_below_zero(
        wood in wood(), from in moisture(), to in moisture(),
        width in 64_i32..800, gap in 0_i32..64, boards in 2_u32..40,
    ) {
        let input = gap::Input {
            width: Length::sixty_fourths(width),
            boards,
            known: gap::Known::Today(Length::sixty_fourths(gap)),
            wood,
            moistures: Moistures::now_and_later(from, to),
        };
        let later = answered(gap::reckon(&input))?;
        prop_assert!(!later.gap_later.is_negative() && !later.gap_now.is_negative());
        let back = gap::Input { known: gap::Known::Later(later.gap_later), ..input };
        prop_assert_eq!(gap::reckon(&back).unwrap().gap_now, Length::sixty_fourths(gap));
        // All boards and gaps add up to the whole, today and later, about the same middles.
        let sum = |width: Length, gap: Length| {
            ((width * boards).unwrap() + (gap * (boards - 1)).unwrap()).unwrap()
        };
        prop_assert_eq!(sum(input.width, later.gap_now), later.top_now);
        prop_assert_eq!(sum(later.width_later, later.gap_later), later.top_later);
    }

    #[test]
    fn a_swing_is_never_below_zero_and_its_gap_is_enough(
        wood in wood(), from in moisture(), to in moisture(), width in 64_i32..800,
    ) {
        let moistures = Moistures::driest_and_wettest(from.min(to), from.max(to));
        let input = swing::Input { width: Length::sixty_fourths(width), wood, moistures };
        let answer = answered(swing::reckon(&input))?;
        prop_assert!(!answer.swing.is_negative());
        prop_assert!(answer.never_closes >= answer.swing);
        prop_assert!(answer.never_closes >= answer.by_green_size);
        // The two rules for ordinary softwood stay within a twentieth of each other.
        let off = (answer.by_green_size - answer.swing).unwrap().abs();
        prop_assert!(off <= (answer.by_green_size * Number::ratio(8, 100).unwrap()).unwrap());
    }

    #[test]
    fn damper_air_makes_wetter_wood_and_every_figure_is_a_number(
        degrees in 0.0..100.0_f64, humidity in 0.0..94.0_f64, more in 0.01..1.0_f64,
    ) {
        let at = |humidity| reckon(&Input::Air(Temperature::Celsius(degrees), humidity));
        let (dry, damp) = (at(humidity), at(humidity + more));
        prop_assert!(damp.driest > dry.driest);
        prop_assert!(damp.newer > dry.newer);
        prop_assert!((0.0..40.0).contains(&dry.driest));
        prop_assert!(dry.newer.is_some_and(f64::is_finite));
    }
}
