//! Taking the page's program apart, after the linker and before the bindings generator, and joining the two scripts
//! that come of it.

use std::collections::HashMap;
use std::fs;
use std::path::{Path, PathBuf};

use anyhow::{Result, anyhow, bail};

/// The script with the loaders of the parts, as the first part imports it.
const LOADERS: &str = "./__wasm_split.js";

/// A program taken apart.
pub(super) struct Apart {
    /// What it starts with; the bindings generator goes over it next.
    pub(super) first: PathBuf,
    /// What it fetches later, each with its name. They are finished: only the first part meets the browser.
    pub(super) later: Vec<(PathBuf, String)>,
    /// The script that fetches them.
    pub(super) loaders: PathBuf,
}

/// Takes the linked program `wasm`, which has its relocations, apart into `folder`.
pub(super) fn take_apart(wasm: &Path, folder: &Path, bin: &str) -> Result<Apart> {
    if folder.exists() {
        fs::remove_dir_all(folder)?;
    }
    let linked = fs::read(wasm)?;
    let first = folder.join(format!("{bin}.wasm"));
    let page_script = format!("./{bin}.js");
    let mut options = wasm_split_cli_support::Options::new(&linked);
    options.output_dir = folder;
    options.main_out_path = &first;
    options.link_name = LOADERS;
    options.main_module = &page_script;
    let split = wasm_split_cli_support::transform(options)
        .map_err(|error| anyhow!("taking {} apart: {error:#}", wasm.display()))?;
    let mut files = split.split_modules;
    files.sort();
    let named = |file: PathBuf| {
        let name =
            name(&file.file_stem().unwrap_or_default().to_string_lossy(), &split.prefetch_map);
        (file, name)
    };
    let later = files.into_iter().map(named).collect();
    let loaders = folder.join(LOADERS);
    Ok(Apart { first, later, loaders })
}

/// The name of the file that the tool calls `file`, after the parts that fetch it: `split_job` holds what `job` alone
/// needs, `chunk_1` what several do.
fn name(file: &str, fetched: &HashMap<String, Vec<String>>) -> String {
    let fetches = |files: &Vec<String>| files.iter().any(|it| it.trim_end_matches(".wasm") == file);
    let needed = fetched.iter().filter(|(_, files)| fetches(files)).map(|(part, _)| part.as_str());
    let mut parts: Vec<&str> = needed.chain(file.strip_prefix("split_")).collect();
    parts.sort_unstable();
    parts.dedup();
    format!("reckoner-{}.wasm", parts.join("-"))
}

/// The script of the page with the loaders in it. Each imports the other, so under names with digests they could not
/// be two.
pub(super) fn joined(script: &str, loaders: &str) -> Result<String> {
    let mut names = Vec::new();
    let mut joined = String::with_capacity(script.len() + loaders.len());
    for line in script.lines() {
        match imported_from_loaders(line) {
            Some(name) => names.push(name),
            None => {
                joined.push_str(line);
                joined.push('\n');
            }
        }
    }
    if names.is_empty() {
        bail!("the script of the page imports no loader of a part");
    }
    let mut made = Vec::new();
    for line in loaders.lines() {
        if line.starts_with("import ") {
            continue;
        }
        let line = match line.strip_prefix("export const ") {
            Some(rest) => {
                made.push(rest.split_whitespace().next().unwrap_or_default());
                &line["export ".len()..]
            }
            None => line,
        };
        joined.push_str(line);
        joined.push('\n');
    }
    for name in names {
        joined.push_str(&format!("const {name} = {{ {} }};\n", made.join(", ")));
    }
    Ok(joined)
}

/// `import3` in `import * as import3 from "./__wasm_split.js"`.
fn imported_from_loaders(line: &str) -> Option<&str> {
    let (name, from) = line.strip_prefix("import * as ")?.split_once(" from ")?;
    (from.trim_end_matches(';').trim_matches('"') == LOADERS).then_some(name)
}

/// The script with the final name of a part in place of the one that the tool gave it.
pub(super) fn renamed(script: &str, asked_as: &str, name: &str) -> Result<String> {
    let asked = format!("\"./{asked_as}\"");
    if script.matches(&asked).count() != 1 {
        bail!("the script of the page should ask for {asked_as} once");
    }
    Ok(script.replace(&asked, &format!("\"./{name}\"")))
}

#[cfg(test)]
mod tests {
    use super::*;

    const SCRIPT: &str = "import * as import1 from \"./__wasm_split.js\"\n\
        import * as import2 from \"./__wasm_split.js\"\n\
        import { other } from \"./snippets/other.js\"\n\
        const imports = { \"./__wasm_split.js\": import1 };\n\
        export { initSync };\n";
    const LOADERS: &str = "import { initSync } from \"./app.js\";\n\
        const __chunk_1 = makeLoad(() => fetch(new URL(\"./chunk_1.wasm\", import.meta.url)), []);\n\
        export const __load_jobs = wrap(makeLoad(() => fetch(new URL(\"./split_jobs.wasm\", import.meta.url)), [__chunk_1]));\n";

    #[test]
    fn the_two_scripts_become_one_that_imports_neither() {
        let joined = joined(SCRIPT, LOADERS).expect("joined");
        assert!(!joined.contains("from \"./__wasm_split.js\""), "{joined}");
        assert!(!joined.contains("from \"./app.js\""), "{joined}");
        assert!(joined.contains("import { other } from \"./snippets/other.js\"\n"), "{joined}");
        assert!(joined.contains("\nconst __load_jobs = wrap("), "{joined}");
        assert!(
            joined
                .ends_with("const import1 = { __load_jobs };\nconst import2 = { __load_jobs };\n")
        );
    }

    #[test]
    fn a_script_without_loaders_is_refused() {
        assert!(joined("export { initSync };\n", LOADERS).is_err());
    }

    #[test]
    fn a_file_is_named_after_the_parts_that_fetch_it() {
        let files = |names: &[&str]| names.iter().map(|it| (*it).to_owned()).collect();
        let fetched = HashMap::from([
            ("wood".to_owned(), files(&["chunk_1", "split_wood"])),
            ("jobs".to_owned(), files(&["chunk_1", "chunk_2", "split_jobs"])),
            ("shelf".to_owned(), files(&["chunk_1", "chunk_2"])),
        ]);
        let names =
            ["split_wood", "chunk_1", "chunk_2", "split_shelf"].map(|it| name(it, &fetched));
        let expected = ["wood", "jobs-shelf-wood", "jobs-shelf", "shelf"];
        assert_eq!(names, expected.map(|it| format!("reckoner-{it}.wasm")));
    }

    #[test]
    fn the_script_asks_for_a_part_by_its_final_name() {
        let script = joined(SCRIPT, LOADERS).expect("joined");
        let script = renamed(&script, "split_jobs.wasm", "reckoner-jobs-0f.wasm").expect("renamed");
        assert!(
            script.contains("new URL(\"./reckoner-jobs-0f.wasm\", import.meta.url)"),
            "{script}"
        );
        assert!(renamed(&script, "split_jobs.wasm", "again.wasm").is_err());
    }
}
