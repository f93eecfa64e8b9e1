//! Laws that hold whatever the numbers are.

use reckoner_core::cutting::{Job, RipRules, SawRules};

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

/// Jobs with rips and, where the law holds for them too, with resaws, parts that lie either way, and blocks.
fn ripped_jobs(seed: u64, with_blocks: bool) -> impl Iterator<Item = (Job, Dice)> {
    (0..400).map(move |number| {
        let mut dice = Dice(seed * 1_000 + number);
        let mut job = ripped(&mut dice, 7);
        if let (false, Some(rip)) = (with_blocks, &mut job.saw.rip) {
            rip.crosscut_first = false;
            rip.least_length = 0;
            job.parts.iter_mut().for_each(|part| part.grain_free = false);
        }
        (job, dice)
    })
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
fn with_rips_a_scrap_or_a_board_length_more_never_costs_more() {
    let mut helped = 0;
    for (job, mut dice) in ripped_jobs(6, true) {
        let before = cost(&job);
        let mut more = job.clone();
        let like =
            job.boards[usize::try_from(dice.roll(0, 99)).unwrap() % job.boards.len()].clone();
        if dice.one_in(2) {
            let piece = scrap("new".into(), dice.roll(5, 24), 1);
            more.scraps.push(reckoner_core::cutting::Scrap { section: like.section, ..piece });
        } else {
            let sold = board("new".into(), dice.roll(12, 30), dice.roll(1, 200), None);
            more.boards.push(reckoner_core::cutting::Board { section: like.section, ..sold });
        }
        let after = cost(&more);
        never_dearer(after, before, &more);
        helped += usize::from(after != before);
    }
    assert!(helped > 20, "{helped}");
}

/// Where a board may be crosscut first, this is no law: a block is exactly as long as its parts, so a part made as
/// long as another one may share its block. Nor is it one for a part that lies either way, nor below the least length.
#[test]
fn with_rips_a_part_more_or_longer_or_a_wider_kerf_never_costs_less() {
    let mut dearer = 0;
    for (job, mut dice) in ripped_jobs(7, false) {
        let before = cost(&job);
        let mut more = job.clone();
        let at = usize::try_from(dice.roll(0, 99)).unwrap() % job.parts.len();
        match dice.roll(0, 2) {
            0 => more.parts[at].quantity += 1,
            1 => more.parts[at].length += dice.roll(1, 3),
            _ => {
                more.saw.kerf += 1;
                if let Some(rip) = &mut more.saw.rip {
                    rip.kerf += 1;
                    rip.resaw.iter_mut().for_each(|resaw| resaw.kerf += 1);
                }
            }
        }
        let after = cost(&more);
        never_dearer(before, after, &more);
        dearer += usize::from(after != before);
    }
    assert!(dearer > 20, "{dearer}");
}

#[test]
fn with_rips_order_and_scale_change_nothing() {
    let mut planned = 0;
    for (job, mut dice) in ripped_jobs(8, true) {
        let before = cost(&job);
        let mut turned = scaled(&job, dice.roll(2, 9));
        turned.parts.reverse();
        turned.boards.reverse();
        turned.scraps.reverse();
        turned.sections.reverse();
        assert_eq!(cost(&turned), before, "{job:#?}");
        planned += usize::from(before.is_some());
    }
    assert!(planned > 60, "{planned}");
}

/// Every length of the job times `by`.
fn scaled(job: &Job, by: i64) -> Job {
    let mut job = job.clone();
    for section in &mut job.sections {
        let size = section.size.as_mut().unwrap();
        size.width *= by;
        size.thickness *= by;
    }
    job.parts.iter_mut().for_each(|part| part.length *= by);
    let boards = job.boards.iter_mut().map(|it| (&mut it.length, &mut it.trims, &mut it.knots));
    let scraps = job.scraps.iter_mut().map(|it| (&mut it.length, &mut it.trims, &mut it.knots));
    for (length, trims, knots) in boards.chain(scraps) {
        *length *= by;
        trims.left *= by;
        trims.right *= by;
        for zone in knots {
            zone.from *= by;
            zone.to *= by;
        }
    }
    job.saw.kerf *= by;
    if let Some(rip) = &mut job.saw.rip {
        let RipRules { kerf, near_edge, far_edge, least_width, least_length, .. } = rip;
        for units in [kerf, near_edge, far_edge, least_width, least_length] {
            *units *= by;
        }
        if let Some(resaw) = &mut rip.resaw {
            resaw.kerf *= by;
            resaw.near_face *= by;
            resaw.far_face *= by;
            resaw.least_thickness *= by;
            resaw.greatest_width.iter_mut().for_each(|most| *most *= by);
        }
    }
    job
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
