//! Finishing a built folder: no script in the page itself, and a service worker that knows
//! every file of this build and its digest.
//!
//! `cargo xtask build` calls this; so does Trunk, as its hook after a build.

use std::fs;
use std::path::{Path, PathBuf};

use anyhow::{Context, Result, bail};
use base64::Engine;
use base64::engine::general_purpose::STANDARD;
use sha2::{Digest, Sha256};

use crate::notices;
use crate::workspace::{root, say};

const TEMPLATE: &str = "src/app/service_worker/sw.js";
/// The service worker, under this name for ever: browsers look for updates by it.
pub(crate) const WORKER: &str = "sw.js";
const VERSION_BLANK: &str = "const VERSION = \"\";";
const FILES_BLANK: &str = "const FILES = [];";
/// Published beside the page, not a part of it: the JavaScript package, and pictures for who installs the app.
const APART: [&str; 2] = ["js/", "screenshots/"];

/// The folder that Trunk is filling, when it runs this as its hook.
pub(crate) fn staging_folder() -> Result<PathBuf> {
    match std::env::var_os("TRUNK_STAGING_DIR") {
        Some(folder) => Ok(folder.into()),
        None => bail!("precache: which folder? cargo xtask precache DIR"),
    }
}

/// Takes inline scripts out of the page, puts links to the programs for Web Workers in, writes the notices of
/// what it is made of, and the service worker.
///
/// A debug build of Trunk gets no service worker: an old build would stay on the screen.
pub(crate) fn finish(folder: &Path) -> Result<()> {
    let index = folder.join("index.html");
    let page = fs::read_to_string(&index)
        .with_context(|| format!("{} is not a built folder", folder.display()))?;
    let page = with_links_to_workers(&without_inline_scripts(&page), &paths(folder)?);
    fs::write(&index, page)?;
    notices::write(&notices::PAGE, folder)?;
    if std::env::var("TRUNK_PROFILE").is_ok_and(|profile| profile == "debug") {
        say("a debug build: no service worker");
        return Ok(());
    }
    let files = files(folder)?;
    let template = fs::read_to_string(root().join(TEMPLATE)).context(TEMPLATE)?;
    fs::write(folder.join(WORKER), filled_in(&template, &files)?)?;
    say(&format!("service worker: {} files to keep for use without a signal", files.len()));
    Ok(())
}

/// A file of the build.
#[derive(Clone, Debug, PartialEq, Eq)]
struct File {
    /// As the page asks for it: `./` for the page itself.
    path: String,
    /// Digest in the form that browsers check.
    integrity: String,
    /// Whether its name changes with its contents.
    is_hashed: bool,
}

/// The files that make up the page, with `/` between folders, sorted.
pub(crate) fn paths(folder: &Path) -> Result<Vec<String>> {
    let mut paths = Vec::new();
    walk(folder, "", &mut paths)?;
    paths.retain(|path| path != WORKER && !APART.iter().any(|apart| path.starts_with(apart)));
    paths.sort();
    Ok(paths)
}

fn files(folder: &Path) -> Result<Vec<File>> {
    let mut files = Vec::new();
    for path in paths(folder)? {
        let digest = Sha256::digest(fs::read(folder.join(&path))?);
        files.push(File {
            is_hashed: is_hashed(&path),
            path: if path == "index.html" { "./".into() } else { format!("./{path}") },
            integrity: format!("sha256-{}", STANDARD.encode(digest)),
        });
    }
    Ok(files)
}

fn walk(folder: &Path, prefix: &str, found: &mut Vec<String>) -> Result<()> {
    for entry in fs::read_dir(folder)? {
        let entry = entry?;
        let Ok(name) = entry.file_name().into_string() else {
            bail!("{}: a file name that is not text", entry.path().display());
        };
        let path = format!("{prefix}{name}");
        if entry.file_type()?.is_dir() {
            walk(&entry.path(), &format!("{path}/"), found)?;
        } else {
            found.push(path);
        }
    }
    Ok(())
}

/// `name-0123456789abcdef.js`: 8 or more hexadecimal digits after the last hyphen. Trunk ends
/// the name of its wasm with `_bg` after the digits.
fn is_hashed(path: &str) -> bool {
    let stem = path.rsplit_once('.').map_or(path, |(stem, _)| stem);
    let stem = stem.strip_suffix("_bg").unwrap_or(stem);
    stem.rsplit_once('-')
        .is_some_and(|(_, hash)| hash.len() >= 8 && hash.bytes().all(|b| b.is_ascii_hexdigit()))
}

fn filled_in(template: &str, files: &[File]) -> Result<String> {
    for blank in [VERSION_BLANK, FILES_BLANK] {
        if template.matches(blank).count() != 1 {
            bail!("{TEMPLATE} must hold this line once: {blank}");
        }
    }
    let list: Vec<(&str, &str, bool)> = files
        .iter()
        .map(|file| (file.path.as_str(), file.integrity.as_str(), file.is_hashed))
        .collect();
    let list = serde_json::to_string(&list)?;
    // The worker's own text counts too: a better worker is a new version.
    let digest = Sha256::digest(format!("{template}{list}"));
    let version: String = digest.iter().take(8).map(|byte| format!("{byte:02x}")).collect();
    Ok(template
        .replace(VERSION_BLANK, &format!("const VERSION = \"{version}\";"))
        .replace(FILES_BLANK, &format!("const FILES = {list};")))
}

