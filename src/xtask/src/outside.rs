//! Checks that need a program which cargo does not bring and which takes minutes to build, so it is never built unasked:
//! changes of the code that a test must notice, and what is known against the crates we use.

use anyhow::{Context, Result, bail};

use crate::tools::find;
use crate::workspace::{cargo, run};

/// What is changed when no folder is named.
const CHANGED: [&str; 3] = ["src/core", "src/formats", "src/cutplan"];

/// Changes the code in one place after the other, and lists the changes that no test notices. `words` are folders, and
/// `--shard K/N` for the K-th part of N, from 0; how and with which tests is in `.cargo/mutants.toml`.
pub(crate) fn mutants(words: &[&str]) -> Result<()> {
    needed("cargo-mutants")?;
    let mut command = cargo();
    // One at a time: each change is a build and all its tests.
    command.args(["mutants", "--jobs", "1", "--no-shuffle"]);
    let (mut words, mut folders) = (words.iter(), Vec::new());
    while let Some(word) = words.next() {
        match *word {
            "--shard" => {
                let part = words.next().context("--shard needs a part, such as 0/40")?;
                command.args(["--shard", part]);
            }
            folder => folders.push(folder.trim_end_matches('/')),
        }
    }
    if folders.is_empty() {
        folders.extend(CHANGED);
    }
    for folder in folders {
        command.args(["--file", &format!("{folder}/**/*.rs")]);
    }
    run("changes that a test must notice", &mut command)
}

/// What is known against the crates in Cargo.lock, and their licences, by the rules in `deny.toml`.
pub(crate) fn advisories() -> Result<()> {
    needed("cargo-deny")?;
    run("advisories, licences and sources", cargo().args(["deny", "check"]))
}

fn needed(program: &str) -> Result<()> {
    if find(program).is_none() {
        bail!("{program} is not on the search path; get it with: cargo install --locked {program}");
    }
    Ok(())
}
