//! Where floats and the scales of units may stand.
//!
//! The places of floats are listed in `DEVELOPERS.md`, in blocks fenced as `floats FOLDER`: in each line a reason, a
//! colon, and names that hold for all files under them. A `*` in a name is any one folder or file.

use std::collections::BTreeSet;

use super::fence::{Fence, fences};
use super::rust::{Tree, What, module};

/// The sources whose floats must be listed.
const EXACT: [&str; 3] = ["src/core/src", "src/cutplan/src", "src/formats/src"];

/// The one file that may know how long an inch is.
const UNITS: &str = "src/core/src/measure/unit.rs";
/// 1 in = 25.4 mm = 127/5 mm, 1 ft = 304.8 mm, and the same in centimetres, metres and tenths.
const FACTORS: [&str; 9] =
    ["25.4", "127", "304.8", "2.54", "30.48", "0.0254", "0.3048", "254", "2540"];
/// The crates that reckon or show what was reckoned.
const RECKONING: [&str; 6] =
    ["src/core/", "src/cutplan/", "src/formats/", "src/planner/", "src/app/", "src/js/"];

/// Every breach of the lists in `docs`, and every scale of a unit that stands by itself.
pub(super) fn breaches(
    docs_path: &str,
    docs: &str,
    sources: &[(String, Vec<Tree>)],
) -> Vec<String> {
    let lists = fences(docs, "floats");
    let missing = EXACT.iter().filter(|folder| lists.iter().all(|it| it.about != **folder));
    let mut found: Vec<String> =
        missing.map(|folder| format!("{docs_path}: no list of the floats in {folder}")).collect();
    found.extend(lists.iter().flat_map(|list| of_list(docs_path, list, sources)));
    for (path, trees) in sources {
        let reckons = RECKONING.iter().any(|folder| path.starts_with(folder)) && path != UNITS;
        let is_test = path.contains("/tests/") || path.ends_with("/tests.rs");
        if reckons && !is_test {
            found.extend(factors(path, trees));
        }
    }
    found
}

fn of_list(docs_path: &str, list: &Fence<'_>, sources: &[(String, Vec<Tree>)]) -> Vec<String> {
    let mut found = Vec::new();
    let mut names: Vec<(usize, &str, bool)> = Vec::new();
    for (line, text) in &list.lines {
        match text.split_once(':') {
            Some((_, own)) => names.extend(own.split_whitespace().map(|name| (*line, name, false))),
            None => found.push(format!("{docs_path}:{line}: no reason and no colon")),
        }
    }
    for (path, trees) in sources {
        let own = path.strip_prefix(list.about).and_then(|path| path.strip_prefix('/'));
        let Some(module) = own.and_then(module) else { continue };
        let Some(line) = floats(trees).into_iter().next() else { continue };
        let mut holding = names.iter_mut().filter(|(_, name, _)| holds(name, &module)).peekable();
        if holding.peek().is_none() {
            let list = "in no list of floats in DEVELOPERS.md";
            found.push(format!("{path}:{line}: a float, and the file is {list}"));
        }
        holding.for_each(|(.., is_used)| *is_used = true);
    }
    let idle = names.iter().filter(|(.., is_used)| !is_used);
    found.extend(idle.map(|(line, name, _)| format!("{docs_path}:{line}: no float in {name}")));
    found
}

/// Whether a name of a list holds for a module.
fn holds(name: &str, module: &[String]) -> bool {
    let parts: Vec<&str> = name.split('/').collect();
    parts.len() <= module.len()
        && parts.iter().zip(module).all(|(part, own)| *part == "*" || part == own)
}

