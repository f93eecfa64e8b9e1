//! A piece that is spoiled, of which something is left that can still be used.

use super::ways::{again, on_the_rack};
use crate::job::{Dimension, Item, ItemId, Job, Part, Reckoned, Step};
use crate::measure::Length;
use crate::measure::text::exact_text;
use crate::say;
use crate::sheet::{Ask, Field, Refusal, WayOut};

/// How long a cut piece is: the most that can be left of it. `None` where nothing of it can go on the rack.
#[must_use]
pub fn most_left(job: &Job, reckoned: &Reckoned, id: ItemId, index: usize) -> Option<Length> {
    let Item::Part(part) = job.item(id)? else { return None };
    let piece = part.piece(index);
    let most = piece.size(Dimension::Length, reckoned)?.ok().filter(|_| piece.is_cut())?;
    on_the_rack(job, reckoned, part, &[index], None).map(|_| most)
}

/// The length that is left of a piece, as it is written in a field: no longer than the piece was.
pub fn length_left(ask: &mut Ask, field: &Field, most: Length) -> Option<Length> {
    if ask.text(field).trim().is_empty() {
        let way = say!["Where nothing of it can be used, only cut another."];
        let words = say!["Write how long it is."];
        ask.keep(Refusal::at(field, "empty", words, WayOut::advice(way)));
        return None;
    }
    let left = ask.length(field)?;
    if left > most {
        let words = say!["The piece was ", most, " long, so no more is left of it."];
        let way = WayOut::at_most("Use ", most, " or less.", field);
        ask.keep(Refusal::at(field, "longer-than-piece", words, way));
        return None;
    }
    Some(left)
}

/// The step by which a spoiled piece is wanted once more, and a board so long goes on the rack. `None` where the piece was
/// not so long, or nothing of it can go there.
#[must_use]
pub fn spoiling(
    job: &Job,
    reckoned: &Reckoned,
    (id, index): (ItemId, usize),
    left: Length,
) -> Option<Step> {
    most_left(job, reckoned, id, index).filter(|most| left.is_positive() && left <= *most)?;
    let Item::Part(part) = job.item(id)? else { return None };
    let mut changes = vec![again(job, reckoned, id, part, &[index])];
    changes.extend(on_the_rack(job, reckoned, part, &[index], Some(left))?);
    let Part { name, .. } = part;
    Some(Step::new(format!("spoiled: {name}, {} is left", exact_text(left)), changes))
}
