//! The parts of a job and their pieces, and how large each is.

use super::{Dimension, Job, Part, PartSizes, Piece, PieceState, Reckoned};
use crate::measure::{Length, TextProblem};

impl Piece {
    /// What it is, once it was cut: what the tape says, else what it was ticked at. `None` where
    /// neither is known, and of a piece that is to be cut for the first time.
    #[must_use]
    pub fn size(&self, of: Dimension, job: &Reckoned) -> Option<Result<Length, TextProblem>> {
        match self.tape(of) {
            _ if self.state == PieceState::ToCut => None,
            Some(text) => Some(job.on_tape(text)),
            None => self.recorded(of).map(Ok),
        }
    }
}

impl Part {
    /// One of its pieces, counted from 0; one that nobody touched is to be cut.
    #[must_use]
    pub fn piece(&self, index: usize) -> Piece {
        self.pieces.get(index).cloned().unwrap_or_default()
    }

    /// The part with something else done to one piece of it. Pieces after the last one touched are
    /// not listed.
    #[must_use]
    pub fn with_piece(mut self, index: usize, piece: Piece) -> Part {
        let listed = index.saturating_add(1).max(self.pieces.len());
        self.pieces.resize(listed, Piece::default());
        if let Some(place) = self.pieces.get_mut(index) {
            *place = piece;
        }
        self
    }

    /// The part with the next piece ticked off at these sizes: one that is to be cut, in their
    /// order.
    #[must_use]
    pub fn with_next_cut(mut self, piece: Piece) -> Part {
        match self.pieces.iter_mut().find(|piece| !piece.is_cut()) {
            Some(place) => *place = piece,
            None => self.pieces.push(piece),
        }
        self
    }
}

/// The parts of a job in the order of the list.
#[must_use]
pub fn part_sizes(job: &Job, reckoned: &Reckoned) -> Vec<PartSizes> {
    job.parts().into_iter().filter_map(|(id, _)| reckoned.part(id).cloned()).collect()
}
