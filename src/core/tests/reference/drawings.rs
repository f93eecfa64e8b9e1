//! Drawings of the fresh forms of frame, resaw and strength, worked out by hand: each shape where it belongs, in inches
//! of the real thing, and every number.

use reckoner_core::calculators;
use reckoner_core::drawing::{Role, Scene, Shape};
use reckoner_core::measure::text::NoNames;
use reckoner_core::sheet::{Bench, Entries};

fn drawn(slug: &str, pairs: &[(&str, &str)]) -> Scene {
    let calculator = calculators::find(slug).expect("it is in the list");
    let entries = Entries::from_pairs(pairs.iter().copied());
    let sheet = calculator.sheet(&entries, &Bench::default(), &NoNames);
    sheet.answer.expect("an answer").drawing.expect("a drawing")
}

/// The rectangles of a role: left, top, width and height in page units.
fn rects(scene: &Scene, role: Role) -> Vec<[f64; 4]> {
    let of_role = scene.items.iter().filter(|item| item.role == role);
    of_role
        .filter_map(|item| match item.shape {
            Shape::Rect(x, y, w, h) => Some([x, y, w, h]),
            _ => None,
        })
        .collect()
}

/// The lines of a role, and the corners of its polygons.
fn corners(scene: &Scene, role: Role) -> Vec<Vec<(f64, f64)>> {
    let of_role = scene.items.iter().filter(|item| item.role == role);
    of_role
        .filter_map(|item| match &item.shape {
            Shape::Line(x1, y1, x2, y2) => Some(vec![(*x1, *y1), (*x2, *y2)]),
            Shape::Polygon(points) => Some(points.clone()),
            _ => None,
        })
        .collect()
}

/// Everything that is written, in order.
fn written(scene: &Scene) -> Vec<&str> {
    let mut texts: Vec<&str> = scene
        .items
        .iter()
        .filter_map(|item| match &item.shape {
            Shape::Text(.., text) => Some(text.as_str()),
            _ => None,
        })
        .collect();
    texts.sort_unstable();
    texts
}

#[track_caller]
fn same(found: &[f64], expected: &[f64]) {
    within(1e-6, found, expected);
}

#[track_caller]
fn within(by: f64, found: &[f64], expected: &[f64]) {
    assert_eq!(found.len(), expected.len(), "{found:?}");
    let near = found.iter().zip(expected).all(|(a, b)| (a - b).abs() < by);
    assert!(near, "{found:?} and not {expected:?}");
}

/// By hand: 46 over two legs of 3 1/2 leaves 39; the legs are drawn a third of 46 high, the rail begins a sixth of that
/// down and is a third of it high.
#[test]
fn the_rail_stands_between_its_legs() {
    let scene = drawn("frame", &[]);
    let legs = rects(&scene, Role::Wood);
    let scale = legs[0][2] / 3.5;
    let (left, top) = (legs[0][0], legs[0][1]);
    let real =
        |r: &[f64; 4]| [(r[0] - left) / scale, (r[1] - top) / scale, r[2] / scale, r[3] / scale];
    let high = 46.0 / 3.0;
    same(&real(&legs[0]), &[0.0, 0.0, 3.5, high]);
    same(&real(&legs[1]), &[42.5, 0.0, 3.5, high]);
    same(&real(&rects(&scene, Role::Mate)[0]), &[3.5, high / 6.0, 39.0, high / 3.0]);
    assert_eq!(written(&scene), ["3 1/2", "3 1/2", "39", "46"]);
    // The dimension over all runs from outside to outside.
    let ends = corners(&scene, Role::Dimension).into_iter().flatten().map(|(x, _)| x);
    let (first, last) = ends.fold((f64::MAX, f64::MIN), |(a, b), x| (a.min(x), b.max(x)));
    same(&[(first - left) / scale, (last - left) / scale], &[0.0, 46.0]);
}

