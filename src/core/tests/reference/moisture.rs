//! Moisture: hand-worked cases N1, N2 and N4 of the project's rules of the trade, and published
//! examples of movement and of wood in air.

use reckoner_core::calculators::moisture::air::{Input, Temperature, newer, reckon, two_hydrates};
use reckoner_core::calculators::moisture::movement::by_points;
use reckoner_core::calculators::moisture::{CALCULATOR, gap};
use reckoner_core::calculators::{Calculator, top};
use reckoner_core::measure::text::NoNames;
use reckoner_core::measure::{Fineness, Length, Number, Rounding, Tape, length, text::show};
use reckoner_core::sheet::{Answer, Bench, Entries, Value};
use reckoner_core::tables::air::PLACES;

fn answer(pairs: &[(&str, &str)]) -> Answer {
    let entries = Entries::from_pairs(pairs.iter().copied());
    let sheet = CALCULATOR.sheet(&entries, &Bench::default(), &NoNames);
    sheet.answer.unwrap_or_else(|| panic!("refused: {:?}", sheet.refusals))
}

fn inches(answer: &Answer, id: &str) -> Length {
    let found = core::iter::once(&answer.headline).chain(&answer.figures).find(|f| f.id == id);
    match found.map(|figure| &figure.value) {
        Some(Value::Length(length, _)) => *length,
        other => panic!("{id}: {other:?}"),
    }
}

/// Source: [WH] N2: a 5 1/2 board, wet, loses 0.190 at 12 % (3.451 %), about 3/16. Wet and dry and
/// the top ask the same question, and each says and sets the same.
#[test]
fn n2_two_calculators_say_the_same_gap_of_wet_boards() {
    let asked_of_moisture = [
        ("ask", "gap"),
        ("known", "today"),
        ("gap_later", "1/16"),
        ("width", "5 1/2"),
        ("later", "12"),
    ];
    let asked_of_top = [
        ("question", "season"),
        ("season_find", "today"),
        ("gap_later", "1/16"),
        ("planks", "7 @ 5 1/2"),
        ("moisture_later", "12"),
    ];
    let (bench, tape) = (Bench::default(), Tape::SIXTEENTHS);
    let asked: [(&Calculator, Entries, &str); 2] = [
        (&CALCULATOR, Entries::from_pairs(asked_of_moisture), "gap_later"),
        (&top::CALCULATOR, Entries::from_pairs(asked_of_top), "gap_smallest"),
    ];
    for (calculator, mut entries, gap) in asked {
        let refusal = calculator.sheet(&entries, &bench, &NoNames).refusals.remove(0);
        let words = "Even laid tight today, the boards gap about 3/16 in later.";
        assert_eq!(refusal.sentence.on(tape), words);
        let way_out = refusal.way_out.expect("a way out");
        assert_eq!(way_out.sentence.on(tape), "Lay them tight, and take about 3/16 in.");
        for (field, text) in way_out.texts(tape) {
            entries.set(field, text);
        }
        let after = calculator.sheet(&entries, &bench, &NoNames).answer.expect("laid tight");
        check_near(inches(&after, gap).to_f64(), 0.190, 0.0005);
        // From dry to wet they swell: the gap left today is a mark that is enough, as is said.
        entries.set(if gap == "gap_later" { "now" } else { "moisture_now" }, "12".to_owned());
        entries.set(if gap == "gap_later" { "later" } else { "moisture_later" }, "19".to_owned());
        if gap != "gap_later" {
            entries.set("now", "measured".to_owned());
        }
        let refusal = calculator.sheet(&entries, &bench, &NoNames).refusals.remove(0);
        let way_out = refusal.way_out.expect("a way out");
        assert_eq!(way_out.sentence.on(tape), "Leave 1/8 in or more today.");
        assert_eq!(way_out.texts(tape), [("gap_now", "1/8 in".to_owned())]);
    }
}

/// The nearest mark of a tape.
fn mark(length: Length, fineness: Fineness) -> String {
    let shown = show(length, Tape::Inches(fineness), Rounding::Nearest).expect("a small length");
    shown.mark.to_string()
}

#[track_caller]
fn check_near(found: f64, expected: f64, within: f64) {
    assert!((found - expected).abs() <= within, "{found} is not {expected} ± {within}");
}

/// Source: [WH] N1, wet 2×6 measuring 5 5/8 to 15 %: loses 2.806 % = 0.158, so 5 15/32.
#[test]
fn n1_a_wet_two_by_six_dries_to_15_percent() {
    let answer = answer(&[("width", "5 5/8"), ("now", "40"), ("later", "15")]);
    check_near(inches(&answer, "change").to_f64(), 0.158, 0.0005);
    assert_eq!(mark(inches(&answer, "width_later"), Fineness::ThirtySecond), "5 15/32 in");
}

