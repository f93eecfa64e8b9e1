//! Sizes of the published page by kind of file, against the limits in `budget.toml`.

use std::collections::BTreeMap;
use std::fmt::Write as _;
use std::fs;
use std::io::Write as _;
use std::path::Path;

use anyhow::{Context, Result, bail};
use serde::Deserialize;

use crate::precache;
use crate::workspace::{dist, root};

const LIMITS: &str = "src/xtask/budget.toml";

/// Bytes as stored and as compressed for the wire.
#[derive(Clone, Copy, Debug, Default, Deserialize, PartialEq, Eq)]
#[serde(deny_unknown_fields)]
struct Sizes {
    raw: usize,
    gzip: usize,
    brotli: usize,
}

impl Sizes {
    /// The best that a server which compresses ahead of time can do.
    fn of(bytes: &[u8]) -> Result<Sizes> {
        let mut gzip = flate2::write::GzEncoder::new(Vec::new(), flate2::Compression::best());
        gzip.write_all(bytes)?;
        let mut packed = Vec::new();
        let mut brotli = brotli::CompressorWriter::new(&mut packed, 4096, 11, 22);
        brotli.write_all(bytes)?;
        drop(brotli);
        Ok(Sizes { raw: bytes.len(), gzip: gzip.finish()?.len(), brotli: packed.len() })
    }

    fn add(&mut self, other: Sizes) {
        self.raw += other.raw;
        self.gzip += other.gzip;
        self.brotli += other.brotli;
    }

    fn columns(self) -> [(&'static str, usize); 3] {
        [("raw", self.raw), ("gzip", self.gzip), ("brotli", self.brotli)]
    }
}

/// Prints the table and fails when anything is over its limit.
pub(crate) fn report() -> Result<()> {
    let limits = limits()?;
    let sizes = measure(&dist()).context("measuring dist/; build it with: cargo xtask build")?;
    println!("{}", table(&sizes, &limits));
    let over = excesses(&sizes, &limits);
    if !over.is_empty() {
        bail!("over budget ({LIMITS}): {}", over.join("; "));
    }
    Ok(())
}

fn limits() -> Result<BTreeMap<String, Sizes>> {
    let text = fs::read_to_string(root().join(LIMITS)).context(LIMITS)?;
    toml::from_str(&text).context(LIMITS)
}

fn measure(folder: &Path) -> Result<BTreeMap<String, Sizes>> {
    let mut sizes: BTreeMap<String, Sizes> = BTreeMap::new();
    let worker = std::iter::once(precache::WORKER.to_owned());
    for path in precache::paths(folder)?.into_iter().chain(worker) {
        let measured = Sizes::of(&fs::read(folder.join(&path))?)?;
        for part in parts(&path) {
            sizes.entry(format!("{VISIT}{part}")).or_default().add(measured);
        }
        sizes.entry(kind(&path).to_owned()).or_default().add(measured);
    }
    let first = sizes.get("wasm").copied().unwrap_or_default();
    for (_, visit) in sizes.iter_mut().filter(|(kind, _)| kind.starts_with(VISIT)) {
        visit.add(first);
    }
    Ok(sizes)
}

/// Begins the name of a row that is no kind of file: all of the program that a page of a part waits for on a first visit.
const VISIT: &str = "to_";

/// The parts of the page's program that have calculators alone.
const CALCULATORS: [&str; 3] = ["wood", "joints", "shapes"];
/// And those of the job book, which have all calculators too.
const JOBS: [&str; 3] = ["shelf", "cut", "job"];

/// The parts of the program that fetch a file: its name says so.
fn parts(path: &str) -> Vec<&str> {
    let name = path.strip_prefix("reckoner-").and_then(|name| name.strip_suffix(".wasm"));
    let words = name.into_iter().flat_map(|name| name.split('-'));
    words.filter(|word| CALCULATORS.contains(word) || JOBS.contains(word)).collect()
}

/// What a first visit does not start with has limits of its own.
fn kind(path: &str) -> &str {
    if path.starts_with("reckoner-planner") {
        return "planner";
    }
    let parts = parts(path);
    if parts.iter().any(|part| CALCULATORS.contains(part)) {
        return "calculators";
    }
    if !parts.is_empty() {
        return "jobs";
    }
    match path.rsplit_once('.').map_or("", |(_, extension)| extension) {
        "svg" | "png" => "icons",
        "html" | "webmanifest" => "html",
        other => other,
    }
}

/// What is larger than allowed. A kind of file without a limit is over it, too.
fn excesses(sizes: &BTreeMap<String, Sizes>, limits: &BTreeMap<String, Sizes>) -> Vec<String> {
    let mut over = Vec::new();
    for (kind, sizes) in sizes {
        let limit = limits.get(kind).copied().unwrap_or_default();
        for ((column, size), (_, limit)) in sizes.columns().into_iter().zip(limit.columns()) {
            if size > limit {
                over.push(format!("{kind} {column} {size} > {limit}"));
            }
        }
    }
    over
}

fn table(sizes: &BTreeMap<String, Sizes>, limits: &BTreeMap<String, Sizes>) -> String {
    let mut text = String::from(
        "| kind | raw | gzip -9 | brotli 11 | brotli limit |\n| --- | ---: | ---: | ---: | ---: |\n",
    );
    let mut total = Sizes::default();
    let mut row = |name: &str, sizes: Sizes, limit: String| {
        let Sizes { raw, gzip, brotli } = sizes;
        // Writing to a string cannot fail.
        let _ = writeln!(text, "| {name} | {raw} | {gzip} | {brotli} | {limit} |");
    };
    for (kind, sizes) in sizes {
        if !kind.starts_with(VISIT) {
            total.add(*sizes);
        }
        let limit = limits.get(kind).map_or_else(|| "none".into(), |l| l.brotli.to_string());
        row(kind, *sizes, limit);
    }
    row("all", total, String::new());
    text
}

#[cfg(test)]
mod tests {
    use super::*;

