//! [`Circles`]: measures that need themselves, each circle found once.

use std::collections::{BTreeMap, BTreeSet};

use super::ItemId;

/// Most members of a circle that are named: of a long one the first say enough.
const MOST_NAMED: usize = 12;

/// The circles of a graph in which each one is followed to one other.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub(super) struct Circles {
    circles: Vec<Vec<ItemId>>,
    /// For each: the circle that it is in or leads to, and where in it to begin telling.
    of: BTreeMap<ItemId, (usize, usize)>,
}

impl Circles {
    /// Follows every one of `all` until it comes round or to what is known. Each is visited once.
    pub(super) fn among(
        all: &BTreeSet<ItemId>,
        next: impl Fn(ItemId) -> Option<ItemId>,
    ) -> Circles {
        let mut found = Circles::default();
        for first in all {
            let mut path: Vec<ItemId> = Vec::new();
            let mut places: BTreeMap<ItemId, usize> = BTreeMap::new();
            let mut at = Some(*first);
            while let Some(id) = at {
                if let Some(known) = found.of.get(&id).copied() {
                    found.of.extend(path.iter().map(|id| (*id, known)));
                    break;
                }
                if let Some(start) = places.get(&id).copied() {
                    let circle = path.split_off(start);
                    let number = found.circles.len();
                    found.of.extend(path.iter().map(|id| (*id, (number, 0))));
                    found.of.extend((0..).zip(&circle).map(|(place, id)| (*id, (number, place))));
                    found.circles.push(circle);
                    break;
                }
                places.insert(id, path.len());
                path.push(id);
                at = next(id);
            }
        }
        found
    }

    /// The circle as it is told of one of its members: from there and round to it again. A long
    /// one breaks off.
    pub(super) fn told_from(&self, id: ItemId) -> Vec<ItemId> {
        let Some((circle, place)) = self.of.get(&id).copied() else { return Vec::new() };
        let Some(circle) = self.circles.get(circle) else { return Vec::new() };
        let told = circle.len().saturating_add(1).min(MOST_NAMED);
        circle.iter().cycle().skip(place).take(told).copied().collect()
    }
}
