//! [`Ask`]: reads the texts of the fields, and collects what was understood and what was not.

use super::{Bench, Entries, Field, Kind, Least, Outcome, Refusal, Sentence, Span, Strip, When};
use crate::measure::text::{
    Formula, Names, Quantity, TextProblem, TextProblemKind, decimal, exact_text, parse,
};
use crate::measure::{Length, Number, Unit};
use crate::say;

/// Most items in a list field.
pub(super) const MOST_ITEMS: usize = 200;

/// How a field was understood: `61 3/8 - 2 × 3 1/2 = 54 3/8 in`.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Echo {
    /// Id of the field.
    pub field: &'static str,
    /// The reading.
    pub sentence: Sentence,
}

/// Reads the fields of one calculator.
///
/// Each reader gives `None` when the text cannot be read; the refusal is kept, and the reading
/// goes on, so that all problems show at once.
pub struct Ask<'a> {
    fields: &'static [Field],
    entries: &'a Entries,
    bench: &'a Bench,
    names: &'a dyn Names,
    pub(super) echoes: Vec<Echo>,
    pub(super) refusals: Vec<Refusal>,
}

impl<'a> Ask<'a> {
    /// A fresh reading.
    #[must_use]
    pub fn new(
        fields: &'static [Field],
        entries: &'a Entries,
        bench: &'a Bench,
        names: &'a dyn Names,
    ) -> Ask<'a> {
        Ask { fields, entries, bench, names, echoes: Vec::new(), refusals: Vec::new() }
    }

    /// Every field of the form, asked or not.
    #[must_use]
    pub fn fields(&self) -> &'static [Field] {
        self.fields
    }

    /// The user's bench.
    #[must_use]
    pub fn bench(&self) -> &'a Bench {
        self.bench
    }

    /// What was understood and what was not, so far.
    #[must_use]
    pub fn finish(self) -> (Vec<Echo>, Vec<Refusal>) {
        (self.echoes, self.refusals)
    }

    /// The unit of bare numbers.
    #[must_use]
    pub fn unit(&self) -> Unit {
        self.entries.unit().unwrap_or(self.bench.tape.unit())
    }

    /// Whether a field is asked, given the choices made.
    #[must_use]
    pub fn is_asked(&self, field: &Field) -> bool {
        match field.when {
            When::Always => true,
            When::Chosen(choice, answers) => self
                .field(choice)
                .is_some_and(|f| self.is_asked(f) && answers.contains(&self.choice(choice))),
        }
    }

    fn field(&self, id: &str) -> Option<&'static Field> {
        self.fields.iter().find(|field| field.id == id)
    }

    /// The text of a field as typed, or its start.
    #[must_use]
    pub fn text(&self, id: &str) -> String {
        match (self.entries.text(id), self.field(id)) {
            (Some(text), _) => text.to_owned(),
            (None, Some(field)) => field.start_text(self.bench, self.unit()),
            (None, None) => String::new(),
        }
    }

    fn refuse_text(&mut self, field: &'static str, problem: &TextProblem) {
        let code = if problem.kind == TextProblemKind::Empty { "empty" } else { "cannot-read" };
        self.refusals.push(Refusal {
            field,
            code,
            sentence: say![problem.to_string()],
            at: Some(problem.at.clone()),
            way_out: None,
        });
    }

    /// Refuses a field for a reason of its own.
    pub fn refuse_field(&mut self, field: &'static str, code: &'static str, sentence: Sentence) {
        self.refusals.push(Refusal { field, code, sentence, at: None, way_out: None });
    }

    pub(super) fn echo(&mut self, field: &'static str, sentence: Sentence) {
        self.echoes.push(Echo { field, sentence });
    }

    pub(super) fn read<T>(
        &mut self,
        id: &'static str,
        text: &str,
        value: impl Fn(&Formula, Unit, &dyn Names) -> Result<T, TextProblem>,
    ) -> Option<(Formula, T)> {
        let (unit, names) = (self.unit(), self.names);
        let read = parse(text, names)
            .and_then(|formula| value(&formula, unit, names).map(|value| (formula, value)));
        match read {
            Ok(read) => Some(read),
            Err(mut problem) => {
                // An item of a list is read by itself; its trouble is shown in the whole text.
                let before = self.text(id).find(text).unwrap_or(0);
                problem.at = problem.at.start + before..problem.at.end + before;
                self.refuse_text(id, &problem);
                None
            }
        }
    }

    fn least(&self, id: &str) -> Least {
        match self.field(id).map(|field| field.kind) {
            Some(Kind::Length(least) | Kind::OptionalLength(least)) => least,
            _ => Least::AboveZero,
        }
    }

    /// A length, as small as its [`Kind`] allows.
    pub fn length(&mut self, id: &'static str) -> Option<Length> {
        let text = self.text(id);
        let (formula, length) = self.read(id, &text, Formula::length)?;
        let too_small = match self.least(id) {
            Least::AboveZero => (!length.is_positive()).then_some("This must be more than zero."),
            Least::Zero => length.is_negative().then_some("This cannot be less than zero."),
            Least::Any => None,
        };
        if let Some(words) = too_small {
            self.refuse_field(id, "too-small", say![words]);
            return None;
        }
        let reading = exact_text(length);
        self.echo(
            id,
            if formula.is_single() {
                say![reading]
            } else {
                say![format!("{formula} = {reading}")]
            },
        );
        Some(length)
    }

    /// A length, or `Some(None)` when the field is left empty.
    pub fn optional_length(&mut self, id: &'static str) -> Option<Option<Length>> {
        if self.text(id).trim().is_empty() { Some(None) } else { self.length(id).map(Some) }
    }

    /// A whole number within the limits of its [`Kind`].
    pub fn count(&mut self, id: &'static str) -> Option<u32> {
        let text = self.text(id);
        let (formula, number) = self.read(id, &text, Formula::number)?;
        let (least, most) = match self.field(id).map(|field| field.kind) {
            Some(Kind::Count { least, most }) => (least, most),
            _ => (0, u32::MAX),
        };
        let count = number.is_whole().then(|| u32::try_from(number.numer()).ok()).flatten();
        let Some(count) = count.filter(|count| (least..=most).contains(count)) else {
            self.refuse_field(
                id,
                "not-a-count",
                say!["This must be a whole number from ", least, " to ", most, "."],
            );
            return None;
        };
        self.echo(
            id,
            if formula.is_single() { say![count] } else { say![format!("{formula} = {count}")] },
        );
        Some(count)
    }

    /// An exact number within the limits of its [`Kind`]; a unit sign such as `°` or `%` after it
    /// is allowed.
    pub fn number(&mut self, id: &'static str) -> Option<Number> {
        let (least, most, unit) = match self.field(id).map(|field| field.kind) {
            Some(Kind::Number { least, most, unit }) => (least, most, unit),
            _ => (i32::MIN, i32::MAX, ""),
        };
        let text = self.text(id);
        let amount = text.trim().strip_suffix(unit).unwrap_or(&text);
        let (formula, number) = self.read(id, amount, Formula::number)?;
        if number < Number::whole(least.into()) || number > Number::whole(most.into()) {
            self.refuse_field(
                id,
                "out-of-range",
                say![format!("This must be from {least} to {most}{unit}.")],
            );
            return None;
        }
        let reading = format!("{}{unit}", plain(number));
        self.echo(
            id,
            if formula.is_single() {
                say![reading]
            } else {
                say![format!("{formula} = {reading}")]
            },
        );
        Some(number)
    }

    /// The same as a floating-point number, for angles, loads and moisture.
    pub fn real(&mut self, id: &'static str) -> Option<f64> {
        self.number(id).map(Number::to_f64)
    }

    /// An amount of money, zero or more, or `Some(None)` when left empty.
    pub fn optional_money(&mut self, id: &'static str) -> Option<Option<Number>> {
        let text = self.text(id);
        if text.trim().is_empty() {
            return Some(None);
        }
        let (_, number) = self.read(id, &text, Formula::number)?;
        if number < Number::ZERO || number > Number::whole(1_000_000_000) {
            self.refuse_field(
                id,
                "out-of-range",
                say!["A price cannot be less than zero, or over a billion."],
            );
            return None;
        }
        self.echo(id, say![decimal(number, 2)]);
        Some(Some(number))
    }

    /// The same in whole hundredths, a part of one rounded away: nobody pays less than that.
    pub fn optional_cents(&mut self, id: &'static str) -> Option<Option<u64>> {
        let amount = self.optional_money(id)?;
        Some(amount.and_then(|amount| {
            let cents = (amount * Number::whole(100)).ok()?.floor();
            u64::try_from(cents).ok()
        }))
    }

    /// The id of the chosen answer; an unknown one counts as the first.
    #[must_use]
    pub fn choice(&self, id: &str) -> &'static str {
        let Some(Kind::Choice(choices)) = self.field(id).map(|field| field.kind) else { return "" };
        let text = self.text(id);
        let chosen = choices.iter().find(|choice| choice.id == text).or(choices.first());
        chosen.map_or("", |choice| choice.id)
    }

    /// Whether a yes-or-no field says yes.
    #[must_use]
    pub fn yes(&self, id: &str) -> bool {
        self.text(id) == "yes"
    }

    /// Free words without spaces at either end, within the limit of their [`Kind`].
    pub fn words(&mut self, id: &'static str) -> Option<String> {
        let most = match self.field(id).map(|field| field.kind) {
            Some(Kind::Words(most)) => most,
            _ => 0,
        };
        let text = self.text(id).trim().to_owned();
        if text.chars().count() > most {
            self.refuse_field(
                id,
                "too-long",
                say![format!("This may have up to {most} characters.")],
            );
            return None;
        }
        Some(text)
    }

    /// A running strip of formulas. A line that cannot be worked out does not refuse the others.
    pub fn strip(&mut self, id: &'static str) -> Option<Strip> {
        let text = self.text(id);
        if Strip::is_too_long(&text) {
            self.refuse_field(id, "too-many", say!["The strip is full. Start a fresh one."]);
            return None;
        }
        Some(Strip::read(&text, self.unit(), self.names))
    }

    /// What a line of a strip comes to: that of the letter in field `id`, else the last one
    /// written. A line that cannot be worked out is refused beside `strip_id`.
    pub fn line_of(
        &mut self,
        id: &'static str,
        strip_id: &'static str,
        strip: &Strip,
    ) -> Option<(String, Quantity)> {
        let letter = self.text(id);
        match strip.line(&letter).map(|line| (line, &line.outcome)) {
            Some((line, Outcome::Answer(formula, quantity))) => {
                if !formula.is_single() {
                    self.echo(strip_id, say![formula.to_string()]);
                }
                Some((line.letter.clone(), *quantity))
            }
            Some((_, Outcome::Problem(problem))) => {
                self.refuse_text(strip_id, problem);
                None
            }
            Some((_, Outcome::Blank)) | None if letter.trim().is_empty() => {
                let empty = TextProblem { at: 0..0, kind: TextProblemKind::Empty };
                self.refuse_text(strip_id, &empty);
                None
            }
            Some((_, Outcome::Blank)) | None => {
                self.refuse_field(
                    id,
                    "no-such-line",
                    say![format!("There is no line {} with an answer.", letter.trim())],
                );
                None
            }
        }
    }

    /// Items of a list field: separated by commas, semicolons or lines; none when empty.
    pub(super) fn items(&mut self, id: &'static str) -> Option<Vec<String>> {
        let text = self.text(id);
        let items: Vec<String> = text
            .split([',', ';', '\n'])
            .map(|item| item.trim().to_owned())
            .filter(|item| !item.is_empty())
            .collect();
        if items.len() > MOST_ITEMS {
            self.refuse_field(
                id,
                "too-many",
                say![format!("A list may have up to {MOST_ITEMS} entries.")],
            );
            return None;
        }
        Some(items)
    }

    /// Lengths above zero, separated by commas; `3 @ 1 3/4` stands for three of them.
    pub fn lengths(&mut self, id: &'static str) -> Option<Vec<Length>> {
        let mut lengths = Vec::new();
        for item in self.items(id)? {
            let (count, text) = match item.split_once('@') {
                Some((count, text)) => {
                    let (_, count) = self.read(id, count, Formula::number)?;
                    let count =
                        count.is_whole().then(|| usize::try_from(count.numer()).ok()).flatten();
                    (count.filter(|count| (1..=MOST_ITEMS).contains(count)), text)
                }
                None => (Some(1), item.as_str()),
            };
            let Some(count) = count else {
                self.refuse_field(
                    id,
                    "not-a-count",
                    say![format!("Before @ goes how many: a whole number from 1 to {MOST_ITEMS}.")],
                );
                return None;
            };
            let (_, length) = self.read(id, text, Formula::length)?;
            if !length.is_positive() {
                self.refuse_field(id, "too-small", say!["Each of these must be more than zero."]);
                return None;
            }
            lengths.extend(core::iter::repeat_n(length, count));
            if lengths.len() > MOST_ITEMS {
                self.refuse_field(
                    id,
                    "too-many",
                    say![format!("A list may have up to {MOST_ITEMS} entries.")],
                );
                return None;
            }
        }
        let reading: Vec<String> = lengths.iter().map(|length| exact_text(*length)).collect();
        self.echo(id, say![reading.join(", ")]);
        Some(lengths)
    }

    /// Zones `10 to 12 1/2` from the left end, separated by commas, in any order; each runs from
    /// its nearer to its farther end.
    pub fn spans(&mut self, id: &'static str) -> Option<Vec<Span>> {
        let mut spans = Vec::new();
        for item in self.items(id)? {
            let Some((from, to)) = item.split_once(" to ").or_else(|| item.split_once("..")) else {
                self.refuse_field(
                    id,
                    "not-a-zone",
                    say![format!("“{item}” is not a zone. Write where it begins and ends, as in 10 to 12 1/2.")],
                );
                return None;
            };
            let (_, a) = self.read(id, from, Formula::length)?;
            let (_, b) = self.read(id, to, Formula::length)?;
            spans.push(Span { from: a.min(b), to: a.max(b) });
        }
        crate::order::sort(&mut spans);
        let reading: Vec<String> = spans
            .iter()
            .map(|span| format!("{} to {}", exact_text(span.from), exact_text(span.to)))
            .collect();
        self.echo(
            id,
            say![if reading.is_empty() { "none".to_owned() } else { reading.join(", ") }],
        );
        Some(spans)
    }
}

/// A plain number for an echo: a whole or short decimal where it is one, else a fraction.
fn plain(number: Number) -> String {
    let text = decimal(number, 4);
    let text = text.trim_end_matches('0').trim_end_matches('.');
    let short = crate::measure::text::number(text);
    if short.is_ok_and(|short| short == number) { text.to_owned() } else { number.to_string() }
}
