//! The same job with spare parts, and what is left of a job when some boards are cut.

use super::plan::Source;
use super::problem::{Board, Job, KnotZone, Scrap, Units};
use super::scale::CommonUnit;
use crate::measure::Length;

/// The job with spare parts: of each part at least `each` more, and at least `percent` per cent more, rounded up.
#[must_use]
pub fn with_spares(job: &Job, each: u32, percent: u32) -> Job {
    let mut more = job.clone();
    for part in &mut more.parts {
        let share = (u64::from(part.quantity) * u64::from(percent)).div_ceil(100);
        let spare = u32::try_from(share).unwrap_or(u32::MAX).max(each);
        if part.quantity > 0 {
            part.quantity = part.quantity.saturating_add(spare);
        }
    }
    more
}

/// What has happened so far.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Done {
    /// Parts that are cut and good: by their place in [`Job::parts`], and how many.
    pub parts: Vec<(usize, u32)>,
    /// Boards and scraps that are cut up.
    pub used: Vec<(Source, u32)>,
    /// Boards bought and still whole: by their place in [`Job::boards`]. They are paid for, so they are free now.
    pub bought: Vec<(usize, u32)>,
    /// Pieces that came off and can still be used, and boards that turned out different.
    pub new_scraps: Vec<Scrap>,
}

/// Why a job cannot go on from what is said to be done.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum DoneProblem {
    /// More of a part are cut than the job wants.
    TooManyCut {
        /// The part's id.
        part: String,
    },
    /// More of a board or scrap are used than there are.
    TooManyUsed {
        /// Its id.
        id: String,
    },
    /// A part, board or scrap that the job does not have.
    NotInJob,
}

/// The job that is left: what is cut stays cut, what is bought stays bought.
///
/// Parts keep their places in the list, with fewer wanted. Boards bought and still whole become scraps at the end of the
/// list, named after their board, then come the new scraps.
///
/// # Errors
/// [`DoneProblem`] when more is done than the job holds.
pub fn replan_from(job: &Job, done: &Done) -> Result<Job, DoneProblem> {
    let mut rest = job.clone();
    for &(part, count) in &done.parts {
        let part = rest.parts.get_mut(part).ok_or(DoneProblem::NotInJob)?;
        part.quantity = part
            .quantity
            .checked_sub(count)
            .ok_or_else(|| DoneProblem::TooManyCut { part: part.id.clone() })?;
    }
    let take_board = |board: &mut Board, count: u32| match &mut board.limit {
        None => Ok(()),
        Some(limit) => match limit.checked_sub(count) {
            Some(left) => {
                *limit = left;
                Ok(())
            }
            None => Err(DoneProblem::TooManyUsed { id: board.id.clone() }),
        },
    };
    for &(source, count) in &done.used {
        match source {
            Source::Board(at) => {
                take_board(rest.boards.get_mut(at).ok_or(DoneProblem::NotInJob)?, count)?;
            }
            Source::Scrap(at) => {
                let scrap = rest.scraps.get_mut(at).ok_or(DoneProblem::NotInJob)?;
                scrap.quantity = scrap
                    .quantity
                    .checked_sub(count)
                    .ok_or_else(|| DoneProblem::TooManyUsed { id: scrap.id.clone() })?;
            }
        }
    }
    for &(at, count) in &done.bought {
        let board = rest.boards.get_mut(at).ok_or(DoneProblem::NotInJob)?;
        take_board(board, count)?;
        rest.scraps.push(Scrap {
            id: format!("{} (bought)", board.id),
            section: board.section.clone(),
            length: board.length,
            quantity: count,
            trims: board.trims,
            knots: board.knots.clone(),
        });
    }
    rest.scraps.extend(done.new_scraps.iter().cloned());
    Ok(rest)
}

/// The same job in a unit in which the given lengths are whole too. `None` when that unit would be too fine.
///
/// Prices, numbers and the places in the lists stay as they are, so that a plan's boards and parts are still the same.
#[must_use]
pub fn refined(job: &Job, unit: CommonUnit, lengths: &[Length]) -> Option<(Job, CommonUnit)> {
    let mut all = vec![(1, unit.per_inch())];
    all.extend(
        lengths.iter().map(|length| (length.in_inches().numer(), length.in_inches().denom())),
    );
    let finer = CommonUnit::of(&all).ok()?;
    let by = Units::try_from(finer.per_inch() / unit.per_inch()).ok()?;
    let mut job = job.clone();
    if by == 1 {
        return Some((job, finer));
    }
    let mut is_fine = true;
    let mut scale = |units: &mut Units| match units.checked_mul(by) {
        Some(scaled) if scaled.abs() <= super::problem::LARGEST_UNITS => *units = scaled,
        _ => is_fine = false,
    };
    for section in &mut job.sections {
        if let Some(size) = &mut section.size {
            scale(&mut size.width);
            scale(&mut size.thickness);
        }
    }
    job.parts.iter_mut().for_each(|part| scale(&mut part.length));
    let knots = |zones: &mut Vec<KnotZone>, scale: &mut dyn FnMut(&mut Units)| {
        for zone in zones {
            scale(&mut zone.from);
            scale(&mut zone.to);
        }
    };
    for board in &mut job.boards {
        for units in [&mut board.length, &mut board.trims.left, &mut board.trims.right] {
            scale(units);
        }
        knots(&mut board.knots, &mut scale);
    }
    for scrap in &mut job.scraps {
        for units in [&mut scrap.length, &mut scrap.trims.left, &mut scrap.trims.right] {
            scale(units);
        }
        knots(&mut scrap.knots, &mut scale);
    }
    scale(&mut job.saw.kerf);
    if let Some(rip) = &mut job.saw.rip {
        for units in [
            &mut rip.kerf,
            &mut rip.near_edge,
            &mut rip.far_edge,
            &mut rip.least_width,
            &mut rip.least_length,
        ] {
            scale(units);
        }
        if let Some(resaw) = &mut rip.resaw {
            for units in [
                &mut resaw.kerf,
                &mut resaw.near_face,
                &mut resaw.far_face,
                &mut resaw.least_thickness,
            ] {
                scale(units);
            }
            resaw.greatest_width.iter_mut().for_each(&mut scale);
        }
    }
    is_fine.then_some((job, finer))
}
