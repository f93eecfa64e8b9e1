//! Reads one written amount with its unit: `3 3/8`, `2' 4 1/2"`, `45mm`.

use super::problem::{TextProblem, TextProblemKind as Kind};
use crate::measure::limits::MAX_DIGITS;
use crate::measure::{Length, Number, OutOfRange, Unit};

/// A place in the text that only moves forward.
#[derive(Clone, Copy)]
pub(super) struct Cursor<'a> {
    pub(super) text: &'a str,
    pub(super) at: usize,
}

impl<'a> Cursor<'a> {
    pub(super) fn rest(&self) -> &'a str {
        self.text.get(self.at..).unwrap_or("")
    }

    pub(super) fn peek(&self) -> Option<char> {
        self.rest().chars().next()
    }

    pub(super) fn advance(&mut self) {
        self.at += self.peek().map_or(0, char::len_utf8);
    }

    pub(super) fn take_while(&mut self, mut wanted: impl FnMut(char) -> bool) -> &'a str {
        let rest = self.rest();
        let end = rest.find(|c| !wanted(c)).unwrap_or(rest.len());
        self.at += end;
        rest.get(..end).unwrap_or("")
    }

    pub(super) fn skip_spaces(&mut self) {
        self.take_while(char::is_whitespace);
    }

    /// The run of letters here, without taking it.
    pub(super) fn word(&self) -> &'a str {
        let mut ahead = *self;
        ahead.take_while(char::is_alphabetic)
    }

    fn problem(&self, from: usize, kind: Kind) -> TextProblem {
        TextProblem::new(from..self.at, kind)
    }
}

/// An amount as read.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Amount {
    Bare(Number),
    Length(Length),
}

/// Whether an amount can begin here.
pub(super) fn begins(cursor: Cursor) -> bool {
    cursor.peek().is_some_and(|c| c.is_ascii_digit() || c == '.' || vulgar(c).is_some())
}

/// `tight_minus_before`: the amount follows a minus that has no space on either side.
pub(super) fn read(cursor: &mut Cursor, tight_minus_before: bool) -> Result<Amount, TextProblem> {
    let from = cursor.at;
    let first = one_number(cursor, tight_minus_before)?;
    let Some(unit) = take_unit(cursor) else { return Ok(Amount::Bare(first)) };
    let mut total = Length::of(first, unit);
    let mut last = unit;
    while let Some(mut ahead) = continues(*cursor, last) {
        if last == Unit::Foot && grouped(*cursor) {
            return Err(TextProblem::new(from..cursor.at + 3, Kind::GroupedDigits));
        }
        let part_from = ahead.at;
        let (number, smaller) = (one_number(&mut ahead, false)?, take_unit(&mut ahead));
        *cursor = ahead;
        let smaller = match (last, smaller) {
            (Unit::Foot, None | Some(Unit::Inch)) => Unit::Inch,
            (Unit::Metre, Some(unit @ (Unit::Centimetre | Unit::Millimetre))) => unit,
            (Unit::Centimetre, Some(Unit::Millimetre)) => Unit::Millimetre,
            _ => return Err(cursor.problem(from, Kind::UnitMuddle)),
        };
        let piece = Length::of(number, smaller);
        let whole = Length::of(Number::ONE, last);
        if piece.is_ok_and(|piece| whole.is_ok_and(|whole| piece >= whole)) {
            return Err(cursor.problem(part_from, Kind::PartNotBelowUnit(last)));
        }
        total = total.and_then(|sum| sum + piece?);
        last = smaller;
    }
    match total {
        Ok(length) => Ok(Amount::Length(length)),
        Err(OutOfRange) => Err(cursor.problem(from, Kind::TooLarge)),
    }
}

/// The cursor at the next, smaller part of a compound such as `2' 4"`, `2'-4"` or `1 m 20 cm`.
fn continues(mut cursor: Cursor, last: Unit) -> Option<Cursor> {
    if last == Unit::Foot && is_hyphen(cursor.peek()) {
        cursor.advance();
    } else {
        cursor.skip_spaces();
    }
    begins(cursor).then_some(cursor)
}

/// Whether three digits stand here that are no fraction: what comes after the mark in `1'000`,
/// the comma in `1,000` and the space in `1 000`.
pub(super) fn grouped(mut cursor: Cursor) -> bool {
    cursor.take_while(|c| c.is_ascii_digit()).len() == 3
        && !is_slash(cursor.peek())
        && cursor.peek().and_then(vulgar).is_none()
}

