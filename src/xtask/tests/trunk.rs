//! Trunk.toml stays valid without Trunk being there: its keys are ones that Trunk 0.21 and 0.22
//! know, what it points at exists, and its hook finishes a folder as Trunk leaves it.

use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;

use serde::Deserialize;

fn root() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../..")
}

/// The keys of Trunk that this repository uses; any other is refused, so that a new one is
/// looked up before it is added here.
#[derive(Deserialize)]
#[serde(deny_unknown_fields, rename_all = "kebab-case")]
struct Trunk {
    trunk_version: String,
    build: Build,
    serve: Serve,
    hooks: Vec<Hook>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Build {
    target: String,
    dist: String,
    release: bool,
    public_url: String,
    offline: bool,
    locked: bool,
    no_sri: bool,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Serve {
    address: String,
    port: u16,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Hook {
    stage: String,
    command: String,
    command_arguments: Vec<String>,
}

#[test]
fn trunk_toml_has_known_keys_and_points_at_what_exists() {
    let text = fs::read_to_string(root().join("Trunk.toml")).expect("Trunk.toml");
    let trunk: Trunk = toml::from_str(&text).expect("keys that Trunk knows");
    assert!(trunk.trunk_version.starts_with(">="), "{}", trunk.trunk_version);
    assert!(root().join(&trunk.build.target).is_file());
    assert_eq!((trunk.build.dist.as_str(), trunk.build.public_url.as_str()), ("dist", "./"));
    assert!(trunk.build.release && trunk.build.offline && trunk.build.locked);
    assert!(trunk.build.no_sri);
    assert_eq!((trunk.serve.address.as_str(), trunk.serve.port), ("127.0.0.1", 8080));

    let [hook] = trunk.hooks.as_slice() else { panic!("one hook") };
    assert_eq!(hook.stage, "post_build");
    assert_eq!(hook.command, "cargo");
    assert_eq!(hook.command_arguments, ["xtask", "precache"]);
    let config = fs::read_to_string(root().join(".cargo/config.toml")).expect("cargo's config");
    let config: toml::Table = config.parse().expect("TOML");
    let alias = config["alias"]["xtask"].as_str().expect("the alias that the hook uses");
    assert!(alias.contains("--package reckoner-xtask"), "{alias}");
}

/// The attributes of Trunk's links to Rust programs that this repository uses; another one is looked up before it is added.
#[test]
fn the_programs_of_the_page_are_linked_as_trunk_reads_them() {
    let page = fs::read_to_string(root().join("index.html")).expect("index.html");
    let links: Vec<&str> =
        page.lines().filter(|line| line.contains("data-trunk rel=\"rust\"")).collect();
    let known = ["rel", "href", "data-bin", "data-type", "data-bindgen-target", "data-wasm-opt"];
    for link in &links {
        let inside = link.trim_start_matches("<link ").trim_end_matches('>');
        for attribute in inside.split(' ') {
            let name = attribute.split_once('=').map_or(attribute, |(name, _)| name);
            let is_flag = ["data-trunk", "data-loader-shim"].contains(&name);
            assert!(is_flag || known.contains(&name), "{name} in {link}");
        }
        // Any other level, or none, takes an optimiser from the search path, and fails without.
        assert!(link.contains("data-wasm-opt=\"0\""), "{link}");
    }
    let bins: Vec<&str> = links
        .iter()
        .filter_map(|link| link.split_once("data-bin=\"")?.1.split('"').next())
        .collect();
    assert_eq!(bins, ["reckoner-app", "reckoner-planner"]);
}

#[test]
fn the_hook_finishes_a_folder_as_trunk_leaves_it() {
    let folder = root().join("target/trunk-staging-test");
    drop(fs::remove_dir_all(&folder));
    fs::create_dir_all(&folder).expect("a folder");
    // As Trunk 0.22 writes it: links with relative addresses, and a start script in the page.
    let page = r#"<!DOCTYPE html><html><head>
<link rel="modulepreload" href="./reckoner-app-0123456789abcdef.js" crossorigin="anonymous">
<link rel="preload" href="./reckoner-app-0123456789abcdef_bg.wasm" crossorigin="anonymous" as="fetch" type="application/wasm">
<script type="module" src="./boot-0123456789abcdef.js"></script>
<script type="module">
import init, * as bindings from './reckoner-app-0123456789abcdef.js';
const wasm = await init({ module_or_path: './reckoner-app-0123456789abcdef_bg.wasm' });
window.wasmBindings = bindings;
dispatchEvent(new CustomEvent("TrunkApplicationStarted", {detail: {wasm}}));
</script></head><body></body></html>"#;
    fs::write(folder.join("index.html"), page).expect("written");
    let wasm = "reckoner-app-0123456789abcdef_bg.wasm";
    fs::write(folder.join(wasm), "wasm").expect("written");
    // Trunk takes the link to a program for a Web Worker out of the page, and names its files so.
    for file in ["reckoner-planner.js", "reckoner-planner_bg.wasm", "reckoner-planner_loader.js"] {
        fs::write(folder.join(file), "planner").expect("written");
    }

    let hook = |profile: &str| {
        let status = Command::new(env!("CARGO_BIN_EXE_reckoner-xtask"))
            .arg("precache")
            .env("TRUNK_STAGING_DIR", &folder)
            .env("TRUNK_PROFILE", profile)
            .status();
        assert!(status.expect("it runs").success());
    };
    hook("debug");
    assert!(!folder.join("sw.js").exists(), "an old build would stay on the screen");
    let finished = fs::read_to_string(folder.join("index.html")).expect("the page");
    assert!(!finished.contains("bindings"), "{finished}");
    assert!(finished.contains("src=\"./boot-0123456789abcdef.js\""), "{finished}");
    let planner = r#"<link rel="worker" href="./reckoner-planner.js" data-wasm="./reckoner-planner_bg.wasm" data-loader="./reckoner-planner_loader.js">"#;
    assert!(finished.contains(planner), "the app finds the planner by it: {finished}");

    hook("release");
    let worker = fs::read_to_string(folder.join("sw.js")).expect("a service worker");
    assert!(worker.contains(&format!("[\"./{wasm}\",")), "{worker}");
}
