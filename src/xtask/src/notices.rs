//! What the published files are made of: every crate in them with its licence, as one text beside the page and in the
//! JavaScript package, and a check that each licence is one that we may ship under.
//!
//! Cargo says which crates these are and where their sources lie; nothing is fetched or installed for it.

use std::collections::{BTreeMap, BTreeSet};
use std::fs;
use std::path::{Path, PathBuf};

use anyhow::{Context, Result, bail};
use serde::Deserialize;
use spdx::{Expression, LicenseReq, ParseMode};

use crate::workspace::{IN_PARTS, cargo, root};

/// The name of the text. The page of the app fetches it by this name.
pub(crate) const FILE: &str = "notices.txt";

/// The programs that are published with the page.
pub(crate) const PAGE: [&str; 2] = ["reckoner-app", "reckoner-planner"];

/// Licences that ask for no more than that their text goes along, by their SPDX names, and why each is here.
const ALLOWED: [(&str, &str); 6] = [
    ("MIT", "our own, and most crates'"),
    ("Apache-2.0", "our own, and most crates'"),
    ("Zlib", "asks only that the origin is not misstated"),
    ("Unicode-3.0", "the tables of characters"),
    ("BSD-3-Clause", "as MIT, and the names of authors are not used"),
    ("ISC", "as MIT, in fewer words"),
];

/// How the licence of a crate begins, in the file names that crates give it; the first that is there is shipped, where a
/// crate is under several at our choice.
const TEXTS: [&str; 4] = ["license-mit", "license-zlib", "license", "copying"];

/// Files that go along whatever the choice.
const ALWAYS: [&str; 2] = ["license-unicode", "notice"];

/// What is shipped and is no crate of ours: name, licence, holders.
const BESIDE: [(&str, &str, &str); 1] =
    [("the Rust standard library", "MIT OR Apache-2.0", "The Rust Project contributors")];

#[derive(Deserialize)]
struct Metadata {
    packages: Vec<Package>,
    resolve: Resolve,
}

#[derive(Deserialize)]
struct Package {
    id: String,
    name: String,
    version: String,
    license: Option<String>,
    authors: Vec<String>,
    source: Option<String>,
    manifest_path: PathBuf,
    targets: Vec<Target>,
}

#[derive(Deserialize)]
struct Target {
    kind: Vec<String>,
}

#[derive(Deserialize)]
struct Resolve {
    nodes: Vec<Node>,
}

#[derive(Deserialize)]
struct Node {
    id: String,
    deps: Vec<Link>,
}

#[derive(Deserialize)]
struct Link {
    pkg: String,
    dep_kinds: Vec<Kind>,
}

#[derive(Deserialize)]
struct Kind {
    kind: Option<String>,
}

impl Package {
    /// It writes code while others are compiled, and is in no program.
    fn is_macro(&self) -> bool {
        self.targets.iter().any(|target| target.kind.iter().any(|kind| kind == "proc-macro"))
    }

    fn is_ours(&self) -> bool {
        self.source.is_none()
    }

    fn licence(&self) -> Result<&str> {
        self.license.as_deref().with_context(|| format!("{} names no licence", self.name))
    }

    /// The texts that go along: those in its sources, else the usual one with its authors.
    fn texts(&self, usual: &str) -> Result<String> {
        let folder = self.manifest_path.parent().context("a manifest in no folder")?;
        let mut names = Vec::new();
        for entry in fs::read_dir(folder).with_context(|| folder.display().to_string())? {
            names.extend(entry?.file_name().into_string());
        }
        names.sort();
        let beginning = |start: &str| {
            names
                .iter()
                .find(|name| name.to_lowercase().starts_with(start))
                .map(|it| folder.join(it))
        };
        let chosen = TEXTS.iter().find_map(|start| beginning(start));
        let always = ALWAYS.iter().filter_map(|start| beginning(start));
        let mut files: Vec<PathBuf> = chosen.into_iter().chain(always).collect();
        files.dedup();
        if files.is_empty() {
            let holders = self.authors.iter().map(|author| without_address(author));
            return Ok(usual_text(usual, &holders.collect::<Vec<_>>().join(", "), &self.name));
        }
        let texts: Result<Vec<String>> =
            files.iter().map(|file| Ok(unified(&fs::read_to_string(file)?))).collect();
        Ok(texts?.join("\n\n"))
    }
}

/// `A. Author <address>` without the address.
fn without_address(author: &str) -> &str {
    author.split('<').next().unwrap_or(author).trim()
}

/// The MIT text of our own LICENSE, with other holders.
fn usual_text(usual: &str, holders: &str, name: &str) -> String {
    let holders =
        if holders.is_empty() { format!("the authors of {name}") } else { holders.to_owned() };
    format!("Copyright (c) {holders}\n\n{usual}")
}

