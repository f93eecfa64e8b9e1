//! What every calculator must keep, whatever it reckons: checked over the whole list.

use proptest::prelude::*;
use reckoner_core::calculators::{self, ALL, Calculator, JOINTS, ResultKind, Run, SHAPES, WOOD};
use reckoner_core::measure::text::NoNames;
use reckoner_core::measure::{Length, Rounding, Tape};
use reckoner_core::sheet::{Answer, Bench, Entries, Field, Kind, Sheet, Start, Value, When, face};

use crate::entries::TAPES;
use crate::judged::{self, Judged};
use crate::{entries, limits};

fn fresh(calculator: &Calculator, bench: &Bench) -> Sheet {
    calculator.sheet(&Entries::default(), bench, &NoNames)
}

fn kind_of(value: &Value) -> ResultKind {
    match value {
        Value::Length(..) => ResultKind::Length,
        Value::Lengths(_) => ResultKind::Lengths,
        Value::Count(_) => ResultKind::Count,
        Value::Area(_) => ResultKind::Area,
        Value::Exact(..) | Value::Real(..) => ResultKind::Number,
        Value::Words(_) => ResultKind::Words,
    }
}

/// Every result is declared with its kind, every number is a number, every table is square, and
/// every shape of the drawing lies on the page.
fn check_answer(calculator: &Calculator, answer: &Answer) {
    let slug = calculator.slug;
    let declared = |id: &str, kind: ResultKind| {
        assert!(
            calculator.results.iter().any(|spec| spec.id == id && spec.kind == kind),
            "{slug}: result {id} of kind {kind:?} is not declared"
        );
    };
    let mut seen = Vec::new();
    for figure in core::iter::once(&answer.headline).chain(&answer.figures) {
        declared(figure.id, kind_of(&figure.value));
        assert!(!seen.contains(&figure.id), "{slug}: {} stands twice", figure.id);
        seen.push(figure.id);
        check_value(slug, &figure.value);
    }
    for table in &answer.tables {
        declared(table.id, ResultKind::Table);
        for row in &table.rows {
            assert_eq!(row.len(), table.columns.len(), "{slug}: table {} is not square", table.id);
            row.iter().for_each(|value| check_value(slug, value));
        }
    }
    assert!(!answer.working.steps.is_empty(), "{slug}: no working");
    assert!(!answer.working.sources.is_empty(), "{slug}: no source");
    for step in &answer.working.steps {
        check_value(slug, &step.gives);
    }
    if let Some(template) = &answer.template {
        check_template(slug, template);
    }
    if let Some(scene) = &answer.drawing {
        assert!(!scene.title.0.is_empty(), "{slug}: the drawing has no title");
        check_scene(slug, scene);
    }
}

fn check_value(slug: &str, value: &Value) {
    if let Value::Real(number, ..) = value {
        assert!(number.is_finite(), "{slug}: {number}");
    }
    for tape in [Tape::SIXTEENTHS, Tape::Millimetres(0)] {
        let _ = face(value, &Bench { tape, ..Bench::default() });
    }
}

fn check_scene(slug: &str, scene: &reckoner_core::drawing::Scene) {
    use reckoner_core::drawing::Shape;
    assert!(scene.height.is_finite() && scene.height > 0.0 && scene.height < 2000.0, "{slug}");
    for item in &scene.items {
        let numbers: Vec<f64> = match &item.shape {
            Shape::Rect(a, b, c, d) | Shape::Line(a, b, c, d) => vec![*a, *b, *c, *d],
            Shape::Circle(a, b, c) => vec![*a, *b, *c],
            Shape::Polygon(points) | Shape::Polyline(points) => {
                points.iter().flat_map(|(x, y)| [*x, *y]).collect()
            }
            Shape::Text(a, b, ..) => vec![*a, *b],
        };
        assert!(numbers.iter().all(|n| n.is_finite()), "{slug}: {item:?}");
        if let Shape::Rect(_, _, w, h) = item.shape {
            assert!(w >= 0.0 && h >= 0.0, "{slug}: negative size {item:?}");
        }
    }
}

