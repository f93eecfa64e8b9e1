//! Rules, limits and refusals about moisture.

use super::CALCULATOR;
use super::woods::WOODS;
use crate::calculators::trial::Trial;
use crate::measure::text::NoNames;
use crate::measure::{Length, length};
use crate::sheet::{Answer, Bench, Entries, Figure, Refusal, Sheet, Source, Value};
use crate::tables::species::{SPECIES, species};

const TRIAL: Trial = Trial(&CALCULATOR);

fn refusal(pairs: &[(&str, &str)]) -> Refusal {
    TRIAL.ask(pairs).refusals.into_iter().next().expect("a refusal")
}

fn inches(answer: &Answer, id: &str) -> f64 {
    let found = core::iter::once(&answer.headline).chain(&answer.figures).find(|f| f.id == id);
    match found {
        Some(Figure { value: Value::Length(length, _), .. }) => length.to_f64(),
        other => panic!("{id}: {other:?}"),
    }
}

#[track_caller]
fn check_near(found: f64, expected: f64, within: f64) {
    assert!((found - expected).abs() <= within, "{found} is not {expected} ± {within}");
}

/// Carries the way out out, and gives the sheet after it.
fn after(pairs: &[(&str, &str)], refusal: &Refusal) -> Sheet {
    let mut entries = Entries::from_pairs(pairs.iter().copied());
    let tape = Bench::default().tape;
    for (field, text) in refusal.way_out.as_ref().expect("a way out").texts(tape) {
        entries.set(field, text);
    }
    CALCULATOR.sheet(&entries, &Bench::default(), &NoNames)
}

#[test]
fn anything_from_28_percent_up_is_wet() {
    let width = |now| inches(&TRIAL.answer(&[("now", now)]), "width_later");
    check_near(width("28"), width("75"), 0.0);
    check_near(width("28"), 5.625 * (1.0 - 0.02806), 1e-9);
}

#[test]
fn the_likely_board_lies_between_the_least_and_the_most() {
    for (now, later) in [("28", "15"), ("19", "8"), ("12", "19"), ("8", "28")] {
        let answer = TRIAL.answer(&[("now", now), ("later", later)]);
        let [likely, least, most] = ["width_later", "least", "most"].map(|id| inches(&answer, id));
        let (low, high) = (least.min(most), least.max(most));
        assert!(low <= likely && likely <= high, "{now} to {later}: {low} {likely} {high}");
    }
}

#[test]
fn a_dry_board_gains_when_it_gets_wet() {
    let answer = TRIAL.answer(&[("now", "12"), ("later", "19")]);
    let change = answer.figures.iter().find(|figure| figure.id == "change").expect("the change");
    assert_eq!(change.label, "It gains");
    assert!(inches(&answer, "width_later") > 5.625);
}

#[test]
fn below_and_between_the_formula_is_refused_with_a_way_out() {
    let dry = [("later", "7")];
    let below = refusal(&dry);
    assert_eq!((below.field, below.code), ("later", "below-formula"));
    assert_eq!(
        below.sentence.to_string(),
        "The formula for ordinary softwood stands from 8 to 19 %, not below."
    );
    assert_eq!(after(&dry, &below).refusals, []);
    let damp = [("now", "22")];
    let between = refusal(&damp);
    assert_eq!((between.field, between.code), ("now", "between-formula"));
    assert_eq!(after(&damp, &between).refusals, []);
    // A species has no such hole.
    assert_eq!(TRIAL.ask(&[("now", "22"), ("wood", "douglas_fir")]).refusals, []);
    // Both ends are refused together.
    assert_eq!(TRIAL.ask(&[("now", "22"), ("later", "7")]).refusals.len(), 2);
}

#[test]
fn a_species_takes_its_coefficient_inside_and_its_shrinkage_outside() {
    let ash = |now, later| {
        let pairs = [
            ("wood", "white_ash"),
            ("grain", "flat"),
            ("width", "10"),
            ("now", now),
            ("later", later),
        ];
        inches(&TRIAL.answer(&pairs), "width_later")
    };
    check_near(ash("6", "14"), 10.0 * (1.0 + 8.0 * 0.00274), 1e-9);
    // From green to ovendry it loses all of its 7.8 %.
    check_near(ash("30", "0"), 9.22, 1e-9);
    check_near(ash("80", "0"), 9.22, 1e-9);
    check_near(ash("30", "15"), 10.0 * (1.0 - 0.039), 1e-9);
}

#[test]
fn unsure_rings_give_both_ends() {
    let pairs = |grain| [("wood", "white_oak"), ("width", "10"), ("later", "12"), ("grain", grain)];
    let unsure = TRIAL.answer(&pairs("unsure"));
    check_near(
        inches(&unsure, "least"),
        inches(&TRIAL.answer(&pairs("quarter")), "width_later"),
        0.0,
    );
    check_near(inches(&unsure, "most"), inches(&TRIAL.answer(&pairs("flat")), "width_later"), 0.0);
    check_near(inches(&unsure, "width_later"), inches(&unsure, "most"), 0.0);
}

