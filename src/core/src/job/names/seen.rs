//! What is seen of a name: two names are one when they look the same.
//!
//! Compared are the canonical decompositions (Unicode Standard Annex 15, form D: two texts have the
//! same one exactly if they have the same form C), with runs of white space as one space and without
//! what cannot be seen.
//!
//! Nothing is changed by it but how names are found: what was written stays as it was written.

use std::borrow::Cow;

use super::decomposed::{class, decompose};
use crate::measure::text::is_invisible;
use crate::order::sort_by_key;

/// A text as it is compared, and where in it each character of the text that stands for itself
/// ends: its bytes there and in the text.
pub(super) struct Seen<'a> {
    pub(super) text: Cow<'a, str>,
    /// Empty where both are the same text.
    ends: Vec<(usize, usize)>,
}

impl Seen<'_> {
    pub(super) fn of(text: &str) -> Seen<'_> {
        if is_plain(text) {
            return Seen { text: Cow::Borrowed(text), ends: Vec::new() };
        }
        let mut seen = Seen { text: Cow::Owned(String::new()), ends: Vec::new() };
        // The decomposition of a character with the marks that follow it.
        let mut whole: Vec<(u8, char)> = Vec::new();
        for (at, c) in text.char_indices() {
            let is_space = c.is_whitespace();
            if !is_space && is_invisible(c) {
                continue;
            }
            let begins = is_space || class(c) == 0;
            if begins {
                seen.end(&mut whole, at);
            }
            if !is_space {
                decompose(c, &mut |c| whole.push((class(c), c)));
            } else if !seen.text.ends_with(' ') {
                seen.text.to_mut().push(' ');
                seen.ends.push((seen.text.len(), at.saturating_add(c.len_utf8())));
            } else if let Some(end) = seen.ends.last_mut() {
                end.1 = at.saturating_add(c.len_utf8());
            }
        }
        seen.end(&mut whole, text.len());
        seen
    }

    /// Marks of different places may be written in any order (UAX 15, canonical ordering).
    fn end(&mut self, whole: &mut Vec<(u8, char)>, at: usize) {
        if whole.is_empty() {
            return;
        }
        for marks in whole.chunk_by_mut(|a, b| a.0 != 0 && b.0 != 0) {
            sort_by_key(marks, |(class, _)| *class);
        }
        self.text.to_mut().extend(whole.drain(..).map(|(_, c)| c));
        self.ends.push((self.text.len(), at));
    }

    /// How many bytes of the text so many of the compared ones are; `None` inside a character.
    pub(super) fn bytes_of(&self, compared: usize) -> Option<usize> {
        if compared == 0 || self.ends.is_empty() {
            return Some(compared);
        }
        let at = self.ends.binary_search_by_key(&compared, |(end, _)| *end).ok()?;
        self.ends.get(at).map(|(_, bytes)| *bytes)
    }
}

/// A name as it is compared: names with the same key look the same. To find one among many.
#[must_use]
pub fn key(name: &str) -> Cow<'_, str> {
    Seen::of(name.trim()).text
}

/// Whether a text is compared as it is: nothing below U+00C0 has parts.
fn is_plain(text: &str) -> bool {
    let is_plain = |c: char| matches!(c, ' '..='~' | '\u{A1}'..='\u{AC}' | '\u{AE}'..='\u{BF}');
    text.chars().all(is_plain) && !text.contains("  ")
}
