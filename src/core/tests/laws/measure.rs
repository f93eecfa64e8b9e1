//! Laws of exact measures, their text, and the tape.
//!
//! Exact arithmetic is checked against `dashu-ratio`, a rational-number crate that shares no code
//! with ours.

use dashu_ratio::RBig;
use proptest::prelude::*;
use reckoner_core::measure::limits::MAX_TERM;
use reckoner_core::measure::text::{NoNames, decimal, exact_text, number_in_words, parse, show};
use reckoner_core::measure::{Fineness, Lean, Length, Number, OutOfRange, Rounding, Tape, Unit};

use crate::judged::{self, answered};

fn every_tape() -> Vec<Tape> {
    let mut tapes = Vec::new();
    for fineness in Fineness::ALL {
        tapes.extend([Tape::Inches(fineness), Tape::FeetAndInches(fineness)]);
    }
    tapes.extend((0..=4).map(Tape::DecimalInches));
    tapes.extend((0..=2).map(Tape::Millimetres));
    tapes
}

/// Numerators and denominators of a workshop, and some near the limit.
fn term() -> impl Strategy<Value = i128> {
    prop_oneof![
        6 => -5000..5000_i128,
        2 => -2_000_000_000..2_000_000_000_i128,
        1 => -MAX_TERM..=MAX_TERM,
        1 => Just(MAX_TERM),
        1 => Just(-MAX_TERM),
    ]
}

fn number() -> impl Strategy<Value = Number> {
    (term(), prop_oneof![Just(1_i128), Just(64), Just(127), 1..5000_i128, 1..=MAX_TERM])
        .prop_map(|(numer, denom)| Number::ratio(numer, denom).expect("within the limits"))
}

/// Lengths within what can be typed: on marks, between marks, and of any kind at all.
fn length() -> impl Strategy<Value = Length> {
    let of = |numer: i128, denom: i128| Length::of_inch(numer, denom).expect("small");
    prop_oneof![
        4 => (-90_000..90_000_i128, prop::sample::select(vec![1_i128, 2, 4, 8, 16, 32, 64, 128]))
            .prop_map(move |(n, d)| of(n, d)),
        // Whole, tenth and hundredth millimetres.
        3 => (-2_000_000..2_000_000_i128, prop::sample::select(vec![254_i128, 2540, 25_400]))
            .prop_map(move |(n, d)| of(n * 10, d)),
        3 => (-90_000..90_000_i128, 1..10_000_i128).prop_map(move |(n, d)| of(n, d)),
        1 => (1..=MAX_TERM, 1..=MAX_TERM).prop_map(move |(n, d)| of(n % d, d)),
    ]
}

fn peer(number: Number) -> RBig {
    RBig::from(number.numer()) / RBig::from(number.denom())
}

/// The peer's result, or none when a term has more digits than the limit allows.
fn within_limit(result: &RBig) -> Option<String> {
    let text = result.to_string();
    let fits = text.split('/').all(|term| term.trim_start_matches('-').len() <= 18);
    fits.then_some(text)
}

fn agrees(ours: Result<Number, OutOfRange>, theirs: &RBig) -> Result<(), TestCaseError> {
    prop_assert_eq!(ours.ok().map(|number| number.to_string()), within_limit(theirs));
    Ok(())
}