/// The lines in which a float stands.
fn floats(trees: &[Tree]) -> BTreeSet<usize> {
    let mut lines = BTreeSet::new();
    Tree::each(trees, &mut |before, tree| {
        let is_float = match &tree.what {
            What::Word(word) => ["f64", "f32"].iter().any(|name| {
                word.strip_suffix(name).is_some_and(|rest| rest.is_empty() || rest.ends_with('_'))
            }),
            // `pair.0.1` is no number.
            What::Number(text) => !before.is_some_and(|tree| tree.is('.')) && is_float(text),
            _ => false,
        };
        if is_float {
            lines.insert(tree.line);
        }
    });
    lines
}

fn is_float(number: &str) -> bool {
    number.contains('.') || number.ends_with("f64") || number.ends_with("f32")
}

fn factors(path: &str, trees: &[Tree]) -> Vec<String> {
    let mut found = Vec::new();
    Tree::each(trees, &mut |_, tree| {
        let What::Number(text) = &tree.what else { return };
        let bare = text.replace('_', "");
        // Without the name of its type.
        let value = bare.split(|c: char| c.is_ascii_alphabetic()).next().unwrap_or_default();
        if FACTORS.contains(&value) {
            found.push(format!("{path}:{}: scale factor {value} outside {UNITS}", tree.line));
        }
    });
    found
}

#[cfg(test)]
mod tests {
    use super::super::rust::trees;
    use super::*;

    fn broken(list: &str, path: &str, text: &str) -> Vec<String> {
        let docs = format!("```floats src/core/src\n{list}\n```\n");
        let sources = [(path.to_owned(), trees(text).expect("Rust"))];
        let all = breaches("DEVELOPERS.md", &docs, &sources);
        all.into_iter().filter(|breach| !breach.contains("no list of the floats")).collect()
    }

    #[test]
    fn a_float_stands_only_where_the_list_says() {
        let path = "src/core/src/saws/teeth.rs";
        for text in ["fn f(a: f64) {}", "f(1.5)", "a.to_f64()", "f(2_f32)", "use std::f64::consts;"]
        {
            assert_eq!(broken("", path, text).len(), 1, "{text}");
            for list in ["physics: saws", "drawn: wood/a saws/teeth", "drawn: */teeth"] {
                let all = broken(list, path, text);
                assert!(
                    !all.iter().any(|breach| breach.starts_with(path)),
                    "{list} {text}: {all:?}"
                );
            }
        }
        for text in
            ["fn f(a: i64) {}", "pair.0.1", "// f64", "#[cfg(test)] mod t { f(1.5) }", "\"1.5\""]
        {
            assert_eq!(broken("", path, text), [""; 0], "{text}");
        }
        assert_eq!(broken("", "src/core/src/saws/tests.rs", "f(1.5)"), [""; 0]);
    }

    #[test]
    fn a_name_without_a_float_leaves_the_list() {
        let path = "src/core/src/saws/teeth.rs";
        assert_eq!(broken("physics: saws", path, "f(1.5)"), [""; 0]);
        assert_eq!(
            broken("physics: saws wood", path, "f(1.5)"),
            ["DEVELOPERS.md:2: no float in wood"]
        );
        assert_eq!(broken("saws", path, "").len(), 1);
        assert_eq!(breaches("DEVELOPERS.md", "", &[]).len(), EXACT.len());
    }

    #[test]
    fn scale_factors_stand_in_one_file_and_in_tests() {
        let line = "let mm = inches * 25.4;";
        let all = "drawn: saws measure";
        let factors = |path: &str, text: &str| {
            broken(all, path, text).into_iter().filter(|breach| breach.contains("scale")).count()
        };
        let path = "src/core/src/saws.rs";
        assert_eq!(factors(path, line), 1);
        assert_eq!(factors(UNITS, line), 0);
        assert_eq!(factors("src/core/tests/saws.rs", line), 0);
        assert_eq!(factors(path, &format!("#[cfg(test)]\nmod t {{ {line} }}")), 0);
        assert_eq!(factors(path, "// 1 in is 25.4 mm\nlet a = 1127 + 127.5;"), 0);
        assert_eq!(factors(path, "let a = (127_i64, 5, 2_540);"), 2);
    }
}
