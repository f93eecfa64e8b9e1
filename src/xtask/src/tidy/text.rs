//! Rules about the text of one file.

const MOST_LINES: usize = 600;

/// The page's own code, and the two places in it that may touch the browser.
const PAGE: &str = "src/app/src/";
const PLATFORM: [&str; 2] = ["src/app/src/platform/", "src/app/src/main.rs"];
const BROWSER: [&str; 2] = ["web_sys", "gloo"];

/// Put together here, so that this file does not break its own rule.
fn leftovers() -> [String; 4] {
    [["TO", "DO"], ["FIX", "ME"], ["XX", "X"], ["HA", "CK"]].map(|parts| parts.concat())
}

/// Where people keep their files; none of it means anything on another machine.
fn machine_paths() -> [String; 5] {
    [["/wo", "rk/"], ["/ro", "ot/"], ["/ho", "me/"], ["/tm", "p/"], ["/Us", "ers/"]]
        .map(|parts| parts.concat())
}

/// Every breach in the file at `path`, as "path:line: what is wrong".
pub(super) fn breaches(path: &str, text: &str) -> Vec<String> {
    let mut found = Vec::new();
    let extension = path.rsplit_once('.').map_or("", |(_, extension)| extension);
    let opening = match extension {
        "rs" => Some("//!"),
        "js" => Some("//"),
        "css" => Some("/*"),
        _ => None,
    };
    if let Some(opening) = opening {
        if !text.starts_with(opening) {
            found.push(format!("{path}:1: does not open with a comment on what it is for"));
        }
        let lines = text.lines().count();
        if lines > MOST_LINES {
            found.push(format!("{path}: {lines} lines, at most {MOST_LINES}"));
        }
    }
    // Written by machines.
    if path.ends_with("Cargo.lock") || path.ends_with("package-lock.json") {
        return found;
    }
    for (line, number) in text.lines().zip(1..) {
        let mut report = |what: String| found.push(format!("{path}:{number}: {what}"));
        for word in leftovers().iter().filter(|word| has_word(line, word)) {
            report(format!("leftover '{word}'"));
        }
        for place in machine_paths().iter().filter(|place| has_path(line, place)) {
            report(format!("'{place}' is a place on one machine"));
        }
        if extension != "rs" {
            continue;
        }
        let is_comment = line.trim_start().starts_with("//");
        let is_page = path.starts_with(PAGE) && !PLATFORM.iter().any(|p| path.starts_with(p));
        if is_page && !is_comment {
            for name in BROWSER.iter().filter(|name| line.contains(*name)) {
                report(format!("{name} outside src/app/src/platform"));
            }
        }
    }
    found
}

/// Whether `word` stands in `line` by itself: no letter, digit or decimal point at its ends.
fn has_word(line: &str, word: &str) -> bool {
    let joins = |c: char| c.is_alphanumeric() || c == '_';
    line.match_indices(word).any(|(start, _)| {
        let before = line[..start].chars().next_back();
        let mut after = line[start + word.len()..].chars();
        let next = after.next();
        let is_longer_number =
            next == Some('.') && after.next().is_some_and(|c| c.is_ascii_digit());
        !before.is_some_and(|c| joins(c) || c == '.')
            && !next.is_some_and(joins)
            && !is_longer_number
    })
}

/// Whether the path `place` begins in `line`: it is not the middle of a longer path.
fn has_path(line: &str, place: &str) -> bool {
    line.match_indices(place).any(|(start, _)| {
        let before = line[..start].chars().next_back();
        !before.is_some_and(|c| c.is_alphanumeric() || matches!(c, '.' | '_' | '-' | '/' | '}'))
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn broken(path: &str, text: &str) -> bool {
        !breaches(path, text).is_empty()
    }

    #[test]
    fn a_file_says_what_it_is_for_and_stays_short() {
        assert!(!broken("src/a.rs", "//! Strips.\n"));
        assert!(broken("src/a.rs", "use std::fs;\n"));
        assert!(broken("styles/a.css", "a {}\n"));
        assert!(!broken("src/a.rs", &"//! Strips.\n".repeat(600)));
        assert!(broken("src/a.rs", &"//! Strips.\n".repeat(601)));
    }

    #[test]
    fn leftovers_and_machine_paths_are_found_as_words() {
        let note = |word: &str| format!("//! Strips.\n// {word}: later\n");
        for word in leftovers() {
            assert!(broken("src/a.rs", &note(&word)), "{word}");
            assert!(!broken("src/a.rs", &note(&format!("{word}S"))), "{word}");
        }
        for place in machine_paths() {
            assert!(broken("README.md", &format!("see {place}notes")), "{place}");
            assert!(!broken("README.md", &format!("see src{place}notes")), "{place}");
        }
    }

    #[test]
    fn only_the_platform_touches_the_browser() {
        let text = "//! Home.\nuse web_sys::Element;\n";
        assert!(broken("src/app/src/home.rs", text));
        assert!(!broken("src/app/src/platform/dom.rs", text));
        assert!(!broken("src/app/tests/home.rs", text));
    }
}
