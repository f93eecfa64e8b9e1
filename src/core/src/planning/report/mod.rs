//! A plan as the builder sees it: what to buy, each board with its cuts in order, batches, and offcuts worth keeping.
//!
//! Everything along a board is measured from its left end, every setting of the fence from fence to near tooth, and every
//! stop from stop to near tooth. Nothing is rounded here.

mod bars;
mod batches;
mod board;
mod left;
mod money;
mod offcuts;
mod orders;
mod purchases;
mod rows;
mod seen;
mod standing;
#[cfg(test)]
mod trial;
mod ways;
mod without;
mod work;

pub use batches::{BatchCut, CutBatch};
pub use board::{BoardCut, KeyLine};
pub use left::Left;
pub use money::{Proof, Spent, left_out_words, proof, spent};
pub use offcuts::Keep;
pub use orders::Order;
pub use purchases::{Purchase, shopping};
pub use rows::{RowCut, Stretch, What};
pub use seen::How;
pub use standing::{Standing, known};
pub use ways::{Stood, Way, Ways, compare};
pub use without::{Difference, LeftOver, difference, of_that_length, without, without_words};
pub use work::work;

use board::board_cut;
use purchases::bought;
use seen::Seen;

use crate::cutting::{Job, Layout, Plan, Source};
use crate::job::cut_labels::Labels;
use crate::say;
use crate::sheet::{Act, Caution, Sentence, money};

/// A plan as the builder sees it.
#[derive(Clone, Debug, PartialEq)]
pub struct Report {
    /// What the boards to buy come to.
    pub spent: Spent,
    /// What to buy, in the order of the yard's list.
    pub shopping: Vec<Purchase>,
    /// The boards to cut, in the order of the plan.
    pub boards: Vec<BoardCut>,
    /// What is cut at one setting, across all boards.
    pub batches: Vec<CutBatch>,
    /// Offcuts worth keeping, longest first.
    pub offcuts: Vec<Keep>,
    /// Parts that found no place, with how many of each.
    pub left_out: Vec<(String, u32)>,
    /// Dangers of the work.
    pub cautions: Vec<Caution>,
}

/// A plan in the builder's words. `None` when it is not a plan of that job.
#[must_use]
pub fn report(job: &Job, plan: &Plan, labels: &Labels, how: How) -> Option<Report> {
    glance(job, plan, labels, how, usize::MAX)
}

/// The same with no more than `most` of its boards, and batches and offcuts of these alone: for a plan that is soon
/// followed by a better one. What is bought and spent is that of the whole plan.
#[must_use]
pub fn glance(job: &Job, plan: &Plan, labels: &Labels, how: How, most: usize) -> Option<Report> {
    let (mut boards, mut offcuts) = (Vec::new(), Vec::new());
    for (number, cut) in (1..).zip(&plan.boards).take(most) {
        let seen = Seen::of(job, labels, cut, number)?;
        boards.push(board_cut(&seen, how, None)?);
        offcuts.extend(offcuts::of_board(&seen, plan, how)?);
    }
    crate::order::sort_by(&mut offcuts, |a: &Keep, b| b.length.cmp(&a.length));
    let left_out = plan
        .left_out
        .iter()
        .map(|left| labels.parts.get(left.part).map(|label| (label.name.clone(), left.quantity)));
    Some(Report {
        spent: spent(labels, plan.cost_cents, bought(plan)).ok()?,
        shopping: shopping(job, plan, labels)?,
        batches: batches::batches(&boards),
        left_out: left_out.collect::<Option<_>>()?,
        cautions: cautions(job, plan, labels)?,
        offcuts,
        boards,
    })
}

/// Every board of a plan, drawn at the scale of the longest, to be held against the real ones. `None` when it is not a
/// plan of that job.
#[must_use]
pub fn at_one_scale(job: &Job, plan: &Plan, labels: &Labels, how: How) -> Option<Vec<BoardCut>> {
    let all = (1..).zip(&plan.boards).map(|(number, cut)| Seen::of(job, labels, cut, number));
    let all = all.collect::<Option<Vec<_>>>()?;
    let lengths = all.iter().map(|seen| seen.length(seen.view.length));
    let longest = lengths.collect::<Option<Vec<_>>>()?.into_iter().max();
    all.iter().map(|seen| board_cut(seen, how, longest)).collect()
}

