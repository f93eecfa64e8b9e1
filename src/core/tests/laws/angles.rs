//! Closed forms for angles against boards and legs built from points in space, and back again.

use proptest::prelude::*;
use reckoner_core::calculators::angles::sides::{Face, Joint, Setting};
use reckoner_core::calculators::angles::{Lay, leg, sides, two_ways};
use reckoner_core::measure::{Length, Number};

type Vector = [f64; 3];

/// What an irrational length may be off by, with the last digits of the floats that check it.
const BOUND: f64 = 1.0 / 8192.0 + 1e-9;

fn dot(a: Vector, b: Vector) -> f64 {
    a[0] * b[0] + a[1] * b[1] + a[2] * b[2]
}

fn cross(a: Vector, b: Vector) -> Vector {
    [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]]
}

fn scale(a: Vector, by: f64) -> Vector {
    a.map(|x| x * by)
}

fn add(a: Vector, b: Vector) -> Vector {
    [a[0] + b[0], a[1] + b[1], a[2] + b[2]]
}

fn unit(a: Vector) -> Vector {
    scale(a, 1.0 / dot(a, a).sqrt())
}

/// Degrees between two lines.
fn between(a: Vector, b: Vector) -> f64 {
    // The sine and the cosine together are sharp at both ends.
    let (a, b) = (unit(a), unit(b));
    let sine = dot(cross(a, b), cross(a, b)).sqrt();
    sine.atan2(dot(a, b).abs()).to_degrees()
}

/// Degrees by which a cut with this normal is out of square to a face with this normal.
fn out_of_square(cut: Vector, face: Vector) -> f64 {
    90.0 - between(cut, face)
}

/// Turned about the upright axis.
fn turned(a: Vector, degrees: f64) -> Vector {
    let (sin, cos) = degrees.to_radians().sin_cos();
    [a[0] * cos - a[1] * sin, a[0] * sin + a[1] * cos, a[2]]
}

/// One side of a box: its length runs along x; outward normal of its outside face; up its slope.
fn side(lean: f64) -> (Vector, Vector, Vector) {
    let (sin, cos) = lean.to_radians().sin_cos();
    ([1.0, 0.0, 0.0], [0.0, cos, -sin], [0.0, sin, cos])
}

/// The saw setting of a cut on a board, measured on the board itself: the board rests with the
/// face `down` on the table, and `square` runs square across its length on that face.
fn measured(cut: Vector, down: Vector, square: Vector) -> (f64, f64) {
    let trace = cross(cut, down);
    (between(trace, square), out_of_square(cut, down))
}

fn reckon(sides: u32, lean: Number, joint: Joint, lay: Lay) -> sides::Answer {
    let input = sides::Input { sides, lean, joint, lay, size: None };
    sides::reckon(&input).expect("a setting")
}

#[track_caller]
fn same(setting: Setting, (gauge, tilt): (f64, f64), what: &str) {
    assert!((setting.gauge.in_degrees() - gauge).abs() < 1e-9, "{what}: {setting:?} {gauge}");
    assert!((setting.tilt.in_degrees() - tilt).abs() < 1e-9, "{what}: {setting:?} {tilt}");
}

/// The plane of a mitre holds the line where the outside faces of two sides meet and the line
/// where their inside faces meet.
#[test]
fn mitres_agree_with_boards_built_in_space() {
    for sides in 3..=12 {
        for lean in 0..=89_i32 {
            let (_, outside, up) = side(f64::from(lean));
            let next = turned(outside, -360.0 / f64::from(sides));
            let outer_line = cross(outside, next);
            // The inside faces lie one thickness back; the lines are parallel, and the way from
            // one to the other is along the sum of the normals.
            let from_inner_to_outer = add(outside, next);
            let cut = cross(outer_line, from_inner_to_outer);
            let lean = Number::whole(lean.into());
            let what = format!("{sides} sides, lean {lean}");
            let flat = reckon(sides, lean, Joint::Mitred, Lay::Flat);
            same(flat.setting, measured(cut, outside, up), &what);
            same(flat.other, measured(cut, up, outside), &what);
            let on_edge = reckon(sides, lean, Joint::Mitred, Lay::OnEdge);
            assert_eq!((on_edge.setting, on_edge.other), (flat.other, flat.setting), "{what}");
        }
    }
}

