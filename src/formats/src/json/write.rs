//! Values written by their tables, with or without spaces.

use core::fmt::Write;

use super::table::{Field, Need};

/// A text in the making.
#[derive(Default)]
pub(crate) struct Writer {
    pub(crate) out: String,
    /// On lines of their own, with spaces before them.
    is_indented: bool,
    depth: usize,
    is_first: bool,
}

impl Writer {
    pub(crate) fn new(is_indented: bool) -> Writer {
        Writer { is_indented, ..Writer::default() }
    }

    fn line(&mut self) {
        if self.is_indented {
            self.out.push('\n');
            for _ in 0..self.depth {
                self.out.push_str("  ");
            }
        }
    }

    /// Before a value of a list.
    fn item(&mut self) {
        if !self.is_first {
            self.out.push(',');
        }
        self.is_first = false;
        self.line();
    }

    fn around(&mut self, ends: [char; 2], within: impl FnOnce(&mut Writer)) {
        let [begin, end] = ends;
        self.out.push(begin);
        self.depth = self.depth.saturating_add(1);
        self.is_first = true;
        within(self);
        self.depth = self.depth.saturating_sub(1);
        if !self.is_first {
            self.line();
        }
        self.is_first = false;
        self.out.push(end);
    }

    pub(crate) fn text(&mut self, text: &str) {
        self.out.push('"');
        let mut plain = 0;
        for (at, byte) in text.bytes().enumerate() {
            if byte >= 0x20 && byte != b'"' && byte != b'\\' {
                continue;
            }
            self.out.push_str(text.get(plain..at).unwrap_or(""));
            plain = at.saturating_add(1);
            match byte {
                b'"' => self.out.push_str("\\\""),
                b'\\' => self.out.push_str("\\\\"),
                b'\n' => self.out.push_str("\\n"),
                b'\r' => self.out.push_str("\\r"),
                b'\t' => self.out.push_str("\\t"),
                // A text takes anything.
                other => {
                    let _written = write!(self.out, "\\u{other:04x}");
                }
            }
        }
        self.out.push_str(text.get(plain..).unwrap_or(""));
        self.out.push('"');
    }

    pub(crate) fn flag(&mut self, yes: bool) {
        self.out.push_str(if yes { "true" } else { "false" });
    }

    pub(crate) fn int(&mut self, number: impl TryInto<i128>) {
        self.number(number.try_into().unwrap_or(0));
    }

    fn number(&mut self, number: i128) {
        // A text takes anything.
        let _written = write!(self.out, "{number}");
    }

    pub(crate) fn list<T>(&mut self, all: &[T], mut one: impl FnMut(&mut Writer, &T)) {
        self.around(['[', ']'], |w| {
            for it in all {
                w.item();
                one(w, it);
            }
        });
    }

    /// Values in a row.
    pub(crate) fn row(&mut self, values: &mut [&mut dyn FnMut(&mut Writer)]) {
        self.around(['[', ']'], |w| {
            for value in values {
                w.item();
                value(w);
            }
        });
    }

    pub(crate) fn row_of_ints(&mut self, numbers: [i64; 2]) {
        self.list(&numbers, |w, number| w.int(*number));
    }

    pub(crate) fn record(&mut self, fields: &'static [Field], fill: impl FnOnce(&mut Fields)) {
        self.around(['{', '}'], |w| fill(&mut Fields { w, fields, at: 0 }));
    }

    /// A case with what is said of it.
    pub(crate) fn case(&mut self, name: &str, value: impl FnOnce(&mut Writer)) {
        self.around(['{', '}'], |w| {
            w.name(name);
            value(w);
        });
    }

    fn name(&mut self, name: &str) {
        self.item();
        self.out.push('"');
        self.out.push_str(name);
        self.out.push_str(if self.is_indented { "\": " } else { "\":" });
    }
}

/// The fields of a record that are still to come, in the order of their table.
pub(crate) struct Fields<'w> {
    w: &'w mut Writer,
    fields: &'static [Field],
    at: usize,
}

impl Fields<'_> {
    /// The next field, where something is to be written.
    fn next(&mut self, is_nothing: bool) -> Option<&mut Writer> {
        let field = self.fields.get(self.at)?;
        self.at += 1;
        if is_nothing && field.need == Need::May {
            return None;
        }
        self.w.name(field.name);
        Some(self.w)
    }

    /// A field that stands in no table.
    pub(crate) fn besides(&mut self, name: &str, value: impl FnOnce(&mut Writer)) {
        self.w.name(name);
        value(self.w);
    }

    /// The rest goes by another table.
    pub(crate) fn go_on_with(&mut self, fields: &'static [Field]) {
        (self.fields, self.at) = (fields, 0);
    }

    pub(crate) fn text(&mut self, text: &str) {
        if let Some(w) = self.next(text.is_empty()) {
            w.text(text);
        }
    }

    pub(crate) fn maybe_text(&mut self, text: Option<&str>) {
        self.value(text, |w, text| w.text(text));
    }

    pub(crate) fn flag(&mut self, yes: bool) {
        if let Some(w) = self.next(!yes) {
            w.flag(yes);
        }
    }

    pub(crate) fn int(&mut self, number: impl TryInto<i128>) {
        let number = number.try_into().unwrap_or(0);
        if let Some(w) = self.next(number == 0) {
            w.number(number);
        }
    }

    pub(crate) fn maybe_int<T: TryInto<i128>>(&mut self, number: Option<T>) {
        self.value(number, |w, number| w.int(number));
    }

    pub(crate) fn list<T>(&mut self, all: &[T], one: impl FnMut(&mut Writer, &T)) {
        if let Some(w) = self.next(all.is_empty()) {
            w.list(all, one);
        }
    }

    /// A field that is there or not.
    pub(crate) fn value<T>(&mut self, value: Option<T>, write: impl FnOnce(&mut Writer, T)) {
        match value {
            Some(value) => {
                if let Some(w) = self.next(false) {
                    write(w, value);
                }
            }
            None => {
                if let Some(w) = self.next(true) {
                    w.out.push_str("null");
                }
            }
        }
    }
}