    fn one(kind: &str, raw: usize) -> BTreeMap<String, Sizes> {
        BTreeMap::from([(kind.to_owned(), Sizes { raw, gzip: 1, brotli: 1 })])
    }

    #[test]
    fn only_what_is_larger_than_its_limit_is_over() {
        assert!(excesses(&one("css", 10), &one("css", 10)).is_empty());
        assert_eq!(excesses(&one("css", 11), &one("css", 10)), ["css raw 11 > 10"]);
    }

    #[test]
    fn a_kind_without_a_limit_is_over() {
        assert_eq!(excesses(&one("woff2", 5), &one("css", 10)).len(), 3);
    }

    #[test]
    fn the_real_limits_can_be_read() {
        let limits = limits().expect("budget.toml");
        assert!(["html", "css", "js", "wasm", "icons"].iter().all(|k| limits.contains_key(*k)));
        assert!(["calculators", "jobs", "planner"].iter().all(|k| limits.contains_key(*k)));
        let parts = CALCULATORS.iter().chain(&JOBS);
        assert!(parts.clone().all(|part| limits.contains_key(&format!("{VISIT}{part}"))));
    }

    #[test]
    fn a_file_of_the_program_counts_for_the_parts_that_fetch_it() {
        let cases = [
            ("reckoner-app-0123.wasm", "wasm", vec![]),
            ("reckoner-app-job.js", "js", vec![]),
            ("reckoner-planner-0123.wasm", "planner", vec![]),
            ("reckoner-job-shelf-wood-0123.wasm", "calculators", vec!["job", "shelf", "wood"]),
            ("reckoner-job-shelf-0123.wasm", "jobs", vec!["job", "shelf"]),
        ];
        for (path, expected, fetched_by) in cases {
            assert_eq!((kind(path), parts(path)), (expected, fetched_by), "{path}");
        }
    }

    #[test]
    fn compressed_sizes_are_those_of_the_compressors() {
        let sizes = Sizes::of(&[b'a'; 10_000]).expect("sizes");
        assert_eq!(sizes.raw, 10_000);
        assert!(sizes.gzip < 60 && sizes.brotli < 30, "{sizes:?}");
    }
}
