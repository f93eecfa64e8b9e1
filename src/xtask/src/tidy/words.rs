//! Words that no page says: each thing has one word on all of them, and it is a builder's.

/// Where they are not said.
const PAGES: [&str; 12] = [
    "src/app/src/calculator/",
    "src/app/src/components/",
    "src/app/src/cutting/",
    "src/app/src/home",
    "src/app/src/job_book/",
    "src/app/src/settings/",
    "src/core/src/attention/",
    "src/core/src/build_order/",
    "src/core/src/calculators/",
    "src/core/src/job/",
    "src/core/src/planning/",
    "src/core/src/to_buy/",
];

/// Each with what is said instead.
const NOT_SAID: [(&str, &str); 24] = [
    ("part", "piece"),
    ("parts", "pieces"),
    ("reckoning", "kept calculator"),
    ("reckonings", "kept calculators"),
    ("hand on", "send"),
    ("hand it on", "send it"),
    ("as cut", "the tape says"),
    ("on hand", "on my rack"),
    ("demo", "our example"),
    ("default", "our example"),
    ("placeholder", "our example"),
    ("please", "nothing"),
    ("error", "what is wrong"),
    ("invalid", "what is wrong"),
    ("centre", "center"),
    ("green", "wet"),
    ("dressed", "planed"),
    ("receiver", "the other piece"),
    ("geometry", "what there is room for"),
    ("axis", "the hole"),
    ("drift sideways", "goes sideways"),
    ("drifts sideways", "goes sideways"),
    ("nothing below", "it cannot be less"),
    ("keep out of", "keep clear of"),
];

/// Not words but a way of writing that nobody speaks, each with what is said instead.
const NOT_WRITTEN: [(&str, &str); 2] = [("empty:", "if left empty"), ("(s)", "one or many")];

/// Where a word is another thing: what a length is divided into is no piece, and who searches may use any word.
const OTHERWISE: [(&str, &[&str]); 2] = [
    ("src/core/src/calculators/tape/", &["part", "parts"]),
    ("src/core/src/calculators/questions.rs", &["green", "dressed", "parts", "centre"]),
];

/// Every breach in the file at `path`.
pub(super) fn breaches(path: &str, text: &str) -> Vec<String> {
    let is_page = PAGES.iter().any(|page| path.starts_with(page));
    if !is_page || path.contains("tests") || path.contains("demo") {
        return Vec::new();
    }
    let mut found = Vec::new();
    for (line, number) in shown(text).zip(1..) {
        if line.trim_start().starts_with("//") {
            continue;
        }
        for said in line.split('"').skip(1).step_by(2).filter(|it| is_prose(it)) {
            let words = in_words(said);
            let is_said = |word: &str| words.contains(&format!(" {word} "));
            let is_free = |word: &str| {
                OTHERWISE.iter().any(|(at, free)| path.starts_with(at) && free.contains(&word))
            };
            let is_written = |it: &str| said.to_lowercase().contains(it);
            let said = NOT_SAID.iter().filter(|(word, _)| is_said(word) && !is_free(word));
            let written = NOT_WRITTEN.iter().filter(|(it, _)| is_written(it));
            for (word, instead) in said.chain(written) {
                found.push(format!("{path}:{number}: says '{word}', not '{instead}'"));
            }
        }
    }
    found
}

/// The lines of a file before its tests, where it has them at its end.
fn shown(text: &str) -> impl Iterator<Item = &str> {
    let mut lines = text.lines().peekable();
    core::iter::from_fn(move || {
        let line = lines.next()?;
        let begins = line == "#[cfg(test)]" && lines.peek().is_some_and(|it| it.ends_with('{'));
        (!begins).then_some(line)
    })
}

/// Whether a text is for people: it has several words, or is one that begins large. A class or an id is neither, and a
/// publication has the name that it has.
fn is_prose(text: &str) -> bool {
    let is_id = text.starts_with("part {")
        || text.contains("--")
        || text.contains("__")
        || text.contains("FPL");
    !is_id && (text.contains(' ') || text.starts_with(|c: char| c.is_uppercase()))
}

/// Its words with one space around each, without what is put in.
fn in_words(text: &str) -> String {
    let mut words = String::from(" ");
    let mut is_put_in = false;
    for letter in text.to_lowercase().chars() {
        is_put_in = (is_put_in || letter == '{') && letter != '}';
        let is_word = letter.is_alphanumeric() || letter == '-' || letter == '_';
        words.push(if is_word && !is_put_in { letter } else { ' ' });
    }
    words.push(' ');
    words.split_whitespace().fold(" ".to_owned(), |all, word| all + word + " ")
}

#[cfg(test)]
mod tests {
    use super::breaches;

    #[test]
    fn a_page_says_one_word_for_one_thing() {
        let at = |path: &str, text: &str| breaches(path, text).len();
        let page = "src/app/src/job_book/pages/lists.rs";
        assert_eq!(at(page, "{ \"Add a part\" }"), 1);
        assert_eq!(at(page, "\"Parts\""), 1);
        assert_eq!(at(page, "\"Boards and scraps on hand, {parts}\""), 1);
        for fine in [
            "\"part\"",
            "// \"Add a part\"",
            "\"part {number}\"",
            "\"{part} of it\"",
            "\"Apart\"",
            "\"plan__part a\"",
        ] {
            assert_eq!(at(page, fine), 0, "{fine}");
        }
        let calculator = "src/core/src/calculators/dowel/mod.rs";
        for wrong in [
            "\"Use a higher part.\"",
            "\"Longest by geometry\"",
            "\"Receiver\"",
            "\"Green\"",
            "\"from right end; empty: as the first\"",
            "\"Board(s)\"",
        ] {
            assert_eq!(at(calculator, wrong), 1, "{wrong}");
        }
        assert_eq!(at(calculator, "\"receiver\", \"FPL Research Paper FPL-RP-489 (Green)\""), 0);
        assert_eq!(at("src/core/src/calculators/tape/fields.rs", "\"Equal parts\""), 0);
        assert_eq!(at("src/core/src/planning/mod.rs", "\"Equal parts\""), 1);
        assert_eq!(at(page, "#[cfg(test)]\nmod tests {\n\"Add a part\""), 0);
        assert_eq!(at(page, "#[cfg(test)]\nmod tests;\n\"Add a part\""), 1);
    }
}
