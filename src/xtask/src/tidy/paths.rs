//! Which modules a source file names outside its tests: the paths that begin with `crate`, `super`, `self` or a module.

use std::collections::{BTreeMap, BTreeSet};

use super::rust::{Tree, What};

/// A path as it stands in a file, from the root of its crate: `["sheet", "Sentence"]`.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Named {
    /// From 1.
    pub(super) line: usize,
    /// Without `crate`.
    pub(super) path: Vec<String>,
    /// The name by which a `pub use` lends it on, where the file does no more with it.
    pub(super) lent: Option<String>,
}

/// What one file names, and what it lends on.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub(super) struct Names {
    /// Every path into the own crate, in the order of the text.
    pub(super) named: Vec<Named>,
    /// What `use` brings in, by the name it has here.
    pub(super) brought: BTreeMap<String, Vec<String>>,
    /// The macros that it makes.
    pub(super) macros: BTreeSet<String>,
}

/// Reads the file that is the module `own`, which has `children`.
pub(super) fn names(trees: &[Tree], own: &[String], children: &BTreeSet<String>) -> Names {
    let mut reader = Reader {
        own,
        children,
        inner: 0,
        is_lending: false,
        words: BTreeSet::new(),
        names: Names::default(),
    };
    reader.read(trees);
    let Reader { words, mut names, .. } = reader;
    for named in &mut names.named {
        named.lent.take_if(|name| words.contains(name));
    }
    names
}

struct Reader<'a> {
    own: &'a [String],
    children: &'a BTreeSet<String>,
    /// How deep in modules that are written inside the file.
    inner: usize,
    /// Within a `pub use` of the file itself.
    is_lending: bool,
    /// What stands in the file, outside `use`, first of a path or alone.
    words: BTreeSet<String>,
    names: Names,
}

impl Reader<'_> {
    fn read(&mut self, trees: &[Tree]) {
        let mut rest = trees;
        let mut is_public = false;
        while let [first, more @ ..] = rest {
            let keyword = first.word().unwrap_or_default();
            let was_public = is_public;
            is_public = keyword == "pub";
            rest = match (keyword, more) {
                ("use", _) => {
                    let end = more.iter().position(|tree| tree.is(';')).unwrap_or(more.len());
                    self.is_lending = was_public && self.inner == 0;
                    self.bring(&more[..end], &[]);
                    &more[end..]
                }
                ("macro_rules", [_, name, more @ ..]) => {
                    self.names.macros.extend(name.word().map(str::to_owned));
                    more
                }
                // Who may see it is no use of it.
                ("pub", [seen, more @ ..]) if seen.group('(').is_some() => more,
                ("mod", [_, end, more @ ..]) if end.is(';') => more,
                ("mod", [_, body, more @ ..]) if body.group('{').is_some() => {
                    self.inner += 1;
                    self.read(body.group('{').unwrap_or_default());
                    self.inner -= 1;
                    more
                }
                ("", [colon, _, more @ ..]) if first.is(':') && colon.is(':') => more,
                ("", _) => {
                    if let What::Group(_, inside) = &first.what {
                        self.read(inside);
                    }
                    more
                }
                _ => self.path(rest),
            };
        }
    }

    /// Reads `a::b::c` at the start, and says what comes after it.
    fn path<'t>(&mut self, trees: &'t [Tree]) -> &'t [Tree] {
        let mut words = Vec::new();
        let mut rest = trees;
        while let [next, more @ ..] = rest {
            words.extend(next.word().map(str::to_owned));
            rest = more;
            match more {
                [a, b, after, ..] if a.is(':') && b.is(':') && after.word().is_some() => {
                    rest = &more[2..];
                }
                _ => break,
            }
        }
        if let (Some(first), 2..) = (trees.first(), words.len()) {
            self.name(first.line, &words);
        }
        self.words.extend(words.into_iter().next());
        rest
    }

    /// Reads the tree of a `use`, which stands below the words `above`.
    fn bring(&mut self, trees: &[Tree], above: &[String]) {
        let Some(first) = trees.first() else { return };
        let mut words = above.to_vec();
        let mut alias = None;
        let mut rest = trees;
        while let [next, more @ ..] = rest {
            rest = more;
            if let Some(inside) = next.group('{') {
                for branch in inside.split(|tree| tree.is(',')) {
                    self.bring(branch, &words);
                }
                return;
            }
            match next.word() {
                Some("as") => {
                    alias = more.first().and_then(Tree::word).map(str::to_owned);
                    break;
                }
                word => words.extend(word.map(str::to_owned)),
            }
        }
        let Some(path) = self.name(first.line, &words) else { return };
        let Some(here) = alias.or_else(|| path.last().cloned()) else { return };
        // What a star brings in has no name by which its use would be seen.
        let is_lent = self.is_lending && !trees.iter().any(|tree| tree.is('*'));
        if let Some(named) = self.names.named.last_mut().filter(|_| is_lent) {
            named.lent = Some(here.clone());
        }
        if self.inner == 0 {
            self.names.brought.insert(here, path);
        }
    }

    /// Keeps a path if it leads into the own crate, and says where to.
    fn name(&mut self, line: usize, words: &[String]) -> Option<Vec<String>> {
        let mut path = self.own.to_vec();
        let mut inner = self.inner;
        let mut rest = words;
        match words.first().map(String::as_str)? {
            "crate" => {
                path.clear();
                rest = &words[1..];
            }
            "self" => rest = &words[1..],
            "super" => {
                while let [first, more @ ..] = rest
                    && first == "super"
                {
                    match inner.checked_sub(1) {
                        Some(less) => inner = less,
                        None => drop(path.pop()),
                    }
                    rest = more;
                }
            }
            first if inner == 0 && self.children.contains(first) => {}
            first => {
                path.clone_from(self.names.brought.get(first)?);
                rest = &words[1..];
            }
        }
        path.extend(rest.iter().filter(|word| *word != "self").cloned());
        self.names.named.push(Named { line, path: path.clone(), lent: None });
        Some(path)
    }
}

