//! The cuts of a plan in the order in which a shop makes them, and how much setting up and sawing they come to.
//!
//! This is the one count of settings and cuts: the plan's cut order and its list of settings are told from it, and plans
//! of equal money are ranked by it.
//! - A board is cut as [`Layout`] says: strips are ripped off it, the widest first, then layers, then every row is cut to
//!   length from its left end; or blocks come off first and are ripped after.
//! - A *setting* is a distance of fence or stop that differs from every other of its kind of cut in the whole plan, so
//!   whatever matches is cut at one go. Trims and clean-ups are no settings.
//! - A *cut* is one pass of the saw. A piece takes one, but not the one that is left when its neighbours are off: a part
//!   that ends where its board ends, or the last strip or layer where all of them fill the board to the last kerf. The trim
//!   of an end or a knot and the clean-up of an edge or a face take one each.

use std::collections::BTreeSet;

use super::plan::{CutBoard, Layout, Placed, Plan, Strip, across, run};
use super::problem::{Job, RipRules, StockView, Units};

/// What kind of cut it is, in the order of the work.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum CutKind {
    /// An end or a knot comes off.
    Trim,
    /// A block comes off the whole board, to be ripped.
    Block,
    /// An edge or a face is cleaned.
    Clean,
    /// Strips come off along the board.
    Rip,
    /// Layers come off by thickness.
    Resaw,
    /// A part is cut to length.
    Crosscut,
}

impl CutKind {
    /// Whether fence or stop is set for it once, for all that match.
    #[must_use]
    pub fn is_set_once(self) -> bool {
        !matches!(self, CutKind::Trim | CutKind::Clean)
    }
}

/// What comes off.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Piece {
    /// The left end of the board.
    End,
    /// All that lies before a clear stretch.
    Knot,
    /// A block, by its place in the layout.
    Block(usize),
    /// The near edge.
    Edge,
    /// The near face.
    Face,
    /// Strips, or the parts of a block.
    Strip,
    /// Layers of a strip.
    Layer,
    /// A part, by its place in the job.
    Part(usize),
}

impl Piece {
    /// The kind of cut that takes it off.
    #[must_use]
    pub fn kind(self) -> CutKind {
        match self {
            Piece::End | Piece::Knot => CutKind::Trim,
            Piece::Block(_) => CutKind::Block,
            Piece::Edge | Piece::Face => CutKind::Clean,
            Piece::Strip => CutKind::Rip,
            Piece::Layer => CutKind::Resaw,
            Piece::Part(_) => CutKind::Crosscut,
        }
    }
}

/// Pieces that come off one after another at one setting.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Cut {
    /// What comes off.
    pub piece: Piece,
    /// Fence to near tooth, or stop to near tooth; for an end, what comes off. In units.
    pub setting: Units,
    /// Where the near side of the cut is, from the left end of the board; `None` for cuts along it.
    pub at: Option<Units>,
    /// What it is cut from: the row (strip by strip, layer by layer, in the order of the work) for cuts to length, the strip
    /// in that order for layers, the place of the block for what is ripped from it; else 0.
    pub from: usize,
    /// How many pieces.
    pub pieces: u32,
    /// How many passes of the saw that takes.
    pub passes: u32,
}

/// How much work a plan is beside its boards; less is better, settings before cuts.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Effort {
    /// The settings of fence and stop, each once, in the order of the work.
    pub settings: BTreeSet<(CutKind, Units)>,
    /// Passes of the saw.
    pub cuts: u64,
}

/// The strips of a board in the order of the work: the widest first.
pub(crate) fn in_cutting_order(strips: &[Strip]) -> Vec<&Strip> {
    let mut order: Vec<&Strip> = strips.iter().collect();
    crate::order::sort_by(&mut order, |a, b| b.width.cmp(&a.width));
    order
}

impl CutBoard {
    /// The cuts of this board in order. `None` when it is no board of that job's plans.
    #[must_use]
    pub fn cuts(&self, job: &Job) -> Option<Vec<Cut>> {
        let view = self.source.view(job)?;
        let mut cuts = Vec::new();
        match &self.layout {
            Layout::Crosscut(parts) => along(job, view, whole(job, parts)?, 0, &mut cuts)?,
            // A ripped board in a job that forbids rips is no plan of that job.
            Layout::RipFirst(strips) => {
                rip_first(job, view, strips, job.saw.rip.as_ref()?, &mut cuts)?;
            }
            Layout::CrosscutFirst(blocks) => {
                let rip = job.saw.rip.as_ref()?;
                let width = job.section(view.section)?.size?.width;
                let mut ripped = Vec::new();
                let mut row = Vec::new();
                for (number, block) in blocks.iter().enumerate() {
                    let widths = block
                        .parts
                        .iter()
                        .map(|placed| across(job, job.parts.get(placed.part)?, placed.turned));
                    let widths: Vec<Units> = widths.collect::<Option<_>>()?;
                    // A block of one part as wide as the board is that part.
                    let piece = match block.parts.as_slice() {
                        [only] if widths == [width] => Piece::Part(only.part),
                        _ => {
                            ripped.push((number, widths));
                            Piece::Block(number)
                        }
                    };
                    row.push((block.at, block.at.checked_add(block.length)?, piece));
                }
                along(job, view, row, 0, &mut cuts)?;
                for (number, widths) in ripped {
                    rips(width, widths, rip, number, &mut cuts)?;
                }
            }
        }
        Some(cuts)
    }
}

