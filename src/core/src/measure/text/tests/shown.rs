//! How lengths are written, said and spoken.

use super::of_inch;
use crate::measure::text::{NoNames, decimal, exact_text, number_in_words, parse, show};
use crate::measure::{Fineness, Number, Rounding, Tape};

const SIXTEENTHS: Tape = Tape::SIXTEENTHS;
const FEET: Tape = Tape::FeetAndInches(Fineness::Sixteenth);
const MM: Tape = Tape::Millimetres(0);

/// Length in inches, tape, rounding; the mark, in words, spoken.
#[test]
fn a_length_is_written_said_and_spoken() {
    use Rounding::{Down, Nearest, Up};
    for (inches, tape, rounding, mark, words, spoken) in [
        ("27/8", SIXTEENTHS, Nearest, "3 3/8 in", "exact", "three and three eighths inches"),
        ("0", SIXTEENTHS, Nearest, "0 in", "exact", "zero inches"),
        ("1", SIXTEENTHS, Nearest, "1 in", "exact", "one inch"),
        ("1/2", SIXTEENTHS, Nearest, "1/2 in", "exact", "one half inch"),
        ("-1/2", SIXTEENTHS, Nearest, "-1/2 in", "exact", "minus one half inch"),
        ("3/4", SIXTEENTHS, Nearest, "3/4 in", "exact", "three quarters inch"),
        (
            "217/64",
            SIXTEENTHS,
            Nearest,
            "3 3/8 in",
            "and 1/64 more",
            "three and three eighths inches, and one sixty-fourth more",
        ),
        (
            "215/64",
            SIXTEENTHS,
            Nearest,
            "3 3/8 in",
            "less 1/64",
            "three and three eighths inches, less one sixty-fourth",
        ),
        (
            "215/64",
            SIXTEENTHS,
            Down,
            "3 5/16 in",
            "and 3/64 more",
            "three and five sixteenths inches, and three sixty-fourths more",
        ),
        (
            "217/64",
            SIXTEENTHS,
            Up,
            "3 7/16 in",
            "less 3/64",
            "three and seven sixteenths inches, less three sixty-fourths",
        ),
        (
            "595/32",
            SIXTEENTHS,
            Nearest,
            "18 9/16 in",
            "midway between 18 9/16 and 18 5/8 in",
            "midway between eighteen and nine sixteenths inches and eighteen and five eighths inches",
        ),
        (
            "1/3",
            SIXTEENTHS,
            Nearest,
            "5/16 in",
            "and about 1/64 more",
            "five sixteenths inch, and about one sixty-fourth more",
        ),
        (
            "10000001/10000000",
            SIXTEENTHS,
            Nearest,
            "1 in",
            "and a hair more",
            "one inch, and a hair more",
        ),
        ("423/8", FEET, Nearest, "4' 4 7/8\"", "exact", "four feet four and seven eighths inches"),
        (
            "-423/8",
            FEET,
            Nearest,
            "-(4' 4 7/8\")",
            "exact",
            "minus four feet four and seven eighths inches",
        ),
        ("24", FEET, Nearest, "2'", "exact", "two feet"),
        ("12", FEET, Nearest, "1'", "exact", "one foot"),
        ("25/2", FEET, Nearest, "1' 1/2\"", "exact", "one foot one half inch"),
        ("7", FEET, Nearest, "7 in", "exact", "seven inches"),
        ("191/16", FEET, Up, "11 15/16 in", "exact", "eleven and fifteen sixteenths inches"),
        ("767/64", FEET, Nearest, "1'", "less 1/64", "one foot, less one sixty-fourth"),
        ("27/8", Tape::DecimalInches(3), Nearest, "3.375 in", "exact", "3.375 inches"),
        (
            "27/8",
            Tape::DecimalInches(1),
            Nearest,
            "3.4 in",
            "less 0.025 in",
            "3.4 inches, less 0.025 inches",
        ),
        ("1", Tape::DecimalInches(0), Nearest, "1 in", "exact", "one inch"),
        (
            "1",
            MM,
            Nearest,
            "25 mm",
            "and 0.4 mm more",
            "twenty-five millimetres, and 0.4 millimetres more",
        ),
        ("5/127", MM, Nearest, "1 mm", "exact", "one millimetre"),
        ("1", Tape::Millimetres(1), Nearest, "25.4 mm", "exact", "25.4 millimetres"),
        ("1", Tape::Millimetres(2), Nearest, "25.40 mm", "exact", "25.40 millimetres"),
    ] {
        let shown = show(of_inch(inches), tape, rounding).expect("a small length");
        let got = (shown.mark.to_string(), shown.in_words, shown.spoken);
        assert_eq!(
            got,
            (mark.to_owned(), words.to_owned(), spoken.to_owned()),
            "{inches} {tape:?}"
        );
    }
}

