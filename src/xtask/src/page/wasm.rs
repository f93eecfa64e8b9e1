//! Compiling for the browser: cargo, then the bindings generator, then the optimiser.

use std::fs;
use std::path::{Path, PathBuf};

use anyhow::{Context, Result};
use sha2::{Digest, Sha256};

use crate::npm;
use crate::tools::{WASM, ensure_wasm_target};
use crate::workspace::{cargo, run, say, scratch, target_folder};

/// Whether to run the optimiser, which takes as long as everything else after an edit.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Optimise {
    /// For what is published and measured.
    Always,
    /// For a look at the app: only if the result lies there from an earlier build.
    IfKnown,
}

/// A program for the page.
pub(super) struct Built {
    pub(super) script: Vec<u8>,
    pub(super) wasm: Vec<u8>,
    /// Scripts that a library brought along; the folder may be absent.
    pub(super) snippets: PathBuf,
}

/// Builds a binary of `package` for the page.
///
/// `is_bare`: without the default features of the package. `is_fast`: optimised for speed, not for size.
pub(super) fn build_bin(
    package: &str,
    bin: &str,
    is_bare: bool,
    is_fast: bool,
    optimise: Optimise,
) -> Result<Built> {
    ensure_wasm_target()?;
    let bare: &[&str] = if is_bare { &["--no-default-features"] } else { &[] };
    let wasm = compile(package, &[&["--bin", bin], bare].concat(), bin)?;
    let out = scratch().join("bindings").join(bin);
    bindings(&wasm, &out, &["--no-typescript"])?;
    Ok(Built {
        script: fs::read(out.join(format!("{bin}.js")))?,
        wasm: optimised(&out.join(format!("{bin}_bg.wasm")), is_fast, optimise)?,
        snippets: out.join("snippets"),
    })
}

/// Builds the library `package` as a JavaScript package with types, into `folder`.
pub(super) fn build_js_package(package: &str, folder: &Path, optimise: Optimise) -> Result<()> {
    let library = package.replace('-', "_");
    let wasm = compile(package, &["--lib"], &library)?;
    bindings(&wasm, folder, &["--typescript"])?;
    let file = folder.join(format!("{library}_bg.wasm"));
    fs::write(&file, optimised(&file, false, optimise)?)?;
    Ok(())
}

fn compile(package: &str, what: &[&str], file: &str) -> Result<PathBuf> {
    let profile = if is_quick() { QUICK_PROFILE } else { "release" };
    run(
        &format!("compiling {package} for the browser ({profile})"),
        cargo()
            .args(["build", "--profile", profile, "--target", WASM, "--package", package])
            .args(what),
    )?;
    Ok(target_folder().join(WASM).join(profile).join(format!("{file}.wasm")))
}

/// The profile of `Cargo.toml` for trying an edit in the journeys: large and slow, but built in seconds.
const QUICK_PROFILE: &str = "quick";

/// Whether the user wants to wait as little as possible for a build that nobody publishes.
fn is_quick() -> bool {
    std::env::var_os("RECKONER_QUICK").is_some()
}

fn bindings(wasm: &Path, out: &Path, options: &[&str]) -> Result<()> {
    say(&format!("generating bindings for {}", wasm.file_name().unwrap_or_default().display()));
    if out.exists() {
        fs::remove_dir_all(out)?;
    }
    let mut arguments: Vec<std::ffi::OsString> = vec!["wasm-bindgen".into()];
    arguments.extend(options.iter().map(Into::into));
    arguments.extend(
        ["--target", "web", "--remove-name-section", "--remove-producers-section", "--out-dir"]
            .map(Into::into),
    );
    arguments.push(out.into());
    arguments.push(wasm.into());
    wasm_bindgen_cli::wasm_bindgen::run_cli_with_args(arguments)
        .with_context(|| format!("generating bindings for {}", wasm.display()))
}

/// The optimised bytes of `wasm`; what was optimised before is taken from the scratch folder.
fn optimised(wasm: &Path, is_fast: bool, optimise: Optimise) -> Result<Vec<u8>> {
    let bytes = fs::read(wasm)?;
    let digest: String = Sha256::digest(&bytes).iter().map(|b| format!("{b:02x}")).collect();
    let folder = scratch().join("optimised");
    let level = if is_fast { "-O3" } else { "-Oz" };
    let out = folder.join(format!("{digest}{level}.wasm"));
    if let Ok(known) = fs::read(&out) {
        return Ok(known);
    }
    if optimise == Optimise::IfKnown || is_quick() {
        say("not optimised: some 7 % larger than what `cargo xtask build` makes");
        return Ok(bytes);
    }
    let mut optimiser = npm::wasm_optimiser()?;
    fs::create_dir_all(&folder)?;
    let unfinished = out.with_extension("part");
    run(
        &format!("optimising {}", wasm.file_name().unwrap_or_default().display()),
        optimiser.arg(level).arg(wasm).arg("-o").arg(&unfinished),
    )?;
    fs::rename(&unfinished, &out)?;
    Ok(fs::read(&out)?)
}
