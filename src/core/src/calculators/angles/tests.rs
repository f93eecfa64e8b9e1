//! Rules, limits and refusals of the angles, as they stand on the screen.

use super::CALCULATOR;
use crate::measure::text::NoNames;
use crate::sheet::{Answer, Bench, Entries, Face, Sheet, face};

fn sheet(entries: &[(&str, &str)]) -> Sheet {
    CALCULATOR.sheet(&Entries::from_pairs(entries.iter().copied()), &Bench::default(), &NoNames)
}

fn answer(entries: &[(&str, &str)]) -> Answer {
    let sheet = sheet(entries);
    assert!(sheet.refusals.is_empty(), "{entries:?}: {:?}", sheet.refusals);
    sheet.answer.expect("no refusal, so an answer")
}

#[track_caller]
fn check(entries: &[(&str, &str)], id: &str, from: &str, expected: &str) {
    let answer = answer(entries);
    let figure = core::iter::once(&answer.headline)
        .chain(&answer.figures)
        .find(|figure| figure.id == id)
        .unwrap_or_else(|| panic!("{entries:?} has no {id}"));
    let shown = match face(&figure.value, &Bench::default()) {
        Face::Measure(shown) => format!("{} {}", shown.mark, shown.lean),
        Face::Line { text, .. } => text,
        Face::Measures(_) => panic!("{id} is a list"),
    };
    assert_eq!((figure.from, shown.as_str()), (from, expected), "{entries:?} {id}");
}

#[track_caller]
fn refused(entries: &[(&str, &str)], code: &str, sentence: &str, way_out: &str) {
    let sheet = sheet(entries);
    let tape = Bench::default().tape;
    let refusal =
        sheet.refusals.iter().find(|refusal| refusal.code == code).unwrap_or_else(|| {
            panic!("{entries:?} is not refused as {code}: {:?}", sheet.refusals)
        });
    assert_eq!(refusal.sentence.on(tape), sentence);
    let way = refusal.way_out.as_ref().map(|way| way.sentence.on(tape));
    assert_eq!(way.unwrap_or_default(), way_out);
}

const LEG: (&str, &str) = ("mode", "leg");
const TWO_WAYS: (&str, &str) = ("mode", "two_ways");
const SIDES: (&str, &str) = ("mode", "sides");

/// By hand. A side of a box that leans 10° goes in by sin 10° = 0.1736 for each inch up its face, and its end, at a corner of
/// 45°, comes along by as much: atan 0.1736 = 9.85°. On its edge it goes up by cos 10° = 0.9848: atan 0.9848 = 44.56°. The
/// plane of the joint stands upright at 45° to the side; what it makes with the face is asin(0.9848 × 0.7071 = 0.6964) =
/// 44.14°, and with the edge asin(0.1736 × 0.7071 = 0.1228) = 7.05°. A leg that leans 8° and 12° goes out by tan 8° = 0.1405
/// and tan 12° = 0.2126 for each inch up: the root of 0.01975 + 0.04518 is 0.2548, atan 14.30°. The rest are what is left of
/// 90°.
#[test]
fn a_gauge_is_given_both_ways_with_its_reference() {
    check(&[LEG], "gauge", "from square across the board", "10.00°");
    check(&[LEG], "gauge_from_edge", "from the edge of the board", "80.00°");
    let sides = [SIDES, ("sides", "4"), ("lean", "10")];
    check(&sides, "setting", "board face down", "9.85° and 44.14°");
    check(&sides, "gauge", "from square across the board", "9.85°");
    check(&sides, "gauge_from_edge", "from the edge of the board", "80.15°");
    check(&sides, "tilt", "from upright", "44.14°");
    check(&sides, "tilt_from_table", "from the table", "45.86°");
    check(&sides, "other_setting", "gauge and tilt, on edge", "44.56° and 7.05°");
    check(&[TWO_WAYS], "resultant", "from upright", "14.30°");
    check(&[TWO_WAYS], "from_top", "from the underside of the top", "75.70°");
}