/// By hand: of 3 1/2 the first cut leaves 3 1/4 + 1/8 at the fence, the blade's 1/8 comes off beyond it. The face that
/// stays lies along the fence, over all of the depth, whichever side the fence is on.
#[test]
fn the_face_at_the_fence_is_marked_where_the_fence_is() {
    for (side, is_right) in [("right", true), ("left", false)] {
        let scene = drawn("resaw-rip", &[("fence", side)]);
        let (wood, fence) = (rects(&scene, Role::EndGrain)[0], rects(&scene, Role::Fence)[0]);
        let scale = wood[3] / 3.5;
        same(&[wood[2] / scale], &[3.375]);
        let face = &corners(&scene, Role::ShowFace)[0];
        let [(x1, y1), (x2, y2)] = face[..] else { panic!("{face:?}") };
        let at_fence = if is_right { wood[0] + wood[2] } else { wood[0] };
        let fence_face = if is_right { fence[0] } else { fence[0] + fence[2] };
        same(&[x1, x2, fence_face], &[at_fence; 3]);
        same(&[y1.min(y2), y1.max(y2)], &[wood[1], wood[1] + wood[3]]);
        // The fence reaches from a little above the wood down to the table.
        same(&[fence[1] + fence[3]], &[wood[1] + wood[3]]);
        // The kerf beside what stays, an eighth wide.
        let kerf = rects(&scene, Role::Kerf)[0];
        let beside = if is_right { wood[0] - kerf[2] } else { wood[0] + wood[2] };
        same(&[kerf[0], kerf[2] / scale], &[beside, 0.125]);
        let texts = written(&scene);
        for text in ["3 3/8", "3 1/4", "kerf 1/8", "target 3 1/4"] {
            assert!(texts.contains(&text), "{text} is not in {texts:?}");
        }
    }
}

/// By hand: 44 between the supports, bent by one load in its middle, drawn 26 page units deep; with a middle support the
/// load stands in the middle of the second half, at three quarters.
#[test]
fn the_beam_bends_between_its_supports() {
    let scene = drawn("strength", &[]);
    let at_rest = rects(&scene, Role::Ghost);
    let (left, rest, long, thick) = (at_rest[0][0], at_rest[0][1], at_rest[0][2], at_rest[0][3]);
    same(&[thick], &[1.5 * long / 44.0]);
    let bent = &corners(&scene, Role::Wood)[0];
    let lowest = bent.iter().map(|(_, y)| *y).fold(f64::MIN, f64::max);
    same(&[lowest - rest - thick], &[26.0]);
    let lowest_at = bent.iter().find(|(_, y)| *y == lowest).expect("a lowest place").0;
    same(&[(lowest_at - left) / long], &[0.5]);
    let tips: Vec<f64> =
        corners(&scene, Role::Mate).iter().map(|it| (it[0].0 - left) / long).collect();
    same(&tips, &[0.0, 1.0, 0.0, 0.5, 1.0]);
    let loads: Vec<f64> =
        corners(&scene, Role::Kerf).iter().map(|it| (it[0].0 - left) / long).collect();
    same(&loads, &[0.5, 0.75]);
    let texts = written(&scene);
    for text in ["span 44", "22", "1 1/2 deep", "5 1/2 wide"] {
        assert!(texts.contains(&text), "{text} is not in {texts:?}");
    }
}

/// By hand: both parts are 1 1/2 thick, 43 1/2 from outside to outside and 17 from front to back, the front below. The
/// middle of the holes of 1 is 5 from the front, and 1/4 of the dowel of 0.985 stands out on each side to be trimmed.
#[test]
fn the_dowel_lies_in_the_middle_of_its_holes() {
    let scene = drawn("dowel", &[]);
    let wood = rects(&scene, Role::Wood);
    let scale = wood[0][2] / 1.5;
    let real = |r: &[f64; 4]| {
        [(r[0] - wood[0][0]) / scale, (r[1] - wood[0][1]) / scale, r[2] / scale, r[3] / scale]
    };
    let all = |role: Role| rects(&scene, role).iter().flat_map(real).collect::<Vec<f64>>();
    same(&all(Role::Wood), &[0.0, 0.0, 1.5, 17.0, 42.0, 0.0, 1.5, 17.0]);
    same(&all(Role::Hole), &[0.0, 11.5, 1.5, 1.0, 42.0, 11.5, 1.5, 1.0]);
    let over = 12.0 - 0.985 / 2.0;
    same(&all(Role::Fastener), &[1.5, over, 40.5, 0.985]);
    same(&all(Role::Waste), &[-0.25, over, 0.25, 0.985, 43.5, over, 0.25, 0.985]);
    let cuts = corners(&scene, Role::CutLine);
    let across: Vec<f64> = cuts.iter().map(|cut| (cut[0].0 - wood[0][0]) / scale).collect();
    same(&across, &[0.0, 43.5]);
}

