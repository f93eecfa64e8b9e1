//! The built app, and further releases made from it.

use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;

/// The built app: `dist/`, or where `cargo xtask test` says.
///
/// # Panics
///
/// When nothing was built.
#[track_caller]
pub fn built() -> PathBuf {
    let folder =
        std::env::var_os("RECKONER_DIST").map_or_else(|| root().join("dist"), PathBuf::from);
    assert!(
        folder.join("index.html").is_file(),
        "the app is not built; run the journeys with: cargo xtask test journeys"
    );
    folder
}

/// Cargo's target folder, for pictures and further releases.
pub fn target_folder() -> PathBuf {
    std::env::var_os("CARGO_TARGET_DIR")
        .map_or_else(|| root().join("target"), |folder| root().join(folder))
}

fn root() -> PathBuf {
    let here = Path::new(env!("CARGO_MANIFEST_DIR"));
    here.parent().map_or_else(|| here.to_path_buf(), Path::to_path_buf)
}

/// The mark that [`another`] leaves in its page: `<html data-release="...">`.
pub const MARK: &str = "data-release";

/// Makes another release: the same app under new file names, marked with `mark` in its page
/// (see [`MARK`]), its style sheet (`--release`) and its start script (`window.releaseOfScript`).
/// Three files that must always come from the same release.
///
/// # Panics
///
/// When the copy cannot be made.
#[track_caller]
pub fn another(mark: &str) -> PathBuf {
    let folder = copied(mark);
    mark_all(&folder, mark).unwrap_or_else(|error| panic!("release {mark}: {error}"));
    finish(&folder);
    folder
}

/// Fills in the service worker again after files of a release were changed.
///
/// # Panics
///
/// When `xtask precache` fails.
#[track_caller]
pub fn finish(folder: &Path) {
    let xtask = std::env::var_os("RECKONER_XTASK");
    let mut precache = match xtask {
        Some(xtask) => Command::new(xtask),
        None => {
            let mut cargo = Command::new(env!("CARGO"));
            cargo.args(["run", "--quiet", "--package", "reckoner-xtask", "--"]);
            cargo
        }
    };
    let status = precache.arg("precache").arg(folder).current_dir(root()).status();
    assert!(status.as_ref().is_ok_and(|s| s.success()), "precache: {status:?}");
}

/// Makes a copy of the built app in a folder of that name, with nothing in it changed yet.
///
/// # Panics
///
/// When the copy cannot be made.
#[track_caller]
pub fn copied(name: &str) -> PathBuf {
    let folder = target_folder().join("releases").join(name);
    let made = if folder.exists() { fs::remove_dir_all(&folder) } else { Ok(()) };
    made.and_then(|()| copy(&built(), &folder))
        .unwrap_or_else(|error| panic!("release {name}: {error}"));
    folder
}

/// Makes another release in which the programs have other names; nothing under their old names is
/// in it.
///
/// # Panics
///
/// When it cannot be made.
#[track_caller]
pub fn with_renamed_programs(name: &str) -> PathBuf {
    let folder = another(name);
    rename_programs(&folder).unwrap_or_else(|error| panic!("release {name}: {error}"));
    finish(&folder);
    folder
}

fn rename_programs(folder: &Path) -> std::io::Result<()> {
    let names = fs::read_dir(folder)?.map(|entry| Ok(entry?.file_name().to_string_lossy().into()));
    let names: Vec<String> = names.collect::<std::io::Result<_>>()?;
    let renamed: Vec<(&str, String)> = names
        .iter()
        .filter(|name| name.starts_with("reckoner-"))
        .filter_map(|name| {
            let (stem, extension) = name.rsplit_once('.')?;
            Some((name.as_str(), format!("{stem}0a.{extension}")))
        })
        .collect();
    for (old, new) in &renamed {
        fs::rename(folder.join(old), folder.join(new))?;
    }
    // They name each other, and the page names them.
    for entry in fs::read_dir(folder)? {
        let path = entry?.path();
        if path.extension().is_some_and(|end| end == "js" || end == "html") {
            let mut text = fs::read_to_string(&path)?;
            for (old, new) in &renamed {
                text = text.replace(old, new);
            }
            fs::write(&path, text)?;
        }
    }
    Ok(())
}

fn mark_all(folder: &Path, mark: &str) -> std::io::Result<()> {
    let index = folder.join("index.html");
    let mut page =
        fs::read_to_string(&index)?.replace("<html", &format!("<html {MARK}=\"{mark}\""));
    // Listed before anything in it changes.
    for entry in fs::read_dir(folder)?.collect::<Vec<_>>() {
        let name = entry?.file_name().to_string_lossy().into_owned();
        let Some((stem, extension)) = name.rsplit_once('.') else {
            continue;
        };
        let (before, after) = match extension {
            "css" => (String::new(), format!("\n:root {{ --release: {mark}; }}\n")),
            // First: the script waits for all parts of the program before its end.
            "js" if name.starts_with("boot-") => {
                (format!("window.releaseOfScript = \"{mark}\";\n"), String::new())
            }
            _ => continue,
        };
        let new_name = format!("{stem}{:02x}.{extension}", mark.len());
        let text = fs::read_to_string(folder.join(&name))?;
        fs::write(folder.join(&new_name), format!("{before}{text}{after}"))?;
        fs::remove_file(folder.join(&name))?;
        page = page.replace(&name, &new_name);
    }
    fs::write(index, page)
}

fn copy(from: &Path, to: &Path) -> std::io::Result<()> {
    fs::create_dir_all(to)?;
    for entry in fs::read_dir(from)? {
        let entry = entry?;
        let target = to.join(entry.file_name());
        if entry.file_type()?.is_dir() {
            copy(&entry.path(), &target)?;
        } else {
            fs::copy(entry.path(), target)?;
        }
    }
    Ok(())
}