/// The pieces that a page stacks, and the signed remainder.
#[test]
fn a_mark_comes_in_pieces() {
    let shown = show(of_inch("-217/64"), SIXTEENTHS, Rounding::Nearest).expect("small");
    assert!(shown.mark.is_negative);
    assert_eq!(shown.mark.whole.as_deref(), Some("3"));
    assert_eq!(shown.mark.fraction, Some((3, 8)));
    assert_eq!((shown.left_over.as_str(), shown.lean), ("-1/64 in", "light"));
    assert_eq!(shown.exact, "-3 25/64 in");
    let shown = show(of_inch("3/8"), SIXTEENTHS, Rounding::Nearest).expect("small");
    assert_eq!((shown.mark.whole, shown.mark.fraction), (None, Some((3, 8))));
    assert_eq!(shown.left_over, "0");
    let shown = show(of_inch("1"), MM, Rounding::Nearest).expect("small");
    assert_eq!(shown.left_over, "+0.40 mm");
}

#[test]
fn each_fineness_has_its_marks() {
    // 2.67 in on every tape.
    let marks = ["2 1/2", "2 3/4", "2 5/8", "2 11/16", "2 21/32", "2 43/64"];
    for (fineness, mark) in Fineness::ALL.into_iter().zip(marks) {
        let shown =
            show(of_inch("267/100"), Tape::Inches(fineness), Rounding::Nearest).expect("small");
        assert_eq!(shown.mark.amount(), mark, "{fineness:?}");
        assert_eq!(Fineness::from_denominator(fineness.denominator()), Some(fineness));
    }
    assert_eq!(Fineness::from_denominator(3), None);
}

#[test]
fn an_exact_text_is_short() {
    for (inches, text) in [
        ("27/8", "3 3/8 in"),
        ("-27/8", "-3 3/8 in"),
        ("0", "0 in"),
        ("225/127", "45 mm"),
        ("-225/127", "-45 mm"),
        ("1/254", "0.1 mm"),
        ("1/2540", "0.01 mm"),
        ("1/3", "1/3 in"),
        ("1/128", "1/128 in"),
        ("1/256", "1/256 in"),
        ("1/10", "0.1 in"),
        ("3/5", "0.6 in"),
        ("197/200", "0.985 in"),
        ("1/1000", "0.001 in"),
        ("1/100000", "1/100000 in"),
    ] {
        assert_eq!(exact_text(of_inch(inches)), text);
    }
}

/// Counted by hand on the line as it is drawn: each sign, figure and point, `ft` and `in` as one, `mm` as two; of a fraction the
/// wider number.
#[test]
fn a_line_knows_how_wide_it_is() {
    for (inches, tape, line, columns) in [
        ("39", SIXTEENTHS, "39 in", 3),
        ("423/8", SIXTEENTHS, "52 7/8 in", 4),
        ("841/16", SIXTEENTHS, "52 9/16 in", 5),
        ("-1/2", SIXTEENTHS, "-1/2 in", 3),
        ("423/8", FEET, "4' 4 7/8\"", 5),
        ("24", FEET, "2'", 2),
        ("17879/1000", Tape::DecimalInches(3), "17.879 in", 7),
        ("-17879/1000", Tape::DecimalInches(3), "-17.879 in", 8),
        ("1", Tape::Millimetres(1), "25.4 mm", 6),
    ] {
        let length = of_inch(inches);
        let written = show(length, tape, Rounding::Nearest).expect("in range").mark;
        assert_eq!(written.to_string(), line);
        assert_eq!(written.columns(), columns, "{line}");
    }
}

/// A formula is echoed in one plain spelling.
#[test]
fn a_formula_is_echoed() {
    for (text, echo) in [
        ("59 1/2 - 2*3 1/4", "59 1/2 - 2 × 3 1/4"),
        ("(31-1/8)/2", "(31 1/8) ÷ 2"),
        ("(31 - 1/8)/2", "(31 - 1/8) ÷ 2"),
        ("2'4\" x 3", "28 in × 3"),
        ("- 3⅜ + 45mm", "-3 3/8 + 45 mm"),
        ("(1+1) ft", "(1 + 1) ft"),
        ("3.375=", "3 3/8"),
        ("+3", "3"),
    ] {
        assert_eq!(parse(text, &NoNames).expect("a formula").to_string(), echo);
    }
}

#[test]
fn numbers_are_said_in_words() {
    for (n, words) in [
        (0, "zero"),
        (19, "nineteen"),
        (20, "twenty"),
        (21, "twenty-one"),
        (100, "one hundred"),
        (119, "one hundred nineteen"),
        (1000, "one thousand"),
        (1042, "one thousand forty-two"),
        (999_999, "nine hundred ninety-nine thousand nine hundred ninety-nine"),
        (1_000_000, "1000000"),
        (-3, "-3"),
    ] {
        assert_eq!(number_in_words(n), words);
    }
}

#[test]
fn decimals_round_halves_away_from_zero() {
    for (numer, denom, places, text) in [
        (5, 2, 0, "3"),
        (-5, 2, 0, "-3"),
        (1, 3, 4, "0.3333"),
        (2, 3, 4, "0.6667"),
        (-1, 3, 0, "0"),
        (-1, 3, 1, "-0.3"),
        (999, 1000, 2, "1.00"),
        (7, 1, 0, "7"),
        (1, 8, 200, "0.125000000000000000"),
    ] {
        let number = Number::ratio(numer, denom).expect("small");
        assert_eq!(decimal(number, places), text);
    }
}