/// The rows of every board of a plan, without its drawing. `None` when it is not a plan of that job.
#[must_use]
pub fn rows_of(job: &Job, plan: &Plan, labels: &Labels) -> Option<Vec<Vec<RowCut>>> {
    let all = (1..).zip(&plan.boards).map(|(number, cut)| {
        let seen = Seen::of(job, labels, cut, number)?;
        rows::rows(&seen)
    });
    all.collect()
}

/// The offcuts of one board of a plan that are worth keeping. `None` when it is not a plan of that job.
#[must_use]
pub fn worth_keeping(
    job: &Job,
    plan: &Plan,
    labels: &Labels,
    board: usize,
    how: How,
) -> Option<Vec<Keep>> {
    let number = u32::try_from(board).ok()?.checked_add(1)?;
    let seen = Seen::of(job, labels, plan.boards.get(board)?, number)?;
    offcuts::of_board(&seen, plan, how)
}

fn cautions(job: &Job, plan: &Plan, labels: &Labels) -> Option<Vec<Caution>> {
    // Its list of batches sets a stop for every length.
    let mut acts = vec![Act::SawAtStop];
    for cut in &plan.boards {
        match &cut.layout {
            Layout::Crosscut(_) => {}
            Layout::RipFirst(strips) => {
                acts.push(Act::Rip);
                if strips.iter().any(|strip| strip.layers.len() > 1) {
                    acts.push(Act::SawDeep);
                }
            }
            Layout::CrosscutFirst(_) => acts.push(Act::Rip),
        }
        for placed in cut.placed() {
            if labels.length(job.parts.get(placed.part)?.length).ok()? < Caution::SHORT {
                acts.push(Act::SawSmall);
            }
        }
    }
    Some(Caution::of(&acts))
}

impl Report {
    /// The same with some of its boards bought, by their place in the plan: they are not to buy any more.
    #[must_use]
    pub fn with_bought(mut self, is_bought: impl Fn(usize) -> bool) -> Report {
        let Report { shopping, boards, .. } = &mut self;
        for line in shopping {
            let source = Source::Board(line.board);
            let bought = boards.iter().enumerate();
            let bought = bought.filter(|(at, cut)| cut.source == source && is_bought(*at)).count();
            line.bought = u32::try_from(bought).unwrap_or(line.count);
        }
        self
    }

    /// What is still to be bought, in one line: `Buy 3 boards for 32.70.`
    #[must_use]
    pub fn headline(&self) -> Sentence {
        let count = |of: fn(&Purchase) -> u32| {
            self.shopping.iter().fold(0_u32, |sum, line| sum.saturating_add(of(line)))
        };
        let (all, left) = (count(|line| line.count), count(Purchase::to_buy));
        let many = if left == 1 { "1 board".to_owned() } else { format!("{left} boards") };
        let spent = &self.spent;
        match (spent, left) {
            _ if all == 0 => say!["Nothing to buy: it all comes from my rack."],
            (_, 0) => say!["Nothing to buy: it is all bought."],
            (Spent::Money { .. }, _) => {
                let each = |line: &Purchase| {
                    let (each, _) = line.price?;
                    each.checked_mul(i64::from(line.to_buy()))
                };
                let cents = self.shopping.iter().filter_map(each).fold(0, i64::saturating_add);
                let still = if left < all { "Still to buy: " } else { "Buy " };
                say![format!("{still}{many} for {}.", money(cents))]
            }
            (Spent::Wood { .. }, _) if left < all => say![format!("Still to buy: {many}.")],
            (Spent::Wood { .. }, _) => say!["Buy ", spent.sentence().to_string(), "."],
        }
    }
}

#[cfg(test)]
mod tests;