/// The part of our own LICENSE that is the MIT text.
fn mit_text(licence: &str) -> Result<String> {
    let text = licence.find("Permission is hereby granted").and_then(|from| {
        let rest = licence.get(from..)?;
        let to = rest.find("\n----").unwrap_or(rest.len());
        rest.get(..to)
    });
    text.map(unified).context("LICENSE without the MIT text")
}

/// One way to end lines, none empty at the ends, and each paragraph one line, which the screen that shows it breaks where its
/// edge is. Texts that differ in no more than that are then told once.
fn unified(text: &str) -> String {
    let mut all: Vec<String> = Vec::new();
    let mut before = "";
    for line in text.lines().map(str::trim_end) {
        match all.last_mut() {
            Some(last) if is_gone_on_with(before, line) => {
                last.push(' ');
                last.push_str(line.trim_start());
            }
            _ if is_rule(line) => all.push(RULE.chars().take(line.len()).collect()),
            _ => all.push(line.to_owned()),
        }
        before = line;
    }
    all.join("\n").trim().to_owned()
}

/// A line across the text; it fits on the narrowest phone.
const RULE: &str = "------------------------------";

fn is_rule(line: &str) -> bool {
    line.len() > 3 && line.chars().all(|it| it == '-' || it == '=')
}

/// Whether `line` belongs to the paragraph of the line before it: that one was broken at an edge, and this one begins nothing
/// of its own.
fn is_gone_on_with(before: &str, line: &str) -> bool {
    let is_broken = before.trim_start().len() > 40 && !is_rule(before);
    let text = line.trim_start();
    let is_in_the_middle = line.len() - text.len() > 8;
    let begins = |it: char| it.is_ascii_digit() || "(*-=#".contains(it);
    let is_own = ["Copyright", "http"].iter().any(|it| text.starts_with(it));
    is_broken && !text.is_empty() && !is_in_the_middle && !text.starts_with(begins) && !is_own
}

/// The crates in some programs of ours, by name and version.
fn shipped(programs: &[&str]) -> Result<Vec<Package>> {
    let output = cargo()
        .args(["metadata", "--format-version", "1", "--locked"])
        // What takes the program apart is shipped in it.
        .args(["--features", &format!("reckoner-app/{IN_PARTS}")])
        .args(["--filter-platform", "wasm32-unknown-unknown"])
        .output()
        .context("cannot start cargo")?;
    if !output.status.success() {
        bail!("cargo metadata: {}", String::from_utf8_lossy(&output.stderr));
    }
    let metadata: Metadata =
        serde_json::from_slice(&output.stdout).context("reading cargo's list of crates")?;
    let nodes: BTreeMap<&str, &Node> =
        metadata.resolve.nodes.iter().map(|node| (node.id.as_str(), node)).collect();
    let macros: BTreeSet<&str> =
        metadata.packages.iter().filter(|it| it.is_macro()).map(|it| it.id.as_str()).collect();
    let is_program = |it: &&Package| it.is_ours() && programs.contains(&it.name.as_str());
    let mut next: Vec<String> =
        metadata.packages.iter().filter(is_program).map(|it| it.id.clone()).collect();
    if next.len() != programs.len() {
        bail!("{programs:?} are not all members of the workspace");
    }
    let mut seen = BTreeSet::new();
    while let Some(id) = next.pop() {
        let Some(node) = nodes.get(id.as_str()) else { continue };
        let links =
            node.deps.iter().filter(|link| link.dep_kinds.iter().any(|it| it.kind.is_none()));
        next.extend(
            links
                .map(|link| link.pkg.clone())
                .filter(|id| !macros.contains(id.as_str()) && !seen.contains(id)),
        );
        seen.insert(id);
    }
    let mut found: Vec<Package> =
        metadata.packages.into_iter().filter(|it| seen.contains(&it.id) && !it.is_ours()).collect();
    found.sort_by(|a, b| (&a.name, &a.version).cmp(&(&b.name, &b.version)));
    Ok(found)
}

