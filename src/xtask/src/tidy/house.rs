//! The files of one crate with what each names, and where that is made.

use std::collections::{BTreeMap, BTreeSet};

use super::paths::{Names, names};
use super::rust::{Tree, module};

/// A module, from the root of its crate: `["sheet", "ask"]`; empty for the root.
pub(super) type Path = Vec<String>;

/// The longest chain of names that lend on from each other.
const MOST_LENT: usize = 8;

/// The files of a folder of sources, without tests.
pub(super) struct House<'a> {
    /// Where each lies, its module, and what it names.
    pub(super) files: Vec<(&'a str, Path, Names)>,
    /// What each module brings in or makes that others may name there: a file's `use`, a macro at the root.
    brought: BTreeMap<Path, BTreeMap<String, Path>>,
}

impl<'a> House<'a> {
    /// Reads the files that lie in `folder`.
    pub(super) fn of(folder: &str, sources: &'a [(String, Vec<Tree>)]) -> House<'a> {
        let own: Vec<(&str, &[Tree], Path)> = sources
            .iter()
            .filter_map(|(path, trees)| {
                let module = module(path.strip_prefix(folder)?.strip_prefix('/')?)?;
                Some((path.as_str(), trees.as_slice(), module))
            })
            .collect();
        let modules: BTreeSet<Path> = own.iter().map(|(.., module)| module.clone()).collect();
        let read = own.into_iter().map(|(path, trees, module)| {
            let below = modules.iter().filter_map(|other| other.split_last());
            let below = below.filter(|(_, above)| *above == module);
            let children = below.map(|(child, _)| child.clone()).collect();
            let names = names(trees, &module, &children);
            (path, module, names)
        });
        let files: Vec<(&str, Path, Names)> = read.collect();
        let mut brought: BTreeMap<Path, BTreeMap<String, Path>> = BTreeMap::new();
        for (_, module, names) in &files {
            brought.entry(module.clone()).or_default().extend(names.brought.clone());
            let macros = names.macros.iter().map(|name| (name.clone(), module.clone()));
            brought.entry(Path::new()).or_default().extend(macros);
        }
        House { files, brought }
    }

    /// The modules that a path goes through: the one it names, and those from which that one has what is named.
    pub(super) fn targets(&self, path: &[String]) -> Vec<Path> {
        let mut targets = Vec::new();
        let mut path = path.to_vec();
        for _ in 0..MOST_LENT {
            let mut ends = (0..=path.len()).rev();
            let Some(end) = ends.find(|end| self.brought.contains_key(&path[..*end])) else {
                break;
            };
            if end > 0 {
                targets.push(path[..end].to_vec());
            }
            let lent = path.get(end).and_then(|name| self.brought.get(&path[..end])?.get(name));
            let Some(lent) = lent.filter(|lent| !path.starts_with(lent)) else { break };
            path = lent.iter().chain(&path[end + 1..]).cloned().collect();
        }
        targets
    }
}