/// By hand: 29 of length, 4 units of gap and 1 of thickness lie side by side on a page of 340 with 18 free on both sides,
/// so an inch is 10 units. Below the face of 3 lie the edge of 1 and the underside, with 4 units between.
#[test]
fn a_part_taken_apart_fills_the_page_from_border_to_border() {
    let scene = drawn("finish", &[("parts", "1 @ 29 in × 3 in × 1 in")]);
    let wood = rects(&scene, Role::Wood);
    let top = wood[0][1];
    let from_top: Vec<f64> = wood.iter().flat_map(|r| [r[0], r[1] - top, r[2], r[3]]).collect();
    let face = [18.0, 0.0, 290.0, 30.0];
    let end = [312.0, 0.0, 10.0, 30.0];
    let edge = [18.0, 34.0, 290.0, 10.0];
    let underside = [18.0, 48.0, 290.0, 30.0];
    same(&from_top, &[face, end, edge, underside].concat());
}

/// By hand: a leg of 1 1/2 square, 17 high, that leans 8 degrees front to back and 12 side to side. Its foot lies
/// 17 × tan 12° = 3.6135 to the right of its top and 17 × tan 8° = 2.3892 before it.
#[test]
fn a_square_leg_is_a_square_at_its_top_and_at_its_foot() {
    let scene = drawn("angles", &[("mode", "two_ways"), ("faces", "square")]);
    let (top, foot) = (&corners(&scene, Role::Wood)[0], &corners(&scene, Role::Mate)[0]);
    let scale = (top[1].0 - top[0].0) / 1.5;
    let from_top_left = |corners: &[(f64, f64)]| {
        let near = corners.iter().map(|(x, y)| ((x - top[0].0) / scale, (y - top[0].1) / scale));
        near.flat_map(|(x, y)| [x, y]).collect::<Vec<f64>>()
    };
    same(&from_top_left(top), &[0.0, 0.0, 1.5, 0.0, 1.5, 1.5, 0.0, 1.5]);
    let (right, down) = (3.6135, 2.3892);
    let moved = [0.0, 0.0, 1.5, 0.0, 1.5, 1.5, 0.0, 1.5];
    let moved: Vec<f64> = moved.chunks(2).flat_map(|at| [at[0] + right, at[1] + down]).collect();
    // A length that comes of an angle is kept to a part of a mark.
    within(0.001, &from_top_left(foot), &moved);
}

/// By hand: six sides that lean 10 degrees have the gauge at tan g = sin 10° × tan 30° = 0.10026 from square. A board that
/// lies flat is 30 units wide; its end lies along the blade, which is upright on the page.
#[test]
fn the_end_of_a_board_at_the_gauge_lies_along_the_blade() {
    for (lay, wide) in [("flat", 30.0), ("on_edge", 10.0)] {
        let scene = drawn("angles", &[("mode", "sides"), ("lay", lay)]);
        let blade = &corners(&scene, Role::Blade)[0];
        let board = &corners(&scene, Role::Wood)[1];
        let [at_blade, away, far, beside] = board[..] else { panic!("{board:?}") };
        same(&[at_blade.0, beside.0, blade[1].0], &[blade[0].0; 3]);
        let way = |a: (f64, f64), b: (f64, f64)| (b.0 - a.0, b.1 - a.1);
        let (edge, end) = (way(at_blade, away), way(away, far));
        same(&[edge.0 * end.0 + edge.1 * end.1, end.0.hypot(end.1)], &[0.0, wide]);
        if lay == "flat" {
            let tangent = edge.1 / -edge.0;
            assert!((tangent - 0.100_256).abs() < 1e-5, "{tangent}");
        }
    }
}

/// By hand: on a page of 340, with 8 free on both sides, 12 for the fence and 56 on both sides of the wood for the heights
/// of the blade, a board 10 wide has 200.
#[test]
fn the_board_in_strips_takes_the_room_beside_the_fence() {
    let measured = [
        ("question", "strips"),
        ("board", "measured"),
        ("board_width", "10"),
        ("board_thickness", "1"),
        ("first_edge", "0"),
    ];
    let scene = drawn("resaw-rip", &measured);
    let wood = [Role::EndGrain, Role::Waste, Role::Mate, Role::Kerf];
    let all = wood.into_iter().flat_map(|role| rects(&scene, role));
    let (left, right) =
        all.fold((f64::MAX, f64::MIN), |(l, r), it| (l.min(it[0]), r.max(it[0] + it[2])));
    same(&[right - left], &[200.0]);
}

