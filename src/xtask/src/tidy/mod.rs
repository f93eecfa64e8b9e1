//! The rules of this repository that no compiler checks: few, and each for a reason.
//!
//! - Every source file opens by saying what it is for, and is short enough to be read.
//! - The walls: nothing of the browser, of a clock, storage or chance in the core crates, no planner in the page, and in
//!   the page only `platform` touches the browser.
//! - No circles: a module uses only what stands below it in the pictures of `DEVELOPERS.md`, and no file needs another that
//!   needs it.
//! - Floats stand where `DEVELOPERS.md` lists them, and scale factors between units in one file.
//! - Every style sheet is on the page, and every custom property is both made and used.
//! - The pages of a job have one word for one thing.
//! - A method of the planner names whom it follows.
//! - An id of a form is spelled once.
//! - No leftover notes, and no path of somebody's machine.

mod circles;
mod fence;
mod house;
mod ids;
mod methods;
mod numbers;
mod order;
mod paths;
mod rust;
mod text;
mod tokens;
mod walls;
mod words;

use std::fs;
use std::path::Path;
use std::process::Command;

use anyhow::{Context, Result, bail};

/// What holds for everybody who changes something, with the lists and pictures that are checked.
const DOCS: &str = "DEVELOPERS.md";

/// Checks everything and lists every breach.
pub(crate) fn check(root: &Path) -> Result<()> {
    let mut breaches = Vec::new();
    let mut sources = Vec::new();
    let mut tokens = tokens::Tokens::default();
    let docs = fs::read_to_string(root.join(DOCS))?;
    let index = fs::read_to_string(root.join("index.html"))?;
    for path in files(root)? {
        let bytes = fs::read(root.join(&path)).with_context(|| path.clone())?;
        // Pictures are not for reading.
        let Ok(text) = String::from_utf8(bytes) else { continue };
        breaches.extend(text::breaches(&path, &text));
        breaches.extend(words::breaches(&path, &text));
        breaches.extend(methods::breaches(&path, &text));
        if path.starts_with("styles/") && !index.contains(&format!("\"{path}\"")) {
            breaches.push(format!("{path}: not linked in index.html"));
        }
        if path.ends_with(".css") {
            tokens.read(&path, &text);
        }
        if path.ends_with(".rs") {
            match rust::trees(&text) {
                Ok(trees) => sources.push((path, trees)),
                Err(error) => breaches.push(format!("{path}: {error}")),
            }
        }
    }
    breaches.extend(tokens.breaches());
    breaches.extend(order::breaches(DOCS, &docs, &sources));
    breaches.extend(circles::breaches(&sources));
    breaches.extend(numbers::breaches(DOCS, &docs, &sources));
    breaches.extend(ids::breaches(&sources));
    breaches.extend(walls::breaches(&sources)?);
    if breaches.is_empty() {
        return Ok(());
    }
    bail!("{} breaches of the rules:\n  {}", breaches.len(), breaches.join("\n  "));
}

/// Everything that is or could be committed.
fn files(root: &Path) -> Result<Vec<String>> {
    let output = Command::new("git")
        .args(["ls-files", "--cached", "--others", "--exclude-standard", "-z"])
        .current_dir(root)
        .output()
        .context("cannot start git")?;
    if !output.status.success() {
        bail!("git ls-files: {}", String::from_utf8_lossy(&output.stderr));
    }
    let names = String::from_utf8(output.stdout)?;
    let names = names.split_terminator('\0').filter(|name| root.join(name).is_file());
    Ok(names.map(str::to_owned).collect())
}

#[cfg(test)]
mod tests {
    #[test]
    fn the_repository_is_tidy() {
        if let Err(breaches) = super::check(&crate::workspace::root()) {
            panic!("{breaches}");
        }
    }
}
