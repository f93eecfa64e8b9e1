//! Each board, strip and layer from its left end to its right, without a gap.

use super::seen::Seen;
use crate::cutting::{Layout, Placed, Units, in_cutting_order, run};
use crate::measure::Length;
use crate::say;
use crate::sheet::Sentence;

/// A whole board, or one of its strips or layers.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct RowCut {
    /// `Strip 1, 3 1/4 wide`; empty for a board that is only cut to length.
    pub title: Sentence,
    /// Width of a strip that is ripped.
    pub width: Option<Length>,
    /// Thickness of a layer that is resawn.
    pub thickness: Option<Length>,
    /// From the left end to the right, without a gap.
    pub stretches: Vec<Stretch>,
}

/// A stretch along a board, from its left end.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Stretch {
    /// What it becomes.
    pub what: What,
    /// Where it begins.
    pub from: Length,
    /// Where it ends.
    pub to: Length,
}

/// What a stretch of a board becomes.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum What {
    /// One piece of a part.
    Part {
        /// By its place in the cutting job.
        part: usize,
        /// Its name.
        name: String,
    },
    /// A block that is ripped into parts of its own length.
    Block {
        /// From 1.
        number: u32,
        /// Its parts from the near edge: place in the cutting job, name, and how far it reaches across.
        parts: Vec<(usize, String, Length)>,
    },
    /// Turned to dust.
    Kerf,
    /// Trimmed off an end.
    Trim,
    /// A place to keep out of, with the cut beside it.
    Knot,
    /// Left over.
    Leftover,
}

/// A row before it is put in inches.
pub(super) struct Row<'a> {
    /// `Strip 1`; empty for the whole board.
    pub(super) name: String,
    pub(super) width: Option<Units>,
    pub(super) thickness: Option<Units>,
    pub(super) pieces: Pieces<'a>,
}

/// What is cut off along a row.
pub(super) enum Pieces<'a> {
    Parts(&'a [Placed]),
    Blocks(&'a [crate::cutting::Block]),
}

/// The rows of a board in the order in which they are cut: the widest strip first.
pub(super) fn raw_rows<'a>(seen: &Seen<'a>) -> Vec<Row<'a>> {
    let whole = |pieces| Row { name: String::new(), width: None, thickness: None, pieces };
    match &seen.cut.layout {
        Layout::Crosscut(parts) => vec![whole(Pieces::Parts(parts))],
        Layout::CrosscutFirst(blocks) => vec![whole(Pieces::Blocks(blocks))],
        Layout::RipFirst(strips) => {
            let order = in_cutting_order(strips);
            let size = seen.job.section(seen.view.section).and_then(|section| section.size);
            let (wide, thick) = (size.map(|size| size.width), size.map(|size| size.thickness));
            let mut rows = Vec::new();
            for (number, strip) in (1_u32..).zip(order) {
                let width = Some(strip.width).filter(|width| Some(*width) != wide);
                for (layer_number, layer) in (1_u32..).zip(&strip.layers) {
                    let thickness =
                        Some(layer.thickness).filter(|thickness| Some(*thickness) != thick);
                    let name = match (width, thickness) {
                        (None, None) => String::new(),
                        (Some(_), None) => format!("Strip {number}"),
                        (None, Some(_)) => format!("Layer {layer_number}"),
                        (Some(_), Some(_)) => format!("Strip {number}, layer {layer_number}"),
                    };
                    let pieces = Pieces::Parts(&layer.parts);
                    rows.push(Row { name, width, thickness, pieces });
                }
            }
            rows
        }
    }
}

/// The rows with every stretch.
pub(super) fn rows(seen: &Seen<'_>) -> Option<Vec<RowCut>> {
    raw_rows(seen)
        .iter()
        .map(|row| {
            let width = row.width.map(|width| seen.length(width));
            let thickness = row.thickness.map(|thickness| seen.length(thickness));
            let (width, thickness) = (flat(width)?, flat(thickness)?);
            let mut title = Sentence::default();
            if !row.name.is_empty() {
                title = say![row.name.clone()];
                if let Some(width) = width {
                    title.0.extend(say![", ", width, " wide"].0);
                }
                if let Some(thickness) = thickness {
                    title.0.extend(say![", ", thickness, " thick"].0);
                }
            }
            Some(RowCut { title, width, thickness, stretches: stretches(seen, row)? })
        })
        .collect()
}

