//! Offcuts worth keeping, ready to be put on the rack.

use super::seen::{How, Seen};
use crate::calculators::resaw_rip::saw::NARROWEST;
use crate::cutting::{Layout, Plan};
use crate::job::RackBoard;
use crate::measure::{Length, text::exact_text};
use crate::say;
use crate::sheet::Sentence;

/// Offcuts worth keeping, all alike and from one board.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Keep {
    /// By its place in the plan.
    pub board: usize,
    /// Its length.
    pub length: Length,
    /// Its width, where it is not that of its board.
    pub width: Option<Length>,
    /// How many.
    pub count: u32,
    /// `1 × 34 1/2 from board 2`.
    pub sentence: Sentence,
    /// The board to put on the rack; `None` for a quick list, which knows neither width nor thickness.
    pub rack: Option<RackBoard>,
}

/// The offcuts of one board that are at least as long as is worth keeping.
pub(super) fn of_board(seen: &Seen<'_>, plan: &Plan, how: How) -> Option<Vec<Keep>> {
    let board = usize::try_from(seen.number).ok()?.checked_sub(1)?;
    let mut keeps: Vec<Keep> = Vec::new();
    let own_width = seen.job.section(seen.view.section)?.size.map(|size| size.width);
    let own = Plan { boards: vec![plan.boards.get(board)?.clone()], ..Plan::default() };
    for offcut in own.offcuts(seen.job) {
        let length = seen.length(offcut.length)?;
        if length < how.keep_from {
            continue;
        }
        let ripped = offcut.width.filter(|width| Some(*width) != own_width);
        let width = match ripped {
            Some(width) => Some(seen.length(width)?),
            None => None,
        };
        let mut size = seen.section.size;
        if let (Some(size), Some(width)) = (&mut size, width) {
            size.1 = width;
        }
        if let (Some(size), Some(thickness)) = (&mut size, offcut.thickness) {
            size.0 = seen.length(thickness)?;
        }
        add(&mut keeps, seen, Left { board, length, width, size, knots: String::new() });
    }
    if seen.length(seen.view.length)? >= how.keep_from {
        for size in beside(seen)? {
            let mut knots = Vec::new();
            for knot in seen.view.knots {
                let (from, to) = (seen.length(knot.from)?, seen.length(knot.to)?);
                knots.push(format!("{} to {}", exact_text(from), exact_text(to)));
            }
            let whole = seen.length(seen.view.length)?;
            // A quick list does not know how thick it is.
            let known = seen.section.size.map(|_| size);
            let left = Left {
                board,
                length: whole,
                width: Some(size.1),
                size: known,
                knots: knots.join(", "),
            };
            add(&mut keeps, seen, left);
        }
    }
    Some(keeps)
}

/// What is left beside the strips, along the whole board: thickness and width.
fn beside(seen: &Seen<'_>) -> Option<Vec<(Length, Length)>> {
    let (Layout::RipFirst(strips), Some(rip)) = (&seen.cut.layout, &seen.job.saw.rip) else {
        return Some(Vec::new());
    };
    let size = seen.job.section(seen.view.section)?.size?;
    let last = strips.iter().map(|strip| strip.at.saturating_add(strip.width)).max()?;
    let is_whole = last == size.width;
    let left = size.width.checked_sub(last)?.checked_sub(rip.kerf)?;
    let width = if is_whole || left <= 0 { Length::ZERO } else { seen.length(left)? };
    let mut all = Vec::new();
    if width >= NARROWEST {
        all.push((seen.length(size.thickness)?, width));
    }
    for (strip, resaw) in strips.iter().filter_map(|s| rip.resaw.as_ref().map(|r| (s, r))) {
        let last = strip.layers.iter().map(|l| l.at.saturating_add(l.thickness)).max()?;
        let left = size.thickness.checked_sub(last)?.checked_sub(resaw.kerf)?;
        if left > 0 && seen.length(left)? >= NARROWEST {
            all.push((seen.length(left)?, seen.length(strip.width)?));
        }
    }
    Some(all)
}

/// One offcut.
struct Left {
    board: usize,
    length: Length,
    /// Where it is not that of the board.
    width: Option<Length>,
    /// Thickness and width, where they are known.
    size: Option<(Length, Length)>,
    knots: String,
}

fn add(keeps: &mut Vec<Keep>, seen: &Seen<'_>, left: Left) {
    let Left { board, length, width, size, knots } = left;
    // A strip that runs the whole board still has the ends of the board.
    let sawn_ends = seen.length(seen.view.length) != Some(length);
    let rack = size.map(|(thickness, width)| RackBoard {
        name: format!("offcut of {}", seen.label.name),
        section: seen.section.name.clone(),
        thickness: exact_text(thickness),
        width: exact_text(width),
        length: exact_text(length),
        quantity: 1,
        wet: false,
        sawn_ends,
        knots,
    });
    let alike = |keep: &&mut Keep| {
        (keep.length, keep.width) == (length, width) && same_rack(&keep.rack, &rack)
    };
    if let Some(keep) = keeps.iter_mut().find(alike) {
        keep.count = keep.count.saturating_add(1);
        if let Some(rack) = &mut keep.rack {
            rack.quantity = keep.count;
        }
        keep.sentence = sentence(seen, keep.count, length, (width, size));
        return;
    }
    let sentence = sentence(seen, 1, length, (width, size));
    keeps.push(Keep { board, length, width, count: 1, sentence, rack });
}

fn same_rack(a: &Option<RackBoard>, b: &Option<RackBoard>) -> bool {
    match (a, b) {
        (Some(a), Some(b)) => RackBoard { quantity: 1, ..a.clone() } == *b,
        (None, None) => true,
        _ => false,
    }
}

fn sentence(
    seen: &Seen<'_>,
    count: u32,
    length: Length,
    (width, size): (Option<Length>, Option<(Length, Length)>),
) -> Sentence {
    let from = format!(" from board {}", seen.number);
    match (size.filter(|size| seen.section.size != Some(*size)), width) {
        (Some((thickness, width)), _) => {
            say![count, " × ", length, ", ", thickness, " by ", width, ",", from]
        }
        (None, Some(width)) if size.is_none() => {
            say![count, " × ", length, ", ", width, " wide,", from]
        }
        (None, _) => say![count, " × ", length, from],
    }
}
