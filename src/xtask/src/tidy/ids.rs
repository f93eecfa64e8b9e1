//! A field of a form is found by a constant, never by a text: an id is spelled once.

use super::rust::{Tree, What};

/// Every place where a field is asked for by an id that is spelled there.
pub(super) fn breaches(sources: &[(String, Vec<Tree>)]) -> Vec<String> {
    let mut found = Vec::new();
    for (path, trees) in sources {
        spelled(trees, &mut |line| {
            found.push(format!("{path}:{line}: the id of a field is spelled here"));
        });
    }
    found
}

fn spelled(trees: &[Tree], see: &mut dyn FnMut(usize)) {
    for (at, tree) in trees.iter().enumerate() {
        if let [dot, field, arguments, ..] = &trees[at..]
            && dot.is('.')
            && field.word() == Some("field")
            && matches!(arguments.group('('), Some([id]) if id.is('"'))
        {
            see(field.line);
        }
        if let What::Group(_, inside) = &tree.what {
            spelled(inside, see);
        }
    }
}

#[cfg(test)]
mod tests {
    use super::super::rust::trees;
    use super::*;

    #[test]
    fn an_id_that_is_spelled_is_seen() {
        let text = "fn f() { ask.length(ask.field(\"kerf\")); }\nfn g() { ask.field(KERF) }\n\
                    fn h() { f.debug_struct(\"A\").field(\"a\", &self.a) }";
        let sources = [("a.rs".to_owned(), trees(text).expect("Rust"))];
        assert_eq!(breaches(&sources), ["a.rs:1: the id of a field is spelled here"]);
    }
}