#[test]
fn the_thickness_of_a_flat_sawn_board_moves_across_the_rings() {
    let answer = TRIAL.answer(&[
        ("wood", "white_oak"),
        ("grain", "flat"),
        ("thickness", "1"),
        ("later", "0"),
        ("now", "30"),
    ]);
    check_near(inches(&answer, "thickness_later"), 1.0 - 0.056, 1e-9);
}

#[test]
fn woods_known_only_in_part_are_refused_outside_it() {
    let wet = [("wood", "mesquite"), ("grain", "flat"), ("now", "12"), ("later", "20")];
    let outside = refusal(&wet);
    assert_eq!((outside.field, outside.code), ("wood", "no-figure-outside"));
    assert_eq!(
        outside.sentence.to_string(),
        "Of this wood only the figure from 6 to 14 % is known."
    );
    let quarter = [("wood", "mesquite"), ("grain", "quarter"), ("now", "12"), ("later", "8")];
    let no_quarter = refusal(&quarter);
    assert_eq!((no_quarter.field, no_quarter.code), ("grain", "no-quarter-figure"));
    let flat = after(&quarter, &no_quarter).answer.expect("flat-sawn is known");
    assert!(flat.notes.iter().any(|note| note.to_string().contains("is left out")));
    assert!(!flat.figures.iter().any(|figure| figure.id == "thickness_later"));
}

#[test]
fn figures_from_memory_say_so() {
    let says_so = |wood, now, later| {
        let answer =
            TRIAL.answer(&[("wood", wood), ("grain", "flat"), ("now", now), ("later", later)]);
        let noted =
            answer.notes.iter().any(|note| note.to_string().contains("from memory, unverified"));
        let sourced =
            answer.working.sources.iter().any(|source| matches!(source, Source::Unverified(_)));
        assert_eq!(noted, sourced, "{wood}");
        noted
    };
    // The coefficient of loblolly pine was not seen, its shrinkage was.
    assert!(says_so("loblolly_pine", "12", "8"));
    assert!(!says_so("loblolly_pine", "28", "12"));
    assert!(says_so("ipe", "28", "12"));
    assert!(!says_so("white_ash", "12", "8"));
}

#[test]
fn every_wood_of_the_table_that_moves_is_offered_by_its_name() {
    for choice in &WOODS[1..] {
        assert_eq!(species(choice.id).map(|wood| wood.name), Some(choice.label), "{}", choice.id);
    }
    for wood in SPECIES.iter().filter(|wood| wood.shrinkage.is_some() || wood.change.is_some()) {
        assert!(WOODS.iter().any(|choice| choice.id == wood.id), "{}", wood.id);
    }
}

const DRY_GAP: [(&str, &str); 4] =
    [("ask", "gap"), ("width", "5 1/2"), ("now", "12"), ("later", "19")];

#[test]
fn a_gap_that_would_close_is_refused_with_the_gap_that_does_not() {
    let closes = refusal(&DRY_GAP);
    assert_eq!((closes.field, closes.code), ("gap_now", "gap-closes"));
    let sheet = after(&DRY_GAP, &closes);
    let answer = sheet.answer.expect("the gap is enough");
    // To the next mark of the tape.
    let left = inches(&answer, "gap_later");
    assert!((0.0..1.0 / 16.0).contains(&left), "{left}");
}

#[test]
fn a_gap_that_tight_boards_exceed_is_refused_with_that_gap() {
    let pairs = [("ask", "gap"), ("known", "today"), ("gap_later", "1/16"), ("width", "5 1/2")];
    let opens = refusal(&pairs);
    assert_eq!((opens.field, opens.code), ("gap_later", "opens-further"));
    let answer = after(&pairs, &opens).answer.expect("that gap can be had");
    check_near(inches(&answer, "gap_now"), 0.0, 0.0);
}

#[test]
fn boards_that_may_press_on_each_other_bring_a_note() {
    let pressing =
        TRIAL.answer(&[DRY_GAP[0], DRY_GAP[1], DRY_GAP[2], DRY_GAP[3], ("gap_now", "3/32")]);
    assert!(pressing.notes.iter().any(|note| note.to_string().contains("leave more")));
    let free = TRIAL.answer(&[DRY_GAP[0], DRY_GAP[1], DRY_GAP[2], DRY_GAP[3], ("gap_now", "1/4")]);
    assert!(!free.notes.iter().any(|note| note.to_string().contains("leave more")));
}

#[test]
fn a_year_the_wrong_way_round_is_turned() {
    let pairs = [("ask", "swing"), ("driest", "15.1"), ("wettest", "11.7")];
    let wrong = refusal(&pairs);
    assert_eq!((wrong.field, wrong.code), ("driest", "wrong-way-round"));
    assert_eq!(wrong.sentence.to_string(), "The driest, 15.1 %, is above the wettest, 11.7 %.");
    assert_eq!(after(&pairs, &wrong).refusals, []);
}

