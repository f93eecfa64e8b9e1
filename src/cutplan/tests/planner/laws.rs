//! Laws that hold whatever the numbers are.

use reckoner_core::cutting::{Job, SawRules};

use crate::random::{ripped, straight};
use crate::support::{Dice, board, part, scrap, solve};

/// The proven cost, or `None` when the job cannot be done.
fn cost(job: &Job) -> Option<i64> {
    job.validate().ok()?;
    let outcome = solve(job, 400_000_000).ok()?;
    assert!(outcome.proved, "{job:#?}");
    Some(outcome.plan.cost_cents)
}

/// No plan counts as dearer than any plan.
fn never_dearer(after: Option<i64>, before: Option<i64>, job: &Job) {
    if let Some(before) = before {
        assert!(after.is_some_and(|after| after <= before), "{after:?} > {before}: {job:#?}");
    }
}

fn straight_jobs(seed: u64) -> impl Iterator<Item = (Job, Dice)> {
    (0..120).map(move |number| {
        let mut dice = Dice(seed * 1_000 + number);
        (straight(&mut dice, 14), dice)
    })
}

#[test]
fn a_scrap_or_a_board_length_more_never_costs_more() {
    for (job, mut dice) in straight_jobs(1) {
        let before = cost(&job);
        let mut more = job.clone();
        if dice.one_in(2) {
            more.scraps.push(scrap("new".into(), dice.roll(5, 40), 1));
        } else {
            more.boards.push(board("new".into(), dice.roll(15, 50), dice.roll(1, 400), None));
        }
        never_dearer(cost(&more), before, &more);
    }
}

#[test]
fn a_part_more_or_longer_never_costs_less() {
    for (job, mut dice) in straight_jobs(2) {
        let before = cost(&job);
        let mut more = job.clone();
        if dice.one_in(2) {
            more.parts.push(part("new".into(), dice.roll(3, 18), 1));
        } else {
            let at = usize::try_from(dice.roll(0, 100)).unwrap() % more.parts.len();
            more.parts[at].length += dice.roll(1, 3);
        }
        never_dearer(before, cost(&more), &more);
    }
}

#[test]
fn a_wider_kerf_never_costs_less() {
    for (job, mut dice) in straight_jobs(3) {
        let before = cost(&job);
        let mut wider = job.clone();
        wider.saw.kerf += dice.roll(1, 2);
        never_dearer(before, cost(&wider), &wider);
    }
}

#[test]
fn order_and_scale_change_nothing() {
    for (job, mut dice) in straight_jobs(4) {
        let before = cost(&job);
        let mut turned = job.clone();
        turned.parts.reverse();
        turned.boards.reverse();
        turned.scraps.reverse();
        let by = dice.roll(2, 17);
        for part in &mut turned.parts {
            part.length *= by;
        }
        let ends = turned.boards.iter_mut().map(|b| (&mut b.length, &mut b.trims, &mut b.knots));
        let more = turned.scraps.iter_mut().map(|s| (&mut s.length, &mut s.trims, &mut s.knots));
        for (length, trims, knots) in ends.chain(more) {
            *length *= by;
            trims.left *= by;
            trims.right *= by;
            for zone in knots {
                zone.from *= by;
                zone.to *= by;
            }
        }
        turned.saw.kerf *= by;
        assert_eq!(cost(&turned), before, "{job:#?}");
    }
}

#[test]
fn allowing_rips_never_costs_more() {
    let mut helped = 0;
    for number in 0..250 {
        let mut dice = Dice(9_000 + number);
        let job = ripped(&mut dice, 8);
        let forbidden = Job { saw: SawRules { rip: None, ..job.saw.clone() }, ..job.clone() };
        let (with, without) = (cost(&job), cost(&forbidden));
        never_dearer(with, without, &job);
        helped += usize::from(with.is_some() && with != without);
    }
    assert!(helped > 20, "rips helped only {helped} times");
}

#[test]
fn the_same_job_gives_the_same_plan() {
    for (job, _) in straight_jobs(5).take(40) {
        if job.validate().is_ok() {
            assert_eq!(solve(&job, 30_000_000), solve(&job, 30_000_000));
        }
    }
}
