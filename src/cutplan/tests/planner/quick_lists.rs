//! Worked examples and bad input, asked the way a user asks: as the texts of a quick list.

use reckoner_core::cutting::{CheckOptions, check_plan};
use reckoner_core::measure::text::NoNames;
use reckoner_core::measure::{Length, Tape, length};
use reckoner_core::planning::quick_list::{QUICK_LIST, quick_list};
use reckoner_core::planning::report::{How, Report, report, work};
use reckoner_core::planning::wanted::Wanted;
use reckoner_core::sheet::{Ask, Bench, Entries};
use reckoner_cutplan::plan_job;

use crate::support::{Dice, solve, solve_rack};

pub(crate) fn asked(texts: &[(&str, &str)]) -> Result<Wanted, Vec<String>> {
    let (entries, bench) = (Entries::from_pairs(texts.iter().copied()), Bench::default());
    let mut ask = Ask::new(QUICK_LIST.fields, &entries, &bench, &NoNames);
    let wanted = quick_list(&mut ask);
    let (_, refusals) = ask.finish();
    wanted.ok_or_else(|| refusals.iter().map(|refusal| refusal.sentence.to_string()).collect())
}

fn told(texts: &[(&str, &str)]) -> Report {
    let wanted = asked(texts).expect("a list that can be planned");
    // Without a board to buy, as many pieces as possible come from what is on hand.
    let plan = if wanted.job.boards.is_empty() {
        solve_rack(&wanted.job, 400_000_000).expect("a plan").plan
    } else {
        let outcome = solve(&wanted.job, 400_000_000).expect("a plan");
        assert!(outcome.proved);
        outcome.plan
    };
    let how = How { tape: Tape::SIXTEENTHS, keep_from: inches("1") };
    report(&wanted.job, &plan, &wanted.labels, how).expect("a plan of this job")
}

fn inches(text: &str) -> Length {
    length(text).expect("a length")
}

fn offcuts(report: &Report) -> Vec<(Length, u32)> {
    report.offcuts.iter().map(|keep| (keep.length, keep.count)).collect()
}

/// Source: [WH] C1 of the rules of the trade: a 96 board, 1/2 trim each end, parts 17 1/2: 5, leftover 6 7/8.
#[test]
fn c1_five_pieces_and_what_is_left() {
    let board = [("boards", "96 at 7.20"), ("scraps", ""), ("end_trim", "1/2")];
    let five = told(&[&[("parts", "5 @ 17 1/2")][..], &board].concat());
    assert_eq!(five.headline().to_string(), "Buy 1 board for 7.20.");
    assert_eq!(offcuts(&five), [(inches("6 7/8"), 1)]);
    let six = told(&[&[("parts", "6 @ 17 1/2")][..], &board].concat());
    assert_eq!(six.headline().to_string(), "Buy 2 boards for 14.40.");
}

/// Source: [WH] C3: 7 blocks of 13 1/2 need 95 1/4: they fit raw 96, not the 95 after trims.
#[test]
fn c3_the_seventh_block() {
    let boards = |trim: &str| {
        let list = [("parts", "7 @ 13 1/2"), ("boards", "96"), ("scraps", ""), ("end_trim", trim)];
        told(&list).headline().to_string()
    };
    assert_eq!(boards("0"), "Buy 1 board, 8 ft.");
    assert_eq!(boards("1/2"), "Buy 2 boards, 16 ft.");
    // From what is on hand only: an untrimmed 96 holds seven, a 95 holds six.
    for (scrap, left) in [("96", 0), ("95", 1)] {
        let list = [("parts", "block: 7 @ 13 1/2"), ("boards", ""), ("scraps", scrap)];
        let left_out: u32 = told(&list).left_out.iter().map(|(_, count)| count).sum();
        assert_eq!(left_out, left, "{scrap}");
    }
}

/// Source: US Army Engineer School, subcourse EN01136, lesson 5, self-test (W20, kerf ignored): 5 ft 1 in from each of
/// four 10 ft lengths leaves 4 ft 11 in of each.
#[test]
fn w20_what_is_left_of_four_ten_footers() {
    let list = [
        ("parts", "post: 4 @ 5' 1\""),
        ("boards", "10 ft"),
        ("scraps", ""),
        ("kerf", "0"),
        ("end_trim", "0"),
    ];
    let report = told(&list);
    assert_eq!(report.headline().to_string(), "Buy 4 boards, 40 ft.");
    let left: u32 = report.offcuts.iter().map(|keep| keep.count).sum();
    assert_eq!(left, 4);
    assert!(report.offcuts.iter().all(|keep| keep.length == inches("4' 11\"")));
}

