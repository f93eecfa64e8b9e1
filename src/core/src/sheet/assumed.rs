//! [`Assumed`]: the sizes of ours that an answer rests on.

use super::{Bench, Field, Kind, Start};

/// Most sizes that are named on a line before the others are counted.
const MOST_NAMED: usize = 3;

/// The fields whose text is ours and not the person's, of all that an answer was worked out from.
///
/// A field is the person's once it has a text of its own, be it typed, chosen, confirmed or
/// brought by a link, and one that starts from the settings once that is set there. An answer
/// that rests on nothing of ours is the same whatever our examples are.
#[derive(Clone, Debug, Default)]
pub struct Assumed(Vec<&'static Field>);

impl Assumed {
    /// Those of `fields` that were read without a text of their own.
    pub(super) fn of(fields: &'static [Field], read: &[&str]) -> Assumed {
        Assumed(fields.iter().filter(|field| read.contains(&field.id)).collect())
    }

    /// Whether all is the person's.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.0.is_empty()
    }

    /// Each of them, in the order asked.
    pub fn fields(&self) -> impl Iterator<Item = &'static Field> + '_ {
        self.0.iter().copied()
    }

    /// Whether a field is one of them.
    #[must_use]
    pub fn has(&self, id: &str) -> bool {
        self.fields().any(|field| field.id == id)
    }

    /// `3 sizes`, `1 size`; `3 examples` where one of them is chosen, which is no size.
    #[must_use]
    pub fn counted(&self) -> String {
        if self.has_choices() { self.examples() } else { many(self.0.len(), "size") }
    }

    /// For the page: `Not your sizes yet: length, at most, first mark`, or `Not yours yet` where one of them is chosen.
    /// More than three are named in part.
    #[must_use]
    pub fn line(&self) -> Option<String> {
        let names: Vec<String> = self.fields().map(Field::in_line).collect();
        let what = match (self.has_choices(), names.len()) {
            (true, _) => "yours",
            (false, 1) => "your size",
            (false, _) => "your sizes",
        };
        named(what, &names.iter().map(String::as_str).collect::<Vec<_>>())
    }

    /// For what leaves the page, such as a copy or paper: `from 2 example sizes: kerf, blade reach`.
    #[must_use]
    pub fn noted(&self) -> Option<String> {
        let names: Vec<String> = self.fields().map(Field::in_line).collect();
        (!self.is_empty()).then(|| format!("from {}: {}", self.examples(), names.join(", ")))
    }

    /// For a voice: `Rests on 3 example sizes.`
    #[must_use]
    pub fn spoken(&self) -> Option<String> {
        (!self.is_empty()).then(|| format!("Rests on {}.", self.examples()))
    }

    /// `3 example sizes`; `3 examples` where one of them is chosen.
    fn examples(&self) -> String {
        many(self.0.len(), if self.has_choices() { "example" } else { "example size" })
    }

    fn has_choices(&self) -> bool {
        self.fields().any(|it| matches!(it.kind, Kind::Choice(_) | Kind::YesNo))
    }
}

/// `Not your sizes yet: length, at most, first mark`, or `length, kerf and 3 more`; `None` where all are.
#[must_use]
pub fn not_yours(names: &[&str]) -> Option<String> {
    named(if names.len() == 1 { "your size" } else { "your sizes" }, names)
}

fn named(what: &str, names: &[&str]) -> Option<String> {
    (!names.is_empty()).then(|| format!("Not {what} yet: {}", in_short(names)))
}

/// `length, at most, first mark`; of more than three, `length, at most and 2 more`.
#[must_use]
pub fn in_short(names: &[&str]) -> String {
    let is_long = names.len() > MOST_NAMED;
    let count = if is_long { MOST_NAMED.saturating_sub(1) } else { MOST_NAMED };
    let named = names.iter().take(count).copied().collect::<Vec<_>>().join(", ");
    match names.len().saturating_sub(count) {
        0 => named,
        more => format!("{named} and {more} more"),
    }
}

fn many(count: usize, what: &str) -> String {
    format!("{count} {what}{}", if count == 1 { "" } else { "s" })
}

impl Field {
    /// Its label within a sentence: `first mark`.
    #[must_use]
    pub fn in_line(&self) -> String {
        let mut letters = self.label.chars();
        match letters.next() {
            Some(first) => first.to_lowercase().chain(letters).collect(),
            None => String::new(),
        }
    }

    /// Whether what stands in a fresh form is an example of ours, which an answer would rest on.
    /// Nothing is none, nor is a question, nor what leaves the thing out.
    #[must_use]
    pub fn is_ours(&self, bench: &Bench) -> bool {
        match self.start {
            Start::Question(_) | Start::Without(_) | Start::Reading => false,
            Start::Text(text) | Start::Inches(text) => !text.is_empty(),
            Start::Kerf => !bench.own.kerf,
            Start::BladeReach => !bench.own.blade_reach,
            Start::ThinnestStrip => !bench.own.thinnest_strip,
            Start::Fence => !bench.own.fence,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::sheet::Kind;

    const FIELDS: &[Field] = &[
        Field::new("a", "Length", "", Kind::ABOVE_ZERO, Start::Inches("1")),
        Field::new("b", "At most", "", Kind::ABOVE_ZERO, Start::Inches("1")),
        Field::new("c", "First mark", "", Kind::ABOVE_ZERO, Start::Inches("1")),
        Field::new("d", "Kerf", "", Kind::ABOVE_ZERO, Start::Kerf),
        Field::new("wood", "Wood", "", Kind::Choice(&[]), Start::Text("oak")),
        Field::new("wet", "Wet in use", "", Kind::YesNo, Start::Text("yes")),
    ];

    fn check(read: &[&str], line: Option<&str>, noted: Option<&str>, spoken: Option<&str>) {
        let assumed = Assumed::of(FIELDS, read);
        assert_eq!(assumed.line().as_deref(), line);
        assert_eq!(assumed.noted().as_deref(), noted);
        assert_eq!(assumed.spoken().as_deref(), spoken);
    }

    /// The sentences are those of the design note, sections 2, 9 and 12.
    #[test]
    fn what_is_not_the_persons_is_named_in_the_order_asked() {
        check(&[], None, None, None);
        check(
            &["d"],
            Some("Not your size yet: kerf"),
            Some("from 1 example size: kerf"),
            Some("Rests on 1 example size."),
        );
        check(
            &["c", "a", "b"],
            Some("Not your sizes yet: length, at most, first mark"),
            Some("from 3 example sizes: length, at most, first mark"),
            Some("Rests on 3 example sizes."),
        );
        check(
            &["d", "c", "b", "a"],
            Some("Not your sizes yet: length, at most and 2 more"),
            Some("from 4 example sizes: length, at most, first mark, kerf"),
            Some("Rests on 4 example sizes."),
        );
        assert_eq!(Assumed::of(FIELDS, &["a", "b"]).counted(), "2 sizes");
    }

    /// What is chosen or said yes to is no size, and is not counted as one.
    #[test]
    fn a_choice_is_no_size() {
        check(
            &["wood"],
            Some("Not yours yet: wood"),
            Some("from 1 example: wood"),
            Some("Rests on 1 example."),
        );
        check(
            &["a", "b", "wood", "wet"],
            Some("Not yours yet: length, at most and 2 more"),
            Some("from 4 examples: length, at most, wood, wet in use"),
            Some("Rests on 4 examples."),
        );
        assert_eq!(Assumed::of(FIELDS, &["a", "b", "wet"]).counted(), "3 examples");
    }
}