/// A number without its unit: digits, a decimal, a fraction or a mixed number.
fn one_number(cursor: &mut Cursor, tight_minus_before: bool) -> Result<Number, TextProblem> {
    let from = cursor.at;
    if let Some(fraction) = cursor.peek().and_then(vulgar) {
        cursor.advance();
        return Ok(fraction);
    }
    let whole = digits(cursor)?;
    if cursor.peek() == Some('.') {
        return decimal(cursor, from, whole);
    }
    if cursor.peek() == Some(',') {
        let mut ahead = *cursor;
        ahead.advance();
        if grouped(ahead) {
            ahead.take_while(|c| c.is_ascii_digit());
            return Err(ahead.problem(from, Kind::GroupedDigits));
        }
        if ahead.peek().is_some_and(|c| c.is_ascii_digit()) {
            return Err(ahead.problem(from, Kind::DecimalComma));
        }
    }
    let whole = number(whole);
    if let Some(fraction) = fraction_after(cursor, from, whole)? {
        return Ok(fraction);
    }
    let mut ahead = *cursor;
    let hyphen = is_hyphen(ahead.peek());
    if hyphen {
        ahead.advance();
    } else {
        ahead.skip_spaces();
    }
    let fraction_from = ahead.at;
    let Some(fraction) = lone_fraction(&mut ahead)? else { return Ok(whole) };
    let below_one = fraction < Number::ONE;
    if hyphen {
        if !below_one {
            return Ok(whole);
        }
        let mut after = ahead;
        after.advance();
        if tight_minus_before || (is_hyphen(ahead.peek()) && begins(after)) {
            return Err(ahead.problem(from, Kind::AmbiguousHyphen));
        }
    } else if !below_one {
        return Err(ahead.problem(fraction_from, Kind::FractionNotBelowOne));
    }
    *cursor = ahead;
    (whole + fraction).map_err(|OutOfRange| cursor.problem(from, Kind::TooLarge))
}

fn digits<'a>(cursor: &mut Cursor<'a>) -> Result<&'a str, TextProblem> {
    let from = cursor.at;
    let digits = cursor.take_while(|c| c.is_ascii_digit());
    if digits.len() > MAX_DIGITS {
        return Err(cursor.problem(from, Kind::TooManyDigits));
    }
    Ok(digits)
}

/// At most [`MAX_DIGITS`] digits, so it fits; no digits are zero.
fn number(digits: &str) -> Number {
    Number::whole(digits.bytes().fold(0, |n, digit| n * 10 + i64::from(digit - b'0')))
}

fn decimal(cursor: &mut Cursor, from: usize, whole: &str) -> Result<Number, TextProblem> {
    cursor.advance();
    let places = digits(cursor)?;
    let twice = cursor.peek() == Some('.');
    if whole.is_empty() && places.is_empty() || twice {
        cursor.advance();
        return Err(cursor.problem(from, Kind::ExpectedAmount));
    }
    if whole.len() + places.len() > MAX_DIGITS {
        return Err(cursor.problem(from, Kind::TooManyDigits));
    }
    let tens = places.bytes().fold(1_i128, |n, _| n * 10);
    Number::ratio(number(places).numer(), tens)
        .and_then(|part| number(whole) + part)
        .map_err(|OutOfRange| cursor.problem(from, Kind::TooLarge))
}

/// `/8` directly after `3`, or `⅜` directly after `3`.
fn fraction_after(
    cursor: &mut Cursor,
    from: usize,
    whole: Number,
) -> Result<Option<Number>, TextProblem> {
    if let Some(fraction) = cursor.peek().and_then(vulgar) {
        cursor.advance();
        let sum = (whole + fraction).map_err(|OutOfRange| cursor.problem(from, Kind::TooLarge))?;
        return Ok(Some(sum));
    }
    let mut ahead = *cursor;
    if !is_slash(ahead.peek()) {
        return Ok(None);
    }
    ahead.advance();
    if !ahead.peek().is_some_and(|c| c.is_ascii_digit()) {
        return Ok(None);
    }
    let below = number(digits(&mut ahead)?);
    *cursor = ahead;
    if below == Number::ZERO {
        return Err(cursor.problem(from, Kind::ZeroUnderFraction));
    }
    match whole / below {
        Ok(fraction) => Ok(Some(fraction)),
        Err(OutOfRange) => Err(cursor.problem(from, Kind::TooLarge)),
    }
}

