//! [`Ask`]: reads the texts of the fields, and collects what was understood and what was not.

use core::cell::Cell;

use super::{
    Assumed, Bench, Choice, Entries, Field, Kind, Least, Outcome, Refusal, Refused, Sentence, Span,
    Start, Strip, WIDEST_KERF, WayOut, When,
    counts::{split_count, two_ways},
};
use crate::measure::text::{
    Formula, Names, Quantity, TextProblem, TextProblemKind, decimal, exact_text, parse,
};
use crate::measure::{Length, Number, Rounding, Unit};
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

/// A fraction of an inch less than one, typed without its line: `316` for 3/16.
fn with_line(typed: &str) -> Option<String> {
    [2_u32, 4, 8, 16, 32, 64].into_iter().find_map(|below| {
        let above = typed.strip_suffix(below.to_string().as_str())?;
        let count: u32 = above.parse().ok()?;
        (count % 2 == 1 && count < below).then(|| format!("{above}/{below}"))
    })
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
    /// Ids of the fields of which an example of ours was read.
    ours: Cell<Vec<&'static str>>,
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
        Ask {
            fields,
            entries,
            bench,
            names,
            echoes: Vec::new(),
            refusals: Vec::new(),
            ours: Cell::default(),
        }
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

    /// The sizes of ours that were read so far.
    #[must_use]
    pub fn assumed(&self) -> Assumed {
        let ours = self.ours.take();
        let assumed = Assumed::of(self.fields, &ours);
        self.ours.set(ours);
        assumed
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
            When::Metric(is_metric) => self.bench.tape.unit().is_metric() == is_metric,
            When::Chosen(choice, answers) => self
                .found(choice)
                .is_some_and(|f| self.is_asked(f) && answers.contains(&self.choice(f).id)),
        }
    }

    /// Whether a field is asked and has a size, be it ours or the person's.
    #[must_use]
    pub fn is_given(&self, field: &Field) -> bool {
        let text = match self.entries.text(field.id) {
            Some(text) => text.to_owned(),
            None => field.start_text(self.bench, self.unit()),
        };
        self.is_asked(field) && !text.trim().is_empty()
    }

    fn found(&self, id: &str) -> Option<&'static Field> {
        self.fields.iter().find(|field| field.id == id)
    }

    /// The field with this id, for a form that is not read in the module of its fields. One that
    /// the form has not is empty and reads as such.
    #[must_use]
    pub fn field(&self, id: &str) -> &'static Field {
        const NONE: &Field = &Field::new("", "", "", Kind::Words(0), Start::Text(""));
        self.found(id).unwrap_or(NONE)
    }

    /// The text of a field as typed, or its start. Whatever is answered after an example of ours was
    /// read rests on it.
    #[must_use]
    pub fn text(&self, field: &Field) -> String {
        if let Some(text) = self.entries.text(field.id) {
            return text.to_owned();
        }
        match self.found(field.id) {
            Some(field) => {
                if field.is_ours(self.bench) {
                    let mut ours = self.ours.take();
                    ours.push(field.id);
                    self.ours.set(ours);
                }
                field.start_text(self.bench, self.unit())
            }
            None => field.start_text(self.bench, self.unit()),
        }
    }

    /// Decimal commas written as points, where nothing but plain numbers and sums of them stands there: then it is read.
    fn with_point(&self, field: &Field) -> Option<WayOut> {
        let text = self.text(field);
        // Three digits behind a comma may be thousands.
        let digits = |part: &str| part.chars().take_while(char::is_ascii_digit).count();
        if text.split(',').skip(1).any(|part| digits(part) == 3) {
            return None;
        }
        let typed = text.replace(',', ".");
        let is_plain = typed.chars().all(|c| c.is_ascii_digit() || ".+ ".contains(c));
        (is_plain && parse(&typed, self.names).is_ok())
            .then(|| WayOut::set(say![format!("Write {}.", typed.trim())], field, typed))
            .flatten()
    }

    fn refuse_text(&mut self, field: &Field, problem: &TextProblem) {
        let code = if problem.kind == TextProblemKind::Empty { "empty" } else { "cannot-read" };
        let way_out = (problem.kind == TextProblemKind::DecimalComma)
            .then(|| self.with_point(field))
            .flatten();
        self.refusals.push(Refusal {
            field: field.id,
            code,
            sentence: say![problem.to_string()],
            at: Some(problem.at.clone()),
            way_out,
        });
    }

    /// Refuses a field for a reason of its own.
    pub fn refuse_field(&mut self, field: &Field, code: &'static str, sentence: Sentence) {
        self.refusals.push(Refusal { field: field.id, code, sentence, at: None, way_out: None });
    }

    /// Keeps a refusal that was found while reading.
    pub fn keep(&mut self, refusal: Refusal) {
        self.refusals.push(refusal);
    }

    /// Keeps why `reckon` does not answer; `too_large` is what is said of a number that is out of
    /// range. Always `None`, to return it at once.
    pub fn refused<T>(&mut self, refused: Refused, too_large: Refusal) -> Option<T> {
        match refused {
            Refused::For(refusals) => self.refusals.extend(refusals),
            Refused::OutOfRange => self.refusals.push(too_large),
        }
        None
    }

    pub(super) fn echo(&mut self, field: &Field, sentence: Sentence) {
        self.echoes.push(Echo { field: field.id, sentence });
    }

    pub(super) fn read<T>(
        &mut self,
        field: &Field,
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
                let before = self.text(field).find(text).unwrap_or(0);
                problem.at = problem.at.start + before..problem.at.end + before;
                self.refuse_text(field, &problem);
                None
            }
        }
    }

    /// A length, as small as its [`Kind`] allows.
    pub fn length(&mut self, field: &Field) -> Option<Length> {
        let text = self.text(field);
        let (formula, length) = self.read(field, &text, Formula::length)?;
        let least = match field.kind {
            Kind::Length(least) | Kind::OptionalLength(least) => least,
            _ => Least::AboveZero,
        };
        let too_small = match least {
            Least::AboveZero => (!length.is_positive()).then_some("This must be more than zero."),
            Least::Zero => length.is_negative().then_some("This cannot be less than zero."),
            Least::Any => None,
        };
        if let Some(words) = too_small {
            self.refuse_field(field, "too-small", say![words]);
            return None;
        }
        let reading = exact_text(length);
        self.echo_reading(field, &formula, &reading);
        Some(length)
    }

    /// The width of a saw cut, at most [`WIDEST_KERF`]. A wider one is mostly a fraction without its line, which is offered.
    pub fn kerf(&mut self, field: &Field) -> Option<Length> {
        let kerf = self.length(field)?;
        if kerf <= WIDEST_KERF {
            return Some(kerf);
        }
        let meant = with_line(self.text(field).trim());
        let way_out = match meant.filter(|_| !self.unit().is_metric()) {
            Some(meant) => WayOut::set(say![format!("Write {meant}.")], field, meant),
            None => WayOut::at_most("Use ", WIDEST_KERF, " or less.", field),
        };
        let words = say!["One cut of a saw is at most ", (WIDEST_KERF, Rounding::Down), " wide."];
        self.keep(Refusal::at(field, "kerf-too-wide", words, way_out));
        None
    }

    /// What a formula comes to; one number alone stands for itself.
    pub(super) fn echo_reading(&mut self, field: &Field, formula: &Formula, reading: &str) {
        let words =
            if formula.is_single() { reading.to_owned() } else { format!("{formula} = {reading}") };
        self.echo(field, say![words]);
    }

    /// A length, or `Some(None)` when the field is left empty.
    pub fn optional_length(&mut self, field: &Field) -> Option<Option<Length>> {
        if self.text(field).trim().is_empty() { Some(None) } else { self.length(field).map(Some) }
    }

    /// A whole number within the limits of its [`Kind`].
    pub fn count(&mut self, field: &Field) -> Option<u32> {
        let text = self.text(field);
        let (formula, number) = self.read(field, &text, Formula::number)?;
        let (least, most) = match field.kind {
            Kind::Count { least, most } => (least, most),
            _ => (0, u32::MAX),
        };
        let count = number.is_whole().then(|| u32::try_from(number.numer()).ok()).flatten();
        let Some(count) = count.filter(|count| (least..=most).contains(count)) else {
            self.refuse_field(
                field,
                "not-a-count",
                say!["This must be a whole number from ", least, " to ", most, "."],
            );
            return None;
        };
        self.echo(
            field,
            if formula.is_single() { say![count] } else { say![format!("{formula} = {count}")] },
        );
        Some(count)
    }

    /// An amount of money, zero or more, or `Some(None)` when left empty.
    pub fn optional_money(&mut self, field: &Field) -> Option<Option<Number>> {
        let text = self.text(field);
        if text.trim().is_empty() {
            return Some(None);
        }
        let (_, number) = self.read(field, &text, Formula::number)?;
        if number < Number::ZERO || number > Number::whole(1_000_000_000) {
            self.refuse_field(
                field,
                "out-of-range",
                say!["A price cannot be less than zero, or over a billion."],
            );
            return None;
        }
        self.echo(field, say![decimal(number, 2)]);
        Some(Some(number))
    }

    /// The same in whole hundredths; a part of one is refused.
    pub fn optional_cents(&mut self, field: &Field) -> Option<Option<u64>> {
        let Some(amount) = self.optional_money(field)? else { return Some(None) };
        let cents = (amount * Number::whole(100)).ok().filter(|cents| cents.is_whole());
        let cents = cents.and_then(|cents| u64::try_from(cents.numer()).ok());
        if cents.is_none() {
            let words = "A price goes to hundredths, as in 10.90.";
            self.refuse_field(field, "not-a-price", say![words]);
        }
        Some(Some(cents?))
    }

    /// The chosen answer; an unknown one counts as the first.
    #[must_use]
    pub fn choice(&self, field: &Field) -> Choice {
        let Kind::Choice(choices) = field.kind else { return Choice::NONE };
        let text = self.text(field);
        let chosen = choices.iter().find(|choice| choice.id == text).or(choices.first());
        chosen.copied().unwrap_or(Choice::NONE)
    }

    /// Whether a yes-or-no field says yes.
    #[must_use]
    pub fn yes(&self, field: &Field) -> bool {
        self.text(field) == "yes"
    }

    /// Free words without spaces at either end, within the limit of their [`Kind`].
    pub fn words(&mut self, field: &Field) -> Option<String> {
        let most = match field.kind {
            Kind::Words(most) => most,
            _ => 0,
        };
        let text = self.text(field).trim().to_owned();
        if text.chars().count() > most {
            self.refuse_field(
                field,
                "too-long",
                say![format!("This may have up to {most} characters.")],
            );
            return None;
        }
        Some(text)
    }

    /// A running strip of formulas. A line that cannot be worked out does not refuse the others.
    pub fn strip(&mut self, field: &Field) -> Option<Strip> {
        let text = self.text(field);
        if Strip::is_too_long(&text) {
            self.refuse_field(field, "too-many", say!["The strip is full. Start a fresh one."]);
            return None;
        }
        Some(Strip::read(&text, self.unit(), self.names))
    }

    /// What a line of a strip comes to: that of the letter in `field`, else the last one
    /// written. A line that cannot be worked out is refused beside `strip_field`.
    pub fn line_of(
        &mut self,
        field: &Field,
        strip_field: &Field,
        strip: &Strip,
    ) -> Option<(String, Quantity)> {
        let letter = self.text(field);
        match strip.line(&letter).map(|line| (line, &line.outcome)) {
            Some((line, Outcome::Answer(formula, quantity))) => {
                if !formula.is_single() {
                    self.echo(strip_field, say![formula.to_string()]);
                }
                Some((line.letter.clone(), *quantity))
            }
            Some((_, Outcome::Problem(problem))) => {
                self.refuse_text(strip_field, problem);
                None
            }
            Some((_, Outcome::Blank)) | None if letter.trim().is_empty() => {
                let empty = TextProblem { at: 0..0, kind: TextProblemKind::Empty };
                self.refuse_text(strip_field, &empty);
                None
            }
            Some((_, Outcome::Blank)) | None => {
                self.refuse_field(
                    field,
                    "no-such-line",
                    say![format!("There is no line {} with an answer.", letter.trim())],
                );
                None
            }
        }
    }

    /// Items of a list field: separated by commas, semicolons or lines; none when empty.
    pub(super) fn items(&mut self, field: &Field) -> Option<Vec<String>> {
        let text = self.text(field);
        let items: Vec<String> = text
            .split([',', ';', '\n'])
            .map(|item| item.trim().to_owned())
            .filter(|item| !item.is_empty())
            .collect();
        if items.len() > MOST_ITEMS {
            self.refuse_field(
                field,
                "too-many",
                say![format!("A list may have up to {MOST_ITEMS} entries.")],
            );
            return None;
        }
        Some(items)
    }

    /// Lengths above zero, separated by commas; `3 @ 1 3/4` stands for three of them. Rows from a spreadsheet are read
    /// by the names of their columns.
    pub fn lengths(&mut self, field: &Field) -> Option<Vec<Length>> {
        let entries = self.entries_of(field)?;
        let lengths = self.counted(field, entries, false, Self::positive)?;
        let reading: Vec<String> = lengths.iter().map(|length| exact_text(*length)).collect();
        self.echo(field, say![reading.join(", ")]);
        Some(lengths)
    }

    /// The entries of a list, each as often as stands before its `@` or `×`. What may be meant as a width is asked where
    /// there are widths (`is_wide`).
    pub(super) fn counted<T: Copy>(
        &mut self,
        field: &Field,
        entries: Vec<String>,
        is_wide: bool,
        one: impl Fn(&mut Self, &Field, &str) -> Option<T>,
    ) -> Option<Vec<T>> {
        let mut all = Vec::new();
        for item in entries {
            if let Some((written, words)) = two_ways(&item, is_wide) {
                self.ask_again(field, "two-ways", say![words], (&item, &written));
                return None;
            }
            let (count, text) = match split_count(&item) {
                Some((count, text)) => (self.count_before(field, count)?, text),
                None => (1, item.as_str()),
            };
            let read = one(self, field, text)?;
            all.extend(core::iter::repeat_n(read, count as usize));
            if all.len() > MOST_ITEMS {
                self.refuse_field(
                    field,
                    "too-many",
                    say![format!("A list may have up to {MOST_ITEMS} entries.")],
                );
                return None;
            }
        }
        Some(all)
    }

    /// Zones `10 to 12 1/2` from the left end, separated by commas, in any order; each runs from
    /// its nearer to its farther end.
    pub fn spans(&mut self, field: &Field) -> Option<Vec<Span>> {
        let mut spans = Vec::new();
        for item in self.entries_of(field)? {
            let Some((from, to)) = item.split_once(" to ").or_else(|| item.split_once("..")) else {
                self.refuse_field(
                    field,
                    "not-a-zone",
                    say![format!("“{item}” is not a zone. Write where it begins and ends, as in 10 to 12 1/2.")],
                );
                return None;
            };
            let (_, a) = self.read(field, from, Formula::length)?;
            let (_, b) = self.read(field, to, Formula::length)?;
            spans.push(Span { from: a.min(b), to: a.max(b) });
        }
        crate::order::sort(&mut spans);
        let reading: Vec<String> = spans
            .iter()
            .map(|span| format!("{} to {}", exact_text(span.from), exact_text(span.to)))
            .collect();
        self.echo(
            field,
            say![if reading.is_empty() { "none".to_owned() } else { reading.join(", ") }],
        );
        Some(spans)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::measure::text::NoNames;
    use crate::measure::{Fineness, Tape};

    const KERF: Field = Field::new("kerf", "Kerf", "", Kind::ZERO_UP, Start::Kerf);

    /// What is read of a kerf, or the words of its refusal and what its way out types.
    fn kerf(typed: &str, tape: Tape) -> Result<String, [String; 3]> {
        let (bench, entries) =
            (Bench { tape, ..Bench::default() }, Entries::from_pairs([("kerf", typed)]));
        let mut ask = Ask::new(&[KERF], &entries, &bench, &NoNames);
        if let Some(kerf) = ask.kerf(&KERF) {
            return Ok(exact_text(kerf));
        }
        let (_, refusals) = ask.finish();
        let [Refusal { code: "kerf-too-wide", sentence, way_out: Some(way), .. }] = &refusals[..]
        else {
            panic!("{refusals:?}")
        };
        let set = way.texts(tape);
        assert_eq!(set.len(), 1);
        Err([sentence.on(tape), way.sentence.on(tape), set[0].1.clone()])
    }

    /// Common practice, no source: no saw cuts wider than an inch, and a fraction is easily typed without its line.
    #[test]
    fn a_cut_wider_than_any_saw_makes_is_refused_with_what_was_meant() {
        let inches = Tape::Inches(Fineness::Sixteenth);
        for (typed, read) in
            [("0", "0 in"), ("1/8", "1/8 in"), ("29/32", "29/32 in"), ("1", "1 in")]
        {
            assert_eq!(kerf(typed, inches).as_deref(), Ok(read), "{typed}");
        }
        for (typed, meant) in [("18", "1/8"), ("332", "3/32"), ("764", "7/64"), ("316", "3/16")] {
            let told = kerf(typed, inches).expect_err(typed);
            assert_eq!(
                told,
                ["One cut of a saw is at most 1 in wide.", &format!("Write {meant}."), meant]
            );
        }
        for typed in ["1 1/64", "28", "98", "999", "18 in"] {
            let told = kerf(typed, inches).expect_err(typed);
            assert_eq!(told[1..], ["Use 1 in or less.".to_owned(), "1 in".to_owned()], "{typed}");
        }
        let told = kerf("32", Tape::Millimetres(0)).expect_err("wider than an inch");
        assert_eq!(
            told,
            ["One cut of a saw is at most 25 mm wide.", "Use 25 mm or less.", "25 mm"]
        );
        assert_eq!(kerf("3.2", Tape::Millimetres(0)).as_deref(), Ok("3.2 mm"));
    }
}
