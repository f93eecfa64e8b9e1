//! Rules, limits and refusals of the strength check.

use super::fields::FIELDS;
use super::{CALCULATOR, Wood};
use crate::calculators::trial::Trial;
use crate::measure::Tape;
use crate::sheet::{Answer, Caution, Figure, Kind, Refusal, Source, Value};

const TRIAL: Trial = Trial(&CALCULATOR);

fn refusal(pairs: &[(&str, &str)]) -> Refusal {
    TRIAL.ask(pairs).refusals.into_iter().next().expect("a refusal")
}

fn figure<'a>(answer: &'a Answer, id: &str) -> &'a Figure {
    let found = answer.figures.iter().find(|figure| figure.id == id);
    found.unwrap_or_else(|| panic!("no figure {id}"))
}

fn inches(answer: &Answer, id: &str) -> f64 {
    match figure(answer, id).value {
        Value::Length(length, _) => length.to_f64(),
        Value::Real(inches, 3, "in") => inches,
        ref other => panic!("{id}: {other:?}"),
    }
}

fn real(answer: &Answer, id: &str) -> f64 {
    match figure(answer, id).value {
        Value::Real(number, ..) => number,
        ref other => panic!("{id}: {other:?}"),
    }
}

fn verdict(pairs: &[(&str, &str)]) -> String {
    match TRIAL.answer(pairs).headline.value {
        Value::Words(words) => words.to_string(),
        other => panic!("{other:?}"),
    }
}

#[track_caller]
fn check_near(found: f64, expected: f64, within: f64) {
    assert!((found - expected).abs() <= within, "{found} is not {expected} ± {within}");
}

#[test]
fn the_verdict_has_three_words() {
    // 250 lb in the middle of a flat 2×6, by hand: put on suddenly, 2 × 250 × L ÷ (4 × 2.0625) stays
    // under 1.6 × 850 up to L = 22.44 in; sag passes up to 31 1/2 in.
    assert_eq!(verdict(&[("span", "22"), ("middle_supports", "0")]), "Stiff");
    assert_eq!(verdict(&[("span", "23"), ("middle_supports", "0")]), "Don't");
    assert_eq!(verdict(&[("span", "30"), ("middle_supports", "0")]), "Don't");
    // 100 × 44³ ÷ (48 × 1 200 000 × 1.546875) = 0.096, over 44 ÷ 600 = 0.073.
    let shelf = [("span", "44"), ("load", "point"), ("pounds", "100"), ("limit", "shelf")];
    assert_eq!(verdict(&shelf), "Springy");
}

#[test]
fn the_longest_span_is_the_shorter_of_the_two_limits() {
    let answer = TRIAL.answer(&[("span", "24"), ("middle_supports", "0")]);
    // 1.6 × 850 × S ÷ (2 × km P) = 1360 × 2.0625 ÷ 125.
    check_near(inches(&answer, "longest_span"), 22.44, 0.001);
    let Value::Length(by_sag, _) = answer.tables[1].rows[0][1] else { panic!() };
    check_near(by_sag.to_f64(), 31.46, 0.01);
}

#[test]
fn two_pieces_that_share_a_load_sag_half_as_far() {
    let one = TRIAL.answer(&[]);
    let two = TRIAL.answer(&[("sharing", "2")]);
    check_near(inches(&two, "sag") * 2.0, inches(&one, "sag"), 0.0005);
    assert_eq!(one.tables[0].rows[3][1], figure(&two, "sag").value);
}

#[test]
fn each_published_load_case_is_named_with_its_document() {
    let cases = [
        ("person", "one person, 250 lb", "903.6"),
        ("pair", "two people, 250 lb", "903.6"),
        ("row", "a row of people, 120 lb", "ICC 300"),
        ("step", "someone steps up on it, 300 lb", "ICC 300"),
    ];
    for (load, words, document) in cases {
        let answer = TRIAL.answer(&[("load", load), ("span", "20")]);
        assert!(answer.notes.iter().any(|note| note.to_string().contains(words)), "{load}");
        let named = answer.working.sources.iter().any(|source| source.words().contains(document));
        assert!(named, "{load}");
    }
}

