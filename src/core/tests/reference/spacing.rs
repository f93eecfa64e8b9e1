//! Spacing against worked examples.
//!
//! Not taken: W51 to W58 of the handbook are about rounding and conversion, not spacing.

use reckoner_core::calculators::spacing::{Answer, End, Input, Wish, reckon};
use reckoner_core::measure::{Length, Tape, length, text::show};

fn inches(text: &str) -> Length {
    length(text).expect("a length in a test")
}

fn at(text: &str) -> End {
    End::At(inches(text))
}

fn space(text: &str, wish: Wish, left: End, right: End) -> Answer {
    let (length, keep_out) = (inches(text), Vec::new());
    let input =
        Input { length, wish, left, right, keep_out, least_gap: None, tape: Tape::SIXTEENTHS };
    reckon(&input).unwrap_or_else(|problems| panic!("{problems:?}"))
}

/// The marks of a tape in sixteenths.
fn read(lengths: &[Length]) -> Vec<String> {
    lengths
        .iter()
        .map(|length| {
            show(*length, Tape::SIXTEENTHS, Default::default()).expect("small").mark.amount()
        })
        .collect()
}

/// Source: [WH] F1, stage 6. L 37, end distance 2, no gap over 8: 5 gaps, 6 screws, 6.6 apart.
#[test]
fn six_screws_on_a_rail_of_37() {
    let answer = space("37", Wish::NoGapOver(inches("8")), at("2"), at("2"));
    assert_eq!(answer.gaps.len(), 5);
    assert_eq!(answer.equal_gap, Some(inches("6.6")));
    let marks = ["2", "8 5/8", "15 3/16", "21 13/16", "28 3/8", "35"];
    assert_eq!(read(&answer.marks), marks);
    assert_eq!(read(&answer.each_end.expect("mirrored")), marks[..3]);
    let stepped = answer.stepped.expect("6.6 is on no sixteenth");
    assert_eq!(stepped.gap, inches("6 5/8"));
    assert_eq!(stepped.ends_at, inches("35 1/8"));
    assert_eq!(stepped.error, inches("1/8"));
}

/// Source: [WH] F2, stage 6. Opening 60, slats 3 1/2, gap 1/2 wanted, gaps at both ends: 14 slats
/// leave 0.733; 15 leave 15/32, with left edges at 15/32, 4 7/16, 8 13/32.
#[test]
fn fifteen_slats_in_an_opening_of_60() {
    let width = inches("3 1/2");
    let wish = Wish::SlatsNear { width, gap: inches("1/2") };
    let answer = space("60", wish, End::LikeTheGaps, End::LikeTheGaps);
    assert_eq!(answer.marks.len(), 15);
    assert_eq!(answer.gaps.len(), 16);
    assert_eq!(answer.equal_gap, Some(inches("15/32")));
    assert_eq!(answer.marks[..3], ["15/32", "4 7/16", "8 13/32"].map(inches));
    let fewer = answer.others.iter().find(|other| other.count == 14).expect("one fewer");
    assert!((fewer.widest.to_f64() - 0.733).abs() < 0.0005, "{fewer:?}");
}

/// Source: [WH] F2, stage 6. Without gaps at the ends, 15 slats leave 0.536.
#[test]
fn fifteen_slats_flush_with_both_ends() {
    let wish = Wish::Slats { width: inches("3 1/2"), count: 15 };
    let answer = space("60", wish, at("0"), at("0"));
    assert_eq!(answer.gaps.len(), 14);
    let gap = answer.equal_gap.expect("no zones");
    assert!((gap.to_f64() - 0.536).abs() < 0.0005, "{gap:?}");
    assert_eq!(answer.marks[0], Length::ZERO);
    assert_eq!(*answer.from_right.last().expect("fifteen"), Length::ZERO);
}

/// Source: stage 6, [TIP]. Without end distances, n marks inside stand L / (n + 1) apart.
#[test]
fn marks_inside_stand_a_gap_from_each_end() {
    for count in 1..12 {
        let answer = space("37", Wish::Count(count), End::LikeTheGaps, End::LikeTheGaps);
        let apart = (inches("37") / (count + 1)).expect("small");
        assert_eq!(answer.equal_gap, Some(apart));
        assert_eq!(answer.marks[0], apart);
        assert_eq!(answer.marks.len(), count as usize);
    }
}

/// Source: W22 and W23, Builders' Guide, Estimating Floor Joists (chestofbooks text): 32 ft with
/// a member at both ends takes 33 at 12 in centers and 25 at 16 in centers.
#[test]
fn members_at_both_ends_are_one_more_than_the_spaces() {
    for (centers, members) in [("12", 33), ("16", 25)] {
        let answer = space("32 ft", Wish::NoGapOver(inches(centers)), at("0"), at("0"));
        assert_eq!(answer.marks.len(), members);
        assert_eq!(answer.equal_gap, Some(inches(centers)));
    }
}

/// Source: W24, Carpenter's Guide, Spacing and Placing Joists (chestofbooks text): members 2 in
/// thick on 16 in centers are marked at 15 in and 17 in, then every 16 in.
#[test]
fn edges_of_members_are_marked_half_a_thickness_before_and_after_the_center() {
    // Centers from the end on; the first stands half a thickness over it.
    let answer = space("20 ft", Wish::Slats { width: inches("2"), count: 16 }, at("-1"), at("-1"));
    assert_eq!(answer.marks[1], inches("15"));
    for pair in answer.marks.windows(2) {
        assert_eq!(pair[1] - pair[0], Ok(inches("16")));
    }
    let far_edge = (inches("20 ft") - answer.from_right[1]).expect("small");
    assert_eq!(far_edge, inches("17"));
}

/// Common practice, no source: screws at 4, 10 and 16 from each end of a 40 rail.
#[test]
fn three_screws_six_apart_from_each_end_of_a_40_rail() {
    let answer = space("40", Wish::Step(inches("6")), at("4"), at("4"));
    assert_eq!(answer.each_end, Some(["4", "10", "16"].map(inches).to_vec()));
    assert_eq!(answer.marks, ["4", "10", "16", "24", "30", "36"].map(inches));
    assert_eq!(answer.from_right, ["36", "30", "24", "16", "10", "4"].map(inches));
}
