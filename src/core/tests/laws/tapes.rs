//! The same board gives the same answer on a tape in inches and on one in millimetres.

use std::collections::BTreeMap;

use reckoner_core::calculators::{self, Calculator};
use reckoner_core::measure::text::NoNames;
use reckoner_core::measure::{Number, Tape, Unit, length};
use reckoner_core::planning::quick_list::{QUICK_LIST, quick_list};
use reckoner_core::sheet::{Ask, Bench, Entries, Kind, Sentence, Sheet, Value};

/// Tapes in millimetres.
const METRIC: [Tape; 3] = [Tape::Millimetres(0), Tape::HalfMillimetres, Tape::Millimetres(1)];

/// What the tape of the bench decides, and not the size of the board alone, with the reason.
const BY_THE_TAPE: [(&str, &str); 7] = [
    ("tape", "stepping_error"), // each step is set to a mark
    ("tape", "closes_at"),
    ("frame", "lap_"), // a lap is set to a mark, so that both faces come out even
    ("finish", "buy"), // sold in cans of litres
    ("dowel", "clearance"), // a decimal of the unit, in words
    ("spacing", "step_error"), // each step is set to a mark
    ("spacing", "closes_at"),
];

/// Whose example is a formula of bare numbers: another formula where those are millimetres.
const BARE: &str = "tape";

/// Every value of an answer with its name.
fn values(calculator: &Calculator, sheet: &Sheet) -> Vec<(String, Value)> {
    let Some(answer) = &sheet.answer else { return Vec::new() };
    let figures = core::iter::once(&answer.headline).chain(&answer.figures);
    let mut all: Vec<(String, Value)> =
        figures.map(|figure| (figure.id.to_owned(), figure.value.clone())).collect();
    for table in &answer.tables {
        for (at, row) in table.rows.iter().enumerate() {
            let cells = row.iter().zip(table.columns);
            all.extend(
                cells.map(|(cell, it)| (format!("{} {at} {}", table.id, it.id), cell.clone())),
            );
        }
    }
    let by_the_tape = |name: &str| {
        let mut known = BY_THE_TAPE.iter();
        known.any(|(slug, id)| *slug == calculator.slug && name.starts_with(id))
    };
    all.retain(|(name, _)| !by_the_tape(name));
    all
}

/// Every form with each of its choices made once, the rest as it starts.
fn forms(calculator: &Calculator) -> Vec<Vec<(&'static str, &'static str)>> {
    let mut forms = vec![Vec::new()];
    for field in calculator.fields {
        if let Kind::Choice(choices) = field.kind {
            for choice in choices {
                for form in forms.clone().into_iter().take(12) {
                    forms.push([form, vec![(field.id, choice.id)]].concat());
                }
            }
        }
    }
    forms.truncate(160);
    forms
}

fn sheet(
    calculator: &Calculator,
    form: &[(&'static str, &'static str)],
    unit: Unit,
    tape: Tape,
) -> Sheet {
    let mut entries = Entries::from_pairs(form.iter().copied());
    entries.set_unit(Some(unit));
    calculator.sheet(&entries, &Bench { tape, ..Bench::default() }, &NoNames)
}

/// A sag and a shank are finer than any tape, so they are numbers in the unit of the tape: brought to inches here. By
/// hand: 25.4 mm to the inch.
fn in_inches(value: &Value) -> Value {
    match value {
        Value::Real(number, _, "mm") => Value::Real(number / 25.4, 3, "in"),
        Value::Exact(number, _, "mm") => {
            let scale = Number::ratio(254, 10).expect("a ratio");
            Value::Exact((*number / scale).expect("small"), 3, "in")
        }
        other => other.clone(),
    }
}

/// What a bit is called; beside a metric tape it says how wide that is too.
fn name(words: &Sentence) -> String {
    let words = words.to_string();
    words.split_once(" · ").map_or(words.clone(), |(name, _)| name.to_owned())
}

