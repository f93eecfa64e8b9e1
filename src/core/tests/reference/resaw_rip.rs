//! Resaw and rip against examples worked by hand and values of common practice.
//!
//! [WH] R1, R3 and R5 follow from the kerf arithmetic shown beside each. The values marked "common
//! practice, no source" are what builders of outdoor furniture report from their own saws.

use reckoner_core::calculators::find;
use reckoner_core::calculators::resaw_rip::guide::{self, GuideOn, ShoeSide};
use reckoner_core::calculators::resaw_rip::saw::{Rise, Saw};
use reckoner_core::calculators::resaw_rip::section::{self, Faces, Share};
use reckoner_core::calculators::resaw_rip::strips::{self, Falls, OtherEdge, Plan};
use reckoner_core::measure::text::NoNames;
use reckoner_core::measure::{Length, Rounding, Tape, length};
use reckoner_core::sheet::{Answer, Bench, Entries, Side, Value};

fn inches(text: &str) -> Length {
    length(text).expect("a length")
}

/// Kerf 1/8 and a reach of 3 1/8: a 10 in table saw.
fn saw() -> Saw {
    Saw {
        kerf: inches("1/8"),
        reach: inches("3 1/8"),
        rise: Rise::AtOnce,
        core_by_hand: false,
        thinnest: inches("1/4"),
        piece_length: inches("30"),
    }
}

fn square(stock: &str, target: &str) -> section::Answer {
    section::reckon(&section::Input {
        thickness: inches(stock),
        width: inches(stock),
        target_thickness: inches(target),
        target_width: inches(target),
        thickness_faces: Faces::Both,
        width_faces: Faces::Both,
        share: Share::Even,
        n_pieces: 4,
        saw: saw(),
    })
    .expect("it can be sawn")
}

fn board(thickness: &str, width: &str, first_edge: &str, plan: Plan) -> strips::Answer {
    let other_edge = if first_edge == "0" { OtherEdge::Clean } else { OtherEdge::Raw };
    strips::reckon(&strips::Input {
        thickness: inches(thickness),
        width: inches(width),
        plan,
        first_edge: inches(first_edge),
        other_edge,
        allowance: Length::ZERO,
        falls: Falls::AtFence,
        tape: Tape::SIXTEENTHS,
        saw: saw(),
    })
    .expect("it can be sawn")
}

/// By hand: the blade stands 1/8 above the first cut, which is 2 deep: at 2 1/8. The second cut of the same setting is as deep
/// as the first has left it: above 1 7/8 that blade stands 1/4, the most, and stays where it is; above 1 13/16 it is set anew.
#[test]
fn two_cuts_of_one_setting_have_one_blade_height_up_to_a_quarter_above_the_work() {
    for (target, second) in [("1 7/8", "2 1/8"), ("1 13/16", "1 15/16")] {
        let answer = section::reckon(&section::Input {
            thickness: inches("2"),
            width: inches("2"),
            target_thickness: inches(target),
            target_width: inches(target),
            thickness_faces: Faces::One,
            width_faces: Faces::One,
            share: Share::Even,
            n_pieces: 1,
            saw: saw(),
        });
        let cuts = answer.expect("it can be sawn").cuts;
        let heights: Vec<Length> = cuts.iter().map(|cut| cut.sweep.height).collect();
        assert_eq!(heights, [inches("2 1/8"), inches(second)], "to {target}");
        assert_eq!(cuts[0].setting, cuts[1].setting);
    }
}

/// Source: [WH] R1: 9 1/4 board, 1/4 lost cleaning the first edge, strips 1 3/4, kerf 1/8:
/// floor(9.125 / 1.875) = 4 strips, leftover 1 1/2 with one raw edge.
#[test]
fn four_strips_from_a_cleaned_two_by_ten() {
    let answer = board("1 1/2", "9 1/4", "1/4", Plan::Fit(inches("1 3/4")));
    assert_eq!(answer.strips.len(), 4);
    assert_eq!(answer.leftover, inches("1 1/2"));
    assert!(answer.is_leftover_raw);
    // The edge is cleaned with 9 left; then one fence setting gives all four.
    let fences: Vec<Length> = answer.cuts.iter().map(|cut| cut.fence).collect();
    let strip = inches("1 3/4");
    assert_eq!(fences, [inches("9"), strip, strip, strip, strip]);
    assert_eq!(answer.n_settings, 2);
}

