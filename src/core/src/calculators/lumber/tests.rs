//! Rules, limits and refusals about lumber.

use super::CALCULATOR;
use super::fields::FIELDS;
use super::question::wood;
use crate::calculators::trial::{Trial, inches};
use crate::measure::{Number, Tape};
use crate::sheet::{Answer, Figure, Kind, Refusal, Source, Value};

const TRIAL: Trial = Trial(&CALCULATOR);

fn refusal(pairs: &[(&str, &str)]) -> Refusal {
    TRIAL.ask(pairs).refusals.into_iter().next().expect("a refusal")
}

fn figure<'a>(answer: &'a Answer, id: &str) -> &'a Value {
    let found = core::iter::once(&answer.headline).chain(&answer.figures).find(|f| f.id == id);
    found.map(|Figure { value, .. }| value).unwrap_or_else(|| panic!("no figure {id}"))
}

fn nearest(text: &str) -> Value {
    Value::Length(inches(text), Default::default())
}

fn money(numer: i128, denom: i128) -> Value {
    Value::Exact(Number::ratio(numer, denom).expect("a price"), 2, "")
}

#[test]
fn a_tag_is_turned_into_a_real_size() {
    let dry = TRIAL.answer(&[("section", "2x10")]);
    assert_eq!(figure(&dry, "width"), &nearest("9 1/4"));
    assert_eq!(figure(&dry, "thickness"), &nearest("1 1/2"));
    let green = TRIAL.answer(&[("section", "2x10"), ("seasoning", "green")]);
    assert_eq!(figure(&green, "width"), &nearest("9 1/2"));
    let rows = &dry.tables[0].rows;
    assert_eq!(rows[1][1..], [nearest("1 9/16"), nearest("9 1/2")]);
}

#[test]
fn what_was_measured_comes_before_the_table() {
    let answer = TRIAL.answer(&[("section", "2x10"), ("measured_width", "9 7/16")]);
    assert_eq!(figure(&answer, "width"), &nearest("9 7/16"));
    assert!(answer.notes.iter().any(|note| {
        note.to_string() == "This board is 3/16 in over the table. It may still be wet, and shrink."
    }));
}

#[test]
fn a_size_the_standard_lacks_can_still_be_measured() {
    let odd = [("section", "other"), ("nominal_width", "13")];
    let refusal = refusal(&odd);
    assert_eq!((refusal.field, refusal.code), ("nominal_width", "no-such-width"));
    assert_eq!(refusal.sentence.to_string(), "The standard has no nominal width of 13 in.");
    let way_out = refusal.way_out.expect("a way out");
    assert_eq!(way_out.texts(Tape::SIXTEENTHS), [("nominal_width", "12 in".to_owned())]);
    let measured = TRIAL.answer(&[odd[0], odd[1], ("measured_width", "12 1/4")]);
    assert_eq!(figure(&measured, "width"), &nearest("12 1/4"));
    assert!(measured.tables.is_empty());
}

#[test]
fn both_odd_sides_are_refused_together() {
    let odd = [("section", "other"), ("nominal_thickness", "2 1/8"), ("nominal_width", "13")];
    let codes: Vec<&str> = TRIAL.ask(&odd).refusals.iter().map(|refusal| refusal.code).collect();
    assert_eq!(codes, ["no-such-thickness", "no-such-width"]);
}

#[test]
fn a_price_is_turned_into_the_other_two() {
    let price = |per| {
        TRIAL.answer(&[("ask", "amount"), ("section", "2x6"), ("price", "7.20"), ("per", per)])
    };
    let by_piece = price("piece");
    assert_eq!(figure(&by_piece, "per_foot"), &money(9, 10));
    assert_eq!(figure(&by_piece, "per_board_foot"), &money(9, 10));
    assert_eq!(figure(&by_piece, "total"), &money(216, 5));
    assert_eq!(figure(&price("foot"), "per_piece"), &money(288, 5));
    assert_eq!(figure(&price("board_foot"), "per_piece"), &money(288, 5));
}

#[test]
fn thin_stock_counts_as_an_inch_and_says_so() {
    let thin = TRIAL.answer(&[
        ("ask", "amount"),
        ("section", "other"),
        ("nominal_thickness", "1/2"),
        ("nominal_width", "12"),
        ("length", "1'"),
        ("count", "1"),
    ]);
    assert_eq!(figure(&thin, "board_feet"), &Value::Exact(Number::ONE, 2, "bd ft"));
    assert!(thin.notes.iter().any(|note| note.to_string().starts_with("Thinner than 4/4 counts")));
}

#[test]
fn a_wood_cannot_hold_more_water_than_it_has_room_for() {
    let refusal = refusal(&[("ask", "weight"), ("wood", "white_oak"), ("moisture", "120")]);
    assert_eq!((refusal.field, refusal.code), ("moisture", "too-wet"));
    // Gb = 0.73 ÷ (1 + 0.265 × 0.73) = 0.6117; 100 (1.54 - Gb) ÷ (1.54 Gb) = 98.5.
    assert_eq!(refusal.sentence.to_string(), "This wood cannot hold more than 98 % of water.");
    assert_eq!(
        refusal.way_out.expect("a way out").texts(Tape::SIXTEENTHS),
        [("moisture", "98".to_owned())]
    );
}

#[test]
fn every_wood_offered_has_a_gravity() {
    let field = FIELDS.iter().find(|field| field.id == "wood").expect("the wood field");
    let Kind::Choice(choices) = field.kind else { panic!() };
    for (i, choice) in choices.iter().enumerate() {
        let wood = wood(choice.id).unwrap_or_else(|| panic!("{}", choice.id));
        assert_eq!(wood.name, choice.label);
        assert!(choices[..i].iter().all(|other| other.id != choice.id), "{} twice", choice.id);
    }
}

#[test]
fn a_gravity_from_memory_says_so() {
    let ipe = TRIAL.answer(&[("ask", "weight"), ("wood", "ipe"), ("moisture", "12")]);
    assert!(ipe.notes.iter().any(|note| note.to_string().contains("from memory, unverified")));
    assert!(ipe.working.sources.iter().any(|source| matches!(source, Source::Unverified(_))));
}

#[test]
fn boards_for_a_width_are_rounded_up_once() {
    let cover = |gap, waste| {
        let pairs = [("ask", "cover"), ("cover_width", "55"), ("gap", gap), ("waste", waste)];
        let answer = TRIAL.answer(&pairs);
        (figure(&answer, "rows").clone(), figure(&answer, "boards").clone())
    };
    let counts = |rows, boards| (Value::Count(rows), Value::Count(boards));
    assert_eq!(cover("0", "0"), counts(10, 10));
    assert_eq!(cover("0", "15"), counts(10, 12));
    // (55 + 1/2) ÷ 6 = 9.25.
    assert_eq!(cover("1/2", "0"), counts(10, 10));
    let refusal = refusal(&[("ask", "cover"), ("waste", "100")]);
    assert_eq!(
        refusal.sentence.to_string(),
        "With all of it waste, no number of boards is enough."
    );
}
