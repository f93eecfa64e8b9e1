//! What is accepted, and what it comes to.

use super::{Job, of_inch, reads};
use crate::measure::limits::{MAX_DEPTH, MAX_TEXT};
use crate::measure::text::{NoNames, Quantity, number, parse};
use crate::measure::{Area, Number, Unit};

/// One row for each spelling of the grammar in the module above; values in inches.
const IN_INCHES: &[(&str, &str)] = &[
    // digits, decimals, fractions
    ("3", "3"),
    ("007", "7"),
    ("3.375", "27/8"),
    (".5", "1/2"),
    ("5.", "5"),
    ("3/8", "3/8"),
    ("9/8", "9/8"),
    ("0/8", "0"),
    ("⅜", "3/8"),
    ("3⁄8", "3/8"),
    ("3∕8", "3/8"),
    // mixed numbers
    ("3 3/8", "27/8"),
    ("3  3/8", "27/8"),
    ("3\t3/8", "27/8"),
    ("3\u{a0}3/8", "27/8"),
    ("3\u{2009}3/8", "27/8"),
    ("3\u{202f}3⁄8", "27/8"),
    ("3-3/8", "27/8"),
    ("3‐3/8", "27/8"),
    ("3‑3/8", "27/8"),
    ("3⅜", "27/8"),
    ("3 ⅜", "27/8"),
    ("3-⅜", "27/8"),
    ("0 3/8", "3/8"),
    ("3 0/8", "3"),
    // inches
    ("3 3/8 in", "27/8"),
    ("3 3/8in.", "27/8"),
    ("3 3/8 ins", "27/8"),
    ("3 3/8 inch", "27/8"),
    ("3 3/8 Inches", "27/8"),
    ("3 3/8\"", "27/8"),
    ("3⅜″", "27/8"),
    ("3 3/8”", "27/8"),
    ("3 3/8“", "27/8"),
    ("3 3/8''", "27/8"),
    ("3 3/8’’", "27/8"),
    ("3 3/8´´", "27/8"),
    ("3.5in.+2", "11/2"),
    // feet, and feet with inches
    ("2 ft", "24"),
    ("2 ft.", "24"),
    ("1 foot", "12"),
    ("2 feet", "24"),
    ("2'", "24"),
    ("2′", "24"),
    ("2’", "24"),
    ("2´", "24"),
    ("1.5 ft", "18"),
    ("1/2 ft", "6"),
    ("2' 4 1/2\"", "57/2"),
    ("2'4 1/2\"", "57/2"),
    ("2'4-1/2\"", "57/2"),
    ("2'-4 1/2\"", "57/2"),
    ("2'-4-1/2\"", "57/2"),
    ("2’ 4½”", "57/2"),
    ("2′ 4.5″", "57/2"),
    ("2 ft 4 in", "28"),
    ("2ft4in", "28"),
    ("2 ft. 4 in.", "28"),
    ("2 ft-4 in", "28"),
    ("2 feet 4", "28"),
    ("2' 4", "28"),
    ("12'6", "150"),
    ("8'0", "96"),
    ("8' 0\"", "96"),
    ("5' 3/8", "483/8"),
    ("5' 3/8\"", "483/8"),
    ("5'-3/8\"", "483/8"),
    ("1 1/2' 3\"", "21"),
    ("2' 11 63/64\"", "2303/64"),
    // metric
    ("25.4 mm", "1"),
    ("25.4mm", "1"),
    ("254 MM", "10"),
    ("2.54cm", "1"),
    ("25.4 millimetres", "1"),
    ("25.4 millimeters", "1"),
    ("1 millimetre + 1 millimeter", "10/127"),
    ("2.54 centimetres", "1"),
    ("2.54 centimeters", "1"),
    ("0.0254 m", "1"),
    ("0.0254 metres", "1"),
    ("0.0254 meters", "1"),
    ("1 m", "5000/127"),
    ("1 m 27 cm", "50"),
    ("1m270mm", "50"),
    ("1 m 26 cm 9 mm + 1 mm", "50"),
    ("126 cm 9 mm + 1mm", "50"),
    // signs
    ("-3 3/8", "-27/8"),
    ("−3 3/8", "-27/8"),
    ("–3 3/8", "-27/8"),
    ("- 3-3/8", "-27/8"),
    ("+3", "3"),
    ("--3", "3"),
    ("-+3", "-3"),
    // sums
    ("3 - 3/8", "21/8"),
    ("3 − 3/8", "21/8"),
    ("3 – 3/8", "21/8"),
    ("3+3/8", "27/8"),
    ("6\"-3/8\"", "45/8"),
    ("6\" -3/8\"", "45/8"),
    ("6\"–3/8\"", "45/8"),
    ("12-6", "6"),
    ("1/2-1/4", "1/4"),
    ("3½-½", "3"),
    ("1.5-1/2", "1"),
    ("6-3 3/8", "21/8"),
    ("6 - 3-3/8", "21/8"),
    ("6-3/8 - 1", "43/8"),
    ("2' - 4\"", "20"),
    ("2'-4\" - 1/2", "55/2"),
    ("10 - 2 - 3", "5"),
    ("10 - (2 - 3)", "11"),
    ("3--2", "5"),
    ("3 - -2", "5"),
    ("1 in + 25.4 mm", "2"),
    ("1 + 25.4 mm", "2"),
    ("25.4 mm + 1", "2"),
    // products, left to right and before sums
    ("59 1/2 - 2 × 3 1/4", "53"),
    ("61 3/8 - 2 * 3 1/2 - 2·3/4", "423/8"),
    ("2 × 3 1/4 in", "13/2"),
    ("3 1/4 in × 2", "13/2"),
    ("1 1/2 x 3", "9/2"),
    ("1 1/2x3", "9/2"),
    ("3 X 3", "9"),
    ("2 x 4", "8"),
    ("16x24", "384"),
    ("10 ÷ 4", "5/2"),
    ("10 / 4", "5/2"),
    ("12 1/2 / 2 1/2", "5"),
    ("37 3/16 / 2", "595/32"),
    ("3/8/2", "3/16"),
    ("3 1/2/2", "7/4"),
    ("10/4*2", "5"),
    ("3*-2", "-6"),
    ("-3*2", "-6"),
    // brackets
    ("(31 - 1/8)/2", "247/16"),
    ("((3))", "3"),
    ("-(3 + 1)", "-4"),
    ("(3 + 4) in", "7"),
    ("(1 + 1)'", "24"),
    ("2 × (1 + 1 1/2)", "5"),
    ("(1 in + 1) × 2", "4"),
    // around it
    ("  3 3/8  ", "27/8"),
    ("3 3/8 =", "27/8"),
    ("3+1= ", "4"),
];

