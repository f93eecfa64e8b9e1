//! Values read where they lie in the text, within the limits of their tables.

use core::cell::RefCell;
use core::fmt;

use super::scan::{elements, members, unquoted};
use super::table::{Field, Kind, KindOf, Need};

/// What is wrong with a value.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) enum Fault {
    /// A field is not there.
    Missing(&'static str),
    /// A field is of another kind, or there twice.
    Wrong(&'static str),
    /// A text has more characters than it may have.
    TooLong(usize),
    /// A list is longer than it may be.
    TooMany(&'static str, usize),
    /// A number is too small or too large.
    OutOfRange(&'static str),
    /// It names something by its place where nothing is.
    NotThere(&'static str),
    /// Its `kind` is none of those known.
    Kind,
    /// A rule that no table tells.
    Said(String),
}

impl fmt::Display for Fault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Fault::Missing(what) => write!(f, "its {what} is missing"),
            Fault::Wrong(what) => write!(f, "its {what} cannot be read"),
            Fault::TooLong(most) => write!(f, "a text in it is longer than {most} characters"),
            Fault::TooMany(what, most) => write!(f, "it has more than {most} {what}"),
            Fault::OutOfRange(what) => write!(f, "its {what} is out of range"),
            Fault::NotThere(what) => write!(f, "it names a {what} that is not there"),
            Fault::Kind => f.write_str("this app knows nothing of its kind"),
            Fault::Said(words) => f.write_str(words),
        }
    }
}

/// The first thing that was wrong. Reading goes on with nothing in its place, and whoever reads
/// asks at the end.
#[derive(Default)]
pub(crate) struct Faults(RefCell<Option<Fault>>);

impl Faults {
    pub(crate) fn add(&self, fault: Fault) {
        self.0.borrow_mut().get_or_insert(fault);
    }

    fn is_any(&self) -> bool {
        self.0.borrow().is_some()
    }

    /// What was read, if all of it could be.
    pub(crate) fn or<T>(self, read: T) -> Result<T, Fault> {
        self.0.into_inner().map_or(Ok(read), Err)
    }
}

/// A value in the text.
#[derive(Clone, Copy)]
pub(crate) struct Value<'a> {
    pub(crate) raw: &'a str,
    kind: Kind,
    /// Of the field that it stands in.
    name: &'static str,
    pub(crate) faults: &'a Faults,
}

impl<'a> Value<'a> {
    pub(crate) fn new(raw: &'a str, kind: Kind, name: &'static str, faults: &'a Faults) -> Self {
        Value { raw, kind, name, faults }
    }

    fn wrong(&self) {
        self.faults.add(Fault::Wrong(self.name));
    }

    fn with(&self, raw: &'a str, kind: Kind) -> Value<'a> {
        Value { raw, kind, ..*self }
    }

    pub(crate) fn text(&self) -> String {
        let (Kind::Text(most), true) = (self.kind, self.raw.starts_with('"')) else {
            self.wrong();
            return String::new();
        };
        let text = unquoted(self.raw);
        if text.len() > most && text.chars().count() > most {
            self.faults.add(Fault::TooLong(most));
            return String::new();
        }
        text.into_owned()
    }

    pub(crate) fn flag(&self) -> bool {
        if !matches!(self.raw, "true" | "false") {
            self.wrong();
        }
        self.raw == "true"
    }

    fn whole(&self) -> i128 {
        let (Kind::Whole(least, most), Ok(number)) = (self.kind, self.raw.parse::<i128>()) else {
            self.wrong();
            return 0;
        };
        if !(least..=most).contains(&number) {
            self.faults.add(Fault::OutOfRange(self.name));
            return 0;
        }
        number
    }

    /// A whole number. The type holds what the table allows.
    pub(crate) fn int<T: TryFrom<i128> + Default>(&self) -> T {
        T::try_from(self.whole()).unwrap_or_default()
    }

    /// Which of the words of its table it is.
    pub(crate) fn word(&self) -> usize {
        let found = match self.kind {
            Kind::Word(words) if self.raw.starts_with('"') => {
                words.iter().position(|word| *word == unquoted(self.raw))
            }
            _ => None,
        };
        if found.is_none() {
            self.wrong();
        }
        found.unwrap_or_default()
    }

    /// The values of a list; none where it is longer than it may be. They are counted before any
    /// is kept.
    pub(crate) fn list<T>(&self, mut one: impl FnMut(Value<'a>) -> T) -> Vec<T> {
        let count = self.count();
        let Kind::List(kind, _) = self.kind else { return Vec::new() };
        let mut all = Vec::with_capacity(count);
        all.extend(elements(self.raw).take(count).map(|raw| one(self.with(raw, *kind))));
        all
    }

    /// The values of a list of which one takes far more room than its shortest text: each is read
    /// and let go once before any is kept.
    pub(crate) fn list_of_large<T>(&self, one: impl Fn(Value<'a>) -> T) -> Vec<T> {
        let count = self.count();
        let Kind::List(kind, _) = self.kind else { return Vec::new() };
        let is_sound = elements(self.raw).take(count).all(|raw| {
            drop(one(self.with(raw, *kind)));
            !self.faults.is_any()
        });
        if is_sound { self.list(one) } else { Vec::new() }
    }

    /// How many values a list has; 0 where it is longer than it may be.
    pub(crate) fn count(&self) -> usize {
        let (Kind::List(_, most), true) = (self.kind, self.raw.starts_with('[')) else {
            self.wrong();
            return 0;
        };
        let count = elements(self.raw).take(most.saturating_add(1)).count();
        if count > most {
            self.faults.add(Fault::TooMany(self.name, most));
            return 0;
        }
        count
    }

    /// The values of a row, one after the other.
    pub(crate) fn row(&self) -> Row<'a> {
        let kinds = match self.kind {
            Kind::Row(kinds) => kinds,
            _ => &[],
        };
        if !self.raw.starts_with('[') || elements(self.raw).count() != kinds.len() {
            self.wrong();
        }
        Row { value: *self, kinds, at: 0 }
    }

    pub(crate) fn record(&self) -> Record<'a> {
        match self.kind {
            Kind::Record(fields) => Record::open(fields, *self),
            _ => Record::open(&[], *self),
        }
    }

    /// Which of the kinds a record is of, with the record.
    pub(crate) fn kind(&self) -> Option<(&'static KindOf, Record<'a>)> {
        let Kind::Kinds(kinds) = self.kind else { return None };
        let name = super::member(self.raw, "kind").map(unquoted);
        let kind = name.and_then(|name| kinds.iter().find(|kind| kind.name == name));
        if kind.is_none() {
            self.faults.add(Fault::Kind);
        }
        kind.map(|kind| (kind, Record::open(kind.fields, *self)))
    }

    /// Which case it is, with what is said of it.
    pub(crate) fn case(&self) -> Option<(&'static str, Option<Value<'a>>)> {
        let Kind::Case(cases) = self.kind else { return None };
        let (name, value) = if self.raw.starts_with('"') {
            (self.raw, None)
        } else {
            let mut all = members(self.raw);
            let first = all.next().map(|(name, value)| (name, Some(value)));
            first.filter(|_| all.next().is_none()).unwrap_or(("", None))
        };
        let name = unquoted(name);
        let found = cases.iter().find(|(known, _)| *known == name);
        match (found, value) {
            (Some((name, Some(Kind::Maybe(_)))), Some("null")) | (Some((name, None)), None) => {
                Some((name, None))
            }
            (Some((name, Some(kind))), Some(value)) => {
                let kind = if let Kind::Maybe(kind) = kind { **kind } else { *kind };
                Some((name, Some(self.with(value, kind))))
            }
            _ => {
                self.wrong();
                None
            }
        }
    }
}

/// The values of a row that are still to come.
pub(crate) struct Row<'a> {
    value: Value<'a>,
    kinds: &'static [Kind],
    at: usize,
}

