//! The tools that cargo does not bring along: the wasm target, a browser and its driver.

use std::path::{Path, PathBuf};
use std::process::Command;

use anyhow::{Context, Result, bail};

use crate::workspace::{run, say};

/// The target that the page is compiled for.
pub(crate) const WASM: &str = "wasm32-unknown-unknown";

/// Adds the wasm target when the compiler does not have it.
pub(crate) fn ensure_wasm_target() -> Result<()> {
    let output = Command::new("rustc")
        .args(["--print", "target-libdir", "--target", WASM])
        .output()
        .context("cannot start rustc")?;
    let folder = String::from_utf8_lossy(&output.stdout);
    if Path::new(folder.trim()).is_dir() {
        return Ok(());
    }
    run(
        "the wasm target is missing: adding it with rustup",
        Command::new("rustup").args(["target", "add", WASM]),
    )
    .with_context(|| format!("the target {WASM} is missing; get it with: rustup target add {WASM}"))
}

/// A Chromium and the driver that belongs to it.
pub(crate) struct Browser {
    pub(crate) chromium: PathBuf,
    pub(crate) driver: PathBuf,
}

/// Finds Chromium and chromedriver, installs them on Debian when run as root, or says how.
pub(crate) fn ensure_browser() -> Result<Browser> {
    install(find_browser, &["chromium", "chromium-driver"])
        .context("CHROMIUM and CHROMEDRIVER name other places")
}

/// What `found` finds; what is missing is installed on Debian when run as root, or it is said how.
pub(crate) fn install<T>(found: impl Fn() -> Option<T>, packages: &[&str]) -> Result<T> {
    if let Some(there) = found() {
        return Ok(there);
    }
    let all = packages.join(" ");
    if find("apt-get").is_some() && is_root() {
        say(&format!("installing with apt-get what is missing of: {all}"));
        let quiet = |arguments: &[&str]| {
            let mut command = Command::new("apt-get");
            command.args(arguments).env("DEBIAN_FRONTEND", "noninteractive");
            command
        };
        run("apt-get update", &mut quiet(&["update", "-qq"]))?;
        let mut install = quiet(&["install", "-y", "-qq", "--no-install-recommends"]);
        run(&format!("apt-get install {all}"), install.args(packages))?;
        if let Some(there) = found() {
            return Ok(there);
        }
    }
    bail!("something is missing of: {all}; on Debian: sudo apt-get install {all}")
}

fn find_browser() -> Option<Browser> {
    let named = |variable: &str| std::env::var_os(variable).map(PathBuf::from);
    Some(Browser {
        chromium: named("CHROMIUM")
            .or_else(|| find("chromium"))
            .or_else(|| find("chromium-browser"))
            .or_else(|| find("google-chrome"))?,
        driver: named("CHROMEDRIVER").or_else(|| find("chromedriver"))?,
    })
}

/// A program on the search path.
pub(crate) fn find(program: &str) -> Option<PathBuf> {
    let paths = std::env::var_os("PATH")?;
    std::env::split_paths(&paths).map(|folder| folder.join(program)).find(|path| path.is_file())
}

fn is_root() -> bool {
    Command::new("id").arg("-u").output().is_ok_and(|output| output.stdout.trim_ascii() == b"0")
}