#[test]
fn slugs_fields_and_results_have_names_of_their_own() {
    for (index, calculator) in calculators::ALL.iter().enumerate() {
        assert!(calculators::ALL[..index].iter().all(|c| c.slug != calculator.slug));
        for (i, field) in calculator.fields.iter().enumerate() {
            let snake =
                field.id.chars().all(|c| c.is_ascii_lowercase() || c.is_ascii_digit() || c == '_');
            assert!(snake, "{}: {} is not in snake case", calculator.slug, field.id);
            assert!(calculator.fields[..i].iter().all(|f| f.id != field.id), "{} twice", field.id);
            if let When::Chosen(choice, answers) = field.when {
                let asked = calculator.fields[..i].iter().find(|f| f.id == choice);
                let Some(Kind::Choice(choices)) = asked.map(|f| f.kind) else {
                    panic!("{}: {} depends on no choice before it", calculator.slug, field.id);
                };
                assert!(answers.iter().all(|a| choices.iter().any(|c| c.id == *a)));
            }
            if let (
                Kind::Choice(choices),
                Start::Text(text) | Start::Question(text) | Start::Without(text),
            ) = (field.kind, field.start)
            {
                assert!(
                    choices.iter().any(|c| c.id == text),
                    "{}: start of {}",
                    calculator.slug,
                    field.id
                );
            }
        }
        for (i, spec) in calculator.results.iter().enumerate() {
            assert!(calculator.results[..i].iter().all(|s| s.id != spec.id), "{} twice", spec.id);
        }
    }
}

#[test]
fn a_fresh_form_answers_in_inches_and_in_millimetres() {
    for calculator in calculators::ALL {
        for tape in [Tape::SIXTEENTHS, Tape::Millimetres(0)] {
            let sheet = fresh(calculator, &Bench { tape, ..Bench::default() });
            assert!(sheet.refusals.is_empty(), "{}: {:?}", calculator.slug, sheet.refusals);
            check_answer(calculator, &sheet.answer.expect("no refusal, so an answer"));
        }
    }
}

#[test]
fn every_choice_answers_or_refuses_with_a_reason() {
    for calculator in calculators::ALL {
        for field in calculator.fields {
            let Kind::Choice(choices) = field.kind else { continue };
            for choice in choices {
                let entries = Entries::from_pairs([(field.id, choice.id)]);
                let sheet = calculator.sheet(&entries, &Bench::default(), &NoNames);
                match sheet.answer {
                    Some(answer) => check_answer(calculator, &answer),
                    None => {
                        assert!(!sheet.refusals.is_empty(), "{} {}", calculator.slug, choice.id)
                    }
                }
            }
        }
    }
}

/// A text that someone or something might leave in a field.
fn field_text() -> impl Strategy<Value = String> {
    prop_oneof![
        (0_u32..200, 0_u32..64).prop_map(|(whole, part)| format!("{whole} {part}/64")),
        (1_u32..100).prop_map(|n| n.to_string()),
        (1_u32..4000).prop_map(|n| format!("{n}mm")),
        Just(String::new()),
        Just("0".to_owned()),
        Just("-3 1/2".to_owned()),
        Just("3,5".to_owned()),
        Just("99999".to_owned()),
        Just("1/99999999".to_owned()),
        Just("100001".to_owned()),
        Just("999999999999999".to_owned()),
        Just("1/3 + 1/7".to_owned()),
        Just("10 to 4, 3 to 3".to_owned()),
        Just("200 @ 1/64".to_owned()),
        Just("yes".to_owned()),
        "\\PC{0,12}",
    ]
}