#[test]
fn every_spelling_comes_to_its_length() {
    for (text, inches) in IN_INCHES {
        reads(text, Unit::Inch, inches);
    }
}

/// Each one-character fraction is the one that it shows.
#[test]
fn every_fraction_of_one_character_is_known() {
    let all = "½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅐⅛⅜⅝⅞⅑⅒";
    let values = [
        "1/2", "1/3", "2/3", "1/4", "3/4", "1/5", "2/5", "3/5", "4/5", "1/6", "5/6", "1/7", "1/8",
        "3/8", "5/8", "7/8", "1/9", "1/10",
    ];
    assert_eq!(all.chars().count(), values.len());
    for (c, value) in all.chars().zip(values) {
        reads(&c.to_string(), Unit::Inch, value);
        reads(&format!("-{c}\""), Unit::Inch, &format!("-{value}"));
    }
}

#[test]
fn a_bare_number_takes_the_unit_of_the_user() {
    for unit in Unit::ALL {
        let one = unit.in_inches();
        reads("1", unit, &one.to_string());
        reads("2 × (1 + 1) - 3", unit, &one.to_string());
        reads("1 in", unit, "1");
    }
    reads("1 in + 1", Unit::Foot, "13");
    reads("2' 4", Unit::Millimetre, "28");
    reads("(3 + 4) in", Unit::Millimetre, "7");
}

fn quantity(text: &str) -> Quantity {
    parse(text, &Job)
        .and_then(|formula| formula.quantity(Unit::Inch, &Job))
        .unwrap_or_else(|problem| panic!("{text:?}: {problem}"))
}