impl<'a> Row<'a> {
    pub(crate) fn next(&mut self) -> Option<Value<'a>> {
        let kind = self.kinds.get(self.at)?;
        let raw = elements(self.value.raw).nth(self.at)?;
        self.at += 1;
        Some(self.value.with(raw, *kind))
    }

    pub(crate) fn text(&mut self) -> String {
        self.next().map(|value| value.text()).unwrap_or_default()
    }

    pub(crate) fn int<T: TryFrom<i128> + Default>(&mut self) -> T {
        self.next().map(|value| value.int()).unwrap_or_default()
    }
}

/// The fields of a record that are still to come, in the order of their table.
pub(crate) struct Record<'a> {
    fields: &'static [Field],
    values: Vec<Option<&'a str>>,
    at: usize,
    value: Value<'a>,
}

impl<'a> Record<'a> {
    fn open(fields: &'static [Field], value: Value<'a>) -> Record<'a> {
        let mut values = vec![None; fields.len()];
        if !value.raw.starts_with('{') {
            value.wrong();
        }
        for (name, raw) in members(value.raw) {
            let name = unquoted(name);
            let Some(at) = fields.iter().position(|field| field.name == name) else { continue };
            if let (Some(place), Some(field)) = (values.get_mut(at), fields.get(at)) {
                if place.is_some() {
                    value.faults.add(Fault::Wrong(field.name));
                }
                *place = (raw != "null").then_some(raw);
            }
        }
        Record { fields, values, at: 0, value }
    }

    /// The next field, where it is there.
    pub(crate) fn next(&mut self) -> Option<Value<'a>> {
        let (field, raw) = (self.fields.get(self.at)?, *self.values.get(self.at)?);
        self.at += 1;
        if raw.is_none() && field.need == Need::Must {
            self.value.faults.add(Fault::Missing(field.name));
        }
        raw.map(|raw| Value { raw, kind: field.kind, name: field.name, ..self.value })
    }

    pub(crate) fn text(&mut self) -> String {
        self.maybe_text().unwrap_or_default()
    }

    pub(crate) fn maybe_text(&mut self) -> Option<String> {
        self.next().map(|value| value.text())
    }

    pub(crate) fn flag(&mut self) -> bool {
        self.next().is_some_and(|value| value.flag())
    }

    pub(crate) fn int<T: TryFrom<i128> + Default>(&mut self) -> T {
        self.maybe_int().unwrap_or_default()
    }

    pub(crate) fn maybe_int<T: TryFrom<i128> + Default>(&mut self) -> Option<T> {
        self.next().map(|value| value.int())
    }

    pub(crate) fn word(&mut self) -> usize {
        self.next().map(|value| value.word()).unwrap_or_default()
    }

    pub(crate) fn list<T>(&mut self, one: impl FnMut(Value<'a>) -> T) -> Vec<T> {
        self.next().map(|value| value.list(one)).unwrap_or_default()
    }
}
