//! Laws of screws: bits never above the root, tips never past the margin, axes where the vectors
//! say, and loads that grow with the wood.

use proptest::prelude::*;
use reckoner_core::calculators::screws::hold::yield_modes::{self, Member};
use reckoner_core::calculators::screws::{
    LEAST_INTO, Wood, angled, buy, corner, hold, length as screw_length, pilot, placing,
};
use reckoner_core::measure::{Angle, Length, Number};
use reckoner_core::tables::fasteners::{FASTENERS, Fastener, Make, stock_lengths};

use crate::judged::answered;

fn up_to(inches: i32) -> impl Strategy<Value = Length> {
    (1..=inches * 64).prop_map(Length::sixty_fourths)
}

fn a_fastener() -> impl Strategy<Value = Fastener> {
    prop::sample::select(FASTENERS.to_vec())
}

fn a_screw() -> impl Strategy<Value = Fastener> {
    let screws = FASTENERS.into_iter().filter(|f| f.make == Make::WoodScrew);
    prop::sample::select(screws.collect::<Vec<_>>())
}

fn a_wood() -> impl Strategy<Value = Wood> {
    (30..=75_u8, any::<bool>())
        .prop_map(|(g, hardwood)| Wood { gravity: f64::from(g) / 100.0, hardwood })
}

