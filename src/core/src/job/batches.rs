//! Batches: which parts share a setting of fence or stop, and which can be cut now.
//!
//! Set once, cut all that match, and one spare for each setting (common practice, no source).

use super::{ItemId, PartSizes};
use crate::measure::Length;

/// What is set at the saw.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Setting {
    /// The fence, for a width.
    RipWidth,
    /// The fence, for a thickness.
    ResawThickness,
    /// The stop block, for a length.
    StopLength,
}

/// Parts that share one setting.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Batch {
    /// What is set.
    pub setting: Setting,
    /// To what.
    pub size: Length,
    /// The parts, in the order of the list.
    pub parts: Vec<BatchPart>,
    /// Pieces to cut now, without those that must wait.
    pub pieces: u32,
    /// Spare pieces: one for each setting.
    pub spares: u32,
    /// Every part of it must wait for a measurement.
    pub must_wait: bool,
}

/// A part in a batch.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct BatchPart {
    /// The part.
    pub id: ItemId,
    /// How many of it are still to cut.
    pub pieces: u32,
    /// It must wait for a measurement.
    pub must_wait: bool,
}

/// The batches of one setting, the largest size first. Parts without a size are left out.
#[must_use]
pub fn batches(parts: &[PartSizes], setting: Setting) -> Vec<Batch> {
    let size_of = |part: &PartSizes| match setting {
        Setting::RipWidth => part.width.clone().ok(),
        Setting::ResawThickness => part.thickness.clone().ok(),
        Setting::StopLength => part.length.clone().ok(),
    };
    let mut batches: Vec<Batch> = Vec::new();
    for part in parts {
        let (Some(size), Ok(quantity)) = (size_of(part), &part.quantity) else { continue };
        let member = BatchPart {
            id: part.id,
            pieces: quantity.saturating_sub(part.done),
            must_wait: !part.waits_for.is_empty(),
        };
        match batches.iter_mut().find(|batch| batch.size == size) {
            Some(batch) => batch.parts.push(member),
            None => batches.push(Batch {
                setting,
                size,
                parts: vec![member],
                pieces: 0,
                spares: 1,
                must_wait: false,
            }),
        }
    }
    for batch in &mut batches {
        batch.pieces = batch.parts.iter().filter(|p| !p.must_wait).map(|p| p.pieces).sum();
        batch.must_wait = batch.parts.iter().all(|part| part.must_wait);
    }
    crate::order::sort_by(&mut batches, |a, b| b.size.cmp(&a.size));
    batches
}
