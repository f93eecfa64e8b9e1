//! The facts, found.

use super::fact::{Attention, Fact};
use super::unread::unread;
use crate::job::make_parts::behind;
use crate::job::moved::{is_cut, mismatches};
use crate::job::own_size::size_of;
use crate::job::{
    Dimension, Item, ItemId, Job, Measure, MeasureKind, Part, PartSizes, Piece, Reckoned,
};
use crate::measure::text::Quantity;
use crate::measure::{Length, Tape};
use crate::order::sort_by;
use crate::planning::no_longer_fits;
use crate::sheet::Bench;

/// Everything in a job that wants looking at.
#[must_use]
pub fn attention(job: &Job, reckoned: &Reckoned, bench: &Bench) -> Attention {
    let mut found = Attention::default();
    let close = close_enough(job, reckoned, bench.tape);
    for (id, part) in job.parts() {
        if let Some(sizes) = reckoned.part(id) {
            Pieces { id, part, sizes, reckoned, close, found: &mut found }.look();
        }
    }
    for (id, measure) in job.measures() {
        look_at_size(id, measure, (job, reckoned), close, &mut found);
    }
    for mismatch in mismatches(job, reckoned) {
        let left = match job.item(mismatch.group) {
            Some(Item::Match(group)) => group.left,
            _ => None,
        };
        let is_left = left == Some(mismatch.apart);
        found.add(Fact::Apart(mismatch), is_left);
    }
    if let Some((plan, changes)) = no_longer_fits(job, reckoned, bench) {
        found.facts.push(Fact::Plan { plan, changes });
    }
    for (kept, behind) in behind(job, reckoned, bench) {
        let is_left = matches!(job.item(kept), Some(Item::Kept(kept)) if behind.is_left(kept));
        found.add(Fact::Behind { kept, behind }, is_left);
    }
    unread(job, reckoned, bench, &mut found);
    for (kept, _) in job.kept() {
        let refused = reckoned.kept(kept).filter(|sheet| sheet.answer.is_none());
        if let Some(refusal) = refused.and_then(|sheet| sheet.refusals.first()) {
            found.facts.push(Fact::Refused { kept, why: refusal.sentence.clone() });
        }
    }
    let to_measure = job.measures().into_iter().filter(|(_, it)| it.is_to_measure());
    found.facts.extend(to_measure.map(|(size, _)| Fact::ToMeasure { size }));
    found
}

/// How far something may be off and count as right: what the job says, else half a mark of the
/// tape, which is as near as anybody can cut to it.
#[must_use]
pub fn close_enough(job: &Job, reckoned: &Reckoned, tape: Tape) -> Length {
    let said = job.items().find_map(|(_, item)| match item {
        Item::CloseEnough(it) => reckoned.on_tape(&it.size).ok(),
        _ => None,
    });
    let half = || (tape.graduation() / 2).unwrap_or(Length::ZERO);
    said.filter(|size| !size.is_negative()).unwrap_or_else(half)
}

/// Signed; `None` where it is close enough.
fn off(is: Length, wanted: Length, close: Length) -> Option<Length> {
    (is - wanted).ok().filter(|by| by.abs() > close)
}

/// Whether somebody said that a piece stays as it is.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Stays {
    No,
    AsItIs,
    WithShim,
}

/// The pieces of one part.
struct Pieces<'a> {
    id: ItemId,
    part: &'a Part,
    sizes: &'a PartSizes,
    reckoned: &'a Reckoned,
    close: Length,
    found: &'a mut Attention,
}

