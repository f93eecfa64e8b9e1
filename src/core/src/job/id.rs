//! [`ItemId`]: which item is meant.

/// The id of an item: given once, never used again in its job.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct ItemId(pub u64);
