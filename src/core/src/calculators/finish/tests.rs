//! Rules and limits of finishing.

use super::{CALCULATOR, Cans, SoldBy};
use crate::calculators::trial::Trial;
use crate::measure::Number;
use crate::sheet::{Answer, Caution, Figure, Source, Value};

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
    let prices = [prices.0, prices.1].map(|it| it.map(Number::whole));
    let cans = Cans::that_hold(ratio(gallons.0, gallons.1), SoldBy::Gallon, &prices);
    assert_eq!(cans.expect("a few cans").in_words(), words);
}

/// Litres are 473 176 473 / 125 000 000 of gallons (NIST SP 811); the cans are counted by hand.
#[track_caller]
fn check_litres(litres: (i128, i128), prices: [Option<i64>; 4], words: &str) {
    let gallons = (ratio(litres.0, litres.1) / ratio(473_176_473, 125_000_000)).expect("small");
    let prices = prices.map(|it| it.map(Number::whole));
    let cans = Cans::that_hold(gallons, SoldBy::Litre, &prices).expect("a few cans");
    assert_eq!(cans.in_words(), words);
}

#[test]
fn litres_without_prices_leave_least_over_in_the_fewest_cans() {
    check_litres((1, 10), [None; 4], "1 × 0.75 L");
    check_litres((3, 4), [None; 4], "1 × 0.75 L");
    check_litres((1, 1), [None; 4], "1 × 1 L");
    // 1.25 L cannot be had; 1.5 L is twice 0.75.
    check_litres((5, 4), [None; 4], "2 × 0.75 L");
    check_litres((7, 4), [None; 4], "1 × 1 L and 1 × 0.75 L");
    // Two of 2.5 L hold 5 L too, in one can more; eight of 1 L hold 8 L in four more.
    check_litres((5, 1), [None; 4], "1 × 5 L");
    check_litres((8, 1), [None; 4], "1 × 5 L and 3 × 1 L");
    check_litres((1000, 1), [None; 4], "200 × 5 L");
}

#[test]
fn litres_with_prices_are_the_cheapest() {
    // 5 L at 60, 2.5 at 35, 1 at 18, 0.75 at 15.
    let all = [Some(60), Some(35), Some(18), Some(15)];
    // 3.5 L: 2.5 and 1 are 53; one of 5 L is 60; four of 1 L are 72.
    check_litres((7, 2), all, "1 × 2.5 L and 1 × 1 L");
    // 4 L: 2.5 and twice 0.75 are 65, 2.5 and twice 1 are 71; one of 5 L is 60.
    check_litres((4, 1), all, "1 × 5 L");
    // Only the can that has a price.
    check_litres((4, 1), [None, None, Some(18), None], "4 × 1 L");
    // 0.75 L cans at 3 each are the cheapest by the litre: 2 L takes three, 9, where two of 1 L are 10.
    check_litres((2, 1), [None, None, Some(5), Some(3)], "3 × 0.75 L");
    // 1 L: one of 1 L at 5 is less than two of 0.75 at 6.
    check_litres((1, 1), [None, None, Some(5), Some(3)], "1 × 1 L");
}

/// Every choice of up to 12 cans of each size, gone through in the plainest way.
#[test]
fn no_other_cans_are_cheaper() {
    for (sold, prices) in [
        (SoldBy::Gallon, vec![40, 12]),
        (SoldBy::Litre, vec![61, 33, 14, 11]),
        (SoldBy::Litre, vec![70, 30, 13, 10]),
        (SoldBy::Litre, vec![61, 33, 11, 9]),
    ] {
        let known: Vec<_> = prices.iter().map(|price| Some(Number::whole(*price))).collect();
        let sizes = sold.sizes();
        for wanted in 1..=36_u32 {
            let mut least = i64::MAX;
            let mut counts = vec![0_u32; sizes.len()];
            'all: loop {
                let held: u32 = sizes.iter().zip(&counts).map(|(size, n)| size.quarters * n).sum();
                let cost: i64 =
                    prices.iter().zip(&counts).map(|(price, n)| price * i64::from(*n)).sum();
                if held >= wanted {
                    least = least.min(cost);
                }
                for at in 0..=counts.len() {
                    let Some(count) = counts.get_mut(at) else { break 'all };
                    *count += 1;
                    if *count <= 12 {
                        break;
                    }
                    *count = 0;
                }
            }
            let mut gallons = ratio(wanted.into(), 4);
            if sold == SoldBy::Litre {
                gallons = (gallons / ratio(473_176_473, 125_000_000)).expect("small");
            }
            let cans = Cans::that_hold(gallons, sold, &known).expect("a few cans");
            if sold == SoldBy::Gallon && wanted > 12 {
                continue;
            }
            assert_eq!(cans.cost, Some(Number::whole(least)), "{sold:?} {wanted}: {cans:?}");
        }
    }
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

/// Areas are arithmetic. What trade texts give of coverage, later coats and the reserve stands in no document that can be named.
#[test]
fn the_sheet_names_its_sources() {
    let sources = TRIAL.answer(&[]).working.sources;
    assert_eq!(sources, [Source::Arithmetic, Source::CommonPractice]);
    TRIAL.check_note(
        &[("surface", "rough")],
        "Finish is taken to cover 100 sq ft/gal to 200 sq ft/gal here; sources span 75 sq ft/gal to 650 sq ft/gal. Read \
         the can.",
    );
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