/// Source: [WH] R1, rule "offcut side: fence = current width - w - k; move in by (w + k)":
/// 9 - 1.875 = 7 1/8, then 5 1/4, 3 3/8, 1 1/2.
#[test]
fn strips_on_the_far_side_move_the_fence_in_by_strip_and_kerf() {
    let answer = strips::reckon(&strips::Input {
        thickness: inches("1 1/2"),
        width: inches("9 1/4"),
        plan: Plan::Fit(inches("1 3/4")),
        first_edge: inches("1/4"),
        other_edge: OtherEdge::Raw,
        allowance: Length::ZERO,
        falls: Falls::FarSide,
        tape: Tape::SIXTEENTHS,
        saw: saw(),
    })
    .expect("it can be sawn");
    let fences: Vec<Length> = answer.cuts.iter().map(|cut| cut.fence).collect();
    assert_eq!(fences, ["9", "7 1/8", "5 1/4", "3 3/8", "1 1/2"].map(inches));
}

/// The limit for thin pieces, 1/4 in here, may be met exactly. By hand, kerf 1/8: a board of 1 in cleaned of 3/4 is one such
/// strip; 1 in gives (1 + 1/8) / (1/4 + 1/8) = 3 at the fence, the last without a cut; of 1/2 in a strip of 1/8 and its
/// kerf leave 1/4 at the fence, and a strip of 1/4 leaves only 1/8, so that it is the strip that runs along the fence.
#[test]
fn what_is_exactly_as_thin_as_the_limit_is_sawn() {
    let (quarter, eighth) = (inches("1/4"), inches("1/8"));
    let cuts = |width: &str, first_edge: &str, strip: Length, falls: Falls| {
        let input = strips::Input {
            thickness: inches("1 1/2"),
            width: inches(width),
            plan: Plan::Fit(strip),
            first_edge: inches(first_edge),
            other_edge: OtherEdge::Clean,
            allowance: Length::ZERO,
            falls,
            tape: Tape::SIXTEENTHS,
            saw: saw(),
        };
        let answer = strips::reckon(&input).expect("it can be sawn");
        let cuts = answer.cuts.iter().map(|cut| (cut.fence, cut.is_strip_at_fence)).collect();
        (answer.strips.len(), cuts)
    };
    assert_eq!(cuts("1", "3/4", quarter, Falls::AtFence), (1, vec![(quarter, false)]));
    assert_eq!(cuts("1", "0", quarter, Falls::AtFence), (3, vec![(quarter, true); 2]));
    assert_eq!(cuts("1/2", "0", eighth, Falls::FarSide), (1, vec![(quarter, false)]));
    assert_eq!(cuts("1/2", "0", quarter, Falls::FarSide), (1, vec![(quarter, true)]));
}

/// Source: [WH] R3: 3 1/2 post, 1/8 off each face -> 3 1/4 square.
#[test]
fn a_post_loses_an_eighth_off_each_face() {
    let answer = square("3 1/2", "3 1/4");
    assert!(answer.cuts.iter().all(|cut| cut.off == inches("1/8")));
    let last = answer.cuts.last().expect("four cuts");
    assert_eq!((last.width_after, last.thickness_after), (inches("3 1/4"), inches("3 1/4")));
}

/// Source: [WH] R3: four pieces of (3.25 - 0.125) / 2 = 1 9/16 square. The saw reaches 3 1/8, less
/// than 3 1/4, so two faces at 1 5/8 + 1/4 = 1 7/8 high, overlap 1/2. The second split is only
/// 1 9/16 deep: one pass, laid flat.
#[test]
fn a_dressed_post_becomes_four_sticks() {
    let halves = board("3 1/4", "3 1/4", "0", Plan::Equal(2));
    assert_eq!(halves.share, Some(inches("1 9/16")));
    assert!(halves.strips.iter().all(|strip| strip.sawn == inches("1 9/16")));
    assert_eq!(halves.strips.len(), 2);
    assert_eq!(halves.leftover, Length::ZERO);
    assert_eq!(halves.sweep.sides, 2);
    assert_eq!(halves.sweep.height, inches("1 7/8"));
    assert_eq!(halves.sweep.overlap, inches("1/2"));
    assert_eq!(halves.n_passes, 2);

    let sticks = board("1 9/16", "3 1/4", "0", Plan::Equal(2));
    assert!(sticks.strips.iter().all(|strip| strip.sawn == inches("1 9/16")));
    assert_eq!((sticks.sweep.sides, sticks.n_passes), (1, 1));
}

