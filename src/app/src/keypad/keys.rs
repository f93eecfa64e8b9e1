//! [`Key`]s, and the [`Page`]s that they stand on: four by four, so that each is a thumb wide.

use reckoner_core::measure::{Fineness, Tape};
use reckoner_core::sheet::Kind;

/// A key.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Key {
    /// A digit or a decimal point.
    Digit(&'static str),
    /// A sign with spaces around it, so that `3 - 3/8` is never the mixed number `3-3/8`: test
    /// id, what is written.
    Sign(&'static str, &'static str),
    /// A bracket, a stroke or a space, as it is: test id, what is written.
    Mark(&'static str, &'static str),
    /// A unit or another word.
    Word(&'static str),
    /// A whole fraction: above and below its line.
    Fraction(u8, u8),
    /// Takes away what the last key wrote.
    Backspace,
    /// To the next field.
    Next,
}

impl Key {
    /// The part of its test id after `key-`.
    #[must_use]
    pub fn id(self) -> String {
        match self {
            Key::Digit(".") => "point".to_owned(),
            Key::Digit(text) | Key::Word(text) => text.to_owned(),
            Key::Sign(id, _) | Key::Mark(id, _) => id.to_owned(),
            Key::Fraction(above, below) => format!("{above}/{below}"),
            Key::Backspace => "backspace".to_owned(),
            Key::Next => "next".to_owned(),
        }
    }
}

/// A page of sixteen keys.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Page {
    /// Digits.
    Digits,
    /// Sixteenths and all coarser fractions, in the order of the tape.
    Sixteenths,
    /// The thirty-seconds between them.
    ThirtySeconds,
    /// The sixty-fourths between those, up to a half.
    SixtyFourths,
    /// The sixty-fourths beyond a half.
    UpperSixtyFourths,
    /// Signs and units.
    Signs,
}

impl Page {
    /// The part of its tab's test id after `key-page-`.
    #[must_use]
    pub fn id(self) -> &'static str {
        match self {
            Page::Digits => "digits",
            Page::Sixteenths => "16",
            Page::ThirtySeconds => "32",
            Page::SixtyFourths | Page::UpperSixtyFourths => "64",
            Page::Signs => "signs",
        }
    }

    /// Whether its keys are fractions.
    #[must_use]
    pub fn is_fractions(self) -> bool {
        !matches!(self, Page::Digits | Page::Signs)
    }

    /// The page after a tap on the tab of `tab`; the tab of the sixty-fourths has two.
    #[must_use]
    pub fn after(self, tab: Page) -> Page {
        match (self, tab) {
            (Page::SixtyFourths, Page::SixtyFourths) => Page::UpperSixtyFourths,
            (_, tab) => tab,
        }
    }

    /// The page after a key: a fraction ends an amount, and digits follow.
    #[must_use]
    pub fn after_key(self, key: Key) -> Page {
        match key {
            Key::Fraction(..) | Key::Next => Page::Digits,
            Key::Sign(..) if self == Page::Signs => Page::Digits,
            _ => self,
        }
    }
}

/// Which keys a field needs.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SetOfKeys {
    /// A length or a formula.
    Length,
    /// A length that may have a width.
    Wide,
    /// Sizes of parts with commas.
    Sizes,
    /// A plain number.
    Number,
}

impl SetOfKeys {
    /// The keys for what may be written in a field; none for what is chosen.
    #[must_use]
    pub fn of(kind: Kind) -> Option<SetOfKeys> {
        Some(match kind {
            // In a row of a list there is one length; its name, count and price have places of their own.
            Kind::Length(_)
            | Kind::OptionalLength(_)
            | Kind::Strip
            | Kind::Lengths
            | Kind::Spans => SetOfKeys::Length,
            Kind::OnHand | Kind::Pieces | Kind::Prices => SetOfKeys::Wide,
            Kind::Sizes => SetOfKeys::Sizes,
            Kind::Count { .. } | Kind::Number { .. } | Kind::OptionalMoney => SetOfKeys::Number,
            Kind::Choice(_) | Kind::YesNo | Kind::LineOf(_) | Kind::Words(_) => return None,
        })
    }
}

/// The fraction tabs, that of the tape's own lines first; none where a fraction is no size.
fn fractions(tape: Tape) -> &'static [Page] {
    match tape {
        Tape::Millimetres(_) | Tape::HalfMillimetres => &[],
        Tape::Inches(Fineness::ThirtySecond) | Tape::FeetAndInches(Fineness::ThirtySecond) => {
            &[Page::ThirtySeconds, Page::Sixteenths, Page::SixtyFourths]
        }
        Tape::Inches(Fineness::SixtyFourth) | Tape::FeetAndInches(Fineness::SixtyFourth) => {
            &[Page::SixtyFourths, Page::ThirtySeconds, Page::Sixteenths]
        }
        Tape::Inches(_) | Tape::FeetAndInches(_) | Tape::DecimalInches(_) => {
            &[Page::Sixteenths, Page::ThirtySeconds, Page::SixtyFourths]
        }
    }
}

