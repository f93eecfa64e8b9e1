//! Laws of the curve: marks lie on circles, and what comes out goes back in.

use proptest::prelude::*;
use reckoner_core::calculators::curve::{arc, corner, rim, s_curve};
use reckoner_core::measure::{Length, Number};

use crate::judged::{self, Judged};

/// What an irrational length may be off by, with the last digits of the floats that check it.
const BOUND: f64 = 1.0 / 8192.0 + 1e-9;

fn sixteenths(n: i32) -> Length {
    Length::sixty_fourths(4 * n)
}

/// A chord up to 96 in and a rise up to half of it.
fn chord_and_rise() -> impl Strategy<Value = (Length, Length)> {
    (16..96 * 16_i32)
        .prop_flat_map(|chord| (Just(sixteenths(chord)), (4..=chord / 2).prop_map(sixteenths)))
}

fn arc_input(chord: Length, rise: Length, step: Length, things: Vec<Length>) -> arc::Input {
    arc::Input { chord, rise, step, board: None, things }
}

proptest! {
    #[test]
    fn marks_lie_on_the_circle((chord, rise) in chord_and_rise(), step in 20..200_i32) {
        let answer = arc::reckon(&arc_input(chord, rise, sixteenths(step), Vec::new())).expect("an arc");
        let (radius, centre) = (answer.radius.to_f64(), answer.centre.to_f64());
        for mark in &answer.marks {
            // Straight up from the mark to the circle around a centre `centre` below the chord.
            let x = mark.along.to_f64();
            let on_circle = (radius * radius - x * x).sqrt() - centre;
            prop_assert!((mark.height.to_f64() - on_circle).abs() <= BOUND, "{mark:?}");
        }
        prop_assert_eq!(answer.marks[0].height, rise);
        prop_assert_eq!(answer.marks.last().map(|mark| mark.along), Some((chord / 2).expect("small")));
        let falls = answer
            .marks
            .windows(2)
            .all(|pair| pair[0].along < pair[1].along && pair[0].height >= pair[1].height);
        prop_assert!(falls, "the marks run outward and the arc falls");
    }

    #[test]
    fn the_rise_comes_back_from_the_radius((chord, rise) in chord_and_rise()) {
        let answer = arc::reckon(&arc_input(chord, rise, chord, Vec::new())).expect("an arc");
        // Exactly: (R - h)² + (c/2)² = R², without any root.
        let below = answer.centre.in_inches();
        let (half, radius) = ((chord / 2).expect("small").in_inches(), answer.radius.in_inches());
        let square = |n: Number| (n * n).expect("small");
        prop_assert_eq!((square(below) + square(half)).expect("small"), square(radius));
        prop_assert_eq!((answer.radius - answer.centre).expect("small"), rise);
    }

    /// A round thing of just the radius is found, is not off, and gives the rise that was asked.
    #[test]
    fn the_right_round_thing_gives_the_wanted_rise((chord, rise) in chord_and_rise(), other in 16..400_i32) {
        let plain = arc::reckon(&arc_input(chord, rise, chord, Vec::new())).expect("an arc");
        let right = (plain.radius * 2).expect("small");
        let answer = arc::reckon(&arc_input(chord, rise, chord, vec![sixteenths(other), right])).expect("an arc");
        let best = answer.fits[0];
        prop_assert_eq!((best.diameter, best.off), (right, Length::ZERO));
        prop_assert!((best.gives.to_f64() - rise.to_f64()).abs() <= BOUND);
    }

    /// The tangent point is as far from the centre as the radius, and so is the other edge:
    /// checked with plain coordinates, the corner at the origin.
    #[test]
    fn a_round_touches_both_edges(radius in 4..200_i32, degrees in 10..=170_i64) {
        let input = corner::Input {
            radius: sixteenths(radius),
            corner: Number::whole(degrees),
            edge: None,
            both: false,
            things: Vec::new(),
        };
        let answer = corner::reckon(&input).expect("a corner");
        let (r, t) = (input.radius.to_f64(), answer.tangent.to_f64());
        let angle = (degrees as f64).to_radians();
        // Centre straight off the first edge at the tangent point.
        let (x, y) = (t, r);
        let from_other_edge = (x * angle.sin() - y * angle.cos()).abs();
        prop_assert!((from_other_edge - r).abs() <= BOUND, "{from_other_edge} {r}");
        let to_corner = x.hypot(y);
        prop_assert!((to_corner - answer.corner_to_centre.to_f64()).abs() <= 2.0 * BOUND);
        prop_assert!((to_corner - r - answer.lost.to_f64()).abs() <= 2.0 * BOUND);
    }

    #[test]
    fn an_s_curve_lies_on_two_circles_and_turns_over_on_itself(
        run in 16..800_i32, part in 1..=16_i32, step in 160..400_i32,
    ) {
        let (run, offset) = (sixteenths(run), sixteenths((run * part / 16).max(1)));
        let input = s_curve::Input { run, offset, step: sixteenths(step), board: None, things: Vec::new() };
        let answer = s_curve::reckon(&input).expect("a curve");
        let (r, a, b) = (answer.radius.to_f64(), run.to_f64(), offset.to_f64());
        for mark in &answer.marks {
            let (x, y) = (mark.along.to_f64(), mark.height.to_f64());
            // One circle touches the start line above the start, the other the end line below
            // the end; in each half the curve lies on its own.
            let (dx, dy) = if x <= a / 2.0 { (x, y - r) } else { (x - a, y - (b - r)) };
            prop_assert!((dx.hypot(dy) - r).abs() <= BOUND, "{mark:?}");
        }
        prop_assert_eq!((answer.join.along * 2).expect("small"), run);
        prop_assert_eq!((answer.join.height * 2).expect("small"), offset);
        // The join lies on both circles, exactly: x² + (R - y)² = R².
        let (x, y) = (answer.join.along.in_inches(), answer.join.height.in_inches());
        let radius = answer.radius.in_inches();
        let square = |n: Number| (n * n).expect("small");
        let rest = (radius - y).expect("small");
        prop_assert_eq!((square(x) + square(rest)).expect("small"), square(radius));
    }
}

/// The rim once round, measured again with a straightedge, gives the same radius; where it is said between what it lies, it
/// lies there.
#[test]
fn a_straightedge_agrees_with_the_tape_round_the_rim() {
    let judged = Judged::default();
    judged::law(judged::cases(256), &chord_and_rise(), |(chord, rise)| {
        let across = rim::reckon(&rim::Input::Straightedge { chord, rise }).expect("a rim");
        prop_assume!(across.around.to_f64() < 90_000.0);
        let around = rim::reckon(&rim::Input::Around(across.around)).expect("a rim");
        prop_assert!((around.radius.to_f64() - across.radius.to_f64()).abs() <= 2.0 * BOUND);
        if let Some((least, most)) = across.between {
            prop_assert!(least <= across.radius && across.radius <= most);
            judged.note("between", 1);
        }
        Ok(())
    });
    judged.at_least(200, "between");
}
