//! Putting lists in order.
//!
//! The sorting of the standard library is made anew for every type, some four kilobytes each
//! time, and a set or map that is collected sorts. Here all types share one way.

use core::cmp::Ordering;
use std::collections::{BTreeMap, BTreeSet};

/// Puts a list in order; equal ones stay as they stood.
pub fn sort_by<T>(items: &mut [T], compare: impl Fn(&T, &T) -> Ordering) {
    let swaps = swaps(items.len(), &|one, other| match (items.get(one), items.get(other)) {
        (Some(one), Some(other)) => compare(one, other) == Ordering::Greater,
        _ => false,
    });
    for (one, other) in swaps {
        items.swap(one, other);
    }
}

/// Puts a list in order, smallest first.
pub fn sort<T: Ord>(items: &mut [T]) {
    sort_by(items, T::cmp);
}

/// Puts a list in the order of what `key` says of each, smallest first; equal ones stay as they stood.
pub fn sort_by_key<T, K: Ord>(items: &mut [T], key: impl Fn(&T) -> K) {
    sort_by(items, |one, other| key(one).cmp(&key(other)));
}

/// A set, filled one by one: to collect it would sort.
pub fn set_of<T: Ord>(items: impl Iterator<Item = T>) -> BTreeSet<T> {
    let mut set = BTreeSet::new();
    set.extend(items);
    set
}

/// A map, filled one by one: of two values with one key the later stays.
pub fn map_of<K: Ord, V>(items: impl Iterator<Item = (K, V)>) -> BTreeMap<K, V> {
    let mut map = BTreeMap::new();
    map.extend(items);
    map
}

/// Which places of a list of `count` are swapped, one pair after the other, so that none comes after one that it is
/// `after`. All that sorts and needs no type.
fn swaps(count: usize, after: &dyn Fn(usize, usize) -> bool) -> Vec<(usize, usize)> {
    // What goes to the place of its own number.
    let mut merged: Vec<usize> = (0..count).collect();
    let mut length = 1_usize;
    while length < count {
        let runs = core::mem::replace(&mut merged, Vec::with_capacity(count));
        let both = length.saturating_mul(2);
        for run in runs.chunks(both) {
            let (mut early, mut late) = run.split_at(length.min(run.len()));
            while let Some((first, rest)) = early.split_first() {
                match late.split_first() {
                    Some((second, rest)) if after(*first, *second) => {
                        merged.push(*second);
                        late = rest;
                    }
                    _ => {
                        merged.push(*first);
                        early = rest;
                    }
                }
            }
            merged.extend_from_slice(late);
        }
        length = both;
    }
    // Where each goes: each swap puts one there.
    let mut places = merged.clone();
    for (place, from) in merged.into_iter().enumerate() {
        if let Some(to) = places.get_mut(from) {
            *to = place;
        }
    }
    let mut swaps = Vec::new();
    for at in 0..count {
        while let Some(to) = places.get(at).copied().filter(|to| *to != at) {
            places.swap(at, to);
            swaps.push((at, to));
        }
    }
    swaps
}

#[cfg(test)]
mod tests {
    use std::collections::{BTreeMap, BTreeSet};

    use proptest::prelude::*;

    proptest! {
        #[test]
        fn a_list_is_sorted_as_the_standard_library_does(
            list in prop::collection::vec((0_u8..9, 0_u8..99), 0..60),
        ) {
            let mut expected = list.clone();
            expected.sort_by_key(|item| item.0);
            let mut sorted = list.clone();
            super::sort_by(&mut sorted, |a, b| a.0.cmp(&b.0));
            prop_assert_eq!(&sorted, &expected);
            let mut sorted = list.clone();
            super::sort_by_key(&mut sorted, |item| item.0);
            prop_assert_eq!(&sorted, &expected);
            super::sort(&mut sorted);
            expected.sort_unstable();
            prop_assert_eq!(sorted, expected);
        }

        #[test]
        fn sets_and_maps_are_those_that_the_standard_library_collects(
            list in prop::collection::vec((0_u8..9, 0_u8..99), 0..60),
        ) {
            let set: BTreeSet<_> = list.iter().copied().collect();
            prop_assert_eq!(super::set_of(list.iter().copied()), set);
            let map: BTreeMap<_, _> = list.iter().copied().collect();
            prop_assert_eq!(super::map_of(list.into_iter()), map);
        }
    }
}
