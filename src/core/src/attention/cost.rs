//! What a way out costs in boards and money.

use super::{Does, Fact};
use crate::job::{ItemId, Job, Reckoned};
use crate::planning::wanted::board_for;
use crate::say;
use crate::sheet::{Bench, Sentence, money};

/// What a way out of a fact costs, where that can be said: the board that pieces are cut again from, and
/// its price. `None` where it is no matter of boards, or nothing is known of them.
#[must_use]
pub fn cost(
    job: &Job,
    reckoned: &Reckoned,
    bench: &Bench,
    fact: &Fact,
    does: Does,
) -> Option<Sentence> {
    match (does, fact) {
        (
            Does::CutAgain | Does::CutAgainFromRack,
            Fact::Off { part, pieces, .. } | Fact::NotRecorded { part, pieces },
        ) => Some(again(job, reckoned, bench, *part, pieces.len())),
        (Does::Trim(_) | Does::Leave, _) => Some(say!["Takes no board and no money."]),
        _ => None,
    }
}

fn again(job: &Job, reckoned: &Reckoned, bench: &Bench, part: ItemId, pieces: usize) -> Sentence {
    let pieces = u32::try_from(pieces).unwrap_or(u32::MAX);
    let Some(found) = board_for(job, reckoned, bench, part, pieces) else {
        return say!["No board on the rack or at the yard is known to give it."];
    };
    match found.cents {
        None => say!["From the rack: ", found.name, ", ", found.length, " long."],
        Some(cents) => say![
            format!("From the yard: {} × {}, ", found.boards, found.name),
            found.length,
            " long, ",
            money(cents),
            "."
        ],
    }
}