/// A whole fraction `3/8` or `⅜` standing here, or nothing taken.
fn lone_fraction(cursor: &mut Cursor) -> Result<Option<Number>, TextProblem> {
    if let Some(fraction) = cursor.peek().and_then(vulgar) {
        cursor.advance();
        return Ok(Some(fraction));
    }
    let (from, mut ahead) = (cursor.at, *cursor);
    let above = digits(&mut ahead)?;
    if above.is_empty() {
        return Ok(None);
    }
    let fraction = fraction_after(&mut ahead, from, number(above))?;
    if fraction.is_some() {
        *cursor = ahead;
    }
    Ok(fraction)
}

/// Takes a unit and the spaces before it, if one stands here.
pub(super) fn take_unit(cursor: &mut Cursor) -> Option<Unit> {
    let mut ahead = *cursor;
    ahead.skip_spaces();
    let unit = if let Some(mark) = ahead.peek().and_then(unit_mark) {
        ahead.advance();
        // Two prime marks in a row are the inch mark of a keyboard without one.
        if mark == Unit::Foot && ahead.peek().and_then(unit_mark) == Some(Unit::Foot) {
            ahead.advance();
            Unit::Inch
        } else {
            mark
        }
    } else {
        let word = ahead.word();
        let unit = unit_word(word)?;
        ahead.at += word.len();
        if ahead.peek() == Some('.') {
            let mut after = ahead;
            after.advance();
            if !after.peek().is_some_and(|c| c.is_ascii_digit()) {
                ahead = after;
            }
        }
        unit
    };
    *cursor = ahead;
    Some(unit)
}

/// Whether a written amount begins with a fraction below one, as `3/8"` does.
pub(super) fn begins_with_fraction(written: &str) -> bool {
    let fraction = lone_fraction(&mut Cursor { text: written, at: 0 });
    matches!(fraction, Ok(Some(fraction)) if fraction < Number::ONE)
}

/// Whether the last unit of a written amount is the foot: `2'`, `2 ft.`
pub(super) fn ends_in_feet(written: &str) -> bool {
    let written = written.trim_end_matches('.');
    let word_from = written.rfind(|c: char| !c.is_alphabetic()).map_or(0, |at| at + 1);
    match written.get(word_from..).unwrap_or("") {
        // Two foot marks in a row are the inch mark.
        "" => {
            let mut marks = written.chars().rev().map(unit_mark);
            marks.next() == Some(Some(Unit::Foot)) && marks.next() != Some(Some(Unit::Foot))
        }
        word => unit_word(word) == Some(Unit::Foot),
    }
}

pub(super) fn unit_word(word: &str) -> Option<Unit> {
    let is = |names: &[&str]| names.iter().any(|name| word.eq_ignore_ascii_case(name));
    if is(&["in", "ins", "inch", "inches"]) {
        Some(Unit::Inch)
    } else if is(&["ft", "foot", "feet"]) {
        Some(Unit::Foot)
    } else if is(&["mm", "millimetre", "millimetres", "millimeter", "millimeters"]) {
        Some(Unit::Millimetre)
    } else if is(&["cm", "centimetre", "centimetres", "centimeter", "centimeters"]) {
        Some(Unit::Centimetre)
    } else if is(&["m", "metre", "metres", "meter", "meters"]) {
        Some(Unit::Metre)
    } else {
        None
    }
}

fn unit_mark(c: char) -> Option<Unit> {
    match c {
        '"' | '″' | '”' | '“' | '„' | 'ʺ' => Some(Unit::Inch),
        '\'' | '′' | '’' | '‘' | 'ʹ' | '´' | '`' => Some(Unit::Foot),
        _ => None,
    }
}

pub(super) fn is_hyphen(c: Option<char>) -> bool {
    matches!(c, Some('-' | '‐' | '‑'))
}

pub(super) fn is_slash(c: Option<char>) -> bool {
    matches!(c, Some('/' | '⁄' | '∕'))
}

/// A fraction in one character.
pub(super) fn vulgar(c: char) -> Option<Number> {
    let (numer, denom) = match c {
        '½' => (1, 2),
        '⅓' => (1, 3),
        '⅔' => (2, 3),
        '¼' => (1, 4),
        '¾' => (3, 4),
        '⅕' => (1, 5),
        '⅖' => (2, 5),
        '⅗' => (3, 5),
        '⅘' => (4, 5),
        '⅙' => (1, 6),
        '⅚' => (5, 6),
        '⅐' => (1, 7),
        '⅛' => (1, 8),
        '⅜' => (3, 8),
        '⅝' => (5, 8),
        '⅞' => (7, 8),
        '⅑' => (1, 9),
        '⅒' => (1, 10),
        _ => return None,
    };
    Number::ratio(numer, denom).ok()
}
