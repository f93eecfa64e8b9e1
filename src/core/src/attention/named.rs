//! Things of a job by name.

use crate::job::{Item, ItemId, Job};

/// What an item is called.
pub(super) fn name(job: &Job, id: ItemId) -> String {
    job.item(id).map_or("", Item::name).to_owned()
}

/// `long rail 1, 2 and 4`
pub(super) fn pieces_of(job: &Job, part: ItemId, pieces: &[usize]) -> String {
    let mut all = name(job, part);
    for (at, index) in pieces.iter().enumerate() {
        let between = match at {
            0 => " ",
            _ if at.saturating_add(1) == pieces.len() => " and ",
            _ => ", ",
        };
        all.push_str(between);
        all.push_str(&index.saturating_add(1).to_string());
    }
    all
}
