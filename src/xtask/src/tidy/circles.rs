//! No file needs another that needs it, directly or by way of others.
//!
//! A folder's own file and the files below it belong together, and are not held against each other.

use std::collections::{BTreeMap, BTreeSet};

use super::house::{House, Path};
use super::rust::Tree;

/// One circle of each crate that has any, as the files in it.
pub(super) fn breaches(sources: &[(String, Vec<Tree>)]) -> Vec<String> {
    let folder =
        |(path, _): &(String, Vec<Tree>)| Some(format!("{}/src", path.split_once("/src/")?.0));
    let folders: BTreeSet<String> = sources.iter().filter_map(folder).collect();
    let one = |folder: &String| {
        let circle = circle(&House::of(folder, sources))?;
        Some(format!("{folder}: a circle of files: {}", circle.join(" -> ")))
    };
    folders.iter().filter_map(one).collect()
}

/// A circle, which ends where it began.
fn circle(house: &House<'_>) -> Option<Vec<String>> {
    let mut needs: BTreeMap<&Path, BTreeSet<Path>> = BTreeMap::new();
    for (_, module, names) in &house.files {
        // Where it is made counts: by way of whom it is lent does not.
        let made = names.named.iter().filter_map(|named| house.targets(&named.path).pop());
        let is_family = |other: &Path| other.starts_with(module) || module.starts_with(other);
        needs.insert(module, made.filter(|other| !is_family(other)).collect());
    }
    // Whoever needs none that is left is in no circle.
    loop {
        let left: BTreeSet<Path> = needs.keys().map(|module| (*module).clone()).collect();
        needs.values_mut().for_each(|all| all.retain(|other| left.contains(other)));
        needs.retain(|_, all| !all.is_empty());
        if needs.len() == left.len() {
            break;
        }
    }
    // From each that is left one can go on for ever.
    let mut way: Vec<&Path> = vec![needs.keys().next()?];
    loop {
        let next = needs.get(way.last()?)?.first()?;
        let begun = way.iter().position(|module| *module == next);
        way.push(next);
        if let Some(begun) = begun {
            return Some(way.drain(begun..).map(|module| module.join("/")).collect());
        }
    }
}

#[cfg(test)]
mod tests {
    use super::super::rust::trees;
    use super::*;

    fn found(files: &[(&str, &str)]) -> Vec<String> {
        let files: Vec<_> = files
            .iter()
            .map(|(path, text)| (format!("src/core/src/{path}"), trees(text).expect("Rust")))
            .collect();
        breaches(&files)
    }

    #[test]
    fn two_files_that_need_each_other_are_a_circle_also_by_way_of_a_third() {
        let saw = ("shop/saw.rs", "use super::blade::Blade;");
        let blade = ("shop/blade.rs", "pub struct Blade;");
        assert_eq!(found(&[saw, blade]), [""; 0]);
        let back = ("shop/blade.rs", "fn f() { super::saw::g() }");
        assert_eq!(
            found(&[saw, back]),
            ["src/core/src: a circle of files: shop/blade -> shop/saw -> shop/blade"]
        );
        let fence = ("fence.rs", "use crate::shop::saw;");
        let by_way = ("shop/blade.rs", "use crate::fence::Fence;");
        assert_eq!(found(&[saw, by_way, fence]).len(), 1);
        let before = ("a.rs", "use crate::shop::saw;");
        assert_eq!(found(&[before, saw, back]).len(), 1, "one that leads into it is not in it");
    }

    #[test]
    fn where_it_is_made_counts_and_a_folder_is_one_family() {
        let shop = ("shop/mod.rs", "pub use blade::Blade;\nfn f() { saw::g() }");
        let blade = ("shop/blade.rs", "use crate::shop::saw;");
        let saw = ("shop/saw.rs", "use super::Shop;");
        assert_eq!(found(&[shop, blade, saw]), [""; 0]);
        let lent = ("shop/saw.rs", "use super::Blade;");
        assert_eq!(found(&[shop, blade, lent]).len(), 1);
    }
}
