//! The other questions: worked examples of the trade, comparisons, spares, and going on from boards already cut.

use std::ops::ControlFlow;

use reckoner_core::cutting::{
    Board, CheckOptions, CutProblem, Ends, Job, KnotZone, Part, Plan, Section, Source, check_plan,
};
use reckoner_cutplan::{
    Done, DoneProblem, Progress, boards_to_cover, compare_single_boards, next_store_run,
    replan_from, what_it_can_become, with_spares,
};

use crate::random::straight;
use crate::support::{Dice, board, job, part, scrap, solve, solve_rack};

fn go_on(_: &Progress<'_>) -> ControlFlow<()> {
    ControlFlow::Continue(())
}

fn bought(job: &Job, plan: &Plan) -> Vec<usize> {
    let count = |at| plan.boards.iter().filter(|cut| cut.source == Source::Board(at)).count();
    (0..job.boards.len()).map(count).collect()
}

/// Worked by hand: a 96 board, 1/2 off each end, parts 17 1/2, kerf 1/8: five, and 6 7/8 is left. Unit 1/8 in.
#[test]
fn five_pieces_and_what_is_left() {
    let mut one = board("8 ft".into(), 96 * 8, 500, Some(1));
    one.trims = Ends { left: 4, right: 4 };
    let six = job(vec![part("p".into(), 140, 6)], vec![one], vec![], 1);
    let outcome = solve_rack(&six, 1_000_000_000).unwrap();
    assert!(outcome.proved);
    assert_eq!(outcome.plan.left_out[0].quantity, 1);
    assert_eq!(outcome.plan.offcuts(&six)[0].length, 55);
}

/// Worked by hand: seven blocks of 13 1/2 need 95 1/4: they fit a raw 96, not the 95 left after trims. Unit 1/8 in.
#[test]
fn the_seventh_block() {
    let blocks = |trim| {
        let mut one = board("8 ft".into(), 96 * 8, 500, None);
        one.trims = Ends { left: trim, right: trim };
        job(vec![part("block".into(), 108, 7)], vec![one], vec![], 1)
    };
    assert_eq!(solve(&blocks(0), 1_000_000_000).unwrap().plan.boards.len(), 1);
    assert_eq!(solve(&blocks(4), 1_000_000_000).unwrap().plan.boards.len(), 2);
}

/// US Army Engineer School, subcourse EN01136, lesson 5, self-test: W19, W20 and W21 of the handbook. The source ignores
/// the kerf. Unit 1/2 in for W19, 1 in for the others.
#[test]
fn the_army_engineers_self_test() {
    // W19: a platform 106 in wide, boards 5 1/2 in, 15 per cent waste: 23 boards.
    assert_eq!(boards_to_cover(212, 11, 15), Some(23));
    assert_eq!(boards_to_cover(212, 11, 100), None);
    // W20: 61 in from each of four 120 in lengths leaves 59 in of each.
    let four =
        job(vec![part("post".into(), 61, 4)], vec![board("10 ft".into(), 120, 1, None)], vec![], 0);
    let plan = solve(&four, 1_000_000_000).unwrap().plan;
    let left: Vec<i64> = plan.offcuts(&four).iter().map(|offcut| offcut.length).collect();
    assert_eq!(left, [59, 59, 59, 59]);
    // W21: two rails of 120, four posts of 61 and two uprights of 43: six 120 in lengths in all.
    let mut all = four;
    all.parts.push(part("rail".into(), 120, 2));
    all.parts.push(part("upright".into(), 43, 2));
    let outcome = solve(&all, 1_000_000_000).unwrap();
    assert!(outcome.proved);
    assert_eq!(outcome.plan.cost_cents, 6);
}

#[test]
fn one_board_length_only_and_the_next_cheapest_run() {
    let mut dice = Dice(21);
    let (mut singles, mut runs) = (0, 0);
    for _ in 0..100 {
        let job = straight(&mut dice, 8);
        let Ok(best) = solve(&job, 400_000_000) else {
            continue;
        };
        let mut cheapest_other = i64::MAX;
        for single in compare_single_boards(&job, 400_000_000, &mut go_on) {
            match single.outcome {
                Ok(outcome) => {
                    check_plan(&job, &outcome.plan, CheckOptions::default()).unwrap();
                    assert!(outcome.plan.cost_cents >= best.plan.cost_cents);
                    let boards = bought(&job, &outcome.plan);
                    assert!(boards.iter().enumerate().all(|(at, &n)| n == 0 || at == single.board));
                    let held = boards.iter().zip(bought(&job, &best.plan)).all(|(a, b)| *a >= b);
                    if !held {
                        cheapest_other = cheapest_other.min(outcome.plan.cost_cents);
                    }
                    singles += 1;
                }
                Err(CutProblem::PartFitsNowhere { .. } | CutProblem::NotEnoughBoards { .. }) => {}
                Err(problem) => panic!("{problem:?}"),
            }
        }
        let most = best.plan.cost_cents * 3;
        let next = next_store_run(&job, &best.plan, most, 800_000_000, &mut go_on).unwrap();
        if let Some(next) = next {
            check_plan(&job, &next.plan, CheckOptions::default()).unwrap();
            assert!(next.plan.cost_cents >= best.plan.cost_cents);
            assert!(next.bound_cents <= next.plan.cost_cents);
            assert!(next.plan.cost_cents <= cheapest_other, "{job:#?}");
            assert_ne!(bought(&job, &next.plan), bought(&job, &best.plan));
            runs += 1;
        } else {
            assert!(cheapest_other > most);
        }
    }
    assert!(singles > 30 && runs > 20, "{singles} {runs}");
}

