//! The tools that come from npm, pinned in `src/xtask/npm/package-lock.json`: the wasm optimiser
//! (binaryen), the accessibility engine (axe-core), a bundler (esbuild) and a checker of types (typescript).

use std::fs;
use std::path::PathBuf;
use std::process::Command;

use anyhow::{Context, Result, bail};

use crate::tools::find;
use crate::workspace::{root, run, scratch};

/// Where the packages are unpacked.
struct Packages(PathBuf);

/// Installs the pinned packages if they are not there yet.
fn ensure() -> Result<Packages> {
    let source = root().join("src/xtask/npm");
    let folder = scratch().join("npm");
    let lock = fs::read(source.join("package-lock.json"))?;
    // Written last, so it is there only after a whole install of this very lock file.
    let stamp = folder.join("installed-lock.json");
    if fs::read(&stamp).is_ok_and(|installed| installed == lock) {
        return Ok(Packages(folder));
    }
    let Some(npm) = find("npm") else {
        bail!(
            "npm is missing (it brings the wasm optimiser, axe-core, esbuild and typescript); on Debian: sudo apt-get install nodejs npm"
        );
    };
    fs::create_dir_all(&folder)?;
    for name in ["package.json", "package-lock.json"] {
        fs::copy(source.join(name), folder.join(name))?;
    }
    run(
        "installing the pinned npm packages into target/ (about 145 MB)",
        Command::new(npm)
            .args(["ci", "--ignore-scripts", "--no-audit", "--no-fund", "--loglevel=error"])
            .current_dir(&folder),
    )?;
    fs::write(&stamp, &lock)?;
    Ok(Packages(folder))
}

/// The command that starts the wasm optimiser.
///
/// # Errors
///
/// In one line what is missing.
pub(crate) fn wasm_optimiser() -> Result<Command> {
    let folder = ensure()?.0;
    let node = find("node").context("node is missing; on Debian: sudo apt-get install nodejs")?;
    let mut command = Command::new(node);
    command.arg(folder.join("node_modules/binaryen/bin/wasm-opt"));
    Ok(command)
}

/// The bundler, that packs the JavaScript package as a page's build does.
pub(crate) fn bundler() -> Result<PathBuf> {
    Ok(ensure()?.0.join("node_modules/esbuild/bin/esbuild"))
}

/// What checks the types of the JavaScript package.
pub(crate) fn type_checker() -> Result<PathBuf> {
    Ok(ensure()?.0.join("node_modules/typescript/bin/tsc"))
}

/// The script of the accessibility engine.
pub(crate) fn axe_script() -> Result<PathBuf> {
    Ok(ensure()?.0.join("node_modules/axe-core/axe.min.js"))
}