/// Source: [WH] N2, 7 boards 5 1/2 wide laid tight and wet, each held at its own middle, dried to
/// 12 % (3.451 %): each loses 0.190, every gap about 3/16; overall 38 1/2, then about 38 5/16.
#[test]
fn n2_seven_tight_wet_boards_dry_to_12_percent() {
    let answer = answer(&[
        ("ask", "gap"),
        ("width", "5 1/2"),
        ("boards", "7"),
        ("gap_now", "0"),
        ("now", "28"),
        ("later", "12"),
    ]);
    let gap = inches(&answer, "gap_later");
    check_near(gap.to_f64(), 0.190, 0.0005);
    assert_eq!(mark(gap, Fineness::Sixteenth), "3/16 in");
    assert_eq!(inches(&answer, "top_now"), length("38 1/2").unwrap());
    assert_eq!(mark(inches(&answer, "top_later"), Fineness::Sixteenth), "38 5/16 in");
}

/// Source: [WH] N4, dry 5 1/2 board, swing 12 to 19 %: 0.215 × 7 = 1.5 %, 0.083 (about 5/64): a
/// 1/8 gap never closes.
#[test]
fn n4_a_dry_board_over_the_year() {
    let answer =
        answer(&[("ask", "swing"), ("width", "5 1/2"), ("driest", "12"), ("wettest", "19")]);
    let swing = inches(&answer, "swing");
    check_near(swing.to_f64(), 0.083, 0.0005);
    assert_eq!(mark(swing, Fineness::SixtyFourth), "5/64 in");
    assert!(inches(&answer, "never_closes") < length("1/8").unwrap());
    // The two-moisture rule gives a little more; it also is about 5/64.
    let by_green_size = inches(&answer, "by_green_size");
    assert_eq!(mark(by_green_size, Fineness::SixtyFourth), "5/64 in");
}

/// Source: USDA FPL Wood Handbook FPL-GTR-190 (2010) p. 13-17 (W25): flat-sawn white fir 9.15 in
/// wide, 8 % to 11 %: change 0.067 in, new width 9.217 in.
#[test]
fn w25_a_flat_sawn_white_fir_board() {
    let answer = answer(&[
        ("width", "9.15"),
        ("wood", "white_fir"),
        ("grain", "flat"),
        ("now", "8"),
        ("later", "11"),
    ]);
    check_near(inches(&answer, "width_later").to_f64(), 9.217, 0.0006);
    check_near(inches(&answer, "change").to_f64(), 0.067, 0.0005);
}

/// Source: NWFA Technical Publication A200 example as quoted (W26): 5 in wide, 6 % to 9 %,
/// coefficient 0.00129: 0.019 in.
#[test]
fn w26_a_coefficient_of_129() {
    let answer = answer(&[
        ("width", "5"),
        ("wood", "mesquite"),
        ("grain", "flat"),
        ("now", "6"),
        ("later", "9"),
    ]);
    check_near(inches(&answer, "change").to_f64(), 0.019, 0.0005);
}

/// Source: Missouri S&T CE 5260 problem 4.34 (W27): 13.25 in deep, 19 % to 10 %, 6 %/30 for each
/// point: shrinks 0.2385 in to 13.01 in.
#[test]
fn w27_six_percent_over_thirty_points() {
    let per_point = Number::ratio(6, 3000).unwrap();
    let factor = by_points(per_point, Number::whole(19), Number::whole(10)).unwrap();
    let later = (length("13.25").unwrap() * factor).unwrap();
    let lost = (length("13.25").unwrap() - later).unwrap();
    assert_eq!(lost, length("0.2385").unwrap());
    check_near(later.to_f64(), 13.01, 0.005);
}

/// Source: the same problem (W28), lumber formula a 6.031, b 0.215. DEPARTS: the source prints
/// 13.02 in; the formula it prints gives 12.99, which is what is checked.
#[test]
fn w28_the_same_member_by_the_lumber_formula() {
    let answer = answer(&[("width", "13.25"), ("now", "19"), ("later", "10")]);
    check_near(inches(&answer, "width_later").to_f64(), 12.99, 0.005);
}

