//! Tape: hand-worked cases M1, M2 and M4 of the project's rules of the trade.

use reckoner_core::calculators::tape::CALCULATOR;
use reckoner_core::measure::text::NoNames;
use reckoner_core::measure::{Length, length};
use reckoner_core::sheet::{Bench, Entries, Face, Value, face};

fn headline(pairs: &[(&str, &str)]) -> (Length, Face) {
    let entries = Entries::from_pairs(pairs.iter().copied());
    let sheet = CALCULATOR.sheet(&entries, &Bench::default(), &NoNames);
    let headline = sheet.answer.expect("an answer").headline;
    match headline.value {
        Value::Length(length, _) => (length, face(&headline.value, &Bench::default())),
        Value::Lengths(ref marks) => {
            let first = marks[0];
            (first, face(&Value::Length(first, Default::default()), &Bench::default()))
        }
        other => panic!("{other:?}"),
    }
}

/// Source: [WH] M1, 61 3/8 - 2 × 3 1/2 - 2 × 3/4 = 52 7/8 exactly.
#[test]
fn m1_two_leg_widths_and_two_cleats_from_an_overall_length() {
    let (exact, shown) = headline(&[("strip", "61 3/8 - 2 x 3 1/2 - 2 x 3/4")]);
    assert_eq!(exact, length("52 7/8").unwrap());
    let Face::Measure(shown) = shown else { panic!() };
    assert_eq!((shown.lean, shown.mark.to_string().as_str()), ("exact", "52 7/8 in"));
}

/// Source: [WH] M2, half of 37 3/16 = 18 19/32: on a tape in sixteenths midway between 18 9/16
/// and 18 5/8, and said so.
#[test]
fn m2_half_of_an_odd_sixteenth_is_midway() {
    let (exact, shown) = headline(&[("strip", "37 3/16"), ("divide", "half")]);
    assert_eq!(exact, length("18 19/32").unwrap());
    let Face::Measure(shown) = shown else { panic!() };
    assert_eq!(shown.in_words, "midway between 18 9/16 and 18 5/8 in");
}

/// Source: [WH] M4, wanted 23 5/8, starting on the 1 in line: read 24 5/8.
#[test]
fn m4_the_burnt_inch_is_added() {
    let (exact, _) = headline(&[("strip", "23 5/8"), ("start_mark", "1")]);
    assert_eq!(exact, length("24 5/8").unwrap());
}
