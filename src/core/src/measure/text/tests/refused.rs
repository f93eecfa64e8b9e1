//! What is refused: the sentence, and the place in the text.

use super::Job;
use crate::measure::limits::{MAX_DEPTH, MAX_TEXT};
use crate::measure::text::{Formula, TextProblem, TextProblemKind as Kind, parse};
use crate::measure::{Length, Unit};

/// What a text is read as.
type Read = fn(&Formula) -> Result<(), TextProblem>;

fn as_length(formula: &Formula) -> Result<(), TextProblem> {
    formula.length(Unit::Inch, &Job).map(|_: Length| ())
}

fn as_number(formula: &Formula) -> Result<(), TextProblem> {
    formula.number(Unit::Inch, &Job).map(|_| ())
}

fn as_area(formula: &Formula) -> Result<(), TextProblem> {
    formula.area(Unit::Inch, &Job).map(|_| ())
}

fn problem(text: &str, read: Read) -> TextProblem {
    match parse(text, &Job).and_then(|formula| read(&formula)) {
        Err(problem) => problem,
        Ok(()) => panic!("{text:?} is accepted"),
    }
}

const NO_UNIT: &str = "is not a unit or a known name. Units are in, ft, mm, cm and m.";
const TWO_WAYS: &str = "This can be read two ways. Put spaces around a minus (6 - 3 3/8), and write mixed numbers with a space.";
const MUDDLE: &str = "Two units are mixed up here. Write feet before inches (2 ft 4 in), or put a sign between the two.";
const NO_NUMBER: &str = "A number is missing here, such as 3 3/8.";
const NO_SIGN: &str = "A sign is missing here: + - × or ÷.";
const TOO_LARGE: &str =
    "This is too large or too fine to keep exactly. A length may be up to 100000 in.";
const ONE_PIECE: &str =
    "Write a number in one piece, as in 1000. For decimals use a point, as in 3.375.";
const NO_SPACE: &str = "Write a fraction without a space inside, as in 3 3/8.";
const INVISIBLE: &str =
    "A character that cannot be seen stands here. Delete it and type this part again.";
const ADDS_UNLIKE: &str = "These two cannot be added: one is a length and the other is not.";
const BEYOND_AREA: &str = "This is neither a length nor an area. Check the × and ÷.";

fn means_nothing(c: char) -> String {
    format!("“{c}” means nothing here. Use numbers, fractions, units and + - × ÷ ( ).")
}

fn is_a_board(name: &str) -> String {
    format!(
        "“{name}” is the name of a board. Write the size you measured, or put spaces around × to multiply."
    )
}

fn not_plain(c: char) -> String {
    format!("“{c}” is not a plain digit or sign. Use 0 to 9 and / as on a keyboard.")
}

