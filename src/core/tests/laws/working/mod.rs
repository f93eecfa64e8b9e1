//! The law over all working: what the page shows as `= numbers` and `= result` is true.
//!
//! Every step of every calculator, over random and chosen entries, whose numbers read as a
//! formula is worked out by the product's own reader and must give the result shown: exactly, or
//! by the rounding that the rule names. What that reader does not know, trigonometry, roots and
//! powers, is worked out by [`floats`] as near as a length is kept. The signs of the numbers are
//! those of the rule. A step that does not read as a formula stands in [`words`] with its reason.

mod floats;
mod words;

use std::collections::BTreeMap;

use reckoner_core::calculators::{self, Calculator};
use reckoner_core::measure::text::{NoNames, Quantity, parse};
use reckoner_core::measure::{Number, Unit};
use reckoner_core::sheet::{Bench, Step, Value};
use words::{LIST, Listed};

use crate::entries;

/// Rules that are worked out again: grows with every rule written as a formula.
const FEWEST_RULES: usize = 200;

/// Rules that stand on the list of those in words, which may only shrink.
const MOST_IN_WORDS: usize = 27;

/// Times that a step is worked out again.
const FEWEST_STEPS: usize = 90_000;

/// Units that the reader of lengths does not know; such a number is read without its unit.
const OTHER_UNITS: [&str; 7] = ["lb/cu ft", "sq ft", "bd ft", "in·lb", "psi", "gal", "lb"];

/// Worked out again, or why it cannot be.
#[derive(Debug, PartialEq)]
enum Verdict {
    True,
    InWords,
    False(String),
}

/// The part of a rule or of its numbers that is a formula, and what is said after it: a rounding
/// or a limit.
fn formula_and_rest(text: &str) -> (&str, &str) {
    text.split_once(", ").unwrap_or((text, ""))
}

/// What stands right of the equals sign.
fn right_side(rule: &str) -> &str {
    rule.split_once(" = ").map_or(rule, |(_, right)| right)
}

/// The signs and functions in order; a hyphen inside a word is none, nor is the sign of a number below zero.
fn signs(text: &str) -> String {
    let is_sign =
        |word: &&str| ["+", "-", "×", "÷", "√"].contains(word) || floats::is_function(word);
    text.split([' ', '(', ')']).filter(is_sign).collect::<Vec<_>>().join(" ")
}

/// As the reader of lengths takes it: other units left out, percent as hundredths.
fn readable(numbers: &str) -> String {
    let mut text = numbers.to_owned();
    for unit in OTHER_UNITS {
        text = text.replace(&format!(" {unit}"), "");
    }
    let mut words: Vec<String> = Vec::new();
    for word in text.split(' ') {
        let closing: String = word.chars().filter(|c| *c == ')').collect();
        match (word.trim_end_matches(')'), words.last_mut()) {
            ("%", Some(number)) => {
                let open: String = number.chars().take_while(|c| *c == '(').collect();
                let digits = number.trim_start_matches('(').to_owned();
                *number = format!("{open}({digits} ÷ 100){closing}");
            }
            _ => words.push(word.to_owned()),
        }
    }
    words.join(" ")
}

fn worked_out(numbers: &str) -> Option<Quantity> {
    let formula = parse(&readable(numbers), &NoNames).ok()?;
    formula.quantity(Unit::Inch, &NoNames).ok()
}

/// As a plain number; lengths in inches, areas in square inches.
fn plain(quantity: Quantity) -> Number {
    match quantity {
        Quantity::Bare(number) | Quantity::Plain(number) => number,
        Quantity::Length(length) => length.in_inches(),
        Quantity::Area(area) => area.in_square_inches(),
    }
}

fn whole(number: i128) -> Number {
    Number::ratio(number, 1).expect("a whole number of a step")
}

fn in_64ths(inches: Number) -> Number {
    (inches * Number::whole(64)).expect("a bit in 64ths")
}

fn sixty_fourths(number: i128) -> Number {
    Number::ratio(number, 64).expect("a bit")
}

/// By the rounding that the rule names, or the limit that the numbers name.
fn rounded(number: Number, rule: &str, limit: &str) -> Result<Number, String> {
    if let Some(most) = limit.strip_prefix("at most ") {
        let most = worked_out(most).ok_or(format!("cannot read the limit {most}"))?;
        return Ok(number.min(plain(most)));
    }
    Ok(match rule {
        "rounded up" => whole(number.ceil()),
        "rounded down" | "whole ones only" => whole(number.floor()),
        "not below zero" => number.max(Number::ZERO),
        "up to a whole 64th" => sixty_fourths(in_64ths(number).ceil()),
        "down to a whole 64th" => sixty_fourths(in_64ths(number).floor()),
        // The smaller one when midway.
        "to the nearest 64th" => {
            let half = Number::ratio(1, 2).expect("a half");
            sixty_fourths((in_64ths(number) - half).expect("a bit").ceil())
        }
        _ => number,
    })
}