fn is_same(a: &Value, b: &Value) -> bool {
    match (in_inches(a), in_inches(b)) {
        (Value::Real(a, ..), Value::Real(b, ..)) => (a - b).abs() <= 1e-9 * a.abs().max(1.0),
        // What is said of a length is exact too.
        (Value::Words(a), Value::Words(b)) => name(&a) == name(&b),
        (a, b) => a == b,
    }
}

#[test]
fn the_same_board_gives_the_same_answer_on_both_tapes() {
    let mut judged = 0;
    let mut trouble: BTreeMap<(&str, String), String> = BTreeMap::new();
    for calculator in calculators::ALL {
        for form in forms(calculator) {
            let inches = sheet(calculator, &form, Unit::Inch, Tape::SIXTEENTHS);
            for tape in METRIC {
                // As typed for inches, and in a fresh form whose bare numbers are metric.
                for unit in [Unit::Inch, Unit::Millimetre] {
                    if unit == Unit::Millimetre && calculator.slug == BARE {
                        continue;
                    }
                    let metric = sheet(calculator, &form, unit, tape);
                    let refused: [Vec<_>; 2] = [&inches, &metric]
                        .map(|it| it.refusals.iter().map(|it| (it.field, it.code)).collect());
                    if refused[0] != refused[1] {
                        trouble.insert(
                            (calculator.slug, "refused".to_owned()),
                            format!("{form:?}: {refused:?}"),
                        );
                        continue;
                    }
                    let (a, b) = (values(calculator, &inches), values(calculator, &metric));
                    if a.len() != b.len() {
                        trouble
                            .insert((calculator.slug, "results".to_owned()), format!("{form:?}"));
                        continue;
                    }
                    for ((name, a), (_, b)) in a.iter().zip(&b) {
                        judged += 1;
                        if !is_same(a, b) {
                            let found = format!("{form:?} {tape:?} {unit:?}: {a:?} {b:?}");
                            trouble.insert((calculator.slug, name.clone()), found);
                        }
                    }
                }
            }
        }
    }
    assert!(trouble.is_empty(), "{judged}: {trouble:#?}");
    assert!(judged > 20_000, "{judged}");
}

/// By hand, from the scales of NIST SP 811: 100 kg ÷ 0.453 592 37 = 220.462 lb; what is typed without a
/// unit is in kilograms where millimetres are measured.
#[test]
fn a_load_is_typed_in_pounds_or_kilograms_on_either_tape() {
    let strength = calculators::find("strength").expect("it is there");
    let load = |unit, typed: &'static str| {
        let tape = if unit == Unit::Inch { Tape::SIXTEENTHS } else { Tape::Millimetres(0) };
        let form = [("load", "point"), ("pounds", typed)];
        let sheet = sheet(strength, &form, unit, tape);
        assert_eq!(sheet.refusals, [], "{typed}");
        let stress = sheet.answer.expect("an answer");
        let stress = stress.figures.iter().find(|figure| figure.id == "stress").expect("a stress");
        let Value::Real(psi, ..) = stress.value else { panic!("{stress:?}") };
        psi
    };
    let of_220 = load(Unit::Inch, "220");
    for (unit, typed) in [
        (Unit::Inch, "220 lb"),
        (Unit::Inch, "220lbs"),
        (Unit::Millimetre, "220 lb"),
        (Unit::Millimetre, "200 + 20 lb"),
    ] {
        assert!((load(unit, typed) / of_220 - 1.0).abs() < 1e-12, "{typed}");
    }
    for (unit, typed) in
        [(Unit::Inch, "100 kg"), (Unit::Millimetre, "100 kg"), (Unit::Millimetre, "100")]
    {
        let ratio = load(unit, typed) / of_220;
        assert!((ratio - 220.462_262 / 220.0).abs() < 1e-8, "{unit:?} {typed}: {ratio}");
    }
}