#[test]
fn a_standing_load_is_given_years_and_a_person_comes_suddenly() {
    let soil = TRIAL.answer(&[("load", "soil"), ("span", "36")]);
    check_near(inches(&soil, "later_sag"), inches(&soil, "sag") * 1.5, 0.001);
    let person = TRIAL.answer(&[]);
    check_near(inches(&person, "sudden_sag"), inches(&person, "sag") * 2.0, 0.001);
    check_near(real(&person, "sudden_stress"), real(&person, "stress") * 2.0, 1e-9);
    assert!(!soil.figures.iter().any(|figure| figure.id.starts_with("sudden")));
}

#[test]
fn a_load_that_comes_suddenly_counts_twice_in_the_verdict() {
    // By hand: 250 × 24 ÷ (4 × 2.0625) = 727 psi at rest, within 850; 1455 psi suddenly, over the
    // 1.6 × 850 = 1360 of a moment.
    let bay = [("span", "24")];
    assert_eq!(verdict(&bay), "Don't");
    check_near(real(&TRIAL.answer(&bay), "stress"), 727.3, 0.05);
    TRIAL.check_note(
        &bay,
        "Don't: put on suddenly, as when someone sits down, the load strains it twice as much, over \
         what is let pass for a moment. Put in a support, or go deeper.",
    );
    // 500 lb spread evenly have the same moment, 500 × 24 ÷ 8 = 250 × 24 ÷ 4, but stand there.
    assert_eq!(verdict(&[("span", "24"), ("load", "even"), ("pounds_per_foot", "250")]), "Stiff");
}

#[test]
fn it_starts_with_no_middle_support_and_says_what_it_counts() {
    // By hand: 1×4 flat, 20 in, 250 lb: 250 × 20³ ÷ (48 × 1 200 000 × 3.5 × 0.75³ ÷ 12) = 0.282.
    let slat = TRIAL.answer(&[("across", "3 1/2"), ("depth", "3/4"), ("span", "20")]);
    check_near(inches(&slat, "sag"), 0.282, 0.0005);
    assert_eq!(slat.headline.from, "with no middle support");
    assert_eq!(TRIAL.answer(&[("middle_supports", "1")]).headline.from, "with 1 middle support");
    assert_eq!(TRIAL.answer(&[("load", "end"), ("span", "6")]).headline.from, "");
}

#[test]
fn loads_at_marked_places_tell_what_each_support_takes() {
    let answer = TRIAL.answer(&[
        ("load", "several"),
        ("span", "40"),
        ("places", "10, 10, 30"),
        ("each", "40"),
        ("and_even", "12"),
    ]);
    // Moments about the right support: (80 × 30 + 40 × 10) ÷ 40, and half of 40 lb spread.
    check_near(real(&answer, "left_support"), 70.0 + 20.0, 1e-9);
    check_near(real(&answer, "right_support"), 50.0 + 20.0, 1e-9);
    assert!(!answer.figures.iter().any(|figure| figure.id == "longest_span"));
}

#[test]
fn an_overhang_may_sag_as_a_span_twice_as_long() {
    // IRC Table R301.7, note b.
    let answer = TRIAL.answer(&[("load", "end"), ("span", "12"), ("pounds", "100")]);
    check_near(inches(&answer, "most_sag"), 24.0 / 360.0, 1e-3);
    // P L³ ÷ (3 E I), I = 5.5 × 1.5³ ÷ 12.
    check_near(inches(&answer, "sag"), 100.0 * 1728.0 / (3.0 * 1.2e6 * 1.546_875), 2e-4);
}