/// Source: [WH] R5: 2 3/4 strip from the left edge, narrow shoe side 1 1/2: guide at
/// 2.75 + 0.125 + 1.5 = 4 3/8 from the left edge, on the waste side; the wide side, 4 7/8, would
/// hang off the board at -2 1/8.
#[test]
fn a_guide_goes_on_the_waste_side() {
    let input = guide::Input {
        board_width: inches("9 1/4"),
        strip: inches("2 3/4"),
        kerf: inches("1/8"),
        narrow: inches("1 1/2"),
        wide: inches("4 7/8"),
        guide_on: GuideOn::Waste,
        shoe_side: ShoeSide::Narrow,
        kept_edge: Side::Left,
    };
    let answer = guide::reckon(&input).expect("the board carries it");
    assert_eq!(answer.chosen.from_kept_edge, inches("4 3/8"));
    let [.., wide_on_strip] = answer.all;
    assert_eq!(wide_on_strip.from_kept_edge, inches("-2 1/8"));
    assert!(!wide_on_strip.stands());
    let hung = guide::Input { guide_on: GuideOn::Strip, shoe_side: ShoeSide::Wide, ..input };
    assert!(guide::reckon(&hung).is_err());
}

/// Source: common practice, no source: a 4x4 measures 3 1/2 square; with the fence at 3 3/8 for
/// two adjacent faces and 3 1/4 for the other two, each face covered in two turned passes, it
/// comes out 3 1/4 square with a 1/8 kerf taking everything off: no strip falls.
#[test]
fn a_four_by_four_is_squared_at_two_fence_settings() {
    let answer = square("3 1/2", "3 1/4");
    let fences: Vec<Length> = answer.cuts.iter().map(|cut| cut.fence).collect();
    assert_eq!(fences, ["3 3/8", "3 3/8", "3 1/4", "3 1/4"].map(inches));
    assert_eq!(answer.n_settings, 2);
    let faces: Vec<u32> = answer.cuts.iter().map(|cut| cut.face).collect();
    assert_eq!(faces, [1, 2, 3, 4], "two adjacent faces, then those opposite");
    let at_fence: Vec<u32> = answer.cuts.iter().map(|cut| cut.at_fence).collect();
    assert_eq!(at_fence, [3, 4, 1, 2]);
    for cut in &answer.cuts {
        assert_eq!(cut.sweep.passes(), 2, "each face in two turned passes");
        assert_eq!(cut.strip, Length::ZERO, "no strip falls");
        assert_eq!(cut.dust, inches("1/8"));
    }
    assert_eq!(answer.n_passes, 4 * 4 * 2);
}

/// Source: common practice, no source: a wet 2x8 (7 1/2), its edge just cleaned by a kerf, ripped
/// for a 3 1/4 rail leaves about 4: 4 exactly with 1/8 off the edge and a 1/8 kerf.
#[test]
fn a_wet_two_by_eight_leaves_four_beside_a_rail() {
    let answer = board("1 9/16", "7 1/2", "1/8", Plan::List(vec![inches("3 1/4")]));
    assert_eq!(answer.leftover, inches("4"));
    assert_eq!(answer.strips.len(), 1);
    // Nothing falls in cleaning: the kerf takes the 1/8.
    assert!(answer.bands.iter().all(|band| band.stretch != strips::Stretch::Sliver));
}

fn on_sheet(pairs: &[(&str, &str)]) -> Answer {
    let calculator = find("resaw-rip").expect("it is in the list");
    let entries = Entries::from_pairs(pairs.iter().copied());
    calculator.sheet(&entries, &Bench::default(), &NoNames).answer.expect("it answers")
}

/// Source: [WH] R1, and the two values of common practice above, as a user enters them: by the tag
/// on the board.
#[test]
fn tags_of_the_yard_stand_for_their_sizes() {
    let posts = on_sheet(&[("stock", "4x4")]);
    assert_eq!(posts.headline.value, Value::Length(inches("3 3/8"), Rounding::Nearest));
    // By hand: 3 1/2 - 3 3/8 comes off, so that is the step of a post turned wrong.
    let step = posts.figures.iter().find(|figure| figure.id == "step_if_turned");
    let eighth = Value::Length(inches("1/8"), Rounding::Nearest);
    assert_eq!(step.map(|figure| &figure.value), Some(&eighth));

    // By hand: five of 1 3/4 and four kerfs of 1/8 are the 9 1/4 of the board.
    let strips = on_sheet(&[("question", "strips"), ("board", "2x10")]);
    assert_eq!((strips.headline.id, strips.figures[0].value.clone()), ("fence", Value::Count(5)));

    let rail = on_sheet(&[
        ("question", "strips"),
        ("board", "2x8"),
        ("board_dressed", "green"),
        ("plan", "list"),
        ("widths", "3 1/4"),
        ("first_edge", "1/8"),
    ]);
    assert_eq!(rail.headline.value, Value::Length(inches("3 1/4"), Rounding::Nearest));
    let leftover = rail.figures.iter().find(|figure| figure.id == "leftover");
    assert_eq!(
        leftover.map(|figure| &figure.value),
        Some(&Value::Length(inches("4"), Rounding::Nearest))
    );
}