/// Turns a value that may be missing, and may be out of range when it is there, inside out.
fn flat(value: Option<Option<Length>>) -> Option<Option<Length>> {
    match value {
        Some(Some(length)) => Some(Some(length)),
        Some(None) => None,
        None => Some(None),
    }
}

/// From, to, and what it becomes.
pub(super) type Span = (Units, Units, What);

/// The pieces of a row, left to right.
pub(super) fn spans(seen: &Seen<'_>, row: &Row<'_>) -> Option<Vec<Span>> {
    let mut spans = match row.pieces {
        Pieces::Parts(parts) => {
            let span = |placed: &Placed| {
                let part = seen.job.parts.get(placed.part)?;
                let to = placed.at.checked_add(run(seen.job, part, placed.turned))?;
                let name = seen.part_name(placed.part)?.to_owned();
                Some((placed.at, to, What::Part { part: placed.part, name }))
            };
            parts.iter().map(span).collect::<Option<Vec<Span>>>()?
        }
        Pieces::Blocks(blocks) => {
            let mut spans = Vec::new();
            for (number, block) in (1_u32..).zip(blocks) {
                let mut parts = Vec::new();
                for placed in &block.parts {
                    let across = across(seen, placed)?;
                    let name = seen.part_name(placed.part)?.to_owned();
                    parts.push((placed.part, name, seen.length(across)?));
                }
                let to = block.at.checked_add(block.length)?;
                // A block of one part as wide as the board is that part.
                let size = seen.job.section(seen.view.section).and_then(|section| section.size);
                let what = match (parts.as_slice(), block.parts.as_slice()) {
                    ([(part, name, _)], [placed])
                        if across(seen, placed) == size.map(|size| size.width) =>
                    {
                        What::Part { part: *part, name: name.clone() }
                    }
                    _ => What::Block { number, parts },
                };
                spans.push((block.at, to, what));
            }
            spans
        }
    };
    crate::order::sort_by(&mut spans, |a, b| a.0.cmp(&b.0));
    Some(spans)
}

/// How far a placed part reaches across its board.
fn across(seen: &Seen<'_>, placed: &Placed) -> Option<Units> {
    crate::cutting::across(seen.job, seen.job.parts.get(placed.part)?, placed.turned)
}

fn stretches(seen: &Seen<'_>, row: &Row<'_>) -> Option<Vec<Stretch>> {
    let (view, kerf) = (seen.view, seen.job.saw.kerf);
    let (start, end) = (view.trims.left, view.length.checked_sub(view.trims.right)?);
    let spans = spans(seen, row)?;
    let mut all: Vec<Span> = vec![(0, start, What::Trim)];
    let mut at = start;
    for (from, to) in view.segments(kerf) {
        all.push((at, from, What::Knot));
        at = from;
        for (begin, finish, what) in spans.iter().filter(|span| span.0 >= from && span.1 <= to) {
            all.push((at, *begin, What::Leftover));
            all.push((*begin, *finish, what.clone()));
            let next = spans.iter().map(|span| span.0).find(|next| *next >= *finish);
            let free = next.filter(|next| *next < to).unwrap_or(to);
            at = free.min(finish.checked_add(kerf)?);
            all.push((*finish, at, What::Kerf));
        }
        all.push((at, to, What::Leftover));
        at = to;
    }
    all.push((at, end, What::Knot));
    all.push((end, view.length, What::Trim));
    let stretch = |(from, to, what): Span| {
        Some(Stretch { what, from: seen.length(from)?, to: seen.length(to)? })
    };
    all.into_iter().filter(|(from, to, _)| to > from).map(stretch).collect()
}
