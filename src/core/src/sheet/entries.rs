//! [`Entries`]: the texts of a calculator's fields as typed.

use std::collections::BTreeMap;

use crate::measure::Unit;

/// The texts of the fields as typed, by field id: the whole state of a calculator.
///
/// A field without an entry has its [start](super::Start) text. A bare number takes the unit
/// kept here, so that a link means the same on a phone that is set to another unit.
#[derive(Clone, Debug, PartialEq, Eq, Default)]
pub struct Entries {
    texts: BTreeMap<String, String>,
    unit: Option<Unit>,
}

impl Entries {
    /// Entries from pairs of field id and text; a later pair replaces an earlier one.
    pub fn from_pairs<I, K, V>(pairs: I) -> Entries
    where
        I: IntoIterator<Item = (K, V)>,
        K: Into<String>,
        V: Into<String>,
    {
        let mut texts = BTreeMap::new();
        texts.extend(pairs.into_iter().map(|(id, text)| (id.into(), text.into())));
        Entries { texts, unit: None }
    }

    /// The text of a field, if it was typed.
    #[must_use]
    pub fn text(&self, id: &str) -> Option<&str> {
        self.texts.get(id).map(String::as_str)
    }

    /// Sets the text of a field.
    pub fn set(&mut self, id: &str, text: impl Into<String>) {
        self.texts.insert(id.to_owned(), text.into());
    }

    /// Every typed field, in the order of the ids.
    pub fn pairs(&self) -> impl Iterator<Item = (&str, &str)> {
        self.texts.iter().map(|(id, text)| (id.as_str(), text.as_str()))
    }

    /// The unit of bare numbers, where it is not that of the tape.
    #[must_use]
    pub fn unit(&self) -> Option<Unit> {
        self.unit
    }

    /// Sets the unit of bare numbers.
    pub fn set_unit(&mut self, unit: Option<Unit>) {
        self.unit = unit;
    }
}
