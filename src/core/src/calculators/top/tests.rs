//! Each question of the top through its fields: figures, limits and the words of each refusal.

use super::CALCULATOR;
use crate::calculators::trial::{Trial, figure, inches};
use crate::measure::{Length, Number};
use crate::sheet::Value;

const TRIAL: Trial = Trial(&CALCULATOR);

#[test]
fn a_fresh_top_gives_the_gap_of_the_bench() {
    TRIAL.check(&[], &[("plank_gap", "1/4"), ("top_overall", "28 1/2"), ("gaps_together", "1")]);
}

#[test]
fn mixed_widths_share_one_gap_and_run_from_the_left() {
    let pairs = [("planks", "5 1/2, 3 1/2, 5 1/2"), ("top_width", "15")];
    TRIAL.check(&pairs, &[("plank_gap", "1/4")]);
    let edges = Value::Lengths(vec![Length::ZERO, inches("5 3/4"), inches("9 1/2")]);
    assert_eq!(figure(&TRIAL.answer(&pairs), "left_edges").value, edges);
}

#[test]
fn all_planks_are_ripped_alike_or_only_the_outer_two() {
    let all = [("find", "rip_all"), ("planks", "6 @ 5 3/4"), ("top_width", "34"), ("gap", "1/4")];
    TRIAL.check(&all, &[("plank_width", "131/24")]);
    let outer =
        [("find", "rip_outer"), ("planks", "6 @ 5 3/4"), ("top_width", "34"), ("gap", "1/4")];
    TRIAL.check(&outer, &[("outer_width", "4 7/8"), ("top_overall", "34")]);
}

#[test]
fn what_no_planks_can_fill_is_refused() {
    TRIAL.check_refusal(
        &[("planks", "")],
        "planks",
        "There are no planks.",
        "Start with two.",
        &[("planks", "2 @ 5 1/2 in")],
    );
    TRIAL.check_refusal(
        &[("planks", "5 1/2")],
        "planks",
        "One plank has no gaps and no outer two.",
        "Use two or more.",
        &[("planks", "2 @ 5 1/2 in")],
    );
    TRIAL.check_refusal(
        &[("planks", "6 @ 5 3/4"), ("top_width", "34")],
        "top_width",
        "The planks alone take 34 1/2 in, more than a top of 34 in.",
        "Rip the outer two instead.",
        &[("find", "rip_outer")],
    );
    TRIAL.check_refusal(
        &[("find", "rip_all"), ("planks", "3 @ 5"), ("top_width", "10"), ("gap", "5")],
        "gap",
        "The gaps leave nothing of 10 in for these planks.",
        "Without gaps they fit.",
        &[("gap", "0")],
    );
    TRIAL.check_refusal(
        &[("find", "rip_outer"), ("planks", "4 @ 5"), ("top_width", "10"), ("gap", "0")],
        "gap",
        "The gaps leave nothing of 10 in for these planks.",
        "Leave out a plank.",
        &[],
    );
    TRIAL.check_refusal(
        &[("find", "rip_all"), ("planks", "3 @ 5"), ("top_width", "16"), ("gap", "1/4")],
        "planks",
        "A plank of 5 1/6 in is wanted, and one is only 5 in.",
        "A gap of 1/2 in makes up for it.",
        &[("gap", "1/2 in")],
    );
    TRIAL.check_refusal(
        &[("find", "rip_all"), ("planks", "5"), ("top_width", "6")],
        "planks",
        "A plank of 6 in is wanted, and one is only 5 in.",
        "Add a plank.",
        &[],
    );
}

#[test]
fn gaps_that_look_wrong_are_said() {
    TRIAL.check_note(
        &[("planks", "2 @ 5"), ("top_width", "10")],
        "No gaps: outdoors, tight boards hold water. Fine for wet boards, which will shrink.",
    );
    TRIAL.check_note(
        &[("planks", "5 @ 5 1/2"), ("top_width", "33")],
        "The gaps together would take one more plank.",
    );
    TRIAL.check_note(
        &[("planks", "2 @ 5"), ("top_width", "11")],
        "Over 1/2 in is a wide gap: small things fall through.",
    );
    TRIAL.check_note(
        &[("find", "rip_outer"), ("planks", "3 @ 5"), ("top_width", "8"), ("gap", "1/4")],
        "A plank of 1 1/4 in is a sliver. Leave one out and rip the rest, or use wider gaps.",
    );
}

#[test]
fn the_top_follows_from_the_overhang() {
    let pairs = [("question", "overhang"), ("overhang_find", "top")];
    TRIAL.check(&pairs, &[("top_size_length", "52"), ("top_size_width", "28 1/2")]);
}

#[test]
fn a_top_smaller_than_its_base_is_refused_on_both_axes() {
    TRIAL.check_refusal(
        &[("question", "overhang"), ("top_across", "23")],
        "top_across",
        "A top of 23 in does not cover a base of 24 in.",
        "It must be 24 in at least.",
        &[("top_across", "24 in")],
    );
    let both = TRIAL.ask(&[("question", "overhang"), ("top_across", "23"), ("top_length", "45")]);
    assert_eq!(both.refusals.len(), 2);
}

