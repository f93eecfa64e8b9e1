//! What a plan buys.

use crate::cutting::{Job, Plan, Source};
use crate::job::ItemId;
use crate::job::cut_labels::{Labels, Money};
use crate::measure::Length;

/// One line of the shopping list.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Purchase {
    /// The board of the yard, where it is one of the job book.
    pub item: Option<ItemId>,
    /// Its place in the cutting job.
    pub board: usize,
    /// `2x6`
    pub section: String,
    /// Thickness and width, where they are known.
    pub size: Option<(Length, Length)>,
    /// Width, where it is known: also of a list, which may know no thickness.
    pub width: Option<Length>,
    /// Of one board.
    pub length: Length,
    /// How many.
    pub count: u32,
    /// How many of them are bought already.
    pub bought: u32,
    /// Price of one and of all, in cents; `None` when no price was given.
    pub price: Option<(i64, i64)>,
}

impl Purchase {
    /// How many are still to buy.
    #[must_use]
    pub fn to_buy(&self) -> u32 {
        self.count.saturating_sub(self.bought)
    }

    /// What of it is bought, beside how many there are of it; `None` for nothing.
    #[must_use]
    pub fn bought_words(&self) -> Option<String> {
        match self.bought {
            0 => None,
            _ if self.to_buy() == 0 => Some("bought".to_owned()),
            n => Some(format!("{n} bought, {} to buy", self.to_buy())),
        }
    }
}

/// How many boards a plan buys.
pub(super) fn bought(plan: &Plan) -> u32 {
    let boards = plan.boards.iter().filter(|cut| matches!(cut.source, Source::Board(_)));
    u32::try_from(boards.count()).unwrap_or(u32::MAX)
}

/// What a plan buys, in the order of the yard's list. `None` when it is not a plan of that job.
#[must_use]
pub fn shopping(job: &Job, plan: &Plan, labels: &Labels) -> Option<Vec<Purchase>> {
    let mut list = Vec::new();
    for (at, board) in job.boards.iter().enumerate() {
        let count = plan.boards.iter().filter(|cut| cut.source == Source::Board(at)).count();
        let count = u32::try_from(count).ok()?;
        if count == 0 {
            continue;
        }
        let is_priced = labels.money == Money::Cents;
        let sum = board.price_cents.checked_mul(i64::from(count))?;
        let section = labels.section(job, &board.section)?;
        list.push(Purchase {
            item: labels.boards.get(at)?.item,
            board: at,
            section: section.name.clone(),
            size: section.size,
            width: match job.section(&board.section).and_then(|section| section.size) {
                Some(size) => Some(labels.length(size.width).ok()?),
                None => section.size.map(|size| size.1),
            },
            length: labels.length(board.length).ok()?,
            count,
            bought: 0,
            price: is_priced.then_some((board.price_cents, sum)),
        });
    }
    Some(list)
}
