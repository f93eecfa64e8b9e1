//! Which crates may depend on which, through any number of steps.

use anyhow::{Result, bail};

use crate::workspace::{cargo, packages};

/// A crate, and what it must not reach in normal use; development dependencies are free.
const WALLS: [(&str, &[&str]); 4] = [
    ("reckoner-core", BROWSER),
    ("reckoner-cutplan", BROWSER),
    ("reckoner-formats", BROWSER),
    // A search that takes seconds must not run where the page is drawn.
    ("reckoner-app", &["reckoner-cutplan"]),
];

/// Names of crates that only make sense in a browser.
const BROWSER: &[&str] = &["yew", "web-sys", "js-sys", "gloo", "wasm-bindgen"];

/// Every dependency that goes through a wall.
pub(super) fn breaches() -> Result<Vec<String>> {
    let members = packages()?;
    let mut found = Vec::new();
    for (name, forbidden) in WALLS {
        if !members.iter().any(|package| package.name == name) {
            continue;
        }
        let reached = dependencies(name)?;
        for bad in forbidden.iter().filter(|bad| reached.iter().any(|r| r == *bad)) {
            found.push(format!("{name} depends on {bad}"));
        }
    }
    Ok(found)
}

/// All crates that `package` is built from, on any target.
fn dependencies(package: &str) -> Result<Vec<String>> {
    let output = cargo()
        .args(["tree", "--package", package, "--edges", "normal", "--target", "all"])
        .args(["--prefix", "none", "--format", "{p}"])
        .output()?;
    if !output.status.success() {
        bail!("cargo tree: {}", String::from_utf8_lossy(&output.stderr));
    }
    let text = String::from_utf8(output.stdout)?;
    let names = text.lines().filter_map(|line| line.split(' ').next());
    Ok(names.map(str::to_owned).collect())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn dependencies_are_seen_through_any_number_of_steps() {
        let reached = dependencies("reckoner-app").expect("cargo tree");
        assert!(reached.iter().any(|name| name == "web-sys"), "{reached:?}");
        assert!(reached.iter().any(|name| name == "futures-core"), "{reached:?}");
    }
}
