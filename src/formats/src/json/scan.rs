//! Where values begin and end in a JSON text (RFC 8259).

use std::borrow::Cow;

/// Deepest lists in lists that are read.
const DEEPEST: u32 = 60;

/// Whether a text is JSON, one value and nothing else.
///
/// # Errors
///
/// The byte at which it breaks off or goes wrong.
pub(crate) fn check(text: &str) -> Result<(), usize> {
    let mut scan = Scan { bytes: text.as_bytes(), at: 0 };
    let is_whole = scan.value(0).is_some();
    scan.space();
    if is_whole && scan.at == text.len() { Ok(()) } else { Err(scan.at) }
}

struct Scan<'a> {
    bytes: &'a [u8],
    at: usize,
}

impl Scan<'_> {
    fn peek(&self) -> Option<u8> {
        self.bytes.get(self.at).copied()
    }

    fn take(&mut self, byte: u8) -> Option<()> {
        (self.peek() == Some(byte)).then(|| self.at += 1)
    }

    fn space(&mut self) {
        while matches!(self.peek(), Some(b' ' | b'\t' | b'\n' | b'\r')) {
            self.at += 1;
        }
    }

    /// Goes over a value. `None` with the place at what is wrong.
    fn value(&mut self, depth: u32) -> Option<()> {
        self.space();
        match self.peek()? {
            b'"' => self.string(),
            b'{' => self.list(depth, b'}', true),
            b'[' => self.list(depth, b']', false),
            b't' => self.word(b"true"),
            b'f' => self.word(b"false"),
            b'n' => self.word(b"null"),
            _ => self.number(),
        }
    }

    fn list(&mut self, depth: u32, end: u8, is_record: bool) -> Option<()> {
        if depth >= DEEPEST {
            return None;
        }
        self.at += 1;
        self.space();
        if self.take(end).is_some() {
            return Some(());
        }
        loop {
            if is_record {
                self.space();
                self.string()?;
                self.space();
                self.take(b':')?;
            }
            self.value(depth + 1)?;
            self.space();
            if self.take(end).is_some() {
                return Some(());
            }
            self.take(b',')?;
        }
    }

    fn word(&mut self, word: &[u8]) -> Option<()> {
        word.iter().try_for_each(|byte| self.take(*byte))
    }

    fn digits(&mut self) -> Option<()> {
        self.peek().filter(u8::is_ascii_digit)?;
        while self.peek().is_some_and(|byte| byte.is_ascii_digit()) {
            self.at += 1;
        }
        Some(())
    }

    fn number(&mut self) -> Option<()> {
        self.take(b'-');
        if self.take(b'0').is_none() {
            self.digits()?;
        }
        if self.take(b'.').is_some() {
            self.digits()?;
        }
        if self.take(b'e').or_else(|| self.take(b'E')).is_some() {
            self.take(b'+').or_else(|| self.take(b'-'));
            self.digits()?;
        }
        Some(())
    }

    fn string(&mut self) -> Option<()> {
        self.take(b'"')?;
        loop {
            match self.peek()? {
                b'"' => {
                    self.at += 1;
                    return Some(());
                }
                b'\\' => {
                    self.at += 1;
                    self.escape()?;
                }
                byte if byte < 0x20 => return None,
                _ => self.at += 1,
            }
        }
    }

    /// What follows a backslash.
    fn escape(&mut self) -> Option<()> {
        match self.peek()? {
            b'"' | b'\\' | b'/' | b'b' | b'f' | b'n' | b'r' | b't' => {
                self.at += 1;
                Some(())
            }
            b'u' => {
                self.at += 1;
                let first = self.four()?;
                if (0xD800..0xDC00).contains(&first) {
                    self.take(b'\\')?;
                    self.take(b'u')?;
                    let second = self.four()?;
                    return (0xDC00..0xE000).contains(&second).then_some(());
                }
                (!(0xDC00..0xE000).contains(&first)).then_some(())
            }
            _ => None,
        }
    }

    fn four(&mut self) -> Option<u32> {
        let digits = self.bytes.get(self.at..self.at.saturating_add(4))?;
        let mut number = 0;
        for digit in digits {
            number = number * 16 + char::from(*digit).to_digit(16)?;
            self.at += 1;
        }
        Some(number)
    }
}

/// The values of a list, as they stand in a text that was [`check`]ed. None for what is no list.
pub(crate) fn elements(raw: &str) -> Elements<'_> {
    Elements::of(raw, b'[')
}

/// The first value of that name in a record. `None` also for what is no record.
pub(crate) fn member<'a>(raw: &'a str, name: &str) -> Option<&'a str> {
    members(raw).find(|(known, _)| unquoted(known) == name).map(|(_, value)| value)
}

/// The names, in their quotes, and the values of a record.
pub(crate) fn members(raw: &str) -> impl Iterator<Item = (&str, &str)> {
    let mut all = Elements::of(raw, b'{');
    core::iter::from_fn(move || Some((all.next()?, all.next()?)))
}

pub(crate) struct Elements<'a> {
    raw: &'a str,
    scan: Scan<'a>,
}

impl<'a> Elements<'a> {
    fn of(raw: &'a str, begin: u8) -> Elements<'a> {
        let mut scan = Scan { bytes: raw.as_bytes(), at: 0 };
        scan.space();
        if scan.take(begin).is_none() {
            scan.at = raw.len();
        }
        Elements { raw, scan }
    }
}

impl<'a> Iterator for Elements<'a> {
    type Item = &'a str;

    fn next(&mut self) -> Option<&'a str> {
        self.scan.space();
        if matches!(self.scan.peek()?, b',' | b':') {
            self.scan.at += 1;
            self.scan.space();
        }
        let from = self.scan.at;
        self.scan.value(0)?;
        self.raw.get(from..self.scan.at)
    }
}

/// A text without its quotes and escapes.
pub(crate) fn unquoted(raw: &str) -> Cow<'_, str> {
    let inner = raw.strip_prefix('"').and_then(|raw| raw.strip_suffix('"')).unwrap_or(raw);
    if !inner.contains('\\') {
        return Cow::Borrowed(inner);
    }
    let mut out = String::with_capacity(inner.len());
    let mut chars = inner.chars();
    while let Some(c) = chars.next() {
        let c = match (c, chars.as_str().as_bytes().first()) {
            ('\\', Some(b'u')) => escaped_code(&mut chars),
            ('\\', _) => match chars.next().unwrap_or('\\') {
                'b' => '\u{8}',
                'f' => '\u{c}',
                'n' => '\n',
                'r' => '\r',
                't' => '\t',
                c => c,
            },
            (c, _) => c,
        };
        out.push(c);
    }
    out.shrink_to_fit();
    Cow::Owned(out)
}

/// The character of `u1F0A`, or of two such that stand for one.
fn escaped_code(chars: &mut core::str::Chars) -> char {
    let mut four = |before: usize| {
        let digits = chars.as_str().get(before..before.saturating_add(4)).unwrap_or("");
        let code = u32::from_str_radix(digits, 16).unwrap_or(0);
        chars.nth(before.saturating_add(3));
        code
    };
    let mut code = four(1);
    if (0xD800..0xDC00).contains(&code) {
        code = 0x10000 + ((code & 0x3FF) << 10) + (four(2) & 0x3FF);
    }
    char::from_u32(code).unwrap_or(char::REPLACEMENT_CHARACTER)
}
