//! [`Piece`]: what was done of one piece of a part, and how large it really is.
//!
//! A tick freezes the sizes as they were wanted at that moment: a plan can change for free, a cut
//! cannot. A piece that was ticked without sizes, as in files of before, has none: nobody may take
//! it as right until it is measured.

use std::sync::Arc;

use crate::measure::Length;

/// One of the three sizes of a piece.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Dimension {
    /// Thickness.
    Thickness,
    /// Width.
    Width,
    /// Length, along the grain.
    Length,
}

impl Dimension {
    /// All three, in the order in which a size is said.
    pub const ALL: [Dimension; 3] = [Dimension::Thickness, Dimension::Width, Dimension::Length];

    /// `length`
    #[must_use]
    pub fn word(self) -> &'static str {
        match self {
            Dimension::Thickness => "thickness",
            Dimension::Width => "width",
            Dimension::Length => "length",
        }
    }
}

/// Something for each of the three sizes.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Default)]
pub struct Dimensions<T> {
    /// Of the thickness.
    pub thickness: T,
    /// Of the width.
    pub width: T,
    /// Of the length.
    pub length: T,
}

impl<T> Dimensions<T> {
    /// One after the other.
    pub fn of(mut one: impl FnMut(Dimension) -> T) -> Dimensions<T> {
        let (thickness, width) = (one(Dimension::Thickness), one(Dimension::Width));
        Dimensions { thickness, width, length: one(Dimension::Length) }
    }

    /// That of one of them.
    pub fn get(&self, of: Dimension) -> &T {
        match of {
            Dimension::Thickness => &self.thickness,
            Dimension::Width => &self.width,
            Dimension::Length => &self.length,
        }
    }

    fn get_mut(&mut self, of: Dimension) -> &mut T {
        match of {
            Dimension::Thickness => &mut self.thickness,
            Dimension::Width => &mut self.width,
            Dimension::Length => &mut self.length,
        }
    }
}

/// How far a piece is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Default)]
pub enum PieceState {
    /// Not touched yet.
    #[default]
    ToCut,
    /// Cut.
    Cut,
    /// It was cut, and is wanted once more: spoiled, or not the size wanted.
    Again,
}

/// Lengths, where they are known. Shared, because the pieces of a part mostly have the same.
pub type Known = Option<Arc<Dimensions<Option<Length>>>>;

/// One piece of a part. So small because a job may have 200,000; what is rare is kept apart.
#[derive(Clone, Debug, PartialEq, Eq, Default)]
pub struct Piece {
    /// How far it is.
    pub(super) state: PieceState,
    /// The sizes wanted when it was ticked; of one to be cut again: what it was.
    pub(super) recorded: Known,
    /// What the tape says of it, as typed.
    pub(super) tape: Option<Box<Dimensions<Option<String>>>>,
    /// By how much it is off where somebody said to leave it so, signed.
    pub(super) left: Known,
    /// Where a shim fills what it is left short of.
    pub(super) shims: Dimensions<bool>,
}

impl Piece {
    /// A piece that is cut, with the sizes it was cut at, as far as they are known.
    #[must_use]
    pub fn cut(sizes: Dimensions<Option<Length>>) -> Piece {
        Piece { state: PieceState::Cut, recorded: known(sizes), ..Piece::default() }
    }

    /// A piece as it is stored: a piece that is still to cut has no size.
    #[must_use]
    pub fn stored(
        state: PieceState,
        recorded: Known,
        tape: Dimensions<Option<String>>,
        (left, shims): (Known, Dimensions<bool>),
    ) -> Piece {
        let recorded = recorded.filter(|_| state != PieceState::ToCut);
        let mut piece = Piece { state, recorded, tape: None, left, shims };
        for of in Dimension::ALL {
            piece = piece.measured(of, tape.get(of).clone());
        }
        piece
    }

    /// How far it is.
    #[must_use]
    pub fn state(&self) -> PieceState {
        self.state
    }