/// The page without any `<script>` that carries its code in the page: Trunk puts one there to
/// start the app, which `boot.js` does, and the content policy would refuse to run it.
fn without_inline_scripts(page: &str) -> String {
    const END: &str = "</script>";
    let mut kept = String::with_capacity(page.len());
    let mut rest = page;
    while let Some(start) = rest.find("<script") {
        let (before, script) = rest.split_at(start);
        kept.push_str(before);
        let Some(end) = script.find(END) else {
            rest = script;
            break;
        };
        let (script, after) = script.split_at(end + END.len());
        let has_source = script.split('>').next().is_some_and(|tag| tag.contains(" src="));
        if has_source {
            kept.push_str(script);
        }
        rest = after;
    }
    kept.push_str(rest);
    kept
}

/// How Trunk ends the name of the script that starts a program in a Web Worker.
const LOADER_OF_TRUNK: &str = "_loader.js";

/// The page with a link to each program that Trunk built for a Web Worker: it takes them out, and the app finds the files
/// by them.
fn with_links_to_workers(page: &str, paths: &[String]) -> String {
    let programs = paths.iter().filter_map(|path| path.strip_suffix(LOADER_OF_TRUNK));
    let links: String = programs
        .map(|it| {
            worker_link(
                &format!("{it}.js"),
                &format!("{it}_bg.wasm"),
                &format!("{it}{LOADER_OF_TRUNK}"),
            )
        })
        .filter(|link| !page.contains(link))
        .collect();
    page.replacen("</head>", &format!("{links}</head>"), 1)
}

/// What the page says of a program that it starts later in a Web Worker.
pub(crate) fn worker_link(script: &str, wasm: &str, loader: &str) -> String {
    format!(
        "<link rel=\"worker\" href=\"./{script}\" data-wasm=\"./{wasm}\" data-loader=\"./{loader}\">"
    )
}

#[cfg(test)]
mod tests {
    use super::*;

    fn file(path: &str, integrity: &str) -> File {
        File { path: path.into(), integrity: integrity.into(), is_hashed: is_hashed(path) }
    }

    #[test]
    fn the_version_follows_contents_names_and_the_worker_itself() {
        let template = format!("{VERSION_BLANK}\n{FILES_BLANK}\n");
        let version = |template: &str, files: &[File]| {
            let worker = filled_in(template, files).expect("a worker");
            worker.lines().next().expect("a line").to_owned()
        };
        let first = version(&template, &[file("./", "sha256-a")]);
        assert_eq!(first, version(&template, &[file("./", "sha256-a")]));
        assert_ne!(first, version(&template, &[file("./", "sha256-b")]));
        assert_ne!(first, version(&template, &[file("./b.js", "sha256-a")]));
        assert_ne!(first, version(&format!("{template}//"), &[file("./", "sha256-a")]));
    }

    #[test]
    fn a_worker_without_its_blanks_is_refused() {
        assert!(filled_in(VERSION_BLANK, &[]).is_err());
        assert!(filled_in(&format!("{FILES_BLANK}{FILES_BLANK}{VERSION_BLANK}"), &[]).is_err());
    }

    #[test]
    fn the_real_worker_can_be_filled_in_and_stays_short() {
        let template = fs::read_to_string(root().join(TEMPLATE)).expect(TEMPLATE);
        let worker = filled_in(&template, &[file("./", "sha256-a")]).expect("a worker");
        assert!(worker.contains(r#"const FILES = [["./","sha256-a",false]];"#), "{worker}");
        assert!(template.lines().count() < 120);
    }

    #[test]
    fn hashed_names_are_told_from_plain_ones() {
        for name in ["app-0123456789abcdef.js", "app-0123456789abcdef_bg.wasm"] {
            assert!(is_hashed(name), "{name}");
        }
        for name in ["icons/icon-192.png", "index.html", "a-deadbee.js", "icon-maskable-512.png"] {
            assert!(!is_hashed(name), "{name}");
        }
    }

    #[test]
    fn a_program_that_trunk_built_for_a_worker_is_linked_once() {
        let paths = ["w.js", "w_bg.wasm", "w_loader.js"].map(str::to_owned);
        let linked = with_links_to_workers("<head></head>", &paths);
        assert_eq!(
            linked,
            "<head><link rel=\"worker\" href=\"./w.js\" data-wasm=\"./w_bg.wasm\" data-loader=\"./w_loader.js\"></head>"
        );
        assert_eq!(with_links_to_workers(&linked, &paths), linked);
        let ours = ["w-1.js", "w-2.wasm", "w-loader-3.js"].map(str::to_owned);
        assert_eq!(with_links_to_workers("<head></head>", &ours), "<head></head>");
    }

    #[test]
    fn scripts_in_the_page_go_scripts_beside_it_stay() {
        let page = "<a><script type=\"module\">if (a < b) go(\">\");</script><script type=\"module\" src=\"./b.js\"></script></a>";
        assert_eq!(
            without_inline_scripts(page),
            "<a><script type=\"module\" src=\"./b.js\"></script></a>"
        );
    }
}