#[cfg(test)]
mod tests {
    use super::super::rust::trees;
    use super::*;

    fn paths(text: &str) -> Vec<String> {
        let own = ["pages".to_owned(), "item".to_owned()];
        let children = BTreeSet::from(["row".to_owned()]);
        let names = names(&trees(text).expect("Rust"), &own, &children);
        names.named.iter().map(|n| format!("{}:{}", n.line, n.path.join("/"))).collect()
    }

    #[test]
    fn every_way_to_name_a_module_is_read() {
        assert_eq!(paths("use crate::a::{self, b::C, d as e};"), ["1:a", "1:a/b/C", "1:a/d"]);
        assert_eq!(paths("use super::{Open, list::*};"), ["1:pages/Open", "1:pages/list"]);
        assert_eq!(paths("//! A.\npub use row::Row;"), ["2:pages/item/row/Row"]);
        assert_eq!(
            paths("fn f(x: &crate::a::B) -> super::super::C {\n say![row::g::<u8>(), self::h()] }"),
            ["1:a/B", "1:C", "2:pages/item/row/g", "2:pages/item/h"]
        );
        assert_eq!(paths("mod inside { use super::super::Open; use super::own; }").len(), 2);
        assert_eq!(
            paths("mod inside { use super::super::Open; }"),
            ["1:pages/Open"],
            "in a module written inside the file one `super` less leads out of it"
        );
        assert_eq!(paths("use crate::a as b;\nfn f() { b::c() }"), ["1:a", "2:a/c"]);
        assert_eq!(paths("macro_rules! m { () => { $crate::a::B } }"), ["1:a/B"]);
    }

    #[test]
    fn what_is_only_lent_on_is_told_from_what_is_used() {
        let lent = |text: &str| {
            let own = ["pages".to_owned()];
            let children = BTreeSet::from(["item".to_owned()]);
            let names = names(&trees(text).expect("Rust"), &own, &children);
            names.named.into_iter().filter_map(|named| named.lent).collect::<Vec<_>>()
        };
        assert_eq!(lent("mod item;\npub use item::Item;"), ["Item"]);
        assert_eq!(lent("pub(crate) use item::{Item, row as line};"), ["Item", "line"]);
        assert_eq!(lent("use item::Item;"), [""; 0]);
        assert_eq!(lent("pub use item::{Item, Row};\nfn f() -> Item { Item::new() }"), ["Row"]);
        assert_eq!(lent("pub use item::row;\nfn f() { g(row()) }"), [""; 0]);
        assert_eq!(lent("pub use item::*;"), [""; 0]);
    }

    #[test]
    fn what_is_no_use_is_not_read() {
        assert_eq!(paths("//! crate::a\n// crate::b\nconst A: &str = \"crate::c::d\";"), [""; 0]);
        assert_eq!(paths("use std::fmt; use other::Row; fn f() { Row::new(); }"), [""; 0]);
        assert_eq!(paths("pub(in crate::pages) fn f() { 1; }"), [""; 0]);
    }
}