#[test]
fn the_gap_to_leave_today_gives_the_gap_wanted_later() {
    // Dry to wetter with a figure of one's own: each 5 1/2 plank gains 2 %, 0.11 in.
    let swells = [("question", "season"), ("shrinks_by", "own"), ("percent", "-2")];
    let today = [&swells[..], &[("season_find", "today"), ("gap_later", "1/8")]].concat();
    TRIAL.check(&today, &[("gap_today", "0.235"), ("gap_smallest", "1/8")]);
    let later = [&swells[..], &[("gap_now", "0.235")]].concat();
    TRIAL.check(&later, &[("gap_smallest", "1/8"), ("top_later", "28.55")]);
}

/// By hand: three whole planks and four gaps of 1/4 leave (17 5/8 - 1 - 16 1/2) ÷ 2 = 1/16 for each
/// outer one; alike, each has 3.325. Over 2 in, two planks have 7/8 each and three only 1/2.
#[test]
fn no_plank_is_ripped_to_a_sliver() {
    let outer =
        [("find", "rip_outer"), ("planks", "5 @ 5 1/2"), ("gap", "1/4"), ("top_width", "17 5/8")];
    let words = "A plank ripped to 1/16 in is a sliver. Under 3/4 in it cannot be held down and pushed. \
                 Another way: Use 4 planks.";
    let alike = "Rip all of them alike instead.";
    TRIAL.check_refusal(&outer, "planks", words, alike, &[("find", "rip_all")]);
    let all = [("find", "rip_all"), ("planks", "5 @ 5 1/2"), ("gap", "1/4"), ("top_width", "2")];
    TRIAL.check_refusal(
        &all,
        "planks",
        "A plank ripped to 0.2 in is a sliver. Under 3/4 in it cannot be held down and pushed.",
        "Use 2 planks.",
        &[("planks", "5 1/2 in, 5 1/2 in")],
    );
    // By hand: (1 3/4 - 1/2) ÷ 2 = 5/8 each; with two of 3/4 the gap is 1/4.
    TRIAL.check_refusal(
        &[("find", "rip_outer"), ("planks", "2 @ 5 1/2"), ("gap", "1/2"), ("top_width", "1 3/4")],
        "planks",
        "A plank ripped to 5/8 in is a sliver. Under 3/4 in it cannot be held down and pushed.",
        "Leave gaps of 1/4 in or less.",
        &[("gap", "1/4 in")],
    );
}

#[test]
fn planks_that_would_push_or_open_too_far_are_refused() {
    TRIAL.check_refusal(
        &[("question", "season"), ("shrinks_by", "own"), ("percent", "-2"), ("gap_now", "1/10")],
        "gap_now",
        "The gaps would close, and the boards press on each other: each swells by 0.11 in.",
        "Leave 0.11 in or more today.",
        &[("gap_now", "1/8 in")],
    );
    TRIAL.check_refusal(
        &[
            ("question", "season"),
            ("season_find", "today"),
            ("shrinks_by", "own"),
            ("percent", "10"),
            ("gap_later", "1/4"),
        ],
        "gap_later",
        "Even laid tight today, the boards gap 0.55 in later.",
        "Lay them tight, and take 0.55 in.",
        &[("season_find", "later"), ("gap_now", "0")],
    );
}

#[test]
fn moisture_outside_the_formula_is_refused() {
    for (field, percent, nearest) in [
        ("moisture_later", "7.5", "8"),
        ("moisture_later", "20", "19"),
        ("moisture_now", "25", "19"),
    ] {
        TRIAL.check_refusal(
            &[("question", "slot"), ("now", "measured"), (field, percent)],
            field,
            "The formula holds from 8 to 19 % moisture, and for wet boards.",
            &format!("Use {nearest} %."),
            &[(field, nearest)],
        );
    }
}

#[test]
fn the_slot_goes_the_way_the_screw_will_need_it() {
    TRIAL.check_note(
        &[("question", "slot")],
        "It shrinks: lengthen each hole outward, away from the fixed screw.",
    );
    let swells = [("question", "slot"), ("now", "measured"), ("moisture_later", "19")];
    TRIAL.check_note(&swells, "It swells: lengthen each hole inward, towards the fixed screw.");
    TRIAL.check_note(
        &[("question", "slot"), ("shrinks_by", "own"), ("percent", "0")],
        "The wood does not move: round holes will do.",
    );
    let none = TRIAL.ask(&[("question", "slot"), ("loose_screws", "")]).refusals;
    assert_eq!((none[0].field, none[0].code), ("loose_screws", "no-screws"));
}

#[test]
fn a_load_tips_just_beyond_the_balance() {
    // 70 lb × 23 in = 250 lb × 6.44 in.
    let pairs = [("question", "tip"), ("beyond_legs", "6.44")];
    let Value::Exact(most, ..) = figure(&TRIAL.answer(&pairs), "most_load").value else {
        panic!("lb")
    };
    assert_eq!(most, Number::whole(250));
    TRIAL.check(&pairs, &[("most_beyond", "6.44")]);
    TRIAL.check_refusal(
        &[("question", "tip"), ("beyond_legs", "6 1/2")],
        "beyond_legs",
        "A load of 250 lb at the end tips the top up.",
        "Let it stand 6.44 in or less beyond the legs.",
        &[("beyond_legs", "6 7/16 in")],
    );
}

#[test]
fn a_load_over_the_feet_cannot_tip() {
    let answer = TRIAL.answer(&[("question", "tip"), ("beyond_legs", "0")]);
    assert_eq!(answer.headline.id, "tip_verdict");
}