proptest! {
    #![proptest_config(judged::cases(1000))]

    #[test]
    fn numbers_agree_with_another_crate(a in number(), b in number()) {
        let (x, y) = (peer(a), peer(b));
        agrees(a + b, &(&x + &y))?;
        agrees(a - b, &(&x - &y))?;
        agrees(a * b, &(&x * &y))?;
        if b == Number::ZERO {
            prop_assert_eq!(a / b, Err(OutOfRange));
        } else {
            agrees(a / b, &(&x / &y))?;
        }
        prop_assert_eq!(a.cmp(&b), x.cmp(&y));
        prop_assert_eq!(a.floor().to_string(), x.floor().to_string());
        prop_assert_eq!(a.ceil().to_string(), x.ceil().to_string());
        prop_assert_eq!((-a).to_string(), (-&x).to_string());
        prop_assert_eq!(a.is_whole(), x.is_int());
    }

    /// Lengths and areas are numbers with a unit: the same sums, in every unit.
    #[test]
    fn lengths_agree_with_another_crate(a in length(), b in length(), n in 1..200_u32) {
        let (x, y) = (peer(a.in_inches()), peer(b.in_inches()));
        let times = RBig::from(i128::from(n));
        agrees((a + b).map(Length::in_inches), &(&x + &y))?;
        agrees((a - b).map(Length::in_inches), &(&x - &y))?;
        agrees((a * n).map(Length::in_inches), &(&x * &times))?;
        agrees((a / n).map(Length::in_inches), &(&x / &times))?;
        agrees((a * b).map(|area| area.in_square_inches()), &(&x * &y))?;
        if !b.is_zero() {
            agrees(a / b, &(&x / &y))?;
        }
        // 1 in = 25.4 mm, and 12 in = 1 ft.
        let (mm, ft) = (RBig::from(127_i128) / RBig::from(5_i128), RBig::from(12_i128));
        agrees(a.in_unit(Unit::Millimetre), &(&x * &mm))?;
        agrees(a.in_unit(Unit::Foot), &(&x / &ft))?;
    }

    /// A reading is the exact length again, at most half a graduation off, and midway exactly
    /// when it is half a graduation off.
    #[test]
    fn the_nearest_mark_is_nearest(length in length()) {
        for tape in every_tape() {
            let reading = answered(tape.read(length, Rounding::Nearest))?;
            let step = tape.graduation();
            prop_assert_eq!(reading.mark + reading.left_over, Ok(length));
            prop_assert!((reading.mark / step).expect("small").is_whole(), "not a mark");
            let twice = (reading.left_over.abs() * 2).expect("small");
            prop_assert!(twice <= step, "{reading:?}");
            match reading.lean {
                Lean::Midway { below, above } => {
                    prop_assert_eq!(twice, step);
                    prop_assert_eq!(above - below, Ok(step));
                    prop_assert_eq!(length - below, above - length);
                    prop_assert_eq!(reading.mark, below);
                }
                Lean::Exact => prop_assert!(reading.left_over.is_zero()),
                Lean::Heavy => prop_assert!(reading.left_over.is_positive() && twice < step),
                Lean::Light => prop_assert!(reading.left_over.is_negative() && twice < step),
            }
        }
    }

    /// Up is never below the length, down never above it, neither by a whole graduation.
    #[test]
    fn up_is_never_short_and_down_is_never_long(length in length()) {
        for tape in every_tape() {
            let up = answered(tape.read(length, Rounding::Up))?;
            let down = answered(tape.read(length, Rounding::Down))?;
            let step = tape.graduation();
            let over = (up.mark - length).expect("small");
            let under = (length - down.mark).expect("small");
            prop_assert!(!over.is_negative() && over < step, "{up:?}");
            prop_assert!(!under.is_negative() && under < step, "{down:?}");
            prop_assert_eq!(up.lean == Lean::Exact, down.lean == Lean::Exact);
            prop_assert!(matches!(up.lean, Lean::Exact | Lean::Light));
            prop_assert!(matches!(down.lean, Lean::Exact | Lean::Heavy));
        }
    }

    /// What a tape shows reads back to the mark, with its unit and, in the tape's unit, without.
    #[test]
    fn what_a_tape_shows_reads_back(length in length()) {
        for tape in every_tape() {
            for rounding in [Rounding::Nearest, Rounding::Up, Rounding::Down] {
                let reading = answered(tape.read(length, rounding))?;
                let shown = show(length, tape, rounding).expect("it could be read");
                prop_assert_eq!(read_back(&shown.mark.to_string(), Unit::Metre), Ok(reading.mark));
                prop_assert_eq!(read_back(&shown.mark.amount(), tape.unit()), Ok(reading.mark));
                prop_assert_eq!(read_back(&shown.exact, Unit::Metre), Ok(length));
                if let (Lean::Midway { above, .. }, Some(or_mark)) = (reading.lean, &shown.or_mark) {
                    prop_assert_eq!(read_back(&or_mark.to_string(), Unit::Metre), Ok(above));
                }
                prop_assert_eq!(shown.or_mark.is_some(), shown.lean == "midway");
            }
        }
    }

    #[test]
    fn exact_text_reads_back(length in length()) {
        prop_assert_eq!(read_back(&exact_text(length), Unit::Metre), Ok(length));
    }

    /// A decimal with enough places is the number; with fewer it is at most half a last place off.
    #[test]
    fn a_decimal_is_the_nearest(number in number(), places in 0..=9_u8) {
        let text = decimal(number, places);
        let (whole, part) = text.split_once('.').unwrap_or((&text, ""));
        prop_assert_eq!(part.len(), usize::from(places));
        let tens = 10_i128.pow(u32::from(places));
        let digits: i128 = format!("{whole}{part}").trim_start_matches('-').parse().expect("digits");
        let shown = RBig::from(digits) / RBig::from(tens);
        let shown = if text.starts_with('-') { -shown } else { shown };
        let off = peer(number) - shown;
        let off = if off < RBig::ZERO { -off } else { off };
        prop_assert!(off * RBig::from(2 * tens) <= RBig::ONE, "{number} {text}");
    }

    #[test]
    fn a_length_near_a_float_is_within_its_bound(inches in -100_000.0..100_000.0_f64) {
        let near = Length::near(inches).expect("within the limit");
        prop_assert!((near.to_f64() - inches).abs() <= 1.0 / 8192.0);
    }

    #[test]
    fn a_length_of_4096ths_survives_the_way_through_a_float(parts in -409_600_000_i128..=409_600_000) {
        let length = Length::of_inch(parts, 4096).expect("small");
        prop_assert_eq!(Length::near(length.to_f64()), Ok(length));
    }
}