/// The upright dimensions of a drawing: across, and from which height to which.
fn upright(scene: &Scene) -> Vec<[f64; 3]> {
    let lines = corners(scene, Role::Dimension).into_iter();
    let lines = lines.filter(|it| it[0].0 == it[1].0 && (it[0].1 - it[1].1).abs() > 8.0);
    lines.map(|it| [it[0].0, it[0].1.min(it[1].1), it[0].1.max(it[1].1)]).collect()
}

/// The size of the left side stands beside the frame, not in it.
#[test]
fn the_size_of_a_side_stands_outside_of_the_frame() {
    let scene = drawn("frame", &[("question", "square")]);
    let frame = rects(&scene, Role::Ghost)[0];
    let sides = upright(&scene);
    assert!(!sides.is_empty());
    assert!(sides.iter().all(|side| side[0] < frame[0]), "{sides:?} and {frame:?}");
}

/// How deep the screw goes is measured from the joint to its tip.
#[test]
fn the_depth_of_a_toed_screw_is_measured_down_to_its_tip() {
    let scene = drawn("screws", &[("question", "toe")]);
    let part = rects(&scene, Role::Mate)[0];
    let joint = part[1] + part[3];
    let screw = &corners(&scene, Role::Fastener)[0];
    let tip = screw.iter().map(|(_, y)| *y).fold(f64::MIN, f64::max);
    let lines = corners(&scene, Role::Dimension).into_iter().flatten();
    let beyond = part[0] + part[2];
    let right: Vec<f64> = lines.filter(|(x, _)| *x > beyond).map(|(_, y)| y).collect();
    let (from, to) = right.iter().fold((f64::MAX, f64::MIN), |(a, b), y| (a.min(*y), b.max(*y)));
    // A length that comes of an angle is kept to a part of a mark.
    within(0.01, &[from, to], &[joint, tip]);
}

/// By hand: a strip of 6 is kept and the kerf is 1/8; the shoe reaches 1 1/4 to one side of the blade and 3 3/4 to the other.
/// With the narrow side along a guide on the waste the guide stands at 6 + 1/8 + 1 1/4 = 7 3/8 and the shoe begins at
/// 6 - 3 3/4 = 2 1/4; on the strip, the guide stands at 6 - 1 1/4 = 4 3/4 and the shoe ends at 6 + 1/8 + 3 3/4 = 9 7/8.
#[test]
fn the_guide_and_the_shoe_lie_on_the_side_that_was_chosen() {
    for (on, guide, shoe) in
        [("waste", [7.375, 8.875], [2.25, 7.375]), ("strip", [3.25, 4.75], [4.75, 9.875])]
    {
        let scene = drawn(
            "resaw-rip",
            &[
                ("question", "guide"),
                ("guide_board", "11 1/4"),
                ("guide_strip", "6"),
                ("kept_edge", "left"),
                ("kerf", "1/8"),
                ("shoe_narrow", "1 1/4"),
                ("shoe_wide", "3 3/4"),
                ("shoe_side", "narrow"),
                ("guide_on", on),
            ],
        );
        assert_eq!(scene.words, ["block: guide; dashed: shoe; hatched: waste"]);
        let kept = rects(&scene, Role::Wood)[0];
        let scale = kept[2] / 6.0;
        let real = |role: Role| {
            let [left, _, wide, _] = rects(&scene, role)[0];
            [(left - kept[0]) / scale, (left + wide - kept[0]) / scale]
        };
        same(&real(Role::Fence), &guide);
        same(&real(Role::Ghost), &shoe);
        same(&real(Role::Kerf), &[6.0, 6.125]);
        same(&real(Role::Waste), &[6.125, 11.25]);
    }
}

/// By hand: on 50 the first of three marks is 4 from the left and the last 7 from the right, at 43; the middle one is at
/// 23 1/2, and 46 and 26 1/2 are left beyond the first two. The 7 of the last is the size of its end, and is written once.
#[test]
fn a_board_with_marks_says_each_distance_once() {
    let scene = drawn(
        "spacing",
        &[
            ("mode", "count"),
            ("length", "50"),
            ("count", "3"),
            ("left_end", "4"),
            ("right_end", "7"),
        ],
    );
    let numbers = ["1", "2", "3"];
    let [from_left, from_right] = [["4", "23 1/2", "43"], ["46", "26 1/2", "7"]];
    let sizes = ["50", "4", "19 1/2"];
    let mut all = [numbers, from_left, from_right, sizes].concat();
    all.sort_unstable();
    assert_eq!(written(&scene), all);
}
