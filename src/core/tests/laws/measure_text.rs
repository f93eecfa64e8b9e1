//! A million random texts, in every run: none makes the reader panic, each problem has a place
//! and a sentence, and each formula that is read is echoed in a spelling that reads the same.
//!
//! The texts are the same in every run, so that a failure can be found again; the seeds are below.

use reckoner_core::measure::limits::MAX_TEXT;
use reckoner_core::measure::text::{
    Formula, Names, NoNames, Quantity, TextProblem, TextProblemKind, exact_text, parse, show,
};
use reckoner_core::measure::{Fineness, Length, Number, Rounding, Tape, Unit};

/// SplitMix64: enough for picking characters.
struct Dice(u64);

impl Dice {
    fn roll(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        z ^ (z >> 31)
    }

    fn below(&mut self, n: usize) -> usize {
        (self.roll() % n as u64) as usize
    }

    fn pick<T: Copy>(&mut self, from: &[T]) -> T {
        from[self.below(from.len())]
    }
}

/// Names as a job has them, among them ones that look like measures.
struct Job;

const NAMES: &[&str] =
    &["leg", "leg length", "2x4 post", "x", "½ gap", "top", "shelf", "rails", "in"];

impl Names for Job {
    fn longest_match(&self, text: &str) -> usize {
        NAMES
            .iter()
            .filter(|name| text.starts_with(**name))
            .map(|name| name.len())
            .max()
            .unwrap_or(0)
    }

    fn value(&self, name: &str) -> Option<Quantity> {
        Some(match name {
            "shelf" => return None,
            "rails" => Quantity::Bare(Number::whole(4)),
            "top" => {
                Quantity::Area((Length::sixty_fourths(2560) * Length::sixty_fourths(1152)).ok()?)
            }
            _ => Quantity::Length(Length::sixty_fourths(208)),
        })
    }
}

fn check_problem(problem: &TextProblem, text: &str) {
    assert!(text.get(problem.at.clone()).is_some(), "{text:?}: no place {problem:?}");
    assert!(problem.to_string().ends_with('.'), "{text:?}: {problem:?}");
    let (before, place, after) = problem.split(text);
    assert_eq!(format!("{before}{place}{after}"), text);
}

fn worked_out(
    formula: &Formula,
    names: &dyn Names,
    unit: Unit,
) -> Result<Quantity, TextProblemKind> {
    formula.quantity(unit, names).map_err(|problem| problem.kind)
}

/// Whether it was read.
fn survives(text: &str, names: &dyn Names) -> bool {
    let formula = match parse(text, names) {
        Ok(formula) => formula,
        Err(problem) => {
            check_problem(&problem, text);
            return false;
        }
    };
    for unit in [Unit::Inch, Unit::Millimetre] {
        for result in [
            formula.length(unit, names).map(|_| ()),
            formula.number(unit, names).map(|_| ()),
            formula.area(unit, names).map(|_| ()),
        ] {
            if let Err(problem) = result {
                check_problem(&problem, text);
            }
        }
    }
    let echo = formula.to_string();
    if echo.chars().count() <= MAX_TEXT {
        let again = parse(&echo, names)
            .unwrap_or_else(|problem| panic!("{text:?} is echoed as {echo:?}: {problem}"));
        for unit in [Unit::Inch, Unit::Millimetre] {
            let (first, second) =
                (worked_out(&formula, names, unit), worked_out(&again, names, unit));
            assert_eq!(first, second, "{text:?} is echoed as {echo:?}");
        }
        assert_eq!(again.to_string(), echo, "the echo of {text:?} is not plain");
    }
    if let Ok(length) = formula.length(Unit::Inch, names) {
        let exact = exact_text(length);
        let again =
            parse(&exact, &NoNames).and_then(|formula| formula.length(Unit::Metre, &NoNames));
        assert_eq!(again, Ok(length), "{text:?} comes to {exact:?}");
        for tape in
            [Tape::SIXTEENTHS, Tape::FeetAndInches(Fineness::SixtyFourth), Tape::Millimetres(1)]
        {
            // It may be too fine to have a remainder; it must not panic.
            if let Ok(shown) = show(length, tape, Rounding::Nearest) {
                assert!(!shown.spoken.is_empty());
            }
        }
    }
    true
}

/// Characters of measures, spaces and dashes of every kind, other scripts, and unseen ones.
#[rustfmt::skip]
const KNOWN: &[char] = &[
    ' ', ' ', '0', '1', '2', '3', '4', '5', '6', '7', '8', '9', '/', '.', ',', '\'', '"', '-', '+',
    '×', '÷', '*', '(', ')', '=', 'x', 'm', 'i', 'n', 'f', 't', 'c', '½', '⅜', '¼', '⁄', '∕', '′',
    '″', '’', '”', '“', '‘', '−', '–', '—', '‐', '‑', '´', '`', '\u{a0}', '\u{2009}', '\u{200b}',
    '\u{feff}', '６', '／', '³', '٣', '٪', '°', '🪚', 'é', '\u{301}',
];

