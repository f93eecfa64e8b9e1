//! A plan as the builder sees it: what to buy, each board with its cuts in order, batches, and offcuts worth keeping.
//!
//! Everything along a board is measured from its left end, every setting of the fence from fence to near tooth, and every
//! stop from stop to near tooth. Nothing is rounded here.

mod bars;
mod batches;
mod left;
mod money;
mod offcuts;
mod orders;
mod rows;
mod standing;
#[cfg(test)]
mod trial;
mod ways;
mod without;
mod work;

pub use batches::{BatchCut, CutBatch};
pub use left::Left;
pub use money::{Proof, Spent, left_out_words, proof, spent};
pub use offcuts::Keep;
pub use orders::Order;
pub use rows::{RowCut, Stretch, What};
pub use standing::{Standing, known};
pub use ways::{Stood, Way, Ways, compare};
pub use without::{Difference, LeftOver, difference, of_that_length, without, without_words};
pub use work::work;

use crate::cutting::{CutBoard, Job, Layout, Plan, Source, StockView, Units};
use crate::drawing::Scene;
use crate::job::ItemId;
use crate::job::cut_labels::{Label, Labels, Money, SectionLabel};
use crate::measure::{Length, Tape};
use crate::say;
use crate::sheet::{Act, Caution, Sentence, money};

/// How the report is written.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct How {
    /// The user's tape, for what is written into drawings.
    pub tape: Tape,
    /// The shortest offcut worth keeping.
    pub keep_from: Length,
}

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

/// One board to cut.
#[derive(Clone, Debug, PartialEq)]
pub struct BoardCut {
    /// From 1, in the order of the plan.
    pub number: u32,
    /// What it is called: a section of the yard, or the name of a board on hand.
    pub name: String,
    /// By its place in the cutting job.
    pub source: Source,
    /// The board of the rack or the yard, where it is one of the job book.
    pub item: Option<ItemId>,
    /// Its whole length.
    pub length: Length,
    /// What comes out of it: name and how many.
    pub parts: Vec<(String, u32)>,
    /// The board, or each of its strips and layers, from its left end to its right.
    pub rows: Vec<RowCut>,
    /// The cuts in order, from the left end.
    pub orders: Vec<Order>,
    /// The bar, to scale along the board.
    pub scene: Scene,
    /// What the letters in the bar stand for.
    pub key: Vec<KeyLine>,
}

/// What a letter in a bar stands for.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct KeyLine {
    /// `A`; the same part has the same letter on every board.
    pub letter: String,
    /// The part.
    pub name: String,
    /// Its length.
    pub length: Length,
    /// Its width, where it is ripped from a wider board.
    pub width: Option<Length>,
    /// How many on this board.
    pub count: u32,
}

/// One board of the plan with all that is known of it.
struct Seen<'a> {
    job: &'a Job,
    labels: &'a Labels,
    view: StockView<'a>,
    cut: &'a CutBoard,
    label: &'a Label,
    section: &'a SectionLabel,
    number: u32,
}

impl<'a> Seen<'a> {
    fn of(job: &'a Job, labels: &'a Labels, cut: &'a CutBoard, number: u32) -> Option<Seen<'a>> {
        let (place, label) = match cut.source {
            Source::Board(at) => (at, labels.boards.get(at)?),
            Source::Scrap(at) => (job.boards.len().checked_add(at)?, labels.scraps.get(at)?),
        };
        let view = job.stock().nth(place)?;
        let section = labels.section(job, view.section)?;
        Some(Seen { job, labels, view, cut, label, section, number })
    }

    fn length(&self, units: Units) -> Option<Length> {
        self.labels.length(units).ok()
    }

    fn part_name(&self, part: usize) -> Option<&'a str> {
        self.labels.parts.get(part).map(|label| label.name.as_str())
    }
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

/// How many boards a plan buys.
fn bought(plan: &Plan) -> u32 {
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

/// `window`: how much of board the width of the drawing stands for, where it is not this board's length.
fn board_cut(seen: &Seen<'_>, how: How, window: Option<Length>) -> Option<BoardCut> {
    let rows = rows::rows(seen)?;
    let key = key(seen)?;
    let scene = bars::bar(seen, &rows, how.tape, window)?;
    Some(BoardCut {
        number: seen.number,
        name: seen.label.name.clone(),
        source: seen.cut.source,
        item: seen.label.item,
        length: seen.length(seen.view.length)?,
        parts: key.iter().map(|line| (line.name.clone(), line.count)).collect(),
        orders: orders::orders(seen)?,
        rows,
        scene,
        key,
    })
}

fn key(seen: &Seen<'_>) -> Option<Vec<KeyLine>> {
    let mut counts: Vec<(usize, u32)> = Vec::new();
    for placed in seen.cut.placed() {
        match counts.iter_mut().find(|(part, _)| *part == placed.part) {
            Some((_, count)) => *count = count.saturating_add(1),
            None => counts.push((placed.part, 1)),
        }
    }
    crate::order::sort(&mut counts);
    let wide = |section: &str| Some(seen.job.section(section)?.size?.width);
    let line = |(part, count): (usize, u32)| {
        let own = wide(&seen.job.parts.get(part)?.section);
        let width = match own.filter(|own| Some(*own) != wide(seen.view.section)) {
            Some(width) => Some(seen.length(width)?),
            None => None,
        };
        Some(KeyLine {
            width,
            letter: letter(part),
            name: seen.part_name(part)?.to_owned(),
            length: seen.length(seen.job.parts.get(part)?.length)?,
            count,
        })
    };
    counts.into_iter().map(line).collect()
}

/// A to Z, then AA and so on.
fn letter(part: usize) -> String {
    let last = char::from(b'A' + u8::try_from(part % 26).unwrap_or(0));
    match part / 26 {
        0 => last.to_string(),
        more => format!("{}{last}", letter(more - 1)),
    }
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
