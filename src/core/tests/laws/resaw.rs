//! The two-face resaw: a cut from both edges, on a saw simulated with whole sixty-fourths of an
//! inch. With the same face at the fence both kerfs lie in one plane and meet; with opposite
//! faces they miss each other by thickness - kerf - 2 × fence, and step the face by no more than
//! what comes off it.

use proptest::prelude::*;
use reckoner_core::calculators::resaw_rip::saw::{Rise, Saw, step_when_turned};
use reckoner_core::measure::Length;

fn sixty_fourths(n: i32) -> Length {
    Length::sixty_fourths(n)
}

fn saw(reach: i32, core_by_hand: bool, rise: Rise) -> Saw {
    Saw {
        kerf: sixty_fourths(8),
        reach: sixty_fourths(reach),
        rise,
        core_by_hand,
        thinnest: sixty_fourths(16),
        piece_length: sixty_fourths(30 * 64),
    }
}

/// Where the blade cuts, measured from face A, with face A or the face opposite at the fence.
fn kerf_from_face_a(thickness: i32, kerf: i32, fence: i32, is_a_at_fence: bool) -> (i32, i32) {
    if is_a_at_fence {
        (fence, fence + kerf)
    } else {
        (thickness - fence - kerf, thickness - fence)
    }
}

/// Every sixty-fourth of the depth that two passes of this height leave uncut.
fn uncut(depth: i32, height: i32) -> i32 {
    let is_cut = |at: i32| at < height || at >= depth - height;
    i32::try_from((0..depth).filter(|at| !is_cut(*at)).count()).expect("a small count")
}

/// Every sixty-fourth of the depth that both passes cut.
fn cut_twice(depth: i32, height: i32) -> i32 {
    let is_twice = |at: i32| at < height && at >= depth - height;
    i32::try_from((0..depth).filter(|at| is_twice(*at)).count()).expect("a small count")
}

proptest! {
    #[test]
    fn kerfs_meet_with_the_same_face_at_the_fence_and_else_miss_by_the_step(
        thickness in 20..800_i32, kerf in 2..16_i32, fence in 4..600_i32,
    ) {
        prop_assume!(fence + kerf < thickness);
        let first = kerf_from_face_a(thickness, kerf, fence, true);
        let same = kerf_from_face_a(thickness, kerf, fence, true);
        let other = kerf_from_face_a(thickness, kerf, fence, false);
        prop_assert_eq!(first, same);
        let step = step_when_turned(
            sixty_fourths(thickness), sixty_fourths(kerf), sixty_fourths(fence),
        ).expect("small lengths");
        let ridge = (other.0 - first.0).abs();
        prop_assert_eq!(ridge, (other.1 - first.1).abs());
        prop_assert_eq!(step, sixty_fourths(ridge.min(thickness - fence)));
        // Only a cut along the middle forgives the wrong face.
        prop_assert_eq!(step.is_zero(), 2 * fence + kerf == thickness);
    }

    #[test]
    fn two_passes_cut_all_of_the_depth_or_say_what_core_they_leave(
        half_depth in 10..400_i32, reach in 16..400_i32,
    ) {
        // An even depth keeps half of it a whole sixty-fourth.
        let depth = 2 * half_depth;
        let sweep = saw(reach, true, Rise::AtOnce).sweep(sixty_fourths(depth)).expect("a core is allowed");
        prop_assert!(sweep.height <= sixty_fourths(reach));
        if depth <= reach {
            prop_assert_eq!(sweep.sides, 1);
            prop_assert!(sweep.height >= sixty_fourths(depth));
            prop_assert!(sweep.height <= sixty_fourths(depth + 16), "at most 1/4 in above the work");
            prop_assert!(sweep.core.is_zero() && sweep.overlap.is_zero());
        } else {
            let height = (half_depth + 16).min(reach);
            prop_assert_eq!(sweep.sides, 2);
            prop_assert_eq!(sweep.height, sixty_fourths(height));
            prop_assert_eq!(sweep.core, sixty_fourths(uncut(depth, height)));
            prop_assert_eq!(sweep.overlap, sixty_fourths(cut_twice(depth, height)));
        }
        let refused = saw(reach, false, Rise::AtOnce).sweep(sixty_fourths(depth)).is_err();
        prop_assert_eq!(refused, depth > 2 * reach, "a core nobody saws by hand is refused");
    }

    #[test]
    fn a_blade_raised_in_steps_bites_at_most_an_inch_and_ends_at_full_height(
        depth in 20..800_i32, reach in 16..400_i32,
    ) {
        let depth = sixty_fourths(depth);
        let at_once = saw(reach, true, Rise::AtOnce).sweep(depth).expect("a core is allowed");
        let stepped = saw(reach, true, Rise::InSteps).sweep(depth).expect("a core is allowed");
        prop_assert_eq!(at_once.heights.as_slice(), &[at_once.height]);
        prop_assert_eq!(stepped.height, at_once.height);
        prop_assert_eq!(stepped.heights.last(), Some(&stepped.height));
        let mut below = Length::ZERO;
        for height in &stepped.heights {
            let bite = (*height - below).expect("small lengths");
            prop_assert!(bite.is_positive() && bite <= sixty_fourths(64));
            below = *height;
        }
        let steps = stepped.height.in_inches().ceil();
        prop_assert_eq!(i128::from(stepped.passes()), steps * i128::from(stepped.sides));
    }
}
