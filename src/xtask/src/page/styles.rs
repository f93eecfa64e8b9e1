//! The style sheets, as one.

/// CSS without comments and indentation. Not a minifier: compression does the rest.
///
/// Our sheets must not hold a comment mark inside a string; nothing else is assumed.
pub(super) fn without_comments(css: &str) -> String {
    let mut text = String::with_capacity(css.len());
    let mut rest = css;
    while let Some((before, after)) = rest.split_once("/*") {
        text.push_str(before);
        rest = after.split_once("*/").map_or("", |(_, after)| after);
    }
    text.push_str(rest);
    let mut lines: String = String::with_capacity(text.len());
    for line in text.lines().map(str::trim).filter(|line| !line.is_empty()) {
        lines.push_str(line);
        lines.push('\n');
    }
    lines
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn comments_and_indentation_go_rules_stay() {
        let css = "/* one\n two */\na {\n  color: red; /* why */\n}\n\nb{}\n/* open";
        assert_eq!(without_comments(css), "a {\ncolor: red;\n}\nb{}\n");
    }
}