/// Source: the same self-test (W21): two rails of 10 ft, four posts of 5 ft 1 in, two uprights of 3 ft 7 in: six 10 ft
/// lengths in all.
#[test]
fn w21_six_ten_footers_in_all() {
    let parts = "rail: 2 @ 10 ft, post: 4 @ 5' 1\", upright: 2 @ 3' 7\"";
    let list =
        [("parts", parts), ("boards", "10 ft"), ("scraps", ""), ("kerf", "0"), ("end_trim", "0")];
    assert_eq!(told(&list).headline().to_string(), "Buy 6 boards, 60 ft.");
}

/// Worked by hand: 4 legs of 33 1/2 and 4 rails of 41, kerf 1/8, 1/2 off both ends of boards of 96 at 10.90 and 120 at
/// 13.95. One 96 gives two of either, or one and one (95 clear; 41 + 41 and a kerf are 82 1/8); a 120 gives three legs
/// (100 3/4 of 119) but no more than two rails and one leg (115 3/4). Two 120 with two rails and a leg each leave two
/// legs: a 96. Four 96 are 43.60, two 120 and one 96 are 38.80, three 120 41.85.
#[test]
fn the_cheapest_mix_of_two_lengths() {
    let list = [
        ("parts", "leg: 4 @ 33 1/2, rail: 4 @ 41"),
        ("boards", "96 at 10.90, 120 at 13.95"),
        ("scraps", ""),
    ];
    let report = told(&list);
    assert_eq!(report.headline().to_string(), "Buy 3 boards for 38.80.");
    let bought: Vec<_> = report.shopping.iter().map(|line| (line.length, line.count)).collect();
    assert_eq!(bought, [(inches("96"), 1), (inches("120"), 2)]);
}

/// Worked by hand: of 5 1/2 in three strips of 1 3/4 and two kerfs of 1/8 are all, 3 × 1 3/4 + 2 × 1/8 = 5 1/2; of 96 in each
/// gives three of 30, 3 × 30 + 2 × 1/8 = 90 1/4, and 96 − 90 1/4 − 1/8 = 5 5/8 is left of it. So a board holds nine, and
/// the tenth takes a second: of that two strips' width is left, 5 1/2 − 1 3/4 − 1/8 = 3 5/8, and 66 − 1/8 = 65 7/8 of its
/// strip. A rail as wide as its board shares none with strips.
#[test]
fn strips_are_ripped_from_a_board_with_a_width() {
    let list = |parts: &str| {
        let texts = [
            ("parts", parts),
            ("boards", "96 wide 5 1/2 at 10"),
            ("scraps", ""),
            ("end_trim", "0"),
        ];
        told(&texts)
    };
    let nine = list("slat: 9 @ 30 wide 1 3/4");
    assert_eq!(nine.headline().to_string(), "Buy 1 board for 10.00.");
    let [board] = nine.boards.as_slice() else { panic!("one board") };
    assert_eq!(board.name, "5 1/2 in board");
    let widths: Vec<_> = board.rows.iter().map(|row| row.width).collect();
    assert_eq!(widths, [Some(inches("1 3/4")); 3]);
    assert_eq!(board.orders[0].sentence.to_string(), "Rip 3 strips: fence at 1 3/4 in.");
    assert_eq!(board.key[0].width, Some(inches("1 3/4")));
    let left: Vec<String> = nine.offcuts.iter().map(|keep| keep.sentence.to_string()).collect();
    assert_eq!(left, ["3 × 5 5/8 in, 1 3/4 in wide, from board 1"]);
    let ten = list("slat: 10 @ 30 wide 1 3/4");
    assert_eq!(ten.headline().to_string(), "Buy 2 boards for 20.00.");
    let rail = list("slat: 9 @ 30 wide 1 3/4, rail: 40");
    assert_eq!(rail.headline().to_string(), "Buy 2 boards for 20.00.");
    let whole = list("rail: 2 @ 40, top: 40 wide 5 1/2");
    assert_eq!(whole.headline().to_string(), "Buy 2 boards for 20.00.");
    assert!(whole.boards.iter().all(|board| board.rows.len() == 1));
}