/// By hand: 850 psi × 0.006 894 757 = 5.86 MPa; a square foot is 0.0929 m².
#[test]
fn a_metric_bench_shows_metric_units() {
    let bench = Bench { tape: Tape::Millimetres(0), ..Bench::default() };
    for (value, shown) in [
        (Value::Real(850.0, 0, "psi"), "5.86 MPa"),
        (Value::Real(250.0, 0, "lb"), "113.4 kg"),
        (Value::Real(31.2, 1, "lb/cu ft"), "500 kg/m³"),
    ] {
        assert_eq!(value.in_line(&bench), shown);
        assert_ne!(value.in_line(&Bench::default()), shown);
    }
    let finish = calculators::find("finish").expect("it is there");
    let sheet = sheet(finish, &[], Unit::Millimetre, bench.tape);
    let answer = sheet.answer.expect("an answer");
    assert!(answer.headline.value.in_line(&bench).ends_with(" L"), "{:?}", answer.headline);
    // What is asked of it is the price of each can, and not of gallons.
    let asked = |bench: &Bench| {
        let entries = Entries::default();
        let fields = finish.asked(&entries, bench).map(|it| it.id).collect::<Vec<_>>();
        fields.into_iter().filter(|id| id.contains("price")).collect::<Vec<_>>()
    };
    assert_eq!(asked(&bench), ["price_of_5", "price_of_2_5", "price_of_1", "price_of_0_75"]);
    assert_eq!(asked(&Bench::default()), ["gallon_price", "quart_price"]);
    let area = answer.figures.iter().find(|figure| figure.id == "area").expect("an area");
    assert!(area.value.in_line(&bench).ends_with(" m²"));
}

/// By hand: one face of 10 × 4 in is 40 × 2.54 × 2.54 = 258.064 cm²; 100 × 4 in is ten of it, 0.258064 m².
#[test]
fn a_small_area_is_in_square_centimetres_and_a_large_one_in_square_metres() {
    let finish = calculators::find("finish").expect("it is there");
    let bench = Bench { tape: Tape::Millimetres(0), ..Bench::default() };
    for (part, shown) in [("10 in x 4 in x 1 in", "258 cm²"), ("100 in x 4 in x 1 in", "0.26 m²")]
    {
        let form = [("parts", part), ("faces", "show_face")];
        let answer = sheet(finish, &form, Unit::Millimetre, bench.tape).answer.expect("an answer");
        let area = answer.figures.iter().find(|figure| figure.id == "area").expect("an area");
        assert_eq!(area.value.in_line(&bench), shown, "{part}");
    }
}

/// A pascal is a newton on a square metre (SI Brochure, 9th edition, table 4), of which a square millimetre is a millionth:
/// N/mm² is MPa. By hand: 6 MPa ÷ 0.006 894 757 (NIST SP 811, Appendix B.8) = 870.23 psi.
#[test]
fn a_stress_is_typed_in_newtons_on_a_square_millimetre_too() {
    let strength = calculators::find("strength").expect("it is there");
    let read = |unit: Unit, typed: &'static str| {
        let tape = if unit == Unit::Inch { Tape::SIXTEENTHS } else { Tape::Millimetres(0) };
        let sheet = sheet(strength, &[("most_stress", typed)], unit, tape);
        assert_eq!(sheet.refusals, [], "{typed}");
        let echo = sheet.echoes.iter().find(|echo| echo.field == "most_stress");
        echo.expect("an echo").sentence.to_string()
    };
    for typed in ["6 N/mm2", "6 N/mm²", "6n/MM2", "6 MPa"] {
        assert_eq!(read(Unit::Inch, typed), "870.23 psi", "{typed}");
        assert_eq!(read(Unit::Millimetre, typed), "6 MPa", "{typed}");
    }
}