/// The end of a butted side lies in the inside face of the next side.
#[test]
fn butts_agree_with_boards_built_in_space() {
    let mut checked = 0;
    for sides in 3..=12 {
        for lean in 0..=60_i32 {
            let (along, outside, up) = side(f64::from(lean));
            let cut = turned(outside, -360.0 / f64::from(sides));
            let what = format!("{sides} sides, lean {lean}");
            let input = sides::Input {
                sides,
                lean: Number::whole(lean.into()),
                joint: Joint::Butt,
                lay: Lay::Flat,
                size: None,
            };
            let Ok(answer) = sides::reckon(&input) else {
                assert!(out_of_square(cut, outside) > sides::STEEPEST_BUTT, "{what}");
                continue;
            };
            same(answer.setting, measured(cut, outside, up), &what);
            same(answer.other, measured(cut, up, outside), &what);
            // How far the end reaches on each face: a point of the cut at the outside face
            // against the one straight through the board at the inside face.
            let outside_reaches = -dot(cut, outside) / dot(cut, along);
            let expected = match outside_reaches {
                x if x > 1e-4 => Some(Face::Outside),
                x if x < -1e-4 => Some(Face::Inside),
                _ => None,
            };
            assert_eq!(answer.longer, expected, "{what}");
            checked += 1;
        }
    }
    assert!(checked > 400, "only {checked} butted ends were checked");
}

/// The rule in circulation with a cosine is right for four sides only; ours is the sine.
#[test]
fn the_tilt_on_edge_is_that_of_the_sine() {
    for sides in 3..=12_u32 {
        let half = (180.0 / f64::from(sides)).to_radians();
        let lean = 15.0_f64.to_radians();
        let sine = (lean.sin() * half.sin()).asin().to_degrees();
        let cosine = (lean.sin() * half.cos()).asin().to_degrees();
        let answer = reckon(sides, Number::whole(15), Joint::Mitred, Lay::OnEdge);
        let tilt = answer.setting.tilt.in_degrees();
        assert!((tilt - sine).abs() < 1e-9);
        assert_eq!((tilt - cosine).abs() < 1e-9, sides == 4, "{sides} sides");
    }
}

/// A point mirrored in the plane through 0 with this normal.
fn mirrored(point: Vector, normal: Vector) -> Vector {
    let normal = unit(normal);
    add(point, scale(normal, -2.0 * dot(point, normal)))
}