/// By hand: the three strips and their kerfs are the whole width, so two rips free three, and none of the nine slats ends where
/// its board does: eleven cuts, one fence and one stop. The strips are full, so nothing longer can be left.
#[test]
fn the_work_is_told_with_what_is_proved_of_it() {
    let texts = [
        ("parts", "slat: 9 @ 30 wide 1 3/4"),
        ("boards", "96 wide 5 1/2 at 10"),
        ("scraps", ""),
        ("end_trim", "0"),
    ];
    let Wanted { job, labels, .. } = asked(&texts).expect("a list that can be planned");
    let outcome = solve(&job, 400_000_000).expect("a plan");
    let words = work(&job, &outcome.plan, &labels, Some(outcome.ties)).expect("a plan of this job");
    assert_eq!(
        words.to_string(),
        "2 settings of fence and stop, 11 cuts. No plan at this price does better on the boards to cut, then the \
         settings, then the cuts, then the longest offcut."
    );
}

/// By hand: a strip of 2 1/2 fits a board of 3 1/2 at 6.00 as well as one of 5 1/2 at 10.00, which holds two of them and a
/// kerf, 5 1/8. So two of 90 in take the wide one, one the narrow one.
#[test]
fn of_two_widths_the_cheaper_is_ripped() {
    let cost = |parts: &str| {
        let boards = "96 wide 5 1/2 at 10, 96 wide 3 1/2 at 6";
        told(&[("parts", parts), ("boards", boards), ("scraps", "")]).headline().to_string()
    };
    assert_eq!(cost("slat: 90 wide 2 1/2"), "Buy 1 board for 6.00.");
    assert_eq!(cost("slat: 2 @ 90 wide 2 1/2"), "Buy 1 board for 10.00.");
    assert_eq!(cost("slat: 3 @ 90 wide 2 1/2"), "Buy 2 boards for 16.00.");
}

/// A thousand pieces in two hundred lengths, and fractions of three odd denominators: a plan with an honest gap after a
/// few steps, and no freeze.
#[test]
fn long_and_odd_lists_get_a_plan() {
    let mut dice = Dice(31);
    let long: Vec<String> =
        (0..200).map(|n| format!("5 @ {}/16 in", 100 + 7 * n + dice.roll(0, 6))).collect();
    let odd: Vec<String> = (0..30)
        .map(|n| format!("2 @ {} {}/{} in", dice.roll(5, 60), dice.roll(1, 6), [7, 11, 13][n % 3]))
        .collect();
    for parts in [long.join(", "), odd.join(", ")] {
        let wanted = asked(&[("parts", &parts)]).expect("a list that can be planned");
        let outcome =
            plan_job(&wanted.job, 60_000_000, &mut |_| core::ops::ControlFlow::Continue(()))
                .expect("a plan");
        check_plan(&wanted.job, &outcome.plan, CheckOptions::default())
            .expect("it keeps the rules");
        let (cost, bound) = (outcome.plan.cost_cents, outcome.bound_cents);
        assert!(bound > 0 && bound <= cost, "{bound} {cost} {}", outcome.work);
        let how = How { tape: Tape::SIXTEENTHS, keep_from: inches("12") };
        assert!(report(&wanted.job, &outcome.plan, &wanted.labels, how).is_some());
    }
}

#[test]
fn what_cannot_be_planned_names_the_piece_or_the_board() {
    let cases: [(&str, &str, &str); 5] = [
        ("", "96 at 5", "Write at least one piece"),
        ("beam: 97", "96 at 5", "beam is longer than every board: the longest gives 95 in."),
        ("30", "96 at 0", "more than zero"),
        ("30", "96 at -4", "more than zero"),
        ("30", "1 at 5", "The end trims leave nothing of a board of 1 in."),
    ];
    for (parts, boards, words) in cases {
        let refused = asked(&[("parts", parts), ("boards", boards), ("scraps", "")]);
        let told = refused.expect_err(words);
        assert!(told.iter().any(|sentence| sentence.contains(words)), "{told:?}");
    }
    // Only so many boards: the planner says what found no place, and the labels say it by name.
    let list = [("parts", "leg: 5 @ 40"), ("boards", "96 at 5 max 2"), ("scraps", "")];
    let wanted = asked(&list).expect("a list");
    let problem = solve(&wanted.job, 400_000_000).expect_err("not enough");
    let told = wanted.labels.explain(&wanted.job, &problem);
    assert_eq!(told.sentence.to_string(), "The boards are not enough. Without a place: 1 of leg.");
}
