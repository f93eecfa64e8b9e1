//! Rust as words, numbers, signs and brackets, without comments and without what is only built for tests.

use anyhow::{Result, anyhow};
use proc_macro2::{Delimiter, TokenStream, TokenTree};

/// One piece of a file.
pub(super) struct Tree {
    /// From 1.
    pub(super) line: usize,
    pub(super) what: What,
}

/// What a piece is. A text in quotes is a sign that means nothing.
pub(super) enum What {
    Word(String),
    Number(String),
    Sign(char),
    Group(char, Vec<Tree>),
}

/// The pieces of a file.
pub(super) fn trees(text: &str) -> Result<Vec<Tree>> {
    let tokens = text.parse().map_err(|error| anyhow!("not Rust: {error}"))?;
    Ok(without_tests(tokens))
}

fn without_tests(tokens: TokenStream) -> Vec<Tree> {
    let all: Vec<Tree> = tokens.into_iter().map(tree).collect();
    let mut kept = Vec::new();
    let mut is_tested = false;
    let mut rest = all.into_iter().peekable();
    while let Some(tree) = rest.next() {
        if is_tested {
            // The item that is only for tests ends here.
            is_tested = !(tree.is(';') || tree.group('{').is_some());
        } else if tree.is('#') && rest.peek().is_some_and(is_test) {
            is_tested = true;
        } else {
            kept.push(tree);
        }
    }
    kept
}

fn tree(token: TokenTree) -> Tree {
    let line = token.span().start().line;
    let what = match token {
        TokenTree::Ident(word) => What::Word(word.to_string()),
        TokenTree::Punct(sign) => What::Sign(sign.as_char()),
        TokenTree::Literal(literal) => {
            let text = literal.to_string();
            let is_number = text.starts_with(|c: char| c.is_ascii_digit());
            if is_number { What::Number(text) } else { What::Sign('"') }
        }
        TokenTree::Group(group) => {
            let bracket = match group.delimiter() {
                Delimiter::Brace => '{',
                Delimiter::Bracket => '[',
                Delimiter::Parenthesis | Delimiter::None => '(',
            };
            What::Group(bracket, without_tests(group.stream()))
        }
    };
    Tree { line, what }
}

/// Whether these brackets say `cfg(test)`.
fn is_test(tree: &Tree) -> bool {
    let Some([cfg, what]) = tree.group('[') else { return false };
    let is_only_test = |what: &[Tree]| matches!(what, [test] if test.word() == Some("test"));
    cfg.word() == Some("cfg") && what.group('(').is_some_and(is_only_test)
}

impl Tree {
    pub(super) fn word(&self) -> Option<&str> {
        match &self.what {
            What::Word(word) => Some(word),
            _ => None,
        }
    }

    pub(super) fn is(&self, sign: char) -> bool {
        matches!(self.what, What::Sign(own) if own == sign)
    }

    pub(super) fn group(&self, bracket: char) -> Option<&[Tree]> {
        match &self.what {
            What::Group(own, inside) if *own == bracket => Some(inside),
            _ => None,
        }
    }

    /// Calls `see` with every piece, those in brackets too, and with the one before it.
    pub(super) fn each<'t>(trees: &'t [Tree], see: &mut dyn FnMut(Option<&'t Tree>, &'t Tree)) {
        let mut before = None;
        for tree in trees {
            see(before, tree);
            if let What::Group(_, inside) = &tree.what {
                Tree::each(inside, see);
            }
            before = Some(tree);
        }
    }
}

/// The module that a file of a crate is, by its path below `src`: empty for a root, `None` for tests.
pub(super) fn module(path: &str) -> Option<Vec<String>> {
    let mut module: Vec<String> = path.strip_suffix(".rs")?.split('/').map(str::to_owned).collect();
    if module.iter().any(|name| name == "tests") {
        return None;
    }
    match module.last().map(String::as_str)? {
        "mod" => drop(module.pop()),
        "lib" | "main" if module.len() == 1 => module.clear(),
        _ if module.len() == 2 && module.first().is_some_and(|first| first == "bin") => {
            module.clear();
        }
        _ => {}
    }
    Some(module)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn words(text: &str) -> String {
        let mut words = Vec::new();
        let trees = trees(text).expect("Rust");
        Tree::each(&trees, &mut |_, tree| {
            words.extend(tree.word().map(|word| format!("{}:{word}", tree.line)));
            if let What::Number(number) = &tree.what {
                words.push(format!("{}:{number}", tree.line));
            }
        });
        words.join(" ")
    }

    #[test]
    fn words_and_numbers_are_read_and_texts_and_comments_not() {
        assert_eq!(words("// a\nb(1.5, \"c\", [2_f64]) /* d */ e"), "2:b 2:1.5 2:2_f64 2:e");
    }

    #[test]
    fn what_is_for_tests_is_left_out_and_ends_where_it_ends() {
        assert_eq!(words("#[cfg(test)]\nmod tests { fn a() {} }\nb"), "3:b");
        assert_eq!(words("#[cfg(test)]\nmod tests;\nb"), "3:b");
        assert_eq!(words("c { #[cfg(test)] use a; b }"), "1:c 1:b");
        assert_eq!(words("#[cfg(not(test))]\nb"), "1:cfg 1:not 1:test 2:b");
    }

    #[test]
    fn a_file_is_a_module() {
        let named = |path| module(path).map(|module| module.join("/"));
        assert_eq!(named("saws/mod.rs").as_deref(), Some("saws"));
        assert_eq!(named("saws/teeth.rs").as_deref(), Some("saws/teeth"));
        assert_eq!(named("lib.rs").as_deref(), Some(""));
        assert_eq!(named("bin/first.rs").as_deref(), Some(""));
        assert_eq!(named("saws/tests.rs"), None);
        assert_eq!(named("saws/tests/teeth.rs"), None);
    }
}