/// `1,5` is two things in a list and none as a length: one tap writes 1.5.
#[test]
fn a_decimal_comma_has_a_tap_that_writes_a_point() {
    let spacing = calculators::find("spacing").expect("it is there");
    let comma = sheet(spacing, &[("length", "1,5 + 20,25")], Unit::Inch, Tape::SIXTEENTHS);
    let way_out = comma.refusals[0].way_out.as_ref().expect("a tap");
    assert_eq!(way_out.sentence.to_string(), "Write 1.5 + 20.25.");
    assert_eq!(way_out.texts(Tape::SIXTEENTHS), [("length", "1.5 + 20.25".to_owned())]);
    // What would not be read afterwards, or may be thousands, has none.
    for text in [",", "1,5 of", "1,5 + 2,500"] {
        let without = sheet(spacing, &[("length", text)], Unit::Inch, Tape::SIXTEENTHS);
        assert_eq!(without.refusals[0].way_out, None, "{text}");
    }
}

/// A stress that cannot be turned into psi exactly is refused, and not taken as so many psi.
#[test]
fn what_cannot_be_turned_into_the_other_unit_is_refused() {
    let strength = calculators::find("strength").expect("it is there");
    let of = |stress: &'static str| {
        sheet(strength, &[("most_stress", stress)], Unit::Inch, Tape::SIXTEENTHS)
    };
    let inches = of("300 + 1/99999999977");
    assert!(inches.refusals.is_empty(), "{:?}", inches.refusals);
    let metric = of("300 + 1/99999999977 MPa");
    let refusal = metric.refusals.iter().find(|it| it.field == "most_stress");
    let refusal = refusal.expect("a refusal");
    assert!(refusal.sentence.to_string().contains("too fine"), "{refusal:?}");
}

/// The cut plan's own example is the same job on every tape. By hand: a leg of 33 1/2 in is 850.9 mm.
#[test]
fn the_quick_list_is_the_same_job_on_both_tapes() {
    let of = |unit: Unit, tape: Tape| {
        let mut entries = Entries::default();
        entries.set_unit(Some(unit));
        let bench = Bench { tape, ..Bench::default() };
        let mut ask = Ask::new(QUICK_LIST.fields, &entries, &bench, &NoNames);
        let wanted = quick_list(&mut ask).expect("our example");
        let lengths = |all: Vec<i64>| -> Vec<_> {
            all.into_iter().map(|it| wanted.labels.length(it).expect("a length")).collect()
        };
        let parts = lengths(wanted.job.parts.iter().map(|it| it.length).collect());
        let boards = lengths(wanted.job.boards.iter().map(|it| it.length).collect());
        let scraps = lengths(wanted.job.scraps.iter().map(|it| it.length).collect());
        (parts, boards, scraps)
    };
    let inches = of(Unit::Inch, Tape::SIXTEENTHS);
    assert_eq!(Ok(inches.0[0]), length("850.9 mm"));
    for tape in METRIC {
        assert_eq!(of(Unit::Millimetre, tape), inches, "{tape:?}");
    }
}

/// By hand: 850 MPa is over the limit of 50 000 psi × 0.006 894 757 = 344.74 MPa, and no length at all.
#[test]
fn a_number_that_is_too_large_is_told_its_limits() {
    let strength = calculators::find("strength").expect("it is there");
    for typed in ["850", "9000000000"] {
        let form = [("most_stress", typed)];
        let metric = sheet(strength, &form, Unit::Millimetre, Tape::Millimetres(0));
        let refusal = metric.refusals.iter().find(|it| it.field == "most_stress");
        let refusal = refusal.expect("a refusal");
        assert_eq!(refusal.code, "out-of-range", "{typed}");
        assert!(refusal.sentence.to_string().ends_with(" to 344.74 MPa."), "{refusal:?}");
        let way_out = refusal.way_out.as_ref().expect("the nearest");
        assert_eq!(way_out.sentence.to_string(), "Use 344.74 MPa, the nearest.");
    }
}
