//! [`Trial`]: what the tests of the calculators' fields share.

use super::calculator::Calculator;
use crate::measure::text::NoNames;
use crate::measure::{Length, length};
use crate::sheet::{Answer, Bench, Entries, Figure, Sheet, Value};

/// A calculator put on trial through its fields.
pub(crate) struct Trial(pub(crate) &'static Calculator);

/// A length of a test, in inches.
#[track_caller]
pub(crate) fn inches(text: &str) -> Length {
    length(text).expect("a length in a test")
}

/// The figure with this id, if it is there.
pub(crate) fn find(answer: &Answer, id: &str) -> Option<Figure> {
    let all = core::iter::once(&answer.headline).chain(&answer.figures);
    all.into_iter().find(|figure| figure.id == id).cloned()
}

/// The figure with this id.
#[track_caller]
pub(crate) fn figure(answer: &Answer, id: &str) -> Figure {
    find(answer, id).unwrap_or_else(|| panic!("no figure {id}"))
}

impl Trial {
    /// What is said to these entries.
    pub(crate) fn ask(&self, pairs: &[(&str, &str)]) -> Sheet {
        self.0.sheet(&Entries::from_pairs(pairs.iter().copied()), &Bench::default(), &NoNames)
    }

    /// The answer to these entries.
    #[track_caller]
    pub(crate) fn answer(&self, pairs: &[(&str, &str)]) -> Answer {
        let sheet = self.ask(pairs);
        sheet.answer.unwrap_or_else(|| panic!("refused: {:?}", sheet.refusals))
    }

    /// Figures by id: lengths as written, words and counts as text.
    #[track_caller]
    pub(crate) fn check(&self, pairs: &[(&str, &str)], expected: &[(&str, &str)]) {
        let answer = self.answer(pairs);
        for (id, text) in expected {
            match figure(&answer, id).value {
                Value::Length(length, _) => assert_eq!(length, inches(text), "{id}"),
                Value::Words(words) => assert_eq!(words.to_string(), *text, "{id}"),
                Value::Count(count) => assert_eq!(count.to_string(), *text, "{id}"),
                other => panic!("{id}: {other:?}"),
            }
        }
    }

    /// One of the notes.
    #[track_caller]
    pub(crate) fn check_note(&self, pairs: &[(&str, &str)], note: &str) {
        let notes: Vec<_> = self.answer(pairs).notes.iter().map(ToString::to_string).collect();
        assert!(notes.iter().any(|n| n == note), "{notes:?}");
    }

    /// The one refusal: its field, its words, and what its way out sets.
    #[track_caller]
    pub(crate) fn check_refusal(
        &self,
        pairs: &[(&str, &str)],
        field: &str,
        sentence: &str,
        way_out: &str,
        set: &[(&str, &str)],
    ) {
        let refusals = self.ask(pairs).refusals;
        assert_eq!(refusals.len(), 1, "{refusals:?}");
        let refusal = &refusals[0];
        assert_eq!((refusal.field, refusal.sentence.to_string().as_str()), (field, sentence));
        let out = refusal.way_out.as_ref().expect("a way out");
        assert_eq!(out.sentence.to_string(), way_out);
        let given = out.texts(Bench::default().tape);
        let given: Vec<_> = given.iter().map(|(id, text)| (*id, text.as_str())).collect();
        assert_eq!(given, set);
    }
}
