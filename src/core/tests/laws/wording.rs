//! Every sentence of every calculator, over all sets of choices and random entries: none counts
//! "1 boards", none runs a number into its unit, none is "about 0 in", none names a fraction that no
//! tape has, none spells one word two ways.

use std::collections::BTreeSet;

use reckoner_core::calculators;
use reckoner_core::drawing::Shape;
use reckoner_core::measure::text::NoNames;
use reckoner_core::measure::{Partner, Tape, Unit};
use reckoner_core::planning::quick_list::{QUICK_LIST, quick_list};
use reckoner_core::sheet::{Answer, Ask, Bench, Entries, Face, Kind, Refusal, Value, face};

use crate::entries;

/// Of the entries that the law of the working takes, every so many.
const ONE_IN: usize = 4;

/// Units and things that a number stands before with a space.
const UNITS: [&str; 14] =
    ["psi", "lb", "in", "mm", "cm", "ft", "sq", "gal", "kg", "MPa", "N", "thousand", "bd", "cu"];

/// Verbs and endings that stand after a 1 and are no plural.
const NO_PLURALS: [&str; 13] = [
    "is", "as", "has", "was", "this", "its", "across", "gets", "less", "plus", "lies", "comes",
    "loses",
];

/// Of a decimal: what a working is worked out with has seven, and a large result with four decimals a few more.
const MOST_FIGURES: usize = 12;

/// What is wrong with a text, if anything.
fn wrong(text: &str) -> Option<&'static str> {
    let words: Vec<&str> =
        text.split([' ', '(', ')', ',', ';', ':', '·']).filter(|word| !word.is_empty()).collect();
    for pair in words.windows(2) {
        let [one, thing] = pair else { continue };
        let thing = thing.trim_end_matches(['.', '?', '!']);
        let is_plural = thing.len() > 3
            && thing.ends_with('s')
            && !thing.ends_with("ss")
            && thing.chars().all(char::is_alphabetic)
            && !NO_PLURALS.contains(&thing);
        if *one == "1" && is_plural {
            return Some("one of many");
        }
    }
    for word in &words {
        let letters = word.trim_start_matches(|c: char| c.is_ascii_digit() || "./-".contains(c));
        let unit = letters.trim_end_matches(['.', '?', '!']);
        if letters.len() < word.len() && UNITS.contains(&unit) {
            return Some("a number run into its unit");
        }
    }
    if ["about 0 in", "about 0 mm", "about 0\""].iter().any(|nothing| text.contains(nothing)) {
        return Some("about nothing");
    }
    if ["of 0 in or less", "of 0 mm or less"].iter().any(|nothing| text.contains(nothing)) {
        return Some("nothing or less");
    }
    let figures = |word: &&str| {
        let digits = word.trim_start_matches(['0', '.']).chars().filter(char::is_ascii_digit);
        word.contains('.') && digits.count() > MOST_FIGURES
    };
    if words.iter().any(figures) {
        return Some("more figures than anything is known to");
    }
    let lower = text.to_lowercase();
    if lower.contains("centre") {
        return Some("centre beside center");
    }
    None
}

/// A fraction of an inch that no tape has; a 128th is what is left over beside a mark.
fn off_the_tape(text: &str) -> bool {
    let mut words = text.split_whitespace().peekable();
    while let Some(word) = words.next() {
        let Some((_, below)) = word.split_once('/') else { continue };
        let is_inches =
            words.peek().is_some_and(|unit| unit.trim_end_matches(['.', ',', ';']) == "in");
        if let (true, Ok(below)) = (is_inches, below.parse::<u64>())
            && 128 % below.max(1) != 0
        {
            return true;
        }
    }
    false
}

/// A number of inches.
fn in_inches(text: &str) -> bool {
    let words: Vec<&str> = text.split([' ', '(', ')', ',', ';']).collect();
    words.windows(2).any(|pair| {
        pair[0].chars().all(|c| c.is_ascii_digit() || "./".contains(c))
            && pair[0].chars().any(|c| c.is_ascii_digit())
            && pair[1].trim_end_matches(['.', '?', '!']) == "in"
    })
}

/// A number of millimetres, bare or with its unit run into it.
fn in_millimetres(text: &str) -> bool {
    let words: Vec<&str> = text.split([' ', '(', ')', ',', ';', ':', '“', '”']).collect();
    let word = |at: usize| words.get(at).map_or("", |it| it.trim_end_matches(['.', '?', '!']));
    let is_number = |text: &str| {
        text.ends_with(|c: char| c.is_ascii_digit())
            && text.chars().all(|c| c.is_ascii_digit() || "./-".contains(c))
    };
    (0..words.len()).any(|at| {
        let run_in = word(at).strip_suffix("mm").is_some_and(is_number);
        run_in || (is_number(word(at)) && word(at.saturating_add(1)) == "mm")
    })
}

