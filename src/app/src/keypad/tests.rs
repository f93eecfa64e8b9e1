//! What each key writes, and how few taps a measure takes.

use reckoner_core::measure::{Fineness, Tape, length};

use super::{Key, Page, SetOfKeys, Typed, keys, pages, press};

const MINUS: Key = Key::Sign("minus", "-");
const SLASH: Key = Key::Mark("slash", "/");
const SIXTEENTHS: Tape = Tape::SIXTEENTHS;

/// Presses keys at the end of a text.
fn pressed(text: &str, keys: &[Key]) -> String {
    let end = |text: &str| text.encode_utf16().count();
    keys.iter().fold(text.to_owned(), |text, key| press(&text, end(&text)..end(&text), *key).text)
}

fn fraction(above: u8, below: u8) -> Key {
    Key::Fraction(above, below)
}

#[test]
fn digits_and_a_fraction_are_a_measure() {
    let keys = [Key::Digit("3"), Key::Digit("7"), fraction(7, 8)];
    assert_eq!(pressed("", &keys), "37 7/8");
}

#[test]
fn every_key_writes_what_reads_back() {
    for (before, key, after) in [
        ("37", fraction(7, 8), "37 7/8"),
        ("", fraction(7, 8), "7/8"),
        ("61 3/8 - ", fraction(1, 2), "61 3/8 - 1/2"),
        ("(", fraction(1, 2), "(1/2"),
        ("2 ft ", fraction(1, 2), "2 ft 1/2"),
        ("3 3/8", MINUS, "3 3/8 - "),
        ("3 3/8 ", MINUS, "3 3/8 - "),
        ("", MINUS, "-"),
        ("(", MINUS, "(-"),
        ("2", Key::Word("ft"), "2 ft "),
        ("45", Key::Word("mm"), "45 mm"),
        ("3", Key::Word("@"), "3 @ "),
        ("10", Key::Word("to"), "10 to "),
        ("1 3/4", Key::Mark("comma", ", "), "1 3/4, "),
        ("13", Key::Mark("slash", "/"), "13/"),
        ("12.", Key::Digit("5"), "12.5"),
    ] {
        assert_eq!(pressed(before, &[key]), after, "{before:?} {key:?}");
    }
}

#[test]
fn a_second_fraction_takes_the_place_of_the_first() {
    assert_eq!(pressed("37 7/8", &[fraction(5, 8)]), "37 5/8");
    assert_eq!(pressed("7/8", &[fraction(15, 16)]), "15/16");
    // A division by hand is not a fraction of the tape.
    assert_eq!(pressed("(31 - 1/8)/2", &[fraction(1, 2)]), "(31 - 1/8)/2 1/2");
}

#[test]
fn backspace_takes_away_what_one_key_wrote() {
    for (before, after) in [
        ("37 7/8", "37"),
        ("7/8", ""),
        ("3 3/8 - ", "3 3/8"),
        ("45 mm", "45"),
        ("2 ft ", "2"),
        ("1 3/4, ", "1 3/4"),
        ("3 @ ", "3"),
        ("37", "3"),
        ("3 ", "3"),
        ("A + B", "A +"),
        ("3⅜", "3"),
        ("", ""),
    ] {
        assert_eq!(pressed(before, &[Key::Backspace]), after, "{before:?}");
    }
}

#[test]
fn a_key_writes_over_the_selection_and_at_the_caret() {
    let typed = |text: &str, caret| Typed { text: text.to_owned(), caret };
    assert_eq!(press("40", 0..2, Key::Digit("3")), typed("3", 1));
    assert_eq!(press("40", 0..0, Key::Digit("3")), typed("340", 1));
    assert_eq!(press("40", 1..1, Key::Backspace), typed("0", 0));
    assert_eq!(press("40", 0..2, Key::Backspace), typed("", 0));
    assert_eq!(press("3 - 4", 1..1, fraction(1, 2)), typed("3 1/2 - 4", 5));
    // Browsers count UTF-16 units: the sign takes two.
    assert_eq!(press("𝟛4", 2..2, Key::Digit("5")), typed("𝟛54", 3));
    assert_eq!(press("40", 7..9, Key::Digit("5")), typed("405", 3));
}

/// How many taps from the digits it takes to press a key, tabs included.
fn taps(key: Key) -> usize {
    let is_on = |page: Page| {
        keys(page, SetOfKeys::Length, SIXTEENTHS, false).iter().flatten().any(|k| *k == key)
    };
    let tabs = pages(SetOfKeys::Length, SIXTEENTHS);
    if is_on(Page::Digits) {
        1
    } else if tabs.iter().any(|tab| is_on(*tab)) {
        2
    } else if tabs.iter().any(|tab| is_on(tab.after(*tab))) {
        3
    } else {
        panic!("{key:?} is nowhere")
    }
}

