//! What a linked measure takes from a kept reckoning: a result, a cell of a table, or what one of
//! its fields says.

use super::{Kept, Linked, MeasureKind, MeasureProblem, Reckoned};
use crate::calculators::{self, Calculator};
use crate::measure::text::{NoNames, Quantity, parse};
use crate::measure::{Number, Unit};
use crate::sheet::{Answer, Ask, Entries, Kind, Value};

impl Kept {
    /// The entries, with bare numbers in the unit of the job.
    #[must_use]
    pub fn as_entries(&self, unit: Unit) -> Entries {
        let mut entries = Entries::from_pairs(self.entries.iter().cloned());
        entries.set_unit(Some(unit));
        entries
    }
}

/// The kind of measure that a result can become, if it can become one.
///
/// Of a list of lengths, each one can be a length, and how many there are can be a number.
#[must_use]
pub fn kind_of(value: &Value) -> Option<MeasureKind> {
    match value {
        Value::Length(..) | Value::Lengths(_) => Some(MeasureKind::Length),
        Value::Count(_) | Value::Exact(..) | Value::Real(..) => Some(MeasureKind::Number),
        Value::Area(_) | Value::Words(_) => None,
    }
}

fn refuse<T>(why: &str) -> Result<T, MeasureProblem> {
    Err(MeasureProblem::Link(why.to_owned()))
}

impl Reckoned {
    /// What a linked measure comes to.
    pub(super) fn linked_value(
        &self,
        kind: MeasureKind,
        linked: &Linked,
    ) -> Result<Quantity, MeasureProblem> {
        let (Some(kept), Some(sheet)) = (self.kept_item(linked.kept), self.kept(linked.kept))
        else {
            return refuse(
                "The kept calculator that this came from is gone. Write a size instead.",
            );
        };
        let Some(calculator) = calculators::find(&kept.slug) else {
            return refuse(
                "The kept calculator that this came from is gone. Write a size instead.",
            );
        };
        let is_result = calculator.results.iter().any(|result| result.id == linked.result);
        if !is_result && let Some(value) = self.said(calculator, kept, linked) {
            return quantity(&value, kind, linked.index);
        }
        let Some(answer) = &sheet.answer else {
            return refuse(
                "The kept calculator that this comes from has no answer now. Open it to see why.",
            );
        };
        match result(answer, linked) {
            Some((value, index)) => quantity(value, kind, index),
            None => {
                refuse("The kept calculator does not give this result now. Open it to see why.")
            }
        }
    }

    /// What a field of the reckoning says, when it is asked and can be read.
    fn said(&self, calculator: &Calculator, kept: &Kept, linked: &Linked) -> Option<Value> {
        let field = calculator.fields.iter().find(|field| field.id == linked.result)?;
        let entries = kept.as_entries(self.unit());
        let mut ask = Ask::new(calculator.fields, &entries, self.bench(), self);
        if !ask.is_asked(field) {
            return None;
        }
        let nearest = crate::measure::Rounding::Nearest;
        match field.kind {
            Kind::Length(_) => ask.length(field).map(|it| Value::Length(it, nearest)),
            Kind::OptionalLength(_) => {
                ask.optional_length(field)?.map(|it| Value::Length(it, nearest))
            }
            Kind::Lengths => ask.lengths(field).map(Value::Lengths),
            Kind::Count { .. } => ask.count(field).map(|it| Value::Count(it.into())),
            _ => None,
        }
    }
}

/// The figure or cell that a link names, and which one of a list it wants.
fn result<'a>(answer: &'a Answer, linked: &Linked) -> Option<(&'a Value, u32)> {
    let mut figures = core::iter::once(&answer.headline).chain(&answer.figures);
    if let Some(figure) = figures.find(|figure| figure.id == linked.result) {
        return Some((&figure.value, linked.index));
    }
    let table = answer.tables.iter().find(|table| table.id == linked.result)?;
    let cell = table.rows.iter().flatten().nth(linked.index as usize)?;
    Some((cell, 0))
}

fn quantity(value: &Value, kind: MeasureKind, index: u32) -> Result<Quantity, MeasureProblem> {
    let too_large = "This number is too large to keep exactly.";
    match (value, kind) {
        (Value::Length(length, _), MeasureKind::Length) => Ok(Quantity::Length(*length)),
        (Value::Lengths(lengths), MeasureKind::Length) => match lengths.get(index as usize) {
            Some(length) => Ok(Quantity::Length(*length)),
            None => refuse("The kept calculator gives fewer marks now. Choose another one."),
        },
        (Value::Lengths(lengths), MeasureKind::Number) => i64::try_from(lengths.len())
            .map_or_else(|_| refuse(too_large), |n| plain(Number::whole(n))),
        (Value::Count(count), MeasureKind::Number) => {
            Number::ratio((*count).into(), 1).map_or_else(|_| refuse(too_large), plain)
        }
        (Value::Exact(number, ..), MeasureKind::Number) => plain(*number),
        // Physics has no exact value: what is shown is what is taken.
        (Value::Real(real, places, _), MeasureKind::Number) => {
            let shown = format!("{real:.0$}", usize::from(*places));
            match parse(&shown, &NoNames).and_then(|it| it.number(Unit::Inch, &NoNames)) {
                Ok(number) => plain(number),
                Err(_) => refuse(too_large),
            }
        }
        _ => refuse("This result is not of the kind that the measure wants."),
    }
}

