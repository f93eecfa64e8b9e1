//! The checker's rules for ripping, resawing and crosscutting first (rules 5 to 8 of the problem).

use super::plan::{Block, Layer, Placed, Strip};
use super::problem::{CrossSize, Job, Part, ResawRules, RipRules, StockView, Units};
use super::rows::{Fault, check_along, check_row, part_of};

/// A placed piece seen in the board: its part and its three extents.
struct Piece<'a> {
    part: &'a Part,
    along: Units,
    across: Units,
    thick: Units,
}

fn look<'a>(
    job: &'a Job,
    board: usize,
    placed: &Placed,
    view: StockView<'_>,
) -> Result<Piece<'a>, Fault> {
    let part = part_of(job, board, placed)?;
    let wrong_stock = || Fault::WrongStock { board, part: part.id.clone() };
    let own = job.section(&part.section).ok_or_else(wrong_stock)?;
    let from = job.section(view.section).ok_or_else(wrong_stock)?;
    let size = own.size.ok_or_else(wrong_stock)?;
    if own.wood != from.wood {
        return Err(wrong_stock());
    }
    if placed.turned && !part.grain_free {
        return Err(Fault::TurnedGrain { board, part: part.id.clone() });
    }
    let (along, across) =
        if placed.turned { (size.width, part.length) } else { (part.length, size.width) };
    Ok(Piece { part, along, across, thick: size.thickness })
}

fn rules<'a>(
    job: &'a Job,
    board: usize,
    view: StockView<'_>,
) -> Result<(&'a RipRules, CrossSize), Fault> {
    let forbidden = Fault::RipForbidden { board };
    let rules = job.saw.rip.as_ref().ok_or_else(|| forbidden.clone())?;
    let size = job.section(view.section).and_then(|section| section.size);
    Ok((rules, size.ok_or(forbidden)?))
}

/// Rules 5, 6 and 8.
pub(super) fn check_rip_first(
    job: &Job,
    board: usize,
    strips: &[Strip],
    view: StockView<'_>,
) -> Result<(), Fault> {
    let (rip, size) = rules(job, board, view)?;
    let whole = matches!(strips, [only] if only.at == 0 && only.width == size.width);
    if !whole {
        let spans: Vec<_> = strips.iter().map(|s| (s.at, s.at + s.width)).collect();
        let end = size.width - rip.far_edge;
        check_row(board, &spans, rip.near_edge, end, rip.kerf)?;
        let too_narrow = strips.iter().any(|strip| strip.width < rip.least_width);
        if too_narrow || view.length < rip.least_length {
            return Err(Fault::BeyondSaw { board });
        }
    }
    for strip in strips {
        let layers = &strip.layers;
        let resawn =
            !matches!(layers.as_slice(), [l] if l.at == 0 && l.thickness == size.thickness);
        if resawn {
            let resaw = rip.resaw.as_ref().ok_or(Fault::ResawForbidden { board })?;
            if view.length < rip.least_length {
                return Err(Fault::BeyondSaw { board });
            }
            check_layers(board, resaw, strip, size.thickness)?;
        }
        for layer in layers {
            check_layer(job, board, view, strip.width, layer, !whole, resawn)?;
        }
    }
    Ok(())
}

fn check_layers(
    board: usize,
    resaw: &ResawRules,
    strip: &Strip,
    thickness: Units,
) -> Result<(), Fault> {
    let spans: Vec<_> =
        strip.layers.iter().map(|layer| (layer.at, layer.at + layer.thickness)).collect();
    let end = thickness - resaw.far_face;
    check_row(board, &spans, resaw.near_face, end, resaw.kerf)?;
    let too_thin = strip.layers.iter().any(|layer| layer.thickness < resaw.least_thickness);
    let too_wide = resaw.greatest_width.is_some_and(|most| strip.width > most);
    if too_thin || too_wide {
        return Err(Fault::BeyondSaw { board });
    }
    Ok(())
}

fn check_layer(
    job: &Job,
    board: usize,
    view: StockView<'_>,
    width: Units,
    layer: &Layer,
    ripped: bool,
    resawn: bool,
) -> Result<(), Fault> {
    let mut spans = Vec::with_capacity(layer.parts.len());
    for placed in &layer.parts {
        let piece = look(job, board, placed, view)?;
        if piece.across != width || piece.thick != layer.thickness {
            return Err(Fault::WrongSize { board, part: piece.part.id.clone() });
        }
        if ripped && !piece.part.may_rip {
            return Err(Fault::RipForbidden { board });
        }
        if resawn && !piece.part.may_resaw {
            return Err(Fault::ResawForbidden { board });
        }
        spans.push((placed.at, placed.at + piece.along));
    }
    check_along(job, board, view, &spans)
}

/// Rules 7 and 8.
pub(super) fn check_crosscut_first(
    job: &Job,
    board: usize,
    blocks: &[Block],
    view: StockView<'_>,
) -> Result<(), Fault> {
    let (rip, size) = rules(job, board, view)?;
    if !rip.crosscut_first {
        return Err(Fault::RipForbidden { board });
    }
    let along: Vec<_> = blocks.iter().map(|b| (b.at, b.at + b.length)).collect();
    check_along(job, board, view, &along)?;
    for block in blocks {
        let mut pieces = Vec::with_capacity(block.parts.len());
        for placed in &block.parts {
            let piece = look(job, board, placed, view)?;
            if piece.along != block.length || piece.thick != size.thickness {
                return Err(Fault::WrongSize { board, part: piece.part.id.clone() });
            }
            pieces.push((placed.at, piece));
        }
        let whole = matches!(pieces.as_slice(), [(0, only)] if only.across == size.width);
        if whole {
            continue;
        }
        if pieces.iter().any(|(_, piece)| !piece.part.may_rip) {
            return Err(Fault::RipForbidden { board });
        }
        let too_narrow = pieces.iter().any(|(_, p)| p.across < rip.least_width);
        if too_narrow || block.length < rip.least_length {
            return Err(Fault::BeyondSaw { board });
        }
        let spans: Vec<_> = pieces.iter().map(|(at, p)| (*at, at + p.across)).collect();
        let end = size.width - rip.far_edge;
        check_row(board, &spans, rip.near_edge, end, rip.kerf)?;
    }
    Ok(())
}