/// Whether a number shown with decimal places is the one worked out: off by less than a tenth of
/// the last place.
fn is_shown(worked: Number, shown: f64, places: u8) -> bool {
    (worked.to_f64() - shown).abs() * 10_f64.powi(i32::from(places) + 1) < 1.0
}

/// Whether a result is as near to what was worked out in floats as a length is kept and an angle printed: a length to
/// 1/1024 in, since some of what is put in is itself kept to 1/4096; `None` where the result is of no such kind.
fn near(gives: &Value, worked: &floats::Worked) -> Option<bool> {
    // Angles are printed with seven figures.
    let of_the_figures = worked.largest * 1e-6;
    let (shown, within, unit) = match gives {
        Value::Length(length, _) => (length.to_f64(), 1.0 / 1024.0, ""),
        Value::Exact(exact, places, unit) => {
            (exact.to_f64(), 0.1_f64.powi(i32::from(*places) + 1), *unit)
        }
        Value::Real(real, places, unit) => (*real, 0.1_f64.powi(i32::from(*places) + 1), *unit),
        _ => return None,
    };
    let found = if unit == "mm" { worked.number * 25.4 } else { worked.number };
    Some((found - shown).abs() <= within + of_the_figures)
}

fn judge(step: &Step) -> Verdict {
    let put_in = step.put_in.to_string();
    let (rule, rounding) = formula_and_rest(right_side(&step.rule));
    let (numbers, limit) = formula_and_rest(&put_in);
    let result = match &step.gives {
        Value::Lengths(_) => None,
        Value::Words(words) => worked_out(&words.to_string()),
        _ => Some(Quantity::Bare(Number::ZERO)),
    };
    let other_signs = (signs(rule) != signs(numbers))
        .then(|| Verdict::False(format!("signs {} are not {}", signs(numbers), signs(rule))));
    let (Some(quantity), Some(result)) = (worked_out(numbers), result) else {
        let worked = floats::worked_out(numbers, |leaf| Some(plain(worked_out(leaf)?).to_f64()));
        let worked = worked.map(|it| match rounding {
            "whichever way it leans" => floats::Worked { number: it.number.abs(), ..it },
            _ => it,
        });
        return match worked.and_then(|worked| Some((near(&step.gives, &worked)?, worked))) {
            None => Verdict::InWords,
            Some((is_near, worked)) => other_signs.unwrap_or(if is_near {
                Verdict::True
            } else {
                Verdict::False(format!("comes to {worked:?}"))
            }),
        };
    };
    if let Some(verdict) = other_signs {
        return verdict;
    }
    let number = match rounded(plain(quantity), rounding, limit) {
        Ok(number) => number,
        Err(why) => return Verdict::False(why),
    };
    let is_length = matches!(quantity, Quantity::Length(_) | Quantity::Bare(_));
    let holds = match &step.gives {
        Value::Length(length, _) if rounding == "to 1/4096 in" => {
            is_length && (number.to_f64() - length.to_f64()).abs() < 1.01 / 8192.0
        }
        Value::Length(length, _) => is_length && length.in_inches() == number,
        Value::Area(area) => {
            matches!(quantity, Quantity::Area(_)) && area.in_square_inches() == number
        }
        Value::Count(count) => whole((*count).into()) == number,
        Value::Exact(exact, places, unit) => {
            is_shown(in_unit(quantity, number, unit), exact.to_f64(), *places)
        }
        Value::Real(real, places, unit) => {
            is_shown(in_unit(quantity, number, unit), *real, *places)
        }
        Value::Words(_) | Value::Lengths(_) => plain(result) == number,
    };
    if holds { Verdict::True } else { Verdict::False(format!("comes to {number}")) }
}

/// A length in the unit of the result, a percentage in hundredths.
fn in_unit(quantity: Quantity, number: Number, unit: &str) -> Number {
    let times = match (quantity, unit) {
        (Quantity::Length(length), "mm") => return length.in_unit(Unit::Millimetre).expect("mm"),
        (_, "%") => 100,
        _ => 1,
    };
    (number * Number::whole(times)).expect("a result of a step")
}

