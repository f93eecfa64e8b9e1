//! Lengths, rounding and conversion against published and hand-worked values.

use reckoner_core::measure::text::{decimal, number, show};
use reckoner_core::measure::{Lean, Length, Number, Rounding, Tape, Unit, length};

fn inches(text: &str) -> Length {
    length(text).expect("a length")
}

fn of(text: &str) -> Number {
    number(text).expect("a number")
}

fn in_unit(text: &str, unit: Unit) -> Number {
    inches(text).in_unit(unit).expect("small")
}

/// units_rounding: 1 in = 25.4 mm exactly, yard = 0.9144 m (NIST SP 811 App. B, NIST Handbook 44
/// App. C; read in a text that cites them). 1 ft = 12 in = 304.8 mm and 1 yd = 3 ft follow.
#[test]
fn units_are_exact() {
    assert_eq!(in_unit("1 in", Unit::Millimetre), of("25.4"));
    assert_eq!(in_unit("1 ft", Unit::Inch), of("12"));
    assert_eq!(in_unit("1 ft", Unit::Millimetre), of("304.8"));
    assert_eq!(in_unit("3 ft", Unit::Metre), of("0.9144"));
    assert_eq!(in_unit("3 ft", Unit::Millimetre), of("914.4"));
    assert_eq!(in_unit("1 m", Unit::Centimetre), of("100"));
}

/// W51: Army Ordnance MM04409 p. 147: 60.25132 to three figures is 60.3.
/// W52, W54: a state field sampling manual restating ASTM E29: 45.7500 to 0.1 is 45.8, 45.45001 to
/// 0.1 is 45.5.
#[test]
fn decimals_are_rounded_to_the_nearest() {
    assert_eq!(decimal(of("60.25132"), 1), "60.3");
    assert_eq!(decimal(of("45.7500"), 1), "45.8");
    assert_eq!(decimal(of("45.45001"), 1), "45.5");
}

/// W53: the same manual: 45.4500 to 0.1 is 45.4, a tie going to the even digit.
///
/// DEPARTS: a length on a tape does not decide a tie; it says midway and shows both marks, of
/// which 45.4 is one. A plain decimal (money, board feet, degrees) goes away from zero, as a
/// pocket calculator does.
#[test]
fn a_tie_on_a_tape_is_said_and_not_decided() {
    let tape = Tape::DecimalInches(1);
    let reading = tape.read(inches("45.4500"), Rounding::Nearest).expect("small");
    let (below, above) = (inches("45.4"), inches("45.5"));
    assert_eq!(reading.lean, Lean::Midway { below, above });
    assert_eq!(decimal(of("45.4500"), 1), "45.5");
}

/// W55, W56: NIST LC 1137 Metric Style Guide: 36 in is 91 cm, 40.1 in is 101.9 cm.
/// W57, W58: PS 20-20 Table 3: dressed 9 1/4 in is 235 mm, dressed 3/4 in is 19 mm.
#[test]
fn conversions_are_those_of_the_style_guide_and_the_lumber_standard() {
    assert_eq!(decimal(in_unit("36 in", Unit::Centimetre), 0), "91");
    assert_eq!(decimal(in_unit("40.1 in", Unit::Centimetre), 1), "101.9");
    for (dressed, millimetres) in [("9-1/4", "235 mm"), ("3/4", "19 mm")] {
        let shown = show(inches(dressed), Tape::Millimetres(0), Rounding::Nearest).expect("small");
        assert_eq!(shown.mark.to_string(), millimetres);
    }
}

/// [WH] M1: 61 3/8 - 2 x 3 1/2 - 2 x 3/4 = 52 7/8 exactly.
#[test]
fn m1_a_rail_between_two_legs_and_two_cleats() {
    assert_eq!(inches("61 3/8 - 2 x 3 1/2 - 2 x 3/4"), inches("52 7/8"));
    let shown = show(inches("61 3/8 - 2 x 3 1/2 - 2 x 3/4"), Tape::SIXTEENTHS, Rounding::Nearest);
    assert_eq!(shown.expect("small").lean, "exact");
}

/// [WH] M2: half of 37 3/16 = 18 19/32; on a sixteenths tape midway between 18 9/16 and 18 5/8.
#[test]
fn m2_half_of_an_odd_sixteenth_is_midway() {
    let half = inches("37 3/16 / 2");
    assert_eq!(half, inches("18 19/32"));
    let shown = show(half, Tape::SIXTEENTHS, Rounding::Nearest).expect("small");
    assert_eq!(shown.in_words, "midway between 18 9/16 and 18 5/8 in");
}

/// [WH] M4: wanted 23 5/8, starting on the 1 in line: read 24 5/8.
#[test]
fn m4_started_on_the_one_inch_line() {
    assert_eq!(inches("23 5/8 + 1"), inches("24 5/8"));
}