#[test]
fn any_line_of_the_tape_takes_five_taps_at_most() {
    for below in [2_u8, 4, 8, 16, 32, 64] {
        for above in (1..below).step_by(2) {
            // Two digits, then the fraction.
            let all = taps(Key::Digit("3")) + taps(Key::Digit("7")) + taps(fraction(above, below));
            let most = if below <= 32 { 4 } else { 5 };
            assert!(all <= most, "37 {above}/{below} takes {all} taps");
        }
    }
}

#[test]
fn the_sixteenths_stand_in_the_order_of_the_tape() {
    let fractions = keys(Page::Sixteenths, SetOfKeys::Length, SIXTEENTHS, false);
    let all: Vec<_> = fractions
        .iter()
        .flatten()
        .filter_map(|key| match key {
            Key::Fraction(above, below) => Some(length(&format!("{above}/{below}")).expect("read")),
            _ => None,
        })
        .collect();
    let sixteenths = (1..16).map(|n| length(&format!("{n}/16")).expect("read"));
    assert_eq!(all, sixteenths.collect::<Vec<_>>());
}

/// Tapes that a shop has, with the fraction tabs in their order.
const TAPES: [(Tape, &[Page]); 6] = [
    (Tape::Inches(Fineness::Eighth), &[Page::Sixteenths, Page::ThirtySeconds, Page::SixtyFourths]),
    (SIXTEENTHS, &[Page::Sixteenths, Page::ThirtySeconds, Page::SixtyFourths]),
    (
        Tape::FeetAndInches(Fineness::ThirtySecond),
        &[Page::ThirtySeconds, Page::Sixteenths, Page::SixtyFourths],
    ),
    (
        Tape::Inches(Fineness::SixtyFourth),
        &[Page::SixtyFourths, Page::ThirtySeconds, Page::Sixteenths],
    ),
    (Tape::Millimetres(0), &[]),
    (Tape::HalfMillimetres, &[]),
];

#[test]
fn no_key_stands_twice_on_a_page() {
    for set in [SetOfKeys::Length, SetOfKeys::Wide, SetOfKeys::Sizes, SetOfKeys::Number] {
        for (tape, _) in TAPES {
            for page in pages(set, tape) {
                let rows = keys(page, set, tape, false);
                let mut ids: Vec<String> = rows.iter().flatten().map(|key| key.id()).collect();
                ids.sort();
                ids.dedup();
                assert_eq!(ids.len(), 16, "{set:?} {page:?} {tape:?}");
            }
        }
    }
}

#[test]
fn the_fractions_of_the_tape_are_the_first_after_the_digits() {
    for (tape, wanted) in TAPES {
        let tabs = pages(SetOfKeys::Length, tape);
        let fractions: Vec<Page> = tabs.iter().copied().filter(|tab| tab.is_fractions()).collect();
        assert_eq!(fractions, wanted, "{tape:?}");
        assert_eq!(tabs[0], Page::Digits);
        if let Some(first) = wanted.first() {
            assert_eq!(tabs[1], *first, "{tape:?}");
        }
    }
    // A tape of decimal inches takes fractions too, after what it is read in.
    let tabs = pages(SetOfKeys::Length, Tape::DecimalInches(3));
    assert_eq!(tabs[..3], [Page::Digits, Page::Signs, Page::Sixteenths]);
}

#[test]
fn a_fraction_that_is_no_line_of_the_tape_is_written_on_the_first_page() {
    for set in [SetOfKeys::Length, SetOfKeys::Wide] {
        let first = keys(Page::Digits, set, SIXTEENTHS, false);
        let by_hand = ["3", "7", "space", "1", "3", "slash", "2", "0"];
        let all: Vec<Key> = by_hand
            .iter()
            .map(|id| *first.iter().flatten().find(|key| key.id() == *id).expect(id))
            .collect();
        assert_eq!(pressed("", &all), "37 13/20");
    }
    // Decimals are at hand on every tape, and so is the stroke, among the signs.
    for (tape, _) in TAPES {
        let is_on = |page: Page, key: Key| {
            keys(page, SetOfKeys::Length, tape, false).iter().flatten().any(|it| *it == key)
        };
        assert!(is_on(Page::Digits, Key::Digit(".")) && is_on(Page::Signs, SLASH), "{tape:?}");
    }
}

#[test]
fn the_left_hand_has_the_column_of_the_thumb_on_the_left() {
    let [first, ..] = keys(Page::Digits, SetOfKeys::Length, SIXTEENTHS, true);
    assert_eq!(first[0], Key::Backspace);
    assert_eq!(first[1], Key::Digit("1"));
}

#[test]
fn after_a_fraction_come_digits_again() {
    assert_eq!(Page::Sixteenths.after_key(fraction(1, 2)), Page::Digits);
    assert_eq!(Page::Signs.after_key(MINUS), Page::Digits);
    assert_eq!(Page::Signs.after_key(Key::Mark("open", "(")), Page::Signs);
    assert_eq!(Page::SixtyFourths.after(Page::SixtyFourths), Page::UpperSixtyFourths);
    assert_eq!(Page::UpperSixtyFourths.after(Page::SixtyFourths), Page::SixtyFourths);
}