/// Whether the lines of a tape are fractions.
fn has_fractions(tape: Tape) -> bool {
    matches!(tape, Tape::Inches(_) | Tape::FeetAndInches(_))
}

/// The tabs for a set of keys: those that the tape is read in stand before the signs.
#[must_use]
pub fn pages(set: SetOfKeys, tape: Tape) -> Vec<Page> {
    let fractions = fractions(tape);
    match set {
        SetOfKeys::Number => vec![Page::Digits],
        _ if has_fractions(tape) => [&[Page::Digits], fractions, &[Page::Signs]].concat(),
        _ => [&[Page::Digits, Page::Signs], fractions].concat(),
    }
}

const PLUS: Key = Key::Sign("plus", "+");
const MINUS: Key = Key::Sign("minus", "-");
const TIMES: Key = Key::Sign("times", "×");
const DIVIDE: Key = Key::Sign("divide", "÷");
const COMMA: Key = Key::Mark("comma", ", ");
const SPACE: Key = Key::Mark("space", " ");
const SLASH: Key = Key::Mark("slash", "/");
const OPEN: Key = Key::Mark("open", "(");
const CLOSE: Key = Key::Mark("close", ")");

/// The keys of a page, row by row. With the left hand, the column of the thumb is on the left.
#[must_use]
pub fn keys(page: Page, set: SetOfKeys, tape: Tape, is_left_handed: bool) -> [[Key; 4]; 4] {
    let mut rows = match page {
        Page::Digits => digits(set, tape),
        Page::Signs => signs(set),
        Page::Sixteenths => SIXTEENTHS,
        Page::ThirtySeconds => THIRTY_SECONDS,
        Page::SixtyFourths => SIXTY_FOURTHS,
        Page::UpperSixtyFourths => UPPER_SIXTY_FOURTHS,
    };
    if is_left_handed && matches!(page, Page::Digits | Page::Signs) {
        for row in &mut rows {
            row.rotate_right(1);
        }
    }
    rows
}

fn digits(set: SetOfKeys, tape: Tape) -> [[Key; 4]; 4] {
    use Key::{Backspace, Digit, Next, Word};
    // A fraction that is no line of the tape is written with its stroke, so that this is at hand.
    let of_tape = if has_fractions(tape) { SLASH } else { PLUS };
    let (second, third) = match set {
        SetOfKeys::Length => (MINUS, of_tape),
        SetOfKeys::Wide => (Word("wide"), of_tape),
        SetOfKeys::Number => (MINUS, SLASH),
        SetOfKeys::Sizes => (TIMES, COMMA),
    };
    [
        [Digit("1"), Digit("2"), Digit("3"), Backspace],
        [Digit("4"), Digit("5"), Digit("6"), second],
        [Digit("7"), Digit("8"), Digit("9"), third],
        [Digit("."), Digit("0"), SPACE, Next],
    ]
}

fn signs(set: SetOfKeys) -> [[Key; 4]; 4] {
    let word = match set {
        SetOfKeys::Sizes => "@",
        SetOfKeys::Length | SetOfKeys::Wide | SetOfKeys::Number => "m",
    };
    [
        [PLUS, MINUS, TIMES, Key::Backspace],
        [DIVIDE, OPEN, CLOSE, SLASH],
        [Key::Word("ft"), Key::Word("in"), Key::Word("mm"), COMMA],
        [Key::Word("cm"), Key::Word(word), SPACE, Key::Next],
    ]
}

const fn of(above: u8, below: u8) -> Key {
    Key::Fraction(above, below)
}

const SIXTEENTHS: [[Key; 4]; 4] = [
    [of(1, 16), of(1, 8), of(3, 16), of(1, 4)],
    [of(5, 16), of(3, 8), of(7, 16), of(1, 2)],
    [of(9, 16), of(5, 8), of(11, 16), of(3, 4)],
    [of(13, 16), of(7, 8), of(15, 16), Key::Backspace],
];

const THIRTY_SECONDS: [[Key; 4]; 4] = [
    [of(1, 32), of(3, 32), of(5, 32), of(7, 32)],
    [of(9, 32), of(11, 32), of(13, 32), of(15, 32)],
    [of(17, 32), of(19, 32), of(21, 32), of(23, 32)],
    [of(25, 32), of(27, 32), of(29, 32), of(31, 32)],
];

const SIXTY_FOURTHS: [[Key; 4]; 4] = [
    [of(1, 64), of(3, 64), of(5, 64), of(7, 64)],
    [of(9, 64), of(11, 64), of(13, 64), of(15, 64)],
    [of(17, 64), of(19, 64), of(21, 64), of(23, 64)],
    [of(25, 64), of(27, 64), of(29, 64), of(31, 64)],
];

const UPPER_SIXTY_FOURTHS: [[Key; 4]; 4] = [
    [of(33, 64), of(35, 64), of(37, 64), of(39, 64)],
    [of(41, 64), of(43, 64), of(45, 64), of(47, 64)],
    [of(49, 64), of(51, 64), of(53, 64), of(55, 64)],
    [of(57, 64), of(59, 64), of(61, 64), of(63, 64)],
];
