//! What is seen of a text that a person writes: a name, a title, a formula.
//!
//! A character without a shape of its own is seen only in a small picture: what joins pictures into one and what colours
//! them (Unicode Technical Standard 51) belongs to them. Alone it hides in the text.

/// What is said of a name that is not [seen whole](is_seen_whole).
pub const UNSEEN: &str = "Something in this name cannot be seen, such as a line break or a mark of direction. Type it again.";

/// Zero width joiner: of two pictures it makes one.
const JOINER: char = '\u{200D}';
/// Variation selector 16: the sign before it is drawn as a picture.
const COLOUR: char = '\u{FE0F}';
/// The cap of a key, around the sign before it.
const KEY_CAP: char = '\u{20E3}';

/// Whether a character has no shape of its own: controls, line ends, marks of direction (UAX 9), what is ignored by
/// default (UAX 44: format characters, joiners, fillers, variation selectors, tags), and the pattern of braille without
/// a dot.
#[must_use]
pub fn is_invisible(c: char) -> bool {
    c.is_control()
        || matches!(c,
            '\u{AD}' | '\u{34F}' | '\u{600}'..='\u{605}' | '\u{61C}' | '\u{6DD}' | '\u{70F}'
            | '\u{890}'..='\u{891}' | '\u{8E2}' | '\u{115F}'..='\u{1160}' | '\u{17B4}'..='\u{17B5}'
            | '\u{180B}'..='\u{180F}' | '\u{200B}'..='\u{200F}' | '\u{2028}'..='\u{202E}'
            | '\u{2060}'..='\u{206F}' | '\u{2800}' | '\u{3164}' | '\u{FE00}'..='\u{FE0F}' | '\u{FEFF}'
            | '\u{FFA0}' | '\u{FFF0}'..='\u{FFFB}' | '\u{110BD}' | '\u{110CD}'
            | '\u{13430}'..='\u{1343F}' | '\u{1BCA0}'..='\u{1BCA3}' | '\u{1D173}'..='\u{1D17A}'
            | '\u{E0000}'..='\u{E0FFF}')
}

/// Whether a sign is or can be a small picture: the blocks that hold them (UTS 51, `Emoji`), without the keys of a phone.
fn is_picture(c: char) -> bool {
    matches!(c,
        '\u{A9}' | '\u{AE}' | '\u{203C}' | '\u{2049}' | '\u{2122}' | '\u{2139}' | '\u{2190}'..='\u{27BF}'
        | '\u{2900}'..='\u{2BFF}' | '\u{3030}' | '\u{303D}' | '\u{3297}' | '\u{3299}' | '\u{1F000}'..='\u{1FAFF}')
}

/// Whether a character is seen between these two.
fn is_seen(before: char, c: char, after: Option<char>) -> bool {
    match c {
        JOINER => (is_picture(before) || before == COLOUR) && after.is_some_and(is_picture),
        COLOUR => {
            let is_key = matches!(before, '0'..='9' | '#' | '*') && after == Some(KEY_CAP);
            is_key || is_picture(before)
        }
        c => !is_invisible(c),
    }
}

/// Whether all of a text is seen.
#[must_use]
pub fn is_seen_whole(text: &str) -> bool {
    let mut before = ' ';
    let mut chars = text.chars().peekable();
    while let Some(c) = chars.next() {
        if !is_seen(before, c, chars.peek().copied()) {
            return false;
        }
        before = c;
    }
    true
}

/// What is seen of a text of one line: without what is not, and with a space for all white space between two words.
/// What is seen of that is the same.
#[must_use]
pub fn seen(text: &str) -> String {
    let mut seen = String::with_capacity(text.len());
    let mut before = ' ';
    let mut chars = text.chars().peekable();
    while let Some(c) = chars.next() {
        if c.is_whitespace() {
            before = ' ';
        } else if is_seen(before, c, chars.peek().copied()) {
            if before == ' ' && !seen.is_empty() {
                seen.push(' ');
            }
            seen.push(c);
            before = c;
        }
    }
    seen
}
