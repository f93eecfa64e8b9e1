//! A finished plan: which part comes from which board, and where exactly.

use super::problem::{Job, StockView, Units};

/// Where a cut board comes from.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Source {
    /// A board of the job, by its place in [`Job::boards`].
    Board(usize),
    /// A scrap of the job, by its place in [`Job::scraps`].
    Scrap(usize),
}

impl Source {
    /// The board or scrap. `None` when the job has none such.
    pub(crate) fn view(self, job: &Job) -> Option<StockView<'_>> {
        match self {
            Source::Board(at) => job.stock().take(job.boards.len()).nth(at),
            Source::Scrap(at) => job.stock().skip(job.boards.len()).nth(at),
        }
    }
}

/// One part in its place.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Placed {
    /// By its place in [`Job::parts`].
    pub part: usize,
    /// Where it starts: from the left end of the board, or in a [`Block`] from the near edge.
    pub at: Units,
    /// Its length lies across the board (only for parts whose grain is free).
    pub turned: bool,
}

/// One layer of a strip.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Layer {
    /// Where it starts, from the near face.
    pub at: Units,
    /// In units; every part of the layer is exactly this thick.
    pub thickness: Units,
    /// Left to right.
    pub parts: Vec<Placed>,
}

/// One strip along the whole board.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Strip {
    /// Where it starts, from the near edge.
    pub at: Units,
    /// In units; every part of the strip is exactly this wide.
    pub width: Units,
    /// From the near face; a strip that is not resawn has one layer as thick as the board.
    pub layers: Vec<Layer>,
}

/// One block, crosscut from the whole board and then ripped.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Block {
    /// Where it starts, from the left end.
    pub at: Units,
    /// In units; every part of the block is exactly this long.
    pub length: Units,
    /// From the near edge.
    pub parts: Vec<Placed>,
}

/// How a board is cut.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Layout {
    /// To length only. Left to right.
    Crosscut(Vec<Placed>),
    /// Ripped into strips, which may be resawn, then crosscut.
    RipFirst(Vec<Strip>),
    /// Crosscut into blocks, then ripped.
    CrosscutFirst(Vec<Block>),
}

/// One board of the plan.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct CutBoard {
    /// Which board or scrap.
    pub source: Source,
    /// How it is cut.
    pub layout: Layout,
}

/// Parts that have no place in a plan made only from the rack.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct LeftOut {
    /// By its place in [`Job::parts`].
    pub part: usize,
    /// How many.
    pub quantity: u32,
}

/// A plan.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Plan {
    /// The boards and scraps to cut.
    pub boards: Vec<CutBoard>,
    /// Empty unless the job is planned from the rack only.
    pub left_out: Vec<LeftOut>,
    /// What the bought boards cost together, in cents.
    pub cost_cents: i64,
}

/// A piece left over at the end of a segment, as long as it can be.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Offcut {
    /// By its place in [`Plan::boards`].
    pub board: usize,
    /// Where it starts, from the left end.
    pub at: Units,
    /// In units; the cut that frees it and the end trim are already off.
    pub length: Units,
    /// The width of its strip; `None` for the board's own width.
    pub width: Option<Units>,
    /// The thickness of its layer; `None` for the board's own thickness.
    pub thickness: Option<Units>,
}

/// The spans of parts along one strip or layer, and its width and thickness where they are not the board's.
type Row = (Vec<(Units, Units)>, Option<Units>, Option<Units>);

impl CutBoard {
    /// Every part on this board, in cutting order.
    #[must_use]
    pub fn placed(&self) -> Vec<Placed> {
        match &self.layout {
            Layout::Crosscut(parts) => parts.clone(),
            Layout::RipFirst(strips) => strips
                .iter()
                .flat_map(|strip| strip.layers.iter())
                .flat_map(|layer| layer.parts.iter().copied())
                .collect(),
            Layout::CrosscutFirst(blocks) => {
                blocks.iter().flat_map(|block| block.parts.iter().copied()).collect()
            }
        }
    }
}

impl Plan {
    /// The price of the boards it buys, worked out again from the job. `None` if it names no board of the job.
    #[must_use]
    pub fn price(&self, job: &Job) -> Option<i64> {
        self.boards.iter().try_fold(0_i64, |sum, cut| {
            let price = match cut.source {
                Source::Board(at) => job.boards.get(at)?.price_cents,
                Source::Scrap(at) => job.scraps.get(at).map(|_| 0)?,
            };
            sum.checked_add(price)
        })
    }

    /// The offcuts along the length, longest first: what is left right of the last part of every segment,
    /// strip and layer, and segments nothing was cut from. Leftover widths are not listed.
    #[must_use]
    pub fn offcuts(&self, job: &Job) -> Vec<Offcut> {
        let kerf = job.saw.kerf;
        let mut offcuts = Vec::new();
        for (board, cut) in self.boards.iter().enumerate() {
            let Some(view) = cut.source.view(job) else {
                continue;
            };
            let segments = view.segments(kerf);
            let mut rows: Vec<Row> = Vec::new();
            let along = |part: &Placed| {
                job.parts.get(part.part).map(|p| (part.at, part.at + run(job, p, part.turned)))
            };
            match &cut.layout {
                Layout::Crosscut(parts) => {
                    rows.push((parts.iter().filter_map(along).collect(), None, None));
                }
                Layout::RipFirst(strips) => {
                    for strip in strips {
                        for layer in &strip.layers {
                            rows.push((
                                layer.parts.iter().filter_map(along).collect(),
                                Some(strip.width),
                                Some(layer.thickness),
                            ));
                        }
                    }
                }
                Layout::CrosscutFirst(blocks) => rows.push((
                    blocks.iter().map(|b| (b.at, b.at + b.length)).collect(),
                    None,
                    None,
                )),
            }
            for (spans, width, thickness) in rows {
                for &(from, to) in &segments {
                    let last = spans
                        .iter()
                        .filter(|(a, b)| *a >= from && *b <= to)
                        .map(|span| span.1)
                        .max();
                    let at = last.map_or(from, |end| end + kerf);
                    if to > at {
                        offcuts.push(Offcut { board, at, length: to - at, width, thickness });
                    }
                }
            }
        }
        crate::order::sort_by(&mut offcuts, |a, b| {
            b.length.cmp(&a.length).then((a.board, a.at).cmp(&(b.board, b.at)))
        });
        offcuts
    }
}

/// How far a part reaches along the board.
pub(crate) fn run(job: &Job, part: &super::Part, turned: bool) -> Units {
    if turned {
        job.section(&part.section)
            .and_then(|section| section.size)
            .map_or(part.length, |size| size.width)
    } else {
        part.length
    }
}

/// How far a part reaches across the board. `None` where its size is not known.
pub(crate) fn across(job: &Job, part: &super::Part, turned: bool) -> Option<Units> {
    if turned {
        return Some(part.length);
    }
    job.section(&part.section)?.size.map(|size| size.width)
}
