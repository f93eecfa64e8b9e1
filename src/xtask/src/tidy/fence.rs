//! Fenced blocks of a document that tidy reads, so that the document and the check are one.

/// A block that opens with ```` ```KIND ABOUT ````.
pub(super) struct Fence<'a> {
    /// What stands behind the kind.
    pub(super) about: &'a str,
    /// The line of the opening, from 1.
    pub(super) line: usize,
    /// Its lines that are not empty, with their numbers.
    pub(super) lines: Vec<(usize, &'a str)>,
}

/// Every block of a kind.
pub(super) fn fences<'a>(text: &'a str, kind: &str) -> Vec<Fence<'a>> {
    let mut found = Vec::new();
    let mut lines = (1..).zip(text.lines());
    while let Some((line, opening)) = lines.next() {
        let Some(info) = opening.strip_prefix("```") else { continue };
        let inside = lines.by_ref().take_while(|(_, line)| line.trim_end() != "```");
        let inside: Vec<_> = inside.filter(|(_, line)| !line.trim().is_empty()).collect();
        let (own, about) = info.split_once(' ').unwrap_or((info, ""));
        if own == kind {
            found.push(Fence { about: about.trim(), line, lines: inside });
        }
    }
    found
}

#[cfg(test)]
mod tests {
    use super::fences;

    #[test]
    fn blocks_of_a_kind_are_found_with_their_lines() {
        let text = "A\n```sh\n```order x\n```\n\n```order src/a\nb c\n\nd\n```\ne\n";
        let [block] = &fences(text, "order")[..] else { panic!("one block") };
        assert_eq!((block.about, block.line), ("src/a", 6));
        assert_eq!(block.lines, [(7, "b c"), (9, "d")]);
    }
}
