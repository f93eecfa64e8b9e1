//! Strips from a board or a blank: how many, the fence for each cut, and what is left.
//!
//! # Rule
//!
//! With usable width U (the board less what is cleaned off its edges), strip w and kerf k, the
//! count is floor((U + k) ÷ (w + k)): the last strip needs no kerf after it. n equal strips that
//! fill U measure (U − (n − 1) k) ÷ n, and the fence is set on the mark at or below that, so that
//! all of them fit. A strip between blade and fence: fence = w, the cleaned edge at the fence. A
//! strip that falls on the far side: fence = what the board still measures − w − k, the cleaned
//! edge on the far side; the fence moves in by w + k.
//!
//! # Source
//!
//! Kerf arithmetic, worked by hand as case R1 in `tests/reference/resaw_rip.rs`. The limit for
//! thin strips is common practice; the user can change it.

mod asked;
mod layout;

pub use super::fields::MOST_STRIPS;
use super::fields::{BOARD_THICKNESS, BOARD_WIDTH};
use super::refused::add;
use super::saw::Sweep;
use crate::measure::{Length, OutOfRange};
use crate::sheet::Refused;
pub use asked::{Falls, Input, OtherEdge, Plan};
use layout::Layout;
pub use layout::{Band, Cut, Stretch};

/// A strip as it comes from the saw.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Strip {
    /// As sawn.
    pub sawn: Length,
    /// After planing or sanding both sawn faces.
    pub finished: Length,
}

/// The strips, the cuts and the leftover.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Answer {
    /// In the order they are cut.
    pub strips: Vec<Strip>,
    /// In order.
    pub cuts: Vec<Cut>,
    /// The board from its first edge to the other, without a gap.
    pub bands: Vec<Band>,
    /// How many fit by arithmetic alone, when as many as fit were asked for: more than `strips`
    /// when the last ones would leave the board too thin to run along the fence.
    pub fit_by_arithmetic: u32,
    /// Exact share of an equal split; the strips are sawn to the mark at or below it.
    pub share: Option<Length>,
    /// Zero when nothing is left.
    pub leftover: Length,
    /// Whether the leftover still has a raw edge.
    pub is_leftover_raw: bool,
    /// Whether the last strip keeps the raw edge, because nothing is cut off there.
    pub is_last_strip_raw: bool,
    /// Times the fence is set.
    pub n_settings: u32,
    /// How each cut goes through the thickness.
    pub sweep: Sweep,
    /// Passes over the blade.
    pub n_passes: u32,
}

/// The strips of a board.
///
/// # Errors
///
/// All that apply, with the nearest thing that works:
/// - `clean-up-takes-all`, `strip-too-wide`, `too-many-strips`, `no-room-for-strips`,
///   `list-too-wide`, `no-widths`
/// - `too-thin-at-fence`, `board-too-thin-at-fence`, and `cannot-reach` of [`Saw::sweep`](super::saw::Saw::sweep)
/// - `too-short`, `too-narrow`, `too-large` of [`Saw::unfit`](super::saw::Saw::unfit)
pub fn reckon(input: &Input) -> Result<Answer, Refused> {
    let sides = [(&BOARD_THICKNESS, input.thickness), (&BOARD_WIDTH, input.width)];
    let mut refusals = input.saw.unfit(sides);
    let sweep = input.saw.sweep(input.thickness).map_err(|refused| add(&mut refusals, refused));
    let layout = layout::lay_out(input).map_err(|refused| add(&mut refusals, refused));
    match (sweep, layout) {
        (Ok(sweep), Ok(layout)) if refusals.is_empty() => Ok(sum_up(input, layout, sweep)?),
        _ => Err(Refused::For(refusals)),
    }
}

fn sum_up(input: &Input, layout: Layout, sweep: Sweep) -> Result<Answer, OutOfRange> {
    let Layout { sawn, cuts, bands, leftover, share, fit_by_arithmetic } = layout;
    let allowance = (input.allowance * 2)?;
    let mut strips = Vec::new();
    for sawn in sawn {
        strips.push(Strip { sawn, finished: (sawn - allowance)? });
    }
    let n_settings = cuts.chunk_by(|a, b| a.fence == b.fence).count();
    let n_passes = u32::try_from(cuts.len()).unwrap_or(u32::MAX).saturating_mul(sweep.passes());
    let is_other_edge_raw = input.other_edge != OtherEdge::Clean;
    let ends_in_strip = matches!(bands.last(), Some(Band { stretch: Stretch::Strip(_), .. }));
    Ok(Answer {
        strips,
        cuts,
        bands,
        fit_by_arithmetic,
        share,
        leftover,
        is_leftover_raw: leftover.is_positive() && is_other_edge_raw,
        is_last_strip_raw: ends_in_strip && is_other_edge_raw,
        n_settings: u32::try_from(n_settings).unwrap_or(u32::MAX),
        sweep,
        n_passes,
    })
}
