//! Formatting, clippy and tidy, cheapest first, warnings denied.

use anyhow::Result;

use crate::tools::{WASM, ensure_wasm_target};
use crate::workspace::{cargo, packages, root, run};
use crate::{tidy, workspace};

/// Checks everything that needs no test run.
pub(crate) fn lint() -> Result<()> {
    run("formatting", cargo().args(["fmt", "--all", "--check"]))?;
    workspace::say("tidy");
    tidy::check(&root())?;
    run(
        "clippy, native",
        cargo().args(["clippy", "--workspace", "--all-targets", "--", "-D", "warnings"]),
    )?;
    ensure_wasm_target()?;
    let mut wasm = cargo();
    // The program in one piece is compiled by the browser tests.
    wasm.args(["clippy", "--all-targets", "--all-features", "--target", WASM]);
    for package in packages()?.iter().filter(|package| package.is_for_the_browser()) {
        wasm.args(["--package", &package.name]);
    }
    run("clippy, wasm", wasm.args(["--", "-D", "warnings"]))
}
