//! No file needs another that needs it, directly or by way of others.
//!
//! A folder's own file counts as any other, but what it only lends on of the files in it is no need of them: where it works
//! with them, what they share with it stands below them in a file of its own.

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
        let needed = names.named.iter().filter_map(|named| {
            // Where it is made counts: by way of whom it is lent does not.
            let made = house.targets(&named.path).pop()?;
            let is_only_lent = named.lent.is_some() && made.starts_with(module);
            (made != *module && !is_only_lent).then_some(made)
        });
        needs.insert(module, needed.collect());
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
    fn where_it_is_made_counts() {
        let shop = ("shop/mod.rs", "pub use blade::Blade;\nfn f() { saw::g() }");
        let saw = ("shop/saw.rs", "use super::Blade;");
        assert_eq!(found(&[shop, saw, ("shop/blade.rs", "pub struct Blade;")]), [""; 0]);
        let back = ("shop/blade.rs", "use crate::shop::saw;");
        assert_eq!(found(&[shop, saw, back]).len(), 1);
    }

    #[test]
    fn the_own_file_of_a_folder_counts_as_any_other() {
        let saw = ("shop/saw.rs", "use super::Shop;\npub struct Saw;");
        let knot = ["src/core/src: a circle of files: shop -> shop/saw -> shop"];
        for shop in [
            "pub struct Shop;\nfn f() { saw::g() }",
            "use saw::Saw;\npub struct Shop(Saw);",
            "pub use saw::Saw;\npub struct Shop(Saw);",
            "pub use saw::*;\npub struct Shop;",
        ] {
            assert_eq!(found(&[("shop/mod.rs", shop), saw]), knot, "{shop}");
        }
        let lends = ("shop/mod.rs", "mod saw;\npub use saw::Saw;\npub struct Shop;");
        assert_eq!(found(&[lends, saw]), [""; 0]);
        // To lend on what is made elsewhere is to need it.
        let blade = ("blade.rs", "use crate::saw::Saw;\npub struct Blade;");
        assert_eq!(found(&[("saw.rs", "pub use crate::blade::Blade;"), blade]).len(), 1);
    }
}
