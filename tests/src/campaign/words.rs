//! What a walk types.

use super::chance::Chance;
use super::model::Writing;

/// A key of the keypad: its test id after `key-`, and what it writes where it is pressed.
pub(super) struct Pressed {
    pub(super) id: String,
    /// The tab that it stands behind.
    pub(super) tab: Option<&'static str>,
}

const FRACTIONS: [&str; 6] = ["1/2", "1/4", "3/4", "3/8", "3/16", "15/16"];
/// Two spaces are read as one, and some signs are drawn in colour by a mark that nobody sees.
const WORDS: [&str; 10] = [
    "post",
    "cleat",
    "stile",
    "batten",
    "tenon",
    "ledger",
    "slat",
    "gusset",
    "front  slat",
    "oak ❤\u{fe0f}",
];
/// None of them can be read as a length or a number.
const UNREADABLE: [&str; 5] = ["3 x/", "1//2", "4 - (", "2 +", "12 qq 7"];

/// How a field is typed in.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(super) enum Way {
    /// Our own keypad.
    Keypad,
    /// The keys of a keyboard.
    Keyboard,
    /// A phone's keyboard that sends whole words.
    Whole,
}

/// A text for a field, to be typed with a keyboard.
pub(super) fn typed(chance: &mut Chance, field: &str, kind: &str, number: usize) -> String {
    let digits = |chance: &mut Chance, most: usize| (1 + chance.below(most)).to_string();
    if kind == "title" || kind == "words" {
        let word = chance.one(&WORDS).copied().unwrap_or("post");
        return match (kind, field) {
            (_, name) if name == "name" || name.ends_with("/name") => format!("{word} {number}"),
            ("title", _) => format!("{word} {number}"),
            _ => word.to_owned(),
        };
    }
    if chance.percent(15) {
        // In a row an `x` after a number makes it the count.
        let all = if field.contains('/') { &UNREADABLE[1..] } else { &UNREADABLE[..] };
        return chance.one(all).copied().unwrap_or("/").to_owned();
    }
    match field.rsplit('/').next().unwrap_or_default() {
        "quantity" => digits(chance, 40),
        "spare_each" | "extra_percent" => digits(chance, 20),
        "gauge" => digits(chance, 20),
        "number" => digits(chance, 90),
        "price" => format!("{}.{}0", digits(chance, 30), chance.below(10)),
        _ if chance.percent(40) => {
            let fraction = chance.one(&FRACTIONS).copied().unwrap_or("1/2");
            format!("{} {fraction}", digits(chance, 60))
        }
        _ => digits(chance, 60),
    }
}

/// A list as one text: as it is written by hand, as rows of a spreadsheet with or without a first row that names the
/// columns, or something that is none.
pub(super) fn whole(chance: &mut Chance, number: usize) -> String {
    let word = chance.one(&WORDS).copied().unwrap_or("post");
    let [a, b, c] = [1, 2, 3].map(|_| 1 + chance.below(9));
    let [long, short] = [60, 20].map(|least| least + chance.below(40));
    let texts = [
        format!("{word} {number}: {a} @ {short} 1/2, {b} @ {long}"),
        format!("{a} @ {short} 3/4\n{long}\n{b} @ {short}"),
        format!("{long} at {a}.{b}0; {short} 1/2 at {c}.00 max {b}"),
        format!("{a} @ {long} × {b} 1/2 × {c}, {short} × {c} × 1"),
        format!("Qty\tName\tLength\n{a}\t{word} {number}\t{long}\n{b}\tnext {word}\t{short} 1/2"),
        format!("{a}\t{word} {number}\t{short}\n{b}\t{word}\t{long}"),
        format!("{word} {number}, @ {a} :: {short} //, "),
    ];
    chance.one(&texts).cloned().unwrap_or_default()
}

/// One key of the keypad, and what it writes here.
pub(super) fn pressed(chance: &mut Chance, field: &str, writing: &mut Writing) -> Pressed {
    let is_number = matches!(field, "quantity" | "gauge" | "number" | "price");
    if !is_number && writing.ends_in_whole() && chance.percent(30) {
        let fraction = chance.one(&FRACTIONS).copied().unwrap_or("1/2");
        writing.put(&format!(" {fraction}"));
        return Pressed { id: fraction.to_owned(), tab: Some("16") };
    }
    let digit = if writing.is_empty() { 1 + chance.below(9) } else { chance.below(10) };
    writing.put(&digit.to_string());
    Pressed { id: digit.to_string(), tab: None }
}
