//! What a key does to a text: [`press`].

use core::ops::Range;

use super::Key;

/// A text and the place in it where the next key writes, in UTF-16 units as browsers count them.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Typed {
    /// The text.
    pub text: String,
    /// The place.
    pub caret: usize,
}

/// The text after a key, written over the selection.
///
/// Selections count UTF-16 units, as browsers do; one beyond the end of the text is its end.
#[must_use]
pub fn press(text: &str, selection: Range<usize>, key: Key) -> Typed {
    let before = text.get(..byte_at(text, selection.start)).unwrap_or(text);
    let after = text.get(byte_at(text, selection.end)..).unwrap_or("");
    let before = match key {
        Key::Backspace if selection.is_empty() => without_last(before).to_owned(),
        Key::Backspace | Key::Next => before.to_owned(),
        Key::Digit(digit) => format!("{before}{digit}"),
        Key::Mark(_, mark) => format!("{before}{mark}"),
        Key::Sign(_, sign) => {
            let before = before.trim_end();
            // Nothing to take away from: the sign of the number itself.
            if before.is_empty() || before.ends_with('(') {
                format!("{before}{sign}")
            } else {
                format!("{before} {sign} ")
            }
        }
        Key::Word(word) => {
            let space = if before.is_empty() || before.ends_with(' ') { "" } else { " " };
            // More follows a foot or a word between two amounts; nothing follows an inch.
            let end =
                if matches!(word, "ft" | "@" | "to" | "at" | "max" | "wide") { " " } else { "" };
            format!("{before}{space}{word}{end}")
        }
        Key::Fraction(above, below) => {
            let whole = without_fraction(before).trim_end();
            let space = if whole.ends_with(|c: char| c.is_ascii_digit()) {
                " "
            } else {
                // After a sign the space is part of the sign.
                before.get(whole.len()..).unwrap_or("").get(..1).filter(|s| *s == " ").unwrap_or("")
            };
            format!("{whole}{space}{above}/{below}")
        }
    };
    let caret = before.encode_utf16().count();
    Typed { text: before + after, caret }
}

/// Where so many UTF-16 units end, in bytes.
fn byte_at(text: &str, units: usize) -> usize {
    let ends = |at: &usize| text.get(..*at).is_some_and(|t| t.encode_utf16().count() >= units);
    text.char_indices().map(|(at, _)| at).find(ends).unwrap_or(text.len())
}

/// Without the fraction at its end, if one that a single key writes stands there.
fn without_fraction(text: &str) -> &str {
    let digit = |c: char| c.is_ascii_digit();
    let Some((rest, below)) = text.rsplit_once('/') else { return text };
    let head = rest.trim_end_matches(digit);
    let is_key = matches!(below, "2" | "4" | "8" | "16" | "32" | "64");
    if is_key && head.len() < rest.len() && !head.ends_with('.') { head } else { text }
}

/// Without what one key wrote at its end.
fn without_last(text: &str) -> &str {
    let without = without_fraction(text);
    if without.len() < text.len() {
        return without.trim_end();
    }
    let trimmed = text.trim_end();
    if let Some(rest) = trimmed.strip_suffix(['+', '-', '×', '÷', ',', '@']) {
        return rest.trim_end();
    }
    let word = trimmed.trim_end_matches(|c: char| c.is_alphabetic());
    if word.len() < trimmed.len() {
        return word.trim_end();
    }
    let mut chars = text.chars();
    chars.next_back();
    chars.as_str()
}