/// What a formula is: a length, an area, a plain number, or still open.
#[test]
fn units_go_through_a_formula() {
    let (bare, plain) =
        (|n| Quantity::Bare(Number::whole(n)), |n| Quantity::Plain(Number::whole(n)));
    let length = |inches| Quantity::Length(of_inch(inches));
    let area = |n| Quantity::Area(Area::square_inches(Number::whole(n)));
    for (text, expected) in [
        ("2 × 3", bare(6)),
        ("6 in ÷ 3 in", plain(2)),
        ("6 ÷ 3 in", plain(2)),
        ("6 in ÷ 3 in + 1", plain(3)),
        ("1 - 6 in ÷ 3 in", plain(-1)),
        ("6 in ÷ 3 in × 2", bare(4)),
        ("ratio × ratio", plain(4)),
        ("ratio ÷ 2", plain(1)),
        ("6 in ÷ 3 in × 1 in", length("2")),
        ("2 in × 3 in", area(6)),
        ("-(2 in × 3 in)", area(-6)),
        ("2 in × 3 in × 2", area(12)),
        ("2 × (2 in × 3 in)", area(12)),
        ("2 in × 3 in + 1 in × 1 in", area(7)),
        ("2 in × 3 in - 1 in × 1 in", area(5)),
        ("2 in × 3 in ÷ 2", area(3)),
        ("2 in × 3 in ÷ 2 in", length("3")),
        ("2 in × 3 in ÷ (2 in × 1 in)", plain(3)),
        ("top ÷ 18", area(40)),
        ("leg × rails", length("13")),
        ("rails × leg", length("13")),
        ("leg length - 2 × leg", length("55/2")),
    ] {
        assert_eq!(quantity(text), expected, "{text}");
    }
}

#[test]
fn names_are_found_by_longest_match_before_anything_else() {
    assert_eq!(quantity("leg length"), Quantity::Length(of_inch("34")));
    assert_eq!(quantity("leg × 2"), Quantity::Length(of_inch("13/2")));
    assert_eq!(quantity("2x4 post"), Quantity::Length(of_inch("3/2")));
    let formula = parse("leg length - (leg + leg)", &Job).expect("a formula");
    assert_eq!(formula.names(), ["leg length", "leg", "leg"]);
    assert!(!formula.is_single());
    assert!(parse("leg", &Job).expect("a name").is_single());
}

#[test]
fn areas_and_plain_numbers_are_read_where_they_are_asked() {
    let area = |text, unit| {
        let area = parse(text, &NoNames).and_then(|formula| formula.area(unit, &NoNames));
        area.unwrap_or_else(|problem| panic!("{text}: {problem}")).in_square_inches()
    };
    assert_eq!(area("40 × 18", Unit::Inch), Number::whole(720));
    assert_eq!(area("2 × 3", Unit::Foot), Number::whole(864));
    assert_eq!(area("40 in × 18 in", Unit::Millimetre), Number::whole(720));
    assert_eq!(number("2 × 3 + 1/2"), Ok(Number::ratio(13, 2).expect("small")));
    assert_eq!(number("10 in ÷ 4 in"), Ok(Number::ratio(5, 2).expect("small")));
}

#[test]
fn limits_are_where_they_are_said_to_be() {
    reads("100000", Unit::Inch, "100000");
    reads("-100000 in", Unit::Inch, "-100000");
    reads("99999 999999999/1000000000", Unit::Inch, "99999999999999/1000000000");
    reads("1/999999999999999999", Unit::Inch, "1/999999999999999999");
    // As long as may be: a sum of ones.
    let longest = format!("1{}", "+1".repeat((MAX_TEXT - 1) / 2));
    reads(&longest, Unit::Inch, "250");
    // As deep as may be.
    for depth in [100, MAX_DEPTH] {
        let brackets = format!("{}1{}", "(".repeat(depth), ")".repeat(depth));
        reads(&brackets, Unit::Inch, "1");
        reads(&format!("{}1", "-".repeat(depth)), Unit::Inch, "1");
    }
}
