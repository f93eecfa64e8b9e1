//! Which module may use which: the pictures of words in `DEVELOPERS.md`, held against the code.
//!
//! A picture is fenced as `order FOLDER`. Its lines are layers: a module uses only what stands in a line below its own.
//! A name holds for all files under it, up to a longer name. Names joined by `+` count as one. A folder's own file
//! (`mod.rs`) and the files in it may use each other: it holds what they share, and lends on what they make. That goes
//! for the own file alone: two files of one folder stand in their lines, also where one of them falls under the folder's name.

use std::collections::{BTreeMap, BTreeSet};

use super::fence::{Fence, fences};
use super::house::{House, Path};
use super::paths::Names;
use super::rust::Tree;

/// The sources that must have a picture.
const PICTURED: [&str; 4] = ["src/core/src", "src/cutplan/src", "src/formats/src", "src/app/src"];

/// Every breach of the pictures in `docs`, among the files with their texts.
pub(super) fn breaches(
    docs_path: &str,
    docs: &str,
    sources: &[(String, Vec<Tree>)],
) -> Vec<String> {
    let pictures = fences(docs, "order");
    let missing = PICTURED.iter().filter(|folder| pictures.iter().all(|it| it.about != **folder));
    let missing = missing.map(|folder| format!("{docs_path}: no picture of {folder}"));
    missing.chain(pictures.iter().flat_map(|it| of_picture(docs_path, it, sources))).collect()
}

/// One name of a picture.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
struct Place {
    /// From the top.
    layer: usize,
    /// Within the layer; names joined by `+` share it.
    at: usize,
}

struct Order<'a> {
    places: BTreeMap<Path, Place>,
    house: House<'a>,
}

fn of_picture(
    docs_path: &str,
    picture: &Fence<'_>,
    sources: &[(String, Vec<Tree>)],
) -> Vec<String> {
    let mut found = Vec::new();
    let mut places = BTreeMap::new();
    for (layer, (line, text)) in picture.lines.iter().enumerate() {
        for (at, joined) in text.split_whitespace().enumerate() {
            for name in joined.split('+') {
                let path: Path = name.split('/').map(str::to_owned).collect();
                if places.insert(path, Place { layer, at }).is_some() {
                    found.push(format!("{docs_path}:{line}: {name} stands twice in the picture"));
                }
            }
        }
    }
    let house = House::of(picture.about, sources);
    let modules: BTreeSet<&Path> = house
        .files
        .iter()
        .map(|(_, module, _)| module)
        .filter(|module| !module.is_empty())
        .collect();
    for name in places.keys().filter(|name| !modules.contains(name)) {
        let line = picture.line;
        found.push(format!("{docs_path}:{line}: there is no {}/{}", picture.about, name.join("/")));
    }
    let order = Order { places, house };
    let files = order.house.files.iter();
    found.extend(files.flat_map(|(path, module, names)| order.of_file(path, module, names)));
    found
}

impl Order<'_> {
    fn of_file(&self, path: &str, module: &Path, names: &Names) -> Vec<String> {
        // A root may use everything.
        if module.is_empty() {
            return Vec::new();
        }
        let Some((own_name, own)) = self.place(module) else {
            return vec![format!("{path}: stands in no line of its picture in DEVELOPERS.md")];
        };
        let mut found = Vec::new();
        for named in &names.named {
            let line = named.line;
            let places = self.house.targets(&named.path);
            if places.is_empty() {
                let name = named.path.join("::");
                found.push(format!("{path}:{line}: crate::{name} stands in no module"));
            }
            for target in &places {
                // A file that is missing in the picture is reported for itself.
                let Some((name, place)) = self.place(target) else { continue };
                // The files are compared, not the names that hold for them: one name may hold for many files.
                let is_family = target.starts_with(module) || module.starts_with(target);
                if place != own && !is_family && place.layer <= own.layer {
                    let (own, name) = (own_name.join("/"), name.join("/"));
                    found.push(format!("{path}:{line}: {own} uses {name}, which does not stand below it in DEVELOPERS.md"));
                }
            }
        }
        found.dedup();
        found
    }

    /// The longest name of the picture that holds for a path.
    fn place<'a>(&self, path: &'a [String]) -> Option<(&'a [String], Place)> {
        let mut prefixes = (1..=path.len()).rev().map(|length| &path[..length]);
        prefixes.find_map(|prefix| Some((prefix, *self.places.get(prefix)?)))
    }
}

#[cfg(test)]
mod tests {
    use super::super::rust::trees;
    use super::*;

    /// The breaches of a small crate in the place of the core.
    fn broken(picture: &str, files: &[(&str, &str)]) -> Vec<String> {
        let docs = format!("# Order\n\n```order src/core/src\n{picture}\n```\n");
        let files: Vec<_> = files
            .iter()
            .map(|(path, text)| (format!("src/core/src/{path}"), trees(text).expect("Rust")))
            .collect();
        let all = breaches("DEVELOPERS.md", &docs, &files);
        all.into_iter().filter(|breach| !breach.contains("no picture of")).collect()
    }

