//! What is ticked off that no piece and no board tells.

use std::collections::BTreeMap;

use super::{Change, Item, ItemId, Job, Ticked};

impl Job {
    /// The list of what is ticked off, where there is one.
    pub(crate) fn ticked_item(&self) -> Option<(ItemId, &Ticked)> {
        self.items().find_map(|(id, item)| match item {
            Item::Ticked(ticked) => Some((id, ticked)),
            _ => None,
        })
    }

    /// What is ticked off, to be asked often: how many of each.
    #[must_use]
    pub fn all_ticked(&self) -> BTreeMap<String, u32> {
        self.ticked_item().map(|(_, it)| it.done.clone()).unwrap_or_default()
    }

    /// The change by which so many of some things are ticked off; none of one takes its tick back.
    /// `offset` as in [`Job::adding`].
    #[must_use]
    pub fn ticking(&self, offset: u64, counts: &[(String, u32)]) -> Change {
        let mut ticked = self.ticked_item().map(|(_, old)| old.clone()).unwrap_or_default();
        for (what, count) in counts {
            match count {
                0 => drop(ticked.done.remove(what)),
                count => drop(ticked.done.insert(what.clone(), *count)),
            }
        }
        self.with_ticked(offset, ticked)
    }

    /// The change that takes all ticks back whose names begin like this; `None` where there are none.
    pub(crate) fn without_ticks_of(&self, begin: &str) -> Option<Change> {
        let mut ticked = self.ticked_item()?.1.clone();
        ticked.done.retain(|what, _| !what.starts_with(begin));
        (self.ticked_item()?.1 != &ticked).then(|| self.with_ticked(0, ticked))
    }

    fn with_ticked(&self, offset: u64, ticked: Ticked) -> Change {
        match self.ticked_item() {
            Some((id, _)) => self.replacing(id, Item::Ticked(ticked)),
            None => self.adding(offset, Item::Ticked(ticked)),
        }
    }
}
