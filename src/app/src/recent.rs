//! The calculators used last, for the top of the list.

use reckoner_core::calculators::{self, Listed};

/// Most of them that are kept.
const MOST: usize = 3;

/// Reads slugs with commas between; what is unknown is dropped.
#[must_use]
pub fn read(text: &str) -> Vec<&'static Listed> {
    text.split(',').filter_map(calculators::listed).take(MOST).collect()
}

/// The same list with a calculator put first.
#[must_use]
pub fn with_first(text: &str, slug: &str) -> String {
    let others = text.split(',').filter(|other| *other != slug && !other.is_empty());
    core::iter::once(slug).chain(others).take(MOST).collect::<Vec<_>>().join(",")
}