/// The whole text for some programs: our own licence, then each other one once with the crates under it.
pub(crate) fn text(programs: &[&str]) -> Result<String> {
    let own = fs::read_to_string(root().join("LICENSE")).context("LICENSE")?;
    let usual = mit_text(&own)?;
    let mut under: BTreeMap<String, Vec<String>> = BTreeMap::new();
    let crates = shipped(programs)?;
    check(&crates)?;
    for package in &crates {
        let said = format!("{} {} ({})", package.name, package.version, package.licence()?);
        under.entry(package.texts(&usual)?).or_default().push(said);
    }
    for (name, licence, holders) in BESIDE {
        let text = usual_text(&usual, holders, name);
        under.entry(text).or_default().push(format!("{name} ({licence})"));
    }
    let mut parts: Vec<String> = under
        .into_iter()
        .map(|(text, names)| (names, text))
        .collect::<BTreeMap<_, _>>()
        .into_iter()
        .map(|(names, text)| format!("{}\n\n{text}", names.join("\n")))
        .collect();
    parts.insert(0, unified(&own));
    Ok(parts.join(&format!("\n\n{}\n\n", "=".repeat(30))) + "\n")
}

fn is_allowed(wanted: &LicenseReq) -> bool {
    let name = wanted.license.to_string();
    ALLOWED.iter().any(|(allowed, _)| *allowed == name)
}

fn check(crates: &[Package]) -> Result<()> {
    let mut refused = Vec::new();
    for package in crates {
        let licence = package.licence()?;
        let read = Expression::parse_mode(licence, ParseMode::LAX)
            .map_err(|why| anyhow::anyhow!("{}: {licence}: {why}", package.name))?;
        if !read.evaluate(is_allowed) {
            refused.push(format!("{} ({licence})", package.name));
        }
    }
    if !refused.is_empty() {
        bail!(
            "under licences that are not on the list of src/xtask/src/notices.rs: {}",
            refused.join(", ")
        );
    }
    Ok(())
}

/// Writes the text for some programs into a folder.
pub(crate) fn write(programs: &[&str], folder: &Path) -> Result<()> {
    let path = folder.join(FILE);
    fs::write(&path, text(programs)?).with_context(|| path.display().to_string())
}

#[cfg(test)]
mod tests {
    use super::*;

    fn package(name: &str, licence: &str) -> Package {
        Package {
            id: name.into(),
            name: name.into(),
            version: "1.0.0".into(),
            license: Some(licence.into()),
            authors: Vec::new(),
            source: Some("registry".into()),
            manifest_path: PathBuf::new(),
            targets: Vec::new(),
        }
    }

    #[test]
    fn a_licence_that_is_not_on_the_list_is_refused_unless_there_is_a_choice() {
        let refused = |licence| check(&[package("one", licence)]).is_err();
        assert!(!refused("MIT"));
        assert!(!refused("MIT/Apache-2.0"));
        assert!(!refused("Unlicense OR MIT"));
        assert!(!refused("(MIT OR Apache-2.0) AND Unicode-3.0"));
        assert!(refused("GPL-3.0-only"));
        assert!(refused("MIT AND GPL-3.0-only"));
        assert!(refused("no licence at all"));
    }

    #[test]
    fn a_paragraph_is_one_line_and_what_begins_of_itself_is_another() {
        let text = "\nCopyright (c) 2020 Somebody With A Rather Long Name\r
Copyright (c) 2021 Somebody Else

Redistribution and use, with or without changes, are
permitted provided that the following is met:
  1. Each copy keeps the notice above, this list and
     the disclaimer.
  * Nobody is named.
------------------------------------------------------------
Short.
Also short.\n\n";
        let wanted = "Copyright (c) 2020 Somebody With A Rather Long Name
Copyright (c) 2021 Somebody Else

Redistribution and use, with or without changes, are permitted provided that the following is met:
  1. Each copy keeps the notice above, this list and the disclaimer.
  * Nobody is named.
------------------------------
Short.
Also short.";
        assert_eq!(unified(text), wanted);
    }

    #[test]
    fn every_crate_that_is_shipped_has_a_text_and_no_text_stands_twice() {
        let text = text(&PAGE).expect("notices");
        let names = [
            "yew 0.",
            "wasm-bindgen 0.",
            "num-rational 0.",
            "qrcodegen 1.",
            "memchr 2.",
            "wasm_split_helpers 0.",
        ];
        for name in names {
            assert!(text.contains(&format!("\n{name}")), "{name}");
        }
        assert!(!text.contains("\nreckoner-"), "what is ours is under the first text");
        assert!(!text.contains("\nproptest "), "tests are not shipped");
        assert!(!text.contains("\nserde_derive "), "macros are not shipped");
        let rule = "=".repeat(30);
        let parts: Vec<&str> = text.split(&rule).collect();
        let without_names =
            parts.iter().skip(1).map(|part| part.trim().split_once("\n\n").map(|it| it.1));
        let texts: Vec<&str> = without_names.map(|it| it.expect("names, then a text")).collect();
        assert!(texts.iter().all(|text| text.len() > 300), "each is a whole licence");
        assert_eq!(texts.iter().collect::<BTreeSet<_>>().len(), texts.len());
    }
}