fn any_character(dice: &mut Dice) -> char {
    match dice.below(4) {
        0 | 1 => dice.pick(KNOWN),
        2 => char::from(dice.below(128) as u8),
        _ => char::from_u32(dice.below(0x11_0000) as u32).unwrap_or('\u{fffd}'),
    }
}

#[test]
fn three_hundred_thousand_texts_of_any_characters() {
    let mut dice = Dice(1);
    for _ in 0..300_000 {
        let length = dice.below(24);
        let text: String = (0..length).map(|_| any_character(&mut dice)).collect();
        survives(&text, &NoNames);
    }
}

const TOKENS: &[&str] = &[
    "0",
    "1",
    "2",
    "3",
    "7",
    "12",
    "16",
    "64",
    "100",
    "99999",
    "100000",
    "999999999999999999",
    "3.375",
    ".5",
    "0.001",
    "1/2",
    "3/8",
    "9/8",
    "1/3",
    "0/4",
    "3/0",
    "½",
    "⅜",
    "⅞",
    "3½",
    "in",
    "\"",
    "”",
    "''",
    "ft",
    "'",
    "’",
    "mm",
    "cm",
    "m",
    "inches",
    "feet",
    "+",
    "-",
    "−",
    "–",
    "‐",
    "×",
    "*",
    "x",
    "÷",
    "/",
    "⁄",
    "(",
    ")",
    "(",
    ")",
    "=",
    ",",
];

/// Tokens of the grammar in any order, tight or spaced.
fn of_tokens(dice: &mut Dice, tokens: &[&str]) -> String {
    let mut text = String::new();
    for _ in 0..1 + dice.below(9) {
        text.push_str(dice.pick(tokens));
        text.push_str(dice.pick(&["", "", " ", "  ", "\u{a0}"]));
    }
    text
}

/// A formula that is right by its form, with spaces as people put them.
fn formula(dice: &mut Dice, depth: usize, text: &mut String) {
    match dice.below(if depth == 0 { 4 } else { 9 }) {
        0 => text.push_str(&dice.below(200).to_string()),
        1 => {
            let (whole, numer) = (dice.below(60), 1 + dice.below(15));
            text.push_str(&format!("{whole}{}{numer}/16", dice.pick(&[" ", "-", "  "])));
        }
        2 => {
            let unit = dice.pick(&["\"", " in", "mm", " cm", "'", " ft", "m"]);
            text.push_str(&format!("{}.{}{unit}", dice.below(30), dice.below(100)));
        }
        3 => {
            let join = dice.pick(&[" ", "", "-"]);
            text.push_str(&format!("{}'{join}{}\"", dice.below(9), dice.below(12)));
        }
        4 => {
            text.push('(');
            formula(dice, depth - 1, text);
            text.push(')');
            text.push_str(dice.pick(&["", "", " in", "'"]));
        }
        5 => {
            text.push('-');
            formula(dice, depth - 1, text);
        }
        _ => {
            formula(dice, depth - 1, text);
            text.push_str(
                dice.pick(&[" + ", " - ", " × ", " ÷ ", "+", "-", "*", "/", " x ", " / "]),
            );
            formula(dice, depth - 1, text);
        }
    }
}

#[test]
fn three_hundred_thousand_texts_of_the_grammars_own_words() {
    let mut dice = Dice(2);
    let with_names: Vec<&str> = TOKENS.iter().chain(NAMES).copied().collect();
    let mut read = 0;
    for n in 0..300_000 {
        let is_read = if n % 3 == 0 {
            survives(&of_tokens(&mut dice, &with_names), &Job)
        } else {
            survives(&of_tokens(&mut dice, TOKENS), &NoNames)
        };
        read += u32::from(is_read);
    }
    assert!(read > 20_000, "only {read} were read: the texts are not like measures");
}

#[test]
fn two_hundred_thousand_formulas() {
    let mut dice = Dice(3);
    let mut read = 0;
    for _ in 0..200_000 {
        let mut text = String::new();
        formula(&mut dice, 3, &mut text);
        read += u32::from(survives(&text, &NoNames));
    }
    assert!(read > 100_000, "only {read} were read: the formulas are not right by their form");
}

/// Right texts with a slip of the thumb: a character lost, doubled, replaced or swapped.
#[test]
fn two_hundred_thousand_slips() {
    let mut dice = Dice(4);
    for _ in 0..200_000 {
        let mut text = String::new();
        formula(&mut dice, 2, &mut text);
        let mut characters: Vec<char> = text.chars().collect();
        for _ in 0..1 + dice.below(3) {
            let at = dice.below(characters.len().max(1)).min(characters.len());
            match dice.below(4) {
                0 if !characters.is_empty() => {
                    characters.remove(at);
                }
                1 => characters.insert(at, any_character(&mut dice)),
                2 if at + 1 < characters.len() => characters.swap(at, at + 1),
                _ => {
                    if let Some(c) = characters.get(at).copied() {
                        characters.insert(at, c);
                    }
                }
            }
        }
        survives(&characters.iter().collect::<String>(), &NoNames);
    }
}
