//! How far a screw stays from ends, edges and its neighbours.

mod sheet;

pub(super) use sheet::work;

use super::Wood;
use super::fields::BOARD_WIDTH;
use crate::measure::{Length, OutOfRange, Rounding};
use crate::say;
use crate::sheet::{Refusal, Refused, WayOut};
use crate::tables::fasteners::{Fastener, Spacing, spacing};

/// What to place.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Input {
    /// Screw, lag screw or nail.
    pub fastener: Fastener,
    /// The wood.
    pub wood: Wood,
    /// Pilot holes are drilled.
    pub drilled: bool,
    /// The piece under the head is a steel plate or bracket.
    pub steel_plate: bool,
    /// Width of the board, edge to edge.
    pub board_width: Length,
}

/// Least distances, from the centre of each screw.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Answer {
    /// The same in halves of a diameter.
    pub halves: Spacing,
    /// From an edge.
    pub edge: Length,
    /// From an end that the load pulls towards.
    pub end_pulled: Length,
    /// From an end that the load pushes away from.
    pub end_pushed: Length,
    /// Screw to screw along the grain.
    pub along: Length,
    /// Screw to screw across the grain.
    pub across: Length,
    /// Row to row, screws side by side.
    pub rows: Length,
    /// Row to row, screws staggered.
    pub rows_staggered: Length,
    /// Rows side by side that the board takes.
    pub n_rows: u32,
}

/// Least distances of screws, in diameters of the shank.
///
/// Rows that fit: floor((width - 2 × edge) ÷ row distance) + 1.
///
/// # Errors
///
/// `board-too-narrow`, beside its width: narrower than two edge distances.
///
/// # Source
///
/// NDS 2018 Commentary, Tables C12.1.5.7 and C12.1.6.6: **advice** for fasteners under 1/4 in, not
/// a rule. Lag screws: NDS 2018 Tables 12.5.1A to E, full value.
pub fn reckon(input: &Input) -> Result<Answer, Refused> {
    let fastener = input.fastener;
    let halves =
        spacing(fastener.is_large(), input.steel_plate, input.drilled, input.wood.hardwood);
    let edge = fastener.diameters(halves.edge)?;
    let both_edges = (edge * 2)?;
    if input.board_width < both_edges {
        Err(Refusal::at(
            &BOARD_WIDTH,
            "board-too-narrow",
            say![
                "A board of ",
                input.board_width,
                " is narrower than two edge distances, ",
                (both_edges, Rounding::Up),
                "."
            ],
            WayOut::set(
                say!["Use a board of ", (both_edges, Rounding::Up), ", or a thinner screw."],
                &BOARD_WIDTH,
                (both_edges, Rounding::Up),
            ),
        ))?;
    }
    let rows = fastener.diameters(halves.rows)?;
    let more = ((input.board_width - both_edges)? / rows)?.floor();
    let n_rows = u32::try_from(more.saturating_add(1)).map_err(|_| OutOfRange)?;
    Ok(Answer {
        halves,
        edge,
        end_pulled: fastener.diameters(halves.end_pulled)?,
        end_pushed: fastener.diameters(halves.end_pushed)?,
        along: fastener.diameters(halves.along)?,
        across: fastener.diameters(halves.across)?,
        rows,
        rows_staggered: fastener.diameters(halves.rows_staggered)?,
        n_rows,
    })
}
