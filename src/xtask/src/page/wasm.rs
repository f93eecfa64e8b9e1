//! Compiling for the browser: cargo, then the bindings generator, then the optimiser.

use std::fs;
use std::path::{Path, PathBuf};

use anyhow::{Context, Result, bail};
use sha2::{Digest, Sha256};

use super::parts;
use crate::npm;
use crate::tools::{WASM, ensure_wasm_target};
use crate::workspace::{IN_PARTS, cargo, root, run, say, scratch, target_folder};

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
    pub(super) script: String,
    pub(super) wasm: Vec<u8>,
    /// What the program fetches later.
    pub(super) parts: Vec<Part>,
    /// Scripts that a library brought along; the folder may be absent.
    pub(super) snippets: PathBuf,
}

/// A part of a program, fetched after its start.
pub(super) struct Part {
    /// Name of its file, without a digest.
    pub(super) name: String,
    /// How the program's script calls it.
    pub(super) asked_as: String,
    pub(super) wasm: Vec<u8>,
}

/// Builds a binary of `package`, for the page, in parts.
pub(super) fn build_in_parts(package: &str, bin: &str, optimise: Optimise) -> Result<Built> {
    ensure_wasm_target()?;
    // The flag is for the linker alone: in RUSTFLAGS it would compile every dependency again.
    let relocations = ["--features", IN_PARTS, "--", "-Clink-arg=--emit-relocs"];
    let wasm = compile("rustc", package, &[&["--bin", bin], &relocations[..]].concat(), bin)?;
    say(&format!("taking {bin} apart"));
    let apart = parts::take_apart(&wasm, &scratch().join("parts").join(bin), bin)?;
    let out = scratch().join("bindings").join(bin);
    // What the parts import from the first one stays exported.
    bindings(&apart.first, &out, &["--no-typescript", "--keep-lld-exports"])?;
    let script = fs::read_to_string(out.join(format!("{bin}.js")))?;
    let mut built = Vec::new();
    for (file, name) in apart.later {
        let asked_as = file.file_name().unwrap_or_default().to_string_lossy().into_owned();
        let wasm = optimised(&file, LATER, optimise)?;
        built.push(Part { name, asked_as, wasm });
    }
    Ok(Built {
        script: parts::joined(&script, &fs::read_to_string(&apart.loaders)?)?,
        wasm: optimised(&out.join(format!("{bin}_bg.wasm")), SMALL, optimise)?,
        parts: built,
        snippets: out.join("snippets"),
    })
}

/// Builds a binary of `package` that computes in a Web Worker.
pub(super) fn build_for_worker(package: &str, bin: &str, optimise: Optimise) -> Result<Built> {
    ensure_wasm_target()?;
    let wasm = compile("build", package, &["--bin", bin], bin)?;
    let out = scratch().join("bindings").join(bin);
    bindings(&wasm, &out, &["--no-typescript"])?;
    Ok(Built {
        script: fs::read_to_string(out.join(format!("{bin}.js")))?,
        wasm: optimised(&out.join(format!("{bin}_bg.wasm")), FAST, optimise)?,
        parts: Vec::new(),
        snippets: out.join("snippets"),
    })
}

/// Builds the library `package` as a module for JavaScript with its wasm, into `folder`.
pub(super) fn build_js_package(package: &str, folder: &Path, optimise: Optimise) -> Result<()> {
    let library = package.replace('-', "_");
    let wasm = compile("build", package, &["--lib"], &library)?;
    bindings(&wasm, folder, &["--no-typescript"])?;
    let file = folder.join(format!("{library}_bg.wasm"));
    fs::write(&file, optimised(&file, SMALL, optimise)?)?;
    Ok(())
}

fn compile(command: &str, package: &str, what: &[&str], file: &str) -> Result<PathBuf> {
    let profile = if is_quick() { QUICK_PROFILE } else { "release" };
    run(
        &format!("compiling {package} for the browser ({profile})"),
        cargo()
            .args([command, "--config", &without_places()?])
            .args(["--profile", profile, "--target", WASM, "--package", package])
            .args(what),
    )?;
    Ok(target_folder().join(WASM).join(profile).join(format!("{file}.wasm")))
}