fn plain(number: Number) -> Result<Quantity, MeasureProblem> {
    Ok(Quantity::Plain(number))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::job::tests::{job_of, measure};
    use crate::job::{Item, Job, Measure, Step, Written};
    use crate::measure::length;
    use crate::measure::text::decimal;
    use crate::sheet::Bench;

    fn value(slug: &str, entries: &[(&str, &str)], link: (&str, u32), kind: MeasureKind) -> String {
        let mut job = job_of(&[]);
        let entries = entries.iter().map(|(id, text)| ((*id).to_owned(), (*text).to_owned()));
        let (title, slug) = ("it".to_owned(), slug.to_owned());
        let kept = Kept { rank: 0, title, slug, entries: entries.collect(), left: Vec::new() };
        let change = job.adding(0, Item::Kept(kept));
        let kept = change.id;
        let linked = Linked { kept, result: link.0.to_owned(), index: link.1 };
        let it = Measure { kind, written: Written::Linked(linked), ..measure(0, "it", "") };
        let add = job.adding(1, Item::Measure(it));
        let id = add.id;
        job.make(&Step::new("keep", vec![change, add])).expect("fresh ids");
        shown(&job, id)
    }

    fn shown(job: &Job, id: crate::job::ItemId) -> String {
        let reckoned = Reckoned::of(job, &Bench::default());
        match &reckoned.measure(id).expect("this measure").planned {
            Ok(Quantity::Length(it)) => crate::measure::text::exact_text(*it),
            Ok(Quantity::Plain(it)) => decimal(*it, if it.is_whole() { 0 } else { 1 }),
            Ok(other) => panic!("{other:?}"),
            Err(problem) => problem.to_string(),
        }
    }

    #[test]
    fn a_measure_takes_a_figure_a_mark_a_cell_a_count_or_a_field() {
        use MeasureKind::{Length as L, Number as N};
        let top = [("planks", "5, 5 1/2, 5 1/4"), ("top_width", "16 1/4")];
        let rip = [("question", "slot"), ("loose_screws", "4, 6"), ("shrinks_by", "own")];
        assert_eq!(value("top", &top, ("plank_gap", 0), L), "1/4 in");
        assert_eq!(value("top", &top, ("left_edges", 2), L), "11 in");
        assert_eq!(value("top", &top, ("planks", 1), L), "5 1/2 in");
        assert_eq!(value("top", &top, ("planks", 0), N), "3");
        assert_eq!(value("top", &rip, ("slots", 3), L), "6 in");
        assert_eq!(
            value(
                "top",
                &[("question", "slot"), ("percent", "2.5"), ("shrinks_by", "own")],
                ("movement", 0),
                N
            ),
            "2.5"
        );
        assert_eq!(
            value("frame", &[("question", "support"), ("supports", "3")], ("supports", 0), N),
            "3"
        );
    }

    #[test]
    fn what_a_reckoning_does_not_give_says_so() {
        use MeasureKind::{Length as L, Number as N};
        let top = [("planks", "5, 5 1/2"), ("top_width", "11")];
        for (link, kind, words) in [
            (
                ("left_edges", 2),
                L,
                "The kept calculator gives fewer marks now. Choose another one.",
            ),
            (("plank_gap", 0), N, "This result is not of the kind that the measure wants."),
            (
                ("end_overhang", 0),
                L,
                "The kept calculator does not give this result now. Open it to see why.",
            ),
            // A field that is not asked says nothing.
            (
                ("base_length", 0),
                L,
                "The kept calculator does not give this result now. Open it to see why.",
            ),
            (
                ("slots", 9),
                L,
                "The kept calculator does not give this result now. Open it to see why.",
            ),
        ] {
            assert_eq!(value("top", &top, link, kind), words, "{link:?}");
        }
        let refused = value("top", &[("planks", "no")], ("plank_gap", 0), L);
        assert_eq!(
            refused,
            "The kept calculator that this comes from has no answer now. Open it to see why."
        );
    }

    /// Every result of every calculator that has a value of a fitting kind can become a measure.
    #[test]
    fn every_result_of_a_fresh_form_can_become_a_measure() {
        let mut n = 0;
        for calculator in calculators::ALL {
            let bench = Bench::default();
            let sheet = calculator.sheet(&Entries::default(), &bench, &NoNames);
            let Some(answer) = &sheet.answer else { continue };
            for figure in core::iter::once(&answer.headline).chain(&answer.figures) {
                let Some(kind) = kind_of(&figure.value) else { continue };
                let found = value(calculator.slug, &[], (figure.id, 0), kind);
                let is_value = match &figure.value {
                    Value::Length(it, _) => found == crate::measure::text::exact_text(*it),
                    Value::Lengths(it) => it.first().copied() == length(&found).ok(),
                    _ => found.starts_with(|c: char| c.is_ascii_digit() || "-−".contains(c)),
                };
                assert!(is_value, "{} {}: {found}", calculator.slug, figure.id);
                n += 1;
            }
        }
        assert!(n > 20, "{n}");
    }
}
