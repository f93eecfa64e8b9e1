//! What is seen of a name: two names are one when they look the same.
//!
//! Compared are the canonical decompositions (Unicode Standard Annex 15, form D: two texts have the
//! same one exactly if they have the same form C), with runs of white space as one space and without
//! what cannot be seen.
//!
//! Nothing is changed by it but how names are found: what was written stays as it was written.

use std::borrow::Cow;

use super::decomposed::{class, decompose};

/// Whether a character has no shape of its own: controls, line ends, marks of direction (UAX 9) and
/// what is ignored by default (UAX 44: format characters, joiners, fillers, variation selectors,
/// tags).
pub(in crate::job) fn is_invisible(c: char) -> bool {
    c.is_control()
        || matches!(c,
            '\u{AD}' | '\u{34F}' | '\u{600}'..='\u{605}' | '\u{61C}' | '\u{6DD}' | '\u{70F}'
            | '\u{890}'..='\u{891}' | '\u{8E2}' | '\u{115F}'..='\u{1160}' | '\u{17B4}'..='\u{17B5}'
            | '\u{180B}'..='\u{180F}' | '\u{200B}'..='\u{200F}' | '\u{2028}'..='\u{202E}'
            | '\u{2060}'..='\u{206F}' | '\u{3164}' | '\u{FE00}'..='\u{FE0F}' | '\u{FEFF}'
            | '\u{FFA0}' | '\u{FFF0}'..='\u{FFFB}' | '\u{110BD}' | '\u{110CD}'
            | '\u{13430}'..='\u{1343F}' | '\u{1BCA0}'..='\u{1BCA3}' | '\u{1D173}'..='\u{1D17A}'
            | '\u{E0000}'..='\u{E0FFF}')
}

/// Whether a character has no place in a title. No formula finds a title, so what joins and colours small pictures
/// (Unicode Technical Standard 51: zero width joiner, variation selector 16) may stand in it.
pub(super) fn is_out_of_a_title(c: char) -> bool {
    is_invisible(c) && !matches!(c, '\u{200D}' | '\u{FE0F}')
}

/// A name without what cannot be seen, as it is taken over from elsewhere.
#[must_use]
pub fn visible_name(name: &str) -> String {
    without(name, is_invisible)
}

/// A title without what has no place in it, as it is taken over from elsewhere.
#[must_use]
pub fn visible_title(title: &str) -> String {
    without(title, is_out_of_a_title)
}

fn without(text: &str, is_out: fn(char) -> bool) -> String {
    let shown = |c: &char| c.is_whitespace() || !is_out(*c);
    let words: String = text.chars().filter(shown).collect();
    words.split_whitespace().collect::<Vec<_>>().join(" ")
}

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
            marks.sort_by_key(|(class, _)| *class);
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

/// A name as it is compared.
pub(super) fn key(name: &str) -> Cow<'_, str> {
    Seen::of(name.trim()).text
}

/// Whether a text is compared as it is: nothing below U+00C0 has parts.
fn is_plain(text: &str) -> bool {
    let is_plain = |c: char| matches!(c, ' '..='~' | '\u{A1}'..='\u{AC}' | '\u{AE}'..='\u{BF}');
    text.chars().all(is_plain) && !text.contains("  ")
}
