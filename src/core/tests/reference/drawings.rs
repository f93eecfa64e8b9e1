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
    assert_eq!(found.len(), expected.len(), "{found:?}");
    let near = found.iter().zip(expected).all(|(a, b)| (a - b).abs() < 1e-6);
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