#[test]
fn a_round_rail_has_no_edge_to_stand_on() {
    let answer = TRIAL.answer(&[("shape", "round"), ("diameter", "1 1/4"), ("span", "24")]);
    assert!(!answer.figures.iter().any(|figure| figure.id == "turned_ratio"));
    assert_eq!(figure(&answer, "least_depth").label, "Least diameter");
}

#[test]
fn every_species_offered_is_in_the_table_and_reads() {
    let field = FIELDS.iter().find(|field| field.id == "wood").expect("the wood field");
    let Kind::Choice(choices) = field.kind else { panic!() };
    for choice in choices {
        if !["unknown", "own"].contains(&choice.id) {
            let wood = Wood::of_species(choice.id, 12.0).unwrap_or_else(|| panic!("{}", choice.id));
            assert_eq!(wood.species.map(|(species, _)| species.name), Some(choice.label));
            assert_eq!(TRIAL.ask(&[("wood", choice.id)]).refusals, [], "{}", choice.id);
        }
    }
}

#[test]
fn a_wood_from_memory_says_so() {
    let ipe = TRIAL.answer(&[("wood", "ipe")]);
    assert!(ipe.notes.iter().any(|note| note.to_string().contains("from memory, unverified")));
    assert!(ipe.working.sources.iter().any(|source| matches!(source, Source::Unverified(_))));
    let fir = TRIAL.answer(&[("wood", "douglas_fir")]);
    assert!(!fir.notes.iter().any(|note| note.to_string().contains("unverified")));
}

#[test]
fn wet_wood_is_less_stiff() {
    let sag =
        |moisture| inches(&TRIAL.answer(&[("wood", "white_oak"), ("moisture", moisture)]), "sag");
    let green = sag("40");
    assert!(sag("12") < sag("18") && sag("18") < green);
    check_near(sag("25"), green, 1e-9);
}

#[test]
fn it_is_always_a_check_and_not_engineering() {
    assert_eq!(TRIAL.answer(&[]).cautions, [Caution::Load]);
    assert_eq!(
        TRIAL.answer(&[]).cautions[0].line().to_string(),
        "A check, not engineering. Local code and a licensed engineer decide."
    );
}

#[test]
fn a_beam_that_bends_too_far_names_the_depth_that_is_enough() {
    let lath = [("across", "1 1/2"), ("depth", "1/4"), ("middle_supports", "0")];
    let refusal = refusal(&lath);
    assert_eq!((refusal.field, refusal.code), ("depth", "bends-too-far"));
    let way_out = refusal.way_out.expect("a way out");
    let set = way_out.texts(Tape::SIXTEENTHS);
    let [(field, text)] = set.as_slice() else { panic!() };
    let enough = [lath[0], (field, text.as_str()), lath[2]];
    assert_eq!(verdict(&enough), "Stiff");
    // A sixteenth less is not enough.
    let thinner = format!("{text} - 1/16 in");
    assert_ne!(verdict(&[lath[0], ("depth", &thinner), lath[2]]), "Stiff");
    let rod = [("shape", "round"), ("diameter", "1/4"), ("middle_supports", "0")];
    assert_eq!(self::refusal(&rod).field, "diameter");
}

#[test]
fn a_load_beyond_the_end_is_refused() {
    let refusal = refusal(&[("load", "several"), ("span", "20"), ("places", "12, 24")]);
    assert_eq!((refusal.field, refusal.code), ("places", "load-off-the-span"));
    assert_eq!(refusal.sentence.to_string(), "A load stands at 24 in, off the span of 20 in.");
}

#[test]
fn no_load_at_all_is_refused() {
    let refusal = refusal(&[("load", "several"), ("places", "")]);
    assert_eq!((refusal.field, refusal.code), ("places", "no-load"));
    assert_eq!(refusal.sentence.to_string(), "Nothing lies on it. Say where the loads stand.");
}

#[test]
fn a_demo_bench_top_is_stiff_with_its_middle_rail_only() {
    assert_eq!(verdict(&[]), "Don't");
    assert_eq!(verdict(&[("middle_supports", "1")]), "Stiff");
}
