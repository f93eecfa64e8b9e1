//! From sources to a folder that any static server can publish.
//!
//! `index.html` says what the page is made of, in links marked `data-trunk` that Trunk reads
//! too. Everything here is built in a folder of its own and moved into place at the end, so a
//! failed build leaves the last good one alone.

mod parts;
mod shell;
mod sources;
mod wasm;

use std::fs;
use std::path::{Path, PathBuf};

use anyhow::{Context, Result, bail};
use sha2::{Digest, Sha256};

use crate::notices;
use crate::precache;
use crate::workspace::{dist, packages, root, say, scratch};
use shell::Asset;
use wasm::Optimise;

/// The package with the functions for other people's JavaScript, and its folder in dist/.
pub(crate) const JS_PACKAGE: &str = "reckoner-js";
const JS_FOLDER: &str = "js";
/// What makes a package of it: the ways in, types, description.
const JS_AROUND: &str = "src/js/package";
/// A page that calls it; published beside it.
const JS_EXAMPLE: &str = "src/js/example";

/// Builds everything that is published into `dist/`: the page and the JavaScript package.
pub(crate) fn build_all() -> Result<()> {
    build(Optimise::Always, true)
}

/// Builds the page alone and without the optimiser: what `serve` shows, soon after an edit.
pub(crate) fn build_page() -> Result<()> {
    build(Optimise::IfKnown, false)
}

fn build(optimise: Optimise, with_js: bool) -> Result<()> {
    let stage = scratch().join("stage");
    if stage.exists() {
        fs::remove_dir_all(&stage)?;
    }
    fs::create_dir_all(&stage)?;
    stage_page(&root(), &stage, optimise)?;
    if with_js {
        stage_js(&stage.join(JS_FOLDER), optimise)?;
    }
    wasm::names_no_place(&stage)?;
    precache::finish(&stage)?;
    let dist = dist();
    if dist.exists() {
        fs::remove_dir_all(&dist)?;
    }
    fs::rename(&stage, &dist).context("moving the new build to dist/")?;
    say("dist/ is ready");
    Ok(())
}

fn stage_page(root: &Path, stage: &Path, optimise: Optimise) -> Result<()> {
    let source = fs::read_to_string(root.join("index.html")).context("reading index.html")?;
    let mut css = String::new();
    let mut made = Vec::new();
    for asset in shell::assets(&source)? {
        let file = |href: &str| root.join(href);
        match &asset {
            Asset::Style { href } => {
                let text = fs::read_to_string(file(href)).with_context(|| href.clone())?;
                css.push_str(&sources::css_without_comments(&text));
            }
            Asset::Script { src } => {
                let text = fs::read_to_string(file(src)).with_context(|| src.clone())?;
                let text = sources::script_without_comments(&text);
                made.push((asset.clone(), vec![write_hashed(stage, src, text.as_bytes())?]));
            }
            Asset::Rust { manifest, bin } => {
                let package = manifest_package(&file(manifest))?;
                let built = wasm::build_in_parts(&package, bin, optimise)?;
                copy_folder_if_there(&built.snippets, &stage.join("snippets"))?;
                let mut script = built.script;
                for part in built.parts {
                    let name = write_hashed(stage, &part.name, &part.wasm)?;
                    script = parts::renamed(&script, &part.asked_as, &name)?;
                }
                let script = sources::script_without_comments(&script);
                let script = write_hashed(stage, &format!("{bin}.js"), script.as_bytes())?;
                let wasm = write_hashed(stage, &format!("{bin}.wasm"), &built.wasm)?;
                made.push((asset.clone(), vec![script, wasm]));
            }
            Asset::Worker { manifest, bin } => {
                let package = manifest_package(&file(manifest))?;
                let built = wasm::build_for_worker(&package, bin, optimise)?;
                copy_folder_if_there(&built.snippets, &stage.join("snippets"))?;
                let script = sources::script_without_comments(&built.script);
                let script = write_hashed(stage, &format!("{bin}.js"), script.as_bytes())?;
                let wasm = write_hashed(stage, &format!("{bin}.wasm"), &built.wasm)?;
                let loader = sources::loader(&script, &wasm);
                let loader = write_hashed(stage, &format!("{bin}-loader.js"), loader.as_bytes())?;
                made.push((asset.clone(), vec![script, wasm, loader]));
            }
            Asset::File { href } => {
                fs::copy(file(href), stage.join(name_of(href)?)).with_context(|| href.clone())?;
            }
            Asset::Folder { href } => copy_folder(&file(href), &stage.join(name_of(href)?))?,
        }
    }
    let css = write_hashed(stage, "style.css", css.as_bytes())?;
    fs::write(stage.join("index.html"), shell::rewrite(&source, &css, &made)?)?;
    Ok(())
}

/// The package for other people's scripts: its modules, its wasm and its types, under plain names.
fn stage_js(folder: &Path, optimise: Optimise) -> Result<()> {
    fs::create_dir_all(folder)?;
    wasm::build_js_package(JS_PACKAGE, folder, optimise)?;
    notices::write(&[JS_PACKAGE], folder)?;
    copy_folder(&root().join(JS_AROUND), folder)?;
    fs::copy(root().join("LICENSE"), folder.join("LICENSE")).context("LICENSE")?;
    copy_folder(&root().join(JS_EXAMPLE), &folder.join("example"))
}

/// Builds the JavaScript package alone, for its tests, and says where.
pub(crate) fn build_js() -> Result<PathBuf> {
    let folder = scratch().join("package");
    stage_js(&folder, Optimise::IfKnown)?;
    Ok(folder)
}

/// Writes `bytes` under a name that changes with them, and returns that name.
fn write_hashed(stage: &Path, name: &str, bytes: &[u8]) -> Result<String> {
    let name = name_of(name)?;
    let (stem, extension) = name.rsplit_once('.').unwrap_or((&name, ""));
    let digest = Sha256::digest(bytes);
    let hash: String = digest.iter().take(8).map(|byte| format!("{byte:02x}")).collect();
    let hashed = format!("{stem}-{hash}.{extension}");
    fs::write(stage.join(&hashed), bytes)?;
    Ok(hashed)
}

fn name_of(href: &str) -> Result<String> {
    match Path::new(href).file_name().and_then(|name| name.to_str()) {
        Some(name) => Ok(name.to_owned()),
        None => bail!("'{href}' in index.html does not name a file"),
    }
}

fn manifest_package(manifest: &Path) -> Result<String> {
    let known = packages()?;
    let wanted = manifest.canonicalize().with_context(|| manifest.display().to_string())?;
    known
        .into_iter()
        .find(|package| package.manifest_path.canonicalize().is_ok_and(|path| path == wanted))
        .map(|package| package.name)
        .with_context(|| format!("{} is not a member of the workspace", manifest.display()))
}

fn copy_folder_if_there(from: &Path, to: &Path) -> Result<()> {
    if from.is_dir() { copy_folder(from, to) } else { Ok(()) }
}

/// Copies a folder with everything below it.
pub(crate) fn copy_folder(from: &Path, to: &Path) -> Result<()> {
    fs::create_dir_all(to)?;
    let entries = fs::read_dir(from).with_context(|| from.display().to_string())?;
    for entry in entries {
        let entry = entry?;
        let target: PathBuf = to.join(entry.file_name());
        if entry.file_type()?.is_dir() {
            copy_folder(&entry.path(), &target)?;
        } else {
            fs::copy(entry.path(), target)?;
        }
    }
    Ok(())
}
