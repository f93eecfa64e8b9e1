//! Rules and limits of finishing.

use super::{CALCULATOR, Cans, Prices};
use crate::calculators::trial::Trial;
use crate::measure::Number;
use crate::sheet::{Answer, Caution, Figure, Value};

const TRIAL: Trial = Trial(&CALCULATOR);

fn figure<'a>(answer: &'a Answer, id: &str) -> &'a Figure {
    answer.figures.iter().find(|figure| figure.id == id).expect("this figure")
}

fn square_inches(answer: &Answer) -> Number {
    match figure(answer, "area").value {
        Value::Area(area) => area.in_square_inches(),
        _ => panic!("no area"),
    }
}

fn ratio(numer: i128, denom: i128) -> Number {
    Number::ratio(numer, denom).expect("a number in a test")
}

#[test]
fn each_choice_of_faces_counts_its_own() {
    let part = ("parts", "2 @ 10 x 4 x 1");
    let area = |faces| square_inches(&TRIAL.answer(&[part, ("faces", faces)]));
    assert_eq!(area("all"), Number::whole(2 * 2 * (40 + 10 + 4)));
    assert_eq!(area("not_underside"), Number::whole(2 * (40 + 20 + 8)));
    assert_eq!(area("show_face"), Number::whole(2 * 40));
    assert_eq!(area("ends"), Number::whole(2 * 8));
}

#[test]
fn a_later_coat_takes_three_quarters() {
    // 144 sq ft at 144 to the gallon: one gallon for the first coat.
    let part = [("parts", "1 @ 1728 x 12 x 1"), ("faces", "show_face"), ("surface", "can")];
    let gallons = |coats| {
        let pairs = [part[0], part[1], part[2], ("coverage", "144"), ("coats", coats)];
        match figure(&TRIAL.answer(&pairs), "gallons_most").value {
            Value::Exact(gallons, 2, "gal") => gallons,
            ref other => panic!("{other:?}"),
        }
    };
    assert_eq!(gallons("1"), Number::ONE);
    assert_eq!(gallons("2"), ratio(7, 4));
    assert_eq!(gallons("3"), ratio(5, 2));
}

#[test]
fn coverage_of_a_surface_is_given_with_both_ends() {
    let both = |surface| {
        let answer = TRIAL.answer(&[
            ("parts", "1 @ 4800 x 12 x 1"),
            ("faces", "show_face"),
            ("coats", "1"),
            ("surface", surface),
        ]);
        ["gallons_most", "gallons_least"].map(|id| figure(&answer, id).value.clone())
    };
    let gallons = |numer, denom| Value::Exact(ratio(numer, denom), 2, "gal");
    assert_eq!(both("rough"), [gallons(4, 1), gallons(2, 1)]);
    assert_eq!(both("weathered"), [gallons(8, 3), gallons(2, 1)]);
    assert_eq!(both("smooth"), [gallons(2, 1), gallons(1, 1)]);
}

#[track_caller]
fn check_cans(gallons: (i128, i128), prices: (Option<i64>, Option<i64>), words: &str) {
    let prices = Prices { gallon: prices.0.map(Number::whole), quart: prices.1.map(Number::whole) };
    let cans = Cans::that_hold(ratio(gallons.0, gallons.1), prices).expect("a few cans");
    assert_eq!(cans.in_words(), words);
}

#[test]
fn without_prices_the_cans_leave_least_over() {
    check_cans((1, 10), (None, None), "1 quart");
    check_cans((1, 2), (None, None), "2 quarts");
    check_cans((51, 100), (None, None), "3 quarts");
    check_cans((3, 4), (None, None), "3 quarts");
    check_cans((76, 100), (None, None), "1 gallon");
    check_cans((5, 4), (None, None), "1 gallon and 1 quart");
    check_cans((9, 5), (None, None), "2 gallons");
}

#[test]
fn a_reserve_is_asked_for_and_the_choice_of_cans_is_explained() {
    // By hand: 144 sq ft at 144 to the gallon is 1 gallon; 10 % more is 1.1, so a quart more.
    let part = [
        ("parts", "1 @ 1728 x 12 x 1"),
        ("faces", "show_face"),
        ("surface", "can"),
        ("coverage", "144"),
        ("coats", "1"),
    ];
    TRIAL.check(&part, &[("buy", "1 gallon and 1 quart")]);
    TRIAL.check(&[&part[..], &[("reserve", "0")]].concat(), &[("buy", "1 gallon")]);
    let reserve = figure(&TRIAL.answer(&part), "with_reserve").value.clone();
    assert_eq!(reserve, Value::Exact(ratio(11, 10), 2, "gal"));
    TRIAL.check_note(
        &part,
        "These cans leave least over. A gallon can cost less than its quarts: give both prices to \
         see.",
    );
    let priced = [&part[..], &[("gallon_price", "40"), ("quart_price", "15")]].concat();
    TRIAL.check_note(&priced, "The cheapest cans that hold enough, by the prices you gave.");
}

#[test]
fn with_prices_the_cheapest_cans_are_bought() {
    check_cans((3, 4), (Some(40), Some(12)), "3 quarts");
    check_cans((3, 4), (Some(30), Some(12)), "1 gallon");
    check_cans((5, 4), (Some(40), Some(9)), "5 quarts");
    check_cans((5, 4), (Some(40), Some(20)), "1 gallon and 1 quart");
    check_cans((5, 4), (Some(40), None), "2 gallons");
    check_cans((5, 4), (None, Some(20)), "5 quarts");
}

#[test]
fn the_rags_are_always_in_the_cautions() {
    assert_eq!(TRIAL.answer(&[]).cautions, [Caution::OilyRags]);
}

#[test]
fn bare_faces_bring_a_note() {
    let has_note = |faces| {
        let notes = TRIAL.answer(&[("faces", faces)]).notes;
        notes.iter().any(|note| note.to_string().starts_with("Faces left bare"))
    };
    assert!(has_note("show_face") && has_note("not_underside"));
    assert!(!has_note("all"));
}

#[test]
fn parts_beyond_the_limits_are_refused() {
    let sheet = TRIAL.ask(&[("parts", "200 @ 99999.99999999 x 99999.99999999 x 99999.99999999")]);
    assert_eq!((sheet.refusals[0].field, sheet.refusals[0].code), ("parts", "too-large"));
    assert_eq!(
        sheet.refusals[0].sentence.to_string(),
        "This is too large or too fine to work out exactly."
    );
}