impl Pieces<'_> {
    fn look(&mut self) {
        let most = self.sizes.quantity.as_ref().map_or(usize::MAX, |count| *count as usize);
        let mut not_recorded = Vec::new();
        // In how they are off, so that alike ones are told once.
        let mut all: Vec<(Stays, Fact)> = Vec::new();
        let part = self.part;
        for (index, piece) in part.pieces.iter().enumerate().take(most) {
            if !piece.is_cut() {
                continue;
            }
            for of in Dimension::ALL {
                match piece.size(of, self.reckoned) {
                    Some(Ok(is)) => self.compare(index, piece, (of, is), &mut all),
                    // It says itself that it cannot be read.
                    Some(Err(_)) => {}
                    None if not_recorded.last() == Some(&index) => {}
                    None => not_recorded.push(index),
                }
            }
        }
        sort_by(&mut all, |a, b| order(&a.1).cmp(&order(&b.1)));
        for (stays, fact) in all {
            self.found.add(fact, stays != Stays::No);
        }
        if !not_recorded.is_empty() {
            let fact = Fact::NotRecorded { part: self.id, pieces: not_recorded };
            self.found.facts.push(fact);
        }
        let beyond = part.pieces.iter().enumerate().skip(most);
        let pieces: Vec<usize> =
            beyond.filter(|(_, piece)| piece.is_cut()).map(|(index, _)| index).collect();
        if !pieces.is_empty() {
            self.found.facts.push(Fact::NotWanted { part: self.id, pieces });
        }
    }

    fn compare(
        &self,
        index: usize,
        piece: &Piece,
        (of, is): (Dimension, Length),
        all: &mut Vec<(Stays, Fact)>,
    ) {
        let Some(wanted) = self.sizes.wanted(of) else { return };
        let Some(by) = off(is, wanted, self.close) else { return };
        let stays = match piece.left(of) == Some(by) {
            true if piece.has_shim(of) => Stays::WithShim,
            true => Stays::AsItIs,
            false => Stays::No,
        };
        let alike = all.iter_mut().find_map(|(known_stays, fact)| match fact {
            Fact::Off { pieces, of: known, is: known_is, .. }
                if (*known_stays, *known, *known_is) == (stays, of, is) =>
            {
                Some(pieces)
            }
            _ => None,
        });
        match alike {
            Some(pieces) => pieces.push(index),
            None => {
                let fact = Fact::Off { part: self.id, pieces: vec![index], of, is, wanted };
                all.push((stays, fact));
            }
        }
    }
}

/// The first piece first, of one piece the length last.
fn order(fact: &Fact) -> Option<(usize, Dimension)> {
    match fact {
        Fact::Off { pieces, of, .. } => Some((*pieces.first()?, *of)),
        _ => None,
    }
}

/// Whether a fact is that of the piece whose own size this is.
fn is_of_piece(
    job: &Job,
    reckoned: &Reckoned,
    fact: &Fact,
    (own, at, instead_of): (ItemId, Length, Length),
) -> bool {
    let Fact::Off { part, pieces, of, is, wanted } = fact else { return false };
    let is_so = pieces.len() == 1 && (*is, *wanted) == (at, instead_of);
    let of_all = || size_of(job, reckoned, *part, *of);
    is_so && of_all().is_some_and(|id| reckoned.needs(own).is_some_and(|it| it.contains(&id)))
}

fn look_at_size(
    id: ItemId,
    measure: &Measure,
    (job, reckoned): (&Job, &Reckoned),
    close: Length,
    found: &mut Attention,
) {
    let Some(state) = reckoned.measure(id).filter(|_| is_cut(measure)) else { return };
    if measure.kind != MeasureKind::Length {
        return;
    }
    // A size that is its own plan has no formula to disagree with.
    let has_formula = reckoned.needs(id).is_some_and(|needs| !needs.is_empty());
    match (&state.as_cut, &state.planned) {
        (None, _) => found.facts.push(Fact::SizeNotRecorded { size: id }),
        (Some(Ok(Quantity::Length(is))), Ok(Quantity::Length(wanted))) if has_formula => {
            if let Some(by) = off(*is, *wanted, close) {
                let is_left = measure.left == Some(by);
                // The own size of one piece says no more than the piece.
                let mut told = found.facts.iter().chain(&found.left);
                let is_of_piece =
                    |fact: &Fact| is_of_piece(job, reckoned, fact, (id, *is, *wanted));
                if !is_left || !told.any(is_of_piece) {
                    found.add(Fact::SizeOff { size: id, is: *is, wanted: *wanted }, is_left);
                }
            }
        }
        _ => {}
    }
}
