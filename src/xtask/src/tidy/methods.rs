//! Whom a method of the planner follows: author, title and year, or that it is our own.

/// The search.
const SEARCH: &str = "src/cutplan/src/";

/// Fewest words of a title: less is a word in quotation marks.
const FEWEST_WORDS: usize = 2;

/// How far behind its title a year stands, in characters.
const NEAR: usize = 120;

/// The breach in the file at `path`, if its first lines name neither a paper nor us.
pub(super) fn breaches(path: &str, text: &str) -> Vec<String> {
    if !path.starts_with(SEARCH) || !path.ends_with(".rs") {
        return Vec::new();
    }
    let head = text.lines().map_while(|line| line.strip_prefix("//!"));
    let head = head.flat_map(str::split_whitespace).collect::<Vec<_>>().join(" ");
    if head.to_lowercase().contains("our own") || names_a_paper(&head) {
        return Vec::new();
    }
    vec![format!(
        "{path}: its first lines name no paper (author, title, year), nor that it is our own"
    )]
}

/// Whether there is a title in quotation marks, behind a name, with a year behind it.
fn names_a_paper(head: &str) -> bool {
    let pieces: Vec<&str> = head.split('"').collect();
    pieces.windows(3).step_by(2).any(|it| {
        let [before, title, after] = it else { return false };
        let near: String = after.chars().take(NEAR).collect();
        let is_year = |it: &str| it.len() == 4 && (it.starts_with("19") || it.starts_with("20"));
        title.split(' ').count() >= FEWEST_WORDS
            && is_behind_a_name(before)
            && near.split(|it: char| !it.is_ascii_digit()).any(is_year)
    })
}

/// Whether what stands before a title ends with a name: `Climber and Hill, `, or another paper of theirs, `1998, and `.
fn is_behind_a_name(before: &str) -> bool {
    let before = before.trim_end();
    before.ends_with(',') || before.ends_with(", and")
}

#[cfg(test)]
mod tests {
    use super::breaches;

    #[test]
    fn a_method_names_whom_it_follows() {
        let at = |head: &str| breaches("src/cutplan/src/mix.rs", head).len();
        let paper = "//! Going up (Climber and Hill,\n//! \"Ways up a hill\", Journal of\n//! Hills 9, 1999).\n";
        assert_eq!(at(paper), 0);
        assert_eq!(at("//! Going up. Our own.\n"), 0);
        assert_eq!(at("//! Nothing in it is our\n//! own but that.\n"), 0);
        for wrong in [
            "//! Going up.\n",
            "//! Going up, \"or down\".\n",
            "//! Going up (Climber and Hill, 1999).\n",
            "//! Going up (\"Ways up a hill\", 1999).\n",
            "//! Going up.\n\n// Our own.\n",
        ] {
            assert_eq!(at(wrong), 1, "{wrong}");
        }
        assert_eq!(breaches("src/core/src/lib.rs", "//! Going up.\n").len(), 0);
    }
}