proptest! {
    /// From the two settings alone: a side laid against the end of the one before it, `sides`
    /// times, comes back to where it began, and not sooner. Its lean comes back too.
    #[test]
    fn mitres_close(sides in 3..=12_u32, tenths in 0..=899_i128) {
        let lean = Number::ratio(tenths, 10).expect("small");
        let answer = reckon(sides, lean, Joint::Mitred, Lay::Flat);
        let (gauge, tilt) = (answer.setting.gauge.in_radians(), answer.setting.tilt.in_radians());
        // Along the board, up its width, through its thickness outward.
        let cut = [gauge.cos() * tilt.cos(), -gauge.sin() * tilt.cos(), -tilt.sin()];
        let next = |p: Vector| mirrored(mirrored(p, [1.0, 0.0, 0.0]), cut);
        let start = [[1.0, 0.0, 0.0], [0.0, 1.0, 0.0], [0.0, 0.0, 1.0]];
        let mut now = start;
        for n in 1..=sides {
            now = now.map(next);
            let off = now.iter().zip(start).flat_map(|(a, b)| [a[0] - b[0], a[1] - b[1], a[2] - b[2]])
                .fold(0.0_f64, |most, x| most.max(x.abs()));
            if n == sides {
                prop_assert!(off < 1e-9, "open by {off}");
            } else {
                prop_assert!(off > 0.1, "closed after {n}");
            }
        }
        // What stays put is upright: the lean of the side against it is the lean asked.
        let upright = cross(cut, [1.0, 0.0, 0.0]);
        let width = [0.0, 1.0, 0.0];
        prop_assert!((between(upright, width) - lean.to_f64()).abs() < 1e-6);
        prop_assert_eq!(answer.longer, Some(Face::Outside));
    }

    /// The lengths of a mitred side are those of the rings they make.
    #[test]
    fn the_edges_of_a_side_go_round(sides in 3..=12_u32, lean in 0..=90_i64, across in 64..640_i32, board in 16..128_i32) {
        let (across, board) = (Length::sixty_fourths(4 * across), Length::sixty_fourths(4 * board));
        let input = sides::Input {
            sides,
            lean: Number::whole(lean),
            joint: Joint::Mitred,
            lay: Lay::Flat,
            size: Some(sides::Size { across, board }),
        };
        let inner = across.to_f64() - 2.0 * board.to_f64() * (lean as f64).to_radians().sin();
        match sides::reckon(&input) {
            Ok(answer) => {
                let (wide, narrow) = answer.edges.expect("sizes were given");
                for (edge, across) in [(wide, across.to_f64()), (narrow, inner)] {
                    // The corners of a ring whose sides stand across ÷ 2 from the middle.
                    let half = std::f64::consts::PI / f64::from(sides);
                    let corner = across / 2.0 / half.cos();
                    let apart = (corner - corner * (2.0 * half).cos()).hypot(corner * (2.0 * half).sin());
                    prop_assert!((edge.to_f64() - apart).abs() <= BOUND, "{edge:?} {apart}");
                }
            }
            Err(_) => prop_assert!(inner <= 1e-9),
        }
    }

    #[test]
    fn a_leg_agrees_with_its_corners(height in 16..640_i32, width in 8..96_i32, tenths in 0..=600_i128) {
        let (height, width) = (Length::sixty_fourths(4 * height), Length::sixty_fourths(4 * width));
        let degrees = Number::ratio(tenths, 10).expect("small");
        let input = leg::Input { height, lean: leg::Lean::Degrees(degrees), width, apart: Some(width) };
        let answer = leg::reckon(&input).expect("a leg");
        // Along the leg and square to it, x out and y down from the outer corner of the top.
        let (sin, cos) = degrees.to_f64().to_radians().sin_cos();
        let (along, square) = ([sin, cos], [-cos, sin]);
        // Where an edge of the leg, so far square to it, meets a level line.
        let meets = |off: f64, level: f64| {
            let at = (level - square[1] * off) / along[1];
            (at, along[0] * at + square[0] * off)
        };
        let (w, h) = (width.to_f64(), height.to_f64());
        let corners = [meets(0.0, 0.0), meets(w, 0.0), meets(0.0, h), meets(w, h)];
        let far = corners.iter().map(|corner| corner.0).fold(f64::MIN, f64::max);
        let near = corners.iter().map(|corner| corner.0).fold(f64::MAX, f64::min);
        prop_assert!((answer.blank.to_f64() - (far - near)).abs() <= BOUND);
        prop_assert!((answer.edge.to_f64() - (corners[2].0 - corners[0].0)).abs() <= BOUND);
        prop_assert!((answer.foot_out.to_f64() - (corners[2].1 - corners[0].1)).abs() <= BOUND);
        prop_assert!((answer.end_cut.to_f64() - (corners[0].1 - corners[1].1)).abs() <= BOUND);
        prop_assert_eq!(answer.spread, Some((width + (answer.foot_out * 2).expect("small")).expect("small")));
        // And back: the foot as found gives the lean again.
        let back = leg::Input { lean: leg::Lean::FootOut(answer.foot_out), ..input };
        let back = leg::reckon(&back).expect("a leg");
        prop_assert!((back.lean.in_radians() - answer.lean.in_radians()).abs() <= BOUND / h);
    }

    #[test]
    fn a_leg_that_leans_two_ways_agrees_with_its_corners(
        height in 64..640_i32, thickness in 8..64_i32, rake in 0..=450_i128, splay in 0..=450_i128, square in any::<bool>(),
    ) {
        prop_assume!(rake + splay > 0);
        let faces = if square { two_ways::Faces::Square } else { two_ways::Faces::Turned };
        let input = two_ways::Input {
            height: Length::sixty_fourths(4 * height),
            rake: Number::ratio(rake, 10).expect("small"),
            splay: Number::ratio(splay, 10).expect("small"),
            thickness: Length::sixty_fourths(4 * thickness),
            faces,
            apart_rake: None,
            apart_splay: None,
        };
        let answer = two_ways::reckon(&input).expect("a leg");
        let (h, w) = (input.height.to_f64(), input.thickness.to_f64());
        // Front to back is x, side to side y, up z; the leg runs from the foot to the top.
        let foot = [answer.foot_rake.to_f64(), answer.foot_splay.to_f64(), -h];
        let exact = [h * input.rake.to_f64().to_radians().tan(), h * input.splay.to_f64().to_radians().tan(), -h];
        prop_assert!((foot[0] - exact[0]).abs() <= BOUND && (foot[1] - exact[1]).abs() <= BOUND);
        let along = unit(exact);
        let level = [0.0, 0.0, 1.0];
        prop_assert!((answer.resultant.in_degrees() - between(along, level)).abs() < 1e-9);
        let on_the_top = [along[0], along[1], 0.0];
        prop_assert!((answer.sightline.in_degrees() - between(on_the_top, [1.0, 0.0, 0.0])).abs() < 1e-9);
        prop_assert!((answer.middle.to_f64() - dot(exact, exact).sqrt()).abs() <= BOUND);
        // The face that lies on the saw: its normal is square to the leg, and to the
        // front-to-back line (square leg) or to the upright plane of the lean (turned leg).
        let down = if square { unit(cross(along, [1.0, 0.0, 0.0])) } else { unit(cross(along, level)) };
        let over = cross(down, along);
        let (gauge, tilt) = measured(level, down, over);
        prop_assert!((answer.gauge.in_degrees() - gauge).abs() < 1e-9, "{gauge}");
        prop_assert!((answer.tilt.in_degrees() - tilt).abs() < 1e-9, "{tilt}");
        // The stick: how far apart, along the leg, its edges meet floor and top.
        let mut places = Vec::new();
        for (a, b) in [(1.0, 1.0), (1.0, -1.0), (-1.0, 1.0), (-1.0, -1.0)] {
            let edge = add(scale(down, a * w / 2.0), scale(over, b * w / 2.0));
            for z in [0.0, -h] {
                places.push((z - edge[2]) / along[2]);
            }
        }
        let far = places.iter().copied().fold(f64::MIN, f64::max);
        let near = places.iter().copied().fold(f64::MAX, f64::min);
        prop_assert!((answer.blank.to_f64() - (far - near)).abs() <= BOUND, "{:?} {}", answer.blank, far - near);
        // And back: the resultant along the sightline holds both leans.
        let (lean, line) = (answer.resultant.in_radians().tan(), answer.sightline.in_radians());
        prop_assert!(((lean * line.cos()).atan().to_degrees() - input.rake.to_f64()).abs() < 1e-9);
        prop_assert!(((lean * line.sin()).atan().to_degrees() - input.splay.to_f64()).abs() < 1e-9);
    }
}
