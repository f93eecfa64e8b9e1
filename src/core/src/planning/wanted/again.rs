//! Which board one more piece of a part could be cut from, and what it costs.

use super::part::read_part;
use super::sections::{lying, obstacle};
use super::stock::boards;
use super::{Named, OPTIONS, Options, options, start_entries};
use crate::job::sections::reads;
use crate::job::{Item, ItemId, Job, Reckoned};
use crate::measure::Length;
use crate::sheet::{Ask, Bench};

/// A board that gives pieces once more.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct FromBoard {
    /// The board of the rack or of the yard.
    pub item: ItemId,
    /// Its name, or its section.
    pub name: String,
    /// How long it is.
    pub length: Length,
    /// How many of them it takes.
    pub boards: u32,
    /// What they cost in hundredths of money; nothing where it is on the rack.
    pub cents: Option<i64>,
}

/// The board for so many more pieces of a part: the shortest of the rack that gives them all, else the
/// cheapest of the yard. Boards with places to keep out of are left for the planner. `None` where no
/// board gives them, or the part has no size.
#[must_use]
pub fn board_for(
    job: &Job,
    reckoned: &Reckoned,
    bench: &Bench,
    part: ItemId,
    pieces: u32,
) -> Option<FromBoard> {
    let entries = start_entries(job);
    let options = options(&mut Ask::new(OPTIONS.fields, &entries, bench, reckoned))?;
    let Item::Part(item) = job.item(part)? else { return None };
    let named = Named { item: part, name: item.name.clone() };
    let wanted = read_part(named, item, reckoned.part(part)?).ok()?;
    let section = reads(&wanted.stock);
    let mut found: Option<(Rank, FromBoard)> = None;
    for raw in boards(job, &options) {
        if !wanted.takes_any() && reads(raw.section) != section {
            continue;
        }
        let Ok(board) = raw.read(reckoned, bench) else { continue };
        let size = lying(&wanted, &[&board]);
        if !board.knots.is_empty() || obstacle(&wanted, size, &board, &options, bench) != Ok(None) {
            continue;
        }
        let trim = if board.sawn_ends { Length::ZERO } else { options.end_trim };
        let Some(each) = fit(&options, trim, board.length, wanted.length) else { continue };
        let count = pieces.div_ceil(each);
        let cents = match board.on_hand {
            Some(there) if there >= count => None,
            Some(_) => continue,
            None if board.limit.is_some_and(|most| most < count) => continue,
            None => Some(board.price_cents.checked_mul(count.into())?),
        };
        let rank = Rank { cents: cents.unwrap_or(0), length: board.length };
        if found.as_ref().is_none_or(|(known, _)| rank < *known) {
            let Named { item, name } = board.named;
            found =
                Some((rank, FromBoard { item, name, length: board.length, boards: count, cents }));
        }
    }
    found.map(|(_, board)| board)
}

/// The rack costs nothing; of what costs the same, the shorter.
#[derive(PartialEq, Eq, PartialOrd, Ord)]
struct Rank {
    cents: i64,
    length: Length,
}

/// How many pieces of a length one board gives; `None` for not one.
fn fit(options: &Options, trim: Length, board: Length, piece: Length) -> Option<u32> {
    let clear = ((board - trim).ok()? - trim).ok()?;
    let each = ((clear + options.kerf).ok()? / (piece + options.kerf).ok()?).ok()?;
    u32::try_from(each.floor()).ok().filter(|count| *count > 0)
}
