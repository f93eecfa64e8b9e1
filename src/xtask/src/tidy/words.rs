//! Words that the pages of a job, the cut plan and the settings do not say: each thing has one word on all pages.

/// Where they are not said.
const PAGES: [&str; 11] = [
    "src/app/src/calculator/",
    "src/app/src/components/",
    "src/app/src/cutting/",
    "src/app/src/home",
    "src/app/src/job_book/",
    "src/app/src/settings/",
    "src/core/src/attention/",
    "src/core/src/build_order/",
    "src/core/src/job/",
    "src/core/src/planning/",
    "src/core/src/to_buy/",
];

/// Each with what is said instead.
const NOT_SAID: [(&str, &str); 15] = [
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
];

/// Every breach in the file at `path`.
pub(super) fn breaches(path: &str, text: &str) -> Vec<String> {
    let is_page = PAGES.iter().any(|page| path.starts_with(page));
    if !is_page || path.contains("tests") || path.contains("demo") {
        return Vec::new();
    }
    let mut found = Vec::new();
    // The tests of a file stand at its end.
    let shown = text.split("#[cfg(test)]").next().unwrap_or_default();
    for (line, number) in shown.lines().zip(1..) {
        if line.trim_start().starts_with("//") {
            continue;
        }
        for said in line.split('"').skip(1).step_by(2).filter(|it| is_prose(it)) {
            let words = in_words(said);
            for (word, instead) in NOT_SAID {
                if words.contains(&format!(" {word} ")) {
                    found.push(format!("{path}:{number}: says '{word}', not '{instead}'"));
                }
            }
        }
    }
    found
}

/// Whether a text is for people: it has several words, or is one that begins large. A class or an id is neither.
fn is_prose(text: &str) -> bool {
    let is_id = text.starts_with("part {") || text.contains("--") || text.contains("__");
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
        assert_eq!(at("src/core/src/calculators/dowel/mod.rs", "\"Use a higher part.\""), 0);
        assert_eq!(at(page, "#[cfg(test)]\n\"Add a part\""), 0);
    }
}
