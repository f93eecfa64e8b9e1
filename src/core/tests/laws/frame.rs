//! Laws of the frame: what was solved for, put back in, gives what was given.

use proptest::prelude::*;
use reckoner_core::calculators::frame::{lap, rail, spacer, stretcher, support, tenon};
use reckoner_core::measure::{Length, Rounding, Tape};

use crate::judged::answered;

/// 1/64 in to so many inches, in 64ths.
fn up_to(inches: i32) -> impl Strategy<Value = Length> {
    (1..=inches * 64).prop_map(Length::sixty_fourths)
}

fn joint() -> impl Strategy<Value = rail::Joint> {
    prop_oneof![
        Just(rail::Joint::Butted),
        up_to(3).prop_map(rail::Joint::Tenoned),
        (0..64).prop_map(|n| rail::Joint::Lapped(Length::sixty_fourths(n))),
    ]
}

proptest! {
    #[test]
    fn the_rail_put_back_gives_the_overall_and_the_legs(
        overall in up_to(100), left in up_to(6), right in up_to(6), joint in joint(),
    ) {
        let find = rail::Find::Rail { overall, legs: [left, right] };
        let answer = answered(rail::reckon(&rail::Input { find, joint }))?;
        prop_assert!(answer.between.is_positive());
        let back = rail::Find::Overall { cut: answer.cut, legs: [left, right] };
        let back = rail::reckon(&rail::Input { find: back, joint }).expect("the same frame");
        prop_assert_eq!(back, answer);
        if !matches!(joint, rail::Joint::Lapped(_)) && left == right {
            let find = rail::Find::Leg { overall, cut: answer.cut };
            let legs = rail::reckon(&rail::Input { find, joint }).expect("the same frame");
            prop_assert_eq!(legs.legs, [left, right]);
        }
    }

    #[test]
    fn equal_legs_come_back_from_rail_and_overall(
        overall in up_to(100), leg in up_to(6), tenon in up_to(2),
    ) {
        for joint in [rail::Joint::Butted, rail::Joint::Tenoned(tenon)] {
            let find = rail::Find::Rail { overall, legs: [leg; 2] };
            let answer = answered(rail::reckon(&rail::Input { find, joint }))?;
            let find = rail::Find::Leg { overall, cut: answer.cut };
            let back = rail::reckon(&rail::Input { find, joint }).expect("the same frame");
            prop_assert_eq!(back, answer);
        }
    }

    #[test]
    fn a_spacer_turned_over_keeps_the_rail_in_its_place(
        leg in up_to(6), rail in up_to(6), set_back in up_to(4),
    ) {
        let of = |lay| spacer::reckon(&spacer::Input { leg, rail, lay });
        let (outside, inside) = (
            of(spacer::Lay::OutsideDown(set_back)),
            of(spacer::Lay::InsideDown(set_back)),
        );
        prop_assert_eq!(&outside, &inside);
        let fits = (leg - rail).unwrap() >= set_back;
        prop_assert_eq!(fits, outside.is_ok());
        let answer = answered(outside)?;
        let sum = (answer.outside_down + answer.inside_down).unwrap();
        prop_assert_eq!((sum + rail).unwrap(), leg);
        prop_assert_eq!((answer.centred * 2).unwrap(), sum);
        let block = of(spacer::Lay::Block(answer.outside_down)).expect("the same block");
        prop_assert_eq!(block, answer);
    }

    #[test]
    fn the_pieces_above_each_other_make_up_the_leg(
        leg_length in up_to(48), apron_down in up_to(4), apron_width in up_to(6),
        stretcher_width in up_to(6), height in up_to(48),
    ) {
        for line in [stretcher::Line::LowerEdge, stretcher::Line::Middle, stretcher::Line::UpperEdge] {
            let input = stretcher::Input {
                leg_length, apron_down, apron_width, stretcher_width, height, line,
            };
            let answer = answered(stretcher::reckon(&input))?;
            prop_assert!(!answer.floor_block.is_negative() && !answer.apron_block.is_negative());
            let pieces = [answer.floor_block, stretcher_width, answer.apron_block, apron_width, apron_down];
            let sum = pieces.into_iter().try_fold(Length::ZERO, |sum, piece| sum + piece);
            prop_assert_eq!(sum.unwrap(), leg_length);
        }
    }

    #[test]
    fn supports_stand_in_equal_bays_and_end_at_the_right_leg(
        between_legs in up_to(96), n_supports in 1..12_u32, support_thickness in up_to(3),
    ) {
        let input = support::Input {
            depth_overall: Length::sixty_fourths(24 * 64),
            set_back: Length::ZERO,
            rail_thickness: Length::sixty_fourths(96),
            between_legs,
            n_supports,
            support_thickness,
            housing: Length::ZERO,
        };
        let taken = (support_thickness * n_supports).unwrap();
        let answer = support::reckon(&input);
        prop_assert_eq!(answer.is_ok(), taken <= between_legs);
        let answer = answered(answer)?;
        let last = *answer.left_edges.last().unwrap();
        let end = ((last + support_thickness).unwrap() + answer.bay).unwrap();
        prop_assert_eq!(end, between_legs);
    }

    /// Against rectangles: two tenons meet exactly when their sections in the leg overlap.
    #[test]
    fn tenons_meet_when_their_rectangles_overlap(
        leg in 64..400_i32, thickness in 8..200_i32, cheek in 0..200_i32, a in 1..400_i32, b in 1..400_i32,
    ) {
        let of = Length::sixty_fourths;
        let input = tenon::Input {
            leg: of(leg),
            thickness: of(thickness),
            outside_to_cheek: Some(of(cheek)),
            lengths: [of(a), of(b)],
        };
        let answer = tenon::reckon(&input);
        let inside = cheek + thickness <= leg && a + 16 <= leg && b + 16 <= leg;
        // First: from the right, x in (leg - a, leg), y in (cheek, cheek + thickness).
        // Second: from the back, the same with x and y exchanged.
        let overlaps = |from: i32| from < cheek + thickness;
        let meet = overlaps(leg - a) && overlaps(leg - b);
        prop_assert_eq!(answer.is_ok(), inside && !meet);
    }

    #[test]
    fn both_pieces_of_a_lap_fill_each_other(front in up_to(4), rear in up_to(4), cut in up_to(4)) {
        for rear_cut in [None, Some(cut)] {
            let input = lap::Input {
                front_thickness: front, rear_thickness: rear, rear_cut, tape: Tape::SIXTEENTHS,
            };
            let answer = answered(lap::reckon(&input))?;
            prop_assert_eq!(answer.front_left, answer.rear_cut);
            prop_assert_eq!((answer.front_cut + answer.front_left).unwrap(), front);
            prop_assert_eq!((answer.rear_cut + answer.rear_left).unwrap(), rear);
            prop_assert!(answer.front_cut.is_positive() && answer.rear_left.is_positive());
            // Of pieces on marks of the tape both cuts are on marks too, or so thin that none is.
            let on_mark = |l: Length| Tape::SIXTEENTHS.read(l, Rounding::Down).unwrap().left_over.is_zero();
            if rear_cut.is_none() && on_mark(front) && on_mark(rear) && front.min(rear) > Length::sixty_fourths(4) {
                prop_assert!(on_mark(answer.rear_cut) && on_mark(answer.front_cut));
            }
        }
    }
}