/// Source: FPL-RP-489 on PS 20-70 (W63, W64): green to 15 %, width 2.80 %, thickness 2.35 %.
#[test]
fn w63_w64_the_standard_figures_to_15_percent() {
    let answer = answer(&[("width", "100"), ("thickness", "100"), ("later", "15")]);
    check_near(100.0 - inches(&answer, "width_later").to_f64(), 2.80, 0.01);
    check_near(100.0 - inches(&answer, "thickness_later").to_f64(), 2.35, 0.01);
}

/// Source: general article on equilibrium moisture (W59): 140 °F, 55 %: 8.4 % by the equation, 8.0
/// in the table.
#[test]
fn w59_wood_in_hot_air() {
    let answer = reckon(&Input::Air(Temperature::Fahrenheit(140.0), 55.0));
    check_near(answer.driest, 8.4, 0.06);
    check_near(answer.driest, 8.37753, 1e-4);
}

/// Sources: 70 °F and 50 %, 9.2 %, restoration-trade reference quoting the Wood Handbook; whole
/// numbers for a room at 30, 50, 65 and 80 %, G. Wengert, trade-press column.
#[test]
fn wood_in_a_room_is_as_published() {
    let room = |humidity| reckon(&Input::Air(Temperature::Fahrenheit(70.0), humidity)).driest;
    check_near(room(50.0), 9.2, 0.06);
    for (humidity, whole) in [(30.0, 6.0), (50.0, 9.0), (65.0, 12.0), (80.0, 16.0)] {
        check_near(room(humidity), whole, 0.5);
        // Equation 4-6 of FPL-GTR-282 is another curve through the same room.
        check_near(newer(Temperature::Fahrenheit(70.0), humidity / 100.0), whole, 0.5);
    }
}

/// Values worked from the formula by an independent script, two decimals.
#[test]
fn the_air_formula_agrees_with_an_independent_working() {
    for (degrees, humidity, percent) in [
        (40.0, 50.0, 9.52),
        (60.0, 40.0, 7.81),
        (60.0, 60.0, 11.13),
        (60.0, 80.0, 16.22),
        (80.0, 40.0, 7.57),
        (80.0, 60.0, 10.78),
        (80.0, 80.0, 15.73),
    ] {
        let answer = reckon(&Input::Air(Temperature::Fahrenheit(degrees), humidity));
        check_near(answer.driest, percent, 0.005);
    }
}

/// Sources: USDA FPL Wood Handbook FPL-GTR-282 (2021) Equation 4-5 in °C against FPL-RN-0268 in °F:
/// within 0.15 points between 30 and 110 °F.
#[test]
fn the_formulas_for_air_agree_with_each_other() {
    for degrees in [30.0, 50.0, 70.0, 90.0, 110.0] {
        for humidity in [0.2, 0.4, 0.6, 0.8, 0.9] {
            let fahrenheit = Temperature::Fahrenheit(degrees);
            let celsius = Temperature::Celsius((degrees - 32.0) / 1.8);
            check_near(two_hydrates(fahrenheit, humidity), two_hydrates(celsius, humidity), 0.15);
            check_near(newer(fahrenheit, humidity), newer(celsius, humidity), 1e-9);
        }
    }
}

/// Sources: Wood Handbook Table 13-1 (Phoenix: January 8.9, June 4.4), FPL-RN-0268 (Burlington:
/// 11.7 and 14.2), FPL Technical Note F-13 (about 12 under cover in the north; 4 to 6 arid).
#[test]
fn places_have_their_published_figures() {
    let tenths: Vec<_> = PLACES.iter().map(|p| (p.id, p.driest, p.wettest)).collect();
    assert_eq!(
        tenths,
        [
            ("northern_cover", 120, 120),
            ("burlington", 117, 142),
            ("phoenix", 44, 89),
            ("arid", 40, 60)
        ]
    );
}

/// Source: newspaper home-column test of wet 5/4 deck boards laid tight: drying from about 20 % to
/// 12 % opened 1/8 in in two weeks and about 1/4 in in six. A soft source: it lies within what the
/// least and the most moving board of that change would do.
#[test]
fn tight_deck_boards_open_as_a_newspaper_measured() {
    use reckoner_core::calculators::moisture::movement::{Moistures, Wood};
    let input = gap::Input {
        width: length("5 5/8").unwrap(),
        boards: 7,
        known: gap::Known::Today(Length::ZERO),
        wood: Wood::OrdinarySoftwood,
        moistures: Moistures::now_and_later(Number::whole(28), Number::whole(12)),
    };
    let answer = gap::reckon(&input).expect("an answer");
    let (least, most) = answer.gap_ends.expect("both ends");
    assert!(least < length("1/8").unwrap() && length("1/4").unwrap() < most);
}
