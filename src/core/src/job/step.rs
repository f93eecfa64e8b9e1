//! [`Step`]: one edit of a job, which can be turned round, and which never overwrites unseen.

use std::collections::BTreeMap;
use std::sync::Arc;

use super::conflict::Clash;
use super::{
    Conflict, Item, ItemId, Job, MOST_MEASURES, MOST_OTHERS, MOST_PARTS, MOST_PIECES,
    MOST_PIECES_OF_JOB, visible_title,
};

/// What one item was and is. `None` for not there.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Change {
    /// Which item.
    pub id: ItemId,
    /// Before the step, as the one who made it saw it.
    pub before: Option<Item>,
    /// After the step.
    pub after: Option<Item>,
}

/// One edit as the user sees it: all of it happens, or none.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Step {
    /// For the undo button: `rename leg`.
    pub label: String,
    /// The items it touches.
    pub changes: Vec<Change>,
    /// The title before and after, when it changes.
    pub title: Option<(String, String)>,
}

impl Step {
    /// A step with changes to items.
    #[must_use]
    pub fn new(label: impl Into<String>, changes: Vec<Change>) -> Step {
        Step { label: label.into(), changes, title: None }
    }

    /// Whether it changes nothing.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.changes.is_empty() && self.title.is_none()
    }

    /// The step with titles and names as a job [holds](Item::with_visible_names) them.
    #[must_use]
    pub fn with_visible_names(mut self) -> Step {
        for Change { id, before, after } in &mut self.changes {
            for item in [before, after] {
                *item = item.take().map(|item| item.with_visible_names(*id));
            }
        }
        self.title =
            self.title.map(|(before, after)| (visible_title(&before), visible_title(&after)));
        self
    }

    /// The step that takes this one back.
    #[must_use]
    pub fn turned_round(&self) -> Step {
        Step {
            label: self.label.clone(),
            // Backwards, so that an item touched twice goes the same way back.
            changes: self
                .changes
                .iter()
                .rev()
                .map(|c| Change { id: c.id, before: c.after.clone(), after: c.before.clone() })
                .collect(),
            title: self.title.clone().map(|(before, after)| (after, before)),
        }
    }
}

impl Job {
    /// Makes a step that was made from this very state; [`Job::rebased`] makes one of a step that
    /// was not. On a conflict nothing is changed.
    ///
    /// # Errors
    ///
    /// [`Conflict`] with the items that are not as the maker of the step saw them.
    pub fn make(&mut self, step: &Step) -> Result<(), Conflict> {
        let step = step.clone().with_visible_names();
        // What the items touched so far come to, before any of it is done.
        let mut touched: BTreeMap<ItemId, Option<&Item>> = BTreeMap::new();
        let mut conflict = Conflict::default();
        for change in &step.changes {
            let now = touched.get(&change.id).copied().unwrap_or(self.item(change.id));
            if now != change.before.as_ref() {
                let name = now.or(change.before.as_ref()).map_or("", Item::name).to_owned();
                conflict.items.push(Clash { id: change.id, name, what: Vec::new() });
            }
            touched.insert(change.id, change.after.as_ref());
        }
        conflict.title = step.title.as_ref().is_some_and(|(before, _)| *before != self.title);
        if conflict == Conflict::default() {
            conflict.full = self.has_no_room(&touched);
        }
        if conflict != Conflict::default() {
            return Err(conflict);
        }
        for (id, after) in touched {
            match after {
                Some(item) => self.items.insert(id, Arc::new(item.clone())),
                None => self.items.remove(&id),
            };
        }
        if let Some((_, after)) = &step.title {
            self.title.clone_from(after);
        }
        let above = self.items.keys().next_back().map_or(0, |id| id.0.saturating_add(1));
        self.next_id = self.next_id.max(above);
        Ok(())
    }

    /// What there would be too many of once a step is made. Who only changes or takes out is never
    /// refused, however full it is.
    fn has_no_room(
        &self,
        touched: &BTreeMap<ItemId, Option<&Item>>,
    ) -> Option<(&'static str, usize)> {
        let kinds: [(&str, usize, Count); 4] = [
            ("sizes", MOST_MEASURES, |item| usize::from(matches!(item, Item::Measure(_)))),
            ("parts", MOST_PARTS, |item| usize::from(matches!(item, Item::Part(_)))),
            ("other things", MOST_OTHERS, |item| {
                usize::from(!matches!(item, Item::Measure(_) | Item::Part(_)))
            }),
            ("pieces ticked off", MOST_PIECES_OF_JOB, pieces),
        ];
        let most_of_one = MOST_PIECES as usize;
        let grows = |(id, after): (&ItemId, &Option<&Item>)| {
            let after = after.map_or(0, pieces);
            after > most_of_one && after > self.item(*id).map_or(0, pieces)
        };
        if touched.iter().any(grows) {
            return Some(("pieces of one kind", most_of_one));
        }
        let full = kinds.into_iter().find(|(_, most, count)| {
            let gain: usize = touched.values().flatten().map(|item| count(item)).sum();
            let loss: usize = touched.keys().filter_map(|id| self.item(*id)).map(count).sum();
            let all = || self.items().map(|(_, item)| count(item)).sum::<usize>();
            gain > loss && all().saturating_add(gain) > most.saturating_add(loss)
        });
        full.map(|(what, most, _)| (what, most))
    }

    /// The change that adds an item under the next free id, `offset` ids further on.
    #[must_use]
    pub fn adding(&self, offset: u64, item: Item) -> Change {
        Change { id: ItemId(self.next_id.saturating_add(offset)), before: None, after: Some(item) }
    }

    /// The change that puts something else in the place of an item.
    #[must_use]
    pub fn replacing(&self, id: ItemId, item: Item) -> Change {
        Change { id, before: self.item(id).cloned(), after: Some(item) }
    }

    /// The change that takes an item away.
    #[must_use]
    pub fn removing(&self, id: ItemId) -> Change {
        Change { id, before: self.item(id).cloned(), after: None }
    }
}

/// How many of something an item is.
type Count = fn(&Item) -> usize;

fn pieces(item: &Item) -> usize {
    match item {
        Item::Part(part) => part.pieces.len(),
        _ => 0,
    }
}
