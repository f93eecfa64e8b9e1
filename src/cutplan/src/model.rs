//! The job as the search sees it: items, bins that accept them, and boards that offer bins. Our own model.
//!
//! Adding one kerf to every part and one to every segment turns "parts with kerfs between them" into plain packing of weights
//! into capacities. A board that is ripped is the same thing again: every strip (or layer of a strip) is a bin that accepts
//! only parts of its width and thickness. So each board offers a choice of *forms*, a form is a list of bins, and a bin has a
//! *kind* (which items it accepts, at what weight) and a capacity. Where the forms of a board are too many to list they stay
//! *nested*: a knapsack of strips, or of blocks, whose values are knapsacks of parts.

use std::rc::Rc;

use reckoner_core::cutting::Units;

/// Parts that are all alike to the search.
#[derive(Debug, Clone)]
pub(crate) struct Item {
    /// How many are wanted.
    pub(crate) demand: u32,
    /// More than any plan costs: the price of a part that no pattern covers yet.
    pub(crate) skip: i64,
    /// What leaving one out costs where that is allowed; better priorities cost more. One where all must be cut.
    pub(crate) rank: i64,
    /// A rough size, for greedy choices: the volume of one with its kerf.
    pub(crate) size: i64,
    /// The job's parts it stands for, with their quantities.
    pub(crate) parts: Vec<(usize, u32)>,
}

/// An item a bin accepts.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) struct Way {
    pub(crate) item: usize,
    /// Its extent along the bin plus one kerf.
    pub(crate) weight: Units,
    /// It lies turned by a quarter.
    pub(crate) turned: bool,
}

/// What a bin accepts, heaviest first.
#[derive(Debug, Clone, Default)]
pub(crate) struct Kind {
    pub(crate) ways: Vec<Way>,
    /// Not a row of a board but the place of a part that is left out.
    pub(crate) out: bool,
}

/// A row of parts with a fixed room.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) struct Bin {
    pub(crate) kind: usize,
    /// The room plus one kerf.
    pub(crate) cap: Units,
    /// Which strip or block of the form.
    pub(crate) piece: usize,
    /// Which layer of that strip.
    pub(crate) layer: usize,
    /// Which segment of the board.
    pub(crate) segment: usize,
}

/// How a strip is made.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct StripMake {
    pub(crate) width: Units,
    /// Thicknesses of its layers.
    pub(crate) layers: Vec<Units>,
    pub(crate) resawn: bool,
}

/// How a block is made.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) struct BlockMake {
    pub(crate) segment: usize,
    pub(crate) length: Units,
    /// Not ripped: one part as wide as the board.
    pub(crate) whole: bool,
}

/// How a form is cut.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) enum Make {
    /// To length only.
    Crosscut,
    /// Into strips; `false` for a single strip as wide as the board.
    Strips(Vec<StripMake>, bool),
    /// Into blocks, each then ripped.
    Blocks(Vec<BlockMake>),
}

/// One way to divide a board into bins.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct Form {
    pub(crate) bins: Vec<Bin>,
    pub(crate) make: Make,
}

/// One strip or block that a nested board may be divided into.
#[derive(Debug, Clone)]
pub(crate) struct Choice {
    /// Its extent in the outer direction plus that saw's kerf.
    pub(crate) weight: Units,
    /// Its bins; `piece` is set when a form is made of it.
    pub(crate) bins: Vec<Bin>,
    pub(crate) piece: PieceMake,
    /// More of these than parts they can hold are useless.
    pub(crate) most: u32,
}

/// A strip or a block.
#[derive(Debug, Clone)]
pub(crate) enum PieceMake {
    Strip(StripMake),
    /// Length, and whether it is left unripped.
    Block(Units, bool),
}

/// A board divided by an outer knapsack.
#[derive(Debug, Clone)]
pub(crate) struct Nest {
    /// One room per segment for blocks, one room for strips.
    pub(crate) rooms: Vec<Units>,
    pub(crate) choices: Vec<Choice>,
}

