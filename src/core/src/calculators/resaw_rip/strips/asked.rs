//! A board and the strips wanted from it.

use super::super::saw::Saw;
use crate::measure::{Length, Tape};

/// Which strips are wanted. Widths are finished widths, after planing or sanding.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Plan {
    /// As many of this width as there are in the board.
    Fit(Length),
    /// So many of one width, as wide as the board gives.
    Equal(u32),
    /// These widths; they are cut widest first, equal ones together.
    List(Vec<Length>),
}

/// What becomes of the edge opposite the first.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum OtherEdge {
    /// Round or rough, and it stays so.
    Raw,
    /// Straight and clean already.
    Clean,
    /// Round or rough, and as much is kept off it as off the first edge.
    Cut,
}

/// Where a strip is when it comes off.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Falls {
    /// Between blade and fence.
    AtFence,
    /// On the far side of the blade.
    FarSide,
}

/// A board and the strips wanted from it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Input {
    /// Depth of every cut.
    pub thickness: Length,
    /// Width at the narrowest.
    pub width: Length,
    /// The strips.
    pub plan: Plan,
    /// What cleaning the first edge takes off, kerf and all; zero for an edge that is good.
    pub first_edge: Length,
    /// The edge opposite.
    pub other_edge: OtherEdge,
    /// Left on each sawn face for planing or sanding.
    pub allowance: Length,
    /// Where the strips come off.
    pub falls: Falls,
    /// The tape whose marks the fence is set to in an equal split.
    pub tape: Tape,
    /// The saw.
    pub saw: Saw,
}
