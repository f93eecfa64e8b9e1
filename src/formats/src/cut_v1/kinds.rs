//! What the fields of a job and a plan may hold.

use reckoner_core::cutting::{LARGEST_PRICE_CENTS, LARGEST_QUANTITY, LARGEST_UNITS};

use crate::json::{Fault, Kind, Value};

/// Most kinds of parts, boards, scraps or sections in one job.
pub const MOST_CUT_LINES: usize = 10_000;
/// Most pieces of a plan, counted in any of its lists.
pub(super) const MOST_PIECES: usize = LARGEST_QUANTITY as usize;
/// Longest id or name, in characters.
pub(super) const MOST_TEXT: usize = 500;

/// A name.
pub(super) const TEXT: Kind = Kind::Text(MOST_TEXT);
/// A length may be wrong for a job, and then the job says so; it is never so large that sums overflow.
pub(super) const UNITS: Kind = Kind::Whole(-(LARGEST_UNITS as i128), LARGEST_UNITS as i128);
/// A sum of prices.
pub(super) const CENTS: Kind =
    Kind::Whole(0, LARGEST_PRICE_CENTS as i128 * LARGEST_QUANTITY as i128);
/// A place in a list.
pub(super) const PLACE: Kind = Kind::Whole(0, u32::MAX as i128);

/// A place in a list of the job.
pub(super) fn place(value: Value, length: usize, what: &'static str) -> usize {
    let at = value.int();
    if at >= length {
        value.faults.add(Fault::NotThere(what));
    }
    at
}