/// A board or scrap of the job.
#[derive(Debug, Clone)]
pub(crate) struct Stock {
    /// Its stock number in the job.
    pub(crate) number: usize,
    /// Its cost in the objective being minimised.
    pub(crate) cost: i64,
    pub(crate) limit: Option<u32>,
    pub(crate) forms: Vec<Rc<Form>>,
    /// Ways to divide it that are not listed in `forms`. Empty when the list is complete.
    pub(crate) nests: Vec<Nest>,
    /// Not a board: "buying" it leaves one of this item out.
    pub(crate) out: Option<usize>,
}

/// One part of the job that can be planned by itself.
#[derive(Debug, Clone)]
pub(crate) struct Model {
    pub(crate) items: Vec<Item>,
    pub(crate) kinds: Vec<Kind>,
    pub(crate) stocks: Vec<Stock>,
    /// Some ways to divide a board were too many to keep, so nothing can be proved.
    pub(crate) lossy: bool,
}

/// One board with what is cut from it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct Pattern {
    /// Place in [`Model::stocks`].
    pub(crate) stock: usize,
    pub(crate) form: Rc<Form>,
    /// For each bin of the form: ways of its kind and how many.
    pub(crate) fill: Vec<Vec<(usize, u32)>>,
    /// Items and how many in all, by item.
    pub(crate) counts: Vec<(usize, u32)>,
}

impl Model {
    /// A pattern from its fills.
    pub(crate) fn pattern(
        &self,
        stock: usize,
        form: Rc<Form>,
        fill: Vec<Vec<(usize, u32)>>,
    ) -> Pattern {
        let mut counts: Vec<(usize, u32)> = Vec::new();
        for (bin, ways) in form.bins.iter().zip(&fill) {
            for &(way, count) in ways {
                let item = self.kinds[bin.kind].ways[way].item;
                match counts.binary_search_by_key(&item, |entry| entry.0) {
                    Ok(at) => counts[at].1 += count,
                    Err(at) => counts.insert(at, (item, count)),
                }
            }
        }
        Pattern { stock, form, fill, counts }
    }

    /// The pattern with nothing in it that exceeds `left`; `left` is reduced by what it uses.
    pub(crate) fn take(&self, pattern: &Pattern, left: &mut [u32]) -> Pattern {
        let mut fill = Vec::with_capacity(pattern.fill.len());
        for (bin, ways) in pattern.form.bins.iter().zip(&pattern.fill) {
            let mut kept = Vec::with_capacity(ways.len());
            for &(way, count) in ways {
                let item = self.kinds[bin.kind].ways[way].item;
                let take = count.min(left[item]);
                if take > 0 {
                    left[item] -= take;
                    kept.push((way, take));
                }
            }
            fill.push(kept);
        }
        self.pattern(pattern.stock, Rc::clone(&pattern.form), fill)
    }

    /// The wanted quantities.
    pub(crate) fn demands(&self) -> Vec<u32> {
        self.items.iter().map(|item| item.demand).collect()
    }

    /// What a list of patterns costs, parts left out included.
    pub(crate) fn cost(&self, patterns: &[Rc<Pattern>]) -> i64 {
        let mut left = self.demands();
        let mut cost = 0;
        for pattern in patterns {
            cost += self.stocks[pattern.stock].cost;
            for &(item, count) in &pattern.counts {
                left[item] = left[item].saturating_sub(count);
            }
        }
        let skipped: i64 =
            left.iter().zip(&self.items).map(|(&count, item)| i64::from(count) * item.skip).sum();
        cost + skipped
    }

    /// Stocks that cost something, dearest first.
    pub(crate) fn paid(&self) -> Vec<usize> {
        let mut paid: Vec<usize> =
            (0..self.stocks.len()).filter(|&s| self.stocks[s].cost > 0).collect();
        paid.sort_by_key(|&stock| (std::cmp::Reverse(self.stocks[stock].cost), stock));
        paid
    }

    /// Whether every board's forms are all listed.
    pub(crate) fn all_listed(&self) -> bool {
        self.stocks.iter().all(|stock| stock.nests.is_empty())
    }
}