/// What keeps the places of sources on this machine out of the program: they are nobody's business, they are bytes, and
/// without them every machine makes the same files.
fn without_places() -> Result<String> {
    let mut places = vec![root()];
    let sources = cargo_home()?.join("registry/src");
    for registry in fs::read_dir(sources).into_iter().flatten() {
        places.push(registry?.path());
    }
    let flags: Vec<String> =
        places.iter().map(|place| format!("--remap-path-prefix={}=.", place.display())).collect();
    Ok(format!("target.{WASM}.rustflags={}", serde_json::to_string(&flags)?))
}

/// Where cargo keeps what it fetched.
fn cargo_home() -> Result<PathBuf> {
    let named = std::env::var_os("CARGO_HOME").map(PathBuf::from);
    let usual = || std::env::home_dir().map(|home| home.join(".cargo"));
    named.or_else(usual).context("where cargo keeps its files is not known: set CARGO_HOME")
}

/// What places on somebody's machine have in them.
fn usual_places() -> Vec<String> {
    let homes = ["home", "root", "Users"].map(|folder| format!("/{folder}/"));
    homes.into_iter().chain([".cargo/registry".to_owned()]).collect()
}

/// Fails where a program below `folder` names a place on the machine that built it: then [`without_places`] has missed one.
/// What nobody publishes may.
pub(super) fn names_no_place(folder: &Path) -> Result<()> {
    if is_quick() {
        return Ok(());
    }
    let mut places = usual_places();
    // One folder, as /src, may stand in a program for what it is below the root too.
    let ours = [root(), cargo_home()?].into_iter().filter(|it| it.components().count() > 2);
    places.extend(ours.map(|it| format!("{}/", it.display())));
    for entry in fs::read_dir(folder).with_context(|| folder.display().to_string())? {
        let path = entry?.path();
        if path.is_dir() {
            names_no_place(&path)?;
        } else if path.extension().is_some_and(|it| it == "wasm")
            && let Some(place) = place_in(&fs::read(&path)?, &places)
        {
            bail!("{} names a place on this machine: {place}", path.display());
        }
    }
    Ok(())
}

/// The first of the places that stands in a program.
fn place_in<'a>(bytes: &[u8], places: &'a [String]) -> Option<&'a str> {
    let stands = |place: &&String| bytes.windows(place.len()).any(|it| it == place.as_bytes());
    places.iter().find(stands).map(String::as_str)
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

/// What is asked of the optimiser for what goes over the wire: what a higher level makes smaller compresses worse.
const SMALL: &[&str] = &["-O1"];
/// And for the parts that are fetched later: functions in the order of how often they are called compress better there.
const LATER: &[&str] = &["-O1", "--reorder-functions"];
/// And for what computes for seconds.
const FAST: &[&str] = &["-O3"];

/// The optimised bytes of `wasm`; what was optimised before is taken from the scratch folder.
fn optimised(wasm: &Path, passes: &[&str], optimise: Optimise) -> Result<Vec<u8>> {
    let bytes = fs::read(wasm)?;
    let digest: String = Sha256::digest(&bytes).iter().map(|b| format!("{b:02x}")).collect();
    let folder = scratch().join("optimised");
    let out = folder.join(format!("{digest}{}.wasm", passes.concat()));
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
        optimiser.args(passes).arg(wasm).arg("-o").arg(&unfinished),
    )?;
    fs::rename(&unfinished, &out)?;
    Ok(fs::read(&out)?)
}

#[cfg(test)]
mod tests {
    use super::{place_in, usual_places};

    #[test]
    fn a_place_is_found_wherever_it_stands_in_a_program() {
        let places = usual_places();
        let found = |program: &str| place_in(program.as_bytes(), &places).map(str::to_owned);
        // What a compiler writes where nothing keeps the places out: in the middle, and at the very end.
        let planted = "\0asm\u{1}src/measure/text/.cargo/registry/src/yew-0.22/src/lib.rs";
        assert_eq!(found(planted).as_deref(), Some(".cargo/registry"));
        let home = &places[0];
        assert_eq!(found(&format!("\0asm panicked at {home}")).as_ref(), Some(home));
        assert_eq!(
            found("\0asm/rustc/59807616/library/core/src/fmt.rs ./src/core/src/lib.rs"),
            None
        );
    }
}
