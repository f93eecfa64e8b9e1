//! Which crates may depend on which, through any number of steps, and which may not ask the machine for anything.

use anyhow::{Result, bail};

use super::rust::{Tree, What, module};
use crate::workspace::{cargo, packages};

/// A crate, and what it must not reach in normal use; development dependencies are free.
const WALLS: [(&str, &[&str]); 4] = [
    ("reckoner-core", OUTSIDE),
    ("reckoner-cutplan", OUTSIDE),
    ("reckoner-formats", OUTSIDE),
    // A search that takes seconds must not run where the page is drawn.
    ("reckoner-app", &["reckoner-cutplan"]),
];

/// Names of crates that only make sense in a browser, or that bring chance or a clock.
const OUTSIDE: &[&str] = &[
    "yew",
    "web-sys",
    "js-sys",
    "gloo",
    "wasm-bindgen",
    "rand",
    "rand_core",
    "getrandom",
    "fastrand",
    "time",
    "chrono",
    "web-time",
];

/// The sources that answer the same on every machine and at any time.
const PURE: [&str; 3] = ["src/core/src/", "src/cutplan/src/", "src/formats/src/"];
/// What of the standard library asks the machine.
const MACHINE: [&str; 7] = ["time", "fs", "env", "net", "thread", "process", "os"];

/// Every dependency that goes through a wall, and every place where a pure crate asks the machine for something.
pub(super) fn breaches(sources: &[(String, Vec<Tree>)]) -> Result<Vec<String>> {
    let members = packages()?;
    let mut found = Vec::new();
    for (path, trees) in sources {
        let inside = PURE.iter().find_map(|folder| path.strip_prefix(folder));
        if inside.and_then(module).is_some() {
            asks_of_the_machine(trees, &mut |line, what| {
                found.push(format!("{path}:{line}: std::{what} in a pure crate"));
            });
        }
    }
    for (name, forbidden) in WALLS {
        if !members.iter().any(|package| package.name == name) {
            continue;
        }
        let reached = dependencies(name)?;
        for bad in forbidden.iter().filter(|bad| reached.iter().any(|r| r == *bad)) {
            found.push(format!("{name} depends on {bad}"));
        }
    }
    Ok(found)
}

/// Finds `std::fs` and `std::{fs, ..}`, and the like.
fn asks_of_the_machine(trees: &[Tree], see: &mut dyn FnMut(usize, &str)) {
    for (at, tree) in trees.iter().enumerate() {
        let after = |n: usize| trees.get(at.saturating_add(n));
        let is_path = tree.word() == Some("std")
            && [1, 2].into_iter().all(|n| after(n).is_some_and(|it| it.is(':')));
        if let Some(named) = after(3).filter(|_| is_path) {
            let all = named.group('{').unwrap_or(core::slice::from_ref(named));
            for it in all {
                if let Some(word) = it.word().filter(|word| MACHINE.contains(word)) {
                    see(it.line, word);
                }
            }
        }
        if let What::Group(_, inside) = &tree.what {
            asks_of_the_machine(inside, see);
        }
    }
}

/// All crates that `package` is built from, on any target.
fn dependencies(package: &str) -> Result<Vec<String>> {
    let output = cargo()
        .args(["tree", "--package", package, "--edges", "normal", "--target", "all"])
        .args(["--prefix", "none", "--format", "{p}"])
        .output()?;
    if !output.status.success() {
        bail!("cargo tree: {}", String::from_utf8_lossy(&output.stderr));
    }
    let text = String::from_utf8(output.stdout)?;
    let names = text.lines().filter_map(|line| line.split(' ').next());
    Ok(names.map(str::to_owned).collect())
}

#[cfg(test)]
mod tests {
    use super::super::rust::trees;
    use super::*;

    #[test]
    fn what_asks_the_machine_is_seen_and_tests_may() {
        let asked = |text: &str| {
            let mut all = Vec::new();
            let trees = trees(text).expect("Rust");
            asks_of_the_machine(&trees, &mut |line, what| all.push(format!("{line}:{what}")));
            all.join(" ")
        };
        assert_eq!(asked("use std::time::Instant;\nfn f() { std::fs::read(a) }"), "1:time 2:fs");
        assert_eq!(asked("use std::{env, fmt, thread::spawn};"), "1:env 1:thread");
        assert_eq!(asked("use std::fmt;\n#[cfg(test)]\nmod t { use std::fs; }\n// std::fs"), "");
    }

    #[test]
    fn dependencies_are_seen_through_any_number_of_steps() {
        let reached = dependencies("reckoner-app").expect("cargo tree");
        assert!(reached.iter().any(|name| name == "web-sys"), "{reached:?}");
        assert!(reached.iter().any(|name| name == "futures-core"), "{reached:?}");
    }
}