/// The value of a whole number in words, read by the rules of English and not by our tables.
fn from_words(words: &str) -> Option<i128> {
    const SMALL: &str = "zero one two three four five six seven eight nine ten eleven twelve \
        thirteen fourteen fifteen sixteen seventeen eighteen nineteen";
    const TENS: &str = "twenty thirty forty fifty sixty seventy eighty ninety";
    let mut thousands = 0;
    let mut below = 0;
    for word in words.split([' ', '-']) {
        let place = |list: &str| list.split_whitespace().position(|known| known == word);
        match (word, place(SMALL), place(TENS)) {
            ("hundred", ..) => below *= 100,
            ("thousand", ..) => (thousands, below) = (below * 1000, 0),
            (_, Some(n), _) => below += n as i128,
            (_, _, Some(n)) => below += (n as i128 + 2) * 10,
            _ => return None,
        }
    }
    Some(thousands + below)
}

/// The value of a mark of an inch tape as it is spoken.
fn from_speech(speech: &str) -> Option<Number> {
    const BELOW: [(&str, i128); 6] = [
        ("hal", 2),
        ("quarter", 4),
        ("eighth", 8),
        ("sixteenth", 16),
        ("thirty-second", 32),
        ("sixty-fourth", 64),
    ];
    let (sign, size) = match speech.strip_prefix("minus ") {
        Some(size) => (-1, size),
        None => (1, speech),
    };
    let amount = size.strip_suffix(" inches").or_else(|| size.strip_suffix(" inch"))?;
    let fraction = |words: &str| {
        let (above, below) = words.rsplit_once(' ')?;
        let (_, denom) = BELOW.into_iter().find(|(name, _)| below.starts_with(name))?;
        Some((from_words(above)?, denom))
    };
    let (whole, (numer, denom)) = match amount.split_once(" and ") {
        Some((whole, part)) => (from_words(whole)?, fraction(part)?),
        None => match fraction(amount) {
            Some(part) => (0, part),
            None => (from_words(amount)?, (0, 1)),
        },
    };
    Number::ratio(sign * (whole * denom + numer), denom).ok()
}

#[test]
fn numbers_in_words_are_the_numbers() {
    for n in (0..3000).chain((3000..1_000_000).step_by(487)).chain([999_999]) {
        assert_eq!(from_words(&number_in_words(n)), Some(n), "{}", number_in_words(n));
    }
}

/// Every mark of the finest inch tape up to 10 ft, both ways, is spoken as what it is.
#[test]
fn a_spoken_mark_is_the_mark() {
    let tape = Tape::Inches(Fineness::SixtyFourth);
    for parts in -7680..=7680 {
        let mark = Length::sixty_fourths(parts);
        let spoken = show(mark, tape, Rounding::Nearest).expect("small").spoken;
        assert_eq!(from_speech(&spoken), Some(mark.in_inches()), "{spoken}");
    }
}

/// The text as a length, bare numbers in `unit`.
fn read_back(text: &str, unit: Unit) -> Result<Length, String> {
    parse(text, &NoNames)
        .and_then(|formula| formula.length(unit, &NoNames))
        .map_err(|problem| format!("{text}: {problem}"))
}

#[test]
fn a_float_that_is_no_length_is_refused() {
    for inches in [f64::NAN, f64::INFINITY, f64::NEG_INFINITY, 100_000.1, -1e300, f64::MAX] {
        assert!(Length::near(inches).is_err(), "{inches}");
    }
}