/// By hand: 17 × tan 10° = 2.998 at each foot, 14 + 2 × 2.998 = 19.995.
#[test]
fn a_leg_is_known_by_its_angle_or_by_its_foot() {
    check(&[LEG, ("apart", "14")], "spread", "outside to outside", "20 in light");
    let foot = [LEG, ("known", "foot_out"), ("height", "4"), ("foot_out", "3"), ("width", "2")];
    // A 3-4-5 triangle: 5 along the edge, and 2 × 3/4 more.
    check(&foot, "edge", "top cut to foot cut", "5 in exact");
    check(&foot, "blank", "square end to square end", "6 1/2 in exact");
    check(&[LEG, ("angle", "0")], "blank", "square end to square end", "17 in exact");
}

#[test]
fn a_leg_that_leans_one_way_of_two_is_the_plain_one() {
    let plain = [LEG, ("angle", "10"), ("width", "1 1/2")];
    let square = [TWO_WAYS, ("rake", "10"), ("splay", "0"), ("faces", "square")];
    let turned = [TWO_WAYS, ("rake", "10"), ("splay", "0")];
    let blank = |entries: &[(&str, &str)]| answer(entries).headline.value;
    assert_eq!(blank(&plain), blank(&square));
    assert_eq!(blank(&plain), blank(&turned));
    check(&turned, "sightline", "from the front-to-back line", "0.00°");
}

#[test]
fn a_tilt_that_most_saws_cannot_reach_is_pointed_out() {
    let notes = |entries: &[(&str, &str)]| {
        answer(entries).notes.iter().map(ToString::to_string).collect::<Vec<_>>()
    };
    let triangle = notes(&[SIDES, ("sides", "3"), ("lean", "0"), ("board", "")]);
    assert_eq!(
        triangle.last().map(String::as_str),
        Some(
            "Most saws tilt no farther than 45°. Laid on edge it can be cut: see the other setting."
        )
    );
    let square = notes(&[SIDES, ("sides", "4"), ("lean", "0")]);
    assert!(square.iter().all(|note| !note.contains("Most saws")), "{square:?}");
    assert!(square[1].starts_with("Each end 0.1° off opens the last joint by 0.8°."), "{square:?}");
}

/// By hand: flat, 16 across loses two boards of 2: 12, and a side of a square is as long.
#[test]
fn lengths_of_sides_need_both_sizes() {
    let ids = |entries: &[(&str, &str)]| {
        answer(entries).figures.iter().map(|figure| figure.id).collect::<Vec<_>>()
    };
    assert!(ids(&[SIDES]).contains(&"wide_edge"));
    assert!(!ids(&[SIDES, ("board", "")]).contains(&"wide_edge"));
    assert!(!ids(&[SIDES, ("joint", "butt")]).contains(&"wide_edge"));
    check(
        &[SIDES, ("sides", "4"), ("lean", "90"), ("across", "16"), ("board", "2")],
        "narrow_edge",
        "corner to corner, outside",
        "12 in exact",
    );
}

#[test]
fn what_cannot_be_cut_is_refused_with_a_way_out() {
    refused(
        &[TWO_WAYS, ("rake", "0"), ("splay", "0")],
        "upright",
        "With both at 0 the leg stands upright and leans nowhere.",
        "Give one of the two angles.",
    );
    refused(
        &[SIDES, ("joint", "butt"), ("lean", "90")],
        "feather-edge",
        "This end would be cut 90° out of square, to a feather edge.",
        "Mitre the ends.",
    );
    refused(
        &[SIDES, ("lean", "30"), ("across", "6"), ("board", "7 1/4")],
        "sides-meet",
        "The lean takes 7 1/4 in off a width of 6 in: the sides meet before the boards end.",
        "Use narrower boards, or 9 in across or more.",
    );
    refused(
        &[LEG, ("angle", "61")],
        "out-of-range",
        "This must be from 0 to 60°.",
        "Use 60°, the nearest.",
    );
    refused(
        &[LEG, ("height", "99999"), ("angle", "60")],
        "too-large",
        "This is too large or too fine to work out exactly.",
        "Use lengths that a tape can show.",
    );
    refused(
        &[SIDES, ("sides", "2")],
        "not-a-count",
        "This must be a whole number from 3 to 12.",
        "",
    );
}