/// A number of pounds, feet or the like.
fn not_metric(text: &str) -> bool {
    let words: Vec<&str> = text.split([' ', '(', ')', ',', ';']).collect();
    words.windows(2).any(|pair| {
        pair[0].ends_with(|c: char| c.is_ascii_digit())
            && ["lb", "lb/ft", "lb/cu", "lb/in", "ft", "foot", "feet", "sq", "psi"]
                .contains(&pair[1].trim_end_matches(['.', '?', '!', ':']))
    })
}

/// What is advised beside the numbers.
fn advice(answer: &Answer, tape: Tape) -> Vec<String> {
    let figures = core::iter::once(&answer.headline).chain(&answer.figures);
    let cautions = answer.cautions.iter().flat_map(|it| [it.line(), it.more()]);
    let all = answer.notes.iter().map(|note| note.on(tape));
    let all = all.chain(cautions.map(|it| it.on(tape)));
    all.chain(figures.map(|figure| figure.from.to_owned())).collect()
}

fn said(answer: &Answer, bench: &Bench) -> Vec<String> {
    let value = |value: &Value| match face(value, bench) {
        Face::Line { text, .. } => vec![text],
        Face::Measure(shown) => vec![shown.mark.to_string(), shown.in_words],
        Face::Measures(_) => Vec::new(),
    };
    let mut texts = Vec::new();
    for figure in core::iter::once(&answer.headline).chain(&answer.figures) {
        texts.extend([figure.label.to_owned(), figure.from.to_owned()]);
        texts.extend(value(&figure.value));
    }
    for table in &answer.tables {
        texts.push(table.title.to_owned());
        texts.extend(table.columns.iter().map(|column| column.heading.to_owned()));
        texts.extend(table.rows.iter().flatten().flat_map(value));
    }
    texts.extend(answer.notes.iter().map(|note| note.on(bench.tape)));
    texts.extend(
        answer.cautions.iter().flat_map(|it| [it.line().on(bench.tape), it.more().on(bench.tape)]),
    );
    if let Some(scene) = &answer.drawing {
        texts.push(scene.title.on(bench.tape));
        texts.extend(scene.words.iter().cloned());
        texts.extend(scene.items.iter().filter_map(|item| match &item.shape {
            Shape::Text(.., text) => Some(text.clone()),
            _ => None,
        }));
    }
    texts
}

fn refused(refusal: &Refusal, bench: &Bench) -> Vec<String> {
    let way_out = refusal.way_out.as_ref();
    let texts = way_out.map_or_else(Vec::new, |out| out.texts(bench.tape));
    // A choice is set by its id, which is nothing to read.
    let set = texts.into_iter().map(|(_, text)| text).filter(|text| text.contains(' '));
    [refusal.sentence.on(bench.tape)]
        .into_iter()
        .chain(way_out.map(|out| out.sentence.on(bench.tape)))
        .chain(set)
        .collect()
}

#[test]
fn no_sentence_is_badly_put() {
    let (mut bad, mut metric, mut inch) = (BTreeSet::new(), 0, 0);
    for calculator in calculators::ALL {
        for field in calculator.fields {
            let metric = field.hint_in(Unit::Millimetre);
            for text in [field.label, field.hint, metric] {
                bad.extend(wrong(text).map(|why| (calculator.slug, why, text.to_owned())));
            }
            // A number beside a field whose unit is another on a metric tape is another number there.
            let is_bare = matches!(field.kind, Kind::Number { unit, .. } if Partner::of(unit).is_some())
                && metric == field.hint
                && metric.contains(|c: char| ('1'..='9').contains(&c));
            if is_bare || not_metric(metric) {
                bad.insert((calculator.slug, "a hint in the other units", metric.to_owned()));
            }
        }
        let all = entries::of(calculator).into_iter().step_by(ONE_IN).enumerate();
        for (at, (entries, tape)) in all {
            let tape = if at.is_multiple_of(2) { tape } else { Tape::Millimetres(0) };
            let bench = Bench { tape, ..Bench::default() };
            let sheet = calculator.sheet(&entries, &bench, &NoNames);
            // What is typed is said back as it was typed, so its fractions are the user's own.
            let mut texts: Vec<String> =
                sheet.refusals.iter().flat_map(|refusal| refused(refusal, &bench)).collect();
            // Nor is a millimetre strange where one was typed, or where the bits are metric ones.
            let is_typed = calculator.fields.iter().any(|field| {
                entries.text(field.id).is_some_and(|it| it.contains("mm") || it == "millimetres")
            });
            if !tape.unit().is_metric() && !is_typed {
                inch += texts.len();
                let other = texts.iter().filter(|text| in_millimetres(text)).cloned();
                bad.extend(
                    other.map(|text| (calculator.slug, "millimetres on an inch tape", text)),
                );
            }
            if let Some(answer) = &sheet.answer {
                let steps = &answer.working.steps;
                let worked = steps.iter().flat_map(|it| [it.rule.to_string(), it.put_in.on(tape)]);
                for text in worked {
                    bad.extend(wrong(&text).map(|why| (calculator.slug, why, text.clone())));
                }
                texts.extend(said(answer, &bench));
            }
            if let Some(answer) = sheet.answer.as_ref().filter(|_| tape.unit().is_metric()) {
                let advice = advice(answer, tape);
                metric += advice.len();
                let inches = advice.into_iter().filter(|text| in_inches(text) || not_metric(text));
                bad.extend(inches.map(|text| (calculator.slug, "inches on a metric tape", text)));
            }
            for echo in &sheet.echoes {
                let text = echo.sentence.on(tape);
                bad.extend(wrong(&text).map(|why| (calculator.slug, why, text.clone())));
            }
            for text in texts {
                // Beside a metric tape the entries that a way out writes again are fractions of the user's own.
                let is_off = !tape.unit().is_metric() && off_the_tape(&text);
                let why = wrong(&text).or_else(|| is_off.then_some("a fraction that no tape has"));
                bad.extend(why.map(|why| (calculator.slug, why, text)));
            }
        }
    }
    assert!(metric > 10_000, "{metric} texts on a metric tape");
    assert!(inch > 1_000, "{inch} texts of refusals on an inch tape");
    // One of each make.
    let mut seen = BTreeSet::new();
    bad.retain(|(slug, why, text)| {
        seen.insert((*slug, *why, text.replace(|c: char| c.is_ascii_digit(), "")))
    });
    assert!(bad.is_empty(), "{bad:#?}");
}

