//! Dowels: solved backwards they give the frames again, and the bit is the next one up.

use proptest::prelude::*;
use reckoner_core::calculators::dowel::{Apart, Bits, Blind, Hold, Input, reckon};
use reckoner_core::measure::Length;

use crate::judged::{self, answered};

fn eighths(n: i128) -> Length {
    Length::of_inch(n, 8).unwrap()
}

fn minus(from: Length, parts: &[Length]) -> Length {
    parts.iter().fold(from, |left, part| (left - *part).unwrap())
}

fn plus(parts: &[Length]) -> Length {
    parts.iter().fold(Length::ZERO, |sum, part| (sum + *part).unwrap())
}

prop_compose! {
    fn input()(
        kind in 0_usize..3, trim in 0_i128..8, depth in 4_i128..16, room in 0_i128..3,
        left in 8_i128..40, right in 8_i128..40, clear in 1_i128..600, leg in 8_i128..48,
        back in prop::option::of(0_i128..24), measured in 0_usize..3, dowel in 20_i128..160, across in 20_i128..160,
        bits in prop_oneof![
            Just(Bits::SixtyFourths), Just(Bits::ThirtySeconds), Just(Bits::Sixteenths), Just(Bits::Millimetres),
        ],
        height in 8_i128..60, from_top in prop::option::of(1_i128..60),
        length in 8_i128..300, from_front in prop::option::of(1_i128..300),
        least in prop::option::of(0_i128..6),
    ) -> Input {
        let blind = Blind { depth: eighths(depth), room: eighths(room) };
        let trim = eighths(trim);
        Input {
            hold: [Hold::Through { trim }, Hold::Blind(blind), Hold::OneEnd { trim, blind }][kind],
            left: eighths(left),
            right: eighths(right),
            apart: [
                Apart::Clear(eighths(clear)),
                Apart::Overall(eighths(clear + left + right)),
                Apart::Legs { clear: eighths(clear), leg: eighths(leg), set_back: back.map(eighths) },
            ][measured],
            dowel: Length::of_inch(dowel, 100).unwrap(),
            across: Length::of_inch(across, 100).unwrap(),
            bits,
            height: eighths(height),
            from_top: from_top.map(eighths),
            length: eighths(length),
            from_front: from_front.map(eighths),
            least_wood: least.map(eighths),
        }
    }
}

proptest! {
    #![proptest_config(judged::cases(2000))]

    #[test]
    fn a_dowel_solved_backwards_gives_the_frames_again(input in input()) {
        let answer = answered(reckon(&input))?;
        // From the cut dowel back to what is clear between the parts.
        let clear = match input.hold {
            Hold::Through { trim } => minus(answer.rough, &[trim, trim, input.left, input.right]),
            Hold::Blind(blind) => minus(plus(&[answer.rough, blind.room, blind.room]), &[blind.depth, blind.depth]),
            Hold::OneEnd { trim, blind } => minus(plus(&[answer.rough, blind.room]), &[trim, input.left, blind.depth]),
        };
        prop_assert_eq!(clear, answer.clear);
        prop_assert_eq!(plus(&[clear, input.left, input.right]), answer.overall);
        match input.apart {
            Apart::Clear(given) => prop_assert_eq!(clear, given),
            Apart::Overall(given) => prop_assert_eq!(answer.overall, given),
            Apart::Legs { clear: given, leg, set_back } => {
                // Outside to outside of the legs, by the set-backs or by the legs themselves.
                let back = |part| set_back.unwrap_or_else(|| (minus(leg, &[part]) / 2).unwrap());
                let outside = plus(&[answer.overall, back(input.left), back(input.right)]);
                prop_assert_eq!(outside, plus(&[given, leg, leg]));
            }
        }
        for apart in [Apart::Clear(answer.clear), Apart::Overall(answer.overall)] {
            prop_assert_eq!(reckon(&Input { apart, ..input.clone() }).unwrap(), answer);
        }
    }

    #[test]
    fn the_bit_is_the_smallest_that_takes_the_dowel(input in input()) {
        let answer = answered(reckon(&input))?;
        let thickest = input.dowel.max(input.across);
        let step = input.bits.step();
        prop_assert!(answer.bit >= thickest);
        prop_assert!(minus(answer.bit, &[step]) < thickest);
        prop_assert!((answer.bit / step).unwrap().is_whole());
        prop_assert_eq!(plus(&[answer.clearance, thickest]), answer.bit);
        prop_assert!(answer.clearance <= answer.clearance_across);
    }

    #[test]
    fn the_hole_stays_in_both_parts_with_wood_round_it(input in input()) {
        let answer = answered(reckon(&input))?;
        let half = (answer.bit / 2).unwrap();
        let least = input.least_wood.unwrap_or(half);
        let wood = [
            answer.from_top,
            minus(input.height, &[answer.from_top]),
            answer.from_front,
            answer.from_back,
        ].map(|center| minus(center, &[half]));
        prop_assert!(wood.iter().all(|wood| *wood >= least));
        prop_assert_eq!(wood.iter().min(), Some(&answer.wood));
        prop_assert_eq!(plus(&[answer.from_front, answer.from_back]), input.length);
        if let Some(under) = answer.under {
            prop_assert!(under.is_positive());
        }
    }
}
