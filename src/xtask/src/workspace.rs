//! Where things are, who the members are, and how commands are run.

use std::path::{Path, PathBuf};
use std::process::Command;
use std::sync::OnceLock;

use anyhow::{Context, Result, bail};
use serde::Deserialize;

/// The feature of a package whose program is made to be taken apart.
pub(crate) const IN_PARTS: &str = "parts";

/// The folder with the top `Cargo.toml`.
pub(crate) fn root() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR"))
        .ancestors()
        .nth(2)
        .map_or_else(|| PathBuf::from("."), Path::to_path_buf)
}

/// What xtask makes for itself: optimised wasm, npm packages, folders in the making.
pub(crate) fn scratch() -> PathBuf {
    target_folder().join("xtask")
}

/// Cargo's target folder.
pub(crate) fn target_folder() -> PathBuf {
    std::env::var_os("CARGO_TARGET_DIR")
        .map_or_else(|| root().join("target"), |folder| root().join(folder))
}

/// The published folder.
pub(crate) fn dist() -> PathBuf {
    root().join("dist")
}

/// Where this program lies, as of the first call: `main` asks before any build can replace it,
/// after which the system would name a deleted file.
pub(crate) fn this_program() -> Result<&'static Path> {
    static PATH: OnceLock<PathBuf> = OnceLock::new();
    if let Some(path) = PATH.get() {
        return Ok(path);
    }
    let path = std::env::current_exe().context("finding this program")?;
    Ok(PATH.get_or_init(|| path))
}

/// The same cargo that runs this.
pub(crate) fn cargo() -> Command {
    let cargo = std::env::var_os("CARGO").unwrap_or_else(|| "cargo".into());
    let mut command = Command::new(cargo);
    command.current_dir(root());
    command
}

/// Says what is about to happen.
pub(crate) fn say(what: &str) {
    eprintln!("[xtask] {what}");
}

/// Says what it does, does it, and fails if the command does.
pub(crate) fn run(what: &str, command: &mut Command) -> Result<()> {
    say(what);
    let program = command.get_program().to_owned();
    let status = command
        .status()
        .with_context(|| format!("cannot start {}", Path::new(&program).display()))?;
    if !status.success() {
        bail!("{what}: failed ({status})");
    }
    Ok(())
}

/// A member of the workspace, as cargo describes it.
#[derive(Debug, Deserialize)]
pub(crate) struct Package {
    pub(crate) name: String,
    pub(crate) manifest_path: PathBuf,
    pub(crate) dependencies: Vec<Dependency>,
}

/// One dependency of a member.
#[derive(Debug, Deserialize)]
pub(crate) struct Dependency {
    pub(crate) name: String,
    /// Absent for a normal dependency, else "dev" or "build".
    pub(crate) kind: Option<String>,
}

impl Package {
    /// Whether it has tests that run in a browser.
    pub(crate) fn has_browser_tests(&self) -> bool {
        self.dependencies
            .iter()
            .any(|d| d.name == "wasm-bindgen-test" && d.kind.as_deref() == Some("dev"))
    }

    /// Whether its own code meets the browser.
    pub(crate) fn is_for_the_browser(&self) -> bool {
        self.dependencies.iter().any(|d| d.name == "wasm-bindgen" && d.kind.is_none())
    }
}

#[derive(Deserialize)]
struct Metadata {
    packages: Vec<Package>,
}

/// All members of the workspace.
pub(crate) fn packages() -> Result<Vec<Package>> {
    let output = cargo()
        .args(["metadata", "--no-deps", "--format-version", "1"])
        .output()
        .context("cannot start cargo")?;
    if !output.status.success() {
        bail!("cargo metadata: {}", String::from_utf8_lossy(&output.stderr));
    }
    let metadata: Metadata =
        serde_json::from_slice(&output.stdout).context("reading cargo's list of packages")?;
    Ok(metadata.packages)
}