impl Plan {
    /// How much work it is beside its boards. `None` when it is no plan of that job.
    #[must_use]
    pub fn effort(&self, job: &Job) -> Option<Effort> {
        let mut effort = Effort::default();
        for board in &self.boards {
            for cut in board.cuts(job)? {
                effort.cuts = effort.cuts.checked_add(u64::from(cut.passes))?;
                let kind = cut.piece.kind();
                if kind.is_set_once() {
                    effort.settings.insert((kind, cut.setting));
                }
            }
        }
        Some(effort)
    }
}

/// Parts of a row: where each begins and ends.
fn whole(job: &Job, parts: &[Placed]) -> Option<Vec<(Units, Units, Piece)>> {
    let span = |placed: &Placed| {
        let part = job.parts.get(placed.part)?;
        let to = placed.at.checked_add(run(job, part, placed.turned))?;
        Some((placed.at, to, Piece::Part(placed.part)))
    };
    parts.iter().map(span).collect()
}

/// The crosscuts of a row: ends and knots off, then piece after piece.
fn along(
    job: &Job,
    view: StockView<'_>,
    mut pieces: Vec<(Units, Units, Piece)>,
    from: usize,
    cuts: &mut Vec<Cut>,
) -> Option<()> {
    crate::order::sort_by(&mut pieces, |a, b| a.0.cmp(&b.0));
    let mut clear_from = 0;
    for (begin, end) in view.segments(job.saw.kerf) {
        let mut own = pieces.iter().filter(|piece| piece.0 >= begin && piece.1 <= end).peekable();
        if own.peek().is_none() {
            continue;
        }
        if begin > clear_from {
            let piece = if begin == view.trims.left { Piece::End } else { Piece::Knot };
            let setting = begin.checked_sub(clear_from)?;
            cuts.push(Cut { piece, setting, at: Some(begin), from, pieces: 1, passes: 1 });
        }
        for (start, stop, piece) in own {
            let setting = stop.checked_sub(*start)?;
            let passes = u32::from(*stop != view.length);
            cuts.push(Cut { piece: *piece, setting, at: Some(*stop), from, pieces: 1, passes });
        }
        clear_from = end;
    }
    Some(())
}

fn rip_first(
    job: &Job,
    view: StockView<'_>,
    strips: &[Strip],
    rip: &RipRules,
    cuts: &mut Vec<Cut>,
) -> Option<()> {
    let size = job.section(view.section)?.size?;
    if !matches!(strips, [only] if only.width == size.width) {
        rips(size.width, strips.iter().map(|strip| strip.width).collect(), rip, 0, cuts)?;
    }
    let order = in_cutting_order(strips);
    for (number, strip) in order.iter().enumerate() {
        let layers: Vec<Units> = strip.layers.iter().map(|layer| layer.thickness).collect();
        if let Some(resaw) = rip.resaw.as_ref().filter(|_| layers != [size.thickness]) {
            let loss = (resaw.near_face, resaw.kerf);
            split((Piece::Face, Piece::Layer), size.thickness, layers, loss, number, cuts)?;
        }
    }
    let rows = order.iter().flat_map(|strip| strip.layers.iter());
    for (row, layer) in rows.enumerate() {
        along(job, view, whole(job, &layer.parts)?, row, cuts)?;
    }
    Some(())
}

fn rips(
    width: Units,
    widths: Vec<Units>,
    rip: &RipRules,
    from: usize,
    cuts: &mut Vec<Cut>,
) -> Option<()> {
    split((Piece::Edge, Piece::Strip), width, widths, (rip.near_edge, rip.kerf), from, cuts)
}

/// Divides an extent: the near side is cleaned, then the sizes come off, all of one size together, the largest first.
fn split(
    (side, piece): (Piece, Piece),
    extent: Units,
    mut sizes: Vec<Units>,
    (clean, kerf): (Units, Units),
    from: usize,
    cuts: &mut Vec<Cut>,
) -> Option<()> {
    let mut filled = clean.checked_sub(kerf)?;
    if clean > 0 {
        let setting = extent.checked_sub(clean)?;
        cuts.push(Cut { piece: side, setting, at: None, from, pieces: 1, passes: 1 });
    }
    crate::order::sort_by(&mut sizes, |a, b| b.cmp(a));
    let first = cuts.len();
    for size in sizes {
        filled = filled.checked_add(size)?.checked_add(kerf)?;
        match cuts.get_mut(first..).and_then(<[Cut]>::last_mut) {
            Some(known) if known.setting == size => {
                known.pieces = known.pieces.checked_add(1)?;
                known.passes = known.pieces;
            }
            _ => cuts.push(Cut { piece, setting: size, at: None, from, pieces: 1, passes: 1 }),
        }
    }
    if let Some(last) = cuts.last_mut().filter(|_| filled == extent) {
        last.passes = last.passes.saturating_sub(1);
    }
    Some(())
}
