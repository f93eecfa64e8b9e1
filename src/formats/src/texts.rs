//! The texts that records have in common.

use reckoner_core::job::MOST_NAME;
use reckoner_core::measure::limits::MAX_TEXT;

use crate::json::{Kind, Value, Writer};

/// Most entries of one kept reckoning or plan.
const MOST_ENTRIES: usize = 500;

pub(crate) const NAME: Kind = Kind::Text(MOST_NAME);
pub(crate) const TEXT: Kind = Kind::Text(MAX_TEXT);
/// A strip in a kept reckoning has many lines.
const ENTRY: Kind = Kind::Text(20 * MAX_TEXT);
/// Fields and what is written in them.
pub(crate) const ENTRIES: Kind = Kind::List(&Kind::Row(&[ENTRY, ENTRY]), MOST_ENTRIES);

/// A field and what is written in it.
pub(crate) fn write_entry(w: &mut Writer, (field, text): &(String, String)) {
    w.list(&[field, text], |w, text| w.text(text));
}

/// A field and what is written in it.
pub(crate) fn entry(value: Value) -> (String, String) {
    let mut row = value.row();
    (row.text(), row.text())
}