/// Text with the place marked by `[` and `]`, what it is read as, and the sentence. A square
/// bracket has no meaning in a measure, so it can mark the place here.
fn table() -> Vec<(String, Read, String)> {
    let mut rows: Vec<(String, Read, String)> = Vec::new();
    let mut add = |marked: &str, sentence: &str| {
        rows.push((marked.to_owned(), as_length, sentence.to_owned()))
    };
    // Nothing there, or not where it should be.
    let empty = "Nothing is written yet. Enter a measure, such as 3 3/8.";
    add("[]", empty);
    add("[  \u{a0} ]", empty);
    for marked in ["3 +[]", "3 3/8-[]", "3*[]", "3 ×  []", "3x[]", "[*]3", "3*[*]2"] {
        add(marked, NO_NUMBER);
    }
    for marked in ["[.]", "3 in [.]", "[2.4.]5", "[3..]4", "([)]", "[)]", "[/]2", "[in]"] {
        add(marked, NO_NUMBER);
    }
    for marked in ["[']3", "[\"]3\"", "[x]", "[x]3", "3 +[/]- 1/16", "(3 +[)]"] {
        add(marked, NO_NUMBER);
    }
    for marked in [
        "3 [3]",
        "3 3/8 [3]/8",
        "1.5 [1]/2",
        "2[(]3)",
        "(3)[(]4)",
        "(3+4) [2]",
        "3'[\"]",
        "3\"[']",
        "(3) [½]",
        "(3 [4])",
    ] {
        add(marked, NO_SIGN);
    }
    add("[(]3", "This bracket is never closed. Add a ).");
    add("2 × [(]3 + (4)", "This bracket is never closed. Add a ).");
    let unopened = "This ) has no ( before it. Take it out, or add the (.";
    add("3[)]", unopened);
    add("(3)[)] + 1", unopened);
    // Characters and words.
    for c in ['^', '%', '$', '#', '@', '&', ';', ':', '_', '\\', '—', '±', '=', '🪚', '°'] {
        add(&format!("3[{c}]8"), &means_nothing(c));
    }
    add("[=]3", &means_nothing('='));
    add("1+2[=]3", &means_nothing('='));
    add("3[=]=", &means_nothing('='));
    add("3 3[\\]8", &means_nothing('\\'));
    for word in ["and", "yd", "inchs", "heavy", "to", "wide", "over", "xx", "MÍ"] {
        add(&format!("3 [{word}] 8"), &format!("“{word}” {NO_UNIT}"));
    }
    add("[six]", &format!("“six” {NO_UNIT}"));
    add("[sqrt](2)", &format!("“sqrt” {NO_UNIT}"));
    add("1[e]5", &format!("“e” {NO_UNIT}"));
    add("2 × [lag]", &format!("“lag” {NO_UNIT}"));
    for c in ['６', '／', '³', '①', '٣'] {
        add(&format!("3[{c}]"), &not_plain(c));
        add(&format!("[{c}]"), &not_plain(c));
    }
    for c in [
        '\u{200b}', '\u{200e}', '\u{2060}', '\u{feff}', '\u{ad}', '\u{0}', '\u{7f}', '\u{fe0f}',
        '\u{2800}',
    ] {
        add(&format!("3[{c}] 1/2"), INVISIBLE);
        add(&format!("[{c}]3"), INVISIBLE);
    }
    // Numbers.
    for (marked, sentence) in [
        ("[3/0]", "A fraction cannot have 0 below the line."),
        ("3 [3/0]", "A fraction cannot have 0 below the line."),
        ("3 [9/8]", "The fraction after a whole number must be less than one, as in 3 3/8."),
        ("3 [8/8]", "The fraction after a whole number must be less than one, as in 3 3/8."),
        ("2' 3 [9/8]\"", "The fraction after a whole number must be less than one, as in 3 3/8."),
        ("[1234567890123456789]", "This number has more than 18 digits. Write a shorter one."),
        ("0.[1234567890123456789]", "This number has more than 18 digits. Write a shorter one."),
        ("[12345678901.12345678]", "This number has more than 18 digits. Write a shorter one."),
        ("[3,]5", "Use a point for decimals, as in 3.375."),
        ("[3,]37", "Use a point for decimals, as in 3.375."),
        ("1[,] 2", "Use a point for decimals, as in 3.375."),
        ("[1,000]", ONE_PIECE),
        ("[1,234],567", ONE_PIECE),
        ("[3,375]", ONE_PIECE),
        ("1 [000] mm", ONE_PIECE),
        ("[1'000]", ONE_PIECE),
        ("[1’250]", ONE_PIECE),
        ("3 [3/ 8]", NO_SPACE),
        ("3 [3 /8]", NO_SPACE),
        ("3 [3 / 8] in", NO_SPACE),
        ("[100001]", TOO_LARGE),
        ("[-100001]", TOO_LARGE),
        ("[100000 × 100000]", TOO_LARGE),
        ("[999999999999999999 ft]", TOO_LARGE),
        ("[1/999999999999999999 + 1/999999999999999998]", TOO_LARGE),
        ("[(999999999999999999) ft]", TOO_LARGE),
        ("3 ÷ [0]", "This divides by zero. Divide by something else."),
        ("3 / [(1 - 1)] + 4", "This divides by zero. Divide by something else."),
        ("3 in ÷ [(1 in - 1)]", "This divides by zero. Divide by something else."),
        ("2 in × 2 in ÷ [(1 in × 0 in)]", "This divides by zero. Divide by something else."),
    ] {
        add(marked, sentence);
    }
    // Read two ways.
    for marked in [
        "6-[3-3/8]",
        "[6-3/8]-1",
        "[3 -3/8]",
        "[3- 3/8]",
        "[3 -3/8\"]",
        "[3 -⅜]",
        "[3–3/8]",
        "[3−3/8]",
        "10 × [3 -1/2]",
        "10 - [3 -1/2] × 2",
        "[2' -4\"]",
        "[2'- 4\"]",
        "[2 ft. -4]",
        "[2'–4\"]",
        "[2’ -4½]",
    ] {
        add(marked, TWO_WAYS);
    }
    for name in ["2x4", "2X4", "1x6", "5/4x6", "4x4"] {
        add(&format!("[{name}]"), &is_a_board(name));
        add(&format!("3 + [{name}]"), &is_a_board(name));
    }
    add("[1x6]x8", &is_a_board("1x6"));
    // Units.
    for marked in [
        "[5\" 3']",
        "[2 ft 45 mm]",
        "[2' 3']",
        "[2\" 3\"]",
        "[3 m 20]",
        "[20 mm 5 cm]",
        "[1 m 3 in]",
        "[(2 in) in]",
        "[(2 in × 2 in) mm]",
    ] {
        add(marked, MUDDLE);
    }
    let after_feet = "The part after feet must be less than one foot, as in 2 ft 4 in.";
    add("2' [14\"]", after_feet);
    add("2 ft [12]", after_feet);
    add("2'-[12 in]", after_feet);
    add("1m [200cm]", "The part after metres must be less than one metre, as in 1 m 20 cm.");
    add(
        "3 cm [10 mm]",
        "The part after centimetres must be less than one centimetre, as in 1 m 20 cm.",
    );
    add("[2 in × 3 in]", "A length times a length is an area. A length is wanted here.");
    add("[top]", "A length times a length is an area. A length is wanted here.");
    let plain = "A length divided by a length is a plain number. A length is wanted here.";
    add("[6 in ÷ 3 in]", plain);
    add("[ratio]", plain);
    for marked in ["[1 in + 6 in ÷ 3 in]", "[ratio - 1 in]", "[1 in × 1 in + 1 in]", "[top - 4]"]
    {
        add(marked, ADDS_UNLIKE);
    }
    for marked in
        ["[1 in × 1 in × 1 in]", "[4 ÷ (1 in × 1 in)]", "[1 in ÷ (1 in × 1 in)]", "[ratio ÷ leg]"]
    {
        add(marked, BEYOND_AREA);
    }
    add("2 + [shelf]", "“shelf” has no value yet. Give it one first.");
    // Read as something else than a length.
    let no_unit = "A plain number is wanted here. Take out the unit.";
    rows.push(("[3 in]".to_owned(), as_number, no_unit.to_owned()));
    rows.push(("[2 × leg]".to_owned(), as_number, no_unit.to_owned()));
    let no_area = "An area is wanted here: a length times a length.";
    for marked in ["[3 in]", "[3]", "[2 + 3]", "[ratio]"] {
        rows.push((marked.to_owned(), as_area, no_area.to_owned()));
    }
    rows
}