/// What was seen of all calculators.
#[derive(Default)]
struct Seen {
    steps: usize,
    judged: BTreeMap<(&'static str, String), usize>,
    in_words: BTreeMap<(&'static str, String), String>,
    wrong: BTreeMap<(&'static str, String), String>,
}

impl Seen {
    fn look_at(&mut self, calculator: &Calculator, step: &Step) {
        let key = (calculator.slug, step.rule.to_string());
        let shown = || format!("{} = {} gives {:?}", step.rule, step.put_in, step.gives);
        match judge(step) {
            Verdict::True => {
                self.steps += 1;
                *self.judged.entry(key).or_default() += 1;
            }
            Verdict::InWords => {
                self.in_words.entry(key).or_insert_with(shown);
            }
            Verdict::False(why) => {
                self.wrong.entry(key).or_insert_with(|| format!("{}: {why}", shown()));
            }
        }
    }
}

#[test]
fn every_line_of_working_comes_out() {
    let mut seen = Seen::default();
    for calculator in calculators::ALL {
        for (entries, tape) in entries::of(calculator) {
            let sheet = calculator.sheet(&entries, &Bench { tape, ..Bench::default() }, &NoNames);
            for step in sheet.answer.iter().flat_map(|answer| &answer.working.steps) {
                seen.look_at(calculator, step);
            }
        }
    }
    let mut trouble = Vec::new();
    for (key, shown) in &seen.wrong {
        trouble.push(format!("false: {}: {shown}", key.0));
    }
    let rules = |slug| {
        let listed = LIST.iter().filter(move |listed| listed.slug == slug);
        listed.flat_map(|listed| listed.in_words.iter().map(|(rule, _)| *rule))
    };
    for ((slug, rule), shown) in &seen.in_words {
        if !rules(*slug).any(|listed| listed == rule) {
            trouble.push(format!("not a formula, and not on the list: {slug}: {shown}"));
        }
    }
    for Listed { slug, in_words } in LIST {
        for (rule, why) in *in_words {
            if !seen.in_words.contains_key(&(*slug, (*rule).to_owned())) {
                trouble.push(format!("on the list, never in words: {slug}: {rule} ({why})"));
            }
        }
    }
    assert!(trouble.is_empty(), "{}", trouble.join("\n"));
    seen.judged.retain(|key, _| !seen.in_words.contains_key(key));
    let rules = seen.judged.len();
    println!("{rules} rules judged {} times; {} in words", seen.steps, seen.in_words.len());
    let in_words: usize = LIST.iter().map(|listed| listed.in_words.len()).sum();
    assert!(in_words <= MOST_IN_WORDS, "{in_words} rules in words");
    assert!(rules >= FEWEST_RULES, "only {rules} rules are judged");
    assert!(seen.steps >= FEWEST_STEPS, "only {} steps are judged", seen.steps);
    for (key, times) in &seen.judged {
        assert!(*times >= 3, "{}: {} was judged only {times} times", key.0, key.1);
    }
}

#[test]
fn the_law_sees_a_false_line() {
    use reckoner_core::measure::length;
    use reckoner_core::say;
    let step = |rule: &'static str, numbers: &str, gives: &str| {
        Step::in_words(rule, say![numbers.to_owned()], length(gives).expect("a length"))
    };
    let is_false = |step: &Step| matches!(judge(step), Verdict::False(_));
    assert_eq!(judge(&step("left = board - kerf", "3 in - 1/8 in", "2 7/8")), Verdict::True);
    assert_eq!(
        judge(&step("left = board - kerf, not below zero", "1 in - 2 in", "0")),
        Verdict::True
    );
    assert_eq!(
        judge(&step(
            "high = depth + 1/8 in, at most the reach",
            "3 in + 1/8 in, at most 3 in",
            "3"
        )),
        Verdict::True
    );
    assert!(is_false(&step("left = board - kerf", "1 in - 2 in", "1")), "a sign lost");
    assert!(is_false(&step("left = board + kerf", "3 in - 1/8 in", "2 7/8")), "another rule");
    assert!(
        is_false(&step("left = board - kerfs", "3 in - 2 × 1/8 in", "2 3/4")),
        "a hidden factor"
    );
    assert!(is_false(&step("left = board", "3 in", "2 7/8")), "a factor left out");
    // tan 45° is 1, sin 30° a half; 3, 4 and 5 are the sides of a square corner.
    for (rule, numbers, gives) in [
        ("far = high ÷ tan lean", "3 in ÷ tan 45°", "3"),
        ("far = high × (1 ÷ sin(corner ÷ 2) - 1)", "3 in × (1 ÷ sin(60° ÷ 2) - 1)", "3"),
        ("far = √(a² + b²)", "√((3 in)² + (4 in)²)", "5"),
    ] {
        assert_eq!(judge(&step(rule, numbers, gives)), Verdict::True, "{rule}");
        assert!(is_false(&step(rule, numbers, "4 1/2")), "{rule} rounded by half");
        assert!(is_false(&step("far = high", numbers, gives)), "{rule} with other signs");
    }
    // 38.5132 is 18 in ÷ tan 25.05°, by a table of tangents: half of 50.1°, which is not that of 50.2°.
    let rule = "meets = radius ÷ tan(corner ÷ 2)";
    assert!(is_false(&step(rule, "18 in ÷ tan(50.2° ÷ 2)", "38.5132")), "a rounded angle");
    let angle = |degrees| Step {
        gives: Value::Real(degrees, 2, "°"),
        ..step(
            "lean = the angle whose tangent is out ÷ high",
            "the angle whose tangent is 3 in ÷ 3 in",
            "0",
        )
    };
    assert_eq!(judge(&angle(45.0)), Verdict::True);
    assert!(is_false(&angle(44.9)), "another angle");
    assert_eq!(judge(&step("far = a walk", "a walk past 3 knots", "17")), Verdict::InWords);
}