/// The list of the cut plan is no calculator, but its refusals are read beside one.
#[test]
fn no_refusal_of_the_quick_list_is_badly_put() {
    let texts = [
        (
            "parts",
            &["33 x 4", "leg 4 @ 33", "4 @ 0", "1001 @ 3", "3 @ 20,5", "4 @ 200", "a\tb", ""][..],
        ),
        ("boards", &["4 x 96", "96 x 4 at 10", "2 x 4 x 96", "96 at 0", "96 max 1001", "0", "3 2"]),
        ("scraps", &["33 x 4", "52 x 5 1/2", "1001 @ 3", "0", "3,", "52 wide"]),
        ("kerf", &["-1", "20", "15.24", "x"]),
        ("end_trim", &["-1", "90", "x"]),
        ("keep_from", &["-1", "x"]),
        ("spare_each", &["-1", "1 1/2", "9999"]),
        ("extra_percent", &["-1", "1 1/2", "9999"]),
    ];
    let (mut bad, mut seen) = (BTreeSet::new(), 0);
    for tape in [Tape::SIXTEENTHS, Tape::Millimetres(0)] {
        let bench = Bench { tape, ..Bench::default() };
        for (id, text) in texts.iter().flat_map(|(id, all)| all.iter().map(move |it| (*id, *it))) {
            let entries = Entries::from_pairs([(id, text)]);
            let mut ask = Ask::new(QUICK_LIST.fields, &entries, &bench, &NoNames);
            let _ = quick_list(&mut ask);
            for text in ask.finish().1.iter().flat_map(|refusal| refused(refusal, &bench)) {
                seen += 1;
                let is_inch = !tape.unit().is_metric();
                let why = wrong(&text)
                    .or_else(|| (is_inch && off_the_tape(&text)).then_some("off the tape"))
                    .or_else(|| (is_inch && in_millimetres(&text)).then_some("millimetres"));
                bad.extend(why.map(|why| (why, text)));
            }
        }
    }
    assert!(bad.is_empty(), "{bad:#?}");
    assert!(seen > 60, "{seen} texts of refusals");
}

#[test]
fn the_law_sees_bad_words() {
    for text in [
        "1 boards are wanted.",
        "This must be from 50 to 50000psi.",
        "100 to 30000thousand psi",
        "push on each other by about 0 in",
        "center to centre",
        "Use a rise of 0 in or less.",
        "limit 870.2264263812552 psi",
    ] {
        assert!(wrong(text).is_some(), "{text}");
    }
    for text in ["3 1/2 boards", "1 board", "a 2x6 of 1 1/2 in", "less than 1/16 in", "1 is left"] {
        assert_eq!(wrong(text), None, "{text}");
    }
    assert!(
        in_inches("go 1/2 in deeper") && in_inches("under 1/4 in.") && !in_inches("2 left in it")
    );
    for text in ["use 15.24mm", "from 3 mm to 5 mm", "at most 12.7 mm."] {
        assert!(in_millimetres(text), "{text}");
    }
    assert!(!in_millimetres("on the mm side, 3 in") && !in_millimetres("3.2 in of 4 mmm"));
    assert!(not_metric("one person, 250 lb on one spot") && !not_metric("5.9 MPa, 2 left"));
    assert!(off_the_tape("under 123/125 in") && !off_the_tape("1/360 of it, 3/8 in"));
}