/// A calculator with some of its choices made, and so many of the fields that it then asks for filled in: three of four with
/// a text at which rules change.
fn filled_in(
    fields: core::ops::Range<usize>,
) -> impl Strategy<Value = (&'static Calculator, Entries)> {
    let index = any::<prop::sample::Index>;
    let chosen = prop::collection::vec((index(), index()), 0..4);
    let texts = prop::collection::vec(
        (index(), prop::option::weighted(0.25, field_text()), index()),
        fields,
    );
    let calculator = prop::sample::select(calculators::ALL);
    (calculator, chosen, texts).prop_map(|(calculator, chosen, texts)| {
        let (mut entries, bench) = (Entries::default(), Bench::default());
        let of_kind = |fields: &mut dyn Iterator<Item = &'static Field>, choice: bool| {
            let is_choice = |field: &&Field| matches!(field.kind, Kind::Choice(_)) == choice;
            fields.filter(is_choice).collect::<Vec<&'static Field>>()
        };
        let choices = of_kind(&mut calculator.fields.iter(), true);
        for (at, choice) in chosen.into_iter().filter(|_| !choices.is_empty()) {
            let field = choices[at.index(choices.len())];
            if let Kind::Choice(ways) = field.kind {
                entries.set(field.id, choice.get(ways).id);
            }
        }
        let asked = of_kind(&mut calculator.asked(&entries, &bench), false);
        for (at, wild, which) in texts.into_iter().filter(|_| !asked.is_empty()) {
            let field = asked[at.index(asked.len())];
            let limits = limits::texts(calculator, &entries, field);
            let text = wild.or_else(|| (!limits.is_empty()).then(|| which.get(&limits).clone()));
            if let Some(text) = text {
                entries.set(field.id, text);
            }
        }
        (calculator, entries)
    })
}

fn check_sheet(calculator: &Calculator, sheet: &Sheet) {
    match &sheet.answer {
        Some(answer) => check_answer(calculator, answer),
        None => {
            assert!(!sheet.refusals.is_empty(), "{}: neither answer nor refusal", calculator.slug)
        }
    }
    for refusal in &sheet.refusals {
        assert!(calculator.fields.iter().any(|f| f.id == refusal.field), "{refusal:?}");
        assert!(!refusal.sentence.to_string().is_empty());
    }
}

/// Sets of choices in which a field is tried at each of its limits.
const SETS: usize = 6;

/// Every field at each of its limits, and every count up to some dozens, in some of the sets of choices that ask for it.
#[test]
fn no_field_at_its_limits_makes_a_calculator_panic_or_fall_silent() {
    let bench = Bench::default();
    let mut tried = 0;
    for calculator in calculators::ALL {
        let sets = entries::chosen(calculator);
        for field in calculator.fields {
            let asks = |set: &&Entries| calculator.asked(set, &bench).any(|it| it.id == field.id);
            let asking: Vec<&Entries> = sets.iter().filter(asks).collect();
            for set in asking.iter().step_by(asking.len().div_ceil(SETS).max(1)) {
                for text in limits::texts(calculator, set, field) {
                    let mut entries = (*set).clone();
                    entries.set(field.id, text);
                    check_sheet(calculator, &calculator.sheet(&entries, &bench, &NoNames));
                    tried += 1;
                }
            }
        }
    }
    println!("{tried} forms at their limits");
    assert!(tried > 10_000, "only {tried}");
}

/// Random forms for each of the two laws.
const CASES: u32 = 10_000;
/// Ways out of each calculator that are taken at the least.
const FEWEST_WAYS_OUT: usize = 8;

proptest! {
    #![proptest_config(ProptestConfig::with_cases(CASES))]

    #[test]
    fn no_entries_make_a_calculator_panic_or_fall_silent(
        (calculator, entries) in filled_in(0..6),
    ) {
        check_sheet(calculator, &calculator.sheet(&entries, &Bench::default(), &NoNames));
    }
}