    /// It is cut, and not wanted any more.
    #[must_use]
    pub fn is_cut(&self) -> bool {
        self.state == PieceState::Cut
    }

    /// Nothing was done of it.
    #[must_use]
    pub fn is_untouched(&self) -> bool {
        *self == Piece::default()
    }

    /// The size that was wanted when it was ticked; of one to be cut again, what it was.
    #[must_use]
    pub fn recorded(&self, of: Dimension) -> Option<Length> {
        *self.recorded.as_ref()?.get(of)
    }

    /// What the tape says, as typed.
    #[must_use]
    pub fn tape(&self, of: Dimension) -> Option<&str> {
        self.tape.as_ref()?.get(of).as_deref()
    }

    /// By how much it is off where somebody said to leave it so: below zero for too small.
    #[must_use]
    pub fn left(&self, of: Dimension) -> Option<Length> {
        *self.left.as_ref()?.get(of)
    }

    /// Whether a shim fills what it is left short of.
    #[must_use]
    pub fn has_shim(&self, of: Dimension) -> bool {
        *self.shims.get(of)
    }

    /// The piece with what the tape says; `None` takes it back.
    #[must_use]
    pub fn measured(mut self, of: Dimension, text: Option<String>) -> Piece {
        let mut tape = self.tape.take().unwrap_or_default();
        *tape.get_mut(of) = text;
        self.tape = Some(tape).filter(|tape| **tape != Dimensions::default());
        self
    }

    /// The piece ticked off, at sizes as they are wanted now. Who ticks one that was to be cut
    /// again has cut another.
    #[must_use]
    pub fn ticked(self, wanted: Dimensions<Option<Length>>) -> Piece {
        match self.state {
            PieceState::Cut => self,
            PieceState::Again => Piece::cut(wanted),
            PieceState::ToCut => Piece { tape: self.tape, ..Piece::cut(wanted) },
        }
    }

    /// The piece not ticked off: the tick was a slip. What was typed of it stays.
    #[must_use]
    pub fn put_back(self) -> Piece {
        Piece { tape: self.tape, ..Piece::default() }
    }

    /// The piece to be cut once more; it keeps the sizes that it had.
    #[must_use]
    pub fn again(sizes: Dimensions<Option<Length>>) -> Piece {
        Piece { state: PieceState::Again, recorded: known(sizes), ..Piece::default() }
    }

    /// The piece with one of its sizes known to be this: as trimmed, or as the plan says.
    #[must_use]
    pub fn at(mut self, of: Dimension, size: Length) -> Piece {
        let mut sizes = self.recorded.take().map(Arc::unwrap_or_clone).unwrap_or_default();
        *sizes.get_mut(of) = Some(size);
        self.recorded = known(sizes);
        self.measured(of, None).leaving(of, None)
    }

    /// The piece left off by so much; `None` looks at it again.
    #[must_use]
    pub fn leaving(mut self, of: Dimension, off: Option<Length>) -> Piece {
        let mut left = self.left.take().map(Arc::unwrap_or_clone).unwrap_or_default();
        *left.get_mut(of) = off;
        self.left = known(left);
        *self.shims.get_mut(of) = false;
        self
    }

    /// How it was left, and with what: one thing, said at once.
    pub(super) fn left_so(&self) -> (Known, Dimensions<bool>) {
        (self.left.clone(), self.shims)
    }

    /// The piece with nothing of it left as it is.
    pub(super) fn looked_at_again(self) -> Piece {
        Piece { left: None, shims: Dimensions::default(), ..self }
    }

    /// The piece left short by so much, with a shim that fills it.
    #[must_use]
    pub fn shimmed(mut self, of: Dimension, off: Option<Length>) -> Piece {
        self = self.leaving(of, off);
        *self.shims.get_mut(of) = true;
        self
    }
}

/// Lengths as a piece keeps them: nothing known takes no room.
#[must_use]
pub fn known(sizes: Dimensions<Option<Length>>) -> Known {
    (sizes != Dimensions::default()).then(|| Arc::new(sizes))
}
