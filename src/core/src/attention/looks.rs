//! How each piece stands, for the picture of the job.

use std::collections::BTreeSet;

use super::{Attention, Fact};
use crate::job::sketch::Look;
use crate::job::{Item, ItemId, Job, Reckoned};

/// How every piece of a job stands.
#[derive(Clone, Debug)]
pub struct Looks<'a> {
    job: &'a Job,
    attention: &'a Attention,
    /// Parts with a size that rests on one which came out different.
    changed: BTreeSet<ItemId>,
}

impl Looks<'_> {
    /// Of a job and what wants looking at in it.
    #[must_use]
    pub fn of<'a>(job: &'a Job, reckoned: &Reckoned, attention: &'a Attention) -> Looks<'a> {
        let is_different = |id: &ItemId| {
            let state = reckoned.measure(*id);
            let both = state.and_then(|it| Some((it.as_cut.as_ref()?, it.planned.as_ref().ok()?)));
            both.is_some_and(|(cut, planned)| cut.as_ref().ok() != Some(planned))
        };
        let mut changed = BTreeSet::new();
        for (id, part) in job.parts() {
            let texts = [&part.thickness, &part.width, &part.length];
            if texts.into_iter().any(|text| reckoned.all_needed_for(text).iter().any(is_different))
            {
                changed.insert(id);
            }
        }
        Looks { job, attention, changed }
    }

    /// How a piece of a part stands; pieces are counted from 0.
    #[must_use]
    pub fn piece(&self, part: ItemId, index: usize) -> Look {
        let is_cut = match self.job.item(part) {
            Some(Item::Part(part)) => part.piece(index).is_cut(),
            _ => false,
        };
        let is_off = |fact: &Fact| fact.of_piece(part, index).is_some();
        if is_cut && self.attention.facts.iter().any(is_off) {
            Look::Wrong
        } else if is_cut {
            Look::Cut
        } else if self.changed.contains(&part) {
            Look::Changed
        } else {
            Look::ToCut
        }
    }
}
