//! Putting short lists in order.
//!
//! The sorting of the standard library is made anew for every type, some four kilobytes each
//! time, and a set or map that is collected sorts. What is sorted here is as long as a list that a person typed.

use core::cmp::Ordering;
use std::collections::BTreeSet;

/// Puts a short list in order by insertion; equal ones stay as they stood.
pub(crate) fn sort_by<T>(items: &mut [T], compare: impl Fn(&T, &T) -> Ordering) {
    for end in 1..items.len() {
        let mut at = end;
        while let Some(before) = at.checked_sub(1) {
            let is_in_order = match (items.get(before), items.get(at)) {
                (Some(early), Some(late)) => compare(early, late) != Ordering::Greater,
                _ => true,
            };
            if is_in_order {
                break;
            }
            items.swap(before, at);
            at = before;
        }
    }
}

/// Puts a short list in order, smallest first.
pub(crate) fn sort<T: Ord>(items: &mut [T]) {
    sort_by(items, T::cmp);
}

/// A set, filled one by one: to collect it would sort.
pub(crate) fn set_of<T: Ord>(items: impl Iterator<Item = T>) -> BTreeSet<T> {
    let mut set = BTreeSet::new();
    set.extend(items);
    set
}

#[cfg(test)]
mod tests {
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
            super::sort(&mut sorted);
            expected.sort_unstable();
            prop_assert_eq!(sorted, expected);
        }
    }
}