/// By hand, in eighths. Six rails of 40 in twice, once of each wood: two boards of 144 in at 9.80 and two at 98.00 are 215.60. The
/// cheapest other boards are three of 96 in at 7.00 of the cheap wood, 1.40 more; of the dear one they would be 14.00 more.
#[test]
fn the_next_run_is_proved_over_all_woods() {
    let wood = |id: &str, cents: i64| {
        let section = id.to_owned();
        let rail = Part { section: section.clone(), ..part(format!("rail of {id}"), 320, 6) };
        let long = Board {
            section: section.clone(),
            ..board(format!("long {id}"), 1152, 98 * cents, None)
        };
        let short = Board {
            section: section.clone(),
            ..board(format!("short {id}"), 768, 70 * cents, None)
        };
        (Section { id: section, wood: id.into(), size: None }, rail, [long, short])
    };
    let (cheap, dear) = (wood("fir", 10), wood("oak", 100));
    let boards = [cheap.2, dear.2].concat();
    let mut job = job(vec![cheap.1, dear.1], boards, vec![], 1);
    job.sections = vec![cheap.0, dear.0];
    let best = solve(&job, 400_000_000).unwrap();
    assert_eq!((best.plan.cost_cents, best.proved), (21_560, true));
    let run = next_store_run(&job, &best.plan, 43_120, 400_000_000, &mut go_on).unwrap().unwrap();
    assert_eq!((run.plan.cost_cents, run.bound_cents), (21_700, 21_700));
    assert_eq!(bought(&job, &run.plan), [0, 3, 2, 0]);
    // Where so many steps are not to be had, no more is claimed than is known.
    for budget in [1, 1_000, 20_000] {
        if let Some(run) = next_store_run(&job, &best.plan, 43_120, budget, &mut go_on).unwrap() {
            assert!(run.bound_cents <= 21_700, "{budget}");
        }
    }
}

#[test]
fn what_a_scrap_can_become() {
    // Room for 12 + kerf + 7 (fullest, exactly 20) or for 7 + 5 + 5 with two kerfs (most parts).
    let job = job(
        vec![part("a".into(), 12, 1), part("b".into(), 7, 1), part("c".into(), 5, 3)],
        vec![board("long".into(), 60, 100, None)],
        vec![scrap("s".into(), 20, 2)],
        1,
    );
    let plans = what_it_can_become(&job, Source::Scrap(0)).unwrap();
    let lengths: Vec<Vec<i64>> = plans
        .iter()
        .map(|plan| {
            let may_leave_out = CheckOptions { may_leave_out: true };
            check_plan(&job, plan, may_leave_out).unwrap();
            assert_eq!(plan.boards.len(), 1);
            let placed = plan.boards[0].placed();
            placed.iter().map(|piece| job.parts[piece.part].length).collect()
        })
        .collect();
    assert_eq!(lengths, [vec![12, 7], vec![7, 5, 5]]);
}

#[test]
fn spare_parts() {
    let job = job(vec![part("a".into(), 12, 10), part("b".into(), 7, 1)], vec![], vec![], 1);
    let quantities = |each, percent| -> Vec<u32> {
        with_spares(&job, each, percent).parts.iter().map(|part| part.quantity).collect()
    };
    assert_eq!(quantities(0, 15), [12, 2]);
    assert_eq!(quantities(2, 0), [12, 3]);
    assert_eq!(quantities(1, 50), [15, 2]);
    assert_eq!(quantities(0, 0), [10, 1]);
}

#[test]
fn going_on_from_a_split_board() {
    let job = job(
        vec![part("leg".into(), 30, 4), part("rail".into(), 40, 2)],
        vec![board("long".into(), 100, 700, Some(4))],
        vec![scrap("old".into(), 35, 1)],
        1,
    );
    let first = solve(&job, 1_000_000_000).unwrap();
    assert_eq!(first.plan.cost_cents, 1_400);
    // One board gave two rails; the next one, bought already, turned out to have a split from 50 on.
    let mut rest_of_it = scrap("long, split".into(), 100, 1);
    rest_of_it.knots = vec![KnotZone { from: 50, to: 100 }];
    let done = Done {
        parts: vec![(1, 2)],
        used: vec![(Source::Board(0), 2)],
        bought: vec![(0, 1)],
        new_scraps: vec![rest_of_it],
    };
    let rest = replan_from(&job, &done).unwrap();
    assert_eq!(rest.boards[0].limit, Some(1));
    let plan = solve(&rest, 1_000_000_000).unwrap().plan;
    // Two legs from the whole board that is paid for, one from the split one, one from the old scrap... all free.
    assert_eq!(plan.cost_cents, 0);
    assert_eq!(plan.boards.len(), 2, "three from the whole board and one more");
    let too_many = Done { parts: vec![(1, 3)], ..Done::default() };
    assert_eq!(replan_from(&job, &too_many), Err(DoneProblem::TooManyCut { part: "rail".into() }));
    let too_many = Done { used: vec![(Source::Scrap(0), 2)], ..Done::default() };
    assert_eq!(replan_from(&job, &too_many), Err(DoneProblem::TooManyUsed { id: "old".into() }));
}