proptest! {
    #[test]
    fn no_bit_is_above_the_root_and_none_below_the_shank_clears(
        fastener in a_fastener(), wood in a_wood(), top in up_to(3), more in up_to(3),
    ) {
        let length = (top + more).unwrap();
        let answer = pilot::reckon(&pilot::Input { fastener, wood, length, top }).unwrap();
        prop_assert!(answer.pilot <= fastener.root().unwrap());
        prop_assert!(answer.pilot.is_positive());
        for bit in [Some(answer.pilot), answer.clearance].into_iter().flatten() {
            prop_assert_eq!(64 % bit.in_inches().denom(), 0);
        }
        if let Some(clearance) = answer.clearance {
            let slack = (clearance - fastener.shank().unwrap()).unwrap();
            prop_assert!(!slack.is_negative() && slack < Length::sixty_fourths(1));
        }
        prop_assert!(answer.depth <= more);
        // The thread of a lag screw is bored for to its tip, and its shank as wide as it is.
        if fastener.make == Make::LagScrew {
            prop_assert_eq!(answer.depth, more);
            let smooth = (length - fastener.thread(length).unwrap()).unwrap();
            prop_assert!(answer.clearance_depth >= smooth.max(top));
        }
        prop_assert!(answer.clearance_depth <= length);
    }

    #[test]
    fn the_longest_stock_screw_keeps_the_margin_and_the_next_one_does_not(
        top in up_to(4), receiver in up_to(4), sunk in 0..32_i32, margin in 0..32_i32,
        screw in a_screw(), end_grain in any::<bool>(),
    ) {
        let input = screw_length::Input {
            top, receiver,
            head_sunk: Length::sixty_fourths(sunk),
            margin: Length::sixty_fourths(margin),
            screw, end_grain, at_hand: None,
        };
        let fits = |length: Length| {
            let tip = (input.head_sunk + length).unwrap();
            let behind = ((top + receiver).unwrap() - tip).unwrap();
            let into = (tip - top).unwrap();
            behind >= input.margin && into >= LEAST_INTO
        };
        let brute = stock_lengths().into_iter().filter(|length| fits(*length)).max();
        match screw_length::reckon(&input) {
            Ok(answer) => {
                prop_assert_eq!(Some(answer.best.length), brute);
                prop_assert!(answer.best.thread_in_receiver <= answer.best.into_receiver);
                prop_assert!(answer.enough.is_none_or(|enough| enough <= answer.best.length));
            }
            Err(_) => prop_assert!(brute.is_none() || input.head_sunk >= top),
        }
    }

    /// Against vectors: walk the axis from the start and see where the face, the end and the tip
    /// are. Lengths are kept to 1/4096 in.
    #[test]
    fn the_angled_axis_is_where_the_vectors_say(
        thickness in up_to(4), degrees in 5..=80_i32, exit_share in 1..16_i32, seat in 1..=16_i32,
        receiver in up_to(6), beyond in 0..128_i32,
    ) {
        let angle = Angle::degrees(f64::from(degrees));
        let exit = (thickness * Number::ratio(exit_share.into(), 16).unwrap()).unwrap();
        let radians = f64::from(degrees).to_radians();
        let seat_wood = Length::near(exit.to_f64() / radians.sin() * f64::from(seat) / 17.0).unwrap();
        let input = angled::Input {
            thickness, angle,
            find: angled::Find::Start(Some(exit)),
            seat: angled::Seat::Shoulder(seat_wood),
            receiver,
            beyond: Length::sixty_fourths(beyond),
            margin: Length::sixty_fourths(8),
            wanted_deep: Length::sixty_fourths(48),
            at_hand: None,
        };
        let answer = answered(angled::reckon(&input))?;
        let (along, aside) = (radians.cos(), radians.sin());
        // Place of a point on the axis: before the end is negative, aside from the drilled face.
        let place = |distance: f64| {
            (distance * along - answer.start.to_f64(), distance * aside)
        };
        let end = place(answer.axis.to_f64());
        prop_assert!(end.0.abs() < 2e-3 && (end.1 - exit.to_f64()).abs() < 2e-3);
        let tip = place(answer.to_seat.to_f64() + answer.best.length.to_f64());
        prop_assert!((tip.0 - answer.best.deep.to_f64()).abs() < 3e-3, "{tip:?} {answer:?}");
        prop_assert!((tip.1 - answer.best.tip_from_face.to_f64()).abs() < 3e-3);
        // It never comes out: behind, or at the side.
        prop_assert!(tip.0 <= receiver.to_f64() - 0.125 + 3e-3);
        let side = thickness.to_f64() + f64::from(beyond) / 64.0;
        prop_assert!(tip.1 <= side - 0.125 + 3e-3);
        // Started there, it comes out where it was to.
        let back = angled::Input { find: angled::Find::Exit(answer.start), ..input };
        let back = answered(angled::reckon(&back))?;
        // A steep axis makes a 4096th at the start several at the exit.
        let tolerance = 1e-3 * (1.0 + radians.tan());
        prop_assert!((back.exit.to_f64() - exit.to_f64()).abs() < tolerance);
    }

    /// Against brute force: points along both axes, all pairs.
    #[test]
    fn two_round_members_meet_when_their_axes_come_near(
        leg in 64..256_i32, size in 8..48_i32, deep in [8..256_i32, 8..256_i32],
        outside in [8..256_i32, 8..256_i32], apart in 0..64_i32,
    ) {
        let of = Length::sixty_fourths;
        let member = |i: usize, height| corner::Member {
            deep: of(deep[i]), from_outside: of(outside[i]), height: of(height),
        };
        let members = [member(0, 64), member(1, 64 + apart)];
        let input = corner::Input { leg: of(leg), section: corner::Section::Round(of(size)), members };
        let inside = |i: usize| {
            deep[i] < leg && 2 * outside[i] >= size && 2 * outside[i] + size <= 2 * leg
        };
        let answer = corner::reckon(&input);
        prop_assert!(inside(0) && inside(1) || answer.is_err());
        prop_assume!(inside(0) && inside(1), "not in the leg");
        // In 64ths: the first runs along x from leg - deep to leg at y = outside; the second along
        // y at x = outside.
        let mut least = i64::MAX;
        for x in (leg - deep[0])..=leg {
            for y in (leg - deep[1])..=leg {
                let (dx, dy, dz) = (x - outside[1], y - outside[0], apart);
                least = least.min(i64::from(dx * dx + dy * dy + dz * dz));
            }
        }
        let meets = least < i64::from(size * size);
        prop_assert_eq!(answer.is_err(), meets);
        if let Ok(answer) = answer {
            let between = ((least as f64).sqrt() - f64::from(size)) / 64.0;
            prop_assert!((answer.between.to_f64() - between).abs() < 1e-3);
        }
    }

    /// Against boxes of whole 64ths: they meet when they overlap in all three directions.
    #[test]
    fn two_tenons_meet_when_their_boxes_overlap(
        leg in 64..256_i32, half in 4..24_i32, half_tall in 4..100_i32, deep in [8..256_i32, 8..256_i32],
        outside in [8..256_i32, 8..256_i32], apart in 0..220_i32,
    ) {
        let of = Length::sixty_fourths;
        let member = |i: usize, height| corner::Member {
            deep: of(deep[i]), from_outside: of(outside[i]), height: of(height),
        };
        let section = corner::Section::Tenon(of(2 * half), of(2 * half_tall));
        let members = [member(0, 64), member(1, 64 + apart)];
        let answer = corner::reckon(&corner::Input { leg: of(leg), section, members });
        let inside = |i: usize| deep[i] < leg && outside[i] >= half && outside[i] + half <= leg;
        let overlap = |from: i32, to: i32, other_from: i32, other_to: i32| from < other_to && other_from < to;
        let x = overlap(leg - deep[0], leg, outside[1] - half, outside[1] + half);
        let y = overlap(outside[0] - half, outside[0] + half, leg - deep[1], leg);
        let z = overlap(-half_tall, half_tall, apart - half_tall, apart + half_tall);
        prop_assert_eq!(answer.is_ok(), inside(0) && inside(1) && !(x && y && z));
    }

    #[test]
    fn rows_that_fit_keep_both_edges_and_one_more_does_not(
        fastener in a_fastener(), wood in a_wood(), drilled in any::<bool>(), steel_plate in any::<bool>(),
        board_width in up_to(12),
    ) {
        let input = placing::Input { fastener, wood, drilled, steel_plate, board_width };
        let answer = answered(placing::reckon(&input))?;
        let taken = |rows: u32| {
            ((answer.edge * 2).unwrap() + (answer.rows * (rows - 1)).unwrap()).unwrap()
        };
        prop_assert!(taken(answer.n_rows) <= board_width);
        prop_assert!(taken(answer.n_rows + 1) > board_width);
        prop_assert!(answer.end_pulled >= answer.end_pushed && answer.end_pushed >= answer.edge);
    }

    #[test]
    fn denser_wood_and_more_thread_hold_more(
        fastener in a_fastener(), gravity in 30..70_u8, length in up_to(6), top in up_to(2), wet in any::<bool>(),
    ) {
        let of = |gravity: u8, length: Length| {
            let wood = Wood { gravity: f64::from(gravity) / 100.0, hardwood: false };
            hold::reckon(&hold::Input { fastener, length, top, wood, end_grain: false, wet })
        };
        let answer = answered(of(gravity, length))?;
        let longer = of(gravity, (length + Length::sixty_fourths(32)).unwrap()).unwrap();
        let denser = of(gravity + 5, length).unwrap();
        prop_assert!(longer.pull >= answer.pull && denser.pull > answer.pull);
        if let (Some(load), Some(longer), Some(denser)) = (answer.side, longer.side, denser.side) {
            prop_assert!(load.0.is_finite() && load.0 > 0.0);
            prop_assert!(longer.0 >= load.0 * (1.0 - 1e-12) && denser.0 > load.0);
        }
        prop_assert_eq!(answer.side.is_none(), fastener.is_large());
    }

    /// Turning the joint over changes nothing when both pieces are alike.
    #[test]
    fn a_joint_turned_over_holds_as_much(
        diameter in 90..240_u16, a in 1..256_i32, b in 1..256_i32, gravity in 30..75_u8,
    ) {
        let bearing = yield_modes::bearing_strength(f64::from(gravity) / 100.0);
        let member = |n: i32| Member { thickness: f64::from(n) / 64.0, bearing };
        let load = |side, main| {
            yield_modes::reckon(f64::from(diameter) / 1000.0, 90_000.0, side, main).expect("a load").0
        };
        let (one, other) = (load(member(a), member(b)), load(member(b), member(a)));
        prop_assert!((one - other).abs() <= 1e-9 * one, "{one} {other}");
    }

    #[test]
    fn what_is_bought_covers_the_work_and_its_spares(
        n_planks in 1..200_u32, n_rails in 1..20_u32, per_crossing in 1..6_u32,
        spare in 0..=100_i64, box_of in 1..500_u32,
    ) {
        let spare = Number::whole(spare);
        let input = buy::Input { n_planks, n_rails, per_crossing, spare, box_of };
        let answer = buy::reckon(&input).unwrap();
        let needed = u64::from(n_planks) * u64::from(n_rails) * u64::from(per_crossing);
        prop_assert_eq!(answer.needed, needed);
        let spare = u64::try_from(spare.numer()).unwrap();
        prop_assert!(answer.buy * 100 >= needed * (100 + spare));
        prop_assert!((answer.buy - 1) * 100 < needed * (100 + spare));
        let bought = answer.boxes * u64::from(box_of);
        prop_assert!(bought >= answer.buy && bought < answer.buy + u64::from(box_of));
        prop_assert_eq!(answer.left_over, bought - needed);
    }
}
