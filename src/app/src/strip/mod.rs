//! The running strip of the tape: one formula a line, where a line may use those above it.
//!
//! The whole strip is one text with a line for each formula; here are its lines.

#[cfg(test)]
mod tests;
#[cfg(target_arch = "wasm32")]
mod view;

#[cfg(target_arch = "wasm32")]
pub(crate) use view::view;

use core::ops::Range;

use reckoner_core::sheet::Strip;

use crate::keypad::{Key, Typed, press};

/// Most letters that stand ready above the keypad.
const MOST_LETTERS: usize = 4;

/// The lines of a strip, and a blank one at its end to go on with.
pub fn lines(text: &str) -> impl Iterator<Item = &str> {
    let ends_blank = text.lines().next_back().is_none_or(|line| line.trim().is_empty());
    text.lines().chain((!ends_blank || text.is_empty()).then_some(""))
}

/// The strip with one line written anew. Line breaks in it would make it two lines.
#[must_use]
pub fn with_line(text: &str, line: usize, new: &str) -> String {
    let new = new.replace(['\n', '\r'], " ");
    let mut all: Vec<&str> = lines(text).collect();
    match all.get_mut(line) {
        Some(old) => *old = &new,
        None => all.push(&new),
    }
    all.join("\n").trim_end_matches('\n').to_owned()
}

/// Letters of the written lines above one, the nearest last.
#[must_use]
pub fn letters_above(text: &str, line: usize) -> Vec<String> {
    let above = lines(text).take(line).enumerate();
    let written = above.filter(|(_, text)| !text.trim().is_empty());
    let mut letters: Vec<String> = written.map(|(at, _)| Strip::letter_at(at)).collect();
    letters.drain(..letters.len().saturating_sub(MOST_LETTERS));
    letters
}

/// A line with a letter written over the selection.
#[must_use]
pub fn with_letter(text: &str, selection: Range<usize>, letter: &str) -> Typed {
    // Two amounts never stand side by side, and a letter is an amount: it goes in as it is.
    let cleared = press(text, selection.clone(), Key::Digit(""));
    let before: Vec<u16> = cleared.text.encode_utf16().take(cleared.caret).collect();
    let before = String::from_utf16_lossy(&before);
    let after = cleared.text.get(before.len()..).unwrap_or("");
    let caret = before.encode_utf16().chain(letter.encode_utf16()).count();
    Typed { text: format!("{before}{letter}{after}"), caret }
}