#[test]
fn every_refusal_has_its_sentence_and_its_place() {
    for (marked, read, sentence) in table() {
        let text = marked.replace(['[', ']'], "");
        let problem = problem(&text, read);
        assert_eq!(problem.to_string(), sentence, "{marked:?}");
        let (before, place, after) = problem.split(&text);
        assert_eq!(format!("{before}[{place}]{after}"), marked, "{sentence}");
    }
}

#[test]
fn limits_of_a_text_are_refused() {
    let long = "1".repeat(MAX_TEXT + 1);
    let too_long = problem(&long, as_length);
    assert_eq!(
        too_long.to_string(),
        "This is longer than 500 characters. Work it out in two steps."
    );
    assert_eq!(too_long.at, 0..long.len());
    // Characters, not bytes, are counted.
    let wide = "½ + ".repeat(MAX_TEXT / 4 + 1);
    assert_eq!(problem(&wide, as_length).kind, Kind::TooLong);
    let huge = "(".repeat(5_000_000);
    assert_eq!(problem(&huge, as_length).kind, Kind::TooLong);

    let depth = MAX_DEPTH + 1;
    let deep = format!("{}1{}", "(".repeat(depth), ")".repeat(depth));
    let too_deep = problem(&deep, as_length);
    assert_eq!(too_deep.to_string(), "Brackets go more than 120 deep. Work it out in two steps.");
    assert_eq!(too_deep.at, MAX_DEPTH..depth);
    for sign in ["-", "+", "-(", "+-"] {
        let deep = format!("{}1", sign.repeat(depth));
        assert_eq!(problem(&deep, as_length).kind, Kind::TooDeep, "{sign}");
    }
}

/// A new kind of problem does not compile until it has a place here, and then fails until the
/// table above has a row for it.
#[test]
fn no_kind_of_problem_is_forgotten() {
    const KINDS: usize = 30;
    let place = |kind: &Kind| match kind {
        Kind::Empty => 0,
        Kind::TooLong => 1,
        Kind::TooDeep => 2,
        Kind::TooManyDigits => 3,
        Kind::TooLarge => 4,
        Kind::UnknownCharacter(_) => 5,
        Kind::UnknownWord(_) => 6,
        Kind::ExpectedAmount => 7,
        Kind::ExpectedOperator => 8,
        Kind::UnclosedBracket => 9,
        Kind::UnopenedBracket => 10,
        Kind::ZeroUnderFraction => 11,
        Kind::DivisionByZero => 12,
        Kind::FractionNotBelowOne => 13,
        Kind::AmbiguousHyphen => 14,
        Kind::UnitMuddle => 15,
        Kind::PartNotBelowUnit(_) => 16,
        Kind::BoardName(_) => 17,
        Kind::DecimalComma => 18,
        Kind::GroupedDigits => 19,
        Kind::SpacedFraction => 20,
        Kind::NotPlain(_) => 21,
        Kind::Invisible => 22,
        Kind::IsArea => 23,
        Kind::IsPlainNumber => 24,
        Kind::IsLength => 25,
        Kind::IsNotArea => 26,
        Kind::BeyondArea => 27,
        Kind::AddsUnlike => 28,
        Kind::NameWithoutValue(_) => 29,
        // Said by the fields for counts, which are not read here.
        Kind::NotACount(_) => KINDS,
    };
    // The two limits of a text have a test of their own above.
    let mut seen = [false; KINDS];
    seen[1] = true;
    seen[2] = true;
    for (marked, read, _) in table() {
        seen[place(&problem(&marked.replace(['[', ']'], ""), read).kind)] = true;
    }
    let forgotten: Vec<usize> = (0..KINDS).filter(|n| !seen[*n]).collect();
    assert_eq!(forgotten, Vec::<usize>::new());
}
