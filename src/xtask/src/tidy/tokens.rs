//! The custom properties of the style sheets: each that is used is made, and each that is made is used; and the room
//! between things is one of them.

use std::collections::BTreeMap;

/// Where each name stands first, as "path:line".
type Places = BTreeMap<String, String>;

/// The custom properties of all style sheets.
#[derive(Default)]
pub(super) struct Tokens {
    made: Places,
    used: Places,
    /// Room that is written as a number, and where.
    raw: Vec<String>,
}

/// Most pixels of room that are no step of the scale: a hair between a line and what stands on it.
const HAIR: f64 = 3.0;

impl Tokens {
    /// Reads one style sheet.
    pub(super) fn read(&mut self, path: &str, text: &str) {
        for (line, number) in text.lines().zip(1..) {
            self.raw.extend(raw_room(line).map(|it| {
                format!(
                    "{path}:{number}: {it} is room that is no step of the scale (--s-4 to --s-32)"
                )
            }));
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
        all.extend(self.raw.iter().cloned());
        all
    }
}

/// The pixels of gaps, padding and margins in a line, beyond a hair.
fn raw_room(line: &str) -> impl Iterator<Item = &str> {
    let declarations = line.split([';', '{', '}']).filter_map(|it| it.split_once(':'));
    let of_room = declarations.filter(|(property, _)| {
        let mut parts = property.trim().split('-');
        parts.any(|it| matches!(it, "gap" | "padding" | "margin"))
    });
    of_room
        .flat_map(|(_, value)| value.split(|c: char| !(c.is_ascii_alphanumeric() || c == '.')))
        .filter(|it| {
            it.strip_suffix("px").and_then(|it| it.parse().ok()).is_some_and(|it: f64| it > HAIR)
        })
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

    #[test]
    fn room_is_a_step_of_the_scale() {
        let made = ":root { --s-4: 4px; --edge: 10px }\n";
        let fine = "@media (max-width: 360px) { .a { gap: 1px var(--s-4); padding: 3px 0.3em; height: 12px } }\n.b { margin: 0 calc(-1 * var(--edge)) 2px }";
        assert_eq!(breaches(&format!("{made}{fine}")), Vec::<String>::new());
        for raw in
            ["gap: 8px", "padding-left: calc(1em + 8px)", "margin: -8px 0 0", "scroll-padding: 8px"]
        {
            let breaches = breaches(&format!(".a {{ color: red; {raw}; }}"));
            assert_eq!(
                breaches,
                ["a.css:1: 8px is room that is no step of the scale (--s-4 to --s-32)"],
                "{raw}"
            );
        }
    }
}