    const SAWS: (&str, &str) = ("saws/mod.rs", "//! Saws.\nuse crate::wood::Oak;\n");

    #[test]
    fn a_module_uses_only_what_stands_below_it() {
        let wood = ("wood.rs", "//! Wood.\npub struct Oak;\n");
        assert_eq!(broken("saws\nwood", &[SAWS, wood]), [""; 0]);
        let up = ("wood.rs", "//! Wood.\n\nfn f() { crate::saws::cut() }\n");
        assert_eq!(
            broken("saws\nwood", &[SAWS, up]),
            [
                "src/core/src/wood.rs:3: wood uses saws, which does not stand below it in DEVELOPERS.md"
            ]
        );
        let beside = broken("saws wood", &[SAWS, wood]);
        assert_eq!(beside.len(), 1, "{beside:?}");
        assert_eq!(broken("saws+wood", &[SAWS, up]), [""; 0]);
    }

    #[test]
    fn a_longer_name_stands_for_itself() {
        let teeth = ("saws/teeth.rs", "//! Teeth.\nuse super::Saw;\n");
        let saws = ("saws/mod.rs", "//! Saws.\nuse crate::wood::Oak;\nfn f() { teeth::g() }\n");
        let wood = ("wood.rs", "//! Wood.\nuse crate::saws::teeth::Tooth;\n");
        assert_eq!(broken("saws\nwood\nsaws/teeth", &[saws, teeth, wood]), [""; 0]);
        assert_eq!(broken("saws/teeth\nsaws\nwood", &[saws, teeth, wood]).len(), 1);
        let saws = ("saws/mod.rs", "//! Saws.\n");
        let planes = ("planes.rs", "//! Planes.\nuse crate::saws::teeth::Tooth;\n");
        assert_eq!(broken("planes\nsaws\nsaws/teeth", &[saws, teeth, planes]), [""; 0]);
        assert_eq!(broken("saws/teeth\nplanes\nsaws", &[saws, teeth, planes]).len(), 1);
    }

    #[test]
    fn only_the_own_file_of_a_folder_and_the_files_in_it_belong_together() {
        let saws = ("saws/mod.rs", "//! Saws.\npub use blade::Blade;\npub struct Saw;\n");
        let blade = ("saws/blade.rs", "//! Blades.\nuse super::Saw;\n");
        for use_ in ["use super::blade::Blade;", "use super::Blade;"] {
            // It falls under the name of the folder, and is not its own file.
            let teeth = ("saws/teeth.rs", use_);
            assert_eq!(broken("saws\nsaws/blade", &[saws, blade, teeth]), [""; 0], "{use_}");
            assert_eq!(
                broken("saws/blade\nsaws", &[saws, blade, teeth]),
                [
                    "src/core/src/saws/teeth.rs:1: saws uses saws/blade, which does not stand below it in DEVELOPERS.md"
                ],
                "{use_}"
            );
        }
    }

    #[test]
    fn what_a_module_lends_on_counts_where_it_is_made_too() {
        let saws = ("saws/mod.rs", "//! Saws.\npub use teeth::Tooth;\n");
        let teeth = ("saws/teeth.rs", "//! Teeth.\nuse crate::wood::Oak;\n");
        let wood = ("wood.rs", "//! Wood.\nuse crate::saws::Tooth;\n");
        assert_eq!(
            broken("saws/teeth\nwood\nsaws", &[saws, teeth, wood]),
            [
                "src/core/src/wood.rs:2: wood uses saws/teeth, which does not stand below it in DEVELOPERS.md"
            ]
        );
    }

    #[test]
    fn what_the_root_lends_on_counts_where_it_is_made() {
        let root = ("lib.rs", "//! All.\npub use saws::{Saw, cut as sawn};\n");
        let macros = ("saws/mod.rs", "//! Saws.\nmacro_rules! say { () => {} }\n");
        for use_ in ["use crate::Saw;", "use crate::sawn;", "use crate::say;"] {
            let wood = ("wood.rs", use_);
            assert_eq!(broken("saws\nwood", &[root, macros, wood]).len(), 1, "{use_}");
            assert_eq!(broken("wood\nsaws", &[root, macros, wood]), [""; 0], "{use_}");
        }
        assert_eq!(broken("wood", &[root, ("wood.rs", "use crate::Plane;")]).len(), 1);
    }

    #[test]
    fn the_picture_and_the_files_are_the_same() {
        assert_eq!(broken("saws\nwood", &[("wood.rs", "//! Wood.\n")]).len(), 1);
        assert_eq!(broken("saws", &[("wood.rs", ""), ("saws/mod.rs", "")]).len(), 1);
        assert_eq!(broken("saws\nsaws", &[("saws/mod.rs", "")]).len(), 1);
        assert_eq!(breaches("DEVELOPERS.md", "", &[]).len(), PICTURED.len());
        assert_eq!(
            broken("wood", &[("wood.rs", ""), ("wood/tests.rs", "use crate::saws;")]),
            [""; 0]
        );
    }
}