/// A way out is worth its name: carrying it out leaves that problem behind, as the tape writes it. Every one that can be
/// tapped is, and each calculator offers some.
#[test]
fn a_way_out_that_can_be_tapped_gets_rid_of_its_problem() {
    let judged = Judged::default();
    let drawn = (filled_in(1..4), prop::sample::select(TAPES.to_vec()));
    judged::law(ProptestConfig::with_cases(CASES), &drawn, |((calculator, entries), tape)| {
        let bench = Bench { tape, ..Bench::default() };
        let sheet = calculator.sheet(&entries, &bench, &NoNames);
        for refusal in &sheet.refusals {
            let Some(way_out) = &refusal.way_out else { continue };
            if way_out.set.is_empty() {
                continue;
            }
            let mut tried = entries.clone();
            for (field, text) in way_out.texts(tape) {
                tried.set(field, text);
            }
            let after = calculator.sheet(&tried, &bench, &NoNames);
            prop_assert!(
                after.refusals.iter().all(|r| (r.field, r.code) != (refusal.field, refusal.code)),
                "{}: after {:?} still {:?}",
                calculator.slug,
                way_out.set,
                refusal
            );
            judged.note(calculator.slug, 1);
        }
        Ok(())
    });
    for calculator in calculators::ALL {
        judged.at_least(FEWEST_WAYS_OUT, calculator.slug);
    }
}

#[test]
fn a_length_is_read_the_same_on_every_tape() {
    let length = Length::sixty_fourths(217);
    for tape in [Tape::SIXTEENTHS, Tape::Millimetres(1), Tape::DecimalInches(3)] {
        let reading = tape.read(length, Rounding::Nearest).expect("a small length");
        assert_eq!((reading.mark + reading.left_over).expect("small"), length);
    }
}

/// A full-size template can be laid out on paper, and nothing on it is beyond its own size.
fn check_template(slug: &str, template: &reckoner_core::paper::Template) {
    use reckoner_core::paper::{Ink, Paper, PaperProblem, tile};
    match tile(template, Paper::Letter) {
        Ok(_) | Err(PaperProblem::TooManyPages) => {}
        Err(PaperProblem::NoSize) => panic!("{slug}: a template without a size"),
    }
    let slack = 0.01 + template.width * 1e-6;
    for ink in &template.inks {
        let places = match ink {
            Ink::Cut(places) | Ink::Guide(places) => places.clone(),
            Ink::Hole(x, y, _) | Ink::Words(x, y, _) => vec![(*x, *y)],
        };
        for (x, y) in places {
            let inside = x >= -slack && y >= -slack && y <= template.height + slack;
            assert!(inside && x <= template.width + 4.0, "{slug}: {ink:?} of {template:?}");
        }
    }
}

/// The place of a problem is one of the whole text of its field, also in a list.
#[test]
fn the_trouble_in_a_list_is_marked_where_it_stands() {
    let spacing = calculators::find("spacing").expect("spacing");
    let field = spacing.fields.iter().find(|f| matches!(f.kind, Kind::Spans)).expect("zones");
    let text = "1 to 2, 10 to 12 q";
    let entries = Entries::from_pairs([(field.id, text)]);
    let sheet = spacing.sheet(&entries, &Bench::default(), &NoNames);
    let refusal = sheet.refusals.iter().find(|r| r.field == field.id).expect("refused");
    assert_eq!(&text[refusal.at.clone().expect("a place")], "q");
}

/// A program in parts looks for the page of a calculator in the part of its run.
#[test]
fn each_calculator_is_in_the_list_of_its_run() {
    let runs = [(Run::Wood, WOOD), (Run::Joints, JOINTS), (Run::Shapes, SHAPES)];
    let mut places = 0;
    for (run, calculators) in runs {
        for calculator in calculators {
            assert_eq!(calculator.stage.run(), run, "{}", calculator.slug);
            assert!(core::ptr::eq(*calculator, ALL[places]), "{}", calculator.slug);
            places += 1;
        }
    }
    assert_eq!(places, ALL.len());
}