#[test]
fn places_give_a_range_and_air_one_figure() {
    let place = TRIAL.answer(&[("ask", "air"), ("air", "burlington")]);
    assert_eq!(place.headline.value, Value::Real(11.7, 1, "%"));
    assert_eq!(place.figures[0].value, Value::Real(14.2, 1, "%"));
    let air = TRIAL.answer(&[("ask", "air"), ("fahrenheit", "70"), ("humidity", "50")]);
    assert_eq!(air.figures.iter().map(|figure| figure.id).collect::<Vec<_>>(), ["newer"]);
    let celsius = TRIAL.answer(&[("ask", "air"), ("degrees", "celsius"), ("celsius", "21.1")]);
    assert!(
        matches!(celsius.headline.value, Value::Real(percent, ..) if (11.5..12.5).contains(&percent))
    );
}

#[test]
fn a_swing_gives_a_gap_for_the_board_that_moves_most() {
    let answer = TRIAL.answer(&[("ask", "swing"), ("width", "5 1/2")]);
    let [swing, most, never] = ["swing", "most", "never_closes"].map(|id| inches(&answer, id));
    assert!(swing < most);
    check_near(never, most, 0.0);
    let by_green: Length = length("5 1/2").expect("a width");
    // (1 - 0.01946) ÷ (1 - 0.03451) - 1.
    check_near(inches(&answer, "by_green_size"), by_green.to_f64() * 0.015_588, 1e-5);
}

/// 12 % under cover and 4 to 6 % in heated rooms: FPL Technical Note F-13; wet 28 %: FPL-RP-489. What
/// has no source says so.
#[test]
fn a_word_for_the_weather_is_its_percent_with_its_source() {
    for (word, percent, source) in [
        ("wet", "28", "FPL-RP-489"),
        ("yard", "19", "Common practice"),
        ("rain", "15", "Common practice"),
        ("roof", "12", "Technical Note F-13"),
        ("indoors", "5", "Technical Note F-13"),
    ] {
        let wood = ("wood", "douglas_fir");
        let by_word = TRIAL.answer(&[wood, ("now", "20"), ("later_is", word)]);
        let by_percent = TRIAL.answer(&[wood, ("now", "20"), ("later", percent)]);
        assert_eq!(by_word.headline, by_percent.headline, "{word}");
        let sources: Vec<String> =
            by_word.working.sources.iter().map(|source| source.words()).collect();
        assert!(sources.iter().any(|it| it.contains(source)), "{word}: {sources:?}");
        let said = by_word.notes.iter().any(|note| note.to_string().contains("no source"));
        assert_eq!(said, source == "Common practice", "{word}");
    }
    let summer_and_winter = [("ask", "swing"), ("driest_is", "roof"), ("wettest_is", "yard")];
    let by_percent = TRIAL.answer(&[("ask", "swing"), ("driest", "12"), ("wettest", "19")]);
    assert_eq!(TRIAL.answer(&summer_and_winter).headline, by_percent.headline);
    TRIAL.check_note(
        &[("ask", "swing"), ("driest_is", "rain"), ("wettest_is", "yard")],
        "“Out in the rain: 15 %” is taken as 15 %, “Kiln-dried, from the yard: 19 %” as 19 %: \
         common practice, no source.",
    );
}

#[test]
fn a_word_that_the_formula_does_not_reach_is_refused_beside_it() {
    let indoors = [("later_is", "indoors")];
    let below = refusal(&indoors);
    assert_eq!((below.field, below.code), ("later_is", "below-formula"));
    assert_eq!(after(&indoors, &below).refusals, []);
    let turned = [("ask", "swing"), ("driest_is", "yard"), ("wettest_is", "roof")];
    assert_eq!(after(&turned, &refusal(&turned)).refusals, []);
}

/// Frost is answered down to 30 °F, as far as both published forms of the formula agree (`the_formulas_for_air_agree_with_each_other`).
///
/// By hand with the coefficients of FPL-RN-0268 at 30 °F and 50 %: W = 330 + 13.56 + 3.735 = 347.295, K = 0.80413, K1 = 6.2791,
/// K2 = 1.86064; Kh = 0.402065; 1800 / 347.295 × (0.402065 / 0.597935 + (2.52461 + 2 × 1.88866) / (1 + 2.52461 + 1.88866))
/// = 5.18291 × (0.672423 + 1.164163) = 9.519.
#[test]
fn frost_is_answered_down_to_where_both_formulas_agree() {
    let frost =
        |degrees| vec![("ask", "air"), ("degrees", degrees), (degrees, "-15"), ("humidity", "50")];
    let answer = TRIAL.answer(&[("ask", "air"), ("fahrenheit", "30"), ("humidity", "50")]);
    assert!(
        matches!(answer.headline.value, Value::Real(percent, ..) if (percent - 9.519).abs() < 0.001)
    );
    for (degrees, nearest) in [("fahrenheit", "30"), ("celsius", "-1")] {
        let cold = refusal(&frost(degrees));
        assert_eq!((cold.field, cold.code), (degrees, "out-of-range"));
        let way_out = cold.way_out.as_ref().expect("a way out").texts(Bench::default().tape);
        assert_eq!(way_out, [(degrees, nearest.to_owned())]);
        assert_eq!(after(&frost(degrees), &cold).refusals, []);
    }
}
