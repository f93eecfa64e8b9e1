//! Input that cannot be answered, and input meant to bring the planner down.

use std::ops::ControlFlow;

use reckoner_core::cutting::{CheckOptions, CutProblem, Ends, KnotZone, check_plan};
use reckoner_cutplan::plan_job;

use crate::support::{Dice, board, job, part, scrap, solve};

#[test]
fn each_impossible_job_names_what_is_wrong() {
    let long = || board("long".into(), 96, 500, None);
    let leg = || part("leg".into(), 30, 4);
    let problem = |job| solve(&job, 1_000_000_000).unwrap_err();
    assert_eq!(problem(job(vec![], vec![long()], vec![], 1)), CutProblem::NoParts);
    assert_eq!(
        problem(job(vec![part("leg".into(), 30, 0)], vec![long()], vec![], 1)),
        CutProblem::NoParts
    );
    assert_eq!(problem(job(vec![leg()], vec![], vec![], 1)), CutProblem::NoBoards);
    assert_eq!(
        problem(job(vec![leg(), part("beam".into(), 97, 1)], vec![long()], vec![], 1)),
        CutProblem::PartFitsNowhere { id: "beam".into(), length: 97, longest_clear: Some(96) }
    );
    // Of a board of which there is none, nothing is clear.
    assert_eq!(
        problem(job(
            vec![part("beam".into(), 97, 1)],
            vec![long(), board("none".into(), 120, 600, Some(0))],
            vec![],
            1
        )),
        CutProblem::PartFitsNowhere { id: "beam".into(), length: 97, longest_clear: Some(96) }
    );
    for price in [0, -5] {
        assert_eq!(
            problem(job(vec![leg()], vec![board("cheap".into(), 96, price, None)], vec![], 1)),
            CutProblem::PriceNotPositive { id: "cheap".into() }
        );
    }
    assert_eq!(
        problem(job(vec![leg(), leg()], vec![long()], vec![], 1)),
        CutProblem::SameId { id: "leg".into() }
    );
    assert_eq!(
        problem(job(vec![part("leg".into(), 0, 1)], vec![long()], vec![], 1)),
        CutProblem::LengthNotPositive { id: "leg".into() }
    );
    let mut knotty = long();
    knotty.knots = vec![KnotZone { from: 0, to: 60 }, KnotZone { from: 50, to: 96 }];
    assert_eq!(
        problem(job(vec![leg()], vec![knotty], vec![], 1)),
        CutProblem::NothingUsable { id: "long".into() }
    );
    let mut trimmed = long();
    trimmed.trims = Ends { left: 48, right: 48 };
    assert_eq!(
        problem(job(vec![leg()], vec![trimmed], vec![], 1)),
        CutProblem::NothingUsable { id: "long".into() }
    );
    assert_eq!(
        problem(job(vec![leg()], vec![], vec![scrap("piece".into(), 65, 1)], 1)),
        CutProblem::NotEnoughBoards { left_out: vec![("leg".into(), 2)], proved: true }
    );
}

/// Stops by the number of reports, as a caller with a clock would by time.
fn stopped_after(job: &reckoner_core::cutting::Job, reports: usize) {
    let mut seen = 0;
    let outcome = plan_job(job, u64::MAX, &mut |_| {
        seen += 1;
        if seen > reports { ControlFlow::Break(()) } else { ControlFlow::Continue(()) }
    })
    .unwrap();
    check_plan(job, &outcome.plan, CheckOptions::default()).unwrap();
    assert!(outcome.bound_cents > 0 && outcome.bound_cents <= outcome.plan.cost_cents);
}

#[test]
fn a_thousand_parts_in_two_hundred_lengths_get_a_plan() {
    let mut dice = Dice(3);
    let parts = (0..200).map(|n| part(format!("P{n}"), dice.roll(100, 1_500), 5)).collect();
    let boards = [(96, 900), (120, 1_210), (144, 1_420), (192, 2_090)]
        .map(|(feet, price)| board(format!("B{feet}"), feet * 16, price, None));
    let job = job(parts, boards.to_vec(), vec![], 2);
    stopped_after(&job, 150);
}

#[test]
fn very_fine_units_get_a_plan() {
    // Sixteenths, sevenths, elevenths and thirteenths of an inch together: 16016 units to the inch.
    let mut dice = Dice(4);
    let inch = 16_016;
    let parts = (0..25)
        .map(|n| {
            let odd = [inch / 16, inch / 7, inch / 11, inch / 13][n % 4];
            part(format!("P{n}"), dice.roll(5, 60) * inch + dice.roll(1, 6) * odd, 2)
        })
        .collect();
    let boards = [(96, 900), (144, 1_420), (192, 2_090)]
        .map(|(length, price)| board(format!("B{length}"), length * inch, price, None));
    let job = job(parts, boards.to_vec(), vec![], inch / 8);
    stopped_after(&job, 150);
}
