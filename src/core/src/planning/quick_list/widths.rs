//! The widths of a list: which board is wide enough for which piece, and what is in the way.

use super::{BOARDS, List, PARTS, SCRAPS, Trouble, is_there};
use crate::calculators::resaw_rip::saw::SHORTEST;
use crate::measure::Length;
use crate::say;
use crate::sheet::CutPiece;

impl List {
    /// The widths of boards and scraps, each once, the narrowest first; none where the list knows lengths only.
    fn stock_widths(&self) -> Vec<Length> {
        let boards = self.boards.iter().map(|board| board.width);
        let all = boards.chain(self.scraps.iter().map(|scrap| scrap.width)).flatten();
        distinct(all.collect())
    }

    /// The width of a piece: its own, or that of all boards.
    pub(super) fn width_of(&self, part: &CutPiece) -> Option<Length> {
        part.width.or_else(|| self.stock_widths().first().copied())
    }

    /// Every width of the list, each once.
    pub(super) fn widths(&self) -> Vec<Length> {
        let parts = self.parts.iter().filter_map(|part| part.width);
        distinct(self.stock_widths().into_iter().chain(parts).collect())
    }

    /// Whether a piece can be ripped from a wider board.
    pub(super) fn rips(&self) -> bool {
        let widest = self.stock_widths().last().copied();
        self.parts.iter().any(|part| self.width_of(part) < widest)
    }

    /// The longest that a board gives for a piece: one of its width, or a wider one that can be ripped.
    pub(super) fn longest_for(&self, part: &CutPiece) -> Option<Length> {
        let wanted = self.width_of(part);
        let can = |width: Option<Length>, length: Length| {
            width == wanted || width > wanted && length >= SHORTEST && wanted >= Some(self.thinnest)
        };
        let boards = self.boards.iter().filter(|board| is_there(board));
        let boards = boards.filter(|board| can(board.width, board.length));
        let scraps = self.scraps.iter().filter(|scrap| can(scrap.width, scrap.length));
        let boards = boards.filter_map(|board| self.clear(board));
        boards.chain(scraps.map(|scrap| scrap.length)).max()
    }

    pub(super) fn trouble_with_widths(&self) -> Option<Trouble> {
        if self.widths().is_empty() {
            return None;
        }
        let boards = self.boards.iter().map(|board| (&BOARDS, board.length, board.width));
        let scraps = self.scraps.iter().map(|scrap| (&SCRAPS, scrap.length, scrap.width));
        let bare = boards.chain(scraps).find(|(_, _, width)| width.is_none());
        if let Some((field, length, _)) = bare {
            let words = say![
                length,
                " has no width. Write how wide each board is, as in 96 wide 5 1/2, or give none of them and no piece a width."
            ];
            return Some((field, "no-width", words));
        }
        let (widths, widest) = (self.stock_widths(), self.stock_widths().last().copied()?);
        let is_one = widths.len() == 1;
        if !is_one && self.boards.iter().any(|board| board.cents.is_none()) {
            let words = say!["Boards of several widths need prices, as in 96 wide 5 1/2 at 10.90."];
            return Some((&BOARDS, "no-price", words));
        }
        for part in &self.parts {
            let name = part.name.clone();
            let Some(width) = part.width else {
                if is_one {
                    continue;
                }
                let words = say![
                    name,
                    " has no width, and the boards have several. Write how wide it is, as in 33 wide 3 1/2."
                ];
                return Some((&PARTS, "no-width", words));
            };
            if width > widest {
                let words = say![
                    name,
                    " is ",
                    width,
                    " wide. The widest board is ",
                    widest,
                    ". Length goes first, then wide and the width; or add a wider board."
                ];
                return Some((&PARTS, "too-wide", words));
            }
            if width < self.thinnest && !widths.contains(&width) {
                let words = say![
                    name,
                    " is ",
                    width,
                    " wide. Your limit for a strip at the fence is ",
                    self.thinnest,
                    "."
                ];
                return Some((&PARTS, "too-narrow", words));
            }
        }
        None
    }
}

fn distinct(mut lengths: Vec<Length>) -> Vec<Length> {
    crate::order::sort(&mut lengths);
    lengths.dedup();
    lengths
}
