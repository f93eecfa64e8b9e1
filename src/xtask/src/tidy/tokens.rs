//! The custom properties of the style sheets: each that is used is made, and each that is made is used.

use std::collections::BTreeMap;

/// Where each name stands first, as "path:line".
type Places = BTreeMap<String, String>;

/// The custom properties of all style sheets.
#[derive(Default)]
pub(super) struct Tokens {
    made: Places,
    used: Places,
}

impl Tokens {
    /// Reads one style sheet.
    pub(super) fn read(&mut self, path: &str, text: &str) {
        for (line, number) in text.lines().zip(1..) {
            for (at, _) in line.match_indices("--") {
                let (before, name) = (&line[..at], name(&line[at..]));
                let place = || format!("{path}:{number}");
                if before.ends_with("var(") {
                    self.used.entry(name.to_owned()).or_insert_with(place);
                } else if line[at + name.len()..].starts_with(':')
                    && before
                        .chars()
                        .next_back()
                        .is_none_or(|c| c.is_whitespace() || "{;".contains(c))
                {
                    self.made.entry(name.to_owned()).or_insert_with(place);
                }
            }
        }
    }

    /// Every name that is used and not made, or made and not used.
    pub(super) fn breaches(&self) -> Vec<String> {
        let lone = |these: &Places, those: &Places, what: &str| -> Vec<String> {
            let lone = these.iter().filter(|(name, _)| !those.contains_key(*name));
            lone.map(|(name, place)| format!("{place}: {name} {what}")).collect()
        };
        let mut all = lone(&self.used, &self.made, "is used and nowhere made");
        all.extend(lone(&self.made, &self.used, "is made and nowhere used"));
        all
    }
}

/// The name that a text begins with.
fn name(text: &str) -> &str {
    let end = text.find(|c: char| !(c.is_ascii_alphanumeric() || c == '-')).unwrap_or(text.len());
    &text[..end]
}

#[cfg(test)]
mod tests {
    use super::Tokens;

    fn breaches(text: &str) -> Vec<String> {
        let mut tokens = Tokens::default();
        tokens.read("a.css", text);
        tokens.breaches()
    }

    #[test]
    fn a_name_is_both_made_and_used() {
        let fine = ":root { --ink: #000; --ink-soft:#555 }\n.a--b:hover { color: var(--ink); fill: var(--ink-soft, red); }";
        assert_eq!(breaches(fine), Vec::<String>::new());
        assert_eq!(
            breaches(".a { color: var(--ink); }"),
            ["a.css:1: --ink is used and nowhere made"]
        );
        assert_eq!(
            breaches("\n:root { --ink: #000 }"),
            ["a.css:2: --ink is made and nowhere used"]
        );
    }
}
